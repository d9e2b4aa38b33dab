#include "bodkin/ui/form_steps.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/form_pick.h"

enum { NAME_SHOWN = 30 };

// What is told of a name that is none yet: the nearest, and how to make it.
static const char *unknown_words(const bk_form *form, const char *unknown, bk_arena *arena)
{
    const bk_form_kind *makes = form->kind->fields[form->at].makes[0];
    const char *name = bk_text_cut(arena, unknown, NAME_SHOWN, form->wall->ascii);
    const char *nearest = bk_form_pick_nearest(form, unknown);
    const char *near = nearest ? bk_arena_print(arena, "; the nearest is \"%s\"", nearest) : "";
    if (!makes)
        return bk_arena_print(arena, "There is no \"%s\" to pick%s. Choose one of the list.", name, near);
    return bk_arena_print(arena, "There is no %s \"%s\" yet%s. Pick one of the list, or make it there.",
                          makes->sheet->noun, name, near);
}

void bk_form_look_at(bk_form *form)
{
    bk_form_value *value = &form->values[form->at];
    bk_arena *arena = bk_arena_new();
    bk_form_check(form, form->at);
    const char *unknown = bk_form_pick_unknown(form, arena);
    if (unknown)
        bk_form_keep(&value->wrong, unknown_words(form, unknown, arena));
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
    bk_form_look_at(form);
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
    value->told = false;
    if (value->wrong || value->doubt)
        bk_form_look_at(form);
}
