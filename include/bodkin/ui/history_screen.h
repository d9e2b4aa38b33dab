#ifndef BODKIN_UI_HISTORY_SCREEN_H
#define BODKIN_UI_HISTORY_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Measures screen of one performer (its id): a column for each measure sheet, the newest first.
extern const bk_screen_kind bk_history_screen;

/// What it remembers, for bk_stack_push.
void *bk_history_screen_new(int64_t performer);

#endif
