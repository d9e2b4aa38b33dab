#include "bodkin/base/buffer.h"

#include <string.h>

#include "support/testing.h"

START_TEST(what_is_added_follows_what_was_there)
{
    bk_buffer buffer = {0};
    bk_buffer_text(&buffer, "hooks");
    bk_buffer_char(&buffer, ' ');
    bk_buffer_add(&buffer, "and bars", 3);
    bk_buffer_print(&buffer, " %s %d", "eyes", 12);
    ck_assert_str_eq(buffer.bytes, "hooks and eyes 12");
    ck_assert_uint_eq(buffer.length, strlen("hooks and eyes 12"));
    bk_buffer_free(&buffer);
}
END_TEST

START_TEST(it_grows_byte_by_byte_and_ends_in_a_nul)
{
    bk_buffer buffer = {0};
    for (size_t i = 0; i < 5000; i++) {
        bk_buffer_char(&buffer, (char)('a' + i % 26));
        if (buffer.bytes[buffer.length] != '\0')
            ck_abort_msg("no NUL after %zu bytes", i);
    }
    ck_assert_uint_eq(strlen(buffer.bytes), 5000);
    ck_assert_int_eq(buffer.bytes[4999], 'a' + 4999 % 26);
    bk_buffer_free(&buffer);
}
END_TEST

START_TEST(a_long_print_has_the_room_it_needs)
{
    for (int width = 50; width < 300; width++) {
        bk_buffer buffer = {0};
        bk_buffer_print(&buffer, "%*d", width, 7);
        bk_buffer_print(&buffer, "%*d", width, 8);
        ck_assert_uint_eq(buffer.length, 2 * (size_t)width);
        ck_assert_uint_eq(strlen(buffer.bytes), buffer.length);
        ck_assert_int_eq(buffer.bytes[width - 1], '7');
        bk_buffer_free(&buffer);
    }
}
END_TEST

START_TEST(adding_nothing_makes_an_empty_string)
{
    bk_buffer buffer = {0};
    bk_buffer_add(&buffer, NULL, 0);
    ck_assert_str_eq(buffer.bytes, "");
    bk_buffer_free(&buffer);
}
END_TEST

START_TEST(a_freed_buffer_begins_anew)
{
    bk_buffer buffer = {0};
    bk_buffer_text(&buffer, "toile");
    bk_buffer_free(&buffer);
    ck_assert_ptr_null(buffer.bytes);
    bk_buffer_text(&buffer, "calico");
    ck_assert_str_eq(buffer.bytes, "calico");
    bk_buffer_free(&buffer);
}
END_TEST

BK_TEST_MAIN("buffer", what_is_added_follows_what_was_there, it_grows_byte_by_byte_and_ends_in_a_nul,
             a_long_print_has_the_room_it_needs, adding_nothing_makes_an_empty_string,
             a_freed_buffer_begins_anew)
