#ifndef BODKIN_BASE_MONEY_H
#define BODKIN_BASE_MONEY_H

#include <stdbool.h>
#include <stdint.h>

#include "bodkin/base/number.h"

typedef int64_t bk_money; ///< minor units of a currency

/// The largest amount that can be written down: thousands of them add up without overflow.
#define BK_MONEY_MOST INT64_C(1000000000000000)

enum { BK_CURRENCY_ROOM = 4 };

/// Decimals of an ISO 4217 currency (JPY 0, most 2, KWD 3 ...); 2 for an unknown or empty code.
int bk_currency_decimals(const char *code);
/// Whether `code` is three capital letters.
bool bk_currency_valid(const char *code);
/// Reads `12.50` or `12.50 GBP`; the currency is `fallback` (may be NULL) where none is written. `currency`
/// gets the code (may be empty). Amounts below zero or above BK_MONEY_MOST
/// are refused; so are more decimals than the currency has.
bk_reading bk_money_read(const char *text, const char *fallback, bk_money *money,
                         char currency[BK_CURRENCY_ROOM]);
/// Writes the amount with its decimals, and the code behind it where it differs from `usual` (NULL: always).
/// The empty string for BK_NO_AMOUNT. Returns `out`.
char *bk_money_write(bk_money money, const char *currency, const char *usual, char out[BK_AMOUNT_ROOM]);

#endif
