#include "bodkin/work/folder.h"

#include <stdlib.h>

#include "support/testing.h"

START_TEST(a_new_folder_has_no_sheets_and_an_arena_of_its_own)
{
    bk_folder *folder = bk_folder_new();
    ck_assert_ptr_nonnull(folder->arena);
    ck_assert_ptr_null(folder->production.items);
    ck_assert_ptr_null(folder->fittings.items);
    ck_assert_uint_eq(folder->steps.count, 0);
    folder->roles.items = bk_arena_clear(folder->arena, 3, sizeof *folder->roles.items);
    folder->roles.count = 3;
    bk_folder_free(folder); // its rows with it: a leak would be told by the sanitizer
    bk_folder_free(NULL);
}
END_TEST

START_TEST(an_empty_workroom_knows_no_names)
{
    bk_known *known = bk_known_new();
    ck_assert_ptr_null(bk_index_find(known->performers, "Ines Varga"));
    bk_index_put(known->people, bk_arena_text(known->arena, "Ada Pell"), 7);
    ck_assert_int_eq(*bk_index_find(known->people, "Ada Pell"), 7);
    ck_assert_ptr_null(bk_index_find(known->materials, "Ada Pell"));
    bk_known_free(known);
    bk_known_free(NULL);
}
END_TEST

BK_TEST_MAIN("folder", a_new_folder_has_no_sheets_and_an_arena_of_its_own, an_empty_workroom_knows_no_names)
