// The words of a forecast: days in hand, chances, urgency, sentences about costumes, productions, the bench and chains.

#include "bodkin/sheet/forecast_words.h"

#include <string.h>

#include "sheet/hand_forecast.h"
#include "sheet/hand_rail.h"
#include "support/testing.h"

static bk_arena *texts(void)
{
    static bk_arena *arena;
    if (!arena)
        arena = bk_arena_new();
    return arena;
}

static bk_day today(void)
{
    return DAY(3, 2);
}

START_TEST(days_in_hand_are_told_in_a_few_words)
{
    static const struct {
        bool known, never;
        int64_t days;
        const char *words, *brief;
    } rows[] = {
        {true, false, 3, "3 days in hand", "3 days"},
        {true, false, 1, "1 day in hand", "1 day"},
        {true, false, 0, "just in time", "0 days"},
        {true, false, -1, "1 day late", "1 late"},
        {true, false, -12, "12 days late", "12 late"},
        {true, true, 0, "never", "never"},
        {false, true, 0, "", ""},
        {false, false, 5, "", ""},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        bk_outlook_days days = {.finish = rows[i].never ? BK_NO_DAY : DAY(3, 11),
                                .days_known = rows[i].known,
                                .days_in_hand = rows[i].days};
        ck_assert_str_eq(bk_days_in_hand_words(&days, texts()), rows[i].words);
        ck_assert_str_eq(bk_days_in_hand_brief(&days, texts()), rows[i].brief);
    }
}
END_TEST

START_TEST(a_chance_is_whole_percent_and_never_certain)
{
    static const struct {
        int32_t chance;
        const char *words;
    } rows[] = {{-1, ""},      {0, "under 1 %"},   {9, "under 1 %"},   {10, "1 %"},
                {14, "1 %"},   {15, "2 %"},        {924, "92 %"},      {925, "93 %"},
                {990, "99 %"}, {991, "over 99 %"}, {1000, "over 99 %"}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        ck_assert_str_eq(bk_chance_words(&(bk_outlook_days){.chance = rows[i].chance}, texts()),
                         rows[i].words);
}
END_TEST

START_TEST(urgency_follows_days_in_hand_and_chance)
{
    static const struct {
        bool known, never;
        int64_t days;
        int32_t chance;
        bk_urgency urgency;
    } rows[] = {
        {false, false, 0, -1, BK_NOT_SAID}, {true, true, 0, -1, BK_LATE},
        {true, true, 9, 900, BK_LATE},      {true, false, -1, -1, BK_LATE},
        {true, false, -1, 900, BK_LATE},    {true, false, 5, 499, BK_LATE},
        {true, false, 5, 500, BK_TIGHT},    {true, false, 5, 849, BK_TIGHT},
        {true, false, 5, 850, BK_IN_TIME},  {true, false, 0, -1, BK_TIGHT},
        {true, false, 1, 1000, BK_TIGHT},   {true, false, 2, -1, BK_IN_TIME},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        bk_outlook_days days = {.finish = rows[i].never ? BK_NO_DAY : DAY(3, 11),
                                .days_known = rows[i].known,
                                .days_in_hand = rows[i].days,
                                .chance = rows[i].chance};
        ck_assert_msg(bk_outlook_urgency(&days) == rows[i].urgency, "row %zu", i);
    }
}
END_TEST

START_TEST(what_is_ready_or_can_go_on_is_in_time_and_without_a_forecast_the_due_day_decides)
{
    hand_rail *rail = hand_rail_new();
    hand_forecast *hand = hand_forecast_new();
    hand->costume.days.days_in_hand = -2;
    hand_rail_wait(rail, BK_READY, NULL, 0);
    ck_assert_int_eq(bk_urgency_of(&rail->rail, &rail->costume, &hand->costume), BK_IN_TIME);
    hand_rail_wait(rail, BK_HELD, NULL, 0);
    ck_assert_int_eq(bk_urgency_of(&rail->rail, &rail->costume, &hand->costume), BK_LATE);
    rail->reckoned.can_go_on = true;
    ck_assert_int_eq(bk_urgency_of(&rail->rail, &rail->costume, &hand->costume), BK_IN_TIME);
    rail->reckoned.can_go_on = false;
    ck_assert_int_eq(bk_urgency_of(&rail->rail, &rail->costume, NULL), BK_TIGHT);
    hand->costume.days.days_known = false;
    ck_assert_int_eq(bk_urgency_of(&rail->rail, &rail->costume, &hand->costume), BK_TIGHT);
}
END_TEST

START_TEST(the_verdict_names_what_is_late_and_what_is_tight)
{
    hand_rail *rail = hand_rail_new();
    hand_forecast *hand = hand_forecast_new();
    hand_rail_wait(rail, BK_HELD, NULL, 0);
    rail->rail.minutes_left = 125;
    ck_assert_str_eq(bk_forecast_verdict(&rail->rail, &hand->forecast, texts()),
                     "late: none; tight: none; 2 h 05 of work left");
    ck_assert_str_eq(bk_forecast_verdict(&rail->rail, NULL, texts()),
                     "late: none; tight: 1A; 2 h 05 of work left");
    hand->costume.days.days_in_hand = -1;
    ck_assert_str_eq(bk_forecast_verdict(&rail->rail, &hand->forecast, texts()),
                     "late: 1A; tight: none; 2 h 05 of work left");
    bk_rail_costume many[14];
    for (size_t i = 0; i < 14; i++)
        many[i] = rail->costume;
    rail->rail.costumes = many;
    rail->rail.costume_count = 14;
    ck_assert_str_eq(
        bk_forecast_verdict(&rail->rail, &hand->forecast, texts()),
        "late: 1A, 1A, 1A, 1A, 1A, 1A, 1A, 1A, 1A, 1A, 1A, 1A and 2 more; tight: none; 2 h 05 of work left");
}
END_TEST

static void expect_costume(const hand_forecast *hand, const char *says)
{
    ck_assert_str_eq(bk_costume_forecast_sentence(&hand->costume, today(), texts()), says);
}

START_TEST(a_costume_is_told_in_one_sentence)
{
    hand_forecast *hand = hand_forecast_new();
    bk_outlook_days *days = &hand->costume.days;
    expect_costume(
        hand, "Expected Thu 11 Mar, 3 working days in hand; 92 % (give or take 1) to be ready by Tue 16 Mar; "
              "half the trials are done by Thu 11 Mar, nine in ten by Mon 15 Mar");
    days->likely = days->even;
    expect_costume(hand, "Expected Thu 11 Mar, 3 working days in hand; 92 % (give or take 1) to be ready by "
                         "Tue 16 Mar; nine in ten trials are done by Thu 11 Mar");
    days->chance_error = 11;
    days->likely = BK_NO_DAY;
    expect_costume(
        hand, "Expected Thu 11 Mar, 3 working days in hand; 92 % (give or take 2) to be ready by Tue 16 Mar; "
              "half the trials are done by Thu 11 Mar, more than one in ten of them never");
    days->even = BK_NO_DAY;
    expect_costume(
        hand, "Expected Thu 11 Mar, 3 working days in hand; 92 % (give or take 2) to be ready by Tue 16 Mar; "
              "fewer than half the trials are ever done");
    days->chance = -1;
    days->days_in_hand = 0;
    expect_costume(hand, "Expected Thu 11 Mar, just in time");
    days->finish = today();
    days->days_in_hand = 1;
    expect_costume(hand, "Expected today, 1 working day in hand");
    days->days_in_hand = -1;
    expect_costume(hand, "Expected today, 1 working day late");
    days->finish = BK_NO_DAY;
    expect_costume(hand, "It is never done with the hands and hours there are");
    days->days_known = false;
    expect_costume(hand, "When it will be ready is not known yet");
    hand->costume.open = false;
    expect_costume(hand, "Nothing is left to do");
    days->finish = DAY(2, 26);
    expect_costume(hand, "Done Fri 26 Feb");
}
END_TEST

static void expect_production(const hand_forecast *hand, const char *says)
{
    ck_assert_str_eq(bk_production_forecast_sentence(&hand->production, today(), texts()), says);
}

START_TEST(the_whole_production_is_told_in_one_sentence)
{
    hand_forecast *hand = hand_forecast_new();
    bk_outlook_days *days = &hand->production.days;
    expect_production(
        hand,
        "All is expected done Thu 11 Mar, every costume in time, the closest with 3 working days in hand; "
        "92 % (give or take 1) that each is ready by its day; half the trials are done by Thu 11 Mar, "
        "nine in ten by Mon 15 Mar");
    days->chance = -1;
    days->days_in_hand = 0;
    expect_production(hand, "All is expected done Thu 11 Mar, every costume in time, the closest just so");
    hand->production.late = 1;
    expect_production(hand, "All is expected done Thu 11 Mar, 1 costume late");
    hand->production.late = 4;
    days->finish = BK_NO_DAY;
    expect_production(hand, "Not all can be done with the hands and hours there are: 4 costumes late");
    days->days_known = false;
    expect_production(hand, "When all will be ready is not known yet");
    *days = (bk_outlook_days){.finish = DAY(2, 26), .days_known = true, .chance = -1};
    expect_production(hand, "All is done, since Fri 26 Feb");
}
END_TEST

START_TEST(why_a_step_stands_on_the_bench_where_it_does_is_told_plainly)
{
    hand_forecast *hand = hand_forecast_new();
    static const struct {
        bk_bench_why why;
        int64_t days_left, behind;
        const char *says;
    } rows[] = {
        {BK_WHY_TIME, 3, 360, "1A is due in 3 days, 6 h behind it"},
        {BK_WHY_TIME, 1, 0, "1A is due tomorrow, nothing behind it"},
        {BK_WHY_TIME, 0, 20, "1A is due today, 20 min behind it"},
        {BK_WHY_LATE, -1, 20, "1A was due 1 day ago, 20 min behind it; expected late"},
        {BK_WHY_LATE, -3, 20, "1A was due 3 days ago, 20 min behind it; expected late"},
        {BK_WHY_TIME, INT64_MIN, 20, "1A has no due day, 20 min behind it"},
        {BK_WHY_TIGHT, 3, 20, "1A is due in 3 days, 20 min behind it; to begin by Fri 12 Mar"},
        {BK_WHY_PLANNED, 3, 20, "1A is due in 3 days, 20 min behind it; planned for today"},
        {BK_WHY_OTHERS, 3, 20, "1A is due in 3 days, 20 min behind it; others wait for it"},
        {BK_WHY_RUNNING, 3, 20, "in hand for 25 min; 1A is due in 3 days, 20 min behind it"},
        {BK_WHY_CAN_WAIT, 3, 20, "can wait until after the opening; 1A is due in 3 days, 20 min behind it"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        bk_bench_line line = {.step = &hand->steps[0],
                              .why = rows[i].why,
                              .days_left = rows[i].days_left,
                              .behind = rows[i].behind,
                              .ran = 25};
        ck_assert_str_eq(bk_bench_why_sentence(&line, today(), texts()), rows[i].says);
    }
}
END_TEST

START_TEST(a_latest_beginning_that_is_past_is_today_and_one_that_is_not_there_is_not_told)
{
    hand_forecast *hand = hand_forecast_new();
    bk_bench_line line = {.step = &hand->steps[0], .why = BK_WHY_TIGHT, .days_left = 2, .behind = 60};
    hand->steps[0].latest.day = DAY(3, 1);
    ck_assert_str_eq(bk_bench_why_sentence(&line, today(), texts()),
                     "1A is due in 2 days, 1 h behind it; to begin by today");
    hand->steps[0].latest.day = BK_NO_DAY;
    hand->steps[0].costume = NULL;
    ck_assert_str_eq(bk_bench_why_sentence(&line, today(), texts()), "G1 is due in 2 days, 1 h behind it");
}
END_TEST

START_TEST(a_link_of_a_chain_tells_what_it_waited_for)
{
    hand_forecast *hand = hand_forecast_new();
    hand->steps[1].material_count = 1;
    hand->steps[2].booked = true;
    const bk_planned_link links[] = {
        {0, BK_BOUND_NOTHING, NULL}, {1, BK_BOUND_ORDER, NULL},   {1, BK_BOUND_HANDS, "Ada"},
        {1, BK_BOUND_HANDS, NULL},   {1, BK_BOUND_RELEASE, NULL}, {2, BK_BOUND_RELEASE, NULL},
        {0, BK_BOUND_RELEASE, NULL}, {0, BK_BOUND_HOURS, NULL},
    };
    static const char *const says[] = {
        "can begin at once",
        "after G1/cut",
        "Ada is free then",
        "hands are free then",
        "what it needs is there then",
        "the fitting is booked then",
        "what it waits for comes then",
        "nobody works before",
    };
    for (size_t i = 0; i < sizeof links / sizeof *links; i++)
        ck_assert_str_eq(bk_link_words(&hand->forecast, links, i, texts()), says[i]);
    ck_assert_str_eq(bk_link_words(&hand->forecast, &links[1], 0, texts()), "after what comes before it");
}
END_TEST

BK_TEST_MAIN("forecast words", days_in_hand_are_told_in_a_few_words,
             a_chance_is_whole_percent_and_never_certain, urgency_follows_days_in_hand_and_chance,
             what_is_ready_or_can_go_on_is_in_time_and_without_a_forecast_the_due_day_decides,
             the_verdict_names_what_is_late_and_what_is_tight, a_costume_is_told_in_one_sentence,
             the_whole_production_is_told_in_one_sentence,
             why_a_step_stands_on_the_bench_where_it_does_is_told_plainly,
             a_latest_beginning_that_is_past_is_today_and_one_that_is_not_there_is_not_told,
             a_link_of_a_chain_tells_what_it_waited_for)
