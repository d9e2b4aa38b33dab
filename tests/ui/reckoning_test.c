#include "bodkin/ui/reckoning.h"

#include <sched.h>
#include <string.h>

#include "support/testing.h"

enum { TODAY = 20880 };

static const char *path(void)
{
    return bk_test_path("workroom.db");
}

static void make_store(void)
{
    bk_error error;
    bk_store *store = NULL;
    const bk_store_options options = {.path = path(), .as = BK_AS_MAKER, .who = "Ida", .create = true};
    ck_assert_int_eq(bk_store_open(&store, &options, &error), BK_OK);
    bk_store_close(store);
}

static bk_reckoning *begin(int64_t tries)
{
    const bk_reckoning_options options = {path(), BK_AS_MAKER, BK_USUAL_SEED, tries};
    return bk_reckoning_begin(&options);
}

static void await_end(bk_reckoning *reckoning)
{
    while (bk_reckoning_busy(reckoning)) {
        bk_reckoning_look(reckoning);
        sched_yield();
    }
}

START_TEST(one_that_was_asked_nothing_does_nothing)
{
    bk_reckoning *reckoning = begin(0);
    ck_assert(!bk_reckoning_busy(reckoning));
    ck_assert(!bk_reckoning_settled(reckoning));
    ck_assert(!bk_reckoning_look(reckoning));
    ck_assert_ptr_null(bk_reckoning_forecast(reckoning));
    ck_assert_ptr_null(bk_reckoning_trouble(reckoning));
    bk_reckoning_end(reckoning);
    bk_reckoning_end(NULL);
}
END_TEST

START_TEST(a_question_is_answered_for_its_day)
{
    make_store();
    bk_reckoning *reckoning = begin(20);
    bk_reckoning_want(reckoning, TODAY, NULL, 0);
    ck_assert(bk_reckoning_busy(reckoning));
    await_end(reckoning);
    ck_assert(bk_reckoning_settled(reckoning));
    ck_assert_int_eq(bk_reckoning_forecast(reckoning)->today, TODAY);
    ck_assert_int_eq(bk_reckoning_forecast(reckoning)->effort.trials, 20);
    ck_assert_int_ge(bk_reckoning_answers(reckoning), 1);
    ck_assert_ptr_null(bk_reckoning_trouble(reckoning));
    bk_reckoning_end(reckoning);
}
END_TEST

START_TEST(an_answer_stays_until_that_to_a_later_question_comes)
{
    make_store();
    bk_reckoning *reckoning = begin(0);
    bk_reckoning_want(reckoning, TODAY, NULL, 0);
    await_end(reckoning);
    bk_reckoning_want(reckoning, TODAY + 1, NULL, 0);
    ck_assert(bk_reckoning_busy(reckoning));
    ck_assert(!bk_reckoning_settled(reckoning));
    ck_assert_int_eq(bk_reckoning_forecast(reckoning)->today, TODAY);
    await_end(reckoning);
    ck_assert(bk_reckoning_settled(reckoning));
    ck_assert_int_eq(bk_reckoning_forecast(reckoning)->today, TODAY + 1);
    bk_reckoning_end(reckoning);
}
END_TEST

START_TEST(of_many_questions_the_last_is_answered)
{
    enum { QUESTIONS = 50 };
    make_store();
    bk_reckoning *reckoning = begin(20);
    for (int i = 0; i < QUESTIONS; i++)
        bk_reckoning_want(reckoning, TODAY + i, NULL, 0);
    await_end(reckoning);
    ck_assert_int_eq(bk_reckoning_forecast(reckoning)->today, TODAY + QUESTIONS - 1);
    bk_reckoning_end(reckoning);
}
END_TEST

START_TEST(it_can_be_ended_at_any_moment)
{
    enum { TIMES = 30 };
    make_store();
    for (int i = 0; i < TIMES; i++) {
        bk_reckoning *reckoning = begin(20);
        bk_reckoning_want(reckoning, TODAY, NULL, 0);
        for (int j = 0; j < i; j++)
            bk_reckoning_look(reckoning);
        bk_reckoning_end(reckoning);
    }
}
END_TEST

START_TEST(a_store_that_cannot_be_opened_is_a_sentence)
{
    bk_reckoning *reckoning = begin(20);
    bk_reckoning_want(reckoning, TODAY, NULL, 0);
    ck_assert_ptr_null(bk_reckoning_trouble(reckoning));
    await_end(reckoning);
    ck_assert(!bk_reckoning_settled(reckoning));
    ck_assert_ptr_null(bk_reckoning_forecast(reckoning));
    ck_assert_ptr_nonnull(strstr(bk_reckoning_trouble(reckoning), "There is no workroom at "));
    make_store();
    bk_reckoning_want(reckoning, TODAY, NULL, 0);
    await_end(reckoning);
    ck_assert(bk_reckoning_settled(reckoning));
    ck_assert_ptr_null(bk_reckoning_trouble(reckoning));
    bk_reckoning_end(reckoning);
}
END_TEST

BK_TEST_MAIN("reckoning", one_that_was_asked_nothing_does_nothing, a_question_is_answered_for_its_day,
             an_answer_stays_until_that_to_a_later_question_comes, of_many_questions_the_last_is_answered,
             it_can_be_ended_at_any_moment, a_store_that_cannot_be_opened_is_a_sentence)
