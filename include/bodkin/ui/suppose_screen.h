#ifndef BODKIN_UI_SUPPOSE_SCREEN_H
#define BODKIN_UI_SUPPOSE_SCREEN_H

#include "bodkin/ui/screen.h"

/// The screen Suppose: what would come of a helper's evening, another date, another due day, a costume less. What is supposed is the
/// wall's and stays there until it is kept or forgotten; the store is changed by keeping alone.
extern const bk_screen_kind bk_suppose_screen;

/// What it remembers, for bk_stack_push.
void *bk_suppose_screen_new(void);

#endif
