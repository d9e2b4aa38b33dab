#include "workroom.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/records_bench.h"
#include "bodkin/trade/words.h"

bk_error trouble;

bk_store *open_workroom_as(bk_as as)
{
    bk_store *store = NULL;
    bk_store_options options = {.path = bk_test_path("workroom.db"),
                                .as = as,
                                .who = "Ada",
                                .terminal = "tty1",
                                .create = as == BK_AS_MAKER};
    MUST(bk_store_open(&store, &options, &trouble));
    return store;
}

bk_store *open_workroom(void)
{
    return open_workroom_as(BK_AS_MAKER);
}

static int64_t add(bk_store *store, bk_family family, const void *record, int64_t position)
{
    int64_t id = 0;
    MUST(bk_store_add(store, family, record, position, &id, &trouble));
    return id;
}

static void add_performers(bk_store *store, record_ids *ids)
{
    ids->performer =
        add(store, BK_PERFORMERS,
            &(bk_performer){.name = "Zoë Marsh", .measures_good_for = 90, .note = "left-handed"}, 0);
    ids->other_performer =
        add(store, BK_PERFORMERS, &(bk_performer){.name = "Tam Okoro", .measures_good_for = BK_NOT_KNOWN}, 0);
    add(store, BK_CONTACTS, &(bk_private){.id = ids->performer, .text = "zoe@example.org"}, 0);
    ids->measure_name = add(store, BK_MEASURE_NAMES, &(bk_named){.name = "waist girth"}, 0);
    ids->sheet = add(store, BK_MEASURE_SHEETS,
                     &(bk_sheet_day){.performer_id = ids->performer, .taken_on = bk_day_of(2027, 1, 9)}, 0);
    add(store, BK_MEASURES,
        &(bk_measure){.sheet_id = ids->sheet,
                      .name_id = ids->measure_name,
                      .value = 712000,
                      .over = "a shirt",
                      .taken_by = "Ada"},
        7);
}

static void add_people(bk_store *store, record_ids *ids)
{
    bk_person person = {.name = "Ivo Lund",
                        .skills = "hand;press",
                        .hours = {"09:00-10:00", "09:00-11:00", "09:00-12:00", "09:00-13:00", "09:00-14:00",
                                  "09:00-15:00", "09:00-16:00"},
                        .from = bk_day_of(2027, 1, 1),
                        .until = bk_day_of(2027, 6, 30),
                        .note = "own iron"};
    ids->person = add(store, BK_PEOPLE, &person, 0);
    ids->away = add(store, BK_AWAYS,
                    &(bk_away){.person_id = ids->person,
                               .performer_id = ids->performer,
                               .from = bk_day_of(2027, 2, 1),
                               .to = bk_day_of(2027, 2, 3),
                               .reason = "a wedding"},
                    0);
}

static void add_materials(bk_store *store, record_ids *ids)
{
    ids->material = add(store, BK_MATERIALS,
                        &(bk_material){.name = "wool flannel",
                                       .unit = BK_YARD,
                                       .width = 1500000,
                                       .supplier = "the mill",
                                       .note = "grey"},
                        0);
    add(store, BK_PRICES, &(bk_private){.id = ids->material, .amount = 1850, .currency = "GBP"}, 0);
    ids->order = add(store, BK_ORDERS,
                     &(bk_order){.material_id = ids->material,
                                 .quantity = 3000000,
                                 .ordered_on = bk_day_of(2027, 2, 10),
                                 .due_on = bk_day_of(2027, 3, 9),
                                 .arrived_on = bk_day_of(2027, 3, 8),
                                 .from = "the other mill"},
                     0);
    add(store, BK_ORDER_COSTS, &(bk_private){.id = ids->order, .amount = 5550, .currency = "EUR"}, 0);
}

static void add_production(bk_store *store, record_ids *ids)
{
    ids->production = add(store, BK_PRODUCTIONS,
                          &(bk_production){.name = "The Salt Road",
                                           .opens = bk_day_of(2027, 4, 1),
                                           .currency = "NOK",
                                           .unit = BK_INCH,
                                           .measures_good_for = 120,
                                           .put_away_on = bk_day_of(2027, 5, 1)},
                          0);
    ids->date = add(store, BK_DATES,
                    &(bk_date){.production_id = ids->production,
                               .what = BK_ON_PARADE,
                               .on = bk_day_of(2027, 3, 20),
                               .at = 14 * 60 + 30,
                               .note = "on stage"},
                    0);
    add(store, BK_COMPANY, &(bk_link){.from_id = ids->production, .to_id = ids->performer}, 2);
    add(store, BK_COMPANY, &(bk_link){.from_id = ids->production, .to_id = ids->other_performer}, 1);
    ids->role = add(store, BK_ROLES,
                    &(bk_role){.production_id = ids->production,
                               .performer_id = ids->performer,
                               .name = "The Widow",
                               .note = "recast"},
                    3);
    add(store, BK_COVERS, &(bk_link){.from_id = ids->role, .to_id = ids->other_performer}, 4);
}

static void add_garments(bk_store *store, record_ids *ids)
{
    ids->costume = add(store, BK_COSTUMES,
                       &(bk_costume){.production_id = ids->production,
                                     .role_id = ids->role,
                                     .number = "1A",
                                     .title = "mourning",
                                     .due = bk_day_of(2027, 3, 19),
                                     .note = "rain in act two"},
                       5);
    ids->piece = add(store, BK_PIECES,
                     &(bk_piece){.production_id = ids->production,
                                 .name = "1A-1",
                                 .title = "bodice",
                                 .origin = BK_ALTER,
                                 .place = "rail two",
                                 .out_with = "Ivo Lund",
                                 .out_since = bk_day_of(2027, 2, 20),
                                 .back_by = bk_day_of(2027, 2, 27),
                                 .from = "the store room",
                                 .due_back = bk_day_of(2027, 5, 2),
                                 .returned_on = bk_day_of(2027, 5, 3),
                                 .note = "mind the lace"},
                     6);
    add(store, BK_PIECE_COSTS, &(bk_private){.id = ids->piece, .amount = 99, .currency = "SEK"}, 0);
    add(store, BK_PIECE_COSTUMES, &(bk_link){.from_id = ids->piece, .to_id = ids->costume}, 8);
}

static bk_step a_step(const record_ids *ids, const char *key, bk_kind kind)
{
    return (bk_step){.production_id = ids->production,
                     .piece_id = ids->piece,
                     .key = key,
                     .title = "fit the bodice",
                     .kind = (int)kind,
                     .minutes = 45,
                     .quickest = 30,
                     .longest = 60,
                     .hands = 2,
                     .level = 3,
                     .rest_minutes = 240,
                     .can_wait = 1,
                     .measures = "waist girth",
                     .note = "with the corset",
                     .done_on = bk_day_of(2027, 2, 28),
                     .done_by = "Ada",
                     .took = 50};
}

static void add_steps(bk_store *store, record_ids *ids)
{
    bk_step first = a_step(ids, "cut", BK_CUT);
    bk_step second = a_step(ids, "fit", BK_FIT);
    ids->first_step = add(store, BK_STEPS, &first, 9);
    ids->second_step = add(store, BK_STEPS, &second, 10);
    add(store, BK_STEP_AFTERS, &(bk_link){.from_id = ids->second_step, .to_id = ids->first_step}, 11);
    ids->need =
        add(store, BK_NEEDS,
            &(bk_need){.step_id = ids->first_step, .material_id = ids->material, .quantity = 2400000}, 12);
    ids->fitting = add(store, BK_FITTINGS,
                       &(bk_fitting){.production_id = ids->production,
                                     .step_id = ids->second_step,
                                     .performer_id = ids->other_performer,
                                     .booked_at = {bk_day_of(2027, 3, 1), 10 * 60},
                                     .minutes = 20,
                                     .held_on = bk_day_of(2027, 3, 2),
                                     .outcome = BK_AGAIN,
                                     .note = "hem up"},
                       13);
    ids->movement = add(store, BK_MOVEMENTS,
                        &(bk_movement){.material_id = ids->material,
                                       .kind = BK_MOVED_DELIVERY,
                                       .quantity = 3000000,
                                       .moved_on = bk_day_of(2027, 3, 8),
                                       .order_id = ids->order,
                                       .step_id = ids->first_step,
                                       .note = "two parcels"},
                        0);
}

record_ids add_one_of_each_of_version_one(bk_store *store)
{
    record_ids ids = {0};
    add_performers(store, &ids);
    add_people(store, &ids);
    add_materials(store, &ids);
    add_production(store, &ids);
    add_garments(store, &ids);
    add_steps(store, &ids);
    return ids;
}

static void add_work(bk_store *store, record_ids *ids)
{
    ids->work = add(store, BK_WORKS,
                    &(bk_work){.name = "bodice with bones", .note = "closed at the back", .ready = 0}, 14);
    ids->work_step = add(store, BK_WORK_STEPS,
                         &(bk_work_step){.work_id = ids->work,
                                         .key = "bones",
                                         .title = "bone the bodice",
                                         .kind = BK_CRAFT,
                                         .minutes = 90,
                                         .quickest = 60,
                                         .longest = 150,
                                         .after = "channels;fit",
                                         .hands = 2,
                                         .level = 3,
                                         .rest_minutes = 10,
                                         .can_wait = 1,
                                         .measures = "waist girth",
                                         .note = "tips rounded"},
                         15);
}

static void add_bench(bk_store *store, record_ids *ids)
{
    ids->note = add(store, BK_NOTES,
                    &(bk_note){.production_id = ids->production,
                               .costume_id = ids->costume,
                               .piece_id = ids->piece,
                               .step_id = ids->second_step,
                               .noted_on = bk_day_of(2027, 3, 21),
                               .source = BK_FROM_PARADE,
                               .who = "the director",
                               .what = "sleeve pulls",
                               .done_on = bk_day_of(2027, 3, 22)},
                    16);
    ids->running =
        add(store, BK_RUNNINGS,
            &(bk_running){
                .step_id = ids->second_step, .who = "Ivo Lund", .started_at = "2027-03-02T10:00:00+01:00"},
            0);
    ids->setting = add(store, BK_SETTINGS, &(bk_setting){.name = "marked change", .value = "3 %"}, 0);
}

record_ids add_one_of_each_of_version_three(bk_store *store)
{
    record_ids ids = add_one_of_each_of_version_one(store);
    add_work(store, &ids);
    add_bench(store, &ids);
    return ids;
}

record_ids add_one_of_each(bk_store *store)
{
    record_ids ids = add_one_of_each_of_version_three(store);
    ids.equipment = add(store, BK_EQUIPMENT,
                        &(bk_equipment){.name = "machine", .kinds = "machine;craft", .count = 2}, 17);
    return ids;
}

void clear_works(bk_store *store)
{
    run_sql(store,
            "DELETE FROM work_step; DELETE FROM work; DELETE FROM sqlite_sequence WHERE name LIKE 'work%'");
}

int64_t import_one_of_each(bk_store *store, record_ids *ids)
{
    int64_t entry = 0;
    MUST(bk_store_change_begin(store, &trouble));
    *ids = add_one_of_each(store);
    MUST(bk_store_change_commit(store, MADE_AT, "Imported The Salt Road.", &entry, &trouble));
    return entry;
}

void run_sql(bk_store *store, const char *sql)
{
    MUST(bk_db_script(store->db, sql, NULL, NULL, &trouble));
}

static void take_number(void *context, int columns, const char *const *values)
{
    (void)columns;
    *(int64_t *)context = values[0] == NULL ? 0 : strtoll(values[0], NULL, 10);
}

int64_t ask_number(bk_store *store, const char *sql)
{
    int64_t number = -1;
    MUST(bk_db_script(store->db, sql, take_number, &number, &trouble));
    return number;
}

// -------------------------------------------------------------------------------------------------- dumping

static void take_line(void *context, int columns, const char *const *values)
{
    bk_buffer *text = context;
    for (int i = 0; i < columns; i++)
        bk_buffer_print(text, "%s%s", i == 0 ? "" : "|", values[i] == NULL ? "-" : values[i]);
    bk_buffer_char(text, '\n');
}

const char *ask_lines(bk_store *store, const char *sql, bk_arena *arena)
{
    bk_buffer text = {0};
    bk_buffer_text(&text, "");
    MUST(bk_db_script(store->db, sql, take_line, &text, &trouble));
    const char *result = bk_arena_bytes(arena, text.bytes, text.length);
    bk_buffer_free(&text);
    return result;
}

typedef struct table_names {
    char *names[64];
    int count;
} table_names;

static void take_table(void *context, int columns, const char *const *values)
{
    (void)columns;
    table_names *tables = context;
    tables->names[tables->count++] = strdup(values[0]);
}

const char *dump(bk_store *store, bk_arena *arena)
{
    table_names tables = {.count = 0};
    bk_buffer text = {0};
    MUST(bk_db_script(store->db,
                      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' "
                      "AND name NOT LIKE 'daybook%' ORDER BY name",
                      take_table, &tables, &trouble));
    for (int i = 0; i < tables.count; i++) {
        char sql[128];
        snprintf(sql, sizeof sql, "SELECT * FROM %s ORDER BY 1, 2", tables.names[i]);
        bk_buffer_print(&text, "%s:\n", tables.names[i]);
        MUST(bk_db_script(store->db, sql, take_line, &text, &trouble));
        free(tables.names[i]);
    }
    const char *result = bk_arena_text(arena, text.bytes);
    bk_buffer_free(&text);
    return result;
}
