#ifndef BODKIN_UI_MEASURING_SCREEN_H
#define BODKIN_UI_MEASURING_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Measuring screen: a new sheet of a performer, taken in one pass.

/// Lays it on top of a screen, for a performer (its id). For the maker; others are told so.
void bk_measuring_open(bk_screen *from, int64_t performer);

#endif
