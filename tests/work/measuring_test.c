#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/daybook.h"
#include "bodkin/store/performer_rows.h"
#include "bodkin/work/history.h"
#include "work/show.h"

// Ines Varga of The Salt Road has a sheet of 3 Feb (waist girth 71.3 cm over a shirt by Ada Pell, hip girth 98.6 cm) and one
// of 10 Feb (waist girth 71.5 cm).

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

static bk_status save(bk_store *store, bk_measures_saving saving, const char **sentence)
{
    saving.today = today();
    if (saving.performer == 0)
        saving.performer = performer(store, "Ines Varga");
    return bk_measures_save(store, &saving, MADE_AT, texts(), sentence, &trouble);
}

static const char *saved(bk_store *store, bk_measures_saving saving)
{
    const char *sentence = NULL;
    MUST(save(store, saving, &sentence));
    return sentence;
}

#define ITEMS(...) \
    .items = (const bk_taken[]){__VA_ARGS__}, \
    .count = sizeof((const bk_taken[]){__VA_ARGS__}) / sizeof(bk_taken)
#define SAVING(...) ((bk_measures_saving){__VA_ARGS__})

/// All measures of Ines Varga, oldest sheet first, a line each.
static const char *measures(void)
{
    return bk_ask(
        "SELECT taken_on, measure_name.name, value, coalesce(over, '-'), coalesce(taken_by, '-') FROM "
        "measure "
        "JOIN measure_sheet ON measure_sheet.id = sheet_id JOIN measure_name ON measure_name.id = name_id "
        "JOIN "
        "performer ON performer.id = performer_id WHERE performer.name = 'Ines Varga' ORDER BY taken_on, "
        "measure.position");
}

static const char before[] = "2027-02-03|waist girth|713000|a shirt|Ada Pell\n"
                             "2027-02-03|hip girth|986000|-|-\n"
                             "2027-02-10|waist girth|715000|-|-";

static void undo(bk_store *store)
{
    const char *sentence = NULL;
    MUST(bk_daybook_undo(store, 0, MADE_AT, texts(), &sentence, &trouble));
}

START_TEST(a_new_sheet_is_one_change_that_can_be_undone)
{
    bk_store *store = store_with_show();
    const char *records = bk_records();
    const char *sentence =
        saved(store, SAVING(.on = DAY(3, 1), .taken_by = " Bo ", .over = "",
                            ITEMS({"waist girth", 720000}, {"height", 1650000}, {"reach", 700000})));
    ck_assert_str_eq(sentence, "Measured: Ines Varga, 3 measures");
    ck_assert_str_eq(measures(), bk_arena_print(texts(), "%s%s", before,
                                                "\n2027-03-01|waist girth|720000|-|Bo\n"
                                                "2027-03-01|height|1650000|-|Bo\n"
                                                "2027-03-01|reach|700000|-|Bo"));
    ck_assert_str_eq(bk_ask("SELECT made_by, sentence FROM daybook ORDER BY id DESC LIMIT 1"),
                     "Ada|Measured: Ines Varga, 3 measures");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM measure_name WHERE name IN ('reach', 'waist girth')"), "2");
    undo(store);
    ck_assert_str_eq(bk_records(), records);
    bk_store_close(store);
}
END_TEST

START_TEST(measures_of_a_day_that_has_a_sheet_are_added_to_it)
{
    bk_store *store = store_with_show();
    ck_assert_str_eq(saved(store, SAVING(.on = DAY(2, 10), ITEMS({"hip girth", 990000}))),
                     "Measured: Ines Varga, 1 measure");
    ck_assert_str_eq(measures(),
                     bk_arena_print(texts(), "%s%s", before, "\n2027-02-10|hip girth|990000|-|-"));
    saved(store, SAVING(.on = DAY(2, 3), ITEMS({"height", 1650000})));
    ck_assert_str_eq(bk_ask("SELECT count(*), count(DISTINCT position) FROM measure JOIN measure_sheet ON "
                            "measure_sheet.id = sheet_id WHERE taken_on = '2027-02-03'"),
                     "3|3");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM measure_sheet"), "2");
    bk_store_close(store);
}
END_TEST

START_TEST(a_value_that_differs_is_a_correction_that_tells_no_value)
{
    bk_store *store = store_with_show();
    ck_assert_str_eq(saved(store, SAVING(.on = DAY(2, 3), ITEMS({"waist girth", 731000}))),
                     "Corrected: waist girth of Ines Varga, 3 Feb");
    ck_assert_ptr_nonnull(strstr(measures(), "2027-02-03|waist girth|731000|a shirt|Ada Pell"));
    ck_assert_str_eq(saved(store, SAVING(.on = DAY(2, 3), .taken_by = "Bo", .over = "a vest",
                                         ITEMS({"waist girth", 731000}, {"hip girth", 987000}))),
                     "Corrected: waist girth and hip girth of Ines Varga, 3 Feb");
    ck_assert_ptr_nonnull(strstr(measures(), "2027-02-03|waist girth|731000|a vest|Bo"));
    ck_assert_ptr_nonnull(strstr(measures(), "2027-02-03|hip girth|987000|a vest|Bo"));
    bk_store_close(store);
}
END_TEST

START_TEST(corrections_and_new_measures_are_told_in_one_sentence)
{
    bk_store *store = store_with_show();
    ck_assert_str_eq(
        saved(store, SAVING(.on = DAY(2, 10), ITEMS({"waist girth", 716000}, {"hip girth", 990000}))),
        "Measured: Ines Varga, 1 measure; corrected: waist girth");
    saved(store, SAVING(.on = DAY(2, 10), ITEMS({"height", 1650000}, {"knee girth", 360000})));
    ck_assert_str_eq(
        saved(store, SAVING(.on = DAY(2, 10),
                            ITEMS({"waist girth", 717000}, {"hip girth", 991000}, {"height", 1651000}))),
        "Corrected: waist girth, hip girth and height of Ines Varga, 10 Feb");
    ck_assert_str_eq(
        saved(store, SAVING(.on = DAY(2, 10), ITEMS({"waist girth", 718000}, {"hip girth", 992000},
                                                    {"height", 1652000}, {"knee girth", 361000}))),
        "Corrected: 4 measures of Ines Varga, 10 Feb");
    bk_store_close(store);
}
END_TEST

START_TEST(a_sheet_of_another_year_is_told_with_its_year)
{
    bk_store *store = store_with_show();
    saved(store, SAVING(.on = bk_day_of(2026, 12, 31), ITEMS({"waist girth", 700000})));
    ck_assert_str_eq(saved(store, SAVING(.on = bk_day_of(2026, 12, 31), ITEMS({"waist girth", 701000}))),
                     "Corrected: waist girth of Ines Varga, 31 Dec 2026");
    bk_store_close(store);
}
END_TEST

START_TEST(what_is_there_already_changes_nothing)
{
    bk_store *store = store_with_show();
    ck_assert_ptr_null(
        saved(store, SAVING(.on = DAY(2, 3), ITEMS({"waist girth", 713000}, {"hip girth", 986000}))));
    ck_assert_str_eq(measures(), before);
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), "1");
    bk_store_close(store);
}
END_TEST

START_TEST(empty_values_are_passed_over)
{
    bk_store *store = store_with_show();
    ck_assert_str_eq(saved(store, SAVING(.on = DAY(2, 10), ITEMS({"waist girth", BK_NO_AMOUNT},
                                                                 {"", BK_NO_AMOUNT}, {"hip girth", 990000}))),
                     "Measured: Ines Varga, 1 measure");
    bk_store_close(store);
}
END_TEST

START_TEST(what_cannot_be_saved_is_refused_and_nothing_is)
{
    bk_store *store = store_with_show();
    const char *sentence = NULL;
    static const struct {
        bk_taken items[2];
        size_t count;
        const char *words;
    } faulty[] = {
        {{{"waist girth", BK_NO_AMOUNT}}, 1, "No measure was given."},
        {{{"a/b", 5}}, 1, "The name of a measure holds no \";\" and no \"/\": \"a/b\"."},
        {{{"a;b", 5}}, 1, "holds no \";\""},
        {{{"  ", 5}}, 1, "A measure needs a name."},
        {{{NULL, 5}}, 1, "A measure needs a name."},
        {{{"height", 5}, {" height ", 6}}, 2, "The height is given twice."},
    };
    for (size_t i = 0; i < sizeof faulty / sizeof *faulty; i++)
        REFUSED(save(store, SAVING(.on = DAY(3, 1), .items = faulty[i].items, .count = faulty[i].count),
                     &sentence),
                BK_REFUSED, faulty[i].words);
    REFUSED(save(store, SAVING(.on = DAY(3, 1)), &sentence), BK_REFUSED, "No measure was given.");
    REFUSED(save(store, SAVING(.on = DAY(3, 3), ITEMS({"height", 5})), &sentence), BK_REFUSED,
            "A sheet cannot be taken on a day to come.");
    REFUSED(save(store, SAVING(.on = BK_NO_DAY, ITEMS({"height", 5})), &sentence), BK_REFUSED,
            "A sheet needs the day on which it was taken.");
    REFUSED(save(store, SAVING(.performer = 99, .on = DAY(3, 1), ITEMS({"height", 5})), &sentence),
            BK_REFUSED, "This performer is no longer in the workroom.");
    ck_assert_ptr_null(sentence);
    ck_assert_str_eq(measures(), before);
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), "1");
    bk_store_close(store);
}
END_TEST

START_TEST(only_the_maker_takes_measures)
{
    bk_store *store = store_with_show();
    bk_store_close(store);
    bk_store_options options = {.path = bk_test_path("workroom.db"), .as = BK_AS_DIRECTOR, .who = "Dee"};
    MUST(bk_store_open(&store, &options, &trouble));
    const char *sentence = NULL;
    REFUSED(save(store, SAVING(.on = DAY(3, 1), ITEMS({"height", 5})), &sentence), BK_REFUSED,
            "Only the maker takes measures.");
    bk_store_close(store);
}
END_TEST

// --------------------------------------------------------------------------------------------------- correcting

static bk_status correct(bk_store *store, bk_day on, const char *name, bk_measure_mark seen,
                         bk_measure_mark wanted, const char **sentence)
{
    bk_measure_correcting correcting = {performer(store, "Ines Varga"), on, today(), name, seen, wanted};
    return bk_measure_correct(store, &correcting, MADE_AT, texts(), sentence, &trouble);
}

static const bk_measure_mark nothing = {BK_NO_AMOUNT, NULL, NULL};
static const bk_measure_mark waist_of_february = {713000, "a shirt", "Ada Pell"};

START_TEST(a_measure_is_corrected_and_how_it_was_taken)
{
    bk_store *store = store_with_show();
    const char *sentence = NULL;
    bk_measure_mark wanted = {731000, "a shirt", "Ada Pell"}, bare = {731000, " ", NULL};
    MUST(correct(store, DAY(2, 3), "waist girth", waist_of_february, wanted, &sentence));
    ck_assert_str_eq(sentence, "Corrected: waist girth of Ines Varga, 3 Feb");
    MUST(correct(store, DAY(2, 3), "waist girth", wanted, bare, &sentence));
    ck_assert_str_eq(sentence, "Changed: waist girth of Ines Varga, 3 Feb");
    ck_assert_ptr_nonnull(strstr(measures(), "2027-02-03|waist girth|731000|-|-"));
    MUST(correct(store, DAY(2, 3), "waist girth", (bk_measure_mark){731000, NULL, NULL}, bare, &sentence));
    ck_assert_ptr_null(sentence);
    undo(store);
    undo(store);
    ck_assert_str_eq(measures(), before);
    bk_store_close(store);
}
END_TEST

START_TEST(a_measure_is_added_to_a_sheet_and_taken_away)
{
    bk_store *store = store_with_show();
    const char *sentence = NULL;
    bk_measure_mark height = {1650000, NULL, "Bo"};
    MUST(correct(store, DAY(2, 3), "height", nothing, height, &sentence));
    ck_assert_str_eq(sentence, "Added: height of Ines Varga, 3 Feb");
    ck_assert_ptr_nonnull(strstr(measures(), "2027-02-03|height|1650000|-|Bo"));
    MUST(correct(store, DAY(2, 3), "height", height, nothing, &sentence));
    ck_assert_str_eq(sentence, "Taken away: height of Ines Varga, 3 Feb");
    ck_assert_str_eq(measures(), before);
    MUST(correct(store, DAY(2, 3), "height", nothing, nothing, &sentence));
    ck_assert_ptr_null(sentence);
    bk_store_close(store);
}
END_TEST

START_TEST(a_sheet_goes_with_its_last_measure_and_comes_back_by_undo)
{
    bk_store *store = store_with_show();
    const char *records = bk_records(), *sentence = NULL;
    MUST(
        correct(store, DAY(2, 10), "waist girth", (bk_measure_mark){715000, NULL, NULL}, nothing, &sentence));
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM measure_sheet"), "1");
    undo(store);
    ck_assert_str_eq(bk_records(), records);
    bk_store_close(store);
}
END_TEST

START_TEST(what_another_changed_meanwhile_is_not_corrected)
{
    bk_store *store = store_with_show();
    const char *sentence = NULL,
               *words = "Nothing was saved: the waist girth of Ines Varga, 3 Feb, was changed meanwhile; "
                        "look at it again.";
    bk_measure_mark wanted = {700000, NULL, NULL}, other_hand = {713000, "a shirt", "Bo"};
    REFUSED(correct(store, DAY(2, 3), "waist girth", wanted, wanted, &sentence), BK_REFUSED, words);
    REFUSED(correct(store, DAY(2, 3), "waist girth", nothing, wanted, &sentence), BK_REFUSED, words);
    REFUSED(correct(store, DAY(2, 3), "waist girth", other_hand, wanted, &sentence), BK_REFUSED, words);
    REFUSED(correct(store, DAY(2, 4), "waist girth", waist_of_february, wanted, &sentence), BK_REFUSED,
            "was changed meanwhile");
    REFUSED(correct(store, DAY(2, 3), "knee girth", wanted, nothing, &sentence), BK_REFUSED,
            "was changed meanwhile");
    REFUSED(correct(store, DAY(2, 3), "a/b", nothing, wanted, &sentence), BK_REFUSED, "holds no \";\"");
    ck_assert_ptr_null(sentence);
    ck_assert_str_eq(measures(), before);
    bk_store_close(store);
}
END_TEST

START_TEST(a_sheet_gets_another_day)
{
    bk_store *store = store_with_show();
    const char *sentence = NULL;
    int64_t ines = performer(store, "Ines Varga");
    MUST(
        bk_sheet_redate(store, ines, DAY(2, 10), DAY(2, 11), today(), MADE_AT, texts(), &sentence, &trouble));
    ck_assert_str_eq(sentence, "Changed: the sheet of Ines Varga, 10 Feb, is of 11 Feb");
    ck_assert_ptr_nonnull(strstr(measures(), "2027-02-11|waist girth|715000"));
    MUST(
        bk_sheet_redate(store, ines, DAY(2, 11), DAY(2, 11), today(), MADE_AT, texts(), &sentence, &trouble));
    ck_assert_ptr_null(sentence);
    REFUSED(
        bk_sheet_redate(store, ines, DAY(2, 11), DAY(2, 3), today(), MADE_AT, texts(), &sentence, &trouble),
        BK_REFUSED, "There is a sheet of Ines Varga, 3 Feb, already.");
    REFUSED(
        bk_sheet_redate(store, ines, DAY(2, 11), DAY(3, 3), today(), MADE_AT, texts(), &sentence, &trouble),
        BK_REFUSED, "A sheet cannot be taken on a day to come.");
    REFUSED(
        bk_sheet_redate(store, ines, DAY(2, 10), DAY(2, 12), today(), MADE_AT, texts(), &sentence, &trouble),
        BK_REFUSED, "There is no sheet of Ines Varga, 10 Feb, any more.");
    undo(store);
    ck_assert_str_eq(measures(), before);
    bk_store_close(store);
}
END_TEST

START_TEST(a_sheet_is_taken_away_with_its_measures)
{
    bk_store *store = store_with_show();
    const char *records = bk_records(), *sentence = NULL;
    int64_t ines = performer(store, "Ines Varga");
    MUST(bk_sheet_take_away(store, ines, DAY(2, 3), today(), MADE_AT, texts(), &sentence, &trouble));
    ck_assert_str_eq(sentence, "Taken away: the sheet of Ines Varga, 3 Feb");
    ck_assert_str_eq(measures(), "2027-02-10|waist girth|715000|-|-");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM measure_sheet"), "1");
    REFUSED(bk_sheet_take_away(store, ines, DAY(2, 3), today(), MADE_AT, texts(), &sentence, &trouble),
            BK_REFUSED, "There is no sheet of Ines Varga, 3 Feb, any more.");
    undo(store);
    ck_assert_str_eq(bk_records(), records);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("measuring", a_new_sheet_is_one_change_that_can_be_undone,
             measures_of_a_day_that_has_a_sheet_are_added_to_it,
             a_value_that_differs_is_a_correction_that_tells_no_value,
             corrections_and_new_measures_are_told_in_one_sentence,
             a_sheet_of_another_year_is_told_with_its_year, what_is_there_already_changes_nothing,
             empty_values_are_passed_over, what_cannot_be_saved_is_refused_and_nothing_is,
             only_the_maker_takes_measures, a_measure_is_corrected_and_how_it_was_taken,
             a_measure_is_added_to_a_sheet_and_taken_away,
             a_sheet_goes_with_its_last_measure_and_comes_back_by_undo,
             what_another_changed_meanwhile_is_not_corrected, a_sheet_gets_another_day,
             a_sheet_is_taken_away_with_its_measures)
