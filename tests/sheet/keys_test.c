#include "bodkin/sheet/keys.h"

#include <stdlib.h>

#include "support/testing.h"

START_TEST(a_row_is_found_by_its_names)
{
    const char *piece = "4A-1", *other = "4B-1", *cut = "cut", *sew = "sew";
    bk_step steps[] = {
        {.piece = piece, .key = cut}, {.piece = piece, .key = sew}, {.piece = other, .key = cut}};
    bk_keys *keys = bk_keys_new(&bk_sheets[BK_SHEET_STEPS], (bk_sheet_rows){steps, 3});
    size_t row = 9;
    ck_assert(!bk_keys_find(keys, piece, cut, &row));
    for (size_t i = 0; i < 3; i++)
        ck_assert_uint_eq(bk_keys_put(keys, i), i);
    ck_assert(bk_keys_find(keys, other, cut, &row));
    ck_assert_uint_eq(row, 2);
    ck_assert(bk_keys_find(keys, piece, sew, &row));
    ck_assert_uint_eq(row, 1);
    ck_assert(!bk_keys_find(keys, other, sew, &row));
    bk_keys_free(keys);
}
END_TEST

START_TEST(the_first_row_keeps_its_key)
{
    const char *ines = "Ines", *waist = "waist girth";
    bk_measure rows[] = {{.performer = ines, .taken_on = 1, .name = waist},
                         {.performer = ines, .taken_on = 2, .name = waist},
                         {.performer = ines, .taken_on = 1, .name = waist}};
    bk_keys *keys = bk_keys_new(&bk_sheets[BK_SHEET_MEASURES], (bk_sheet_rows){rows, 3});
    ck_assert_uint_eq(bk_keys_put(keys, 0), 0);
    ck_assert_uint_eq(bk_keys_put(keys, 1), 1);
    ck_assert_uint_eq(bk_keys_put(keys, 2), 0);
    bk_keys_free(keys);
}
END_TEST

START_TEST(a_row_with_a_part_of_its_key_unknown_is_like_no_other)
{
    const char *ines = "Ines", *waist = "waist girth";
    bk_measure rows[] = {{.performer = ines, .taken_on = BK_NO_DAY, .name = waist},
                         {.performer = ines, .taken_on = BK_NO_DAY, .name = waist},
                         {.performer = NULL, .taken_on = 1, .name = waist},
                         {.performer = NULL, .taken_on = 1, .name = waist}};
    bk_keys *keys = bk_keys_new(&bk_sheets[BK_SHEET_MEASURES], (bk_sheet_rows){rows, 4});
    for (size_t i = 0; i < 4; i++)
        ck_assert_uint_eq(bk_keys_put(keys, i), i);
    bk_keys_free(keys);
}
END_TEST

BK_TEST_MAIN("keys", a_row_is_found_by_its_names, the_first_row_keeps_its_key,
             a_row_with_a_part_of_its_key_unknown_is_like_no_other)
