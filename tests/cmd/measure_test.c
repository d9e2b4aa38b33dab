// `bodkin measure`.

#include <string.h>

#include "cmd/sheets.h"

/// What the store has of Ines Varga on 2 Mar 2027, a line each.
static const char *measured(void)
{
    return bk_ask(
        "SELECT measure_name.name, value, coalesce(over, '-'), coalesce(taken_by, '-') FROM measure JOIN "
        "measure_sheet ON measure_sheet.id = sheet_id JOIN measure_name ON measure_name.id = name_id JOIN "
        "performer ON performer.id = performer_id WHERE performer.name = 'Ines Varga' AND taken_on = "
        "'2027-03-02' ORDER BY measure.position");
}

START_TEST(measures_are_saved_in_the_unit_of_the_production)
{
    show_import();
    bk_program_end end =
        bk_program_must(bodkin("measure", "Ines Varga", "waist girth=74,5", "hip girth=38 in", "height=1m65",
                               "Bust Girth=92", "--name", "Ada"),
                        0);
    ck_assert_str_eq(end.output, "Measured: Ines Varga, 4 measures.\n");
    ck_assert_str_eq(end.trouble, "");
    ck_assert_str_eq(measured(), "waist girth|745000|-|Ada\nhip girth|965200|-|Ada\nheight|1650000|-|Ada\n"
                                 "bust girth|920000|-|Ada");
}
END_TEST

START_TEST(a_production_in_inches_takes_inches)
{
    show_import();
    bk_ask("UPDATE production SET unit = 'in'");
    bk_program_must(bodkin("measure", "Ines Varga", "waist girth=29 3/8", "height=5' 5\"", "--production",
                           "The Salt Road", "--by", "Bo", "--over", "a corset"),
                    0);
    ck_assert_str_eq(measured(), "waist girth|746125|a corset|Bo\nheight|1651000|a corset|Bo");
}
END_TEST

START_TEST(a_day_can_be_named_but_not_one_to_come)
{
    show_import();
    bk_program_must(bodkin("measure", "--on", "2027-03-01", "Ines Varga", "waist girth=74.5"), 0);
    ck_assert_str_eq(bk_ask("SELECT max(taken_on) FROM measure_sheet"), "2027-03-01");
    bk_program_end end =
        bk_program_must(bodkin("measure", "--on", "2027-03-03", "Ines Varga", "waist girth=74.5"), 1);
    ck_assert_str_eq(end.trouble, "bodkin: A sheet cannot be taken on a day to come.\n");
}
END_TEST

START_TEST(a_correction_is_told_without_its_value)
{
    show_import();
    bk_program_must(bodkin("measure", "Ines Varga", "waist girth=74.5"), 0);
    bk_program_end end = bk_program_must(bodkin("measure", "Ines Varga", "waist girth=75.5"), 0);
    ck_assert_str_eq(end.output, "Corrected: waist girth of Ines Varga, 2 Mar.\n");
    end = bk_program_must(bodkin("measure", "Ines Varga", "waist girth=75.5"), 0);
    ck_assert_str_eq(end.output, "Nothing differs from what was saved.\n");
    end = bk_program_must(bodkin("undo"), 0);
    expect_words(end.output, "Corrected: waist girth of Ines Varga, 2 Mar");
    expect_words(measured(), "waist girth|745000|");
}
END_TEST

START_TEST(doubts_are_told_beside_and_the_sheet_is_saved)
{
    show_import();
    bk_program_end end = bk_program_must(
        bodkin("measure", "Ines Varga", "height=165", "bust girth=92", "waist girth=29.3", "hip girth=99"),
        0);
    ck_assert_str_eq(end.output, "Measured: Ines Varga, 4 measures.\n");
    const char *doubt = "waist girth: 29.3 cm looks like inches taken for centimetres: ";
    ck_assert_msg(!strncmp(end.trouble, doubt, strlen(doubt)), "%s", end.trouble);
    expect_words(measured(), "waist girth|293000|");
}
END_TEST

START_TEST(a_new_name_that_is_nearly_a_known_one_is_asked_about)
{
    show_import();
    bk_program_end end = bk_program_must(bodkin("measure", "Ines Varga", "wasit girth=74.5", "strap=12"), 0);
    ck_assert_str_eq(end.trouble, "\"wasit girth\" is a new name; did you mean waist girth?\n");
    ck_assert_str_eq(end.output, "Measured: Ines Varga, 2 measures.\n");
}
END_TEST

START_TEST(one_faulty_argument_refuses_all)
{
    show_import();
    static const struct {
        const char *argument, *trouble;
        int status;
    } cases[] = {
        {"92.5",
         "bodkin: Measure number 2 is none: write each measure as NAME=VALUE, such as \"waist "
         "girth=92.5\".\n",
         2},
        {"=92.5",
         "bodkin: Measure number 2 is none: write each measure as NAME=VALUE, such as \"waist "
         "girth=92.5\".\n",
         2},
        {"hip girth=", "bodkin: Nothing was saved: the hip girth has no value.\n", 1},
        {"hip girth=wide",
         "bodkin: Nothing was saved: the hip girth is no length; write it such as 92.5, 36 3/8, 5'4\" or "
         "1m64.\n",
         1},
        {"hip girth=98 km",
         "bodkin: Nothing was saved: the hip girth has an unknown unit; write cm, mm, m, in, ft or yd.\n", 1},
        {"hip girth=36 3/8",
         "bodkin: Nothing was saved: the hip girth has a fraction finer than quarters, as inches have; write "
         "its unit, such "
         "as 36 3/8 in.\n",
         1},
        {"waist girth=75", "bodkin: The waist girth is given twice.\n", 1},
        {"hip/seat=75", "bodkin: The name of a measure holds no \";\" and no \"/\": \"hip/seat\".\n", 1},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bk_program_end end = bk_program_must(
            bodkin("measure", "Ines Varga", "waist girth=74.5", cases[i].argument), cases[i].status);
        ck_assert_str_eq(end.trouble, cases[i].trouble);
        ck_assert_str_eq(end.output, "");
    }
    ck_assert_str_eq(measured(), "");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), "1");
}
END_TEST

START_TEST(an_unknown_performer_is_refused_with_the_nearest)
{
    show_import();
    bk_program_end end = bk_program_must(bodkin("measure", "Ines Vagra", "waist girth=74.5"), 1);
    ck_assert_str_eq(end.trouble, "bodkin: There is no performer \"Ines Vagra\"; did you mean Ines Varga?\n");
    expect_words(bk_program_must(bodkin("measure", "Nobody", "waist girth=74.5"), 1).trouble,
                 "There is no performer \"Nobody\".");
}
END_TEST

START_TEST(a_value_in_the_wrong_place_is_not_quoted_back)
{
    show_import();
    static const char *const calls[][2] = {
        {"Ines Varga", "waist girth=74.5=x"},
        {"waist girth=74.5", "hip girth=100"},
        {"Ines Varga", "74.5=waist girth"},
        {"74.5", "waist girth=74.5"},
    };
    for (size_t i = 0; i < sizeof calls / sizeof *calls; i++) {
        bk_program_end end = bodkin("measure", calls[i][0], calls[i][1]);
        ck_assert_int_ne(end.status, 0);
        ck_assert_msg(strstr(end.trouble, "74.5") == NULL, "%s", end.trouble);
    }
}
END_TEST

START_TEST(only_the_maker_takes_measures)
{
    show_import();
    bk_program_end end =
        bk_program_must(bodkin("measure", "Ines Varga", "waist girth=74.5", "--as", "director"), 1);
    ck_assert_str_eq(end.trouble, "bodkin: Only the maker takes measures; leave out --as.\n");
}
END_TEST

START_TEST(it_wants_a_performer_and_a_measure)
{
    show_import();
    const char *usage = "It is called so: bodkin measure PERFORMER NAME=VALUE...";
    expect_words(bk_program_must(bodkin("measure"), 2).trouble, usage);
    expect_words(bk_program_must(bodkin("measure", "Ines Varga"), 2).trouble, usage);
    expect_words(bk_program_must(bodkin("tick", "--over", "x", "P1/a"), 2).trouble,
                 "--over does not go with bodkin tick.");
}
END_TEST

START_TEST(the_daybook_holds_no_value)
{
    show_import();
    bk_program_must(bodkin("measure", "Ines Varga", "waist girth=77.7", "strap=12.3"), 0);
    bk_program_must(bodkin("measure", "Ines Varga", "waist girth=78.8"), 0);
    const char *daybook = bk_ask("SELECT sentence FROM daybook");
    expect_no_words(daybook, "77");
    expect_no_words(daybook, "78");
    expect_no_words(daybook, "12.3");
}
END_TEST

BK_TEST_MAIN("measure", measures_are_saved_in_the_unit_of_the_production, a_production_in_inches_takes_inches,
             a_day_can_be_named_but_not_one_to_come, a_correction_is_told_without_its_value,
             doubts_are_told_beside_and_the_sheet_is_saved,
             a_new_name_that_is_nearly_a_known_one_is_asked_about, one_faulty_argument_refuses_all,
             an_unknown_performer_is_refused_with_the_nearest, a_value_in_the_wrong_place_is_not_quoted_back,
             only_the_maker_takes_measures, it_wants_a_performer_and_a_measure, the_daybook_holds_no_value)
