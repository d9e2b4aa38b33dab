#include "bodkin/ui/screen.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/keys_screen.h"
#include "bodkin/ui/stack.h"

enum { MOST_KEYS = 24, AFTER_OWN = 3 };

const bk_key_row *bk_key_row_find(const bk_key_table *table, const bk_key *key)
{
    for (size_t i = 0; i < table->count; i++) {
        const bk_key_row *row = &table->rows[i];
        if (row->name == key->name && (key->name != BK_KEY_TYPED || bk_same_text(row->typed, key->text)))
            return row;
    }
    return NULL;
}

const bk_key_table *bk_screen_table(const bk_screen *screen)
{
    return &screen->kind->tables[screen->kind->table ? screen->kind->table(screen) : 0];
}

static void draw_keys(bk_screen *screen, const bk_paint *paint, bk_spot spot)
{
    const bk_key_table *table = bk_screen_table(screen);
    bk_item items[MOST_KEYS];
    size_t count = 0;
    for (size_t i = 0; i < table->count && count < MOST_KEYS; i++) {
        const bk_key_row *row = &table->rows[i];
        if (row->bottom && (!row->matters || row->matters(screen)))
            items[count++] = (bk_item){.key = row->written, .word = row->bottom};
    }
    bk_paint_items(paint, spot, items, count);
}

void bk_screen_draw_bottom(bk_screen *screen, const bk_paint *paint)
{
    bk_spot spot = bk_paint_row(paint, paint->rows - 1);
    if (screen->wall->message[0]) {
        bk_paint_text(paint, spot, BK_STYLE_BOLD, screen->wall->message);
        return;
    }
    size_t own = screen->kind->draw_bottom ? screen->kind->draw_bottom(screen, paint, spot) : 0;
    if (own > 0)
        own += AFTER_OWN;
    spot.column += own;
    spot.width -= own < spot.width ? own : spot.width;
    draw_keys(screen, paint, spot);
}

void bk_screen_back(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_stack_pop(screen->stack);
}

void bk_screen_help(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_stack_push(screen->stack, &bk_keys_screen, bk_keys_screen_new(screen->kind));
}

void bk_screen_leave(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    screen->stack->left = true;
}
