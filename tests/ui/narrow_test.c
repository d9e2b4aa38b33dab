#include "bodkin/ui/narrow.h"

#include <string.h>

#include "support/testing.h"

START_TEST(a_query_gives_back_whole_characters)
{
    bk_query query = {0};
    ck_assert(bk_query_add(&query, "a"));
    ck_assert(bk_query_add(&query, "é"));
    ck_assert(bk_query_add(&query, "水"));
    ck_assert(bk_query_take_back(&query));
    ck_assert_str_eq(query.text, "aé");
    ck_assert(bk_query_take_back(&query));
    ck_assert(bk_query_take_back(&query));
    ck_assert(!bk_query_take_back(&query));
    ck_assert_str_eq(query.text, "");
}
END_TEST

START_TEST(a_query_that_is_full_takes_nothing_and_says_so)
{
    bk_query query = {0};
    while (bk_query_add(&query, "水"))
        continue;
    ck_assert_uint_lt(query.length, BK_QUERY_ROOM);
    ck_assert_uint_eq(query.length, strlen(query.text));
    ck_assert_uint_eq(query.length % strlen("水"), 0);
}
END_TEST

static const bk_costume_waits ready = {.state = BK_READY}, held = {.state = BK_HELD};
static const bk_costume gown = {.number = "4A", .title = "Gown"}, coat = {.number = "10B", .title = "Coat"};
static const bk_rail_costume costumes[] = {
    {.index = 0, .record = &gown, .role = "Señora", .performer = "Ana Ruíz", .reckoned = &ready},
    {.index = 1, .record = &coat, .role = "Clerk", .performer = NULL, .reckoned = &held},
};
static const bk_rail rail = {.costumes = costumes, .costume_count = 2};

START_TEST(every_word_must_be_somewhere_in_the_costume)
{
    static const struct {
        const char *typed;
        bool gown, coat;
    } cases[] = {
        {"", true, true},
        {" ", true, true},
        {"a", true, true},
        {"SENORA", true, false},
        {"ruiz gown", true, false},
        {"gown ruiz", true, false},
        {"10b", false, true},
        {"held", false, true},
        {"gown held", false, false},
        {"gownseñora", false, false},
    };
    bk_findable *findable = bk_findable_new(&rail, NULL);
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        bk_query query = {0};
        bool found[2];
        bk_query_add(&query, cases[i].typed);
        bk_findable_match(findable, &query, found);
        if (found[0] != cases[i].gown || found[1] != cases[i].coat)
            ck_abort_msg("\"%s\" finds %d %d", cases[i].typed, found[0], found[1]);
    }
    bk_findable_free(findable);
}
END_TEST

BK_TEST_MAIN("narrowing", a_query_gives_back_whole_characters, a_query_that_is_full_takes_nothing_and_says_so,
             every_word_must_be_somewhere_in_the_costume)
