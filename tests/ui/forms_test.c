#include "bodkin/base/text.h"
#include "bodkin/ui/form.h"
#include "support/testing.h"

enum {
    HELP_COLUMNS = 76,
    LABEL_COLUMNS = 20,
    FIELD_ROWS = 14, // at 80x24, above what is said and a list
};

static const bk_family filled_in[] = {
    BK_PRODUCTIONS, BK_DATES,  BK_PEOPLE,     BK_AWAYS,     BK_PERFORMERS, BK_ROLES,
    BK_COSTUMES,    BK_PIECES, BK_STEPS,      BK_MATERIALS, BK_NEEDS,      BK_ORDERS,
    BK_FITTINGS,    BK_WORKS,  BK_WORK_STEPS, BK_NOTES,     BK_EQUIPMENT,
};

enum { FILLED_IN = sizeof filled_in / sizeof filled_in[0] };

START_TEST(every_family_that_is_filled_in_has_a_form_of_its_own)
{
    for (size_t i = 0; i < FILLED_IN; i++) {
        const bk_form_kind *kind = bk_form_of(filled_in[i]);
        ck_assert_ptr_nonnull(kind);
        ck_assert_int_eq(kind->family, filled_in[i]);
    }
    ck_assert_ptr_null(bk_form_of(BK_MOVEMENTS));
    ck_assert_ptr_null(bk_form_of(BK_FAMILIES));
}
END_TEST

START_TEST(every_field_is_a_column_of_the_sheet_with_a_label_and_a_line_of_help)
{
    for (size_t i = 0; i < FILLED_IN; i++) {
        const bk_form_kind *kind = bk_form_of(filled_in[i]);
        for (size_t f = 0; f < kind->field_count; f++) {
            const bk_form_field *field = &kind->fields[f];
            ck_assert_msg(bk_column_find(kind->sheet, field->column) < kind->sheet->column_count,
                          "%s has no column %s", kind->name, field->column);
            ck_assert_uint_le(bk_text_columns(field->label), LABEL_COLUMNS);
            ck_assert_msg(field->help && bk_text_columns(field->help) <= HELP_COLUMNS,
                          "the help of %s in %s is too long", field->column, kind->name);
        }
    }
}
END_TEST

START_TEST(what_must_be_filled_in_is_seen_without_scrolling)
{
    for (size_t i = 0; i < FILLED_IN; i++) {
        const bk_form_kind *kind = bk_form_of(filled_in[i]);
        for (size_t f = FIELD_ROWS; f < kind->field_count; f++) {
            size_t column = bk_column_find(kind->sheet, kind->fields[f].column);
            ck_assert_msg(!kind->sheet->columns[column].required, "%s in %s", kind->fields[f].label,
                          kind->name);
        }
    }
}
END_TEST

START_TEST(the_forms_that_a_field_makes_have_the_name_first)
{
    for (size_t i = 0; i < FILLED_IN; i++) {
        const bk_form_kind *kind = bk_form_of(filled_in[i]);
        for (size_t f = 0; f < kind->field_count; f++) {
            const bk_form_field *field = &kind->fields[f];
            for (size_t m = 0; m < BK_FORM_MAKES && field->makes[m]; m++) {
                ck_assert_int_eq(field->makes[m]->sheet->columns[0].type, BK_CELL_NAME);
                ck_assert_ptr_eq(field->makes[m], bk_form_of(field->makes[m]->family));
                ck_assert_ptr_nonnull(field->choices);
                ck_assert(!field->loose);
            }
        }
    }
}
END_TEST

static size_t fields_of(const bk_form_kind *kind, const char *column)
{
    size_t count = 0;
    for (size_t f = 0; f < kind->field_count; f++)
        count += bk_same_text(kind->fields[f].column, column);
    return count;
}

START_TEST(every_column_of_the_sheets_can_be_filled_in_once)
{
    for (size_t i = 0; i < FILLED_IN; i++) {
        const bk_form_kind *kind = bk_form_of(filled_in[i]);
        for (size_t c = 0; c < kind->sheet->column_count; c++) {
            const bk_column *column = &kind->sheet->columns[c];
            size_t wanted = column->type == BK_CELL_VERSION ? 0 : 1;
            ck_assert_msg(fields_of(kind, column->name) == wanted, "%s in %s", column->name, kind->name);
        }
    }
}
END_TEST

BK_TEST_MAIN("forms of records", every_family_that_is_filled_in_has_a_form_of_its_own,
             every_field_is_a_column_of_the_sheet_with_a_label_and_a_line_of_help,
             what_must_be_filled_in_is_seen_without_scrolling,
             the_forms_that_a_field_makes_have_the_name_first,
             every_column_of_the_sheets_can_be_filled_in_once)
