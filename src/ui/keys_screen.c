#include "bodkin/ui/keys_screen.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/cursor.h"
#include "bodkin/ui/stack.h"

enum { KEY_COLUMN = 3, HELP_COLUMN = 18, FIRST_ROW = 2, ROWS_BELOW = 2 };

typedef struct keys_screen {
    const bk_screen_kind *of;
    bk_cursor scroll; // one line for each place the first seen line can have
} keys_screen;

void *bk_keys_screen_new(const bk_screen_kind *of)
{
    keys_screen *keys = bk_alloc_clear(1, sizeof *keys);
    keys->of = of;
    return keys;
}

static void close_keys(bk_screen *screen)
{
    free(screen->self);
}

// ---------------------------------------------------------------------------------------------- its lines

// The lines are drawn from the first one, of which only those between `top` and `end` are seen.
typedef struct page_part {
    const bk_paint *paint;
    size_t line, top, end;
} page_part;

static void add_line(page_part *page, size_t column, int style, const char *text)
{
    if (page->line >= page->top && page->line < page->end) {
        bk_spot spot = {FIRST_ROW + page->line - page->top, column, page->paint->columns - column - 1};
        bk_paint_text(page->paint, spot, style, text);
    }
}

static void add_pair(page_part *page, const char *word, const char *meaning)
{
    add_line(page, KEY_COLUMN, BK_STYLE_ACCENT, word);
    size_t count;
    char **lines = bk_text_wrap(page->paint->arena, meaning, page->paint->columns - HELP_COLUMN - 1, &count);
    for (size_t i = 0; i < count; i++) {
        add_line(page, HELP_COLUMN, BK_STYLE_PLAIN, lines[i]);
        page->line++;
    }
}

static void add_title(page_part *page, const char *title)
{
    if (!title)
        return;
    page->line += page->line > 0 ? 1 : 0;
    add_line(page, 1, BK_STYLE_DIM, title);
    page->line++;
}

static void add_table(page_part *page, const bk_key_table *table)
{
    add_title(page, table->title);
    for (size_t i = 0; i < table->count; i++)
        if (table->rows[i].help)
            add_pair(page, table->rows[i].written, table->rows[i].help);
}

static void add_lines(page_part *page, const bk_screen_kind *of)
{
    for (size_t t = 0; t < of->table_count; t++) {
        add_table(page, &of->tables[t]);
        if (t == 0 && !of->tables[0].alone)
            add_table(page, &bk_everywhere_table);
    }
    if (of->meaning_count > 0)
        add_title(page, "What the words mean");
    for (size_t i = 0; i < of->meaning_count; i++)
        add_pair(page, of->meanings[i].word, of->meanings[i].meaning);
}

static void draw_keys_screen(bk_screen *screen, const bk_paint *paint)
{
    keys_screen *keys = screen->self;
    page_part counted = {.paint = paint}; // of which no line is seen
    add_lines(&counted, keys->of);
    size_t seen = paint->rows - FIRST_ROW - ROWS_BELOW;
    bk_cursor_fit(&keys->scroll, counted.line > seen ? counted.line - seen + 1 : 1, 1);
    page_part drawn = {.paint = paint, .top = keys->scroll.at, .end = keys->scroll.at + seen};
    add_lines(&drawn, keys->of);
    bk_spot head = bk_paint_row(paint, 0);
    bk_paint_text(paint, head, BK_STYLE_BOLD,
                  bk_arena_print(paint->arena, "%s: keys and words", keys->of->name));
    if (drawn.top + seen < counted.line)
        bk_paint_right(paint, head, BK_STYLE_DIM, "more below");
    else if (drawn.top > 0)
        bk_paint_right(paint, head, BK_STYLE_DIM, "more above");
    bk_term_cursor(0, 0, false);
}

// ----------------------------------------------------------------------------------------------- its keys

static void scroll(bk_screen *screen, const bk_key_row *row)
{
    keys_screen *keys = screen->self;
    enum { PAGE = 10 };
    bool by_page = row->name == BK_KEY_PAGE_UP || row->name == BK_KEY_PAGE_DOWN;
    keys->scroll.seen = by_page ? PAGE : 1;
    bk_cursor_key(&keys->scroll, row->name);
    keys->scroll.seen = 1;
}

static bool scrolls(const bk_screen *screen)
{
    return ((const keys_screen *)screen->self)->scroll.count > 1;
}

static const bk_key_row rows[] = {
    {.name = BK_KEY_ESCAPE,
     .written = "Escape",
     .bottom = "back",
     .help = "back to the screen",
     .act = bk_screen_back},
    {.name = BK_KEY_TYPED, .typed = "?", .act = bk_screen_back},
    {.name = BK_KEY_DOWN, .written = "Down", .bottom = "more", .act = scroll, .matters = scrolls},
    {.name = BK_KEY_UP, .act = scroll},
    {.name = BK_KEY_PAGE_UP, .act = scroll},
    {.name = BK_KEY_PAGE_DOWN, .act = scroll},
    {.name = BK_KEY_HOME, .act = scroll},
    {.name = BK_KEY_END, .act = scroll},
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]}};

const bk_screen_kind bk_keys_screen = {
    .name = "Keys",
    .tables = tables,
    .table_count = 1,
    .close = close_keys,
    .draw = draw_keys_screen,
};
