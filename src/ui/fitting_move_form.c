#include "bodkin/ui/fitting_move_form.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/fitting_words.h"
#include "bodkin/ui/form.h"

// The form by which a call is moved.

typedef struct moved {
    bk_moment when;
    const char *steps; // PIECE/KEY;PIECE/KEY
    int line;
} moved;

static const bk_column columns[] = {
    {"when", true, BK_CELL_MOMENT, offsetof(moved, when), .example = "2027-03-12T14:30"},
    {"steps", true, BK_CELL_AFTER, offsetof(moved, steps), .example = "4A-1/fit;4A-2/f1"},
};

static const bk_sheet sheet = BK_FORM_SHEET(moved, columns, "fitting");

static const char *name_of(const bk_fitting_line *fitting, bk_arena *arena)
{
    return bk_arena_print(arena, "%s/%s", fitting->piece, fitting->step);
}

// The call as it stands now; BK_REFUSED where another terminal has taken it away.
static bk_status read_call(const bk_form *form, bk_arena *arena, const bk_fitting_call **call,
                           bk_error *error)
{
    const bk_wall *wall = bk_form_wall(form);
    bk_fitting_list list;
    if (!wall->rail)
        return bk_fail(error, BK_REFUSED, "The production is no longer there.");
    bk_status status =
        bk_fittings_read(wall->store, wall->rail->production.id, wall->today, arena, &list, error);
    if (status)
        return status;
    *call = bk_fitting_call_of(&list, bk_form_about(form), NULL);
    return *call ? BK_OK
                 : bk_fail(error, BK_REFUSED,
                           "This call is no longer there; another terminal has called it off.");
}

static bk_status choose(const bk_form *form, bk_arena *arena, bk_form_choices *choices, bk_error *error)
{
    const bk_fitting_call *call = NULL;
    bk_status status = read_call(form, arena, &call, error);
    if (status)
        return status;
    size_t count = 0;
    bk_form_choice *items = bk_arena_clear(arena, call->count, sizeof *items);
    for (size_t i = 0; i < call->count; i++)
        if (bk_fitting_is_open(&call->fittings[i]))
            items[count++] = (bk_form_choice){
                name_of(&call->fittings[i], arena),
                bk_arena_print(arena, "%s: %s", call->fittings[i].piece_title, call->fittings[i].step_title)};
    *choices = (bk_form_choices){items, count};
    return BK_OK;
}

static bool is_named(const char *names, const char *name)
{
    const char *rest = names ? names : "", *item;
    size_t length;
    bool found = false;
    bk_arena *arena = bk_arena_new();
    while (!found && bk_list_item(&rest, &item, &length))
        found = bk_same_text(bk_arena_bytes(arena, item, length), name);
    bk_arena_free(arena);
    return found;
}

// Those of the call that are named.
typedef struct named {
    int64_t *fittings, *steps;
    size_t count;
    int64_t minutes;
} named;

static named read_named(const bk_fitting_call *call, const char *names, bk_arena *arena)
{
    named all = {bk_arena_clear(arena, call->count, sizeof *all.fittings),
                 bk_arena_clear(arena, call->count, sizeof *all.steps), 0, 0};
    for (size_t i = 0; i < call->count; i++) {
        const bk_fitting_line *fitting = &call->fittings[i];
        if (!bk_fitting_is_open(fitting) || !is_named(names, name_of(fitting, arena)))
            continue;
        all.fittings[all.count] = fitting->id;
        all.steps[all.count++] = fitting->step_id;
        all.minutes += fitting->minutes;
    }
    return all;
}

static bk_status save(const bk_form *form, const bk_job *job, const void *filled, bk_form_saved *saved,
                      bk_error *error)
{
    const moved *to = filled;
    const bk_fitting_call *call = NULL;
    bk_status status = read_call(form, job->arena, &call, error);
    if (status)
        return status;
    named all = read_named(call, to->steps, job->arena);
    saved->column = "steps";
    if (all.count == 0)
        return bk_fail(error, BK_REFUSED, "None of these is still to be held in this call; pick one.");
    saved->id = all.fittings[0];
    return bk_fitting_move(job, all.fittings, all.count, to->when, &saved->sentence, error);
}

static const char *doubt(const bk_form *form, size_t field, const void *filled, bk_arena *arena)
{
    const moved *to = filled;
    const bk_fitting_call *call = NULL;
    const bk_wall *wall = bk_form_wall(form);
    const bk_job job = {.store = wall->store,
                        .production = wall->rail ? wall->rail->production.id : 0,
                        .today = wall->today,
                        .who = wall->who,
                        .arena = arena};
    bk_fitting_doubts doubts = {0};
    bk_error error;
    const char *all = NULL;
    if (field != 0 || to->when.day == BK_NO_DAY || read_call(form, arena, &call, &error))
        return NULL;
    named moving = read_named(call, to->steps, arena);
    const bk_fitting_booking booking = {call->performer_id, to->when, moving.minutes, moving.steps,
                                        moving.count};
    if (bk_fitting_doubt(&job, &booking, moving.fittings, moving.count, &doubts, &error))
        return NULL;
    for (size_t i = 0; i < doubts.count; i++)
        all = bk_arena_print(arena, "%s%s%s", all ? all : "", all ? " " : "", doubts.items[i]);
    return all;
}

static const bk_form_field fields[] = {
    {.column = "when",
     .label = "when",
     .help = "the day, and the time if there is one yet",
     .example = "fri 14:30"},
    {.column = "steps",
     .label = "fittings",
     .help = "what is moved; what you take out of the line stays where it is",
     .choices = choose},
};

static const bk_form_kind kind = {.name = "Move a call",
                                  .sheet = &sheet,
                                  .fields = fields,
                                  .field_count = sizeof fields / sizeof fields[0],
                                  .family = BK_FITTINGS,
                                  .save = save,
                                  .doubt = doubt};

void bk_fitting_open_move(bk_screen *screen, const bk_fitting_call *call)
{
    bk_arena *arena = bk_arena_new();
    moved begun = {.when = {BK_NO_DAY, BK_NO_TIME}};
    int64_t about = 0;
    for (size_t i = call->count; i-- > 0;) {
        const bk_fitting_line *fitting = &call->fittings[i];
        if (!bk_fitting_is_open(fitting))
            continue;
        about = fitting->id;
        begun.steps = bk_arena_print(arena, "%s%s%s", name_of(fitting, arena), begun.steps ? ";" : "",
                                     begun.steps ? begun.steps : "");
    }
    const char *title = bk_arena_print(arena, "Move: %s%s%s", call->performer ? call->performer : "",
                                       call->performer ? ", " : "",
                                       bk_moment_words(call->moment, screen->wall->today, arena));
    bk_form_open(screen, &kind,
                 &(bk_form_start){.record = &begun, .about = about, .title = title, .first = "when"});
    bk_arena_free(arena);
}
