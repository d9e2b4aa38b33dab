// What stands in the way of a forecast, in plain sentences.

#include "bodkin/sheet/snag_words.h"

#include <string.h>

#include "sheet/hand_rail.h"
#include "support/testing.h"

static bk_arena *texts(void)
{
    static bk_arena *arena;
    if (!arena)
        arena = bk_arena_new();
    return arena;
}

#define CUT_STEP .step_id = 5, .piece = "4A-1", .step = "cut", .step_kind = BK_CUT

START_TEST(every_snag_is_a_plain_sentence_with_what_to_do)
{
    const struct {
        bk_snag snag;
        const char *says;
    } rows[] = {
        {{.kind = BK_SNAG_NOBODY, .step_kind = BK_NO_WORD, .day = BK_NO_DAY},
         "Nobody is in the workroom yet, so no day can be told: add who works, and when (Hands)"},
        {{.kind = BK_SNAG_NO_SKILL, CUT_STEP, .day = BK_NO_DAY, .hands = 1},
         "4A-1/cut: nobody can cut; give somebody the skill, or ask for help (Hands)"},
        {{.kind = BK_SNAG_NO_SKILL, CUT_STEP, .day = BK_NO_DAY, .hands = 2},
         "4A-1/cut: needs 2 people at once who can cut; there are fewer (Hands)"},
        {{.kind = BK_SNAG_NO_SKILL,
          .step_id = 5,
          .piece = "4A-1",
          .step = "x",
          .step_kind = BK_NO_WORD,
          .day = BK_NO_DAY},
         "4A-1/x: nobody can do it; give somebody the skill, or ask for help (Hands)"},
        {{.kind = BK_SNAG_NO_HOURS, CUT_STEP, .day = DAY(3, 12)},
         "4A-1/cut: who can cut has no hours left by Fri 12 Mar; find more hours (Hands), or give the "
         "costume a "
         "later day"},
        {{.kind = BK_SNAG_NO_HOURS, CUT_STEP, .day = DAY(3, 2)},
         "4A-1/cut: who can cut has no hours left by today; find more hours (Hands), or give the costume a "
         "later "
         "day"},
        {{.kind = BK_SNAG_NO_HOURS, CUT_STEP, .day = BK_NO_DAY},
         "4A-1/cut: who can cut has no hours left; find more hours (Hands), or give the costume a later day"},
        {{.kind = BK_SNAG_AWAY,
          .step_id = 6,
          .piece = "4A-1",
          .step = "f1",
          .who = "Ana Ruíz",
          .day = DAY(3, 22)},
         "4A-1/f1: Ana Ruíz is away until after the opening, to Mon 22 Mar; fit before, or on somebody of "
         "that "
         "size"},
        {{.kind = BK_SNAG_AWAY, .step_id = 6, .piece = "4A-1", .step = "f1", .day = BK_NO_DAY},
         "4A-1/f1: the performer is away until after the opening; fit before, or on somebody of that size"},
        {{.kind = BK_SNAG_NO_MINUTES, CUT_STEP, .day = BK_NO_DAY},
         "4A-1/cut: no minutes, so it counts as no work: say how long it takes"},
        {{.kind = BK_SNAG_PAST, .step_kind = BK_NO_WORD, .day = DAY(2, 26)},
         "The due day, Fri 26 Feb, is past; do what is left at once, or give it a new day"},
        {{.kind = BK_SNAG_PAST, .step_kind = BK_NO_WORD, .day = BK_NO_DAY},
         "The due day is past; do what is left at once, or give it a new day"},
        {{.kind = BK_SNAG_UNCAST, .step_id = 6, .piece = "4A-1", .step = "f1", .day = BK_NO_DAY},
         "4A-1/f1: nobody plays the role yet; planned as if somebody did (Cast)"},
        {{.kind = BK_SNAG_NO_DATE, CUT_STEP, .day = BK_NO_DAY},
         "4A-1/cut: no day is known for what it waits on; planned as if that came today"},
        {{.kind = BK_SNAGS}, ""},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const char *says = bk_snag_sentence(&rows[i].snag, DAY(3, 2), texts());
        ck_assert_msg(!strcmp(says, rows[i].says), "row %zu: %s", i, says);
    }
}
END_TEST

START_TEST(what_is_the_same_of_several_steps_is_said_once)
{
    const bk_snag snags[] = {
        {.kind = BK_SNAG_NO_DATE,
         .step_id = 1,
         .piece = "4A-1",
         .step = "cut",
         .step_kind = BK_CUT,
         .day = BK_NO_DAY},
        {.kind = BK_SNAG_NO_HOURS,
         .step_id = 2,
         .piece = "4A-1",
         .step = "dye",
         .step_kind = BK_DYE,
         .day = DAY(3, 12)},
        {.kind = BK_SNAG_NO_DATE,
         .step_id = 3,
         .piece = "4A-2",
         .step = "trim",
         .step_kind = BK_HAND,
         .day = BK_NO_DAY},
        {.kind = BK_SNAG_NO_HOURS,
         .step_id = 4,
         .piece = "4A-2",
         .step = "dip",
         .step_kind = BK_DYE,
         .day = DAY(3, 12)},
        {.kind = BK_SNAG_NO_HOURS,
         .step_id = 5,
         .piece = "4A-2",
         .step = "sew",
         .step_kind = BK_HAND,
         .day = DAY(3, 12)},
        {.kind = BK_SNAG_NO_HOURS,
         .step_id = 6,
         .piece = "4A-3",
         .step = "dye",
         .step_kind = BK_DYE,
         .day = DAY(3, 13)},
    };
    const char *const *says;
    size_t count = bk_snag_sentences(snags, sizeof snags / sizeof *snags, DAY(3, 2), texts(), &says);
    ck_assert_uint_eq(count, 4);
    ck_assert_str_eq(
        says[0], "4A-1/cut, 4A-2/trim: no day is known for what it waits on; planned as if that came today");
    ck_assert_str_eq(says[1],
                     "4A-1/dye, 4A-2/dip: who can dye has no hours left by Fri 12 Mar; find more hours "
                     "(Hands), or give the costume a later day");
    ck_assert_ptr_nonnull(strstr(says[2], "4A-2/sew: who can sew by hand has"));
    ck_assert_ptr_nonnull(strstr(says[3], "4A-3/dye: who can dye has no hours left by Sat 13 Mar"));
    ck_assert_uint_eq(bk_snag_sentences(NULL, 0, DAY(3, 2), texts(), &says), 0);
}
END_TEST

BK_TEST_MAIN("snag words", every_snag_is_a_plain_sentence_with_what_to_do,
             what_is_the_same_of_several_steps_is_said_once)
