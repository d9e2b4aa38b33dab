#ifndef BODKIN_UI_MEASURING_SAVE_H
#define BODKIN_UI_MEASURING_SAVE_H

#include "bodkin/ui/measuring_lines.h"
#include "bodkin/ui/screen.h"

/// The end of a sheet. For the files of the Measuring screen only; `self` of the screen is a bk_measuring.

/// Looks through the whole sheet: goes to what is no length, shows what is doubtful and asks, or where nothing is, saves.
void bk_measuring_finish(bk_screen *screen);

/// Saves what is typed and takes the screen away; what is refused is said and everything stays.
void bk_measuring_save(bk_screen *screen);

#endif
