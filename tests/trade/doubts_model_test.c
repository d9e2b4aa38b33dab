// What the measures of one body say about each other.

#include "bodkin/trade/doubts_model.h"

#include <math.h>

#include "support/testing.h"

enum { MOST = 4 };

typedef struct known {
    const char *name;
    double mm;
} known;

/// What is expected of the first of `count` measures by the others.
static bk_expected expected_of_first(const known *measures, size_t count)
{
    const bk_body_measure *rows[MOST];
    double logs[MOST];
    bk_expected expected[MOST];
    for (size_t i = 0; i < count; i++) {
        rows[i] = bk_body_measure_find(measures[i].name);
        logs[i] = log(measures[i].mm);
    }
    bk_bodies_expect(rows, logs, count, expected);
    return expected[0];
}

static double width(const bk_expected *expected)
{
    double from, to;
    bk_expected_range(expected, &from, &to);
    return to / from;
}

START_TEST(a_measure_alone_is_expected_as_people_have_it)
{
    double from, to;
    bk_expected expected = expected_of_first((const known[]){{"height", 1700}}, 1);
    bk_expected_range(&expected, &from, &to);
    // the survey's 1st percentile of women to its 99th of men: 1482 to 1927 mm (NATICK/TR-15/007)
    ck_assert_double_lt(from, 1700);
    ck_assert_double_gt(from, 1400);
    ck_assert_double_gt(to, 1700);
    ck_assert_double_lt(to, 1980);
}
END_TEST

START_TEST(the_value_itself_does_not_matter_to_what_is_expected)
{
    bk_expected right = expected_of_first((const known[]){{"inside leg", 800}, {"height", 1700}}, 2);
    bk_expected wrong = expected_of_first((const known[]){{"inside leg", 8000}, {"height", 1700}}, 2);
    for (size_t kind = 0; kind < BK_BODY_KINDS; kind++) {
        ck_assert_double_eq_tol(right.means[kind], wrong.means[kind], 1e-9);
        ck_assert_double_eq_tol(right.deviations[kind], wrong.deviations[kind], 1e-9);
        ck_assert_double_eq_tol(right.chances[kind], wrong.chances[kind], 1e-9);
    }
}
END_TEST

// crotchheight/stature .4815 (men) and .4802 (women) in the survey (NATICK/TR-15/007)
START_TEST(a_leg_is_expected_by_the_height)
{
    static const double heights[] = {1500, 1650, 1800, 1950};
    for (size_t i = 0; i < sizeof heights / sizeof *heights; i++) {
        bk_expected leg = expected_of_first((const known[]){{"inside leg", 800}, {"height", heights[i]}}, 2);
        ck_assert_double_eq_tol(exp(leg.means[BK_BODY_MAN]) / heights[i], .4815, .02);
        ck_assert_double_eq_tol(exp(leg.means[BK_BODY_WOMAN]) / heights[i], .4802, .02);
    }
}
END_TEST

START_TEST(the_more_is_known_the_surer_it_is)
{
    static const known leg[] = {
        {"waist girth", 800}, {"height", 1700}, {"hip girth", 990}, {"bust girth", 920}};
    double before = INFINITY;
    for (size_t count = 1; count <= MOST; count++) {
        bk_expected waist = expected_of_first(leg, count);
        double now = waist.deviations[BK_BODY_WOMAN];
        ck_assert_double_lt(now, before);
        before = now;
    }
}
END_TEST

START_TEST(the_measures_say_what_kind_of_body_it_is)
{
    bk_expected man = expected_of_first(
        (const known[]){{"waist girth", 800}, {"height", 1800}, {"neck girth", 400}, {"hip girth", 980}}, 4);
    bk_expected woman = expected_of_first(
        (const known[]){{"waist girth", 800}, {"height", 1620}, {"neck girth", 320}, {"hip girth", 1020}}, 4);
    bk_expected child = expected_of_first(
        (const known[]){{"waist girth", 800}, {"height", 1050}, {"head girth", 505}, {"hip girth", 590}}, 4);
    ck_assert_double_gt(man.chances[BK_BODY_MAN], .9);
    ck_assert_double_gt(woman.chances[BK_BODY_WOMAN], .9);
    ck_assert_double_gt(child.chances[BK_BODY_CHILD], .99);
    ck_assert_double_eq_tol(man.chances[0] + man.chances[1] + man.chances[2], 1, 1e-12);
    ck_assert_double_lt(exp(child.means[BK_BODY_CHILD]), 620);
}
END_TEST

START_TEST(a_patient_density_forgives_what_is_far_off_and_little_else)
{
    bk_expected leg = expected_of_first((const known[]){{"inside leg", 800}, {"height", 1700}}, 2);
    double middle = leg.means[BK_BODY_WOMAN], far = middle + 6 * leg.deviations[BK_BODY_WOMAN];
    ck_assert_double_gt(bk_expected_density(&leg, far, true), bk_expected_density(&leg, far, false) + 3);
    ck_assert_double_eq_tol(bk_expected_density(&leg, middle, true), bk_expected_density(&leg, middle, false),
                            .2);
    ck_assert_double_gt(bk_expected_density(&leg, middle, true), bk_expected_density(&leg, far, true));
    ck_assert(isfinite(bk_expected_density(&leg, middle + 50, false)));
    ck_assert_double_gt(width(&leg), 1);
}
END_TEST

BK_TEST_MAIN("doubts_model", a_measure_alone_is_expected_as_people_have_it,
             the_value_itself_does_not_matter_to_what_is_expected, a_leg_is_expected_by_the_height,
             the_more_is_known_the_surer_it_is, the_measures_say_what_kind_of_body_it_is,
             a_patient_density_forgives_what_is_far_off_and_little_else)
