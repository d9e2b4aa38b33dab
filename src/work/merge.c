#include "bodkin/work/merge.h"

#include <string.h>

#include "bodkin/base/date.h"
#include "bodkin/base/text.h"
#include "bodkin/store/records.h"
#include "bodkin/trade/words.h"

enum { SHOWN_COLUMNS = 40 };

static const char *shown(bk_arena *arena, const char *value)
{
    if (!value) {
        return "empty";
    }
    const char *safe = bk_text_safe(arena, value, false);
    return bk_arena_print(arena, "\"%s\"", bk_text_cut(arena, safe, SHOWN_COLUMNS, false));
}

void bk_merge_note(bk_merge_notes *notes, const char *what, const char *column, const char *was,
                   const char *is, bool secret)
{
    const char *name = bk_text_safe(notes->arena, what, false);
    const char *note = secret ? bk_arena_print(notes->arena, "%s: %s: replaced", name, column)
                              : bk_arena_print(notes->arena, "%s: %s: was %s, is now %s", name, column,
                                               shown(notes->arena, was), shown(notes->arena, is));
    bk_list_add(&notes->items, note);
}

static size_t size_of(bk_merge_type type)
{
    switch (type) {
    case BK_MERGE_TEXT:
        return sizeof(const char *);
    case BK_MERGE_NUMBER:
    case BK_MERGE_LENGTH:
        return sizeof(int64_t);
    case BK_MERGE_DAY:
        return sizeof(bk_day);
    case BK_MERGE_WORD:
        return sizeof(int);
    }
    return 0;
}

static int64_t number_at(const bk_merge_field *field, const void *record)
{
    const char *place = (const char *)record + field->offset;
    int64_t number = 0;
    bk_day day;
    int word;
    switch (field->type) {
    case BK_MERGE_NUMBER:
    case BK_MERGE_LENGTH:
        memcpy(&number, place, sizeof number);
        return number;
    case BK_MERGE_DAY:
        memcpy(&day, place, sizeof day);
        return day == BK_NO_DAY ? BK_NOT_KNOWN : day;
    case BK_MERGE_WORD:
        memcpy(&word, place, sizeof word);
        return word == BK_NO_WORD ? BK_NOT_KNOWN : word;
    case BK_MERGE_TEXT:
        break;
    }
    return BK_NOT_KNOWN;
}

static const char *text_at(const bk_merge_field *field, const void *record)
{
    const char *text;
    memcpy(&text, (const char *)record + field->offset, sizeof text);
    return text;
}

/// The value as text for a note; NULL where there is none.
static const char *value_text(const bk_merge_field *field, const void *record, const bk_merge_notes *notes)
{
    if (field->type == BK_MERGE_TEXT) {
        return text_at(field, record);
    }
    char text[BK_AMOUNT_ROOM];
    int64_t number = number_at(field, record);
    if (number == BK_NOT_KNOWN) {
        return NULL;
    }
    switch (field->type) {
    case BK_MERGE_LENGTH:
        return bk_arena_text(notes->arena, bk_length_write(number, notes->unit, text));
    case BK_MERGE_DAY:
        return bk_arena_text(notes->arena, bk_day_write((bk_day)number, text));
    case BK_MERGE_WORD:
        return bk_word_text(&bk_material_unit_words, (int)number);
    default:
        return bk_arena_print(notes->arena, "%lld", (long long)number);
    }
}

static bool differs(const bk_merge_field *field, const void *row, const void *known)
{
    if (field->type == BK_MERGE_TEXT) {
        const char *text = text_at(field, row);
        return text && !bk_same_text(text, text_at(field, known));
    }
    int64_t number = number_at(field, row);
    return number != BK_NOT_KNOWN && number != number_at(field, known);
}

bool bk_merge(const bk_merge_field *fields, size_t count, const void *row, void *known, const char *what,
              bk_merge_notes *notes)
{
    bool changed = false;
    for (size_t i = 0; i < count; i++) {
        const bk_merge_field *field = &fields[i];
        if (differs(field, row, known)) {
            const char *was = value_text(field, known, notes);
            bk_merge_note(notes, what, field->column, was, value_text(field, row, notes), field->secret);
            memcpy((char *)known + field->offset, (const char *)row + field->offset, size_of(field->type));
            changed = true;
        }
    }
    return changed;
}
