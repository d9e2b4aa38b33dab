#ifndef BODKIN_UI_PLAN_DATES_H
#define BODKIN_UI_PLAN_DATES_H

#include "bodkin/ui/plan_days.h"

/// The named days of the production shown, up to its opening, and the openings of all productions of the forecast, in the order of the
/// trade's words; `rail` may be NULL. `*dates` in `arena`; returns how many.
size_t bk_plan_dates(const bk_rail *rail, const bk_forecast *forecast, bk_arena *arena,
                     const bk_plan_date **dates);

/// What a day is, whole: "dress of The Salt Road; opening of The Heron Toll"; NULL where it has no name.
const char *bk_plan_day_is(const bk_rail *rail, const bk_forecast *forecast, bk_day day, bk_arena *arena);

#endif
