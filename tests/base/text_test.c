#include "bodkin/base/text.h"

#include <stdint.h>
#include <string.h>

#include "support/testing.h"

START_TEST(numbers_in_keys_come_in_the_order_people_count)
{
    static const char *const in_order[] = {"",    "01", "1",    "1A",  "2A", "2B",  "10A",
                                           "10a", "A1", "A01B", "A1B", "A2", "A10", "A100000000000000000000",
                                           "a",   "é"};
    size_t count = sizeof in_order / sizeof *in_order;
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < count; j++) {
            int order = bk_natural_order(in_order[i], in_order[j]);
            ck_assert_msg(i < j   ? order < 0
                          : i > j ? order > 0
                                  : order == 0,
                          "%s and %s", in_order[i], in_order[j]);
        }
}
END_TEST

START_TEST(no_key_comes_last)
{
    ck_assert_int_gt(bk_natural_order(NULL, "zz"), 0);
    ck_assert_int_lt(bk_natural_order("zz", NULL), 0);
    ck_assert_int_eq(bk_natural_order(NULL, NULL), 0);
}
END_TEST

/// Writes word `number` of all words of up to three letters of a small alphabet.
static void write_word(int number, char word[4])
{
    static const char letters[] = "019A";
    size_t length = 0;
    for (; number > 0 && length < 3; number /= 5)
        if (number % 5 > 0)
            word[length++] = letters[number % 5 - 1];
    word[length] = '\0';
}

START_TEST(the_order_is_total)
{
    enum { WORDS = 125 };
    char words[WORDS][4];
    for (int i = 0; i < WORDS; i++)
        write_word(i, words[i]);
    for (int i = 0; i < WORDS; i++)
        for (int j = 0; j < WORDS; j++) {
            int order = bk_natural_order(words[i], words[j]);
            if ((order == 0) != (strcmp(words[i], words[j]) == 0))
                ck_abort_msg("%s and %s", words[i], words[j]);
            for (int k = 0; order < 0 && k < WORDS; k++)
                if (bk_natural_order(words[j], words[k]) < 0 && bk_natural_order(words[i], words[k]) >= 0)
                    ck_abort_msg("%s, %s and %s", words[i], words[j], words[k]);
        }
}
END_TEST

START_TEST(nothing_is_the_same_only_as_nothing)
{
    char cape[] = "cape";
    ck_assert(bk_same_text("cape", cape));
    ck_assert(!bk_same_text("cape", "Cape"));
    ck_assert(!bk_same_text("cape", NULL));
    ck_assert(!bk_same_text(NULL, ""));
    ck_assert(bk_same_text(NULL, NULL));
}
END_TEST

START_TEST(the_nearest_word_is_found)
{
    static const char *const words[] = {"rail", "bench", "import", "export", "sheet", "tick", "check", "at"};
    static const struct {
        const char *typed;
        const char *meant;
    } cases[] = {
        {"rial", "rail"},     {"bnech", "bench"}, {"imports", "import"}, {"exprot", "export"},
        {"RAIL", "rail"},     {"Chek", "check"},  {"sheets", "sheet"},   {"heck", "check"},
        {"pincushion", NULL}, {"", NULL},         {"zz", NULL},          {"tack", "tick"},
        {"benches", "bench"}, {"benching", NULL}, {"bnehc", "bench"},    {"ta", "at"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const char *found = bk_nearest(cases[i].typed, words, sizeof words / sizeof *words);
        ck_assert_msg(bk_same_text(found, cases[i].meant), "%s gives %s", cases[i].typed,
                      found == NULL ? "nothing" : found);
    }
}
END_TEST

START_TEST(a_word_of_any_length_may_be_asked_for)
{
    char huge[5000];
    memset(huge, 'x', sizeof huge);
    huge[sizeof huge - 1] = '\0';
    const char *const words[] = {huge, "rail"};
    ck_assert_ptr_null(bk_nearest(huge + 1, words, 2));
    ck_assert_ptr_null(bk_nearest("xxx", words, 2));
    char longest[66] = "";
    memset(longest, 'y', 64);
    const char *const long_words[] = {longest};
    ck_assert_ptr_eq(bk_nearest(longest + 1, long_words, 1), longest);
}
END_TEST

/// Joins the items of a list with `|` behind each.
static void walk(const char *list, char out[64])
{
    const char *item = NULL;
    size_t length = 0;
    out[0] = '\0';
    while (bk_list_item(&list, &item, &length)) {
        strncat(out, item, length);
        strcat(out, "|");
    }
}

START_TEST(a_list_in_a_cell_is_walked_item_by_item)
{
    static const char *const cases[][2] = {
        {"", ""},          {"hip", "hip|"},   {"a;b", "a|b|"}, {" a b ;\tc\n", "a b|c|"},
        {"a;;b", "a||b|"}, {"a;", "a|"},      {";a", "|a|"},   {" ", "|"},
        {";", "|"},        {"é ; ü", "é|ü|"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char found[64];
        walk(cases[i][0], found);
        ck_assert_str_eq(found, cases[i][1]);
    }
}
END_TEST

START_TEST(a_sentence_ends_with_one_sign_alone)
{
    static const char *const cases[][2] = {
        {"Done", "."},  {"Who washes it?", ""},    {"Oh!", ""},
        {"Wait…", ""},  {"It is done.", ""},       {"", "."},
        {"no. 4", "."}, {"a note \"what?\"", "."}, {"\342\200", "."},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        ck_assert_str_eq(bk_full_stop(cases[i][0]), cases[i][1]);
}
END_TEST

BK_TEST_MAIN("text", numbers_in_keys_come_in_the_order_people_count, no_key_comes_last, the_order_is_total,
             nothing_is_the_same_only_as_nothing, the_nearest_word_is_found,
             a_word_of_any_length_may_be_asked_for, a_list_in_a_cell_is_walked_item_by_item,
             a_sentence_ends_with_one_sign_alone)
