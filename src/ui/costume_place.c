#include "bodkin/ui/costume_place.h"

// A stop begins where its line stands; the costume itself above them all. The first step of a piece is shown with the piece.
static size_t first_line_of(const bk_costume_lines *lines, size_t at)
{
    if (at > 1 && lines->stops[at].family == BK_STEPS && lines->stops[at - 1].family == BK_PIECES)
        at--;
    return lines->stops[at].line == BK_NO_INDEX ? 0 : lines->stops[at].line;
}

// What is told beneath a stop belongs to it, and what a step needs to the step.
static size_t end_line_of(const bk_costume_lines *lines, size_t at)
{
    if (at == 0)
        return 0;
    do
        at++;
    while (at < lines->stop_count && lines->stops[at].family == BK_NEEDS);
    size_t end = at < lines->stop_count ? lines->stops[at].line : lines->count;
    while (end > 0 && lines->items[end - 1].kind == BK_LINE_EMPTY)
        end--;
    return end;
}

static void bring_in_sight(bk_costume_place *place, const bk_costume_lines *lines)
{
    size_t line = place->at == 0 ? 0 : lines->stops[place->at].line;
    size_t first = first_line_of(lines, place->at), end = end_line_of(lines, place->at);
    if (end > first + place->seen)
        first = line;
    if (end > place->top + place->seen)
        place->top = end - place->seen;
    if (first < place->top)
        place->top = first;
    if (line >= place->top + place->seen)
        place->top = line;
}

void bk_costume_place_fit(bk_costume_place *place, const bk_costume_lines *lines)
{
    size_t last_top = lines->count > place->seen ? lines->count - place->seen : 0;
    if (place->at >= lines->stop_count)
        place->at = lines->stop_count - 1;
    bring_in_sight(place, lines);
    if (place->top > last_top)
        place->top = last_top;
}

void bk_costume_place_begin(bk_costume_place *place, const bk_costume_lines *lines)
{
    size_t at = place->at;
    while (at > 0 && lines->stops[at].family != BK_PIECES)
        at--;
    place->top = first_line_of(lines, at);
}

static void put_at(bk_costume_place *place, const bk_costume_lines *lines, size_t at)
{
    place->at = at < lines->stop_count ? at : lines->stop_count - 1;
}

static size_t line_of(const bk_costume_lines *lines, size_t at)
{
    return at == 0 ? 0 : lines->stops[at].line;
}

// The stop nearest to a page away.
static void page_down(bk_costume_place *place, const bk_costume_lines *lines)
{
    size_t at = place->at, wanted = line_of(lines, at) + place->seen;
    while (at + 1 < lines->stop_count && lines->stops[at + 1].line <= wanted)
        at++;
    put_at(place, lines, at > place->at ? at : at + 1);
    place->top += place->seen;
}

static void page_up(bk_costume_place *place, const bk_costume_lines *lines)
{
    size_t at = place->at, from = line_of(lines, at);
    while (at > 0 && line_of(lines, at - 1) + place->seen >= from)
        at--;
    put_at(place, lines, at < place->at || at == 0 ? at : at - 1);
    place->top = place->top > place->seen ? place->top - place->seen : 0;
}

void bk_costume_place_key(bk_costume_place *place, const bk_costume_lines *lines, bk_key_name name)
{
    switch (name) {
    case BK_KEY_PAGE_DOWN:
        page_down(place, lines);
        break;
    case BK_KEY_PAGE_UP:
        page_up(place, lines);
        break;
    case BK_KEY_HOME:
        put_at(place, lines, 0);
        break;
    case BK_KEY_END:
        put_at(place, lines, lines->stop_count);
        break;
    case BK_KEY_DOWN:
        put_at(place, lines, place->at + 1);
        break;
    case BK_KEY_UP:
        put_at(place, lines, place->at > 0 ? place->at - 1 : 0);
        break;
    default:
        break;
    }
}
