#include "bodkin/ui/length_words.h"
#include "support/testing.h"

// 1 in = 25.4 mm exactly (international yard and pound agreement 1959).

#define CM(hundredths) ((bk_length)(hundredths)*BK_MICROMETRES_PER_CM / 100)
#define SIXTEENTHS(count) (((bk_length)(count)*BK_MICROMETRES_PER_INCH + 8) / 16)

static void assert_text(const char *text, const char *expected)
{
    ck_assert_pstr_eq(text, expected);
}

START_TEST(a_measure_is_written_in_centimetres_or_in_fractions_of_an_inch)
{
    bk_arena *arena = bk_arena_new();
    assert_text(bk_length_number(CM(9250), BK_CM, arena), "92.5");
    assert_text(bk_length_number(CM(9225), BK_CM, arena), "92.25");
    assert_text(bk_length_number(SIXTEENTHS(36 * 16 + 6), BK_INCH, arena), "36 3/8");
    assert_text(bk_length_number(SIXTEENTHS(13), BK_INCH, arena), "13/16");
    assert_text(bk_length_number(SIXTEENTHS(38 * 16), BK_INCH, arena), "38");
    assert_text(bk_length_words(CM(7400), BK_CM, arena), "74 cm");
    assert_text(bk_length_words(SIXTEENTHS(24), BK_INCH, arena), "1 1/2 in");
    assert_text(bk_length_number(BK_NO_AMOUNT, BK_CM, arena), NULL);
    assert_text(bk_length_words(BK_NO_AMOUNT, BK_CM, arena), NULL);
    bk_arena_free(arena);
}
END_TEST

START_TEST(what_was_taken_in_the_other_unit_is_rounded_and_says_so)
{
    bk_arena *arena = bk_arena_new();
    assert_text(bk_length_number(SIXTEENTHS(36 * 16 + 6), BK_CM, arena), "~92.4"); // 92.3925 cm
    assert_text(bk_length_number(CM(9250), BK_INCH, arena), "~36 7/16");           // 36.417 in
    assert_text(bk_length_words(SIXTEENTHS(36 * 16 + 6), BK_CM, arena), "36 3/8 in (~92.4 cm)");
    assert_text(bk_length_words(CM(9250), BK_INCH, arena), "92.5 cm (~36 7/16 in)");
    assert_text(bk_length_words(CM(9250) + 1, BK_CM, arena), "~92.5 cm");
    assert_text(bk_length_number(SIXTEENTHS(32), BK_CM, arena), "5.08");
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_change_has_its_sign)
{
    bk_arena *arena = bk_arena_new();
    assert_text(bk_change_number(CM(350), BK_CM, arena), "+3.5");
    assert_text(bk_change_number(-CM(200), BK_CM, arena), "-2");
    assert_text(bk_change_number(0, BK_CM, arena), "0");
    assert_text(bk_change_number(SIXTEENTHS(3) - SIXTEENTHS(11), BK_INCH, arena), "-1/2");
    assert_text(bk_change_number(BK_NO_AMOUNT, BK_CM, arena), NULL);
    bk_arena_free(arena);
}
END_TEST

BK_TEST_MAIN("measures in words", a_measure_is_written_in_centimetres_or_in_fractions_of_an_inch,
             what_was_taken_in_the_other_unit_is_rounded_and_says_so, a_change_has_its_sign)
