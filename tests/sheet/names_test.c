#include "bodkin/sheet/names.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/testing.h"

START_TEST(the_same_text_is_kept_once)
{
    bk_arena *arena = bk_arena_new();
    bk_names *names = bk_names_new(arena);
    const char *first = bk_names_keep(names, "Ines Varga", 10);
    ck_assert_str_eq(first, "Ines Varga");
    ck_assert_ptr_eq(bk_names_keep(names, "Ines Varga;Tomas", 10), first);
    ck_assert_ptr_ne(bk_names_keep(names, "Ines Varga;Tomas", 4), first);
    ck_assert_ptr_eq(bk_names_find(names, "Ines Varga", 10), first);
    ck_assert_ptr_null(bk_names_find(names, "Ines Varg", 9));
    bk_names_free(names);
    ck_assert_str_eq(first, "Ines Varga");
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_hundred_thousand_names_are_found_again)
{
    enum { MANY = 100000 };
    bk_arena *arena = bk_arena_new();
    bk_names *names = bk_names_new(arena);
    static const char *kept[MANY];
    char text[32];
    for (int i = 0; i < MANY; i++) {
        snprintf(text, sizeof text, "step %d", i);
        kept[i] = bk_names_keep(names, text, strlen(text));
    }
    for (int i = 0; i < MANY; i++) {
        snprintf(text, sizeof text, "step %d", i);
        ck_assert_ptr_eq(bk_names_find(names, text, strlen(text)), kept[i]);
    }
    bk_names_free(names);
    bk_arena_free(arena);
}
END_TEST

BK_TEST_MAIN("names", the_same_text_is_kept_once, a_hundred_thousand_names_are_found_again)
