#ifndef BODKIN_UI_DAYBOOK_SCREEN_H
#define BODKIN_UI_DAYBOOK_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Daybook screen: every change of this workroom, newest first, and the way to undo an older one.
extern const bk_screen_kind bk_daybook_screen;

/// What it remembers, for bk_stack_push.
void *bk_daybook_screen_new(void);

#endif
