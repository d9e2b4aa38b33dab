#ifndef BODKIN_UI_PLANNED_DAY_SCREEN_H
#define BODKIN_UI_PLANNED_DAY_SCREEN_H

#include "bodkin/ui/screen.h"

/// A day of the plan: under each person's name what is done, and when. It lies on Who and When.
extern const bk_screen_kind bk_planned_day_screen;

/// What it remembers, for bk_stack_push.
void *bk_planned_day_screen_new(bk_day day);

#endif
