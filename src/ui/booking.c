#include "bodkin/ui/booking.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/form.h"
#include "bodkin/ui/form_choices.h"
#include "bodkin/work/fittings.h"
#include "bodkin/work/tick.h"

typedef struct booking {
    bk_moment when;
    const char *steps; // PIECE/KEY;PIECE/KEY
    int64_t minutes;
    const char *performer;
    int line;
} booking;

// ----------------------------------------------------------------------------------------- what is to be fitted

typedef struct wanted_steps {
    bk_arena *arena;
    const char *names; // PIECE/KEY;PIECE/KEY
    size_t count;
} wanted_steps;

static void want(wanted_steps *wanted, const char *piece, const char *key)
{
    wanted->names =
        bk_arena_print(wanted->arena, "%s%s%s/%s", wanted->names, wanted->count > 0 ? ";" : "", piece, key);
    wanted->count++;
}

static bool is_worn_with(const bk_rail *rail, const bk_rail_costume *costume, const char *piece)
{
    const bk_indices *pieces = &rail->rows.costumes[costume->index].pieces;
    for (size_t i = 0; i < pieces->count; i++)
        if (bk_same_text(rail->pieces[pieces->items[i]].name, piece))
            return true;
    return false;
}

// All that can be fitted next on the performer of the costume.
static void want_next(wanted_steps *wanted, const bk_rail *rail, const bk_rail_costume *costume,
                      const bk_fitting_list *list)
{
    for (size_t i = 0; i < list->to_book_count; i++) {
        const bk_fitting_to_book *group = &list->to_book[i];
        for (size_t j = 0; bk_same_text(group->performer, costume->performer) && j < group->count; j++)
            if (group->steps[j].next &&
                (costume->performer || is_worn_with(rail, costume, group->steps[j].piece)))
                want(wanted, group->steps[j].piece, group->steps[j].step);
    }
}

// Where nothing is next, the first of the costume that will be; with `piece` of that one.
static void want_first(wanted_steps *wanted, const bk_rail *rail, const bk_rail_costume *costume,
                       const char *piece, const bk_fitting_list *list)
{
    for (size_t i = 0; i < list->to_book_count; i++)
        for (size_t j = 0; j < list->to_book[i].count && wanted->count == 0; j++) {
            const bk_fitting_wanted *step = &list->to_book[i].steps[j];
            if (piece ? bk_same_text(step->piece, piece) : is_worn_with(rail, costume, step->piece))
                want(wanted, step->piece, step->step);
        }
}

static bool is_open_fitting(const bk_rail *rail, size_t step)
{
    return step != BK_NO_INDEX && rail->steps[step].kind == BK_FIT && !rail->rows.steps[step].done;
}

static bk_status find_wanted(const bk_wall *wall, const bk_rail_costume *costume, size_t piece, size_t step,
                             wanted_steps *wanted, bk_error *error)
{
    const bk_rail *rail = wall->rail;
    bk_fitting_list list = {0};
    if (is_open_fitting(rail, step)) {
        want(wanted, rail->pieces[piece].name, rail->steps[step].key);
        return BK_OK;
    }
    bk_status status =
        bk_fittings_read(wall->store, rail->production.id, wall->today, wanted->arena, &list, error);
    if (!status && piece == BK_NO_INDEX)
        want_next(wanted, rail, costume, &list);
    if (!status)
        want_first(wanted, rail, costume, piece == BK_NO_INDEX ? NULL : rail->pieces[piece].name, &list);
    return status;
}

// --------------------------------------------------------------------------------------------------- the choices

// What may have to be cut comes last: "50 min, not next yet: Wool gown, first fitting".
static const char *tell(const bk_fitting_wanted *step, const char *performer, bk_arena *arena)
{
    char minutes[BK_AMOUNT_ROOM];
    return bk_arena_print(arena, "%s%s%s%s: %s, %s", performer ? performer : "", performer ? ", " : "",
                          bk_minutes_words(step->minutes, minutes), step->next ? "" : ", not next yet",
                          step->piece_title, step->step_title);
}

// Those of the performer named in the form first.
static bk_status choose_fittings(const bk_form *form, bk_arena *arena, bk_form_choices *choices,
                                 bk_error *error)
{
    const bk_wall *wall = bk_form_wall(form);
    const char *performer = bk_form_text(form, "performer");
    bk_fitting_list list = {0};
    bk_status status = wall->rail ? bk_fittings_read(wall->store, wall->rail->production.id, wall->today,
                                                     arena, &list, error)
                                  : BK_OK;
    size_t count = 0, room = 0;
    for (size_t i = 0; i < list.to_book_count; i++)
        room += list.to_book[i].count;
    bk_form_choice *items = bk_arena_clear(arena, room, sizeof *items);
    for (int turn = 1; turn >= 0; turn--)
        for (size_t i = 0; i < list.to_book_count; i++) {
            const bk_fitting_to_book *group = &list.to_book[i];
            if (bk_same_text(group->performer, performer) != (turn == 1))
                continue;
            for (size_t j = 0; j < group->count; j++)
                items[count++] = (bk_form_choice){
                    bk_arena_print(arena, "%s/%s", group->steps[j].piece, group->steps[j].step),
                    tell(&group->steps[j], turn == 1 ? NULL : group->performer, arena)};
        }
    *choices = (bk_form_choices){items, count};
    return status;
}

static size_t step_named(const bk_rail *rail, const char *name, size_t length)
{
    for (size_t i = 0; i < rail->rows.step_count; i++) {
        const char *piece = rail->pieces[rail->rows.steps[i].piece].name;
        size_t size = strlen(piece);
        if (size < length && strncmp(piece, name, size) == 0 && name[size] == '/' &&
            strlen(rail->steps[i].key) == length - size - 1 &&
            strncmp(rail->steps[i].key, name + size + 1, length - size - 1) == 0)
            return i;
    }
    return BK_NO_INDEX;
}

// All of them together.
static const char *suggest_minutes(const bk_form *form, bk_arena *arena)
{
    const bk_rail *rail = bk_form_wall(form)->rail;
    const char *rest = bk_form_text(form, "steps"), *item;
    size_t length;
    int64_t minutes = 0;
    while (rail && bk_list_item(&rest, &item, &length)) {
        size_t step = step_named(rail, item, length);
        minutes += step == BK_NO_INDEX ? 0 : rail->steps[step].minutes;
    }
    return minutes > 0 ? bk_arena_print(arena, "%lld", (long long)minutes) : NULL;
}

// ------------------------------------------------------------------------------------------------------- booking

// The ids of the steps named; BK_REFUSED where one is unknown.
static bk_status read_steps(const bk_job *job, const bk_production *production, const char *names,
                            bk_fitting_booking *call, bk_error *error)
{
    bk_status status = BK_OK;
    const char *rest = names, *item;
    size_t length;
    int64_t *steps = bk_arena_clear(job->arena, strlen(names) + 1, sizeof *steps);
    while (!status && bk_list_item(&rest, &item, &length))
        status = bk_step_find(job->store, production, bk_arena_bytes(job->arena, item, length),
                              &steps[call->count++], error);
    call->steps = steps;
    return status;
}

static bool plays(const bk_rail *rail, size_t costume, const char *performer)
{
    for (size_t i = 0; i < rail->costume_count; i++)
        if (rail->costumes[i].index == costume)
            return bk_same_text(rail->costumes[i].performer, performer);
    return false;
}

// Nobody needs to be named where it is who plays the role, so that whoever plays it later is called.
static bool plays_all(const bk_rail *rail, const char *performer, const char *names)
{
    const char *rest = names, *item;
    size_t length;
    while (bk_list_item(&rest, &item, &length)) {
        size_t step = step_named(rail, item, length);
        const bk_indices *worn =
            step == BK_NO_INDEX ? NULL : &rail->rows.pieces[rail->rows.steps[step].piece].costumes;
        if (!worn || worn->count == 0 || !plays(rail, worn->items[0], performer))
            return false;
    }
    return true;
}

static bk_status read_performer(const bk_job *job, const bk_rail *rail, const booking *filled,
                                bk_fitting_booking *call, bk_error *error)
{
    bk_rows all = {0};
    if (!filled->performer || plays_all(rail, filled->performer, filled->steps))
        return BK_OK;
    bk_status status = bk_store_read(job->store, BK_PERFORMERS, 0, job->arena, &all, error);
    const bk_performer *performers = all.items;
    for (size_t i = 0; i < all.count; i++)
        if (bk_same_text(performers[i].name, filled->performer))
            call->performer_id = performers[i].id;
    if (!status && call->performer_id == 0)
        return bk_fail(error, BK_REFUSED, "There is no performer of that name: C adds one.");
    return status;
}

static bk_status read_call(const bk_form *form, const bk_job *job, const booking *filled,
                           bk_fitting_booking *call, const char **column, bk_error *error)
{
    const bk_rail *rail = bk_form_wall(form)->rail;
    *call = (bk_fitting_booking){.moment = filled->when, .minutes = filled->minutes};
    if (!rail)
        return bk_fail(error, BK_REFUSED, "The production is no longer there.");
    *column = "steps";
    bk_status status = read_steps(job, &rail->production, filled->steps ? filled->steps : "", call, error);
    if (status)
        return status;
    *column = "performer";
    return read_performer(job, rail, filled, call, error);
}

static bk_status book(const bk_form *form, const bk_job *job, const void *record, bk_form_saved *saved,
                      bk_error *error)
{
    bk_fitting_booking call;
    bk_status status = read_call(form, job, record, &call, &saved->column, error);
    if (status)
        return status;
    saved->column = "steps";
    return bk_fitting_book(job, &call, &saved->sentence, error);
}

static const char *doubt_when(const bk_form *form, size_t field, const void *record, bk_arena *arena)
{
    const booking *filled = record;
    const bk_wall *wall = bk_form_wall(form);
    bk_job job = {.store = wall->store,
                  .production = wall->rail ? wall->rail->production.id : 0,
                  .today = wall->today,
                  .who = wall->who,
                  .arena = arena};
    bk_fitting_booking call;
    bk_fitting_doubts doubts = {0};
    bk_error error;
    const char *column, *all = NULL;
    if (field != 0 || filled->when.day == BK_NO_DAY ||
        read_call(form, &job, filled, &call, &column, &error) ||
        bk_fitting_doubt(&job, &call, NULL, 0, &doubts, &error))
        return NULL;
    for (size_t i = 0; i < doubts.count; i++)
        all = bk_arena_print(arena, "%s%s%s", all ? all : "", all ? " " : "", doubts.items[i]);
    return all;
}

enum { DAY_MINUTES = 24 * 60 };

static const bk_column columns[] = {
    {"when", true, BK_CELL_MOMENT, offsetof(booking, when), .example = "2027-03-12T14:30"},
    {"steps", true, BK_CELL_AFTER, offsetof(booking, steps), .example = "4A-1/fit;4A-2/f1"},
    {"minutes", false, BK_CELL_WHOLE, offsetof(booking, minutes), .example = "45", .unit = "minutes",
     .least = 1, .most = DAY_MINUTES},
    {"performer", false, BK_CELL_NAME, offsetof(booking, performer), .example = "Ines Varga"},
};

static const bk_sheet sheet = BK_FORM_SHEET(booking, columns, "fitting");

static const bk_form_field fields[] = {
    {.column = "when",
     .label = "when",
     .help = "the day, and the time if there is one yet",
     .example = "fri 14:30"},
    {.column = "steps",
     .label = "fittings",
     .help = "all that is tried on then, with ; between them",
     .choices = choose_fittings,
     .loose = true},
    {.column = "minutes",
     .label = "minutes",
     .help = "how long the whole call takes",
     .suggests = suggest_minutes},
    {.column = "performer",
     .label = "performer",
     .help = "who comes; empty is who plays the role",
     .choices = bk_choose_performers},
};

static const bk_form_kind form = {.name = "Fitting",
                                  .sheet = &sheet,
                                  .fields = fields,
                                  .field_count = sizeof fields / sizeof fields[0],
                                  .family = BK_FITTINGS,
                                  .save = book,
                                  .doubt = doubt_when};

void bk_booking_open(bk_screen *from, const char *performer, const char *steps)
{
    bk_arena *arena = bk_arena_new();
    booking begun;
    bk_sheet_clear(&sheet, &begun);
    begun.performer = performer;
    begun.steps = steps;
    const char *title =
        performer ? bk_arena_print(arena, "Book a fitting of %s", performer) : "Book a fitting";
    bk_form_open(from, &form, &(bk_form_start){.record = &begun, .title = title});
    bk_arena_free(arena);
}

void bk_booking_of(bk_screen *from, const bk_rail_costume *costume, size_t piece, size_t step)
{
    bk_error error;
    wanted_steps wanted = {.arena = bk_arena_new(), .names = ""};
    if (find_wanted(from->wall, costume, piece, step, &wanted, &error))
        bk_wall_say(from->wall, "%s", error.text);
    else if (wanted.count > 0)
        bk_booking_open(from, costume->performer, wanted.names);
    else
        bk_wall_say(
            from->wall,
            "Nothing of it is to be booked: no open step is of kind fit, or all are booked; F shows them.");
    bk_arena_free(wanted.arena);
}
