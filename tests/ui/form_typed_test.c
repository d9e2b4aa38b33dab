#include "bodkin/ui/form_typed.h"

#include "bodkin/base/text.h"
#include "support/testing.h"

// On Tue 2 Mar 2027, in inches and pounds.
static bk_form_ways ways_of_the_test(void)
{
    return (bk_form_ways){bk_day_of(2027, 3, 2), BK_INCH, "GBP"};
}

static const bk_column *column_of(bk_sheet_number sheet, const char *name)
{
    return &bk_sheets[sheet].columns[bk_column_find(&bk_sheets[sheet], name)];
}

typedef struct typed_case {
    bk_sheet_number sheet;
    const char *column, *text;
    const char *cell; ///< NULL: not understood
} typed_case;

static const typed_case cases[] = {
    {BK_SHEET_DATES, "on", "fri", "2027-03-05"},
    {BK_SHEET_DATES, "on", " +3 ", "2027-03-05"},
    {BK_SHEET_DATES, "on", "9 mar", "2027-03-09"},
    {BK_SHEET_DATES, "on", "soon", NULL},
    {BK_SHEET_DATES, "on", "  ", ""},
    {BK_SHEET_DATES, "at", "7:30 pm", "19:30"},
    {BK_SHEET_DATES, "at", "late", NULL},
    {BK_SHEET_FITTINGS, "booked_at", "fri 14:30", "2027-03-05T14:30"},
    {BK_SHEET_FITTINGS, "booked_at", "2027-03-05 14:30", "2027-03-05T14:30"},
    {BK_SHEET_MATERIALS, "width", "59", "59 in"},
    {BK_SHEET_MATERIALS, "width", "150 cm", "150 cm"},
    {BK_SHEET_MATERIALS, "price", "8,90", "8.90"},
    {BK_SHEET_MATERIALS, "on_hand", "2,4", "2.4"},
    {BK_SHEET_STEPS, "minutes", "1h30", "90"},
    {BK_SHEET_STEPS, "minutes", "45", "45"},
    {BK_SHEET_STEPS, "minutes", "long", "long"},
    {BK_SHEET_STEPS, "hands", "2", "2"},
    {BK_SHEET_STEPS, "rest", "12", "12"},
    {BK_SHEET_STEPS, "rest", "0,5", "0.5"},
    {BK_SHEET_STEPS, "rest", "30 min", "0.5"},
    {BK_SHEET_STEPS, "rest", "a day", NULL},
    {BK_SHEET_STEPS, "can_wait", "Y", "yes"},
    {BK_SHEET_STEPS, "can_wait", "no", ""},
    {BK_SHEET_STEPS, "can_wait", "perhaps", NULL},
    {BK_SHEET_STEPS, "kind", "HAND", "hand"},
    {BK_SHEET_STEPS, "kind", "ha", "hand"},
    {BK_SHEET_STEPS, "kind", "d", "d"}, // draft and dye
    {BK_SHEET_STEPS, "after", "cut; 4A-2/cut;", "cut;4A-2/cut"},
    {BK_SHEET_PEOPLE, "skills", "ma; ha", "machine;hand"},
    {BK_SHEET_PEOPLE, "mon", "10-13", "10:00-13:00"},
    {BK_SHEET_PEOPLE, "mon", "10-13, 2pm-6:30pm", "10:00-13:00;14:00-18:30"},
    {BK_SHEET_PEOPLE, "mon", "20-24:00", "20:00-24:00"},
    {BK_SHEET_PEOPLE, "mon", "13-10", NULL},
    {BK_SHEET_PEOPLE, "mon", "mornings", NULL},
    {BK_SHEET_PRODUCTION, "currency", "gbp", "GBP"},
    {BK_SHEET_PIECES, "title", "  Linen shirt ", "Linen shirt"},
};

START_TEST(what_people_type_becomes_the_cell_that_it_means)
{
    bk_arena *arena = bk_arena_new();
    const bk_form_ways ways = ways_of_the_test();
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        const char *cell =
            bk_form_cell(&ways, column_of(cases[i].sheet, cases[i].column), cases[i].text, arena);
        ck_assert_msg(bk_same_text(cell, cases[i].cell), "\"%s\" became %s", cases[i].text,
                      cell ? cell : "nothing");
    }
    bk_arena_free(arena);
}
END_TEST

START_TEST(what_is_not_understood_is_quoted_with_what_would_be_right)
{
    bk_arena *arena = bk_arena_new();
    ck_assert_str_eq(bk_form_not_understood(column_of(BK_SHEET_DATES, "on"), " soon", arena),
                     "\"soon\" is no day; type one such as fri, +3, 9 mar or 2027-03-09");
    ck_assert_str_eq(bk_form_not_understood(column_of(BK_SHEET_STEPS, "minutes"), "long", arena),
                     "\"long\" is no length of time; type minutes, or hours such as 1h30");
    ck_assert_ptr_null(bk_form_not_understood(column_of(BK_SHEET_STEPS, "hands"), "many", arena));
    bk_arena_free(arena);
}
END_TEST

START_TEST(lists_and_moments_are_shown_with_a_space)
{
    bk_arena *arena = bk_arena_new();
    ck_assert_str_eq(bk_form_shown(column_of(BK_SHEET_PIECES, "costumes"), "4A;4B", arena), "4A; 4B");
    ck_assert_str_eq(bk_form_shown(column_of(BK_SHEET_FITTINGS, "booked_at"), "2027-03-05T14:30", arena),
                     "2027-03-05 14:30");
    ck_assert_str_eq(bk_form_shown(column_of(BK_SHEET_PIECES, "title"), "A; B", arena), "A; B");
    bk_arena_free(arena);
}
END_TEST

START_TEST(days_and_minutes_are_told_in_words_beside)
{
    static const typed_case beside[] = {
        {BK_SHEET_DATES, "on", "2027-03-05", "Fri 5 Mar"},
        {BK_SHEET_FITTINGS, "booked_at", "2027-03-05T14:30", "Fri 5 Mar, 14:30"},
        {BK_SHEET_FITTINGS, "booked_at", "2027-03-05", "Fri 5 Mar, no time yet"},
        {BK_SHEET_STEPS, "minutes", "90", "1 h 30"},
        {BK_SHEET_STEPS, "rest", "12", "hours"},
        {BK_SHEET_STEPS, "hands", "2", NULL},
        {BK_SHEET_PERFORMERS, "measures_good_for", "60", "days"},
        {BK_SHEET_MATERIALS, "price", "8.90", "GBP"},
        {BK_SHEET_MATERIALS, "price", "8.90 EUR", NULL},
        {BK_SHEET_PIECES, "title", "Shirt", NULL},
    };
    bk_arena *arena = bk_arena_new();
    const bk_form_ways ways = ways_of_the_test();
    for (size_t i = 0; i < sizeof beside / sizeof beside[0]; i++) {
        const char *said =
            bk_form_beside(&ways, column_of(beside[i].sheet, beside[i].column), beside[i].text, arena);
        ck_assert_msg(bk_same_text(said, beside[i].cell), "beside \"%s\" stands %s", beside[i].text,
                      said ? said : "nothing");
    }
    bk_arena_free(arena);
}
END_TEST

BK_TEST_MAIN("what is typed into forms", what_people_type_becomes_the_cell_that_it_means,
             what_is_not_understood_is_quoted_with_what_would_be_right,
             lists_and_moments_are_shown_with_a_space, days_and_minutes_are_told_in_words_beside)
