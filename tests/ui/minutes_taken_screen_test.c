#include "bodkin/ui/minutes_taken_screen.h"

#include "support/testing.h"

START_TEST(a_record_is_told_with_how_many_and_whether_it_is_used)
{
    static const struct {
        bk_pace pace;
        const char *words;
    } cases[] = {
        {{.kind = BK_MACHINE, .count = 12, .middle = 1184},
         "machine: 12 steps, took 118 % of the guess, used in the plan"},
        {{.kind = BK_HAND, .count = 5, .middle = 1000},
         "hand: 5 steps, took 100 % of the guess, not yet used (8 needed)"},
        {{.kind = BK_HAND, .person = "Ida", .count = 1, .middle = 895},
         "Ida, hand: 1 step, took 90 % of the guess, not yet used (8 needed)"},
        {{.kind = BK_NO_WORD, .person = "Ida", .count = 8, .middle = 900},
         "Ida, all kinds: 8 steps, took 90 % of the guess, used in the plan"},
        {{.kind = BK_NO_WORD, .count = 40, .middle = 1100},
         "everybody, all kinds: 40 steps, took 110 % of the guess, only shown: the plan goes by kind and by "
         "person"},
    };
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
        ck_assert_str_eq(bk_pace_sentence(&cases[i].pace, arena), cases[i].words);
    bk_arena_free(arena);
}
END_TEST

BK_TEST_MAIN("minutes taken", a_record_is_told_with_how_many_and_whether_it_is_used)
