#ifndef BODKIN_UI_BENCH_EMPTY_H
#define BODKIN_UI_BENCH_EMPTY_H

#include "bodkin/ui/wall.h"
#include "bodkin/work/forecast.h"

/// What is said where nothing can be done now by `person` (NULL: by anybody), and what it waits on, as far as the production shown
/// knows; a paragraph a line. In `arena`.
const char *bk_bench_empty(const bk_wall *wall, const bk_forecast *forecast, const bk_planned_person *person,
                           bk_arena *arena);

#endif
