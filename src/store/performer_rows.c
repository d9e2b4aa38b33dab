#include "bodkin/store/performer_rows.h"

#include "bodkin/store/families.h"
#include "bodkin/store/inside.h"
#include "bodkin/store/rights.h"

static const bk_field counted_fields[] = {
    {offsetof(bk_counted_sheet, id), BK_FIELD_ID, BK_FIELD_BOTH, NULL},
    {offsetof(bk_counted_sheet, performer_id), BK_FIELD_ID, BK_FIELD_BOTH, NULL},
    {offsetof(bk_counted_sheet, taken_on), BK_FIELD_DAY, BK_FIELD_BOTH, NULL},
    {offsetof(bk_counted_sheet, measures), BK_FIELD_NUMBER, BK_FIELD_BOTH, NULL},
};

static const bk_family_table counted_table = {
    .what = "measure sheet",
    .size = sizeof(bk_counted_sheet),
    .fields = counted_fields,
    .field_count = sizeof counted_fields / sizeof counted_fields[0],
};

bool bk_store_sees_measures(const bk_store *store)
{
    return bk_rights_allow(store->as, BK_DOING_READ, "measure", "value");
}

// The id that a statement gives for a name.
static bk_status find(bk_store *store, bk_sql sql, const char *name, int64_t *id, bk_error *error)
{
    *id = 0;
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, sql, error);
    if (status != BK_OK)
        return status;
    bool row = false;
    bk_query_give_text(query, 1, name);
    status = bk_query_row(query, &row, error);
    if (status == BK_OK && row)
        *id = bk_query_number(query, 0, 0);
    bk_query_end(query);
    return status;
}

bk_status bk_store_find_performer(bk_store *store, const char *name, int64_t *id, bk_error *error)
{
    return find(store, BK_SQL_FIND_PERFORMER, name, id, error);
}

bk_status bk_store_find_measure_name(bk_store *store, const char *name, int64_t *id, bk_error *error)
{
    return find(store, BK_SQL_FIND_MEASURE_NAME, name, id, error);
}

bk_status bk_store_performer_sheets(bk_store *store, int64_t performer, bk_arena *arena, bk_rows *sheets,
                                    bk_error *error)
{
    return bk_store_read_by(store, BK_SQL_READ_PERFORMER_SHEETS, &performer, &bk_families[BK_MEASURE_SHEETS],
                            arena, sheets, error);
}

bk_status bk_store_performer_measures(bk_store *store, int64_t performer, bk_arena *arena, bk_rows *measures,
                                      bk_error *error)
{
    return bk_store_read_by(store, BK_SQL_READ_PERFORMER_MEASURES, &performer,
                            &bk_families[BK_MEASURES_OF_SHEET], arena, measures, error);
}

bk_status bk_store_company_sheets(bk_store *store, int64_t production, bk_arena *arena, bk_rows *sheets,
                                  bk_error *error)
{
    return bk_store_read_by(store, BK_SQL_READ_COMPANY_SHEETS, &production, &counted_table, arena, sheets,
                            error);
}
