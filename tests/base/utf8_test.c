// Held against the C library's own UTF-8: its conversions, and the C.UTF-8 locale.

#include "bodkin/base/utf8.h"

#include <iconv.h>
#include <limits.h>
#include <locale.h>
#include <stdbool.h>
#include <string.h>
#include <wchar.h>

#include "support/testing.h"

enum { LAST_CODE = 0x10FFFF, FIRST_SURROGATE = 0xD800, LAST_SURROGATE = 0xDFFF };

static bool is_surrogate(int32_t code)
{
    return code >= FIRST_SURROGATE && code <= LAST_SURROGATE;
}

START_TEST(every_code_point_is_written_as_the_c_library_does)
{
    ck_assert_ptr_nonnull(setlocale(LC_ALL, "C.UTF-8"));
    for (int32_t code = 0; code <= LAST_CODE; code++) {
        if (is_surrogate(code))
            continue;
        char ours[BK_UTF8_MOST], theirs[MB_LEN_MAX];
        mbstate_t state = {0};
        size_t length = bk_utf8_write(code, ours);
        if (length != wcrtomb(theirs, (wchar_t)code, &state) || memcmp(ours, theirs, length) != 0)
            ck_abort_msg("U+%04X is written otherwise", (unsigned)code);
        int32_t again = -1;
        if (bk_utf8_read(ours, length, &again) != length || again != code)
            ck_abort_msg("U+%04X does not come back", (unsigned)code);
        if (bk_utf8_read(ours, length - 1, &again) != 0)
            ck_abort_msg("U+%04X is read from less than it takes", (unsigned)code);
    }
}
END_TEST

/// Bytes at which the rules of UTF-8 turn.
static const unsigned char edges[] = {0x01, 0x41, 0x7F, 0x80, 0x8F, 0x90, 0x9F, 0xA0, 0xBF, 0xC0, 0xC1,
                                      0xC2, 0xDF, 0xE0, 0xE1, 0xEC, 0xED, 0xEE, 0xEF, 0xF0, 0xF1, 0xF3,
                                      0xF4, 0xF5, 0xF7, 0xF8, 0xFB, 0xFC, 0xFD, 0xFE, 0xFF};

enum { EDGES = sizeof edges };

/// Where the C library's conversion finds the first fault in four bytes.
static size_t fault_by_the_library(iconv_t conversion, const char bytes[4])
{
    char copy[4], wide[4 * sizeof(int32_t)];
    memcpy(copy, bytes, sizeof copy);
    char *in = copy, *out = wide;
    size_t in_left = sizeof copy, out_left = sizeof wide;
    iconv(conversion, NULL, NULL, NULL, NULL);
    iconv(conversion, &in, &in_left, &out, &out_left);
    return sizeof copy - in_left;
}

START_TEST(faults_are_found_where_the_c_library_finds_them)
{
    iconv_t conversion = iconv_open("UTF-32LE", "UTF-8");
    ck_assert(conversion != (iconv_t)-1); // NOLINT(performance-no-int-to-ptr)
    for (size_t i = 0; i < (size_t)EDGES * EDGES * EDGES * EDGES; i++) {
        char bytes[4];
        for (size_t place = 0, rest = i; place < sizeof bytes; place++, rest /= EDGES)
            bytes[place] = (char)edges[rest % EDGES];
        if (bk_text_fault(bytes, sizeof bytes) != fault_by_the_library(conversion, bytes))
            ck_abort_msg("otherwise for %02X %02X %02X %02X", (unsigned char)bytes[0],
                         (unsigned char)bytes[1], (unsigned char)bytes[2], (unsigned char)bytes[3]);
    }
    iconv_close(conversion);
}
END_TEST

START_TEST(a_fault_is_found_at_every_place_of_a_long_text)
{
    char text[64];
    memset(text, 'a', sizeof text);
    ck_assert_uint_eq(bk_text_fault(text, sizeof text), sizeof text);
    ck_assert_uint_eq(bk_text_fault(text, 0), 0);
    for (size_t i = 0; i < sizeof text; i++) {
        text[i] = (char)0x80;
        ck_assert_uint_eq(bk_text_fault(text, sizeof text), i);
        text[i] = 'a';
    }
}
END_TEST

START_TEST(a_nul_is_a_character_where_the_length_is_told)
{
    ck_assert_uint_eq(bk_text_fault("a\0\xFF", 3), 2);
}
END_TEST

START_TEST(stepping_never_passes_the_end)
{
    static const char *const cut_off[] = {"\xC3", "\xE2\x80", "\xF0\x9F\xA7", "\xE2", "\xF0\x9F"};
    for (size_t i = 0; i < sizeof cut_off / sizeof *cut_off; i++) {
        int32_t code = 0;
        size_t steps = 0;
        for (const char *at = cut_off[i]; *at != '\0'; steps++) {
            ck_assert_uint_eq(bk_utf8_next(at, &code), 1);
            ck_assert_int_eq(code, BK_UTF8_FAULT);
            at++;
        }
        ck_assert_uint_eq(steps, strlen(cut_off[i]));
    }
    int32_t code = 0;
    ck_assert_uint_eq(bk_utf8_next("…", &code), 3);
    ck_assert_int_eq(code, 0x2026);
}
END_TEST

BK_TEST_MAIN("utf8", every_code_point_is_written_as_the_c_library_does,
             faults_are_found_where_the_c_library_finds_them, a_fault_is_found_at_every_place_of_a_long_text,
             a_nul_is_a_character_where_the_length_is_told, stepping_never_passes_the_end)
