#include <stdio.h>
#include <string.h>

#include "bodkin/trade/words.h"
#include "workroom.h"

START_TEST(what_is_not_known_stays_not_known)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    import_one_of_each(store, &ids);
    run_sql(store, "UPDATE piece SET origin = NULL, out_since = NULL, note = NULL;"
                   "UPDATE fitting SET performer_id = NULL, minutes = NULL, held_on = NULL, outcome = NULL;"
                   "UPDATE show_date SET at_time = NULL; DELETE FROM movement");
    MUST(bk_store_read(store, BK_PIECES, ids.production, arena, &rows, &trouble));
    const bk_piece *piece = rows.items;
    ck_assert_int_eq(piece->origin, BK_NO_WORD);
    ck_assert_int_eq(piece->out_since, BK_NO_DAY);
    ck_assert_ptr_null(piece->note);
    ck_assert_int_eq(piece->cost, BK_NO_AMOUNT);
    MUST(bk_store_read(store, BK_FITTINGS, ids.production, arena, &rows, &trouble));
    const bk_fitting *fitting = rows.items;
    ck_assert_int_eq(fitting->performer_id, 0);
    ck_assert_int_eq(fitting->minutes, BK_NOT_KNOWN);
    ck_assert_int_eq(fitting->held_on, BK_NO_DAY);
    ck_assert_int_eq(fitting->outcome, BK_NO_WORD);
    MUST(bk_store_read(store, BK_DATES, ids.production, arena, &rows, &trouble));
    ck_assert_int_eq(((bk_date *)rows.items)->at, BK_NO_TIME);
    MUST(bk_store_read(store, BK_MATERIALS, 0, arena, &rows, &trouble));
    ck_assert_int_eq(((bk_material *)rows.items)->on_hand, BK_NO_AMOUNT);
    ck_assert_int_eq(((bk_material *)rows.items)->price, BK_NO_AMOUNT);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(a_bare_day_of_a_fitting_stays_bare)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    import_one_of_each(store, &ids);
    bk_fitting fitting = {.production_id = ids.production,
                          .step_id = ids.second_step,
                          .booked_at = {bk_day_of(2027, 3, 9), BK_NO_TIME},
                          .minutes = BK_NOT_KNOWN,
                          .held_on = BK_NO_DAY,
                          .outcome = BK_NO_WORD};
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_FITTINGS, &fitting, 14, NULL, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Booked.", NULL, &trouble));
    MUST(bk_store_read(store, BK_FITTINGS, ids.production, arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 2);
    ck_assert_int_eq(((bk_fitting *)rows.items)[1].booked_at.day, bk_day_of(2027, 3, 9));
    ck_assert_int_eq(((bk_fitting *)rows.items)[1].booked_at.time, BK_NO_TIME);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(a_date_without_its_time_stays_so)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    import_one_of_each(store, &ids);
    bk_date date = {.production_id = ids.production, .what = BK_ON_TECH, .on = 20000, .at = BK_NO_TIME};
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_DATES, &date, 0, NULL, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Dated.", NULL, &trouble));
    ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM show_date WHERE at_time IS NULL"), 1);
    MUST(bk_store_read(store, BK_DATES, ids.production, arena, &rows, &trouble));
    ck_assert_int_eq(((bk_date *)rows.items)[1].at, BK_NO_TIME);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(the_shelf_is_the_sum_of_its_movements)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    import_one_of_each(store, &ids);
    bk_movement use = {.material_id = ids.material,
                       .kind = BK_MOVED_USE,
                       .quantity = -3500000,
                       .moved_on = bk_day_of(2027, 3, 10)};
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_MOVEMENTS, &use, 0, NULL, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Cut.", NULL, &trouble));
    MUST(bk_store_read(store, BK_MATERIALS, 0, arena, &rows, &trouble));
    ck_assert_int_eq(((bk_material *)rows.items)->on_hand, -500000);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(an_absence_tells_whose_it_is)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    import_one_of_each(store, &ids);
    MUST(bk_store_read(store, BK_AWAYS, 0, arena, &rows, &trouble));
    ck_assert_str_eq(((bk_away *)rows.items)->who, "Ivo Lund");
    run_sql(store, "UPDATE away SET person_id = NULL");
    MUST(bk_store_read(store, BK_AWAYS, 0, arena, &rows, &trouble));
    ck_assert_str_eq(((bk_away *)rows.items)->who, "Zoë Marsh");
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(a_word_that_is_none_is_told)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    import_one_of_each(store, &ids);
    run_sql(store, "UPDATE step SET kind = 'glue' WHERE id = 2");
    REFUSED(bk_store_read(store, BK_STEPS, ids.production, arena, &rows, &trouble), BK_STORE,
            "The step number 2 in the workroom has a kind of step that is none.");
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(a_day_that_is_none_is_told)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    import_one_of_each(store, &ids);
    run_sql(store, "UPDATE production SET opens = '2027-02-30'");
    REFUSED(bk_store_read(store, BK_PRODUCTIONS, 0, arena, &rows, &trouble), BK_STORE,
            "The production number 1 in the workroom has a day or time that is none.");
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

// Adds a sheet with two measures, the second of them first in the sheet.
static void add_sheet(bk_store *store, int64_t performer, bk_day taken_on, int64_t first_name,
                      int64_t second_name)
{
    int64_t sheet = 0;
    MUST(bk_store_add(store, BK_MEASURE_SHEETS,
                      &(bk_sheet_day){.performer_id = performer, .taken_on = taken_on}, 0, &sheet, &trouble));
    bk_measure measure = {.sheet_id = sheet, .name_id = second_name, .value = 400000, .over = "a shirt"};
    MUST(bk_store_add(store, BK_MEASURES, &measure, 1, NULL, &trouble));
    measure.name_id = first_name;
    MUST(bk_store_add(store, BK_MEASURES, &measure, 2, NULL, &trouble));
}

START_TEST(measures_come_by_company_then_day_then_sheet)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    int64_t name = 0;
    import_one_of_each(store, &ids);
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_MEASURE_NAMES, &(bk_named){.name = "hip girth"}, 0, &name, &trouble));
    add_sheet(store, ids.performer, bk_day_of(2026, 1, 9), ids.measure_name, name);
    add_sheet(store, ids.other_performer, bk_day_of(2027, 2, 9), ids.measure_name, name);
    MUST(bk_store_change_commit(store, MADE_AT, "Measured.", NULL, &trouble));
    MUST(bk_store_read(store, BK_MEASURES, ids.production, arena, &rows, &trouble));
    static const struct {
        const char *day, *name;
        int64_t performer, position;
    } expected[] = {{"2027-02-09", "hip girth", 2, 1},
                    {"2027-02-09", "waist girth", 2, 2},
                    {"2026-01-09", "hip girth", 1, 1},
                    {"2026-01-09", "waist girth", 1, 2},
                    {"2027-01-09", "waist girth", 1, 7}};
    ck_assert_uint_eq(rows.count, 5);
    const bk_measure *measure = rows.items;
    for (int i = 0; i < 5; i++) {
        char day[BK_DAY_ROOM];
        ck_assert_str_eq(bk_day_write(measure[i].taken_on, day), expected[i].day);
        ck_assert_str_eq(measure[i].name, expected[i].name);
        ck_assert_int_eq(measure[i].performer_id, expected[i].performer);
        ck_assert_int_eq(measure[i].position, expected[i].position);
    }
    ck_assert_ptr_eq(measure[0].name, measure[2].name); // kept once
    MUST(bk_store_read(store, BK_MEASURES_OF_SHEET, ids.sheet, arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 1);
    ck_assert_str_eq(((bk_measure *)rows.items)->name, "waist girth");
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(many_measures_added_in_one_go_all_arrive)
{
    enum { MANY = 23 };
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_measure measures[MANY];
    bk_rows rows;
    record_ids ids;
    int64_t sheet = 0;
    import_one_of_each(store, &ids);
    bk_sheet_day day = {.performer_id = ids.performer, .taken_on = 20000};
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_MEASURE_SHEETS, &day, 0, &sheet, &trouble));
    for (int i = 0; i < MANY; i++) {
        char text[32];
        snprintf(text, sizeof text, "girth %d", i);
        bk_named name = {.name = text};
        measures[i] = (bk_measure){.sheet_id = sheet, .value = 1000 + i, .position = MANY - i};
        MUST(bk_store_add(store, BK_MEASURE_NAMES, &name, 0, &measures[i].name_id, &trouble));
    }
    MUST(bk_store_add_measures(store, measures, MANY, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Measured.", NULL, &trouble));
    MUST(bk_store_read(store, BK_MEASURES_OF_SHEET, sheet, arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, MANY);
    for (int i = 0; i < MANY; i++) {
        ck_assert_int_eq(((bk_measure *)rows.items)[i].position, i + 1);
        ck_assert_int_eq(((bk_measure *)rows.items)[i].value, 1000 + MANY - 1 - i);
    }
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(the_rail_gets_of_a_step_what_it_asks_for)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows whole;
    bk_rows lean;
    record_ids ids;
    import_one_of_each(store, &ids);
    MUST(bk_store_read(store, BK_STEPS, ids.production, arena, &whole, &trouble));
    MUST(bk_store_read(store, BK_RAIL_STEPS, ids.production, arena, &lean, &trouble));
    ck_assert_uint_eq(lean.count, 2);
    const bk_step *step = lean.items;
    const bk_step *same = whole.items;
    for (int i = 0; i < 2; i++) {
        ck_assert_int_eq(step[i].id, same[i].id);
        ck_assert_int_eq(step[i].piece_id, same[i].piece_id);
        ck_assert_str_eq(step[i].key, same[i].key);
        ck_assert_str_eq(step[i].title, same[i].title);
        ck_assert_int_eq(step[i].kind, same[i].kind);
        ck_assert_int_eq(step[i].minutes, same[i].minutes);
        ck_assert_int_eq(step[i].can_wait, same[i].can_wait);
        ck_assert_str_eq(step[i].measures, same[i].measures);
        ck_assert_int_eq(step[i].done_on, same[i].done_on);
        ck_assert_int_eq(step[i].took, BK_NOT_KNOWN);
    }
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(the_company_comes_in_its_own_order)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    import_one_of_each(store, &ids);
    MUST(bk_store_read(store, BK_COMPANY_PERFORMERS, ids.production, arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 2);
    ck_assert_str_eq(((bk_performer *)rows.items)[0].name, "Tam Okoro");
    ck_assert_str_eq(((bk_performer *)rows.items)[1].name, "Zoë Marsh");
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(a_list_longer_than_any_guess_is_read_whole)
{
    enum { MANY = 3000 };
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    MUST(bk_store_change_begin(store, &trouble));
    for (int i = 0; i < MANY; i++) {
        char name[32];
        snprintf(name, sizeof name, "ribbon %d", i);
        bk_material ribbon = {.name = name, .unit = BK_METRE, .width = i};
        MUST(bk_store_add(store, BK_MATERIALS, &ribbon, 0, NULL, &trouble));
    }
    MUST(bk_store_change_commit(store, MADE_AT, "Ribbons.", NULL, &trouble));
    MUST(bk_store_read(store, BK_MATERIALS, 0, arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, MANY);
    const bk_material *ribbon = rows.items;
    for (int i = 0; i < MANY; i++)
        ck_assert_int_eq(ribbon[i].width, i);
    ck_assert_str_eq(ribbon[MANY - 1].name, "ribbon 2999");
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("reading", what_is_not_known_stays_not_known, a_bare_day_of_a_fitting_stays_bare,
             a_date_without_its_time_stays_so, the_shelf_is_the_sum_of_its_movements,
             an_absence_tells_whose_it_is, a_word_that_is_none_is_told, a_day_that_is_none_is_told,
             measures_come_by_company_then_day_then_sheet, many_measures_added_in_one_go_all_arrive,
             the_rail_gets_of_a_step_what_it_asks_for, the_company_comes_in_its_own_order,
             a_list_longer_than_any_guess_is_read_whole)
