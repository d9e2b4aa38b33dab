#ifndef BODKIN_UI_KEYS_SCREEN_H
#define BODKIN_UI_KEYS_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Keys screen: every key of the screen beneath it and what it does, from that screen's own tables.
extern const bk_screen_kind bk_keys_screen;

/// What it remembers, for bk_stack_push: the keys of which kind of screen.
void *bk_keys_screen_new(const bk_screen_kind *of);

#endif
