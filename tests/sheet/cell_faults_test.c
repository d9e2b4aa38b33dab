// Every fault that one cell can have by itself, with its whole sentence: one cell of a sound production is changed.

#include "bodkin/sheet/cell_faults.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "sheet/good_sheets.h"
#include "support/testing.h"

START_TEST(an_empty_cell_that_must_be_filled_is_told_with_an_example)
{
    changes_expected(
        CHANGES({"costumes.csv", "Working clothes", "",
                 "costumes.csv:2: title: is empty; every row must have one, such as Working clothes"},
                {"costumes.csv", "Working clothes", "  ",
                 "costumes.csv:2: title: is empty; every row must have one, such as Working clothes"},
                {"measures.csv", "93 cm", "",
                 "measures.csv:4: value: is empty; every row must have one, such as 92.5 cm"},
                {"production.csv", "2027-04-16", "",
                 "production.csv:2: opens: is empty; every row must have one, such as 2027-04-16"}));
}
END_TEST

START_TEST(a_name_with_a_mark_of_lists_is_told_with_the_mark)
{
    changes_expected(CHANGES({"roles.csv", "The Fox", "The Fox;Hen",
                              "roles.csv:3: role: \"The Fox;Hen\" holds a ;, which stands between the items "
                              "of a list; names hold no ; and no /, such as The Miller"},
                             {"measures.csv", "nape to waist", "nape/waist",
                              "measures.csv:3: measure: \"nape/waist\" holds a /, which stands between a "
                              "piece and its step; names hold no ; and no /, such as waist girth"},
                             {"steps.csv", "waist girth;nape to waist", "waist/hip",
                              "steps.csv:2: measures: \"waist/hip\" holds a /, which stands between a piece "
                              "and its step; names hold no ; and no /, such as waist girth;nape to waist"}));
    good_sheets_put();
    sheet_change("materials.csv", "hooks", "hooks/eyes");
    sheet_change("needs.csv", "hooks", "hooks/eyes");
    faults_expected(SENTENCES("materials.csv:3: material: \"hooks/eyes\" holds a /, which stands between a "
                              "piece and its step; names hold no ; and no /, such as white linen",
                              "needs.csv:3: material: \"hooks/eyes\" holds a /, which stands between a piece "
                              "and its step; names hold no ; and no /, such as white linen"));
}
END_TEST

START_TEST(a_name_with_a_space_at_its_end_is_told_and_known_without_it)
{
    changes_expected(CHANGES({"performers.csv", "Ines Varga", " Ines Varga",
                              "performers.csv:2: performer: \" Ines Varga\" begins with a space; take it "
                              "out, names neither begin nor end with one"},
                             {"performers.csv", "Ines Varga", "Ines Varga ",
                              "performers.csv:2: performer: \"Ines Varga \" ends with a space; take it out, "
                              "names neither begin nor end with one"}));
}
END_TEST

START_TEST(an_empty_item_of_a_list_is_told)
{
    changes_expected(CHANGES({"pieces.csv", "4A;4B", "4A;;4B",
                              "pieces.csv:2: costumes: \"4A;;4B\" has a ; with nothing before or behind it; "
                              "write one ; between two items, such as 4A;4B"},
                             {"pieces.csv", "4A;4B", "4A;4B;",
                              "pieces.csv:2: costumes: \"4A;4B;\" has a ; with nothing before or behind it; "
                              "write one ; between two items, such as 4A;4B"},
                             {"pieces.csv", "4A;4B", ";4A;4B",
                              "pieces.csv:2: costumes: \";4A;4B\" has a ; with nothing before or behind it; "
                              "write one ; between two items, such as 4A;4B"},
                             {"people.csv", "cut;machine", "cut; ;machine",
                              "people.csv:2: skills: \"cut; ;machine\" has a ; with nothing before or behind "
                              "it; write one ; between two items, such as cut;machine"},
                             {"steps.csv", "sew;4B-1/press", "sew;",
                              "steps.csv:4: after: \"sew;\" has a ; with nothing before or behind it; write "
                              "one ; between two items, such as draft;4A-2/cut"}));
}
END_TEST

START_TEST(an_item_named_twice_is_told)
{
    changes_expected(CHANGES(
        {"pieces.csv", "4A;4B", "4A;4B; 4A", "pieces.csv:2: costumes: names \"4A\" twice; write it once"},
        {"people.csv", "cut;machine", "cut;cut", "people.csv:2: skills: names \"cut\" twice; write it once"},
        {"roles.csv", "Tomas Lind", "Tomas Lind;Tomas Lind",
         "roles.csv:2: cover: names \"Tomas Lind\" twice; write it once"},
        {"steps.csv", "waist girth;nape to waist", "waist girth;waist girth",
         "steps.csv:2: measures: names \"waist girth\" twice; write it once"},
        {"steps.csv", "sew;4B-1/press", "sew;sew",
         "steps.csv:4: after: names \"sew\" twice; write it once"}));
}
END_TEST

START_TEST(a_list_that_never_ends_is_told)
{
    bk_buffer list = {0};
    bk_buffer_text(&list, "role,cover\nThe Miller,\"");
    for (int i = 0; i < 1010; i++)
        bk_buffer_print(&list, "%s%d", i == 0 ? "" : ";", i);
    bk_buffer_text(&list, "\"\nThe Fox,\n");
    good_sheets_put();
    sheet_put("roles.csv", list.bytes);
    bk_buffer_free(&list);
    fault_expected("roles.csv:2: cover: \"0;1;2;3;4;5;6;7;8;9;10;11;12;13;14;15;1…\" names more than 1000; "
                   "that is more than a list can hold");
}
END_TEST

START_TEST(a_word_of_no_set_is_told_with_all_that_would_be_right)
{
    changes_expected(
        CHANGES({"steps.csv", "machine,120", "sewing,120",
                 "steps.csv:3: kind: \"sewing\" is no kind of step; write source, draft, cut, tack, machine, "
                 "press, fit, hand, craft or dye"},
                {"steps.csv", "machine,120", "Machine,120",
                 "steps.csv:3: kind: \"Machine\" is no kind of step; write source, draft, cut, tack, "
                 "machine, press, fit, hand, craft or dye; did you mean machine?"},
                {"people.csv", "cut;machine", "cut;mashine",
                 "people.csv:2: skills: \"mashine\" is no kind of step; write source, draft, cut, tack, "
                 "machine, press, fit, hand, craft or dye; did you mean machine?"},
                {"equipment.csv", "cut;draft", "cut;drafting",
                 "equipment.csv:2: kinds: \"drafting\" is no kind of step; write source, draft, cut, tack, "
                 "machine, press, fit, hand, craft or dye"},
                {"dates.csv", "parade", "gala",
                 "dates.csv:2: what: \"gala\" is no kind of date; write measuring, fittings, photo, parade, "
                 "tech, dress, preview, opening, performance, closing, strike or return"},
                {"pieces.csv", "make", "sewn",
                 "pieces.csv:2: origin: \"sewn\" is no origin of a piece; write make, alter, buy, hire, "
                 "borrow or stock"},
                {"fittings.csv", "again", "against",
                 "fittings.csv:2: outcome: \"against\" is no outcome of a fitting; write fits, again or "
                 "missed; did you mean again?"},
                {"materials.csv", "linen,m", "linen,metres",
                 "materials.csv:2: unit: \"metres\" is no unit of a material; write m, yd or each"},
                {"production.csv", "cm", "inches",
                 "production.csv:2: unit: \"inches\" is no unit of length; write cm or in"}));
}
END_TEST

START_TEST(can_wait_is_yes_or_nothing)
{
    changes_expected(CHANGES(
        {"steps.csv", "yes", "no",
         "steps.csv:4: can_wait: \"no\" is neither yes nor nothing; write yes, or leave the cell empty"}));
}
END_TEST

START_TEST(a_day_that_is_not_in_the_calendar_is_told)
{
    changes_expected(CHANGES(
        {"production.csv", "2027-04-16", "2027-02-30",
         "production.csv:2: opens: \"2027-02-30\" is no day of the calendar; write YYYY-MM-DD, such as "
         "2027-02-28"},
        {"production.csv", "2027-04-16", "2027-02-29",
         "production.csv:2: opens: \"2027-02-29\" is no day of the calendar; write YYYY-MM-DD, such as "
         "2027-02-28"},
        {"production.csv", "2027-04-16", "2027/04/16",
         "production.csv:2: opens: \"2027/04/16\" is no day; write YYYY-MM-DD, such as 2027-02-28"},
        {"production.csv", "2027-04-16", "16.4.2027",
         "production.csv:2: opens: \"16.4.2027\" is no day; write YYYY-MM-DD, such as 2027-02-28"},
        {"production.csv", "2027-04-16", "2027-04-16T19:30",
         "production.csv:2: opens: \"2027-04-16T19:30\" is no day; write YYYY-MM-DD, such as 2027-02-28"}));
}
END_TEST

START_TEST(a_time_and_a_moment_that_are_none_are_told)
{
    changes_expected(CHANGES(
        {"dates.csv", "18:00", "6pm",
         "dates.csv:2: at: \"6pm\" is no time of a day; write HH:MM, from 00:00 to 23:59, such as 19:30"},
        {"dates.csv", "18:00", "24:00",
         "dates.csv:2: at: \"24:00\" is no time of a day; write HH:MM, from 00:00 to 23:59, such as 19:30"},
        {"fittings.csv", "2027-03-05T14:30", "2027-02-30T14:30",
         "fittings.csv:2: booked_at: \"2027-02-30T14:30\" is no day of the calendar; write YYYY-MM-DD or "
         "YYYY-MM-DDTHH:MM, such as 2027-02-28 or 2027-02-28T14:30"},
        {"fittings.csv", "2027-03-05T14:30", "2027-03-05 14:30",
         "fittings.csv:2: booked_at: \"2027-03-05 14:30\" is no day, with or without a time; write "
         "YYYY-MM-DD or YYYY-MM-DDTHH:MM, such as 2027-02-28 or 2027-02-28T14:30"}));
}
END_TEST

START_TEST(hours_that_are_none_are_told_with_the_form)
{
    static const char *const wrong[] = {"10-13", "13:00-10:00", "10:00-13:00;12:00-14:00", "10:00-13:00;"};
    for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
        bk_arena *arena = bk_arena_new();
        good_sheets_put();
        sheet_change("people.csv", "10:00-13:00;14:00-18:00", wrong[i]);
        fault_expected(bk_arena_print(
            arena,
            "people.csv:2: mon: \"%s\" is no hours of a day; write HH:MM-HH:MM, each ending after it begins "
            "and none over another, such as 10:00-13:00 or 10:00-13:00;14:00-18:00",
            wrong[i]));
        bk_arena_free(arena);
    }
}
END_TEST

START_TEST(a_decimal_comma_is_told_with_the_point_to_write)
{
    changes_expected(CHANGES(
        {"measures.csv", "92.5 cm", "\"92,5 cm\"",
         "measures.csv:2: value: \"92,5 cm\" has a decimal comma; write a point: 92.5 cm"},
        {"measures.csv", "92.5 cm", "\"92,5\"",
         "measures.csv:2: value: \"92,5\" has a decimal comma and no unit; write 92.5 cm or 36 3/8 in"},
        {"measures.csv", "92.5 cm", "\"1,400 mm\"",
         "measures.csv:2: value: \"1,400 mm\" has a comma; write 1400 mm, or 1.400 mm if it is a decimal "
         "comma"},
        {"measures.csv", "92.5 cm", "\"1.234,5 cm\"",
         "measures.csv:2: value: \"1.234,5 cm\" has a comma; write a point and a unit, such as 92.5 cm or 36 "
         "3/8 in"},
        {"needs.csv", "2.4", "\"2,4\"",
         "needs.csv:2: quantity: \"2,4\" has a decimal comma; write a point: 2.4"},
        {"needs.csv", "2.4", "\"1,234,567\"",
         "needs.csv:2: quantity: \"1,234,567\" has a comma; write a point and no other mark, such as 2.4"},
        {"pieces.csv", "12.50", "\"12,50\"",
         "pieces.csv:2: cost: \"12,50\" has a decimal comma; write a point: 12.50"},
        {"pieces.csv", "12.50", "\"1,200.00\"",
         "pieces.csv:2: cost: \"1,200.00\" has a comma; write a point and no other mark, such as 12.50"},
        {"steps.csv", "0.5", "\"0,5\"", "steps.csv:3: rest: \"0,5\" has a decimal comma; write a point: 0.5"},
        {"steps.csv", "0.5", "\"0,5,5\"",
         "steps.csv:3: rest: \"0,5,5\" has a comma; write a point and no other mark, such as 0.25"},
        {"steps.csv", "120", "\"1,200\"",
         "steps.csv:3: minutes: \"1,200\" has a comma; write it without: 1200"},
        {"steps.csv", "120", "\"12,5\"",
         "steps.csv:3: minutes: \"12,5\" is no whole number; write minutes such as 45"}));
}
END_TEST

START_TEST(a_length_without_a_unit_is_told_with_both_ways_to_write_it)
{
    changes_expected(CHANGES({"measures.csv", "92.5 cm", "92.5",
                              "measures.csv:2: value: \"92.5\" has no unit; write 92.5 cm or 36 3/8 in"},
                             {"measures.csv", "92.5 cm", "36 3/8",
                              "measures.csv:2: value: \"36 3/8\" has no unit; write 36 3/8 in or 92.5 cm"},
                             {"measures.csv", "92.5 cm", "0000000000000000000000000000000000000000000092",
                              "measures.csv:2: value: \"000000000000000000000000000000000000000…\" has no "
                              "unit; write it with one, such as 92.5 cm or 36 3/8 in"}));
}
END_TEST

START_TEST(a_length_that_is_none_is_told)
{
    changes_expected(CHANGES(
        {"measures.csv", "92.5 cm", "large",
         "measures.csv:2: value: \"large\" is no length; write a number and its unit, such as 92.5 cm or 36 "
         "3/8 in"},
        {"measures.csv", "92.5 cm", "92.5 ells",
         "measures.csv:2: value: \"92.5 ells\" has an unknown unit; write mm, cm, m, in, ft or yd, such as "
         "92.5 cm or 36 3/8 in"},
        {"measures.csv", "92.5 cm", "-92.5 cm",
         "measures.csv:2: value: \"-92.5 cm\" is below zero; write a length such as 92.5 cm or 36 3/8 in"},
        {"materials.csv", "150 cm", "1001 m",
         "materials.csv:2: width: \"1001 m\" is too long; at most 1 km can be kept, write a length such as "
         "92.5 cm"}));
}
END_TEST

START_TEST(a_quantity_that_is_none_is_told)
{
    changes_expected(CHANGES(
        {"needs.csv", "2.4", "2.4 m",
         "needs.csv:2: quantity: \"2.4 m\" is no plain number; write it without a unit, such as 2.4"},
        {"needs.csv", "2.4", "-2.4",
         "needs.csv:2: quantity: \"-2.4\" is below zero; write a quantity such as 2.4"},
        {"orders.csv", "linen,5", "linen,-5",
         "orders.csv:2: quantity: \"-5\" is below zero; write a quantity such as 2.4"},
        {"needs.csv", "2.4", "0.1234567",
         "needs.csv:2: quantity: \"0.1234567\" has more than six decimals; write at most six, such as "
         "2.333333"},
        {"needs.csv", "2.4", "99999999999999999999",
         "needs.csv:2: quantity: \"99999999999999999999\" is too large; write a quantity such as 2.4"}));
}
END_TEST

START_TEST(an_amount_of_money_that_is_none_is_told)
{
    changes_expected(CHANGES(
        {"pieces.csv", "12.50", "£12",
         "pieces.csv:2: cost: \"£12\" is no amount of money; write a number, such as 12.50 or 12.50 GBP"},
        {"pieces.csv", "12.50", "12.50 pounds",
         "pieces.csv:2: cost: \"12.50 pounds\" has an unknown currency; write its three capital letters, "
         "such as 12.50 GBP"},
        {"orders.csv", "44.50", "-44.50",
         "orders.csv:2: cost: \"-44.50\" is below zero; write an amount such as 12.50"},
        {"materials.csv", "8.90", "8.905",
         "materials.csv:2: price: \"8.905\" has more decimals than its currency; leave out what is smaller "
         "than the smallest coin"},
        {"materials.csv", "8.90", "8.90 JPY",
         "materials.csv:2: price: \"8.90 JPY\" has more decimals than its currency; leave out what is "
         "smaller than the smallest coin"},
        {"materials.csv", "8.90", "99999999999999999999",
         "materials.csv:2: price: \"99999999999999999999\" is too large; write an amount such as 12.50"},
        {"production.csv", "GBP", "pounds",
         "production.csv:2: currency: \"pounds\" is no currency; write its three capital letters (ISO 4217), "
         "such as GBP or EUR"}));
}
END_TEST

START_TEST(minutes_below_zero_are_told)
{
    changes_expected(CHANGES({"steps.csv", "machine,120", "machine,-20",
                              "steps.csv:3: minutes: \"-20\" is below zero; write minutes such as 45"}));
}
END_TEST

START_TEST(a_whole_number_that_is_none_is_told_with_its_limits)
{
    changes_expected(CHANGES(
        {"steps.csv", "machine,120", "machine,two hours",
         "steps.csv:3: minutes: \"two hours\" is no whole number; write minutes such as 45"},
        {"steps.csv", "machine,120", "machine,12.5",
         "steps.csv:3: minutes: \"12.5\" is no whole number; write minutes such as 45"},
        {"steps.csv", "machine,120", "machine,1000001",
         "steps.csv:3: minutes: \"1000001\" is too large; write minutes from 0 to 1000000, such as 45"}));
}
END_TEST

START_TEST(hands_levels_and_days_have_their_limits)
{
    changes_expected(CHANGES(
        {"steps.csv", "90,,1,3", "90,,0,3",
         "steps.csv:2: hands: \"0\" is too small; write hands from 1 to 99, such as 2"},
        {"steps.csv", "90,,1,3", "90,,100,3",
         "steps.csv:2: hands: \"100\" is too large; write hands from 1 to 99, such as 2"},
        {"steps.csv", "90,,1,3", "90,,1,4",
         "steps.csv:2: level: \"4\" is too large; write a level from 1 to 3, such as 2"},
        {"production.csv", "180", "0",
         "production.csv:2: measures_good_for: \"0\" is too small; write days from 1 to 36500, such as 180"},
        {"performers.csv", "60", "-1",
         "performers.csv:2: measures_good_for: \"-1\" is below zero; write days such as 60"},
        {"production.csv", "180,1", "180,2",
         "production.csv:2: sheets: \"2\" is a version of these sheets that is not known here; they are "
         "version 1"}));
}
END_TEST

START_TEST(a_rest_that_makes_no_whole_minutes_is_told)
{
    changes_expected(CHANGES(
        {"steps.csv", "0.5", "0.33",
         "steps.csv:3: rest: \"0.33\" hours are not a whole number of minutes; write hours such as 12 or "
         "0.25"},
        {"steps.csv", "0.5", "overnight",
         "steps.csv:3: rest: \"overnight\" is no number of hours; write hours such as 12 or 0.25"},
        {"steps.csv", "0.5", "-1", "steps.csv:3: rest: \"-1\" is below zero; write hours such as 12 or 0.25"},
        {"steps.csv", "0.5", "0.3333333",
         "steps.csv:3: rest: \"0.3333333\" has more than six decimals; write hours such as 12 or 0.25"},
        {"steps.csv", "0.5", "10000.5",
         "steps.csv:3: rest: \"10000.5\" is too large; write at most 10000 hours, such as 12 or 0.25"}));
}
END_TEST

START_TEST(of_equipment_there_is_at_least_one_and_it_is_of_some_kind)
{
    changes_expected(
        CHANGES({"equipment.csv", "machine,2", "machine,0",
                 "equipment.csv:3: count: \"0\" is too small; write a number from 1 to 999, such as 2"},
                {"equipment.csv", "machine,2", "machine,-1",
                 "equipment.csv:3: count: \"-1\" is below zero; write a number such as 2"},
                {"equipment.csv", "machine,2", "machine,1000",
                 "equipment.csv:3: count: \"1000\" is too large; write a number from 1 to 999, such as 2"},
                {"equipment.csv", "machine,2", "machine,two",
                 "equipment.csv:3: count: \"two\" is no whole number; write a number such as 2"},
                {"equipment.csv", "cut;draft", "",
                 "equipment.csv:2: kinds: is empty; every row must have one, such as cut;draft"},
                {"equipment.csv", "cut;draft", "cut;cut",
                 "equipment.csv:2: kinds: names \"cut\" twice; write it once"},
                {"equipment.csv", "cutting table", "",
                 "equipment.csv:2: equipment: is empty; every row must have one, such as cutting table"}));
}
END_TEST

BK_TEST_MAIN("cell faults", an_empty_cell_that_must_be_filled_is_told_with_an_example,
             a_name_with_a_mark_of_lists_is_told_with_the_mark,
             a_name_with_a_space_at_its_end_is_told_and_known_without_it, an_empty_item_of_a_list_is_told,
             an_item_named_twice_is_told, a_list_that_never_ends_is_told,
             a_word_of_no_set_is_told_with_all_that_would_be_right, can_wait_is_yes_or_nothing,
             a_day_that_is_not_in_the_calendar_is_told, a_time_and_a_moment_that_are_none_are_told,
             hours_that_are_none_are_told_with_the_form, a_decimal_comma_is_told_with_the_point_to_write,
             a_length_without_a_unit_is_told_with_both_ways_to_write_it, a_length_that_is_none_is_told,
             a_quantity_that_is_none_is_told, an_amount_of_money_that_is_none_is_told,
             minutes_below_zero_are_told, a_whole_number_that_is_none_is_told_with_its_limits,
             hands_levels_and_days_have_their_limits, a_rest_that_makes_no_whole_minutes_is_told,
             of_equipment_there_is_at_least_one_and_it_is_of_some_kind)
