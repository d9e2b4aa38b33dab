#include "bodkin/ui/form_line.h"
#include "support/testing.h"

static void assert_line(const bk_form_line *line, const char *text, size_t at)
{
    ck_assert_str_eq(bk_form_line_text(line), text);
    ck_assert_uint_eq(line->at, at);
}

START_TEST(what_is_typed_stands_at_the_cursor)
{
    bk_form_line line = {0};
    assert_line(&line, "", 0);
    bk_form_line_put(&line, "hem");
    bk_form_line_key(&line, BK_KEY_HOME);
    bk_form_line_insert(&line, "the ");
    assert_line(&line, "the hem", 4);
    bk_form_line_key(&line, BK_KEY_END);
    bk_form_line_insert(&line, "s");
    assert_line(&line, "the hems", 8);
    bk_form_line_free(&line);
}
END_TEST

START_TEST(the_cursor_steps_over_a_letter_with_its_marks_as_one)
{
    const char *combined = "e\xCC\x81t\xC3\xA9"; // e and an acute, t, é
    bk_form_line line = {0};
    bk_form_line_put(&line, combined);
    bk_form_line_key(&line, BK_KEY_LEFT);
    assert_line(&line, combined, 4);
    bk_form_line_key(&line, BK_KEY_LEFT);
    bk_form_line_key(&line, BK_KEY_LEFT);
    assert_line(&line, combined, 0);
    bk_form_line_key(&line, BK_KEY_LEFT);
    assert_line(&line, combined, 0);
    bk_form_line_key(&line, BK_KEY_RIGHT);
    assert_line(&line, combined, 3);
    bk_form_line_key(&line, BK_KEY_BACKSPACE);
    assert_line(&line, "t\xC3\xA9", 0);
    bk_form_line_key(&line, BK_KEY_DELETE);
    assert_line(&line, "\xC3\xA9", 0);
    bk_form_line_key(&line, BK_KEY_DELETE);
    bk_form_line_key(&line, BK_KEY_DELETE);
    bk_form_line_key(&line, BK_KEY_BACKSPACE);
    assert_line(&line, "", 0);
    bk_form_line_free(&line);
}
END_TEST

START_TEST(other_keys_are_not_its_own)
{
    bk_form_line line = {0};
    bk_form_line_put(&line, "hem");
    ck_assert(!bk_form_line_key(&line, BK_KEY_ENTER));
    ck_assert(!bk_form_line_key(&line, BK_KEY_DOWN));
    assert_line(&line, "hem", 3);
    bk_form_line_free(&line);
}
END_TEST

START_TEST(a_part_is_put_in_place_of_another)
{
    bk_form_line line = {0};
    bk_form_line_put(&line, "4A; 4; 5A");
    bk_form_line_replace(&line, 4, 1, "4B");
    assert_line(&line, "4A; 4B; 5A", 6);
    bk_form_line_free(&line);
}
END_TEST

// ------------------------------------------------------------------------------------------------- the rows

static void assert_rows(const char *text, size_t columns, const char *const *rows, size_t wanted)
{
    size_t count = 0;
    bk_arena *arena = bk_arena_new();
    const bk_form_row *found = bk_form_line_rows(text, columns, false, arena, &count);
    ck_assert_uint_eq(count, wanted);
    for (size_t i = 0; i < count; i++)
        ck_assert_str_eq(bk_arena_bytes(arena, text + found[i].from, found[i].length), rows[i]);
    bk_arena_free(arena);
}

#define ASSERT_ROWS(text, columns, ...) \
    assert_rows(text, columns, (const char *const[]){__VA_ARGS__}, \
                sizeof((const char *const[]){__VA_ARGS__}) / sizeof(const char *))

START_TEST(a_long_text_is_broken_at_words)
{
    ASSERT_ROWS("", 10, "");
    ASSERT_ROWS("let out", 10, "let out");
    ASSERT_ROWS("let out the side seams", 10, "let out", "the side", "seams");
    ASSERT_ROWS("let out the", 7, "let out", "the");
    ASSERT_ROWS("hookandeye tape", 6, "hookan", "deye", "tape");
    ASSERT_ROWS("hem\nhooks", 10, "hem", "hooks");
    ASSERT_ROWS("hem\n", 10, "hem", "");
    ASSERT_ROWS("hem\n\nhooks", 10, "hem", "", "hooks");
    ASSERT_ROWS("\xE8\xA1\xA3\xE8\xA1\xA3\xE8\xA1\xA3", 5, "\xE8\xA1\xA3\xE8\xA1\xA3", "\xE8\xA1\xA3");
}
END_TEST

START_TEST(up_and_down_go_from_row_to_row_near_the_same_column)
{
    const char *text = "let out the side seams";
    size_t count = 0;
    bk_arena *arena = bk_arena_new();
    const bk_form_row *rows = bk_form_line_rows(text, 10, false, arena, &count);
    bk_form_line line = {0};
    bk_form_line_put(&line, text);
    ck_assert_uint_eq(bk_form_line_row(rows, count, line.at), 2);
    ck_assert(!bk_form_line_move(&line, rows, count, 1));
    ck_assert(bk_form_line_move(&line, rows, count, -1));
    assert_line(&line, text, 13); // "the s|ide"
    ck_assert(bk_form_line_move(&line, rows, count, -1));
    assert_line(&line, text, 5);
    ck_assert(!bk_form_line_move(&line, rows, count, -1));
    bk_form_line_free(&line);
    bk_arena_free(arena);
}
END_TEST

BK_TEST_MAIN("lines of forms", what_is_typed_stands_at_the_cursor,
             the_cursor_steps_over_a_letter_with_its_marks_as_one, other_keys_are_not_its_own,
             a_part_is_put_in_place_of_another, a_long_text_is_broken_at_words,
             up_and_down_go_from_row_to_row_near_the_same_column)
