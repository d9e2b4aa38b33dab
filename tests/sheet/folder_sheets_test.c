#include "bodkin/sheet/folder_sheets.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "sheet/good_sheets.h"
#include "support/testing.h"

START_TEST(a_production_sheet_alone_is_a_folder)
{
    sheet_put("production.csv", "production,opens\nThe Winter Fair,2027-04-16\n");
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_int_eq(read.status, BK_OK);
    ck_assert_uint_eq(read.folder->production.count, 1);
    ck_assert_ptr_null(read.folder->production.items[0].currency);
    ck_assert_int_eq(read.folder->production.items[0].unit, BK_NO_WORD);
    ck_assert_int_eq(read.folder->production.items[0].sheets, BK_NOT_KNOWN);
    ck_assert_ptr_null(read.folder->steps.items);
    ck_assert_ptr_null(read.folder->people.items);
    reading_free(&read);
}
END_TEST

START_TEST(a_sheet_with_only_a_first_line_has_no_rows)
{
    sheet_put("production.csv", "production,opens\nThe Winter Fair,2027-04-16\n");
    sheet_put("roles.csv", "role");
    sheet_put("people.csv", "person,note\r\n\r\n");
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_int_eq(read.status, BK_OK);
    ck_assert_uint_eq(read.folder->roles.count, 0);
    ck_assert_uint_eq(read.folder->people.count, 0);
    reading_free(&read);
}
END_TEST

START_TEST(columns_stand_in_any_order_and_may_be_left_out)
{
    sheet_put("production.csv", "\xEF\xBB\xBFopens,production\r\n2027-04-16,The Winter Fair\r\n");
    sheet_put("roles.csv", "note,role\r\n\"a, b\r\nc\",The Miller\r\n\r\n,The Fox");
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_int_eq(read.status, BK_OK);
    ck_assert_str_eq(read.folder->production.items[0].name, "The Winter Fair");
    ck_assert_str_eq(read.folder->roles.items[0].note, "a, b\r\nc");
    ck_assert_ptr_null(read.folder->roles.items[0].performer);
    ck_assert_str_eq(read.folder->roles.items[1].name, "The Fox");
    ck_assert_int_eq(read.folder->roles.items[1].line, 5);
    reading_free(&read);
}
END_TEST

START_TEST(names_that_the_workroom_knows_need_no_row)
{
    bk_known *known = bk_known_new();
    bk_index_put(known->performers, "Ines Varga", 1);
    bk_index_put(known->performers, "Tomas Lind", 2);
    bk_index_put(known->people, "Ada Pell", 3);
    bk_index_put(known->materials, "white linen", 4);
    bk_index_put(known->materials, "hooks", 5);
    good_sheets_put();
    sheet_remove("performers.csv");
    sheet_remove("people.csv");
    sheet_remove("materials.csv");
    reading read = reading_of(bk_test_folder(), known);
    ck_assert_int_eq(read.status, BK_OK);
    reading_free(&read);
    sheet_change("away.csv", "Ada Pell", "Ada Bell");
    sheet_change("roles.csv", "Tomas Lind", "Tomas Lind;Ada Pell");
    sheet_change("needs.csv", "hooks", "eyes");
    sheet_change("costumes.csv", "The Miller", "white linen");
    read = reading_of(bk_test_folder(), known);
    static const char *const told[] = {"away.csv:2: who: nobody is called \"Ada Bell\", neither in "
                                       "people.csv or performers.csv nor in the workroom; add a "
                                       "row there, or write a name that stands there",
                                       "roles.csv:2: cover: no performer is called \"Ada Pell\", neither in "
                                       "performers.csv nor in the workroom; add a row "
                                       "there, or write a name that stands there",
                                       "costumes.csv:2: role: no role is called \"white linen\" in "
                                       "roles.csv; add a row there, or write a name that stands "
                                       "there",
                                       "needs.csv:3: material: no material is called \"eyes\", neither in "
                                       "materials.csv nor in the workroom; add a row there, "
                                       "or write a name that stands there"};
    ck_assert_uint_eq(bk_faults_count(read.faults), 4);
    for (size_t i = 0; i < 4; i++)
        ck_assert_str_eq(bk_faults_text(read.faults, i), told[i]);
    reading_free(&read);
    bk_known_free(known);
}
END_TEST

START_TEST(faults_of_all_sheets_are_told_in_one_go_and_in_order)
{
    good_sheets_put();
    sheet_change("fittings.csv", "again", "soon");
    sheet_change("production.csv", "GBP", "gbp");
    sheet_change("steps.csv", "machine,120", "machine,-1");
    sheet_change("measures.csv", "93 cm", "93");
    sheet_put("zebra.csv", "");
    sheet_put("alpha.csv", "");
    reading read = reading_of(bk_test_folder(), NULL);
    static const char *const begins[] = {"production.csv:2: currency", "measures.csv:4: value",
                                         "steps.csv:3: minutes",       "fittings.csv:2: outcome",
                                         "alpha.csv:1: sheet",         "zebra.csv:1: sheet"};
    ck_assert_uint_eq(bk_faults_count(read.faults), 6);
    for (size_t i = 0; i < 6; i++)
        ck_assert_mem_eq(bk_faults_text(read.faults, i), begins[i], strlen(begins[i]));
    reading_free(&read);
}
END_TEST

/// A measure sheet of many performers, `faulty` of whose rows have no unit.
static void put_measures(int performers, int faulty)
{
    bk_buffer names = {0}, measures = {0};
    bk_buffer_text(&names, "performer\n");
    bk_buffer_text(&measures, "performer,taken_on,measure,value\n");
    for (int i = 0; i < performers; i++) {
        bk_buffer_print(&names, "Performer %d\n", i);
        for (int m = 0; m < 90; m++)
            bk_buffer_print(&measures, "Performer %d,2027-02-03,measure %d,92.5%s\n", i, m,
                            i * 90 + m < faulty ? "" : " cm");
    }
    sheet_put("production.csv", good_sheets[BK_SHEET_PRODUCTION]);
    sheet_put("performers.csv", names.bytes);
    sheet_put("measures.csv", measures.bytes);
    bk_buffer_free(&names);
    bk_buffer_free(&measures);
}

START_TEST(of_many_faults_the_first_twenty_are_told_and_all_are_counted)
{
    put_measures(100, 5000);
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_uint_eq(bk_faults_count(read.faults), 5000);
    ck_assert_str_eq(bk_faults_text(read.faults, 19),
                     "measures.csv:21: value: \"92.5\" has no unit; write 92.5 cm or 36 3/8 in");
    ck_assert_ptr_nonnull(strstr(read.error.text, "5000 faults were found"));
    reading_free(&read);
}
END_TEST

START_TEST(many_rows_share_the_texts_of_their_names)
{
    put_measures(1000, 0);
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_int_eq(read.status, BK_OK);
    ck_assert_uint_eq(read.folder->measures.count, 90000);
    size_t rows = read.folder->measures.count * sizeof(bk_measure);
    ck_assert_uint_lt(bk_arena_size(read.folder->arena), rows + rows / 4);
    reading_free(&read);
}
END_TEST

/// What was told of the reading, and after how many times it is stopped.
typedef struct listener {
    int told, stop_at;
    int64_t last_done;
    bool forward;
    char what[40];
} listener;

static bool listen(void *self, const char *what, int64_t done, int64_t all)
{
    listener *one = self;
    one->forward &= done <= all && (strcmp(what, one->what) != 0 || done == 0 || done >= one->last_done);
    snprintf(one->what, sizeof one->what, "%s", what);
    one->last_done = done;
    return ++one->told != one->stop_at;
}

START_TEST(progress_is_told_by_the_name_of_the_file)
{
    put_measures(1000, 0);
    listener one = {.forward = true};
    bk_progress progress = {listen, &one};
    bk_folder *folder = bk_folder_new();
    bk_faults *faults = bk_faults_new();
    bk_error error;
    ck_assert_int_eq(bk_folder_read(bk_test_folder(), NULL, folder, faults, &progress, &error), BK_OK);
    ck_assert_int_gt(one.told, 15);
    ck_assert(one.forward);
    ck_assert_str_eq(one.what, "measures.csv");
    bk_faults_free(faults);
    bk_folder_free(folder);
}
END_TEST

START_TEST(a_reading_that_is_stopped_is_refused_wherever_it_is)
{
    good_sheets_put();
    put_measures(200, 0);
    bool stopped = true;
    for (int at = 1; stopped; at++) {
        listener one = {.stop_at = at};
        bk_progress progress = {listen, &one};
        bk_folder *folder = bk_folder_new();
        bk_faults *faults = bk_faults_new();
        bk_error error;
        bk_status status = bk_folder_read(bk_test_folder(), NULL, folder, faults, &progress, &error);
        stopped = one.told == at;
        ck_assert_int_eq(status, BK_REFUSED); // at the end because the good sheets refer to other performers
        if (stopped)
            ck_assert_str_eq(error.text, "the reading of the sheets was stopped; nothing was changed");
        bk_faults_free(faults);
        bk_folder_free(folder);
    }
}
END_TEST

BK_TEST_MAIN("folder sheets", a_production_sheet_alone_is_a_folder,
             a_sheet_with_only_a_first_line_has_no_rows, columns_stand_in_any_order_and_may_be_left_out,
             names_that_the_workroom_knows_need_no_row, faults_of_all_sheets_are_told_in_one_go_and_in_order,
             of_many_faults_the_first_twenty_are_told_and_all_are_counted,
             many_rows_share_the_texts_of_their_names, progress_is_told_by_the_name_of_the_file,
             a_reading_that_is_stopped_is_refused_wherever_it_is)
