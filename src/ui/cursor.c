#include "bodkin/ui/cursor.h"

static size_t last_line(const bk_cursor *cursor)
{
    return cursor->count > 0 ? cursor->count - 1 : 0;
}

// Moves the part that is seen as little as needed; no room is left empty at the end of the list.
static void bring_in_sight(bk_cursor *cursor)
{
    size_t last_top = cursor->count > cursor->seen ? cursor->count - cursor->seen : 0;
    if (cursor->at < cursor->top)
        cursor->top = cursor->at;
    if (cursor->at >= cursor->top + cursor->seen)
        cursor->top = cursor->at - cursor->seen + 1;
    if (cursor->top > last_top)
        cursor->top = last_top;
}

void bk_cursor_fit(bk_cursor *cursor, size_t count, size_t seen)
{
    cursor->count = count;
    cursor->seen = seen > 0 ? seen : 1;
    bk_cursor_put(cursor, cursor->at);
}

void bk_cursor_put(bk_cursor *cursor, size_t at)
{
    cursor->at = at < last_line(cursor) ? at : last_line(cursor);
    bring_in_sight(cursor);
}

static size_t back(size_t from, size_t by)
{
    return from > by ? from - by : 0;
}

bool bk_cursor_key(bk_cursor *cursor, bk_key_name name)
{
    size_t page = cursor->seen > 1 ? cursor->seen - 1 : 1;
    switch (name) {
    case BK_KEY_UP:
        bk_cursor_put(cursor, back(cursor->at, 1));
        return true;
    case BK_KEY_DOWN:
        bk_cursor_put(cursor, cursor->at + 1);
        return true;
    case BK_KEY_PAGE_UP:
        cursor->top = back(cursor->top, page);
        bk_cursor_put(cursor, back(cursor->at, page));
        return true;
    case BK_KEY_PAGE_DOWN:
        cursor->top += page;
        bk_cursor_put(cursor, cursor->at + page);
        return true;
    case BK_KEY_HOME:
        bk_cursor_put(cursor, 0);
        return true;
    case BK_KEY_END:
        bk_cursor_put(cursor, last_line(cursor));
        return true;
    default:
        return false;
    }
}
