// `bodkin bench`, for people and for programs.

#include <string.h>

#include "cmd/sheets.h"

static const char demo[] = BK_TEST_SOURCE_DIR "/demo/the-heron-toll";

/// The show of sheets.h, with two people: Ada (cut, machine, hand; Mondays) and Bo (press; Tuesdays). The cloth for the bodice is to
/// come yet, so that the cloak can be pressed and nothing else be done.
static void import_for_two(void)
{
    const char *folder = sheets_put("show");
    sheet_write("show", "people.csv",
                "person,skills,mon,tue\nAda Pell,cut;machine;hand;fit,10:00-13:00,\nBo "
                "Lark,press,,10:00-12:00;14:00-16:30\n");
    bk_program_must(bodkin("import", folder), 0);
}

START_TEST(it_tells_what_a_person_can_do_now_and_why)
{
    import_for_two();
    ck_assert_str_eq(bk_program_must(bodkin("bench", "--person", "Bo Lark"), 0).output,
                     "Bench: Bo Lark, Tue 2 Mar, hours until 16:30\n"
                     "1 step can be worked on now, best first.\n"
                     "\n"
                     "1B-1/press   press the cloak                       15 min  1B The Miller\n"
                     "      1B is due in 89 days, 40 min behind it; planned for today\n");
    ck_assert_str_eq(bk_program_must(bodkin("bench", "--person", "Ada Pell"), 0).output,
                     "Bench: Ada Pell, Tue 2 Mar, no hours today\n"
                     "Nothing can be worked on now; the rail says what each costume waits on.\n");
}
END_TEST

START_TEST(without_a_person_it_is_that_of_who_i_am_or_of_everybody)
{
    import_for_two();
    expect_words(bk_program_must(bodkin("bench", "--name", "Bo Lark"), 0).output, "Bench: Bo Lark, ");
    expect_words(bk_program_must(bodkin("bench", "--name", "Cy"), 0).output,
                 "Bench: everybody, Tue 2 Mar\n1 step can");
    expect_words(bk_program_must(bodkin("bench", "--name", "Bo Lark", "--person", "Ada Pell"), 0).output,
                 "Bench: Ada Pell, ");
}
END_TEST

START_TEST(a_person_whom_the_workroom_does_not_know_is_told_with_the_names_there_are)
{
    import_for_two();
    bk_program_end end = bk_program_must(bodkin("bench", "--person", "Bo"), 1);
    ck_assert_str_eq(end.output, "");
    ck_assert_str_eq(end.trouble,
                     "bodkin: Nobody in the workroom is called \"Bo\"; there are: Ada Pell, Bo Lark.\n");
}
END_TEST

START_TEST(a_workroom_without_people_says_so_and_shows_what_anybody_could_do)
{
    const char *folder = sheets_put("show");
    sheet_remove("show", "people.csv");
    bk_program_must(bodkin("import", folder), 0);
    expect_words(bk_program_must(bodkin("bench"), 0).output,
                 "Bench: everybody, Tue 2 Mar\n"
                 "Nobody is in the workroom yet, so no day can be told: add who works, and when\n(Hands).\n"
                 "1 step can be worked on now, best first.\n");
    ck_assert_str_eq(bk_program_must(bodkin("bench", "--person", "Bo"), 1).trouble,
                     "bodkin: Nobody is in the workroom yet, so there is no \"Bo\".\n");
}
END_TEST

START_TEST(what_fits_the_minutes_stands_first)
{
    import_for_two();
    expect_words(bk_program_must(bodkin("bench", "--minutes", "15"), 0).output,
                 "1 step can be worked on now, 1 of them within 15 min.\n\nWithin 15 min\n1B-1/press ");
    expect_words(bk_program_must(bodkin("bench", "--minutes", "14"), 0).output,
                 "1 step can be worked on now, 0 of them within 14 min.\n\nLonger than 14 min\n1B-1/press ");
}
END_TEST

START_TEST(a_clock_that_runs_is_told_first)
{
    import_for_two();
    bk_ask("INSERT INTO running (step_id, who, started_at) SELECT id, 'Ada Pell', "
           "'2020-01-01T10:00:00+00:00' FROM step "
           "WHERE key = 'sew'");
    expect_words(bk_program_must(bodkin("bench", "--person", "Ada Pell"), 0).output,
                 "\n1A-1/sew     body seams  ");
    expect_words(bk_program_must(bodkin("bench", "--person", "Ada Pell"), 0).output, "\n      in hand for ");
    expect_no_words(bk_program_must(bodkin("bench", "--person", "Bo Lark"), 0).output, "1A-1/sew");
}
END_TEST

START_TEST(it_is_of_all_productions_or_of_the_one_that_is_named)
{
    import_for_two();
    bk_program_must(bodkin("import", demo), 0);
    const char *all = bk_program_must(bodkin("bench", "--name", "-"), 0).output;
    expect_words(all, "1B-1/press ");
    expect_words(all, "; The Salt Road\n");
    expect_words(all, "; The Heron Toll\n");
    const char *one =
        bk_program_must(bodkin("bench", "--name", "-", "--production", "The Heron Toll"), 0).output;
    expect_no_words(one, "press the cloak");
    expect_no_words(one, "The Heron Toll");
    bk_program_must(bodkin("bench", "--production", "The Heron Tool"), 1);
}
END_TEST

START_TEST(the_json_of_a_small_show_is_this_to_the_byte)
{
    import_for_two();
    const char *json =
        bk_program_must(bodkin("bench", "--person", "Bo Lark", "--json", "--minutes", "10"), 0).output;
    ck_assert_str_eq(
        json,
        "{\n  \"today\": \"2027-03-02\",\n  \"person\": \"Bo Lark\",\n  \"free_until\": \"16:30\",\n"
        "  \"minutes\": 10,\n  \"steps\": [\n    {\n      \"production\": \"The Salt Road\",\n"
        "      \"piece\": \"1B-1\",\n      \"step\": \"press\",\n      \"title\": \"press the cloak\",\n"
        "      \"kind\": \"press\",\n      \"costume\": \"1B\",\n      \"role\": \"The Miller\",\n"
        "      \"minutes\": 15,\n      \"fits\": false,\n      \"due\": \"2027-05-30\",\n"
        "      \"days_left\": 89,\n      \"behind\": 40,\n      \"latest\": \"2027-05-18T16:15\",\n"
        "      \"why\": \"planned\",\n"
        "      \"says\": \"1B is due in 89 days, 40 min behind it; planned for today\",\n"
        "      \"together\": null,\n      \"material\": null,\n      \"running\": null\n    }\n  ]\n}\n");
}
END_TEST

START_TEST(the_bench_of_the_demo_is_the_same_twice_and_in_text_and_in_json)
{
    bk_program_must(bodkin("import", demo), 0);
    const char *json = bk_program_must(bodkin("bench", "--json"), 0).output;
    ck_assert_msg(strcmp(bk_program_must(bodkin("bench", "--json"), 0).output, json) == 0,
                  "not the same bytes");
    bk_test_write_text(bk_test_path("bench.json"), json);
    bk_test_write_text(bk_test_path("bench.txt"), bk_program_must(bodkin("bench"), 0).output);
    bk_test_write_text(
        bk_test_path("same.py"),
        "import json\n"
        "steps = json.load(open('bench.json', encoding='utf-8'))['steps']\n"
        "text = open('bench.txt', encoding='utf-8').read()\n"
        "lines = [l for l in text.split('\\n\\n')[1].split('\\n') if l and l[0] != ' ']\n"
        "assert [l.split()[0] for l in lines] == [s['piece'] + '/' + s['step'] for s in steps]\n"
        "plain = ' '.join(text.split())\n"
        "assert all(s['says'] in plain for s in steps) and len(steps) > 10\n"
        "assert max(map(len, text.split('\\n'))) <= 80\n"
        "print('the same')\n");
    ck_assert_str_eq(bk_shell("python3 same.py"), "the same");
}
END_TEST

START_TEST(everybody_may_look_at_the_bench_and_nothing_is_changed)
{
    import_for_two();
    bk_shell("cp workroom.db before");
    bk_program_must(bodkin("bench", "--as", "director"), 0);
    bk_program_must(bodkin("bench", "--as", "volunteer"), 0);
    bk_program_must(bodkin("rail", "--as", "director"), 0);
    bk_shell("cmp workroom.db before");
}
END_TEST

START_TEST(seed_and_tries_want_whole_numbers_and_go_with_what_reckons)
{
    static const char tries[] = " wants a whole number from 0 to 1000000, such as 500, not ";
    import_for_two();
    expect_words(bk_program_must(bodkin("rail", "--tries", "many"), 2).trouble,
                 "--tries wants a whole number");
    expect_words(bk_program_must(bodkin("bench", "--tries", "-1"), 2).trouble, tries);
    expect_words(bk_program_must(bodkin("bench", "--tries", "1000001"), 2).trouble, tries);
    ck_assert_str_eq(bk_program_must(bodkin("rail", "--seed", "1.5"), 2).trouble,
                     "bodkin: --seed wants a whole number, such as 7, not \"1.5\".\n");
    ck_assert_str_eq(bk_program_must(bodkin("tick", "--seed", "1", "1B-1/press"), 2).trouble,
                     "bodkin: --seed does not go with bodkin tick.\n");
    ck_assert_str_eq(bk_program_must(bodkin("rail", "--person", "Ada Pell"), 2).trouble,
                     "bodkin: --person does not go with bodkin rail.\n");
    ck_assert_str_eq(
        bk_program_must(bodkin_with(OPTIONS(.tries = "few"), "rail"), 2).trouble,
        "bodkin: BODKIN_TRIES wants a whole number from 0 to 1000000, such as 500, not \"few\".\n");
    bk_program_must(bodkin_with(OPTIONS(.tries = "few"), "rail", "--tries", "1"), 0);
    bk_program_must(bodkin_with(OPTIONS(.tries = "few"), "tick", "1B-1/press"), 0);
    expect_words(bodkin("--seed", "4", "--tries", "3").trouble, "The screens need a terminal");
}
END_TEST

BK_TEST_MAIN("bench", it_tells_what_a_person_can_do_now_and_why,
             without_a_person_it_is_that_of_who_i_am_or_of_everybody,
             a_person_whom_the_workroom_does_not_know_is_told_with_the_names_there_are,
             a_workroom_without_people_says_so_and_shows_what_anybody_could_do,
             what_fits_the_minutes_stands_first, a_clock_that_runs_is_told_first,
             it_is_of_all_productions_or_of_the_one_that_is_named,
             the_json_of_a_small_show_is_this_to_the_byte,
             the_bench_of_the_demo_is_the_same_twice_and_in_text_and_in_json,
             everybody_may_look_at_the_bench_and_nothing_is_changed,
             seed_and_tries_want_whole_numbers_and_go_with_what_reckons)
