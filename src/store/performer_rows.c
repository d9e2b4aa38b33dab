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

bk_status bk_store_find_performer(bk_store *store, const char *name, int64_t *id, bk_error *error)
{
    return bk_store_find_by_name(store, BK_SQL_FIND_PERFORMER, name, id, error);
}

bk_status bk_store_find_measure_name(bk_store *store, const char *name, int64_t *id, bk_error *error)
{
    return bk_store_find_by_name(store, BK_SQL_FIND_MEASURE_NAME, name, id, error);
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
