#ifndef BODKIN_UI_RAIL_SCREEN_H
#define BODKIN_UI_RAIL_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Rail screen: every costume of the production that the wall shows, one line each.
extern const bk_screen_kind bk_rail_screen;

/// What it remembers, for bk_stack_push.
void *bk_rail_screen_new(void);

/// The number of the costume under its cursor; empty: none was yet.
const char *bk_rail_screen_number(const bk_screen *screen);

#endif
