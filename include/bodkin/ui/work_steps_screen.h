#ifndef BODKIN_UI_WORK_STEPS_SCREEN_H
#define BODKIN_UI_WORK_STEPS_SCREEN_H

#include <stdint.h>

#include "bodkin/ui/screen.h"

/// The screen of one order of work: its steps.
extern const bk_screen_kind bk_work_steps_screen;

/// What it remembers, for bk_stack_push: the order of work's id.
void *bk_work_steps_screen_new(int64_t work);

#endif
