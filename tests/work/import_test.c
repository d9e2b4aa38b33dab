// Taking a folder of sheets in: what is new, what is known, what is replaced; all or nothing.

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "work/show.h"

// -------------------------------------------------------------------------------------------- a first import

START_TEST(every_row_of_every_sheet_is_taken_in)
{
    static const struct {
        const char *table, *rows;
    } counts[] = {{"production", "1"},
                  {"show_date", "3"},
                  {"person", "2"},
                  {"away", "3"},
                  {"equipment", "2"},
                  {"performer", "3"},
                  {"company", "3"},
                  {"measure_sheet", "2"},
                  {"measure", "3"},
                  {"measure_name", "2"},
                  {"role", "2"},
                  {"role_cover", "2"},
                  {"costume", "3"},
                  {"piece", "3"},
                  {"piece_cost", "2"},
                  {"piece_costume", "4"},
                  {"step", "4"},
                  {"step_after", "3"},
                  {"material", "3"},
                  {"material_price", "1"},
                  {"need", "3"},
                  {"purchase", "3"},
                  {"movement", "2"},
                  {"purchase_cost", "1"},
                  {"fitting", "2"},
                  {"work WHERE ready = 0", "2"},
                  {"work_step JOIN work ON work.id = work_id WHERE ready = 0", "3"},
                  {"note", "3"},
                  {"performer_contact", "1"},
                  {"daybook", "1"}};
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    bk_store_close(store);
    bk_folder_free(folder);
    for (size_t i = 0; i < sizeof counts / sizeof *counts; i++) {
        const char *rows = bk_ask(bk_arena_print(texts(), "SELECT count(*) FROM %s", counts[i].table));
        ck_assert_msg(strcmp(rows, counts[i].rows) == 0, "%s has %s rows", counts[i].table, rows);
    }
}
END_TEST

START_TEST(rows_refer_to_each_other_as_their_names_do)
{
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    bk_store_close(store);
    bk_folder_free(folder);
    ck_assert_str_eq(bk_ask("SELECT costume.number, role.name FROM costume JOIN role ON role.id = role_id "
                            "ORDER BY costume.position"),
                     "10A|The Miller\n2B|The Miller\n2A|The Boy");
    ck_assert_str_eq(
        bk_ask("SELECT late.key, early.key FROM step_after JOIN step AS late ON late.id = step_id "
               "JOIN step AS early ON early.id = after_id ORDER BY late.position, step_after.position"),
        "sew|cut\nfit|press\nfit|sew");
    ck_assert_str_eq(
        bk_ask("SELECT piece.name, key, material.name, quantity FROM need JOIN step ON step.id = step_id "
               "JOIN piece ON piece.id = piece_id JOIN material ON material.id = material_id "
               "ORDER BY need.position"),
        "P2|sew|wool|2400000\nP2|cut|linen|1200000\nP2|sew|hooks|12000000");
    ck_assert_str_eq(bk_ask("SELECT person.name, performer.name, reason FROM away "
                            "LEFT JOIN person ON person.id = person_id "
                            "LEFT JOIN performer ON performer.id = performer_id ORDER BY away.id"),
                     "Zoë Ngô|Zoë Ngô|a wedding\nAda Pell||\n|Ines Varga|a \"sitting\"");
    ck_assert_str_eq(bk_ask("SELECT booked_at, performer.name, outcome FROM fitting "
                            "LEFT JOIN performer ON performer.id = performer_id ORDER BY position"),
                     "2027-03-12T14:30|Tomas Lind|again\n2027-03-05||");
}
END_TEST

START_TEST(what_lies_on_the_shelf_is_a_count_of_the_day_of_the_import)
{
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    bk_store_close(store);
    bk_folder_free(folder);
    // The linen that has arrived lies in its count already; nothing is known of the hooks.
    ck_assert_str_eq(bk_ask("SELECT name, kind, quantity, moved_on, purchase_id FROM movement "
                            "JOIN material ON material.id = material_id ORDER BY movement.id"),
                     "wool|count|1000000|2027-03-02|\nlinen|count|2500000|2027-03-02|");
}
END_TEST

START_TEST(a_shelf_known_to_be_empty_is_not_a_shelf_of_which_nothing_is_known)
{
    bk_folder *folder = bare_show("Chalk", DAY(4, 1));
    ROWS(folder, materials, bk_material, MATERIAL("wool", BK_METRE, 0),
         MATERIAL("tape", BK_METRE, TENTHS(-5)));
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    bk_store_close(store);
    bk_folder_free(folder);
    ck_assert_str_eq(bk_ask("SELECT quantity FROM movement ORDER BY id"), "0\n-500000");
}
END_TEST

START_TEST(whoever_a_role_a_cover_a_measure_or_a_fitting_names_joins_the_company)
{
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    folder = salt_road();
    folder->production.items[0].name = "The Sugar Road";
    folder->performers.count = 0;
    folder->roles.items[0].cover = NULL;
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    bk_store_close(store);
    ck_assert_str_eq(
        bk_ask("SELECT performer.name FROM company JOIN performer ON performer.id = performer_id "
               "WHERE production_id = 2 ORDER BY position"),
        "Ines Varga\nTomas Lind");
}
END_TEST

static const char *sentence_for(size_t costumes, size_t pieces, size_t steps)
{
    bk_import_report report;
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    folder->fittings.count = folder->needs.count = 0;
    folder->costumes.count = costumes;
    folder->pieces.count = pieces;
    folder->steps.count = steps;
    folder->pieces.items[0].costumes = "10A";
    folder->steps.items[0].after = NULL;
    take_in(store, folder, true, &report);
    bk_store_close(store);
    bk_folder_free(folder);
    return report.sentence;
}

START_TEST(the_sentence_of_the_daybook_counts_what_came)
{
    ck_assert_str_eq(sentence_for(1, 1, 1), "Imported \"The Salt Road\": 1 costume, 1 piece, 1 step");
    ck_assert_str_eq(sentence_for(2, 0, 0),
                     "Imported in place of the former \"The Salt Road\": 2 costumes, 0 pieces, 0 steps");
}
END_TEST

// --------------------------------------------------------------------------------- a production in its place

START_TEST(a_production_of_a_known_name_is_refused_unless_it_may_be_replaced)
{
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    bk_import_options options = {.today = today()};
    bk_import_report report;
    take_in(store, folder, false, NULL);
    const char *before = bk_records();
    MUST(bk_store_change_begin(store, &trouble));
    REFUSED(bk_import_folder(store, folder, &options, texts(), &report, &trouble), BK_REFUSED,
            "There is already a production \"The Salt Road\" in this workroom; to put this one in its place, "
            "import "
            "with --replace.");
    bk_store_change_drop(store);
    bk_store_close(store);
    bk_folder_free(folder);
    ck_assert_str_eq(bk_records(), before);
}
END_TEST

START_TEST(a_replacing_import_takes_the_former_out_in_the_same_change_and_leaves_the_workroom)
{
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    folder->costumes.count = 2;
    folder->pieces.count = 2;
    folder->roles.items[1].name = "The Girl";
    folder->performers.count = folder->people.count = folder->materials.count = folder->measures.count = 0;
    folder->orders.count = folder->away.count = folder->equipment.count = 0;
    take_in(store, folder, true, NULL);
    bk_store_close(store);
    bk_folder_free(folder);
    ck_assert_str_eq(bk_ask("SELECT count(*), max(id) FROM production"), "1|2");
    ck_assert_str_eq(bk_ask("SELECT name FROM role ORDER BY position"), "The Miller\nThe Girl");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM costume"), "2");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM step"), "4");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM performer"), "3");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM equipment"), "2");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM measure"), "3");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM purchase"), "3");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), "2");
}
END_TEST

START_TEST(a_production_put_away_comes_back_into_work_when_it_is_replaced)
{
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    bk_ask("UPDATE production SET put_away_on = '2027-02-01'");
    take_in(store, folder, true, NULL);
    bk_store_close(store);
    bk_folder_free(folder);
    ck_assert_str_eq(bk_ask("SELECT put_away_on IS NULL FROM production"), "1");
}
END_TEST

START_TEST(the_same_folder_again_changes_nothing_of_the_workroom)
{
    bk_import_report report;
    static const char workroom[] =
        "SELECT * FROM performer; SELECT * FROM performer_contact; SELECT * FROM measure; "
        "SELECT * FROM measure_sheet; SELECT * FROM person; SELECT * FROM away; "
        "SELECT * FROM material; SELECT * FROM material_price; SELECT * FROM purchase; "
        "SELECT * FROM purchase_cost; SELECT * FROM movement";
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    const char *before = bk_ask(workroom);
    take_in(store, folder, true, &report);
    bk_store_close(store);
    bk_folder_free(folder);
    ck_assert_str_eq(notes_of(&report), "");
    ck_assert_str_eq(bk_ask(workroom), before);
}
END_TEST

// ---------------------------------------------------------------------------------------------- turning back

/// Turns the change back that is made by taking `folder` in, and demands the store as it was.
static void expect_turned_back(bk_store *store, const bk_folder *folder, bool replace)
{
    const char *before = bk_records();
    int64_t entry = take_in(store, folder, replace, NULL);
    ck_assert_str_ne(bk_records(), before);
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_turn_back(store, entry, &trouble));
    MUST(bk_store_change_commit(store, "2027-03-02T10:00:00+01:00", "Turned back.", NULL, &trouble));
    ck_assert_str_eq(bk_records(), before);
}

START_TEST(a_first_import_turned_back_leaves_the_store_empty)
{
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    expect_turned_back(store, folder, false);
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM performer"), "0");
    bk_store_close(store);
    bk_folder_free(folder);
}
END_TEST

START_TEST(an_import_beside_others_turned_back_leaves_them_row_for_row)
{
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    folder->production.items[0].name = "The Sugar Road";
    folder->performers.items[1].note = "wool after all";
    folder->performers.items[1].contact = "ines@road.example";
    folder->measures.items[0].value = 724000;
    folder->measures.items[1].taken_on = DAY(2, 24);
    folder->materials.items[0].on_hand = TENTHS(77);
    folder->orders.items[0].arrived_on = DAY(3, 1);
    folder->away.items[1].reason = "on tour";
    folder->people.items[0].note = "new";
    expect_turned_back(store, folder, false);
    bk_store_close(store);
    bk_folder_free(folder);
}
END_TEST

START_TEST(a_replacing_import_turned_back_brings_the_former_production_back_row_for_row)
{
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    folder->costumes.items[0].number = "11A";
    folder->pieces.items[0].costumes = "11A;2B";
    folder->pieces.items[1].costumes = "11A";
    folder->steps.items[0].minutes = 7;
    folder->performers.items[1].note = "wool after all";
    folder->materials.items[1].price = 1111;
    expect_turned_back(store, folder, true);
    bk_store_close(store);
    bk_folder_free(folder);
}
END_TEST

// --------------------------------------------------------------------------------------------- being stopped

/// Goes on `left` times and then stops.
static bool stop_in_time(void *left, const char *what, int64_t done, int64_t all)
{
    ck_assert_ptr_nonnull(what);
    ck_assert_int_le(done, all);
    return (*(int *)left)-- > 0;
}

/// Takes the show in until the progress is told for the time `patience`; whether it came to its end.
static bool import_until(bk_store *store, const bk_folder *folder, int patience)
{
    bk_progress progress = {stop_in_time, &patience};
    bk_import_options options = {.replace = true, .today = today(), .progress = &progress};
    bk_import_report report = {0};
    MUST(bk_store_change_begin(store, &trouble));
    bk_status status = bk_import_folder(store, folder, &options, texts(), &report, &trouble);
    bk_store_change_drop(store);
    ck_assert_int_eq(status, status == BK_OK ? BK_OK : BK_REFUSED);
    ck_assert(status == BK_OK || strcmp(trouble.text, "The import was stopped; nothing was changed.") == 0);
    return status == BK_OK;
}

START_TEST(an_import_can_be_stopped_at_every_sheet_and_nothing_is_changed)
{
    enum { SHEETS = 17 };
    int patience = 0;
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    folder->performers.items[1].note = "wool after all";
    folder->materials.items[1].price = 1111;
    const char *before = bk_records();
    while (!import_until(store, folder, patience)) {
        ck_assert_str_eq(bk_records(), before);
        patience++;
    }
    ck_assert_int_eq(patience, SHEETS);
    ck_assert_str_eq(bk_records(), before);
    bk_store_close(store);
    bk_folder_free(folder);
}
END_TEST

// -------------------------------------------------------------------------------------------- names it knows

START_TEST(the_workroom_tells_the_names_that_it_knows)
{
    bk_known *known = NULL;
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    MUST(bk_import_known(store, &known, &trouble));
    ck_assert_ptr_null(bk_index_find(known->performers, "Ines Varga"));
    bk_known_free(known);
    take_in(store, folder, false, NULL);
    MUST(bk_import_known(store, &known, &trouble));
    ck_assert_ptr_nonnull(bk_index_find(known->performers, "Ines Varga"));
    ck_assert_ptr_nonnull(bk_index_find(known->people, "Ada Pell"));
    ck_assert_ptr_nonnull(bk_index_find(known->materials, "hooks"));
    ck_assert_ptr_null(bk_index_find(known->people, "Ines Varga"));
    bk_known_free(known);
    bk_store_close(store);
    bk_folder_free(folder);
}
END_TEST

BK_TEST_MAIN("import", every_row_of_every_sheet_is_taken_in, rows_refer_to_each_other_as_their_names_do,
             what_lies_on_the_shelf_is_a_count_of_the_day_of_the_import,
             a_shelf_known_to_be_empty_is_not_a_shelf_of_which_nothing_is_known,
             whoever_a_role_a_cover_a_measure_or_a_fitting_names_joins_the_company,
             the_sentence_of_the_daybook_counts_what_came,
             a_production_of_a_known_name_is_refused_unless_it_may_be_replaced,
             a_replacing_import_takes_the_former_out_in_the_same_change_and_leaves_the_workroom,
             a_production_put_away_comes_back_into_work_when_it_is_replaced,
             the_same_folder_again_changes_nothing_of_the_workroom,
             a_first_import_turned_back_leaves_the_store_empty,
             an_import_beside_others_turned_back_leaves_them_row_for_row,
             a_replacing_import_turned_back_brings_the_former_production_back_row_for_row,
             an_import_can_be_stopped_at_every_sheet_and_nothing_is_changed,
             the_workroom_tells_the_names_that_it_knows)
