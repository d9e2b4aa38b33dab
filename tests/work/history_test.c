#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/performer_rows.h"
#include "bodkin/work/history.h"
#include "work/show.h"

#define MADE_AT "2027-03-02T09:30:00+01:00"

static bk_store *store_with_show(void)
{
    bk_store *store = open_store();
    bk_folder *folder = salt_road();
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    return store;
}

static int64_t performer(bk_store *store, const char *name)
{
    int64_t id = 0;
    MUST(bk_store_find_performer(store, name, &id, &trouble));
    ck_assert_int_ne(id, 0);
    return id;
}

static void take(bk_store *store, const char *name, bk_day on, const bk_taken *items, size_t count)
{
    const char *sentence = NULL;
    bk_measures_saving saving = {performer(store, name), on, today(), NULL, NULL, items, count};
    MUST(bk_measures_save(store, &saving, MADE_AT, texts(), &sentence, &trouble));
}

#define TAKE(store, name, on, ...) \
    take(store, name, on, (const bk_taken[]){__VA_ARGS__}, \
         sizeof((const bk_taken[]){__VA_ARGS__}) / sizeof(bk_taken))

static bk_history read_history(bk_store *store, const char *name)
{
    bk_history history;
    MUST(bk_history_read(store, performer(store, name), BK_CM, texts(), &history, &trouble));
    return history;
}

static const bk_history_row *row_named(const bk_history *history, const char *name)
{
    for (size_t i = 0; i < history->row_count; i++)
        if (strcmp(history->rows[i].name, name) == 0)
            return &history->rows[i];
    ck_abort_msg("no row \"%s\"", name);
    return NULL;
}

START_TEST(sheets_stand_newest_first_with_what_their_measures_have_in_common)
{
    bk_store *store = store_with_show();
    bk_measures_saving saving = {.performer = performer(store, "Ines Varga"),
                                 .on = DAY(2, 20),
                                 .today = today(),
                                 .taken_by = "Bo",
                                 .over = "a corset",
                                 .items = (const bk_taken[]){{"waist girth", 700000}, {"hip girth", 980000}},
                                 .count = 2};
    const char *sentence = NULL;
    MUST(bk_measures_save(store, &saving, MADE_AT, texts(), &sentence, &trouble));
    saving = (bk_measures_saving){.performer = saving.performer,
                                  .on = DAY(2, 3),
                                  .today = today(),
                                  .over = "a vest",
                                  .items = (const bk_taken[]){{"height", 1650000}},
                                  .count = 1};
    MUST(bk_measures_save(store, &saving, MADE_AT, texts(), &sentence, &trouble));
    bk_history history = read_history(store, "Ines Varga");
    ck_assert_str_eq(history.performer.name, "Ines Varga");
    ck_assert_uint_eq(history.sheet_count, 3);
    ck_assert_int_eq(history.sheets[0].on, DAY(2, 20));
    ck_assert_int_eq(history.sheets[1].on, DAY(2, 10));
    ck_assert_int_eq(history.sheets[2].on, DAY(2, 3));
    ck_assert_str_eq(history.sheets[0].over, "a corset");
    ck_assert_str_eq(history.sheets[0].taken_by, "Bo");
    ck_assert_uint_eq(history.sheets[2].count, 3);
    // On 3 Feb the waist was taken over a shirt, by Ada Pell, the hips over nothing, the height over a vest.
    ck_assert_ptr_null(history.sheets[2].over);
    ck_assert_ptr_null(history.sheets[2].taken_by);
    const bk_history_cell *waist = &row_named(&history, "waist girth")->cells[2];
    ck_assert_int_eq(waist->value, 713000);
    ck_assert_str_eq(waist->over, "a shirt");
    ck_assert_str_eq(waist->taken_by, "Ada Pell");
    bk_store_close(store);
}
END_TEST

START_TEST(rows_stand_in_the_order_a_sheet_is_taken_and_own_names_behind)
{
    bk_store *store = store_with_show();
    TAKE(store, "Tomas Lind", DAY(2, 20), {"strap 10", 100000}, {"foot length", 270000}, {"strap 2", 110000},
         {"height", 1780000}, {"chest girth", 1000000});
    static const char *const expected[] = {"height", "chest girth", "foot length", "strap 2", "strap 10"};
    bk_history history = read_history(store, "Tomas Lind");
    ck_assert_uint_eq(history.row_count, sizeof expected / sizeof *expected);
    for (size_t i = 0; i < history.row_count; i++)
        ck_assert_str_eq(history.rows[i].name, expected[i]);
    ck_assert_str_eq(history.rows[0].term->term, "stature");
    ck_assert_ptr_null(history.rows[3].term);
    bk_store_close(store);
}
END_TEST

START_TEST(a_change_is_since_the_newest_earlier_sheet_that_has_the_measure)
{
    bk_store *store = store_with_show();
    TAKE(store, "Ines Varga", DAY(2, 20), {"hip girth", 980000}, {"height", 1650000});
    TAKE(store, "Ines Varga", DAY(2, 21), {"waist girth", 718000});
    bk_history history = read_history(store, "Ines Varga");
    const bk_history_row *hip = row_named(&history, "hip girth"), *waist = row_named(&history, "waist girth");
    ck_assert_int_eq(hip->cells[1].change, -6000); // 10 Feb has no hip girth
    ck_assert_int_eq(hip->cells[2].value, BK_NO_AMOUNT);
    ck_assert_int_eq(hip->cells[2].change, BK_NO_AMOUNT);
    ck_assert_int_eq(hip->cells[3].change, BK_NO_AMOUNT);
    ck_assert_int_eq(waist->cells[1].value, BK_NO_AMOUNT);
    ck_assert_int_eq(waist->cells[0].change, 3000); // since 10 Feb, not since 3 Feb
    ck_assert_int_eq(waist->cells[2].change, 2000);
    ck_assert_int_eq(row_named(&history, "height")->cells[1].change, BK_NO_AMOUNT);
    bk_store_close(store);
}
END_TEST

START_TEST(a_change_beyond_two_centimetres_and_three_per_cent_is_marked)
{
    bk_store *store = store_with_show();
    // Of 50 cm 3 % are 1.5 cm, so 2 cm count; of 100 cm 3 cm count.
    TAKE(store, "Tomas Lind", DAY(2, 1), {"thigh girth", 500000}, {"calf girth", 500000},
         {"hip girth", 1000000}, {"chest girth", 1000000}, {"waist girth", 1000000});
    TAKE(store, "Tomas Lind", DAY(2, 20), {"thigh girth", 520000}, {"calf girth", 479999},
         {"hip girth", 1030000}, {"chest girth", 1030001}, {"waist girth", 969999});
    bk_history history = read_history(store, "Tomas Lind");
    ck_assert(!row_named(&history, "thigh girth")->cells[0].beyond);
    ck_assert(row_named(&history, "calf girth")->cells[0].beyond);
    ck_assert(!row_named(&history, "hip girth")->cells[0].beyond);
    ck_assert(row_named(&history, "chest girth")->cells[0].beyond);
    ck_assert(row_named(&history, "waist girth")->cells[0].beyond);
    ck_assert(!row_named(&history, "waist girth")->cells[1].beyond);
    ck_assert_uint_eq(history.sheets[0].beyond, 3);
    ck_assert_uint_eq(history.sheets[1].beyond, 0);
    bk_store_close(store);
}
END_TEST

START_TEST(doubts_are_told_in_their_cells)
{
    bk_store *store = store_with_show();
    TAKE(store, "Tomas Lind", DAY(2, 20), {"height", 1650000}, {"bust girth", 920000},
         {"waist girth", 293000}, {"hip girth", 990000}, {"strap", 100000});
    bk_history history = read_history(store, "Tomas Lind");
    const char *doubt = row_named(&history, "waist girth")->cells[0].doubt;
    ck_assert_ptr_nonnull(doubt);
    ck_assert_ptr_nonnull(strstr(doubt, "inches taken for centimetres"));
    ck_assert_ptr_null(row_named(&history, "hip girth")->cells[0].doubt);
    ck_assert_uint_eq(history.sheets[0].doubts, 1);
    bk_store_close(store);
}
END_TEST

START_TEST(a_value_far_from_the_sheet_before_is_doubted)
{
    bk_store *store = store_with_show();
    TAKE(store, "Tomas Lind", DAY(2, 1), {"height", 1650000}, {"arm length", 620000});
    TAKE(store, "Tomas Lind", DAY(2, 20), {"height", 1650000}, {"arm length", 550000});
    bk_history history = read_history(store, "Tomas Lind");
    const bk_history_cell *cells = row_named(&history, "arm length")->cells;
    ck_assert_ptr_nonnull(cells[0].doubt);
    ck_assert_ptr_nonnull(strstr(cells[0].doubt, "last sheet"));
    ck_assert_ptr_null(cells[1].doubt);
    bk_store_close(store);
}
END_TEST

START_TEST(a_performer_who_was_never_measured_has_an_empty_history)
{
    bk_store *store = store_with_show();
    bk_history history = read_history(store, "Zoë Ngô");
    ck_assert_uint_eq(history.sheet_count, 0);
    ck_assert_uint_eq(history.row_count, 0);
    ck_assert_int_eq(history.limit.length, 20000);
    ck_assert_int_eq(history.limit.percent, 3 * BK_QUANTITY_ONE);
    REFUSED(bk_history_read(store, 99, BK_CM, texts(), &history, &trouble), BK_REFUSED,
            "This performer is no longer in the workroom.");
    bk_store_close(store);
}
END_TEST

START_TEST(only_the_maker_reads_a_history)
{
    bk_store *store = store_with_show();
    int64_t ines = performer(store, "Ines Varga");
    bk_store_close(store);
    bk_store_options options = {.path = bk_test_path("workroom.db"), .as = BK_AS_DIRECTOR, .who = "Dee"};
    MUST(bk_store_open(&store, &options, &trouble));
    bk_history history;
    REFUSED(bk_history_read(store, ines, BK_CM, texts(), &history, &trouble), BK_REFUSED,
            "Only the maker sees measures.");
    bk_store_close(store);
}
END_TEST

static const char *put_limit(bk_store *store, bk_length length, bk_quantity percent)
{
    const char *sentence = NULL;
    MUST(bk_change_limit_put(store, (bk_change_limit){length, percent}, MADE_AT, texts(), &sentence,
                             &trouble));
    return sentence;
}

START_TEST(the_limit_is_a_setting_that_can_be_changed_and_undone)
{
    bk_store *store = store_with_show();
    bk_change_limit limit;
    ck_assert_str_eq(put_limit(store, 25000, 4 * BK_QUANTITY_ONE),
                     "Set: measures are marked that change by more than 2.5 cm and 4 %");
    MUST(bk_change_limit_read(store, &limit, &trouble));
    ck_assert_int_eq(limit.length, 25000);
    ck_assert_int_eq(limit.percent, 4 * BK_QUANTITY_ONE);
    ck_assert_ptr_null(put_limit(store, 25000, 4 * BK_QUANTITY_ONE));
    ck_assert_str_eq(put_limit(store, 10000, BK_QUANTITY_ONE / 2),
                     "Set: measures are marked that change by more than 1 cm and 0.5 %");
    ck_assert_str_eq(bk_ask("SELECT name, value FROM setting ORDER BY name"),
                     "measure_change_cm|1\nmeasure_change_percent|0.5");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), "3"); // the import and two changes
    TAKE(store, "Ines Varga", DAY(2, 20), {"waist girth", 726000});
    bk_history history = read_history(store, "Ines Varga");
    ck_assert(row_named(&history, "waist girth")->cells[0].beyond); // by 1.1 cm
    bk_store_close(store);
}
END_TEST

START_TEST(a_limit_out_of_bounds_is_refused_and_a_setting_that_is_none_is_the_usual)
{
    bk_store *store = store_with_show();
    static const bk_change_limit faulty[] = {{-1, 0}, {1000001, 0}, {0, -1}, {0, 100 * BK_QUANTITY_ONE + 1}};
    const char *sentence = NULL;
    for (size_t i = 0; i < sizeof faulty / sizeof *faulty; i++)
        REFUSED(bk_change_limit_put(store, faulty[i], MADE_AT, texts(), &sentence, &trouble), BK_REFUSED,
                "at most 100 cm and 100 %");
    bk_ask("INSERT INTO setting (name, value) VALUES ('measure_change_cm', 'far'), "
           "('measure_change_percent', '900')");
    bk_change_limit limit;
    MUST(bk_change_limit_read(store, &limit, &trouble));
    ck_assert_int_eq(limit.length, 20000);
    ck_assert_int_eq(limit.percent, 3 * BK_QUANTITY_ONE);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("history", sheets_stand_newest_first_with_what_their_measures_have_in_common,
             rows_stand_in_the_order_a_sheet_is_taken_and_own_names_behind,
             a_change_is_since_the_newest_earlier_sheet_that_has_the_measure,
             a_change_beyond_two_centimetres_and_three_per_cent_is_marked, doubts_are_told_in_their_cells,
             a_value_far_from_the_sheet_before_is_doubted,
             a_performer_who_was_never_measured_has_an_empty_history, only_the_maker_reads_a_history,
             the_limit_is_a_setting_that_can_be_changed_and_undone,
             a_limit_out_of_bounds_is_refused_and_a_setting_that_is_none_is_the_usual)
