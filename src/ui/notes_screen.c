#include "bodkin/ui/notes_screen.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/note_step_form.h"
#include "bodkin/work/notes.h"

enum { DETAIL_ROWS = 4 };

enum cell { SOURCE, WHO, ABOUT, WHAT, CELLS };

static const bk_list_column columns[CELLS] = {
    [SOURCE] = {.head = "From", .least = 9, .most = 9, .gap = 2},
    [WHO] = {.head = "Who", .least = 6, .most = 16, .gap = 2},
    [ABOUT] = {.head = "About", .least = 6, .most = 20, .gap = 2},
    [WHAT] = {.head = "What", .least = 30, .most = 200, .fills = true},
};

// The notes of a reading as they are shown: open ones newest day first, then those done with.
typedef struct own {
    bk_note_line *notes; // in the ledger's arena
    size_t count;
} own;

// ------------------------------------------------------------------------------------------------- its lines

// The step that was made of it is done: nothing of the note is left to do.
static bool is_done_with_step(const bk_note_line *note)
{
    return note->record.done_on == BK_NO_DAY && note->became_step && note->step_done;
}

static bool is_done(const bk_note_line *note)
{
    return note->record.done_on != BK_NO_DAY || is_done_with_step(note);
}

// Open ones first; of each, the newest day first, and within a day in the order of the list.
static int in_order(const void *left, const void *right)
{
    const bk_note_line *one = left, *other = right;
    if (is_done(one) != is_done(other))
        return is_done(one) ? 1 : -1;
    if (one->record.noted_on != other->record.noted_on)
        return one->record.noted_on < other->record.noted_on ? 1 : -1;
    return (one->record.line > other->record.line) - (one->record.line < other->record.line);
}

static void keep_in_order(own *self, const bk_note_list *list, bk_arena *arena)
{
    self->count = list->count;
    self->notes = bk_arena_clear(arena, list->count, sizeof *self->notes);
    for (size_t i = 0; i < list->count; i++) {
        self->notes[i] = list->items[i];
        self->notes[i].record.line = (int)i; // its place in the list
    }
    qsort(self->notes, self->count, sizeof *self->notes, in_order);
}

static const char *about(const bk_note_line *note, bk_arena *arena)
{
    const bk_note *record = &note->record;
    if (record->step && note->step_piece)
        return bk_arena_print(arena, "%s/%s", note->step_piece, record->step);
    return record->piece ? record->piece : record->costume;
}

// "Noted on Mon 1 Mar, done with on Tue 2 Mar."
static const char *end_of(const bk_wall *wall, const bk_note_line *note, bk_arena *arena)
{
    const char *noted = bk_cell_day(note->record.noted_on, wall->today, arena);
    if (is_done_with_step(note))
        return bk_arena_print(arena, "\nNoted on %s, done with its step.", noted);
    return bk_arena_print(arena, "\nNoted on %s, done with on %s.", noted,
                          bk_cell_day(note->record.done_on, wall->today, arena));
}

static const char *detail_of(const bk_wall *wall, const bk_note_line *note, bk_arena *arena)
{
    const char *step = "", *done = "";
    if (note->step_title)
        step = bk_arena_print(arena, "\nStep %s: %s, %s.", about(note, arena), note->step_title,
                              note->step_done ? "done" : "open");
    if (is_done(note))
        done = end_of(wall, note, arena);
    return bk_arena_print(arena, "%s%s%s", note->record.what, step, done);
}

// What the question calls it: the beginning of what it says.
static const char *name_of(const bk_wall *wall, const bk_note_line *note, bk_arena *arena)
{
    enum { NAME_COLUMNS = 50 };
    const char *what = bk_text_safe(arena, note->record.what, wall->ascii);
    return bk_arena_print(arena, "the note \"%s\"", bk_text_cut(arena, what, NAME_COLUMNS, wall->ascii));
}

static void add_note(const bk_wall *wall, bk_ledger *ledger, size_t index)
{
    const bk_note_line *note = &((const own *)ledger->own)->notes[index];
    const bk_ledger_line line = {
        .id = note->record.id,
        .family = BK_NOTES,
        .cells = {[SOURCE] = bk_word_text(&bk_note_source_words, note->record.source),
                  [WHO] = note->record.who,
                  [ABOUT] = about(note, ledger->arena),
                  [WHAT] = note->record.what},
        .style = is_done(note) ? BK_STYLE_DIM : BK_STYLE_PLAIN,
        .name = name_of(wall, note, ledger->arena),
        .detail = detail_of(wall, note, ledger->arena),
        .argument = (int64_t)index,
    };
    bk_ledger_add(ledger, &line);
}

// The heading that a note stands under, where it is another one than that of the note before.
static void add_heading(const bk_wall *wall, bk_ledger *ledger, size_t index)
{
    const own *self = ledger->own;
    const bk_note_line *note = &self->notes[index], *before = index > 0 ? note - 1 : NULL;
    bool done = is_done(note);
    if (before && is_done(before) == done && (done || before->record.noted_on == note->record.noted_on))
        return;
    const bk_ledger_line line = {
        .cells = {done ? "Done with" : bk_cell_day(note->record.noted_on, wall->today, ledger->arena)},
        .style = done ? BK_STYLE_DIM : BK_STYLE_BOLD};
    bk_ledger_add(ledger, &line);
}

static bk_status fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    const bk_wall *wall = screen->wall;
    bk_note_list list = {0};
    own *self = ledger->own;
    size_t open = 0;
    bk_status status = bk_notes_read(wall->store, wall->rail->production.id, ledger->arena, &list, error);
    if (status)
        return status;
    keep_in_order(self, &list, ledger->arena);
    for (size_t i = 0; i < self->count; i++) {
        open += is_done(&self->notes[i]) ? 0 : 1;
        add_heading(wall, ledger, i);
        add_note(wall, ledger, i);
    }
    ledger->title = bk_arena_print(ledger->arena, "Notes of %s", wall->rail->production.name);
    if (self->count > 0)
        ledger->aside = bk_arena_print(ledger->arena, "%zu open, %zu done with", open, self->count - open);
    return BK_OK;
}

static const bk_ledger_kind ledger_kind = {
    .columns = columns,
    .column_count = CELLS,
    .fill = fill,
    .empty =
        "No note was taken for this production yet: what was seen or asked for at a rehearsal, a fitting, "
        "the parade. + takes one.",
    .family = BK_NOTES,
    .of_production = true,
    .detail_rows = DETAIL_ROWS,
};

void *bk_notes_screen_new(void)
{
    return bk_ledger_new(&ledger_kind, bk_alloc_clear(1, sizeof(own)));
}

// -------------------------------------------------------------------------------------------------- its keys

static const bk_note_line *chosen_note(const bk_screen *screen)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    const own *self = bk_ledger_of(screen)->own;
    return line ? &self->notes[line->argument] : NULL;
}

static void mark(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_error error;
    const char *sentence = NULL;
    const bk_note_line *note = chosen_note(screen);
    if (!note)
        return;
    if (is_done_with_step(note)) {
        bk_wall_say(screen->wall, "It is done with its step; open that again where it stands.");
        return;
    }
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(screen->wall, arena);
    bk_ledger_of(screen)->stays = true; // the note goes elsewhere, and the next one is looked at
    bk_status status = bk_note_done(&job, note->record.id, !is_done(note), &sentence, &error);
    bk_act_did(screen, status, sentence, &error);
    bk_arena_free(arena);
}

static void make_step(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_note_line *note = chosen_note(screen);
    if (note && note->step_title)
        bk_wall_say(screen->wall, "This note is a step already.");
    else if (note)
        bk_note_step_form_open(screen, note);
}

static bool is_open_note(const bk_screen *screen)
{
    const bk_note_line *note = chosen_note(screen);
    return note && !is_done(note);
}

static bool is_done_note(const bk_screen *screen)
{
    const bk_note_line *note = chosen_note(screen);
    return note && is_done(note) && !is_done_with_step(note);
}

static const bk_key_row rows[] = {
    {.name = BK_KEY_TYPED,
     .typed = "x",
     .written = "x",
     .bottom = "done",
     .help = "the note is done with, or open again",
     .act = mark,
     .matters = is_open_note},
    {.name = BK_KEY_TYPED,
     .typed = "x",
     .written = "x",
     .bottom = "open again",
     .act = mark,
     .matters = is_done_note},
    {.name = BK_KEY_TYPED,
     .typed = "s",
     .written = "s",
     .bottom = "step",
     .help = "make a step of a piece out of the note",
     .act = make_step,
     .matters = is_open_note},
    BK_LEDGER_EDIT_ROWS,
    {.name = BK_KEY_ENTER, .act = bk_ledger_change},
    BK_LEDGER_ROWS,
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

static const bk_meaning meanings[] = {
    {"about", "the costume, the piece or the step that it is about, or that it became"},
    {"done with", "by x, or because the step that was made of it is done"},
};

const bk_screen_kind bk_notes_screen = {
    .name = "Notes",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    BK_LEDGER_OPERATIONS,
};
