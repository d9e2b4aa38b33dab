#include "bodkin/plan/pace.h"

#include <math.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/plan/chance.h"
#include "support/testing.h"

enum { TAKEN = 24 };

#define NOT_SAID INT64_MIN

static const bk_pace *pace_at(const bk_paces *paces, int kind, const char *person)
{
    for (size_t i = 0; i < paces->count; i++) {
        const char *whose = paces->items[i].person;
        bool theirs = person == NULL ? whose == NULL : whose != NULL && strcmp(whose, person) == 0;
        if (paces->items[i].kind == kind && theirs)
            return &paces->items[i];
    }
    return NULL;
}

// ------------------------------------------------------------------------------------------- middle and percentiles

typedef struct ratio_row {
    const char *says;
    size_t count;
    int64_t minutes[TAKEN][2]; // guessed, took
    int64_t quickest, middle, longest;
} ratio_row;

static const ratio_row ratios[] = {
    {"one step is its own middle", 1, {{60, 90}}, 1500, 1500, 1500},
    {"a third is rounded down", 1, {{3, 1}}, 333, 333, 333},
    {"two thirds up", 1, {{3, 2}}, 667, 667, 667},
    {"and a half of a thousandth up", 1, {{2000, 1}}, 1, 1, 1},
    {"less than that is nothing", 1, {{2001, 1}}, 0, 0, 0},
    {"the middle of two lies between them", 2, {{10, 10}, {10, 20}}, 1050, 1500, 1950},
    {"the middle of three is the second", 3, {{10, 30}, {10, 10}, {10, 20}}, 1100, 2000, 2900},
    {"a ratio counts, not the minutes", 3, {{1000, 1000}, {1, 3}, {10, 20}}, 1100, 2000, 2900},
    {"alike ones stand beside each other", 4, {{10, 20}, {20, 40}, {30, 60}, {10, 10}}, 1150, 2000, 2000},
    {"ratios are rounded once, after they are brought together",
     2,
     {{3, 1}, {7, 2}}, // 1/3 and 2/7: the middle is 13/42 = 0.30952, the ends 0.28810 and 0.33095
     288,
     310,
     331},
    {"eight in a row: 1.35, 4.5 and 7.65 (by hand)",
     8,
     {{5, 40}, {5, 35}, {5, 30}, {5, 25}, {5, 20}, {5, 15}, {5, 10}, {5, 5}},
     1350,
     4500,
     7650},
    {"of twenty-one the second, the eleventh and the last but one",
     21,
     {{1, 1},  {1, 2},  {1, 3},  {1, 4},  {1, 5},  {1, 6},  {1, 7},  {1, 8},  {1, 9},  {1, 10}, {1, 11},
      {1, 12}, {1, 13}, {1, 14}, {1, 15}, {1, 16}, {1, 17}, {1, 18}, {1, 19}, {1, 20}, {1, 21}},
     2000,
     11000,
     20000},
    {"the longest steps there are",
     2,
     {{BK_PACE_MOST, BK_PACE_MOST - 1}, {BK_PACE_MOST - 1, BK_PACE_MOST}},
     1000,
     1000,
     1000},
    {"the widest ratios there are",
     2,
     {{1, BK_PACE_MOST}, {BK_PACE_MOST, 1}},
     50000000,
     500000000,
     950000000},
};

static void check_ratios(const ratio_row *row)
{
    bk_arena *arena = bk_arena_new();
    bk_minutes_taken taken[TAKEN];
    int64_t guessed = 0, took = 0;
    for (size_t i = 0; i < row->count; i++) {
        taken[i] = (bk_minutes_taken){BK_CUT, "Ada Finch", row->minutes[i][0], row->minutes[i][1]};
        guessed += row->minutes[i][0];
        took += row->minutes[i][1];
    }
    bk_paces paces = bk_paces_reckon(taken, row->count, arena);
    ck_assert_uint_eq(paces.count, 4);
    for (size_t i = 0; i < paces.count; i++) {
        const bk_pace *pace = &paces.items[i];
        ck_assert_msg(pace->middle == row->middle, "%s: middle %lld", row->says, (long long)pace->middle);
        ck_assert_msg(pace->quickest == row->quickest, "%s: quickest %lld", row->says,
                      (long long)pace->quickest);
        ck_assert_msg(pace->longest == row->longest, "%s: longest %lld", row->says, (long long)pace->longest);
        ck_assert_int_eq(pace->count, (int64_t)row->count);
        ck_assert_int_eq(pace->guessed, guessed);
        ck_assert_int_eq(pace->took, took);
    }
    bk_arena_free(arena);
}

START_TEST(the_middle_and_the_ends_of_what_steps_took)
{
    for (size_t i = 0; i < sizeof ratios / sizeof ratios[0]; i++)
        check_ratios(&ratios[i]);
}
END_TEST

static int ratio_order(const void *left, const void *right)
{
    const double *one = left, *other = right;
    return (*one > *other) - (*one < *other);
}

// Linear between the neighbours of place p (n - 1), counted from 0, as numpy.percentile does where it is not told otherwise
// (method "linear", definition 7 of Hyndman & Fan 1996); in floating point.
static double percentile(const double *ordered, size_t count, double part)
{
    double place = part * (double)(count - 1);
    size_t below = (size_t)floor(place);
    size_t above = below + 1 < count ? below + 1 : below;
    return ordered[below] + (ordered[above] - ordered[below]) * (place - floor(place));
}

static void check_rounded(int64_t thousandths, double ratio)
{
    const double half = 0.5 + 1e-6;
    ck_assert_msg(fabs((double)thousandths - ratio * 1000) <= half, "%lld for %.9f", (long long)thousandths,
                  ratio);
}

START_TEST(percentiles_are_those_of_a_reckoning_in_floating_point)
{
    enum { ROUNDS = 2000, MOST = 60, MINUTES = 500, SEED = 20270301 };
    bk_chance chance = bk_chance_from(SEED);
    for (int round = 0; round < ROUNDS; round++) {
        bk_arena *arena = bk_arena_new();
        bk_minutes_taken taken[MOST];
        double ordered[MOST];
        size_t count = 1 + bk_chance_below(&chance, MOST);
        for (size_t i = 0; i < count; i++) {
            int64_t guessed = 1 + bk_chance_below(&chance, MINUTES),
                    took = 1 + bk_chance_below(&chance, MINUTES);
            taken[i] = (bk_minutes_taken){BK_HAND, NULL, guessed, took};
            ordered[i] = (double)took / (double)guessed;
        }
        qsort(ordered, count, sizeof *ordered, ratio_order);
        bk_paces paces = bk_paces_reckon(taken, count, arena);
        check_rounded(paces.items[0].quickest, percentile(ordered, count, 0.05));
        check_rounded(paces.items[0].middle, percentile(ordered, count, 0.5));
        check_rounded(paces.items[0].longest, percentile(ordered, count, 0.95));
        bk_arena_free(arena);
    }
}
END_TEST

// ------------------------------------------------------------------------------------------------------- the order

static const bk_minutes_taken mixed[] = {{BK_HAND, "Zoe Marl", 10, 20},  {BK_CUT, "Ada Finch", 10, 10},
                                         {BK_CUT, NULL, 10, 30},         {BK_HAND, "Ada Finch", 10, 40},
                                         {BK_CUT, "Zoe Marl", 10, 50},   {BK_HAND, "Ada Finch", 20, 20},
                                         {BK_NO_WORD, "Ada Finch", 5, 5}};

static const struct {
    int kind;
    const char *person;
    int64_t count, guessed, took;
} in_order[] = {{BK_NO_WORD, NULL, 7, 75, 175},      {BK_CUT, NULL, 3, 30, 90},
                {BK_HAND, NULL, 3, 40, 80},          {BK_NO_WORD, "Ada Finch", 4, 45, 75},
                {BK_NO_WORD, "Zoe Marl", 2, 20, 70}, {BK_CUT, "Ada Finch", 1, 10, 10},
                {BK_CUT, "Zoe Marl", 1, 10, 50},     {BK_HAND, "Ada Finch", 2, 30, 60},
                {BK_HAND, "Zoe Marl", 1, 10, 20}};

START_TEST(all_stand_first_then_kinds_then_persons_then_both)
{
    bk_arena *arena = bk_arena_new();
    bk_paces paces = bk_paces_reckon(mixed, sizeof mixed / sizeof mixed[0], arena);
    ck_assert_uint_eq(paces.count, sizeof in_order / sizeof in_order[0]);
    for (size_t i = 0; i < paces.count; i++) {
        ck_assert_int_eq(paces.items[i].kind, in_order[i].kind);
        ck_assert_pstr_eq(paces.items[i].person, in_order[i].person);
        ck_assert_int_eq(paces.items[i].count, in_order[i].count);
        ck_assert_int_eq(paces.items[i].guessed, in_order[i].guessed);
        ck_assert_int_eq(paces.items[i].took, in_order[i].took);
    }
    bk_arena_free(arena);
}
END_TEST

START_TEST(names_are_kept_with_the_result)
{
    bk_arena *arena = bk_arena_new();
    char name[] = "Ada Finch";
    bk_minutes_taken taken = {BK_CUT, name, 10, 20};
    bk_paces paces = bk_paces_reckon(&taken, 1, arena);
    name[0] = 'X';
    ck_assert_str_eq(pace_at(&paces, BK_CUT, "Ada Finch")->person, "Ada Finch");
    bk_arena_free(arena);
}
END_TEST

START_TEST(what_is_no_record_is_left_out)
{
    static const bk_minutes_taken none[] = {{BK_CUT, "Ada Finch", 0, 10},
                                            {BK_CUT, "Ada Finch", 10, 0},
                                            {BK_CUT, "Ada Finch", -5, 10},
                                            {BK_CUT, "Ada Finch", INT64_MIN, INT64_MIN},
                                            {BK_CUT, "Ada Finch", 10, BK_PACE_MOST + 1},
                                            {BK_CUT, "Ada Finch", BK_PACE_MOST + 1, 10}};
    bk_arena *arena = bk_arena_new();
    ck_assert_uint_eq(bk_paces_reckon(none, sizeof none / sizeof none[0], arena).count, 0);
    ck_assert_uint_eq(bk_paces_reckon(NULL, 0, arena).count, 0);
    bk_arena_free(arena);
}
END_TEST

// ----------------------------------------------------------------------------------------------------- which holds

enum { ADA_CUT = 8, ZOE_CUT = 7, ZOE_HAND = 1, ADA_DYE = 7, NAMELESS_DYE = 1, BEA_PRESS = 7 };

// Ada cut eight times, Zoe seven and sewed by hand once; dyed was eight times, by Ada seven; Bea pressed seven times.
static bk_paces some_paces(bk_arena *arena)
{
    static const struct {
        int kind;
        const char *person;
        int times;
        int64_t took;
    } parts[] = {{BK_CUT, "Ada Finch", ADA_CUT, 20},  {BK_CUT, "Zoe Marl", ZOE_CUT, 30},
                 {BK_HAND, "Zoe Marl", ZOE_HAND, 40}, {BK_DYE, "Ada Finch", ADA_DYE, 50},
                 {BK_DYE, NULL, NAMELESS_DYE, 60},    {BK_PRESS, "Bea Sand", BEA_PRESS, 70}};
    bk_minutes_taken taken[ADA_CUT + ZOE_CUT + ZOE_HAND + ADA_DYE + NAMELESS_DYE + BEA_PRESS];
    size_t count = 0;
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++)
        for (int j = 0; j < parts[i].times; j++)
            taken[count++] = (bk_minutes_taken){parts[i].kind, parts[i].person, 10, parts[i].took};
    return bk_paces_reckon(taken, count, arena);
}

static const struct {
    const char *says;
    int kind;
    const char *person;
    bool holds;
    int of_kind;
    const char *of_person;
} holding[] = {
    {"eight of their own of that kind", BK_CUT, "Ada Finch", true, BK_CUT, "Ada Finch"},
    {"with seven of their own that kind's holds", BK_CUT, "Zoe Marl", true, BK_CUT, NULL},
    {"for one who never did it too", BK_CUT, "Bea Sand", true, BK_CUT, NULL},
    {"and for anybody", BK_CUT, NULL, true, BK_CUT, NULL},
    {"those whose doer is not known count for the kind", BK_DYE, "Ada Finch", true, BK_DYE, NULL},
    {"without enough of the kind the person's holds", BK_HAND, "Zoe Marl", true, BK_NO_WORD, "Zoe Marl"},
    {"also where that kind was never done", BK_FIT, "Zoe Marl", true, BK_NO_WORD, "Zoe Marl"},
    {"seven are not enough", BK_PRESS, "Bea Sand", false, 0, NULL},
    {"what everybody took at all is never used", BK_PRESS, NULL, false, 0, NULL},
    {"nor for a stranger", BK_PRESS, "Nobody Here", false, 0, NULL},
    {"nor where neither kind nor person is known", BK_NO_WORD, NULL, false, 0, NULL},
    {"a person alone", BK_NO_WORD, "Ada Finch", true, BK_NO_WORD, "Ada Finch"},
};

START_TEST(a_record_holds_from_eight_on)
{
    bk_arena *arena = bk_arena_new();
    bk_paces paces = some_paces(arena);
    for (size_t i = 0; i < sizeof holding / sizeof holding[0]; i++) {
        const bk_pace *pace = bk_pace_for(&paces, holding[i].kind, holding[i].person);
        const bk_pace *wanted =
            holding[i].holds ? pace_at(&paces, holding[i].of_kind, holding[i].of_person) : NULL;
        ck_assert_msg(!holding[i].holds || wanted != NULL, "%s: there is none", holding[i].says);
        ck_assert_msg(pace == wanted, "%s: another one", holding[i].says);
    }
    bk_arena_free(arena);
}
END_TEST

// ------------------------------------------------------------------------------------------------------- estimates

static const struct {
    const char *says;
    bool recorded;
    int64_t quickest, usual, longest;
    bk_estimate made;
} estimates[] = {
    {"without a record the stated spread", false, NOT_SAID, 100, NOT_SAID, {60, 100, 175}},
    {"without a record what is said", false, 80, 100, 150, {80, 100, 150}},
    {"all by the record", true, NOT_SAID, 100, NOT_SAID, {80, 125, 300}},
    {"what is said by the middle", true, 80, 100, 160, {100, 125, 200}},
    {"only the quickest said", true, 40, 100, NOT_SAID, {50, 125, 300}},
    {"only the longest said", true, NOT_SAID, 100, 104, {80, 125, 130}},
    {"rounded half up", true, NOT_SAID, 2, NOT_SAID, {2, 3, 6}},
    {"a quickest said above the usual comes down to it", true, 200, 100, NOT_SAID, {125, 125, 300}},
    {"a longest said below it goes up", true, NOT_SAID, 100, 10, {80, 125, 125}},
    {"no minutes stay none", true, NOT_SAID, 0, NOT_SAID, {0, 0, 0}},
    {"minutes that are not known count as none", true, NOT_SAID, NOT_SAID, NOT_SAID, {0, 0, 0}},
};

START_TEST(an_estimate_follows_the_record)
{
    static const bk_pace pace = {.count = 8, .quickest = 800, .middle = 1250, .longest = 3000};
    for (size_t i = 0; i < sizeof estimates / sizeof estimates[0]; i++) {
        bk_estimate made = bk_pace_estimate(estimates[i].recorded ? &pace : NULL, estimates[i].quickest,
                                            estimates[i].usual, estimates[i].longest);
        ck_assert_msg(made.quickest == estimates[i].made.quickest && made.usual == estimates[i].made.usual &&
                          made.longest == estimates[i].made.longest,
                      "%s: %lld %lld %lld", estimates[i].says, (long long)made.quickest,
                      (long long)made.usual, (long long)made.longest);
    }
}
END_TEST

BK_TEST_MAIN("pace", the_middle_and_the_ends_of_what_steps_took,
             percentiles_are_those_of_a_reckoning_in_floating_point,
             all_stand_first_then_kinds_then_persons_then_both, names_are_kept_with_the_result,
             what_is_no_record_is_left_out, a_record_holds_from_eight_on, an_estimate_follows_the_record)
