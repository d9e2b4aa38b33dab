#ifndef BODKIN_UI_FORM_MAKE_H
#define BODKIN_UI_FORM_MAKE_H

#include "bodkin/ui/form_fields.h"

/// Making what is named in a form and is not there yet, without leaving the form. For the files of the form only.

/// Opens the form of what is chosen to be made on top, with its name filled in; false where nothing is.
bool bk_form_make(bk_screen *screen);

/// Where that form was saved: its name is put into the field, and the cursor stands there. `*made` tells whether it was.
bk_status bk_form_make_return(bk_form *form, bool *made, bk_error *error) BK_MUST_USE;

#endif
