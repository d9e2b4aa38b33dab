#include "bodkin/store/bench_rows.h"

#include "bodkin/store/families.h"
#include "bodkin/store/inside.h"

static const bk_field material_fields[] = {
    {offsetof(bk_step_material, material_id), BK_FIELD_ID, BK_FIELD_BOTH, NULL},
    {offsetof(bk_step_material, quantity), BK_FIELD_NUMBER, BK_FIELD_BOTH, NULL},
    {offsetof(bk_step_material, counted), BK_FIELD_NUMBER, BK_FIELD_BOTH, NULL},
};

static const bk_family_table materials_table = {
    .what = "material of a step",
    .size = sizeof(bk_step_material),
    .fields = material_fields,
    .field_count = sizeof material_fields / sizeof material_fields[0],
};

static const bk_field name_fields[] = {
    {offsetof(bk_step_name, piece), BK_FIELD_TEXT, BK_FIELD_BOTH, NULL},
    {offsetof(bk_step_name, key), BK_FIELD_TEXT, BK_FIELD_BOTH, NULL},
};

static const bk_family_table names_table = {
    .what = "name of a step",
    .size = sizeof(bk_step_name),
    .fields = name_fields,
    .field_count = sizeof name_fields / sizeof name_fields[0],
};

bk_status bk_store_find_step(bk_store *store, int64_t production, const char *piece, const char *key,
                             int64_t *id, bk_error *error)
{
    *id = 0;
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, BK_SQL_FIND_STEP, error);
    if (status != BK_OK)
        return status;
    bool row = false;
    bk_query_give(query, 1, production);
    bk_query_give_text(query, 2, piece);
    bk_query_give_text(query, 3, key);
    status = bk_query_row(query, &row, error);
    if (status == BK_OK && row)
        *id = bk_query_number(query, 0, 0);
    bk_query_end(query);
    return status;
}

// The name of the step's piece, and whether it is done by a fitting.
static bk_status read_state(bk_store *store, bk_arena *arena, bk_bench_step *step, bk_error *error)
{
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, BK_SQL_READ_STEP_STATE, error);
    if (status != BK_OK)
        return status;
    bool row = false;
    size_t length = 0;
    bk_query_give(query, 1, step->step.id);
    status = bk_query_row(query, &row, error);
    if (status == BK_OK && row) {
        const char *piece = bk_query_text(query, 0, &length);
        step->step.piece = bk_arena_bytes(arena, piece, length);
        step->fits = bk_query_number(query, 1, 0) != 0;
    }
    bk_query_end(query);
    return status;
}

bk_status bk_store_bench_step(bk_store *store, int64_t id, bk_arena *arena, bk_bench_step *step,
                              bk_error *error)
{
    bk_rows rows;
    bk_status status =
        bk_store_read_by(store, BK_SQL_GET_STEP, &id, &bk_families[BK_STEPS], arena, &rows, error);
    if (status != BK_OK)
        return status;
    if (rows.count == 0)
        return bk_fail(error, BK_REFUSED, "This step is no longer in the workroom: somebody has removed it.");
    *step = (bk_bench_step){.step = *(const bk_step *)rows.items};
    return read_state(store, arena, step, error);
}

bk_status bk_store_step_needs(bk_store *store, int64_t step, bk_arena *arena, bk_rows *needs, bk_error *error)
{
    return bk_store_read_by(store, BK_SQL_READ_STEP_NEEDS, &step, &materials_table, arena, needs, error);
}

bk_status bk_store_step_uses(bk_store *store, int64_t step, bk_arena *arena, bk_rows *uses, bk_error *error)
{
    return bk_store_read_by(store, BK_SQL_READ_STEP_USES, &step, &materials_table, arena, uses, error);
}

bk_status bk_store_step_lacks(bk_store *store, int64_t step, bk_arena *arena, bk_rows *lacks, bk_error *error)
{
    return bk_store_read_by(store, BK_SQL_READ_STEP_LACKS, &step, &materials_table, arena, lacks, error);
}

bk_status bk_store_step_open_before(bk_store *store, int64_t step, bk_arena *arena, bk_rows *names,
                                    bk_error *error)
{
    return bk_store_read_by(store, BK_SQL_READ_STEP_OPEN_BEFORE, &step, &names_table, arena, names, error);
}
