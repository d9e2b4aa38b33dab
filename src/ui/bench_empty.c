#include "bodkin/ui/bench_empty.h"

#include "bodkin/base/text.h"
#include "bodkin/sheet/wait_words.h"

enum { TOLD = 8 }; // of what waits

static bool can_do(const bk_planned_person *person, const bk_planned_step *step)
{
    return !person || (step->kind >= 0 && (person->skills & 1U << step->kind) != 0);
}

// The first wait of a costume that holds a step, or its piece, other than hand sewing.
static const bk_wait *wait_in(const bk_rail *rail, const bk_costume_waits *costume, size_t step)
{
    size_t piece = rail->rows.steps[step].piece;
    for (size_t i = 0; i < costume->wait_count; i++) {
        const bk_wait *wait = &costume->waits[i];
        bool of_piece = wait->step == BK_NO_INDEX && wait->piece == piece;
        if (wait->on != BK_WAIT_HAND && (wait->step == step || of_piece))
            return wait;
    }
    return NULL;
}

// "4A-2/fit: fitting not booked"; NULL where the rail knows of no wait, or not of the step.
static const char *wait_words(const bk_rail *rail, const bk_planned_step *step, bk_arena *arena)
{
    size_t index = 0;
    while (rail && index < rail->rows.step_count && rail->steps[index].id != step->id)
        index++;
    if (!rail || index == rail->rows.step_count)
        return NULL;
    for (size_t i = 0; i < rail->costume_count; i++) {
        const bk_wait *wait = wait_in(rail, rail->costumes[i].reckoned, index);
        if (wait)
            return bk_arena_print(arena, "%s/%s: %s", step->piece, step->key,
                                  bk_wait_brief(rail, wait, arena));
    }
    return NULL;
}

typedef struct waiting {
    size_t open;  // steps of what this person can do that are open
    size_t waits; // and next, but waiting
    size_t told;
    const char *words;
} waiting;

static waiting what_waits(const bk_rail *rail, const bk_forecast *forecast, const bk_planned_person *person,
                          bk_arena *arena)
{
    waiting all = {.words = ""};
    for (size_t i = 0; i < forecast->step_count; i++) {
        const bk_planned_step *step = &forecast->steps[i];
        if (!can_do(person, step))
            continue;
        all.open++;
        all.waits += step->next && !step->free_now ? 1 : 0;
        const char *words = step->next && all.told < TOLD ? wait_words(rail, step, arena) : NULL;
        if (!words)
            continue;
        all.words = bk_arena_print(arena, "%s\n%s", all.words, words);
        all.told++;
    }
    return all;
}

static const char *what_waits_words(const waiting *all, const char *who, bk_arena *arena)
{
    if (all->open == 0)
        return bk_arena_print(arena, "No step that %s can do is open.", who);
    if (all->waits == 0)
        return bk_arena_print(arena,
                              "Nothing can be done now by %s: every step of that kind comes after others "
                              "that are still open.",
                              who);
    const char *rest = all->told > 0 && all->told < all->waits
                           ? bk_arena_print(arena, "\nand %zu more", all->waits - all->told)
                           : "";
    return bk_arena_print(arena, "Nothing can be done now by %s. %zu step%s that come%s next wait%s%s%s%s",
                          who, all->waits, all->waits == 1 ? "" : "s", all->waits == 1 ? "s" : "",
                          all->waits == 1 ? "s" : "", all->told > 0 ? ":\n" : ".", all->words, rest);
}

const char *bk_bench_empty(const bk_wall *wall, const bk_forecast *forecast, const bk_planned_person *person,
                           bk_arena *arena)
{
    if (forecast->person_count == 0)
        return "Nobody is in this workroom yet, so there is nobody's bench.\n\nH shows the Hands: + there "
               "enters who makes costumes here, yourself first, with all you can do and your hours.";
    if (person && person->skills == 0)
        return bk_arena_print(arena,
                              "%s has no skills yet: H, and e on the name enters the kinds of step that "
                              "can be done.",
                              person->name);
    waiting all = what_waits(wall->rail, forecast, person, arena);
    return what_waits_words(&all, person ? person->name : "anybody", arena);
}
