#ifndef BODKIN_UI_NOTES_SCREEN_H
#define BODKIN_UI_NOTES_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Notes screen: what was noted at rehearsals, fittings, the parade ..., open ones first.
extern const bk_screen_kind bk_notes_screen;

/// What it remembers, for bk_stack_push.
void *bk_notes_screen_new(void);

#endif
