// The plan of small workrooms, each worked out by hand: who does what when, and how many days are in hand. The day is Tuesday,
// 2 March 2027; Ada works from 10 to 13 and from 14 to 18 o'clock, Monday to Friday.

#include "bodkin/work/forecast.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "work/planned.h"

// ------------------------------------------------------------------------------------------------- one maker

static bk_folder *chain_of_seven_hours(bk_day due)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), due);
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 120, NULL),
         STEP("P1", "sew", BK_MACHINE, 240, "cut"), STEP("P1", "press", BK_PRESS, 60, "sew"));
    return folder;
}

START_TEST(a_chain_of_seven_hours_takes_one_maker_one_day)
{
    bk_forecast *forecast = forecast_of(chain_of_seven_hours(DAY(3, 4)), 0);
    ck_assert_str_eq(days_told(forecast), "1A Tue 2 Mar, 2 in hand\n");
    ck_assert_str_eq(stretches_told(forecast), "Tue 2 Mar Ada 10:00-12:00 P1/cut\n"
                                               "Tue 2 Mar Ada 12:00-13:00 P1/sew\n"
                                               "Tue 2 Mar Ada 14:00-17:00 P1/sew again\n"
                                               "Tue 2 Mar Ada 17:00-18:00 P1/press\n");
    ck_assert_str_eq(step_told(forecast, "P1", "sew"), "Tue 2 Mar 12:00 to Tue 2 Mar 17:00, Ada");
    ck_assert_int_eq(forecast->productions[0].late, 0);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(days_in_hand_are_days_on_which_anybody_works)
{
    // Wednesday to Friday, Monday and Tuesday.
    bk_forecast *forecast = forecast_of(chain_of_seven_hours(DAY(3, 9)), 0);
    ck_assert_str_eq(days_told(forecast), "1A Tue 2 Mar, 5 in hand\n");
    ck_assert_int_eq(forecast->productions[0].days.days_in_hand, 5);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(what_is_finished_after_its_due_day_is_late_by_working_days)
{
    // Friday's seven hours are not enough for eight: the last is done on Monday, one working day after Saturday.
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 6));
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 4 * 420 + 60, NULL));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(days_told(forecast), "1A Mon 8 Mar, -1 in hand\n");
    ck_assert_str_eq(step_told(forecast, "P1", "cut"), "Tue 2 Mar 10:00 to Mon 8 Mar 11:00, Ada");
    ck_assert_int_eq(forecast->productions[0].late, 1);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(what_was_done_today_has_used_up_the_beginning_of_the_day)
{
    bk_folder *folder = chain_of_seven_hours(DAY(3, 4));
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 120, NULL),
         done_on((bk_step)STEP("P1", "draft", BK_DRAFT, 30, NULL), DAY(3, 2), "Ada", 90),
         done_on((bk_step)STEP("P1", "pull", BK_SOURCE, 30, NULL), DAY(3, 2), "Ada", BK_NOT_KNOWN),
         done_on((bk_step)STEP("P1", "buy", BK_SOURCE, 30, NULL), DAY(3, 2), "Bo", 60));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(step_told(forecast, "P1", "cut"), "Tue 2 Mar 12:00 to Tue 2 Mar 15:00, Ada");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(what_follows_waits_until_a_step_has_rested)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 4));
    ROWS(folder, steps, bk_step, with_rest((bk_step)STEP("P1", "glue", BK_CRAFT, 60, NULL), 24 * 60),
         STEP("P1", "trim", BK_HAND, 60, "glue"));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(step_told(forecast, "P1", "trim"), "Wed 3 Mar 11:00 to Wed 3 Mar 12:00, Ada");
    // The last hour of Thursday is the trimming's; before it the glue dries a day and a night.
    ck_assert_str_eq(latest_told(forecast, "P1", "trim"), "Thu 4 Mar 17:00");
    ck_assert_str_eq(latest_told(forecast, "P1", "glue"), "Wed 3 Mar 16:00");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_step_done_lately_still_rests)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 4));
    // Done on Monday, whose work ended at 18 o'clock.
    ROWS(folder, steps, bk_step,
         done_on(with_rest((bk_step)STEP("P1", "glue", BK_CRAFT, 60, NULL), 22 * 60), DAY(3, 1), "Ada", 60),
         STEP("P1", "trim", BK_HAND, 60, "glue"));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(step_told(forecast, "P1", "trim"), "Tue 2 Mar 16:00 to Tue 2 Mar 17:00, Ada");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_finished_costume_was_finished_on_the_day_of_its_last_step)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 4));
    ROWS(folder, steps, bk_step, done_on((bk_step)STEP("P1", "cut", BK_CUT, 60, NULL), DAY(2, 26), "Ada", 60),
         STEP("P1", "fit", BK_FIT, 30, NULL));
    ROWS(folder, fittings, bk_fitting,
         {.piece = "P1",
          .step = "fit",
          .booked_at = {DAY(3, 1), BK_NO_TIME},
          .minutes = BK_NOT_KNOWN,
          .held_on = DAY(3, 1),
          .outcome = BK_FITS});
    bk_forecast *forecast = forecast_of(folder, 0);
    // Tuesday, Wednesday and Thursday.
    ck_assert_str_eq(days_told(forecast), "1A Mon 1 Mar, 3 in hand\n");
    ck_assert_int_eq(forecast->costumes[0].days.chance, 1000);
    ck_assert(!forecast->costumes[0].open);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(what_can_wait_gives_way_and_makes_nothing_late)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 5));
    ROWS(folder, steps, bk_step, that_can_wait((bk_step)STEP("P1", "braid", BK_HAND, 240, NULL)),
         STEP("P1", "hem", BK_HAND, 420, NULL));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(days_told(forecast), "1A Tue 2 Mar, 3 in hand\n");
    ck_assert_str_eq(step_told(forecast, "P1", "hem"), "Tue 2 Mar 10:00 to Tue 2 Mar 18:00, Ada");
    ck_assert_str_eq(step_told(forecast, "P1", "braid"), "Wed 3 Mar 10:00 to Wed 3 Mar 15:00, Ada");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_costume_with_nothing_open_but_what_can_wait_is_finished_with_that)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 4));
    ROWS(folder, steps, bk_step, that_can_wait((bk_step)STEP("P1", "braid", BK_HAND, 420 + 60, NULL)));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(days_told(forecast), "1A Wed 3 Mar, 1 in hand\n");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_costume_that_can_go_on_as_it_is_is_never_late)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 2));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "The Miller", DAY(3, 2)),
         COSTUME("1B", "The Miller", DAY(3, 8)));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A", BK_STOCK), PIECE("P2", "1B", BK_STOCK));
    ROWS(folder, steps, bk_step, that_can_wait((bk_step)STEP("P1", "braid", BK_HAND, 420 + 60, NULL)),
         STEP("P2", "hem", BK_HAND, 60, NULL));
    bk_forecast *forecast = forecast_of(folder, 20);
    ck_assert_str_eq(days_told(forecast), "1A Wed 3 Mar, 0 in hand\n1B Tue 2 Mar, 4 in hand\n");
    ck_assert_int_eq(forecast->costumes[0].days.chance, 1000);
    ck_assert_int_eq(forecast->productions[0].late, 0);
    ck_assert_int_eq(forecast->productions[0].days.finish, DAY(3, 2));
    ck_assert_int_eq(forecast->productions[0].days.days_in_hand, 4);
    ck_assert_int_eq(forecast->productions[0].days.chance, 1000);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_small_costume_is_not_left_until_its_last_day)
{
    // Five days' work and half an hour's, both due on the same day, the sixth: both are in time in either order.
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 9));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "The Miller", DAY(3, 9)),
         COSTUME("1B", "The Miller", DAY(3, 9)));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A", BK_STOCK), PIECE("P2", "1B", BK_STOCK));
    ROWS(folder, steps, bk_step, STEP("P1", "sew", BK_MACHINE, 5 * 420, NULL),
         STEP("P2", "hem", BK_HAND, 30, NULL));
    bk_forecast *forecast = forecast_of(folder, 50);
    ck_assert_str_eq(days_told(forecast), "1A Tue 9 Mar, 0 in hand\n1B Tue 2 Mar, 5 in hand\n");
    bk_forecast_free(forecast);
}
END_TEST

// ------------------------------------------------------------------------------------------------- more hands

START_TEST(two_makers_share_the_work)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 2));
    ROWS(folder, people, bk_person, maker("Ada"), maker("Bo"));
    ROWS(folder, steps, bk_step, STEP("P1", "hem", BK_HAND, 420, NULL),
         STEP("P1", "cuffs", BK_HAND, 420, NULL));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(days_told(forecast), "1A Tue 2 Mar, 0 in hand\n");
    ck_assert_ptr_ne(planned_step(forecast, "P1", "hem")->people,
                     planned_step(forecast, "P1", "cuffs")->people);
    ck_assert_uint_ne(planned_step(forecast, "P1", "hem")->people[0],
                      planned_step(forecast, "P1", "cuffs")->people[0]);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(of_two_who_could_the_one_with_fewer_skills_does_it)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 4));
    ROWS(folder, people, bk_person, maker("Ada"), helper("Bo", "hand", 1, "10:00-18:00"));
    ROWS(folder, steps, bk_step, STEP("P1", "hem", BK_HAND, 60, NULL));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(step_told(forecast, "P1", "hem"), "Tue 2 Mar 10:00 to Tue 2 Mar 11:00, Bo");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_step_for_two_waits_until_both_are_there)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 4));
    ROWS(folder, people, bk_person, maker("Ada"), helper("Bo", "cut;hand", 2, "12:30-15:00"));
    ROWS(folder, steps, bk_step, for_hands((bk_step)STEP("P1", "cut", BK_CUT, 60, NULL), 2));
    bk_forecast *forecast = forecast_of(folder, 0);
    // Half an hour before Ada's dinner, half an hour after it.
    ck_assert_str_eq(stretches_told(forecast), "Wed 3 Mar Ada 12:30-13:00 P1/cut\n"
                                               "Wed 3 Mar Ada 14:00-14:30 P1/cut again\n"
                                               "Wed 3 Mar Bo 12:30-13:00 P1/cut\n"
                                               "Wed 3 Mar Bo 14:00-14:30 P1/cut again\n");
    bk_forecast_free(forecast);
}
END_TEST

/// A store with one cutting table.
static void put_table(int64_t count)
{
    bk_store *store = open_store();
    bk_equipment table = {.name = "cutting table", .kinds = "draft;cut", .count = count};
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_EQUIPMENT, &table, 1, NULL, &trouble));
    MUST(bk_store_change_commit(store, "2027-03-02T09:30:00+01:00", "A table.", NULL, &trouble));
    bk_store_close(store);
}

static bk_folder *two_cutters(void)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 4));
    ROWS(folder, people, bk_person, maker("Ada"), maker("Bo"));
    ROWS(folder, steps, bk_step, STEP("P1", "body", BK_CUT, 120, NULL),
         STEP("P1", "lining", BK_CUT, 120, NULL));
    return folder;
}

START_TEST(two_cutters_take_turns_at_one_table)
{
    put_table(1);
    bk_forecast *forecast = forecast_of(two_cutters(), 0);
    bk_minute first = planned_step(forecast, "P1", "body")->begin.time,
              second = planned_step(forecast, "P1", "lining")->begin.time;
    ck_assert_int_eq(first + second, 10 * 60 + 12 * 60);
    ck_assert_int_ne(first, second);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(two_cutters_work_side_by_side_at_two_tables)
{
    put_table(1);
    put_table(1);
    bk_forecast *forecast = forecast_of(two_cutters(), 0);
    ck_assert_int_eq(planned_step(forecast, "P1", "body")->begin.time, 10 * 60);
    ck_assert_int_eq(planned_step(forecast, "P1", "lining")->begin.time, 10 * 60);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(two_productions_share_one_maker_and_the_first_due_goes_first)
{
    bk_folder *later = one_costume("The Mill", DAY(3, 19), DAY(3, 5));
    ROWS(later, steps, bk_step, STEP("P1", "hem", BK_HAND, 420, NULL));
    bk_folder *sooner = one_costume("The Ferry", DAY(4, 9), DAY(3, 2));
    ROWS(sooner, costumes, bk_costume, COSTUME("7C", "The Miller", DAY(3, 2)));
    ROWS(sooner, pieces, bk_piece, PIECE("F1", "7C", BK_STOCK));
    ROWS(sooner, steps, bk_step, STEP("F1", "hem", BK_HAND, 420, NULL));
    bk_forecast_free(forecast_of(later, 0));
    bk_forecast *forecast = forecast_of(sooner, 50);
    ck_assert_str_eq(days_told(forecast), "1A Wed 3 Mar, 2 in hand\n7C Tue 2 Mar, 0 in hand\n");
    ck_assert_str_eq(forecast->productions[0].name, "The Mill");
    ck_assert_str_eq(planned_step(forecast, "F1", "hem")->production, "The Ferry");
    bk_forecast_free(forecast);
}
END_TEST

// ----------------------------------------------------------------------------------------- the workroom's record

/// So many finished cuts of an hour that took an hour and a half, and an open one of two hours.
static bk_folder *slow_cuts(size_t finished)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 4));
    bk_step steps[9] = {STEP("P1", "cut", BK_CUT, 120, NULL)};
    for (size_t i = 1; i <= finished; i++) {
        steps[i] = done_on((bk_step)STEP("P1", "done", BK_CUT, 60, NULL), DAY(2, 20), "Ada", 90);
        steps[i].key = bk_arena_print(texts(), "c%zu", i);
    }
    put_rows(folder->arena, &folder->steps, steps, sizeof *steps, finished + 1);
    return folder;
}

START_TEST(eight_records_of_minutes_count_in_the_plan)
{
    bk_forecast *forecast = forecast_of(slow_cuts(8), 0);
    ck_assert_int_eq(planned_step(forecast, "P1", "cut")->minutes, 180);
    ck_assert_int_eq(planned_step(forecast, "P1", "cut")->guessed, 120);
    ck_assert_str_eq(step_told(forecast, "P1", "cut"), "Tue 2 Mar 10:00 to Tue 2 Mar 13:00, Ada");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(seven_records_of_minutes_do_not)
{
    bk_forecast *forecast = forecast_of(slow_cuts(7), 0);
    ck_assert_int_eq(planned_step(forecast, "P1", "cut")->minutes, 120);
    ck_assert_uint_gt(forecast->paces.count, 0);
    ck_assert_int_eq(forecast->paces.items[0].count, 7);
    bk_forecast_free(forecast);
}
END_TEST

// ------------------------------------------------------------------------------------------------- odds and effort

START_TEST(a_costume_with_days_to_spare_is_certain_and_one_without_is_not)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 2));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "The Miller", DAY(3, 2)),
         COSTUME("1B", "The Miller", DAY(3, 12)));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A", BK_STOCK), PIECE("P2", "1B", BK_STOCK));
    ROWS(folder, steps, bk_step, STEP("P1", "hem", BK_HAND, 420, NULL), STEP("P2", "hem", BK_HAND, 60, NULL));
    bk_forecast *forecast = forecast_of(folder, 200);
    const bk_outlook_days *tight = &forecast->costumes[0].days, *easy = &forecast->costumes[1].days;
    ck_assert_int_eq(forecast->trials, 200);
    ck_assert_int_gt(tight->chance, 100);
    ck_assert_int_lt(tight->chance, 700);
    ck_assert_int_gt(tight->chance_error, 0);
    ck_assert_int_eq(easy->chance, 1000);
    // All are in time exactly where the tight one is.
    ck_assert_int_eq(forecast->productions[0].days.chance, tight->chance);
    ck_assert_int_ge(tight->likely, tight->even);
    ck_assert_uint_eq(tight->decider_count, 1);
    ck_assert_uint_eq(tight->deciders[0].step, 0);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(the_chain_to_the_finish_tells_what_each_step_waited_for)
{
    bk_folder *folder = chain_of_seven_hours(DAY(3, 4));
    bk_forecast *forecast = forecast_of(folder, 0);
    const bk_costume_forecast *costume = &forecast->costumes[0];
    ck_assert_uint_eq(costume->chain_count, 3);
    ck_assert_str_eq(forecast->steps[costume->chain[0].step].key, "cut");
    ck_assert_str_eq(forecast->steps[costume->chain[2].step].key, "press");
    ck_assert_int_eq(costume->chain[2].bound, BK_BOUND_ORDER);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(the_same_store_day_and_seed_give_the_same_forecast)
{
    bk_folder *folder = salt_road();
    ROWS(folder, people, bk_person, maker("Ada Pell"), helper("Zoë Ngô", "hand;fit", 1, "09:00-17:00"));
    bk_forecast *first = forecast_of(folder, 300);
    bk_forecast *second = forecast_again(300);
    ck_assert_str_eq(stretches_told(first), stretches_told(second));
    ck_assert_str_eq(days_told(first), days_told(second));
    ck_assert_int_eq(first->schedules, second->schedules);
    for (size_t i = 0; i < first->costume_count; i++) {
        ck_assert_int_eq(first->costumes[i].days.chance, second->costumes[i].days.chance);
        ck_assert_int_eq(first->costumes[i].days.likely, second->costumes[i].days.likely);
    }
    ck_assert_uint_gt(first->stretch_count, 0);
    bk_forecast_free(first);
    bk_forecast_free(second);
}
END_TEST

static bool never_on(void *context, int done)
{
    ck_assert_int_ge(done, 0);
    ck_assert_int_le(done, 1000);
    ++*(int *)context;
    return false;
}

START_TEST(a_reckoning_that_is_told_to_stop_gives_nothing)
{
    bk_forecast_free(forecast_of(chain_of_seven_hours(DAY(3, 4)), 0));
    bk_store *store = open_store();
    bk_workroom *room = NULL;
    MUST(bk_workroom_read(store, today(), &room, &trouble));
    int asked = 0;
    bk_forecast *forecast = NULL;
    bk_forecast_reckon(room, NULL, 0, bk_effort_usual(3, 1, -1), never_on, &asked, &forecast);
    ck_assert_ptr_null(forecast);
    ck_assert_int_gt(asked, 0);
    bk_workroom_free(room);
    bk_store_close(store);
}
END_TEST

START_TEST(the_usual_effort_shrinks_as_the_work_grows)
{
    bk_effort small = bk_effort_usual(100, 3, -1), large = bk_effort_usual(2000, 3, -1);
    ck_assert_int_eq(small.schedules, 5000);
    ck_assert_int_eq(small.trials, BK_USUAL_TRIALS);
    ck_assert_int_eq(large.schedules, 625);
    ck_assert_int_eq(large.trials, BK_USUAL_TRIALS);
    ck_assert_int_eq(bk_effort_usual(10000000, 3, -1).schedules, 1);
    ck_assert_int_eq(bk_effort_usual(10000000, 3, -1).trials, 100);
    ck_assert_int_eq(bk_effort_usual(100, 3, 0).schedules, 1);
    ck_assert_int_eq(bk_effort_usual(100, 3, 0).trials, 0);
    ck_assert_int_eq(bk_effort_usual(100, 3, 70).schedules, 70);
    ck_assert_int_eq(bk_effort_usual(100, 3, 70).trials, 70);
}
END_TEST

// ------------------------------------------------------------------------------------------------------- urgency

START_TEST(the_most_urgent_costume_stands_first)
{
    static const bk_costume_forecast by_urgency[] = {
        {.number = "9A", .open = true, .due = 9, .days = {.finish = BK_NO_DAY, .days_known = true}},
        {.number = "8A",
         .open = true,
         .due = 8,
         .days = {.finish = 9, .days_known = true, .days_in_hand = -1}},
        {.number = "7A",
         .open = true,
         .due = 7,
         .days = {.finish = 6, .days_known = true, .days_in_hand = 1, .chance = 500}},
        {.number = "6A",
         .open = true,
         .due = 6,
         .days = {.finish = 5, .days_known = true, .days_in_hand = 1, .chance = 900}},
        {.number = "2A",
         .open = true,
         .due = 7,
         .days = {.finish = 6, .days_known = true, .days_in_hand = 1, .chance = 900}},
        {.number = "10A",
         .open = true,
         .due = 7,
         .days = {.finish = 6, .days_known = true, .days_in_hand = 1, .chance = 900}},
        {.number = "1A", .open = true, .due = 1, .days = {.finish = BK_NO_DAY}},
        {.number = "1B", .due = 1, .days = {.finish = 3, .days_known = true, .days_in_hand = -2}},
    };
    for (size_t i = 1; i < sizeof by_urgency / sizeof *by_urgency; i++) {
        ck_assert_int_lt(bk_forecast_order(&by_urgency[i - 1], &by_urgency[i]), 0);
        ck_assert_int_gt(bk_forecast_order(&by_urgency[i], &by_urgency[i - 1]), 0);
    }
    ck_assert_int_eq(bk_forecast_order(NULL, NULL), 0);
}
END_TEST

BK_TEST_MAIN(
    "forecast", a_chain_of_seven_hours_takes_one_maker_one_day, days_in_hand_are_days_on_which_anybody_works,
    what_is_finished_after_its_due_day_is_late_by_working_days,
    what_was_done_today_has_used_up_the_beginning_of_the_day, what_follows_waits_until_a_step_has_rested,
    a_step_done_lately_still_rests, a_finished_costume_was_finished_on_the_day_of_its_last_step,
    what_can_wait_gives_way_and_makes_nothing_late,
    a_costume_with_nothing_open_but_what_can_wait_is_finished_with_that,
    a_costume_that_can_go_on_as_it_is_is_never_late, a_small_costume_is_not_left_until_its_last_day,
    two_makers_share_the_work, of_two_who_could_the_one_with_fewer_skills_does_it,
    a_step_for_two_waits_until_both_are_there, two_cutters_take_turns_at_one_table,
    two_cutters_work_side_by_side_at_two_tables, two_productions_share_one_maker_and_the_first_due_goes_first,
    eight_records_of_minutes_count_in_the_plan, seven_records_of_minutes_do_not,
    a_costume_with_days_to_spare_is_certain_and_one_without_is_not,
    the_chain_to_the_finish_tells_what_each_step_waited_for,
    the_same_store_day_and_seed_give_the_same_forecast, a_reckoning_that_is_told_to_stop_gives_nothing,
    the_usual_effort_shrinks_as_the_work_grows, the_most_urgent_costume_stands_first)
