#include <string.h>

#include "screen/fitting_show.h"
#include "screen/show.h"
#include "support/testing.h"

static const char *bottom(const bk_terminal *terminal)
{
    return bk_terminal_row(terminal, 23);
}

static void assert_bottom(const bk_terminal *terminal, const char *text)
{
    if (!strstr(bottom(terminal), text))
        ck_abort_msg("\"%s\" is not told at the bottom: %s", text, bottom(terminal));
}

START_TEST(beside_what_was_done_the_first_keys_of_the_screen_are_told)
{
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "+ Lantern Enter +30 Control-S");
    assert_bottom(terminal, "New: production Lantern.");
    assert_bottom(terminal, "u undo");
    assert_bottom(terminal, "Enter its rail");
    bk_terminal_press(terminal, "u");
    assert_bottom(terminal, "U redo");
    assert_bottom(terminal, "+ new");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(where_the_sentence_is_long_undo_alone_is_told)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "N + Tab The Space hem Space of Space the Space gown Space drags Control-S");
    assert_bottom(terminal, "New: note");
    assert_bottom(terminal, "u undo");
    bk_terminal_press(terminal, "x");
    assert_bottom(terminal, "Note done");
    assert_bottom(terminal, "u undo");
    ck_assert_uint_le(strlen(bottom(terminal)), 80);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(over_a_form_no_undo_is_offered_because_u_is_typed_there)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    bk_terminal_press(terminal, "Enter f Control-S");
    ck_assert(bk_terminal_shows(terminal, "2 of 2: 4A-2 Skirt"));
    assert_bottom(terminal, "Fitted: 4A-1");
    ck_assert_ptr_null(strstr(bottom(terminal), "undo"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("message", beside_what_was_done_the_first_keys_of_the_screen_are_told,
             where_the_sentence_is_long_undo_alone_is_told,
             over_a_form_no_undo_is_offered_because_u_is_typed_there)
