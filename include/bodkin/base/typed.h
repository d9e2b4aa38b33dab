#ifndef BODKIN_BASE_TYPED_H
#define BODKIN_BASE_TYPED_H

#include <stdbool.h>
#include <stdint.h>

#include "bodkin/base/amount.h"
#include "bodkin/base/buffer.h"
#include "bodkin/base/date.h"

/// Reading what people type into a field. Pure, and more forgiving than the readers of the sheets: capitals and small letters
/// are the same, blanks before, behind and between parts do not matter. Nothing is written to a result that is not read; NULL
/// is read as empty text.

/// Reads a day; false for anything else and for days that do not exist:
/// - `2027-03-09`;
/// - `+3`, `-2` (days from `today`), `+2w`, `-1w` (weeks), also `+3d`;
/// - `today`, `tomorrow`, `yesterday`;
/// - a weekday, in two letters or more (`fr`, `fri`, `friday`): the next such day after `today`, so today's own weekday is in a
///   week;
/// - a day and a month, the day always first where both are numbers: `9 mar`, `9 march`, `mar 9` (months in three letters or
///   more), `9.3.`, `9/3`. It is the first such day from `today` on where that is within the coming nine months, else the one
///   before (the rule is our own: a production is rarely planned longer ahead); `29 feb` where that one does not exist is none;
/// - with a year from 2000 to 2099: `9 mar 2027`, `mar 9 2027`, `9.3.2027`, `9/3/2027`, and in two digits right behind the dot
///   or the stroke, `9.3.27`, `9/3/27`;
/// - any of the dates with their weekday before them, as the screens write them: `Tue 9 Mar`; it must be the right one.
bool bk_day_typed(const char *text, bk_day today, bk_day *day);

/// Reads a time of day, 00:00 to 23:59: `14:30`, `14.30`, `1430`, `930`, `9` (9:00), `14h`, `14h30`, `2pm`, `2:30 pm`, `12am`
/// (midnight), `12pm` (noon).
bool bk_time_typed(const char *text, bk_minute *time);

/// Reads a day, alone or with a time behind a blank: `fri 14:30`, `+3 2pm`, `9 mar 10` (10:00), and `2027-03-05T14:30`. Four
/// digits behind a month's name are a year where they can be one: `9 mar 1930` is half past seven in the evening, `9 mar 2030`
/// the year.
bool bk_moment_typed(const char *text, bk_day today, bk_moment *moment);

/// Reads a length, in `unit` where none is written, as micrometres rounded half up of the exact value (1 in = 25.4 mm exactly,
/// international yard and pound agreement 1959), zero to 1 km:
/// - what bk_length_read reads, the unit also in capitals or as `inch`, `inches`, `foot`, `feet`, `"` and `'`;
/// - a decimal comma (`92,5`), see bk_comma_typed;
/// - fractions, also as signs: `36 3/8`, `36-3/8`, `36⅜`, `½`. Of centimetres only halves and quarters: `92½`; a finer
///   fraction with no unit, where `unit` is BK_CM, is BK_READ_NO_UNIT;
/// - feet and inches: `5' 4"`, `5'4 1/2"`, `5 ft 4 in`, `5ft4`, and with the typographic marks `5′ 4″`; less than 12 inches;
/// - metres and centimetres: `1m64`, `1 m 64.5`, `1m05`, `1 m 4 cm`; two digits where no `cm` is written.
bk_reading bk_length_typed(const char *text, bk_unit unit, bk_length *length);

/// Reads a length of time as whole minutes, rounded half up: `45`, `90 min`, `1h30`, `1 h 30 min`, `1:30`, `1.5h`, `1,5 h`,
/// `2 h`. At most 1,000,000 minutes.
bool bk_minutes_typed(const char *text, int64_t *minutes);

/// Adds `text` to `out` with its decimal comma a point, where it can be nothing else: one comma, no point, and not exactly
/// three digits behind it (`1,250` may be a thousand) unless a lone zero stands before it (`0,125`). Other text is added as it
/// is; `out` is a string then, also when `text` is empty or NULL.
void bk_comma_typed(const char *text, bk_buffer *out);

/// Reads a quantity as bk_quantity_read does, also with a decimal comma as above.
bk_reading bk_quantity_typed(const char *text, bool below_zero, bk_quantity *quantity);

/// Reads an amount of money as bk_money_read does, also with a decimal comma as above.
bk_reading bk_money_typed(const char *text, const char *fallback, bk_money *money,
                          char currency[BK_CURRENCY_ROOM]);

#endif
