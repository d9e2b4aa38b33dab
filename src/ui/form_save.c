#include "bodkin/ui/form_save.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/form_pick.h"
#include "bodkin/ui/form_steps.h"
#include "bodkin/ui/stack.h"
#include "bodkin/work/record.h"

// The store's id is the first member of every record.
static void forget_id(void *record)
{
    const int64_t none = 0;
    memcpy(record, &none, sizeof none);
}

// ------------------------------------------------------------------------------------------ another terminal

// Notes how the record stands now; it is copied where it is another one than was noted before.
static void note(bk_form *form, const void *now)
{
    if (bk_form_same(form, form->before, now))
        form->newer = NULL;
    else if (!form->newer || !bk_form_same(form, form->newer, now))
        form->newer = bk_form_record_copy(form, now);
}

bk_status bk_form_look(bk_form *form, bk_error *error)
{
    if (form->id == 0 || form->kind->save)
        return BK_OK;
    bool found = false;
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(form->wall, arena);
    void *now = bk_arena_clear(arena, 1, form->kind->sheet->record_size);
    bk_status status = bk_record_read(&job, form->kind->family, form->id, now, &found, error);
    form->gone = !status ? !found : form->gone;
    if (!status && found)
        note(form, now);
    bk_arena_free(arena);
    return status;
}

const char *bk_form_changed_there(const bk_form *form, bk_arena *arena)
{
    const char *labels = "";
    for (size_t i = 0; form->newer && i < form->kind->field_count; i++)
        if (strcmp(bk_form_record_text(form, i, form->newer, arena), form->values[i].begun) != 0)
            labels =
                bk_arena_print(arena, "%s%s%s", labels, *labels ? ", " : "", form->kind->fields[i].label);
    return *labels ? labels : "what is not shown here";
}

// Their record is what the form changes from now on; the fields where nothing was typed, or all, show it.
static void take_over(bk_form *form, bool all)
{
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < form->kind->field_count; i++) {
        bk_form_value *value = &form->values[i];
        const char *theirs = bk_form_record_text(form, i, form->newer, arena);
        if (all || !bk_form_field_changed(form, i)) {
            bk_form_line_put(&value->line, theirs);
            value->typed = false;
            bk_form_keep(&value->wrong, NULL);
            bk_form_keep(&value->doubt, NULL);
            bk_form_keep(&value->tells, NULL);
        }
        bk_form_keep(&value->begun, theirs);
    }
    bk_arena_free(arena);
    form->before = form->newer;
    form->newer = NULL;
    form->mode = BK_FORM_FILLING;
}

void bk_form_take_theirs(bk_screen *screen)
{
    bk_form *form = screen->self;
    take_over(form, true);
    bk_form_arrive(form, form->at);
    bk_act_did(screen, BK_OK, NULL, NULL); // the screens below show theirs as well
    bk_wall_say(form->wall, "This is how it stands now; nothing of yours was saved.");
}

void bk_form_keep_mine(bk_screen *screen)
{
    take_over(screen->self, false);
    bk_form_save(screen);
}

void bk_form_save_as_new(bk_screen *screen)
{
    bk_form *form = screen->self;
    form->id = 0;
    form->gone = false;
    form->mode = BK_FORM_FILLING;
    forget_id(form->before);
    bk_form_save(screen);
}

// --------------------------------------------------------------------------------------------------- saving

static bk_status save_record(bk_form *form, const bk_job *job, const void *filled, bk_form_saved *saved,
                             bk_error *error)
{
    bk_record_saving saving = {
        .family = form->kind->family,
        .before = form->id != 0 ? form->before : NULL,
        .after = filled,
        .same = bk_form_same,
        .context = form,
        .behind = form->behind,
    };
    bk_record_saved done = {0};
    bk_status status = bk_record_save(job, &saving, &done, error);
    *saved = (bk_form_saved){.id = done.id, .sentence = done.sentence, .column = done.column};
    if (status)
        return status;
    bool other = done.newer && !bk_form_same(form, done.newer, filled); // else it stands so already
    form->newer = other ? bk_form_record_copy(form, done.newer) : NULL;
    form->gone = done.gone;
    form->mode = done.gone ? BK_FORM_GONE : other ? BK_FORM_NEWER : BK_FORM_FILLING;
    return BK_OK;
}

// What is refused is said where it belongs.
static void refused(bk_form *form, const char *column, const char *sentence)
{
    size_t field = column ? bk_form_find(form, column) : form->kind->field_count;
    if (field < form->kind->field_count && field != form->at && bk_form_asked(form, field))
        bk_form_go(form, field);
    bk_form_keep(&form->said, sentence);
}

// A production that is shown may have another name now.
static void show_renamed(bk_form *form, const void *filled)
{
    bk_error error;
    bk_wall *wall = form->wall;
    if (form->kind->save || form->kind->family != BK_PRODUCTIONS || !wall->rail ||
        wall->rail->production.id != form->id)
        return;
    if (bk_wall_show(wall, ((const bk_production *)filled)->name, &error))
        bk_wall_say(wall, "%s", error.text);
}

static void saved_well(bk_screen *screen, const bk_form_saved *saved, const void *filled)
{
    bk_form *form = screen->self;
    bk_wall *wall = form->wall;
    show_renamed(form, filled);
    wall->saved_family = form->kind->family;
    wall->saved_id = saved->id;
    if (form->kind->apart)
        bk_stack_stale(screen->stack);
    else
        bk_act_did(screen, BK_OK, saved->sentence, NULL);
    if (!saved->sentence)
        bk_wall_say(wall, "Nothing was changed.");
    else if (form->kind->apart)
        bk_wall_say(wall, "%s", bk_text_safe(form->arena, saved->sentence, wall->ascii));
    bk_stack_pop(screen->stack);
}

// The first field in which something is wrong, or the kind's field_count.
static size_t first_wrong(bk_form *form)
{
    for (size_t i = 0; i < form->kind->field_count; i++) {
        if (!bk_form_asked(form, i))
            continue;
        bk_form_check(form, i);
        if (form->values[i].wrong)
            return i;
    }
    return form->kind->field_count;
}

void bk_form_save(bk_screen *screen)
{
    bk_form *form = screen->self;
    bk_form_pick_take(form, "");
    bk_form_leave(form);
    size_t wrong = first_wrong(form);
    if (wrong < form->kind->field_count) {
        bk_form_arrive(form, wrong);
        return;
    }
    bk_error error;
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(form->wall, arena);
    bk_form_saved saved = {0};
    const void *filled = bk_form_filled(form, arena);
    bk_status status = form->kind->save ? form->kind->save(form, &job, filled, &saved, &error)
                                        : save_record(form, &job, filled, &saved, &error);
    if (status)
        refused(form, saved.column, error.text);
    else if (form->mode == BK_FORM_FILLING)
        saved_well(screen, &saved, filled);
    bk_arena_free(arena);
}
