#include "bodkin/sheet/cell_read.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "sheet/good_sheets.h"
#include "support/testing.h"

START_TEST(every_example_that_a_sentence_gives_is_right)
{
    bk_faults *faults = bk_faults_new();
    bk_arena *arena = bk_arena_new();
    bk_names *names = bk_names_new(arena);
    for (size_t i = 0; i < BK_SHEETS; i++)
        for (size_t c = 0; c < bk_sheets[i].column_count; c++) {
            void *record = bk_arena_take(arena, bk_sheets[i].record_size);
            void *unknown = bk_arena_take(arena, bk_sheets[i].record_size);
            bk_sheet_clear(&bk_sheets[i], record);
            bk_sheet_clear(&bk_sheets[i], unknown);
            bk_cell cell = {.sheet = (bk_sheet_number)i,
                            .column = &bk_sheets[i].columns[c],
                            .line = 2,
                            .text = bk_sheets[i].columns[c].example,
                            .record = record,
                            .arena = arena,
                            .names = names,
                            .faults = faults};
            bk_cell_read(&cell);
            ck_assert_msg(bk_faults_count(faults) == 0, "%s", bk_faults_text(faults, 0));
            ck_assert_int_ne(memcmp(record, unknown, bk_sheets[i].record_size), 0);
        }
    bk_names_free(names);
    bk_arena_free(arena);
    bk_faults_free(faults);
}
END_TEST

static reading good_reading(void)
{
    good_sheets_put();
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_int_eq(read.status, BK_OK);
    return read;
}

START_TEST(the_production_and_its_dates_are_read)
{
    reading read = good_reading();
    const bk_production *production = read.folder->production.items;
    ck_assert_str_eq(production->name, "The Winter Fair");
    ck_assert_int_eq(production->opens, bk_day_of(2027, 4, 16));
    ck_assert_str_eq(production->currency, "GBP");
    ck_assert_int_eq(production->unit, BK_CM);
    ck_assert_int_eq(production->measures_good_for, 180);
    ck_assert_int_eq(production->sheets, 1);
    ck_assert_int_eq(production->put_away_on, BK_NO_DAY);
    ck_assert_int_eq(production->line, 2);
    ck_assert_uint_eq(read.folder->dates.count, 2);
    ck_assert_int_eq(read.folder->dates.items[0].what, bk_word_find(&bk_occasion_words, "parade"));
    ck_assert_int_eq(read.folder->dates.items[0].at, 18 * 60);
    ck_assert_int_eq(read.folder->dates.items[1].at, BK_NO_TIME);
    ck_assert_ptr_null(read.folder->dates.items[1].note);
    ck_assert_int_eq(read.folder->dates.items[1].line, 3);
    reading_free(&read);
}
END_TEST

START_TEST(people_and_their_measures_are_read)
{
    reading read = good_reading();
    const bk_person *ada = &read.folder->people.items[0], *zoe = &read.folder->people.items[1];
    ck_assert_str_eq(ada->skills, "cut;machine");
    ck_assert_str_eq(ada->hours[0], "10:00-13:00;14:00-18:00");
    ck_assert_ptr_null(ada->hours[1]);
    ck_assert_int_eq(ada->until, bk_day_of(2027, 4, 16));
    ck_assert_str_eq(zoe->name, "Zoë Ngô");
    ck_assert_str_eq(zoe->hours[1], "18:00-21:00");
    ck_assert_int_eq(zoe->from, BK_NO_DAY);
    ck_assert_str_eq(read.folder->away.items[1].who, "Tomas Lind");
    ck_assert_int_eq(read.folder->performers.items[0].measures_good_for, 60);
    ck_assert_int_eq(read.folder->performers.items[1].measures_good_for, BK_NOT_KNOWN);
    ck_assert_ptr_null(read.folder->performers.items[1].contact);
    const bk_measure *measures = read.folder->measures.items;
    ck_assert_uint_eq(read.folder->measures.count, 3);
    ck_assert_int_eq(measures[0].value, 925000);
    ck_assert_int_eq(measures[1].value, 415925); // 16 3/8 inches of 25.4 mm exactly (1959)
    ck_assert_str_eq(measures[0].over, "a T-shirt");
    ck_assert_ptr_null(measures[1].taken_by);
    ck_assert_int_eq(measures[2].taken_on, bk_day_of(2027, 2, 10));
    reading_free(&read);
}
END_TEST

START_TEST(costumes_pieces_and_steps_are_read)
{
    reading read = good_reading();
    ck_assert_str_eq(read.folder->roles.items[0].cover, "Tomas Lind");
    ck_assert_str_eq(read.folder->roles.items[0].note, "dances in act two");
    ck_assert_ptr_null(read.folder->roles.items[1].performer);
    ck_assert_int_eq(read.folder->costumes.items[1].due, BK_NO_DAY);
    const bk_piece *pieces = read.folder->pieces.items;
    ck_assert_str_eq(pieces[0].costumes, "4A;4B");
    ck_assert_int_eq(pieces[0].origin, BK_MAKE);
    ck_assert_int_eq(pieces[0].cost, 1250);
    ck_assert_str_eq(pieces[0].currency, "GBP");
    ck_assert_int_eq(pieces[1].cost, 4400);
    ck_assert_str_eq(pieces[1].currency, "EUR");
    ck_assert_int_eq(pieces[1].returned_on, bk_day_of(2027, 5, 2));
    const bk_step *steps = read.folder->steps.items;
    ck_assert_int_eq(steps[0].kind, BK_CUT);
    ck_assert_int_eq(steps[0].minutes, 45);
    ck_assert_int_eq(steps[0].quickest, 30);
    ck_assert_int_eq(steps[0].longest, 90);
    ck_assert_int_eq(steps[0].level, 3);
    ck_assert_int_eq(steps[0].took, 50);
    ck_assert_str_eq(steps[0].measures, "waist girth;nape to waist");
    ck_assert_int_eq(steps[1].rest_minutes, 30);
    ck_assert_int_eq(steps[1].hands, BK_NOT_KNOWN);
    ck_assert_int_eq(steps[1].done_on, BK_NO_DAY);
    ck_assert_str_eq(steps[2].after, "sew;4B-1/press");
    ck_assert_int_eq(steps[2].can_wait, 1);
    ck_assert_int_eq(steps[3].can_wait, 0);
    ck_assert_int_eq(steps[3].line, 5);
    reading_free(&read);
}
END_TEST

START_TEST(materials_orders_and_fittings_are_read)
{
    reading read = good_reading();
    const bk_material *materials = read.folder->materials.items;
    ck_assert_int_eq(materials[0].unit, BK_METRE);
    ck_assert_int_eq(materials[0].on_hand, -500000);
    ck_assert_int_eq(materials[0].width, 1500000);
    ck_assert_int_eq(materials[0].price, 890);
    ck_assert_int_eq(materials[1].on_hand, BK_NO_AMOUNT);
    ck_assert_int_eq(materials[1].price, BK_NO_AMOUNT);
    ck_assert_ptr_null(materials[1].currency);
    ck_assert_int_eq(read.folder->needs.items[0].quantity, 2400000);
    ck_assert_int_eq(read.folder->orders.items[0].cost, 4450);
    ck_assert_int_eq(read.folder->orders.items[0].arrived_on, bk_day_of(2027, 2, 23));
    const bk_fitting *fittings = read.folder->fittings.items;
    ck_assert_int_eq(fittings[0].booked_at.day, bk_day_of(2027, 3, 5));
    ck_assert_int_eq(fittings[0].booked_at.time, 14 * 60 + 30);
    ck_assert_int_eq(fittings[0].outcome, BK_AGAIN);
    ck_assert_int_eq(fittings[1].booked_at.time, BK_NO_TIME);
    ck_assert_int_eq(fittings[1].outcome, BK_NO_WORD);
    reading_free(&read);
}
END_TEST

START_TEST(the_same_name_is_the_same_text_in_all_sheets)
{
    reading read = good_reading();
    ck_assert_ptr_eq(read.folder->measures.items[2].performer, read.folder->performers.items[0].name);
    ck_assert_ptr_eq(read.folder->roles.items[0].performer, read.folder->performers.items[0].name);
    ck_assert_ptr_eq(read.folder->needs.items[0].piece, read.folder->pieces.items[0].name);
    reading_free(&read);
}
END_TEST

START_TEST(spaces_round_values_and_items_of_lists_are_passed_over)
{
    good_sheets_put();
    sheet_change("pieces.csv", "4A;4B", " 4A ; 4B ");
    sheet_change("measures.csv", "93 cm", "  93 cm ");
    sheet_change("costumes.csv", "2027-04-09", " 2027-04-09 ");
    sheet_change("steps.csv", "machine,120", " machine , 120 ");
    sheet_change("roles.csv", "dances in act two", "  dances ");
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_int_eq(read.status, BK_OK);
    ck_assert_str_eq(read.folder->pieces.items[0].costumes, "4A;4B");
    ck_assert_int_eq(read.folder->measures.items[2].value, 930000);
    ck_assert_int_eq(read.folder->costumes.items[0].due, bk_day_of(2027, 4, 9));
    ck_assert_int_eq(read.folder->steps.items[1].kind, BK_MACHINE);
    ck_assert_str_eq(read.folder->roles.items[0].note, "  dances "); // RFC 4180: spaces belong to the cell
    reading_free(&read);
}
END_TEST

START_TEST(the_guard_against_formulas_is_taken_off_every_cell)
{
    good_sheets_put();
    sheet_change("roles.csv", "dances in act two", "'=dances");
    sheet_change("materials.csv", "-0.5", "'-0.5");
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_int_eq(read.status, BK_OK);
    ck_assert_str_eq(read.folder->roles.items[0].note, "=dances");
    ck_assert_int_eq(read.folder->materials.items[0].on_hand, -500000);
    reading_free(&read);
}
END_TEST

START_TEST(a_long_text_is_kept_whole)
{
    static const char text[] =
        "let out the side seams by two fingers, take up the left shoulder, and ask again about the "
        "collar, which he says he could not turn his head in";
    good_sheets_put();
    sheet_change("roles.csv", "dances in act two",
                 "\"let out the side seams by two fingers, take up the left shoulder, and "
                 "ask again about the collar, which he says he could not turn his head "
                 "in\"");
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_int_eq(read.status, BK_OK);
    ck_assert_str_eq(read.folder->roles.items[0].note, text);
    ck_assert_ptr_null(read.folder->roles.items[1].note);
    reading_free(&read);
}
END_TEST

START_TEST(a_third_of_an_hour_of_rest_is_twenty_minutes)
{
    good_sheets_put();
    sheet_change("steps.csv", "0.5", "0.333333");
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_int_eq(read.status, BK_OK);
    ck_assert_int_eq(read.folder->steps.items[1].rest_minutes, 20);
    reading_free(&read);
}
END_TEST

START_TEST(money_has_no_currency_where_the_production_has_none)
{
    good_sheets_put();
    sheet_change("production.csv", "GBP", "");
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_int_eq(read.status, BK_OK);
    ck_assert_int_eq(read.folder->pieces.items[0].cost, 1250);
    ck_assert_ptr_null(read.folder->pieces.items[0].currency);
    ck_assert_str_eq(read.folder->pieces.items[1].currency, "EUR");
    reading_free(&read);
}
END_TEST

START_TEST(the_limits_of_numbers_are_themselves_right)
{
    good_sheets_put();
    sheet_change("steps.csv", "45,30,90,,1,3", "0,0,1000000,,99,1");
    sheet_change("production.csv", "180", "36500");
    sheet_change("performers.csv", "60", "1");
    sheet_change("needs.csv", "2.4", "0.000001");
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_int_eq(read.status, BK_OK);
    ck_assert_int_eq(read.folder->steps.items[0].minutes, 0);
    ck_assert_int_eq(read.folder->steps.items[0].hands, 99);
    ck_assert_int_eq(read.folder->needs.items[0].quantity, 1);
    reading_free(&read);
}
END_TEST

BK_TEST_MAIN("cell read", every_example_that_a_sentence_gives_is_right, the_production_and_its_dates_are_read,
             people_and_their_measures_are_read, costumes_pieces_and_steps_are_read,
             materials_orders_and_fittings_are_read, the_same_name_is_the_same_text_in_all_sheets,
             spaces_round_values_and_items_of_lists_are_passed_over,
             the_guard_against_formulas_is_taken_off_every_cell, a_long_text_is_kept_whole,
             a_third_of_an_hour_of_rest_is_twenty_minutes,
             money_has_no_currency_where_the_production_has_none, the_limits_of_numbers_are_themselves_right)
