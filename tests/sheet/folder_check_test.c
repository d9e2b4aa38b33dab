// What is told of sheets held against each other, each with its whole sentence: one thing of a sound production is changed.

#include "bodkin/sheet/folder_check.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "sheet/good_sheets.h"
#include "support/testing.h"

START_TEST(a_name_that_stands_twice_is_told_with_the_first_line)
{
    changes_expected(CHANGES(
        {"people.csv", "Zoë Ngô", "Ada Pell",
         "people.csv:3: person: \"Ada Pell\" stands on line 2 already; take one of the two out, or change "
         "one"},
        {"equipment.csv", "machine,machine", "cutting table,machine",
         "equipment.csv:3: equipment: \"cutting table\" stands on line 2 already; take one of the two out, "
         "or "
         "change one"},
        {"performers.csv", "Tomas Lind,,,", "Tomas Lind,,,\nInes Varga,,,",
         "performers.csv:4: performer: \"Ines Varga\" stands on line 2 already; take one of the two out, or "
         "change one"},
        {"roles.csv", "The Fox", "The Miller",
         "roles.csv:3: role: \"The Miller\" stands on line 2 already; take one of the two out, or change "
         "one"},
        {"costumes.csv", "wet in the last scene\n", "\n4A,The Fox,Fur,,\n",
         "costumes.csv:4: costume: \"4A\" stands on line 2 already; take one of the two out, or change one"},
        {"pieces.csv", "cuffs turned\n", "\n4A-1,4A,Belt,,,,,,,,,,\n",
         "pieces.csv:3: piece: \"4A-1\" stands on line 2 already; take one of the two out, or change one"},
        {"materials.csv", "hooks,each,,,,,\n", "hooks,each,,,,,\nwhite linen,m,,,,,\n",
         "materials.csv:4: material: \"white linen\" stands on line 2 already; take one of the two out, or "
         "change one"}));
}
END_TEST

START_TEST(a_key_that_stands_twice_is_told_with_what_else_is_the_same)
{
    changes_expected(
        CHANGES({"steps.csv", "4B-1,press,Press the coat,press,15,,,,,,,,,,,,\n",
                 "4B-1,press,Press the coat,press,15,,,,,,,,,,,,\n4A-1,cut,Cut,cut,5,,,,,,,,,,,,\n",
                 "steps.csv:6: step: \"cut\" stands on line 2 already with the same piece; take one of the "
                 "two out, or change one"},
                {"needs.csv", "4A-1,sew,hooks,3", "4A-1,cut,white linen,3",
                 "needs.csv:3: material: \"white linen\" stands on line 2 already with the same piece and "
                 "step; take one of the two out, or change one"},
                {"measures.csv", "2027-02-10", "2027-02-03",
                 "measures.csv:4: measure: \"waist girth\" stands on line 2 already with the same performer "
                 "and taken_on; take one of the two out, or change one"}));
}
END_TEST

START_TEST(a_last_day_before_the_first_is_told)
{
    changes_expected(CHANGES({"people.csv", "2027-04-16", "2027-01-31",
                              "people.csv:2: until: \"2027-01-31\" is before the first day, 2027-02-01 in "
                              "from; write the last day, that one or a later"},
                             {"away.csv", "2027-03-07", "2027-02-28",
                              "away.csv:2: to: \"2027-02-28\" is before the first day, 2027-03-01 in from; "
                              "write the last day, that one or a later"}));
}
END_TEST

START_TEST(a_production_sheet_has_exactly_one_row)
{
    changes_expected(CHANGES({"production.csv", "The Winter Fair,2027-04-16,GBP,cm,180,1\n", "",
                              "production.csv:1: sheet: has no row below its first line; write one, with the "
                              "production's name and the day it opens"},
                             {"production.csv", "180,1\n", "180,1\nThe Spring Fair,2027-06-01,,,,\n",
                              "production.csv:3: production: is in a second row; a folder holds one "
                              "production, so this sheet has one row"}));
}
END_TEST

START_TEST(an_unknown_performer_is_told_with_the_one_that_is_meant)
{
    changes_expected(
        CHANGES({"roles.csv", "Ines Varga", "Inez Varga",
                 "roles.csv:2: performer: no performer is called \"Inez Varga\" in performers.csv; did you "
                 "mean \"Ines Varga\"?"},
                {"roles.csv", "Ines Varga", "Nobody at all",
                 "roles.csv:2: performer: no performer is called \"Nobody at all\" in performers.csv; add a "
                 "row there, or write a name that stands there"},
                {"roles.csv", "Tomas Lind", "Tomas Lind;ines varga",
                 "roles.csv:2: cover: no performer is called \"ines varga\" in performers.csv; did you mean "
                 "\"Ines Varga\"?"},
                {"measures.csv", "93 cm,,\n", "93 cm,,\nTomas Linde,2027-02-03,waist girth,80 cm,,\n",
                 "measures.csv:5: performer: no performer is called \"Tomas Linde\" in performers.csv; did "
                 "you mean \"Tomas Lind\"?"},
                {"fittings.csv", "Ines Varga", "Ines",
                 "fittings.csv:2: performer: no performer is called \"Ines\" in performers.csv; add a row "
                 "there, or write a name that stands there"},
                {"away.csv", "Tomas Lind", "Tomas Lund",
                 "away.csv:3: who: nobody is called \"Tomas Lund\", neither in people.csv or performers.csv "
                 "nor in the workroom; did you mean \"Tomas Lind\"?"}));
}
END_TEST

START_TEST(unknown_names_beyond_the_first_twenty_are_counted)
{
    bk_buffer roles = {0};
    bk_buffer_text(&roles, "role,performer\nThe Miller,\nThe Fox,\n");
    for (int i = 0; i < 100; i++)
        bk_buffer_print(&roles, "Guest %d,Nobody %d\n", i, i);
    good_sheets_put();
    sheet_put("roles.csv", roles.bytes);
    bk_buffer_free(&roles);
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_uint_eq(bk_faults_count(read.faults), 100);
    ck_assert_str_eq(bk_faults_text(read.faults, 19), "roles.csv:23: performer: no performer is called "
                                                      "\"Nobody 19\" in performers.csv; add a row there, or "
                                                      "write a name that stands there");
    reading_free(&read);
}
END_TEST

START_TEST(an_unknown_role_costume_or_material_is_told)
{
    changes_expected(CHANGES(
        {"costumes.csv", "4B,The Miller", "4B,The Muller",
         "costumes.csv:3: role: no role is called \"The Muller\" in roles.csv; did you mean \"The Miller\"?"},
        {"pieces.csv", "4A;4B", "4A;4C",
         "pieces.csv:2: costumes: no costume is called \"4C\" in costumes.csv; did you mean \"4A\"?"},
        {"needs.csv", "white linen", "wool",
         "needs.csv:2: material: no material is called \"wool\" in materials.csv; add a row there, or write "
         "a name that stands there"},
        {"orders.csv", "white linen", "White Linen",
         "orders.csv:2: material: no material is called \"White Linen\" in materials.csv; did you mean "
         "\"white linen\"?"}));
}
END_TEST

START_TEST(an_unknown_piece_is_told_at_each_place_that_names_it)
{
    good_sheets_put();
    sheet_change("steps.csv", "4B-1,press", "4B-10,press");
    faults_expected(
        SENTENCES("steps.csv:4: after: piece \"4B-1\" has no step \"press\"; write the key of one of its "
                  "steps in steps.csv",
                  "steps.csv:5: piece: no piece is called \"4B-10\" in pieces.csv; did you mean \"4B-1\"?"));
}
END_TEST

START_TEST(a_step_that_is_not_of_that_piece_is_told)
{
    changes_expected(
        CHANGES({"needs.csv", "4A-1,cut", "4A-1,cuts",
                 "needs.csv:2: step: piece \"4A-1\" has no step \"cuts\"; did you mean \"cut\"?"},
                {"needs.csv", "4A-1,cut", "4B-1,cut",
                 "needs.csv:2: step: piece \"4B-1\" has no step \"cut\"; write the key of one of its steps "
                 "in steps.csv"},
                {"needs.csv", "4A-1,cut", "Nowhere,cut",
                 "needs.csv:2: piece: no piece is called \"Nowhere\" in pieces.csv; add a row there, or "
                 "write a name that stands there"},
                {"steps.csv", "sew;4B-1/press", "sow;4B-1/press",
                 "steps.csv:4: after: piece \"4A-1\" has no step \"sow\"; did you mean \"sew\"?"},
                {"steps.csv", "sew;4B-1/press", "sew;4B-1/pres",
                 "steps.csv:4: after: piece \"4B-1\" has no step \"pres\"; did you mean \"press\"?"},
                {"steps.csv", "sew;4B-1/press", "sew;Nowhere/press",
                 "steps.csv:4: after: no piece is called \"Nowhere\" in pieces.csv; add a row there, or "
                 "write a name that stands there"},
                {"steps.csv", "sew;4B-1/press", "sew;4B-1/press/late",
                 "steps.csv:4: after: \"sew;4B-1/press/late\" names a step that is not to be understood; "
                 "write a key of the same piece, or PIECE/KEY, such as draft;4A-2/cut"},
                {"steps.csv", "sew;4B-1/press", "sew;/press",
                 "steps.csv:4: after: \"sew;/press\" names a step that is not to be understood; write a key "
                 "of the same piece, or PIECE/KEY, such as draft;4A-2/cut"},
                {"fittings.csv", "4A-1,fit,2027-03-12", "4A-1,fitting,2027-03-12",
                 "fittings.csv:3: step: piece \"4A-1\" has no step \"fitting\"; write the key of one of its "
                 "steps in steps.csv"}));
}
END_TEST

START_TEST(a_fitting_of_a_step_of_another_kind_is_told)
{
    changes_expected(CHANGES({"fittings.csv", "4A-1,fit,2027-03-12", "4A-1,sew,2027-03-12",
                              "fittings.csv:3: step: \"4A-1/sew\" is a step of kind machine; only a step of "
                              "kind fit has fittings"}));
}
END_TEST

START_TEST(a_step_named_in_two_spellings_is_told)
{
    changes_expected(CHANGES({"steps.csv", "sew;4B-1/press", "sew;4A-1/sew",
                              "steps.csv:4: after: names \"4A-1/sew\" twice; write it once"}));
}
END_TEST

START_TEST(a_step_that_comes_after_itself_is_told)
{
    changes_expected(CHANGES({"steps.csv", "sew;4B-1/press", "fit",
                              "steps.csv:4: after: this step comes after itself: 4A-1/fit -> 4A-1/fit; take "
                              "it out of its own after"}));
}
END_TEST

START_TEST(a_circle_of_steps_is_told_in_order)
{
    changes_expected(
        CHANGES({"steps.csv", "Cut the linen,cut,45,30,90,", "Cut the linen,cut,45,30,90,fit",
                 "steps.csv:2: after: these steps come after one another in a circle: 4A-1/cut -> 4A-1/sew "
                 "-> 4A-1/fit -> 4A-1/cut; take one of them out of the after of the next"}));
}
END_TEST

START_TEST(circles_that_share_no_step_are_each_told)
{
    good_sheets_put();
    sheet_put("fittings.csv", "piece,step,booked_at\n");
    sheet_put("needs.csv", "piece,step,material,quantity\n");
    sheet_put("notes.csv", "noted_on,what\n");
    sheet_put("steps.csv", "piece,step,title,kind,minutes,after\n"
                           "4A-1,a,A,cut,1,b\n"
                           "4B-1,x,X,cut,1,4B-1/y\n"
                           "4A-1,b,B,cut,1,a;4B-1/x\n"
                           "4B-1,y,Y,cut,1,x\n"
                           "4B-1,z,Z,cut,1,x;y\n");
    faults_expected(SENTENCES("steps.csv:2: after: these steps come after one another in a circle: 4A-1/a -> "
                              "4A-1/b -> 4A-1/a; take one of them out of the after of the next",
                              "steps.csv:3: after: these steps come after one another in a circle: 4B-1/x -> "
                              "4B-1/y -> 4B-1/x; take one of them out of the after of the next"));
}
END_TEST

START_TEST(a_very_long_circle_is_told_in_part)
{
    bk_buffer steps = {0};
    bk_buffer_text(&steps, "piece,step,title,kind,minutes,after\n");
    for (int i = 0; i < 100; i++)
        bk_buffer_print(&steps, "4A-1,s%d,S,cut,1,s%d\n", i, (i + 99) % 100);
    good_sheets_put();
    sheet_put("fittings.csv", "piece,step,booked_at\n");
    sheet_put("needs.csv", "piece,step,material,quantity\n");
    sheet_put("notes.csv", "noted_on,what\n");
    sheet_put("steps.csv", steps.bytes);
    bk_buffer_free(&steps);
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_uint_eq(bk_faults_count(read.faults), 1);
    ck_assert_ptr_nonnull(strstr(bk_faults_text(read.faults, 0),
                                 "4A-1/s38 -> 4A-1/s39 -> (60 more) -> 4A-1/s0; take one of them"));
    reading_free(&read);
}
END_TEST

START_TEST(a_faulty_row_is_no_second_fault_where_it_is_named)
{
    changes_expected(CHANGES(
        {"costumes.csv", "4A,The Miller,Working clothes,2027-04-09", "4A,The Miller,Working clothes,soon",
         "costumes.csv:2: due: \"soon\" is no day; write YYYY-MM-DD, such as 2027-02-28"},
        {"steps.csv", "First fitting,fit,20", "First fitting,fitting,20",
         "steps.csv:4: kind: \"fitting\" is no kind of step; write source, draft, cut, tack, machine, press, "
         "fit, hand, craft or dye"},
        {"steps.csv", "Cut the linen", "Cut, pin the linen",
         "steps.csv:2: took: the row has 18 cells, but the first line names 17 columns; put a text that has "
         "commas in double quotes, and write a decimal comma as a point"},
        {"pieces.csv", "Linen shirt", "Shirt, linen",
         "pieces.csv:2: note: the row has 14 cells, but the first line names 13 columns; put a text that has "
         "commas in double quotes, and write a decimal comma as a point"}));
}
END_TEST

BK_TEST_MAIN("folder check", a_name_that_stands_twice_is_told_with_the_first_line,
             a_key_that_stands_twice_is_told_with_what_else_is_the_same, a_last_day_before_the_first_is_told,
             a_production_sheet_has_exactly_one_row, an_unknown_performer_is_told_with_the_one_that_is_meant,
             unknown_names_beyond_the_first_twenty_are_counted, an_unknown_role_costume_or_material_is_told,
             an_unknown_piece_is_told_at_each_place_that_names_it, a_step_that_is_not_of_that_piece_is_told,
             a_fitting_of_a_step_of_another_kind_is_told, a_step_named_in_two_spellings_is_told,
             a_step_that_comes_after_itself_is_told, a_circle_of_steps_is_told_in_order,
             circles_that_share_no_step_are_each_told, a_very_long_circle_is_told_in_part,
             a_faulty_row_is_no_second_fault_where_it_is_named)
