// Filled cells that differ replace and are noted; empty cells change nothing.

#include "bodkin/work/merge.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/records.h"
#include "bodkin/trade/words.h"
#include "work/show.h"

typedef struct thing {
    const char *text, *secret;
    int64_t number;
    bk_length length;
    bk_day day;
    int word;
} thing;

static const bk_merge_field fields[] = {
    {"text", BK_MERGE_TEXT, offsetof(thing, text), false},
    {"secret", BK_MERGE_TEXT, offsetof(thing, secret), true},
    {"number", BK_MERGE_NUMBER, offsetof(thing, number), false},
    {"length", BK_MERGE_LENGTH, offsetof(thing, length), false},
    {"day", BK_MERGE_DAY, offsetof(thing, day), false},
    {"word", BK_MERGE_WORD, offsetof(thing, word), false},
};

static const thing nothing = {NULL, NULL, BK_NOT_KNOWN, BK_NO_AMOUNT, BK_NO_DAY, BK_NO_WORD};
static const thing something = {"one", "two", 3, 40000, 20000, BK_YARD};

/// Merges `row` into `*known`; the notes, a line each, and "unchanged" where it says so.
static const char *merged(const thing *row, thing *known, bk_unit unit)
{
    const char *all = "";
    bk_merge_notes notes = {.arena = texts(), .unit = unit};
    bool changed = bk_merge(fields, sizeof fields / sizeof *fields, row, known, "things.csv: Thing", &notes);
    for (size_t i = 0; i < notes.items.count; i++)
        all = bk_arena_print(texts(), "%s%s\n", all, notes.items.items[i]);
    bk_list_free(&notes.items);
    return changed ? all : bk_arena_print(texts(), "unchanged%s", all);
}

static void expect_same(const thing *left, const thing *right)
{
    ck_assert(bk_same_text(left->text, right->text));
    ck_assert(bk_same_text(left->secret, right->secret));
    ck_assert_int_eq(left->number, right->number);
    ck_assert_int_eq(left->length, right->length);
    ck_assert_int_eq(left->day, right->day);
    ck_assert_int_eq(left->word, right->word);
}

START_TEST(a_row_of_empty_cells_changes_nothing)
{
    thing known = something;
    ck_assert_str_eq(merged(&nothing, &known, BK_CM), "unchanged");
    expect_same(&known, &something);
}
END_TEST

START_TEST(a_row_of_the_same_values_changes_nothing)
{
    char one[] = "one"; // another pointer
    thing row = something;
    thing known = something;
    row.text = one;
    ck_assert_str_eq(merged(&row, &known, BK_CM), "unchanged");
    expect_same(&known, &something);
}
END_TEST

START_TEST(values_replace_what_was_empty)
{
    thing known = nothing;
    ck_assert_str_eq(merged(&something, &known, BK_CM),
                     "things.csv: Thing: text: was empty, is now \"one\"\n"
                     "things.csv: Thing: secret: replaced\n"
                     "things.csv: Thing: number: was empty, is now \"3\"\n"
                     "things.csv: Thing: length: was empty, is now \"4 cm\"\n"
                     "things.csv: Thing: day: was empty, is now \"2024-10-04\"\n"
                     "things.csv: Thing: word: was empty, is now \"yd\"\n");
    expect_same(&known, &something);
}
END_TEST

START_TEST(values_that_differ_replace_one_by_one)
{
    thing row = nothing;
    thing known = something;
    row.number = 0;
    row.length = 50800;
    ck_assert_str_eq(merged(&row, &known, BK_INCH),
                     "things.csv: Thing: number: was \"3\", is now \"0\"\n"
                     "things.csv: Thing: length: was \"4 cm\", is now \"2 in\"\n");
    ck_assert_str_eq(known.text, "one");
    ck_assert_int_eq(known.number, 0);
    ck_assert_int_eq(known.word, BK_YARD);
}
END_TEST

START_TEST(a_long_or_dangerous_text_is_told_cut_and_made_safe)
{
    thing row = nothing;
    thing known = something;
    row.text = "a note\x1b[31m that goes on and on\nand on, far beyond what anybody would read in a list";
    ck_assert_str_eq(
        merged(&row, &known, BK_CM),
        "things.csv: Thing: text: was \"one\", is now \"a note·[31m that goes on and on and on,…\"\n");
    ck_assert_str_eq(known.text, row.text);
}
END_TEST

BK_TEST_MAIN("merge", a_row_of_empty_cells_changes_nothing, a_row_of_the_same_values_changes_nothing,
             values_replace_what_was_empty, values_that_differ_replace_one_by_one,
             a_long_or_dangerous_text_is_told_cut_and_made_safe)
