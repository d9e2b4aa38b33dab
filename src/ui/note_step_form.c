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
    const char *costume; // that the note is about; is not asked
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
    {.name = "costume", .type = BK_CELL_NAME, .offset = offsetof(step_form, costume), .example = "4A"},
};

static const bk_sheet sheet = BK_FORM_SHEET(step_form, columns, "step");

// The pieces of a costume (its number; NULL: none), as indices into those of the rail.
static bk_indices pieces_of(const bk_wall *wall, const char *number)
{
    const bk_rail_costume *costume = bk_wall_costume(wall, number);
    return costume ? wall->rail->rows.costumes[costume->index].pieces : (bk_indices){NULL, 0};
}

static bool is_among(const bk_wall *wall, bk_indices pieces, const char *name)
{
    for (size_t i = 0; i < pieces.count; i++)
        if (bk_same_text(wall->rail->pieces[pieces.items[i]].name, name))
            return true;
    return false;
}

// Those of the costume that the note is about come first.
static bk_status choose_pieces(const bk_form *form, bk_arena *arena, bk_form_choices *choices,
                               bk_error *error)
{
    bk_form_choices all = {0};
    const bk_wall *wall = bk_form_wall(form);
    bk_indices own = pieces_of(wall, bk_form_text(form, "costume"));
    bk_status status = bk_choose_pieces(form, arena, &all, error);
    bk_form_choice *items = bk_arena_clear(arena, all.count, sizeof *items);
    size_t count = 0;
    for (int others = 0; others <= 1; others++)
        for (size_t i = 0; i < all.count; i++)
            if (is_among(wall, own, all.items[i].text) == (others == 0))
                items[count++] = all.items[i];
    *choices = (bk_form_choices){items, count};
    return status;
}

static bool never(const bk_form *form)
{
    (void)form;
    return false;
}

static const bk_form_field fields[] = {
    {.column = "piece", .label = "piece", .help = "what is worked on", .choices = choose_pieces},
    {.column = "kind", .label = "kind", .help = "which kind of work it is", .choices = bk_choose_kinds},
    {.column = "minutes", .label = "minutes", .help = "how long it usually takes"},
    {.column = "before",
     .label = "before",
     .help = "a step of the piece that comes after it, the next fitting say; empty: none",
     .choices = bk_choose_steps},
    {.column = "costume", .label = "costume", .help = "what the note is about", .asked = never},
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

// The piece that the note names, or the only one of the costume that it is about; NULL: it is asked.
static const char *piece_meant(const bk_wall *wall, const bk_note *note)
{
    bk_indices pieces = pieces_of(wall, note->costume);
    if (note->piece)
        return note->piece;
    return pieces.count == 1 ? wall->rail->pieces[pieces.items[0]].name : NULL;
}

void bk_note_step_form_open(bk_screen *screen, const bk_note_line *note)
{
    bk_arena *arena = bk_arena_new();
    const step_form step = {.piece = piece_meant(screen->wall, &note->record),
                            .kind = BK_HAND,
                            .minutes = BK_NOTE_MINUTES,
                            .costume = note->record.costume};
    const bk_form_start start = {.record = &step,
                                 .about = note->record.id,
                                 .title = bk_arena_print(arena, "Step: %s", note->record.what),
                                 .first = step.piece ? "kind" : "piece"};
    bk_form_open(screen, &kind, &start);
    bk_arena_free(arena);
}
