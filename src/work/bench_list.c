#include "bodkin/work/bench_list.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/work/clock.h"

/// The bench under way.
typedef struct bench_making {
    const bk_forecast *forecast;
    const bk_planned_person *person; ///< NULL: everybody
    const char *who;                 ///< whose clocks count; NULL: everybody's
    const char *now;
    int64_t minutes;
    bk_id_index *running; ///< step id to the minutes its clock ran
    bool *today;          ///< of each step: the plan has it today, for this person
    bool *awaited;        ///< of each step: somebody else waits for it
    bk_arena *arena;
} bench_making;

// ------------------------------------------------------------------------------------------- what is known

static const bk_planned_person *find_person(const bk_forecast *forecast, const char *name)
{
    for (size_t i = 0; name && i < forecast->person_count; i++)
        if (bk_same_text(forecast->people[i].name, name))
            return &forecast->people[i];
    return NULL;
}

static void note_runnings(bench_making *making, const bk_running *runnings, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (!making->who || bk_same_text(runnings[i].who, making->who)) {
            int64_t ran = bk_minutes_between(runnings[i].started_at, making->now);
            long long *kept = bk_id_index_put(making->running, runnings[i].step_id, ran);
            *kept = *kept < ran ? ran : *kept;
        }
}

static void note_today(bench_making *making)
{
    const bk_forecast *forecast = making->forecast;
    for (size_t i = 0; i < forecast->stretch_count; i++) {
        const bk_planned_stretch *stretch = &forecast->stretches[i];
        bool own = !making->person || &forecast->people[stretch->person] == making->person;
        if (own && stretch->day == forecast->today)
            making->today[stretch->step] = true;
    }
}

/// Whether two steps are done by other hands in the plan.
static bool other_hands(const bk_planned_step *left, const bk_planned_step *right)
{
    for (size_t i = 0; i < left->person_count; i++)
        for (size_t j = 0; j < right->person_count; j++)
            if (left->people[i] == right->people[j])
                return false;
    return left->person_count && right->person_count;
}

/// In the chains that decide when something is finished: whose next step waits for this one and is done by others.
static void note_awaited(bench_making *making, const bk_planned_link *chain, size_t count)
{
    const bk_planned_step *steps = making->forecast->steps;
    for (size_t i = 1; i < count; i++) {
        size_t before = chain[i - 1].step;
        if (chain[i].bound == BK_BOUND_ORDER && other_hands(&steps[before], &steps[chain[i].step]))
            making->awaited[before] = true;
    }
}

static void note_all_awaited(bench_making *making)
{
    const bk_forecast *forecast = making->forecast;
    for (size_t i = 0; i < forecast->costume_count; i++)
        note_awaited(making, forecast->costumes[i].chain, forecast->costumes[i].chain_count);
    for (size_t i = 0; i < forecast->production_count; i++)
        note_awaited(making, forecast->productions[i].chain, forecast->productions[i].chain_count);
}

// --------------------------------------------------------------------------------------------------- a line

static bool expected_late(const bench_making *making, const bk_planned_step *step)
{
    const bk_costume_forecast *costume = bk_forecast_costume(making->forecast, step->costume_id);
    return costume && costume->days.days_known &&
           (costume->days.finish == BK_NO_DAY || costume->days.days_in_hand < 0);
}

static bk_bench_why why_of(const bench_making *making, size_t index, bool runs)
{
    enum { TIGHT_DAYS = 2 }; // calendar days to the latest beginning: a weekend is no reason to begin late
    const bk_planned_step *step = &making->forecast->steps[index];
    if (runs)
        return BK_WHY_RUNNING;
    if (step->can_wait)
        return BK_WHY_CAN_WAIT;
    if (expected_late(making, step))
        return BK_WHY_LATE;
    if (step->latest.day != BK_NO_DAY && step->latest.day - making->forecast->today <= TIGHT_DAYS)
        return BK_WHY_TIGHT;
    if (making->today[index])
        return BK_WHY_PLANNED;
    return making->awaited[index] ? BK_WHY_OTHERS : BK_WHY_TIME;
}

/// A step's minutes for the person at the bench, by the workroom's record.
static int64_t minutes_of(const bench_making *making, const bk_planned_step *step)
{
    if (!making->person)
        return step->minutes;
    const bk_pace *pace = bk_pace_for(&making->forecast->paces, step->kind, making->person->name);
    return bk_pace_estimate(pace, BK_NOT_KNOWN, step->guessed, BK_NOT_KNOWN).usual;
}

/// Whether the plan found nobody who can do a step, or none of them with hours left; not while the workroom has no people at all.
static bool nobody_can(const bench_making *making, const bk_planned_step *step)
{
    const bk_costume_forecast *costume = bk_forecast_costume(making->forecast, step->costume_id);
    if (!making->forecast->person_count)
        return false;
    for (size_t i = 0; costume && i < costume->snag_count; i++) {
        const bk_snag *snag = &costume->snags[i];
        bool of_hands = snag->kind == BK_SNAG_NO_SKILL || snag->kind == BK_SNAG_NO_HOURS;
        if (of_hands && snag->step_id == step->id)
            return true;
    }
    return false;
}

static bool can_do(const bench_making *making, const bk_planned_step *step)
{
    if (!step->next || !step->free_now)
        return false;
    return making->person ? (making->person->skills & 1U << step->kind) != 0 : !nobody_can(making, step);
}

static bk_bench_line line_of(const bench_making *making, size_t index, const long long *ran)
{
    const bk_planned_step *step = &making->forecast->steps[index];
    bk_bench_line line = {
        .step = step,
        .why = why_of(making, index, ran != NULL),
        .days_left = step->due == BK_NO_DAY ? INT64_MIN : (int64_t)step->due - making->forecast->today,
        .behind = step->behind,
        .minutes = minutes_of(making, step),
        .ran = ran ? *ran : -1,
    };
    line.fits = making->minutes <= 0 || line.minutes <= making->minutes;
    line.part = !line.fits && step->kind != BK_FIT;
    return line;
}

// ---------------------------------------------------------------------------------------------------- order

static int order_of(int64_t left, int64_t right)
{
    return (left > right) - (left < right);
}

/// What has no time left in which it could begin comes first, what has no due day last.
static int order_latest(const bk_planned_step *left, const bk_planned_step *right)
{
    bool left_day = left->latest.day != BK_NO_DAY;
    bool right_day = right->latest.day != BK_NO_DAY;
    int order = order_of(left->due == BK_NO_DAY, right->due == BK_NO_DAY);
    if (!order)
        order = order_of(left_day, right_day);
    return order || !left_day ? order : bk_moment_order(left->latest, right->latest);
}

/// The plan's order: what it begins first; what never comes about last.
static int order_plan(const bk_planned_step *left, const bk_planned_step *right)
{
    bool left_never = left->begin.day == BK_NO_DAY;
    int order = order_of(left_never, right->begin.day == BK_NO_DAY);
    return order || left_never ? order : bk_moment_order(left->begin, right->begin);
}

static int order_lines(const void *left_line, const void *right_line)
{
    const bk_bench_line *left = left_line;
    const bk_bench_line *right = right_line;
    int order = order_of(right->ran >= 0, left->ran >= 0);
    if (!order)
        order = order_of(right->fits, left->fits);
    if (!order)
        order = order_of(left->step->can_wait, right->step->can_wait);
    if (!order)
        order = order_latest(left->step, right->step);
    if (!order)
        order = order_of(right->behind, left->behind);
    if (!order)
        order = order_plan(left->step, right->step);
    return order ? order : (left->step > right->step) - (left->step < right->step);
}

// ------------------------------------------------------------------------------------------------- together

/// Finding what is best done together: steps of the same kind that need the same material.
typedef struct together_making {
    bk_bench_line *lines;
    size_t count;
    bk_index *uses;     ///< "KIND MATERIAL" to how many lines need it
    const char **pairs; ///< of each line: that of the material it shares with most others; NULL: with none
    bk_arena *arena;
} together_making;

static const char *pair_of(const together_making *making, const bk_planned_step *step, const char *material)
{
    return bk_arena_print(making->arena, "%d %s", step->kind, material);
}

static void count_uses(const together_making *making)
{
    for (size_t i = 0; i < making->count; i++) {
        const bk_planned_step *step = making->lines[i].step;
        for (size_t m = 0; m < step->material_count; m++)
            ++*bk_index_put(making->uses, pair_of(making, step, step->materials[m]), 0);
    }
}

static void choose_shared(const together_making *making, size_t at)
{
    const bk_planned_step *step = making->lines[at].step;
    long long most = 1;
    for (size_t m = 0; m < step->material_count; m++) {
        const char *pair = pair_of(making, step, step->materials[m]);
        long long uses = *bk_index_find(making->uses, pair);
        if (uses > most) {
            most = uses;
            making->pairs[at] = pair;
            making->lines[at].shared = step->materials[m];
        }
    }
}

/// Numbers the groups in the order of the lines. A line that alone chose its material is in none.
static void number_groups(const together_making *making)
{
    bk_index *chosen = bk_index_new();
    bk_index *numbers = bk_index_new();
    long long last = 0;
    for (size_t i = 0; i < making->count; i++)
        if (making->pairs[i])
            ++*bk_index_put(chosen, making->pairs[i], 0);
    for (size_t i = 0; i < making->count; i++) {
        if (!making->pairs[i])
            continue;
        if (*bk_index_find(chosen, making->pairs[i]) < 2) {
            making->lines[i].shared = NULL;
            continue;
        }
        long long number = *bk_index_put(numbers, making->pairs[i], last + 1);
        making->lines[i].together = (size_t)number;
        last = number > last ? number : last;
    }
    bk_index_free(chosen);
    bk_index_free(numbers);
}

static void group_lines(bk_bench_line *lines, size_t count, bk_arena *arena)
{
    together_making making = {.lines = lines, .count = count, .uses = bk_index_new(), .arena = arena};
    making.pairs = bk_arena_clear(arena, count, sizeof *making.pairs);
    count_uses(&making);
    for (size_t i = 0; i < count; i++)
        choose_shared(&making, i);
    number_groups(&making);
    bk_index_free(making.uses);
}

// ------------------------------------------------------------------------------------------------ the bench

static bk_moment free_until(const bk_forecast *forecast, const bk_planned_person *person)
{
    bk_stretch stretches[BK_STRETCHES];
    int count = person ? bk_calendar_day(person->calendar, forecast->today, stretches) : 0;
    if (!count)
        return (bk_moment){BK_NO_DAY, BK_NO_TIME};
    return (bk_moment){forecast->today, stretches[count - 1].to};
}

static void gather(const bench_making *making, bk_bench_list *list)
{
    bk_bench_line *lines = bk_arena_clear(making->arena, making->forecast->step_count, sizeof *lines);
    for (size_t i = 0; i < making->forecast->step_count; i++) {
        const bk_planned_step *step = &making->forecast->steps[i];
        const long long *ran = bk_id_index_find(making->running, step->id);
        if (!ran && !can_do(making, step))
            continue;
        lines[list->count] = line_of(making, i, ran);
        list->fitting += lines[list->count++].fits;
    }
    if (list->count)
        qsort(lines, list->count, sizeof *lines, order_lines);
    group_lines(lines, list->count, making->arena);
    list->lines = lines;
}

bk_bench_list bk_bench_list_make(const bk_forecast *forecast, const char *person, int64_t minutes,
                                 const bk_running *runnings, size_t running_count, const char *now,
                                 bk_arena *arena)
{
    const bk_planned_person *found = find_person(forecast, person);
    bench_making making = {
        .forecast = forecast,
        .person = found,
        .who = found ? found->name : NULL,
        .now = now,
        .minutes = minutes,
        .running = bk_id_index_new(),
        .today = bk_arena_clear(arena, forecast->step_count, sizeof *making.today),
        .awaited = bk_arena_clear(arena, forecast->step_count, sizeof *making.awaited),
        .arena = arena,
    };
    bk_bench_list list = {.person = found, .free_until = free_until(forecast, found)};
    note_runnings(&making, runnings, running_count);
    note_today(&making);
    note_all_awaited(&making);
    gather(&making, &list);
    bk_id_index_free(making.running);
    return list;
}

bk_bench_list bk_bench_list_of(bk_bench_list list, int64_t production, bk_arena *arena)
{
    bk_bench_line *lines = bk_arena_clear(arena, list.count, sizeof *lines);
    bk_bench_list own = {.person = list.person, .free_until = list.free_until, .lines = lines};
    for (size_t i = 0; i < list.count; i++)
        if (list.lines[i].step->production_id == production) {
            lines[own.count++] = list.lines[i];
            own.fitting += list.lines[i].fits;
        }
    return own;
}
