#include "bodkin/plan/pace.h"

#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/proportion.h"

enum {
    THOUSAND = 1000,
    PARTS = 20, // a place in the order of ratios is told in twentieths of the whole
    QUICKEST_PART = 1,
    MIDDLE_PART = 10,
    LONGEST_PART = 19
};

// What a record is kept by. The entries of steps whose kind or person is not known are left out of those that ask for it.
static const struct {
    bool by_kind, by_person;
} keepings[] = {{false, false}, {true, false}, {false, true}, {true, true}};

typedef BK_LIST(bk_pace) pace_list;

// -------------------------------------------------------------------------------------------------------- the order

static int person_order(const char *left, const char *right)
{
    if (left == NULL || right == NULL)
        return (left != NULL) - (right != NULL);
    return strcmp(left, right);
}

// By kind, person, and took / guessed; BK_PACE_MOST keeps the products in range.
static int taken_order(const void *left, const void *right)
{
    const bk_minutes_taken *one = left, *other = right;
    if (one->kind != other->kind)
        return one->kind < other->kind ? -1 : 1;
    int persons = person_order(one->person, other->person);
    if (persons != 0)
        return persons;
    int64_t this_way = one->took * other->guessed, that_way = other->took * one->guessed;
    return (this_way > that_way) - (this_way < that_way);
}

static bool is_whole_record(const bk_minutes_taken *taken)
{
    return taken->guessed > 0 && taken->guessed <= BK_PACE_MOST && taken->took > 0 &&
           taken->took <= BK_PACE_MOST;
}

// Copies what one keeping takes in, with only that named which it is kept by, and puts it in order; returns how many.
static size_t gather(const bk_minutes_taken *taken, size_t count, bool by_kind, bool by_person,
                     bk_minutes_taken *kept)
{
    size_t found = 0;
    for (size_t i = 0; i < count; i++) {
        bool kind_known = taken[i].kind >= 0 && taken[i].kind < BK_KINDS;
        if (!is_whole_record(&taken[i]) || (by_kind && !kind_known) || (by_person && taken[i].person == NULL))
            continue;
        kept[found] = taken[i];
        kept[found].kind = by_kind ? taken[i].kind : BK_NO_WORD;
        kept[found].person = by_person ? taken[i].person : NULL;
        found++;
    }
    if (found > 0)
        qsort(kept, found, sizeof *kept, taken_order);
    return found;
}

// -------------------------------------------------------------------------------------------------------- the record

// Took / guessed in thousandths, rounded half up, at part / PARTS of the way from the first to the last of them: between two
// neighbours in proportion (Hyndman & Fan 1996, Sample quantiles in statistical packages, definition 7).
static int64_t ratio_at(const bk_minutes_taken *ordered, size_t count, size_t part)
{
    size_t place = (count - 1) * part;
    const bk_minutes_taken *lower = &ordered[place / PARTS];
    int64_t beyond = (int64_t)(place % PARTS);
    const bk_minutes_taken *upper = beyond == 0 ? lower : lower + 1;
    int64_t sum = lower->took * upper->guessed * (PARTS - beyond) + upper->took * lower->guessed * beyond;
    int64_t divisor = lower->guessed * upper->guessed * PARTS;
    return bk_in_proportion(sum, THOUSAND, divisor);
}

static bk_pace pace_of(const bk_minutes_taken *ordered, size_t count, bk_arena *arena)
{
    bk_pace pace = {.kind = ordered->kind, .count = (int64_t)count};
    pace.person = bk_arena_text(arena, ordered->person);
    for (size_t i = 0; i < count; i++) {
        pace.guessed += ordered[i].guessed;
        pace.took += ordered[i].took;
    }
    pace.quickest = ratio_at(ordered, count, QUICKEST_PART);
    pace.middle = ratio_at(ordered, count, MIDDLE_PART);
    pace.longest = ratio_at(ordered, count, LONGEST_PART);
    return pace;
}

static bool alike(const bk_minutes_taken *left, const bk_minutes_taken *right)
{
    return left->kind == right->kind && person_order(left->person, right->person) == 0;
}

// Adds a record for each run of entries with the same kind and person.
static void add_paces(pace_list *paces, const bk_minutes_taken *ordered, size_t count, bk_arena *arena)
{
    size_t begin = 0;
    for (size_t i = 1; i <= count; i++) {
        if (i < count && alike(&ordered[begin], &ordered[i]))
            continue;
        bk_list_add(paces, pace_of(ordered + begin, i - begin, arena));
        begin = i;
    }
}

bk_paces bk_paces_reckon(const bk_minutes_taken *taken, size_t count, bk_arena *arena)
{
    pace_list paces = {0};
    bk_minutes_taken *kept = bk_alloc_clear(count, sizeof *kept);
    for (size_t i = 0; i < sizeof keepings / sizeof keepings[0]; i++) {
        size_t found = gather(taken, count, keepings[i].by_kind, keepings[i].by_person, kept);
        add_paces(&paces, kept, found, arena);
    }
    bk_pace *items = bk_arena_take(arena, paces.count * sizeof *items);
    if (paces.count > 0)
        memcpy(items, paces.items, paces.count * sizeof *items);
    bk_paces reckoned = {items, paces.count};
    bk_list_free(&paces);
    free(kept);
    return reckoned;
}

// ------------------------------------------------------------------------------------------------------------ using

// The record kept by just these, where there are enough in it.
static const bk_pace *enough_of(const bk_paces *paces, int kind, const char *person)
{
    for (size_t i = 0; i < paces->count; i++) {
        const bk_pace *pace = &paces->items[i];
        if (pace->kind == kind && person_order(pace->person, person) == 0)
            return pace->count >= BK_PACE_ENOUGH ? pace : NULL;
    }
    return NULL;
}

const bk_pace *bk_pace_for(const bk_paces *paces, int kind, const char *person)
{
    const bk_pace *pace = NULL;
    if (kind != BK_NO_WORD && person != NULL)
        pace = enough_of(paces, kind, person);
    if (pace == NULL && kind != BK_NO_WORD)
        pace = enough_of(paces, kind, NULL);
    if (pace == NULL && person != NULL)
        pace = enough_of(paces, BK_NO_WORD, person);
    return pace;
}

static int64_t scaled(int64_t minutes, int64_t thousandths)
{
    return minutes <= 0 ? 0 : bk_in_proportion(minutes, thousandths, THOUSAND);
}

// What the step says itself by the middle of the record; what it does not say (INT64_MIN), from its usual minutes.
static int64_t said_or_recorded(int64_t said, int64_t usual, int64_t middle, int64_t recorded)
{
    return said == INT64_MIN ? scaled(usual, recorded) : scaled(said, middle);
}

bk_estimate bk_pace_estimate(const bk_pace *pace, int64_t quickest, int64_t usual, int64_t longest)
{
    if (pace == NULL)
        return bk_estimate_complete(quickest, usual, longest);
    return bk_estimate_complete(said_or_recorded(quickest, usual, pace->middle, pace->quickest),
                                scaled(usual, pace->middle),
                                said_or_recorded(longest, usual, pace->middle, pace->longest));
}
