#include "bodkin/plan/shelf.h"

#include "support/testing.h"

#define ONE BK_QUANTITY_ONE
#define COUNT(table) (sizeof(table) / sizeof(table)[0])

enum { TODAY = 20000, ORDERS = 4, CLAIMS = 4 };

typedef struct incoming_row {
    bk_quantity quantity;
    bk_day due;
} incoming_row;

// A claim, and what comes of it. Where nothing else is said, claims stand in the table most urgent first.
typedef struct claim_row {
    bk_quantity quantity;
    bk_quantity short_of;
    bk_supply supply;
    bk_day day;
} claim_row;

typedef struct shelf_row {
    const char *says;
    bk_quantity on_hand;
    size_t order_count;
    incoming_row orders[ORDERS];
    size_t claim_count;
    claim_row claims[CLAIMS];
} shelf_row;

static const shelf_row rows[] = {
    {"what lies on the shelf is taken", 3, 0, {{0}}, 1, {{3, 0, BK_SUPPLY_SHELF, BK_NO_DAY}}},
    {"a millionth too little is short", ONE - 1, 0, {{0}}, 1, {{ONE, 1, BK_SUPPLY_NOT_ORDERED, BK_NO_DAY}}},
    {"an unknown shelf counts as none",
     BK_NO_AMOUNT,
     0,
     {{0}},
     1,
     {{2, 2, BK_SUPPLY_NOT_ORDERED, BK_NO_DAY}}},
    {"a shelf below zero counts as none, and no order fills the hole first",
     -5,
     1,
     {{2, TODAY + 1}},
     1,
     {{2, 2, BK_SUPPLY_DUE, TODAY + 1}}},
    {"a step that needs nothing is never short", 0, 0, {{0}}, 1, {{0, 0, BK_SUPPLY_SHELF, BK_NO_DAY}}},
    {"a more urgent step takes what is left, and a less urgent one gets nothing, however little it needs",
     3,
     0,
     {{0}},
     3,
     {{2, 0, BK_SUPPLY_SHELF, BK_NO_DAY},
      {5, 4, BK_SUPPLY_NOT_ORDERED, BK_NO_DAY},
      {1, 1, BK_SUPPLY_NOT_ORDERED, BK_NO_DAY}}},
    {"an order due today is not late", 0, 1, {{2, TODAY}}, 1, {{2, 2, BK_SUPPLY_DUE, TODAY}}},
    {"an order due yesterday is late", 0, 1, {{2, TODAY - 1}}, 1, {{2, 2, BK_SUPPLY_LATE, TODAY - 1}}},
    {"an order without a day has no date", 0, 1, {{2, BK_NO_DAY}}, 1, {{2, 2, BK_SUPPLY_NO_DATE, BK_NO_DAY}}},
    {"orders that do not suffice are as if not ordered",
     0,
     2,
     {{1, TODAY + 1}, {1, TODAY + 2}},
     1,
     {{3, 3, BK_SUPPLY_NOT_ORDERED, TODAY + 2}}},
    {"and are used up all the same, so that a less urgent step does not get them",
     0,
     1,
     {{2, TODAY + 1}},
     2,
     {{3, 3, BK_SUPPLY_NOT_ORDERED, TODAY + 1}, {1, 1, BK_SUPPLY_NOT_ORDERED, BK_NO_DAY}}},
    {"the last order drawn on decides",
     0,
     2,
     {{1, TODAY - 1}, {2, TODAY + 5}},
     1,
     {{2, 2, BK_SUPPLY_DUE, TODAY + 5}}},
    {"an order not drawn on decides nothing",
     0,
     2,
     {{2, TODAY + 1}, {2, TODAY + 5}},
     1,
     {{2, 2, BK_SUPPLY_DUE, TODAY + 1}}},
    {"orders come earliest due first, whatever order they are written in",
     0,
     3,
     {{1, BK_NO_DAY}, {1, TODAY + 9}, {1, TODAY + 2}},
     3,
     {{1, 1, BK_SUPPLY_DUE, TODAY + 2},
      {1, 1, BK_SUPPLY_DUE, TODAY + 9},
      {1, 1, BK_SUPPLY_NO_DATE, BK_NO_DAY}}},
    {"a late order comes before one that is due",
     0,
     2,
     {{1, TODAY + 2}, {1, TODAY - 30}},
     2,
     {{1, 1, BK_SUPPLY_LATE, TODAY - 30}, {1, 1, BK_SUPPLY_DUE, TODAY + 2}}},
    {"an order that a more urgent step used in part goes on with what is left",
     1,
     2,
     {{4, TODAY + 1}, {9, TODAY + 2}},
     3,
     {{3, 2, BK_SUPPLY_DUE, TODAY + 1}, {2, 2, BK_SUPPLY_DUE, TODAY + 1}, {1, 1, BK_SUPPLY_DUE, TODAY + 2}}},
    {"an empty order is not drawn on",
     0,
     3,
     {{1, TODAY + 1}, {0, TODAY + 2}, {1, TODAY + 3}},
     1,
     {{2, 2, BK_SUPPLY_DUE, TODAY + 3}}},
    {"not even as the last of too few",
     0,
     2,
     {{1, TODAY + 1}, {0, TODAY + 2}},
     1,
     {{2, 2, BK_SUPPLY_NOT_ORDERED, TODAY + 1}}},
    {"only what the shelf lacks is met from orders",
     2,
     1,
     {{1, TODAY + 1}},
     2,
     {{3, 1, BK_SUPPLY_DUE, TODAY + 1}, {1, 1, BK_SUPPLY_NOT_ORDERED, BK_NO_DAY}}},
    {"the largest amounts that can be written are shared without running over",
     INT64_MAX,
     3,
     {{INT64_MAX, TODAY + 1}, {INT64_MAX, TODAY + 2}, {INT64_MAX, TODAY + 3}},
     3,
     {{INT64_MAX, 0, BK_SUPPLY_SHELF, BK_NO_DAY},
      {INT64_MAX, INT64_MAX, BK_SUPPLY_DUE, TODAY + 1},
      {INT64_MAX, INT64_MAX, BK_SUPPLY_DUE, TODAY + 2}}},
};

static void check_row(const shelf_row *row)
{
    bk_incoming orders[ORDERS];
    bk_claim claims[CLAIMS];
    for (size_t i = 0; i < row->order_count; i++)
        orders[i] = (bk_incoming){0, row->orders[i].quantity, row->orders[i].due, (int64_t)i};
    for (size_t i = 0; i < row->claim_count; i++)
        claims[i] = (bk_claim){.quantity = row->claims[i].quantity,
                               .production = "Winter",
                               .piece = "coat",
                               .step_position = (int64_t)i};
    bk_shelf_share(&row->on_hand, 1, orders, row->order_count, TODAY, claims, row->claim_count);
    for (size_t i = 0; i < row->claim_count; i++) {
        const claim_row *expected = &row->claims[i];
        ck_assert_msg(claims[i].short_of == expected->short_of && claims[i].supply == expected->supply &&
                          claims[i].supply_day == expected->day,
                      "%s: claim %zu is short of %lld, supply %d, day %d", row->says, i,
                      (long long)claims[i].short_of, (int)claims[i].supply, claims[i].supply_day);
    }
}

START_TEST(the_shelf_and_then_the_orders_are_shared_out_most_urgent_first)
{
    for (size_t i = 0; i < COUNT(rows); i++)
        check_row(&rows[i]);
}
END_TEST

START_TEST(what_neither_shelf_nor_orders_meet_is_told)
{
    const bk_quantity on_hand = 3;
    const bk_incoming orders[] = {{0, 4, TODAY + 1, 0}};
    bk_claim claims[4];
    for (size_t i = 0; i < COUNT(claims); i++)
        claims[i] =
            (bk_claim){.quantity = 3, .unmet = 9, .production = "Winter", .step_position = (int64_t)i};
    bk_shelf_share(&on_hand, 1, orders, COUNT(orders), TODAY, claims, COUNT(claims));
    static const bk_quantity unmet[] = {0, 0, 2, 3};
    for (size_t i = 0; i < COUNT(claims); i++)
        ck_assert_int_eq(claims[i].unmet, unmet[i]);
}
END_TEST

// The order of two claims, each told by what decides its place in the queue.
typedef struct queue_place {
    bk_day due, opens;
    const char *production, *costume, *piece;
    int64_t step, need;
} queue_place;

static const struct {
    const char *says;
    queue_place first, second;
} urgencies[] = {
    {"the piece due first", {49, 70, "Winter", "4A", "coat", 0, 0}, {50, 60, "Winter", "4A", "coat", 0, 0}},
    {"a piece with a due day before one without",
     {50, 70, "Winter", "4A", "coat", 0, 0},
     {BK_NO_DAY, 60, "Winter", "4A", "coat", 0, 0}},
    {"then the production that opens first, of two that share the shelf",
     {50, 59, "Winter", "4A", "coat", 0, 0},
     {50, 60, "Autumn", "4A", "coat", 0, 0}},
    {"then the production's name",
     {50, 60, "Autumn", "9A", "coat", 0, 0},
     {50, 60, "Winter", "1A", "coat", 0, 0}},
    {"byte by byte, so that 10 comes before 2",
     {50, 60, "Act 10", "9A", "coat", 0, 0},
     {50, 60, "Act 2", "1A", "coat", 0, 0}},
    {"then the lowest costume, 2A before 10A",
     {50, 60, "Winter", "2A", "coat", 0, 0},
     {50, 60, "Winter", "10A", "cap", 0, 0}},
    {"a piece of a costume before one of none",
     {50, 60, "Winter", "4A", "coat", 0, 0},
     {50, 60, "Winter", NULL, "cap", 0, 0}},
    {"then the piece, 2A-9 before 2A-10",
     {50, 60, "Winter", "2A", "2A-9", 8, 0},
     {50, 60, "Winter", "2A", "2A-10", 0, 0}},
    {"then the order of steps",
     {50, 60, "Winter", "4A", "coat", 3, 9},
     {50, 60, "Winter", "4A", "coat", 20, 0}},
    {"then the order of needs",
     {50, 60, "Winter", "4A", "coat", 3, 9},
     {50, 60, "Winter", "4A", "coat", 3, 10}},
};

static bk_claim claim_at(queue_place place)
{
    return (bk_claim){.quantity = ONE,
                      .due = place.due,
                      .opens = place.opens,
                      .production = place.production,
                      .costume = place.costume,
                      .piece = place.piece,
                      .step_position = place.step,
                      .need_position = place.need};
}

static bk_claim claim_of(size_t material, bk_quantity quantity, bk_day due)
{
    bk_claim claim = claim_at((queue_place){due, 60, "Winter", "4A", "coat", 0, 0});
    claim.material = material;
    claim.quantity = quantity;
    return claim;
}

// Whether the first of two gets what is enough for one of them.
static bool gets_it(queue_place first, queue_place second, size_t index_of_first)
{
    bk_quantity on_hand = ONE;
    bk_claim claims[2];
    claims[index_of_first] = claim_at(first);
    claims[1 - index_of_first] = claim_at(second);
    bk_shelf_share(&on_hand, 1, NULL, 0, TODAY, claims, COUNT(claims));
    return claims[index_of_first].short_of == 0 && claims[1 - index_of_first].short_of == ONE;
}

START_TEST(the_most_urgent_step_gets_the_last_of_it)
{
    for (size_t i = 0; i < COUNT(urgencies); i++) {
        ck_assert_msg(gets_it(urgencies[i].first, urgencies[i].second, 0), "%s (written in that order)",
                      urgencies[i].says);
        ck_assert_msg(gets_it(urgencies[i].first, urgencies[i].second, 1), "%s (written the other way round)",
                      urgencies[i].says);
    }
}
END_TEST

START_TEST(claims_that_nothing_tells_apart_are_served_as_given)
{
    bk_quantity on_hand = ONE;
    bk_claim claims[] = {claim_of(0, ONE, 50), claim_of(0, ONE, 50)};
    bk_shelf_share(&on_hand, 1, NULL, 0, TODAY, claims, COUNT(claims));
    ck_assert_int_eq(claims[0].short_of, 0);
    ck_assert_int_eq(claims[1].short_of, ONE);
}
END_TEST

START_TEST(each_material_has_a_shelf_and_orders_of_its_own)
{
    const bk_quantity on_hand[] = {0, 5 * ONE, ONE};
    const bk_incoming orders[] = {{2, ONE, TODAY + 3, 0}, {0, ONE, TODAY + 7, 1}};
    bk_claim claims[] = {claim_of(0, ONE, 50), claim_of(1, ONE, 50), claim_of(2, 2 * ONE, 50),
                         claim_of(0, ONE, 51)};
    bk_shelf_share(on_hand, COUNT(on_hand), orders, COUNT(orders), TODAY, claims, COUNT(claims));
    ck_assert_int_eq(claims[0].supply, BK_SUPPLY_DUE);
    ck_assert_int_eq(claims[0].supply_day, TODAY + 7);
    ck_assert_int_eq(claims[1].supply, BK_SUPPLY_SHELF);
    ck_assert_int_eq(claims[2].short_of, ONE);
    ck_assert_int_eq(claims[2].supply_day, TODAY + 3);
    ck_assert_int_eq(claims[3].supply, BK_SUPPLY_NOT_ORDERED);
}
END_TEST

START_TEST(what_an_earlier_sharing_wrote_is_written_over)
{
    bk_quantity on_hand = ONE;
    bk_claim claims[] = {claim_of(0, ONE, 50), claim_of(0, ONE, 51)};
    for (size_t i = 0; i < COUNT(claims); i++) {
        claims[i].short_of = 3 * ONE;
        claims[i].supply = BK_SUPPLY_DUE;
        claims[i].supply_day = TODAY;
    }
    bk_shelf_share(&on_hand, 1, NULL, 0, TODAY, claims, COUNT(claims));
    ck_assert_int_eq(claims[0].short_of, 0);
    ck_assert_int_eq(claims[0].supply, BK_SUPPLY_SHELF);
    ck_assert_int_eq(claims[0].supply_day, BK_NO_DAY);
    ck_assert_int_eq(claims[1].supply, BK_SUPPLY_NOT_ORDERED);
    ck_assert_int_eq(claims[1].supply_day, BK_NO_DAY);
}
END_TEST

START_TEST(a_workroom_without_materials_shares_nothing)
{
    bk_claim untouched = claim_of(0, ONE, 50);
    untouched.short_of = 3 * ONE;
    bk_shelf_share(NULL, 0, NULL, 0, TODAY, &untouched, 0);
    ck_assert_int_eq(untouched.short_of, 3 * ONE);
}
END_TEST

BK_TEST_MAIN("shelf", the_shelf_and_then_the_orders_are_shared_out_most_urgent_first,
             what_neither_shelf_nor_orders_meet_is_told, the_most_urgent_step_gets_the_last_of_it,
             claims_that_nothing_tells_apart_are_served_as_given,
             each_material_has_a_shelf_and_orders_of_its_own, what_an_earlier_sharing_wrote_is_written_over,
             a_workroom_without_materials_shares_nothing)
