#ifndef BODKIN_UI_FORM_DRAW_H
#define BODKIN_UI_FORM_DRAW_H

#include "bodkin/ui/form_fields.h"
#include "bodkin/ui/paint.h"

/// How a form looks: head, fields, what is to be said of the field at hand, and its list. For the files of the form only.
void bk_form_draw(bk_form *form, const bk_paint *paint);

/// The head alone: what is filled in, and of which production.
void bk_form_draw_head(const bk_form *form, const bk_paint *paint);

#endif
