#include "work/filled.h"

#include <string.h>

#include "bodkin/store/daybook.h"
#include "bodkin/trade/words.h"

bk_store *store_with_salt_road(void)
{
    bk_store *store = open_store();
    bk_folder *folder = salt_road();
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    return store;
}

bk_job job_in(bk_store *store)
{
    return (bk_job){.store = store,
                    .production = id_of("production", "name", "The Salt Road"),
                    .today = today(),
                    .made_at = MADE_AT,
                    .who = "Ada",
                    .arena = texts()};
}

int64_t id_by(const char *sql)
{
    return strtoll(bk_ask(sql), NULL, 10);
}

int64_t id_of(const char *table, const char *column, const char *name)
{
    return id_by(bk_arena_print(texts(), "SELECT id FROM %s WHERE %s = '%s' LIMIT 1", table, column, name));
}

void read_filled(bk_store *store, bk_family family, int64_t id, void *record)
{
    bool found = false;
    bk_job job = job_in(store);
    MUST(bk_record_read(&job, family, id, record, &found, &trouble));
    ck_assert(found);
}

static bk_status try_to_save(bk_store *store, bk_family family, const void *before, const void *after,
                             bk_record_saved *saved)
{
    bk_job job = job_in(store);
    bk_record_saving saving = {.family = family, .before = before, .after = after};
    return bk_record_save(&job, &saving, saved, &trouble);
}

bk_record_saved save(bk_store *store, bk_family family, const void *before, const void *after)
{
    bk_record_saved saved;
    MUST(try_to_save(store, family, before, after, &saved));
    return saved;
}

const char *refused(bk_store *store, bk_family family, const void *before, const void *after)
{
    bk_record_saved saved;
    const char *records = bk_records();
    ck_assert_int_eq(try_to_save(store, family, before, after, &saved), BK_REFUSED);
    ck_assert_str_eq(bk_records(), records);
    return saved.column ? saved.column : "-";
}

bk_step step_of(const char *piece, const char *key, const char *after)
{
    bk_step step = STEP(piece, "x", BK_HAND, 30, after);
    step.key = key;
    step.title = bk_arena_print(texts(), "Step %s", key);
    return step;
}

bk_work_step work_step_of(const char *work, const char *key, const char *after)
{
    bk_work_step step = WORK_STEP(work, "x", BK_HAND, 30, after);
    step.key = key;
    step.title = bk_arena_print(texts(), "Step %s", key);
    return step;
}

int64_t smock_step(const char *key)
{
    return id_by(
        bk_arena_print(texts(),
                       "SELECT work_step.id FROM work_step JOIN work ON work.id = work_id WHERE key = "
                       "'%s' AND name = 'Smock'",
                       key));
}

const char *take_away(bk_store *store, bk_family family, int64_t id)
{
    const char *sentence = NULL;
    bk_job job = job_in(store);
    MUST(bk_record_take_away(&job, family, id, &sentence, &trouble));
    return sentence;
}

const char *weigh(bk_store *store, bk_family family, int64_t id)
{
    const char *goes_with = NULL;
    bk_job job = job_in(store);
    MUST(bk_record_weigh(&job, family, id, &goes_with, &trouble));
    return goes_with ? goes_with : "-";
}

const char *move(bk_store *store, bk_family family, int64_t id, int by)
{
    const char *sentence = NULL;
    bk_job job = job_in(store);
    MUST(bk_record_move(&job, family, id, by, &sentence, &trouble));
    return sentence ? sentence : "-";
}

void undo(bk_store *store)
{
    const char *sentence = NULL;
    MUST(bk_daybook_undo(store, 0, MADE_AT, texts(), &sentence, &trouble));
}

const char *on_shelf(bk_store *store, const char *name)
{
    char text[BK_AMOUNT_ROOM];
    FILLED(bk_material, material, store, BK_MATERIALS, id_of("material", "name", name));
    return material.on_hand == BK_NO_AMOUNT
               ? "-"
               : bk_arena_text(texts(), bk_quantity_write(material.on_hand, text));
}
