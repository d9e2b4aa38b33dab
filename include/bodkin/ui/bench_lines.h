#ifndef BODKIN_UI_BENCH_LINES_H
#define BODKIN_UI_BENCH_LINES_H

#include "bodkin/ui/clock_line.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/tick_line.h"
#include "bodkin/work/bench_list.h"

/// The lines of the Bench: what one person, or everybody, can do now. For the Bench screen only.

typedef struct bk_bench_view {
    bk_ledger_kind kind; ///< what is said of an empty bench changes with the person
    char *person;        ///< owned; NULL: everybody
    bool begun;          ///< somebody was chosen, by the name of who is at this terminal or by hand
    int64_t minutes;     ///< that there are; 0: not asked
    bk_query typed;      ///< of the minutes, while they are asked for
    bool typing;
    bk_tick_line tick;
    bk_clock_line clock;
} bk_bench_view;

enum { BK_BENCH_COLUMNS = 7 };
extern const bk_list_column bk_bench_columns[BK_BENCH_COLUMNS];

/// Fills a ledger whose `own` is a bk_bench_view. The id of a line is its step's.
bk_status bk_bench_fill(bk_screen *screen, bk_ledger *ledger, bk_error *error);

/// All that is told of a line: its detail as it was filled in, where the piece is and what is noted of the step. In `arena`.
const char *bk_bench_detail(const bk_screen *screen, const bk_ledger_line *line, bk_arena *arena);

/// Pure, for tests: what is best done together with line `at`: "the same red wool as 3A-1 and 3B-2: cut together"; NULL: nothing.
const char *bk_bench_together(const bk_bench_list *list, size_t at, bk_arena *arena);

/// Pure: "12 steps can be done now, 4 of them in 30 min".
const char *bk_bench_summary(size_t count, size_t fitting, int64_t minutes, bk_arena *arena);

#endif
