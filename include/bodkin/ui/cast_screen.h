#ifndef BODKIN_UI_CAST_SCREEN_H
#define BODKIN_UI_CAST_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Cast screen: who performs in the production that is shown, what they play and cover and how far they are measured, and
/// below them its roles.
extern const bk_screen_kind bk_cast_screen;

/// What it remembers, for bk_stack_push.
void *bk_cast_screen_new(void);

#endif
