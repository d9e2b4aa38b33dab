// `bodkin tick`, `untick`, `undo`, `redo` and `daybook`.

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "cmd/sheets.h"

static const char state_of_cut[] =
    "SELECT coalesce(done_on, '-'), coalesce(done_by, '-'), coalesce(took, '-'), "
    "(SELECT sum(quantity) FROM movement) FROM step WHERE key = 'cut'";

START_TEST(a_tick_is_told_and_kept)
{
    show_import();
    bk_program_end end = bk_program_must(bodkin("tick", "1A-1/cut", "--name", "Ada Pell"), 0);
    ck_assert_str_eq(end.output, "Done: 1A-1 cut the bodice.\n");
    ck_assert_str_eq(bk_ask(state_of_cut), "2027-03-02|Ada Pell|-|-1400000");
    end = bk_program_must(bodkin("untick", "1A-1/cut"), 0);
    ck_assert_str_eq(end.output, "Open again: 1A-1 cut the bodice.\n");
    ck_assert_str_eq(bk_ask(state_of_cut), "-|-|-|1000000");
}
END_TEST

START_TEST(who_when_and_how_long_can_be_said)
{
    show_import();
    bk_program_must(bodkin("--took", "50", "tick", "1A-1/cut", "--by", "Bo Lind", "--on", "2027-02-27"), 0);
    ck_assert_str_eq(bk_ask(state_of_cut), "2027-02-27|Bo Lind|50|-1400000");
    ck_assert_str_eq(bk_ask("SELECT DISTINCT moved_on FROM movement WHERE kind = 'use'"), "2027-02-27");
}
END_TEST

START_TEST(the_rail_sees_the_tick)
{
    show_import();
    bk_program_must(bodkin("tick", "1A-1/sew"), 0);
    expect_words(bodkin("rail", "--json").output, "\"steps_done\": 1");
}
END_TEST

typedef struct refusal {
    const char *words[4];
    int status;
    const char *sentence;
} refusal;

static const refusal refusals[] = {
    {{"untick", "1A-1/cut"}, 1, "1A-1/cut is open already."},
    {{"tick", "1A-1/cur"}, 1, "The piece 1A-1 has no step \"cur\"; did you mean 1A-1/cut?"},
    {{"tick", "1a-1/cut"}, 1, "There is no piece \"1a-1\" in \"The Salt Road\"; did you mean 1A-1?"},
    {{"tick", "cut"}, 2, "A step is named by its piece and its key, such as 4A-2/hem, not \"cut\"."},
    {{"tick", "1A-1/cut", "--took=soon"}, 2, "--took wants whole minutes, such as 45, not \"soon\"."},
    {{"tick", "1A-1/cut", "--took=-5"}, 2, "--took wants whole minutes, such as 45, not \"-5\"."},
    {{"tick", "1A-1/cut", "--on=tomorrow"}, 2, "--on wants a day such as 2027-03-02, not \"tomorrow\"."},
    {{"tick", "1A-1/cut", "--by="}, 2, "--by wants a name."},
    {{"untick", "1A-1/cut", "--took=5"}, 2, "--took does not go with bodkin untick."},
    {{"daybook", "--on=2027-03-02"}, 2, "--on does not go with bodkin daybook."},
    {{"rail", "--by=Bo"}, 2, "--by does not go with bodkin rail."},
    {{"tick"}, 2, "It is called so: bodkin tick PIECE/STEP"},
    {{"tick", "1A-1/cut", "--as=director"}, 1, "Only the maker changes the workroom: nothing was changed."},
    {{"undo", "--as=director"}, 1, "Only the maker changes the workroom: nothing was changed."},
    {{"redo", "--as=volunteer"}, 1, "Only the maker changes the workroom: nothing was changed."},
    {{"daybook", "--as=director"}, 1, "Only the maker reads the daybook; leave out --as."},
    {{"redo"}, 1, "There is nothing to redo: nothing was undone since your last change."},
    {{"undo", "--name=Nobody"}, 1, "There is nothing of yours to undo at this terminal."},
};

START_TEST(what_cannot_be_done_is_told_and_changes_nothing)
{
    show_import();
    const char *before = bk_ask(".dump");
    for (size_t i = 0; i < sizeof refusals / sizeof *refusals; i++) {
        char expected[200];
        bk_program_end end =
            bk_program_must(bk_program_call(OPTIONS(.store = NULL), refusals[i].words), refusals[i].status);
        snprintf(expected, sizeof expected, "bodkin: %s\n", refusals[i].sentence);
        ck_assert_str_eq(end.trouble, expected);
        ck_assert_str_eq(end.output, "");
    }
    ck_assert_str_eq(bk_ask(".dump"), before);
}
END_TEST

START_TEST(a_tick_that_cannot_be_reported_is_done_all_the_same)
{
    show_import();
    bk_program_end end = bk_program_must(bodkin_with(OPTIONS(.output = "/dev/full"), "tick", "1A-1/sew"), 1);
    expect_words(end.trouble, "It is done, but could not be reported: ");
    expect_words(bk_program_must(bodkin("tick", "1A-1/sew"), 1).trouble, "is done already");
}
END_TEST

START_TEST(undo_and_redo_say_what_they_did)
{
    show_import();
    const char *before = bk_records();
    bk_program_must(bodkin("tick", "1A-1/cut"), 0);
    const char *after = bk_records();
    ck_assert_str_eq(bk_program_must(bodkin("undo"), 0).output, "Undone: Done: 1A-1 cut the bodice.\n");
    ck_assert_str_eq(bk_records(), before);
    ck_assert_str_eq(bk_program_must(bodkin("redo"), 0).output, "Redone: Done: 1A-1 cut the bodice.\n");
    ck_assert_str_eq(bk_records(), after);
    bk_program_must(bodkin("undo"), 0);
    ck_assert_str_eq(bk_records(), before);
}
END_TEST

START_TEST(an_import_is_undone_and_redone)
{
    show_import();
    const char *after = bk_records();
    expect_words(bk_program_must(bodkin("undo"), 0).output, "Undone: Imported \"The Salt Road\": 3 costumes");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM performer"), "0");
    bk_program_must(bodkin("redo"), 0);
    ck_assert_str_eq(bk_records(), after);
    bk_program_must(bodkin("import", bk_test_path("show"), "--replace"), 0);
    bk_program_must(bodkin("undo"), 0);
    ck_assert_str_eq(bk_records(), after);
}
END_TEST

START_TEST(undo_passes_over_what_another_did)
{
    show_import();
    bk_program_must(bodkin("tick", "1A-1/sew", "--name", "Ada"), 0);
    bk_program_must(bodkin("tick", "1B-1/press", "--name", "Bo"), 0);
    ck_assert_str_eq(bk_program_must(bodkin("undo", "--name", "Ada"), 0).output,
                     "Undone: Done: 1A-1 body seams.\n");
    expect_words(bk_program_must(bodkin("undo", "--name", "Ada"), 1).trouble, "nothing of yours to undo");
}
END_TEST

START_TEST(an_undo_that_would_lose_another_change_is_refused)
{
    show_import();
    bk_program_must(bodkin("tick", "1A-1/sew", "--name", "Ada"), 0);
    bk_program_must(bodkin("untick", "1A-1/sew", "--name", "Bo"), 0);
    bk_program_must(bodkin("tick", "1A-1/sew", "--name", "Bo"), 0);
    const char *before = bk_ask(".dump");
    expect_words(bk_program_must(bodkin("undo", "--name", "Ada"), 1).trouble, "has been changed since");
    ck_assert_str_eq(bk_ask(".dump"), before);
}
END_TEST

START_TEST(the_daybook_is_a_line_an_entry_newest_first)
{
    sheets_put("show");
    bk_program_must(bodkin("import", bk_test_path("show"), "--name", "Zoë"), 0);
    bk_program_must(bodkin("tick", "1A-1/cut", "--name", "Ada\x1b[1m"), 0);
    bk_program_must(bodkin("undo", "--name", "Ada\x1b[1m"), 0);
    bk_program_must(bodkin("redo", "--name", "Ada\x1b[1m"), 0);
    bk_ask("UPDATE daybook SET made_at = '2027-03-02T09:3' || id || ':00+01:00'");
    ck_assert_str_eq(
        bk_program_must(bodkin("daybook"), 0).output,
        "2027-03-02 09:34  Ada·[1m  Redone: Done: 1A-1 cut the bodice\n"
        "2027-03-02 09:33  Ada·[1m  Undone: Done: 1A-1 cut the bodice  (redone)\n"
        "2027-03-02 09:32  Ada·[1m  Done: 1A-1 cut the bodice\n"
        "2027-03-02 09:31  Zoë      Imported \"The Salt Road\": 3 costumes, 2 pieces, 4 steps\n");
    bk_program_end end = bk_program_must(bodkin_with(OPTIONS(.locale = "C"), "daybook"), 0);
    ck_assert_uint_eq(odd_bytes(end.output), 0);
}
END_TEST

START_TEST(the_daybook_is_a_json_list_for_programs)
{
    show_import();
    bk_program_must(bodkin("tick", "1A-1/cut"), 0);
    bk_program_must(bodkin("undo"), 0);
    bk_ask("UPDATE daybook SET undo_ended = id = 1, made_by = 'Ada'");
    bk_test_write_text(bk_test_path("list"), bk_program_must(bodkin("daybook", "--json"), 0).output);
    ck_assert_str_eq(
        bk_shell("python3 -c 'import json; print([(e[\"entry\"], e[\"made_by\"], e[\"undone\"], "
                 "e[\"undoes\"], e[\"ended\"]) for e in json.load(open(\"list\"))])'"),
        "[(3, 'Ada', False, 2, False), (2, 'Ada', True, None, False), (1, 'Ada', False, None, True)]");
}
END_TEST

START_TEST(only_the_newest_twenty_entries_are_printed)
{
    show_import();
    for (int i = 0; i < 12; i++) {
        bk_program_must(bodkin("tick", "1A-1/cut"), 0);
        bk_program_must(bodkin("untick", "1A-1/cut"), 0);
    }
    bk_test_write_text(bk_test_path("list"), bodkin("daybook").output);
    ck_assert_str_eq(bk_shell("wc -l <list"), "20");
}
END_TEST

START_TEST(a_tick_with_nothing_against_it_says_no_more_than_that)
{
    show_import();
    ck_assert_str_eq(bk_program_must(bodkin("tick", "1B-1/press"), 0).trouble, "");
}
END_TEST

START_TEST(a_tick_of_what_the_shelf_lacks_says_so_and_is_done)
{
    show_import();
    ck_assert_str_eq(bk_program_must(bodkin("tick", "1A-1/cut"), 0).trouble,
                     "the shelf lacks 1.4 m of wool flannel\n");
}
END_TEST

START_TEST(a_tick_before_earlier_steps_or_of_a_piece_that_is_out_says_so_and_is_done)
{
    show_import();
    bk_ask("UPDATE piece SET out_with = 'the dyer\x1b[1m', back_by = '2027-03-09' WHERE name = '1A-1'");
    bk_program_end end = bk_program_must(bodkin("tick", "1A-1/fit"), 0);
    ck_assert_str_eq(end.output, "Done: 1A-1 first fitting.\n");
    ck_assert_str_eq(end.trouble, "it comes after what is still open: 1A-1/sew, 1B-1/press\n"
                                  "1A-1 is out with the dyer·[1m, back Tue 9 Mar\n");
    ck_assert_str_eq(bk_program_must(bodkin("tick", "1A-1/fit"), 1).output, "");
}
END_TEST

BK_TEST_MAIN("tick", a_tick_is_told_and_kept, who_when_and_how_long_can_be_said, the_rail_sees_the_tick,
             what_cannot_be_done_is_told_and_changes_nothing,
             a_tick_that_cannot_be_reported_is_done_all_the_same, undo_and_redo_say_what_they_did,
             an_import_is_undone_and_redone, undo_passes_over_what_another_did,
             an_undo_that_would_lose_another_change_is_refused, the_daybook_is_a_line_an_entry_newest_first,
             the_daybook_is_a_json_list_for_programs, only_the_newest_twenty_entries_are_printed,
             a_tick_with_nothing_against_it_says_no_more_than_that,
             a_tick_of_what_the_shelf_lacks_says_so_and_is_done,
             a_tick_before_earlier_steps_or_of_a_piece_that_is_out_says_so_and_is_done)
