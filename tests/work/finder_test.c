#include "bodkin/work/finder.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/productions.h"
#include "work/show.h"

enum { ROOM = 8 };

static bk_found found[ROOM];

// Finds in a production of eight lines or so, which every test below says what it expects of.
static bk_finder *finder_of(bk_store *store)
{
    bk_folder *folder = bare_show("The Paper Lantern", DAY(4, 16));
    ROWS(folder, performers, bk_performer, PERFORMER("Zoë Hemming", NULL, NULL),
         PERFORMER("Ana Lind", "ana's door", "no wool"));
    ROWS(folder, roles, bk_role, ROLE("The Hemp Merchant", "Ana Lind", NULL), ROLE("Lamp", NULL, NULL));
    ROWS(folder, costumes, bk_costume, COSTUME("10A", "Lamp", BK_NO_DAY),
         COSTUME("2A", "The Hemp Merchant", BK_NO_DAY));
    ROWS(folder, pieces, bk_piece, PIECE("2A-1", "2A;10A", BK_MAKE));
    ROWS(folder, steps, bk_step, STEP("2A-1", "hem", BK_HAND, 30, NULL));
    ROWS(folder, materials, bk_material, MATERIAL("unbleached hemp", BK_METRE, BK_NO_AMOUNT));
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    bk_production production;
    bk_finder *finder = NULL;
    MUST(bk_production_choose(store, NULL, today(), texts(), &production, &trouble));
    MUST(bk_finder_read(store, production.id, &finder, &trouble));
    return finder;
}

static const char *names(size_t count)
{
    const char *all = "";
    for (size_t i = 0; i < count && i < ROOM; i++) {
        all = bk_arena_print(texts(), "%s%s%s", all, i ? ", " : "", found[i].name);
    }
    return all;
}

START_TEST(what_begins_with_the_letters_comes_before_what_has_them_somewhere)
{
    bk_store *store = open_store();
    bk_finder *finder = finder_of(store);
    size_t count = bk_finder_find(finder, "hem", found, ROOM);
    ck_assert_str_eq(names(count), "Zoë Hemming, The Hemp Merchant, 2A, 2A-1/hem, unbleached hemp");
    ck_assert_int_eq(found[0].family, BK_PERFORMERS);
    ck_assert_int_eq(found[4].family, BK_MATERIALS);
    count = bk_finder_find(finder, "un", found, ROOM);
    ck_assert_str_eq(names(count), "unbleached hemp");
    bk_finder_free(finder);
    bk_store_close(store);
}
END_TEST

START_TEST(every_word_must_be_there_but_capitals_and_accents_do_not_matter)
{
    bk_store *store = open_store();
    bk_finder *finder = finder_of(store);
    ck_assert_str_eq(names(bk_finder_find(finder, "ZOE", found, ROOM)), "Zoë Hemming");
    ck_assert_str_eq(names(bk_finder_find(finder, "merchant lind", found, ROOM)), "The Hemp Merchant");
    ck_assert_uint_eq(bk_finder_find(finder, "merchant hemming", found, ROOM), 0);
    ck_assert_uint_eq(bk_finder_find(finder, "   ", found, ROOM), 0);
    bk_finder_free(finder);
    bk_store_close(store);
}
END_TEST

START_TEST(a_piece_and_its_steps_know_the_first_costume_they_are_worn_with)
{
    bk_store *store = open_store();
    bk_finder *finder = finder_of(store);
    ck_assert_uint_ge(bk_finder_find(finder, "2A-1", found, ROOM), 2);
    ck_assert_str_eq(names(2), "2A-1, 2A-1/hem");
    ck_assert_str_eq(found[0].costume, "2A");
    ck_assert_str_eq(found[1].costume, "2A");
    bk_finder_free(finder);
    bk_store_close(store);
}
END_TEST

START_TEST(numbers_come_in_natural_order_and_only_as_many_as_there_is_room_for)
{
    bk_store *store = open_store();
    bk_finder *finder = finder_of(store);
    ck_assert_uint_eq(bk_finder_find(finder, "costume", found, 1), 2);
    ck_assert_str_eq(found[0].name, "2A");
    ck_assert_uint_eq(bk_finder_find(finder, "costume", found, 2), 2);
    ck_assert_str_eq(found[1].name, "10A");
    bk_finder_free(finder);
    bk_store_close(store);
}
END_TEST

START_TEST(contacts_are_never_found)
{
    bk_store *store = open_store();
    bk_finder *finder = finder_of(store);
    ck_assert_uint_eq(bk_finder_find(finder, "door", found, ROOM), 0);
    bk_finder_free(finder);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("finder", what_begins_with_the_letters_comes_before_what_has_them_somewhere,
             every_word_must_be_there_but_capitals_and_accents_do_not_matter,
             a_piece_and_its_steps_know_the_first_costume_they_are_worn_with,
             numbers_come_in_natural_order_and_only_as_many_as_there_is_room_for, contacts_are_never_found)
