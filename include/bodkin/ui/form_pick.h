#ifndef BODKIN_UI_FORM_PICK_H
#define BODKIN_UI_FORM_PICK_H

#include "bodkin/ui/form_fields.h"

/// The list to pick from below a form: what exists already, narrowed by what is typed, and behind it what makes a name that is
/// none yet. For the files of the form only.

/// Reads the choices of the field at hand and shows them all; none where it has no choices.
bk_status bk_form_pick_read(bk_form *form, bk_error *error) BK_MUST_USE;
/// Reads them again because something has changed in the store; what is chosen stays so.
bk_status bk_form_pick_again(bk_form *form, bk_error *error) BK_MUST_USE;
void bk_form_pick_free(bk_form_pick *pick);

/// Keeps what is told of the choice that stands in a field, for beside it.
void bk_form_pick_tell(bk_form *form, size_t field);

/// Narrows the list to what is typed in the field (in a list, in the item at the cursor), the nearest first. Where nothing but
/// what is in the list is right, the nearest is chosen; where nothing matches all are shown, and none is.
void bk_form_pick_narrow(bk_form *form);

/// What of the list is spelled nearly as `name`; NULL: nothing is. Good until the list is read again.
const char *bk_form_pick_nearest(const bk_form *form, const char *name);

/// Chooses what may have been meant by a name that is none (in a list the first one, where the cursor goes): the nearest, else
/// what makes it.
void bk_form_pick_offer(bk_form *form);

/// The form that makes what is typed, where that is chosen; NULL: it is not.
const bk_form_kind *bk_form_pick_makes(const bk_form *form);

/// Puts a text into the field, in a list for the item at the cursor.
void bk_form_pick_put(bk_form *form, const char *text);

/// Whether Down goes into the list: nothing is typed yet, or something is being typed.
bool bk_form_pick_opens(const bk_form *form);
/// An arrow or a page within the list; false where it leaves the list, or is not its own.
bool bk_form_pick_key(bk_form *form, bk_key_name name);
/// Puts what is chosen into the field, with `behind` after it; false where nothing is chosen.
bool bk_form_pick_take(bk_form *form, const char *behind);

/// What stands in the field and is not in its list, where it must be; NULL: nothing. In `arena`.
const char *bk_form_pick_unknown(const bk_form *form, bk_arena *arena);

#endif
