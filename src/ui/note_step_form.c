#include "bodkin/ui/note_step_form.h"

#include "bodkin/base/text.h"
#include "bodkin/sheet/columns.h"
#include "bodkin/store/bench_rows.h"
#include "bodkin/ui/form_choices.h"

typedef struct step_form {
    const char *piece;
    int kind;
    int64_t minutes;
    const char *before;
    int line;
} step_form;

enum { MOST_MINUTES = 100000 };

static const bk_column columns[] = {
    {.name = "piece",
     .required = true,
     .type = BK_CELL_NAME,
     .offset = offsetof(step_form, piece),
     .example = "4A-1"},
    {.name = "kind",
     .required = true,
     .type = BK_CELL_WORD,
     .offset = offsetof(step_form, kind),
     .example = "hand",
     .words = &bk_kind_words},
    {.name = "minutes",
     .required = true,
     .type = BK_CELL_WHOLE,
     .offset = offsetof(step_form, minutes),
     .example = "15",
     .unit = "minutes",
     .most = MOST_MINUTES},
    {.name = "before", .type = BK_CELL_NAME, .offset = offsetof(step_form, before), .example = "fit2"},
};

static const bk_sheet sheet = {
    .noun = "step",
    .columns = columns,
    .column_count = sizeof columns / sizeof columns[0],
    .record_size = sizeof(step_form),
    .line = offsetof(step_form, line),
};

static const bk_form_field fields[] = {
    {.column = "piece", .label = "piece", .help = "what is worked on", .choices = bk_choose_pieces},
    {.column = "kind", .label = "kind", .help = "which kind of work it is", .choices = bk_choose_kinds},
    {.column = "minutes", .label = "minutes", .help = "how long it usually takes"},
    {.column = "before",
     .label = "before",
     .help = "a step of the piece that comes after it, the next fitting say; empty: none",
     .choices = bk_choose_steps},
};

static int64_t piece_named(const bk_wall *wall, const char *name)
{
    for (size_t i = 0; wall->rail && i < wall->rail->rows.piece_count; i++)
        if (bk_same_text(wall->rail->pieces[i].name, name))
            return wall->rail->pieces[i].id;
    return 0;
}

static bk_status find_step(const bk_job *job, const step_form *step, bk_note_step *wanted,
                           bk_form_saved *saved, bk_error *error)
{
    if (!step->before)
        return BK_OK;
    bk_status status =
        bk_store_find_step(job->store, job->production, step->piece, step->before, &wanted->before_id, error);
    if (status || wanted->before_id)
        return status;
    saved->column = "before";
    return bk_fail(error, BK_REFUSED, "This piece has no such step; pick one of those it has, or none.");
}

static bk_status save(const bk_form *form, const bk_job *job, const void *filled, bk_form_saved *saved,
                      bk_error *error)
{
    const step_form *step = filled;
    bk_note_step wanted = {.note_id = bk_form_about(form),
                           .piece_id = piece_named(bk_form_wall(form), step->piece),
                           .kind = step->kind,
                           .minutes = step->minutes};
    saved->column = "piece";
    if (wanted.piece_id == 0)
        return bk_fail(error, BK_REFUSED, "There is no such piece in this production; pick one.");
    bk_status status = find_step(job, step, &wanted, saved, error);
    if (!status)
        status = bk_note_to_step(job, &wanted, NULL, &saved->sentence, error);
    saved->id = wanted.note_id;
    return status;
}

static const bk_form_kind kind = {
    .name = "Step from a note",
    .sheet = &sheet,
    .fields = fields,
    .field_count = sizeof fields / sizeof fields[0],
    .family = BK_NOTES,
    .save = save,
};

void bk_note_step_form_open(bk_screen *screen, const bk_note_line *note)
{
    bk_arena *arena = bk_arena_new();
    const step_form step = {.piece = note->record.piece, .kind = BK_HAND, .minutes = BK_NOTE_MINUTES};
    const bk_form_start start = {.record = &step,
                                 .about = note->record.id,
                                 .title = bk_arena_print(arena, "Step: %s", note->record.what),
                                 .first = note->record.piece ? "kind" : "piece"};
    bk_form_open(screen, &kind, &start);
    bk_arena_free(arena);
}
