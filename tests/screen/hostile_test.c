#include <stdlib.h>
#include <string.h>

#include "screen/hostile_names.h"
#include "screen/show.h"
#include "screen/terminal.h"
#include "support/testing.h"

// The plain costume's line, and the bottom line, are where they always are.
static void assert_rail_is_intact(const bk_terminal *terminal, const char *name)
{
    size_t plain = bk_terminal_find(terminal, "2A Walker");
    const char *odd = bk_terminal_row(terminal, plain - 1);
    bool whole = plain == 7 && strstr(odd, "1A ") && strstr(odd, "tight") &&
                 strstr(bk_terminal_row(terminal, 0), "Odd Names") &&
                 strstr(bk_terminal_row(terminal, 23), "q leave");
    if (!whole)
        ck_abort_msg("the rail is not whole with the name %s:\n%s", name, bk_terminal_screen(terminal));
}

static void look_at(const char *name, const bk_terminal_options *options)
{
    bk_odd_show_import(name);
    bk_terminal *terminal = bk_terminal_start(options);
    assert_rail_is_intact(terminal, name);
    bk_terminal_press(terminal, "Enter");
    ck_assert_ptr_nonnull(
        strstr(bk_terminal_row(terminal, bk_terminal_find(terminal, "P1  ")), "0 of 1 done"));
    ck_assert_ptr_nonnull(
        strstr(bk_terminal_row(terminal, bk_terminal_find(terminal, "next")), "fit        30 min"));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, 23), "q leave"));
    bk_assert_nothing_forbidden(terminal, name);
    bk_terminal_press(terminal, "Escape");
    bk_assert_nothing_forbidden(terminal, name);
    assert_rail_is_intact(terminal, name);
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    ck_assert(bk_terminal_settings_as_before(terminal));
    bk_terminal_close(terminal);
}

START_TEST(a_hostile_name_leaves_the_screens_whole)
{
    for (size_t i = 0; i < BK_HOSTILE_NAMES; i++)
        look_at(bk_hostile_names[i], NULL);
}
END_TEST

START_TEST(a_hostile_name_leaves_them_whole_in_ascii_too)
{
    for (size_t i = 0; i < BK_HOSTILE_NAMES; i++)
        look_at(bk_hostile_names[i], &(bk_terminal_options){.type = "vt100", .locale = "C"});
}
END_TEST

BK_TEST_MAIN("hostile names", a_hostile_name_leaves_the_screens_whole,
             a_hostile_name_leaves_them_whole_in_ascii_too)
