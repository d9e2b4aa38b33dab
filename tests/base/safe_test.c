#include "bodkin/base/safe.h"

#include <locale.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <wchar.h>

#include "bodkin/base/glyph.h"
#include "bodkin/base/utf8.h"
#include "bodkin/base/width.h"
#include "support/testing.h"

enum { LAST_CODE = 0x10FFFF, FIRST_SURROGATE = 0xD800, LAST_SURROGATE = 0xDFFF, ROUNDS = 50000, MOST = 40 };

typedef struct pair {
    const char *text, *made;
} pair;

START_TEST(plain_text_stays_as_it_is)
{
    static const char *const plain[] = {"",
                                        "black velvet cloak ~!",
                                        "Crêpe de Chine, 2½ m",
                                        "日本",
                                        "한글",
                                        "e\u0301",
                                        "\u05E9\u05DC\u05D5\u05DD",
                                        "नमस्ते",
                                        "━ ━ ┃· ·",
                                        "\U0001F9F5"};
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < sizeof plain / sizeof *plain; i++)
        ck_assert_str_eq(bk_text_safe(arena, plain[i], false), plain[i]);
    bk_arena_free(arena);
}
END_TEST

START_TEST(what_could_harm_becomes_visible)
{
    static const pair cases[] = {
        {"\x1B[31mred", "·[31mred"},
        {"bell\a", "bell·"},
        {"\x7F", "·"},
        {"\xC2\x85", "·"},
        {"\xC2\x9B"
         "31m",
         "·31m"},
        {"a\nb\tc\rd\r\ne", "a b c d e"},
        {"\u202Egnp.exe", "·gnp.exe"},
        {"\u2066x\u2069", "·x·"},
        {"a\u200Bb\u200Dc\uFEFF", "a·b·c·"},
        {"a\u2028b\u2029c", "a·b·c"},
        {"soft\u00ADhyphen", "soft·hyphen"},
        {"\U000E0041", "·"},
        {"\uE000\U0010FFFF\u0378", "···"},
        {"\xFF\xC3x\xED\xA0\x80", "??x???"},
        {"\xC0\x80", "??"},
        {"\u3164", "·"},
    };
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        ck_assert_str_eq(bk_text_safe(arena, cases[i].text, false), cases[i].made);
    bk_arena_free(arena);
}
END_TEST

START_TEST(marks_pile_up_to_four_and_sit_on_something)
{
    static const pair cases[] = {
        {"z\u0301\u0302\u0303\u0304", "z\u0301\u0302\u0303\u0304"},
        {"z\u0301\u0302\u0303\u0304\u0305\u0306y\u0301", "z\u0301\u0302\u0303\u0304y\u0301"},
        {"\u0301", "·\u0301"},
        {"\u0301\u0301\u0301\u0301\u0301\u0301", "·\u0301\u0301\u0301\u0301"},
        {"\x01\u0301", "·\u0301"},
        {"\xFF\u0301", "?\u0301"},
        {"\u1161", "·\u1161"},
    };
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        ck_assert_str_eq(bk_text_safe(arena, cases[i].text, false), cases[i].made);
    bk_arena_free(arena);
}
END_TEST

START_TEST(one_selector_is_dropped_and_more_are_shown)
{
    static const pair cases[] = {
        {"\u2764\uFE0F!", "\u2764!"},
        {"\u2764\uFE0F\uFE0F", "\u2764·"},
        {"\uFE0F", "·"},
        {" \uFE0F", " ·"},
        {"a\x01\uFE0F", "a··"},
        {"\u845B\U000E0100", "\u845B"},
        {"1\uFE0F\u20E3", "1\u20E3"},
    };
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        ck_assert_str_eq(bk_text_safe(arena, cases[i].text, false), cases[i].made);
    bk_arena_free(arena);
}
END_TEST

START_TEST(ascii_keeps_the_letter_below_the_accent)
{
    static const pair cases[] = {
        {"Crêpe", "Crepe"},
        {"e\u0301", "e"},
        {"Łódź Øre Straße Æ", "Lodz Ore Strasse AE"},
        {"“2½ m” – ﬁne…", "\"2 1/2 m\" - fine..."},
        {"日本", "??"},
        {"\x1B[m", "?[m"},
        {"\xFF", "?"},
        {"\u0301", "?"},
        {"a\u00A0b\nc", "a b c"},
        {"plain", "plain"},
    };
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        ck_assert_str_eq(bk_text_safe(arena, cases[i].text, true), cases[i].made);
    bk_arena_free(arena);
}
END_TEST

static uint32_t next_random(uint32_t *state)
{
    *state = *state * UINT32_C(1664525) + UINT32_C(1013904223);
    return *state >> 8;
}

/// A text of bytes and code points of every kind.
static void make_text(uint32_t *state, char text[MOST * BK_UTF8_MOST + 1])
{
    static const int32_t tops[] = {0x80, 0x100, 0x370, 0x3000, 0x10000, 0xE01F0, LAST_CODE};
    size_t length = 0;
    for (uint32_t left = next_random(state) % MOST; left > 0; left--) {
        uint32_t kind = next_random(state) % (sizeof tops / sizeof *tops + 1);
        if (kind < sizeof tops / sizeof *tops) {
            int32_t code = 1 + (int32_t)(next_random(state) % (uint32_t)tops[kind]);
            length += bk_utf8_write(code, text + length);
        } else {
            text[length++] = (char)(1 + next_random(state) % 255);
        }
    }
    text[length] = '\0';
}

static void check_drawable(const char *safe)
{
    wchar_t wide[MOST * BK_UTF8_MOST + 1];
    size_t length = mbstowcs(wide, safe, MOST * BK_UTF8_MOST + 1);
    if (length == (size_t)-1 || bk_text_fault(safe, strlen(safe)) != strlen(safe))
        ck_abort_msg("not well-formed: \"%s\"", safe);
    if (wcswidth(wide, length) != (int)bk_text_columns(safe))
        ck_abort_msg("\"%s\" is %d columns wide", safe, wcswidth(wide, length));
    if (length > 0 && wcwidth(wide[0]) == 0)
        ck_abort_msg("\"%s\" begins with a mark", safe);
    for (size_t i = 0; i < length; i++)
        if (bk_glyph_hidden((int32_t)wide[i]))
            ck_abort_msg("U+%04X came through", (unsigned)wide[i]);
}

START_TEST(whatever_comes_in_can_be_drawn)
{
    ck_assert_ptr_nonnull(setlocale(LC_ALL, "C.UTF-8"));
    bk_arena *arena = bk_arena_new();
    uint32_t state = 1;
    for (int i = 0; i < ROUNDS; i++) {
        char text[MOST * BK_UTF8_MOST + 1];
        make_text(&state, text);
        const char *safe = bk_text_safe(arena, text, false);
        check_drawable(safe);
        if (strcmp(bk_text_safe(arena, safe, false), safe) != 0)
            ck_abort_msg("\"%s\" is not safe yet", safe);
        bk_arena_reset(arena);
    }
    bk_arena_free(arena);
}
END_TEST

START_TEST(ascii_is_nothing_but_ascii)
{
    bk_arena *arena = bk_arena_new();
    uint32_t state = 2;
    for (int i = 0; i < ROUNDS; i++) {
        char text[MOST * BK_UTF8_MOST + 1];
        make_text(&state, text);
        for (const char *safe = bk_text_safe(arena, text, true); *safe != '\0'; safe++)
            if (*safe < ' ' || *safe > '~')
                ck_abort_msg("byte %02X came through", (unsigned char)*safe);
        bk_arena_reset(arena);
    }
    bk_arena_free(arena);
}
END_TEST

START_TEST(folded_text_is_found_however_it_is_written)
{
    static const pair cases[] = {
        {"", ""},
        {"Crêpe DE Chine", "crepe de chine"},
        {"E\u0301", "e"},
        {"Straße", "strasse"},
        {"ŁÓDŹ", "lodz"},
        {"ﬁne Øre", "fine ore"},
        {"ＡＢＣ", "abc"},
        {"Σίσυφος", "σισυφοσ"},
        {"İstanbul ısı", "istanbul isi"},
        {"it’s “so”", "it's \"so\""},
        {"co\u00ADat", "coat"},
        {"日本", "日本"},
        {"2½ m²", "2 1/2 m2"},
        {"a\xFF", "a\uFFFD"},
    };
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        ck_assert_str_eq(bk_text_fold(arena, cases[i].text), cases[i].made);
    bk_arena_free(arena);
}
END_TEST

START_TEST(folding_again_changes_nothing)
{
    bk_arena *arena = bk_arena_new();
    for (int32_t code = 1; code <= LAST_CODE; code++) {
        if (code >= FIRST_SURROGATE && code <= LAST_SURROGATE)
            continue;
        char text[BK_UTF8_MOST + 1] = "";
        bk_utf8_write(code, text);
        const char *folded = bk_text_fold(arena, text);
        if (strcmp(bk_text_fold(arena, folded), folded) != 0)
            ck_abort_msg("U+%04X folds to \"%s\", and that to \"%s\"", (unsigned)code, folded,
                         bk_text_fold(arena, folded));
        bk_arena_reset(arena);
    }
    bk_arena_free(arena);
}
END_TEST

START_TEST(nothing_is_the_empty_text)
{
    bk_arena *arena = bk_arena_new();
    ck_assert_str_eq(bk_text_safe(arena, NULL, false), "");
    ck_assert_str_eq(bk_text_fold(arena, NULL), "");
    bk_arena_free(arena);
}
END_TEST

BK_TEST_MAIN("safe", plain_text_stays_as_it_is, what_could_harm_becomes_visible,
             marks_pile_up_to_four_and_sit_on_something, one_selector_is_dropped_and_more_are_shown,
             ascii_keeps_the_letter_below_the_accent, whatever_comes_in_can_be_drawn,
             ascii_is_nothing_but_ascii, folded_text_is_found_however_it_is_written,
             folding_again_changes_nothing, nothing_is_the_empty_text)
