#include "bodkin/store/count_rows.h"

#include <string.h>

#include "workroom.h"

static bk_production_counts counts_of(bk_store *store, int64_t production)
{
    bk_production_counts counts = {0};
    MUST(bk_store_production_counts(store, production, &counts, &trouble));
    return counts;
}

START_TEST(a_production_is_counted_without_reading_its_rows)
{
    record_ids ids;
    bk_store *store = open_workroom();
    (void)import_one_of_each(store, &ids);
    run_sql(store, "UPDATE step SET done_on = NULL; UPDATE fitting SET outcome = 'again'");
    bk_production_counts counts = counts_of(store, ids.production);
    ck_assert_int_eq(counts.performers, 2);
    ck_assert_int_eq(counts.costumes, 1);
    ck_assert_int_eq(counts.steps, 2);
    ck_assert_int_eq(counts.steps_open, 2);
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_that_was_ticked_or_whose_fitting_fits_is_not_counted_as_open)
{
    record_ids ids;
    bk_store *store = open_workroom();
    (void)import_one_of_each(store, &ids);
    run_sql(store, "UPDATE step SET done_on = NULL; UPDATE fitting SET outcome = 'fits'");
    ck_assert_int_eq(counts_of(store, ids.production).steps_open, 1);
    run_sql(store, "UPDATE step SET done_on = '2027-03-01'");
    ck_assert_int_eq(counts_of(store, ids.production).steps_open, 0);
    bk_store_close(store);
}
END_TEST

START_TEST(a_production_that_is_not_there_has_nothing)
{
    bk_store *store = open_workroom();
    bk_production_counts counts = counts_of(store, 77);
    ck_assert_int_eq(counts.performers + counts.costumes + counts.steps + counts.steps_open, 0);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("counts of a production", a_production_is_counted_without_reading_its_rows,
             a_step_that_was_ticked_or_whose_fitting_fits_is_not_counted_as_open,
             a_production_that_is_not_there_has_nothing)
