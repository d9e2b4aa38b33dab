#include "bodkin/store/inside.h"

// In an order in which nothing refers to what is gone; each takes the production.
static const bk_sql removals[] = {
    BK_SQL_REMOVE_NOTES,       BK_SQL_REMOVE_RUNNINGS,       BK_SQL_REMOVE_FITTINGS,
    BK_SQL_REMOVE_NEEDS,       BK_SQL_REMOVE_STEP_AFTERS,    BK_SQL_REMOVE_STEPS,
    BK_SQL_REMOVE_PIECE_COSTS, BK_SQL_REMOVE_PIECE_COSTUMES, BK_SQL_REMOVE_PIECES,
    BK_SQL_REMOVE_COSTUMES,    BK_SQL_REMOVE_COVERS,         BK_SQL_REMOVE_ROLES,
    BK_SQL_REMOVE_DATES,       BK_SQL_REMOVE_EACH_COMPANY,   BK_SQL_REMOVE_PRODUCTION,
};

static bk_status run_for(bk_store *store, bk_sql sql, int64_t production, bk_error *error)
{
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, sql, error);
    if (status != BK_OK)
        return status;
    bk_query_give(query, 1, production);
    status = bk_query_run(query, error);
    bk_query_end(query);
    return status;
}

bk_status bk_store_remove_production(bk_store *store, int64_t production, bk_error *error)
{
    bk_status status = BK_OK;
    for (size_t i = 0; i < sizeof removals / sizeof removals[0] && status == BK_OK; i++)
        status = run_for(store, removals[i], production, error);
    return status;
}
