#include "bodkin/work/outlook.h"

#include <string.h>

#include "bodkin/work/clock.h"
#include "bodkin/work/tick.h"
#include "work/bench.h"

#define BEGUN "2027-03-02T09:30:00+01:00"
#define EARLIER "2027-03-02T09:10:00+01:00"
#define LATER "2027-03-02T09:55:00+01:00"

static bk_step_outlook look_at(bk_store *store, const char *piece, const char *key)
{
    bk_step_outlook outlook;
    MUST(bk_step_outlook_read(store, step_id(piece, key), texts(), &outlook, &trouble));
    ck_assert(outlook.found);
    return outlook;
}

static void tick(bk_store *store, const char *piece, const char *key)
{
    const char *sentence = NULL;
    const bk_tick done = {.done_on = today(), .done_by = "Ada", .took = BK_NOT_KNOWN};
    MUST(bk_step_tick(store, step_id(piece, key), &done, BEGUN, texts(), &sentence, &trouble));
}

static void begin(bk_job job, const char *who, const char *made_at)
{
    const char *sentence = NULL;
    job.who = who;
    job.made_at = made_at;
    MUST(bk_running_start(&job, step_id("4A-2", "cut"), &sentence, &trouble));
}

START_TEST(a_step_with_nothing_against_it_has_no_outlook_but_itself)
{
    bk_store *store = bench_store();
    bk_step_outlook outlook = look_at(store, "4A-2", "cut");
    ck_assert_str_eq(outlook.step.step.piece, "4A-2");
    ck_assert_str_eq(outlook.step.step.key, "cut");
    ck_assert(!bk_step_outlook_done(&outlook));
    ck_assert_uint_eq(outlook.before_count + outlook.lack_count, 0);
    ck_assert_ptr_null(outlook.piece.out_with);
    ck_assert_ptr_null(outlook.runs_since);
    ck_assert_int_eq(bk_step_outlook_took(&outlook, LATER), BK_NOT_KNOWN);
    bk_store_close(store);
}
END_TEST

START_TEST(earlier_steps_count_until_they_are_done_or_their_fitting_fits)
{
    bk_store *store = bench_store();
    bk_step_outlook outlook = look_at(store, "4A-2", "fit");
    ck_assert_uint_eq(outlook.before_count, 1);
    ck_assert_str_eq(outlook.before[0].piece, "4A-2");
    ck_assert_str_eq(outlook.before[0].key, "cut");
    tick(store, "4A-2", "cut");
    ck_assert_uint_eq(look_at(store, "4A-2", "fit").before_count, 0);
    ck_assert_uint_eq(look_at(store, "4A-2", "hem").before_count, 1);
    bk_ask("INSERT INTO fitting (production_id, step_id, position, booked_at, outcome) SELECT production_id, "
           "id, 9, '2027-03-01', 'fits' FROM step WHERE key = 'fit' AND piece_id = (SELECT id FROM piece "
           "WHERE name = '4A-2')");
    ck_assert_uint_eq(look_at(store, "4A-2", "hem").before_count, 0);
    outlook = look_at(store, "4A-2", "fit");
    ck_assert(bk_step_outlook_done(&outlook));
    bk_store_close(store);
}
END_TEST

START_TEST(the_shelf_lacks_what_is_more_than_it_has_but_never_more_than_is_needed)
{
    bk_store *store = bench_store();
    bk_ask("UPDATE need SET quantity = 7000000 WHERE quantity = 3000000");
    bk_step_outlook outlook = look_at(store, "4A-2", "cut");
    ck_assert_uint_eq(outlook.lack_count, 1);
    ck_assert_str_eq(outlook.lacks[0].material.name, "wool");
    ck_assert_int_eq(outlook.lacks[0].quantity, TENTHS(20));
    tick(store, "4A-2", "cut");
    outlook = look_at(store, "4A-1", "toile");
    ck_assert_uint_eq(outlook.lack_count, 1);
    ck_assert_int_eq(outlook.lacks[0].quantity, TENTHS(12));
    bk_store_close(store);
}
END_TEST

START_TEST(a_shelf_that_was_never_counted_lacks_nothing)
{
    bk_store *store = bench_store();
    ck_assert_uint_eq(look_at(store, "4A-2", "hem").lack_count, 0);
    bk_store_close(store);
}
END_TEST

START_TEST(a_piece_that_is_out_says_with_whom)
{
    bk_store *store = bench_store();
    bk_ask("UPDATE piece SET out_with = 'Dye house' WHERE name = '4A-2'");
    ck_assert_str_eq(look_at(store, "4A-2", "cut").piece.out_with, "Dye house");
    bk_store_close(store);
}
END_TEST

START_TEST(the_longest_clock_counts_on_top_of_what_was_measured)
{
    bk_store *store = bench_store();
    begin(bench_job(store), "Ada", BEGUN);
    begin(bench_job(store), "Bo", EARLIER);
    bk_step_outlook outlook = look_at(store, "4A-2", "cut");
    ck_assert_str_eq(outlook.runs_since, EARLIER);
    ck_assert_int_eq(bk_step_outlook_took(&outlook, LATER), 45);
    ck_assert_ptr_null(look_at(store, "4A-2", "hem").runs_since);
    bk_ask("UPDATE step SET took = 10 WHERE id IN (SELECT step_id FROM running)");
    outlook = look_at(store, "4A-2", "cut");
    ck_assert_int_eq(bk_step_outlook_took(&outlook, LATER), 55);
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_that_is_gone_is_not_found)
{
    bk_step_outlook outlook;
    bk_store *store = bench_store();
    MUST(bk_step_outlook_read(store, 9999, texts(), &outlook, &trouble));
    ck_assert(!outlook.found);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("outlook", a_step_with_nothing_against_it_has_no_outlook_but_itself,
             earlier_steps_count_until_they_are_done_or_their_fitting_fits,
             the_shelf_lacks_what_is_more_than_it_has_but_never_more_than_is_needed,
             a_shelf_that_was_never_counted_lacks_nothing, a_piece_that_is_out_says_with_whom,
             the_longest_clock_counts_on_top_of_what_was_measured, a_step_that_is_gone_is_not_found)
