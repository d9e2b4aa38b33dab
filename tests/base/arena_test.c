#include "bodkin/base/arena.h"

#include <setjmp.h>
#include <stdalign.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/testing.h"

enum { BLOCKS = 3000, MEGABYTE = 1024 * 1024 };

START_TEST(what_is_taken_is_aligned_and_keeps_apart)
{
    static unsigned char *blocks[BLOCKS];
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < BLOCKS; i++) {
        blocks[i] = bk_arena_take(arena, i);
        if ((uintptr_t)blocks[i] % alignof(max_align_t) != 0)
            ck_abort_msg("block %zu is not aligned", i);
        memset(blocks[i], (int)(i % 251), i);
    }
    for (size_t i = 0; i < BLOCKS; i++)
        for (size_t j = 0; j < i; j++)
            if (blocks[i][j] != i % 251)
                ck_abort_msg("block %zu was written over", i);
    ck_assert_ptr_ne(bk_arena_take(arena, 0), bk_arena_take(arena, 0));
    bk_arena_free(arena);
}
END_TEST

START_TEST(many_small_blocks_cost_little_more_than_themselves)
{
    bk_arena *arena = bk_arena_new();
    for (size_t taken = 0; taken < 16 * (size_t)MEGABYTE; taken += 64)
        bk_arena_take(arena, 64);
    ck_assert_uint_ge(bk_arena_size(arena), 16 * (size_t)MEGABYTE);
    ck_assert_uint_le(bk_arena_size(arena), 18 * (size_t)MEGABYTE);
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_small_result_holds_little_memory)
{
    bk_arena *arena = bk_arena_new();
    ck_assert_uint_eq(bk_arena_size(arena), 0);
    bk_arena_take(arena, 100);
    ck_assert_uint_le(bk_arena_size(arena), 8192);
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_large_block_does_not_end_the_chunk_being_filled)
{
    bk_arena *arena = bk_arena_new();
    char *first = bk_arena_take(arena, 64);
    bk_arena_take(arena, 2 * (size_t)MEGABYTE);
    char *second = bk_arena_take(arena, 64);
    ck_assert_ptr_eq(second, first + 64);
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_reset_arena_gives_the_same_memory_again)
{
    bk_arena *arena = bk_arena_new();
    for (int i = 0; i < BLOCKS; i++)
        bk_arena_take(arena, 1000);
    bk_arena_take(arena, 4 * (size_t)MEGABYTE);
    bk_arena_reset(arena);
    size_t kept = bk_arena_size(arena);
    ck_assert_uint_gt(kept, 0);
    ck_assert_uint_le(kept, 2 * (size_t)MEGABYTE);
    void *first = bk_arena_take(arena, 1000);
    bk_arena_reset(arena);
    ck_assert_ptr_eq(bk_arena_take(arena, 1000), first);
    ck_assert_uint_eq(bk_arena_size(arena), kept);
    bk_arena_free(arena);
}
END_TEST

START_TEST(an_empty_arena_can_be_reset_and_none_freed)
{
    bk_arena *arena = bk_arena_new();
    bk_arena_reset(arena);
    ck_assert_uint_eq(bk_arena_size(arena), 0);
    bk_arena_free(arena);
    bk_arena_free(NULL);
}
END_TEST

START_TEST(cleared_memory_is_zero_also_after_a_reset)
{
    bk_arena *arena = bk_arena_new();
    memset(bk_arena_take(arena, 800), 0xAA, 800);
    bk_arena_reset(arena);
    const unsigned char *cleared = bk_arena_clear(arena, 100, 8);
    for (int i = 0; i < 800; i++)
        ck_assert_uint_eq(cleared[i], 0);
    bk_arena_free(arena);
}
END_TEST

START_TEST(texts_are_copied)
{
    bk_arena *arena = bk_arena_new();
    char bodice[] = "bodice";
    char *copy = bk_arena_text(arena, bodice);
    char *part = bk_arena_bytes(arena, bodice, 3);
    char *nothing = bk_arena_bytes(arena, NULL, 0);
    bodice[0] = 'x';
    ck_assert_str_eq(copy, "bodice");
    ck_assert_str_eq(part, "bod");
    ck_assert_str_eq(nothing, "");
    ck_assert_ptr_null(bk_arena_text(arena, NULL));
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_formatted_text_has_the_room_it_needs)
{
    bk_arena *arena = bk_arena_new();
    ck_assert_str_eq(bk_arena_print(arena, "%s/%d", "4A", 12), "4A/12");
    char *wide = bk_arena_print(arena, "%20000d", 7);
    ck_assert_uint_eq(strlen(wide), 20000);
    ck_assert_int_eq(wide[19999], '7');
    bk_arena_free(arena);
}
END_TEST

// AddressSanitizer asks this, so that its malloc too answers NULL to what cannot be had.
const char *__asan_default_options(void); // NOLINT(bugprone-reserved-identifier)

const char *__asan_default_options(void) // NOLINT(bugprone-reserved-identifier)
{
    return "allocator_may_return_null=1";
}

static jmp_buf refused;
static size_t refused_size;

static void tell_refusal(size_t wanted)
{
    refused_size = wanted;
    longjmp(refused, 1);
}

// Each of these asks for more than there can be.

enum { ITEM = 4 };

static const size_t unheard_of = PTRDIFF_MAX / 2;

static void ask_plain(void)
{
    free(bk_alloc(unheard_of));
}

static void ask_clear(void)
{
    free(bk_alloc_clear(SIZE_MAX / 2, ITEM));
}

static void ask_more(void)
{
    free(bk_realloc(NULL, unheard_of));
}

static bk_arena *arena_asked;

static void ask_arena(void)
{
    bk_arena_take(arena_asked, SIZE_MAX - 8);
}

static void ask_arena_clear(void)
{
    bk_arena_clear(arena_asked, SIZE_MAX / ITEM + 2, ITEM);
}

START_TEST(exhausted_memory_is_told_and_never_returned)
{
    static void (*const asks[])(void) = {ask_plain, ask_clear, ask_more, ask_arena, ask_arena_clear};
    bk_on_exhausted(tell_refusal);
    arena_asked = bk_arena_new();
    for (volatile size_t i = 0; i < sizeof asks / sizeof *asks; i++) {
        refused_size = 0;
        if (setjmp(refused) == 0) {
            asks[i]();
            ck_abort_msg("ask %zu was granted", i);
        }
        ck_assert_uint_gt(refused_size, 0);
    }
    bk_arena_free(arena_asked);
    bk_on_exhausted(NULL);
}
END_TEST

START_TEST(nothing_is_memory_too)
{
    void *plain = bk_alloc(0);
    void *cleared = bk_alloc_clear(0, 8);
    plain = bk_realloc(plain, 0);
    ck_assert_ptr_nonnull(plain);
    ck_assert_ptr_nonnull(cleared);
    free(plain);
    free(cleared);
}
END_TEST

BK_TEST_MAIN("arena", what_is_taken_is_aligned_and_keeps_apart,
             many_small_blocks_cost_little_more_than_themselves, a_small_result_holds_little_memory,
             a_large_block_does_not_end_the_chunk_being_filled, a_reset_arena_gives_the_same_memory_again,
             an_empty_arena_can_be_reset_and_none_freed, cleared_memory_is_zero_also_after_a_reset,
             texts_are_copied, a_formatted_text_has_the_room_it_needs,
             exhausted_memory_is_told_and_never_returned, nothing_is_memory_too)
