// What the plan waits for, worked out by hand: orders, pieces that are out, fittings that are booked, performers who are away; and by
// when each wait must clear. The day is Tuesday, 2 March 2027; Ada works from 10 to 13 and from 14 to 18 o'clock, Monday to Friday.

#include "bodkin/base/text.h"
#include "work/planned.h"

// -------------------------------------------------------------------------------------------- material and pieces

static bk_folder *needs_wool(bk_day order_due)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 8));
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 60, NULL),
         STEP("P1", "sew", BK_MACHINE, 60, "cut"));
    ROWS(folder, materials, bk_material, MATERIAL("wool", BK_METRE, TENTHS(10)));
    ROWS(folder, needs, bk_need, NEED("P1", "sew", "wool", TENTHS(20)));
    ROWS(folder, orders, bk_order, ORDER("wool", TENTHS(30), DAY(2, 10), order_due, BK_NO_DAY));
    return folder;
}

START_TEST(a_step_begins_when_its_material_is_due)
{
    bk_forecast *forecast = forecast_of(needs_wool(DAY(3, 4)), 0);
    ck_assert_str_eq(step_told(forecast, "P1", "cut"), "Tue 2 Mar 10:00 to Tue 2 Mar 11:00, Ada");
    ck_assert_str_eq(step_told(forecast, "P1", "sew"), "Thu 4 Mar 10:00 to Thu 4 Mar 11:00, Ada");
    ck_assert(planned_step(forecast, "P1", "cut")->free_now);
    ck_assert(!planned_step(forecast, "P1", "sew")->free_now);
    ck_assert_uint_eq(planned_step(forecast, "P1", "sew")->material_count, 1);
    ck_assert_str_eq(planned_step(forecast, "P1", "sew")->materials[0], "wool");
    ck_assert_str_eq(snags_told(forecast), "");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(material_that_is_late_is_taken_to_come_today_and_makes_the_forecast_poor)
{
    bk_forecast *forecast = forecast_of(needs_wool(DAY(3, 1)), 0);
    ck_assert_str_eq(step_told(forecast, "P1", "sew"), "Tue 2 Mar 11:00 to Tue 2 Mar 12:00, Ada");
    ck_assert_str_eq(snags_told(forecast), "1A: no date P1/sew\n");
    bk_forecast_free(forecast);
}
END_TEST

static bk_folder *piece_out(bk_day back_by)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 8));
    bk_piece out = PIECE("P1", "1A", BK_STOCK);
    out.out_with = "Tomas Lind";
    out.out_since = DAY(2, 20);
    out.back_by = back_by;
    ROWS(folder, pieces, bk_piece, out);
    ROWS(folder, steps, bk_step, STEP("P1", "hem", BK_HAND, 60, NULL),
         STEP("P1", "press", BK_PRESS, 60, "hem"));
    return folder;
}

START_TEST(a_piece_that_is_out_is_worked_on_when_it_is_back)
{
    bk_forecast *forecast = forecast_of(piece_out(DAY(3, 4)), 0);
    ck_assert_str_eq(step_told(forecast, "P1", "hem"), "Thu 4 Mar 10:00 to Thu 4 Mar 11:00, Ada");
    ck_assert_str_eq(snags_told(forecast), "");
    // Both hours fit the last two of the due day, Monday.
    ck_assert_str_eq(wanted_told(forecast, "1A", "P1", NULL), "Mon 8 Mar");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_piece_that_is_overdue_is_taken_to_come_back_today)
{
    bk_forecast *forecast = forecast_of(piece_out(DAY(2, 26)), 0);
    ck_assert_str_eq(step_told(forecast, "P1", "hem"), "Tue 2 Mar 10:00 to Tue 2 Mar 11:00, Ada");
    ck_assert_str_eq(snags_told(forecast), "1A: no date P1/hem\n");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_costume_is_not_finished_before_its_pieces_are_back)
{
    bk_folder *folder = piece_out(DAY(3, 4));
    ROWS(folder, steps, bk_step,
         done_on((bk_step)STEP("P1", "hem", BK_HAND, 60, NULL), DAY(2, 20), NULL, 60));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(days_told(forecast), "1A Thu 4 Mar, 2 in hand\n");
    ck_assert(forecast->costumes[0].open);
    bk_forecast_free(forecast);
}
END_TEST

/// The piece of 1A is done, and out until after its due day; 2A is open and has days to spare.
static bk_folder *out_too_long(void)
{
    bk_folder *folder = piece_out(DAY(3, 12));
    bk_piece out = ((const bk_piece *)folder->pieces.items)[0];
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "The Miller", DAY(3, 8)),
         COSTUME("2A", "The Miller", DAY(3, 15)));
    ROWS(folder, pieces, bk_piece, out, PIECE("P2", "2A", BK_STOCK));
    ROWS(folder, steps, bk_step, done_on((bk_step)STEP("P1", "hem", BK_HAND, 60, NULL), DAY(2, 20), NULL, 60),
         STEP("P2", "hem", BK_HAND, 60, NULL));
    return folder;
}

START_TEST(a_production_is_no_likelier_in_time_than_a_piece_that_is_out)
{
    bk_forecast *forecast = forecast_of(out_too_long(), 50);
    const bk_outlook_days *days = &forecast->productions[0].days;
    ck_assert_str_eq(days_told(forecast), "1A Fri 12 Mar, -4 in hand\n2A Tue 2 Mar, 9 in hand\n");
    ck_assert_int_eq(days->finish, DAY(3, 12));
    ck_assert_int_eq(days->chance, 0);
    ck_assert_int_eq(days->chance_error, 0);
    ck_assert_int_eq(days->even, DAY(3, 12));
    ck_assert_int_eq(days->likely, DAY(3, 12));
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_production_that_waits_for_pieces_alone_is_ready_when_they_are_back)
{
    bk_folder *folder = piece_out(DAY(3, 4));
    ROWS(folder, steps, bk_step,
         done_on((bk_step)STEP("P1", "hem", BK_HAND, 60, NULL), DAY(2, 20), NULL, 60));
    bk_forecast *forecast = forecast_of(folder, 50);
    const bk_outlook_days *days = &forecast->productions[0].days;
    ck_assert_int_eq(days->chance, 1000);
    ck_assert_int_eq(days->likely, DAY(3, 4));
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(an_open_costume_with_a_piece_out_until_after_its_due_day_is_surely_late)
{
    bk_folder *folder = piece_out(DAY(3, 12));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "The Miller", DAY(3, 8)));
    bk_piece out = ((const bk_piece *)folder->pieces.items)[0];
    ROWS(folder, pieces, bk_piece, out, PIECE("P2", "1A", BK_STOCK));
    ROWS(folder, steps, bk_step, done_on((bk_step)STEP("P1", "hem", BK_HAND, 60, NULL), DAY(2, 20), NULL, 60),
         STEP("P2", "hem", BK_HAND, 60, NULL));
    bk_forecast *forecast = forecast_of(folder, 50);
    ck_assert_int_eq(planned_costume(forecast, "1A")->days.chance, 0);
    ck_assert_int_eq(planned_costume(forecast, "1A")->days.chance_error, 0);
    bk_forecast_free(forecast);
}
END_TEST

// ------------------------------------------------------------------------------------------------------ fittings

static bk_fitting booked(const char *piece, const char *key, bk_day day, bk_minute time)
{
    bk_fitting fitting = FITTING(piece, key, day);
    fitting.booked_at.time = time;
    return fitting;
}

static bk_folder *with_fitting(bk_fitting fitting)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 8));
    ROWS(folder, steps, bk_step, STEP("P1", "fit", BK_FIT, 30, NULL),
         STEP("P1", "alt", BK_MACHINE, 60, "fit"), STEP("P1", "hem", BK_HAND, 420, NULL));
    ROWS(folder, fittings, bk_fitting, fitting);
    return folder;
}

START_TEST(a_booked_fitting_happens_when_it_is_booked)
{
    bk_forecast *forecast = forecast_of(with_fitting(booked("P1", "fit", DAY(3, 4), 11 * 60 + 15)), 0);
    ck_assert_str_eq(step_told(forecast, "P1", "fit"), "Thu 4 Mar 11:15 to Thu 4 Mar 11:45, Ada");
    ck_assert_str_eq(step_told(forecast, "P1", "alt"), "Thu 4 Mar 11:45 to Thu 4 Mar 12:45, Ada");
    ck_assert(planned_step(forecast, "P1", "fit")->booked);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_fitting_booked_for_today_interrupts_other_work)
{
    bk_folder *folder = with_fitting(booked("P1", "fit", DAY(3, 2), 11 * 60));
    ROWS(folder, steps, bk_step, STEP("P1", "fit", BK_FIT, 30, NULL), STEP("P1", "hem", BK_HAND, 420, NULL));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(stretches_told(forecast), "Tue 2 Mar Ada 10:00-11:00 P1/hem\n"
                                               "Tue 2 Mar Ada 11:00-11:30 P1/fit\n"
                                               "Tue 2 Mar Ada 11:30-13:00 P1/hem again\n"
                                               "Tue 2 Mar Ada 14:00-18:00 P1/hem again\n"
                                               "Wed 3 Mar Ada 10:00-10:30 P1/hem again\n");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(people_come_in_for_a_fitting_outside_their_hours)
{
    bk_forecast *forecast = forecast_of(with_fitting(booked("P1", "fit", DAY(3, 6), 19 * 60)), 0);
    ck_assert_str_eq(step_told(forecast, "P1", "fit"), "Sat 6 Mar 19:00 to Sat 6 Mar 19:30, Ada");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_fitting_booked_for_a_day_is_not_before_it)
{
    bk_forecast *forecast = forecast_of(with_fitting(booked("P1", "fit", DAY(3, 4), BK_NO_TIME)), 0);
    ck_assert_str_eq(step_told(forecast, "P1", "fit"), "Thu 4 Mar 10:00 to Thu 4 Mar 10:30, Ada");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(an_unbooked_fitting_happens_when_both_are_there)
{
    bk_folder *folder = with_fitting((bk_fitting)FITTING("P1", "fit", DAY(2, 20)));
    ROWS(folder, away, bk_away, AWAY("Ines Varga", DAY(3, 1), DAY(3, 3), "a tour"));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(step_told(forecast, "P1", "fit"), "Thu 4 Mar 10:00 to Thu 4 Mar 10:30, Ada");
    ck_assert_str_eq(step_told(forecast, "P1", "hem"), "Tue 2 Mar 10:00 to Tue 2 Mar 18:00, Ada");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(fittings_of_one_performer_at_one_moment_are_one_call)
{
    bk_folder *folder = with_fitting((bk_fitting)FITTING("P1", "fit", DAY(3, 4)));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A", BK_STOCK), PIECE("P2", "1A", BK_STOCK));
    ROWS(folder, steps, bk_step, STEP("P1", "fit", BK_FIT, 30, NULL), STEP("P2", "fit", BK_FIT, 15, NULL));
    bk_fitting twenty = booked("P1", "fit", DAY(3, 4), 18 * 60);
    twenty.minutes = 20;
    ROWS(folder, fittings, bk_fitting, twenty, booked("P2", "fit", DAY(3, 4), 18 * 60));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(step_told(forecast, "P1", "fit"), "Thu 4 Mar 18:00 to Thu 4 Mar 18:20, Ada");
    ck_assert_str_eq(step_told(forecast, "P2", "fit"), "Thu 4 Mar 18:20 to Thu 4 Mar 18:35, Ada");
    ck_assert_str_eq(days_told(forecast), "1A Thu 4 Mar, 2 in hand\n");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_call_of_more_minutes_than_a_lifetime_has_is_told_all_the_same)
{
    enum { MANY = 2300, LONG = 1000000, TEN = 600 }; // together more minutes than fit into 32 bits
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 8));
    bk_step *steps = bk_arena_clear(folder->arena, MANY, sizeof *steps);
    bk_fitting *fittings = bk_arena_clear(folder->arena, MANY, sizeof *fittings);
    for (size_t i = 0; i < MANY; i++) {
        const char *key = bk_arena_print(folder->arena, "fit%zu", i);
        steps[i] = (bk_step)STEP("P1", "fit", BK_FIT, LONG, NULL);
        steps[i].key = key;
        fittings[i] = booked("P1", key, DAY(3, 4), TEN);
        fittings[i].minutes = LONG;
    }
    put_rows(folder->arena, &folder->steps, steps, sizeof *steps, MANY);
    put_rows(folder->arena, &folder->fittings, fittings, sizeof *fittings, MANY);
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_int_eq(planned_step(forecast, "P1", "fit0")->begin.day, DAY(3, 4));
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_fitting_that_cannot_be_ready_at_its_moment_is_later)
{
    bk_folder *folder = with_fitting(booked("P1", "fit", DAY(3, 2), 11 * 60));
    ROWS(folder, steps, bk_step, STEP("P1", "sew", BK_MACHINE, 390, NULL),
         STEP("P1", "fit", BK_FIT, 30, "sew"));
    bk_forecast *forecast = forecast_of(folder, 0);
    // The half hour kept free for the call at eleven o'clock is gone; then the day is over.
    ck_assert_str_eq(step_told(forecast, "P1", "sew"), "Tue 2 Mar 10:00 to Tue 2 Mar 18:00, Ada");
    ck_assert_str_eq(step_told(forecast, "P1", "fit"), "Wed 3 Mar 10:00 to Wed 3 Mar 10:30, Ada");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(what_comes_before_a_call_is_done_by_then)
{
    bk_folder *folder = with_fitting(booked("P1", "fit", DAY(3, 3), 10 * 60));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "The Miller", DAY(3, 8)),
         COSTUME("1B", "The Miller", DAY(3, 4)));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A", BK_STOCK), PIECE("P2", "1B", BK_STOCK));
    ROWS(folder, steps, bk_step, STEP("P1", "sew", BK_MACHINE, 120, NULL),
         STEP("P1", "fit", BK_FIT, 30, "sew"), STEP("P2", "hem", BK_HAND, 420, NULL),
         STEP("P1", "last", BK_FIT, 30, NULL));
    ROWS(folder, fittings, bk_fitting, booked("P1", "fit", DAY(3, 3), 10 * 60),
         booked("P1", "last", DAY(3, 5), BK_NO_TIME));
    bk_forecast *forecast = forecast_of(folder, 50);
    // The hem is due first, and has time enough after the sewing.
    ck_assert_str_eq(step_told(forecast, "P1", "fit"), "Wed 3 Mar 10:00 to Wed 3 Mar 10:30, Ada");
    ck_assert_int_eq(planned_step(forecast, "P1", "sew")->begin.day, DAY(3, 2));
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_performer_is_kept_free_for_a_call)
{
    bk_folder *folder = with_fitting(booked("P1", "fit", DAY(3, 2), 10 * 60 + 15));
    ROWS(folder, people, bk_person, maker("Ada"), maker("Bo"));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A", BK_STOCK), PIECE("P2", "1A", BK_STOCK));
    ROWS(folder, steps, bk_step, STEP("P2", "try", BK_FIT, 30, NULL), STEP("P1", "fit", BK_FIT, 30, NULL));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(step_told(forecast, "P1", "fit"), "Tue 2 Mar 10:15 to Tue 2 Mar 10:45, Ada");
    ck_assert_int_eq(planned_step(forecast, "P2", "try")->begin.time, 10 * 60 + 45);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(the_one_who_is_there_takes_the_fitting)
{
    bk_folder *folder = with_fitting(booked("P1", "fit", DAY(3, 2), 17 * 60 + 45));
    ROWS(folder, people, bk_person, maker("Ada"), helper("Bo", ALL_SKILLS ";", 1, "16:00-20:00"));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(step_told(forecast, "P1", "fit"), "Tue 2 Mar 17:45 to Tue 2 Mar 18:15, Bo");
    bk_forecast_free(forecast);
}
END_TEST

// ----------------------------------------------------------------------------------------------------- by when

START_TEST(a_wait_must_clear_in_time_for_the_work_behind_it)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 8));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A", BK_MAKE));
    // 600 minutes from the cut on: Monday's seven hours and three of Friday's, from 15 o'clock.
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 60, NULL),
         STEP("P1", "sew", BK_MACHINE, 420, "cut"), STEP("P1", "press", BK_PRESS, 120, "sew"),
         that_can_wait((bk_step)STEP("P1", "braid", BK_HAND, 420, "cut")));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(latest_told(forecast, "P1", "cut"), "Fri 5 Mar 15:00");
    ck_assert_str_eq(latest_told(forecast, "P1", "sew"), "Fri 5 Mar 16:00");
    ck_assert_str_eq(latest_told(forecast, "P1", "braid"), "Mon 8 Mar 10:00");
    ck_assert_int_eq(planned_step(forecast, "P1", "cut")->behind, 420 + 120 + 420);
    // It waits for measures: nobody has taken any.
    ck_assert_str_eq(wanted_told(forecast, "1A", "P1", "cut"), "Fri 5 Mar");
    ck_assert_str_eq(snags_told(forecast), "1A: no date P1/cut\n");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(two_branches_behind_a_step_share_the_hands)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 5));
    // One maker does both branches, four hours and three, one after the other: all of Friday.
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 60, NULL),
         STEP("P1", "body", BK_MACHINE, 240, "cut"), STEP("P1", "sleeves", BK_MACHINE, 180, "cut"));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(latest_told(forecast, "P1", "cut"), "Thu 4 Mar 17:00");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(where_there_is_no_time_left_no_day_is_told)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 2));
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 60, NULL),
         STEP("P1", "sew", BK_MACHINE, 420, "cut"));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(latest_told(forecast, "P1", "cut"), "never");
    ck_assert_str_eq(latest_told(forecast, "P1", "sew"), "Tue 2 Mar 10:00");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_shared_piece_is_wanted_by_each_costume_in_its_own_time)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 8));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "The Miller", DAY(3, 8)),
         COSTUME("1B", "The Miller", DAY(3, 4)));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A;1B", BK_STOCK));
    ROWS(folder, steps, bk_step, STEP("P1", "fit", BK_FIT, 30, NULL));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(wanted_told(forecast, "1A", "P1", "fit"), "Mon 8 Mar");
    ck_assert_str_eq(wanted_told(forecast, "1B", "P1", "fit"), "Thu 4 Mar");
    ck_assert_str_eq(planned_step(forecast, "P1", "fit")->costume, "1B");
    ck_assert_str_eq(latest_told(forecast, "P1", "fit"), "Thu 4 Mar 17:30");
    bk_forecast_free(forecast);
}
END_TEST

BK_TEST_MAIN("forecast_waits", a_step_begins_when_its_material_is_due,
             material_that_is_late_is_taken_to_come_today_and_makes_the_forecast_poor,
             a_piece_that_is_out_is_worked_on_when_it_is_back,
             a_piece_that_is_overdue_is_taken_to_come_back_today,
             a_costume_is_not_finished_before_its_pieces_are_back,
             a_production_is_no_likelier_in_time_than_a_piece_that_is_out,
             a_production_that_waits_for_pieces_alone_is_ready_when_they_are_back,
             an_open_costume_with_a_piece_out_until_after_its_due_day_is_surely_late,
             a_booked_fitting_happens_when_it_is_booked, a_fitting_booked_for_today_interrupts_other_work,
             people_come_in_for_a_fitting_outside_their_hours, a_fitting_booked_for_a_day_is_not_before_it,
             an_unbooked_fitting_happens_when_both_are_there,
             fittings_of_one_performer_at_one_moment_are_one_call,
             a_call_of_more_minutes_than_a_lifetime_has_is_told_all_the_same,
             a_fitting_that_cannot_be_ready_at_its_moment_is_later, what_comes_before_a_call_is_done_by_then,
             a_performer_is_kept_free_for_a_call, the_one_who_is_there_takes_the_fitting,
             a_wait_must_clear_in_time_for_the_work_behind_it, two_branches_behind_a_step_share_the_hands,
             where_there_is_no_time_left_no_day_is_told,
             a_shared_piece_is_wanted_by_each_costume_in_its_own_time)
