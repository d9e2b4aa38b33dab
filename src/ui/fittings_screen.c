#include "bodkin/ui/fittings_screen.h"

#include "bodkin/ui/acts.h"
#include "bodkin/ui/booking.h"
#include "bodkin/ui/fitting_lines.h"
#include "bodkin/ui/fitting_move_form.h"
#include "bodkin/ui/fitting_record_form.h"
#include "bodkin/ui/fitting_words.h"
#include "bodkin/ui/record_acts.h"

enum { DETAIL_ROWS = 5 };

static const bk_ledger_kind ledger_kind = {
    .columns = bk_fitting_columns,
    .column_count = BK_FITTING_COLUMNS,
    .fill = bk_fitting_lines_fill,
    .empty = "Nothing is to be fitted in this production yet.\n\nA fitting is a step of kind fit, on the "
             "Costume screen; who is to be called for it, and when, then stands here. All pieces of one "
             "performer at one time are one call. b books one.",
    .family = BK_FAMILIES,
    .of_production = true,
    .detail_rows = DETAIL_ROWS,
};

void *bk_fittings_screen_new(void)
{
    return bk_ledger_new(&ledger_kind, bk_alloc_clear(1, sizeof(bk_fittings_view)));
}

static bk_fittings_view *view_of(const bk_screen *screen)
{
    return bk_ledger_of(screen)->own;
}

static const bk_fitting_entry *chosen(const bk_screen *screen)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    return line ? &view_of(screen)->entries[line->argument] : NULL;
}

static const bk_fitting_call *chosen_call(const bk_screen *screen)
{
    const bk_fitting_entry *entry = chosen(screen);
    return entry ? entry->call : NULL;
}

// ----------------------------------------------------------------------------------------------------- booking

static const bk_fitting_to_book *group_of(const bk_fittings_view *view, int64_t performer)
{
    for (size_t i = 0; i < view->list.to_book_count; i++)
        if (view->list.to_book[i].performer_id == performer)
            return &view->list.to_book[i];
    return NULL;
}

// Another call of a performer, with what can be fitted of theirs.
static void book_another(bk_screen *screen, const bk_fitting_call *call, bk_arena *arena)
{
    const bk_fitting_to_book *group = group_of(view_of(screen), call->performer_id);
    bk_booking_open(screen, call->performer, group ? bk_to_book_names(group, arena) : NULL);
}

static void book(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_fitting_entry *entry = chosen(screen);
    bk_arena *arena = bk_arena_new();
    if (!entry)
        bk_booking_open(screen, NULL, NULL);
    else if (entry->call)
        book_another(screen, entry->call, arena);
    else if (entry->wanted)
        bk_booking_open(screen, entry->group->performer,
                        bk_arena_print(arena, "%s/%s", entry->wanted->piece, entry->wanted->step));
    else
        bk_booking_open(screen, entry->group->performer, bk_to_book_names(entry->group, arena));
    bk_arena_free(arena);
}

// ------------------------------------------------------------------------------------- piece by piece

static void open_next(bk_screen *screen)
{
    bk_fittings_view *view = view_of(screen);
    if (view->filled < view->queued)
        view->open(screen, view->queue[view->filled++]);
}

// Opens a form for each piece of a call, those where nothing is recorded, or else all.
static void go_through(bk_screen *screen, const bk_fitting_call *call, bool all,
                       void (*open)(bk_screen *screen, int64_t fitting))
{
    bk_fittings_view *view = view_of(screen);
    view->queued = view->filled = 0;
    view->open = open;
    for (size_t i = 0; i < call->count && view->queued < BK_FITTING_QUEUE; i++)
        if (all || call->fittings[i].outcome == BK_NO_WORD)
            view->queue[view->queued++] = call->fittings[i].id;
    open_next(screen);
}

static void open_record(bk_screen *screen, int64_t fitting)
{
    size_t at = 0;
    const bk_fitting_call *call = bk_fitting_call_of(&view_of(screen)->list, fitting, &at);
    if (call)
        bk_fitting_open_record(screen, call, at);
}

// When the form of one piece was saved, that of the next one follows by itself.
static void follow(bk_screen *screen)
{
    const bk_wall *wall = screen->wall;
    bk_fittings_view *view = view_of(screen);
    bool goes_on = view->filled > 0 && wall->saved_family == BK_FITTINGS &&
                   wall->saved_id == view->queue[view->filled - 1];
    if (goes_on && view->filled < view->queued) {
        open_next(screen);
        return;
    }
    view->seeks = view->seeks || (goes_on && view->open == open_record);
    view->queued = view->filled = 0;
}

// On a day of fittings one call is recorded after the other.
static void seek(bk_screen *screen)
{
    bk_fittings_view *view = view_of(screen);
    bool seeks = view->seeks && !view->by_performer;
    view->seeks = false;
    for (size_t i = 0; seeks && i < view->list.call_count; i++)
        if (view->list.calls[i].state <= BK_FITTING_TODAY) {
            bk_ledger_find(screen, BK_FITTINGS, view->list.calls[i].fittings[0].id);
            return;
        }
}

static void record(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_fitting_call *call = chosen_call(screen);
    bool all_recorded = call && call->state > BK_FITTING_TO_COME;
    if (call)
        go_through(screen, call, all_recorded, open_record);
}

static void open_booking(bk_screen *screen, int64_t fitting)
{
    bk_form_open(screen, bk_form_of(BK_FITTINGS), &(bk_form_start){.id = fitting, .first = "booked_at"});
}

static void change(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_fitting_call *call = chosen_call(screen);
    if (call)
        go_through(screen, call, true, open_booking);
}

static bk_status read_screen(bk_screen *screen, bk_error *error)
{
    bool stays = screen->wall->rail != NULL;
    bk_status status = bk_ledger_read(screen, error);
    if (status || !stays)
        return status;
    follow(screen);
    seek(screen);
    return BK_OK;
}

// ------------------------------------------------------------------------------------ moved, missed, called off

typedef bk_status call_job(const bk_job *job, const int64_t *fittings, size_t count, const char **sentence,
                           bk_error *error);

// Does something to all of a call that is still to be held.
static void do_to_call(bk_screen *screen, int64_t fitting, call_job *what)
{
    const bk_fitting_call *call = bk_fitting_call_of(&view_of(screen)->list, fitting, NULL);
    bk_error error;
    const char *sentence = NULL;
    size_t count = 0;
    if (!call)
        return;
    bk_arena *arena = bk_arena_new();
    const int64_t *fittings = bk_fitting_call_open(call, arena, &count);
    bk_job job = bk_act_job(screen->wall, arena);
    bk_status status = what(&job, fittings, count, &sentence, &error);
    view_of(screen)->seeks = !status && what == bk_fitting_missed;
    bk_act_did(screen, status, sentence, &error);
    bk_arena_free(arena);
}

static void was_missed(bk_screen *screen, int64_t fitting)
{
    do_to_call(screen, fitting, bk_fitting_missed);
}

static void is_called_off(bk_screen *screen, int64_t fitting)
{
    do_to_call(screen, fitting, bk_fitting_call_off);
}

static bool is_still_open(const bk_fitting_call *call)
{
    for (size_t i = 0; i < call->count; i++)
        if (bk_fitting_is_open(&call->fittings[i]))
            return true;
    return false;
}

// The call under the cursor where something of it is still to be held, or else it says so.
static const bk_fitting_call *open_call(bk_screen *screen)
{
    const bk_fitting_call *call = chosen_call(screen);
    if (call && !is_still_open(call)) {
        bk_wall_say(screen->wall, "All of it is recorded: Enter changes what came of it, b books another.");
        return NULL;
    }
    return call;
}

static const char *open_pieces(const bk_fitting_call *call, bk_arena *arena)
{
    bk_fitting_call open = *call;
    bk_fitting_line *fittings = bk_arena_clear(arena, call->count, sizeof *fittings);
    open.count = 0;
    for (size_t i = 0; i < call->count; i++)
        if (bk_fitting_is_open(&call->fittings[i]))
            fittings[open.count++] = call->fittings[i];
    open.fittings = fittings;
    return bk_fitting_call_pieces(&open, arena);
}

static void ask_about(bk_screen *screen, const bk_fitting_call *call, const char *what,
                      void (*yes)(bk_screen *screen, int64_t fitting))
{
    bk_arena *arena = bk_arena_new();
    const char *question =
        bk_arena_print(arena, "%s: %s, %s, %s?", what, call->performer ? call->performer : "nobody plays it",
                       bk_moment_words(call->moment, screen->wall->today, arena), open_pieces(call, arena));
    bk_act_ask(screen, question, yes, call->fittings[0].id);
    bk_arena_free(arena);
}

static void miss(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_fitting_call *call = open_call(screen);
    if (call && call->state == BK_FITTING_TO_COME)
        bk_wall_say(screen->wall, "It is still to come: v moves it, - calls it off.");
    else if (call)
        ask_about(screen, call, "Missed", was_missed);
}

static void call_off(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_fitting_call *call = open_call(screen);
    if (call)
        ask_about(screen, call, "Call off", is_called_off);
}

static void move(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_fitting_call *call = open_call(screen);
    if (call)
        bk_fitting_open_move(screen, call);
}

// --------------------------------------------------------------------------------------------------- other keys

static void jot(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_fitting_entry *entry = chosen(screen);
    if (!entry)
        bk_act_add_note(screen, NULL, NULL, NULL);
    else if (entry->call)
        bk_act_add_note(screen, NULL, entry->call->fittings[0].piece, NULL);
    else
        bk_act_add_note(screen, NULL, entry->wanted ? entry->wanted->piece : entry->group->steps[0].piece,
                        NULL);
}

static void turn(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_fittings_view *view = view_of(screen);
    view->by_performer = !view->by_performer;
    screen->stale = true;
}

static bool shows_days(const bk_screen *screen)
{
    return !view_of(screen)->by_performer;
}

static bool shows_performers(const bk_screen *screen)
{
    return view_of(screen)->by_performer;
}

static bool is_to_book(const bk_screen *screen)
{
    return !chosen_call(screen);
}

static bool is_call(const bk_screen *screen)
{
    return chosen_call(screen) != NULL;
}

static bool is_open_call(const bk_screen *screen)
{
    const bk_fitting_call *call = chosen_call(screen);
    return call && is_still_open(call);
}

static bool is_missable(const bk_screen *screen)
{
    return is_open_call(screen) && chosen_call(screen)->state != BK_FITTING_TO_COME;
}

static void open_line(bk_screen *screen, const bk_key_row *row)
{
    if (chosen_call(screen))
        record(screen, row);
    else
        book(screen, row);
}

#define TYPED(c) .name = BK_KEY_TYPED, .typed = c, .written = c

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "record",
     .help = "of a call: say what came of it, piece by piece; of what is to book: book it",
     .act = open_line,
     .matters = is_call},
    {TYPED("b"), .bottom = "book", .help = "book a call: what is to be fitted stands there already",
     .act = book, .matters = is_to_book},
    {TYPED("b"), .bottom = "another", .act = book, .matters = is_call, .spare = true},
    {.name = BK_KEY_TYPED, .typed = "+", .act = book},
    {TYPED("v"), .bottom = "move", .help = "move the call, or some of its pieces, to another moment",
     .act = move, .matters = is_open_call},
    {TYPED("m"), .bottom = "missed", .help = "nobody came: it is missed; it asks first", .act = miss,
     .matters = is_missable},
    {TYPED("-"), .bottom = "call off", .help = "call it off: the booking goes; it asks first",
     .act = call_off, .matters = is_open_call, .spare = true},
    {TYPED("e"), .help = "change who comes, how long it takes, all of the booking, piece by piece",
     .act = change, .matters = is_call},
    {TYPED("j"), .help = "jot a note about the piece", .act = jot},
    {.name = BK_KEY_TAB,
     .written = "Tab",
     .bottom = "by performer",
     .help = "by performer; again: by day",
     .act = turn,
     .matters = shows_days},
    {.name = BK_KEY_TAB, .written = "Tab", .bottom = "by day", .act = turn, .matters = shows_performers},
    BK_LEDGER_ROWS,
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

static const bk_meaning meanings[] = {
    {"call", "all that one performer tries on at one time"},
    {"now, later", "how many of their fittings can be held now, and how many wait for other work"},
    {"to record", "its day is today or past, and nobody has said what came of it"},
    {"again", "another fitting is wanted; what was noted can be steps before it"},
    {"care", bk_fitting_care},
};

const bk_screen_kind bk_fittings_screen = {
    .name = "Fittings",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    .close = bk_ledger_close,
    .read = read_screen,
    .draw = bk_ledger_draw,
    .table = bk_ledger_table,
    .take = bk_ledger_take,
    .draw_bottom = bk_ledger_draw_bottom,
};
