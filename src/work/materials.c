#include "bodkin/work/materials.h"

#include <stdlib.h>

#include "bodkin/base/list.h"
#include "bodkin/base/proportion.h"
#include "bodkin/base/text.h"
#include "bodkin/store/rail_rows.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/rail_gather.h"

#define SIGN(left, right) (((left) > (right)) - ((left) < (right)))

const char *bk_material_words(bk_quantity quantity, int unit, bk_arena *arena)
{
    char digits[BK_AMOUNT_ROOM];
    bk_quantity_write(quantity, digits);
    if (unit == BK_EACH || unit == BK_NO_WORD) {
        return bk_arena_text(arena, digits);
    }
    return bk_arena_print(arena, "%s %s", digits, bk_word_text(&bk_material_unit_words, unit));
}

// -------------------------------------------------------------------------------------------------- reading

typedef struct material_reading {
    bk_store *store;
    int64_t production;
    bk_arena *arena;
    bk_gathered gathered; ///< all materials, the orders under way, and what all productions need of them
    bk_rows orders, prices, costs, productions, own_needs;
    BK_LIST(const bk_step *) steps; ///< of all productions in work
    bk_material_line *lines;        ///< in the order of the materials
    bk_error *error;
} material_reading;

/// Prices and costs, for whoever may know them.
static bk_status read_amounts(material_reading *reading, bk_family family, bk_rows *rows)
{
    bk_error refused;
    bk_status status = bk_store_read(reading->store, family, 0, reading->arena, rows, &refused);
    if (status == BK_REFUSED) {
        *rows = (bk_rows){0};
        return BK_OK;
    }
    return status ? bk_fail(reading->error, status, "%s", refused.text) : BK_OK;
}

static bk_status read_steps(material_reading *reading)
{
    const bk_production *productions = reading->productions.items;
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < reading->productions.count; i++) {
        bk_rows rows = {0};
        if (productions[i].put_away_on != BK_NO_DAY) {
            continue;
        }
        status = bk_store_read(reading->store, BK_RAIL_STEPS, productions[i].id, reading->arena, &rows,
                               reading->error);
        const bk_step *steps = rows.items;
        for (size_t step = 0; !status && step < rows.count; step++) {
            bk_list_add(&reading->steps, &steps[step]);
        }
    }
    return status;
}

static void keep_open_orders(material_reading *reading)
{
    const bk_order *orders = reading->orders.items;
    bk_order *open = bk_arena_clear(reading->arena, reading->orders.count, sizeof *open);
    reading->gathered.orders.items = open;
    for (size_t i = 0; i < reading->orders.count; i++) {
        if (orders[i].arrived_on == BK_NO_DAY) {
            open[reading->gathered.orders.count++] = orders[i];
        }
    }
}

static bk_status read_rows(material_reading *reading)
{
    const struct {
        bk_family family;
        int64_t key;
        bk_rows *rows;
    } reads[] = {
        {BK_MATERIALS, 0, &reading->gathered.materials},
        {BK_ORDERS, 0, &reading->orders},
        {BK_PRODUCTIONS, 0, &reading->productions},
        {BK_NEEDS, reading->production, &reading->own_needs},
    };
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < sizeof reads / sizeof *reads; i++) {
        status = bk_store_read(reading->store, reads[i].family, reads[i].key, reading->arena, reads[i].rows,
                               reading->error);
    }
    if (!status) {
        status = read_amounts(reading, BK_PRICES, &reading->prices);
    }
    if (!status) {
        status = read_amounts(reading, BK_ORDER_COSTS, &reading->costs);
    }
    return status ? status : read_steps(reading);
}

static bk_status read_all(material_reading *reading)
{
    bk_gathered *gathered = &reading->gathered;
    bk_status status = bk_store_read_begin(reading->store, reading->error);
    if (status) {
        return status;
    }
    status = read_rows(reading);
    if (!status) {
        gathered->material_at =
            bk_id_index_of(gathered->materials.items, gathered->materials.count, sizeof(bk_material));
        keep_open_orders(reading);
        status = bk_gather_claims(reading->store, gathered, reading->error);
    }
    bk_store_read_end(reading->store);
    return status;
}

// ---------------------------------------------------------------------------------------------------- lines

static void start_lines(material_reading *reading)
{
    const bk_gathered *gathered = &reading->gathered;
    const bk_material *materials = gathered->materials.items;
    const bk_private *prices = reading->prices.items;
    const bk_need *needs = reading->own_needs.items;
    reading->lines = bk_arena_clear(reading->arena, gathered->materials.count, sizeof *reading->lines);
    for (size_t i = 0; i < gathered->materials.count; i++) {
        reading->lines[i].record = materials[i];
        reading->lines[i].promised_due = BK_NO_DAY;
    }
    for (size_t i = 0; i < reading->prices.count; i++) {
        size_t at = bk_gathered_index(gathered->material_at, prices[i].id);
        if (at != BK_NO_INDEX) {
            reading->lines[at].record.price = prices[i].amount;
            reading->lines[at].record.currency = prices[i].currency;
        }
    }
    for (size_t i = 0; i < reading->own_needs.count; i++) {
        size_t at = bk_gathered_index(gathered->material_at, needs[i].material_id);
        if (at != BK_NO_INDEX) {
            reading->lines[at].here = true;
        }
    }
}

/// A claim with the row that it is of.
typedef struct shared_claim {
    const bk_claim *share;
    const bk_other_claim *row;
} shared_claim;

static int shared_order(const void *left, const void *right)
{
    const shared_claim *a = left;
    const shared_claim *b = right;
    int order = SIGN(a->share->material, b->share->material);
    order = order ? order : bk_claim_order(a->share, b->share);
    return order ? order : SIGN(a->share, b->share);
}

static shared_claim *sort_claims(const material_reading *reading, size_t count)
{
    const bk_other_claim *rows = reading->gathered.other_claims.items;
    shared_claim *sorted = bk_arena_clear(reading->arena, count, sizeof *sorted);
    for (size_t i = 0; i < count; i++) {
        sorted[i] = (shared_claim){&reading->gathered.other_shares[i], &rows[i]};
    }
    if (count) {
        qsort(sorted, count, sizeof *sorted, shared_order);
    }
    return sorted;
}

static bk_material_need need_of(const shared_claim *claim, const bk_step *step)
{
    return (bk_material_need){
        .production_id = claim->row->production_id,
        .step_id = claim->row->step_id,
        .production = claim->share->production,
        .piece = claim->share->piece,
        .step = step ? step->key : NULL,
        .step_title = step ? step->title : NULL,
        .due = claim->share->due,
        .quantity = claim->share->quantity,
        .on_shelf = claim->share->quantity - claim->share->short_of,
        .on_order = claim->share->short_of - claim->share->unmet,
        .unmet = claim->share->unmet,
        .comes = claim->share->supply_day,
    };
}

static void hang_needs(material_reading *reading)
{
    size_t count = reading->gathered.other_claims.count;
    const shared_claim *sorted = sort_claims(reading, count);
    bk_material_need *needs = bk_arena_clear(reading->arena, count, sizeof *needs);
    bk_id_index *step_at = bk_id_index_new();
    for (size_t i = 0; i < reading->steps.count; i++) {
        bk_id_index_put(step_at, reading->steps.items[i]->id, (long long)i);
    }
    for (size_t i = 0; i < count; i++) {
        bk_material_line *line = &reading->lines[sorted[i].share->material];
        const long long *step = bk_id_index_find(step_at, sorted[i].row->step_id);
        needs[i] = need_of(&sorted[i], step ? reading->steps.items[*step] : NULL);
        line->needs = line->needs ? line->needs : &needs[i];
        line->need_count++;
        line->needed += needs[i].quantity;
        line->short_of += needs[i].unmet;
        line->needed_here += needs[i].production_id == reading->production ? needs[i].quantity : 0;
    }
    bk_id_index_free(step_at);
}

static int due_order(bk_day left, bk_day right)
{
    bool left_open = left == BK_NO_DAY;
    bool right_open = right == BK_NO_DAY;
    return left_open != right_open ? SIGN(left_open, right_open) : SIGN(left, right);
}

/// Of one material: those under way by due day, then those arrived, newest first.
static int order_order(const void *left, const void *right)
{
    const bk_order *a = left;
    const bk_order *b = right;
    int order = SIGN(a->material_id, b->material_id);
    order = order ? order : SIGN(a->arrived_on != BK_NO_DAY, b->arrived_on != BK_NO_DAY);
    order = order ? order : SIGN(b->arrived_on, a->arrived_on);
    order = order ? order : due_order(a->due_on, b->due_on);
    return order ? order : SIGN(a->id, b->id);
}

static void add_costs(const material_reading *reading, bk_order *orders)
{
    bk_id_index *order_at = bk_id_index_of(orders, reading->orders.count, sizeof *orders);
    const bk_private *costs = reading->costs.items;
    for (size_t i = 0; i < reading->costs.count; i++) {
        size_t at = bk_gathered_index(order_at, costs[i].id);
        if (at != BK_NO_INDEX) {
            orders[at].cost = costs[i].amount;
            orders[at].currency = costs[i].currency;
        }
    }
    bk_id_index_free(order_at);
}

static void hang_orders(material_reading *reading)
{
    bk_order *orders = reading->orders.items;
    add_costs(reading, orders);
    if (reading->orders.count) {
        qsort(orders, reading->orders.count, sizeof *orders, order_order);
    }
    for (size_t i = 0; i < reading->orders.count; i++) {
        size_t at = bk_gathered_index(reading->gathered.material_at, orders[i].material_id);
        if (at == BK_NO_INDEX) {
            continue;
        }
        bk_material_line *line = &reading->lines[at];
        orders[i].material = line->record.name;
        line->orders = line->orders ? line->orders : &orders[i];
        line->order_count++;
        if (orders[i].arrived_on == BK_NO_DAY) {
            line->promised_due = line->promised ? line->promised_due : orders[i].due_on;
            line->promised += orders[i].quantity;
        }
    }
}

static int line_order(const void *left, const void *right)
{
    const bk_material_line *a = left;
    const bk_material_line *b = right;
    int order = bk_natural_order(a->record.name, b->record.name);
    return order ? order : SIGN(a->record.id, b->record.id);
}

// ------------------------------------------------------------------------------------------------- shopping

/// Lengths up to the next tenth, things counted whole.
static bk_quantity rounded_up(bk_quantity quantity, int unit)
{
    enum { TENTHS = 10 };
    bk_quantity least = unit == BK_EACH ? BK_QUANTITY_ONE : BK_QUANTITY_ONE / TENTHS;
    return (quantity + least - 1) / least * least;
}

static bk_to_buy buy(const bk_material_line *line)
{
    bk_to_buy bought = {
        .material = line,
        .quantity = rounded_up(line->short_of, line->record.unit),
        .cost = BK_NO_AMOUNT,
        .currency = line->record.currency,
    };
    if (line->record.price != BK_NO_AMOUNT) {
        bk_money cost = bk_in_proportion(line->record.price, bought.quantity, BK_QUANTITY_ONE);
        bought.cost = cost > BK_MONEY_MOST ? BK_NO_AMOUNT : cost;
    }
    return bought;
}

static int buy_order(const void *left, const void *right)
{
    const bk_to_buy *a = left;
    const bk_to_buy *b = right;
    int order = bk_natural_order(a->material->record.supplier, b->material->record.supplier);
    if (bk_same_text(a->material->record.supplier, b->material->record.supplier)) {
        order = 0;
    }
    return order ? order : SIGN(a->material, b->material); // lines stand by name
}

/// Adds an amount to the sum of its currency; `costs` has room for one more.
static void add_cost(bk_money_sum *costs, size_t *count, const bk_to_buy *bought)
{
    size_t at = 0;
    while (at < *count && !bk_same_text(costs[at].currency, bought->currency)) {
        at++;
    }
    if (at == *count) {
        costs[(*count)++] = (bk_money_sum){bought->currency, 0};
    }
    costs[at].amount += bought->cost;
}

/// The costs of some items, a sum for each currency.
static const bk_money_sum *add_up(const material_reading *reading, const bk_to_buy *items, size_t count,
                                  size_t *cost_count)
{
    bk_money_sum *costs = bk_arena_clear(reading->arena, count, sizeof *costs);
    *cost_count = 0;
    for (size_t i = 0; i < count; i++) {
        if (items[i].cost != BK_NO_AMOUNT) {
            add_cost(costs, cost_count, &items[i]);
        }
    }
    return costs;
}

static size_t unpriced_of(const bk_shopping *shopping)
{
    size_t count = 0;
    for (size_t i = 0; i < shopping->count; i++) {
        count += shopping->items[i].cost == BK_NO_AMOUNT;
    }
    return count;
}

static void build_shopping(const material_reading *reading, bk_material_list *list)
{
    bk_to_buy *items = bk_arena_clear(reading->arena, list->count, sizeof *items);
    bk_shopping *shopping = bk_arena_clear(reading->arena, list->count, sizeof *shopping);
    size_t count = 0;
    for (size_t i = 0; i < list->count; i++) {
        if (list->items[i].short_of > 0) {
            items[count++] = buy(&list->items[i]);
        }
    }
    if (count) {
        qsort(items, count, sizeof *items, buy_order);
    }
    for (size_t i = 0; i < count; i++) {
        const char *supplier = items[i].material->record.supplier;
        if (!i || !bk_same_text(supplier, items[i - 1].material->record.supplier)) {
            shopping[list->shopping_count++] = (bk_shopping){.supplier = supplier, .items = &items[i]};
        }
        shopping[list->shopping_count - 1].count++;
    }
    for (size_t i = 0; i < list->shopping_count; i++) {
        shopping[i].costs = add_up(reading, shopping[i].items, shopping[i].count, &shopping[i].cost_count);
        shopping[i].unpriced = unpriced_of(&shopping[i]);
    }
    list->shopping = shopping;
    list->costs = add_up(reading, items, count, &list->cost_count);
}

// --------------------------------------------------------------------------------------------------- public

bk_status bk_materials_read(bk_store *store, int64_t production, bk_day today, bk_arena *arena,
                            bk_material_list *list, bk_error *error)
{
    material_reading reading = {
        .store = store,
        .production = production,
        .arena = arena,
        .gathered = {.arena = arena, .today = today},
        .error = error,
    };
    *list = (bk_material_list){0};
    bk_status status = read_all(&reading);
    if (!status) {
        start_lines(&reading);
        hang_needs(&reading);
        hang_orders(&reading);
        list->items = reading.lines;
        list->count = reading.gathered.materials.count;
        if (list->count) {
            qsort(reading.lines, list->count, sizeof *reading.lines, line_order);
        }
        build_shopping(&reading, list);
    }
    bk_list_free(&reading.steps);
    bk_gathered_free(&reading.gathered);
    return status;
}
