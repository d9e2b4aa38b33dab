#include "bodkin/store/rail_rows.h"

#include <stddef.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/store/families.h"
#include "bodkin/store/inside.h"

#define FIELD(record, member, kind) \
    { \
        offsetof(record, member), BK_FIELD_##kind, BK_FIELD_BOTH, NULL \
    }
#define TABLE(one, record, list) \
    { \
        .what = (one), .size = sizeof(record), .fields = (list), \
        .field_count = sizeof(list) / sizeof(list)[0] \
    }

static const bk_field claim_fields[] = {
    FIELD(bk_other_claim, production_id, ID),     FIELD(bk_other_claim, piece_id, ID),
    FIELD(bk_other_claim, step_id, ID),           FIELD(bk_other_claim, material_id, ID),
    FIELD(bk_other_claim, step_position, NUMBER), FIELD(bk_other_claim, need_position, NUMBER),
    FIELD(bk_other_claim, quantity, AMOUNT),
};
static const bk_family_table claims_table = TABLE("need", bk_other_claim, claim_fields);

static const bk_field piece_fields[] = {
    FIELD(bk_other_piece, production_id, ID), FIELD(bk_other_piece, piece_id, ID),
    FIELD(bk_other_piece, name, TEXT),        FIELD(bk_other_piece, costume, SHARED),
    FIELD(bk_other_piece, costume_due, DAY),
};
static const bk_family_table pieces_table = TABLE("piece", bk_other_piece, piece_fields);

static const bk_field due_fields[] = {
    FIELD(bk_usual_due, production_id, ID),
    FIELD(bk_usual_due, name, TEXT),
    FIELD(bk_usual_due, opens, DAY),
    FIELD(bk_usual_due, due, DAY),
};
static const bk_family_table dues_table = TABLE("production", bk_usual_due, due_fields);

static const bk_field shelf_fields[] = {
    FIELD(bk_material, id, ID),
    FIELD(bk_material, name, TEXT),
    {offsetof(bk_material, unit), BK_FIELD_WORD, BK_FIELD_BOTH, &bk_material_unit_words},
    FIELD(bk_material, on_hand, SUM),
    {offsetof(bk_material, width), BK_FIELD_NUMBER, BK_FIELD_LEFT, NULL},
    {offsetof(bk_material, price), BK_FIELD_NUMBER, BK_FIELD_LEFT, NULL},
};
static const bk_family_table shelf_table = TABLE("material", bk_material, shelf_fields);

static const bk_field sheet_fields[] = {
    FIELD(bk_sheet_day, performer_id, ID),
    FIELD(bk_sheet_day, taken_on, DAY),
};
static const bk_family_table sheets_table = TABLE("measure sheet", bk_sheet_day, sheet_fields);

static const bk_field taken_fields[] = {
    {offsetof(bk_minutes_taken, kind), BK_FIELD_WORD, BK_FIELD_BOTH, &bk_kind_words},
    FIELD(bk_minutes_taken, person, SHARED),
    FIELD(bk_minutes_taken, guessed, NUMBER),
    FIELD(bk_minutes_taken, took, NUMBER),
};
static const bk_family_table taken_table = TABLE("step", bk_minutes_taken, taken_fields);

bk_status bk_store_other_claims(bk_store *store, int64_t production, bk_arena *arena, bk_rows *claims,
                                bk_error *error)
{
    return bk_store_read_by(store, BK_SQL_RAIL_OTHER_CLAIMS, &production, &claims_table, arena, claims,
                            error);
}

bk_status bk_store_other_pieces(bk_store *store, int64_t production, bk_arena *arena, bk_rows *pieces,
                                bk_error *error)
{
    return bk_store_read_by(store, BK_SQL_RAIL_OTHER_PIECES, &production, &pieces_table, arena, pieces,
                            error);
}

bk_status bk_store_usual_dues(bk_store *store, int64_t production, bk_arena *arena, bk_rows *dues,
                              bk_error *error)
{
    return bk_store_read_by(store, BK_SQL_RAIL_USUAL_DUES, &production, &dues_table, arena, dues, error);
}

bk_status bk_store_newest_sheets(bk_store *store, int64_t production, bk_arena *arena, bk_rows *sheets,
                                 bk_error *error)
{
    return bk_store_read_by(store, BK_SQL_RAIL_NEWEST_SHEETS, &production, &sheets_table, arena, sheets,
                            error);
}

bk_status bk_store_taken(bk_store *store, bk_arena *arena, bk_rows *taken, bk_error *error)
{
    return bk_store_read_by(store, BK_SQL_STEPS_TAKEN, NULL, &taken_table, arena, taken, error);
}

static int by_id(const void *left, const void *right)
{
    const bk_order *one = left;
    const bk_order *other = right;
    return (one->id > other->id) - (one->id < other->id);
}

// The orders of all materials are few: read material by material and put in order.
static bk_status read_incoming(bk_store *store, const bk_rows *materials, bk_arena *arena, bk_rows *orders,
                               bk_error *error)
{
    BK_LIST(bk_order) all = {0};
    const bk_material *material = materials->items;
    bk_status status = BK_OK;
    for (size_t i = 0; i < materials->count && status == BK_OK; i++) {
        bk_rows some;
        status = bk_store_read_by(store, BK_SQL_RAIL_INCOMING, &material[i].id, &bk_families[BK_ORDERS],
                                  arena, &some, error);
        const bk_order *order = some.items;
        for (size_t j = 0; j < some.count; j++)
            bk_list_add(&all, order[j]);
    }
    *orders = (bk_rows){NULL, 0};
    if (status == BK_OK && all.count > 0) {
        qsort(all.items, all.count, sizeof *all.items, by_id);
        orders->items = bk_arena_take(arena, all.count * sizeof *all.items);
        memcpy(orders->items, all.items, all.count * sizeof *all.items);
        orders->count = all.count;
    }
    bk_list_free(&all);
    return status;
}

bk_status bk_store_shelf(bk_store *store, int64_t production, bk_arena *arena, bk_rows *materials,
                         bk_rows *orders, bk_error *error)
{
    bk_status status =
        bk_store_read_by(store, BK_SQL_RAIL_SHELF, &production, &shelf_table, arena, materials, error);
    if (status != BK_OK)
        return status;
    return read_incoming(store, materials, arena, orders, error);
}

bk_status bk_store_newest_taking(bk_store *store, int64_t performer, const char *measure, bk_day *taken_on,
                                 bk_error *error)
{
    *taken_on = BK_NO_DAY;
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, BK_SQL_RAIL_NEWEST_TAKING, error);
    if (status != BK_OK)
        return status;
    bool row = false;
    size_t length = 0;
    bk_query_give(query, 1, performer);
    bk_query_give_text(query, 2, measure);
    status = bk_query_row(query, &row, error);
    if (status == BK_OK && row && !bk_day_read(bk_query_text(query, 0, &length), taken_on))
        status = bk_fail(error, BK_STORE, "A measure sheet in the workroom has a day that is none.");
    bk_query_end(query);
    return status;
}

bk_status bk_store_find_production(bk_store *store, const char *name, int64_t *id, bk_error *error)
{
    return bk_store_find_by_name(store, BK_SQL_FIND_PRODUCTION, name, id, error);
}
