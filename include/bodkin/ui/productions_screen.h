#ifndef BODKIN_UI_PRODUCTIONS_SCREEN_H
#define BODKIN_UI_PRODUCTIONS_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Productions screen: all of the workroom with their openings; where there is none, how to begin.
extern const bk_screen_kind bk_productions_screen;

/// What it remembers, for bk_stack_push.
void *bk_productions_screen_new(void);

#endif
