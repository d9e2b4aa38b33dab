#include "bodkin/ui/ledger.h"
#include "bodkin/ui/query_line.h"

// Narrowing a ledger by what is typed.

enum { NARROWED_WINDOW = 5000 }; // lines of a long list that are searched

// Back to all of them; the cursor stays on its record.
static void clear_narrowing(bk_screen *screen)
{
    bk_ledger *ledger = bk_ledger_of(screen);
    const bk_ledger_line *chosen = bk_ledger_chosen(screen);
    bk_family family = chosen ? chosen->family : BK_FAMILIES;
    int64_t id = chosen ? chosen->id : 0;
    ledger->typing = false;
    bk_query_clear(&ledger->query);
    bk_ledger_show(ledger, family, id, 0);
}

void bk_ledger_back(bk_screen *screen, const bk_key_row *row)
{
    if (bk_ledger_of(screen)->query.length > 0)
        clear_narrowing(screen);
    else
        bk_screen_back(screen, row);
}

void bk_ledger_narrow(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_ledger *ledger = bk_ledger_of(screen);
    ledger->typing = true;
    if (ledger->more && ledger->window < NARROWED_WINDOW) {
        ledger->window = NARROWED_WINDOW;
        screen->stale = true;
    }
}

bool bk_ledger_take(bk_screen *screen, const bk_key *key)
{
    bk_ledger *ledger = bk_ledger_of(screen);
    if (!ledger->typing || !bk_query_line_take(&ledger->query, &ledger->typing, key, screen->wall))
        return false;
    bk_ledger_show(ledger, BK_FAMILIES, 0, 0);
    return true;
}

size_t bk_ledger_draw_bottom(bk_screen *screen, const bk_paint *paint, bk_spot spot)
{
    const bk_ledger *ledger = bk_ledger_of(screen);
    return ledger->typing ? bk_query_line_draw(&ledger->query, paint, spot) : 0;
}

static void keep_narrowing(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_ledger_of(screen)->typing = false;
}

static void end_narrowing(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    clear_narrowing(screen);
}

const bk_key_row bk_ledger_typing_rows[BK_LEDGER_TYPING_ROWS] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "keep",
     .help = "keep the list narrowed",
     .act = keep_narrowing},
    {.name = BK_KEY_ESCAPE,
     .written = "Escape",
     .bottom = "end",
     .help = "end narrowing",
     .act = end_narrowing},
    {.name = BK_KEY_UP, .act = bk_ledger_move},
    {.name = BK_KEY_DOWN, .act = bk_ledger_move},
    {.name = BK_KEY_PAGE_UP, .act = bk_ledger_move},
    {.name = BK_KEY_PAGE_DOWN, .act = bk_ledger_move},
    {.name = BK_KEY_HOME, .act = bk_ledger_move},
    {.name = BK_KEY_END, .act = bk_ledger_move},
};
