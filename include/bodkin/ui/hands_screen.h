#ifndef BODKIN_UI_HANDS_SCREEN_H
#define BODKIN_UI_HANDS_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Hands screen: the people of the workroom with their hours, who is away when, and the equipment they share.
extern const bk_screen_kind bk_hands_screen;

/// What it remembers, for bk_stack_push.
void *bk_hands_screen_new(void);

#endif
