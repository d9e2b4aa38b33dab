#ifndef BODKIN_PLAN_SHELF_H
#define BODKIN_PLAN_SHELF_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "bodkin/base/amount.h"
#include "bodkin/base/date.h"

/// Sharing out one shelf and the orders under way over all open steps, most urgent first (design, section 6). Pure.

/// What comes of a claim's shortage.
typedef enum bk_supply {
    BK_SUPPLY_SHELF,       ///< the shelf has it: no wait
    BK_SUPPLY_NOT_ORDERED, ///< orders under way do not meet it
    BK_SUPPLY_DUE,         ///< met; the last order it draws on comes on `supply_day`
    BK_SUPPLY_LATE,        ///< met, but that day is past
    BK_SUPPLY_NO_DATE      ///< met by an order without a day
} bk_supply;

/// An open step's need of one material.
typedef struct bk_claim {
    size_t material;        ///< index into the materials
    bk_quantity quantity;   ///< needed, at least 0
    bk_day due;             ///< the piece's due day; BK_NO_DAY comes last
    bk_day opens;           ///< the production's opening
    const char *production; ///< its name
    const char *costume;    ///< the piece's lowest costume number in natural order; NULL comes last
    const char *piece;      ///< the piece's name
    int64_t step_position;  ///< order of steps.csv
    int64_t need_position;  ///< order of needs.csv, the last tie-break
    // Written by bk_shelf_share:
    bk_quantity short_of; ///< what the shelf lacks, before orders
    bk_quantity unmet;    ///< what orders do not meet of that either
    bk_supply supply;
    bk_day supply_day; ///< due day of the last order it draws on, BK_NO_DAY where none
} bk_claim;

/// Which of two claims comes first when the shelf is shared out, the more urgent one: below 0, 0 where nothing tells them
/// apart, above 0.
int bk_claim_order(const bk_claim *left, const bk_claim *right);

/// An order not arrived.
typedef struct bk_incoming {
    size_t material;
    bk_quantity quantity;
    bk_day due;       ///< BK_NO_DAY: comes last
    int64_t position; ///< order of orders.csv
} bk_incoming;

/// Shares out `on_hand` (one for each material; BK_NO_AMOUNT or below zero counts as none) and then `incoming` over the
/// claims, and writes each claim's `short_of`, `unmet`, `supply` and `supply_day`. The arrays stay in the order given. Time
/// grows as n log n.
void bk_shelf_share(const bk_quantity *on_hand, size_t materials, const bk_incoming *incoming,
                    size_t incoming_count, bk_day today, bk_claim *claims, size_t claim_count);

#endif
