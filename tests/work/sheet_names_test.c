#include "bodkin/base/text.h"
#include "bodkin/store/one.h"
#include "bodkin/store/performer_rows.h"
#include "bodkin/work/sheet_names.h"
#include "work/show.h"

#define MADE_AT "2027-03-02T09:30:00+01:00"

enum { WHOLE = 12 };

static bk_store *store_with_show(void)
{
    bk_store *store = open_store();
    bk_folder *folder = bare_show("The Salt Road", today());
    ROWS(folder, performers, bk_performer, PERFORMER("Ines", NULL, NULL), PERFORMER("Tomas", NULL, NULL));
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    return store;
}

static int64_t id_of(bk_store *store, const char *name)
{
    int64_t id = 0;
    MUST(bk_store_find_performer(store, name, &id, &trouble));
    return id;
}

// The first `count` measures that are taken, and one of the workroom's own where `own` is set.
static void take(bk_store *store, const char *name, size_t count, const char *own)
{
    bk_taken items[WHOLE + 1];
    const char *sentence = NULL;
    for (size_t i = 0; i < count; i++)
        items[i] = (bk_taken){bk_measure_terms[2 * i].name, 500000};
    if (own)
        items[count++] = (bk_taken){own, 500000};
    bk_measures_saving saving = {id_of(store, name), today(), today(), NULL, NULL, items, count};
    MUST(bk_measures_save(store, &saving, MADE_AT, texts(), &sentence, &trouble));
}

static bk_sheet_names names_for(bk_store *store, const char *name)
{
    bk_history history;
    bk_sheet_names names;
    bk_rows productions = {0};
    MUST(bk_store_read(store, BK_PRODUCTIONS, 0, texts(), &productions, &trouble));
    int64_t production = ((const bk_production *)productions.items)->id;
    MUST(bk_history_read(store, id_of(store, name), BK_CM, texts(), &history, &trouble));
    MUST(bk_sheet_names_read(store, production, &history, texts(), &names, &trouble));
    return names;
}

START_TEST(before_anybody_is_measured_all_measures_of_the_trade_are_usual)
{
    bk_store *store = store_with_show();
    bk_sheet_names names = names_for(store, "Ines");
    ck_assert_uint_eq(names.count, bk_measure_term_count);
    ck_assert_uint_eq(names.usual, bk_measure_term_count);
    for (size_t i = 0; i < names.count; i++)
        ck_assert_str_eq(names.items[i], bk_measure_terms[i].name);
    bk_store_close(store);
}
END_TEST

START_TEST(the_measures_of_ones_own_sheets_come_first_in_the_order_they_are_taken)
{
    bk_store *store = store_with_show();
    take(store, "Ines", WHOLE - 1, "hat size");
    bk_sheet_names names = names_for(store, "Ines");
    ck_assert_uint_eq(names.count, bk_measure_term_count + 1);
    ck_assert_uint_eq(names.usual, WHOLE);
    ck_assert_str_eq(names.items[0], bk_measure_terms[0].name);
    ck_assert_str_eq(names.items[1], bk_measure_terms[2].name);
    ck_assert_str_eq(names.items[WHOLE - 1], "hat size");
    ck_assert_str_eq(names.items[WHOLE], bk_measure_terms[1].name);
    bk_store_close(store);
}
END_TEST

START_TEST(who_has_no_whole_sheet_gets_the_measures_of_the_company)
{
    bk_store *store = store_with_show();
    take(store, "Tomas", WHOLE, NULL);
    take(store, "Ines", 1, "hat size");
    bk_sheet_names names = names_for(store, "Ines");
    ck_assert_uint_eq(names.usual, WHOLE + 1);
    ck_assert_str_eq(names.items[WHOLE], "hat size");
    bk_store_close(store);
}
END_TEST

START_TEST(a_few_measures_are_no_whole_sheet)
{
    bk_store *store = store_with_show();
    take(store, "Ines", 2, "hat size");
    bk_sheet_names names = names_for(store, "Ines");
    ck_assert_uint_eq(names.usual, bk_measure_term_count + 1);
    ck_assert_str_eq(names.items[1], bk_measure_terms[1].name);
    ck_assert_str_eq(names.items[bk_measure_term_count], "hat size");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("measures of a new sheet", before_anybody_is_measured_all_measures_of_the_trade_are_usual,
             the_measures_of_ones_own_sheets_come_first_in_the_order_they_are_taken,
             who_has_no_whole_sheet_gets_the_measures_of_the_company, a_few_measures_are_no_whole_sheet)
