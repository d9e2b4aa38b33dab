#include "bodkin/base/arena.h"

#include <stdalign.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { FIRST_CHUNK = 4096, LARGEST_CHUNK = 1024 * 1024 };

typedef struct chunk {
    struct chunk *next;
    size_t size;
    alignas(max_align_t) char bytes[];
} chunk;

struct bk_arena {
    chunk *chunks; ///< newest first; the newest is the one being filled
    chunk *large;  ///< blocks that have memory of their own
    size_t used;   ///< bytes taken from the newest chunk
    size_t held;
};

static bk_exhausted *on_exhausted;

void bk_on_exhausted(bk_exhausted *handler)
{
    on_exhausted = handler;
}

static _Noreturn void exhausted(size_t wanted)
{
    if (on_exhausted != NULL)
        on_exhausted(wanted);
    abort();
}

void *bk_alloc(size_t size)
{
    void *memory = malloc(size == 0 ? 1 : size);
    if (memory == NULL)
        exhausted(size);
    return memory;
}

void *bk_alloc_clear(size_t count, size_t size)
{
    void *memory = count == 0 || size == 0 ? calloc(1, 1) : calloc(count, size);
    if (memory == NULL)
        exhausted(size);
    return memory;
}

void *bk_realloc(void *memory, size_t size)
{
    void *grown = realloc(memory, size == 0 ? 1 : size);
    if (grown == NULL)
        exhausted(size);
    return grown;
}

static chunk *chunk_new(bk_arena *arena, size_t size, chunk *next)
{
    chunk *made = bk_alloc(sizeof *made + size);
    made->next = next;
    made->size = size;
    arena->held += sizeof *made + size;
    return made;
}

static void chunks_free(bk_arena *arena, chunk *first)
{
    while (first != NULL) {
        chunk *next = first->next;
        arena->held -= sizeof *first + first->size;
        free(first);
        first = next;
    }
}

bk_arena *bk_arena_new(void)
{
    return bk_alloc_clear(1, sizeof(bk_arena));
}

void bk_arena_free(bk_arena *arena)
{
    if (arena == NULL)
        return;
    chunks_free(arena, arena->chunks);
    chunks_free(arena, arena->large);
    free(arena);
}

void bk_arena_reset(bk_arena *arena)
{
    chunks_free(arena, arena->large);
    arena->large = NULL;
    arena->used = 0;
    if (arena->chunks != NULL) {
        chunks_free(arena, arena->chunks->next);
        arena->chunks->next = NULL;
    }
}

static size_t next_chunk_size(const bk_arena *arena)
{
    if (arena->chunks == NULL)
        return FIRST_CHUNK;
    return arena->chunks->size < LARGEST_CHUNK ? arena->chunks->size * 2 : LARGEST_CHUNK;
}

void *bk_arena_take(bk_arena *arena, size_t size)
{
    const size_t alignment = alignof(max_align_t);
    if (size > SIZE_MAX / 2)
        exhausted(size);
    size_t wanted = size == 0 ? alignment : (size + alignment - 1) / alignment * alignment;
    if (arena->chunks == NULL || arena->chunks->size - arena->used < wanted) {
        size_t room = next_chunk_size(arena);
        if (wanted > room / 2) {
            arena->large = chunk_new(arena, wanted, arena->large);
            return arena->large->bytes;
        }
        arena->chunks = chunk_new(arena, room, arena->chunks);
        arena->used = 0;
    }
    void *memory = arena->chunks->bytes + arena->used;
    arena->used += wanted;
    return memory;
}

void *bk_arena_clear(bk_arena *arena, size_t count, size_t size)
{
    size_t bytes = 0;
    if (__builtin_mul_overflow(count, size, &bytes))
        exhausted(SIZE_MAX);
    return memset(bk_arena_take(arena, bytes), 0, bytes);
}

char *bk_arena_bytes(bk_arena *arena, const char *bytes, size_t size)
{
    char *copy = bk_arena_take(arena, size + 1);
    if (size > 0)
        memcpy(copy, bytes, size);
    copy[size] = '\0';
    return copy;
}

char *bk_arena_text(bk_arena *arena, const char *text)
{
    return text == NULL ? NULL : bk_arena_bytes(arena, text, strlen(text));
}

char *bk_arena_print(bk_arena *arena, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    int length = vsnprintf(NULL, 0, format, arguments);
    va_end(arguments);
    if (length < 0)
        return bk_arena_bytes(arena, "", 0);
    char *text = bk_arena_take(arena, (size_t)length + 1);
    va_start(arguments, format);
    vsnprintf(text, (size_t)length + 1, format, arguments);
    va_end(arguments);
    return text;
}

size_t bk_arena_size(const bk_arena *arena)
{
    return arena->held;
}
