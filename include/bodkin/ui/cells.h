#ifndef BODKIN_UI_CELLS_H
#define BODKIN_UI_CELLS_H

#include <stdint.h>

#include "bodkin/base/arena.h"
#include "bodkin/base/date.h"

/// Words for the cells of lists; they live in the arena handed in.

const char *bk_cell_minutes(int64_t minutes, bk_arena *arena);      ///< "1 h 20"
const char *bk_cell_day(bk_day day, bk_day today, bk_arena *arena); ///< "Tue 9 Mar"; NULL for BK_NO_DAY
const char *bk_cell_time(bk_minute time, bk_arena *arena);          ///< "14:30"; NULL for BK_NO_TIME

/// "cut, machine" of "cut;machine"; NULL for NULL and for a list of nothing.
const char *bk_cell_list(const char *list, bk_arena *arena);

/// Both with `joint` between them; only the one that is not empty where the other is.
const char *bk_cell_joined(bk_arena *arena, const char *before, const char *joint, const char *more);

/// "5 min to 20 min"; NULL where both are the same.
const char *bk_cell_range(int64_t quickest, int64_t longest, bk_arena *arena);

#endif
