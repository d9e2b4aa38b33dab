#ifndef BODKIN_UI_FORM_PICK_DRAW_H
#define BODKIN_UI_FORM_PICK_DRAW_H

#include "bodkin/ui/form_fields.h"
#include "bodkin/ui/paint.h"

/// How the list to pick from looks. For the files of the form only.

/// Draws it in the rows from `row` to below `end`, its texts from `column` on, or further to the left where they need the room.
void bk_form_pick_draw(bk_form *form, const bk_paint *paint, size_t row, size_t end, size_t column);

/// What is chosen of the list that begins at `column` and told of it, where its row is too short for that; NULL: it is not. In the
/// arena of the picture.
const char *bk_form_pick_whole(const bk_form *form, const bk_paint *paint, size_t column);

#endif
