// What is worth knowing before a tick, in words.

#include "bodkin/sheet/outlook_words.h"

#include "bodkin/trade/words.h"
#include "support/testing.h"

static bk_arena *texts(void)
{
    static bk_arena *arena;
    if (!arena)
        arena = bk_arena_new();
    return arena;
}

static bk_day today(void)
{
    return bk_day_of(2027, 3, 2);
}

START_TEST(nothing_to_say_is_no_remark)
{
    const char *remarks[BK_OUTLOOK_REMARKS];
    const bk_step_outlook outlook = {.found = true};
    ck_assert_uint_eq(bk_outlook_remarks(&outlook, today(), texts(), remarks), 0);
}
END_TEST

START_TEST(earlier_steps_are_named_in_their_order)
{
    static const bk_step_name names[] = {{"1A-1", "sew"}, {"1B-1", "cut"}};
    const bk_step_outlook outlook = {.before = names, .before_count = 2};
    ck_assert_str_eq(bk_outlook_before(&outlook, texts()),
                     "it comes after what is still open: 1A-1/sew, 1B-1/cut");
}
END_TEST

START_TEST(a_piece_that_is_out_is_told_with_the_day_it_comes_back)
{
    static const struct {
        int month, day;
        const char *words;
    } rows[] = {
        {3, 9, "1A-1 is out with Dye house, back Tue 9 Mar"},
        {3, 2, "1A-1 is out with Dye house, back Tue 2 Mar"},
        {3, 1, "1A-1 is out with Dye house, was to be back Mon 1 Mar"},
    };
    bk_step_outlook outlook = {.piece = {.name = "1A-1", .out_with = "Dye house"}};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        outlook.piece.back_by = bk_day_of(2027, rows[i].month, rows[i].day);
        ck_assert_str_eq(bk_outlook_out(&outlook, today(), texts()), rows[i].words);
    }
    outlook.piece.back_by = BK_NO_DAY;
    ck_assert_str_eq(bk_outlook_out(&outlook, today(), texts()), "1A-1 is out with Dye house");
}
END_TEST

START_TEST(what_the_shelf_lacks_is_told_before_and_after)
{
    static const bk_lack lacks[] = {
        {{.name = "fur, red", .unit = BK_METRE}, 5 * BK_QUANTITY_ONE},
        {{.name = "hooks", .unit = BK_EACH}, 12 * BK_QUANTITY_ONE},
    };
    const bk_step_outlook outlook = {.lacks = lacks, .lack_count = 2};
    ck_assert_str_eq(bk_outlook_lacks(&outlook, false, texts()), "the shelf lacks 5 m of fur, red; 12 hooks");
    ck_assert_str_eq(bk_outlook_lacks(&outlook, true, texts()), "the shelf lacked 5 m of fur, red; 12 hooks");
}
END_TEST

BK_TEST_MAIN("outlook words", nothing_to_say_is_no_remark, earlier_steps_are_named_in_their_order,
             a_piece_that_is_out_is_told_with_the_day_it_comes_back,
             what_the_shelf_lacks_is_told_before_and_after)
