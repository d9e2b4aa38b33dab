#ifndef BODKIN_UI_FORM_SUGGEST_H
#define BODKIN_UI_FORM_SUGGEST_H

#include "bodkin/ui/form.h"

/// What fields of new records suggest, see bk_form_field.

typedef const char *bk_form_suggests(const bk_form *form, bk_arena *arena);

bk_form_suggests bk_suggest_today;
bk_form_suggests bk_suggest_unit;     ///< that of the production shown
bk_form_suggests bk_suggest_currency; ///< the same
bk_form_suggests bk_suggest_costume;  ///< the next number of the role in the field `role`
bk_form_suggests bk_suggest_piece;    ///< the next key of the first costume in the field `costumes`
bk_form_suggests bk_suggest_key; ///< a key made of the field `title`, free in the piece in the field `piece`
bk_form_suggests bk_suggest_work_key; ///< the same in the order of work in the field `work`
bk_form_suggests bk_suggest_minutes;  ///< the usual ones of the kind in the field `kind`
bk_form_suggests bk_suggest_same_day; ///< the day in the field `from`
bk_form_suggests bk_suggest_fit_step; ///< the only step of kind fit that the piece has
bk_form_suggests bk_suggest_supplier; ///< that of the material in the field `material`

/// What a quantity is counted in, as it is told beside it: "m", "pieces"; NULL for BK_NO_WORD. `unit` of bk_material_unit_words.
const char *bk_form_unit_words(int unit);
bk_form_suggests bk_unit_of_material; ///< that of the material in the field `material`
bk_form_suggests bk_unit_in_form;     ///< that in the field `unit`

#endif
