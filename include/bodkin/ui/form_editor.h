#ifndef BODKIN_UI_FORM_EDITOR_H
#define BODKIN_UI_FORM_EDITOR_H

#include "bodkin/ui/form_fields.h"

/// Hands the text of the field at hand to the person's own editor and takes it back; whatever goes wrong, what stands in the
/// field stays there. For the files of the form only.
void bk_form_edit(bk_form *form);

#endif
