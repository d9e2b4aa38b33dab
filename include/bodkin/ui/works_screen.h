#ifndef BODKIN_UI_WORKS_SCREEN_H
#define BODKIN_UI_WORKS_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Orders of work screen: the reusable lists of steps of this workroom.
extern const bk_screen_kind bk_works_screen;

/// What it remembers, for bk_stack_push.
void *bk_works_screen_new(void);

#endif
