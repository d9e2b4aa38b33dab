#include "bodkin/ui/bench_lines.h"

#include "support/testing.h"

static const bk_planned_step steps[] = {
    {.id = 1, .piece_id = 1, .piece = "1A-1", .kind = BK_CUT},
    {.id = 2, .piece_id = 2, .piece = "3A-1", .kind = BK_CUT},
    {.id = 3, .piece_id = 3, .piece = "3B-2", .kind = BK_CUT},
    {.id = 4, .piece_id = 3, .piece = "3B-2", .kind = BK_CUT},
    {.id = 5, .piece_id = 4, .piece = "4A-1", .kind = BK_CRAFT},
    {.id = 6, .piece_id = 5, .piece = "4B-1", .kind = BK_CRAFT},
    {.id = 7, .piece_id = 6, .piece = "5A-1", .kind = BK_CUT},
    {.id = 8, .piece_id = 7, .piece = "5B-1", .kind = BK_CUT},
    {.id = 9, .piece_id = 8, .piece = "6A-1", .kind = BK_CUT},
};

enum { LINES = sizeof steps / sizeof steps[0] };

static bk_bench_line lines[LINES];

// Lines of groups 0 to 2; the first four are of group 1.
static bk_bench_list bench(size_t of_group_one)
{
    for (size_t i = 0; i < LINES; i++)
        lines[i] = (bk_bench_line){.step = &steps[i]};
    for (size_t i = 0; i < of_group_one; i++) {
        lines[i].together = 1;
        lines[i].shared = "red wool";
    }
    return (bk_bench_list){.lines = lines, .count = LINES};
}

START_TEST(what_is_done_together_names_the_other_pieces_once)
{
    bk_arena *arena = bk_arena_new();
    bk_bench_list list = bench(4);
    ck_assert_str_eq(bk_bench_together(&list, 0, arena), "the same red wool as 3A-1 and 3B-2: cut together");
    ck_assert_str_eq(bk_bench_together(&list, 3, arena), "the same red wool as 1A-1 and 3A-1: cut together");
    ck_assert_ptr_null(bk_bench_together(&list, 4, arena));
    bk_arena_free(arena);
}
END_TEST

START_TEST(two_steps_of_one_piece_alone_need_no_other_piece)
{
    bk_arena *arena = bk_arena_new();
    bk_bench_list list = bench(0);
    lines[2].together = lines[3].together = 1;
    lines[2].shared = lines[3].shared = "red wool";
    ck_assert_ptr_null(bk_bench_together(&list, 2, arena));
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_kind_without_a_word_of_its_own_is_best_done_in_one_go)
{
    bk_arena *arena = bk_arena_new();
    bk_bench_list list = bench(0);
    lines[4].together = lines[5].together = 1;
    lines[4].shared = lines[5].shared = "buckram";
    ck_assert_str_eq(bk_bench_together(&list, 4, arena), "the same buckram as 4B-1: best done in one go");
    bk_arena_free(arena);
}
END_TEST

START_TEST(of_many_pieces_some_are_named_and_the_others_counted)
{
    bk_arena *arena = bk_arena_new();
    bk_bench_list list = bench(LINES);
    ck_assert_str_eq(bk_bench_together(&list, 0, arena),
                     "the same red wool as 3A-1, 3B-2, 4A-1 and 4 more: cut together");
    bk_arena_free(arena);
}
END_TEST

START_TEST(the_summary_counts_what_fits_where_it_was_asked_for)
{
    static const struct {
        size_t count, fitting;
        int64_t minutes;
        const char *words;
    } cases[] = {
        {12, 12, 0, "12 steps can be done now"},
        {1, 1, 0, "1 step can be done now"},
        {12, 4, 30, "12 steps can be done now, 4 of them in 30 min"},
        {12, 0, 5, "12 steps can be done now, none of them in 5 min"},
        {0, 0, 30, "0 steps can be done now"},
    };
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
        ck_assert_str_eq(bk_bench_summary(cases[i].count, cases[i].fitting, cases[i].minutes, arena),
                         cases[i].words);
    bk_arena_free(arena);
}
END_TEST

BK_TEST_MAIN("lines of the Bench", what_is_done_together_names_the_other_pieces_once,
             two_steps_of_one_piece_alone_need_no_other_piece,
             a_kind_without_a_word_of_its_own_is_best_done_in_one_go,
             of_many_pieces_some_are_named_and_the_others_counted,
             the_summary_counts_what_fits_where_it_was_asked_for)
