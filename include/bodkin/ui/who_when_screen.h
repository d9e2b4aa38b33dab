#ifndef BODKIN_UI_WHO_WHEN_SCREEN_H
#define BODKIN_UI_WHO_WHEN_SCREEN_H

#include "bodkin/ui/screen.h"

/// Who and When: the days to the opening, a line each, and beside it what each person does in the plan and how much room there is.
extern const bk_screen_kind bk_who_when_screen;

/// What it remembers, for bk_stack_push.
void *bk_who_when_screen_new(void);

#endif
