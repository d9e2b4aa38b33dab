#include "bodkin/plan/shelf.h"

#include <stdbool.h>
#include <stdlib.h>

#include "bodkin/base/arena.h"
#include "support/testing.h"

// What must hold of any sharing, tried on many that are made up by chance. Urgency is told here by numbers alone, drawn
// before the names that go with them, so that nothing rests on the program's own way of sorting.

enum { ROUNDS = 1000, MATERIALS = 3, CLAIMS = 40, ORDERS = 8, TODAY = 1000, SEED = 20270309 };

// Each list in the order of urgency.
static const bk_day dues[] = {990, 1000, 1001, 1010, BK_NO_DAY};
static const bk_day openings[] = {1005, 1020};
static const char *const productions[] = {"Act 10", "Act 2", "Winter", "winter"};
static const char *const costumes[] = {"2A", "2B", "10A", NULL};
static const char *const pieces[] = {"2A-9", "2A-10", "10A-1", "Hat", "hat 2", "hat 10"};
enum { STEPS = 3, NEEDS = 2 };

#define COUNT(table) (sizeof(table) / sizeof(table)[0])

typedef struct shelf_trial {
    uint64_t chance;
    bk_quantity on_hand[MATERIALS];
    bk_incoming orders[ORDERS];
    size_t order_count;
    bk_claim claims[CLAIMS];
    size_t rank[CLAIMS]; // of each claim: the lower, the more urgent
    size_t claim_count;
} shelf_trial;

// Marsaglia's xorshift, 64 bits (Journal of Statistical Software 8, 2003; from memory).
static size_t chance(shelf_trial *trial, size_t below)
{
    trial->chance ^= trial->chance << 13;
    trial->chance ^= trial->chance >> 7;
    trial->chance ^= trial->chance << 17;
    return (size_t)(trial->chance % below);
}

// One of `count`, which joins the rank as its next digit.
static size_t ranked(shelf_trial *trial, size_t claim, size_t count)
{
    size_t drawn = chance(trial, count);
    trial->rank[claim] = trial->rank[claim] * count + drawn;
    return drawn;
}

static void make_claim(shelf_trial *trial, size_t i)
{
    bk_claim *claim = &trial->claims[i];
    trial->rank[i] = 0;
    claim->material = chance(trial, MATERIALS);
    claim->quantity = (bk_quantity)chance(trial, 6);
    claim->due = dues[ranked(trial, i, COUNT(dues))];
    claim->opens = openings[ranked(trial, i, COUNT(openings))];
    claim->production = productions[ranked(trial, i, COUNT(productions))];
    claim->costume = costumes[ranked(trial, i, COUNT(costumes))];
    claim->piece = pieces[ranked(trial, i, COUNT(pieces))];
    claim->step_position = (int64_t)ranked(trial, i, STEPS);
    claim->need_position = (int64_t)ranked(trial, i, NEEDS);
    trial->rank[i] = trial->rank[i] * CLAIMS + i;
}

static void make_trial(shelf_trial *trial)
{
    for (size_t i = 0; i < MATERIALS; i++)
        trial->on_hand[i] = (bk_quantity)chance(trial, 40) - 8;
    trial->order_count = chance(trial, ORDERS + 1);
    for (size_t i = 0; i < trial->order_count; i++) {
        bk_day due = dues[chance(trial, COUNT(dues))];
        trial->orders[i] =
            (bk_incoming){chance(trial, MATERIALS), (bk_quantity)chance(trial, 9), due, (int64_t)i};
    }
    trial->claim_count = chance(trial, CLAIMS + 1);
    for (size_t i = 0; i < trial->claim_count; i++)
        make_claim(trial, i);
    bk_shelf_share(trial->on_hand, MATERIALS, trial->orders, trial->order_count, TODAY, trial->claims,
                   trial->claim_count);
}

static bk_quantity taken(const bk_claim *claim)
{
    return claim->quantity - claim->short_of;
}

static bool all_that_is_wanted_is_taken_and_no_more_than_there_is(const shelf_trial *trial)
{
    bool held = true;
    for (size_t material = 0; material < MATERIALS; material++) {
        bk_quantity there = trial->on_hand[material] > 0 ? trial->on_hand[material] : 0;
        bk_quantity wanted = 0, used = 0;
        for (size_t i = 0; i < trial->claim_count; i++)
            if (trial->claims[i].material == material) {
                wanted += trial->claims[i].quantity;
                used += taken(&trial->claims[i]);
            }
        held = held && used == (wanted < there ? wanted : there);
    }
    return held;
}

static bool is_served(const bk_claim *claim)
{
    return claim->quantity > 0 && claim->supply != BK_SUPPLY_NOT_ORDERED;
}

static bool nobody_is_served_while_a_more_urgent_one_is_short(const shelf_trial *trial)
{
    bool held = true;
    for (size_t i = 0; i < trial->claim_count; i++) {
        const bk_claim *one = &trial->claims[i];
        held = held && one->short_of >= 0 && taken(one) >= 0;
        for (size_t j = 0; j < trial->claim_count && one->short_of > 0; j++) {
            const bk_claim *other = &trial->claims[j];
            if (one->material != other->material || trial->rank[j] <= trial->rank[i])
                continue;
            held = held && taken(other) == 0 && !(one->supply == BK_SUPPLY_NOT_ORDERED && is_served(other));
        }
    }
    return held;
}

// How much of the material the claims up to this one lack together.
static bk_quantity lacking_up_to(const shelf_trial *trial, size_t claim)
{
    bk_quantity lacking = 0;
    for (size_t i = 0; i < trial->claim_count; i++)
        if (trial->claims[i].material == trial->claims[claim].material &&
            trial->rank[i] <= trial->rank[claim])
            lacking += trial->claims[i].short_of;
    return lacking;
}

// How much comes of the material by a day, that day included.
static bk_quantity coming_by(const shelf_trial *trial, size_t material, size_t due)
{
    bk_quantity coming = 0;
    for (size_t i = 0; i < trial->order_count; i++)
        for (size_t day = 0; day <= due; day++)
            if (trial->orders[i].material == material && trial->orders[i].due == dues[day])
                coming += trial->orders[i].quantity;
    return coming;
}

// All claims before and this one are met by the first day by which as much has come as they lack together.
static bk_supply expected_supply(const shelf_trial *trial, size_t claim, bk_day *day)
{
    bk_quantity lacking = lacking_up_to(trial, claim);
    for (size_t due = 0; due < COUNT(dues); due++)
        if (coming_by(trial, trial->claims[claim].material, due) >= lacking) {
            *day = dues[due];
            if (dues[due] == BK_NO_DAY)
                return BK_SUPPLY_NO_DATE;
            return dues[due] < TODAY ? BK_SUPPLY_LATE : BK_SUPPLY_DUE;
        }
    return BK_SUPPLY_NOT_ORDERED;
}

static bool each_shortage_is_told_by_the_day_that_ends_it(const shelf_trial *trial)
{
    bool held = true;
    for (size_t i = 0; i < trial->claim_count; i++) {
        const bk_claim *claim = &trial->claims[i];
        bk_day day = claim->supply_day;
        bk_supply supply = claim->short_of == 0 ? BK_SUPPLY_SHELF : expected_supply(trial, i, &day);
        held = held && claim->supply == supply && claim->supply_day == day;
    }
    return held;
}

START_TEST(any_sharing_is_fair_and_complete)
{
    static shelf_trial trial = {.chance = SEED};
    for (int i = 0; i < ROUNDS; i++) {
        make_trial(&trial);
        ck_assert(all_that_is_wanted_is_taken_and_no_more_than_there_is(&trial));
        ck_assert(nobody_is_served_while_a_more_urgent_one_is_short(&trial));
        ck_assert(each_shortage_is_told_by_the_day_that_ends_it(&trial));
    }
}
END_TEST

START_TEST(a_long_queue_is_shared_without_disturbing_its_order)
{
    enum { LONG = 100000 };
    bk_claim *claims = bk_alloc_clear(LONG, sizeof *claims);
    bk_quantity on_hand = LONG / 2;
    for (size_t i = 0; i < LONG; i++)
        claims[i] = (bk_claim){.quantity = 1,
                               .due = TODAY,
                               .production = "Winter",
                               .piece = "coat",
                               .step_position = (int64_t)(LONG - i)};
    bk_shelf_share(&on_hand, 1, NULL, 0, TODAY, claims, LONG);
    size_t moved = 0, wrong = 0;
    for (size_t i = 0; i < LONG; i++) {
        moved += claims[i].step_position != (int64_t)(LONG - i);
        wrong += claims[i].short_of != (i < LONG / 2 ? 1 : 0);
    }
    ck_assert_uint_eq(moved, 0);
    ck_assert_uint_eq(wrong, 0);
    free(claims);
}
END_TEST

BK_TEST_MAIN("shelf, by chance", any_sharing_is_fair_and_complete,
             a_long_queue_is_shared_without_disturbing_its_order)
