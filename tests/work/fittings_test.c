#include "bodkin/work/fittings.h"

#include <string.h>

#include "bodkin/trade/words.h"
#include "work/bench.h"

/// Adds a fitting as a sheet would have it.
static void fitting(const char *piece, const char *key, const char *booked, const char *performer,
                    const char *rest)
{
    bk_ask(bk_arena_print(
        texts(),
        "INSERT INTO fitting (production_id, step_id, position, booked_at, performer_id, minutes, held_on, "
        "outcome, note) SELECT production_id, id, (SELECT count(*) FROM fitting), '%s', %s, %s FROM step "
        "WHERE "
        "id = %lld",
        booked,
        performer ? bk_arena_print(texts(), "(SELECT id FROM performer WHERE name = '%s')", performer)
                  : "NULL",
        rest, (long long)step_id(piece, key)));
}

#define BOOKED "NULL, NULL, NULL, NULL"

static bk_fitting_list read(bk_store *store)
{
    bk_fitting_list list;
    MUST(bk_fittings_read(store, bench_job(store).production, today(), texts(), &list, &trouble));
    return list;
}

/// A line each: "Ines Varga 2027-03-12T14:30 50 to come: 4A-1/toile 4A-2/fit".
static const char *calls_of(bk_store *store)
{
    bk_fitting_list list = read(store);
    const char *all = "";
    for (size_t i = 0; i < list.call_count; i++) {
        const bk_fitting_call *call = &list.calls[i];
        char moment[BK_MOMENT_ROOM];
        all =
            bk_arena_print(texts(), "%s%s%s %s %lld %s:", all, i ? "\n" : "",
                           call->performer ? call->performer : "-", bk_moment_write(call->moment, moment),
                           (long long)call->minutes, bk_word_text(&bk_fitting_state_words, (int)call->state));
        for (size_t line = 0; line < call->count; line++)
            all = bk_arena_print(texts(), "%s %s/%s", all, call->fittings[line].piece,
                                 call->fittings[line].step);
    }
    return all;
}

/// A line each: "Ines Varga 2027-03-20: 4A-1/toile next 2027-02-20, 4A-2/fit".
static const char *to_book(bk_store *store)
{
    bk_fitting_list list = read(store);
    char day[BK_DAY_ROOM];
    const char *all = "";
    for (size_t i = 0; i < list.to_book_count; i++) {
        const bk_fitting_to_book *one = &list.to_book[i];
        all = bk_arena_print(texts(), "%s%s%s %s:", all, i ? "\n" : "", one->performer ? one->performer : "-",
                             bk_day_write(one->due, day));
        for (size_t step = 0; step < one->count; step++) {
            const bk_fitting_wanted *wanted = &one->steps[step];
            all = bk_arena_print(texts(), "%s%s %s/%s%s%s", all, step ? "," : "", wanted->piece, wanted->step,
                                 wanted->next ? " next " : "", bk_day_write(wanted->since, day));
        }
    }
    return all;
}

START_TEST(all_fittings_of_one_performer_at_one_time_are_one_call)
{
    bk_store *store = bench_store();
    fitting("4A-2", "fit", "2027-03-12T14:30", NULL, "15, NULL, NULL, NULL");
    fitting("5A-1", "fit", "2027-03-12T14:30", NULL, BOOKED);
    fitting("4A-1", "toile", "2027-03-12T14:30", "Ines Varga", BOOKED);
    fitting("6A-1", "fit", "2027-03-12", NULL, BOOKED);
    fitting("4A-2", "fit", "2027-03-05", "Tomas Lind", BOOKED);
    ck_assert_str_eq(calls_of(store), "Tomas Lind 2027-03-05 20 to come: 4A-2/fit\n"
                                      "- 2027-03-12 10 to come: 6A-1/fit\n"
                                      "Ines Varga 2027-03-12T14:30 45 to come: 4A-2/fit 4A-1/toile\n"
                                      "Tomas Lind 2027-03-12T14:30 40 to come: 5A-1/fit");
    bk_store_close(store);
}
END_TEST

START_TEST(a_call_tells_all_of_its_pieces)
{
    bk_store *store = bench_store();
    fitting("4A-1", "toile", "2027-02-26T10:00", NULL, "25, '2027-02-27', 'again', 'let out the sides'");
    bk_fitting_list list = read(store);
    const bk_fitting_call *call = &list.calls[0];
    const bk_fitting_line *line = &call->fittings[0];
    ck_assert_int_eq(call->performer_id, performer_id("Ines Varga"));
    ck_assert_int_eq(line->step_id, step_id("4A-1", "toile"));
    ck_assert_int_eq(line->piece_id, piece_id("4A-1"));
    ck_assert_str_eq(line->piece_title, "Piece 4A-1");
    ck_assert_str_eq(line->step_title, "Step toile");
    ck_assert_str_eq(line->costumes, "4A, 4B");
    ck_assert_str_eq(line->note, "let out the sides");
    ck_assert_int_eq(line->outcome, BK_AGAIN);
    ck_assert_int_eq(line->held_on, DAY(2, 27));
    ck_assert_int_eq(line->state, BK_FITTING_HELD);
    bk_store_close(store);
}
END_TEST

START_TEST(a_fitting_is_to_come_or_today_or_to_record_or_missed_or_held)
{
    bk_store *store = bench_store();
    fitting("4A-1", "toile", "2027-03-03", NULL, BOOKED);
    fitting("4A-1", "toile", "2027-03-02T18:00", NULL, BOOKED);
    fitting("4A-1", "toile", "2027-03-01", NULL, BOOKED);
    fitting("4A-1", "toile", "2027-02-28", NULL, "NULL, NULL, 'missed', NULL");
    fitting("4A-1", "toile", "2027-02-27", NULL, "NULL, NULL, 'again', NULL");
    fitting("4A-1", "toile", "2027-02-26", NULL, "NULL, '2027-02-26', 'fits', NULL");
    fitting("4A-1", "toile", "2027-03-04", NULL, "NULL, '2027-03-01', NULL, NULL");
    ck_assert_str_eq(calls_of(store), "Ines Varga 2027-02-26 30 held: 4A-1/toile\n"
                                      "Ines Varga 2027-02-27 30 held: 4A-1/toile\n"
                                      "Ines Varga 2027-02-28 30 missed: 4A-1/toile\n"
                                      "Ines Varga 2027-03-01 30 to record: 4A-1/toile\n"
                                      "Ines Varga 2027-03-02T18:00 30 today: 4A-1/toile\n"
                                      "Ines Varga 2027-03-03 30 to come: 4A-1/toile\n"
                                      "Ines Varga 2027-03-04 30 to record: 4A-1/toile");
    bk_store_close(store);
}
END_TEST

START_TEST(a_call_stands_as_its_piece_that_most_is_to_do_of)
{
    bk_store *store = bench_store();
    fitting("4A-1", "toile", "2027-03-01T10:00", NULL, "NULL, '2027-03-01', 'fits', NULL");
    fitting("4A-2", "fit", "2027-03-01T10:00", NULL, BOOKED);
    ck_assert_str_eq(calls_of(store), "Ines Varga 2027-03-01T10:00 50 to record: 4A-1/toile 4A-2/fit");
    bk_store_close(store);
}
END_TEST

START_TEST(what_is_to_be_booked_stands_by_performer_the_first_due_first)
{
    bk_store *store = bench_store();
    ck_assert_str_eq(to_book(store), "Ines Varga 2027-03-20: 4A-1/toile next 2027-02-20, 4A-2/fit\n"
                                     "Tomas Lind 2027-06-04: 5A-1/fit next \n"
                                     "- 2027-06-04: 6A-1/fit next ");
    bk_store_close(store);
}
END_TEST

START_TEST(the_first_due_comes_first_whatever_it_is_called)
{
    bk_store *store = bench_store();
    bk_ask("UPDATE costume SET due = '2027-03-10' WHERE number = '5A'; UPDATE costume SET due = '2027-05-01' "
           "WHERE number = '4A'; UPDATE costume SET due = '2027-06-03' WHERE number = '4B'; DELETE FROM "
           "piece_costume WHERE costume_id = (SELECT id FROM costume WHERE number = '4A') AND piece_id = "
           "(SELECT id FROM piece WHERE name = '4A-1')");
    ck_assert_str_eq(to_book(store), "Tomas Lind 2027-03-10: 5A-1/fit next \n"
                                     "Ines Varga 2027-05-01: 4A-2/fit, 4A-1/toile next 2027-02-20\n"
                                     "- 2027-06-04: 6A-1/fit next ");
    bk_store_close(store);
}
END_TEST

START_TEST(what_is_booked_or_to_be_recorded_is_not_to_be_booked)
{
    bk_store *store = bench_store();
    fitting("4A-1", "toile", "2027-03-12", NULL, BOOKED);
    fitting("5A-1", "fit", "2027-03-01", NULL, BOOKED);
    fitting("6A-1", "fit", "2027-03-01", NULL, "NULL, '2027-03-01', 'fits', NULL");
    ck_assert_str_eq(to_book(store), "Ines Varga 2027-06-04: 4A-2/fit");
    bk_store_close(store);
}
END_TEST

START_TEST(what_was_missed_or_did_not_fit_is_wanted_since_then)
{
    bk_store *store = bench_store();
    fitting("4A-1", "toile", "2027-02-26", NULL, "NULL, '2027-02-26', 'again', NULL");
    fitting("5A-1", "fit", "2027-03-01", NULL, "NULL, NULL, 'missed', NULL");
    ck_assert_str_eq(to_book(store), "Ines Varga 2027-03-20: 4A-1/toile next 2027-02-26, 4A-2/fit\n"
                                     "Tomas Lind 2027-06-04: 5A-1/fit next 2027-03-01\n"
                                     "- 2027-06-04: 6A-1/fit next ");
    bk_ask("UPDATE step SET done_on = '2027-03-02' WHERE key = 'cut'");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM step WHERE done_on IS NOT NULL"), "2");
    ck_assert_ptr_nonnull(strstr(to_book(store), "4A-1/toile next 2027-03-02, 4A-2/fit next 2027-03-02"));
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_after_a_fitting_that_fits_is_wanted_since_that_was_held)
{
    bk_store *store = bench_store();
    bk_ask("UPDATE step SET kind = 'fit' WHERE key = 'sew'");
    fitting("4A-1", "toile", "2027-02-26", NULL, "NULL, '2027-02-27', 'fits', NULL");
    ck_assert_ptr_nonnull(strstr(to_book(store), "4A-1/sew next 2027-02-27"));
    bk_store_close(store);
}
END_TEST

START_TEST(a_production_without_a_fitting_has_none)
{
    bk_store *store = open_store();
    bk_folder *folder = bare_show("Nothing Yet", DAY(6, 4));
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    bk_fitting_list list;
    MUST(bk_fittings_read(store, 1, today(), texts(), &list, &trouble));
    ck_assert_uint_eq(list.call_count + list.to_book_count, 0);
    REFUSED(bk_fittings_read(store, 99, today(), texts(), &list, &trouble), BK_REFUSED, "no longer");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("fittings", all_fittings_of_one_performer_at_one_time_are_one_call,
             a_call_tells_all_of_its_pieces, a_fitting_is_to_come_or_today_or_to_record_or_missed_or_held,
             a_call_stands_as_its_piece_that_most_is_to_do_of,
             what_is_to_be_booked_stands_by_performer_the_first_due_first,
             the_first_due_comes_first_whatever_it_is_called,
             what_is_booked_or_to_be_recorded_is_not_to_be_booked,
             what_was_missed_or_did_not_fit_is_wanted_since_then,
             a_step_after_a_fitting_that_fits_is_wanted_since_that_was_held,
             a_production_without_a_fitting_has_none)
