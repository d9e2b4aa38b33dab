#ifndef BODKIN_UI_FORM_CHOICES_H
#define BODKIN_UI_FORM_CHOICES_H

#include "bodkin/ui/form.h"

/// What can be picked in forms, see bk_form_field: what exists already in the workroom and in the production shown.

typedef bk_status bk_form_choices_of(const bk_form *form, bk_arena *arena, bk_form_choices *choices,
                                     bk_error *error);

bk_form_choices_of bk_choose_performers;
bk_form_choices_of bk_choose_people;
bk_form_choices_of bk_choose_everybody; ///< people and performers
bk_form_choices_of bk_choose_roles;
bk_form_choices_of bk_choose_costumes;
bk_form_choices_of bk_choose_pieces;
bk_form_choices_of bk_choose_steps;     ///< of the piece in the form's field `piece`
bk_form_choices_of bk_choose_fit_steps; ///< of kind fit
bk_form_choices_of bk_choose_earlier;   ///< steps of that piece, then those of others
bk_form_choices_of bk_choose_materials;
bk_form_choices_of bk_choose_works;
bk_form_choices_of bk_choose_work_steps; ///< of the order of work in the form's field `work`
bk_form_choices_of bk_choose_measures;
bk_form_choices_of bk_choose_places;
bk_form_choices_of bk_choose_suppliers;

// Words of the trade, each with what it means.
bk_form_choices_of bk_choose_kinds;
bk_form_choices_of bk_choose_origins;
bk_form_choices_of bk_choose_outcomes;
bk_form_choices_of bk_choose_occasions;
bk_form_choices_of bk_choose_sources;
bk_form_choices_of bk_choose_material_units;
bk_form_choices_of bk_choose_units;
bk_form_choices_of bk_choose_levels;
bk_form_choices_of bk_choose_yes;

#endif
