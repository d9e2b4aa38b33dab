#include "bodkin/ui/form.h"

#include <ctype.h>
#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/form_conflict.h"
#include "bodkin/ui/form_draw.h"
#include "bodkin/ui/form_keys.h"
#include "bodkin/ui/form_make.h"
#include "bodkin/ui/form_pick.h"
#include "bodkin/ui/form_save.h"
#include "bodkin/ui/form_steps.h"
#include "bodkin/ui/stack.h"
#include "bodkin/work/record.h"

// ------------------------------------------------------------------------------------------------- the screen

static void close_form(bk_screen *screen)
{
    bk_form *form = screen->self;
    bk_form_pick_free(&form->pick);
    bk_form_values_free(form);
    free(form->said);
    bk_arena_free(form->arena);
    free(form);
}

static bk_status read_form(bk_screen *screen, bk_error *error)
{
    bk_form *form = screen->self;
    bool made = false;
    bk_status status = bk_form_look(form, error);
    if (!status)
        status = bk_form_make_return(form, &made, error);
    return status || made ? status : bk_form_pick_again(form, error);
}

static void draw(bk_screen *screen, const bk_paint *paint)
{
    bk_form *form = screen->self;
    if (form->mode == BK_FORM_NEWER && form->newer)
        bk_form_draw_conflict(form, paint);
    else
        bk_form_draw(form, paint);
}

static size_t draw_question(bk_screen *screen, const bk_paint *paint, bk_spot spot)
{
    static const char *const questions[] = {
        [BK_FORM_FILLING] = NULL,
        [BK_FORM_NEWER] = NULL,
        [BK_FORM_GONE] = "Another terminal has taken it away.",
    };
    const bk_form *form = screen->self;
    return bk_paint_text(paint, spot, BK_STYLE_BOLD, questions[form->mode]);
}

static const bk_screen_kind form_screen = {
    .name = "Form",
    .tables = bk_form_tables,
    .table_count = BK_FORM_TABLES,
    .close = close_form,
    .read = read_form,
    .draw = draw,
    .table = bk_form_table,
    .take = bk_form_take,
    .draw_bottom = draw_question,
};

// -------------------------------------------------------------------------------------------------- opening

// "New piece", or "Piece 4A-1": the name and what the record is known by.
static const char *usual_title(const bk_form *form)
{
    const bk_form_kind *kind = form->kind;
    char *name = bk_arena_text(form->arena, kind->name);
    if (kind->save)
        return name;
    const char *title = name;
    if (form->id == 0) {
        name[0] = (char)tolower((unsigned char)name[0]);
        return bk_arena_print(form->arena, "New %s", name);
    }
    bk_cell_style style = bk_form_style(form);
    const bk_column *first = kind->sheet->columns;
    bool named = first->type == BK_CELL_NAME || first->type == BK_CELL_WORD;
    size_t keys = kind->sheet->key_count > 0 ? kind->sheet->key_count : named;
    for (size_t i = 0; i < keys; i++) {
        bk_buffer key = {0};
        bk_cell_text(&key, &first[i], form->before, &style);
        title = bk_arena_print(form->arena, "%s %s", title, key.bytes);
        bk_buffer_free(&key);
    }
    return title;
}

// The record that is changed, or what a new one begins with; false where it is no longer there, which is then said.
static bool begin(bk_form *form, const bk_form_start *start)
{
    bk_error error;
    bool found = true;
    const bk_sheet *sheet = form->kind->sheet;
    bk_status status = BK_OK;
    form->before = bk_arena_take(form->arena, sheet->record_size);
    bk_sheet_clear(sheet, form->before);
    if (start->record)
        form->before = bk_form_record_copy(form, start->record);
    if (start->id != 0 && !form->kind->save) {
        bk_job job = bk_act_job(form->wall, form->arena);
        status = bk_record_read(&job, form->kind->family, start->id, form->before, &found, &error);
    }
    if (status)
        bk_wall_say(form->wall, "%s", error.text);
    else if (!found)
        bk_wall_say(form->wall, "It is no longer there; another terminal has taken it away.");
    return !status && found;
}

// Where the cursor begins: the field that is wanted, in what is new the first that is empty, else the first.
static size_t first_field(const bk_form *form, const char *wanted)
{
    size_t count = form->kind->field_count, first = wanted ? bk_form_find(form, wanted) : count;
    for (size_t i = 0; form->id == 0 && first == count && i < count; i++)
        if (bk_form_asked(form, i) && form->values[i].line.text.length == 0)
            first = i;
    if (first < count)
        return first;
    return bk_form_asked(form, 0) ? 0 : bk_form_next(form, 0, 1);
}

void bk_form_open(bk_screen *from, const bk_form_kind *kind, const bk_form_start *start)
{
    bk_form *form = bk_alloc_clear(1, sizeof *form);
    *form = (bk_form){.kind = kind,
                      .wall = from->wall,
                      .arena = bk_arena_new(),
                      .id = start->id,
                      .behind = start->behind,
                      .about = start->about,
                      .before_at = kind->field_count,
                      .text_columns = 1};
    if (!begin(form, start)) {
        bk_arena_free(form->arena);
        free(form);
        return;
    }
    form->title = start->title ? bk_arena_text(form->arena, start->title) : usual_title(form);
    bk_form_values_begin(form);
    bk_form_suggest(form);
    for (size_t i = 0; i < kind->field_count; i++)
        bk_form_pick_tell(form, i);
    bk_form_arrive(form, first_field(form, start->first));
    bk_stack_push(from->stack, &form_screen, form);
}

const bk_wall *bk_form_wall(const bk_form *form)
{
    return form->wall;
}

int64_t bk_form_about(const bk_form *form)
{
    return form->about;
}

int64_t bk_form_id(const bk_form *form)
{
    return form->id;
}
