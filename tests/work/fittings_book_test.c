// Booking a call, moving it, calling it off, marking it missed; and what speaks against it.

#include <stdlib.h>
#include <string.h>

#include "bodkin/trade/words.h"
#include "bodkin/work/fittings.h"
#include "work/bench.h"

/// The bookings, a line each: piece/key, moment, performer, minutes, outcome.
static const char *bookings(void)
{
    return bk_ask(
        "SELECT piece.name || '/' || key, booked_at, coalesce(performer.name, '-'), "
        "coalesce(fitting.minutes, '-'), coalesce(outcome, '-') FROM fitting JOIN step ON step.id = "
        "step_id JOIN piece ON piece.id = piece_id LEFT JOIN performer ON performer.id = "
        "fitting.performer_id ORDER BY fitting.position");
}

static bk_fitting_booking booking_of(bk_moment moment, const int64_t *steps, size_t count)
{
    return (bk_fitting_booking){.moment = moment, .minutes = BK_NOT_KNOWN, .steps = steps, .count = count};
}

static const char *book(bk_job job, bk_fitting_booking booking)
{
    const char *sentence = NULL;
    MUST(bk_fitting_book(&job, &booking, &sentence, &trouble));
    ck_assert_str_eq(newest_entry(), sentence);
    return sentence;
}

static int64_t fitting_of(const char *piece, const char *key)
{
    return ask_id(bk_arena_print(texts(),
                                 "SELECT id FROM fitting WHERE step_id = %lld ORDER BY id DESC LIMIT 1",
                                 (long long)step_id(piece, key)));
}

static void book_toile(bk_job job, bk_moment moment)
{
    int64_t step = step_id("4A-1", "toile");
    book(job, booking_of(moment, &step, 1));
}

START_TEST(one_call_takes_all_pieces_of_a_performer)
{
    bk_store *store = bench_store();
    const char *before = bk_records();
    const int64_t steps[] = {step_id("4A-1", "toile"), step_id("4A-2", "fit"), step_id("4A-1", "toile")};
    ck_assert_str_eq(book(bench_job(store), booking_of(AT(3, 12, 14, 30), steps, 3)),
                     "Booked: Ines Varga, Fri 12 Mar 14:30: 4A-1 Step toile, 4A-2 Step fit");
    ck_assert_str_eq(bookings(), "4A-1/toile|2027-03-12T14:30|-|-|-\n4A-2/fit|2027-03-12T14:30|-|-|-");
    expect_undone(store, before);
    bk_store_close(store);
}
END_TEST

START_TEST(a_call_names_everybody_who_comes_and_nobody_where_nobody_plays)
{
    bk_store *store = bench_store();
    const int64_t steps[] = {step_id("4A-1", "toile"), step_id("5A-1", "fit")};
    ck_assert_str_eq(book(bench_job(store), booking_of(ON(3, 12), steps, 2)),
                     "Booked: Ines Varga and Tomas Lind, Fri 12 Mar: 4A-1 Step toile, 5A-1 Step fit");
    int64_t crow = step_id("6A-1", "fit");
    ck_assert_str_eq(book(bench_job(store), booking_of(ON(3, 12), &crow, 1)),
                     "Booked: Fri 12 Mar: 6A-1 Step fit");
    bk_fitting_booking cover = booking_of(ON(3, 13), steps, 1);
    cover.performer_id = performer_id("Tomas Lind");
    ck_assert_str_eq(book(bench_job(store), cover), "Booked: Tomas Lind, Sat 13 Mar: 4A-1 Step toile");
    bk_store_close(store);
}
END_TEST

START_TEST(the_minutes_of_a_call_are_shared_out_over_its_pieces)
{
    bk_store *store = bench_store();
    const int64_t steps[] = {step_id("4A-1", "toile"), step_id("4A-2", "fit"), step_id("6A-1", "fit")};
    bk_fitting_booking booking = booking_of(AT(3, 12, 14, 30), steps, 3);
    booking.minutes = 25; // for 30, 20 and 10 minutes
    book(bench_job(store), booking);
    ck_assert_str_eq(bookings(), "4A-1/toile|2027-03-12T14:30|-|13|-\n4A-2/fit|2027-03-12T14:30|-|8|-\n"
                                 "6A-1/fit|2027-03-12T14:30|-|4|-");
    bk_ask("UPDATE step SET minutes = 0");
    book(bench_job(store), booking);
    ck_assert_str_eq(bookings(), "4A-1/toile|2027-03-12T14:30|-|8|-\n4A-2/fit|2027-03-12T14:30|-|9|-\n"
                                 "6A-1/fit|2027-03-12T14:30|-|8|-");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_that_is_booked_already_is_moved_and_not_booked_twice)
{
    bk_store *store = bench_store();
    book_toile(bench_job(store), AT(3, 2, 16, 0));
    const char *before = bk_records();
    book_toile(bench_job(store), AT(3, 12, 14, 30));
    ck_assert_str_eq(bookings(), "4A-1/toile|2027-03-12T14:30|-|-|-");
    expect_undone(store, before);
    // What is past is left to be recorded.
    book_toile(bench_job_on(store, DAY(3, 13)), ON(3, 15));
    ck_assert_str_eq(bookings(), "4A-1/toile|2027-03-12T14:30|-|-|-\n4A-1/toile|2027-03-15|-|-|-");
    bk_store_close(store);
}
END_TEST

START_TEST(what_cannot_be_booked_is_told_and_changes_nothing)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    bk_ask("UPDATE step SET done_on = '2027-03-01' WHERE id = (SELECT max(id) FROM step)");
    const char *before = bk_ask(".dump");
    int64_t step = step_id("4A-1", "sew");
    bk_fitting_booking booking = booking_of(ON(3, 12), &step, 1);
    REFUSED(bk_fitting_book(&job, &booking, &sentence, &trouble), BK_REFUSED,
            "4A-1/sew is a step of kind machine; only a step of kind fit is booked.");
    step = step_id("6A-1", "fit");
    REFUSED(bk_fitting_book(&job, &booking, &sentence, &trouble), BK_REFUSED, "6A-1/fit is done already");
    step = 999;
    REFUSED(bk_fitting_book(&job, &booking, &sentence, &trouble), BK_REFUSED, "no longer");
    step = step_id("4A-1", "toile");
    booking.minutes = -1;
    REFUSED(bk_fitting_book(&job, &booking, &sentence, &trouble), BK_REFUSED, "no less than 0 minutes");
    booking = booking_of(ON(3, 12), &step, 1);
    booking.performer_id = 999;
    REFUSED(bk_fitting_book(&job, &booking, &sentence, &trouble), BK_REFUSED, "This performer is no longer");
    booking = booking_of(ON(3, 12), NULL, 0);
    REFUSED(bk_fitting_book(&job, &booking, &sentence, &trouble), BK_REFUSED, "no step was named");
    job.production++;
    booking = booking_of(ON(3, 12), &step, 1);
    REFUSED(bk_fitting_book(&job, &booking, &sentence, &trouble), BK_REFUSED, "of another production");
    ck_assert_str_eq(bk_ask(".dump"), before);
    bk_store_close(store);
}
END_TEST

// ------------------------------------------------------------------------------------- moved, called off, missed

START_TEST(a_call_is_moved_as_a_whole)
{
    bk_store *store = bench_store();
    const int64_t steps[] = {step_id("4A-1", "toile"), step_id("4A-2", "fit")};
    bk_job job = bench_job(store);
    book(job, booking_of(AT(3, 12, 14, 30), steps, 2));
    const char *before = bk_records();
    const char *sentence = NULL;
    const int64_t fittings[] = {fitting_of("4A-1", "toile"), fitting_of("4A-2", "fit")};
    MUST(bk_fitting_move(&job, fittings, 2, AT(3, 15, 9, 0), &sentence, &trouble));
    ck_assert_str_eq(sentence, "Moved: Ines Varga, Mon 15 Mar 09:00 (it was Fri 12 Mar 14:30): 4A-1 Step "
                               "toile, 4A-2 Step fit");
    ck_assert_str_eq(bookings(), "4A-1/toile|2027-03-15T09:00|-|-|-\n4A-2/fit|2027-03-15T09:00|-|-|-");
    expect_undone(store, before);
    bk_store_close(store);
}
END_TEST

START_TEST(a_booking_is_called_off)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    book_toile(job, ON(3, 12));
    const char *before = bk_records();
    int64_t fitting = fitting_of("4A-1", "toile");
    MUST(bk_fitting_call_off(&job, &fitting, 1, &sentence, &trouble));
    ck_assert_str_eq(sentence, "Called off: Ines Varga, Fri 12 Mar: 4A-1 Step toile");
    ck_assert_str_eq(bookings(), "");
    expect_undone(store, before);
    bk_store_close(store);
}
END_TEST

START_TEST(a_fitting_nobody_came_to_is_missed)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    book_toile(job, AT(3, 2, 9, 0));
    const char *before = bk_records();
    int64_t fitting = fitting_of("4A-1", "toile");
    MUST(bk_fitting_missed(&job, &fitting, 1, &sentence, &trouble));
    ck_assert_str_eq(sentence, "Missed: Ines Varga, Tue 2 Mar 09:00: 4A-1 Step toile");
    ck_assert_str_eq(bookings(), "4A-1/toile|2027-03-02T09:00|-|-|missed");
    expect_undone(store, before);
    bk_store_close(store);
}
END_TEST

START_TEST(what_was_held_or_missed_stays_and_what_is_to_come_is_not_missed)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    book_toile(job, ON(3, 12));
    int64_t fitting = fitting_of("4A-1", "toile");
    REFUSED(bk_fitting_missed(&job, &fitting, 1, &sentence, &trouble), BK_REFUSED,
            "The fitting is only on Fri 12 Mar: move it or call it off.");
    bk_ask("UPDATE fitting SET outcome = 'missed'");
    REFUSED(bk_fitting_move(&job, &fitting, 1, ON(3, 15), &sentence, &trouble), BK_REFUSED,
            "The fitting of Fri 12 Mar was missed; book another one.");
    bk_ask("UPDATE fitting SET outcome = 'again', held_on = '2027-03-01'");
    REFUSED(bk_fitting_move(&job, &fitting, 1, ON(3, 15), &sentence, &trouble), BK_REFUSED,
            "The fitting of Fri 12 Mar was held on Mon 1 Mar; book another one.");
    REFUSED(bk_fitting_call_off(&job, &fitting, 1, &sentence, &trouble), BK_REFUSED, "it stays on record.");
    REFUSED(bk_fitting_missed(&job, &fitting, 1, &sentence, &trouble), BK_REFUSED, "change what came of it");
    const int64_t gone[] = {999};
    REFUSED(bk_fitting_move(&job, gone, 1, ON(3, 15), &sentence, &trouble), BK_REFUSED,
            "This fitting is no longer in the workroom.");
    bk_store_close(store);
}
END_TEST

START_TEST(one_that_cannot_be_moved_keeps_the_whole_call_where_it_is)
{
    bk_store *store = bench_store();
    const int64_t steps[] = {step_id("4A-1", "toile"), step_id("4A-2", "fit")};
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    book(job, booking_of(AT(3, 12, 14, 30), steps, 2));
    const int64_t fittings[] = {fitting_of("4A-1", "toile"), fitting_of("4A-2", "fit")};
    bk_ask("UPDATE fitting SET outcome = 'missed' WHERE id = (SELECT max(id) FROM fitting)");
    const char *before = bk_ask(".dump");
    REFUSED(bk_fitting_move(&job, fittings, 2, ON(3, 15), &sentence, &trouble), BK_REFUSED, "was missed");
    ck_assert_str_eq(bk_ask(".dump"), before);
    bk_store_close(store);
}
END_TEST

// ----------------------------------------------------------------------------------------------------- doubts

static const char *doubts_of(bk_job job, bk_fitting_booking booking, const int64_t *moved, size_t count)
{
    bk_fitting_doubts doubts;
    const char *all = "";
    MUST(bk_fitting_doubt(&job, &booking, moved, count, &doubts, &trouble));
    for (size_t i = 0; i < doubts.count; i++)
        all = bk_arena_print(texts(), "%s%s%s", all, i ? "\n" : "", doubts.items[i]);
    return all;
}

static const char *doubts_of_step(bk_job job, const char *piece, const char *key, bk_moment moment)
{
    int64_t step = step_id(piece, key);
    return doubts_of(job, booking_of(moment, &step, 1), NULL, 0);
}

START_TEST(a_day_that_is_past_or_too_late_is_doubted)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    ck_assert_str_eq(doubts_of_step(job, "4A-1", "toile", AT(3, 2, 9, 0)), "");
    ck_assert_str_eq(doubts_of_step(job, "4A-1", "toile", ON(3, 1)), "Mon 1 Mar is past.");
    ck_assert_str_eq(doubts_of_step(job, "4A-1", "toile", ON(3, 20)), "");
    ck_assert_str_eq(doubts_of_step(job, "4A-1", "toile", ON(3, 21)),
                     "4A-1 is due before that, on Sat 20 Mar.");
    bk_store_close(store);
}
END_TEST

START_TEST(a_performer_who_is_away_is_told)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    ck_assert_str_eq(doubts_of_step(job, "4A-1", "toile", AT(3, 9, 9, 0)),
                     "Ines Varga is away on Tue 9 Mar: a sitting.");
    ck_assert_str_eq(doubts_of_step(job, "5A-1", "fit", AT(3, 9, 9, 0)), "");
    int64_t step = step_id("5A-1", "fit");
    bk_fitting_booking booking = booking_of(ON(3, 10), &step, 1);
    booking.performer_id = performer_id("Ines Varga");
    ck_assert_str_eq(doubts_of(job, booking, NULL, 0), "Ines Varga is away on Wed 10 Mar: a sitting.");
    bk_store_close(store);
}
END_TEST

START_TEST(another_fitting_at_the_same_time_is_told)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    book_toile(job, AT(3, 12, 14, 30)); // for 30 minutes
    ck_assert_str_eq(doubts_of_step(job, "4A-2", "fit", AT(3, 12, 14, 59)),
                     "Ines Varga has another fitting then: Fri 12 Mar 14:30, 30 min (4A-1).");
    ck_assert_str_eq(doubts_of_step(job, "4A-2", "fit", AT(3, 12, 14, 30)), "");
    ck_assert_str_eq(doubts_of_step(job, "4A-2", "fit", AT(3, 12, 15, 0)), "");
    ck_assert_str_eq(doubts_of_step(job, "4A-2", "fit", AT(3, 12, 14, 10)), "");
    ck_assert_str_eq(doubts_of_step(job, "4A-2", "fit", ON(3, 12)), "");
    ck_assert_str_eq(doubts_of_step(job, "5A-1", "fit", AT(3, 12, 13, 51)),
                     "Ines Varga is being fitted then: Fri 12 Mar 14:30, 30 min (4A-1).");
    ck_assert_str_eq(doubts_of_step(job, "5A-1", "fit", AT(3, 13, 14, 30)), "");
    bk_store_close(store);
}
END_TEST

START_TEST(the_minutes_told_say_how_long_a_call_is)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    book_toile(job, AT(3, 12, 14, 30));
    int64_t step = step_id("5A-1", "fit");
    bk_fitting_booking booking = booking_of(AT(3, 12, 13, 51), &step, 1);
    booking.minutes = 39;
    ck_assert_str_eq(doubts_of(job, booking, NULL, 0), "");
    booking.minutes = 40;
    ck_assert_str_ne(doubts_of(job, booking, NULL, 0), "");
    bk_store_close(store);
}
END_TEST

START_TEST(a_booking_that_is_moved_is_not_in_its_own_way)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    book_toile(job, AT(3, 12, 14, 30));
    ck_assert_str_eq(doubts_of_step(job, "4A-1", "toile", AT(3, 12, 14, 40)), "");
    int64_t fitting = fitting_of("4A-1", "toile");
    int64_t step = step_id("4A-2", "fit");
    ck_assert_str_eq(doubts_of(job, booking_of(AT(3, 12, 14, 40), &step, 1), &fitting, 1), "");
    bk_store_close(store);
}
END_TEST

START_TEST(fittings_of_other_productions_are_in_the_way_until_these_are_put_away)
{
    bk_store *store = bench_store();
    bk_folder *folder = salt_road();
    ROWS(folder, fittings, bk_fitting,
         {.piece = "P2",
          .step = "fit",
          .booked_at = AT(3, 12, 14, 30),
          .minutes = 45,
          .held_on = BK_NO_DAY,
          .outcome = BK_NO_WORD});
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    bk_job job = bench_job(store);
    ck_assert_str_eq(doubts_of_step(job, "4A-1", "toile", AT(3, 12, 14, 30)),
                     "Ines Varga has another fitting then: Fri 12 Mar 14:30, 45 min (P2 of The Salt Road).");
    bk_ask("UPDATE production SET put_away_on = '2027-03-01' WHERE name = 'The Salt Road'");
    ck_assert_str_eq(doubts_of_step(job, "4A-1", "toile", AT(3, 12, 14, 30)), "");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("fittings_book", one_call_takes_all_pieces_of_a_performer,
             a_call_names_everybody_who_comes_and_nobody_where_nobody_plays,
             the_minutes_of_a_call_are_shared_out_over_its_pieces,
             a_step_that_is_booked_already_is_moved_and_not_booked_twice,
             what_cannot_be_booked_is_told_and_changes_nothing, a_call_is_moved_as_a_whole,
             a_booking_is_called_off, a_fitting_nobody_came_to_is_missed,
             what_was_held_or_missed_stays_and_what_is_to_come_is_not_missed,
             one_that_cannot_be_moved_keeps_the_whole_call_where_it_is,
             a_day_that_is_past_or_too_late_is_doubted, a_performer_who_is_away_is_told,
             another_fitting_at_the_same_time_is_told, the_minutes_told_say_how_long_a_call_is,
             a_booking_that_is_moved_is_not_in_its_own_way,
             fittings_of_other_productions_are_in_the_way_until_these_are_put_away)
