#include "bodkin/ui/screen.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/keys_screen.h"
#include "bodkin/ui/stack.h"

enum { MOST_KEYS = 24, AFTER_OWN = 3, FIRST_KEYS = 2 };

#define WAY_BACK "Escape"

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

const bk_key_row *bk_key_row_beside(const bk_key_table *table, const bk_key *key)
{
    const bk_key_row *row = bk_key_row_find(table, key);
    return row || table->alone ? row : bk_key_row_find(&bk_everywhere_table, key);
}

// A screen's own row for a key hides that of every screen.
static bool has_own(const bk_key_table *own, const bk_key_row *row)
{
    for (size_t i = 0; own && i < own->count; i++)
        if (own->rows[i].name == row->name && bk_same_text(own->rows[i].typed, row->typed))
            return true;
    return false;
}

static size_t add_items(const bk_screen *screen, const bk_key_table *table, const bk_key_table *own,
                        bk_item items[MOST_KEYS], size_t count)
{
    for (size_t i = 0; i < table->count && count < MOST_KEYS; i++) {
        const bk_key_row *row = &table->rows[i];
        if (row->bottom && (!row->matters || row->matters(screen)) && !has_own(own, row))
            items[count++] = (bk_item){.key = row->written, .word = row->bottom, .spare = row->spare};
    }
    return count;
}

// Where room is short the way back, the keys of every screen and the screen's first key stay.
static void draw_keys(bk_screen *screen, const bk_paint *paint, bk_spot spot)
{
    const bk_key_table *table = bk_screen_table(screen);
    bk_item items[MOST_KEYS];
    size_t own = add_items(screen, table, NULL, items, 0), count = own;
    if (!table->alone)
        count = add_items(screen, &bk_everywhere_table, table, items, count);
    for (size_t i = own; i-- > 1 && !bk_paint_items_fit(items, count, spot.width);)
        items[i].spare = !bk_same_text(items[i].key, WAY_BACK);
    bk_paint_items(paint, spot, items, count);
}

// Beside what was done stand how it is undone and, where there is room, the first keys of the screen. Where something is
// typed, u is a letter.
static void draw_message(const bk_screen *screen, const bk_paint *paint)
{
    const bk_wall *wall = screen->wall;
    const bk_key_table *table = bk_screen_table(screen);
    bk_item keys[MOST_KEYS], items[1 + FIRST_KEYS];
    size_t count = 0, own = add_items(screen, table, NULL, keys, 0);
    if (wall->offer_key && !table->alone)
        items[count++] = (bk_item){.key = wall->offer_key, .word = wall->offer};
    bool above =
        !bk_paint_notice_fits(paint, wall->message, items, count); // the keys have a row of their own
    for (size_t i = 0; wall->offer_key && i < own && i < FIRST_KEYS; i++) {
        items[count] = keys[i];
        items[count].spare = false;
        if (!above && !bk_paint_notice_fits(paint, wall->message, items, count + 1))
            break;
        count++;
    }
    bk_paint_notice(paint, wall->message, items, count);
}

void bk_screen_draw_bottom(bk_screen *screen, const bk_paint *paint)
{
    bk_spot spot = bk_paint_row(paint, paint->rows - 1);
    if (screen->wall->message[0]) {
        draw_message(screen, paint);
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

static void leave_now(bk_screen *screen, int64_t argument)
{
    (void)argument;
    screen->stack->left = true;
}

// What is supposed stands nowhere but in the program.
void bk_screen_leave(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    if (screen->wall->supposed->count > 0)
        bk_act_ask(screen, "Leave? What you suppose (S) is not kept, and is forgotten then.", leave_now, 0);
    else
        leave_now(screen, 0);
}
