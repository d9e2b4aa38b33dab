#include "bodkin/sheet/cell_write.h"
#include "support/testing.h"

static const bk_cell_style style = {BK_INCH, "GBP"};

static void assert_text(bk_sheet_number sheet, const char *column, const void *record, const char *text)
{
    bk_buffer out = {0};
    const bk_sheet *of = &bk_sheets[sheet];
    bk_cell_text(&out, &of->columns[bk_column_find(of, column)], record, &style);
    ck_assert_str_eq(out.bytes, text);
    bk_buffer_free(&out);
}

START_TEST(a_text_is_given_without_quotes_and_guards)
{
    bk_piece piece = {
        .title = "=Shirt, \"white\"\nlinen", .origin = BK_MAKE, .cost = 1250, .currency = "GBP"};
    assert_text(BK_SHEET_PIECES, "title", &piece, "=Shirt, \"white\"\nlinen");
    assert_text(BK_SHEET_PIECES, "origin", &piece, "make");
    assert_text(BK_SHEET_PIECES, "cost", &piece, "12.50");
    piece.currency = "EUR";
    assert_text(BK_SHEET_PIECES, "cost", &piece, "12.50 EUR");
}
END_TEST

START_TEST(what_is_not_known_is_an_empty_text)
{
    bk_material material;
    bk_sheet_clear(&bk_sheets[BK_SHEET_MATERIALS], &material);
    assert_text(BK_SHEET_MATERIALS, "material", &material, "");
    assert_text(BK_SHEET_MATERIALS, "width", &material, "");
    material.width = 59 * INT64_C(25400);
    assert_text(BK_SHEET_MATERIALS, "width", &material, "59 in");
}
END_TEST

BK_TEST_MAIN("texts of cells", a_text_is_given_without_quotes_and_guards, what_is_not_known_is_an_empty_text)
