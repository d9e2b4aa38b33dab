#include <inttypes.h>
#include <stdio.h>

#include "bodkin/base/typed.h"
#include "support/testing.h"

// 1 in = 25.4 mm and 1 yd = 0.9144 m exactly: international yard and pound agreement, 1959. The values in the tables were
// worked out from that as exact fractions and rounded half up.

typedef struct length_case {
    const char *text;
    bk_length length; ///< micrometres
} length_case;

static void check_lengths(bk_unit unit, const length_case *cases, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        bk_length length = -1;
        bk_reading reading = bk_length_typed(cases[i].text, unit, &length);
        ck_assert_msg(reading == BK_READ_OK && length == cases[i].length, "\"%s\": reading %d, %" PRId64,
                      cases[i].text, (int)reading, length);
    }
}

#define CHECK_LENGTHS(unit, cases) check_lengths(unit, cases, sizeof(cases) / sizeof *(cases))

START_TEST(a_bare_number_is_in_the_unit_of_the_production)
{
    static const length_case cm[] = {
        {"92", 920000},     {"92.5", 925000},
        {"92,5", 925000},   {" 92.5 ", 925000},
        {"0", 0},           {".5", 5000},
        {",5", 5000},       {"92½", 925000},
        {"92 1/2", 925000}, {"92 ¼", 922500},
        {"92-3/4", 927500}, {"½", 5000},
        {"0.00005", 1},     {"0.00004999999999", 0},
        {"0,125", 1250},    {"92,55", 925500},
        {"92.375", 923750}, {"92,3755", 923755},
    };
    CHECK_LENGTHS(BK_CM, cm);
    static const length_case inches[] = {
        {"36", 914400},      {"36.5", 927100},   {"36,5", 927100},   {"36 3/8", 923925},
        {"36-3/8", 923925},  {"36⅜", 923925},    {"36 ⅜", 923925},   {"3/8", 9525},
        {"⅛", 3175},         {"36⅝", 930275},    {"36⅞", 936625},    {"36¾", 933450},
        {"36 1/16", 915988}, {"9/8", 28575},     {"36 3⁄8", 923925}, {"36\u00A03/8", 923925},
        {"36‑3/8", 923925},  {"36.375", 923925}, {"1/64", 397},
    };
    CHECK_LENGTHS(BK_INCH, inches);
}
END_TEST

START_TEST(a_written_unit_counts_whatever_is_usual)
{
    static const length_case cases[] = {
        {"92.5 cm", 925000},        {"92.5CM", 925000},    {"92,5 cm", 925000},   {"925 mm", 925000},
        {"1.64 m", 1640000},        {"1,64m", 1640000},    {"36 in", 914400},     {"36 inches", 914400},
        {"1 Inch", 25400},          {"36 3/8 in", 923925}, {"36⅜in", 923925},     {"36\"", 914400},
        {"36 3/8\"", 923925},       {"36″", 914400},       {"36''", 914400},      {"36”", 914400},
        {"5 ft", 1524000},          {"5'", 1524000},       {"5′", 1524000},       {"5 feet", 1524000},
        {"1 foot", 304800},         {"5.5 ft", 1676400},   {"2 yd", 1828800},     {"1½ yd", 1371600},
        {"2 1/2 m", 2500000},       {"92½ cm", 925000},    {"92 3/8 cm", 923750}, {"1000 m", 1000000000},
        {"1000000 mm", 1000000000},
    };
    CHECK_LENGTHS(BK_CM, cases);
    CHECK_LENGTHS(BK_INCH, cases);
}
END_TEST

START_TEST(feet_and_inches_go_together)
{
    static const length_case cases[] = {
        {"5' 4\"", 1625600},     {"5'4\"", 1625600},     {"5'4", 1625600},
        {"5' 4", 1625600},       {"5 ft 4 in", 1625600}, {"5ft4", 1625600},
        {"5ft4in", 1625600},     {"5 FT 4 IN", 1625600}, {"5′ 4″", 1625600},
        {"5’4”", 1625600},       {"5'4 1/2\"", 1638300}, {"5' 4½", 1638300},
        {"5'4.5", 1638300},      {"5'4,5\"", 1638300},   {"5' 4-1/2", 1638300},
        {"5' 1/2\"", 1536700},   {"5'½", 1536700},       {"5'0", 1524000},
        {"5'11 15/16", 1827213}, {"0' 4\"", 101600},     {"5 feet 4 inches", 1625600},
        {"5' 4 in", 1625600},
    };
    CHECK_LENGTHS(BK_CM, cases);
    CHECK_LENGTHS(BK_INCH, cases);
}
END_TEST

START_TEST(metres_and_centimetres_go_together)
{
    static const length_case cases[] = {
        {"1m64", 1640000},   {"1 m 64", 1640000},  {"1M64", 1640000},     {"1m64.5", 1645000},
        {"1m64,5", 1645000}, {"1m05", 1050000},    {"1 m 5 cm", 1050000}, {"1m64cm", 1640000},
        {"0m92", 920000},    {"1 m 64½", 1645000}, {"1m00", 1000000},     {"2 m 99.9", 2999000},
    };
    CHECK_LENGTHS(BK_CM, cases);
    CHECK_LENGTHS(BK_INCH, cases);
}
END_TEST

START_TEST(what_is_no_length_is_told_apart)
{
    static const struct {
        const char *text;
        bk_reading reading;
    } cases[] = {
        {"", BK_READ_EMPTY},
        {" ", BK_READ_EMPTY},
        {NULL, BK_READ_EMPTY},
        {"x", BK_READ_NOT_NUMBER},
        {"cm", BK_READ_NOT_NUMBER},
        {"'", BK_READ_NOT_NUMBER},
        {"92.5.1", BK_READ_NOT_NUMBER},
        {"92 5", BK_READ_NOT_NUMBER},
        {"92.5 ½", BK_READ_NOT_NUMBER},
        {"92,5,1", BK_READ_COMMA},
        {"1,250", BK_READ_COMMA},
        {"1,250 mm", BK_READ_COMMA},
        {"1.640,5", BK_READ_COMMA},
        {"36 3/8", BK_READ_NO_UNIT},
        {"36⅜", BK_READ_NO_UNIT},
        {"36 3/7", BK_READ_NO_UNIT},
        {"36 3/7 in", BK_READ_NOT_NUMBER},
        {"36 3/16 cm", BK_READ_NOT_NUMBER},
        {"36 9/8 in", BK_READ_NOT_NUMBER},
        {"92.5 km", BK_READ_UNIT},
        {"92.5 c m", BK_READ_UNIT},
        {"-5", BK_READ_NEGATIVE},
        {"-5 cm", BK_READ_NEGATIVE},
        {"5' -4\"", BK_READ_NEGATIVE},
        {"5' 12\"", BK_READ_NOT_NUMBER},
        {"5.5' 4\"", BK_READ_NOT_NUMBER},
        {"5½' 4\"", BK_READ_NOT_NUMBER},
        {"5' 4 cm", BK_READ_NOT_NUMBER},
        {"5' 4' 3", BK_READ_NOT_NUMBER},
        {"5' 4\" 3", BK_READ_NOT_NUMBER},
        {"4\" 5'", BK_READ_NOT_NUMBER},
        {"1m5", BK_READ_NOT_NUMBER},
        {"1m645", BK_READ_NOT_NUMBER},
        {"1.5m64", BK_READ_NOT_NUMBER},
        {"1m100", BK_READ_NOT_NUMBER},
        {"1m64 in", BK_READ_NOT_NUMBER},
        {"5' x", BK_READ_NOT_NUMBER},
        {"1001 m", BK_READ_TOO_LARGE},
        {"100000.00005", BK_READ_TOO_LARGE},
        {"99999999999999999999999999", BK_READ_TOO_LARGE},
        {"99999999999999999999999999' 4\"", BK_READ_TOO_LARGE},
        {"999999' 4\"", BK_READ_TOO_LARGE},
        {"1537228672809129302' 4\"", BK_READ_TOO_LARGE}, // twelve times as much is 2^64 + 8
        {"1000001 mm", BK_READ_TOO_LARGE},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bk_length length = 77;
        bk_reading reading = bk_length_typed(cases[i].text, BK_CM, &length);
        ck_assert_msg(reading == cases[i].reading, "\"%s\": reading %d", cases[i].text, (int)reading);
        ck_assert_int_eq(length, 77);
    }
}
END_TEST

/// Micrometres of a number of sixteenths of an inch, rounded half up: a sixteenth is 15875 / 10 of them.
static bk_length from_sixteenths(int64_t sixteenths)
{
    return (sixteenths * 15875 + 5) / 10;
}

START_TEST(every_sixteenth_of_eight_feet_is_exact)
{
    for (int feet = 0; feet < 8; feet++)
        for (int inches = 0; inches < 12; inches++)
            for (int sixteenths = 0; sixteenths < 16; sixteenths++) {
                char text[32];
                bk_length together = -1, alone = -1;
                snprintf(text, sizeof text, "%d'%d %d/16\"", feet, inches, sixteenths);
                ck_assert_int_eq(bk_length_typed(text, BK_CM, &together), BK_READ_OK);
                snprintf(text, sizeof text, "%d %d/16", feet * 12 + inches, sixteenths);
                ck_assert_int_eq(bk_length_typed(text, BK_INCH, &alone), BK_READ_OK);
                bk_length wanted = from_sixteenths((feet * 12 + inches) * 16 + sixteenths);
                if (together != wanted || alone != wanted)
                    ck_abort_msg("%s: %" PRId64 " and %" PRId64, text, together, alone);
            }
}
END_TEST

START_TEST(every_millimetre_of_three_metres_is_exact)
{
    for (int mm = 0; mm < 3000; mm++) {
        char text[32];
        bk_length point = -1, comma = -1, together = -1;
        snprintf(text, sizeof text, "%d.%d", mm / 10, mm % 10);
        ck_assert_int_eq(bk_length_typed(text, BK_CM, &point), BK_READ_OK);
        snprintf(text, sizeof text, "%d,%d", mm / 10, mm % 10);
        ck_assert_int_eq(bk_length_typed(text, BK_CM, &comma), BK_READ_OK);
        snprintf(text, sizeof text, "%dm%02d.%d", mm / 1000, mm / 10 % 100, mm % 10);
        ck_assert_int_eq(bk_length_typed(text, BK_CM, &together), BK_READ_OK);
        ck_assert(point == mm * 1000 && comma == point && together == point);
    }
}
END_TEST

START_TEST(what_the_program_writes_is_read_back)
{
    for (bk_length length = 0; length < 3000000; length += 397)
        for (bk_unit unit = BK_CM; unit <= BK_INCH; unit++) {
            char text[BK_AMOUNT_ROOM];
            bk_length again = -1;
            bk_length_write(length, unit, text);
            if (bk_length_typed(text, unit, &again) != BK_READ_OK || again != length)
                ck_abort_msg("%" PRId64 " is written %s and read %" PRId64, length, text, again);
        }
}
END_TEST

BK_TEST_MAIN("typed_length", a_bare_number_is_in_the_unit_of_the_production,
             a_written_unit_counts_whatever_is_usual, feet_and_inches_go_together,
             metres_and_centimetres_go_together, what_is_no_length_is_told_apart,
             every_sixteenth_of_eight_feet_is_exact, every_millimetre_of_three_metres_is_exact,
             what_the_program_writes_is_read_back)
