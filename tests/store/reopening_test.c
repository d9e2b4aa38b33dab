// A store that is opened again keeps the habits that guard it.

#include "store/workroom.h"

START_TEST(a_store_that_is_there_already_is_opened_with_its_foreign_keys_on)
{
    bk_store_close(open_workroom());
    bk_store *store = open_workroom();
    ck_assert_int_eq(ask_number(store, "PRAGMA foreign_keys"), 1);
    ck_assert_int_eq(ask_number(store, "PRAGMA synchronous"), 2);
    bk_role role = {.production_id = 77, .name = "The Ghost"};
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_ROLES, &role, 0, NULL, &trouble));
    ck_assert_int_eq(bk_store_change_commit(store, MADE_AT, "A role of no production", NULL, &trouble),
                     BK_STORE);
    ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM role"), 0);
    bk_store_close(store);
}
END_TEST

START_TEST(not_even_the_maker_writes_to_the_schema_or_its_shadow)
{
    static const char *const attempts[] = {
        "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = 'CREATE TABLE step (id)' WHERE name = "
        "'step'",
        "PRAGMA writable_schema = ON; DELETE FROM sqlite_schema WHERE name = 'movement_by_material'",
    };
    bk_store_close(open_workroom());
    for (size_t i = 0; i < sizeof attempts / sizeof *attempts; i++) {
        bk_store *store = open_workroom();
        ck_assert_int_ne(bk_db_script(store->db, attempts[i], NULL, NULL, &trouble), BK_OK);
        bk_store_close(store);
    }
}
END_TEST

static void expect_out_of_bounds(bk_store *store, bk_family family, const char *words)
{
    bk_rows rows = {0};
    bk_arena *arena = bk_arena_new();
    REFUSED(bk_store_read(store, family, 1, arena, &rows, &trouble), BK_STORE, words);
    bk_arena_free(arena);
}

START_TEST(numbers_far_out_of_bounds_are_told_and_not_reckoned_with)
{
    record_ids ids;
    bk_store *store = open_workroom();
    import_one_of_each(store, &ids);
    run_sql(store, "UPDATE step SET minutes = 9000000000000000000");
    expect_out_of_bounds(store, BK_STEPS, "The step number 1 in the workroom has a number out of all bounds");
    run_sql(store, "UPDATE need SET quantity = -9000000000000000000");
    expect_out_of_bounds(store, BK_NEEDS, "The need number 1");
    run_sql(store, "UPDATE purchase_cost SET cost = 9000000000000000000");
    expect_out_of_bounds(store, BK_ORDER_COSTS, "The cost number 1");
    run_sql(store, "UPDATE performer SET measures_good_for = -9223372036854775807 - 1");
    expect_out_of_bounds(store, BK_PERFORMERS, "The performer number 1");
    bk_store_close(store);
}
END_TEST

START_TEST(movements_that_add_up_to_more_than_a_number_holds_name_their_material)
{
    record_ids ids;
    bk_store *store = open_workroom();
    import_one_of_each(store, &ids);
    run_sql(store, "UPDATE movement SET quantity = 9000000000000000000;"
                   "INSERT INTO movement (material_id, kind, quantity, moved_on)"
                   " SELECT material_id, kind, quantity, moved_on FROM movement");
    bk_rows rows = {0};
    bk_arena *arena = bk_arena_new();
    REFUSED(bk_store_read(store, BK_MATERIALS, 0, arena, &rows, &trouble), BK_STORE, "The material number 1");
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("reopening", a_store_that_is_there_already_is_opened_with_its_foreign_keys_on,
             not_even_the_maker_writes_to_the_schema_or_its_shadow,
             numbers_far_out_of_bounds_are_told_and_not_reckoned_with,
             movements_that_add_up_to_more_than_a_number_holds_name_their_material)
