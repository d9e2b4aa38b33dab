// Doubts about measures. The woman who is measured here is the survey's average (NATICK/TR-15/007, 2012), to about 2 cm.

#include "bodkin/trade/doubts.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#include "bodkin/trade/doubts_bodies.h"
#include "bodkin/trade/measures.h"
#include "support/testing.h"

enum { MOST = 64, TEST_DAY = 20820, A_YEAR = 365 };

#define CM(x) ((bk_length)((x)*BK_MICROMETRES_PER_CM + .5))
#define INCHES(x) ((bk_length)((x)*BK_MICROMETRES_PER_INCH + .5))

static const bk_taken woman[] = {
    {"height", CM(163)},           {"head girth", CM(56)},      {"neck girth", CM(33)},
    {"shoulder length", CM(13.5)}, {"bust girth", CM(94)},      {"waist girth", CM(83)},
    {"hip girth", CM(102)},        {"upper arm girth", CM(30)}, {"wrist girth", CM(15.4)},
    {"arm length", CM(54.3)},      {"nape to waist", CM(41)},   {"inside leg", CM(78.3)},
    {"thigh girth", CM(61)},       {"knee girth", CM(39.1)},    {"calf girth", CM(37.2)},
    {"ankle girth", CM(21.6)},     {"foot length", CM(24.6)},
};

enum { WOMANS = sizeof woman / sizeof *woman };

static bk_arena *texts(void)
{
    static bk_arena *arena;
    arena = arena ? arena : bk_arena_new();
    return arena;
}

static bk_taken *changed(const char *measure, bk_length value)
{
    bk_taken *items = bk_arena_take(texts(), sizeof woman);
    memcpy(items, woman, sizeof woman);
    for (size_t i = 0; i < WOMANS; i++)
        if (!strcmp(items[i].measure, measure))
            items[i].value = value;
    return items;
}

static bk_doubts doubts_of(const bk_taken *items, size_t count, bk_unit unit)
{
    return bk_doubts_of_sheet(&(bk_taken_sheet){items, count, TEST_DAY}, NULL, unit, texts());
}

/// The only doubt of a sheet, which is about that measure.
static void expect_doubt(bk_doubts doubts, const bk_taken *items, const char *measure, const char *sentence)
{
    ck_assert_msg(doubts.count == 1, "%zu doubts, not: %s %s", doubts.count, measure, sentence);
    ck_assert_str_eq(items[doubts.items[0].item].measure, measure);
    ck_assert_msg(!strncmp(doubts.items[0].says, sentence, strlen(sentence)), "%s", doubts.items[0].says);
}

START_TEST(an_average_body_gives_no_doubt)
{
    ck_assert_uint_eq(doubts_of(woman, WOMANS, BK_CM).count, 0);
    ck_assert_uint_eq(doubts_of(woman, WOMANS, BK_INCH).count, 0);
    ck_assert_uint_eq(doubts_of(woman, 0, BK_CM).count, 0);
}
END_TEST

START_TEST(each_slip_is_named_with_what_was_meant)
{
    static const struct {
        const char *measure;
        bk_length value;
        const char *sentence;
    } slips[] = {
        {"waist girth", CM(32.7), "32.7 cm looks like inches taken for centimetres: 83.1 cm would go with"},
        {"bust girth", CM(37), "37 cm looks like inches taken for centimetres: 94 cm would go with"},
        {"height", CM(64.2), "64.2 cm looks like inches taken for centimetres: 163.1 cm would go with"},
        {"hip girth", INCHES(102), "259.08 cm looks like centimetres taken for inches: 102 cm would go with"},
        {"waist girth", CM(830), "830 cm looks like a decimal point left out: 83 cm would go with"},
        {"arm length", CM(5.43), "5.43 cm looks like a decimal point too early: 54.3 cm would go with"},
        {"waist girth", CM(38), "38 cm looks like two digits swapped: 83 cm would go with"},
        {"arm length", CM(45.3), "45.3 cm looks like two digits swapped: 54.3 cm would go with"},
        {"height", CM(613), "613 cm looks like two digits swapped: 163 cm would go with"},
        {"thigh girth", CM(16), "16 cm looks like two digits swapped: 61 cm would go with"},
        {"neck girth", CM(48.1), "48.1 cm is far more than would go with the other measures (about 3"},
        {"calf girth", CM(27), "27 cm is far less than would go with the other measures (about 3"},
    };
    for (size_t i = 0; i < sizeof slips / sizeof *slips; i++) {
        bk_taken *items = changed(slips[i].measure, slips[i].value);
        expect_doubt(doubts_of(items, WOMANS, BK_CM), items, slips[i].measure, slips[i].sentence);
    }
}
END_TEST

// How many of the waists from 150 to 230 cm are told to have been meant as something, and how many of these as something
// that is said to go with the other measures; each of the latter must lie within what is told of these.
START_TEST(what_was_meant_goes_with_the_others_only_where_it_lies_within_what_is_told_of_them)
{
    enum { LEAST = 150, MOST_WAIST = 230 };
    size_t meant = 0, going = 0;
    for (int waist = LEAST; waist <= MOST_WAIST; waist++) {
        bk_doubts doubts = doubts_of(changed("waist girth", CM(waist)), WOMANS, BK_CM);
        const char *says = doubts.count > 0 ? doubts.items[0].says : "";
        const char *colon = strstr(says, ": "), *about = strstr(says, "(about ");
        double value = 0, from = 0, to = 0;
        meant += strstr(says, "looks like") != NULL;
        if (!strstr(says, "looks like") || sscanf(colon, ": %lf cm would go", &value) != 1)
            continue;
        going++;
        ck_assert_int_eq(sscanf(about, "(about %lf to %lf cm)", &from, &to), 2);
        ck_assert_msg(value > from - 1 && value < to + 1, "%s", says);
    }
    ck_assert_uint_gt(meant, going);
    ck_assert_uint_gt(going, 0);
}
END_TEST

START_TEST(inches_are_told_in_inches)
{
    bk_taken *items = changed("waist girth", INCHES(83));
    expect_doubt(doubts_of(items, WOMANS, BK_INCH), items, "waist girth",
                 "83 in looks like centimetres taken for inches: 32.68 in would go with");
    items = changed("calf girth", INCHES(41.625));
    expect_doubt(
        doubts_of(items, WOMANS, BK_INCH), items, "calf girth",
        "41 5/8 in looks like two digits swapped: 14 5/8 in would go with the other measures (about 13");
}
END_TEST

START_TEST(several_slips_on_one_sheet_are_all_told_each_by_the_sound_measures)
{
    bk_taken *items = changed("waist girth", CM(32.7));
    items[0].value = INCHES(163);
    items[9].value = CM(543);
    bk_doubts doubts = doubts_of(items, WOMANS, BK_CM);
    ck_assert_uint_eq(doubts.count, 3);
    ck_assert_uint_eq(doubts.items[0].item, 0);
    ck_assert_uint_eq(doubts.items[1].item, 5);
    ck_assert_uint_eq(doubts.items[2].item, 9);
    ck_assert_ptr_nonnull(strstr(doubts.items[0].says, ": 163 cm would go with"));
    ck_assert_ptr_nonnull(strstr(doubts.items[2].says, ": 54.3 cm would go with"));
}
END_TEST

START_TEST(a_waist_far_larger_than_chest_and_hip_is_told_with_both)
{
    bk_taken *items = changed("waist girth", CM(119.6));
    expect_doubt(doubts_of(items, WOMANS, BK_CM), items, "waist girth",
                 "119.6 cm is larger than bust girth (94 cm) and hip girth (102 cm) by far; measure again");
    static const bk_taken few[] = {{"chest girth", CM(94)}, {"hip girth", CM(96)}, {"waist girth", CM(108)}};
    expect_doubt(doubts_of(few, 3, BK_CM), few, "waist girth",
                 "108 cm is larger than chest girth (94 cm) and hip girth (96 cm) by far");
    static const bk_taken stout[] = {
        {"chest girth", CM(94)}, {"hip girth", CM(96)}, {"waist girth", CM(100)}};
    ck_assert_uint_eq(doubts_of(stout, 3, BK_CM).count, 0);
}
END_TEST

START_TEST(what_no_body_has_is_told_also_of_two_measures_alone)
{
    static const bk_taken neck[] = {{"neck girth", CM(40.5)}, {"neck base girth", CM(36)}};
    bk_doubts doubts = doubts_of(neck, 2, BK_CM);
    ck_assert_uint_eq(doubts.count, 1);
    ck_assert_str_eq(doubts.items[0].says,
                     doubts.items[0].item
                         ? "36 cm goes with no body whose neck girth is 40.5 cm; measure both again."
                         : "40.5 cm goes with no body whose neck base girth is 36 cm; measure "
                           "both again.");
    static const bk_taken leg[] = {{"height", CM(125)}, {"inside leg", CM(83)}};
    ck_assert_uint_ge(doubts_of(leg, 2, BK_CM).count, 1);
}
END_TEST

START_TEST(a_whole_sheet_in_the_other_unit_is_no_baby)
{
    static const bk_taken inches[] = {
        {"height", CM(64.2)}, {"bust girth", CM(37)}, {"waist girth", CM(32.7)}, {"hip girth", CM(39.9)}};
    bk_doubts doubts = doubts_of(inches, 4, BK_CM);
    ck_assert_uint_eq(doubts.count, 4);
    for (size_t i = 0; i < doubts.count; i++)
        ck_assert_ptr_nonnull(strstr(doubts.items[i].says, "looks like inches taken for centimetres"));
}
END_TEST

START_TEST(a_size_that_nobody_has_is_told_of_a_measure_alone)
{
    static const struct {
        bk_taken taken;
        const char *sentence;
    } alone[] = {
        {{"height", CM(17.6)}, "17.6 cm looks like a decimal point too early: 176 cm would be usual"},
        {{"waist girth", CM(28)}, "28 cm looks like inches taken for centimetres: 71.1 cm would be usual"},
        {{"waist girth", 0}, "0 cm is far less than would be usual"},
        {{"head girth", CM(77)}, "77 cm is far more than would be usual (about 5"},
        {{"foot length", CM(96)}, "96 cm is far more than would be usual (about 2"},
    };
    for (size_t i = 0; i < sizeof alone / sizeof *alone; i++)
        expect_doubt(doubts_of(&alone[i].taken, 1, BK_CM), &alone[i].taken, alone[i].taken.measure,
                     alone[i].sentence);
}
END_TEST

// Sizes of children as shops and schools give them (from memory).
START_TEST(children_and_tall_and_stout_people_give_no_doubt)
{
    static const bk_taken three[] = {
        {"height", CM(96)},    {"head girth", CM(49.5)}, {"bust girth", CM(53)}, {"waist girth", CM(51)},
        {"hip girth", CM(54)}, {"arm length", CM(32)},   {"inside leg", CM(40)}, {"foot length", CM(15.3)}};
    static const bk_taken ten[] = {
        {"height", CM(140)},     {"head girth", CM(53)},   {"neck girth", CM(29)}, {"bust girth", CM(69)},
        {"waist girth", CM(61)}, {"hip girth", CM(74)},    {"arm length", CM(46)}, {"nape to waist", CM(33)},
        {"inside leg", CM(65)},  {"foot length", CM(21.5)}};
    static const bk_taken small[] = {{"height", CM(85)}, {"waist girth", CM(48)}, {"head girth", CM(48)}};
    static const bk_taken tall[] = {
        {"height", CM(204)},     {"chest girth", CM(112)}, {"waist girth", CM(97)}, {"hip girth", CM(112)},
        {"inside leg", CM(100)}, {"arm length", CM(70)},   {"foot length", CM(32)}, {"head girth", CM(60)}};
    static const bk_taken stout[] = {
        {"height", CM(168)},         {"bust girth", CM(140)}, {"waist girth", CM(132)},
        {"hip girth", CM(146)},      {"neck girth", CM(41)},  {"thigh girth", CM(84)},
        {"upper arm girth", CM(44)}, {"inside leg", CM(75)},  {"arm length", CM(56)}};
    ck_assert_uint_eq(doubts_of(three, sizeof three / sizeof *three, BK_CM).count, 0);
    ck_assert_uint_eq(doubts_of(ten, sizeof ten / sizeof *ten, BK_CM).count, 0);
    ck_assert_uint_eq(doubts_of(small, sizeof small / sizeof *small, BK_CM).count, 0);
    ck_assert_uint_eq(doubts_of(tall, sizeof tall / sizeof *tall, BK_CM).count, 0);
    ck_assert_uint_eq(doubts_of(stout, sizeof stout / sizeof *stout, BK_CM).count, 0);
}
END_TEST

START_TEST(measures_of_the_workrooms_own_and_those_not_known_are_passed_over)
{
    static const bk_taken own[] = {{"elbow to little finger", CM(3000)}, {"waist girth", BK_NO_AMOUNT}};
    ck_assert_uint_eq(doubts_of(own, 2, BK_CM).count, 0);
}
END_TEST

START_TEST(a_value_is_judged_by_what_is_on_the_sheet_so_far)
{
    bk_taken *items = changed("waist girth", CM(32.7));
    bk_taken_sheet so_far = {items, 6, TEST_DAY};
    ck_assert_ptr_nonnull(bk_doubt_of_value(&so_far, 5, NULL, BK_CM, texts()));
    ck_assert_ptr_null(bk_doubt_of_value(&so_far, 4, NULL, BK_CM, texts()));
    items[5].value = CM(83);
    ck_assert_ptr_null(bk_doubt_of_value(&so_far, 5, NULL, BK_CM, texts()));
}
END_TEST

// ------------------------------------------------------------------------------------------------ the last sheet

static const char *against(const char *measure, double before, double now, int days)
{
    bk_taken first[] = {{"height", CM(163)}, {measure, CM(before)}}, then[] = {{measure, CM(now)}};
    bk_taken_sheet old = {first, 2, TEST_DAY - days}, sheet = {then, 1, TEST_DAY};
    return bk_doubt_of_value(&sheet, 0, &old, BK_CM, texts());
}

START_TEST(a_value_far_from_the_last_sheets_is_told_with_it)
{
    ck_assert_str_eq(against("waist girth", 74.5, 88, 30),
                     "88 cm is 13.5 cm more than on the last sheet (74.5 cm); measure again to be sure.");
    ck_assert_str_eq(against("arm length", 60, 53, 30),
                     "53 cm is 7 cm less than on the last sheet (60 cm); measure again to be sure.");
    ck_assert_str_eq(against("my own", 40, 60, 30),
                     "60 cm is 20 cm more than on the last sheet (40 cm); measure again to be sure.");
    ck_assert_ptr_null(against("waist girth", 74.5, 80, 30));
    ck_assert_ptr_null(against("arm length", 60, 61, 30));
    ck_assert_ptr_null(against("wrist girth", 15, 17, 30));
}
END_TEST

START_TEST(more_may_change_in_years_and_children_grow)
{
    ck_assert_ptr_nonnull(against("waist girth", 74.5, 86, 30));
    ck_assert_ptr_null(against("waist girth", 74.5, 86, 2 * A_YEAR));
    bk_taken child[] = {{"height", CM(130)}, {"inside leg", CM(60)}},
             later[] = {{"height", CM(144)}, {"inside leg", CM(68)}};
    bk_taken_sheet old = {child, 2, TEST_DAY - 2 * A_YEAR}, sheet = {later, 2, TEST_DAY};
    ck_assert_uint_eq(bk_doubts_of_sheet(&sheet, &old, BK_CM, texts()).count, 0);
    old.on = TEST_DAY - 30;
    ck_assert_uint_eq(bk_doubts_of_sheet(&sheet, &old, BK_CM, texts()).count, 2);
}
END_TEST

// --------------------------------------------------------------------------------------------- units and the table

START_TEST(the_unit_that_a_sheet_was_typed_in_is_seen)
{
    static const bk_taken cm[] = {{"a", CM(92.5)}, {"b", CM(40)}, {"c", INCHES(36.375)}};
    static const bk_taken inches[] = {{"a", INCHES(36.375)}, {"b", INCHES(15.7)}, {"c", CM(92.5)}};
    ck_assert_int_eq(bk_unit_typed(&(bk_taken_sheet){cm, 3, TEST_DAY}, BK_INCH), BK_CM);
    ck_assert_int_eq(bk_unit_typed(&(bk_taken_sheet){inches, 3, TEST_DAY}, BK_CM), BK_INCH);
    ck_assert_int_eq(bk_unit_typed(&(bk_taken_sheet){cm, 0, TEST_DAY}, BK_INCH), BK_INCH);
}
END_TEST

START_TEST(every_measure_known_by_name_is_known_of_bodies)
{
    for (size_t i = 0; i < bk_measure_term_count; i++)
        ck_assert_msg(bk_body_measure_find(bk_measure_terms[i].name) != NULL, "%s", bk_measure_terms[i].name);
    ck_assert_uint_eq(bk_body_measure_count, bk_measure_term_count);
    ck_assert_uint_le(bk_body_measure_count, MOST);
    ck_assert_ptr_null(bk_body_measure_find("elbow to little finger"));
    ck_assert_ptr_null(bk_body_measure_find(NULL));
}
END_TEST

// ------------------------------------------------------------------------------------------------------ rates

/// A number from 0 to 1 that comes again in every run.
static double next_part(uint32_t *state)
{
    *state = *state * 1664525U + 1013904223U; // the constants of Numerical Recipes
    return (double)(*state >> 8) / (1U << 24);
}

static double next_bell(uint32_t *state)
{
    double sum = 0;
    for (int i = 0; i < 12; i++)
        sum += next_part(state);
    return sum - 6;
}

/// A woman of her own height and bulk, each measure a little her own.
static void draw_woman(uint32_t *state, bk_taken items[WOMANS])
{
    double height = next_bell(state), bulk = next_bell(state);
    for (size_t i = 0; i < WOMANS; i++) {
        const bk_body_measure *row = bk_body_measure_find(woman[i].measure);
        double own = sqrt(fmax(.05, 1 - row->height * row->height - row->bulk * row->bulk));
        double mm = row->women.mean + row->women.deviation * (row->height * height + row->bulk * .85 * bulk +
                                                              own * next_bell(state));
        items[i] = (bk_taken){woman[i].measure, (bk_length)round(mm) * BK_MICROMETRES_PER_MM};
    }
}

// The rates that are asked for, on few people; tests/bench/doubts.c has them of many, drawn otherwise.
START_TEST(few_sheets_get_a_doubt_and_nearly_all_unit_slips_do)
{
    enum { PEOPLE = 300 };
    uint32_t state = 20270302;
    size_t doubted = 0, caught = 0, tenfold = 0;
    for (size_t i = 0; i < PEOPLE; i++) {
        bk_taken items[WOMANS];
        draw_woman(&state, items);
        doubted += doubts_of(items, WOMANS, BK_CM).count > 0;
        bk_taken_sheet sheet = {items, WOMANS, TEST_DAY};
        bk_length value = items[i % WOMANS].value;
        items[i % WOMANS].value = value / BK_MICROMETRES_PER_INCH * BK_MICROMETRES_PER_CM;
        caught += bk_doubt_of_value(&sheet, i % WOMANS, NULL, BK_CM, texts()) != NULL;
        items[i % WOMANS].value = value * 10;
        tenfold += bk_doubt_of_value(&sheet, i % WOMANS, NULL, BK_CM, texts()) != NULL;
    }
    ck_assert_uint_le(doubted, PEOPLE * 2 / 100);
    ck_assert_uint_ge(caught, PEOPLE * 99 / 100);
    ck_assert_uint_eq(tenfold, PEOPLE);
}
END_TEST

BK_TEST_MAIN("doubts", an_average_body_gives_no_doubt, each_slip_is_named_with_what_was_meant,
             what_was_meant_goes_with_the_others_only_where_it_lies_within_what_is_told_of_them,
             inches_are_told_in_inches, several_slips_on_one_sheet_are_all_told_each_by_the_sound_measures,
             a_waist_far_larger_than_chest_and_hip_is_told_with_both,
             what_no_body_has_is_told_also_of_two_measures_alone, a_whole_sheet_in_the_other_unit_is_no_baby,
             a_size_that_nobody_has_is_told_of_a_measure_alone,
             children_and_tall_and_stout_people_give_no_doubt,
             measures_of_the_workrooms_own_and_those_not_known_are_passed_over,
             a_value_is_judged_by_what_is_on_the_sheet_so_far,
             a_value_far_from_the_last_sheets_is_told_with_it, more_may_change_in_years_and_children_grow,
             the_unit_that_a_sheet_was_typed_in_is_seen, every_measure_known_by_name_is_known_of_bodies,
             few_sheets_get_a_doubt_and_nearly_all_unit_slips_do)
