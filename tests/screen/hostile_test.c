#include <stdlib.h>
#include <string.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/testing.h"

// Names that would do harm if they reached the terminal, or that do not take a cell a character.
static const char *const names[] = {
    "\033[2J\033[31mred\033]0:title\007",
    "\302\2335:5Hplaced",
    "a\rb\bc\177d\tE",
    "\342\200\256desrever\342\200\254 \342\201\246x",
    "\327\242\327\236\327\250\327\235 \327\244\327\252\327\231\327\234\327\220\327\231",
    "水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽",
    "e\314\201\314\202\314\203\314\204\314\205\314\206\314\207\314\210\314\211vil",
    "\314\201begins with a mark",
    "👩‍👩‍👧‍👦 family 👍🏽",
    "\357\273\277mark\342\200\250line\342\200\251paragraph",
    "WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW",
    "%s%n%d {} <b>&amp",
};

enum { NAMES = sizeof names / sizeof names[0] };

// Characters that would turn the order of a whole row round.
static const char *const forbidden[] = {"\342\200\256", "\342\201\246", "\342\200\250", "\033"};

static void assert_nothing_forbidden(const bk_terminal *terminal, const char *name)
{
    for (size_t i = 0; i < sizeof forbidden / sizeof forbidden[0]; i++)
        if (bk_terminal_shows(terminal, forbidden[i]))
            ck_abort_msg("the name %s reached the terminal as it is", name);
}

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
    assert_nothing_forbidden(terminal, name);
    bk_terminal_press(terminal, "Escape");
    assert_nothing_forbidden(terminal, name);
    assert_rail_is_intact(terminal, name);
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    ck_assert(bk_terminal_settings_as_before(terminal));
    bk_terminal_close(terminal);
}

START_TEST(a_hostile_name_leaves_the_screens_whole)
{
    for (size_t i = 0; i < NAMES; i++)
        look_at(names[i], NULL);
}
END_TEST

START_TEST(a_hostile_name_leaves_them_whole_in_ascii_too)
{
    for (size_t i = 0; i < NAMES; i++)
        look_at(names[i], &(bk_terminal_options){.type = "vt100", .locale = "C"});
}
END_TEST

BK_TEST_MAIN("hostile names", a_hostile_name_leaves_the_screens_whole,
             a_hostile_name_leaves_them_whole_in_ascii_too)
