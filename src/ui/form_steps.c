#include "bodkin/ui/form_steps.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/form_pick.h"

static void look_at(bk_form *form)
{
    bk_form_value *value = &form->values[form->at];
    bk_arena *arena = bk_arena_new();
    bk_form_check(form, form->at);
    const char *unknown = value->wrong ? NULL : bk_form_pick_unknown(form, arena);
    if (unknown)
        bk_form_keep(&value->wrong,
                     bk_arena_print(arena, "There is no %s to pick; choose one of the list",
                                    bk_arena_print(arena, "\"%s\"", bk_text_cut(arena, unknown, 30, false))));
    bk_arena_free(arena);
}

void bk_form_arrive(bk_form *form, size_t field)
{
    bk_error error;
    bk_form_value *value = &form->values[field];
    form->at = field;
    value->arrived = true;
    value->told = false;
    value->line.at = value->line.text.length;
    if (bk_form_pick_read(form, &error))
        bk_wall_say(form->wall, "%s", error.text);
}

void bk_form_leave(bk_form *form)
{
    bk_form_value *value = &form->values[form->at];
    bk_arena *arena = bk_arena_new();
    look_at(form);
    if (!value->wrong && value->typed)
        bk_form_line_put(&value->line, bk_form_understood(form, form->at, arena));
    bk_arena_free(arena);
    if (!value->tells)
        bk_form_pick_tell(form, form->at);
    bk_form_suggest(form);
    form->before_at = form->at;
}

void bk_form_go(bk_form *form, size_t field)
{
    bk_form_leave(form);
    bk_form_arrive(form, field);
}

void bk_form_typed(bk_form *form)
{
    bk_form_value *value = &form->values[form->at];
    value->typed = true;
    value->arrived = false;
    bk_form_keep(&value->tells, NULL);
    form->before_at = form->kind->field_count;
    bk_form_pick_narrow(form);
    if (value->wrong || value->doubt)
        look_at(form);
}
