#include "screen/fitting_show.h"
#include "support/shell.h"
#include "support/testing.h"

static void assert_order(const bk_terminal *terminal, const char *const *texts, size_t count)
{
    for (size_t i = 1; i < count; i++)
        ck_assert_uint_gt(bk_terminal_find(terminal, texts[i]), bk_terminal_find(terminal, texts[i - 1]));
}

START_TEST(whom_to_call_stands_first_the_most_urgent_first)
{
    bk_terminal *terminal = bk_among_fittings(BK_NONE_BOOKED, NULL);
    static const char *const order[] = {"To book", "by Wed 10 Mar", "by Fri 19 Mar"};
    assert_order(terminal, order, sizeof order / sizeof order[0]);
    ck_assert(bk_terminal_shows(terminal, "2 to book now, 0 to record, 0 to come"));
    ck_assert(bk_chosen_shows(terminal, "Ines Varga"));
    ck_assert(bk_chosen_shows(terminal, "50 min  4A-1, 4A-2"));
    ck_assert(bk_chosen_shows(terminal, "2 now"));
    ck_assert(bk_line_shows(terminal, "by Fri 19 Mar", "Tomas Lind"));
    ck_assert(bk_line_shows(terminal, "by Fri 19 Mar", "10 min  5A-2"));
    ck_assert(bk_line_shows(terminal, "by Fri 19 Mar", "1 now, 1 later"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_to_book_is_told_whole_with_the_note_about_the_performer)
{
    bk_terminal *terminal = bk_among_fittings(BK_NONE_BOOKED, NULL);
    ck_assert(
        bk_terminal_shows(terminal, "4A-1 Coat: first fitting, 30 min; can be fitted since Sat 20 Feb"));
    ck_assert(bk_terminal_shows(terminal, "4A-2 Skirt: toile fitting, 20 min; can be fitted now"));
    ck_assert(bk_terminal_shows(terminal, "no wool at the neck"));
    bk_terminal_press(terminal, "Down");
    ck_assert(bk_terminal_shows(terminal, "5A-2 Trousers: length, 10 min; can be fitted now"));
    ck_assert(bk_terminal_shows(terminal, "later: 5A-1 fitting"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(who_has_nothing_to_fit_yet_stands_below_what_is_to_come)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    static const char *const order[] = {"To record", "To come", "To book later", "1 later"};
    assert_order(terminal, order, sizeof order / sizeof order[0]);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(several_pieces_of_one_performer_at_one_time_are_one_line)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    ck_assert(bk_chosen_shows(terminal, "Sat 27 Feb 11:00"));
    ck_assert(bk_chosen_shows(terminal, "Ines Varga"));
    ck_assert(bk_chosen_shows(terminal, "50 min  4A-1, 4A-2"));
    ck_assert(bk_chosen_shows(terminal, "not recorded"));
    ck_assert(bk_terminal_shows(terminal, "0 to book now, 1 to record, 1 to come"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(calls_of_today_are_to_record_and_past_ones_come_last_the_newest_first)
{
    bk_terminal *terminal =
        bk_among_fittings("4A-1,fit,2027-02-20T11:00,,,2027-02-20,again,collar stands off\n"
                          "4A-2,fit,2027-02-27T11:00,,,,missed,\n"
                          "4A-1,fit,2027-03-02T16:00,,,,,\n",
                          NULL);
    static const char *const order[] = {"To book", "To record",        "Tue 2 Mar 16:00",
                                        "Past",    "Sat 27 Feb 11:00", "Sat 20 Feb 11:00"};
    assert_order(terminal, order, sizeof order / sizeof order[0]);
    ck_assert(bk_line_shows(terminal, "Tue 2 Mar 16:00", "today"));
    ck_assert(bk_line_shows(terminal, "Sat 27 Feb 11:00", "missed"));
    ck_assert(bk_line_shows(terminal, "Sat 20 Feb 11:00", "again"));
    bk_terminal_press(terminal, "End");
    ck_assert(bk_terminal_shows(terminal, "first fitting, 30 min, again (collar stands off)"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_usual_caution_stands_with_a_call_that_is_near)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    ck_assert(!bk_terminal_shows(terminal, "Count the pins"));
    bk_terminal_press(terminal, "Down");
    ck_assert(bk_chosen_shows(terminal, "Fri 5 Mar 10:00"));
    ck_assert(bk_terminal_shows(terminal, "Count the pins on and off; a child comes with a chaperone."));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(tab_shows_them_by_performer_and_by_day_again)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    static const char *const order[] = {"Ines Varga", "Sat 27 Feb 11:00", "Tomas Lind", "to book later",
                                        "Fri 5 Mar 10:00"};
    bk_terminal_press(terminal, "Tab");
    assert_order(terminal, order, sizeof order / sizeof order[0]);
    ck_assert(!bk_terminal_shows(terminal, "To record"));
    bk_terminal_press(terminal, "Tab");
    ck_assert(bk_terminal_shows(terminal, "To record"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(days_of_another_year_are_shown_whole)
{
    bk_terminal_close(bk_among_fittings("4A-1,fit,2026-12-16T10:00,,,2026-12-16,again,\n", NULL));
    bk_ask("UPDATE costume SET due = '2028-01-26' WHERE number = '5A'");
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.today = "2027-01-10"});
    bk_terminal_press(terminal, "F");
    ck_assert(bk_line_shows(terminal, "16 Dec 2026 10:00", "Ines Varga"));
    ck_assert(bk_line_shows(terminal, "by 26 Jan 2028", "Tomas Lind"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(before_the_end_of_the_year_calls_of_the_next_are_shown_whole)
{
    bk_terminal_close(bk_among_fittings("4A-1,fit,2027-01-20T10:00,,,,,\n", NULL));
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.today = "2026-12-10"});
    bk_terminal_press(terminal, "F");
    ck_assert(bk_line_shows(terminal, "Wed 20 Jan 10:00", "Ines Varga"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_should_have_been_fitted_by_now_is_told_in_words_too)
{
    bk_terminal *terminal = bk_among_fittings(BK_NONE_BOOKED, NULL);
    bk_ask("UPDATE costume SET due = '2027-03-01' WHERE number = '4A'");
    bk_terminal_await(terminal, "late: Mon 1 Mar");
    ck_assert(bk_chosen_shows(terminal, "late: Mon 1 Mar"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("fittings list", whom_to_call_stands_first_the_most_urgent_first,
             what_is_to_book_is_told_whole_with_the_note_about_the_performer,
             who_has_nothing_to_fit_yet_stands_below_what_is_to_come,
             several_pieces_of_one_performer_at_one_time_are_one_line,
             calls_of_today_are_to_record_and_past_ones_come_last_the_newest_first,
             the_usual_caution_stands_with_a_call_that_is_near, tab_shows_them_by_performer_and_by_day_again,
             days_of_another_year_are_shown_whole,
             before_the_end_of_the_year_calls_of_the_next_are_shown_whole,
             what_should_have_been_fitted_by_now_is_told_in_words_too)
