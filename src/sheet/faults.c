#include "bodkin/sheet/faults.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/columns.h"

enum { QUOTED_COLUMNS = 40, MESSAGE_ROOM = 4096 };

/// A fault's place in the order in which they are told; what is at the same place stays in the order it was noted.
typedef struct place {
    size_t sheet;
    int line;
    size_t column;
} place;

/// Only the first in order are kept; the others are counted.
struct bk_faults {
    bk_arena *arena;
    size_t count;
    size_t kept;
    struct {
        place at;
        const char *text;
        const char *says; ///< the part of it behind file, line and column
    } told[BK_FAULTS_TOLD];
};

bk_faults *bk_faults_new(void)
{
    bk_faults *faults = bk_alloc_clear(1, sizeof *faults);
    faults->arena = bk_arena_new();
    return faults;
}

void bk_faults_free(bk_faults *faults)
{
    if (faults == NULL)
        return;
    bk_arena_free(faults->arena);
    free(faults);
}

static place place_of(size_t sheet, int line, const char *column)
{
    size_t number = sheet < BK_SHEETS ? bk_column_find(&bk_sheets[sheet], column) : 0;
    return (place){.sheet = sheet, .line = line, .column = number};
}

static bool comes_before(place left, place right)
{
    if (left.sheet != right.sheet)
        return left.sheet < right.sheet;
    if (left.line != right.line)
        return left.line < right.line;
    return left.column < right.column;
}

/// How many of the kept faults come before a new one there.
static size_t position_of(const bk_faults *faults, place at)
{
    size_t position = faults->kept;
    while (position > 0 && comes_before(at, faults->told[position - 1].at))
        position--;
    return position;
}

bool bk_faults_wanted(const bk_faults *faults, size_t sheet, int line, const char *column)
{
    return position_of(faults, place_of(sheet, line, column)) < BK_FAULTS_TOLD;
}

void bk_faults_add(bk_faults *faults, size_t sheet, const char *file, int line, const char *column,
                   const char *format, ...)
{
    place at = place_of(sheet, line, column);
    size_t position = position_of(faults, at);
    faults->count++;
    if (position == BK_FAULTS_TOLD)
        return;
    char message[MESSAGE_ROOM];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(message, sizeof message, format, arguments);
    va_end(arguments);
    const char *text = bk_arena_print(faults->arena, "%s:%d: %s: %s", file, line, column, message);
    if (faults->kept < BK_FAULTS_TOLD)
        faults->kept++;
    memmove(&faults->told[position + 1], &faults->told[position],
            (faults->kept - position - 1) * sizeof faults->told[0]);
    faults->told[position].at = at;
    faults->told[position].text = bk_text_safe(faults->arena, text, false);
    faults->told[position].says = bk_text_safe(faults->arena, message, false);
}

size_t bk_faults_count(const bk_faults *faults)
{
    return faults->count;
}

const char *bk_faults_text(bk_faults *faults, size_t index)
{
    assert(index < faults->kept);
    return faults->told[index].text;
}

const char *bk_faults_says(const bk_faults *faults, size_t index)
{
    assert(index < faults->kept);
    return faults->told[index].says;
}

const char *bk_faults_quote(bk_arena *arena, const char *text)
{
    return bk_arena_print(arena, "\"%s\"", bk_text_cut(arena, text, QUOTED_COLUMNS, false));
}
