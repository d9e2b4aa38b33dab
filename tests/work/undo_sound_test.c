#include <string.h>

#include "bodkin/store/daybook.h"
#include "bodkin/work/clock.h"
#include "bodkin/work/history.h"
#include "bodkin/work/materials.h"
#include "work/filled.h"

// An older change that is turned back must fit what was made after it.

static int64_t newest(void)
{
    return id_by("SELECT max(id) FROM daybook");
}

/// Turning the entry back is refused with these words, and the store stays sound.
static void expect_unsound(bk_store *store, int64_t entry, const char *words)
{
    bk_findings findings;
    const char *sentence = NULL;
    int64_t last = newest();
    REFUSED(bk_daybook_undo(store, entry, MADE_AT, texts(), &sentence, &trouble), BK_REFUSED, words);
    ck_assert_int_eq(newest(), last);
    MUST(bk_store_check(store, texts(), &findings, &trouble));
    ck_assert_uint_eq(findings.count, 0);
}

static void undo_entry(bk_store *store, int64_t entry)
{
    const char *sentence = NULL;
    MUST(bk_daybook_undo(store, entry, MADE_AT, texts(), &sentence, &trouble));
}

static int64_t rename_piece(bk_store *store, const char *name, const char *to)
{
    FILLED(bk_piece, before, store, BK_PIECES, id_of("piece", "name", name));
    bk_piece after = before;
    after.name = to;
    save(store, BK_PIECES, &before, &after);
    return newest();
}

static void come_after(bk_store *store, const char *key, const char *after)
{
    FILLED(bk_step, before, store, BK_STEPS, id_of("step", "key", key));
    bk_step changed = before;
    changed.after = after;
    save(store, BK_STEPS, &before, &changed);
}

START_TEST(a_name_that_another_bears_by_now_does_not_come_back)
{
    bk_store *store = store_with_salt_road();
    int64_t renamed = rename_piece(store, "P1", "P1-old");
    rename_piece(store, "P3", "P1");
    expect_unsound(store, renamed,
                   "for then: The Salt Road: 2 pieces are called \"P1\". Nothing was changed.");
    undo(store);
    undo_entry(store, renamed);
    bk_store_close(store);
}
END_TEST

START_TEST(an_order_that_would_be_a_circle_by_now_does_not_come_back)
{
    bk_store *store = store_with_salt_road();
    come_after(store, "sew", NULL);
    int64_t cut_loose = newest();
    come_after(store, "cut", "sew");
    expect_unsound(store, cut_loose, "These steps come after each other in a circle");
    bk_store_close(store);
}
END_TEST

START_TEST(a_clock_does_not_come_back_beside_a_newer_one)
{
    bk_store *store = store_with_salt_road();
    bk_job job = job_in(store);
    const char *sentence = NULL;
    job.arena = texts();
    MUST(bk_running_start(&job, id_of("step", "key", "sew"), &sentence, &trouble));
    MUST(bk_running_stop(&job, NULL, &sentence, &trouble));
    int64_t stopped = newest();
    MUST(bk_running_start(&job, id_of("step", "key", "press"), &sentence, &trouble));
    expect_unsound(store, stopped, "2 clocks run for");
    bk_store_close(store);
}
END_TEST

static int64_t count_linen(bk_store *store, bk_quantity quantity)
{
    bk_job job = job_in(store);
    const char *sentence = NULL;
    MUST(bk_material_count(&job, id_of("material", "name", "linen"), quantity, &sentence, &trouble));
    return newest();
}

START_TEST(a_count_is_not_undone_beneath_a_newer_one)
{
    bk_store *store = store_with_salt_road();
    int64_t first = count_linen(store, 4 * BK_QUANTITY_ONE);
    count_linen(store, 7 * BK_QUANTITY_ONE);
    expect_unsound(store, first, "\"linen\" was counted again after that");
    ck_assert_str_eq(on_shelf(store, "linen"), "7");
    undo(store);
    undo(store);
    bk_store_close(store);
}
END_TEST

START_TEST(a_count_is_undone_beneath_what_was_used_since)
{
    bk_store *store = store_with_salt_road();
    const char *before = on_shelf(store, "linen");
    int64_t counted = count_linen(store, 9 * BK_QUANTITY_ONE);
    bk_order order = ORDER("linen", BK_QUANTITY_ONE, DAY(3, 1), BK_NO_DAY, DAY(3, 2));
    save(store, BK_ORDERS, NULL, &order);
    ck_assert_str_eq(on_shelf(store, "linen"), "10");
    undo_entry(store, counted);
    undo(store);
    ck_assert_str_eq(on_shelf(store, "linen"), before);
    bk_store_close(store);
}
END_TEST

static int64_t measure_cuff(bk_store *store, const char *performer, bk_length value)
{
    bk_taken taken = {"cuff", value};
    const char *sentence = NULL;
    bk_measures_saving saving = {.performer = id_of("performer", "name", performer),
                                 .on = DAY(2, 20),
                                 .today = today(),
                                 .items = &taken,
                                 .count = 1};
    MUST(bk_measures_save(store, &saving, MADE_AT, texts(), &sentence, &trouble));
    return newest();
}

START_TEST(measures_are_taken_back_also_where_others_bear_their_names_by_now)
{
    bk_store *store = store_with_salt_road();
    const char *sentence = NULL;
    int64_t first = measure_cuff(store, "Ines Varga", 220000);
    measure_cuff(store, "Tomas Lind", 240000);
    const char *all = bk_records();
    undo_entry(store, first);
    ck_assert_str_eq(
        bk_ask("SELECT count(*), min(value) FROM measure JOIN measure_name ON measure_name.id = name_id "
               "WHERE name = 'cuff'"),
        "1|240000");
    MUST(bk_daybook_redo(store, MADE_AT, texts(), &sentence, &trouble));
    ck_assert_str_eq(bk_records(), all);
    bk_store_close(store);
}
END_TEST

START_TEST(what_was_not_sound_before_does_not_hinder_undo)
{
    bk_store *store = store_with_salt_road();
    int64_t renamed = rename_piece(store, "P1", "P1-old");
    bk_shell("sqlite3 workroom.db \"UPDATE piece SET name = 'P9' WHERE name IN ('P2', 'P3')\"");
    FILLED(bk_costume, before, store, BK_COSTUMES, id_by("SELECT min(id) FROM costume"));
    bk_costume after = before;
    after.note = "newer";
    save(store, BK_COSTUMES, &before, &after);
    undo_entry(store, renamed);
    ck_assert_int_eq(id_by("SELECT count(*) FROM piece WHERE name = 'P1'"), 1);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("undo_sound", a_name_that_another_bears_by_now_does_not_come_back,
             an_order_that_would_be_a_circle_by_now_does_not_come_back,
             a_clock_does_not_come_back_beside_a_newer_one, a_count_is_not_undone_beneath_a_newer_one,
             a_count_is_undone_beneath_what_was_used_since,
             measures_are_taken_back_also_where_others_bear_their_names_by_now,
             what_was_not_sound_before_does_not_hinder_undo)
