#include "bodkin/plan/chance.h"

#include <stddef.h>

#include "support/testing.h"

// The first numbers of splitmix64 as its users print them, from memory; they are the words that a seed gives.
START_TEST(a_seed_is_spread_over_the_words_by_splitmix64)
{
    static const struct {
        uint64_t seed, words[4];
    } rows[] = {
        {0, {0xE220A8397B1DCDAFU, 0x6E789E6AA1B965F4U, 0x06C45D188009454FU, 0xF88BB8A8724C81ECU}},
        {1234567, {6457827717110365317U, 3203168211198807973U, 9817491932198370423U, 4593380528125082431U}},
    };
    for (size_t row = 0; row < sizeof rows / sizeof rows[0]; row++) {
        bk_chance chance = bk_chance_from(rows[row].seed);
        for (size_t i = 0; i < 4; i++)
            ck_assert_uint_eq(chance.words[i], rows[row].words[i]);
    }
}
END_TEST

// The first numbers of xoshiro256** from the words 1, 2, 3, 4, as the tests of other programs print them, from memory.
START_TEST(the_numbers_are_those_of_xoshiro256_starstar)
{
    static const uint64_t numbers[] = {11520U,
                                       0U,
                                       1509978240U,
                                       1215971899390074240U,
                                       1216172134540287360U,
                                       607988272756665600U,
                                       16172922978634559625U,
                                       8476171486693032832U,
                                       10595114339597558777U,
                                       2904607092377533576U};
    bk_chance chance = {{1, 2, 3, 4}};
    for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++)
        ck_assert_uint_eq(bk_chance_next(&chance), numbers[i]);
}
END_TEST

START_TEST(numbers_below_a_count_fall_on_all_of_them_evenly)
{
    enum { COUNT = 7, DRAWS = 70000, EVEN = DRAWS / COUNT, MUCH = 500 }; // five standard errors
    int met[COUNT] = {0};
    bk_chance chance = bk_chance_from(4);
    for (int i = 0; i < DRAWS; i++) {
        uint32_t number = bk_chance_below(&chance, COUNT);
        ck_assert_uint_lt(number, COUNT);
        met[number]++;
    }
    for (int i = 0; i < COUNT; i++) {
        ck_assert_int_gt(met[i], EVEN - MUCH);
        ck_assert_int_lt(met[i], EVEN + MUCH);
    }
}
END_TEST

START_TEST(below_one_there_is_only_nothing)
{
    bk_chance chance = bk_chance_from(1);
    for (int i = 0; i < 100; i++)
        ck_assert_uint_eq(bk_chance_below(&chance, 1), 0);
}
END_TEST

BK_TEST_MAIN("chance", a_seed_is_spread_over_the_words_by_splitmix64,
             the_numbers_are_those_of_xoshiro256_starstar, numbers_below_a_count_fall_on_all_of_them_evenly,
             below_one_there_is_only_nothing)
