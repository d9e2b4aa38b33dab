#include "bodkin/sheet/columns.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "sheet/good_sheets.h"
#include "support/testing.h"

/// The sheets as the manual lists them; a `*` marks a column that may not be left out.
static const char *const manual[BK_SHEETS] = {
    "production.csv: production* opens* currency unit measures_good_for sheets",
    "dates.csv: what* on* at note",
    "people.csv: person* skills mon tue wed thu fri sat sun from until note",
    "away.csv: who* from* to* reason",
    "equipment.csv: equipment* kinds* count",
    "performers.csv: performer* contact measures_good_for note",
    "measures.csv: performer* taken_on* measure* value* over taken_by",
    "roles.csv: role* performer cover note",
    "costumes.csv: costume* role* title* due note",
    "pieces.csv: piece* costumes* title* origin place out_with out_since back_by from cost due_back "
    "returned_on note",
    "steps.csv: piece* step* title* kind* minutes* quickest longest after hands level rest can_wait measures "
    "note done_on "
    "done_by took",
    "materials.csv: material* unit* on_hand width supplier price note",
    "needs.csv: piece* step* material* quantity*",
    "orders.csv: material* quantity* ordered_on* due_on arrived_on from cost",
    "fittings.csv: piece* step* booked_at* performer minutes held_on outcome note",
    "works.csv: work* note",
    "work_steps.csv: work* step* title* kind* minutes* quickest longest after hands level rest can_wait "
    "measures note",
    "notes.csv: noted_on* from who costume piece step what* done_on",
};

START_TEST(the_table_has_every_sheet_and_column_of_the_manual_in_its_order)
{
    for (size_t i = 0; i < BK_SHEETS; i++) {
        bk_buffer line = {0};
        bk_buffer_print(&line, "%s:", bk_sheets[i].file);
        for (size_t c = 0; c < bk_sheets[i].column_count; c++)
            bk_buffer_print(&line, " %s%s", bk_sheets[i].columns[c].name,
                            bk_sheets[i].columns[c].required ? "*" : "");
        ck_assert_str_eq(line.bytes, manual[i]);
        bk_buffer_free(&line);
    }
}
END_TEST

START_TEST(sheets_and_columns_are_found_by_name)
{
    ck_assert_int_eq(bk_sheet_find("people.csv"), BK_SHEET_PEOPLE);
    ck_assert_int_eq(bk_sheet_find("fittings.csv"), BK_SHEET_FITTINGS);
    ck_assert_int_eq(bk_sheet_find("People.csv"), BK_SHEETS);
    ck_assert_uint_eq(bk_column_find(&bk_sheets[BK_SHEET_AWAY], "to"), 2);
    ck_assert_uint_eq(bk_column_find(&bk_sheets[BK_SHEET_AWAY], "until"), 4);
}
END_TEST

START_TEST(no_field_is_shared_by_two_columns_and_none_lies_outside_its_record)
{
    for (size_t i = 0; i < BK_SHEETS; i++)
        for (size_t c = 0; c < bk_sheets[i].column_count; c++) {
            const bk_column *column = &bk_sheets[i].columns[c];
            ck_assert_uint_lt(column->offset, bk_sheets[i].record_size);
            ck_assert_uint_ne(column->offset, bk_sheets[i].line);
            for (size_t other = 0; other < c; other++)
                ck_assert_uint_ne(column->offset, bk_sheets[i].columns[other].offset);
            ck_assert_int_eq(column->words != NULL,
                             column->type == BK_CELL_WORD || column->type == BK_CELL_WORDS);
            ck_assert_int_eq(column->currency != 0, column->type == BK_CELL_MONEY);
        }
}
END_TEST

START_TEST(a_cleared_record_knows_nothing)
{
    bk_step step = {.key = "x", .kind = BK_CUT, .minutes = 5, .can_wait = 1, .line = 9};
    bk_sheet_clear(&bk_sheets[BK_SHEET_STEPS], &step);
    ck_assert_ptr_null(step.key);
    ck_assert_int_eq(step.kind, BK_NO_WORD);
    ck_assert_int_eq(step.minutes, BK_NOT_KNOWN);
    ck_assert_int_eq(step.hands, BK_NOT_KNOWN);
    ck_assert_int_eq(step.rest_minutes, BK_NOT_KNOWN);
    ck_assert_int_eq(step.can_wait, 0);
    ck_assert_int_eq(step.done_on, BK_NO_DAY);
    ck_assert_int_eq(step.line, 0);
    bk_fitting fitting = {.outcome = BK_FITS};
    bk_sheet_clear(&bk_sheets[BK_SHEET_FITTINGS], &fitting);
    ck_assert_int_eq(fitting.booked_at.day, BK_NO_DAY);
    ck_assert_int_eq(fitting.booked_at.time, BK_NO_TIME);
    ck_assert_int_eq(fitting.outcome, BK_NO_WORD);
    bk_production production = {.put_away_on = 0};
    bk_sheet_clear(&bk_sheets[BK_SHEET_PRODUCTION], &production);
    ck_assert_int_eq(production.put_away_on, BK_NO_DAY);
}
END_TEST

START_TEST(one_column_is_cleared_alone_and_money_with_its_currency)
{
    const bk_sheet *sheet = &bk_sheets[BK_SHEET_PIECES];
    bk_piece piece = {.title = "Shirt", .cost = 1250, .currency = "GBP"};
    bk_column_clear(&sheet->columns[bk_column_find(sheet, "cost")], &piece);
    ck_assert_int_eq(piece.cost, BK_NO_AMOUNT);
    ck_assert_ptr_null(piece.currency);
    ck_assert_str_eq(piece.title, "Shirt");
    bk_column_clear(&sheet->columns[bk_column_find(sheet, "title")], &piece);
    ck_assert_ptr_null(piece.title);
}
END_TEST

START_TEST(the_rows_of_a_folder_are_reached_by_their_sheet)
{
    bk_folder *folder = bk_folder_new();
    bk_role roles[2] = {{.name = "The Miller", .line = 2}, {.name = "The Fox", .line = 4}};
    const bk_sheet *sheet = &bk_sheets[BK_SHEET_ROLES];
    bk_sheet_rows_set(folder, sheet, (bk_sheet_rows){roles, 2});
    ck_assert_ptr_eq(folder->roles.items, roles);
    ck_assert_uint_eq(folder->roles.count, 2);
    bk_sheet_rows rows = bk_sheet_rows_get(folder, sheet);
    ck_assert_uint_eq(rows.count, 2);
    ck_assert_int_eq(bk_sheet_line(sheet, bk_sheet_row(sheet, rows, 1)), 4);
    ck_assert_str_eq(bk_sheet_text(bk_sheet_row(sheet, rows, 1), sheet->columns[0].offset), "The Fox");
    bk_folder_free(folder);
}
END_TEST

BK_TEST_MAIN("columns", the_table_has_every_sheet_and_column_of_the_manual_in_its_order,
             sheets_and_columns_are_found_by_name,
             no_field_is_shared_by_two_columns_and_none_lies_outside_its_record,
             a_cleared_record_knows_nothing, one_column_is_cleared_alone_and_money_with_its_currency,
             the_rows_of_a_folder_are_reached_by_their_sheet)
