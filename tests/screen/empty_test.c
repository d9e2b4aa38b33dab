#include <stdlib.h>

#include "screen/terminal.h"
#include "support/program.h"
#include "support/testing.h"

// Screens with nothing on them: no key breaks anything, and they say what they are for.

static const char *const keys[] = {"Enter", "Down", "End", "PageDown", "x",   "e", "-", "b", "v",
                                   "k",     "g",    "s",   "a",        "m",   "t", "j", "w", "y",
                                   "n",     "o",    "[",   "]",        "Tab", "U", "?", "l"};

static void press_all_keys(bk_terminal *terminal, const char *screen)
{
    bk_terminal_press(terminal, screen);
    for (size_t i = 0; i < sizeof keys / sizeof keys[0]; i++) {
        bk_terminal_press(terminal, keys[i]);
        bk_terminal_press(terminal, "Escape");
        bk_terminal_press(terminal, screen);
    }
}

START_TEST(no_key_breaks_anything_in_an_empty_workroom)
{
    static const char *const screens[] = {"P", "M", "H", "O", "D"};
    bk_terminal *terminal = bk_terminal_start(NULL);
    for (size_t i = 0; i < sizeof screens / sizeof screens[0]; i++)
        press_all_keys(terminal, screens[i]);
    bk_terminal_press(terminal, "P C");
    ck_assert(bk_terminal_shows(terminal, "Open a production first, or make one."));
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(no_key_breaks_anything_in_an_empty_production)
{
    static const struct screen {
        const char *key, *says;
    } screens[] = {
        {"R", "No costume hangs on this rail yet"},
        {"C", "none yet"},
        {"F", "Nothing is to be fitted in this production yet."},
        {"M", "No material stands here yet."},
        {"N", "No note was taken for this production yet"},
        {"H", "nobody yet"},
        {"T", "opening"},
    };
    bk_test_write_text(bk_test_path("production.csv"), "production,opens\nThe Empty Barn,2027-03-19\n");
    bk_program_must(bodkin("import", bk_test_folder()), EXIT_SUCCESS);
    bk_terminal *terminal = bk_terminal_start(NULL);
    for (size_t i = 0; i < sizeof screens / sizeof screens[0]; i++) {
        press_all_keys(terminal, screens[i].key);
        if (!bk_terminal_shows(terminal, screens[i].says))
            ck_abort_msg("\"%s\" is not shown:\n%s", screens[i].says, bk_terminal_screen(terminal));
    }
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("empty", no_key_breaks_anything_in_an_empty_workroom,
             no_key_breaks_anything_in_an_empty_production)
