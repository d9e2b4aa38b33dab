#ifndef BODKIN_UI_FORM_SAVE_H
#define BODKIN_UI_FORM_SAVE_H

#include "bodkin/ui/form_fields.h"

/// Saving a form, and what is asked where another terminal was faster. For the files of the form only.

/// Saves what stands in the form and takes the form off; where something is wrong the cursor goes there.
void bk_form_save(bk_screen *screen);

/// Reads the record again and notes what another terminal has made of it.
bk_status bk_form_look(bk_form *form, bk_error *error) BK_MUST_USE;

/// Answers to what is asked then: what was typed is saved over theirs, what they changed elsewhere kept; or theirs takes its
/// place in the form.
void bk_form_keep_mine(bk_screen *screen);
void bk_form_take_theirs(bk_screen *screen);
/// A record that is gone is saved as a new one.
void bk_form_save_as_new(bk_screen *screen);

/// Labels of the fields that another terminal has changed, with commas between them; in `arena`.
const char *bk_form_changed_there(const bk_form *form, bk_arena *arena);

#endif
