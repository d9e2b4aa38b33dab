#include "bodkin/ui/measuring_asked.h"

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"

// Which pieces the performer wears.
static bool *worn_pieces(const bk_rail *rail, const char *performer, bk_arena *arena)
{
    bool *worn = bk_arena_clear(arena, rail->rows.piece_count, sizeof *worn);
    for (size_t i = 0; i < rail->costume_count; i++) {
        const bk_indices *pieces = &rail->rows.costumes[rail->costumes[i].index].pieces;
        for (size_t p = 0; bk_same_text(rail->costumes[i].performer, performer) && p < pieces->count; p++)
            worn[pieces->items[p]] = true;
    }
    return worn;
}

static void mark_listed(bk_measuring *sheet, const char *list, bk_arena *arena)
{
    const char *rest = list, *item = NULL;
    size_t length = 0;
    while (bk_list_item(&rest, &item, &length)) {
        size_t index = length > 0 ? bk_measuring_line_of(sheet, bk_arena_bytes(arena, item, length)) : 0;
        if (length > 0)
            sheet->lines[index].asked = true;
    }
}

void bk_measuring_mark_asked(bk_measuring *sheet)
{
    const bk_rail *rail = sheet->wall->rail;
    if (!rail)
        return;
    bk_arena *arena = bk_arena_new();
    const bool *worn = worn_pieces(rail, sheet->history.performer.name, arena);
    for (size_t i = 0; i < sheet->count; i++)
        sheet->lines[i].asked = false;
    for (size_t i = 0; i < rail->rows.step_count; i++)
        if (!rail->rows.steps[i].done && rail->steps[i].measures && worn[rail->rows.steps[i].piece])
            mark_listed(sheet, rail->steps[i].measures, arena);
    bk_arena_free(arena);
}

static int64_t good_for(const bk_measuring *sheet)
{
    const bk_rail *rail = sheet->wall->rail;
    if (sheet->history.performer.measures_good_for != BK_NOT_KNOWN)
        return sheet->history.performer.measures_good_for;
    bool said = rail && rail->production.measures_good_for != BK_NOT_KNOWN;
    return said ? rail->production.measures_good_for : BK_USUAL_GOOD_FOR;
}

bool bk_measuring_lacks(const bk_measuring *sheet, const bk_measuring_line *line)
{
    if (!line->asked || line->value != BK_NO_AMOUNT)
        return false;
    return line->last == BK_NO_AMOUNT || (int64_t)sheet->wall->today - line->last_on > good_for(sheet);
}
