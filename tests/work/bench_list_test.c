// The bench, from forecasts put together by hand.

#include "bodkin/work/bench_list.h"

#include <string.h>

#include "support/testing.h"

enum { STEPS = 5, LINKS = 2 };

/// A forecast of Tue 2 Mar 2027 with two people, Ada (cut, machine) and Bo (hand), one costume, 4A, due on Fri 12 Mar, and five
/// steps of it with ids from 1 that can all be done now. It lasts until the next one is made.
typedef struct hand_bench {
    bk_forecast forecast;
    bk_planned_step steps[STEPS];
    bk_planned_person people[2];
    bk_costume_forecast costume;
    bk_planned_link chain[LINKS];
    bk_planned_stretch stretch;
    bk_snag snag;
} hand_bench;

enum { ADA, BO };

static bk_arena *arena(void)
{
    static bk_arena *own;
    if (!own)
        own = bk_arena_new();
    return own;
}

static bk_day march(int day)
{
    return bk_day_of(2027, 3, day);
}

static const bk_calendar *tuesdays(bk_minute from, bk_minute to)
{
    bk_hours hours = {.from = BK_NO_DAY, .until = BK_NO_DAY};
    hours.week.stretches[1][0] = (bk_stretch){from, to};
    hours.week.counts[1] = 1;
    return bk_calendar_new(&hours, arena());
}

static bk_planned_step step_of(int64_t id)
{
    static const char *const keys[STEPS] = {"a", "b", "c", "d", "e"};
    static const size_t both[] = {ADA, BO};
    return (bk_planned_step){.id = id,
                             .production_id = 1,
                             .piece = "4A-1",
                             .key = keys[id - 1],
                             .costume_id = 7,
                             .costume = "4A",
                             .kind = BK_CUT,
                             .hands = 1,
                             .minutes = 30,
                             .guessed = 30,
                             .next = true,
                             .free_now = true,
                             .due = march(12),
                             .begin = {march(4), 600},
                             .end = {march(4), 660},
                             .people = both,
                             .person_count = 1,
                             .latest = {march(9), 600}};
}

static hand_bench *bench_new(void)
{
    static hand_bench hand;
    bk_id_index_free(hand.forecast.costume_at);
    hand = (hand_bench){
        .people = {{.id = 1,
                    .name = "Ada",
                    .skills = 1U << BK_CUT | 1U << BK_MACHINE,
                    .calendar = tuesdays(600, 960)},
                   {.id = 2, .name = "Bo", .skills = 1U << BK_HAND, .calendar = tuesdays(0, 0)}},
        .costume = {.id = 7,
                    .number = "4A",
                    .due = march(12),
                    .open = true,
                    .days = {.finish = march(10), .days_known = true, .days_in_hand = 2, .chance = -1}},
    };
    for (int64_t i = 0; i < STEPS; i++)
        hand.steps[i] = step_of(i + 1);
    hand.costume.chain = hand.chain;
    hand.costume.snags = &hand.snag;
    hand.forecast = (bk_forecast){.today = march(2),
                                  .steps = hand.steps,
                                  .step_count = STEPS,
                                  .people = hand.people,
                                  .person_count = 2,
                                  .stretches = &hand.stretch,
                                  .costumes = &hand.costume,
                                  .costume_count = 1,
                                  .room_snag = {.kind = BK_SNAGS}};
    hand.forecast.costume_at = bk_id_index_of(&hand.costume, 1, sizeof hand.costume);
    return &hand;
}

static bk_bench_list list_of(const hand_bench *hand, const char *person, int64_t minutes)
{
    return bk_bench_list_make(&hand->forecast, person, minutes, NULL, 0, "2027-03-02T10:00:00+01:00",
                              arena());
}

/// The keys of the steps, in order.
static const char *keys_of(bk_bench_list list)
{
    const char *keys = "";
    for (size_t i = 0; i < list.count; i++)
        keys = bk_arena_print(arena(), "%s%s", keys, list.lines[i].step->key);
    return keys;
}

START_TEST(what_must_begin_first_comes_first_and_what_is_past_that_before_it)
{
    hand_bench *hand = bench_new();
    hand->steps[0].latest = (bk_moment){march(8), 600};
    hand->steps[1].latest = (bk_moment){march(3), 600};
    hand->steps[2].latest.day = BK_NO_DAY; // it cannot be begun in time
    hand->steps[3].latest.day = hand->steps[3].due = BK_NO_DAY;
    hand->steps[4].latest = (bk_moment){march(3), 540};
    ck_assert_str_eq(keys_of(list_of(hand, NULL, 0)), "cebad");
}
END_TEST

START_TEST(with_the_same_time_left_what_has_most_behind_it_comes_first_then_the_plan_decides)
{
    hand_bench *hand = bench_new();
    hand->steps[3].behind = 90;
    hand->steps[1].begin = (bk_moment){march(3), 600};
    hand->steps[2].begin.day = BK_NO_DAY;
    ck_assert_str_eq(keys_of(list_of(hand, NULL, 0)), "dbaec");
}
END_TEST

START_TEST(what_can_wait_until_after_the_opening_comes_last)
{
    hand_bench *hand = bench_new();
    hand->steps[0].can_wait = true;
    hand->steps[0].latest = (bk_moment){march(1), 600};
    bk_bench_list list = list_of(hand, NULL, 0);
    ck_assert_str_eq(keys_of(list), "bcdea");
    ck_assert_int_eq(list.lines[STEPS - 1].why, BK_WHY_CAN_WAIT);
}
END_TEST

START_TEST(only_what_is_next_waits_on_nothing_and_is_of_the_persons_kinds_is_there)
{
    hand_bench *hand = bench_new();
    hand->steps[0].next = false;
    hand->steps[1].free_now = false;
    hand->steps[2].kind = BK_HAND;
    hand->steps[3].kind = BK_DYE;
    ck_assert_str_eq(keys_of(list_of(hand, "Ada", 0)), "e");
    ck_assert_str_eq(keys_of(list_of(hand, "Bo", 0)), "c");
    ck_assert_str_eq(keys_of(list_of(hand, NULL, 0)), "cde");
    ck_assert_ptr_null(list_of(hand, "nobody of that name", 0).person);
}
END_TEST

START_TEST(what_nobody_can_do_is_not_on_the_bench_of_everybody)
{
    static const bk_snag_kind kinds[] = {BK_SNAG_NO_SKILL, BK_SNAG_NO_HOURS, BK_SNAG_NO_DATE};
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        hand_bench *hand = bench_new();
        hand->snag = (bk_snag){.kind = kinds[i], .step_id = 2};
        hand->costume.snag_count = 1;
        ck_assert_str_eq(keys_of(list_of(hand, NULL, 0)), kinds[i] == BK_SNAG_NO_DATE ? "abcde" : "acde");
        ck_assert_str_eq(keys_of(list_of(hand, "Ada", 0)), "abcde");
        hand->forecast.person_count = 0;
        ck_assert_str_eq(keys_of(list_of(hand, NULL, 0)), "abcde");
    }
}
END_TEST

START_TEST(what_fits_the_minutes_comes_first_and_the_rest_can_be_set_down_but_for_a_fitting)
{
    hand_bench *hand = bench_new();
    hand->steps[0].minutes = hand->steps[1].minutes = 31;
    hand->steps[1].kind = BK_FIT;
    bk_bench_list list = list_of(hand, NULL, 30);
    ck_assert_str_eq(keys_of(list), "cdeab");
    ck_assert_uint_eq(list.fitting, 3);
    ck_assert(list.lines[2].fits && !list.lines[2].part);
    ck_assert(!list.lines[3].fits && list.lines[3].part);
    ck_assert(!list.lines[4].fits && !list.lines[4].part);
    ck_assert_uint_eq(list_of(hand, NULL, 0).fitting, STEPS);
}
END_TEST

START_TEST(minutes_are_those_of_the_person_by_the_workrooms_record)
{
    static const bk_pace pace = {
        .kind = BK_CUT, .person = "Ada", .count = 9, .middle = 2000, .quickest = 1500, .longest = 2500};
    hand_bench *hand = bench_new();
    hand->forecast.paces = (bk_paces){&pace, 1};
    hand->steps[0].minutes = 45;
    ck_assert_int_eq(list_of(hand, "Ada", 0).lines[0].minutes, 60);
    ck_assert_int_eq(list_of(hand, NULL, 0).lines[0].minutes, 45);
}
END_TEST

START_TEST(a_clock_that_runs_puts_its_step_first_whatever_else_holds)
{
    static const bk_running runnings[] = {
        {.step_id = 4, .who = "Ada", .started_at = "2027-03-02T09:35:00+01:00"},
        {.step_id = 2, .who = "Bo", .started_at = "2027-03-02T09:50:00+01:00"},
    };
    hand_bench *hand = bench_new();
    hand->steps[3].free_now = false;
    hand->steps[3].minutes = 500;
    bk_bench_list list =
        bk_bench_list_make(&hand->forecast, "Ada", 30, runnings, 2, "2027-03-02T10:00:00+01:00", arena());
    ck_assert_str_eq(keys_of(list), "dabce");
    ck_assert_int_eq(list.lines[0].why, BK_WHY_RUNNING);
    ck_assert_int_eq(list.lines[0].ran, 25);
    ck_assert_int_eq(list.lines[1].ran, -1);
    list = bk_bench_list_make(&hand->forecast, NULL, 0, runnings, 2, "2027-03-02T10:00:00+01:00", arena());
    ck_assert_str_eq(keys_of(list), "bdace");
}
END_TEST

static bk_bench_why why_of(const hand_bench *hand, const char *person)
{
    bk_bench_list list = list_of(hand, person, 0);
    for (size_t i = 0; i < list.count; i++)
        if (list.lines[i].step->id == 1)
            return list.lines[i].why;
    return BK_WHY_CAN_WAIT;
}

START_TEST(why_a_step_stands_there_is_told_by_what_presses_most)
{
    hand_bench *hand = bench_new();
    ck_assert_int_eq(why_of(hand, "Ada"), BK_WHY_TIME);
    hand->chain[0] = (bk_planned_link){.step = 0, .bound = BK_BOUND_NOTHING};
    hand->chain[1] = (bk_planned_link){.step = 1, .bound = BK_BOUND_ORDER};
    hand->costume.chain_count = LINKS;
    ck_assert_int_eq(why_of(hand, "Ada"), BK_WHY_TIME); // the same hands do both
    static const size_t bo[] = {BO};
    hand->steps[1].people = bo;
    ck_assert_int_eq(why_of(hand, "Ada"), BK_WHY_OTHERS);
    hand->stretch = (bk_planned_stretch){.day = march(2), .person = ADA, .step = 0};
    hand->forecast.stretch_count = 1;
    ck_assert_int_eq(why_of(hand, "Ada"), BK_WHY_PLANNED);
    ck_assert_int_eq(why_of(hand, NULL), BK_WHY_PLANNED);
    hand->stretch.person = BO;
    ck_assert_int_eq(why_of(hand, "Ada"), BK_WHY_OTHERS);
    hand->steps[0].latest.day = march(4);
    ck_assert_int_eq(why_of(hand, "Ada"), BK_WHY_TIGHT);
    hand->costume.days.days_in_hand = -1;
    ck_assert_int_eq(why_of(hand, "Ada"), BK_WHY_LATE);
    hand->costume.days = (bk_outlook_days){.finish = BK_NO_DAY, .days_known = true};
    ck_assert_int_eq(why_of(hand, "Ada"), BK_WHY_LATE);
    hand->costume.days.days_known = false;
    ck_assert_int_eq(why_of(hand, "Ada"), BK_WHY_TIGHT);
}
END_TEST

START_TEST(days_left_and_what_is_behind_it_are_those_of_the_step)
{
    hand_bench *hand = bench_new();
    hand->steps[0].behind = 120;
    hand->steps[1].due = BK_NO_DAY;
    bk_bench_list list = list_of(hand, NULL, 0);
    ck_assert_int_eq(list.lines[0].days_left, 10);
    ck_assert_int_eq(list.lines[0].behind, 120);
    ck_assert(list.lines[STEPS - 1].days_left == INT64_MIN);
}
END_TEST

START_TEST(steps_of_one_kind_that_need_the_same_material_are_best_done_together)
{
    static const char *const linen[] = {"linen"}, *const silk[] = {"silk"};
    static const char *const both[] = {"silk", "linen"};
    hand_bench *hand = bench_new();
    const char *const *const needs[STEPS] = {linen, both, silk, linen, linen};
    for (size_t i = 0; i < STEPS; i++) {
        hand->steps[i].materials = needs[i];
        hand->steps[i].material_count = needs[i] == both ? 2 : 1;
    }
    hand->steps[4].kind = BK_HAND;
    bk_bench_list list = list_of(hand, NULL, 0);
    static const size_t groups[STEPS] = {1, 1, 0, 1, 0};
    for (size_t i = 0; i < STEPS; i++) {
        ck_assert_msg(list.lines[i].together == groups[i], "step %zu: %zu", i, list.lines[i].together);
        ck_assert_msg(groups[i] ? strcmp(list.lines[i].shared, "linen") == 0 : !list.lines[i].shared,
                      "step %zu", i);
    }
}
END_TEST

START_TEST(the_hours_of_today_are_told_of_a_person_who_has_some)
{
    hand_bench *hand = bench_new();
    bk_moment until = list_of(hand, "Ada", 0).free_until;
    ck_assert_int_eq(until.day, march(2));
    ck_assert_int_eq(until.time, 960);
    hand->forecast.today = march(3);
    ck_assert_int_eq(list_of(hand, "Ada", 0).free_until.day, BK_NO_DAY);
    ck_assert_int_eq(list_of(hand, NULL, 0).free_until.day, BK_NO_DAY);
}
END_TEST

START_TEST(the_steps_of_one_production_can_be_looked_at_alone)
{
    hand_bench *hand = bench_new();
    hand->steps[1].production_id = hand->steps[2].production_id = 2;
    hand->steps[2].minutes = 90;
    bk_bench_list own = bk_bench_list_of(list_of(hand, "Ada", 0), 2, arena());
    ck_assert_str_eq(keys_of(own), "bc");
    ck_assert_uint_eq(own.fitting, 2);
    ck_assert_str_eq(own.person->name, "Ada");
}
END_TEST

START_TEST(a_forecast_without_steps_gives_an_empty_bench)
{
    hand_bench *hand = bench_new();
    hand->forecast.step_count = 0;
    ck_assert_uint_eq(list_of(hand, NULL, 30).count, 0);
}
END_TEST

BK_TEST_MAIN("bench list", what_must_begin_first_comes_first_and_what_is_past_that_before_it,
             with_the_same_time_left_what_has_most_behind_it_comes_first_then_the_plan_decides,
             what_can_wait_until_after_the_opening_comes_last,
             only_what_is_next_waits_on_nothing_and_is_of_the_persons_kinds_is_there,
             what_nobody_can_do_is_not_on_the_bench_of_everybody,
             what_fits_the_minutes_comes_first_and_the_rest_can_be_set_down_but_for_a_fitting,
             minutes_are_those_of_the_person_by_the_workrooms_record,
             a_clock_that_runs_puts_its_step_first_whatever_else_holds,
             why_a_step_stands_there_is_told_by_what_presses_most,
             days_left_and_what_is_behind_it_are_those_of_the_step,
             steps_of_one_kind_that_need_the_same_material_are_best_done_together,
             the_hours_of_today_are_told_of_a_person_who_has_some,
             the_steps_of_one_production_can_be_looked_at_alone,
             a_forecast_without_steps_gives_an_empty_bench)
