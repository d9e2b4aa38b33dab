#include "work/show.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"

bk_error trouble;

static const char made_at[] = "2027-03-02T09:30:00+01:00";

bk_arena *texts(void)
{
    static bk_arena *arena;
    if (arena == NULL)
        arena = bk_arena_new();
    return arena;
}

bk_day today(void)
{
    return DAY(3, 2);
}

bk_store *open_store_named(const char *name)
{
    bk_store *store = NULL;
    bk_store_options options = {
        .path = bk_test_path(name), .as = BK_AS_MAKER, .who = "Ada", .terminal = "tty1", .create = true};
    MUST(bk_store_open(&store, &options, &trouble));
    return store;
}

bk_store *open_store(void)
{
    return open_store_named("workroom.db");
}

int64_t take_in(bk_store *store, const bk_folder *folder, bool replace, bk_import_report *report)
{
    int64_t entry = 0;
    bk_import_report own = {0};
    bk_import_report *told = report != NULL ? report : &own;
    bk_import_options options = {.replace = replace, .today = today()};
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_import_folder(store, folder, &options, texts(), told, &trouble));
    MUST(bk_store_change_commit(store, made_at, told->sentence, &entry, &trouble));
    return entry;
}

const char *notes_of(const bk_import_report *report)
{
    const char *all = "";
    for (size_t i = 0; i < report->replaced_count; i++)
        all = bk_arena_print(texts(), "%s%s\n", all, report->replaced[i]);
    return all;
}

void put_rows(bk_arena *arena, void *rows, const void *items, size_t size, size_t count)
{
    bk_rows put = {bk_arena_take(arena, size * count), count};
    if (count > 0)
        memcpy(put.items, items, size * count);
    memcpy(rows, &put, sizeof put);
}

bk_folder *bare_show(const char *name, bk_day opens)
{
    bk_folder *folder = bk_folder_new();
    ROWS(folder, production, bk_production,
         {.name = name,
          .opens = opens,
          .unit = BK_NO_WORD,
          .measures_good_for = BK_NOT_KNOWN,
          .put_away_on = BK_NO_DAY,
          .sheets = BK_NOT_KNOWN});
    return folder;
}

static void put_company(bk_folder *folder)
{
    ROWS(folder, people, bk_person, PERSON("Zoë Ngô", "hand"),
         {.name = "Ada Pell",
          .skills = "cut;machine",
          .hours = {"10:00-13:00", NULL, NULL, NULL, NULL, NULL, "10:00-12:00"},
          .from = DAY(2, 1),
          .until = DAY(6, 4),
          .note = "knows wool"});
    ROWS(folder, performers, bk_performer, PERFORMER("Tomas Lind", NULL, NULL),
         {.name = "Ines Varga", .contact = "ines@stage.example", .measures_good_for = 60, .note = "no wool"},
         PERFORMER("Zoë Ngô", NULL, "a short run"));
    ROWS(folder, away, bk_away, AWAY("Zoë Ngô", DAY(4, 1), DAY(4, 3), "a wedding"),
         AWAY("Ada Pell", DAY(3, 1), DAY(3, 7), NULL),
         AWAY("Ines Varga", DAY(3, 9), DAY(3, 9), "a \"sitting\""));
    ROWS(folder, equipment, bk_equipment, {.name = "machine", .kinds = "machine", .count = 2},
         {.name = "cutting table", .kinds = "draft;cut", .count = BK_NOT_KNOWN});
    ROWS(folder, measures, bk_measure,
         {.performer = "Ines Varga",
          .taken_on = DAY(2, 3),
          .name = "waist girth",
          .value = 713000,
          .over = "a shirt",
          .taken_by = "Ada Pell"},
         MEASURE("Ines Varga", DAY(2, 3), "hip girth", 986000),
         MEASURE("Ines Varga", DAY(2, 10), "waist girth", 715000));
}

static void put_garments(bk_folder *folder)
{
    ROWS(folder, roles, bk_role, ROLE("The Miller", "Ines Varga", "Zoë Ngô;Tomas Lind"),
         ROLE("The Boy", NULL, NULL));
    ROWS(folder, costumes, bk_costume, COSTUME("10A", "The Miller", BK_NO_DAY),
         COSTUME("2B", "The Miller", DAY(5, 28)), COSTUME("2A", "The Boy", BK_NO_DAY));
    ROWS(folder, pieces, bk_piece,
         {.name = "P2",
          .costumes = "2B;10A",
          .title = "Bodice, \"grey\"\nlined",
          .origin = BK_MAKE,
          .place = "rail 2",
          .out_since = BK_NO_DAY,
          .back_by = BK_NO_DAY,
          .cost = 1250,
          .currency = "GBP",
          .due_back = BK_NO_DAY,
          .returned_on = BK_NO_DAY,
          .note = "=SUM(A1:A9)"},
         {.name = "P1",
          .costumes = "10A",
          .title = "Cloak",
          .origin = BK_HIRE,
          .out_with = "Tomas Lind",
          .out_since = DAY(2, 20),
          .back_by = DAY(2, 27),
          .from = "the town theatre",
          .cost = 4400,
          .currency = "EUR",
          .due_back = DAY(7, 1),
          .returned_on = DAY(6, 30)},
         PIECE("P3", "2A", BK_NO_WORD));
}

static void put_steps(bk_folder *folder)
{
    ROWS(folder, steps, bk_step, STEP("P2", "sew", BK_MACHINE, 120, "cut"),
         {.piece = "P2",
          .key = "cut",
          .title = "Cut it",
          .kind = BK_CUT,
          .minutes = 75,
          .quickest = 60,
          .longest = 90,
          .hands = 2,
          .level = 3,
          .rest_minutes = 30,
          .can_wait = 1,
          .measures = "waist girth;hip girth",
          .note = "mind the nap",
          .done_on = DAY(2, 28),
          .done_by = "Ada Pell",
          .took = 80},
         STEP("P2", "fit", BK_FIT, 40, "P1/press;sew"), STEP("P1", "press", BK_PRESS, 15, NULL));
    ROWS(folder, fittings, bk_fitting,
         {.piece = "P2",
          .step = "fit",
          .performer = "Tomas Lind",
          .booked_at = {DAY(3, 12), 14 * 60 + 30},
          .minutes = 20,
          .held_on = DAY(3, 12),
          .outcome = BK_AGAIN,
          .note = "let out the sides"},
         FITTING("P2", "fit", DAY(3, 5)));
}

static void put_materials(bk_folder *folder)
{
    ROWS(folder, materials, bk_material, MATERIAL("wool", BK_METRE, TENTHS(10)),
         {.name = "linen",
          .unit = BK_YARD,
          .on_hand = TENTHS(25),
          .width = 1500000,
          .supplier = "the mill",
          .price = 890,
          .currency = "GBP",
          .note = "wash first"},
         MATERIAL("hooks", BK_EACH, BK_NO_AMOUNT));
    ROWS(folder, needs, bk_need, NEED("P2", "sew", "wool", TENTHS(24)),
         NEED("P2", "cut", "linen", TENTHS(12)), NEED("P2", "sew", "hooks", TENTHS(120)));
    ROWS(folder, orders, bk_order, ORDER("wool", TENTHS(30), DAY(2, 10), DAY(3, 9), BK_NO_DAY),
         {.material = "linen",
          .quantity = TENTHS(50),
          .ordered_on = DAY(2, 10),
          .due_on = DAY(2, 24),
          .arrived_on = DAY(2, 23),
          .from = "the mill",
          .cost = 5200,
          .currency = "JPY"},
         ORDER("wool", TENTHS(30), DAY(2, 10), DAY(3, 16), BK_NO_DAY));
}

static void put_works_and_notes(bk_folder *folder)
{
    ROWS(folder, works, bk_work, {.name = "Smock", .note = "as for the harvest play"},
         {.name = "Neck cloth"});
    // The steps of the second order of work stand among those of the first.
    ROWS(folder, work_steps, bk_work_step, WORK_STEP("Smock", "sew", BK_MACHINE, 120, "cut"),
         WORK_STEP("Neck cloth", "hem", BK_HAND, 30, NULL),
         {.work = "Smock",
          .key = "cut",
          .title = "Cut the drill",
          .kind = BK_CUT,
          .minutes = 45,
          .quickest = 30,
          .longest = 90,
          .hands = 2,
          .level = 3,
          .rest_minutes = 30,
          .can_wait = 1,
          .measures = "waist girth;nape to waist",
          .note = "mind the nap"});
    ROWS(folder, notes, bk_note, NOTE(DAY(3, 5), "10A", "too new for a miller"),
         {.noted_on = DAY(3, 4),
          .source = BK_FROM_REHEARSAL,
          .who = "the director",
          .costume = "2B",
          .piece = "P2",
          .step = "sew",
          .what = "cuffs catch on the basket",
          .done_on = DAY(3, 5)},
         NOTE(DAY(3, 4), NULL, "flour on everything"));
}

bk_folder *salt_road(void)
{
    bk_folder *folder = bk_folder_new();
    ROWS(folder, production, bk_production,
         {.name = "The Salt Road",
          .opens = DAY(6, 4),
          .currency = "GBP",
          .unit = BK_CM,
          .measures_good_for = 120,
          .put_away_on = BK_NO_DAY,
          .sheets = 1});
    ROWS(folder, dates, bk_date,
         {.what = BK_ON_PARADE, .on = DAY(5, 30), .at = 18 * 60, .note = "small hall"},
         DATE(BK_ON_DRESS, DAY(6, 2)), DATE(BK_ON_MEASURING, DAY(2, 3)));
    put_company(folder);
    put_garments(folder);
    put_steps(folder);
    put_materials(folder);
    put_works_and_notes(folder);
    return folder;
}
