#include "bodkin/work/fittings.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/store/one.h"
#include "bodkin/work/rail_gather.h"

static const char *const state_items[] = {"to record", "today", "to come", "missed", "held"};
const bk_words bk_fitting_state_words = {"state of a fitting", state_items,
                                         sizeof state_items / sizeof *state_items};

#define SIGN(left, right) (((left) > (right)) - ((left) < (right)))

/// A fitting with its performer, before it is put into its call.
typedef struct booked_line {
    bk_fitting_line line;
    bk_moment moment;
    const bk_performer *performer; ///< NULL: nobody
    size_t row;
} booked_line;

/// A wanted one, before it is put to its performer.
typedef struct wanted_line {
    bk_fitting_wanted wanted;
    const bk_performer *performer; ///< NULL: nobody
    size_t row;
} wanted_line;

typedef struct fitting_reading {
    bk_gathered gathered;
    bk_wait_rows rows;
    bk_arena *arena;
    bk_day *done_days; ///< for each step; BK_NO_DAY where it is open, or nobody knows
    booked_line *booked;
    size_t booked_count;
    wanted_line *wanted;
    size_t wanted_count;
} fitting_reading;

// ---------------------------------------------------------------------------------------------------- who

static int performer_order(const bk_performer *left, const bk_performer *right)
{
    if (!left || !right) {
        return SIGN(!left, !right);
    }
    int order = bk_natural_order(left->name, right->name);
    return order ? order : SIGN(left->id, right->id);
}

static const bk_performer *player_of(const fitting_reading *reading, size_t piece)
{
    const bk_indices *costumes = &reading->rows.pieces[piece].costumes;
    const bk_performer *performers = reading->gathered.performers.items;
    for (size_t i = 0; i < costumes->count; i++) {
        size_t performer = reading->rows.costumes[costumes->items[i]].performer;
        if (performer != BK_NO_INDEX) {
            return &performers[performer];
        }
    }
    return NULL;
}

/// Who is fitted: the one named, also from outside the company, else who plays the role.
static bk_status find_performer(bk_store *store, const fitting_reading *reading, const bk_fitting *fitting,
                                size_t piece, const bk_performer **performer, bk_error *error)
{
    size_t at = bk_gathered_index(reading->gathered.performer_at, fitting->performer_id);
    bool found = false;
    *performer = at != BK_NO_INDEX ? (const bk_performer *)reading->gathered.performers.items + at : NULL;
    if (*performer) {
        return BK_OK;
    }
    bk_performer *other = bk_arena_clear(reading->arena, 1, sizeof *other);
    bk_status status = BK_OK;
    if (fitting->performer_id) {
        status =
            bk_store_get(store, BK_PERFORMERS, fitting->performer_id, reading->arena, other, &found, error);
    }
    *performer = found ? other : player_of(reading, piece);
    return status;
}

static const char *costume_numbers(const fitting_reading *reading, size_t piece)
{
    const bk_indices *costumes = &reading->rows.pieces[piece].costumes;
    const char *all = "";
    for (size_t i = 0; i < costumes->count; i++) {
        all = bk_arena_print(reading->arena, "%s%s%s", all, i ? ", " : "",
                             reading->rows.costumes[costumes->items[i]].number);
    }
    return all;
}

// ------------------------------------------------------------------------------------------------- booked

static bk_fitting_state state_of(const bk_fitting *fitting, bk_day today)
{
    if (fitting->outcome != BK_NO_WORD) {
        return fitting->outcome == BK_MISSED ? BK_FITTING_MISSED : BK_FITTING_HELD;
    }
    if (fitting->held_on != BK_NO_DAY || fitting->booked_at.day < today) {
        return BK_FITTING_TO_RECORD;
    }
    return fitting->booked_at.day == today ? BK_FITTING_TODAY : BK_FITTING_TO_COME;
}

static bk_fitting_line line_of(const fitting_reading *reading, const bk_fitting *fitting, size_t at)
{
    const bk_step *step = (const bk_step *)reading->gathered.steps.items + at;
    size_t piece = reading->rows.steps[at].piece;
    const bk_piece *pieces = reading->gathered.pieces.items;
    return (bk_fitting_line){
        .id = fitting->id,
        .step_id = step->id,
        .piece_id = step->piece_id,
        .piece = pieces[piece].name,
        .piece_title = pieces[piece].title,
        .step = step->key,
        .step_title = step->title,
        .costumes = costume_numbers(reading, piece),
        .minutes = fitting->minutes == BK_NOT_KNOWN ? step->minutes : fitting->minutes,
        .state = state_of(fitting, reading->gathered.today),
        .outcome = fitting->outcome,
        .held_on = fitting->held_on,
        .note = fitting->note,
    };
}

static bk_status gather_booked(bk_store *store, fitting_reading *reading, bk_error *error)
{
    const bk_fitting *fittings = reading->gathered.fittings.items;
    size_t count = reading->gathered.fittings.count;
    bk_status status = BK_OK;
    reading->booked = bk_arena_clear(reading->arena, count, sizeof *reading->booked);
    for (size_t i = 0; !status && i < count; i++) {
        size_t at = bk_gathered_index(reading->gathered.step_at, fittings[i].step_id);
        if (at == BK_NO_INDEX) {
            continue;
        }
        booked_line *booked = &reading->booked[reading->booked_count++];
        *booked = (booked_line){line_of(reading, &fittings[i], at), fittings[i].booked_at, NULL, i};
        status = find_performer(store, reading, &fittings[i], reading->rows.steps[at].piece,
                                &booked->performer, error);
    }
    return status;
}

static int call_order(const booked_line *left, const booked_line *right)
{
    int order = bk_moment_order(left->moment, right->moment);
    return order ? order : performer_order(left->performer, right->performer);
}

static int booked_order(const void *left, const void *right)
{
    const booked_line *a = left;
    const booked_line *b = right;
    int order = call_order(a, b);
    return order ? order : SIGN(a->row, b->row);
}

static void build_calls(fitting_reading *reading, bk_fitting_list *list)
{
    const booked_line *booked = reading->booked;
    size_t count = reading->booked_count;
    bk_fitting_line *lines = bk_arena_clear(reading->arena, count, sizeof *lines);
    bk_fitting_call *calls = bk_arena_clear(reading->arena, count, sizeof *calls);
    bk_fitting_call *call = NULL;
    if (count) {
        qsort(reading->booked, count, sizeof *booked, booked_order);
    }
    for (size_t i = 0; i < count; i++) {
        lines[i] = booked[i].line;
        if (!i || call_order(&booked[i - 1], &booked[i])) {
            const bk_performer *performer = booked[i].performer;
            call = &calls[list->call_count++];
            *call = (bk_fitting_call){
                .performer_id = performer ? performer->id : 0,
                .performer = performer ? performer->name : NULL,
                .moment = booked[i].moment,
                .state = lines[i].state,
                .fittings = &lines[i],
            };
        }
        call->count++;
        call->minutes += lines[i].minutes;
        call->state = lines[i].state < call->state ? lines[i].state : call->state;
    }
    list->calls = calls;
}

// ------------------------------------------------------------------------------------------------- to book

static void gather_done_days(fitting_reading *reading)
{
    const bk_step *steps = reading->gathered.steps.items;
    const bk_fitting *fittings = reading->gathered.fittings.items;
    bk_day *days = bk_arena_clear(reading->arena, reading->rows.step_count, sizeof *days);
    for (size_t i = 0; i < reading->rows.step_count; i++) {
        days[i] = steps[i].done_on;
    }
    for (size_t i = 0; i < reading->gathered.fittings.count; i++) {
        size_t at = bk_gathered_index(reading->gathered.step_at, fittings[i].step_id);
        if (at != BK_NO_INDEX && fittings[i].outcome == BK_FITS && days[at] == BK_NO_DAY) {
            days[at] = fittings[i].held_on != BK_NO_DAY ? fittings[i].held_on : fittings[i].booked_at.day;
        }
    }
    reading->done_days = days;
}

/// Since when a next step can be booked: what it comes after is done, and its last fitting came to nothing. BK_NO_DAY is
/// the earliest of all days.
static bk_day wanted_since(const fitting_reading *reading, size_t at)
{
    const bk_wait_step *step = &reading->rows.steps[at];
    bk_day since = step->fitted ? step->fitting_day : BK_NO_DAY;
    for (size_t i = 0; i < step->after.count; i++) {
        bk_day day = reading->done_days[step->after.items[i]];
        since = day > since ? day : since;
    }
    return since;
}

/// Whether a step is to be booked: nothing is booked that might still be held or recorded.
static bool to_book(const bk_wait_step *step)
{
    return step->kind == BK_FIT && !step->done && (!step->fitted || step->fitting_outcome != BK_NO_WORD);
}

static void gather_wanted(fitting_reading *reading)
{
    const bk_step *steps = reading->gathered.steps.items;
    const bk_piece *pieces = reading->gathered.pieces.items;
    reading->wanted = bk_arena_clear(reading->arena, reading->rows.step_count, sizeof *reading->wanted);
    for (size_t i = 0; i < reading->rows.step_count; i++) {
        size_t piece = reading->rows.steps[i].piece;
        bool next = bk_step_next(&reading->rows, i);
        if (to_book(&reading->rows.steps[i])) {
            reading->wanted[reading->wanted_count++] = (wanted_line){
                .wanted = {.step_id = steps[i].id,
                           .piece_id = steps[i].piece_id,
                           .piece = pieces[piece].name,
                           .piece_title = pieces[piece].title,
                           .step = steps[i].key,
                           .step_title = steps[i].title,
                           .costumes = costume_numbers(reading, piece),
                           .minutes = steps[i].minutes,
                           .next = next,
                           .since = next ? wanted_since(reading, i) : BK_NO_DAY,
                           .due = bk_piece_due(&reading->rows, piece)},
                .performer = player_of(reading, piece),
                .row = i,
            };
        }
    }
}

static int due_order(bk_day left, bk_day right)
{
    bool left_open = left == BK_NO_DAY;
    bool right_open = right == BK_NO_DAY;
    return left_open != right_open ? SIGN(left_open, right_open) : SIGN(left, right);
}

/// By performer, and of one the most urgent first.
static int wanted_order(const void *left, const void *right)
{
    const wanted_line *a = left;
    const wanted_line *b = right;
    int order = performer_order(a->performer, b->performer);
    order = order ? order : due_order(a->wanted.due, b->wanted.due);
    order = order ? order : SIGN(b->wanted.next, a->wanted.next);
    order = order ? order : bk_natural_order(a->wanted.piece, b->wanted.piece);
    return order ? order : SIGN(a->row, b->row);
}

static int group_order(const void *left, const void *right)
{
    const bk_fitting_to_book *a = left;
    const bk_fitting_to_book *b = right;
    int order = due_order(a->due, b->due);
    order = order ? order : bk_natural_order(a->performer, b->performer);
    return order ? order : SIGN(a->performer_id, b->performer_id);
}

static void build_to_book(fitting_reading *reading, bk_fitting_list *list)
{
    size_t count = reading->wanted_count;
    const wanted_line *wanted = reading->wanted;
    bk_fitting_wanted *steps = bk_arena_clear(reading->arena, count, sizeof *steps);
    bk_fitting_to_book *groups = bk_arena_clear(reading->arena, count, sizeof *groups);
    if (count) {
        qsort(reading->wanted, count, sizeof *wanted, wanted_order);
    }
    for (size_t i = 0; i < count; i++) {
        const bk_performer *performer = wanted[i].performer;
        steps[i] = wanted[i].wanted;
        if (!i || performer != wanted[i - 1].performer) {
            groups[list->to_book_count++] = (bk_fitting_to_book){
                .performer_id = performer ? performer->id : 0,
                .performer = performer ? performer->name : NULL,
                .due = steps[i].due,
                .steps = &steps[i],
            };
        }
        groups[list->to_book_count - 1].count++;
    }
    if (list->to_book_count) {
        qsort(groups, list->to_book_count, sizeof *groups, group_order);
    }
    list->to_book = groups;
}

// --------------------------------------------------------------------------------------------------- public

bk_status bk_fittings_read(bk_store *store, int64_t production, bk_day today, bk_arena *arena,
                           bk_fitting_list *list, bk_error *error)
{
    fitting_reading reading = {.gathered = {.arena = arena, .today = today}, .arena = arena};
    *list = (bk_fitting_list){0};
    bk_status status = bk_store_read_begin(store, error);
    if (status) {
        return status;
    }
    status = bk_gather_rows(store, production, &reading.gathered, error);
    if (!status) {
        reading.rows = bk_gathered_rows(&reading.gathered);
        status = gather_booked(store, &reading, error);
    }
    bk_store_read_end(store);
    if (!status) {
        build_calls(&reading, list);
        gather_done_days(&reading);
        gather_wanted(&reading);
        build_to_book(&reading, list);
    }
    bk_gathered_free(&reading.gathered);
    return status;
}
