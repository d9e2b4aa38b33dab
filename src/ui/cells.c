#include "bodkin/ui/cells.h"

#include "bodkin/base/amount.h"
#include "bodkin/base/text.h"

const char *bk_cell_minutes(int64_t minutes, bk_arena *arena)
{
    char words[BK_AMOUNT_ROOM];
    return bk_arena_text(arena, bk_minutes_words(minutes, words));
}

const char *bk_cell_day(bk_day day, bk_day today, bk_arena *arena)
{
    char words[BK_DAY_WORDS_ROOM];
    return day == BK_NO_DAY ? NULL : bk_arena_text(arena, bk_day_words(day, today, words));
}

const char *bk_cell_time(bk_minute time, bk_arena *arena)
{
    char words[BK_TIME_ROOM];
    return time == BK_NO_TIME ? NULL : bk_arena_text(arena, bk_time_write(time, words));
}

const char *bk_cell_list(const char *list, bk_arena *arena)
{
    const char *rest = list, *item = NULL, *words = NULL;
    size_t length = 0;
    while (rest && bk_list_item(&rest, &item, &length))
        words = words ? bk_arena_print(arena, "%s, %.*s", words, (int)length, item)
                      : bk_arena_print(arena, "%.*s", (int)length, item);
    return words;
}

const char *bk_cell_joined(bk_arena *arena, const char *before, const char *joint, const char *more)
{
    return *more ? bk_arena_print(arena, "%s%s%s", before, *before ? joint : "", more) : before;
}

const char *bk_cell_range(int64_t quickest, int64_t longest, bk_arena *arena)
{
    return quickest == longest ? NULL
                               : bk_arena_print(arena, "%s to %s", bk_cell_minutes(quickest, arena),
                                                bk_cell_minutes(longest, arena));
}
