// What came of a fitting: the step, its materials, and the notes.

#include <string.h>

#include "bodkin/trade/words.h"
#include "bodkin/work/clock.h"
#include "bodkin/work/fittings.h"
#include "bodkin/work/rail.h"
#include "bodkin/work/tick.h"
#include "work/bench.h"

// 4A-1/toile needs 1.2 of 5 m of wool.

static int64_t booked(bk_job job, bk_moment moment)
{
    const char *sentence = NULL;
    int64_t step = step_id("4A-1", "toile");
    bk_fitting_booking booking = {.moment = moment, .minutes = BK_NOT_KNOWN, .steps = &step, .count = 1};
    MUST(bk_fitting_book(&job, &booking, &sentence, &trouble));
    return ask_id("SELECT max(id) FROM fitting");
}

static bk_fitting_result result_of(int64_t fitting, int outcome)
{
    return (bk_fitting_result){.fitting_id = fitting, .outcome = outcome, .held_on = BK_NO_DAY};
}

static const char *record(bk_job job, bk_fitting_result result)
{
    const char *sentence = NULL;
    MUST(bk_fitting_record(&job, &result, &sentence, &trouble));
    ck_assert_str_eq(newest_entry(), sentence);
    return sentence;
}

static const char *fitting_row(void)
{
    return bk_ask("SELECT coalesce(outcome, '-'), coalesce(held_on, '-'), coalesce(note, '-') FROM fitting");
}

static const char *movements(void)
{
    return bk_ask("SELECT movement.kind, quantity, moved_on FROM movement WHERE kind <> 'count' ORDER BY id");
}

static const char *notes(void)
{
    return bk_ask(
        "SELECT noted_on, source, who, piece.name, coalesce(key, '-'), what FROM note JOIN piece ON "
        "piece.id = note.piece_id LEFT JOIN step ON step.id = step_id ORDER BY note.position");
}

static const char *steps(void)
{
    return bk_ask(
        "SELECT step.key, step.kind, step.minutes, step.title, coalesce((SELECT "
        "group_concat(earlier.key) FROM step_after JOIN step AS earlier ON earlier.id = after_id "
        "WHERE step_id = step.id), '-') FROM step JOIN piece ON piece.id = piece_id WHERE piece.name "
        "= '4A-1' ORDER BY step.position");
}

START_TEST(a_fitting_that_fits_makes_its_step_done_and_takes_its_materials_once)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    int64_t fitting = booked(job, AT(3, 2, 9, 0));
    const char *before = bk_records();
    ck_assert_str_eq(record(job, result_of(fitting, BK_FITS)), "Fitted: 4A-1 Step toile: fits");
    ck_assert_str_eq(fitting_row(), "fits|2027-03-02|-");
    ck_assert_str_eq(movements(), "use|-1200000|2027-03-02");
    expect_undone(store, before);
    bk_fitting_result again = result_of(fitting, BK_FITS);
    again.held_on = DAY(3, 1);
    again.note = "a good fit";
    record(job, again);
    ck_assert_str_eq(fitting_row(), "fits|2027-03-01|a good fit");
    ck_assert_str_eq(movements(), "use|-1200000|2027-03-02");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_that_was_done_already_takes_nothing_more)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    int64_t fitting = booked(job, AT(3, 2, 9, 0));
    bk_tick done = {today(), "Ada", BK_NOT_KNOWN};
    const char *sentence = NULL;
    MUST(bk_step_tick(store, step_id("4A-1", "toile"), &done, job.made_at, texts(), &sentence, &trouble));
    record(job, result_of(fitting, BK_FITS));
    record(job, result_of(fitting, BK_AGAIN));
    ck_assert_str_eq(movements(), "use|-1200000|2027-03-02");
    bk_store_close(store);
}
END_TEST

START_TEST(what_no_longer_fits_opens_its_step_and_gives_its_materials_back)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    int64_t fitting = booked(job, AT(3, 2, 9, 0));
    record(job, result_of(fitting, BK_FITS));
    const char *before = bk_records();
    job = bench_job_on(store, DAY(3, 4));
    ck_assert_str_eq(record(job, result_of(fitting, BK_NO_WORD)), "Taken back: what came of 4A-1 Step toile");
    ck_assert_str_eq(fitting_row(), "-|-|-");
    ck_assert_str_eq(movements(), "use|-1200000|2027-03-02\nreturn|1200000|2027-03-04");
    expect_undone(store, before);
    bk_store_close(store);
}
END_TEST

START_TEST(a_fitting_that_fits_stops_the_clocks_of_its_step)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    int64_t fitting = booked(job, AT(3, 2, 9, 0));
    MUST(bk_running_start(&job, step_id("4A-1", "toile"), &sentence, &trouble));
    job.made_at = "2027-03-02T09:52:00+01:00";
    record(job, result_of(fitting, BK_FITS));
    ck_assert_str_eq(bk_ask("SELECT took, done_on IS NULL FROM step WHERE key = 'toile'"), "22|1");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM running"), "0");
    bk_store_close(store);
}
END_TEST

START_TEST(a_fitting_was_held_on_its_day_unless_told_otherwise)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    int64_t fitting = booked(job, AT(3, 12, 9, 0));
    record(job, result_of(fitting, BK_AGAIN));
    ck_assert_str_eq(fitting_row(), "again|2027-03-02|-");
    job = bench_job_on(store, DAY(3, 15));
    record(job, result_of(fitting, BK_AGAIN));
    ck_assert_str_eq(fitting_row(), "again|2027-03-12|-");
    bk_fitting_result told = result_of(fitting, BK_AGAIN);
    told.held_on = DAY(3, 14);
    told.note = "let out the sides";
    record(job, told);
    ck_assert_str_eq(fitting_row(), "again|2027-03-14|let out the sides");
    record(job, result_of(fitting, BK_MISSED));
    ck_assert_str_eq(fitting_row(), "missed|-|let out the sides");
    bk_store_close(store);
}
END_TEST

/// Whether the step is next, and its rail waits for a booking of it.
static bool waits_for_booking(bk_store *store, const char *key)
{
    bk_rail *rail = NULL;
    bool waits = false;
    MUST(bk_rail_read(store, bench_job(store).production, today(), &rail, &trouble));
    for (size_t i = 0; i < rail->costume_count; i++) {
        const bk_costume_waits *reckoned = rail->costumes[i].reckoned;
        for (size_t wait = 0; wait < reckoned->wait_count; wait++)
            waits |= reckoned->waits[wait].on == BK_WAIT_FITTING &&
                     strcmp(rail->rows.steps[reckoned->waits[wait].step].key, key) == 0 &&
                     reckoned->waits[wait].detail == BK_DETAIL_UNBOOKED;
    }
    bk_rail_free(rail);
    return waits;
}

static void tick(bk_job job, const char *key)
{
    bk_tick done = {today(), "Ada", BK_NOT_KNOWN};
    const char *sentence = NULL;
    MUST(bk_step_tick(job.store, step_id("4A-1", key), &done, job.made_at, texts(), &sentence, &trouble));
}

START_TEST(notes_become_steps_before_the_fitting_which_is_next_again_after_them)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    int64_t fitting = booked(job, AT(3, 2, 9, 0));
    const char *before = bk_records();
    const bk_fitting_note said[] = {
        {"let out the side seams", true, BK_MACHINE, 30},
        {"she lifts her arms in act two", false, BK_NO_WORD, BK_NOT_KNOWN},
        {" ", true, BK_NO_WORD, BK_NOT_KNOWN},
        {"raise the neckline 1 cm", true, BK_HAND, BK_NOT_KNOWN},
    };
    bk_fitting_result result = result_of(fitting, BK_AGAIN);
    result.notes = said;
    result.note_count = sizeof said / sizeof *said;
    ck_assert_str_eq(record(job, result), "Fitted: 4A-1 Step toile: again (3 notes, 2 steps made)");
    ck_assert_str_eq(steps(), "cut|cut|60|Step cut|-\n"
                              "let-out|machine|30|let out the side seams|-\n"
                              "raise|hand|15|raise the neckline 1 cm|-\n"
                              "toile|fit|30|Step toile|cut,let-out,raise\n"
                              "sew|machine|120|Step sew|toile");
    ck_assert_str_eq(notes(), "2027-03-02|fitting|Ines Varga|4A-1|let-out|let out the side seams\n"
                              "2027-03-02|fitting|Ines Varga|4A-1|-|she lifts her arms in act two\n"
                              "2027-03-02|fitting|Ines Varga|4A-1|raise|raise the neckline 1 cm");
    ck_assert_str_eq(movements(), "");
    expect_undone(store, before);
    ck_assert(!waits_for_booking(store, "toile"));
    tick(job, "let-out");
    ck_assert(!waits_for_booking(store, "toile"));
    tick(job, "raise");
    ck_assert(waits_for_booking(store, "toile"));
    bk_store_close(store);
}
END_TEST

START_TEST(notes_from_a_fitting_that_fits_become_steps_behind_it)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    int64_t fitting = booked(job, AT(3, 2, 9, 0));
    const bk_fitting_note said[] = {
        {"take up the hem", true, BK_HAND, 40},
        {"press the collar", true, BK_PRESS, 5},
    };
    bk_fitting_result result = result_of(fitting, BK_FITS);
    result.notes = said;
    result.note_count = 2;
    ck_assert_str_eq(record(job, result), "Fitted: 4A-1 Step toile: fits (2 notes, 2 steps made)");
    ck_assert_str_eq(steps(), "cut|cut|60|Step cut|-\n"
                              "toile|fit|30|Step toile|cut\n"
                              "take-up|hand|40|take up the hem|toile\n"
                              "press|press|5|press the collar|toile\n"
                              "sew|machine|120|Step sew|toile");
    bk_store_close(store);
}
END_TEST

START_TEST(a_note_is_the_performers_who_was_named_else_the_makers)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    int64_t fitting = booked(job, AT(3, 2, 9, 0));
    const bk_fitting_note said = {"too wide", false, BK_NO_WORD, BK_NOT_KNOWN};
    bk_fitting_result result = result_of(fitting, BK_AGAIN);
    result.notes = &said;
    result.note_count = 1;
    bk_ask("UPDATE fitting SET performer_id = (SELECT id FROM performer WHERE name = 'Tomas Lind')");
    ck_assert_str_eq(record(job, result), "Fitted: 4A-1 Step toile: again (1 note)");
    bk_ask("UPDATE fitting SET performer_id = NULL; UPDATE role SET performer_id = NULL");
    record(job, result);
    ck_assert_str_eq(bk_ask("SELECT who FROM note ORDER BY id"), "Tomas Lind\nAda");
    bk_store_close(store);
}
END_TEST

START_TEST(what_cannot_be_recorded_is_told_and_changes_nothing)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    int64_t fitting = booked(job, AT(3, 12, 9, 0));
    const char *before = bk_ask(".dump");
    bk_fitting_result result = result_of(999, BK_FITS);
    REFUSED(bk_fitting_record(&job, &result, &sentence, &trouble), BK_REFUSED, "This fitting is no longer");
    result = result_of(fitting, BK_FITS);
    result.held_on = DAY(3, 5);
    REFUSED(bk_fitting_record(&job, &result, &sentence, &trouble), BK_REFUSED,
            "Fri 5 Mar is still to come; a fitting is recorded when it was held.");
    result = result_of(fitting, BK_MISSED);
    REFUSED(bk_fitting_record(&job, &result, &sentence, &trouble), BK_REFUSED,
            "The fitting is only on Fri 12 Mar 09:00: move it or call it off.");
    const bk_fitting_note said = {"too wide", true, BK_NO_WORD, BK_NOT_KNOWN};
    result = result_of(fitting, BK_FITS);
    result.notes = &said;
    result.note_count = 1;
    REFUSED(bk_fitting_record(&job, &result, &sentence, &trouble), BK_REFUSED, "Say of what kind");
    ck_assert_str_eq(bk_ask(".dump"), before);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("fittings_record", a_fitting_that_fits_makes_its_step_done_and_takes_its_materials_once,
             a_step_that_was_done_already_takes_nothing_more,
             what_no_longer_fits_opens_its_step_and_gives_its_materials_back,
             a_fitting_that_fits_stops_the_clocks_of_its_step,
             a_fitting_was_held_on_its_day_unless_told_otherwise,
             notes_become_steps_before_the_fitting_which_is_next_again_after_them,
             notes_from_a_fitting_that_fits_become_steps_behind_it,
             a_note_is_the_performers_who_was_named_else_the_makers,
             what_cannot_be_recorded_is_told_and_changes_nothing)
