#include <string.h>

#include "screen/form_fields.h"
#include "screen/show.h"
#include "support/testing.h"

static bk_terminal *form_on(const char *keys)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, keys);
    return terminal;
}

// A step is filled in up to its key on the Costume screen of the gown.
static bk_terminal *new_step(void)
{
    bk_terminal *terminal = form_on("/ Coronation Enter Enter + s");
    ck_assert(bk_terminal_shows(terminal, "New step"));
    bk_assert_field(terminal, "piece", "G1");
    bk_assert_at_field(terminal, "title");
    return terminal;
}

START_TEST(a_costume_is_offered_the_next_number_of_its_role)
{
    bk_terminal *terminal = form_on("+ Control-U ferry Enter");
    bk_assert_field(terminal, "number", "2D");
    bk_assert_field(terminal, "number", "suggested");
    bk_assert_field(terminal, "role", "played by Bo Lindqvist");
    bk_terminal_press(terminal, "BackTab ghost Enter");
    bk_assert_field(terminal, "number", "4B");
    bk_terminal_press(terminal, "Enter Rags Control-S");
    ck_assert(bk_terminal_shows(terminal, "4B Ghost"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_typed_takes_the_place_of_what_is_suggested_and_stays)
{
    bk_terminal *terminal = form_on("+ Control-U ferry Enter 7X Enter");
    bk_assert_field(terminal, "number", "  7X");
    bk_terminal_press(terminal, "Up Up ghost Enter");
    bk_assert_field(terminal, "number", "  7X");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_step_is_offered_a_key_made_of_its_title)
{
    bk_terminal *terminal = new_step();
    bk_terminal_press(terminal, "Sew Space it Enter");
    bk_assert_field(terminal, "key", "sew2"); // the gown has a sew
    bk_terminal_press(terminal, "mach Enter 1h30 Enter");
    bk_assert_field(terminal, "minutes", "90");
    bk_assert_field(terminal, "minutes", "1 h 30");
    bk_terminal_press(terminal, "Enter cut Enter Control-S");
    ck_assert(bk_terminal_shows(terminal, "New: step G1/sew2 Sew it."));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_step_is_offered_the_usual_minutes_of_its_kind)
{
    bk_terminal *terminal = new_step();
    bk_terminal_press(terminal, "Cut Space lace Enter cut Enter");
    bk_assert_field(terminal, "minutes", "60"); // of 20, 60 and 80
    bk_assert_field(terminal, "minutes", "1 h, suggested");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(an_absence_ends_on_the_day_it_begins_until_somebody_says_otherwise)
{
    bk_terminal *terminal = form_on("H a Control-U Ana Enter fri Enter");
    bk_assert_field(terminal, "to", "Fri 5 Mar, suggested");
    bk_terminal_press(terminal, "+1w Enter");
    bk_assert_field(terminal, "to", "Tue 9 Mar");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(leaving_what_was_only_suggested_asks_nothing)
{
    bk_terminal *terminal = form_on("N +");
    bk_assert_field(terminal, "noted on", "Tue 2 Mar, suggested");
    bk_terminal_press(terminal, "Escape");
    ck_assert(!bk_terminal_shows(terminal, "New note"));
    ck_assert(!bk_terminal_shows(terminal, "not saved"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_new_production_is_four_words)
{
    bk_terminal *terminal = form_on("P + Mill Space and Space Moon Enter 9 Space may Enter");
    bk_assert_field(terminal, "lengths in", "cm");
    bk_assert_field(terminal, "opens", "Sun 9 May");
    bk_terminal_press(terminal, "in Enter gbp Control-S");
    ck_assert(!bk_terminal_shows(terminal, "New production"));
    ck_assert(bk_terminal_shows(terminal, "Mill and Moon"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_fitting_is_booked_from_the_rail_with_few_keys)
{
    bk_terminal *terminal = form_on("/ Oilskin Enter b");
    ck_assert(bk_terminal_shows(terminal, "Book a fitting of Bo Lindqvist"));
    bk_assert_at_field(terminal, "when");
    bk_terminal_press(terminal, "fri Space 14:30 Control-S"); // b and Control-S beside the date
    ck_assert(bk_terminal_shows(terminal, "Booked: Bo Lindqvist, Fri 5 Mar 14:30"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("what forms suggest", a_costume_is_offered_the_next_number_of_its_role,
             what_is_typed_takes_the_place_of_what_is_suggested_and_stays,
             a_step_is_offered_a_key_made_of_its_title, a_step_is_offered_the_usual_minutes_of_its_kind,
             an_absence_ends_on_the_day_it_begins_until_somebody_says_otherwise,
             leaving_what_was_only_suggested_asks_nothing, a_new_production_is_four_words,
             a_fitting_is_booked_from_the_rail_with_few_keys)
