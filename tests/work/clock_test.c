#include "bodkin/work/clock.h"

#include <string.h>

#include "bodkin/work/tick.h"
#include "work/bench.h"

#define BEGUN "2027-03-02T09:30:00+01:00"
#define LATER "2027-03-02T09:55:10+01:00"

static bk_job at(bk_job job, const char *made_at)
{
    job.made_at = made_at;
    return job;
}

static bk_job of(bk_job job, const char *who)
{
    job.who = who;
    return job;
}

static const char *begin(bk_job job, const char *piece, const char *key)
{
    const char *sentence = NULL;
    MUST(bk_running_start(&job, step_id(piece, key), &sentence, &trouble));
    return sentence;
}

static const char *clocks(void)
{
    return bk_ask("SELECT who, key, started_at FROM running JOIN step ON step.id = step_id ORDER BY who");
}

static const char *took(const char *key)
{
    return bk_ask(bk_arena_print(texts(),
                                 "SELECT coalesce(took, '-'), coalesce(done_on, '-') FROM step JOIN piece ON "
                                 "piece.id = piece_id WHERE piece.name = '4A-2' AND key = '%s'",
                                 key));
}

static void tick(bk_job job, const char *key, int64_t minutes)
{
    bk_tick done = {.done_on = today(), .done_by = "Ada", .took = minutes};
    const char *sentence = NULL;
    MUST(bk_step_tick(job.store, step_id("4A-2", key), &done, job.made_at, texts(), &sentence, &trouble));
}

typedef struct span {
    const char *from, *to;
    int64_t minutes;
} span;

static const span spans[] = {
    {"2027-03-02T09:30:00+01:00", "2027-03-02T09:55:00+01:00", 25},
    {"2027-03-02T09:30:00+01:00", "2027-03-02T09:30:29+01:00", 0},
    {"2027-03-02T09:30:00+01:00", "2027-03-02T09:30:30+01:00", 1},
    {"2027-03-02T23:50:00+01:00", "2027-03-03T00:10:00+01:00", 20},
    {"2027-03-28T01:59:00+01:00", "2027-03-28T03:01:00+02:00", 2}, // the clocks went forward meanwhile
    {"2027-03-02T09:30:00-03:30", "2027-03-02T13:00:00Z", 0},
    {"2027-03-02T09:30:00-03:30", "2027-03-02T13:10:00Z", 10},
    {"2027-03-02T09:30Z", "2027-03-02T09:31:00+00:00", 1},
    {"2027-03-02T09:55:00+01:00", "2027-03-02T09:30:00+01:00", 0},
    {"yesterday", "2027-03-02T09:30:00+01:00", 0},
    {"2027-03-02T09:30:00", "2027-03-02T09:40:00+01:00", 0},
    {"2027-03-02T09:30:xx+01:00", "2027-03-02T09:40:00+01:00", 0},
    {"2027-03-02T09:30:00+0100", "2027-03-02T09:40:00+01:00", 0},
    {"2027-03-02", "2027-03-02T09:40:00+01:00", 0},
    {"", "2027-03-02T09:40:00+01:00", 0},
    {NULL, "2027-03-02T09:40:00+01:00", 0},
};

START_TEST(minutes_between_moments_know_where_they_were_written)
{
    for (size_t i = 0; i < sizeof spans / sizeof *spans; i++)
        ck_assert_msg(bk_minutes_between(spans[i].from, spans[i].to) == spans[i].minutes, "%s to %s",
                      spans[i].from, spans[i].to);
}
END_TEST

START_TEST(a_clock_runs_on_when_the_store_is_closed)
{
    bk_store *store = bench_store();
    ck_assert_str_eq(begin(bench_job(store), "4A-2", "cut"), "Begun: 4A-2 Step cut");
    ck_assert_str_eq(newest_entry(), "Begun: 4A-2 Step cut");
    bk_store_close(store);
    store = open_store();
    bk_running_line line;
    bool runs = false;
    MUST(bk_running_read(store, "Ada", LATER, texts(), &line, &runs, &trouble));
    ck_assert(runs);
    ck_assert_str_eq(line.piece, "4A-2");
    ck_assert_str_eq(line.step, "cut");
    ck_assert_str_eq(line.step_title, "Step cut");
    ck_assert_str_eq(line.record.started_at, BEGUN);
    ck_assert_int_eq(line.minutes, 25);
    MUST(bk_running_read(store, "Bo", LATER, texts(), &line, &runs, &trouble));
    ck_assert(!runs);
    bk_store_close(store);
}
END_TEST

START_TEST(a_clock_that_stops_keeps_its_minutes_with_the_step)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    int64_t minutes = 0;
    begin(job, "4A-2", "cut");
    const char *before = bk_records();
    job = at(job, LATER);
    MUST(bk_running_stop(&job, &minutes, &sentence, &trouble));
    ck_assert_str_eq(sentence, "Stopped: 4A-2 Step cut, 25 min");
    ck_assert_int_eq(minutes, 25);
    ck_assert_str_eq(took("cut"), "25|-");
    ck_assert_str_eq(clocks(), "");
    expect_undone(store, before);
    begin(job, "4A-2", "cut");
    job = at(job, "2027-03-02T10:05:10+01:00");
    MUST(bk_running_stop(&job, NULL, &sentence, &trouble));
    ck_assert_str_eq(took("cut"), "35|-");
    bk_store_close(store);
}
END_TEST

START_TEST(beginning_another_step_stops_the_first_and_says_so)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    begin(job, "4A-2", "cut");
    const char *before = bk_records();
    ck_assert_str_eq(begin(at(job, LATER), "4A-2", "hem"),
                     "Begun: 4A-2 Step hem (stopped: 4A-2 Step cut, 25 min)");
    ck_assert_str_eq(clocks(), "Ada|hem|" LATER);
    ck_assert_str_eq(took("cut"), "25|-");
    expect_undone(store, before);
    bk_store_close(store);
}
END_TEST

START_TEST(each_person_has_a_clock)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    begin(job, "4A-2", "cut");
    begin(of(job, "Bo"), "4A-2", "hem");
    ck_assert_str_eq(clocks(), "Ada|cut|" BEGUN "\nBo|hem|" BEGUN);
    bk_store_close(store);
}
END_TEST

START_TEST(a_clock_that_was_forgotten_for_years_measures_no_more_than_the_sheets_take)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    begin(at(job, "2020-03-02T09:30:00+01:00"), "4A-2", "cut");
    MUST(bk_running_stop(&job, NULL, &sentence, &trouble));
    ck_assert_str_eq(took("cut"), "1000000|-");
    begin(at(job, "2020-03-02T09:30:00+01:00"), "4A-2", "cut");
    tick(job, "cut", BK_NOT_KNOWN);
    ck_assert_str_eq(took("cut"), "1000000|2027-03-02");
    bk_store_close(store);
}
END_TEST

START_TEST(less_than_half_a_minute_does_not_count)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    begin(job, "4A-2", "cut");
    MUST(bk_running_stop(&job, NULL, &sentence, &trouble));
    ck_assert_str_eq(took("cut"), "-|-");
    bk_store_close(store);
}
END_TEST

START_TEST(a_tick_takes_the_minutes_of_the_clock_and_stops_it)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    begin(job, "4A-2", "cut");
    const char *before = bk_records();
    tick(at(job, LATER), "cut", BK_NOT_KNOWN);
    ck_assert_str_eq(took("cut"), "25|2027-03-02");
    ck_assert_str_eq(clocks(), "");
    ck_assert_str_eq(newest_entry(), "Done: 4A-2 Step cut");
    expect_undone(store, before);
    bk_store_close(store);
}
END_TEST

START_TEST(a_tick_adds_what_earlier_clocks_measured)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    begin(job, "4A-2", "cut");
    begin(at(job, LATER), "4A-2", "hem");
    begin(at(job, LATER), "4A-2", "cut");
    tick(at(job, "2027-03-02T10:00:10+01:00"), "cut", BK_NOT_KNOWN);
    ck_assert_str_eq(took("cut"), "30|2027-03-02");
    bk_store_close(store);
}
END_TEST

START_TEST(a_tick_believes_what_it_is_told_more_than_the_clock)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    begin(job, "4A-2", "cut");
    tick(at(job, LATER), "cut", 12);
    ck_assert_str_eq(took("cut"), "12|2027-03-02");
    ck_assert_str_eq(clocks(), "");
    bk_store_close(store);
}
END_TEST

START_TEST(two_who_worked_at_once_took_as_long_as_the_longer)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    begin(job, "4A-2", "cut");
    begin(of(at(job, "2027-03-02T09:50:00+01:00"), "Bo"), "4A-2", "cut");
    begin(of(job, "Ida"), "4A-2", "hem");
    tick(at(job, LATER), "cut", BK_NOT_KNOWN);
    ck_assert_str_eq(took("cut"), "25|2027-03-02");
    ck_assert_str_eq(clocks(), "Ida|hem|" BEGUN);
    bk_store_close(store);
}
END_TEST

START_TEST(an_opened_step_forgets_what_the_clocks_measured)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    begin(job, "4A-2", "cut");
    tick(at(job, LATER), "cut", BK_NOT_KNOWN);
    MUST(bk_step_untick(store, step_id("4A-2", "cut"), today(), LATER, texts(), &sentence, &trouble));
    ck_assert_str_eq(took("cut"), "-|-");
    bk_store_close(store);
}
END_TEST

START_TEST(a_clock_that_cannot_start_or_stop_is_told)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    const char *before = bk_ask(".dump");
    REFUSED(bk_running_stop(&job, NULL, &sentence, &trouble), BK_REFUSED, "No clock of yours is running.");
    REFUSED(bk_running_start(&job, step_id("4A-1", "cut"), &sentence, &trouble), BK_REFUSED,
            "4A-1/cut is done already; open it again to work on it.");
    REFUSED(bk_running_start(&job, 999, &sentence, &trouble), BK_REFUSED, "no longer");
    ck_assert_str_eq(bk_ask(".dump"), before);
    begin(job, "4A-2", "cut");
    job = at(job, LATER);
    REFUSED(bk_running_start(&job, step_id("4A-2", "cut"), &sentence, &trouble), BK_REFUSED,
            "Your clock runs for 4A-2/cut already, for 25 min now.");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("clock", minutes_between_moments_know_where_they_were_written,
             a_clock_runs_on_when_the_store_is_closed, a_clock_that_stops_keeps_its_minutes_with_the_step,
             beginning_another_step_stops_the_first_and_says_so, each_person_has_a_clock,
             a_clock_that_was_forgotten_for_years_measures_no_more_than_the_sheets_take,
             less_than_half_a_minute_does_not_count, a_tick_takes_the_minutes_of_the_clock_and_stops_it,
             a_tick_adds_what_earlier_clocks_measured, a_tick_believes_what_it_is_told_more_than_the_clock,
             two_who_worked_at_once_took_as_long_as_the_longer,
             an_opened_step_forgets_what_the_clocks_measured, a_clock_that_cannot_start_or_stop_is_told)
