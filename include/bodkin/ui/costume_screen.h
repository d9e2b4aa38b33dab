#ifndef BODKIN_UI_COSTUME_SCREEN_H
#define BODKIN_UI_COSTUME_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Costume screen: one costume of the wall's rail, its pieces, their steps in order with what they need, and what each
/// waits on.
extern const bk_screen_kind bk_costume_screen;

/// What it remembers, for bk_stack_push: the costume's number.
void *bk_costume_screen_new(const char *number);

/// The same, with the cursor on one of its records: BK_COSTUMES, BK_PIECES, BK_STEPS or BK_NEEDS.
void *bk_costume_screen_at(const char *number, bk_family family, int64_t id);

#endif
