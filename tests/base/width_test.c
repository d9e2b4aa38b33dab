#include "bodkin/base/width.h"

#include <locale.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <wchar.h>

#include "bodkin/base/buffer.h"
#include "support/testing.h"

enum { ROUNDS = 20000, MOST_PIECES = 12 };

/// Pieces of text whose clusters and widths differ.
static const char *const pieces[] = {
    "a", " ", "hem", "é", "e\u0301", "日", "\U0001F9F5", "…", "\u0301", "  ", "한", "\u1112\u1161\u11AB", "x",
};

static uint32_t next_random(uint32_t *state)
{
    *state = *state * UINT32_C(1664525) + UINT32_C(1013904223);
    return *state >> 8;
}

/// A text of up to MOST_PIECES pieces.
static char *make_text(bk_arena *arena, uint32_t *state)
{
    bk_buffer text = {0};
    bk_buffer_text(&text, "");
    for (uint32_t left = next_random(state) % MOST_PIECES; left > 0; left--)
        bk_buffer_text(&text, pieces[next_random(state) % (sizeof pieces / sizeof *pieces)]);
    char *made = bk_arena_text(arena, text.bytes);
    bk_buffer_free(&text);
    return made;
}

START_TEST(texts_are_as_wide_as_the_c_library_says)
{
    ck_assert_ptr_nonnull(setlocale(LC_ALL, "C.UTF-8"));
    bk_arena *arena = bk_arena_new();
    uint32_t state = 1;
    for (int i = 0; i < ROUNDS; i++) {
        wchar_t wide[128];
        const char *text = make_text(arena, &state);
        size_t length = mbstowcs(wide, text, 128);
        if ((int)bk_text_columns(text) != wcswidth(wide, length))
            ck_abort_msg("%zu columns for \"%s\"", bk_text_columns(text), text);
        bk_arena_reset(arena);
    }
    bk_arena_free(arena);
}
END_TEST

START_TEST(other_bytes_count_one_column_each)
{
    ck_assert_uint_eq(bk_text_columns(""), 0);
    ck_assert_uint_eq(bk_text_columns("a\xFF\xC3 "), 4);
    ck_assert_uint_eq(bk_text_columns("a\tb"), 3);
    ck_assert_uint_eq(bk_text_columns("\xE2\x80"), 2);
}
END_TEST

START_TEST(a_cluster_is_never_split)
{
    static const struct {
        const char *text;
        size_t columns, bytes;
    } cases[] = {
        {"hem", 2, 2},
        {"hem", 3, 3},
        {"hem", 9, 3},
        {"hem", 0, 0},
        {"", 5, 0},
        {"e\u0301x", 1, 3},
        {"ae\u0301x", 1, 1},
        {"日本", 3, 3},
        {"日本", 1, 0},
        {"a日", 2, 1},
        {"\u1112\u1161\u11ABx", 2, 9},   // one syllable of three letters
        {"\U0001F1EB\U0001F1F7x", 1, 0}, // a flag is two halves of one column each
        {"\U0001F1EB\U0001F1F7x", 2, 8},
        {"\U0001F44D\U0001F3FDx", 3, 0}, // a thumb and its colour
        {"\U0001F44D\U0001F3FDx", 4, 8},
        {"a\r\nb", 2, 1},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        ck_assert_msg(bk_text_fit(cases[i].text, cases[i].columns) == cases[i].bytes,
                      "%zu bytes of \"%s\" fit %zu", bk_text_fit(cases[i].text, cases[i].columns),
                      cases[i].text, cases[i].columns);
}
END_TEST

START_TEST(a_step_goes_over_one_cluster)
{
    ck_assert_uint_eq(bk_text_step(""), 0);
    ck_assert_uint_eq(bk_text_step("ab"), 1);
    ck_assert_uint_eq(bk_text_step("e\xCC\x81t"), 3);
    ck_assert_uint_eq(bk_text_step("\xFF"), 1);
}
END_TEST

START_TEST(what_fits_is_the_most_that_does)
{
    bk_arena *arena = bk_arena_new();
    uint32_t state = 2;
    for (int i = 0; i < ROUNDS; i++) {
        const char *text = make_text(arena, &state);
        size_t columns = next_random(&state) % 20;
        size_t bytes = bk_text_fit(text, columns);
        size_t all = bk_text_columns(text);
        if (bk_text_columns(bk_arena_bytes(arena, text, bytes)) > columns)
            ck_abort_msg("\"%s\" passes %zu columns", text, columns);
        if ((all <= columns) != (text[bytes] == '\0'))
            ck_abort_msg("\"%s\" of %zu columns in %zu", text, all, columns);
        if (bytes > 0 && bk_text_fit(text, columns + 1) < bytes)
            ck_abort_msg("less of \"%s\" fits more columns", text);
        bk_arena_reset(arena);
    }
    bk_arena_free(arena);
}
END_TEST

START_TEST(long_text_is_cut_at_a_word_where_one_ends_late)
{
    static const struct {
        const char *text;
        size_t columns;
        const char *cut, *ascii;
    } cases[] = {
        {"black velvet cloak", 18, "black velvet cloak", "black velvet cloak"},
        {"black velvet cloak", 17, "black velvet…", "black velvet..."},
        {"black velvet cloak", 13, "black velvet…", "black velv..."},
        {"black velvet cloak", 12, "black velve…", "black vel..."},
        {"black velvet cloak", 8, "black v…", "black..."},
        {"black velvet cloak", 7, "black…", "blac..."},
        {"black velvet cloak", 1, "…", "."},
        {"black velvet cloak", 2, "b…", ".."},
        {"black velvet cloak", 3, "bl…", "..."},
        {"black velvet cloak", 0, "", ""},
        {"日本日本", 6, "日本…", "日..."},
        {"ab      cd", 7, "ab…", "ab..."},
        {"", 0, "", ""},
    };
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        ck_assert_str_eq(bk_text_cut(arena, cases[i].text, cases[i].columns, false), cases[i].cut);
        ck_assert_str_eq(bk_text_cut(arena, cases[i].text, cases[i].columns, true), cases[i].ascii);
    }
    bk_arena_free(arena);
}
END_TEST

START_TEST(cut_text_fits_and_begins_as_the_whole_does)
{
    bk_arena *arena = bk_arena_new();
    uint32_t state = 3;
    for (int i = 0; i < ROUNDS; i++) {
        const char *text = make_text(arena, &state);
        size_t columns = next_random(&state) % 20;
        const char *cut = bk_text_cut(arena, text, columns, false);
        if (bk_text_columns(cut) > columns)
            ck_abort_msg("\"%s\" passes %zu columns", cut, columns);
        if (bk_text_columns(text) <= columns ? strcmp(cut, text) != 0
                                             : strncmp(cut, text, strlen(cut) - (columns == 0 ? 0 : 3)) != 0)
            ck_abort_msg("\"%s\" is not \"%s\" cut to %zu", cut, text, columns);
        bk_arena_reset(arena);
    }
    bk_arena_free(arena);
}
END_TEST

/// The lines of `text`, joined by `|`.
static const char *wrapped(bk_arena *arena, const char *text, size_t columns)
{
    size_t count = 99;
    char **lines = bk_text_wrap(arena, text, columns, &count);
    const char *joined = "";
    for (size_t i = 0; i < count; i++)
        joined = bk_arena_print(arena, "%s%s%s", joined, i > 0 ? "|" : "", lines[i]);
    return bk_arena_print(arena, "%zu:%s", count, joined);
}

START_TEST(lines_are_broken_at_words)
{
    static const struct {
        const char *text;
        size_t columns;
        const char *lines;
    } cases[] = {
        {"", 10, "0:"},
        {"sew the hem", 20, "1:sew the hem"},
        {"sew the hem", 11, "1:sew the hem"},
        {"sew the hem", 10, "2:sew the|hem"},
        {"sew the hem", 7, "2:sew the|hem"},
        {"sew the hem", 6, "3:sew|the|hem"},
        {"sew  the hem", 4, "3:sew|the|hem"},
        {"unpickable seam", 4, "4:unpi|ckab|le|seam"},
        {"a\n\nb\n", 9, "3:a||b"},
        {"a\r\nb", 9, "2:a|b"},
        {"a\n\n", 9, "2:a|"},
        {"  in two", 8, "1:  in two"},
        {"end   ", 9, "1:end"},
        {"日本日本", 5, "2:日本|日本"},
        {"日", 1, "1:日"},
        {"ab", 0, "2:a|b"},
        {"ab \u0301c", 2, "2:ab| \u0301c"},
    };
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        ck_assert_str_eq(wrapped(arena, cases[i].text, cases[i].columns), cases[i].lines);
    bk_arena_free(arena);
}
END_TEST

/// Adds all but the spaces.
static void add_ink(bk_buffer *ink, const char *text)
{
    for (; *text != '\0'; text++)
        if (*text != ' ')
            bk_buffer_char(ink, *text);
    bk_buffer_text(ink, "");
}

START_TEST(wrapping_loses_nothing_and_keeps_within_the_columns)
{
    bk_arena *arena = bk_arena_new();
    uint32_t state = 4;
    for (int i = 0; i < ROUNDS; i++) {
        const char *text = make_text(arena, &state);
        size_t columns = 4 + next_random(&state) % 12;
        size_t count = 0;
        char **lines = bk_text_wrap(arena, text, columns, &count);
        bk_buffer before = {0}, after = {0};
        add_ink(&before, text);
        add_ink(&after, "");
        for (size_t line = 0; line < count; line++) {
            if (bk_text_columns(lines[line]) > columns)
                ck_abort_msg("\"%s\" passes %zu columns", lines[line], columns);
            add_ink(&after, lines[line]);
        }
        if (strcmp(before.bytes, after.bytes) != 0)
            ck_abort_msg("\"%s\" became \"%s\"", before.bytes, after.bytes);
        bk_buffer_free(&before);
        bk_buffer_free(&after);
        bk_arena_reset(arena);
    }
    bk_arena_free(arena);
}
END_TEST

BK_TEST_MAIN("width", texts_are_as_wide_as_the_c_library_says, other_bytes_count_one_column_each,
             a_cluster_is_never_split, a_step_goes_over_one_cluster, what_fits_is_the_most_that_does,
             long_text_is_cut_at_a_word_where_one_ends_late, cut_text_fits_and_begins_as_the_whole_does,
             lines_are_broken_at_words, wrapping_loses_nothing_and_keeps_within_the_columns)
