#ifndef BODKIN_UI_HISTORY_FORMS_H
#define BODKIN_UI_HISTORY_FORMS_H

#include "bodkin/ui/history_view.h"

/// The forms of the Measures screen. For the files of that screen only.

/// Corrects the value under the cursor, or adds it where there is none.
void bk_history_open_value(bk_screen *screen);
/// Gives the sheet under the cursor another day.
void bk_history_open_day(bk_screen *screen);
/// Sets from which change on measures are marked.
void bk_history_open_limit(bk_screen *screen);

#endif
