// Every fault that a folder of sheets can have, through the real program: what a volunteer reads, and that
// nothing is written.

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cmd/sheets.h"

enum { LARGE = 1 << 20, SENTENCE_ROOM = 600 };

/// Takes the folder "show" in and demands these lines, the count of the faults, and that no store is made.
static void expect_faults(const char *lines, const char *count)
{
    char expected[2 * SENTENCE_ROOM];
    snprintf(expected, sizeof expected, "%sbodkin: %s found in the sheets of %s; nothing was changed\n",
             lines, count, bk_test_path("show"));
    bk_program_end end = bk_program_must(bodkin("import", bk_test_path("show")), 1);
    ck_assert_str_eq(end.trouble, expected);
    ck_assert_str_eq(end.output, "");
    ck_assert_str_eq(bk_shell("ls"), "show");
}

typedef struct fault {
    const char *file, *from, *to;
    const char *sentence; ///< behind the name of the file
} fault;

static void expect_each(const fault *faults, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        char line[SENTENCE_ROOM];
        sheets_put("show");
        sheet_change("show", faults[i].file, faults[i].from, faults[i].to);
        snprintf(line, sizeof line, "%s:%s\n", faults[i].file, faults[i].sentence);
        expect_faults(line, "1 fault was");
    }
}

static const fault headers[] = {
    {"roles.csv", "role,performer,cover", "role,performer,dresser",
     "1: dresser: there is no column of this name; the columns are role, performer, cover, note"},
    {"performers.csv", "note", "notes", "1: notes: there is no column of this name; did you mean note?"},
    {"roles.csv", "performer,cover", "performer,role",
     "1: role: stands twice in the first line; a column may be there only once"},
};

START_TEST(a_wrong_first_line)
{
    expect_each(headers, sizeof headers / sizeof *headers);
    sheets_put("show");
    sheet_change("show", "roles.csv", "role,performer", "rolle,performer");
    expect_faults("roles.csv:1: role: is missing from the first line; this sheet must have that column\n"
                  "roles.csv:1: rolle: there is no column of this name; did you mean role?\n",
                  "2 faults were");
}
END_TEST

static const fault cells[] = {
    {"steps.csv", "cut the bodice", "", "2: title: is empty; every row must have one, such as Cut the linen"},
    {"steps.csv", "press,15,\n", "press\n",
     "5: minutes: the row ends before this column, after 4 of 6 cells; write a comma for each empty cell "
     "too"},
    {"production.csv", "2027-06-04", "2027-02-30",
     "2: opens: \"2027-02-30\" is no day of the calendar; write YYYY-MM-DD, such as 2027-02-28"},
    {"production.csv", "2027-06-04", "4/6/2027",
     "2: opens: \"4/6/2027\" is no day; write YYYY-MM-DD, such as 2027-02-28"},
    {"measures.csv", "71.3 cm", "\"92,5\"",
     "2: value: \"92,5\" has a decimal comma and no unit; write 92.5 cm or 36 3/8 in"},
    {"measures.csv", "71.3 cm", "92.5", "2: value: \"92.5\" has no unit; write 92.5 cm or 36 3/8 in"},
    {"steps.csv", "75", "-75", "2: minutes: \"-75\" is below zero; write minutes such as 45"},
    {"steps.csv", "press,15", "iron,15",
     "5: kind: \"iron\" is no kind of step; write source, draft, cut, tack, machine, press, fit, hand, craft "
     "or dye"},
};

START_TEST(a_cell_that_is_missing_or_wrong)
{
    expect_each(cells, sizeof cells / sizeof *cells);
}
END_TEST

static const fault names[] = {
    {"roles.csv", "Ines Varga", "Inez Varga",
     "2: performer: no performer is called \"Inez Varga\" in performers.csv; did you mean \"Ines Varga\"?"},
    {"costumes.csv", "2A,The Boy", "2A,The Bay",
     "4: role: no role is called \"The Bay\" in roles.csv; did you mean \"The Boy\"?"},
    {"steps.csv", "120,cut", "120,cutt",
     "3: after: piece \"1A-1\" has no step \"cutt\"; did you mean \"cut\"?"},
    {"needs.csv", "1A-1,cut", "1A-1,trim",
     "2: step: piece \"1A-1\" has no step \"trim\"; write the key of one of its steps in steps.csv"},
    {"steps.csv", "75,", "75,fit",
     "2: after: these steps come after one another in a circle: 1A-1/cut -> 1A-1/sew -> 1A-1/fit -> "
     "1A-1/cut; take "
     "one of them out of the after of the next"},
    {"steps.csv", "75,", "75,cut",
     "2: after: this step comes after itself: 1A-1/cut -> 1A-1/cut; take it out of its own after"},
    {"work_steps.csv", "120,cut", "120,cutt",
     "3: after: the order of work \"Smock\" has no step \"cutt\"; did you mean \"cut\"?"},
    {"work_steps.csv", "45,", "45,sew",
     "2: after: these steps come after one another in a circle: cut -> sew -> cut; take one of them out of "
     "the after of the next"},
    {"notes.csv", "1A-1,sew", ",sew",
     "2: step: \"sew\" is a step without its piece; write the piece too, in piece"},
    {"costumes.csv", "2A,", "1A,",
     "4: costume: \"1A\" stands on line 2 already; take one of the two out, or change one"},
};

START_TEST(a_name_that_is_unknown_or_used_twice_and_steps_in_a_circle)
{
    expect_each(names, sizeof names / sizeof *names);
    sheets_put("show");
    sheet_change("show", "steps.csv", "sew;1B-1/press", "sew");
    sheet_change("show", "steps.csv", "1B-1,press,", "7C-9,press,");
    expect_faults("steps.csv:5: piece: no piece is called \"7C-9\" in pieces.csv; add a row there, or write "
                  "a name that "
                  "stands there\n",
                  "1 fault was");
}
END_TEST

START_TEST(bytes_that_are_no_text)
{
    static const fault bytes[] = {
        {"dates.csv", "parade,2027-05-30", "parade,2027-05-30\nclosing,2027-06-\xf6",
         "3: on: is not UTF-8 (byte 0xF6); save the file anew as CSV in UTF-8"},
        {"performers.csv", "no wool", "\"no wool",
         "2: note: opens a double quote that is never closed; what follows could not be read: close it, or "
         "write a "
         "quote within a text twice"},
        {"performers.csv", "no wool", "5\" heels",
         "2: note: has a double quote inside; put the whole cell in double quotes and write that quote "
         "twice, such as "
         "\"a 2\"\" hem\""},
    };
    expect_each(bytes, sizeof bytes / sizeof *bytes);
    static const char nul[] = "what,on,note\nparade,2027-05-30,on\0stage\n";
    sheets_put("show");
    sheet_write_bytes("show", "dates.csv", nul, sizeof nul - 1);
    expect_faults("dates.csv:2: note: holds a NUL byte, which no text has; type the cell anew\n",
                  "1 fault was");
}
END_TEST

START_TEST(a_cell_of_a_megabyte)
{
    char *large = malloc(LARGE);
    ck_assert_ptr_nonnull(large);
    memset(large, 'x', LARGE - 1);
    large[LARGE - 1] = '\0';
    sheets_put("show");
    sheet_change("show", "performers.csv", "no wool", large);
    expect_faults("performers.csv:2: note: is larger than 65536 bytes; a cell holds a few lines at most\n",
                  "1 fault was");
    free(large);
}
END_TEST

START_TEST(files_that_are_empty_missing_or_no_sheets)
{
    sheets_put("show");
    sheet_write("show", "needs.csv", "");
    expect_faults(
        "needs.csv:1: sheet: the file is empty; its first line must name its columns: piece, step, material, "
        "quantity\n",
        "1 fault was");
    sheets_put("show");
    sheet_remove("show", "production.csv");
    expect_faults(
        "production.csv:1: sheet: the file is missing; it must name the production and the day it opens\n",
        "1 fault was");
    sheets_put("show");
    sheet_write("show", "piece.csv", "piece\n");
    expect_faults("piece.csv:1: sheet: there is no sheet of this name; did you mean pieces.csv?\n",
                  "1 fault was");
}
END_TEST

START_TEST(a_folder_that_is_not_there)
{
    char expected[SENTENCE_ROOM];
    snprintf(expected, sizeof expected,
             "bodkin: there is no folder %s; give the folder that holds the sheets\n",
             bk_test_path("nowhere"));
    ck_assert_str_eq(bk_program_must(bodkin("import", bk_test_path("nowhere")), 1).trouble, expected);
    bk_test_write_text(bk_test_path("file"), "");
    snprintf(expected, sizeof expected, "bodkin: %s is not a folder; give the folder that holds the sheets\n",
             bk_test_path("file"));
    ck_assert_str_eq(bk_program_must(bodkin("import", bk_test_path("file")), 1).trouble, expected);
    ck_assert_str_eq(bk_shell("ls"), "file");
}
END_TEST

// ---------------------------------------------------------------------------------------------- many at once

START_TEST(all_faults_are_told_in_one_go_in_the_order_of_the_files)
{
    sheets_put("show");
    sheet_change("show", "production.csv", "GBP", "pounds");
    sheet_change("show", "roles.csv", "Tomas Lind", "Thomas Lind");
    sheet_change("show", "steps.csv", "75", "soon");
    sheet_change("show", "fittings.csv", "2027-03-15T10:00", "Monday");
    const char *told = bk_program_must(bodkin("import", bk_test_path("show")), 1).trouble;
    const char *last = told;
    static const char *const begins[] = {
        "production.csv:2: currency: ", "\nroles.csv:2: cover: ", "\nsteps.csv:2: minutes: ",
        "\nfittings.csv:2: booked_at: ", "\nbodkin: 4 faults were found"};
    for (size_t i = 0; i < sizeof begins / sizeof *begins; i++) {
        last = strstr(last, begins[i]);
        ck_assert_msg(last != NULL, "\"%s\" is missing or out of order in: %s", begins[i], told);
    }
}
END_TEST

static void put_many_faults(size_t count)
{
    char steps[4096] = "piece,step,title,kind,minutes\n";
    sheets_put("show");
    sheet_remove("show", "needs.csv");
    sheet_remove("show", "fittings.csv");
    sheet_remove("show", "notes.csv");
    for (size_t i = 0; i < count; i++)
        snprintf(steps + strlen(steps), sizeof steps - strlen(steps), "1A-1,s%zu,sew,machine,-1\n", i);
    sheet_write("show", "steps.csv", steps);
}

static size_t lines_of(const char *text)
{
    size_t lines = 0;
    for (; *text != '\0'; text++)
        lines += *text == '\n';
    return lines;
}

START_TEST(twenty_faults_are_told_and_the_others_counted)
{
    put_many_faults(20);
    const char *told = bk_program_must(bodkin("import", bk_test_path("show")), 1).trouble;
    ck_assert_uint_eq(lines_of(told), 21);
    expect_no_words(told, "more");
    put_many_faults(23);
    told = bk_program_must(bodkin("import", bk_test_path("show")), 1).trouble;
    ck_assert_uint_eq(lines_of(told), 22);
    expect_words(told,
                 "\nsteps.csv:21: minutes: \"-1\" is below zero; write minutes such as 45\n... and 3 more.\n"
                 "bodkin: 23 faults were found");
}
END_TEST

START_TEST(a_fault_leaves_a_store_as_it_was_to_the_byte)
{
    show_import();
    bk_shell("cp workroom.db before");
    sheet_change("show", "production.csv", "The Salt Road", "Another Road");
    sheet_change("show", "steps.csv", "75", "-75");
    bk_program_must(bodkin("import", bk_test_path("show")), 1);
    bk_program_must(bodkin("import", bk_test_path("show"), "--replace"), 1);
    bk_shell("cmp workroom.db before");
    ck_assert_str_eq(bk_shell("ls"), "before\nshow\nworkroom.db");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), "1");
}
END_TEST

START_TEST(names_of_any_script_in_a_fault_are_safe_and_ascii_where_the_locale_is)
{
    sheets_put("show");
    sheet_change("show", "roles.csv", "Ines Varga", "In\xc3\xa9s \x1b[31m\xe2\x80\xae Varga");
    const char *told = bk_program_must(bodkin("import", bk_test_path("show")), 1).trouble;
    expect_words(told, "\"In\xc3\xa9s \xc2\xb7[31m\xc2\xb7 Varga\"");
    told = bk_program_must(bodkin_with(OPTIONS(.locale = "C"), "import", bk_test_path("show")), 1).trouble;
    expect_words(told, "\"Ines ?[31m? Varga\"");
    ck_assert_uint_eq(odd_bytes(told), 0);
}
END_TEST

BK_TEST_MAIN("faults", a_wrong_first_line, a_cell_that_is_missing_or_wrong,
             a_name_that_is_unknown_or_used_twice_and_steps_in_a_circle, bytes_that_are_no_text,
             a_cell_of_a_megabyte, files_that_are_empty_missing_or_no_sheets, a_folder_that_is_not_there,
             all_faults_are_told_in_one_go_in_the_order_of_the_files,
             twenty_faults_are_told_and_the_others_counted, a_fault_leaves_a_store_as_it_was_to_the_byte,
             names_of_any_script_in_a_fault_are_safe_and_ascii_where_the_locale_is)
