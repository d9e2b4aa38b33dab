#include "bodkin/trade/words.h"

#include "support/testing.h"

enum { MOST_WORDS = 12 };

// The words of design, section 5, in the order written there.
static const struct {
    const bk_words *words;
    size_t count;
    const char *items[MOST_WORDS];
} sets[] = {
    {&bk_kind_words,
     BK_KINDS,
     {"source", "draft", "cut", "tack", "machine", "press", "fit", "hand", "craft", "dye"}},
    {&bk_origin_words, BK_ORIGINS, {"make", "alter", "buy", "hire", "borrow", "stock"}},
    {&bk_outcome_words, BK_OUTCOMES, {"fits", "again", "missed"}},
    {&bk_occasion_words,
     BK_OCCASIONS,
     {"measuring", "fittings", "photo", "parade", "tech", "dress", "preview", "opening", "performance",
      "closing", "strike", "return"}},
    {&bk_material_unit_words, BK_MATERIAL_UNITS, {"m", "yd", "each"}},
    {&bk_length_unit_words, 2, {"cm", "in"}},
};

START_TEST(each_set_has_its_words_in_their_order)
{
    for (size_t i = 0; i < sizeof sets / sizeof sets[0]; i++) {
        ck_assert_uint_eq(sets[i].words->count, sets[i].count);
        ck_assert_ptr_nonnull(sets[i].words->what);
        for (size_t j = 0; j < sets[i].count; j++) {
            ck_assert_str_eq(bk_word_text(sets[i].words, (int)j), sets[i].items[j]);
            ck_assert_int_eq(bk_word_find(sets[i].words, sets[i].items[j]), (int)j);
        }
    }
}
END_TEST

START_TEST(the_numbers_are_those_of_the_words)
{
    ck_assert_int_eq(bk_word_find(&bk_kind_words, "fit"), BK_FIT);
    ck_assert_int_eq(bk_word_find(&bk_kind_words, "hand"), BK_HAND);
    ck_assert_int_eq(bk_word_find(&bk_origin_words, "alter"), BK_ALTER);
    ck_assert_int_eq(bk_word_find(&bk_outcome_words, "missed"), BK_MISSED);
    ck_assert_int_eq(bk_word_find(&bk_occasion_words, "dress"), BK_ON_DRESS);
    ck_assert_int_eq(bk_word_find(&bk_material_unit_words, "yd"), BK_YARD);
}
END_TEST

START_TEST(a_word_is_known_only_as_it_is_written)
{
    static const char *const unknown[] = {"", "Cut", "cut ", "cu", "cutt", "make"};
    for (size_t i = 0; i < sizeof unknown / sizeof unknown[0]; i++)
        ck_assert_int_eq(bk_word_find(&bk_kind_words, unknown[i]), BK_NO_WORD);
    ck_assert_int_eq(bk_word_find(&bk_kind_words, NULL), BK_NO_WORD);
}
END_TEST

START_TEST(what_is_not_known_has_no_text)
{
    ck_assert_ptr_null(bk_word_text(&bk_kind_words, BK_NO_WORD));
    ck_assert_ptr_null(bk_word_text(&bk_kind_words, BK_KINDS));
}
END_TEST

START_TEST(hand_sewing_is_for_those_who_can_sew_and_all_else_for_the_maker)
{
    for (int kind = 0; kind < BK_KINDS; kind++)
        ck_assert_int_eq(bk_usual_level((bk_kind)kind), kind == BK_HAND ? BK_LEVEL_SEWER : BK_LEVEL_MAKER);
}
END_TEST

BK_TEST_MAIN("words", each_set_has_its_words_in_their_order, the_numbers_are_those_of_the_words,
             a_word_is_known_only_as_it_is_written, what_is_not_known_has_no_text,
             hand_sewing_is_for_those_who_can_sew_and_all_else_for_the_maker)
