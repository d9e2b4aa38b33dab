#include "bodkin/store/count_rows.h"

#include "bodkin/store/inside.h"

bk_status bk_store_production_counts(bk_store *store, int64_t production, bk_production_counts *counts,
                                     bk_error *error)
{
    bk_query *query = NULL;
    bool row = false;
    bk_status status = bk_query_begin(&query, store->db, BK_SQL_READ_PRODUCTION_COUNTS, error);
    if (status != BK_OK)
        return status;
    bk_query_give(query, 1, production);
    status = bk_query_row(query, &row, error);
    if (status == BK_OK && row)
        *counts = (bk_production_counts){bk_query_number(query, 0, 0), bk_query_number(query, 1, 0),
                                         bk_query_number(query, 2, 0), bk_query_number(query, 3, 0)};
    bk_query_end(query);
    return status;
}
