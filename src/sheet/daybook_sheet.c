#include "bodkin/sheet/daybook_sheet.h"

#include <string.h>

#include "bodkin/sheet/json.h"

enum { DAY_LENGTH = 10, TIME_AT = 11, TIME_LENGTH = 5, WIDEST_NAME = 20 };

/// Who made an entry, as it is shown.
static const char *shown_name(bk_arena *arena, const bk_entry *entry, bool ascii)
{
    return bk_text_cut(arena, bk_text_safe(arena, entry->made_by, ascii), WIDEST_NAME, ascii);
}

static size_t widest_name(bk_arena *arena, const bk_entry *entries, size_t count, bool ascii)
{
    size_t widest = 0;
    for (size_t i = 0; i < count; i++) {
        size_t columns = bk_text_columns(shown_name(arena, &entries[i], ascii));
        widest = columns > widest ? columns : widest;
    }
    return widest;
}

/// Day and time of a moment with its offset from UTC, in local time as it was.
static const char *shown_moment(bk_arena *arena, const char *made_at, bool ascii)
{
    const char *safe = bk_text_safe(arena, made_at, ascii);
    if (strlen(safe) < TIME_AT + TIME_LENGTH) {
        return safe;
    }
    return bk_arena_print(arena, "%.*s %.*s", DAY_LENGTH, safe, TIME_LENGTH, safe + TIME_AT);
}

static const char *shown_end(const bk_entry *entry)
{
    if (!entry->undone) {
        return "";
    }
    return entry->undoes ? "  (redone)" : "  (undone)";
}

void bk_daybook_text(const bk_entry *entries, size_t count, bool ascii, bk_buffer *out)
{
    bk_arena *arena = bk_arena_new();
    size_t widest = widest_name(arena, entries, count, ascii);
    for (size_t i = 0; i < count; i++) {
        const char *name = shown_name(arena, &entries[i], ascii);
        bk_buffer_print(out, "%s  %s%*s  %s%s\n", shown_moment(arena, entries[i].made_at, ascii), name,
                        (int)(widest - bk_text_columns(name)), "",
                        bk_text_safe(arena, entries[i].sentence, ascii), shown_end(&entries[i]));
    }
    bk_arena_free(arena);
}

void bk_daybook_json(const bk_entry *entries, size_t count, bk_buffer *out)
{
    bk_json json = {.out = out};
    bk_json_array(&json, NULL);
    for (size_t i = 0; i < count; i++) {
        bk_json_object(&json, NULL);
        bk_json_whole(&json, "entry", entries[i].id);
        bk_json_text(&json, "made_at", entries[i].made_at);
        bk_json_text(&json, "made_by", entries[i].made_by);
        bk_json_text(&json, "sentence", entries[i].sentence);
        bk_json_truth(&json, "undone", entries[i].undone);
        if (entries[i].undoes) {
            bk_json_whole(&json, "undoes", entries[i].undoes);
        } else {
            bk_json_null(&json, "undoes");
        }
        bk_json_truth(&json, "ended", entries[i].ended);
        bk_json_object_end(&json);
    }
    bk_json_array_end(&json);
}
