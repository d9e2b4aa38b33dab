#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/work/cast.h"
#include "work/show.h"

// The Salt Road's company is Tomas Lind, Ines Varga (contact; measures good for 60 days) and Zoë Ngô; Ines Varga was measured
// on 3 and 10 Feb. She plays The Miller, covered by Zoë Ngô and Tomas Lind; The Boy is not cast.

static bk_store *open_as(bk_as as)
{
    bk_store *store = NULL;
    bk_store_options options = {.path = bk_test_path("workroom.db"), .as = as, .who = "Dee"};
    MUST(bk_store_open(&store, &options, &trouble));
    return store;
}

/// The show with the measures of a folder of its own, and open for the maker.
static bk_store *store_with(bk_folder *folder)
{
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    return store;
}

static bk_cast read_cast_on(bk_store *store, bk_day day)
{
    bk_cast cast;
    MUST(bk_cast_read(store, 1, day, texts(), &cast, &trouble));
    return cast;
}

static const char *joined(const char *const *names, size_t count)
{
    const char *all = "";
    for (size_t i = 0; i < count; i++)
        all = bk_arena_print(texts(), "%s%s%s", all, i == 0 ? "" : "; ", names[i]);
    return all;
}

START_TEST(performers_stand_in_the_order_of_the_company_with_their_roles)
{
    bk_store *store = store_with(salt_road());
    bk_cast cast = read_cast_on(store, today());
    ck_assert_str_eq(cast.production.name, "The Salt Road");
    ck_assert_uint_eq(cast.performer_count, 3);
    const bk_cast_performer *tomas = &cast.performers[0], *ines = &cast.performers[1],
                            *zoe = &cast.performers[2];
    ck_assert_str_eq(tomas->record->name, "Tomas Lind");
    ck_assert_str_eq(ines->record->name, "Ines Varga");
    ck_assert_str_eq(joined(ines->plays, ines->play_count), "The Miller");
    ck_assert_uint_eq(ines->cover_count, 0);
    ck_assert_uint_eq(tomas->play_count, 0);
    ck_assert_str_eq(joined(tomas->covers, tomas->cover_count), "The Miller");
    ck_assert_str_eq(joined(zoe->covers, zoe->cover_count), "The Miller");
    ck_assert(ines->has_contact && !tomas->has_contact && !zoe->has_contact);
    bk_store_close(store);
}
END_TEST

START_TEST(roles_tell_who_plays_and_covers_them)
{
    bk_folder *folder = salt_road();
    ROWS(folder, roles, bk_role, ROLE("The Miller", "Ines Varga", "Zoë Ngô;Tomas Lind"),
         ROLE("The Boy", NULL, NULL), ROLE("A Ghost", "Ines Varga", NULL),
         ROLE("The Owl", NULL, "Tomas Lind"));
    bk_store *store = store_with(folder);
    bk_cast cast = read_cast_on(store, today());
    ck_assert_uint_eq(cast.role_count, 4);
    ck_assert_uint_eq(cast.uncast, 2);
    ck_assert_str_eq(cast.roles[0].record->name, "The Miller");
    ck_assert_str_eq(cast.roles[0].performer, "Ines Varga");
    ck_assert_str_eq(joined(cast.roles[0].covers, cast.roles[0].cover_count), "Zoë Ngô; Tomas Lind");
    ck_assert_uint_eq(cast.roles[0].costume_count, 2);
    ck_assert_str_eq(cast.roles[1].record->name, "The Boy");
    ck_assert_ptr_null(cast.roles[1].performer);
    ck_assert_uint_eq(cast.roles[1].costume_count, 1);
    const bk_cast_performer *ines = &cast.performers[1], *tomas = &cast.performers[0];
    ck_assert_str_eq(joined(ines->plays, ines->play_count), "The Miller; A Ghost");
    ck_assert_str_eq(joined(tomas->covers, tomas->cover_count), "The Miller; The Owl");
    bk_store_close(store);
}
END_TEST

START_TEST(the_newest_sheet_tells_its_day_and_its_measures)
{
    bk_store *store = store_with(salt_road());
    bk_cast cast = read_cast_on(store, today());
    const bk_cast_performer *tomas = &cast.performers[0], *ines = &cast.performers[1];
    ck_assert_uint_eq(ines->sheet_count, 2);
    ck_assert_int_eq(ines->newest, DAY(2, 10));
    ck_assert_int_eq(ines->measures, 1);
    ck_assert_int_eq(ines->doubts, 0);
    ck_assert_uint_eq(tomas->sheet_count, 0);
    ck_assert_int_eq(tomas->newest, BK_NO_DAY);
    ck_assert(!tomas->old);
    bk_store_close(store);
}
END_TEST

START_TEST(a_sheet_is_old_a_day_after_measures_are_good_for)
{
    bk_folder *folder = salt_road();
    ROWS(folder, measures, bk_measure, MEASURE("Ines Varga", DAY(2, 10), "height", 1650000),
         MEASURE("Tomas Lind", DAY(2, 10), "height", 1750000));
    bk_store *store = store_with(folder);
    // Those of Ines Varga are good for 60 days, those of the production for 120.
    ck_assert(!read_cast_on(store, DAY(2, 10) + 60).performers[1].old);
    ck_assert(read_cast_on(store, DAY(2, 10) + 61).performers[1].old);
    ck_assert(!read_cast_on(store, DAY(2, 10) + 120).performers[0].old);
    ck_assert(read_cast_on(store, DAY(2, 10) + 121).performers[0].old);
    bk_store_close(store);
}
END_TEST

START_TEST(doubts_are_counted_on_the_newest_sheet_against_the_one_before)
{
    bk_folder *folder = salt_road();
    ROWS(folder, measures, bk_measure, MEASURE("Ines Varga", DAY(2, 3), "height", 1650000),
         MEASURE("Ines Varga", DAY(2, 3), "arm length", 620000),
         MEASURE("Ines Varga", DAY(2, 10), "height", 1650000),
         MEASURE("Ines Varga", DAY(2, 10), "arm length", 550000),
         MEASURE("Tomas Lind", DAY(2, 3), "height", 17800000));
    bk_store *store = store_with(folder);
    bk_cast cast = read_cast_on(store, today());
    ck_assert_int_eq(cast.performers[1].doubts, 1);
    ck_assert_int_eq(cast.performers[0].doubts, 1);
    bk_store_close(store);
}
END_TEST

START_TEST(others_than_the_maker_see_days_but_no_doubts_and_no_contacts)
{
    bk_store_close(store_with(salt_road()));
    static const bk_as others[] = {BK_AS_DIRECTOR, BK_AS_VOLUNTEER};
    for (size_t i = 0; i < sizeof others / sizeof *others; i++) {
        bk_store *store = open_as(others[i]);
        bk_cast cast = read_cast_on(store, today());
        const bk_cast_performer *ines = &cast.performers[1];
        ck_assert_int_eq(ines->newest, DAY(2, 10));
        ck_assert_int_eq(ines->measures, 1);
        ck_assert_int_eq(ines->doubts, BK_NOT_KNOWN);
        ck_assert(!ines->has_contact);
        bk_store_close(store);
    }
}
END_TEST

START_TEST(a_production_that_is_gone_has_no_cast)
{
    bk_store *store = store_with(salt_road());
    bk_cast cast;
    REFUSED(bk_cast_read(store, 99, today(), texts(), &cast, &trouble), BK_REFUSED,
            "This production is no longer in the workroom.");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("cast", performers_stand_in_the_order_of_the_company_with_their_roles,
             roles_tell_who_plays_and_covers_them, the_newest_sheet_tells_its_day_and_its_measures,
             a_sheet_is_old_a_day_after_measures_are_good_for,
             doubts_are_counted_on_the_newest_sheet_against_the_one_before,
             others_than_the_maker_see_days_but_no_doubts_and_no_contacts,
             a_production_that_is_gone_has_no_cast)
