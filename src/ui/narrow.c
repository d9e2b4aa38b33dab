#include "bodkin/ui/narrow.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/forecast_words.h"

// ------------------------------------------------------------------------------------------- what is typed

bool bk_query_add(bk_query *query, const char *typed)
{
    size_t length = strlen(typed);
    if (query->length + length >= BK_QUERY_ROOM)
        return false;
    memcpy(query->text + query->length, typed, length + 1);
    query->length += length;
    return true;
}

static bool continues_character(char byte)
{
    enum { KIND = 0xC0, CONTINUES = 0x80 };
    return ((unsigned char)byte & KIND) == CONTINUES;
}

bool bk_query_take_back(bk_query *query)
{
    if (query->length == 0)
        return false;
    do
        query->length--;
    while (query->length > 0 && continues_character(query->text[query->length]));
    query->text[query->length] = '\0';
    return true;
}

void bk_query_clear(bk_query *query)
{
    *query = (bk_query){.length = 0};
}

// ----------------------------------------------------------------------------------------- what can be found

struct bk_findable {
    bk_arena *arena;
    size_t count;
    const char **texts;
};

bk_findable *bk_findable_of(size_t count, bk_findable_text *text, const void *context)
{
    bk_arena *arena = bk_arena_new();
    bk_arena *scratch = bk_arena_new();
    bk_findable *findable = bk_arena_clear(arena, 1, sizeof *findable);
    findable->arena = arena;
    findable->count = count;
    findable->texts = bk_arena_clear(arena, count, sizeof *findable->texts);
    for (size_t i = 0; i < count; i++) {
        findable->texts[i] = bk_text_fold(arena, text(context, i, scratch));
        bk_arena_reset(scratch);
    }
    bk_arena_free(scratch);
    return findable;
}

static const char *text_or_none(const char *text)
{
    return text ? text : "";
}

typedef struct hanging {
    const bk_rail *rail;
    const bk_forecast *forecast;
} hanging;

static const char *costume_text(const void *context, size_t index, bk_arena *arena)
{
    const hanging *all = context;
    const bk_rail *rail = all->rail;
    const bk_rail_costume *costume = &rail->costumes[index];
    const bk_costume_forecast *forecast = bk_forecast_costume(all->forecast, costume->record->id);
    return bk_arena_print(arena, "%s\n%s\n%s\n%s\n%s\n%s\n%s", text_or_none(costume->record->number),
                          text_or_none(costume->role), text_or_none(costume->performer),
                          text_or_none(costume->record->title), bk_state_word(costume->reckoned->state),
                          bk_urgency_word(bk_urgency_of(rail, costume, forecast)),
                          bk_costume_waits_brief(rail, costume, SIZE_MAX, arena));
}

bk_findable *bk_findable_new(const bk_rail *rail, const bk_forecast *forecast)
{
    const hanging all = {rail, forecast};
    return bk_findable_of(rail->costume_count, costume_text, &all);
}

void bk_findable_free(bk_findable *findable)
{
    if (findable)
        bk_arena_free(findable->arena);
}

static bool has_all_words(const char *text, char *const *words, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (!strstr(text, words[i]))
            return false;
    return true;
}

void bk_findable_match(const bk_findable *findable, const bk_query *query, bool *found)
{
    char *words[BK_QUERY_ROOM / 2];
    size_t count = 0;
    bk_arena *arena = bk_arena_new();
    char *rest = NULL;
    char *folded = bk_text_fold(arena, query->text);
    for (char *word = strtok_r(folded, " ", &rest); word && count < sizeof words / sizeof words[0];
         word = strtok_r(NULL, " ", &rest))
        words[count++] = word;
    for (size_t i = 0; i < findable->count; i++)
        found[i] = has_all_words(findable->texts[i], words, count);
    bk_arena_free(arena);
}
