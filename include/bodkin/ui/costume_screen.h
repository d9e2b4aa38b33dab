#ifndef BODKIN_UI_COSTUME_SCREEN_H
#define BODKIN_UI_COSTUME_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Costume screen: one costume of the wall's rail, its pieces, their steps in order, and what each waits on.
extern const bk_screen_kind bk_costume_screen;

/// What it remembers, for bk_stack_push: the costume's number.
void *bk_costume_screen_new(const char *number);

#endif
