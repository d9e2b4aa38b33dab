#include "bodkin/store/one.h"

#include <assert.h>
#include <string.h>

#include "bodkin/store/families.h"
#include "bodkin/store/inside.h"

static const bk_field place_fields[] = {
    {offsetof(bk_place, id), BK_FIELD_ID, BK_FIELD_BOTH, NULL},
    {offsetof(bk_place, position), BK_FIELD_NUMBER, BK_FIELD_BOTH, NULL},
};

static const bk_family_table place_table = {
    .what = "place in a list",
    .size = sizeof(bk_place),
    .fields = place_fields,
    .field_count = sizeof place_fields / sizeof place_fields[0],
};

bk_status bk_store_get(bk_store *store, bk_family family, int64_t id, bk_arena *arena, void *record,
                       bool *found, bk_error *error)
{
    const bk_family_table *table = &bk_families[family];
    assert(table->get != BK_NO_STATEMENT);
    bk_rows rows;
    *found = false;
    bk_status status = bk_store_read_by(store, (bk_sql)table->get, &id, table, arena, &rows, error);
    if (status != BK_OK || rows.count == 0)
        return status;
    memcpy(record, rows.items, table->size);
    *found = true;
    return BK_OK;
}

// Runs a statement without rows for one or two numbers.
static bk_status run_for(bk_store *store, int sql, const int64_t *numbers, int count, bk_error *error)
{
    assert(sql != BK_NO_STATEMENT);
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, (bk_sql)sql, error);
    if (status != BK_OK)
        return status;
    for (int i = 0; i < count; i++)
        bk_query_give(query, i + 1, numbers[i]);
    status = bk_query_run(query, error);
    bk_query_end(query);
    return status;
}

bk_status bk_store_remove(bk_store *store, bk_family family, int64_t id, bk_error *error)
{
    assert(bk_families[family].get != BK_NO_STATEMENT);
    return run_for(store, bk_families[family].remove, &id, 1, error);
}

bk_status bk_store_remove_link(bk_store *store, bk_family family, int64_t from, int64_t to, bk_error *error)
{
    assert(bk_families[family].remove_all != BK_NO_STATEMENT);
    return run_for(store, bk_families[family].remove, (const int64_t[]){from, to}, 2, error);
}

bk_status bk_store_remove_links(bk_store *store, bk_family family, int64_t from, bk_error *error)
{
    return run_for(store, bk_families[family].remove_all, &from, 1, error);
}

bk_status bk_store_remove_measure(bk_store *store, int64_t sheet, int64_t name, bk_error *error)
{
    return run_for(store, bk_families[BK_MEASURES].remove, (const int64_t[]){sheet, name}, 2, error);
}

bk_status bk_store_places(bk_store *store, bk_family family, int64_t key, bk_arena *arena, bk_rows *places,
                          bk_error *error)
{
    const bk_family_table *table = &bk_families[family];
    assert(table->places != BK_NO_STATEMENT);
    return bk_store_read_by(store, (bk_sql)table->places, table->one_list ? NULL : &key, &place_table, arena,
                            places, error);
}

bk_status bk_store_place(bk_store *store, bk_family family, int64_t id, int64_t position, bk_error *error)
{
    return run_for(store, bk_families[family].place, (const int64_t[]){id, position}, 2, error);
}

bk_status bk_store_last_place(bk_store *store, bk_family family, int64_t key, int64_t *position,
                              bk_error *error)
{
    const bk_family_table *table = &bk_families[family];
    assert(table->last_place != BK_NO_STATEMENT);
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, (bk_sql)table->last_place, error);
    if (status != BK_OK)
        return status;
    bool row = false;
    if (!table->one_list)
        bk_query_give(query, 1, key);
    status = bk_query_row(query, &row, error);
    if (status == BK_OK && row)
        *position = bk_query_number(query, 0, 0);
    bk_query_end(query);
    return status;
}
