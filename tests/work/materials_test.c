#include "bodkin/work/materials.h"

#include <string.h>

#include "bodkin/store/daybook.h"
#include "bodkin/trade/words.h"
#include "work/bench.h"

static bk_material_list read_for(bk_store *store, int64_t production)
{
    bk_material_list list;
    MUST(bk_materials_read(store, production, today(), texts(), &list, &trouble));
    return list;
}

static const bk_material_line *line_of(bk_store *store, const char *name)
{
    bk_material_list list = read_for(store, bench_job(store).production);
    for (size_t i = 0; i < list.count; i++)
        if (strcmp(list.items[i].record.name, name) == 0)
            return &list.items[i];
    ck_abort_msg("no such material: %s", name);
    return NULL;
}

static const char *number(bk_quantity quantity)
{
    char text[BK_AMOUNT_ROOM];
    return quantity == BK_NO_AMOUNT ? "-" : bk_arena_text(texts(), bk_quantity_write(quantity, text));
}

static const char *day(bk_day of)
{
    char text[BK_DAY_ROOM];
    return of == BK_NO_DAY ? "-" : bk_arena_text(texts(), bk_day_write(of, text));
}

/// On hand, promised (due), needed here of needed, short.
static const char *sums_of(bk_store *store, const char *name)
{
    const bk_material_line *line = line_of(store, name);
    return bk_arena_print(texts(), "%s %s (%s) %s of %s short %s", number(line->record.on_hand),
                          number(line->promised), day(line->promised_due), number(line->needed_here),
                          number(line->needed), number(line->short_of));
}

/// A line each: piece/step, due, quantity = from the shelf + from orders (when) + unmet.
static const char *needs_of(bk_store *store, const char *name)
{
    const bk_material_line *line = line_of(store, name);
    const char *all = "";
    for (size_t i = 0; i < line->need_count; i++) {
        const bk_material_need *need = &line->needs[i];
        all = bk_arena_print(texts(), "%s%s%s/%s %s: %s = %s + %s (%s) + %s", all, i ? "\n" : "", need->piece,
                             need->step, day(need->due), number(need->quantity), number(need->on_shelf),
                             number(need->on_order), day(need->comes), number(need->unmet));
    }
    return all;
}

static void ordered(const char *material, const char *quantity, const char *due, const char *arrived)
{
    bk_ask(
        bk_arena_print(texts(),
                       "INSERT INTO purchase (material_id, quantity, ordered_on, due_on, arrived_on) VALUES "
                       "(%lld, %s * 1000000, '2027-02-10', %s, %s)",
                       (long long)material_id(material), quantity, due, arrived));
}

START_TEST(what_lies_on_the_shelf_goes_to_the_most_urgent_first)
{
    bk_store *store = bench_store();
    ck_assert_str_eq(sums_of(store, "wool"), "5 0 (-) 4.2 of 4.2 short 0");
    bk_ask("UPDATE movement SET quantity = 2000000");
    ck_assert_str_eq(sums_of(store, "wool"), "2 0 (-) 4.2 of 4.2 short 2.2");
    ck_assert_str_eq(needs_of(store, "wool"), "4A-1/toile 2027-03-20: 1.2 = 1.2 + 0 (-) + 0\n"
                                              "4A-2/cut 2027-06-04: 3 = 0.8 + 0 (-) + 2.2");
    bk_store_close(store);
}
END_TEST

START_TEST(what_the_shelf_lacks_is_met_from_orders_the_earliest_first)
{
    bk_store *store = bench_store();
    bk_ask("UPDATE movement SET quantity = 1000000");
    ordered("wool", "1.5", "'2027-03-16'", "NULL");
    ordered("wool", "0.5", "'2027-03-09'", "NULL");
    ordered("wool", "7", "'2027-02-20'", "'2027-02-21'");
    ck_assert_str_eq(sums_of(store, "wool"), "1 2 (2027-03-09) 4.2 of 4.2 short 1.2");
    ck_assert_str_eq(needs_of(store, "wool"), "4A-1/toile 2027-03-20: 1.2 = 1 + 0.2 (2027-03-09) + 0\n"
                                              "4A-2/cut 2027-06-04: 3 = 0 + 1.8 (2027-03-16) + 1.2");
    bk_store_close(store);
}
END_TEST

START_TEST(a_material_that_was_never_counted_is_not_known_and_counts_as_none)
{
    bk_store *store = bench_store();
    ck_assert_str_eq(sums_of(store, "hooks"), "- 0 (-) 12 of 12 short 12");
    bk_store_close(store);
}
END_TEST

START_TEST(a_done_step_needs_nothing_any_more)
{
    bk_store *store = bench_store();
    bk_ask("UPDATE step SET done_on = '2027-03-01' WHERE key IN ('hem', 'toile')");
    ck_assert_str_eq(sums_of(store, "hooks"), "- 0 (-) 0 of 0 short 0");
    ck_assert(line_of(store, "hooks")->here);
    ck_assert_str_eq(needs_of(store, "wool"), "4A-2/cut 2027-06-04: 3 = 3 + 0 (-) + 0");
    bk_store_close(store);
}
END_TEST

START_TEST(other_productions_need_of_the_same_shelf_until_they_are_put_away)
{
    bk_store *store = bench_store();
    bk_folder *folder = salt_road();
    ROWS(folder, materials, bk_material, MATERIAL("wool", BK_METRE, BK_NO_AMOUNT),
         MATERIAL("linen", BK_YARD, TENTHS(5)), MATERIAL("hooks", BK_EACH, BK_NO_AMOUNT));
    folder->orders.count = 0;
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    // P2/sew of The Salt Road needs 2.4 of wool by 28 May.
    ck_assert_str_eq(needs_of(store, "wool"), "4A-1/toile 2027-03-20: 1.2 = 1.2 + 0 (-) + 0\n"
                                              "P2/sew 2027-05-28: 2.4 = 2.4 + 0 (-) + 0\n"
                                              "4A-2/cut 2027-06-04: 3 = 1.4 + 0 (-) + 1.6");
    ck_assert_str_eq(sums_of(store, "wool"), "5 0 (-) 4.2 of 6.6 short 1.6");
    ck_assert_str_eq(line_of(store, "wool")->needs[1].production, "The Salt Road");
    ck_assert(!line_of(store, "linen")->here);
    bk_ask("UPDATE production SET put_away_on = '2027-03-01' WHERE name = 'The Salt Road'");
    ck_assert_str_eq(sums_of(store, "wool"), "5 0 (-) 4.2 of 4.2 short 0");
    bk_store_close(store);
}
END_TEST

START_TEST(all_materials_stand_by_name_also_for_no_production)
{
    bk_store *store = bench_store();
    bk_material_list list = read_for(store, 0);
    ck_assert_uint_eq(list.count, 2);
    ck_assert_str_eq(list.items[0].record.name, "hooks");
    ck_assert_str_eq(list.items[1].record.name, "wool");
    ck_assert(!list.items[1].here);
    ck_assert_str_eq(number(list.items[1].needed), "4.2");
    ck_assert_str_eq(number(list.items[1].needed_here), "0");
    ck_assert_int_eq(list.items[1].record.price, 890);
    bk_store_close(store);
}
END_TEST

START_TEST(orders_under_way_stand_before_those_arrived)
{
    bk_store *store = bench_store();
    ordered("wool", "1", "NULL", "NULL");
    ordered("wool", "2", "'2027-03-09'", "NULL");
    ordered("wool", "3", "NULL", "'2027-02-11'");
    ordered("hooks", "9", "NULL", "NULL");
    ordered("wool", "4", "NULL", "'2027-02-21'");
    bk_ask("INSERT INTO purchase_cost SELECT id, 500, 'GBP' FROM purchase WHERE quantity = 2000000");
    const bk_material_line *line = line_of(store, "wool");
    const char *all = "";
    for (size_t i = 0; i < line->order_count; i++)
        all = bk_arena_print(texts(), "%s%s ", all, number(line->orders[i].quantity));
    ck_assert_str_eq(all, "2 1 4 3 ");
    ck_assert_int_eq(line->orders[0].cost, 500);
    ck_assert_str_eq(line->orders[0].currency, "GBP");
    ck_assert_str_eq(line->orders[0].material, "wool");
    ck_assert_int_eq(line->orders[1].cost, BK_NO_AMOUNT);
    bk_store_close(store);
}
END_TEST

// --------------------------------------------------------------------------------------------------- shopping

static const char *costs(const bk_money_sum *items, size_t count)
{
    const char *all = "";
    for (size_t i = 0; i < count; i++)
        all = bk_arena_print(texts(), "%s %lld %s", all, (long long)items[i].amount,
                             items[i].currency ? items[i].currency : "-");
    return all;
}

/// A line a supplier: "the mill: wool 2.3 2047 = 2047 GBP, 0 unpriced".
static const char *shopping(bk_store *store)
{
    bk_material_list list = read_for(store, 0);
    const char *all = "";
    for (size_t i = 0; i < list.shopping_count; i++) {
        const bk_shopping *one = &list.shopping[i];
        all = bk_arena_print(texts(), "%s%s:", all, one->supplier ? one->supplier : "-");
        for (size_t item = 0; item < one->count; item++) {
            const bk_to_buy *buy = &one->items[item];
            all = bk_arena_print(
                texts(), "%s %s %s %s", all, buy->material->record.name, number(buy->quantity),
                buy->cost == BK_NO_AMOUNT ? "-" : bk_arena_print(texts(), "%lld", (long long)buy->cost));
        }
        all = bk_arena_print(texts(), "%s =%s, %zu unpriced\n", all, costs(one->costs, one->cost_count),
                             one->unpriced);
    }
    return bk_arena_print(texts(), "%sall%s", all, costs(list.costs, list.cost_count));
}

/// A material of which so much is short.
static void lacking(const char *name, const char *unit, const char *quantity, const char *supplier,
                    const char *price)
{
    bk_ask(bk_arena_print(
        texts(),
        "INSERT INTO material (name, unit, supplier) VALUES ('%s', '%s', %s); INSERT INTO need (step_id, "
        "material_id, position, quantity) SELECT %lld, max(id), max(id), %s FROM material; INSERT INTO "
        "material_price SELECT max(id), %s FROM material",
        name, unit, supplier, (long long)step_id("4A-2", "hem"), quantity, price));
}

START_TEST(what_is_short_is_to_be_bought_by_supplier_with_its_cost)
{
    bk_store *store = bench_store();
    ck_assert_str_eq(shopping(store), "-: hooks 12 - =, 1 unpriced\nall");
    bk_ask("UPDATE movement SET quantity = 1950000"); // 2.25 short of wool
    lacking("tape", "yd", "1000001", "'the mill'", "333, 'GBP'");
    lacking("zips", "each", "1500000", "'Ash & Son'", "120, 'EUR'");
    lacking("braid", "m", "100000", "'the mill'", "55, NULL");
    // 1.1 of 333 is 366.3, 2.3 of 890 is 2047, 0.1 of 55 is 5.5.
    ck_assert_str_eq(shopping(store), "Ash & Son: zips 2 240 = 240 EUR, 0 unpriced\n"
                                      "the mill: braid 0.1 6 tape 1.1 366 wool 2.3 2047 = 6 - 2413 GBP, 0 "
                                      "unpriced\n"
                                      "-: hooks 12 - =, 1 unpriced\n"
                                      "all 240 EUR 6 - 2413 GBP");
    bk_store_close(store);
}
END_TEST

START_TEST(whoever_may_not_know_prices_sees_the_shelf_without_them)
{
    bk_store *store = bench_store();
    bk_ask("UPDATE movement SET quantity = 1950000");
    bk_store_close(store);
    bk_store_options director = {
        .path = bk_test_path("workroom.db"), .as = BK_AS_DIRECTOR, .who = "Bo", .terminal = "tty1"};
    MUST(bk_store_open(&store, &director, &trouble));
    bk_material_list list = read_for(store, 0);
    ck_assert_int_eq(list.items[1].record.price, BK_NO_AMOUNT);
    ck_assert_str_eq(shopping(store), "the mill: wool 2.3 - =, 1 unpriced\n-: hooks 12 - =, 1 unpriced\nall");
    bk_store_close(store);
}
END_TEST

// ------------------------------------------------------------------------------------- counting and ordering

static const char *movements(void)
{
    return bk_ask("SELECT material.name, movement.kind, quantity, moved_on, coalesce(purchase_id, '-') FROM "
                  "movement JOIN material ON material.id = material_id WHERE movement.id > 1 ORDER BY "
                  "movement.id");
}

static const char *orders(void)
{
    return bk_ask(
        "SELECT purchase.id, material.name, quantity, ordered_on, coalesce(due_on, '-'), "
        "coalesce(arrived_on, '-'), coalesce(purchase.supplier, '-'), coalesce(cost, '-'), "
        "coalesce(currency, '-') FROM purchase JOIN material ON material.id = material_id LEFT JOIN "
        "purchase_cost ON purchase_id = purchase.id ORDER BY purchase.id");
}

static const char *count_as(bk_store *store, const char *name, bk_quantity quantity)
{
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    MUST(bk_material_count(&job, material_id(name), quantity, &sentence, &trouble));
    ck_assert_str_eq(newest_entry(), sentence);
    return sentence;
}

START_TEST(a_count_brings_the_shelf_to_what_lies_there)
{
    bk_store *store = bench_store();
    const char *before = bk_records();
    ck_assert_str_eq(count_as(store, "wool", TENTHS(24)), "Counted: wool, 2.4 m (it was 5 m)");
    ck_assert_str_eq(movements(), "wool|count|-2600000|2027-03-02|-");
    ck_assert_str_eq(number(line_of(store, "wool")->record.on_hand), "2.4");
    expect_undone(store, before);
    ck_assert_str_eq(count_as(store, "hooks", TENTHS(120)), "Counted: hooks, 12");
    ck_assert_str_eq(number(line_of(store, "hooks")->record.on_hand), "12");
    bk_store_close(store);
}
END_TEST

START_TEST(an_empty_shelf_that_was_counted_is_known_to_be_empty)
{
    bk_store *store = bench_store();
    count_as(store, "hooks", 0);
    ck_assert_str_eq(number(line_of(store, "hooks")->record.on_hand), "0");
    bk_store_close(store);
}
END_TEST

static bk_order order_of(const char *name, bk_quantity quantity)
{
    return (bk_order){.material_id = material_id(name),
                      .quantity = quantity,
                      .ordered_on = BK_NO_DAY,
                      .due_on = BK_NO_DAY,
                      .arrived_on = BK_NO_DAY,
                      .cost = BK_NO_AMOUNT};
}

static const char *place(bk_store *store, bk_order order)
{
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    MUST(bk_material_order(&job, &order, &sentence, &trouble));
    ck_assert_str_eq(newest_entry(), sentence);
    return sentence;
}

START_TEST(an_order_is_placed_with_the_supplier_of_the_material)
{
    bk_store *store = bench_store();
    const char *before = bk_records();
    bk_order order = order_of("wool", TENTHS(30));
    order.due_on = DAY(3, 12);
    order.cost = 2670;
    order.currency = "GBP";
    ck_assert_str_eq(place(store, order), "Ordered: wool, 3 m, due Fri 12 Mar");
    ck_assert_str_eq(orders(), "1|wool|3000000|2027-03-02|2027-03-12|-|the mill|2670|GBP");
    ck_assert_str_eq(movements(), "");
    expect_undone(store, before);
    order = order_of("hooks", TENTHS(500));
    order.from = "Ash & Son";
    order.ordered_on = DAY(2, 27);
    ck_assert_str_eq(place(store, order), "Ordered: hooks, 50");
    bk_store_close(store);
}
END_TEST

START_TEST(what_arrived_when_it_was_ordered_lies_on_the_shelf)
{
    bk_store *store = bench_store();
    bk_order order = order_of("wool", TENTHS(30));
    order.arrived_on = DAY(3, 2);
    place(store, order);
    ck_assert_str_eq(movements(), "wool|delivery|3000000|2027-03-02|1");
    ck_assert_str_eq(number(line_of(store, "wool")->record.on_hand), "8");
    bk_store_close(store);
}
END_TEST

static const char *arrive(bk_store *store, int64_t order, bk_quantity quantity, bk_day on)
{
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    MUST(bk_order_arrived(&job, order, quantity, on, &sentence, &trouble));
    ck_assert_str_eq(newest_entry(), sentence);
    return sentence;
}

static void place_wool(bk_store *store)
{
    bk_order order = order_of("wool", TENTHS(30));
    order.due_on = DAY(3, 12);
    order.cost = 1000;
    order.currency = "GBP";
    place(store, order);
}

START_TEST(an_order_that_arrives_whole_lies_on_the_shelf)
{
    bk_store *store = bench_store();
    place_wool(store);
    const char *before = bk_records();
    ck_assert_str_eq(arrive(store, 1, BK_NO_AMOUNT, BK_NO_DAY), "Arrived: wool, 3 m");
    ck_assert_str_eq(orders(), "1|wool|3000000|2027-03-02|2027-03-12|2027-03-02|the mill|1000|GBP");
    ck_assert_str_eq(movements(), "wool|delivery|3000000|2027-03-02|1");
    expect_undone(store, before);
    bk_store_close(store);
}
END_TEST

START_TEST(of_an_order_that_arrives_in_part_the_rest_stays_under_way_and_costs_add_up)
{
    bk_store *store = bench_store();
    place_wool(store);
    const char *before = bk_records();
    ck_assert_str_eq(arrive(store, 1, TENTHS(10), DAY(3, 1)), "Arrived: wool, 1 m (2 m still to come)");
    ck_assert_str_eq(orders(), "1|wool|2000000|2027-03-02|2027-03-12|-|the mill|667|GBP\n"
                               "2|wool|1000000|2027-03-02|2027-03-12|2027-03-01|the mill|333|GBP");
    ck_assert_str_eq(movements(), "wool|delivery|1000000|2027-03-01|2");
    expect_undone(store, before);
    arrive(store, 1, BK_NO_AMOUNT, BK_NO_DAY);
    ck_assert_str_eq(number(line_of(store, "wool")->record.on_hand), "8");
    ck_assert_str_eq(bk_ask("SELECT sum(cost) FROM purchase_cost"), "1000");
    bk_store_close(store);
}
END_TEST

START_TEST(more_than_was_ordered_may_arrive)
{
    bk_store *store = bench_store();
    place_wool(store);
    ck_assert_str_eq(arrive(store, 1, TENTHS(31), BK_NO_DAY), "Arrived: wool, 3.1 m");
    ck_assert_str_eq(orders(), "1|wool|3100000|2027-03-02|2027-03-12|2027-03-02|the mill|1000|GBP");
    ck_assert_str_eq(number(line_of(store, "wool")->record.on_hand), "8.1");
    bk_store_close(store);
}
END_TEST

START_TEST(no_more_arrives_than_can_be_kept)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    bk_order order = order_of("wool", BK_QUANTITY_MOST);
    place(store, order);
    REFUSED(bk_order_arrived(&job, 1, BK_NO_AMOUNT, BK_NO_DAY, &sentence, &trouble), BK_REFUSED,
            "There would be more wool than can be kept");
    order.arrived_on = DAY(3, 2);
    REFUSED(bk_material_order(&job, &order, &sentence, &trouble), BK_REFUSED, "than can be kept");
    bk_store_close(store);
}
END_TEST

START_TEST(an_order_without_a_known_cost_is_split_without_one)
{
    bk_store *store = bench_store();
    place(store, order_of("hooks", TENTHS(500)));
    arrive(store, 1, TENTHS(200), BK_NO_DAY);
    ck_assert_str_eq(orders(), "1|hooks|30000000|2027-03-02|-|-|-|-|-\n"
                               "2|hooks|20000000|2027-03-02|-|2027-03-02|-|-|-");
    ck_assert_str_eq(number(line_of(store, "hooks")->record.on_hand), "20");
    bk_store_close(store);
}
END_TEST

START_TEST(what_cannot_be_counted_or_ordered_is_told_and_changes_nothing)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    place_wool(store);
    arrive(store, 1, BK_NO_AMOUNT, BK_NO_DAY);
    place(store, order_of("hooks", TENTHS(500)));
    const char *before = bk_ask(".dump");
    REFUSED(bk_material_count(&job, material_id("wool"), -1, &sentence, &trouble), BK_REFUSED,
            "The quantity of wool must be nothing or more");
    REFUSED(bk_material_count(&job, material_id("wool"), BK_QUANTITY_MOST + 1, &sentence, &trouble),
            BK_REFUSED, "at most 1000000000 m");
    REFUSED(bk_material_count(&job, material_id("hooks"), TENTHS(5), &sentence, &trouble), BK_REFUSED,
            "hooks are counted whole, not 0.5.");
    REFUSED(bk_material_count(&job, 999, 1, &sentence, &trouble), BK_REFUSED, "This material is no longer");
    bk_order order = order_of("wool", 0);
    REFUSED(bk_material_order(&job, &order, &sentence, &trouble), BK_REFUSED, "must be more than nothing");
    order = order_of("wool", 1);
    order.cost = -1;
    REFUSED(bk_material_order(&job, &order, &sentence, &trouble), BK_REFUSED,
            "An order costs nothing or more");
    REFUSED(bk_order_arrived(&job, 1, BK_NO_AMOUNT, BK_NO_DAY, &sentence, &trouble), BK_REFUSED,
            "This order of wool has arrived already, on Tue 2 Mar.");
    REFUSED(bk_order_arrived(&job, 999, BK_NO_AMOUNT, BK_NO_DAY, &sentence, &trouble), BK_REFUSED,
            "This order is no longer");
    REFUSED(bk_order_arrived(&job, 2, 0, BK_NO_DAY, &sentence, &trouble), BK_REFUSED, "more than nothing");
    ck_assert_str_eq(bk_ask(".dump"), before);
    bk_store_close(store);
}
END_TEST

START_TEST(a_material_is_found_by_its_name_or_the_nearest_is_told)
{
    bk_store *store = bench_store();
    int64_t material = 0;
    MUST(bk_material_find(store, "hooks", &material, &trouble));
    ck_assert_int_eq(material, material_id("hooks"));
    REFUSED(bk_material_find(store, "hoks", &material, &trouble), BK_REFUSED,
            "There is no material \"hoks\" in the workroom; did you mean \"hooks\"?");
    REFUSED(bk_material_find(store, "damask", &material, &trouble), BK_REFUSED,
            "There is no material \"damask\" in the workroom.");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("materials", what_lies_on_the_shelf_goes_to_the_most_urgent_first,
             what_the_shelf_lacks_is_met_from_orders_the_earliest_first,
             a_material_that_was_never_counted_is_not_known_and_counts_as_none,
             a_done_step_needs_nothing_any_more,
             other_productions_need_of_the_same_shelf_until_they_are_put_away,
             all_materials_stand_by_name_also_for_no_production, orders_under_way_stand_before_those_arrived,
             what_is_short_is_to_be_bought_by_supplier_with_its_cost,
             whoever_may_not_know_prices_sees_the_shelf_without_them,
             a_count_brings_the_shelf_to_what_lies_there,
             an_empty_shelf_that_was_counted_is_known_to_be_empty,
             an_order_is_placed_with_the_supplier_of_the_material,
             what_arrived_when_it_was_ordered_lies_on_the_shelf,
             an_order_that_arrives_whole_lies_on_the_shelf,
             of_an_order_that_arrives_in_part_the_rest_stays_under_way_and_costs_add_up,
             more_than_was_ordered_may_arrive, no_more_arrives_than_can_be_kept,
             an_order_without_a_known_cost_is_split_without_one,
             what_cannot_be_counted_or_ordered_is_told_and_changes_nothing,
             a_material_is_found_by_its_name_or_the_nearest_is_told)
