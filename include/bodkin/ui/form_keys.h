#ifndef BODKIN_UI_FORM_KEYS_H
#define BODKIN_UI_FORM_KEYS_H

#include "bodkin/ui/form_fields.h"

/// The keys of a form. For the files of the form only.

/// Tables by bk_form_mode, and one more while something of the list is chosen.
enum { BK_FORM_PICKING = BK_FORM_GONE + 1, BK_FORM_TABLES };
extern const bk_key_table bk_form_tables[BK_FORM_TABLES];

/// Operations of the form's screen.
size_t bk_form_table(const bk_screen *screen);
bool bk_form_take(bk_screen *screen, const bk_key *key);

#endif
