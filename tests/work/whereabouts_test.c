#include "bodkin/work/whereabouts.h"

#include <string.h>

#include "work/bench.h"

static const char *whereabouts(void)
{
    return bk_ask("SELECT coalesce(place, '-'), coalesce(out_with, '-'), coalesce(out_since, '-'), "
                  "coalesce(back_by, '-') FROM piece WHERE name = '4A-2'");
}

START_TEST(a_piece_goes_out_with_somebody_until_a_day)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    const char *before = bk_records();
    MUST(bk_piece_out(&job, piece_id("4A-2"), "Bo Lind", DAY(3, 12), &sentence, &trouble));
    ck_assert_str_eq(sentence, "Out: 4A-2 Piece 4A-2, with Bo Lind until Fri 12 Mar");
    ck_assert_str_eq(newest_entry(), sentence);
    ck_assert_str_eq(whereabouts(), "-|Bo Lind|2027-03-02|2027-03-12");
    expect_undone(store, before);
    bk_store_close(store);
}
END_TEST

START_TEST(a_piece_that_is_out_for_longer_went_out_on_its_first_day)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    MUST(bk_piece_out(&job, piece_id("4A-2"), "Bo Lind", DAY(3, 12), &sentence, &trouble));
    job = bench_job_on(store, DAY(3, 5));
    MUST(bk_piece_out(&job, piece_id("4A-2"), "Bo Lind", BK_NO_DAY, &sentence, &trouble));
    ck_assert_str_eq(sentence, "Out: 4A-2 Piece 4A-2, with Bo Lind");
    ck_assert_str_eq(whereabouts(), "-|Bo Lind|2027-03-02|-");
    MUST(bk_piece_out(&job, piece_id("4A-2"), "Ida Rask", BK_NO_DAY, &sentence, &trouble));
    ck_assert_str_eq(whereabouts(), "-|Ida Rask|2027-03-05|-");
    bk_store_close(store);
}
END_TEST

START_TEST(a_piece_that_is_back_is_with_nobody)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    MUST(bk_piece_place(&job, piece_id("4A-2"), "rail 2", &sentence, &trouble));
    ck_assert_str_eq(sentence, "Moved: 4A-2 Piece 4A-2, to rail 2");
    MUST(bk_piece_out(&job, piece_id("4A-2"), "Bo Lind", DAY(3, 12), &sentence, &trouble));
    const char *before = bk_records();
    MUST(bk_piece_back(&job, piece_id("4A-2"), NULL, &sentence, &trouble));
    ck_assert_str_eq(sentence, "Back: 4A-2 Piece 4A-2, from Bo Lind");
    ck_assert_str_eq(whereabouts(), "rail 2|-|-|-");
    expect_undone(store, before);
    MUST(bk_piece_out(&job, piece_id("4A-2"), "Bo Lind", BK_NO_DAY, &sentence, &trouble));
    MUST(bk_piece_back(&job, piece_id("4A-2"), "the trunk", &sentence, &trouble));
    ck_assert_str_eq(sentence, "Back: 4A-2 Piece 4A-2, from Bo Lind, to the trunk");
    ck_assert_str_eq(whereabouts(), "the trunk|-|-|-");
    bk_store_close(store);
}
END_TEST

START_TEST(a_place_can_be_forgotten)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    MUST(bk_piece_place(&job, piece_id("4A-2"), "rail 2", &sentence, &trouble));
    MUST(bk_piece_place(&job, piece_id("4A-2"), " ", &sentence, &trouble));
    ck_assert_str_eq(sentence, "Moved: 4A-2 Piece 4A-2, nobody knows where");
    ck_assert_str_eq(whereabouts(), "-|-|-|-");
    bk_store_close(store);
}
END_TEST

START_TEST(what_cannot_be_moved_is_told_and_changes_nothing)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = "";
    const char *before = bk_ask(".dump");
    REFUSED(bk_piece_out(&job, piece_id("4A-2"), "  ", BK_NO_DAY, &sentence, &trouble), BK_REFUSED,
            "Say whom 4A-2 is out with.");
    ck_assert_ptr_null(sentence);
    REFUSED(bk_piece_back(&job, piece_id("4A-2"), NULL, &sentence, &trouble), BK_REFUSED, "4A-2 is not out.");
    REFUSED(bk_piece_place(&job, 999, "rail 2", &sentence, &trouble), BK_REFUSED,
            "This piece is no longer in the workroom.");
    ck_assert_str_eq(bk_ask(".dump"), before);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("whereabouts", a_piece_goes_out_with_somebody_until_a_day,
             a_piece_that_is_out_for_longer_went_out_on_its_first_day, a_piece_that_is_back_is_with_nobody,
             a_place_can_be_forgotten, what_cannot_be_moved_is_told_and_changes_nothing)
