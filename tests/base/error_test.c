#include "bodkin/base/error.h"

#include <stdarg.h>
#include <string.h>

#include "support/testing.h"

/// Hands its arguments on, as a function with a sentence of its own does.
static bk_status fail_through(bk_error *error, const char *format, ...) BK_PRINTF(2, 3);

static bk_status fail_through(bk_error *error, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    bk_status status = bk_fail_list(error, BK_STORE, format, arguments);
    va_end(arguments);
    return status;
}

START_TEST(the_sentence_and_the_status_are_kept)
{
    bk_error error = {0};
    ck_assert_int_eq(bk_fail(&error, BK_REFUSED, "costume %s has no piece", "4A"), BK_REFUSED);
    ck_assert_int_eq(error.status, BK_REFUSED);
    ck_assert_str_eq(error.text, "costume 4A has no piece");
}
END_TEST

START_TEST(a_list_of_arguments_does_the_same)
{
    bk_error error = {0};
    ck_assert_int_eq(fail_through(&error, "%d of %d", 3, 7), BK_STORE);
    ck_assert_int_eq(error.status, BK_STORE);
    ck_assert_str_eq(error.text, "3 of 7");
}
END_TEST

START_TEST(nobody_need_want_the_sentence)
{
    ck_assert_int_eq(bk_fail(NULL, BK_USAGE, "unheard"), BK_USAGE);
}
END_TEST

START_TEST(a_sentence_may_be_made_from_itself)
{
    bk_error error = {0};
    ck_assert_int_eq(bk_fail(&error, BK_REFUSED, "the hem is open"), BK_REFUSED);
    ck_assert_int_eq(bk_fail(&error, BK_STORE, "line 3: %s", error.text), BK_STORE);
    ck_assert_str_eq(error.text, "line 3: the hem is open");
}
END_TEST

START_TEST(a_long_sentence_is_cut_at_a_whole_character)
{
    static const char *const characters[] = {"x", "é", "…", "\U0001F9F5"};
    for (size_t i = 0; i < sizeof characters / sizeof *characters; i++) {
        size_t width = strlen(characters[i]);
        for (size_t shift = 0; shift < width; shift++) {
            char text[2 * BK_ERROR_ROOM] = "";
            memset(text, '-', shift);
            while (strlen(text) < BK_ERROR_ROOM + 8)
                strcat(text, characters[i]);
            bk_error error = {0};
            ck_assert_int_eq(bk_fail(&error, BK_REFUSED, "%s", text), BK_REFUSED);
            size_t room = BK_ERROR_ROOM - 1;
            ck_assert_uint_eq(strlen(error.text), shift + (room - shift) / width * width);
            ck_assert_int_eq(strncmp(error.text, text, strlen(error.text)), 0);
        }
    }
}
END_TEST

BK_TEST_MAIN("error", the_sentence_and_the_status_are_kept, a_list_of_arguments_does_the_same,
             nobody_need_want_the_sentence, a_sentence_may_be_made_from_itself,
             a_long_sentence_is_cut_at_a_whole_character)
