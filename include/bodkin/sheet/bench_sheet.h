#ifndef BODKIN_SHEET_BENCH_SHEET_H
#define BODKIN_SHEET_BENCH_SHEET_H

#include "bodkin/base/text.h"
#include "bodkin/work/bench_list.h"

/// The bench outside the screens. `minutes` is what was asked for, 0 or less: nothing.

/// For people: at most 80 columns, no escape codes, names made safe; plain ASCII when asked. Appended to `out`.
void bk_bench_text(const bk_forecast *forecast, const bk_bench_list *list, int64_t minutes, bool ascii,
                   bk_buffer *out);

/// One JSON object: `today`, `person` (null: everybody), `free_until` (a time; null: no hours today, or everybody), `minutes` (those
/// asked for, or null), and `steps`, best first, each with `production`, `piece`, `step`, `title`, `kind`, `costume`, `role` (both
/// null where it is worn with none), `minutes`, `fits`, `due`, `days_left`, `behind` (minutes), `latest` (a moment, or null), `why`
/// (running late tight planned others time can_wait), `says` (the same as a sentence), `together` (the number of its group, or null),
/// `material` (what the group shares, or null) and `running` (minutes its clock ran, or null). Appended to `out`.
void bk_bench_json(const bk_forecast *forecast, const bk_bench_list *list, int64_t minutes, bk_buffer *out);

#endif
