#include <string.h>
#include <sys/wait.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/testing.h"

static const char *const types[] = {"xterm-256color", "xterm", "linux", "vt100", "screen-256color"};

enum { TYPES = sizeof types / sizeof types[0] };

static bool has_colours(const char *type)
{
    return strcmp(type, "vt100") != 0;
}

static bk_terminal *start(const char *type, const char *locale, bool no_colour)
{
    return bk_terminal_start(&(bk_terminal_options){.type = type, .locale = locale, .no_colour = no_colour});
}

START_TEST(the_rail_is_drawn_on_every_kind_of_terminal_with_and_without_colour)
{
    bk_show_import();
    for (size_t i = 0; i < TYPES; i++)
        for (int no_colour = 0; no_colour < 2; no_colour++) {
            bk_terminal *terminal = start(types[i], NULL, no_colour != 0);
            bk_terminal_press(terminal, "Down");
            ck_assert(bk_terminal_shows(terminal, "17 days to opening, Fri 19 Mar"));
            ck_assert(bk_terminal_shows(terminal, "━ ┃· · ·  waiting: materials  Tue 16 Mar"));
            ck_assert_ptr_nonnull(
                strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "1A Salt Queen"));
            ck_assert_int_eq(bk_terminal_coloured(terminal), has_colours(types[i]) && !no_colour);
            ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
            bk_terminal_close(terminal);
        }
}
END_TEST

START_TEST(outside_utf_8_everything_is_ascii)
{
    bk_show_import();
    for (size_t i = 0; i < TYPES; i++) {
        bk_terminal *terminal = start(types[i], "C", false);
        ck_assert(bk_terminal_shows(terminal, "- |. . .  waiting: materials  Tue 16 Mar"));
        ck_assert(bk_terminal_shows(terminal, "Coronation..."));
        bk_terminal_press(terminal, "Down Enter");
        ck_assert(bk_terminal_shows(terminal, "Salt Queen, played by Ana Ruiz"));
        bk_terminal_press(terminal, "Escape / queen");
        ck_assert(bk_terminal_shows(terminal, "Narrowed to \"queen\": 2 of 8"));
        ck_assert(!bk_terminal_beyond_ascii(terminal));
        bk_terminal_close(terminal);
    }
}
END_TEST

START_TEST(page_home_end_and_arrow_keys_are_known_whatever_the_terminal_sends)
{
    static const char *const ups[] = {"\033[A", "\033OA"}, *const downs[] = {"\033[B", "\033OB"};
    static const char *const homes[] = {"\033[1~", "\033[7~", "\033[H", "\033OH"};
    static const char *const ends[] = {"\033[4~", "\033[8~", "\033[F", "\033OF"};
    bk_long_show_import(40);
    for (size_t i = 0; i < TYPES; i++) {
        bk_terminal *terminal = start(types[i], NULL, false);
        size_t first = bk_terminal_chosen(terminal);
        for (size_t way = 0; way < 4; way++) {
            bk_terminal_send(terminal, ends[way]);
            ck_assert(bk_terminal_shows(terminal, "32 to 40 of 40"));
            bk_terminal_send(terminal, homes[way]);
            ck_assert(bk_terminal_shows(terminal, "1 to 9 of 40"));
        }
        for (size_t way = 0; way < 2; way++) {
            bk_terminal_send(terminal, downs[way]);
            ck_assert_uint_eq(bk_terminal_chosen(terminal), first + 1);
            bk_terminal_send(terminal, ups[way]);
            ck_assert_uint_eq(bk_terminal_chosen(terminal), first);
        }
        bk_terminal_send(terminal, "\033[6~");
        ck_assert(bk_terminal_shows(terminal, "9 to 17 of 40"));
        bk_terminal_send(terminal, "\033[5~");
        ck_assert(bk_terminal_shows(terminal, "1 to 9 of 40"));
        bk_terminal_close(terminal);
    }
}
END_TEST

START_TEST(a_terminal_that_is_unknown_or_cannot_move_its_cursor_is_refused_with_a_sentence)
{
    static const struct {
        const char *type, *said;
    } cases[] = {
        {"no-such-terminal", "does not know the kind of terminal that TERM names (no-such-terminal)"},
        {"", "(nothing); try TERM=xterm"},
        {"dumb", "(dumb) cannot place text on a screen"},
    };
    bk_show_import();
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        int status = 0;
        bk_terminal *terminal =
            bk_terminal_refused(&(bk_terminal_options){.type = cases[i].type, .columns = 200}, &status);
        ck_assert(WIFEXITED(status));
        ck_assert_int_eq(WEXITSTATUS(status), 1);
        ck_assert(bk_terminal_shows(terminal, cases[i].said));
        ck_assert(bk_terminal_settings_as_before(terminal));
        bk_terminal_close(terminal);
    }
}
END_TEST

BK_TEST_MAIN("kinds of terminals", the_rail_is_drawn_on_every_kind_of_terminal_with_and_without_colour,
             outside_utf_8_everything_is_ascii,
             page_home_end_and_arrow_keys_are_known_whatever_the_terminal_sends,
             a_terminal_that_is_unknown_or_cannot_move_its_cursor_is_refused_with_a_sentence)
