// `bodkin measures --check`.

#include <string.h>

#include "cmd/sheets.h"

static const char *const sound = "performer,taken_on,measure,value\n"
                                 "Ines Varga,2027-02-03,height,165 cm\n"
                                 "Ines Varga,2027-02-03,bust girth,92 cm\n"
                                 "Ines Varga,2027-02-03,waist girth,74.5 cm\n"
                                 "Ines Varga,2027-02-03,hip girth,99 cm\n";

static const char *const doubtful = "performer,taken_on,measure,value\n"
                                    "Tomas Lind,2027-02-03,head girth,58 cm\n"
                                    "Ines Varga,2027-02-03,height,165 cm\n"
                                    "Ines Varga,2027-02-03,bust girth,92 cm\n"
                                    "Ines Varga,2027-02-03,waist girth,29.3 cm\n"
                                    "Ines Varga,2027-02-03,hip girth,990 cm\n"
                                    "Ines Varga,2026-02-03,arm length,62 cm\n"
                                    "Ines Varga,2027-02-03,arm length,55 cm\n"
                                    "Tomas Lind,2027-02-03,reach,58 cm\n";

static void import_measures(const char *measures)
{
    sheets_put("show");
    sheet_write("show", "measures.csv", measures);
    bk_program_must(bodkin("import", bk_test_path("show")), 0);
}

START_TEST(sound_measures_are_said_to_be_so)
{
    import_measures(sound);
    bk_program_end end = bk_program_must(bodkin("measures", "--check"), 0);
    ck_assert_str_eq(end.output, "No measure looks wrong.\n");
    ck_assert_str_eq(end.trouble, "");
    ck_assert_str_eq(bk_program_must(bodkin("measures", "--check", "--json"), 0).output, "[]\n");
}
END_TEST

START_TEST(each_doubt_is_a_line_with_who_when_and_what)
{
    import_measures(doubtful);
    bk_program_end end = bk_program_must(bodkin("--check", "measures"), 0);
    const char *waist =
        "Ines Varga, 2027-02-03: waist girth: 29.3 cm looks like inches taken for centimetres: 74.4 cm "
        "would go with the other measures (about ";
    ck_assert_msg(!strncmp(end.output, waist, strlen(waist)), "%s", end.output);
    expect_words(
        end.output,
        "\nInes Varga, 2027-02-03: hip girth: 990 cm looks like a decimal point left out: 99 cm would ");
    expect_words(end.output,
                 "\nInes Varga, 2027-02-03: arm length: 55 cm is 7 cm less than on the last sheet (62 cm); ");
    expect_no_words(end.output, "Tomas");
    expect_no_words(end.output, "2026");
    ck_assert_str_eq(end.trouble, "");
}
END_TEST

START_TEST(programs_get_a_list)
{
    import_measures(doubtful);
    const char *list = bk_program_must(bodkin("measures", "--check", "--json"), 0).output;
    const char *first = "[\n  {\n    \"performer\": \"Ines Varga\",\n    \"taken_on\": \"2027-02-03\",\n"
                        "    \"measure\": \"waist girth\",\n    \"says\": \"29.3 cm looks like inches";
    ck_assert_msg(!strncmp(list, first, strlen(first)), "%s", list);
    expect_words(list, "\"measure\": \"arm length\"");
}
END_TEST

START_TEST(a_sheet_taken_in_inches_is_told_in_inches)
{
    import_measures("performer,taken_on,measure,value\n"
                    "Ines Varga,2027-02-03,height,65 in\n"
                    "Ines Varga,2027-02-03,bust girth,36 1/4 in\n"
                    "Ines Varga,2027-02-03,waist girth,74.5 in\n"
                    "Ines Varga,2027-02-03,hip girth,39 in\n");
    expect_words(bk_program_must(bodkin("measures", "--check"), 0).output,
                 "waist girth: 74 1/2 in looks like centimetres taken for inches: 29.33 in would go with");
}
END_TEST

START_TEST(a_name_cannot_play_tricks_with_the_terminal)
{
    import_measures(doubtful);
    bk_ask("UPDATE performer SET name = 'In' || char(27) || '[2J' || char(10) || 'es' WHERE name = 'Ines "
           "Varga'");
    const char *output = bk_program_must(bodkin("measures", "--check"), 0).output;
    expect_no_words(output, "\x1b");
    expect_no_words(output, "\nes");
}
END_TEST

START_TEST(only_the_maker_sees_measures)
{
    import_measures(doubtful);
    static const char *const others[] = {"director", "volunteer"};
    for (size_t i = 0; i < sizeof others / sizeof *others; i++) {
        bk_program_end end = bk_program_must(bodkin("measures", "--check", "--as", others[i]), 1);
        ck_assert_str_eq(end.output, "");
        ck_assert_str_eq(end.trouble, "bodkin: Only the maker sees measures; leave out --as.\n");
    }
}
END_TEST

START_TEST(what_is_wanted_of_the_measures_must_be_said)
{
    import_measures(sound);
    expect_words(bk_program_must(bodkin("measures"), 2).trouble, "It is called so: bodkin measures --check");
    expect_words(bk_program_must(bodkin("rail", "--check"), 2).trouble,
                 "--check does not go with bodkin rail.");
    bk_program_must(bodkin("measures", "--check", "waist"), 2);
}
END_TEST

START_TEST(nothing_is_changed)
{
    import_measures(doubtful);
    const char *before = bk_records();
    bk_program_must(bodkin("measures", "--check"), 0);
    ck_assert_str_eq(bk_records(), before);
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), "1");
}
END_TEST

BK_TEST_MAIN("measures", sound_measures_are_said_to_be_so, each_doubt_is_a_line_with_who_when_and_what,
             programs_get_a_list, a_sheet_taken_in_inches_is_told_in_inches,
             a_name_cannot_play_tricks_with_the_terminal, only_the_maker_sees_measures,
             what_is_wanted_of_the_measures_must_be_said, nothing_is_changed)
