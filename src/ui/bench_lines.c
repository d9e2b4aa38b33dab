#include "bodkin/ui/bench_lines.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/forecast_words.h"
#include "bodkin/ui/bench_empty.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/forecast_told.h"
#include "bodkin/ui/plan_acts.h"
#include "bodkin/work/outlook.h"

enum cell { STEP, COSTUME, MINUTES, DUE, WHY, WITH, WHO };

const bk_list_column bk_bench_columns[BK_BENCH_COLUMNS] = {
    [STEP] = {.head = "Do now", .least = 24, .most = 70, .gap = 2, .fills = true},
    [COSTUME] = {.head = "Costume", .least = 12, .most = 30, .gap = 2},
    [MINUTES] = {.head = "Takes", .least = 7, .most = 7, .gap = 2, .right = true},
    [DUE] = {.head = "Due", .least = 10, .most = 15, .gap = 2, .right = true},
    [WHY] = {.head = "Why", .least = 8, .most = 8, .gap = 2},
    [WITH] = {.head = "With", .least = 4, .most = 4, .gap = 2},
    [WHO] = {.head = "In the plan", .least = 11, .most = 20, .spare = true},
};

static const struct {
    const char *word;
    int style;
} whys[] = {[BK_WHY_RUNNING] = {"in hand", BK_STYLE_BOLD}, [BK_WHY_LATE] = {"late", BK_STYLE_LATE},
            [BK_WHY_TIGHT] = {"tight", BK_STYLE_TIGHT},    [BK_WHY_PLANNED] = {"today", BK_STYLE_PLAIN},
            [BK_WHY_OTHERS] = {"awaited", BK_STYLE_PLAIN}, [BK_WHY_TIME] = {"in time", BK_STYLE_PLAIN},
            [BK_WHY_CAN_WAIT] = {"can wait", BK_STYLE_DIM}};

/// What a reading puts into the ledger.
typedef struct filling {
    const bk_wall *wall;
    const bk_bench_view *view;
    bk_ledger *ledger;
    const bk_forecast *forecast;
    bk_bench_list list;
    const bk_running *runnings;
    size_t running_count;
} filling;

// ------------------------------------------------------------------------------------------- done together

// Kinds that have a word of their own for it.
static const char *const together_words[BK_KINDS] = {
    [BK_CUT] = "cut together", [BK_PRESS] = "press together", [BK_DYE] = "dye together"};

// Whether line `other` is of the group of `at`, and of a piece that no line before it in the group is of.
static bool goes_with(const bk_bench_list *list, size_t at, size_t other)
{
    const bk_bench_line *lines = list->lines;
    if (lines[other].together != lines[at].together ||
        lines[other].step->piece_id == lines[at].step->piece_id)
        return false;
    for (size_t i = 0; i < other; i++)
        if (lines[i].together == lines[at].together && lines[i].step->piece_id == lines[other].step->piece_id)
            return false;
    return true;
}

static const char *pieces_beside(const bk_bench_list *list, size_t at, bk_arena *arena)
{
    enum { NAMED = 4 };
    const char *words = NULL;
    size_t count = 0, told = 0;
    for (size_t i = 0; i < list->count; i++)
        count += goes_with(list, at, i) ? 1 : 0;
    size_t named = count <= NAMED ? count : NAMED - 1;
    for (size_t i = 0; i < list->count && told < named; i++) {
        if (!goes_with(list, at, i))
            continue;
        const char *joint = ++told == count ? " and " : ", ";
        words = words ? bk_arena_print(arena, "%s%s%s", words, joint, list->lines[i].step->piece)
                      : list->lines[i].step->piece;
    }
    return words && named < count ? bk_arena_print(arena, "%s and %zu more", words, count - named) : words;
}

const char *bk_bench_together(const bk_bench_list *list, size_t at, bk_arena *arena)
{
    const bk_bench_line *line = &list->lines[at];
    const char *beside = line->together > 0 ? pieces_beside(list, at, arena) : NULL;
    if (!beside)
        return NULL;
    int kind = line->step->kind;
    const char *how = kind >= 0 && kind < BK_KINDS ? together_words[kind] : NULL;
    return bk_arena_print(arena, "the same %s as %s: %s", line->shared, beside,
                          how ? how : "best done in one go");
}

// A letter for each group; after z there is only a star.
static const char *group_mark(size_t group, bk_arena *arena)
{
    enum { LETTERS = 26 };
    if (group == 0)
        return NULL;
    return group <= LETTERS ? bk_arena_print(arena, "%c", (char)('a' + (char)(group - 1))) : "*";
}

// --------------------------------------------------------------------------------------------- what is told

// "the clock of Ida runs since 10:05, 25 min".
static const char *clock_words(const filling *at, const bk_bench_line *line)
{
    enum { TIME_AT = 11, TIME_LENGTH = 5 }; // in an ISO 8601 moment
    bk_arena *arena = at->ledger->arena;
    for (size_t i = 0; i < at->running_count; i++) {
        const bk_running *running = &at->runnings[i];
        if (running->step_id != line->step->id || strlen(running->started_at) < TIME_AT + TIME_LENGTH)
            continue;
        return bk_arena_print(arena, "the clock of %s runs since %.*s%s%s", running->who, TIME_LENGTH,
                              running->started_at + TIME_AT, line->ran >= 0 ? ", " : "",
                              line->ran >= 0 ? bk_cell_minutes(line->ran, arena) : "");
    }
    return NULL;
}

static const char *behind_words(const filling *at, const bk_planned_step *step)
{
    bk_arena *arena = at->ledger->arena;
    const char *after = bk_plan_next_steps(at->wall->rail, step->id, arena);
    return after ? bk_arena_print(arena, "behind it: %s", after) : NULL;
}

static const char *needs_words(const bk_planned_step *step, bk_arena *arena)
{
    const char *words = "";
    for (size_t i = 0; i < step->material_count; i++)
        words = bk_cell_joined(arena, words, ", ", step->materials[i]);
    return *words ? bk_arena_print(arena, "needs %s", words) : NULL;
}

static const char *minutes_words(const filling *at, const bk_bench_line *line)
{
    bk_arena *arena = at->ledger->arena;
    const char *fits = line->part && !line->fits ? ", can be set down and taken up again" : "";
    if (line->minutes == line->step->guessed)
        return *fits ? fits + 2 : NULL;
    return bk_arena_print(arena, "guessed %s, by the record %s%s",
                          bk_cell_minutes(line->step->guessed, arena), bk_cell_minutes(line->minutes, arena),
                          fits);
}

static const char *joined(const char *const parts[], size_t count, const char *joint, bk_arena *arena)
{
    const char *words = "";
    for (size_t i = 0; i < count; i++)
        words = bk_cell_joined(arena, words, joint, parts[i] ? parts[i] : "");
    return words;
}

static const char *detail_of(const filling *at, size_t index)
{
    bk_arena *arena = at->ledger->arena;
    const bk_bench_line *line = &at->list.lines[index];
    const bk_planned_step *step = line->step;
    const char *of = at->wall->rail && at->wall->rail->production.id == step->production_id
                         ? NULL
                         : bk_arena_print(arena, "of %s", step->production);
    const char *const reasons[] = {bk_bench_why_sentence(line, at->forecast->today, arena),
                                   minutes_words(at, line)};
    const char *const around[] = {of, bk_planned_sentence(at->forecast, step, arena), behind_words(at, step),
                                  needs_words(step, arena)};
    const char *const rows[] = {
        bk_arena_print(arena, "%s/%s: %s (%s)", step->piece, step->key, step->title, step->piece_title),
        joined(reasons, sizeof reasons / sizeof reasons[0], "; ", arena),
        clock_words(at, line),
        bk_bench_together(&at->list, index, arena),
        joined(around, sizeof around / sizeof around[0], "; ", arena),
    };
    return joined(rows, sizeof rows / sizeof rows[0], "\n", arena);
}

const char *bk_bench_detail(const bk_screen *screen, const bk_ledger_line *line, bk_arena *arena)
{
    bk_error error;
    bk_step_outlook outlook = {0};
    if (bk_step_outlook_read(screen->wall->store, line->id, arena, &outlook, &error) || !outlook.found)
        return line->detail;
    const char *place = outlook.piece.place, *note = outlook.step.step.note;
    const char *where = place ? bk_arena_print(arena, "where it is: %s", place) : "";
    return bk_cell_joined(arena, bk_cell_joined(arena, line->detail, "; ", where), "\n", note ? note : "");
}

// ------------------------------------------------------------------------------------------------- the lines

static void add_line(const filling *at, size_t index)
{
    bk_arena *arena = at->ledger->arena;
    const bk_bench_line *line = &at->list.lines[index];
    const bk_planned_step *step = line->step;
    int *styles = bk_arena_clear(arena, BK_BENCH_COLUMNS, sizeof *styles);
    for (size_t i = 0; i < BK_BENCH_COLUMNS; i++)
        styles[i] = line->why == BK_WHY_CAN_WAIT ? BK_STYLE_DIM : BK_STYLE_PLAIN;
    styles[WHY] = whys[line->why].style;
    const bk_ledger_line added = {
        .id = step->id,
        .family = BK_STEPS,
        .cells = {[STEP] = bk_arena_print(arena, "%s %s", step->piece, step->title),
                  [COSTUME] = step->costume ? bk_arena_print(arena, "%s %s", step->costume,
                                                             step->role ? step->role : "")
                                            : NULL,
                  [MINUTES] = bk_cell_minutes(line->minutes, arena),
                  [DUE] = bk_cell_day(step->due, at->forecast->today, arena),
                  [WHY] = whys[line->why].word,
                  [WITH] = group_mark(line->together, arena),
                  [WHO] = at->list.person ? NULL : bk_planned_who(at->forecast, step, arena)},
        .styles = styles,
        .detail = detail_of(at, index),
    };
    bk_ledger_add(at->ledger, &added);
}

// Where minutes are asked for, what fits stands apart from what does not, and what is in hand before both.
enum group { IN_HAND, FITS, LONGER, NO_GROUP };

static enum group group_of(const bk_bench_line *line)
{
    return line->why == BK_WHY_RUNNING ? IN_HAND : line->fits ? FITS : LONGER;
}

static void add_heading(const filling *at, enum group group)
{
    bk_arena *arena = at->ledger->arena;
    const char *minutes = bk_cell_minutes(at->view->minutes, arena);
    const char *words =
        group == IN_HAND
            ? "In hand"
            : bk_arena_print(arena, group == FITS ? "Fits into %s" : "Takes longer than %s", minutes);
    bk_ledger_add(at->ledger, &(bk_ledger_line){.cells = {words}});
}

const char *bk_bench_summary(size_t count, size_t fitting, int64_t minutes, bk_arena *arena)
{
    const char *words = bk_arena_print(arena, "%zu step%s can be done now", count, count == 1 ? "" : "s");
    if (minutes <= 0 || count == 0)
        return words;
    const char *time = bk_cell_minutes(minutes, arena);
    if (fitting == 0)
        return bk_arena_print(arena, "%s, none of them in %s", words, time);
    return bk_arena_print(arena, "%s, %zu of them in %s", words, fitting, time);
}

// What the store has as done since the plan was made is no longer offered.
static bool is_open(const filling *at, const bk_planned_step *step)
{
    bk_error error;
    bk_step_outlook outlook = {0};
    if (bk_reckoning_settled(at->wall->reckoning))
        return true;
    return bk_store_bench_step(at->wall->store, step->id, at->ledger->arena, &outlook.step, &error) ==
               BK_OK &&
           !bk_step_outlook_done(&outlook);
}

static void tell_head(const filling *at, size_t shown, size_t fitting)
{
    bk_arena *arena = at->ledger->arena;
    const bk_bench_list *list = &at->list;
    const char *clock = bk_clock_line_words(&at->view->clock, arena);
    const char *state = bk_reckoning_words(at->wall->reckoning, arena);
    const char *const parts[] = {at->forecast->person_count == 0 ? "nobody is in the workroom yet: press H"
                                                                 : NULL,
                                 bk_bench_summary(shown, fitting, at->view->minutes, arena), clock, state};
    at->ledger->summary = joined(parts, sizeof parts / sizeof parts[0], "; ", arena);
    at->ledger->title = bk_arena_print(arena, "Bench: %s", list->person ? list->person->name : "everybody");
    if (!list->person)
        return;
    bool here = list->free_until.day != BK_NO_DAY;
    at->ledger->aside =
        here ? bk_arena_print(arena, "here until %s today", bk_cell_time(list->free_until.time, arena))
             : "no hours today";
}

static void add_all(filling *at)
{
    size_t shown = 0, fitting = 0;
    enum group group = NO_GROUP;
    for (size_t i = 0; i < at->list.count; i++) {
        const bk_bench_line *line = &at->list.lines[i];
        if (!is_open(at, line->step))
            continue;
        if (at->view->minutes > 0 && group_of(line) != group)
            add_heading(at, group_of(line));
        group = group_of(line);
        shown++;
        fitting += line->fits ? 1 : 0;
        add_line(at, i);
    }
    tell_head(at, shown, fitting);
}

// It begins with who is at this terminal, where the workroom knows the name; whoever is no longer there is nobody's bench.
static void choose_person(const bk_wall *wall, bk_bench_view *view, const bk_forecast *forecast)
{
    bool known = false;
    if (!view->begun)
        view->person = bk_text_copy(wall->who ? wall->who : "");
    view->begun = true;
    for (size_t i = 0; i < forecast->person_count; i++)
        known = known || bk_same_text(forecast->people[i].name, view->person);
    if (!known) {
        free(view->person);
        view->person = NULL;
    }
}

bk_status bk_bench_fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    bk_wall *wall = screen->wall;
    bk_bench_view *view = ledger->own;
    bk_rows rows = {0};
    char now[BK_MADE_AT_ROOM];
    filling at = {.wall = wall, .view = view, .ledger = ledger, .forecast = bk_wall_forecast(wall)};
    ledger->title = "Bench";
    bk_status status = bk_clock_line_read(wall, &view->clock, error);
    if (!status)
        status = bk_store_read(wall->store, BK_RUNNINGS, 0, ledger->arena, &rows, error);
    if (status)
        return status;
    if (!at.forecast) {
        view->kind.empty = bk_plan_missing_words(wall, ledger->arena);
        return BK_OK;
    }
    choose_person(wall, view, at.forecast);
    at.runnings = rows.items;
    at.running_count = rows.count;
    wall->clock.now(wall->clock.self, now);
    at.list = bk_bench_list_make(at.forecast, view->person, view->minutes, at.runnings, at.running_count, now,
                                 ledger->arena);
    add_all(&at);
    view->kind.empty = bk_bench_empty(wall, at.forecast, at.list.person, ledger->arena);
    return BK_OK;
}
