// A production of the store as a folder of sheets again.

#include "bodkin/work/export.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "work/show.h"

/// The production with that id, exported; freed by the caller.
static bk_folder *export(bk_store *store, int64_t production)
{
    bk_folder *folder = NULL;
    MUST(bk_export_folder(store, production, &folder, &trouble));
    return folder;
}

/// The Salt Road, taken in and exported.
static bk_folder *salt_road_again(void)
{
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    folder = export(store, 1);
    bk_store_close(store);
    return folder;
}

START_TEST(what_comes_out_goes_into_an_empty_store_as_the_same_rows)
{
    bk_folder *folder = salt_road_again();
    const char *before = bk_records();
    bk_store *store = open_store_named("other.db");
    take_in(store, folder, false, NULL);
    bk_store_close(store);
    bk_folder_free(folder);
    bk_shell("mv other.db workroom.db");
    ck_assert_str_eq(bk_records(), before);
}
END_TEST

/// The texts at `offset` of each row, joined by " | ".
static const char *column_of(const void *items, size_t count, size_t size, size_t offset)
{
    const char *all = "";
    for (size_t i = 0; i < count; i++) {
        const char *text = NULL;
        memcpy(&text, (const char *)items + i * size + offset, sizeof text);
        all = bk_arena_print(texts(), "%s%s%s", all, i > 0 ? " | " : "", text != NULL ? text : "-");
    }
    return all;
}

#define COLUMN(folder, rows, type, field) \
    column_of((folder)->rows.items, (folder)->rows.count, sizeof(type), offsetof(type, field))

START_TEST(rows_come_out_in_the_order_they_went_in_with_the_names_of_what_they_refer_to)
{
    bk_folder *folder = salt_road_again();
    ck_assert_str_eq(COLUMN(folder, production, bk_production, name), "The Salt Road");
    ck_assert_str_eq(COLUMN(folder, dates, bk_date, note), "small hall | - | -");
    ck_assert_str_eq(COLUMN(folder, people, bk_person, name), "Zoë Ngô | Ada Pell");
    ck_assert_str_eq(COLUMN(folder, away, bk_away, who), "Zoë Ngô | Ada Pell | Ines Varga");
    ck_assert_str_eq(COLUMN(folder, equipment, bk_equipment, name), "machine | cutting table");
    ck_assert_str_eq(COLUMN(folder, equipment, bk_equipment, kinds), "machine | draft;cut");
    ck_assert_int_eq(folder->equipment.items[0].count, 2);
    ck_assert_int_eq(folder->equipment.items[1].count, BK_NOT_KNOWN);
    ck_assert_str_eq(COLUMN(folder, performers, bk_performer, name), "Tomas Lind | Ines Varga | Zoë Ngô");
    ck_assert_str_eq(COLUMN(folder, measures, bk_measure, performer), "Ines Varga | Ines Varga | Ines Varga");
    ck_assert_str_eq(COLUMN(folder, measures, bk_measure, name), "waist girth | hip girth | waist girth");
    ck_assert_str_eq(COLUMN(folder, roles, bk_role, performer), "Ines Varga | -");
    ck_assert_str_eq(COLUMN(folder, costumes, bk_costume, number), "10A | 2B | 2A");
    ck_assert_str_eq(COLUMN(folder, costumes, bk_costume, role), "The Miller | The Miller | The Boy");
    ck_assert_str_eq(COLUMN(folder, pieces, bk_piece, name), "P2 | P1 | P3");
    ck_assert_str_eq(COLUMN(folder, steps, bk_step, piece), "P2 | P2 | P2 | P1");
    ck_assert_str_eq(COLUMN(folder, steps, bk_step, key), "sew | cut | fit | press");
    ck_assert_str_eq(COLUMN(folder, materials, bk_material, name), "wool | linen | hooks");
    ck_assert_str_eq(COLUMN(folder, needs, bk_need, step), "sew | cut | sew");
    ck_assert_str_eq(COLUMN(folder, needs, bk_need, material), "wool | linen | hooks");
    ck_assert_str_eq(COLUMN(folder, orders, bk_order, material), "wool | linen | wool");
    ck_assert_str_eq(COLUMN(folder, fittings, bk_fitting, step), "fit | fit");
    ck_assert_str_eq(COLUMN(folder, fittings, bk_fitting, performer), "Tomas Lind | -");
    bk_folder_free(folder);
}
END_TEST

START_TEST(lists_are_in_the_order_written_with_bare_keys_within_a_piece)
{
    bk_folder *folder = salt_road_again();
    ck_assert_str_eq(COLUMN(folder, roles, bk_role, cover), "Zoë Ngô;Tomas Lind | -");
    ck_assert_str_eq(COLUMN(folder, pieces, bk_piece, costumes), "2B;10A | 10A | 2A");
    ck_assert_str_eq(COLUMN(folder, steps, bk_step, after), "cut | - | P1/press;sew | -");
    ck_assert_str_eq(COLUMN(folder, steps, bk_step, measures), "- | waist girth;hip girth | - | -");
    bk_folder_free(folder);
}
END_TEST

START_TEST(contacts_prices_and_costs_come_out_beside_their_rows_in_their_own_money)
{
    bk_folder *folder = salt_road_again();
    ck_assert_str_eq(COLUMN(folder, performers, bk_performer, contact), "- | ines@stage.example | -");
    ck_assert_int_eq(folder->materials.items[0].price, BK_NO_AMOUNT);
    ck_assert_int_eq(folder->materials.items[1].price, 890);
    ck_assert_str_eq(folder->materials.items[1].currency, "GBP");
    ck_assert_int_eq(folder->pieces.items[1].cost, 4400);
    ck_assert_str_eq(folder->pieces.items[1].currency, "EUR");
    ck_assert_int_eq(folder->pieces.items[2].cost, BK_NO_AMOUNT);
    ck_assert_int_eq(folder->orders.items[0].cost, BK_NO_AMOUNT);
    ck_assert_int_eq(folder->orders.items[1].cost, 5200);
    ck_assert_str_eq(folder->orders.items[1].currency, "JPY");
    bk_folder_free(folder);
}
END_TEST

START_TEST(texts_come_out_as_they_went_in)
{
    bk_folder *folder = salt_road_again();
    ck_assert_str_eq(COLUMN(folder, pieces, bk_piece, title), "Bodice, \"grey\"\nlined | Cloak | Piece P3");
    ck_assert_str_eq(COLUMN(folder, pieces, bk_piece, note), "=SUM(A1:A9) | - | -");
    ck_assert_str_eq(COLUMN(folder, away, bk_away, reason), "a wedding | - | a \"sitting\"");
    bk_folder_free(folder);
}
END_TEST

START_TEST(what_was_not_known_is_not_known)
{
    bk_folder *folder = bare_show("Chalk", DAY(4, 1));
    ROWS(folder, roles, bk_role, ROLE("The Boy", NULL, NULL));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "The Boy", BK_NO_DAY));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A", BK_NO_WORD));
    ROWS(folder, steps, bk_step, STEP("P1", "sew", BK_MACHINE, 20, NULL));
    ROWS(folder, materials, bk_material, MATERIAL("tape", BK_METRE, BK_NO_AMOUNT),
         MATERIAL("wool", BK_METRE, 0));
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    folder = export(store, 1);
    bk_store_close(store);
    ck_assert_ptr_null(folder->production.items[0].currency);
    ck_assert_int_eq(folder->production.items[0].unit, BK_NO_WORD);
    ck_assert_int_eq(folder->production.items[0].measures_good_for, BK_NOT_KNOWN);
    ck_assert_int_eq(folder->costumes.items[0].due, BK_NO_DAY);
    ck_assert_int_eq(folder->pieces.items[0].origin, BK_NO_WORD);
    ck_assert_int_eq(folder->pieces.items[0].cost, BK_NO_AMOUNT);
    ck_assert_ptr_null(folder->steps.items[0].after);
    ck_assert_int_eq(folder->steps.items[0].hands, BK_NOT_KNOWN);
    ck_assert_int_eq(folder->steps.items[0].rest_minutes, BK_NOT_KNOWN);
    ck_assert_int_eq(folder->steps.items[0].done_on, BK_NO_DAY);
    ck_assert_int_eq(folder->materials.items[0].on_hand, BK_NO_AMOUNT);
    ck_assert_int_eq(folder->materials.items[1].on_hand, 0);
    ck_assert_uint_eq(folder->performers.count + folder->people.count + folder->orders.count, 0);
    bk_folder_free(folder);
}
END_TEST

START_TEST(the_shelf_comes_out_as_the_sum_of_its_movements)
{
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    bk_ask("INSERT INTO movement (material_id, kind, quantity, moved_on) VALUES (1, 'use', -2400000, "
           "'2027-03-01')");
    folder = export(store, 1);
    bk_store_close(store);
    ck_assert_int_eq(folder->materials.items[0].on_hand, -1400000);
    bk_folder_free(folder);
}
END_TEST

START_TEST(another_production_brings_its_materials_and_helpers_but_not_its_company)
{
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    folder = bare_show("Chalk", DAY(4, 1));
    ROWS(folder, performers, bk_performer, PERFORMER("Bo Ek", "bo@stage.example", NULL));
    ROWS(folder, measures, bk_measure, MEASURE("Bo Ek", DAY(1, 9), "height", 1800000));
    ROWS(folder, away, bk_away, AWAY("Bo Ek", DAY(3, 3), DAY(3, 4), NULL));
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    folder = export(store, 2);
    bk_store_close(store);
    ck_assert_str_eq(COLUMN(folder, performers, bk_performer, name), "Bo Ek");
    ck_assert_str_eq(COLUMN(folder, performers, bk_performer, contact), "bo@stage.example");
    ck_assert_str_eq(COLUMN(folder, measures, bk_measure, performer), "Bo Ek");
    // Zoë Ngô is a helper too, Ines Varga is not.
    ck_assert_str_eq(COLUMN(folder, away, bk_away, who), "Zoë Ngô | Ada Pell | Bo Ek");
    ck_assert_str_eq(COLUMN(folder, people, bk_person, name), "Zoë Ngô | Ada Pell");
    ck_assert_str_eq(COLUMN(folder, materials, bk_material, name), "wool | linen | hooks");
    ck_assert_str_eq(COLUMN(folder, orders, bk_order, material), "wool | linen | wool");
    ck_assert_uint_eq(folder->costumes.count, 0);
    bk_folder_free(folder);
}
END_TEST

START_TEST(a_production_that_is_gone_is_refused)
{
    bk_folder *folder = salt_road();
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    REFUSED(bk_export_folder(store, 2, &folder, &trouble), BK_REFUSED,
            "This production is no longer in the workroom; choose another.");
    ck_assert_ptr_null(folder);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("export", what_comes_out_goes_into_an_empty_store_as_the_same_rows,
             rows_come_out_in_the_order_they_went_in_with_the_names_of_what_they_refer_to,
             lists_are_in_the_order_written_with_bare_keys_within_a_piece,
             contacts_prices_and_costs_come_out_beside_their_rows_in_their_own_money,
             texts_come_out_as_they_went_in, what_was_not_known_is_not_known,
             the_shelf_comes_out_as_the_sum_of_its_movements,
             another_production_brings_its_materials_and_helpers_but_not_its_company,
             a_production_that_is_gone_is_refused)
