#include "work/bench.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/store/daybook.h"
#include "bodkin/trade/words.h"

static void put_people(bk_folder *folder)
{
    ROWS(folder, performers, bk_performer, PERFORMER("Ines Varga", NULL, NULL),
         PERFORMER("Tomas Lind", NULL, NULL));
    ROWS(folder, away, bk_away, AWAY("Ines Varga", DAY(3, 9), DAY(3, 10), "a sitting"));
    ROWS(folder, roles, bk_role, ROLE("The Miller", "Ines Varga", "Tomas Lind"),
         ROLE("The Boy", "Tomas Lind", NULL), ROLE("The Crow", NULL, NULL));
    ROWS(folder, costumes, bk_costume, COSTUME("4A", "The Miller", BK_NO_DAY),
         COSTUME("4B", "The Miller", DAY(3, 20)), COSTUME("5A", "The Boy", BK_NO_DAY),
         COSTUME("6A", "The Crow", BK_NO_DAY));
}

static void put_garments(bk_folder *folder)
{
    ROWS(folder, pieces, bk_piece, PIECE("4A-1", "4A;4B", BK_MAKE), PIECE("4A-2", "4A", BK_MAKE),
         PIECE("5A-1", "5A", BK_MAKE), PIECE("6A-1", "6A", BK_MAKE));
    bk_step cut = STEP("4A-1", "cut", BK_CUT, 60, NULL);
    cut.done_on = DAY(2, 20);
    const bk_step steps[] = {
        cut,
        STEP("4A-1", "toile", BK_FIT, 30, "cut"),
        STEP("4A-1", "sew", BK_MACHINE, 120, "toile"),
        STEP("4A-2", "cut", BK_CUT, 60, NULL),
        STEP("4A-2", "fit", BK_FIT, 20, "cut"),
        STEP("4A-2", "hem", BK_HAND, 90, "fit"),
        STEP("5A-1", "fit", BK_FIT, 40, NULL),
        STEP("6A-1", "fit", BK_FIT, 10, NULL),
    };
    put_rows(folder->arena, &folder->steps, steps, sizeof *steps, sizeof steps / sizeof *steps);
}

static void put_shelf(bk_folder *folder)
{
    bk_material wool = MATERIAL("wool", BK_METRE, TENTHS(50));
    wool.supplier = "the mill";
    wool.price = 890;
    wool.currency = "GBP";
    ROWS(folder, materials, bk_material, wool, MATERIAL("hooks", BK_EACH, BK_NO_AMOUNT));
    ROWS(folder, needs, bk_need, NEED("4A-1", "toile", "wool", TENTHS(12)),
         NEED("4A-2", "cut", "wool", TENTHS(30)), NEED("4A-2", "hem", "hooks", TENTHS(120)));
}

bk_store *bench_store(void)
{
    bk_store *store = open_store();
    bk_folder *folder = bare_show("The Fish Fair", DAY(6, 4));
    put_people(folder);
    put_garments(folder);
    put_shelf(folder);
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    return store;
}

static bk_job job_at(bk_store *store, bk_day day, const char *made_at)
{
    return (bk_job){
        .store = store,
        .production = ask_id("SELECT id FROM production WHERE name = 'The Fish Fair'"),
        .today = day,
        .made_at = made_at,
        .who = "Ada",
        .arena = texts(),
    };
}

bk_job bench_job(bk_store *store)
{
    return job_at(store, today(), "2027-03-02T09:30:00+01:00");
}

bk_job bench_job_on(bk_store *store, bk_day day)
{
    char written[BK_DAY_ROOM];
    bk_day_write(day, written);
    return job_at(store, day, bk_arena_print(texts(), "%sT10:00:00+01:00", written));
}

int64_t ask_id(const char *sql)
{
    const char *answer = bk_ask(sql);
    ck_assert_msg(*answer != '\0', "nothing found by: %s", sql);
    return strtoll(answer, NULL, 10);
}

int64_t step_id(const char *piece, const char *key)
{
    return ask_id(bk_arena_print(texts(),
                                 "SELECT step.id FROM step JOIN piece ON piece.id = piece_id WHERE "
                                 "piece.name = '%s' AND key = '%s'",
                                 piece, key));
}

static int64_t named(const char *table, const char *name)
{
    return ask_id(bk_arena_print(texts(), "SELECT id FROM %s WHERE name = '%s'", table, name));
}

int64_t piece_id(const char *piece)
{
    return named("piece", piece);
}

int64_t performer_id(const char *name)
{
    return named("performer", name);
}

int64_t material_id(const char *name)
{
    return named("material", name);
}

const char *newest_entry(void)
{
    return bk_ask("SELECT sentence FROM daybook ORDER BY id DESC LIMIT 1");
}

void expect_undone(bk_store *store, const char *before)
{
    static const char moment[] = "2027-03-02T09:40:00+01:00";
    const char *after = bk_records();
    const char *sentence = NULL;
    ck_assert_str_ne(before, after);
    MUST(bk_daybook_undo(store, 0, moment, texts(), &sentence, &trouble));
    ck_assert_str_eq(bk_records(), before);
    MUST(bk_daybook_redo(store, moment, texts(), &sentence, &trouble));
    ck_assert_str_eq(bk_records(), after);
}
