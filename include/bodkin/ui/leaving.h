#ifndef BODKIN_UI_LEAVING_H
#define BODKIN_UI_LEAVING_H

#include "bodkin/ui/screen.h"

/// The question of every screen into which something is typed, when it is left before it is saved.

/// Asks on the bottom line: `y` takes the screen off, Ctrl-S calls `save` with it, every other key leaves it as it is. `back` tells
/// that ("back to the form") and is a constant of the caller. The screen must be the one on top.
void bk_leaving_ask(bk_screen *screen, const char *back, void (*save)(bk_screen *screen));

#endif
