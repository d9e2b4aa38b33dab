#include <string.h>

#include "bodkin/trade/words.h"
#include "bodkin/work/clock.h"
#include "bodkin/work/tick.h"
#include "work/filled.h"

// The Salt Road has wool and linen counted (1.0 and 2.5), hooks never. P2/sew needs wool 2.4 and hooks 12; P2/fit needs
// nothing until a test says so.

static void count(bk_store *store, const char *name, bk_quantity on_hand)
{
    FILLED(bk_material, before, store, BK_MATERIALS, id_of("material", "name", name));
    bk_material after = before;
    after.on_hand = on_hand;
    save(store, BK_MATERIALS, &before, &after);
}

static const char *movements(void)
{
    return bk_ask("SELECT kind, quantity, moved_on FROM movement WHERE id > 2 ORDER BY id");
}

// -------------------------------------------------------------------------------------------------- counts

START_TEST(what_lies_there_is_counted_by_the_difference)
{
    bk_store *store = store_with_salt_road();
    count(store, "wool", TENTHS(7));
    ck_assert_str_eq(movements(), "count|-300000|2027-03-02");
    ck_assert_str_eq(on_shelf(store, "wool"), "0.7");
    count(store, "hooks", TENTHS(200));
    ck_assert_str_eq(on_shelf(store, "hooks"), "20");
    undo(store);
    ck_assert_str_eq(on_shelf(store, "hooks"), "-");
    bk_store_close(store);
}
END_TEST

START_TEST(a_shelf_that_was_counted_does_not_become_unknown)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_material, before, store, BK_MATERIALS, id_of("material", "name", "wool"));
    bk_material after = before;
    after.on_hand = BK_NO_AMOUNT;
    ck_assert_str_eq(refused(store, BK_MATERIALS, &before, &after), "on_hand");
    ck_assert_ptr_nonnull(strstr(trouble.text, "write 0 where nothing lies there"));
    bk_store_close(store);
}
END_TEST

START_TEST(a_new_material_brings_what_lies_there)
{
    bk_store *store = store_with_salt_road();
    bk_material felt = {.name = "felt",
                        .unit = BK_METRE,
                        .on_hand = TENTHS(15),
                        .width = BK_NO_AMOUNT,
                        .price = BK_NO_AMOUNT};
    ck_assert_str_eq(save(store, BK_MATERIALS, NULL, &felt).sentence, "New: material felt");
    ck_assert_str_eq(on_shelf(store, "felt"), "1.5");
    bk_store_close(store);
}
END_TEST

// -------------------------------------------------------------------------------------------------- orders

static int64_t open_order(void)
{
    return id_by("SELECT min(id) FROM purchase WHERE arrived_on IS NULL");
}

static void arrive(bk_store *store, int64_t id, bk_day on, bk_quantity quantity)
{
    FILLED(bk_order, before, store, BK_ORDERS, id);
    bk_order after = before;
    after.arrived_on = on;
    after.quantity = quantity;
    save(store, BK_ORDERS, &before, &after);
}

START_TEST(an_order_that_arrives_lies_on_the_shelf_and_leaves_it_when_it_did_not)
{
    bk_store *store = store_with_salt_road();
    int64_t id = open_order();
    arrive(store, id, DAY(3, 1), TENTHS(30));
    ck_assert_str_eq(on_shelf(store, "wool"), "4");
    ck_assert_str_eq(movements(), "delivery|3000000|2027-03-01");
    arrive(store, id, BK_NO_DAY, TENTHS(30));
    ck_assert_str_eq(on_shelf(store, "wool"), "1");
    arrive(store, id, DAY(3, 2), TENTHS(30));
    ck_assert_str_eq(on_shelf(store, "wool"), "4");
    bk_store_close(store);
}
END_TEST

START_TEST(an_order_that_came_in_as_arrived_is_on_the_shelf_once)
{
    bk_store *store = store_with_salt_road();
    int64_t id = id_by("SELECT id FROM purchase WHERE arrived_on IS NOT NULL");
    arrive(store, id, DAY(2, 24), TENTHS(60));
    ck_assert_str_eq(movements(), "");
    arrive(store, id, DAY(2, 24), TENTHS(50));
    ck_assert_str_eq(movements(), "");
    arrive(store, id, BK_NO_DAY, TENTHS(50));
    ck_assert_str_eq(on_shelf(store, "linen"), "-2.5");
    arrive(store, id, DAY(2, 24), TENTHS(50));
    ck_assert_str_eq(on_shelf(store, "linen"), "2.5");
    arrive(store, id, BK_NO_DAY, TENTHS(50));
    ck_assert_str_eq(on_shelf(store, "linen"), "-2.5");
    bk_store_close(store);
}
END_TEST

START_TEST(a_corrected_quantity_of_what_arrived_corrects_the_shelf)
{
    bk_store *store = store_with_salt_road();
    int64_t id = open_order();
    arrive(store, id, DAY(3, 1), TENTHS(30));
    arrive(store, id, DAY(3, 1), TENTHS(25));
    ck_assert_str_eq(on_shelf(store, "wool"), "3.5");
    FILLED(bk_order, before, store, BK_ORDERS, id);
    bk_order after = before;
    after.material = "linen";
    save(store, BK_ORDERS, &before, &after);
    ck_assert_str_eq(on_shelf(store, "wool"), "1");
    ck_assert_str_eq(on_shelf(store, "linen"), "5");
    bk_store_close(store);
}
END_TEST

START_TEST(a_new_order_lies_nowhere_until_it_arrives)
{
    bk_store *store = store_with_salt_road();
    bk_order order = ORDER("hooks", TENTHS(500), DAY(3, 2), DAY(3, 9), BK_NO_DAY);
    order.cost = 1299;
    bk_record_saved saved = save(store, BK_ORDERS, NULL, &order);
    ck_assert_str_eq(saved.sentence, "New: order of 50 hooks");
    ck_assert_str_eq(on_shelf(store, "hooks"), "-");
    arrive(store, saved.id, DAY(3, 9), TENTHS(500));
    ck_assert_str_eq(on_shelf(store, "hooks"), "50");
    bk_store_close(store);
}
END_TEST

START_TEST(more_than_can_be_kept_is_refused)
{
    bk_store *store = store_with_salt_road();
    bk_order order = ORDER("wool", BK_QUANTITY_MOST, DAY(3, 2), BK_NO_DAY, DAY(3, 2));
    ck_assert_str_eq(refused(store, BK_ORDERS, NULL, &order), "arrived_on");
    bk_store_close(store);
}
END_TEST

START_TEST(what_arrived_stays_when_its_order_is_taken_away)
{
    bk_store *store = store_with_salt_road();
    int64_t id = open_order();
    arrive(store, id, DAY(3, 1), TENTHS(30));
    const char *before = bk_records();
    ck_assert_str_eq(take_away(store, BK_ORDERS, id), "Taken away: order of 3 m of wool");
    ck_assert_str_eq(on_shelf(store, "wool"), "4");
    undo(store);
    ck_assert_str_eq(bk_records(), before);
    bk_store_close(store);
}
END_TEST

// -------------------------------------------------------------------------------------------- done and open

static void set_done(bk_store *store, const char *key, bk_day on)
{
    FILLED(bk_step, before, store, BK_STEPS, id_of("step", "key", key));
    bk_step after = before;
    after.done_on = on;
    save(store, BK_STEPS, &before, &after);
}

START_TEST(a_step_filled_in_as_done_takes_its_materials_as_a_tick_does)
{
    bk_store *store = store_with_salt_road();
    set_done(store, "sew", DAY(3, 1));
    ck_assert_str_eq(movements(), "use|-2400000|2027-03-01");
    set_done(store, "sew", DAY(2, 27));
    ck_assert_str_eq(movements(), "use|-2400000|2027-03-01");
    set_done(store, "sew", BK_NO_DAY);
    ck_assert_str_eq(movements(), "use|-2400000|2027-03-01\nreturn|2400000|2027-03-02");
    ck_assert_str_eq(on_shelf(store, "wool"), "1");
    bk_store_close(store);
}
END_TEST

START_TEST(a_running_clock_ends_when_its_step_is_filled_in_as_done)
{
    bk_store *store = store_with_salt_road();
    const char *sentence = NULL;
    bk_job job = job_in(store);
    MUST(bk_running_start(&job, id_of("step", "key", "sew"), &sentence, &trouble));
    bk_ask("UPDATE running SET started_at = '2027-03-02T09:00:00+01:00'");
    set_done(store, "sew", DAY(3, 2));
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM running"), "0");
    ck_assert_str_eq(bk_ask("SELECT took FROM step WHERE key = 'sew'"), "30");
    bk_store_close(store);
}
END_TEST

static int64_t fitting_id(void)
{
    return id_by("SELECT max(id) FROM fitting");
}

static void set_outcome(bk_store *store, int outcome)
{
    FILLED(bk_fitting, before, store, BK_FITTINGS, fitting_id());
    bk_fitting after = before;
    after.outcome = outcome;
    after.held_on = outcome == BK_NO_WORD ? BK_NO_DAY : DAY(3, 5);
    save(store, BK_FITTINGS, &before, &after);
}

static bk_store *store_with_need_of_fit(void)
{
    bk_store *store = store_with_salt_road();
    bk_need need = {.piece = "P2", .step = "fit", .material = "linen", .quantity = TENTHS(5)};
    save(store, BK_NEEDS, NULL, &need);
    return store;
}

START_TEST(a_fitting_that_fits_takes_the_materials_of_its_step_once)
{
    bk_store *store = store_with_need_of_fit();
    set_outcome(store, BK_FITS);
    ck_assert_str_eq(movements(), "use|-500000|2027-03-05");
    set_outcome(store, BK_AGAIN);
    ck_assert_str_eq(movements(), "use|-500000|2027-03-05\nreturn|500000|2027-03-02");
    set_outcome(store, BK_FITS);
    ck_assert_str_eq(take_away(store, BK_FITTINGS, fitting_id()), "Taken away: fitting P2/fit, Fri 5 Mar");
    ck_assert_str_eq(on_shelf(store, "linen"), "2.5");
    bk_store_close(store);
}
END_TEST

START_TEST(a_running_clock_ends_when_a_fitting_of_its_step_is_filled_in_as_one_that_fits)
{
    bk_store *store = store_with_need_of_fit();
    const char *sentence = NULL;
    bk_job job = job_in(store);
    MUST(bk_running_start(&job, id_of("step", "key", "fit"), &sentence, &trouble));
    bk_ask("UPDATE running SET started_at = '2027-03-02T09:00:00+01:00'");
    set_outcome(store, BK_FITS);
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM running"), "0");
    ck_assert_str_eq(bk_ask("SELECT took FROM step WHERE key = 'fit'"), "30");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_that_is_done_already_is_not_done_again_by_its_fitting)
{
    bk_store *store = store_with_need_of_fit();
    set_done(store, "fit", DAY(3, 4));
    set_outcome(store, BK_FITS);
    set_done(store, "fit", BK_NO_DAY);
    ck_assert_str_eq(movements(), "use|-500000|2027-03-04");
    set_outcome(store, BK_NO_WORD);
    ck_assert_str_eq(movements(), "use|-500000|2027-03-04\nreturn|500000|2027-03-02");
    bk_store_close(store);
}
END_TEST

START_TEST(what_a_done_step_is_said_to_need_later_does_not_come_back_when_it_is_opened)
{
    bk_store *store = store_with_salt_road();
    const char *linen = on_shelf(store, "linen");
    const char *hooks = on_shelf(store, "hooks");
    set_done(store, "fit", DAY(3, 1));
    set_done(store, "sew", DAY(3, 1));
    bk_need need = {.piece = "P2", .step = "fit", .material = "linen", .quantity = TENTHS(5)};
    save(store, BK_NEEDS, NULL, &need);
    need = (bk_need){.piece = "P2", .step = "sew", .material = "linen", .quantity = TENTHS(5)};
    save(store, BK_NEEDS, NULL, &need);
    set_done(store, "fit", BK_NO_DAY);
    set_done(store, "sew", BK_NO_DAY);
    ck_assert_str_eq(on_shelf(store, "linen"), linen);
    ck_assert_str_eq(on_shelf(store, "hooks"), hooks);
    set_done(store, "fit", DAY(3, 1));
    set_done(store, "fit", BK_NO_DAY);
    ck_assert_str_eq(on_shelf(store, "linen"), linen);
    bk_store_close(store);
}
END_TEST

START_TEST(what_a_done_step_used_stays_used_when_it_is_taken_away)
{
    bk_store *store = store_with_salt_road();
    set_done(store, "sew", DAY(3, 1));
    take_away(store, BK_STEPS, id_of("step", "key", "sew"));
    ck_assert_str_eq(on_shelf(store, "wool"), "-1.4");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("record_shelf", what_lies_there_is_counted_by_the_difference,
             a_shelf_that_was_counted_does_not_become_unknown, a_new_material_brings_what_lies_there,
             an_order_that_arrives_lies_on_the_shelf_and_leaves_it_when_it_did_not,
             an_order_that_came_in_as_arrived_is_on_the_shelf_once,
             a_corrected_quantity_of_what_arrived_corrects_the_shelf,
             a_new_order_lies_nowhere_until_it_arrives, more_than_can_be_kept_is_refused,
             what_arrived_stays_when_its_order_is_taken_away,
             a_step_filled_in_as_done_takes_its_materials_as_a_tick_does,
             a_running_clock_ends_when_its_step_is_filled_in_as_done,
             a_fitting_that_fits_takes_the_materials_of_its_step_once,
             a_running_clock_ends_when_a_fitting_of_its_step_is_filled_in_as_one_that_fits,
             a_step_that_is_done_already_is_not_done_again_by_its_fitting,
             what_a_done_step_is_said_to_need_later_does_not_come_back_when_it_is_opened,
             what_a_done_step_used_stays_used_when_it_is_taken_away)
