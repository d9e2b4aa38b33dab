#ifndef BODKIN_UI_FORM_CONFLICT_H
#define BODKIN_UI_FORM_CONFLICT_H

#include "bodkin/ui/form_fields.h"
#include "bodkin/ui/paint.h"

/// What stands in a form beside what another terminal has made of its record. For the files of the form only.
void bk_form_draw_conflict(const bk_form *form, const bk_paint *paint);

#endif
