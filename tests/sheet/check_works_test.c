// What is told of orders of work and of notes held against the other sheets, each with its whole sentence.

#include "bodkin/sheet/folder_check.h"

#include "sheet/good_sheets.h"
#include "support/testing.h"

START_TEST(an_order_of_work_or_a_step_of_it_that_stands_twice_is_told)
{
    changes_expected(CHANGES(
        {"works.csv", "Neck cloth,\n", "Neck cloth,\nSmock,\n",
         "works.csv:4: work: \"Smock\" stands on line 2 already; take one of the two out, or change one"},
        {"work_steps.csv", "Smock,trim,", "Smock,sew,",
         "work_steps.csv:4: step: \"sew\" stands on line 3 already with the same work; take one of the two "
         "out, or change one"}));
}
END_TEST

START_TEST(a_step_of_an_unknown_order_of_work_is_told_with_the_one_that_is_meant)
{
    changes_expected(
        CHANGES({"work_steps.csv", "Neck cloth,hem", "Neckcloth,hem",
                 "work_steps.csv:5: work: no order of work is called \"Neckcloth\" in works.csv; did you "
                 "mean \"Neck cloth\"?"},
                {"work_steps.csv", "Neck cloth,hem", "Cloak,hem",
                 "work_steps.csv:5: work: no order of work is called \"Cloak\" in works.csv; add a row "
                 "there, or write a name that stands there"}));
}
END_TEST

START_TEST(the_workroom_may_know_an_order_of_work_that_the_folder_does_not_list)
{
    bk_known *known = bk_known_new();
    good_sheets_put();
    sheet_change("work_steps.csv", "Neck cloth,hem", "Cloak,hem");
    reading unknown = reading_of(bk_test_folder(), known);
    ck_assert_uint_eq(bk_faults_count(unknown.faults), 1);
    ck_assert_str_eq(bk_faults_text(unknown.faults, 0),
                     "work_steps.csv:5: work: no order of work is called \"Cloak\", neither in works.csv nor "
                     "in the workroom; add a row there, or write a name that stands there");
    reading_free(&unknown);
    bk_index_put(known->works, "Cloak", 0);
    reading read = reading_of(bk_test_folder(), known);
    ck_assert_uint_eq(bk_faults_count(read.faults), 0);
    reading_free(&read);
    bk_known_free(known);
}
END_TEST

START_TEST(a_step_after_one_that_its_order_of_work_has_not_is_told)
{
    changes_expected(CHANGES(
        {"work_steps.csv", "cut;sew", "cut;sow",
         "work_steps.csv:4: after: the order of work \"Smock\" has no step \"sow\"; did you mean "
         "\"sew\"?"},
        {"work_steps.csv", "cut;sew", "cut;bands",
         "work_steps.csv:4: after: the order of work \"Smock\" has no step \"bands\"; write the key of "
         "one of its steps in work_steps.csv"},
        {"work_steps.csv", "cut;sew", "cut;Neck cloth/hem",
         "work_steps.csv:4: after: \"cut;Neck cloth/hem\" holds a /, which stands between a piece "
         "and its step; names hold no ; and no /, such as draft;ft"},
        {"work_steps.csv", "cut;sew", "cut;cut",
         "work_steps.csv:4: after: names \"cut\" twice; write it once"}));
}
END_TEST

START_TEST(a_circle_within_an_order_of_work_is_told_by_its_keys)
{
    changes_expected(
        CHANGES({"work_steps.csv", "Cut the drill,cut,45,30,90,", "Cut the drill,cut,45,30,90,trim",
                 "work_steps.csv:2: after: these steps come after one another in a circle: cut -> sew -> "
                 "trim -> cut; take one of them out of the after of the next"},
                {"work_steps.csv", "hem,Roll the hem,hand,30,,,", "hem,Roll the hem,hand,30,,,hem",
                 "work_steps.csv:5: after: this step comes after itself: hem -> hem; take it out of its own "
                 "after"}));
}
END_TEST

START_TEST(a_note_on_what_is_not_there_is_told)
{
    changes_expected(
        CHANGES({"notes.csv", "4A,4A-1", "4C,4A-1",
                 "notes.csv:2: costume: no costume is called \"4C\" in costumes.csv; did you mean \"4A\"?"},
                {"notes.csv", "4A-1,sew", "4A-1,sow",
                 "notes.csv:2: step: piece \"4A-1\" has no step \"sow\"; did you mean \"sew\"?"},
                {"notes.csv", "4A-1,sew", "4B-1,sew",
                 "notes.csv:2: step: piece \"4B-1\" has no step \"sew\"; write the key of one of its steps "
                 "in steps.csv"},
                {"notes.csv", "4A-1,sew", ",sew",
                 "notes.csv:2: step: \"sew\" is a step without its piece; write the piece too, in piece"},
                {"notes.csv", "4A-1,sew", "Hat,sew",
                 "notes.csv:2: piece: no piece is called \"Hat\" in pieces.csv; add a row there, or write a "
                 "name that stands there"},
                {"notes.csv", "rehearsal", "rehearsals",
                 "notes.csv:2: from: \"rehearsals\" is no source of a note; write rehearsal, fitting, "
                 "parade, tech, dress, preview, show or workroom; did you mean rehearsal?"},
                {"notes.csv", "cuffs catch on the basket", "",
                 "notes.csv:2: what: is empty; every row must have one, such as cuffs catch on the basket"}));
}
END_TEST

START_TEST(a_folder_without_works_and_notes_has_no_fault)
{
    good_sheets_put();
    sheet_remove("works.csv");
    sheet_remove("work_steps.csv");
    sheet_remove("notes.csv");
    no_fault_expected();
}
END_TEST

START_TEST(a_sheet_of_works_that_cannot_be_read_is_no_second_fault)
{
    good_sheets_put();
    sheet_put("works.csv", "work;note\n");
    fault_expected("works.csv:1: sheet: the cells are separated by semicolons; save the file anew with "
                   "commas between them");
    good_sheets_put();
    sheet_put("work_steps.csv", "work,step,title,kind,minutes,after\nSmock,trim,Braid,hand,60,sew\n"
                                "Smock,\"sew,Sew it,machine,120,\n");
    fault_expected(
        "work_steps.csv:3: step: opens a double quote that is never closed; what follows could not "
        "be read: close it, or write a quote within a text twice");
}
END_TEST

BK_TEST_MAIN("check works", an_order_of_work_or_a_step_of_it_that_stands_twice_is_told,
             a_step_of_an_unknown_order_of_work_is_told_with_the_one_that_is_meant,
             the_workroom_may_know_an_order_of_work_that_the_folder_does_not_list,
             a_step_after_one_that_its_order_of_work_has_not_is_told,
             a_circle_within_an_order_of_work_is_told_by_its_keys, a_note_on_what_is_not_there_is_told,
             a_folder_without_works_and_notes_has_no_fault,
             a_sheet_of_works_that_cannot_be_read_is_no_second_fault)
