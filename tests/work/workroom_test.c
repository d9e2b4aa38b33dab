// The workroom as it is read for the reckoning of days and hands.

#include "bodkin/work/workroom.h"

#include "bodkin/base/text.h"
#include "work/planned.h"

static bk_workroom *room_of(bk_store *store)
{
    bk_workroom *room = NULL;
    MUST(bk_workroom_read(store, today(), &room, &trouble));
    return room;
}

START_TEST(productions_stand_by_opening_and_those_put_away_are_left_out)
{
    bk_store *store = open_store();
    const struct {
        const char *name;
        bk_day opens;
    } shows[] = {{"The Mill", DAY(5, 1)},
                 {"The Ferry", DAY(4, 1)},
                 {"The Dyke", DAY(5, 1)},
                 {"The Old Inn", DAY(3, 9)}};
    for (size_t i = 0; i < sizeof shows / sizeof *shows; i++) {
        bk_folder *folder = bare_show(shows[i].name, shows[i].opens);
        take_in(store, folder, false, NULL);
        bk_folder_free(folder);
    }
    bk_ask("UPDATE production SET put_away_on = '2027-03-01' WHERE name = 'The Old Inn'");
    bk_workroom *room = room_of(store);
    ck_assert_uint_eq(room->rail_count, 3);
    ck_assert_uint_eq(bk_workroom_open_steps(room), 0);
    ck_assert_str_eq(room->rails[0]->production.name, "The Ferry");
    ck_assert_str_eq(room->rails[1]->production.name, "The Dyke");
    ck_assert_str_eq(room->rails[2]->production.name, "The Mill");
    bk_workroom_free(room);
    bk_store_close(store);
}
END_TEST

START_TEST(people_and_performers_come_with_their_absences)
{
    bk_store *store = open_store();
    bk_folder *folder = salt_road();
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    bk_workroom *room = room_of(store);
    // Ada Pell works on Mondays and Sundays, and was away until the 7th, a Sunday.
    const bk_room_person *ada = &room->people[1];
    bk_stretch hours[BK_STRETCHES];
    ck_assert_str_eq(ada->record->name, "Ada Pell");
    ck_assert_uint_eq(ada->skills, 1U << BK_CUT | 1U << BK_MACHINE);
    ck_assert_int_eq(bk_calendar_day(ada->calendar, DAY(3, 7), hours), 0);
    ck_assert_int_eq(bk_calendar_day(ada->calendar, DAY(3, 8), hours), 1);
    ck_assert_int_eq(hours[0].from, 10 * 60);
    for (size_t i = 0; i < room->performer_count; i++)
        if (bk_same_text(room->performers[i].name, "Ines Varga")) {
            ck_assert_uint_eq(room->performers[i].away_count, 1);
            ck_assert_int_eq(room->performers[i].away[0][0], DAY(3, 9));
        }
    ck_assert_uint_eq(room->performer_count, 3);
    bk_workroom_free(room);
    bk_store_close(store);
}
END_TEST

START_TEST(the_record_of_minutes_is_of_all_productions)
{
    bk_store *store = open_store();
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 8));
    ROWS(folder, steps, bk_step, done_on((bk_step)STEP("P1", "cut", BK_CUT, 60, NULL), DAY(2, 20), "Ada", 90),
         done_on((bk_step)STEP("P1", "sew", BK_MACHINE, 0, NULL), DAY(2, 20), "Ada", 90),
         done_on((bk_step)STEP("P1", "hem", BK_HAND, 60, NULL), DAY(2, 20), "Ada", BK_NOT_KNOWN),
         STEP("P1", "press", BK_PRESS, 60, NULL));
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    bk_ask("UPDATE production SET put_away_on = '2027-03-01'");
    bk_workroom *room = room_of(store);
    ck_assert_uint_eq(room->rail_count, 0);
    ck_assert_uint_eq(room->taken_count, 1);
    ck_assert_int_eq(room->taken[0].kind, BK_CUT);
    ck_assert_str_eq(room->taken[0].person, "Ada");
    ck_assert_int_eq(room->taken[0].guessed, 60);
    ck_assert_int_eq(room->taken[0].took, 90);
    bk_workroom_free(room);
    bk_store_close(store);
}
END_TEST

START_TEST(a_director_and_a_volunteer_read_the_same)
{
    bk_store *store = open_store();
    bk_folder *folder = salt_road();
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    bk_store_close(store);
    bk_forecast *own = forecast_again(5);
    const bk_as others[] = {BK_AS_DIRECTOR, BK_AS_VOLUNTEER};
    for (size_t i = 0; i < sizeof others / sizeof *others; i++) {
        bk_store_options options = {.path = bk_test_path("workroom.db"), .as = others[i], .who = "Dee"};
        MUST(bk_store_open(&store, &options, &trouble));
        bk_forecast *theirs = NULL;
        MUST(bk_forecast_read(store, today(), BK_USUAL_SEED, 5, &theirs, &trouble));
        ck_assert_str_eq(stretches_told(theirs), stretches_told(own));
        bk_forecast_free(theirs);
        bk_store_close(store);
    }
    bk_forecast_free(own);
}
END_TEST

START_TEST(an_empty_store_is_an_empty_workroom)
{
    bk_store *store = open_store();
    bk_workroom *room = room_of(store);
    ck_assert_uint_eq(room->rail_count + room->person_count + room->performer_count, 0);
    bk_forecast *forecast = NULL;
    bk_forecast_reckon(room, NULL, 0, bk_effort_usual(0, 1, -1), NULL, NULL, &forecast);
    ck_assert_uint_eq(forecast->step_count, 0);
    ck_assert_int_eq(forecast->room_snag.kind, BK_SNAG_NOBODY);
    bk_forecast_free(forecast);
    bk_workroom_free(room);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("workroom", productions_stand_by_opening_and_those_put_away_are_left_out,
             people_and_performers_come_with_their_absences, the_record_of_minutes_is_of_all_productions,
             a_director_and_a_volunteer_read_the_same, an_empty_store_is_an_empty_workroom)
