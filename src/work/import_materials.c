#include <stddef.h>

#include "bodkin/base/text.h"
#include "bodkin/work/import_match.h"
#include "bodkin/work/import_parts.h"

static const bk_merge_field material_fields[] = {
    {"unit", BK_MERGE_WORD, offsetof(bk_material, unit), false},
    {"width", BK_MERGE_LENGTH, offsetof(bk_material, width), false},
    {"supplier", BK_MERGE_TEXT, offsetof(bk_material, supplier), false},
    {"note", BK_MERGE_TEXT, offsetof(bk_material, note), false},
};

static const bk_merge_field order_fields[] = {
    {"due_on", BK_MERGE_DAY, offsetof(bk_order, due_on), false},
    {"arrived_on", BK_MERGE_DAY, offsetof(bk_order, arrived_on), false},
    {"from", BK_MERGE_TEXT, offsetof(bk_order, from), false},
};

#define FIELDS(table) table, sizeof(table) / sizeof *(table)

// ----------------------------------------------------------------------------------------------- materials

/// Moves a material's shelf and keeps what lies there in mind. Refused where it would be more than a sheet can say, so
/// that what was taken in can be given out and added up.
static bk_status move(bk_importing *importing, const bk_movement *movement, const char *name)
{
    long long *shelf = bk_id_index_put(importing->shelf, movement->material_id, 0);
    long long after = 0;
    if (__builtin_add_overflow(*shelf, (long long)movement->quantity, &after) || after > BK_QUANTITY_MOST) {
        char most[BK_AMOUNT_ROOM];
        return bk_fail(importing->error, BK_REFUSED,
                       "There would be more \"%s\" than can be kept, which is %s; mend on_hand in "
                       "materials.csv or the quantity in orders.csv. Nothing was changed.",
                       bk_text_safe(importing->arena, name, false),
                       bk_quantity_write(BK_QUANTITY_MOST, most));
    }
    *shelf = after;
    return bk_import_add(importing, BK_MOVEMENTS, movement, 0, NULL);
}

/// Counts the shelf where the sheet says what lies there and it is not what the store has.
static bk_status count_shelf(bk_importing *importing, const bk_material *row, int64_t id, bk_quantity known,
                             const char *what)
{
    if (row->on_hand == BK_NO_AMOUNT) {
        return BK_OK;
    }
    bk_id_index_put(importing->counted, id, 1);
    if (row->on_hand == known) {
        return BK_OK;
    }
    if (known != BK_NO_AMOUNT) {
        char was[BK_AMOUNT_ROOM];
        char is[BK_AMOUNT_ROOM];
        bk_merge_note(&importing->notes, what, "on_hand", bk_quantity_write(known, was),
                      bk_quantity_write(row->on_hand, is), false);
    }
    bk_movement count = {
        .material_id = id,
        .kind = BK_MOVED_COUNT,
        .quantity = row->on_hand - (known == BK_NO_AMOUNT ? 0 : known), // both within their bounds
        .moved_on = importing->options->today,
    };
    return move(importing, &count, row->name);
}

static bk_status one_material(bk_importing *importing, const bk_material *row, bk_material *known,
                              const bk_private *known_price)
{
    const char *what = bk_arena_print(importing->arena, "materials.csv: %s", row->name);
    int64_t id = known ? known->id : 0;
    bk_status status = BK_OK;
    if (!known) {
        status = bk_import_add(importing, BK_MATERIALS, row, 0, &id);
        bk_index_put(importing->materials, row->name, id);
    } else if (bk_merge(FIELDS(material_fields), row, known, what, &importing->notes)) {
        status = bk_store_put(importing->store, BK_MATERIALS, known, importing->error);
    }
    if (!status) {
        status = count_shelf(importing, row, id, known ? known->on_hand : BK_NO_AMOUNT, what);
    }
    if (status) {
        return status;
    }
    bk_private price = {id, NULL, row->price, row->currency};
    return bk_import_private(importing, BK_PRICES, &price, known_price, what, "price");
}

static bk_status import_shelf(bk_importing *importing)
{
    bk_rows known = {0};
    bk_rows prices = {0};
    bk_status status =
        bk_store_read(importing->store, BK_MATERIALS, 0, importing->arena, &known, importing->error);
    if (!status) {
        status = bk_store_read(importing->store, BK_PRICES, 0, importing->arena, &prices, importing->error);
    }
    bk_material *materials = known.items;
    bk_index *at = bk_index_new();
    bk_id_index *price_at = bk_id_index_of(prices.items, prices.count, sizeof(bk_private));
    for (size_t i = 0; !status && i < known.count; i++) {
        bk_index_put(at, materials[i].name, (long long)i);
        bk_index_put(importing->materials, materials[i].name, materials[i].id);
        if (materials[i].on_hand != BK_NO_AMOUNT) {
            bk_id_index_put(importing->shelf, materials[i].id, materials[i].on_hand);
        }
    }
    for (size_t i = 0; !status && i < importing->folder->materials.count; i++) {
        const bk_material *row = &importing->folder->materials.items[i];
        const long long *found = bk_index_find(at, row->name);
        bk_material *mine = found ? &materials[*found] : NULL;
        status = one_material(importing, row, mine,
                              mine ? bk_import_private_of(price_at, &prices, mine->id) : NULL);
        if (!status) {
            status = bk_import_row(importing, "materials.csv", i);
        }
    }
    bk_index_free(at);
    bk_id_index_free(price_at);
    return status ? status : bk_import_told(importing, "materials.csv", importing->folder->materials.count);
}

// -------------------------------------------------------------------------------------------------- orders

/// An order is known by its material, quantity and day.
static const char *order_key(bk_arena *arena, const bk_order *order)
{
    return bk_arena_print(arena, "%lld %lld %d", (long long)order->material_id, (long long)order->quantity,
                          order->ordered_on);
}

static bk_matches *match_orders(bk_arena *arena, const bk_rows *known)
{
    const bk_order *orders = known->items;
    bk_matches *matches = bk_matches_new(known->count);
    for (size_t i = known->count; i-- > 0;) {
        bk_matches_put(matches, order_key(arena, &orders[i]), i);
    }
    return matches;
}

/// An order that was on its way and has arrived since, where the sheet does not say what lies on the shelf now.
static bk_status deliver(bk_importing *importing, const bk_order *order, const char *material)
{
    bk_movement delivery = {
        .material_id = order->material_id,
        .kind = BK_MOVED_DELIVERY,
        .quantity = order->quantity,
        .moved_on = order->arrived_on,
        .order_id = order->id,
    };
    return move(importing, &delivery, material);
}

static bk_status merge_order(bk_importing *importing, const bk_order *row, bk_order *known, const char *what)
{
    bool was_open = known->arrived_on == BK_NO_DAY;
    if (!bk_merge(FIELDS(order_fields), row, known, what, &importing->notes)) {
        return BK_OK;
    }
    bk_status status = bk_store_put(importing->store, BK_ORDERS, known, importing->error);
    bool told = bk_id_index_find(importing->counted, known->material_id) != NULL;
    if (!status && was_open && known->arrived_on != BK_NO_DAY && !told) {
        status = deliver(importing, known, row->material);
    }
    return status;
}

static bk_status one_order(bk_importing *importing, const bk_order *row, bk_order *known,
                           const bk_private *known_cost)
{
    char day[BK_DAY_ROOM];
    const char *what = bk_arena_print(importing->arena, "orders.csv: %s, %s", row->material,
                                      bk_day_write(row->ordered_on, day));
    int64_t id = known ? known->id : 0;
    bk_status status =
        known ? merge_order(importing, row, known, what) : bk_import_add(importing, BK_ORDERS, row, 0, &id);
    if (status) {
        return status;
    }
    bk_private cost = {id, NULL, row->cost, row->currency};
    return bk_import_private(importing, BK_ORDER_COSTS, &cost, known_cost, what, "cost");
}

static bk_status import_orders(bk_importing *importing)
{
    bk_rows known = {0};
    bk_rows costs = {0};
    bk_status status =
        bk_store_read(importing->store, BK_ORDERS, 0, importing->arena, &known, importing->error);
    if (!status) {
        status =
            bk_store_read(importing->store, BK_ORDER_COSTS, 0, importing->arena, &costs, importing->error);
    }
    bk_matches *matches = match_orders(importing->arena, &known);
    bk_id_index *cost_at = bk_id_index_of(costs.items, costs.count, sizeof(bk_private));
    for (size_t i = 0; !status && i < importing->folder->orders.count; i++) {
        bk_order row = importing->folder->orders.items[i];
        row.material_id = bk_import_id(importing->materials, row.material);
        long long match = bk_matches_take(matches, order_key(importing->arena, &row));
        bk_order *mine = match == BK_NO_MATCH ? NULL : (bk_order *)known.items + match;
        status =
            one_order(importing, &row, mine, mine ? bk_import_private_of(cost_at, &costs, mine->id) : NULL);
        if (!status) {
            status = bk_import_row(importing, "orders.csv", i);
        }
    }
    bk_matches_free(matches);
    bk_id_index_free(cost_at);
    return status ? status : bk_import_told(importing, "orders.csv", importing->folder->orders.count);
}

bk_status bk_import_materials(bk_importing *importing)
{
    bk_status status = import_shelf(importing);
    return status ? status : import_orders(importing);
}
