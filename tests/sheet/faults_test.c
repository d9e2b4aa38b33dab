#include "bodkin/sheet/faults.h"

#include <stdlib.h>

#include "bodkin/sheet/columns.h"
#include "support/testing.h"

START_TEST(faults_are_told_by_file_line_and_column)
{
    bk_faults *faults = bk_faults_new();
    bk_faults_add(faults, BK_SHEET_STEPS, "steps.csv", 9, "kind", "%s", "six");
    bk_faults_add(faults, BK_SHEET_PEOPLE, "people.csv", 12, "skills", "%s", "three");
    bk_faults_add(faults, BK_SHEET_STEPS, "steps.csv", 2, "minutes", "%s", "five");
    bk_faults_add(faults, BK_SHEET_PEOPLE, "people.csv", 3, "mon", "%s", "two");
    bk_faults_add(faults, BK_SHEET_PEOPLE, "people.csv", 3, "person", "%s", "one");
    bk_faults_add(faults, BK_SHEET_STEPS, "steps.csv", 2, "kind", "%s", "four");
    static const char *const told[] = {"people.csv:3: person: one",    "people.csv:3: mon: two",
                                       "people.csv:12: skills: three", "steps.csv:2: kind: four",
                                       "steps.csv:2: minutes: five",   "steps.csv:9: kind: six"};
    ck_assert_uint_eq(bk_faults_count(faults), 6);
    for (size_t i = 0; i < 6; i++)
        ck_assert_str_eq(bk_faults_text(faults, i), told[i]);
    ck_assert_str_eq(bk_faults_says(faults, 0), "one");
    ck_assert_str_eq(bk_faults_says(faults, 5), "six");
    bk_faults_free(faults);
}
END_TEST

START_TEST(faults_of_one_cell_stay_in_the_order_they_were_found)
{
    bk_faults *faults = bk_faults_new();
    bk_faults_add(faults, BK_SHEET_ROLES, "roles.csv", 2, "cover", "%s", "first");
    bk_faults_add(faults, BK_SHEET_ROLES, "roles.csv", 2, "cover", "%s", "second");
    bk_faults_add(faults, BK_SHEETS, "zzz.csv", 1, "sheet", "%s", "third");
    ck_assert_str_eq(bk_faults_text(faults, 0), "roles.csv:2: cover: first");
    ck_assert_str_eq(bk_faults_text(faults, 1), "roles.csv:2: cover: second");
    ck_assert_str_eq(bk_faults_text(faults, 2), "zzz.csv:1: sheet: third");
    bk_faults_free(faults);
}
END_TEST

START_TEST(the_first_twenty_are_told_and_all_are_counted)
{
    bk_faults *faults = bk_faults_new();
    for (int line = 1000; line > 1; line--)
        bk_faults_add(faults, BK_SHEET_NEEDS, "needs.csv", line, "piece", "number %d", line);
    ck_assert_uint_eq(bk_faults_count(faults), 999);
    ck_assert_str_eq(bk_faults_text(faults, 0), "needs.csv:2: piece: number 2");
    ck_assert_str_eq(bk_faults_text(faults, BK_FAULTS_TOLD - 1), "needs.csv:21: piece: number 21");
    ck_assert(bk_faults_wanted(faults, BK_SHEET_NEEDS, 20, "piece"));
    ck_assert(!bk_faults_wanted(faults, BK_SHEET_NEEDS, 22, "piece"));
    bk_faults_free(faults);
}
END_TEST

START_TEST(a_sentence_holds_nothing_that_a_terminal_would_obey)
{
    bk_faults *faults = bk_faults_new();
    bk_faults_add(faults, BK_SHEETS, "a\x1B[2J.csv", 1, "sh\neet", "%s", "\"\x1B]0;x\x07\"");
    ck_assert_str_eq(bk_faults_text(faults, 0), "a·[2J.csv:1: sh eet: \"·]0;x·\"");
    bk_faults_free(faults);
}
END_TEST

START_TEST(what_is_quoted_is_cut_to_a_readable_length)
{
    bk_arena *arena = bk_arena_new();
    ck_assert_str_eq(bk_faults_quote(arena, "short"), "\"short\"");
    ck_assert_str_eq(bk_faults_quote(arena, "a sentence that goes on and on until nobody reads it any more"),
                     "\"a sentence that goes on and on until…\"");
    bk_arena_free(arena);
}
END_TEST

BK_TEST_MAIN("faults", faults_are_told_by_file_line_and_column,
             faults_of_one_cell_stay_in_the_order_they_were_found,
             the_first_twenty_are_told_and_all_are_counted,
             a_sentence_holds_nothing_that_a_terminal_would_obey, what_is_quoted_is_cut_to_a_readable_length)
