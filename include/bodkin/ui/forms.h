#ifndef BODKIN_UI_FORMS_H
#define BODKIN_UI_FORMS_H

#include "bodkin/ui/form.h"

/// The forms of records as tables; bk_form_of gives them by family.

extern const bk_form_kind bk_production_form, bk_date_form, bk_role_form, bk_costume_form;
extern const bk_form_kind bk_person_form, bk_away_form, bk_performer_form, bk_equipment_form;
extern const bk_form_kind bk_piece_form, bk_step_form, bk_need_form, bk_work_form, bk_work_step_form;
extern const bk_form_kind bk_material_form, bk_order_form, bk_fitting_form, bk_note_form;

#define BK_RECORD_FORM(title, rows, records, table) \
    { \
        .name = title, .sheet = &bk_sheets[rows], .fields = table, \
        .field_count = sizeof(table) / sizeof *(table), .family = records \
    }

#endif
