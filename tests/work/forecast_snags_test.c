// What stands in the way of a forecast. The day is Tuesday, 2 March 2027.

#include "bodkin/base/text.h"
#include "work/planned.h"

/// One costume, due on Monday, 8 March; the opening is on the 19th.
static bk_folder *plain(void)
{
    return one_costume("The Mill", DAY(3, 19), DAY(3, 8));
}

START_TEST(where_nobody_works_no_day_is_told)
{
    bk_folder *folder = plain();
    put_rows(folder->arena, &folder->people, NULL, sizeof(bk_person), 0);
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 60, NULL));
    bk_forecast *forecast = forecast_of(folder, 10);
    ck_assert_str_eq(snags_told(forecast), "nobody\n");
    ck_assert_str_eq(days_told(forecast), "1A not known\n");
    ck_assert_int_eq(forecast->costumes[0].days.chance, -1);
    ck_assert_int_eq(forecast->productions[0].late, 0);
    ck_assert_str_eq(planned_step(forecast, "P1", "cut")->title, "Step cut");
    ck_assert_str_eq(step_told(forecast, "P1", "cut"), "never");
    ck_assert_uint_eq(forecast->stretch_count, 0);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_step_that_nobody_can_do_is_never_done)
{
    bk_folder *folder = plain();
    ROWS(folder, people, bk_person, helper("Bo", "cut", 1, "10:00-13:00"));
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 60, NULL), STEP("P1", "dye", BK_DYE, 60, "cut"),
         STEP("P1", "press", BK_CUT, 60, "dye"));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(snags_told(forecast), "1A: no skill P1/dye Mon 8 Mar\n");
    ck_assert_str_eq(days_told(forecast), "1A never\n");
    ck_assert_str_eq(step_told(forecast, "P1", "cut"), "Tue 2 Mar 10:00 to Tue 2 Mar 11:00, Bo");
    ck_assert_str_eq(step_told(forecast, "P1", "press"), "never");
    ck_assert_int_eq(forecast->productions[0].late, 1);
    ck_assert_int_eq(forecast->productions[0].days.finish, BK_NO_DAY);
    ck_assert(forecast->productions[0].days.days_known);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_step_for_more_hands_than_there_are_is_never_done)
{
    bk_folder *folder = plain();
    ROWS(folder, steps, bk_step, for_hands((bk_step)STEP("P1", "cut", BK_CUT, 60, NULL), 2));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(snags_told(forecast), "1A: no skill P1/cut Mon 8 Mar\n");
    ck_assert_int_eq(forecast->costumes[0].snags[0].hands, 2);
    ck_assert_str_eq(days_told(forecast), "1A never\n");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(hands_that_are_never_there_together_never_do_it)
{
    bk_folder *folder = plain();
    ROWS(folder, people, bk_person, maker("Ada"), helper("Bo", "cut", 5, "10:00-16:00"));
    ROWS(folder, steps, bk_step, for_hands((bk_step)STEP("P1", "cut", BK_CUT, 60, NULL), 2),
         STEP("P1", "sew", BK_MACHINE, 60, "cut"));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(snags_told(forecast), "1A: no skill P1/cut Mon 8 Mar\n");
    ck_assert_str_eq(days_told(forecast), "1A never\n");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_fitting_longer_than_any_stretch_of_the_hours_is_never_held)
{
    bk_folder *folder = plain();
    ROWS(folder, steps, bk_step, STEP("P1", "fit", BK_FIT, 241, NULL));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(snags_told(forecast), "1A: no hours P1/fit Mon 8 Mar\n");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(hands_without_hours_before_the_due_day_make_it_late)
{
    bk_folder *folder = plain();
    bk_person later = maker("Bo");
    later.from = DAY(3, 9);
    bk_person sooner = helper("Ada", "cut", 1, "10:00-13:00");
    ROWS(folder, people, bk_person, sooner, later);
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 60, NULL), STEP("P1", "dye", BK_DYE, 60, "cut"));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(snags_told(forecast), "1A: no hours P1/dye Mon 8 Mar\n");
    // Only Tuesday is a day on which anybody works.
    ck_assert_str_eq(days_told(forecast), "1A Tue 9 Mar, -1 in hand\n");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(what_can_wait_needs_no_hours_before_the_due_day)
{
    bk_folder *folder = plain();
    bk_person later = maker("Bo");
    later.from = DAY(3, 9);
    ROWS(folder, people, bk_person, later);
    ROWS(folder, steps, bk_step, that_can_wait((bk_step)STEP("P1", "dye", BK_DYE, 60, NULL)));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(snags_told(forecast), "");
    bk_forecast_free(forecast);
}
END_TEST

static bk_folder *fitting_of_an_absent_performer(bk_day until)
{
    bk_folder *folder = plain();
    ROWS(folder, steps, bk_step, STEP("P1", "fit", BK_FIT, 30, NULL));
    ROWS(folder, away, bk_away, AWAY("Ines Varga", DAY(3, 10), until, "a film"),
         AWAY("Ines Varga", DAY(2, 20), DAY(3, 9), "a tour"));
    return folder;
}

START_TEST(a_performer_away_until_after_the_opening_cannot_be_fitted_before_it)
{
    bk_forecast *forecast = forecast_of(fitting_of_an_absent_performer(DAY(3, 20)), 0);
    ck_assert_str_eq(snags_told(forecast), "1A: away P1/fit Ines Varga Sat 20 Mar\n");
    ck_assert_str_eq(step_told(forecast, "P1", "fit"), "Mon 22 Mar 10:00 to Mon 22 Mar 10:30, Ada");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_performer_back_by_the_opening_is_not_away)
{
    bk_forecast *forecast = forecast_of(fitting_of_an_absent_performer(DAY(3, 18)), 0);
    ck_assert_str_eq(snags_told(forecast), "");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_step_without_minutes_is_told)
{
    bk_folder *folder = plain();
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 0, NULL),
         STEP("P1", "sew", BK_MACHINE, 60, "cut"));
    bk_forecast *forecast = forecast_of(folder, 10);
    ck_assert_str_eq(snags_told(forecast), "1A: no minutes P1/cut\n");
    ck_assert_str_eq(days_told(forecast), "1A Tue 2 Mar, 4 in hand\n");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_due_day_that_is_past_is_told)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(2, 26));
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 60, NULL));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(snags_told(forecast), "1A: past Fri 26 Feb\n");
    // Monday and Tuesday.
    ck_assert_str_eq(days_told(forecast), "1A Tue 2 Mar, -2 in hand\n");
    ck_assert_str_eq(latest_told(forecast, "P1", "cut"), "never");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_fitting_of_a_role_that_nobody_plays_is_planned_as_if_somebody_did)
{
    bk_folder *folder = plain();
    ROWS(folder, roles, bk_role, ROLE("The Miller", NULL, NULL));
    ROWS(folder, steps, bk_step, STEP("P1", "fit", BK_FIT, 30, NULL));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(snags_told(forecast), "1A: uncast P1/fit Mon 8 Mar\n");
    ck_assert_str_eq(step_told(forecast, "P1", "fit"), "Tue 2 Mar 10:00 to Tue 2 Mar 10:30, Ada");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_circle_that_other_hands_wrote_is_cut_open)
{
    bk_folder *folder = plain();
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 60, NULL),
         STEP("P1", "sew", BK_MACHINE, 60, "cut"), STEP("P1", "hem", BK_HAND, 60, "sew"));
    bk_forecast_free(forecast_of(folder, 0));
    bk_ask("INSERT INTO step_after (step_id, after_id, position) SELECT cut.id, hem.id, 9 FROM step cut, "
           "step hem "
           "WHERE cut.key = 'cut' AND hem.key = 'hem'");
    bk_forecast *forecast = forecast_again(10);
    ck_assert_str_eq(days_told(forecast), "1A Tue 2 Mar, 4 in hand\n");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(material_that_was_not_ordered_has_no_day)
{
    bk_folder *folder = plain();
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 60, NULL));
    ROWS(folder, materials, bk_material, MATERIAL("wool", BK_METRE, BK_NO_AMOUNT));
    ROWS(folder, needs, bk_need, NEED("P1", "cut", "wool", TENTHS(20)));
    bk_forecast *forecast = forecast_of(folder, 0);
    ck_assert_str_eq(snags_told(forecast), "1A: no date P1/cut\n");
    ck_assert(!planned_step(forecast, "P1", "cut")->free_now);
    bk_forecast_free(forecast);
}
END_TEST

BK_TEST_MAIN("forecast_snags", where_nobody_works_no_day_is_told, a_step_that_nobody_can_do_is_never_done,
             a_step_for_more_hands_than_there_are_is_never_done,
             hands_that_are_never_there_together_never_do_it,
             a_fitting_longer_than_any_stretch_of_the_hours_is_never_held,
             hands_without_hours_before_the_due_day_make_it_late,
             what_can_wait_needs_no_hours_before_the_due_day,
             a_performer_away_until_after_the_opening_cannot_be_fitted_before_it,
             a_performer_back_by_the_opening_is_not_away, a_step_without_minutes_is_told,
             a_due_day_that_is_past_is_told,
             a_fitting_of_a_role_that_nobody_plays_is_planned_as_if_somebody_did,
             a_circle_that_other_hands_wrote_is_cut_open, material_that_was_not_ordered_has_no_day)
