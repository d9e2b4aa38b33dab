#include <stdlib.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/shell.h"
#include "support/testing.h"

// Whoever is not the maker sees all screens, changes nothing, and sees nothing that is the maker's alone.

static const char *const secrets[] = {"queen@court", "13.70", "41.10", "88.80", "90 cm"};

static void import_with_secrets(void)
{
    bk_show_import();
    bk_show_rewrite("performers.csv", "performer,contact\nAna Ruíz,queen@court\nBo Lindqvist,queen@court\n"
                                      "Chidi Okoro,queen@court\n");
    bk_show_rewrite("materials.csv",
                    "material,unit,on_hand,supplier,price\nwool flannel,m,1,The Mill,13.70\n");
    bk_show_rewrite("orders.csv",
                    "material,quantity,ordered_on,due_on,cost\nwool flannel,3,2027-02-20,2027-03-09,"
                    "41.10\n");
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\nG1,cut,wool flannel,5\n");
    bk_show_rewrite("notes.csv", "noted_on,from,what,piece\n2027-03-01,rehearsal,Too long,G1\n");
    bk_show_replace("pieces.csv",
                    "piece,costumes,title,origin,cost\nG1,1A,Gown,hire,88.80\nC1,1B,Cloak,make,\n"
                    "O1,2A,Oilskin coat,stock,\nH1,2B,Shirt,make,\nB1,2C,Boots,buy,\n"
                    "S1,3A,Suit,make,\nW1,4A,Shroud,make,\n");
}

// From the Rail to somewhere, and what changes something there.
static const struct way {
    const char *there, *change;
} ways[] = {
    {"x", "Enter"},
    {"t", "Enter"},
    {"-", "Enter"},
    {"j", "x Control-S"},
    {"e", "x Control-S"},
    {"u", "U"},
    {"/ 1a Enter Enter", "Home Down e x Control-S"},
    {"/ 1a Enter Enter", "Home Down w x Control-S"},
    {"/ 1a Enter Enter", "End x Enter"},
    {"C", "e x Control-S"},
    {"C", "s 70 Control-S Enter"},
    {"C Enter", "e Enter s"},
    {"F", "b +3 Control-S"},
    {"M", "e x Control-S"},
    {"M", "k 5 Control-S"},
    {"M", "v Control-S"},
    {"M Tab", "g 5 Control-S"},
    {"M Enter End", "e x Control-S"},
    {"N", "x"},
    {"N", "s Control-S"},
    {"N", "- Enter"},
    {"H", "+ Mo Control-S"},
    {"T", "+ par Enter +3 Control-S"},
    {"O", "c x Control-S"},
    {"O", "]"},
    {"D", "Enter Enter"},
    {"l queen", "Enter"},
    {"P", "z"},
};

static void assert_no_secret(const bk_terminal *terminal, const char *keys)
{
    for (size_t i = 0; i < sizeof secrets / sizeof secrets[0]; i++)
        if (bk_terminal_shows(terminal, secrets[i]))
            ck_abort_msg("after %s %s is shown:\n%s", keys, secrets[i], bk_terminal_screen(terminal));
}

static void go_all_ways(const char *as)
{
    for (size_t i = 0; i < sizeof ways / sizeof ways[0]; i++) {
        bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.as = as});
        bk_terminal_press(terminal, ways[i].there);
        assert_no_secret(terminal, ways[i].there);
        bk_terminal_press(terminal, ways[i].change);
        assert_no_secret(terminal, ways[i].change);
        bk_terminal_press(terminal, "Escape y Escape y Escape R");
        assert_no_secret(terminal, "R");
        ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
        bk_terminal_close(terminal);
    }
}

START_TEST(a_director_and_a_volunteer_go_everywhere_change_nothing_and_see_nothing_that_is_the_makers)
{
    import_with_secrets();
    const char *before = bk_records();
    const char *entries = bk_ask("SELECT count(*) FROM daybook");
    go_all_ways("director");
    go_all_ways("volunteer");
    ck_assert_str_eq(bk_records(), before);
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), entries);
}
END_TEST

START_TEST(the_maker_sees_what_is_kept_from_the_others)
{
    static const char *const there[] = {"C e", "M e", "M Enter End", "/ 1a Enter Enter Home Down e",
                                        "C Enter"};
    import_with_secrets();
    for (size_t i = 0; i < sizeof secrets / sizeof secrets[0]; i++) {
        bk_terminal *terminal = bk_terminal_start(NULL);
        bk_terminal_press(terminal, there[i]);
        bk_terminal_resize(terminal, 60, 120);
        if (!bk_terminal_shows(terminal, secrets[i]))
            ck_abort_msg("%s is not shown:\n%s", secrets[i], bk_terminal_screen(terminal));
        bk_terminal_close(terminal);
    }
}
END_TEST

START_TEST(a_refusal_is_told_in_one_sentence)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.as = "director"});
    bk_terminal_press(terminal, "x Enter");
    ck_assert(bk_terminal_shows(terminal, "Only the maker changes the workroom: nothing was changed."));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("others",
             a_director_and_a_volunteer_go_everywhere_change_nothing_and_see_nothing_that_is_the_makers,
             the_maker_sees_what_is_kept_from_the_others, a_refusal_is_told_in_one_sentence)
