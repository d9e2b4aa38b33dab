// The faults of folders, of files, of first lines and of rows, each with its whole sentence: one thing of a sound production is
// changed.

#include "bodkin/sheet/sheet_read.h"

#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include "bodkin/base/text.h"
#include "sheet/good_sheets.h"
#include "support/testing.h"

START_TEST(a_sound_production_has_no_fault)
{
    good_sheets_put();
    no_fault_expected();
}
END_TEST

static void expect_refused(const char *path, const char *sentence)
{
    reading read = reading_of(path, NULL);
    ck_assert_int_eq(read.status, BK_REFUSED);
    ck_assert_uint_eq(bk_faults_count(read.faults), 0);
    ck_assert_str_eq(read.error.text, sentence);
    reading_free(&read);
}

START_TEST(a_folder_that_is_not_there_is_refused_with_its_name)
{
    expect_refused("nowhere/at all",
                   "there is no folder nowhere/at all; give the folder that holds the sheets");
}
END_TEST

START_TEST(a_file_in_place_of_the_folder_is_refused)
{
    ck_assert_int_eq(chdir(bk_test_folder()), 0);
    sheet_put("production.csv", good_sheets[BK_SHEET_PRODUCTION]);
    expect_refused("production.csv", "production.csv is not a folder; give the folder that holds the sheets");
}
END_TEST

START_TEST(the_number_of_faults_is_the_error)
{
    ck_assert_int_eq(chdir(bk_test_folder()), 0);
    good_sheets_put();
    sheet_change("production.csv", "2027-04-16", "soon");
    reading read = reading_of(".", NULL);
    ck_assert_str_eq(read.error.text, "1 fault was found in the sheets of .; nothing was changed");
    reading_free(&read);
    sheet_change("measures.csv", "Ines", "Inez");
    sheet_change("roles.csv", "Tomas", "Thomas");
    read = reading_of(".", NULL);
    ck_assert_str_eq(read.error.text, "3 faults were found in the sheets of .; nothing was changed");
    reading_free(&read);
}
END_TEST

START_TEST(a_missing_production_sheet_is_told)
{
    good_sheets_put();
    sheet_remove("production.csv");
    fault_expected(
        "production.csv:1: sheet: the file is missing; it must name the production and the day it opens");
}
END_TEST

START_TEST(an_empty_file_is_told_with_the_columns_it_must_have)
{
    good_sheets_put();
    sheet_put("needs.csv", "");
    fault_expected("needs.csv:1: sheet: the file is empty; its first line must name its columns: piece, "
                   "step, material, quantity");
    sheet_put("needs.csv", "\xEF\xBB\xBF\r\n\r\n");
    fault_expected("needs.csv:1: sheet: the file is empty; its first line must name its columns: piece, "
                   "step, material, quantity");
}
END_TEST

START_TEST(an_empty_sheet_is_the_only_fault_though_others_refer_to_it)
{
    good_sheets_put();
    sheet_put("performers.csv", "");
    fault_expected("performers.csv:1: sheet: the file is empty; its first line must name its columns: "
                   "performer, contact, measures_good_for, note");
}
END_TEST

START_TEST(a_sheet_of_another_name_is_told_with_the_one_that_is_meant)
{
    good_sheets_put();
    sheet_put("measure.csv", "");
    fault_expected("measure.csv:1: sheet: there is no sheet of this name; did you mean measures.csv?");
    sheet_remove("measure.csv");
    sheet_put("wardrobe.csv", "");
    fault_expected("wardrobe.csv:1: sheet: there is no sheet of this name; the sheets are production.csv, "
                   "dates.csv, people.csv, away.csv, equipment.csv, performers.csv, measures.csv, roles.csv, "
                   "costumes.csv, "
                   "pieces.csv, steps.csv, materials.csv, needs.csv, orders.csv, fittings.csv, works.csv, "
                   "work_steps.csv, notes.csv");
}
END_TEST

START_TEST(a_sheet_in_capital_letters_is_told_with_its_right_name)
{
    good_sheets_put();
    sheet_remove("performers.csv");
    sheet_put("PERFORMERS.CSV", good_sheets[BK_SHEET_PERFORMERS]);
    fault_expected(
        "PERFORMERS.CSV:1: sheet: the names of sheets are in small letters; call the file performers.csv");
    sheet_remove("PERFORMERS.CSV");
    sheet_put("Performers.csv", good_sheets[BK_SHEET_PERFORMERS]);
    fault_expected(
        "Performers.csv:1: sheet: the names of sheets are in small letters; call the file performers.csv");
}
END_TEST

START_TEST(other_files_and_hidden_ones_are_passed_over)
{
    good_sheets_put();
    sheet_put(".people.csv", "x");
    sheet_put("notes.txt", "x");
    sheet_put("people.csv~", "x");
    sheet_put("WARDROBE.CSV", "x");
    no_fault_expected();
}
END_TEST

START_TEST(a_sheet_that_is_a_folder_is_told)
{
    good_sheets_put();
    sheet_remove("dates.csv");
    ck_assert_int_eq(mkdir(bk_test_path("dates.csv"), 0700), 0);
    fault_expected("dates.csv:1: sheet: this is no plain file; a sheet is a file of comma-separated values");
}
END_TEST

START_TEST(a_sheet_that_cannot_be_opened_is_told_with_the_reason)
{
    good_sheets_put();
    sheet_remove("dates.csv");
    ck_assert_int_eq(symlink("nowhere", bk_test_path("dates.csv")), 0);
    fault_expected("dates.csv:1: sheet: the file cannot be read: No such file or directory");
}
END_TEST

START_TEST(a_sheet_of_more_than_a_gigabyte_is_not_read)
{
    const off_t larger = ((off_t)1 << 30) + 1;
    good_sheets_put();
    ck_assert_int_eq(truncate(bk_test_path("dates.csv"), larger), 0);
    fault_expected("dates.csv:1: sheet: the file is larger than 1 GB, which is too large for a sheet");
}
END_TEST

START_TEST(an_unknown_column_is_told_with_the_one_that_is_meant)
{
    changes_expected(
        CHANGES({"people.csv", "note\n", "notes\n",
                 "people.csv:1: notes: there is no column of this name; did you mean note?"},
                {"people.csv", "note\n", "Note\n",
                 "people.csv:1: Note: there is no column of this name; did you mean note?"},
                {"roles.csv", "note\n", "colour\n",
                 "roles.csv:1: colour: there is no column of this name; the columns are role, performer, "
                 "cover, note"},
                {"roles.csv", "note\n", "\n",
                 "roles.csv:1: column 4: has no name in the first line; name it, or take out its comma"}));
}
END_TEST

START_TEST(a_column_given_twice_is_told)
{
    changes_expected(
        CHANGES({"roles.csv", "note\n", "cover\n",
                 "roles.csv:1: cover: stands twice in the first line; a column may be there only once"}));
}
END_TEST

START_TEST(a_required_column_left_out_is_told_once_and_its_rows_are_not)
{
    good_sheets_put();
    sheet_put("measures.csv",
              "performer,taken_on,value\nInes Varga,2027-02-03,92.5 cm\nInes Varga,2027-02-03,1 cm\n");
    fault_expected(
        "measures.csv:1: measure: is missing from the first line; this sheet must have that column");
}
END_TEST

START_TEST(a_sheet_without_its_names_is_the_only_fault_though_others_refer_to_it)
{
    good_sheets_put();
    sheet_put("pieces.csv", "costumes,title\n4A,Shirt\n");
    fault_expected("pieces.csv:1: piece: is missing from the first line; this sheet must have that column");
    good_sheets_put();
    sheet_put("steps.csv", "piece,title,kind,minutes\n4A-1,Shirt,cut,5\n");
    fault_expected("steps.csv:1: step: is missing from the first line; this sheet must have that column");
}
END_TEST

START_TEST(a_faulty_cell_of_the_first_line_is_told_by_its_place)
{
    changes_expected(
        CHANGES({"roles.csv", "cover", "co\xFFver",
                 "roles.csv:1: column 3: is not UTF-8 (byte 0xFF); save the file anew as CSV in UTF-8"},
                {"roles.csv", "cover", "\"cover",
                 "roles.csv:1: column 3: opens a double quote that is never closed; what follows could not "
                 "be read: close it, or write a quote within a text twice"}));
}
END_TEST

START_TEST(a_row_with_too_few_cells_is_told_at_the_first_that_is_missing)
{
    changes_expected(CHANGES({"away.csv", "2027-03-07,on tour", "2027-03-07",
                              "away.csv:2: reason: the row ends before this column, after 3 of 4 cells; "
                              "write a comma for each empty cell too"},
                             {"needs.csv", "4A-1,sew,hooks,3", "4A-1",
                              "needs.csv:3: step: the row ends before this column, after 1 of 4 cells; write "
                              "a comma for each empty cell too"}));
}
END_TEST

START_TEST(the_cells_that_a_short_row_has_are_checked)
{
    good_sheets_put();
    sheet_change("away.csv", "2027-03-01,2027-03-07,on tour", "soon,2027-03-07");
    faults_expected(SENTENCES(
        "away.csv:2: from: \"soon\" is no day; write YYYY-MM-DD, such as 2027-02-28",
        "away.csv:2: reason: the row ends before this column, after 3 of 4 cells; write a comma for "
        "each empty cell too"));
}
END_TEST

START_TEST(a_row_with_too_many_cells_is_told_at_the_last_column)
{
    changes_expected(
        CHANGES({"away.csv", "on tour", "on tour, in the north",
                 "away.csv:2: reason: the row has 5 cells, but the first line names 4 columns; put a text "
                 "that has commas in double quotes, and write a decimal comma as a point"},
                {"away.csv", "on tour", "on tour,,",
                 "away.csv:2: reason: the row has 6 cells, but the first line names 4 columns; take out the "
                 "commas at its end"},
                {"performers.csv", "Ines Varga,stage door,60,", "Ines Varga,stage door, left,sixty,",
                 "performers.csv:2: note: the row has 5 cells, but the first line names 4 columns; put a "
                 "text that has commas in double quotes, and write a decimal comma as a point"}));
}
END_TEST

START_TEST(a_row_of_nothing_but_commas_is_passed_over)
{
    good_sheets_put();
    sheet_change("measures.csv", "93 cm,,\n", "93 cm,,\n,,,,,\n");
    no_fault_expected();
}
END_TEST

START_TEST(a_file_of_another_form_is_told_once_with_what_to_do)
{
    good_sheets_put();
    sheet_put("roles.csv", "role;performer\nThe Miller;Ines Varga\n");
    fault_expected(
        "roles.csv:1: sheet: the cells are separated by semicolons; save the file anew with commas between "
        "them");
    good_sheets_put();
    sheet_put("dates.csv", "what\ton\nparade\t2027-04-01\n");
    fault_expected(
        "dates.csv:1: sheet: the cells are separated by tabs; save the file anew with commas between them");
    good_sheets_put();
    bk_test_write(bk_test_path("needs.csv"), "\xff\xfep\0i\0", 6);
    fault_expected(
        "needs.csv:1: sheet: is Unicode of another sort (UTF-16); save the file anew as CSV in UTF-8");
}
END_TEST

START_TEST(bytes_that_are_no_utf_8_are_told_at_their_cell)
{
    changes_expected(
        CHANGES({"roles.csv", "dances in act two", "dans\xE9",
                 "roles.csv:2: note: is not UTF-8 (byte 0xE9); save the file anew as CSV in UTF-8"}));
}
END_TEST

START_TEST(a_nul_byte_is_told_at_its_cell)
{
    static const char file[] = "role,performer\nThe Miller,Ines\0Varga\nThe Fox,\n";
    good_sheets_put();
    bk_test_write(bk_test_path("roles.csv"), file, sizeof file - 1);
    fault_expected("roles.csv:2: performer: holds a NUL byte, which no text has; type the cell anew");
}
END_TEST

START_TEST(a_cell_of_a_megabyte_is_told)
{
    bk_buffer file = {0};
    good_sheets_put();
    bk_buffer_text(&file, "role,note\nThe Miller,\"");
    for (int i = 0; i < 1000000; i++)
        bk_buffer_char(&file, i % 80 == 79 ? '\n' : 'x');
    bk_buffer_text(&file, "\"\nThe Fox,\n");
    sheet_put("roles.csv", file.bytes);
    bk_buffer_free(&file);
    fault_expected("roles.csv:2: note: is larger than 65536 bytes; a cell holds a few lines at most");
}
END_TEST

START_TEST(a_quote_never_closed_is_told_where_its_row_begins)
{
    changes_expected(CHANGES({"roles.csv", "Ines Varga", "\"Ines Varga",
                              "roles.csv:2: performer: opens a double quote that is never closed; what "
                              "follows could not be read: close it, or write a quote within a text twice"},
                             {"roles.csv", "The Fox", "\"The Fox",
                              "roles.csv:3: role: opens a double quote that is never closed; what follows "
                              "could not be read: close it, or write a quote within a text twice"}));
}
END_TEST

START_TEST(quotes_in_the_wrong_place_are_told_with_the_way_to_write_them)
{
    changes_expected(CHANGES({"roles.csv", "dances in act two", "a 2\" hem",
                              "roles.csv:2: note: has a double quote inside; put the whole cell in double "
                              "quotes and write that quote twice, such as \"a 2\"\" hem\""},
                             {"roles.csv", "dances in act two", "\"dances\" in act two",
                              "roles.csv:2: note: goes on behind its closing double quote; put the whole "
                              "cell in double quotes, and write a quote within the text twice"}));
}
END_TEST

START_TEST(a_faulty_cell_of_an_unknown_column_is_told_as_well)
{
    good_sheets_put();
    sheet_put("roles.csv", "role,colour\nThe Miller,r\xE9"
                           "d\nThe Fox,\n");
    faults_expected(SENTENCES(
        "roles.csv:1: colour: there is no column of this name; the columns are role, performer, cover, note",
        "roles.csv:2: colour: is not UTF-8 (byte 0xE9); save the file anew as CSV in UTF-8"));
}
END_TEST

START_TEST(empty_lines_and_lines_within_a_cell_take_no_room_for_rows)
{
    enum { LINES = 500000, MOST_BYTES = 4000000 };
    good_sheets_put();
    bk_buffer text = {0};
    bk_buffer_text(&text, good_sheets[BK_SHEET_STEPS]);
    for (int i = 0; i < LINES; i++)
        bk_buffer_text(&text, "\r\n");
    sheet_put("steps.csv", text.bytes);
    bk_buffer_free(&text);
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_msg(read.status == BK_OK, "%s", read.error.text);
    ck_assert_uint_lt(bk_arena_size(read.folder->arena), MOST_BYTES);
    reading_free(&read);
}
END_TEST

BK_TEST_MAIN("sheet read", a_sound_production_has_no_fault,
             a_folder_that_is_not_there_is_refused_with_its_name, a_file_in_place_of_the_folder_is_refused,
             the_number_of_faults_is_the_error, a_missing_production_sheet_is_told,
             an_empty_file_is_told_with_the_columns_it_must_have,
             an_empty_sheet_is_the_only_fault_though_others_refer_to_it,
             a_sheet_of_another_name_is_told_with_the_one_that_is_meant,
             a_sheet_in_capital_letters_is_told_with_its_right_name,
             other_files_and_hidden_ones_are_passed_over, a_sheet_that_is_a_folder_is_told,
             a_sheet_that_cannot_be_opened_is_told_with_the_reason,
             a_sheet_of_more_than_a_gigabyte_is_not_read,
             an_unknown_column_is_told_with_the_one_that_is_meant, a_column_given_twice_is_told,
             a_required_column_left_out_is_told_once_and_its_rows_are_not,
             a_sheet_without_its_names_is_the_only_fault_though_others_refer_to_it,
             a_faulty_cell_of_the_first_line_is_told_by_its_place,
             a_row_with_too_few_cells_is_told_at_the_first_that_is_missing,
             the_cells_that_a_short_row_has_are_checked, a_row_with_too_many_cells_is_told_at_the_last_column,
             a_row_of_nothing_but_commas_is_passed_over, a_file_of_another_form_is_told_once_with_what_to_do,
             bytes_that_are_no_utf_8_are_told_at_their_cell, a_nul_byte_is_told_at_its_cell,
             a_cell_of_a_megabyte_is_told, a_quote_never_closed_is_told_where_its_row_begins,
             quotes_in_the_wrong_place_are_told_with_the_way_to_write_them,
             a_faulty_cell_of_an_unknown_column_is_told_as_well,
             empty_lines_and_lines_within_a_cell_take_no_room_for_rows)
