// Options, commands, help and exit statuses: the words in front of everything else.

#include <stdio.h>

#include "cmd/sheets.h"

START_TEST(options_stand_before_or_after_the_command)
{
    show_import();
    const char *behind = bodkin("rail", "--json", "--today", "2027-03-05").output;
    expect_words(behind, "\"today\": \"2027-03-05\"");
    ck_assert_str_eq(bodkin("--today", "2027-03-05", "--json", "rail").output, behind);
    ck_assert_str_eq(bodkin("--json", "rail", "--today=2027-03-05").output, behind);
    ck_assert_str_eq(
        bodkin_with(OPTIONS(.variable = "POSIXLY_CORRECT=1"), "rail", "--json", "--today", "2027-03-05")
            .output,
        behind);
}
END_TEST

START_TEST(options_may_stand_between_a_command_and_its_folder)
{
    const char *show = sheets_put("show");
    bk_program_must(bodkin("import", "--name", "Ada", show), 0);
    bk_program_must(bodkin("import", show, "--replace", "--name", "Bo"), 0);
    ck_assert_str_eq(bk_ask("SELECT made_by FROM daybook ORDER BY id"), "Ada\nBo");
    bk_program_must(bodkin("export", "--", path_in("show", "--out")), 0);
}
END_TEST

enum { SENTENCE_ROOM = 200 };

typedef struct misuse {
    const char *words[3];
    const char *sentence;
} misuse;

static const misuse misuses[] = {
    {{"rial"}, "There is no command \"rial\"; did you mean rail; see bodkin --help."},
    {{"embroider"}, "There is no command \"embroider\"; see bodkin --help."},
    {{"rail", "--jsn"}, "There is no option --jsn; did you mean --json; see bodkin --help."},
    {{"rail", "--tody=2027-03-02"}, "There is no option --tody; did you mean --today; see bodkin --help."},
    {{"rail", "--embroidery"}, "There is no option --embroidery; see bodkin --help."},
    {{"-jq", "rail"}, "There is no option -j; see bodkin --help."},
    {{"rail", "--json=yes"}, "--json takes no value; see bodkin --help."},
    {{"rail", "--production"}, "--production wants a value; see bodkin --help."},
    {{"rail", "--as", "queen"}, "--as wants maker, director or volunteer, not \"queen\"."},
    {{"rail", "--name", ""}, "--name wants a name."},
    {{"rail", "--store", ""}, "--store wants the name of a file."},
    {{"rail", "--today", "2027-02-30"}, "--today wants a day such as 2027-03-02, not \"2027-02-30\"."},
    {{"rail", "4A"}, "It is called so: bodkin rail"},
    {{"import"}, "It is called so: bodkin import DIR"},
    {{"export", "one", "two"}, "It is called so: bodkin export DIR"},
    {{"rail", "--replace"}, "--replace does not go with bodkin rail."},
    {{"check", "--json"}, "--json does not go with bodkin check."},
    {{"--json"}, "--json does not go with bodkin alone."},
};

static void expect_misuse(const misuse *one)
{
    const char *words[4] = {one->words[0], one->words[1], one->words[2], NULL};
    bk_program_end end = bk_program_must(bk_program_call(OPTIONS(.store = NULL), words), 2);
    ck_assert_str_eq(end.output, "");
    char expected[SENTENCE_ROOM];
    snprintf(expected, sizeof expected, "bodkin: %s\n", one->sentence);
    ck_assert_str_eq(end.trouble, expected);
}

START_TEST(wrong_usage_ends_with_2_and_says_what_would_be_right)
{
    for (size_t i = 0; i < sizeof misuses / sizeof *misuses; i++)
        expect_misuse(&misuses[i]);
}
END_TEST

START_TEST(a_bad_day_in_the_surroundings_is_wrong_usage_too)
{
    show_import();
    bk_program_end end = bk_program_must(bodkin_with(OPTIONS(.today = "2027-3-2"), "rail"), 2);
    ck_assert_str_eq(end.trouble, "bodkin: BODKIN_TODAY wants a day such as 2027-03-02, not \"2027-3-2\".\n");
    bk_program_must(bodkin_with(OPTIONS(.today = "2027-3-2"), "rail", "--today", "2027-03-02"), 0);
}
END_TEST

START_TEST(the_screens_without_a_terminal_point_to_the_rail)
{
    bk_program_end end = bk_program_must(bk_program_call(OPTIONS(.store = NULL), ARGUMENTS(NULL)), 2);
    ck_assert_str_eq(end.trouble,
                     "bodkin: The screens need a terminal; to print the rail, use: bodkin rail\n");
}
END_TEST

START_TEST(help_and_version_are_told_without_a_store)
{
    const char *help = bk_program_must(bodkin("--help"), 0).output;
    static const char *const commands[] = {
        "rail", "import DIR", "export DIR", "tick PIECE/STEP", "untick PIECE/STEP",
        "undo", "redo",       "daybook",    "check",           "backup FILE"};
    for (size_t i = 0; i < sizeof commands / sizeof *commands; i++)
        expect_words(help, commands[i]);
    static const char *const options[] = {"--store", "--production", "--today",   "--as",
                                          "--name",  "--json",       "--version", "--help"};
    for (size_t i = 0; i < sizeof options / sizeof *options; i++)
        expect_words(help, options[i]);
    expect_words(help, "0 done, 1 refused or faulty input, 2 wrong usage, 3 the store could not be used");
    ck_assert_str_eq(bk_program_must(bodkin("-h"), 0).output, help);
    expect_words(bk_program_must(bodkin("--help", "import"), 0).output, "--replace");
    expect_words(bk_program_must(bodkin("import", "--help"), 0).output, "Usage: bodkin import DIR [OPTIONS]");
    ck_assert_str_eq(bk_program_must(bodkin("--version"), 0).output, "bodkin " BK_VERSION "\n");
    ck_assert_str_eq(bk_shell("ls"), "");
}
END_TEST

START_TEST(help_is_no_wider_than_a_common_terminal)
{
    ck_assert_str_eq(bodkin("--help", "rail").trouble, "");
    bk_test_write_text(bk_test_path("help"), bodkin("--help").output);
    ck_assert_str_eq(bk_shell("awk 'length > 120' help"), "");
}
END_TEST

START_TEST(help_that_cannot_be_written_is_told)
{
    bk_program_end end = bk_program_must(bodkin_with(OPTIONS(.output = "/dev/full"), "--help"), 1);
    ck_assert_str_eq(end.trouble, "bodkin: The output could not be written (No space left on device).\n");
    bk_program_must(bodkin_with(OPTIONS(.output = "/dev/full"), "--version"), 1);
}
END_TEST

START_TEST(what_is_said_holds_no_escape_codes_and_is_ascii_in_a_c_locale)
{
    bk_program_end end = bk_program_must(bodkin("\x1b[31mred"), 2);
    expect_words(end.trouble, "·[31mred");
    expect_no_words(end.trouble, "\x1b");
    end =
        bk_program_must(bodkin_with(OPTIONS(.locale = "C"), "rail", "--store", bk_test_path("Krämer.db")), 3);
    expect_words(end.trouble, "Kramer.db");
    ck_assert_uint_eq(odd_bytes(end.trouble), 0);
}
END_TEST

BK_TEST_MAIN("command", options_stand_before_or_after_the_command,
             options_may_stand_between_a_command_and_its_folder,
             wrong_usage_ends_with_2_and_says_what_would_be_right,
             a_bad_day_in_the_surroundings_is_wrong_usage_too,
             the_screens_without_a_terminal_point_to_the_rail, help_and_version_are_told_without_a_store,
             help_is_no_wider_than_a_common_terminal, help_that_cannot_be_written_is_told,
             what_is_said_holds_no_escape_codes_and_is_ascii_in_a_c_locale)
