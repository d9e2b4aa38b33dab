#include <string.h>

#include "bodkin/trade/words.h"
#include "work/filled.h"

static int64_t step_id(const char *key)
{
    return id_of("step", "key", key);
}

/// A step with that order, refused; the sentence.
static const char *circle_of(bk_store *store, const char *key, const char *after)
{
    FILLED(bk_step, before, store, BK_STEPS, step_id(key));
    bk_step changed = before;
    changed.after = after;
    ck_assert_str_eq(refused(store, BK_STEPS, &before, &changed), "after");
    return trouble.text;
}

START_TEST(a_circle_is_told_by_its_steps_in_order)
{
    bk_store *store = store_with_salt_road();
    ck_assert_str_eq(circle_of(store, "cut", "sew"),
                     "That would be a circle: P2/cut comes after P2/sew, which comes after P2/cut. Take one "
                     "of them out.");
    ck_assert_str_eq(circle_of(store, "cut", "fit"),
                     "That would be a circle: P2/cut comes after P2/fit, which comes after P2/sew, which "
                     "comes after P2/cut. Take one of them out.");
    ck_assert_str_eq(circle_of(store, "press", "P2/fit"),
                     "That would be a circle: P1/press comes after P2/fit, which comes after P1/press. Take "
                     "one of them out.");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_does_not_come_after_itself)
{
    bk_store *store = store_with_salt_road();
    ck_assert_str_eq(circle_of(store, "cut", "cut"),
                     "That would be a circle: P2/cut comes after P2/cut. Take one of them out.");
    bk_store_close(store);
}
END_TEST

START_TEST(a_long_circle_names_its_beginning_and_counts_the_rest)
{
    enum { STEPS = 20 };
    bk_store *store = store_with_salt_road();
    for (int i = 0; i < STEPS; i++) {
        const char *after = i ? bk_arena_print(texts(), "s%d", i - 1) : NULL;
        bk_step step = step_of("P3", bk_arena_print(texts(), "s%d", i), after);
        save(store, BK_STEPS, NULL, &step);
    }
    const char *told = circle_of(store, "s0", "s19");
    ck_assert_ptr_nonnull(strstr(told, "P3/s0 comes after P3/s19, which comes after P3/s18"));
    ck_assert_ptr_nonnull(strstr(told, "P3/s9, and so on through 8 more, which comes after P3/s0."));
    bk_store_close(store);
}
END_TEST

START_TEST(a_circle_that_is_there_already_can_be_taken_apart)
{
    bk_store *store = store_with_salt_road();
    bk_ask(
        "INSERT INTO step_after SELECT cut.id, sew.id, 0 FROM step AS cut, step AS sew WHERE cut.key = 'cut' "
        "AND sew.key = 'sew'");
    FILLED(bk_step, before, store, BK_STEPS, step_id("cut"));
    ck_assert_str_eq(before.after, "sew");
    bk_step after = before;
    after.after = NULL;
    ck_assert_str_eq(save(store, BK_STEPS, &before, &after).sentence, "Changed: step P2/cut Cut it: after");
    bk_store_close(store);
}
END_TEST

START_TEST(an_order_across_pieces_that_is_no_circle_is_kept)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_step, before, store, BK_STEPS, step_id("press"));
    bk_step after = before;
    after.after = "P2/cut;P2/sew";
    ck_assert_str_eq(save(store, BK_STEPS, &before, &after).sentence,
                     "Changed: step P1/press Step press: after");
    bk_store_close(store);
}
END_TEST

START_TEST(what_came_after_a_step_that_is_gone_comes_after_what_that_came_after)
{
    bk_store *store = store_with_salt_road();
    take_away(store, BK_STEPS, step_id("sew"));
    FILLED(bk_step, fit, store, BK_STEPS, step_id("fit"));
    ck_assert_str_eq(fit.after, "P1/press;cut");
    take_away(store, BK_STEPS, step_id("cut"));
    FILLED(bk_step, again, store, BK_STEPS, step_id("fit"));
    ck_assert_str_eq(again.after, "P1/press");
    bk_store_close(store);
}
END_TEST

START_TEST(an_order_through_a_piece_that_is_gone_is_kept)
{
    bk_store *store = store_with_salt_road();
    bk_step last = step_of("P3", "hang", "P2/fit");
    save(store, BK_STEPS, NULL, &last);
    take_away(store, BK_PIECES, id_of("piece", "name", "P2"));
    FILLED(bk_step, hang, store, BK_STEPS, step_id("hang"));
    ck_assert_str_eq(hang.after, "P1/press");
    undo(store);
    FILLED(bk_step, again, store, BK_STEPS, step_id("hang"));
    ck_assert_str_eq(again.after, "P2/fit");
    bk_store_close(store);
}
END_TEST

// ----------------------------------------------------------------------------------------- orders of work

START_TEST(a_circle_in_an_order_of_work_is_told_too)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_work_step, cut, store, BK_WORK_STEPS, smock_step("cut"));
    bk_work_step after = cut;
    after.after = "sew";
    ck_assert_str_eq(refused(store, BK_WORK_STEPS, &cut, &after), "after");
    ck_assert_str_eq(trouble.text, "That would be a circle: cut comes after sew, which comes after cut. Take "
                                   "one of them out.");
    after.after = "cot";
    ck_assert_str_eq(refused(store, BK_WORK_STEPS, &cut, &after), "after");
    ck_assert_ptr_nonnull(strstr(trouble.text, "No step of that order of work is called \"cot\""));
    bk_store_close(store);
}
END_TEST

START_TEST(a_renamed_step_of_an_order_of_work_is_renamed_where_others_come_after_it)
{
    bk_store *store = store_with_salt_road();
    bk_work_step hem = work_step_of("Smock", "hem", "sew;cut");
    save(store, BK_WORK_STEPS, NULL, &hem);
    FILLED(bk_work_step, cut, store, BK_WORK_STEPS, smock_step("cut"));
    bk_work_step after = cut;
    after.key = "cut out";
    save(store, BK_WORK_STEPS, &cut, &after);
    ck_assert_str_eq(
        bk_ask("SELECT group_concat(after, '|') FROM (SELECT after FROM work_step JOIN work ON "
               "work.id = work_id WHERE name = 'Smock' AND after IS NOT NULL ORDER BY work_step.id)"),
        "cut out|sew;cut out");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_taken_from_an_order_of_work_leaves_its_order_to_the_others)
{
    bk_store *store = store_with_salt_road();
    bk_work_step hem = work_step_of("Smock", "hem", "sew;cut");
    save(store, BK_WORK_STEPS, NULL, &hem);
    ck_assert_str_eq(take_away(store, BK_WORK_STEPS, smock_step("sew")),
                     "Taken away: step sew of the order of work Smock");
    ck_assert_str_eq(
        bk_ask("SELECT after FROM work_step JOIN work ON work.id = work_id WHERE key = 'hem' AND "
               "name = 'Smock'"),
        "cut");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("record_order", a_circle_is_told_by_its_steps_in_order, a_step_does_not_come_after_itself,
             a_long_circle_names_its_beginning_and_counts_the_rest,
             a_circle_that_is_there_already_can_be_taken_apart,
             an_order_across_pieces_that_is_no_circle_is_kept,
             what_came_after_a_step_that_is_gone_comes_after_what_that_came_after,
             an_order_through_a_piece_that_is_gone_is_kept, a_circle_in_an_order_of_work_is_told_too,
             a_renamed_step_of_an_order_of_work_is_renamed_where_others_come_after_it,
             a_step_taken_from_an_order_of_work_leaves_its_order_to_the_others)
