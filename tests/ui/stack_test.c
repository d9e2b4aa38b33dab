#include "bodkin/ui/stack.h"

#include <stdio.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "support/testing.h"

// Screens that say what happens to them: `self` is a letter.
static bk_buffer told;

static void tell(const char *what, const bk_screen *screen)
{
    bk_buffer_print(&told, "%s %s;", what, (const char *)screen->self);
}

static const char *all_told(void)
{
    static char text[256];
    snprintf(text, sizeof text, "%s", told.bytes ? told.bytes : "");
    bk_buffer_free(&told);
    return text;
}

static void close_screen(bk_screen *screen)
{
    tell("close", screen);
}

static bk_status read_screen(bk_screen *screen, bk_error *error)
{
    (void)error;
    tell("read", screen);
    return BK_OK;
}

static bk_status go_while_read(bk_screen *screen, bk_error *error)
{
    (void)error;
    tell("go", screen);
    bk_stack_pop(screen->stack);
    return BK_OK;
}

static bk_status fail_to_read(bk_screen *screen, bk_error *error)
{
    return bk_fail(error, BK_STORE, "%s is torn", (const char *)screen->self);
}

static const bk_screen_kind plain = {.close = close_screen, .read = read_screen};
static const bk_screen_kind over = {.close = close_screen, .read = read_screen, .over = true};
static const bk_screen_kind going = {.close = close_screen, .read = go_while_read};
static const bk_screen_kind torn = {.close = close_screen, .read = fail_to_read};

static bk_wall wall;

START_TEST(what_lies_below_an_overlay_is_seen_and_read_first)
{
    bk_stack stack = {.wall = &wall};
    bk_error error;
    bk_stack_push(&stack, &plain, "a");
    bk_stack_push(&stack, &plain, "b");
    bk_stack_push(&stack, &over, "c");
    bk_stack_push(&stack, &over, "d");
    ck_assert_uint_eq(bk_stack_lowest_seen(&stack), 1);
    ck_assert_int_eq(bk_stack_read(&stack, &error), BK_OK);
    ck_assert_str_eq(all_told(), "read b;read c;read d;");
    bk_stack_close(&stack);
    bk_buffer_free(&told);
}
END_TEST

START_TEST(a_screen_that_goes_while_it_is_read_takes_what_lies_on_it_along)
{
    bk_stack stack = {.wall = &wall};
    bk_error error;
    bk_stack_push(&stack, &plain, "a");
    bk_stack_push(&stack, &going, "b");
    bk_stack_push(&stack, &over, "c");
    ck_assert_int_eq(bk_stack_read(&stack, &error), BK_OK);
    ck_assert_str_eq(all_told(), "go b;close c;close b;read a;");
    ck_assert_uint_eq(stack.count, 1);
    bk_stack_close(&stack);
    bk_buffer_free(&told);
}
END_TEST

START_TEST(one_that_cannot_be_read_does_not_keep_others_from_it)
{
    bk_stack stack = {.wall = &wall};
    bk_error error;
    bk_stack_push(&stack, &torn, "a");
    bk_stack_push(&stack, &over, "b");
    ck_assert_int_eq(bk_stack_read(&stack, &error), BK_STORE);
    ck_assert_str_eq(error.text, "a is torn");
    ck_assert_str_eq(all_told(), "read b;");
    bk_stack_close(&stack);
    bk_buffer_free(&told);
}
END_TEST

START_TEST(the_lowest_is_never_taken_off)
{
    bk_stack stack = {.wall = &wall};
    bk_stack_push(&stack, &plain, "a");
    bk_stack_pop(&stack);
    bk_stack_pop_to(&stack, 0);
    ck_assert_uint_eq(stack.count, 1);
    bk_stack_close(&stack);
    bk_buffer_free(&told);
}
END_TEST

START_TEST(a_full_stack_says_so_and_closes_what_would_lie_on_it)
{
    bk_stack stack = {.wall = &wall};
    for (size_t i = 0; i < BK_STACK_ROOM; i++)
        bk_stack_push(&stack, &plain, "a");
    bk_stack_push(&stack, &plain, "b");
    ck_assert_uint_eq(stack.count, BK_STACK_ROOM);
    ck_assert_str_eq(all_told(), "close b;");
    ck_assert_ptr_nonnull(strstr(wall.message, "Too many screens"));
    bk_stack_close(&stack);
    bk_buffer_free(&told);
}
END_TEST

BK_TEST_MAIN("stack of screens", what_lies_below_an_overlay_is_seen_and_read_first,
             a_screen_that_goes_while_it_is_read_takes_what_lies_on_it_along,
             one_that_cannot_be_read_does_not_keep_others_from_it, the_lowest_is_never_taken_off,
             a_full_stack_says_so_and_closes_what_would_lie_on_it)
