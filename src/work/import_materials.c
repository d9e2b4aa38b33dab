#include <stddef.h>

#include "bodkin/base/text.h"
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

static const bk_private *private_of(const bk_rows *rows, int64_t id)
{
    const bk_private *items = rows->items;
    for (size_t i = 0; i < rows->count; i++) {
        if (items[i].id == id) {
            return &items[i];
        }
    }
    return NULL;
}

// ----------------------------------------------------------------------------------------------- materials

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
        .quantity = row->on_hand - (known == BK_NO_AMOUNT ? 0 : known),
        .moved_on = importing->options->today,
    };
    return bk_import_add(importing, BK_MOVEMENTS, &count, 0, NULL);
}

static bk_status one_material(bk_importing *importing, const bk_material *row, bk_material *known,
                              const bk_rows *prices)
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
    return bk_import_private(importing, BK_PRICES, &price, known ? private_of(prices, id) : NULL, what,
                             "price");
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
    for (size_t i = 0; !status && i < known.count; i++) {
        bk_index_put(at, materials[i].name, (long long)i);
        bk_index_put(importing->materials, materials[i].name, materials[i].id);
    }
    for (size_t i = 0; !status && i < importing->folder->materials.count; i++) {
        const bk_material *row = &importing->folder->materials.items[i];
        const long long *found = bk_index_find(at, row->name);
        status = one_material(importing, row, found ? &materials[*found] : NULL, &prices);
    }
    bk_index_free(at);
    return status ? status : bk_import_told(importing, "materials.csv", importing->folder->materials.count);
}

// -------------------------------------------------------------------------------------------------- orders

/// An order is known by its material, quantity and day; each known one is matched once.
static bk_order *known_order(bk_rows *known, bool *matched, const bk_order *row)
{
    bk_order *orders = known->items;
    for (size_t i = 0; i < known->count; i++) {
        if (!matched[i] && orders[i].material_id == row->material_id && orders[i].quantity == row->quantity &&
            orders[i].ordered_on == row->ordered_on) {
            matched[i] = true;
            return &orders[i];
        }
    }
    return NULL;
}

/// An order that was on its way and has arrived since, where the sheet does not say what lies on the shelf now.
static bk_status deliver(bk_importing *importing, const bk_order *order)
{
    bk_movement delivery = {
        .material_id = order->material_id,
        .kind = BK_MOVED_DELIVERY,
        .quantity = order->quantity,
        .moved_on = order->arrived_on,
        .order_id = order->id,
    };
    return bk_import_add(importing, BK_MOVEMENTS, &delivery, 0, NULL);
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
        status = deliver(importing, known);
    }
    return status;
}

static bk_status one_order(bk_importing *importing, const bk_order *row, bk_order *known,
                           const bk_rows *costs)
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
    return bk_import_private(importing, BK_ORDER_COSTS, &cost, known ? private_of(costs, id) : NULL, what,
                             "cost");
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
    bool *matched = bk_arena_clear(importing->arena, known.count, sizeof *matched);
    for (size_t i = 0; !status && i < importing->folder->orders.count; i++) {
        bk_order row = importing->folder->orders.items[i];
        row.material_id = bk_import_id(importing->materials, row.material);
        status = one_order(importing, &row, known_order(&known, matched, &row), &costs);
    }
    return status ? status : bk_import_told(importing, "orders.csv", importing->folder->orders.count);
}

bk_status bk_import_materials(bk_importing *importing)
{
    bk_status status = import_shelf(importing);
    return status ? status : import_orders(importing);
}
