// Which production is meant.

#include "bodkin/work/productions.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "work/show.h"

/// Adds a production, put away where `away`.
static void add(bk_store *store, const char *name, bk_day opens, bool away)
{
    bk_folder *folder = bare_show(name, opens);
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    if (away)
        bk_ask(bk_arena_print(texts(), "UPDATE production SET put_away_on = '2027-03-01' WHERE name = '%s'",
                              name));
}

static const char *chosen(bk_store *store, const char *name)
{
    bk_production production = {0};
    MUST(bk_production_choose(store, name, today(), texts(), &production, &trouble));
    return production.name;
}

START_TEST(the_only_one_in_work_is_meant_however_long_ago_it_opened)
{
    bk_store *store = open_store();
    add(store, "Old", bk_day_of(2019, 1, 1), false);
    ck_assert_str_eq(chosen(store, NULL), "Old");
    add(store, "Coming but put away", DAY(4, 1), true);
    ck_assert_str_eq(chosen(store, NULL), "Old");
    bk_store_close(store);
}
END_TEST

START_TEST(of_several_in_work_the_next_to_open_is_meant)
{
    bk_store *store = open_store();
    add(store, "Far", DAY(6, 1), false);
    add(store, "Running", DAY(3, 1), false);
    add(store, "Near", DAY(3, 20), false);
    add(store, "Nearer but put away", DAY(3, 10), true);
    ck_assert_str_eq(chosen(store, NULL), "Near");
    add(store, "Tonight", DAY(3, 2), false);
    ck_assert_str_eq(chosen(store, NULL), "Tonight");
    bk_store_close(store);
}
END_TEST

START_TEST(where_all_have_opened_the_latest_is_meant)
{
    bk_store *store = open_store();
    add(store, "Latest", DAY(3, 1), false);
    add(store, "Earlier", DAY(2, 1), false);
    add(store, "Later but put away", DAY(3, 2), true);
    ck_assert_str_eq(chosen(store, NULL), "Latest");
    bk_store_close(store);
}
END_TEST

START_TEST(where_all_are_put_away_the_latest_is_meant)
{
    bk_store *store = open_store();
    add(store, "Later", DAY(2, 1), true);
    add(store, "Earlier", DAY(1, 1), true);
    ck_assert_str_eq(chosen(store, NULL), "Later");
    bk_store_close(store);
}
END_TEST

START_TEST(of_two_that_open_on_one_day_the_first_by_name_is_meant)
{
    bk_store *store = open_store();
    add(store, "Show 10", DAY(4, 1), false);
    add(store, "Show 2", DAY(4, 1), false);
    ck_assert_str_eq(chosen(store, NULL), "Show 2");
    bk_store_close(store);
}
END_TEST

START_TEST(a_name_is_taken_as_it_is_also_of_one_put_away)
{
    bk_store *store = open_store();
    add(store, "Near", DAY(3, 20), false);
    add(store, "Long ago", DAY(1, 1), true);
    ck_assert_str_eq(chosen(store, "Long ago"), "Long ago");
    bk_store_close(store);
}
END_TEST

START_TEST(an_unknown_name_and_an_empty_workroom_are_refused_with_the_way_out)
{
    bk_production production;
    bk_store *store = open_store();
    REFUSED(bk_production_choose(store, NULL, today(), texts(), &production, &trouble), BK_REFUSED,
            "There is no production in this workroom yet; bring one in with: bodkin import FOLDER");
    REFUSED(bk_production_choose(store, "Near", today(), texts(), &production, &trouble), BK_REFUSED,
            "bring one in with");
    add(store, "Near", DAY(3, 20), false);
    REFUSED(bk_production_choose(store, "Neer", today(), texts(), &production, &trouble), BK_REFUSED,
            "There is no production \"Neer\" in this workroom; did you mean \"Near\"?");
    REFUSED(bk_production_choose(store, "Hamster\x1b", today(), texts(), &production, &trouble), BK_REFUSED,
            "There is no production \"Hamster·\" in this workroom; leave out --production to see the one "
            "that opens "
            "next.");
    bk_store_close(store);
}
END_TEST

START_TEST(the_list_has_those_in_work_by_opening_and_then_those_put_away)
{
    bk_production_list list;
    const char *names = "";
    bk_store *store = open_store();
    add(store, "d", DAY(1, 1), true);
    add(store, "c", DAY(6, 1), false);
    add(store, "b", DAY(5, 1), false);
    add(store, "e", DAY(2, 1), true);
    MUST(bk_productions_read(store, texts(), &list, &trouble));
    bk_store_close(store);
    for (size_t i = 0; i < list.count; i++)
        names = bk_arena_print(texts(), "%s%s", names, list.items[i].name);
    ck_assert_str_eq(names, "bcde");
}
END_TEST

BK_TEST_MAIN("productions", the_only_one_in_work_is_meant_however_long_ago_it_opened,
             of_several_in_work_the_next_to_open_is_meant, where_all_have_opened_the_latest_is_meant,
             where_all_are_put_away_the_latest_is_meant,
             of_two_that_open_on_one_day_the_first_by_name_is_meant,
             a_name_is_taken_as_it_is_also_of_one_put_away,
             an_unknown_name_and_an_empty_workroom_are_refused_with_the_way_out,
             the_list_has_those_in_work_by_opening_and_then_those_put_away)
