// The rail as it is read from the store: whose rows meet, who gets what of the shelf, how it is counted.

#include "bodkin/work/rail.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "work/show.h"

// ---------------------------------------------------------------------------------------------- what is told

static bk_rail *rail_of(bk_store *store, int64_t production)
{
    bk_rail *rail = NULL;
    MUST(bk_rail_read(store, production, today(), &rail, &trouble));
    return rail;
}

static const char *wait_told(const bk_rail *rail, const bk_wait *wait)
{
    const char *detail = bk_wait_detail_text(&rail->rows, wait, texts());
    const char *step = wait->step == BK_NO_INDEX ? "-" : rail->steps[wait->step].key;
    const char *told = bk_arena_print(texts(), "%s %s/%s %s", bk_word_text(&bk_wait_words, (int)wait->on),
                                      rail->pieces[wait->piece].name, step, detail);
    if (wait->on != BK_WAIT_MATERIALS)
        return told;
    char digits[BK_AMOUNT_ROOM];
    return bk_arena_print(texts(), "%s (%s of %s)", told, bk_quantity_write(wait->claim->short_of, digits),
                          rail->materials[wait->claim->material].name);
}

/// "1A held: materials P1/sew not ordered (1.8 of wool)", a line for each costume.
static const char *told(bk_store *store, int64_t production)
{
    const char *all = "";
    bk_rail *rail = rail_of(store, production);
    for (size_t i = 0; i < rail->costume_count; i++) {
        const bk_rail_costume *costume = &rail->costumes[i];
        const char *waits = "";
        for (size_t w = 0; w < costume->reckoned->wait_count; w++)
            waits = bk_arena_print(texts(), "%s%s %s", waits, w == 0 ? ":" : ",",
                                   wait_told(rail, &costume->reckoned->waits[w]));
        all = bk_arena_print(texts(), "%s%s %s%s\n", all, costume->record->number,
                             bk_word_text(&bk_state_words, (int)costume->reckoned->state), waits);
    }
    bk_rail_free(rail);
    return all;
}

// ----------------------------------------------------------------------------------------- sharing the shelf

/// A production of one costume, due on `due` (BK_NO_DAY: the usual day), whose one step needs 2.4 m of wool.
static bk_folder *wool_show(const char *name, bk_day opens, bk_day due)
{
    bk_folder *folder = bare_show(name, opens);
    ROWS(folder, roles, bk_role, ROLE("R", NULL, NULL));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "R", due));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A", BK_STOCK));
    ROWS(folder, steps, bk_step, STEP("P1", "sew", BK_MACHINE, 60, NULL));
    ROWS(folder, materials, bk_material, MATERIAL("wool", BK_METRE, BK_NO_AMOUNT));
    ROWS(folder, needs, bk_need, NEED("P1", "sew", "wool", TENTHS(24)));
    return folder;
}

static void add_wool_show(bk_store *store, const char *name, bk_day opens, bk_day due)
{
    bk_folder *folder = wool_show(name, opens, due);
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
}

/// Lays `tenths` of a metre of wool on the shelf and orders more: `quantity` tenths due on `due`, for each of
/// `count`.
static void add_wool(bk_store *store, int64_t tenths, const bk_order *orders, size_t count)
{
    bk_folder *folder = bare_show("Stores", DAY(12, 1));
    ROWS(folder, materials, bk_material, MATERIAL("wool", BK_METRE, TENTHS(tenths)));
    put_rows(folder->arena, &folder->orders, orders, sizeof *orders, count);
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
}

#define WOOL_ORDER(tenths, due) ORDER("wool", TENTHS(tenths), DAY(2, 1), due, BK_NO_DAY)

START_TEST(of_two_productions_the_one_that_is_due_first_gets_the_shelf)
{
    bk_store *store = open_store();
    add_wool_show(store, "Later", DAY(6, 1), BK_NO_DAY);
    add_wool_show(store, "Sooner", DAY(5, 1), BK_NO_DAY);
    add_wool(store, 30, NULL, 0);
    ck_assert_str_eq(told(store, 2), "1A in-work\n");
    ck_assert_str_eq(told(store, 1), "1A held: materials P1/sew not ordered (1.8 of wool)\n");
    bk_store_close(store);
}
END_TEST

START_TEST(the_due_day_of_the_costume_counts_before_the_opening)
{
    bk_store *store = open_store();
    add_wool_show(store, "Later", DAY(6, 1), DAY(4, 1));
    add_wool_show(store, "Sooner", DAY(5, 1), BK_NO_DAY);
    add_wool(store, 30, NULL, 0);
    ck_assert_str_eq(told(store, 1), "1A in-work\n");
    ck_assert_str_eq(told(store, 2), "1A held: materials P1/sew not ordered (1.8 of wool)\n");
    bk_store_close(store);
}
END_TEST

START_TEST(the_parade_of_another_production_makes_it_due_sooner)
{
    bk_store *store = open_store();
    bk_folder *folder = wool_show("Later", DAY(6, 1), BK_NO_DAY);
    ROWS(folder, dates, bk_date, DATE(BK_ON_TECH, DAY(3, 3)), DATE(BK_ON_PARADE, DAY(4, 20)));
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    add_wool_show(store, "Sooner", DAY(5, 1), BK_NO_DAY);
    add_wool(store, 24, NULL, 0);
    ck_assert_str_eq(told(store, 1), "1A in-work\n");
    ck_assert_str_eq(told(store, 2), "1A held: materials P1/sew not ordered (2.4 of wool)\n");
    bk_store_close(store);
}
END_TEST

START_TEST(a_piece_worn_twice_is_due_with_the_first_of_its_costumes)
{
    bk_store *store = open_store();
    add_wool_show(store, "Sooner", DAY(5, 1), BK_NO_DAY);
    bk_folder *folder = wool_show("Later", DAY(6, 1), BK_NO_DAY);
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "R", BK_NO_DAY), COSTUME("1B", "R", DAY(4, 1)));
    folder->pieces.items[0].costumes = "1A;1B";
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    add_wool(store, 24, NULL, 0);
    ck_assert_str_eq(told(store, 1), "1A held: materials P1/sew not ordered (2.4 of wool)\n");
    ck_assert_str_eq(told(store, 2), "1B in-work\n1A in-work\n");
    bk_store_close(store);
}
END_TEST

START_TEST(of_those_due_on_one_day_the_sooner_opening_and_then_the_name_comes_first)
{
    bk_store *store = open_store();
    add_wool_show(store, "Show 10", DAY(6, 1), DAY(5, 1));
    add_wool_show(store, "Show 2", DAY(6, 1), DAY(5, 1));
    add_wool_show(store, "Show 99", DAY(5, 31), DAY(5, 1));
    add_wool(store, 48, NULL, 0);
    ck_assert_str_eq(told(store, 3), "1A in-work\n");
    // Names of productions are put in order as they are written, without looking at their numbers.
    ck_assert_str_eq(told(store, 1), "1A in-work\n");
    ck_assert_str_eq(told(store, 2), "1A held: materials P1/sew not ordered (2.4 of wool)\n");
    bk_store_close(store);
}
END_TEST

START_TEST(orders_on_their_way_are_shared_in_the_same_order)
{
    const bk_order orders[] = {WOOL_ORDER(30, DAY(3, 15)), WOOL_ORDER(12, DAY(3, 8))};
    bk_store *store = open_store();
    add_wool_show(store, "Later", DAY(6, 1), BK_NO_DAY);
    add_wool_show(store, "Sooner", DAY(5, 1), BK_NO_DAY);
    add_wool(store, 12, orders, 2);
    ck_assert_str_eq(told(store, 2), "1A waiting: materials P1/sew due 2027-03-08 (1.2 of wool)\n");
    ck_assert_str_eq(told(store, 1), "1A waiting: materials P1/sew due 2027-03-15 (2.4 of wool)\n");
    bk_store_close(store);
}
END_TEST

START_TEST(a_production_put_away_claims_nothing)
{
    bk_store *store = open_store();
    add_wool_show(store, "Later", DAY(6, 1), BK_NO_DAY);
    add_wool_show(store, "Sooner", DAY(5, 1), BK_NO_DAY);
    add_wool(store, 30, NULL, 0);
    bk_ask("UPDATE production SET put_away_on = '2027-03-01' WHERE name = 'Sooner'");
    ck_assert_str_eq(told(store, 1), "1A in-work\n");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_that_is_done_or_whose_fitting_fits_claims_nothing)
{
    bk_store *store = open_store();
    bk_folder *folder = wool_show("Sooner", DAY(5, 1), BK_NO_DAY);
    ROWS(folder, steps, bk_step, STEP("P1", "sew", BK_MACHINE, 60, NULL), STEP("P1", "fit", BK_FIT, 60, NULL),
         STEP("P1", "press", BK_PRESS, 60, NULL));
    folder->steps.items[0].done_on = DAY(3, 1);
    ROWS(folder, needs, bk_need, NEED("P1", "sew", "wool", TENTHS(24)), NEED("P1", "fit", "wool", TENTHS(24)),
         NEED("P1", "press", "wool", TENTHS(1)));
    ROWS(folder, fittings, bk_fitting, FITTING("P1", "fit", DAY(3, 1)));
    folder->fittings.items[0].outcome = BK_FITS;
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    add_wool_show(store, "Later", DAY(6, 1), BK_NO_DAY);
    add_wool(store, 25, NULL, 0);
    ck_assert_str_eq(told(store, 2), "1A in-work\n");
    ck_assert_str_eq(told(store, 1), "1A in-work\n");
    bk_store_close(store);
}
END_TEST

START_TEST(one_production_alone_is_shared_out_by_costume_piece_and_step)
{
    bk_store *store = open_store();
    bk_folder *folder = wool_show("Alone", DAY(6, 1), BK_NO_DAY);
    ROWS(folder, costumes, bk_costume, COSTUME("10A", "R", BK_NO_DAY), COSTUME("2A", "R", BK_NO_DAY));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "10A", BK_STOCK), PIECE("P2", "2A", BK_STOCK));
    ROWS(folder, steps, bk_step, STEP("P1", "sew", BK_MACHINE, 60, NULL),
         STEP("P2", "sew", BK_MACHINE, 60, NULL));
    ROWS(folder, needs, bk_need, NEED("P1", "sew", "wool", TENTHS(24)),
         NEED("P2", "sew", "wool", TENTHS(24)));
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    add_wool(store, 25, NULL, 0);
    ck_assert_str_eq(told(store, 1), "2A in-work\n10A held: materials P1/sew not ordered (2.3 of wool)\n");
    bk_store_close(store);
}
END_TEST

// --------------------------------------------------------------------------------------- whose rows they are

START_TEST(a_role_that_nobody_plays_cannot_be_measured)
{
    bk_store *store = open_store();
    bk_folder *folder = bare_show("Alone", DAY(6, 1));
    ROWS(folder, roles, bk_role, ROLE("R", NULL, NULL));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "R", BK_NO_DAY));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A", BK_MAKE));
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 60, NULL));
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    ck_assert_str_eq(told(store, 1), "1A held: measures P1/cut uncast\n");
    bk_rail *rail = rail_of(store, 1);
    ck_assert_ptr_null(rail->costumes[0].performer);
    ck_assert_str_eq(rail->costumes[0].role, "R");
    bk_rail_free(rail);
    bk_store_close(store);
}
END_TEST

/// One made costume of `good_for` days' performer, measured on that day, in a production of `usual` days.
static const char *told_of_measures(int64_t own, int64_t usual, bk_day measured, const char *listed)
{
    bk_store *store = open_store();
    bk_folder *folder = bare_show("Alone", DAY(6, 1));
    folder->production.items[0].measures_good_for = usual;
    ROWS(folder, performers, bk_performer, PERFORMER("Ines Varga", NULL, NULL));
    folder->performers.items[0].measures_good_for = own;
    ROWS(folder, measures, bk_measure, MEASURE("Ines Varga", measured, "waist girth", 700000),
         MEASURE("Ines Varga", DAY(1, 1), "height", 1700000));
    ROWS(folder, roles, bk_role, ROLE("R", "Ines Varga", NULL));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "R", BK_NO_DAY));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A", BK_MAKE));
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 60, NULL));
    folder->steps.items[0].measures = listed;
    take_in(store, folder, true, NULL);
    bk_folder_free(folder);
    bk_rail *rail = NULL;
    MUST(bk_rail_read(store, 1, today(), &rail, &trouble));
    const bk_costume_waits *reckoned = rail->costumes[0].reckoned;
    const char *told = reckoned->wait_count == 0 ? "-" : wait_told(rail, &reckoned->waits[0]);
    bk_rail_free(rail);
    bk_store_close(store);
    bk_shell("rm workroom.db");
    return told;
}

START_TEST(measures_are_good_for_the_performers_days_else_the_productions_else_half_a_year)
{
    bk_day yesterday = today() - 1;
    ck_assert_str_eq(told_of_measures(BK_NOT_KNOWN, BK_NOT_KNOWN, today() - 180, NULL), "-");
    ck_assert_str_eq(told_of_measures(BK_NOT_KNOWN, 10, yesterday, NULL), "-");
    ck_assert_str_eq(told_of_measures(BK_NOT_KNOWN, 10, DAY(2, 1), NULL), "measures P1/cut old");
    ck_assert_str_eq(told_of_measures(60, 10, DAY(2, 1), NULL), "-");
    ck_assert_str_eq(told_of_measures(0, 10, yesterday, NULL), "measures P1/cut old");
}
END_TEST

START_TEST(measures_that_a_step_lists_are_looked_up_one_by_one)
{
    ck_assert_str_eq(told_of_measures(BK_NOT_KNOWN, BK_NOT_KNOWN, DAY(3, 1), "height;waist girth"), "-");
    ck_assert_str_eq(told_of_measures(BK_NOT_KNOWN, BK_NOT_KNOWN, DAY(3, 1), "height;hip girth"),
                     "measures P1/cut part");
    ck_assert_str_eq(told_of_measures(30, BK_NOT_KNOWN, DAY(3, 1), "waist girth;height"),
                     "measures P1/cut old");
    ck_assert_str_eq(told_of_measures(30, BK_NOT_KNOWN, DAY(3, 1), "waist girth"), "-");
}
END_TEST

START_TEST(the_newest_fitting_is_the_latest_booked_and_the_later_row_at_a_tie)
{
    const bk_fitting fittings[] = {
        {.piece = "P1",
         .step = "fit",
         .booked_at = {DAY(2, 8), 600},
         .held_on = BK_NO_DAY,
         .outcome = BK_NO_WORD},
        {.piece = "P1",
         .step = "fit",
         .booked_at = {DAY(2, 8), BK_NO_TIME},
         .held_on = BK_NO_DAY,
         .outcome = BK_MISSED},
        {.piece = "P1",
         .step = "fit",
         .booked_at = {DAY(2, 8), 600},
         .held_on = BK_NO_DAY,
         .outcome = BK_AGAIN},
    };
    static const char *const expected[] = {"missed", "missed", "unbooked"};
    for (size_t count = 1; count <= sizeof fittings / sizeof *fittings; count++) {
        bk_store *store = open_store();
        bk_folder *folder = wool_show("Alone", DAY(6, 1), BK_NO_DAY);
        folder->needs.count = 0;
        ROWS(folder, steps, bk_step, STEP("P1", "fit", BK_FIT, 60, NULL));
        put_rows(folder->arena, &folder->fittings, fittings, sizeof *fittings, count);
        take_in(store, folder, false, NULL);
        bk_folder_free(folder);
        ck_assert_str_eq(told(store, 1),
                         bk_arena_print(texts(), "1A held: fitting P1/fit %s\n", expected[count - 1]));
        bk_store_close(store);
        bk_shell("rm workroom.db");
    }
}
END_TEST

START_TEST(the_people_of_the_workroom_work_for_every_production)
{
    bk_store *store = open_store();
    add_wool_show(store, "Alone", DAY(6, 1), BK_NO_DAY);
    add_wool(store, 24, NULL, 0);
    ck_assert_str_eq(told(store, 1), "1A in-work\n");
    bk_folder *folder = bare_show("Other", DAY(7, 1));
    ROWS(folder, people, bk_person, PERSON("Ada Pell", "cut;machine"));
    take_in(store, folder, false, NULL);
    ck_assert_str_eq(told(store, 1), "1A held: people P1/sew nobody\n");
    folder->people.items[0].hours[0] = "10:00-11:00";
    take_in(store, folder, true, NULL);
    ck_assert_str_eq(told(store, 1), "1A in-work\n");
    ROWS(folder, away, bk_away, AWAY("Ada Pell", DAY(3, 1), DAY(6, 30), NULL));
    take_in(store, folder, true, NULL);
    ck_assert_str_eq(told(store, 1), "1A held: people P1/sew nobody\n");
    bk_folder_free(folder);
    bk_store_close(store);
}
END_TEST

// -------------------------------------------------------------------------------------------------- counting

static bk_rail *salt_road_rail(bk_store **store)
{
    bk_folder *folder = salt_road();
    *store = open_store();
    take_in(*store, folder, false, NULL);
    bk_folder_free(folder);
    return rail_of(*store, 1);
}

START_TEST(costumes_hang_by_due_day_and_then_by_number)
{
    bk_store *store;
    bk_rail *rail = salt_road_rail(&store);
    ck_assert_uint_eq(rail->costume_count, 3);
    ck_assert_str_eq(rail->costumes[0].record->number, "2B");
    ck_assert_str_eq(rail->costumes[1].record->number, "2A");
    ck_assert_str_eq(rail->costumes[2].record->number, "10A");
    ck_assert_int_eq(rail->costumes[0].due, DAY(5, 28));
    ck_assert_int_eq(rail->costumes[1].due, DAY(5, 30));
    ck_assert_str_eq(rail->costumes[2].role, "The Miller");
    ck_assert_str_eq(rail->costumes[2].performer, "Ines Varga");
    bk_rail_free(rail);
    bk_store_close(store);
}
END_TEST

START_TEST(minutes_of_a_piece_worn_twice_count_once_for_the_production)
{
    bk_store *store;
    bk_rail *rail = salt_road_rail(&store);
    ck_assert_int_eq(rail->minutes, 120 + 75 + 40 + 15);
    ck_assert_int_eq(rail->minutes_left, 120 + 40 + 15);
    ck_assert_int_eq(rail->costumes[0].reckoned->minutes_left, 120 + 40);
    ck_assert_int_eq(rail->costumes[2].reckoned->minutes_left, 120 + 40 + 15);
    ck_assert_int_eq(rail->days_left, DAY(6, 4) - today());
    bk_rail_free(rail);
    bk_store_close(store);
}
END_TEST

START_TEST(costumes_are_counted_by_state_and_once_for_each_thing_they_wait_on)
{
    bk_store *store;
    bk_rail *rail = salt_road_rail(&store);
    const bk_rail_counts *counts = &rail->counts;
    ck_assert_int_eq(counts->costumes, 3);
    ck_assert_int_eq(counts->states[BK_HELD], 2);
    ck_assert_int_eq(counts->states[BK_UNLISTED], 1);
    ck_assert_int_eq(counts->states[BK_READY] + counts->states[BK_IN_WORK] + counts->states[BK_WAITING], 0);
    ck_assert_int_eq(counts->can_go_on, 0);
    // 2B and 10A lack wool and hooks; P1 of 10A is out, and nobody presses.
    ck_assert_int_eq(counts->waits[BK_WAIT_MATERIALS], 2);
    ck_assert_int_eq(counts->waits[BK_WAIT_OUT], 1);
    ck_assert_int_eq(counts->waits[BK_WAIT_PEOPLE], 1);
    ck_assert_int_eq(counts->waits[BK_WAIT_HAND], 0);
    ck_assert(bk_rail_waits_on(&rail->costumes[0], BK_WAIT_MATERIALS));
    ck_assert(!bk_rail_waits_on(&rail->costumes[0], BK_WAIT_OUT));
    bk_rail_free(rail);
    bk_store_close(store);
}
END_TEST

START_TEST(the_seam_of_a_costume_has_its_minutes_and_a_pin_where_nothing_can_be_done)
{
    static const struct {
        bk_state state;
        bool pin;
    } rows[] = {{BK_READY, false},  {BK_IN_WORK, false}, {BK_FINISHING, true},
                {BK_WAITING, true}, {BK_HELD, true},     {BK_UNLISTED, false}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        bk_costume_waits reckoned = {.state = rows[i].state, .minutes = 100, .minutes_left = 30};
        bk_seam seam = bk_rail_seam(&(bk_rail_costume){.reckoned = &reckoned});
        ck_assert_int_eq(seam.done, 70);
        ck_assert_int_eq(seam.open, 30);
        ck_assert(seam.waits == rows[i].pin);
    }
}
END_TEST

START_TEST(a_production_that_is_gone_is_refused)
{
    bk_store *store;
    bk_rail *rail = salt_road_rail(&store);
    bk_rail_free(rail);
    REFUSED(bk_rail_read(store, 2, today(), &rail, &trouble), BK_REFUSED,
            "This production is no longer in the workroom; choose another.");
    ck_assert_ptr_null(rail);
    bk_rail_free(rail);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("rail", of_two_productions_the_one_that_is_due_first_gets_the_shelf,
             the_due_day_of_the_costume_counts_before_the_opening,
             the_parade_of_another_production_makes_it_due_sooner,
             a_piece_worn_twice_is_due_with_the_first_of_its_costumes,
             of_those_due_on_one_day_the_sooner_opening_and_then_the_name_comes_first,
             orders_on_their_way_are_shared_in_the_same_order, a_production_put_away_claims_nothing,
             a_step_that_is_done_or_whose_fitting_fits_claims_nothing,
             one_production_alone_is_shared_out_by_costume_piece_and_step,
             a_role_that_nobody_plays_cannot_be_measured,
             measures_are_good_for_the_performers_days_else_the_productions_else_half_a_year,
             measures_that_a_step_lists_are_looked_up_one_by_one,
             the_newest_fitting_is_the_latest_booked_and_the_later_row_at_a_tie,
             the_people_of_the_workroom_work_for_every_production,
             costumes_hang_by_due_day_and_then_by_number,
             minutes_of_a_piece_worn_twice_count_once_for_the_production,
             costumes_are_counted_by_state_and_once_for_each_thing_they_wait_on,
             the_seam_of_a_costume_has_its_minutes_and_a_pin_where_nothing_can_be_done,
             a_production_that_is_gone_is_refused)
