// What the workroom knows already: matched by name, filled cells replace and are noted, empty ones change
// nothing.

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "work/show.h"

/// The show taken in, and beside it another production of the same people, which `change` has changed; the
/// notes.
typedef struct second_import {
    bk_store *store;
    bk_folder *folder; ///< "The Sugar Road"
} second_import;

static second_import begin_second(void)
{
    second_import second = {.store = open_store(), .folder = salt_road()};
    take_in(second.store, second.folder, false, NULL);
    second.folder->production.items[0].name = "The Sugar Road";
    return second;
}

static const char *end_second(second_import second)
{
    bk_import_report report;
    take_in(second.store, second.folder, false, &report);
    bk_store_close(second.store);
    bk_folder_free(second.folder);
    return notes_of(&report);
}

START_TEST(what_is_known_by_name_is_taken_to_be_the_same)
{
    ck_assert_str_eq(end_second(begin_second()), "");
    ck_assert_str_eq(bk_ask("SELECT (SELECT count(*) FROM performer), (SELECT count(*) FROM person), "
                            "(SELECT count(*) FROM material), (SELECT count(*) FROM purchase), "
                            "(SELECT count(*) FROM away), (SELECT count(*) FROM measure), "
                            "(SELECT count(*) FROM measure_sheet), (SELECT count(*) FROM movement), "
                            "(SELECT count(*) FROM production), (SELECT count(*) FROM company)"),
                     "3|2|3|3|3|3|2|2|2|6");
}
END_TEST

START_TEST(names_that_differ_in_a_capital_letter_are_two)
{
    second_import second = begin_second();
    second.folder->materials.items[0].name = "Wool";
    second.folder->needs.count = second.folder->orders.count = 0;
    ck_assert_str_eq(end_second(second), "");
    ck_assert_str_eq(bk_ask("SELECT name FROM material ORDER BY id"), "wool\nlinen\nhooks\nWool");
}
END_TEST

static void empty_performers_and_people(bk_folder *folder)
{
    for (size_t i = 0; i < folder->performers.count; i++) {
        folder->performers.items[i].contact = folder->performers.items[i].note = NULL;
        folder->performers.items[i].measures_good_for = BK_NOT_KNOWN;
    }
    for (size_t i = 0; i < folder->people.count; i++) {
        bk_person *person = &folder->people.items[i];
        person->skills = person->note = NULL;
        person->from = person->until = BK_NO_DAY;
        memset(person->hours, 0, sizeof person->hours);
    }
    for (size_t i = 0; i < folder->away.count; i++)
        folder->away.items[i].reason = NULL;
    for (size_t i = 0; i < folder->equipment.count; i++)
        folder->equipment.items[i].count = BK_NOT_KNOWN;
    for (size_t i = 0; i < folder->measures.count; i++)
        folder->measures.items[i].over = folder->measures.items[i].taken_by = NULL;
}

static void empty_materials_and_orders(bk_folder *folder)
{
    for (size_t i = 0; i < folder->materials.count; i++) {
        bk_material *material = &folder->materials.items[i];
        material->supplier = material->note = material->currency = NULL;
        material->on_hand = material->width = material->price = BK_NO_AMOUNT;
    }
    for (size_t i = 0; i < folder->orders.count; i++) {
        bk_order *order = &folder->orders.items[i];
        order->from = order->currency = NULL;
        order->due_on = order->arrived_on = BK_NO_DAY;
        order->cost = BK_NO_AMOUNT;
    }
}

START_TEST(an_empty_cell_changes_nothing)
{
    static const char workroom[] =
        "SELECT * FROM performer; SELECT * FROM performer_contact; SELECT * FROM measure; "
        "SELECT * FROM person; SELECT * FROM away; SELECT * FROM equipment; SELECT * FROM material; "
        "SELECT * FROM material_price; SELECT * FROM purchase; "
        "SELECT * FROM purchase_cost; SELECT * FROM movement";
    second_import second = begin_second();
    const char *before = bk_ask(workroom);
    empty_performers_and_people(second.folder);
    empty_materials_and_orders(second.folder);
    ck_assert_str_eq(end_second(second), "");
    ck_assert_str_eq(bk_ask(workroom), before);
}
END_TEST

START_TEST(a_filled_cell_replaces_one_of_which_nothing_was_known)
{
    second_import second = begin_second();
    second.folder->performers.items[0].note = "tall";
    second.folder->performers.items[0].contact = "tomas@stage.example";
    second.folder->materials.items[2].on_hand = TENTHS(300);
    second.folder->materials.items[0].price = 700;
    second.folder->materials.items[0].currency = "GBP";
    ck_assert_str_eq(end_second(second), "performers.csv: Tomas Lind: note: was empty, is now \"tall\"\n");
    ck_assert_str_eq(bk_ask("SELECT note FROM performer WHERE name = 'Tomas Lind'"), "tall");
    ck_assert_str_eq(bk_ask("SELECT contact FROM performer_contact ORDER BY 1"),
                     "ines@stage.example\ntomas@stage.example");
    ck_assert_str_eq(bk_ask("SELECT sum(quantity) FROM movement WHERE material_id = 3"), "30000000");
    ck_assert_str_eq(bk_ask("SELECT price FROM material_price WHERE material_id = 1"), "700");
}
END_TEST

START_TEST(what_differs_of_a_person_replaces_and_is_noted)
{
    second_import second = begin_second();
    bk_person *ada = &second.folder->people.items[1];
    ada->skills = "cut;machine;press";
    ada->hours[0] = "09:00-13:00";
    ada->hours[3] = "09:00-10:00";
    ada->from = DAY(2, 8);
    ada->until = DAY(6, 5);
    ada->note = "knows silk";
    second.folder->away.items[1].reason = "on tour";
    ck_assert_str_eq(end_second(second),
                     "people.csv: Ada Pell: skills: was \"cut;machine\", is now \"cut;machine;press\"\n"
                     "people.csv: Ada Pell: mon: was \"10:00-13:00\", is now \"09:00-13:00\"\n"
                     "people.csv: Ada Pell: thu: was empty, is now \"09:00-10:00\"\n"
                     "people.csv: Ada Pell: from: was \"2027-02-01\", is now \"2027-02-08\"\n"
                     "people.csv: Ada Pell: until: was \"2027-06-04\", is now \"2027-06-05\"\n"
                     "people.csv: Ada Pell: note: was \"knows wool\", is now \"knows silk\"\n"
                     "away.csv: Ada Pell: reason: was empty, is now \"on tour\"\n");
    ck_assert_str_eq(
        bk_ask("SELECT skills, mon, thu, sun, from_day, until_day, note FROM person WHERE id = 2"),
        "cut;machine;press|09:00-13:00|09:00-10:00|10:00-12:00|2027-02-08|2027-06-05|knows silk");
    ck_assert_str_eq(bk_ask("SELECT reason FROM away WHERE from_day = '2027-03-01'"), "on tour");
}
END_TEST

START_TEST(what_differs_of_equipment_replaces_and_is_noted_and_what_is_new_comes_last)
{
    second_import second = begin_second();
    ROWS(second.folder, equipment, bk_equipment, {.name = "dye room", .kinds = "dye", .count = BK_NOT_KNOWN},
         {.name = "cutting table", .kinds = "cut", .count = 1},
         {.name = "Machine", .kinds = "machine", .count = 1},
         {.name = "machine", .kinds = "machine", .count = 3});
    ck_assert_str_eq(end_second(second),
                     "equipment.csv: cutting table: kinds: was \"draft;cut\", is now \"cut\"\n"
                     "equipment.csv: cutting table: count: was empty, is now \"1\"\n"
                     "equipment.csv: machine: count: was \"2\", is now \"3\"\n");
    ck_assert_str_eq(bk_ask("SELECT name, kinds, count FROM equipment ORDER BY position, id"),
                     "machine|machine|3\ncutting table|cut|1\ndye room|dye|\nMachine|machine|1");
}
END_TEST

START_TEST(what_differs_of_a_material_or_an_order_replaces_and_is_noted)
{
    second_import second = begin_second();
    bk_material *linen = &second.folder->materials.items[1];
    linen->unit = BK_METRE;
    linen->on_hand = TENTHS(12);
    linen->width = 1400000;
    linen->supplier = "the other mill";
    linen->price = 950;
    linen->currency = "EUR";
    linen->note = "wash twice";
    bk_order *order = &second.folder->orders.items[1];
    order->due_on = DAY(2, 25);
    order->arrived_on = DAY(2, 26);
    order->from = "the other mill";
    order->cost = 5300;
    ck_assert_str_eq(end_second(second),
                     "materials.csv: linen: unit: was \"yd\", is now \"m\"\n"
                     "materials.csv: linen: width: was \"150 cm\", is now \"140 cm\"\n"
                     "materials.csv: linen: supplier: was \"the mill\", is now \"the other mill\"\n"
                     "materials.csv: linen: note: was \"wash first\", is now \"wash twice\"\n"
                     "materials.csv: linen: on_hand: was \"2.5\", is now \"1.2\"\n"
                     "materials.csv: linen: price: was \"8.90\", is now \"9.50 EUR\"\n"
                     "orders.csv: linen, 2027-02-10: due_on: was \"2027-02-24\", is now \"2027-02-25\"\n"
                     "orders.csv: linen, 2027-02-10: arrived_on: was \"2027-02-23\", is now \"2027-02-26\"\n"
                     "orders.csv: linen, 2027-02-10: from: was \"the mill\", is now \"the other mill\"\n"
                     "orders.csv: linen, 2027-02-10: cost: was \"5200 JPY\", is now \"5300 JPY\"\n");
    ck_assert_str_eq(bk_ask("SELECT unit, width, supplier, note FROM material WHERE name = 'linen'"),
                     "m|1400000|the other mill|wash twice");
    ck_assert_str_eq(bk_ask("SELECT price, currency FROM material_price"), "950|EUR");
    ck_assert_str_eq(bk_ask("SELECT cost, currency FROM purchase_cost"), "5300|JPY");
    ck_assert_str_eq(bk_ask("SELECT kind, quantity FROM movement WHERE material_id = 2 ORDER BY id"),
                     "count|2500000\ncount|-1300000");
}
END_TEST

START_TEST(measures_and_contacts_are_noted_without_their_values)
{
    second_import second = begin_second();
    second.folder->performers.items[1].contact = "ines@road.example";
    second.folder->performers.items[1].measures_good_for = 90;
    second.folder->measures.items[0].value = 724000;
    second.folder->measures.items[0].over = "a vest";
    second.folder->measures.items[2].taken_by = "Zoë Ngô";
    ck_assert_str_eq(
        end_second(second),
        "performers.csv: Ines Varga: measures_good_for: was \"60\", is now \"90\"\n"
        "performers.csv: Ines Varga: contact: replaced\n"
        "measures.csv: Ines Varga, 2027-02-03, waist girth: value: replaced\n"
        "measures.csv: Ines Varga, 2027-02-03, waist girth: over: was \"a shirt\", is now \"a vest\"\n"
        "measures.csv: Ines Varga, 2027-02-10, waist girth: taken_by: was empty, is now \"Zoë Ngô\"\n");
    ck_assert_str_eq(bk_ask("SELECT value, over, taken_by FROM measure ORDER BY sheet_id, position"),
                     "724000|a vest|Ada Pell\n986000||\n715000||Zoë Ngô");
}
END_TEST

START_TEST(new_measure_sheets_are_added_and_a_known_one_takes_in_what_it_lacks)
{
    second_import second = begin_second();
    ROWS(second.folder, measures, bk_measure, MEASURE("Ines Varga", DAY(2, 3), "neck girth", 350000),
         MEASURE("Ines Varga", DAY(2, 3), "hip girth", 986000),
         MEASURE("Tomas Lind", DAY(2, 3), "waist girth", 880000),
         MEASURE("Ines Varga", DAY(2, 24), "waist girth", 716000),
         MEASURE("Ines Varga", DAY(2, 3), "height", 1660000));
    ck_assert_str_eq(end_second(second), "");
    ck_assert_str_eq(
        bk_ask("SELECT performer.name, taken_on, measure_name.name, value FROM measure_sheet "
               "JOIN performer ON performer.id = performer_id JOIN measure ON sheet_id = measure_sheet.id "
               "JOIN measure_name ON measure_name.id = name_id ORDER BY performer.name, taken_on, position"),
        "Ines Varga|2027-02-03|waist girth|713000\nInes Varga|2027-02-03|hip girth|986000\n"
        "Ines Varga|2027-02-03|neck girth|350000\nInes Varga|2027-02-03|height|1660000\n"
        "Ines Varga|2027-02-10|waist girth|715000\nInes Varga|2027-02-24|waist girth|716000\n"
        "Tomas Lind|2027-02-03|waist girth|880000");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM measure_sheet"), "4");
}
END_TEST

START_TEST(a_performer_can_bear_the_name_of_an_absent_helper)
{
    second_import second = begin_second();
    ROWS(second.folder, performers, bk_performer, PERFORMER("Ada Pell", NULL, NULL));
    second.folder->roles.count = second.folder->costumes.count = second.folder->pieces.count = 0;
    second.folder->steps.count = second.folder->needs.count = second.folder->fittings.count = 0;
    second.folder->measures.count = 0;
    ck_assert_str_eq(end_second(second), "");
    ck_assert_str_eq(bk_ask("SELECT person_id, performer_id FROM away WHERE from_day = '2027-03-01'"), "2|4");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM away"), "3");
}
END_TEST

// ---------------------------------------------------------------------------------------------------- orders

START_TEST(orders_are_the_same_by_material_quantity_and_day_each_matched_once)
{
    second_import second = begin_second();
    ROWS(second.folder, orders, bk_order, ORDER("wool", TENTHS(30), DAY(2, 10), DAY(3, 9), BK_NO_DAY),
         ORDER("wool", TENTHS(30), DAY(2, 10), DAY(3, 17), BK_NO_DAY),
         ORDER("wool", TENTHS(30), DAY(2, 10), DAY(3, 18), BK_NO_DAY),
         ORDER("wool", TENTHS(31), DAY(2, 10), BK_NO_DAY, BK_NO_DAY),
         ORDER("wool", TENTHS(30), DAY(2, 11), BK_NO_DAY, BK_NO_DAY),
         ORDER("linen", TENTHS(30), DAY(2, 10), BK_NO_DAY, BK_NO_DAY));
    ck_assert_str_eq(end_second(second),
                     "orders.csv: wool, 2027-02-10: due_on: was \"2027-03-16\", is now \"2027-03-17\"\n");
    ck_assert_str_eq(bk_ask("SELECT name, quantity, ordered_on, due_on FROM purchase "
                            "JOIN material ON material.id = material_id ORDER BY purchase.id"),
                     "wool|3000000|2027-02-10|2027-03-09\nlinen|5000000|2027-02-10|2027-02-24\n"
                     "wool|3000000|2027-02-10|2027-03-17\nwool|3000000|2027-02-10|2027-03-18\n"
                     "wool|3100000|2027-02-10|\nwool|3000000|2027-02-11|\nlinen|3000000|2027-02-10|");
}
END_TEST

static const char wool_movements[] =
    "SELECT kind, quantity, moved_on, purchase_id FROM movement WHERE material_id = 1 "
    "ORDER BY id";

START_TEST(an_order_that_has_arrived_since_is_a_delivery_where_the_shelf_is_not_counted)
{
    second_import second = begin_second();
    second.folder->orders.items[0].arrived_on = DAY(3, 1);
    second.folder->materials.items[0].on_hand = BK_NO_AMOUNT;
    ck_assert_str_eq(end_second(second),
                     "orders.csv: wool, 2027-02-10: arrived_on: was empty, is now \"2027-03-01\"\n");
    ck_assert_str_eq(bk_ask(wool_movements), "count|1000000|2027-03-02|\ndelivery|3000000|2027-03-01|1");
}
END_TEST

START_TEST(the_same_where_the_material_has_no_row_at_all)
{
    second_import second = begin_second();
    second.folder->orders.items[0].arrived_on = DAY(3, 1);
    second.folder->materials.count = 0;
    end_second(second);
    ck_assert_str_eq(bk_ask(wool_movements), "count|1000000|2027-03-02|\ndelivery|3000000|2027-03-01|1");
}
END_TEST

START_TEST(where_the_shelf_is_counted_the_arrived_order_lies_in_the_count)
{
    second_import second = begin_second();
    second.folder->orders.items[0].arrived_on = DAY(3, 1);
    second.folder->materials.items[0].on_hand = TENTHS(40);
    end_second(second);
    ck_assert_str_eq(bk_ask(wool_movements), "count|1000000|2027-03-02|\ncount|3000000|2027-03-02|");
}
END_TEST

START_TEST(a_count_that_says_what_the_shelf_had_before_the_order_came_is_believed)
{
    second_import second = begin_second();
    second.folder->orders.items[0].arrived_on = DAY(3, 1);
    end_second(second);
    ck_assert_str_eq(bk_ask(wool_movements), "count|1000000|2027-03-02|");
}
END_TEST

START_TEST(an_order_that_had_arrived_before_is_no_second_delivery)
{
    second_import second = begin_second();
    second.folder->orders.items[1].arrived_on = DAY(3, 1);
    second.folder->materials.count = 0;
    end_second(second);
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM movement"), "2");
}
END_TEST

BK_TEST_MAIN("import merge", what_is_known_by_name_is_taken_to_be_the_same,
             names_that_differ_in_a_capital_letter_are_two, an_empty_cell_changes_nothing,
             a_filled_cell_replaces_one_of_which_nothing_was_known,
             what_differs_of_a_person_replaces_and_is_noted,
             what_differs_of_equipment_replaces_and_is_noted_and_what_is_new_comes_last,
             what_differs_of_a_material_or_an_order_replaces_and_is_noted,
             measures_and_contacts_are_noted_without_their_values,
             new_measure_sheets_are_added_and_a_known_one_takes_in_what_it_lacks,
             a_performer_can_bear_the_name_of_an_absent_helper,
             orders_are_the_same_by_material_quantity_and_day_each_matched_once,
             an_order_that_has_arrived_since_is_a_delivery_where_the_shelf_is_not_counted,
             the_same_where_the_material_has_no_row_at_all,
             where_the_shelf_is_counted_the_arrived_order_lies_in_the_count,
             a_count_that_says_what_the_shelf_had_before_the_order_came_is_believed,
             an_order_that_had_arrived_before_is_no_second_delivery)
