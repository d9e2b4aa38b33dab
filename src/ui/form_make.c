#include "bodkin/ui/form_make.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/form_pick.h"
#include "bodkin/ui/form_steps.h"
#include "bodkin/work/record.h"

// The first column of a sheet is the name by which other records know its record.
static const bk_column *name_of(const bk_form_kind *kind)
{
    return &kind->sheet->columns[0];
}

bool bk_form_make(bk_screen *screen)
{
    bk_form *form = screen->self;
    const bk_form_kind *kind = bk_form_pick_makes(form);
    if (!kind)
        return false;
    bk_arena *arena = bk_arena_new();
    void *record = bk_arena_clear(arena, 1, kind->sheet->record_size);
    bk_sheet_clear(kind->sheet, record);
    memcpy((char *)record + name_of(kind)->offset, &form->pick.name, sizeof form->pick.name);
    form->making = kind;
    bk_form_open(screen, kind, &(bk_form_start){.record = record});
    bk_arena_free(arena);
    return true;
}

bk_status bk_form_make_return(bk_form *form, bool *made, bk_error *error)
{
    const bk_form_kind *kind = form->making;
    *made = false;
    if (!kind || form->wall->saved_id == 0 || form->wall->saved_family != kind->family)
        return BK_OK;
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(form->wall, arena);
    void *record = bk_arena_clear(arena, 1, kind->sheet->record_size);
    bk_status status = bk_record_read(&job, kind->family, form->wall->saved_id, record, made, error);
    form->making = NULL;
    if (!status && *made) {
        bk_form_pick_put(form, bk_sheet_text(record, name_of(kind)->offset));
        bk_form_arrive(form, form->at);
        bk_form_look_at(form);
        bk_form_pick_tell(form, form->at);
    }
    bk_arena_free(arena);
    return status;
}
