#include "bodkin/sheet/names.h"

#include <stdint.h>
#include <stdlib.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"

struct bk_names {
    bk_arena *arena;
    bk_index *index; ///< from a text to the address of its copy
    bk_buffer looked_for;
};

bk_names *bk_names_new(bk_arena *arena)
{
    bk_names *names = bk_alloc_clear(1, sizeof *names);
    names->arena = arena;
    names->index = bk_index_new();
    return names;
}

void bk_names_free(bk_names *names)
{
    if (names == NULL)
        return;
    bk_index_free(names->index);
    bk_buffer_free(&names->looked_for);
    free(names);
}

/// The text by itself, with a NUL behind it; good until the next call.
static const char *alone(bk_names *names, const char *text, size_t length)
{
    if (text[length] == '\0')
        return text;
    names->looked_for.length = 0;
    bk_buffer_add(&names->looked_for, text, length);
    return names->looked_for.bytes;
}

const char *bk_names_find(bk_names *names, const char *text, size_t length)
{
    const long long *kept = bk_index_find(names->index, alone(names, text, length));
    return kept == NULL ? NULL : (const char *)(intptr_t)*kept;
}

const char *bk_names_keep(bk_names *names, const char *text, size_t length)
{
    const char *kept = bk_names_find(names, text, length);
    if (kept != NULL)
        return kept;
    kept = bk_arena_bytes(names->arena, text, length);
    bk_index_put(names->index, kept, (intptr_t)kept);
    return kept;
}
