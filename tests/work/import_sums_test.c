// Quantities that add up: no import may bring the shelf so far that the workroom can no longer be read.

#include <string.h>

#include "bodkin/trade/words.h"
#include "bodkin/work/rail.h"
#include "work/show.h"

/// A show with one material and, where `ordered` is above zero, one order of it.
static bk_folder *silk_show(const char *name, bk_quantity on_hand, bk_quantity ordered, bk_day arrived)
{
    bk_folder *folder = bare_show(name, DAY(6, 4));
    ROWS(folder, materials, bk_material, MATERIAL("silk", BK_METRE, on_hand));
    if (ordered > 0)
        ROWS(folder, orders, bk_order, ORDER("silk", ordered, DAY(2, 10), BK_NO_DAY, arrived));
    return folder;
}

static void expect_import_refused(bk_store *store, bk_folder *folder, const char *words)
{
    bk_import_options options = {.today = today()};
    bk_import_report report = {0};
    MUST(bk_store_change_begin(store, &trouble));
    REFUSED(bk_import_folder(store, folder, &options, texts(), &report, &trouble), BK_REFUSED, words);
    bk_store_change_drop(store);
    bk_folder_free(folder);
}

static void import(bk_store *store, bk_folder *folder)
{
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
}

START_TEST(a_delivery_that_no_shelf_can_hold_is_refused_and_does_not_lock_the_workroom_out)
{
    bk_store *store = open_store();
    import(store, silk_show("One", BK_QUANTITY_MOST, BK_QUANTITY_MOST, BK_NO_DAY));
    const char *before = bk_records();
    expect_import_refused(store, silk_show("Two", BK_NO_AMOUNT, BK_QUANTITY_MOST, DAY(3, 1)),
                          "\"silk\" than can be kept");
    ck_assert_str_eq(bk_records(), before);
    bk_rows materials = {0};
    MUST(bk_store_read(store, BK_MATERIALS, 0, texts(), &materials, &trouble));
    ck_assert_int_eq(((const bk_material *)materials.items)->on_hand, BK_QUANTITY_MOST);
    import(store, silk_show("Two", TENTHS(5), 0, BK_NO_DAY));
    bk_store_close(store);
}
END_TEST

START_TEST(a_count_as_large_as_can_be_after_one_as_far_below_zero_is_taken_in)
{
    bk_store *store = open_store();
    import(store, silk_show("One", -BK_QUANTITY_MOST, 0, BK_NO_DAY));
    import(store, silk_show("Two", BK_QUANTITY_MOST, 0, BK_NO_DAY));
    bk_rows materials = {0};
    MUST(bk_store_read(store, BK_MATERIALS, 0, texts(), &materials, &trouble));
    ck_assert_int_eq(((const bk_material *)materials.items)->on_hand, BK_QUANTITY_MOST);
    bk_rows movements = {0};
    MUST(bk_store_read(store, BK_MOVEMENTS, 1, texts(), &movements, &trouble));
    ck_assert_uint_eq(movements.count, 2);
    bk_store_close(store);
}
END_TEST

START_TEST(minutes_without_bounds_are_refused_and_not_added_up)
{
    bk_store *store = open_store();
    bk_folder *folder = bare_show("One", DAY(6, 4));
    ROWS(folder, pieces, bk_piece, PIECE("P1", NULL, BK_STOCK));
    ROWS(folder, steps, bk_step, STEP("P1", "cut", BK_CUT, 10, NULL), STEP("P1", "sew", BK_HAND, 10, NULL));
    import(store, folder);
    bk_ask("UPDATE step SET minutes = 9000000000000000000");
    bk_rail *rail = NULL;
    REFUSED(bk_rail_read(store, 1, today(), &rail, &trouble), BK_STORE, "step number 1");
    bk_ask("UPDATE step SET minutes = -9223372036854775807 - 1");
    REFUSED(bk_rail_read(store, 1, today(), &rail, &trouble), BK_STORE, "step number 1");
    bk_ask("UPDATE step SET minutes = 1000000");
    MUST(bk_rail_read(store, 1, today(), &rail, &trouble));
    ck_assert_int_eq(rail->minutes, 2000000);
    bk_rail_free(rail);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("import sums", a_delivery_that_no_shelf_can_hold_is_refused_and_does_not_lock_the_workroom_out,
             a_count_as_large_as_can_be_after_one_as_far_below_zero_is_taken_in,
             minutes_without_bounds_are_refused_and_not_added_up)
