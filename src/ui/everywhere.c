#include "bodkin/store/daybook.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/bench_screen.h"
#include "bodkin/ui/cast_screen.h"
#include "bodkin/ui/dates_screen.h"
#include "bodkin/ui/daybook_screen.h"
#include "bodkin/ui/fittings_screen.h"
#include "bodkin/ui/hands_screen.h"
#include "bodkin/ui/look_for.h"
#include "bodkin/ui/materials_screen.h"
#include "bodkin/ui/notes_screen.h"
#include "bodkin/ui/rail_screen.h"
#include "bodkin/ui/stack.h"
#include "bodkin/ui/suppose_screen.h"
#include "bodkin/ui/who_when_screen.h"
#include "bodkin/ui/works_screen.h"

// The keys that mean the same on every screen.

// ------------------------------------------------------------------------------------------ undo and redo

static void undo(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_act_undo(screen, 0);
}

static void redo(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_error error;
    const char *sentence = NULL;
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(screen->wall, arena);
    bk_status status = bk_daybook_redo(job.store, job.made_at, arena, &sentence, &error);
    bk_act_did(screen, status, sentence, &error);
    bk_arena_free(arena);
}

// --------------------------------------------------------------------------------------- the other screens

typedef struct place {
    const bk_screen_kind *kind;
    void *(*make)(void);
    bool of_production; // it shows nothing where no production is open
} place;

typedef enum place_name {
    PLACE_RAIL,
    PLACE_BENCH,
    PLACE_WHO_WHEN,
    PLACE_SUPPOSE,
    PLACE_CAST,
    PLACE_FITTINGS,
    PLACE_MATERIALS,
    PLACE_NOTES,
    PLACE_WORKS,
    PLACE_HANDS,
    PLACE_DATES,
    PLACE_DAYBOOK
} place_name;

static const place places[] = {
    [PLACE_RAIL] = {&bk_rail_screen, bk_rail_screen_new, true},
    [PLACE_BENCH] = {&bk_bench_screen, bk_bench_screen_new, false},
    [PLACE_WHO_WHEN] = {&bk_who_when_screen, bk_who_when_screen_new, false},
    [PLACE_SUPPOSE] = {&bk_suppose_screen, bk_suppose_screen_new, true},
    [PLACE_CAST] = {&bk_cast_screen, bk_cast_screen_new, true},
    [PLACE_FITTINGS] = {&bk_fittings_screen, bk_fittings_screen_new, true},
    [PLACE_MATERIALS] = {&bk_materials_screen, bk_materials_screen_new, false},
    [PLACE_NOTES] = {&bk_notes_screen, bk_notes_screen_new, true},
    [PLACE_WORKS] = {&bk_works_screen, bk_works_screen_new, false},
    [PLACE_HANDS] = {&bk_hands_screen, bk_hands_screen_new, false},
    [PLACE_DATES] = {&bk_dates_screen, bk_dates_screen_new, true},
    [PLACE_DAYBOOK] = {&bk_daybook_screen, bk_daybook_screen_new, false},
};

static void go(bk_screen *screen, const bk_key_row *row)
{
    const place *to = &places[row->argument];
    if (to->of_production && !screen->wall->rail)
        bk_wall_say(screen->wall, "Open a production first, or make one.");
    else if (to->kind == &bk_rail_screen)
        bk_act_go(screen, to->kind, NULL);
    else if (to->kind != screen->kind)
        bk_act_go(screen, to->kind, to->make());
}

static void go_to_productions(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_stack_pop_to_lowest(screen->stack);
}

#define TYPED(c) .name = BK_KEY_TYPED, .typed = c, .written = c

static const bk_key_row rows[] = {
    {TYPED("u"), .help = "undo what you did last", .act = undo},
    {TYPED("U"), .help = "redo what you undid last", .act = redo},
    {TYPED("l"), .bottom = "look for", .spare = true,
     .help = "look for anything of the production: type a few letters of it", .act = bk_look_for_open},
    {TYPED("P"), .help = "Productions: all of this workroom", .act = go_to_productions},
    {TYPED("R"), .help = "Rail: the costumes of the production that is open", .act = go,
     .argument = PLACE_RAIL},
    {TYPED("B"), .help = "Bench: what one person can do now, best first", .act = go, .argument = PLACE_BENCH},
    {TYPED("W"), .help = "Who and When: the days to opening, and who does what on them", .act = go,
     .argument = PLACE_WHO_WHEN},
    {TYPED("S"), .help = "Suppose: what would come of a helper, another date, a costume less", .act = go,
     .argument = PLACE_SUPPOSE},
    {TYPED("C"), .help = "Cast: performers, their measures, roles", .act = go, .argument = PLACE_CAST},
    {TYPED("F"), .help = "Fittings: whom to call, who comes when, what came of it", .act = go,
     .argument = PLACE_FITTINGS},
    {TYPED("M"), .help = "Materials: the shelf, what is promised, what to buy", .act = go,
     .argument = PLACE_MATERIALS},
    {TYPED("N"), .help = "Notes: from rehearsals, fittings, the parade", .act = go, .argument = PLACE_NOTES},
    {TYPED("O"), .help = "Orders of work: lists of steps, ready and your own", .act = go,
     .argument = PLACE_WORKS},
    {TYPED("H"), .help = "Hands: people, their hours, who is away, equipment", .act = go,
     .argument = PLACE_HANDS},
    {TYPED("T"), .help = "Dates: the timetable of the production", .act = go, .argument = PLACE_DATES},
    {TYPED("D"), .help = "Daybook: every change, and the way to undo it", .act = go,
     .argument = PLACE_DAYBOOK},
    {TYPED("?"), .bottom = "keys", .help = "these keys", .act = bk_screen_help},
    {TYPED("q"), .bottom = "leave", .help = "leave the program", .act = bk_screen_leave},
};

const bk_key_table bk_everywhere_table = {
    .title = "On every screen", .rows = rows, .count = sizeof rows / sizeof rows[0]};
