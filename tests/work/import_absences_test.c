// Absences are known by a name, and reach whoever bears it, whichever import brings them.

#include <string.h>

#include "bodkin/trade/words.h"
#include "bodkin/work/rail.h"
#include "work/show.h"

/// Nell the performer, with her absence.
static bk_folder *show_with_performer(void)
{
    bk_folder *folder = bare_show("The Ferry", DAY(3, 20));
    ROWS(folder, performers, bk_performer, PERFORMER("Nell", NULL, NULL));
    ROWS(folder, away, bk_away, AWAY("Nell", DAY(3, 1), DAY(3, 31), "a journey"));
    return folder;
}

/// Nell who cuts, and nobody else does.
static bk_folder *show_with_person(bool with_absence)
{
    bk_folder *folder = bare_show("The Mill", DAY(3, 20));
    ROWS(folder, people, bk_person,
         {.name = "Nell",
          .skills = "cut",
          .hours = {"10:00-18:00", "10:00-18:00", "10:00-18:00", "10:00-18:00", "10:00-18:00", NULL, NULL},
          .from = BK_NO_DAY,
          .until = BK_NO_DAY});
    if (with_absence)
        ROWS(folder, away, bk_away, AWAY("Nell", DAY(3, 1), DAY(3, 31), "a journey"));
    ROWS(folder, roles, bk_role, ROLE("The Miller", NULL, NULL));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "The Miller", BK_NO_DAY));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A", BK_STOCK));
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 60, NULL));
    return folder;
}

static void import(bk_store *store, bk_folder *folder)
{
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
}

/// Whether the only costume of The Mill waits for people.
static bool waits_on_people(bk_store *store, int64_t production)
{
    bk_rail *rail = NULL;
    MUST(bk_rail_read(store, production, today(), &rail, &trouble));
    ck_assert_uint_eq(rail->costume_count, 1);
    bool waits = bk_rail_waits_on(&rail->costumes[0], BK_WAIT_PEOPLE);
    bk_rail_free(rail);
    return waits;
}

static void expect_one_absence_of_both(bk_store *store)
{
    bk_rows rows = {0};
    MUST(bk_store_read(store, BK_AWAYS, 0, texts(), &rows, &trouble));
    ck_assert_uint_eq(rows.count, 1);
    const bk_away *away = rows.items;
    ck_assert_int_eq(away->person_id, 1);
    ck_assert_int_eq(away->performer_id, 1);
}

START_TEST(an_absence_reaches_a_person_of_that_name_who_is_added_later)
{
    bk_store *store = open_store_named("workroom.db");
    import(store, show_with_performer());
    import(store, show_with_person(false));
    expect_one_absence_of_both(store);
    ck_assert(waits_on_people(store, 2));
    bk_store_close(store);
}
END_TEST

START_TEST(an_absence_reaches_a_performer_of_that_name_who_is_added_later)
{
    bk_store *store = open_store_named("workroom.db");
    import(store, show_with_person(true));
    bk_folder *folder = show_with_performer();
    folder->away.count = 0;
    import(store, folder);
    expect_one_absence_of_both(store);
    ck_assert(waits_on_people(store, 1));
    bk_store_close(store);
}
END_TEST

START_TEST(both_orders_of_import_give_the_same_rail)
{
    bk_store *store = open_store_named("workroom.db");
    bk_store *other = open_store_named("other.db");
    import(store, show_with_performer());
    import(store, show_with_person(true));
    import(other, show_with_person(true));
    import(other, show_with_performer());
    expect_one_absence_of_both(store);
    expect_one_absence_of_both(other);
    ck_assert(waits_on_people(store, 2));
    ck_assert(waits_on_people(other, 1));
    bk_store_close(store);
    bk_store_close(other);
}
END_TEST

START_TEST(absences_of_one_person_and_the_same_days_are_each_matched_once)
{
    bk_store *store = open_store_named("workroom.db");
    bk_folder *folder = show_with_performer();
    ROWS(folder, away, bk_away, AWAY("Nell", DAY(3, 1), DAY(3, 31), "a journey"),
         AWAY("Nell", DAY(3, 1), DAY(3, 31), "and its way back"), AWAY("Nell", DAY(4, 1), DAY(4, 1), NULL));
    take_in(store, folder, false, NULL);
    const char *before = bk_ask("SELECT * FROM away");
    take_in(store, folder, true, NULL);
    ck_assert_str_eq(bk_ask("SELECT * FROM away"), before);
    bk_folder_free(folder);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("import absences", an_absence_reaches_a_person_of_that_name_who_is_added_later,
             an_absence_reaches_a_performer_of_that_name_who_is_added_later,
             both_orders_of_import_give_the_same_rail,
             absences_of_one_person_and_the_same_days_are_each_matched_once)
