#include "bodkin/base/length.h"

#include <inttypes.h>
#include <string.h>

#include "support/testing.h"

#define KILOMETRE INT64_C(1000000000)

typedef struct reading_case {
    const char *text;
    bk_length length;
} reading_case;

static void check_lengths(const reading_case *cases, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        bk_length length = -1;
        bk_reading reading = bk_length_read(cases[i].text, &length);
        ck_assert_msg(reading == BK_READ_OK && length == cases[i].length, "%s: reading %d, %" PRId64,
                      cases[i].text, (int)reading, length);
    }
}

START_TEST(lengths_are_read_in_every_unit)
{
    // 1 in = 25.4 mm and 1 yd = 0.9144 m exactly: international yard and pound agreement, 1959.
    static const reading_case cases[] = {
        {"1 in", 25400},       {"1 yd", 914400},          {"36 in", 914400},     {"3 ft", 914400},
        {"92.5 cm", 925000},   {"925 mm", 925000},        {"1.4 m", 1400000},    {"2 yd", 1828800},
        {"5 ft", 1524000},     {"36 3/8 in", 923925},     {"36-3/8 in", 923925}, {"36  3/8in", 923925},
        {"92.5cm", 925000},    {" 92.5  cm ", 925000},    {"0 cm", 0},           {"0 in", 0},
        {"3/8 in", 9525},      {"9/8 in", 28575},         {"1/2 in", 12700},     {"3/4 in", 19050},
        {"1/64 in", 397},      {"63/64 in", 25003},       {"1/32 in", 794},      {"1 3/32 in", 27781},
        {".5 m", 500000},      {"1.5 yd", 1371600},       {"007 mm", 7000},      {"36.375 in", 923925},
        {"1000 m", KILOMETRE}, {"1000000 mm", KILOMETRE}, {"0/8 in", 0},         {"1 0/8 in", 25400},
    };
    check_lengths(cases, sizeof cases / sizeof *cases);
}
END_TEST

START_TEST(half_a_micrometre_is_rounded_up)
{
    // The long ones were worked out by hand from exact fractions: half a micrometre is 1/50800 in, which is
    // 0.0000196850393700787401574803149606299212598425196850393700787401574803... with a period of 42 digits.
    static const reading_case cases[] = {
        {"36 1/16 in", 915988}, // 915987.5
        {"1/16 in", 1588},      // 1587.5
        {"0.00005 cm", 1},
        {"0.0000499999999999999999999999999999999999 cm", 0},
        {"0.00005000000000000000000000000000000000001 cm", 1},
        {"0.00015 cm", 2},
        {"0.000149999999999999999999999 cm", 1},
        {"0.0005 mm", 1},
        {"0.00000049 m", 0},
        {"0.00001968503937007874015748031496062992125984251968503937007874 in", 0},
        {"0.00001968503937007874015748031496062992125984251968503937007875 in", 1},
        {"999.9999995 m", KILOMETRE},
        {"1000.0000004999 m", KILOMETRE},
    };
    check_lengths(cases, sizeof cases / sizeof *cases);
}
END_TEST

START_TEST(what_is_no_length_is_told_apart)
{
    static const struct {
        const char *text;
        bk_reading reading;
    } cases[] = {
        {"", BK_READ_EMPTY},
        {"  ", BK_READ_EMPTY},
        {NULL, BK_READ_EMPTY},
        {"long", BK_READ_NOT_NUMBER},
        {"cm", BK_READ_NOT_NUMBER},
        {"5. cm", BK_READ_NOT_NUMBER},
        {"1.2.3 cm", BK_READ_NOT_NUMBER},
        {"12 5 cm", BK_READ_NOT_NUMBER},
        {"36 3/7 in", BK_READ_NOT_NUMBER},
        {"36 3/0 in", BK_READ_NOT_NUMBER},
        {"36 3/128 in", BK_READ_NOT_NUMBER},
        {"36 9/8 in", BK_READ_NOT_NUMBER},
        {"36 8/8 in", BK_READ_NOT_NUMBER},
        {"36.5 3/8 in", BK_READ_NOT_NUMBER},
        {"3.5/8 in", BK_READ_NOT_NUMBER},
        {"3/ in", BK_READ_NOT_NUMBER},
        {"36 3/8 cm", BK_READ_NOT_NUMBER},
        {"2 1/2 yd", BK_READ_NOT_NUMBER},
        {"36 -3/8 in", BK_READ_NOT_NUMBER},
        {"36- 3/8 in", BK_READ_NOT_NUMBER},
        {"36 3/8 3/8 in", BK_READ_NOT_NUMBER},
        {"92,5", BK_READ_COMMA},
        {"92,5 cm", BK_READ_COMMA},
        {"92.5", BK_READ_NO_UNIT},
        {"0", BK_READ_NO_UNIT},
        {"36 3/8", BK_READ_NO_UNIT},
        {"92.5 km", BK_READ_UNIT},
        {"92.5 CM", BK_READ_UNIT},
        {"92.5 c m", BK_READ_UNIT},
        {"92.5 cm m", BK_READ_UNIT},
        {"92.5 cmm", BK_READ_UNIT},
        {"92.5 c", BK_READ_UNIT},
        {"1e3 cm", BK_READ_UNIT},
        {"-1 cm", BK_READ_NEGATIVE},
        {"-3/8 in", BK_READ_NEGATIVE},
        {"1000.0000005 m", BK_READ_TOO_LARGE},
        {"1001 m", BK_READ_TOO_LARGE},
        {"99999999999999999999999999 mm", BK_READ_TOO_LARGE},
        {"99999999999999999999999999/8 in", BK_READ_TOO_LARGE},
        {"18446744073709551615 yd", BK_READ_TOO_LARGE},
        {"5 99999999999999999999999999/8 in", BK_READ_NOT_NUMBER},
        {"5 1/99999999999999999999999999 in", BK_READ_NOT_NUMBER},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bk_length length = 77;
        bk_reading reading = bk_length_read(cases[i].text, &length);
        ck_assert_msg(reading == cases[i].reading, "%s: reading %d", cases[i].text, (int)reading);
        ck_assert_int_eq(length, 77);
    }
}
END_TEST

START_TEST(lengths_are_written_in_their_unit)
{
    static const struct {
        bk_length length;
        const char *cm, *inch;
    } cases[] = {
        {0, "0 cm", "0 in"},
        {925000, "92.5 cm", "92.5 cm"},
        {923925, "92.3925 cm", "36 3/8 in"},
        {914400, "91.44 cm", "36 in"},
        {915988, "91.5988 cm", "36 1/16 in"},
        {915987, "91.5987 cm", "91.5987 cm"},
        {9525, "0.9525 cm", "3/8 in"},
        {12700, "1.27 cm", "1/2 in"},
        {6350, "0.635 cm", "1/4 in"},
        {1588, "0.1588 cm", "1/16 in"},
        {1, "0.0001 cm", "0.0001 cm"},
        {397, "0.0397 cm", "0.0397 cm"},
        {-12700, "-1.27 cm", "-1/2 in"},
        {-38100, "-3.81 cm", "-1 1/2 in"},
        {KILOMETRE, "100000 cm", "100000 cm"},
        {INT64_MAX, "922337203685477.5807 cm", "922337203685477.5807 cm"},
        {BK_NO_AMOUNT, "", ""},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char text[BK_AMOUNT_ROOM];
        ck_assert_str_eq(bk_length_write(cases[i].length, BK_CM, text), cases[i].cm);
        ck_assert_str_eq(bk_length_write(cases[i].length, BK_INCH, text), cases[i].inch);
    }
}
END_TEST

static void check_comes_back(bk_length length)
{
    for (bk_unit unit = BK_CM; unit <= BK_INCH; unit++) {
        char text[BK_AMOUNT_ROOM];
        bk_length again = -1;
        if (bk_length_read(bk_length_write(length, unit, text), &again) != BK_READ_OK || again != length)
            ck_abort_msg("%" PRId64 " is written %s and read %" PRId64, length, text, again);
    }
}

START_TEST(every_length_comes_back_as_it_was_written)
{
    for (bk_length length = 0; length < 300000; length++)
        check_comes_back(length);
    for (bk_length length = 300000; length <= KILOMETRE; length += 997) // a prime: all endings occur
        check_comes_back(length);
    check_comes_back(KILOMETRE);
}
END_TEST

START_TEST(every_sixteenth_is_written_as_inches)
{
    for (int64_t sixteenths = 0; sixteenths < 20000; sixteenths++) {
        bk_length length = (sixteenths * 2 * BK_MICROMETRES_PER_INCH / 16 + 1) / 2;
        char text[BK_AMOUNT_ROOM];
        bk_length_write(length, BK_INCH, text);
        if (strstr(text, " in") == NULL)
            ck_abort_msg("%" PRId64 " sixteenths are written %s", sixteenths, text);
        check_comes_back(length);
    }
}
END_TEST

BK_TEST_MAIN("length", lengths_are_read_in_every_unit, half_a_micrometre_is_rounded_up,
             what_is_no_length_is_told_apart, lengths_are_written_in_their_unit,
             every_length_comes_back_as_it_was_written, every_sixteenth_is_written_as_inches)
