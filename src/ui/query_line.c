#include "bodkin/ui/query_line.h"

#include "bodkin/base/text.h"

bool bk_query_line_take(bk_query *query, bool *typing, const bk_key *key, bk_wall *wall)
{
    if (key->name == BK_KEY_TYPED) {
        if (!bk_query_add(query, key->text))
            bk_wall_say(wall, "That is as long as it can be: Backspace takes the last character back.");
    } else if (key->name == BK_KEY_BACKSPACE) {
        *typing = bk_query_take_back(query);
    } else if (key->name == BK_KEY_EMPTY) {
        bk_query_clear(query);
    } else {
        return false;
    }
    return true;
}

// The end of the query, as much of it as has room.
static const char *query_end(const bk_query *query, size_t width)
{
    const char *text = query->text;
    while (bk_text_columns(text) > width)
        text += bk_text_fit(text, 1) > 0 ? bk_text_fit(text, 1) : bk_text_fit(text, 2);
    return text;
}

size_t bk_query_prompt_draw(const bk_query *query, const bk_paint *paint, bk_spot spot, const char *prompt)
{
    enum { QUERY_COLUMNS = 40 };
    size_t before = bk_paint_text(paint, spot, BK_STYLE_ACCENT, prompt) + 1;
    spot.column += before;
    spot.width = QUERY_COLUMNS;
    size_t used = bk_paint_text(paint, spot, BK_STYLE_PLAIN, query_end(query, QUERY_COLUMNS));
    bk_term_cursor(spot.row, spot.column + used, true);
    return before + used;
}

size_t bk_query_line_draw(const bk_query *query, const bk_paint *paint, bk_spot spot)
{
    return bk_query_prompt_draw(query, paint, spot, "/");
}

const char *bk_query_words(const bk_query *query, const bk_paint *paint, size_t shown, size_t all)
{
    const char *open = paint->ascii ? "\"" : "“", *close = paint->ascii ? "\"" : "”";
    return bk_arena_print(paint->arena, "Narrowed to %s%s%s: %zu of %zu", open, query->text, close, shown,
                          all);
}
