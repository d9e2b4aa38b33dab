// What a command takes from the computer it runs on: where the store lies, which day it is, who is there, the
// output.

#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "cmd/sheets.h"

// -------------------------------------------------------------------------------------- where the store lies

static void expect_mode(const char *path, unsigned mode)
{
    struct stat status;
    ck_assert_msg(stat(path, &status) == 0, "%s is not there", path);
    ck_assert_uint_eq(status.st_mode & 0777U, mode);
}

START_TEST(the_usual_store_lies_with_the_data_of_the_person_and_is_theirs_alone)
{
    bk_program_must(bodkin_with(OPTIONS(.store = ""), "import", sheets_put("show")), 0);
    expect_mode(bk_test_path("data"), 0700);
    expect_mode(bk_test_path("data/bodkin"), 0700);
    expect_mode(bk_test_path("data/bodkin/workroom.db"), 0600);
    bk_program_must(bodkin_with(OPTIONS(.store = ""), "rail"), 0);
}
END_TEST

START_TEST(without_a_data_folder_it_lies_in_the_home_folder)
{
    static const char *const unusable[] = {"XDG_DATA_HOME=", "XDG_DATA_HOME=not/absolute"};
    sheets_put("show");
    for (size_t i = 0; i < sizeof unusable / sizeof *unusable; i++) {
        bk_program_must(bodkin_with(OPTIONS(.store = "", .variable = unusable[i]), "import",
                                    bk_test_path("show"), "--replace"),
                        0);
        expect_mode(bk_test_path("home/.local/share/bodkin"), 0700);
        expect_mode(bk_test_path("home/.local/share/bodkin/workroom.db"), 0600);
        ck_assert_int_eq(unlink(bk_test_path("home/.local/share/bodkin/workroom.db")), 0);
    }
}
END_TEST

START_TEST(a_store_that_is_named_comes_before_the_one_of_the_surroundings)
{
    sheets_put("show");
    bk_program_must(bodkin("import", bk_test_path("show"), "--store", bk_test_path("other.db")), 0);
    ck_assert_str_eq(bk_shell("ls"), "other.db\nshow");
    bk_program_must(bodkin("rail"), 3);
    bk_program_must(bodkin_with(OPTIONS(.store = bk_test_path("other.db")), "rail"), 0);
}
END_TEST

START_TEST(where_there_is_no_store_yet_the_way_to_one_is_said_and_none_is_made)
{
    static const char *const commands[] = {"rail", "check"};
    char expected[512];
    snprintf(expected, sizeof expected,
             "bodkin: There is no workroom at %s. \"bodkin import DIR\" makes one from a folder of sheets.\n",
             bk_program_store());
    for (size_t i = 0; i < sizeof commands / sizeof *commands; i++)
        ck_assert_str_eq(bk_program_must(bodkin(commands[i]), 3).trouble, expected);
    ck_assert_str_eq(bk_program_must(bodkin("export", bk_test_path("out")), 3).trouble, expected);
    ck_assert_str_eq(bk_program_must(bodkin("backup", bk_test_path("copy.db")), 3).trouble, expected);
    ck_assert_str_eq(bk_shell("ls -A -I .said"), "");
}
END_TEST

// ----------------------------------------------------------------------------------- files that are no store

/// Reading, and taking in, is refused, and not a byte of the file changes.
static void expect_foreign(const char *words)
{
    bk_shell("cp workroom.db before");
    expect_words(bk_program_must(bodkin("rail"), 3).trouble, words);
    expect_words(bk_program_must(bodkin("import", sheets_put("show")), 3).trouble, words);
    expect_words(bk_program_must(bodkin("check"), 3).trouble, words);
    bk_shell("cmp workroom.db before");
}

START_TEST(a_file_of_another_program_is_left_alone)
{
    bk_test_write_text(bk_program_store(), "a shopping list, longer than any header of a database would be: "
                                           "thread, needles, two metres of calico, chalk\n");
    expect_foreign("workroom.db");
    unlink(bk_program_store());
    bk_ask("PRAGMA application_id = 77; CREATE TABLE cows (name TEXT)");
    expect_foreign("is no workroom of Bodkin's. Name another file with --store.");
    unlink(bk_program_store());
    bk_ask("CREATE TABLE cows (name TEXT)");
    expect_foreign("is no workroom of Bodkin's. Name another file with --store.");
    unlink(bk_program_store());
    ck_assert_int_eq(mkdir(bk_program_store(), 0700), 0);
    expect_words(bk_program_must(bodkin("rail"), 3).trouble, "is no workroom of Bodkin's");
    expect_words(bk_program_must(bodkin("import", bk_test_path("show")), 3).trouble,
                 "is no workroom of Bodkin's");
}
END_TEST

START_TEST(a_store_of_a_newer_version_is_left_alone)
{
    show_import();
    bk_ask("PRAGMA user_version = 99");
    expect_foreign("was written by a newer Bodkin. Use that one.");
}
END_TEST

START_TEST(a_file_without_a_byte_becomes_a_store_only_when_the_sheets_have_no_fault)
{
    sheets_put("show");
    sheet_change("show", "steps.csv", "75", "-75");
    bk_test_write_text(bk_program_store(), "");
    bk_program_must(bodkin("import", bk_test_path("show")), 1);
    ck_assert_str_eq(bk_shell("wc -c <workroom.db"), "0");
    sheet_change("show", "steps.csv", "-75", "75");
    bk_program_must(bodkin("import", bk_test_path("show")), 0);
    expect_mode(bk_program_store(), 0600);
    bk_program_must(bodkin("rail"), 0);
}
END_TEST

// ---------------------------------------------------------------------------------------- day, clock, person

START_TEST(without_a_pinned_day_it_is_the_computers)
{
    show_import();
    char earlier[64];
    snprintf(earlier, sizeof earlier, "\"today\": \"%s\"", bk_shell("date +%F"));
    const char *json = bk_program_must(bodkin_with(OPTIONS(.today = ""), "rail", "--json"), 0).output;
    if (strstr(json, earlier) == NULL) // midnight has just passed
        snprintf(earlier, sizeof earlier, "\"today\": \"%s\"", bk_shell("date +%F"));
    expect_words(json, earlier);
}
END_TEST

START_TEST(the_daybook_has_the_moment_with_its_offset_and_who_it_was)
{
    bk_program_must(bodkin_with(OPTIONS(.variable = "TZ=XST-5:30"), "import", sheets_put("show")), 0);
    ck_assert_str_eq(
        bk_ask(
            "SELECT made_at GLOB '20[0-9][0-9]-[01][0-9]-[0-3][0-9]T[0-2][0-9]:[0-5][0-9]:[0-6][0-9]+05:30' "
            "FROM daybook"),
        "1");
    ck_assert_str_eq(bk_ask("SELECT made_by FROM daybook"), bk_shell("id -un"));
}
END_TEST

// ---------------------------------------------------------------------------------------------------- output

START_TEST(a_full_disk_behind_the_output_is_told)
{
    show_import();
    bk_program_end end = bk_program_must(bodkin_with(OPTIONS(.output = "/dev/full"), "rail"), 1);
    ck_assert_str_eq(end.trouble, "bodkin: The output could not be written (No space left on device).\n");
    end = bk_program_must(bodkin_with(OPTIONS(.output = "/dev/full"), "rail", "--json"), 1);
    ck_assert_str_eq(end.trouble, "bodkin: The output could not be written (No space left on device).\n");
    bk_program_must(bodkin_with(OPTIONS(.output = "/dev/full"), "check"), 1);
}
END_TEST

START_TEST(a_closed_output_is_told)
{
    show_import();
    bk_program_end end = bk_program_must(bodkin_with(OPTIONS(.output = ""), "rail"), 1);
    ck_assert_str_eq(end.trouble, "bodkin: The output could not be written (Bad file descriptor).\n");
}
END_TEST

START_TEST(an_import_whose_report_cannot_be_written_says_that_it_is_done)
{
    bk_program_end end =
        bk_program_must(bodkin_with(OPTIONS(.output = "/dev/full"), "import", sheets_put("show")), 1);
    ck_assert_str_eq(end.trouble,
                     "bodkin: The import is done, but could not be reported: The output could not be "
                     "written (No space left on device).\n");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), "1");
}
END_TEST

START_TEST(a_reader_that_went_away_is_no_trouble)
{
    show_import();
    bk_test_write_text(bk_test_path("job.py"),
                       "import os, subprocess\n"
                       "reading, writing = os.pipe()\n"
                       "os.close(reading)\n"
                       "end = subprocess.run(['" BK_TEST_PROGRAM "', 'rail', '--store', 'workroom.db'],\n"
                       "                     stdout=writing, stderr=subprocess.PIPE)\n"
                       "print(end.returncode, end.stderr.decode())\n");
    ck_assert_str_eq(bk_shell("python3 job.py"), "0 ");
}
END_TEST

BK_TEST_MAIN("surroundings", the_usual_store_lies_with_the_data_of_the_person_and_is_theirs_alone,
             without_a_data_folder_it_lies_in_the_home_folder,
             a_store_that_is_named_comes_before_the_one_of_the_surroundings,
             where_there_is_no_store_yet_the_way_to_one_is_said_and_none_is_made,
             a_file_of_another_program_is_left_alone, a_store_of_a_newer_version_is_left_alone,
             a_file_without_a_byte_becomes_a_store_only_when_the_sheets_have_no_fault,
             without_a_pinned_day_it_is_the_computers,
             the_daybook_has_the_moment_with_its_offset_and_who_it_was, a_full_disk_behind_the_output_is_told,
             a_closed_output_is_told, an_import_whose_report_cannot_be_written_says_that_it_is_done,
             a_reader_that_went_away_is_no_trouble)
