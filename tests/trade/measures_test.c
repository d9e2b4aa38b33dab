#include "bodkin/trade/measures.h"

#include <stdbool.h>
#include <string.h>

#include "support/testing.h"

enum { LONGEST_HOW = 76, SHORTEST_HOW = 30 };

// The measures known by name, in the order of design, section 5; terms and clauses of ISO 8559-1:2017 (seen second-hand).
static const struct {
    const char *name, *term, *clause;
} expected[] = {
    {"height", "stature", "5.1.1"},
    {"head girth", NULL, NULL},
    {"neck girth", "neck girth", "5.3.2"},
    {"neck base girth", NULL, NULL},
    {"shoulder length", NULL, NULL},
    {"shoulder width", "shoulder width", "5.4.2"},
    {"back width", NULL, NULL},
    {"chest width", NULL, NULL},
    {"bust girth", "bust girth", "5.3.4"},
    {"chest girth", "chest girth", "5.3.4"},
    {"under-bust girth", "under-bust girth", "5.3.6"},
    {"waist girth", "waist girth", "5.3.10"},
    {"high hip girth", NULL, NULL},
    {"hip girth", "hip girth", "5.3.13"},
    {"armhole girth", NULL, NULL},
    {"upper arm girth", "upper arm girth", "5.3.16"},
    {"elbow girth", NULL, NULL},
    {"wrist girth", "wrist girth", "5.3.19"},
    {"hand girth", "hand girth", "5.5.1"},
    {"arm length", NULL, NULL},
    {"nape to wrist", NULL, NULL},
    {"nape to waist", "back neck point to waist", "5.4.5"},
    {"neck to waist front", NULL, NULL},
    {"shoulder to bust point", NULL, NULL},
    {"bust point width", NULL, NULL},
    {"waist to hip", NULL, NULL},
    {"waist to knee", NULL, NULL},
    {"waist to floor", NULL, NULL},
    {"nape to floor", NULL, NULL},
    {"outside leg", NULL, NULL},
    {"inside leg", "inside leg height", "5.1.15"},
    {"body rise", NULL, NULL},
    {"crotch length", "total crotch length", "5.4.18"},
    {"trunk girth", NULL, NULL},
    {"thigh girth", "thigh girth", "5.3.20"},
    {"knee girth", "knee girth", "5.3.22"},
    {"calf girth", "calf girth", "5.3.24"},
    {"ankle girth", NULL, NULL},
    {"foot length", NULL, NULL},
    {"foot girth", NULL, NULL},
};

static bool same(const char *left, const char *right)
{
    return left == NULL || right == NULL ? left == right : strcmp(left, right) == 0;
}

START_TEST(the_measures_known_by_name_stand_in_the_order_of_a_sheet)
{
    ck_assert_uint_eq(bk_measure_term_count, sizeof expected / sizeof expected[0]);
    for (size_t i = 0; i < bk_measure_term_count; i++)
        ck_assert_str_eq(bk_measure_terms[i].name, expected[i].name);
}
END_TEST

START_TEST(terms_and_clauses_are_given_where_a_source_gives_them)
{
    for (size_t i = 0; i < bk_measure_term_count; i++) {
        const char *name = bk_measure_terms[i].name;
        ck_assert_msg(same(bk_measure_terms[i].term, expected[i].term), "the term of %s", name);
        ck_assert_msg(same(bk_measure_terms[i].clause, expected[i].clause), "the clause of %s", name);
    }
}
END_TEST

START_TEST(each_measure_says_in_one_line_how_it_is_taken)
{
    for (size_t i = 0; i < bk_measure_term_count; i++) {
        const char *how = bk_measure_terms[i].how;
        ck_assert_msg(how != NULL && strlen(how) >= SHORTEST_HOW && strlen(how) <= LONGEST_HOW,
                      "how %s is taken", bk_measure_terms[i].name);
        ck_assert_ptr_null(strchr(how, '\n'));
        for (size_t j = 0; j < i; j++)
            ck_assert_str_ne(how, bk_measure_terms[j].how);
    }
}
END_TEST

START_TEST(a_measure_is_found_by_its_exact_name)
{
    for (size_t i = 0; i < bk_measure_term_count; i++)
        ck_assert_ptr_eq(bk_measure_term_find(bk_measure_terms[i].name), &bk_measure_terms[i]);
    ck_assert_ptr_null(bk_measure_term_find("Waist girth"));
    ck_assert_ptr_null(bk_measure_term_find("waist"));
    ck_assert_ptr_null(bk_measure_term_find(""));
    ck_assert_ptr_null(bk_measure_term_find(NULL));
}
END_TEST

BK_TEST_MAIN("measures", the_measures_known_by_name_stand_in_the_order_of_a_sheet,
             terms_and_clauses_are_given_where_a_source_gives_them,
             each_measure_says_in_one_line_how_it_is_taken, a_measure_is_found_by_its_exact_name)
