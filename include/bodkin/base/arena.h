#ifndef BODKIN_BASE_ARENA_H
#define BODKIN_BASE_ARENA_H

#include <stdarg.h>
#include <stddef.h>

#include "bodkin/base/error.h"

/// What runs when memory is exhausted; it must not return. The program sets one that puts the terminal right
/// and says so; without one the process aborts. An open transaction is rolled back by the store itself on the
/// next open.
typedef void bk_exhausted(size_t wanted);
void bk_on_exhausted(bk_exhausted *handler);

/// malloc, calloc and realloc that never return NULL (see bk_on_exhausted). Freed with free().
void *bk_alloc(size_t size) __attribute__((malloc, returns_nonnull));
void *bk_alloc_clear(size_t count, size_t size) __attribute__((malloc, returns_nonnull));
void *bk_realloc(void *memory, size_t size) __attribute__((returns_nonnull));

/// Memory that is given back all at once: everything a result points to lives in one arena.
typedef struct bk_arena bk_arena;

bk_arena *bk_arena_new(void);
/// Frees the arena and all that was taken from it; NULL is allowed.
void bk_arena_free(bk_arena *arena);
/// Forgets all that was taken, keeps some memory for the next use.
void bk_arena_reset(bk_arena *arena);
/// Uninitialised memory, aligned for any type; never NULL, also for size 0.
void *bk_arena_take(bk_arena *arena, size_t size) __attribute__((returns_nonnull));
/// `count` zeroed items of `size` bytes.
void *bk_arena_clear(bk_arena *arena, size_t count, size_t size) __attribute__((returns_nonnull));
/// A copy of `size` bytes with a NUL behind it.
char *bk_arena_bytes(bk_arena *arena, const char *bytes, size_t size) __attribute__((returns_nonnull));
/// A copy of a string; NULL gives NULL.
char *bk_arena_text(bk_arena *arena, const char *text);
/// A formatted string.
char *bk_arena_print(bk_arena *arena, const char *format, ...) BK_PRINTF(2, 3);
/// Bytes held from the system, for tests and measuring.
size_t bk_arena_size(const bk_arena *arena);

#endif
