#ifndef BODKIN_UI_SUPPOSE_FORMS_H
#define BODKIN_UI_SUPPOSE_FORMS_H

#include "bodkin/ui/screen.h"

/// The forms in which something is supposed. Saved, it is put into the wall's list, and nothing of the store is changed.

/// Opens the form of that sort. `number`: of the costume that it begins with; NULL: none.
void bk_suppose_open_new(bk_screen *from, bk_supposing what, const char *number);

/// Opens the form of number `at` of the wall's list.
void bk_suppose_open(bk_screen *from, size_t at);

#endif
