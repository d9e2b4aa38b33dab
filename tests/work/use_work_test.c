#include <string.h>

#include "bodkin/trade/words.h"
#include "bodkin/work/use_work.h"
#include "work/filled.h"

static int64_t smock(void)
{
    return id_of("work", "name", "Smock");
}

static int64_t piece_id(const char *name)
{
    return id_of("piece", "name", name);
}

static const char *use(bk_store *store, int64_t work, const char *piece)
{
    const char *sentence = NULL;
    bk_job job = job_in(store);
    MUST(bk_work_use(&job, work, piece_id(piece), &sentence, &trouble));
    return sentence;
}

START_TEST(an_order_of_work_becomes_the_steps_of_a_piece)
{
    bk_store *store = store_with_salt_road();
    const char *records = bk_records();
    ck_assert_str_eq(use(store, smock(), "P3"), "Used: Smock on P3: 2 steps");
    FILLED(bk_step, cut, store, BK_STEPS, id_by("SELECT max(id) FROM step WHERE key = 'cut'"));
    ck_assert_str_eq(cut.piece, "P3");
    ck_assert_str_eq(cut.title, "Cut the drill");
    ck_assert_int_eq(cut.minutes, 45);
    ck_assert_int_eq(cut.quickest, 30);
    ck_assert_int_eq(cut.longest, 90);
    ck_assert_int_eq(cut.hands, 2);
    ck_assert_int_eq(cut.rest_minutes, 30);
    ck_assert_int_eq(cut.can_wait, 1);
    ck_assert_str_eq(cut.measures, "waist girth;nape to waist");
    ck_assert_str_eq(cut.note, "mind the nap");
    ck_assert(cut.done_on == BK_NO_DAY);
    FILLED(bk_step, sew, store, BK_STEPS, id_by("SELECT max(id) FROM step WHERE key = 'sew'"));
    ck_assert_str_eq(sew.after, "cut");
    undo(store);
    ck_assert_str_eq(bk_records(), records);
    bk_store_close(store);
}
END_TEST

START_TEST(keys_that_the_piece_has_get_a_number)
{
    bk_store *store = store_with_salt_road();
    use(store, smock(), "P2");
    use(store, smock(), "P2");
    ck_assert_str_eq(bk_ask("SELECT group_concat(key) FROM (SELECT key FROM step JOIN piece ON piece.id = "
                            "piece_id WHERE name = 'P2' ORDER BY step.position)"),
                     "sew,cut,fit,sew2,cut2,sew3,cut3");
    FILLED(bk_step, sew, store, BK_STEPS, id_of("step", "key", "sew3"));
    ck_assert_str_eq(sew.after, "cut3");
    bk_store_close(store);
}
END_TEST

START_TEST(a_key_with_a_number_is_not_given_twice)
{
    bk_store *store = store_with_salt_road();
    bk_work_step again = work_step_of("Smock", "sew2", NULL);
    save(store, BK_WORK_STEPS, NULL, &again);
    use(store, smock(), "P2");
    ck_assert_str_eq(bk_ask("SELECT group_concat(key) FROM (SELECT key FROM step JOIN piece ON piece.id = "
                            "piece_id WHERE name = 'P2' ORDER BY step.position)"),
                     "sew,cut,fit,sew2,cut2,sew22");
    bk_store_close(store);
}
END_TEST

START_TEST(every_ready_order_of_work_can_be_used)
{
    bk_store *store = store_with_salt_road();
    bk_rows works;
    MUST(bk_store_read(store, BK_WORKS, 0, texts(), &works, &trouble));
    for (size_t i = 0; i < works.count; i++)
        use(store, ((const bk_work *)works.items)[i].id, "P3");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM step JOIN piece ON piece.id = piece_id WHERE name = 'P3'"),
                     bk_ask("SELECT count(*) FROM work_step"));
    bk_findings findings;
    MUST(bk_store_check(store, texts(), &findings, &trouble));
    ck_assert_msg(findings.count == 0, "%s", findings.count ? findings.items[0] : "");
    bk_store_close(store);
}
END_TEST

START_TEST(the_steps_of_a_piece_are_kept_as_an_order_of_work)
{
    bk_store *store = store_with_salt_road();
    const char *sentence = NULL;
    int64_t work = 0;
    bk_job job = job_in(store);
    MUST(bk_work_keep(&job, piece_id("P2"), "Grey bodice", "ours", &work, &sentence, &trouble));
    ck_assert_str_eq(sentence, "Kept: order of work Grey bodice from P2: 3 steps");
    FILLED(bk_work, kept, store, BK_WORKS, work);
    ck_assert_str_eq(kept.note, "ours");
    ck_assert_int_eq(kept.ready, 0);
    ck_assert_str_eq(bk_ask(bk_arena_print(texts(),
                                           "SELECT key, minutes, coalesce(after, '-'), coalesce(level, '-') "
                                           "FROM work_step WHERE work_id = %lld ORDER BY position",
                                           (long long)work)),
                     "sew|120|cut|-\ncut|75|-|3\nfit|40|sew|-");
    bk_store_close(store);
}
END_TEST

START_TEST(a_new_order_of_work_has_a_name_of_its_own)
{
    bk_store *store = store_with_salt_road();
    const char *sentence = NULL;
    const char *records = bk_records();
    int64_t work = 0;
    bk_job job = job_in(store);
    REFUSED(bk_work_keep(&job, piece_id("P2"), "Smock", NULL, &work, &sentence, &trouble), BK_REFUSED,
            "There is an order of work called \"Smock\" already.");
    REFUSED(bk_work_keep(&job, piece_id("P2"), "", NULL, &work, &sentence, &trouble), BK_REFUSED, "name");
    REFUSED(bk_work_copy(&job, smock(), "a/b", &work, &sentence, &trouble), BK_REFUSED, "no ; and no /");
    ck_assert_str_eq(bk_records(), records);
    bk_store_close(store);
}
END_TEST

START_TEST(an_order_of_work_is_copied)
{
    bk_store *store = store_with_salt_road();
    const char *sentence = NULL;
    int64_t copy = 0;
    bk_job job = job_in(store);
    bk_ask("UPDATE work SET ready = 1");
    MUST(bk_work_copy(&job, smock(), "Long smock", &copy, &sentence, &trouble));
    ck_assert_str_eq(sentence, "Copied: order of work Smock, now also Long smock");
    const char *steps =
        "SELECT key, title, after, measures FROM work_step WHERE work_id = %lld ORDER BY position";
    ck_assert_str_eq(bk_ask(bk_arena_print(texts(), steps, (long long)copy)),
                     bk_ask(bk_arena_print(texts(), steps, (long long)smock())));
    FILLED(bk_work, work, store, BK_WORKS, copy);
    ck_assert_int_eq(work.ready, 0);
    ck_assert_str_eq(bk_ask("SELECT ready FROM work WHERE name = 'Smock'"), "1");
    bk_store_close(store);
}
END_TEST

START_TEST(what_is_gone_or_has_no_steps_is_told)
{
    bk_store *store = store_with_salt_road();
    const char *sentence = NULL;
    int64_t work = 0;
    bk_job job = job_in(store);
    REFUSED(bk_work_use(&job, 9999, piece_id("P2"), &sentence, &trouble), BK_REFUSED,
            "This order of work is no longer there");
    REFUSED(bk_work_use(&job, smock(), 9999, &sentence, &trouble), BK_REFUSED,
            "This piece is no longer there");
    REFUSED(bk_work_keep(&job, piece_id("P3"), "Bare", NULL, &work, &sentence, &trouble), BK_REFUSED,
            "has no steps yet");
    bk_work bare = {.name = "Bare"};
    bk_record_saved saved = save(store, BK_WORKS, NULL, &bare);
    REFUSED(bk_work_use(&job, saved.id, piece_id("P2"), &sentence, &trouble), BK_REFUSED, "has no steps yet");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("use_work", an_order_of_work_becomes_the_steps_of_a_piece, keys_that_the_piece_has_get_a_number,
             a_key_with_a_number_is_not_given_twice, every_ready_order_of_work_can_be_used,
             the_steps_of_a_piece_are_kept_as_an_order_of_work, a_new_order_of_work_has_a_name_of_its_own,
             an_order_of_work_is_copied, what_is_gone_or_has_no_steps_is_told)
