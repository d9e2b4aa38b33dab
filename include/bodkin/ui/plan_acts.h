#ifndef BODKIN_UI_PLAN_ACTS_H
#define BODKIN_UI_PLAN_ACTS_H

#include "bodkin/ui/screen.h"
#include "bodkin/work/forecast.h"

/// What the screens that show the plan share. Texts live in the arena handed in, as the store has them.

/// The steps of a rail (may be NULL) that come right after the one with that id: "4A-2/fit, 4A-2/hem"; NULL where there are none, or
/// it is not of the rail.
const char *bk_plan_next_steps(const bk_rail *rail, int64_t step, bk_arena *arena);

/// What is said where there is no plan yet.
const char *bk_plan_missing_words(const bk_wall *wall, bk_arena *arena);

/// Opens the costume that a step is for, with the cursor on the step; where it is of another production than the one shown, that
/// one is shown from then on.
void bk_plan_open_costume(bk_screen *screen, const bk_planned_step *step);

#endif
