#include "bodkin/ui/forms.h"

const bk_form_kind *bk_form_of(bk_family family)
{
    static const bk_form_kind *const forms[BK_FAMILIES] = {
        [BK_PRODUCTIONS] = &bk_production_form,
        [BK_DATES] = &bk_date_form,
        [BK_PEOPLE] = &bk_person_form,
        [BK_AWAYS] = &bk_away_form,
        [BK_PERFORMERS] = &bk_performer_form,
        [BK_COMPANY_PERFORMERS] = &bk_performer_form,
        [BK_ROLES] = &bk_role_form,
        [BK_COSTUMES] = &bk_costume_form,
        [BK_PIECES] = &bk_piece_form,
        [BK_STEPS] = &bk_step_form,
        [BK_NEEDS] = &bk_need_form,
        [BK_MATERIALS] = &bk_material_form,
        [BK_ORDERS] = &bk_order_form,
        [BK_FITTINGS] = &bk_fitting_form,
        [BK_WORKS] = &bk_work_form,
        [BK_WORK_STEPS] = &bk_work_step_form,
        [BK_EQUIPMENT] = &bk_equipment_form,
        [BK_NOTES] = &bk_note_form,
    };
    return family < BK_FAMILIES ? forms[family] : NULL;
}
