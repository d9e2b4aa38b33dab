#include "bodkin/store/rail_rows.h"

#include <stdio.h>
#include <string.h>

#include "bodkin/trade/words.h"
#include "workroom.h"

// A production with one costume, one piece and one step that needs cloth.
typedef struct small_show {
    int64_t production, costume, piece, step;
} small_show;

static int64_t add(bk_store *store, bk_family family, const void *record, int64_t position)
{
    int64_t id = 0;
    MUST(bk_store_add(store, family, record, position, &id, &trouble));
    return id;
}

static small_show add_show(bk_store *store, const char *name, bk_day put_away_on, int64_t material)
{
    small_show show;
    show.production = add(store, BK_PRODUCTIONS,
                          &(bk_production){.name = name,
                                           .opens = bk_day_of(2027, 4, 1),
                                           .unit = BK_NO_WORD,
                                           .measures_good_for = BK_NOT_KNOWN,
                                           .put_away_on = put_away_on},
                          0);
    int64_t role = add(store, BK_ROLES, &(bk_role){.production_id = show.production, .name = "Maid"}, 1);
    show.costume = add(store, BK_COSTUMES,
                       &(bk_costume){.production_id = show.production,
                                     .role_id = role,
                                     .number = "1A",
                                     .title = "apron",
                                     .due = bk_day_of(2027, 3, 30)},
                       1);
    show.piece = add(store, BK_PIECES,
                     &(bk_piece){.production_id = show.production,
                                 .name = "1A-1",
                                 .title = "apron",
                                 .origin = BK_NO_WORD,
                                 .out_since = BK_NO_DAY,
                                 .back_by = BK_NO_DAY,
                                 .due_back = BK_NO_DAY,
                                 .returned_on = BK_NO_DAY},
                     1);
    add(store, BK_PIECE_COSTUMES, &(bk_link){.from_id = show.piece, .to_id = show.costume}, 1);
    show.step = add(store, BK_STEPS,
                    &(bk_step){.production_id = show.production,
                               .piece_id = show.piece,
                               .key = "cut",
                               .title = "cut",
                               .kind = BK_CUT,
                               .minutes = 30,
                               .done_on = BK_NO_DAY},
                    5);
    add(store, BK_NEEDS, &(bk_need){.step_id = show.step, .material_id = material, .quantity = 1500000}, 6);
    return show;
}

static int64_t add_cloth(bk_store *store, const char *name)
{
    return add(store, BK_MATERIALS, &(bk_material){.name = name, .unit = BK_METRE, .width = BK_NO_AMOUNT}, 0);
}

typedef struct workroom {
    bk_store *store;
    bk_arena *arena;
    int64_t cloth, other_cloth;
    small_show mine, yours, old;
} workroom;

// Three productions that need the same cloth: mine, another in work, and one put away.
static workroom open_three(void)
{
    workroom room = {.store = open_workroom(), .arena = bk_arena_new()};
    MUST(bk_store_change_begin(room.store, &trouble));
    room.cloth = add_cloth(room.store, "calico");
    room.other_cloth = add_cloth(room.store, "velvet");
    room.mine = add_show(room.store, "Mine", BK_NO_DAY, room.cloth);
    room.yours = add_show(room.store, "Yours", BK_NO_DAY, room.cloth);
    room.old = add_show(room.store, "Old", bk_day_of(2027, 1, 1), room.cloth);
    MUST(bk_store_change_commit(room.store, MADE_AT, "Three.", NULL, &trouble));
    return room;
}

static void leave(workroom *room)
{
    bk_arena_free(room->arena);
    bk_store_close(room->store);
}

START_TEST(others_claim_what_their_open_steps_need)
{
    workroom room = open_three();
    bk_rows rows;
    MUST(bk_store_other_claims(room.store, room.mine.production, room.arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 1);
    const bk_other_claim *claim = rows.items;
    ck_assert_int_eq(claim->production_id, room.yours.production);
    ck_assert_int_eq(claim->piece_id, room.yours.piece);
    ck_assert_int_eq(claim->step_id, room.yours.step);
    ck_assert_int_eq(claim->material_id, room.cloth);
    ck_assert_int_eq(claim->step_position, 5);
    ck_assert_int_eq(claim->need_position, 6);
    ck_assert_int_eq(claim->quantity, 1500000);
    leave(&room);
}
END_TEST

static void expect_no_claims(workroom *room)
{
    bk_rows rows;
    MUST(bk_store_other_claims(room->store, room->mine.production, room->arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 0);
    MUST(bk_store_other_pieces(room->store, room->mine.production, room->arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 0);
}

START_TEST(a_done_step_claims_nothing)
{
    workroom room = open_three();
    run_sql(room.store, "UPDATE step SET done_on = '2027-03-01'");
    expect_no_claims(&room);
    leave(&room);
}
END_TEST

static void fit(workroom *room, int64_t step, bk_outcome outcome)
{
    MUST(bk_store_change_begin(room->store, &trouble));
    add(room->store, BK_FITTINGS,
        &(bk_fitting){.production_id = room->yours.production,
                      .step_id = step,
                      .booked_at = {bk_day_of(2027, 3, 1), BK_NO_TIME},
                      .minutes = BK_NOT_KNOWN,
                      .held_on = BK_NO_DAY,
                      .outcome = (int)outcome},
        1);
    MUST(bk_store_change_commit(room->store, MADE_AT, "Fitted.", NULL, &trouble));
}

START_TEST(a_step_that_was_fitted_well_claims_nothing)
{
    workroom room = open_three();
    bk_rows rows;
    fit(&room, room.yours.step, BK_AGAIN);
    MUST(bk_store_other_claims(room.store, room.mine.production, room.arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 1);
    fit(&room, room.yours.step, BK_FITS);
    expect_no_claims(&room);
    leave(&room);
}
END_TEST

START_TEST(a_piece_of_others_comes_with_each_of_its_costumes)
{
    workroom room = open_three();
    bk_rows rows;
    MUST(bk_store_other_pieces(room.store, room.mine.production, room.arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 1);
    const bk_other_piece *piece = rows.items;
    ck_assert_int_eq(piece->production_id, room.yours.production);
    ck_assert_int_eq(piece->piece_id, room.yours.piece);
    ck_assert_str_eq(piece->name, "1A-1");
    ck_assert_str_eq(piece->costume, "1A");
    ck_assert_int_eq(piece->costume_due, bk_day_of(2027, 3, 30));
    run_sql(room.store, "DELETE FROM piece_costume");
    MUST(bk_store_other_pieces(room.store, room.mine.production, room.arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 1);
    piece = rows.items;
    ck_assert_ptr_null(piece->costume);
    ck_assert_int_eq(piece->costume_due, BK_NO_DAY);
    leave(&room);
}
END_TEST

static bk_day due_of(workroom *room, int64_t production)
{
    bk_rows rows;
    bk_day due = 0;
    MUST(bk_store_usual_dues(room->store, production, room->arena, &rows, &trouble));
    const bk_usual_due *all = rows.items;
    for (size_t i = 0; i < rows.count; i++) {
        if (all[i].production_id == production)
            due = all[i].due;
    }
    return due;
}

static void set_date(workroom *room, int64_t production, bk_occasion what, bk_day on)
{
    bk_date date = {.production_id = production, .what = (int)what, .on = on, .at = BK_NO_TIME};
    MUST(bk_store_change_begin(room->store, &trouble));
    add(room->store, BK_DATES, &date, 0);
    MUST(bk_store_change_commit(room->store, MADE_AT, "A date.", NULL, &trouble));
}

START_TEST(the_usual_due_is_the_first_of_parade_dress_and_opening)
{
    workroom room = open_three();
    int64_t mine = room.mine.production;
    ck_assert_int_eq(due_of(&room, mine), bk_day_of(2027, 4, 1));
    set_date(&room, mine, BK_ON_TECH, bk_day_of(2027, 3, 1)); // no day at which costumes are due
    set_date(&room, mine, BK_ON_DRESS, bk_day_of(2027, 5, 1));
    ck_assert_int_eq(due_of(&room, mine), bk_day_of(2027, 4, 1));
    set_date(&room, mine, BK_ON_DRESS, bk_day_of(2027, 3, 30));
    ck_assert_int_eq(due_of(&room, mine), bk_day_of(2027, 3, 30));
    set_date(&room, mine, BK_ON_PARADE, bk_day_of(2027, 3, 20));
    ck_assert_int_eq(due_of(&room, mine), bk_day_of(2027, 3, 20));
    leave(&room);
}
END_TEST

START_TEST(dues_are_of_productions_in_work_and_of_the_one_asked_for)
{
    workroom room = open_three();
    bk_rows rows;
    MUST(bk_store_usual_dues(room.store, room.mine.production, room.arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 2);
    MUST(bk_store_usual_dues(room.store, room.old.production, room.arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 3);
    ck_assert_int_eq(due_of(&room, room.old.production), bk_day_of(2027, 4, 1));
    leave(&room);
}
END_TEST

static void move(workroom *room, int64_t material, bk_quantity quantity)
{
    bk_movement movement = {
        .material_id = material, .kind = BK_MOVED_COUNT, .quantity = quantity, .moved_on = 20000};
    add(room->store, BK_MOVEMENTS, &movement, 0);
}

static int64_t place_order(workroom *room, int64_t material, bk_day due_on, bk_day arrived_on)
{
    return add(room->store, BK_ORDERS,
               &(bk_order){.material_id = material,
                           .quantity = 1000000,
                           .ordered_on = bk_day_of(2027, 2, 1),
                           .due_on = due_on,
                           .arrived_on = arrived_on},
               0);
}

START_TEST(the_shelf_has_what_the_production_needs_and_the_orders_under_way)
{
    workroom room = open_three();
    bk_rows materials;
    bk_rows orders;
    MUST(bk_store_change_begin(room.store, &trouble));
    move(&room, room.cloth, 5000000);
    move(&room, room.cloth, -1500000);
    move(&room, room.other_cloth, 7000000);
    add(room.store, BK_NEEDS,
        &(bk_need){.step_id = room.mine.step, .material_id = room.other_cloth, .quantity = 1}, 7);
    int64_t first = place_order(&room, room.other_cloth, BK_NO_DAY, BK_NO_DAY);
    place_order(&room, room.cloth, bk_day_of(2027, 2, 5), bk_day_of(2027, 2, 6));
    int64_t second = place_order(&room, room.cloth, bk_day_of(2027, 3, 5), BK_NO_DAY);
    MUST(bk_store_change_commit(room.store, MADE_AT, "Stocked.", NULL, &trouble));
    MUST(bk_store_shelf(room.store, room.mine.production, room.arena, &materials, &orders, &trouble));
    ck_assert_uint_eq(materials.count, 2);
    const bk_material *material = materials.items;
    ck_assert_str_eq(material[0].name, "calico");
    ck_assert_int_eq(material[0].on_hand, 3500000);
    ck_assert_int_eq(material[0].unit, BK_METRE);
    ck_assert_int_eq(material[1].on_hand, 7000000);
    ck_assert_uint_eq(orders.count, 2);
    const bk_order *order = orders.items;
    ck_assert_int_eq(order[0].id, first);
    ck_assert_int_eq(order[1].id, second);
    ck_assert_int_eq(order[1].due_on, bk_day_of(2027, 3, 5));
    leave(&room);
}
END_TEST

START_TEST(the_shelf_leaves_out_what_only_done_steps_needed)
{
    workroom room = open_three();
    bk_rows materials;
    bk_rows orders;
    MUST(bk_store_shelf(room.store, room.mine.production, room.arena, &materials, &orders, &trouble));
    ck_assert_uint_eq(materials.count, 1);
    ck_assert_int_eq(((bk_material *)materials.items)->on_hand, BK_NO_AMOUNT);
    run_sql(room.store, "UPDATE step SET done_on = '2027-03-01'");
    MUST(bk_store_shelf(room.store, room.mine.production, room.arena, &materials, &orders, &trouble));
    ck_assert_uint_eq(materials.count, 0);
    ck_assert_uint_eq(orders.count, 0);
    leave(&room);
}
END_TEST

START_TEST(the_newest_sheet_of_each_performer_counts)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    import_one_of_each(store, &ids);
    MUST(bk_store_change_begin(store, &trouble));
    bk_sheet_day sheet = {.performer_id = ids.performer, .taken_on = bk_day_of(2026, 6, 1)};
    add(store, BK_MEASURE_SHEETS, &sheet, 0);
    sheet.taken_on = bk_day_of(2027, 2, 1);
    add(store, BK_MEASURE_SHEETS, &sheet, 0);
    MUST(bk_store_change_commit(store, MADE_AT, "Measured.", NULL, &trouble));
    MUST(bk_store_newest_sheets(store, ids.production, arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 1); // the other one has none
    ck_assert_int_eq(((bk_sheet_day *)rows.items)->performer_id, ids.performer);
    ck_assert_int_eq(((bk_sheet_day *)rows.items)->taken_on, bk_day_of(2027, 2, 1));
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(the_newest_taking_is_of_that_measure)
{
    bk_store *store = open_workroom();
    record_ids ids;
    bk_day taken = 0;
    import_one_of_each(store, &ids);
    MUST(bk_store_change_begin(store, &trouble));
    bk_sheet_day empty = {.performer_id = ids.performer, .taken_on = bk_day_of(2027, 2, 1)};
    bk_sheet_day older = {.performer_id = ids.performer, .taken_on = bk_day_of(2026, 2, 1)};
    add(store, BK_MEASURE_SHEETS, &empty, 0);
    int64_t sheet = add(store, BK_MEASURE_SHEETS, &older, 0);
    add(store, BK_MEASURES, &(bk_measure){.sheet_id = sheet, .name_id = ids.measure_name, .value = 1}, 1);
    MUST(bk_store_change_commit(store, MADE_AT, "Measured.", NULL, &trouble));
    MUST(bk_store_newest_taking(store, ids.performer, "waist girth", &taken, &trouble));
    ck_assert_int_eq(taken, bk_day_of(2027, 1, 9));
    MUST(bk_store_newest_taking(store, ids.performer, "hip girth", &taken, &trouble));
    ck_assert_int_eq(taken, BK_NO_DAY);
    MUST(bk_store_newest_taking(store, ids.other_performer, "waist girth", &taken, &trouble));
    ck_assert_int_eq(taken, BK_NO_DAY);
    bk_store_close(store);
}
END_TEST

START_TEST(a_production_is_found_by_its_exact_name)
{
    workroom room = open_three();
    int64_t id = -1;
    MUST(bk_store_find_production(room.store, "Yours", &id, &trouble));
    ck_assert_int_eq(id, room.yours.production);
    MUST(bk_store_find_production(room.store, "yours", &id, &trouble));
    ck_assert_int_eq(id, 0);
    leave(&room);
}
END_TEST

BK_TEST_MAIN("rail rows", others_claim_what_their_open_steps_need, a_done_step_claims_nothing,
             a_step_that_was_fitted_well_claims_nothing, a_piece_of_others_comes_with_each_of_its_costumes,
             the_usual_due_is_the_first_of_parade_dress_and_opening,
             dues_are_of_productions_in_work_and_of_the_one_asked_for,
             the_shelf_has_what_the_production_needs_and_the_orders_under_way,
             the_shelf_leaves_out_what_only_done_steps_needed, the_newest_sheet_of_each_performer_counts,
             the_newest_taking_is_of_that_measure, a_production_is_found_by_its_exact_name)
