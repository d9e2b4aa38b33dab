// How often an import asks whether it is to stop.

#include <string.h>

#include "bodkin/trade/words.h"
#include "work/show.h"

enum { ROWS_OF_EACH = 5000, ASKED_EVERY = 1024 };

/// What was told of one sheet.
typedef struct told_of {
    const char *sheet;
    int64_t last, largest_step;
    int times;
} told_of;

static bool listen(void *self, const char *what, int64_t done, int64_t all)
{
    told_of *told = self;
    ck_assert_int_le(done, all);
    if (done - told->last > told->largest_step)
        told->largest_step = done - told->last;
    told->last = done;
    told->times += strcmp(what, told->sheet) == 0;
    return true;
}

static void put_many_steps(bk_folder *folder)
{
    static bk_step steps[ROWS_OF_EACH];
    static bk_need needs[ROWS_OF_EACH];
    static bk_fitting fittings[ROWS_OF_EACH];
    static bk_costume costumes[ROWS_OF_EACH];
    static bk_away aways[ROWS_OF_EACH];
    const char *before = NULL;
    for (int i = 0; i < ROWS_OF_EACH; i++) {
        const char *key = bk_arena_print(texts(), "s%d", i);
        steps[i] = (bk_step)STEP("P1", "", BK_FIT, 10, before);
        steps[i].key = key;
        needs[i] = (bk_need)NEED("P1", key, "silk", TENTHS(1));
        fittings[i] = (bk_fitting)FITTING("P1", key, DAY(3, 1));
        costumes[i] = (bk_costume){.number = key, .role = "R", .title = "Coat", .due = BK_NO_DAY};
        aways[i] = (bk_away)AWAY("Nell", DAY(3, 1) + i, DAY(3, 1) + i, NULL);
        before = key;
    }
    put_rows(folder->arena, &folder->steps, steps, sizeof *steps, ROWS_OF_EACH);
    put_rows(folder->arena, &folder->needs, needs, sizeof *needs, ROWS_OF_EACH);
    put_rows(folder->arena, &folder->fittings, fittings, sizeof *fittings, ROWS_OF_EACH);
    put_rows(folder->arena, &folder->costumes, costumes, sizeof *costumes, ROWS_OF_EACH);
    put_rows(folder->arena, &folder->away, aways, sizeof *aways, ROWS_OF_EACH);
}

static bk_folder *long_show(void)
{
    bk_folder *folder = bare_show("The Long Road", DAY(6, 4));
    ROWS(folder, performers, bk_performer, PERFORMER("Nell", NULL, NULL));
    ROWS(folder, roles, bk_role, ROLE("R", "Nell", NULL));
    ROWS(folder, pieces, bk_piece, PIECE("P1", NULL, BK_STOCK));
    ROWS(folder, materials, bk_material, MATERIAL("silk", BK_METRE, BK_NO_AMOUNT));
    put_many_steps(folder);
    return folder;
}

START_TEST(a_stop_is_heard_within_a_thousand_rows_of_every_sheet)
{
    bk_store *store = open_store();
    bk_folder *folder = long_show();
    told_of told = {.sheet = "steps.csv"};
    bk_progress progress = {listen, &told};
    bk_import_options options = {.today = today(), .progress = &progress};
    bk_import_report report = {0};
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_import_folder(store, folder, &options, texts(), &report, &trouble));
    bk_store_change_drop(store);
    ck_assert_int_le(told.largest_step, ASKED_EVERY);
    // Once for the steps themselves, once more for what they come after.
    ck_assert_int_ge(told.times, 2 * (ROWS_OF_EACH / ASKED_EVERY));
    bk_folder_free(folder);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("import stops", a_stop_is_heard_within_a_thousand_rows_of_every_sheet)
