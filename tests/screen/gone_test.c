#include <stdio.h>
#include <stdlib.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/shell.h"
#include "support/testing.h"

// What another terminal takes away while it is shown, asked about or typed about here.

// Ways to a screen, a form or a question of the production, and what is pressed there when the production is gone.
static const struct way {
    const char *there, *then;
} ways[] = {
    {"Enter", "Down x"},
    {"x", "Enter"},
    {"-", "Enter"},
    {"e", "x Control-S"},
    {"b", "+3 Control-S"},
    {"j", "x Control-S"},
    {"/ gown", "x"},
    {"?", "Down"},
    {"l gown", "Enter"},
    {"Enter Home Down w", "x Control-S"},
    {"Enter Home Down y", "x Control-S"},
    {"Enter Home Down Y", "x Control-S"},
    {"Enter Home Down -", "Enter"},
    {"Enter Home Down +", "s"},
    {"Enter End +", "n"},
    {"C", "Down e"},
    {"C Enter", "x Control-S"},
    {"F", "b"},
    {"F b", "+3 Control-S"},
    {"F End v", "Control-U +3 Tab Tab Control-S"},
    {"F End e", "Control-S"},
    {"F End -", "Enter"},
    {"F End Enter", "f Control-S"},
    {"M", "Enter"},
    {"M Enter", "k 5 Control-S"},
    {"M g", "5 Control-S"},
    {"N", "x"},
    {"N s", "Control-S"},
    {"N e", "x Control-S"},
    {"N -", "Enter"},
    {"T", "e"},
    {"T +", "par Enter +3 Control-S"},
    {"H", "+"},
    {"O", "Enter"},
    {"D", "Enter"},
    {"D Enter", "Enter"},
};

static void import_with_all(void)
{
    bk_show_import();
    bk_show_rewrite("notes.csv", "noted_on,from,what,piece\n2027-03-01,rehearsal,Too long,G1\n");
    bk_show_rewrite("materials.csv", "material,unit,on_hand\nwool flannel,m,1\ntape,m,5\n");
    bk_show_rewrite("fittings.csv", "piece,step,booked_at\nO1,fit,2027-03-04T11:00\n");
    bk_program_must(bodkin("undo"), EXIT_SUCCESS);
    bk_program_must(bodkin("import", bk_show_folder()), EXIT_SUCCESS);
}

START_TEST(nothing_breaks_when_the_production_goes_while_it_is_shown_or_typed_about)
{
    import_with_all();
    for (size_t i = 0; i < sizeof ways / sizeof ways[0]; i++) {
        bk_terminal *terminal = bk_terminal_start(NULL);
        bk_terminal_press(terminal, ways[i].there);
        bk_program_must(bodkin("undo"), EXIT_SUCCESS);
        bk_terminal_await(terminal, " no longer ");
        bk_terminal_press(terminal, ways[i].then);
        bk_terminal_press(terminal, "Escape y Escape y Escape Escape P");
        ck_assert_msg(bk_terminal_shows(terminal, "No production hangs in this workroom yet"),
                      "after %s, %s:\n%s", ways[i].there, ways[i].then, bk_terminal_screen(terminal));
        ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
        bk_terminal_close(terminal);
        if (bk_shell("sqlite3 workroom.db 'SELECT count(*) FROM production'")[0] == '0')
            bk_program_must(bodkin("redo"), EXIT_SUCCESS);
    }
}
END_TEST

START_TEST(a_costume_is_shown_as_it_is_although_what_lies_beside_it_cannot_be_read)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "Down Enter End");
    ck_assert(bk_terminal_shows(terminal, "Sew the gown"));
    bk_ask("DROP TABLE running; DELETE FROM need; DELETE FROM step WHERE key <> 'lace'");
    bk_terminal_await(terminal, "running");
    ck_assert(bk_terminal_shows(terminal, "Sew the lace"));
    ck_assert(!bk_terminal_shows(terminal, "Sew the gown"));
    bk_terminal_press(terminal, "Up Down End Home x Escape");
    bk_terminal_close(terminal);
}
END_TEST

// Screens that read more than the rail does, and a table without which they cannot be read.
static const struct unread {
    const char *there, *table, *then;
} unread[] = {
    {"M Down", "purchase_cost", "Enter k g v Down - Escape"},
    {"M Enter", "purchase_cost", "k Escape g Escape v Escape Down - Escape"},
    {"N", "note", "x s Escape e Escape - Escape Down"},
    {"F", "company", "Enter Escape b Escape Tab Down"},
    {"O", "work", "Enter c Escape Down ]"},
    {"O Enter", "work_step", "e Escape Down ]"},
    {"l wool", "note", "l Enter Escape"},
    {"D", "daybook", "Enter Escape Down"},
};

START_TEST(what_cannot_be_read_any_more_stays_as_it_was_and_its_keys_break_nothing)
{
    enum { DROP_ROOM = 64 };
    char drop[DROP_ROOM];
    import_with_all();
    bk_shell("cp workroom.db whole.db");
    for (size_t i = 0; i < sizeof unread / sizeof unread[0]; i++) {
        bk_terminal *terminal = bk_terminal_start(NULL);
        bk_terminal_press(terminal, unread[i].there);
        snprintf(drop, sizeof drop, "DROP TABLE %s", unread[i].table);
        bk_ask(drop);
        bk_terminal_await(terminal, "table:"); // one word: the sentence may be broken anywhere
        bk_terminal_press(terminal, unread[i].then);
        bk_terminal_press(terminal, "Escape y Escape y Escape R");
        ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
        bk_terminal_close(terminal);
        bk_shell("rm -f workroom.db-wal workroom.db-shm; cp whole.db workroom.db");
    }
}
END_TEST

START_TEST(a_question_about_a_costume_goes_when_the_costume_is_no_longer_shown)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "h x");
    ck_assert(bk_terminal_shows(terminal, "Done: H1/hem"));
    bk_ask("UPDATE step SET kind = 'machine' WHERE key = 'hem'");
    bk_terminal_await(terminal, "Nothing on the rail matches.");
    ck_assert(!bk_terminal_shows(terminal, "Enter yes"));
    bk_terminal_press(terminal, "Enter");
    ck_assert_str_eq(bk_ask("SELECT coalesce(done_on, '-') FROM step WHERE key = 'hem'"), "-");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("gone", nothing_breaks_when_the_production_goes_while_it_is_shown_or_typed_about,
             a_costume_is_shown_as_it_is_although_what_lies_beside_it_cannot_be_read,
             what_cannot_be_read_any_more_stays_as_it_was_and_its_keys_break_nothing,
             a_question_about_a_costume_goes_when_the_costume_is_no_longer_shown)
