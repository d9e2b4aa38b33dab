#ifndef BODKIN_UI_FORM_STEPS_H
#define BODKIN_UI_FORM_STEPS_H

#include "bodkin/ui/form_fields.h"

/// Going from field to field. For the files of the form only.

/// The cursor comes to a field: its list is read.
void bk_form_arrive(bk_form *form, size_t field);
/// Looks at the field at hand anew: what is wrong with it or doubtful, and whether what it names is there.
void bk_form_look_at(bk_form *form);
/// The field at hand is left: what is understood takes the place of what was typed, and it is looked at.
void bk_form_leave(bk_form *form);
/// Leaves the one at hand for another.
void bk_form_go(bk_form *form, size_t field);
/// What was typed has changed: the list is narrowed, and what was wrong is looked at again.
void bk_form_typed(bk_form *form);

#endif
