// What the rail makes of rows that should not be, and of very many of them.

#include "bodkin/work/rail_gather.h"

#include "bodkin/trade/words.h"
#include "work/show.h"

static void refuse_rail(bk_store *store, int64_t production)
{
    bk_rail *rail = NULL;
    REFUSED(bk_rail_read(store, production, today(), &rail, &trouble), BK_STORE,
            "see what is wrong with: bodkin check");
    ck_assert_ptr_null(rail);
}

START_TEST(a_step_of_a_piece_of_another_production_is_refused_and_does_not_crash_the_rail)
{
    bk_folder *folder = salt_road();
    bk_folder *other = bare_show("The Ferry", DAY(6, 4));
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    take_in(store, other, false, NULL);
    bk_ask("UPDATE piece SET production_id = 2");
    refuse_rail(store, 1);
    bk_ask("UPDATE piece SET production_id = 1; UPDATE fitting SET production_id = 2;"
           "UPDATE step SET production_id = 2 WHERE key = 'cut'");
    refuse_rail(store, 2);
    bk_folder_free(folder);
    bk_folder_free(other);
    bk_store_close(store);
}
END_TEST

START_TEST(absences_of_many_people_take_the_room_of_the_absences_and_not_that_times_the_people)
{
    enum { PEOPLE = 400, EACH = 5, MOST_BYTES = 2000000 };
    static bk_person people[PEOPLE];
    static bk_away aways[PEOPLE * EACH];
    for (int i = 0; i < PEOPLE; i++) {
        const char *name = bk_arena_print(texts(), "Hand %d", i);
        people[i] = (bk_person)PERSON(name, "hand");
        for (int day = 0; day < EACH; day++)
            aways[day * PEOPLE + i] = (bk_away)AWAY(name, DAY(3, 1 + day), DAY(3, 1 + day), NULL);
    }
    bk_folder *folder = bare_show("The Ferry", DAY(6, 4));
    put_rows(folder->arena, &folder->people, people, sizeof *people, PEOPLE);
    put_rows(folder->arena, &folder->away, aways, sizeof *aways, (size_t)PEOPLE * EACH);
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    bk_rail *rail = NULL;
    MUST(bk_rail_read(store, 1, today(), &rail, &trouble));
    ck_assert_uint_lt(bk_arena_size(rail->arena), MOST_BYTES);
    ck_assert_uint_eq(rail->rows.person_count, PEOPLE);
    for (size_t i = 0; i < PEOPLE; i++) {
        const bk_wait_person *person = &rail->rows.people[i];
        ck_assert_uint_eq(person->away_count, EACH);
        for (int day = 0; day < EACH; day++) {
            ck_assert_int_eq(person->away[day][0], DAY(3, 1 + day));
            ck_assert_int_eq(person->away[day][1], DAY(3, 1 + day));
        }
    }
    bk_rail_free(rail);
    bk_folder_free(folder);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("rail gather", a_step_of_a_piece_of_another_production_is_refused_and_does_not_crash_the_rail,
             absences_of_many_people_take_the_room_of_the_absences_and_not_that_times_the_people)
