#include "bodkin/base/text.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/materials_screen.h"
#include "bodkin/ui/stack.h"

// One material: who needs it, most urgent first, and its orders.

enum { DETAIL_ROWS = 2 };

typedef struct material_view {
    int64_t id;
    bk_material_line material;
} material_view;

static material_view *view_of(const bk_screen *screen)
{
    return bk_ledger_of(screen)->own;
}

// -------------------------------------------------------------------------------------------------- its lines

// Of a need and of an order.
enum { WHAT, QUANTITY, DAY, FROM, COLUMNS };

static const bk_list_column columns[COLUMNS] = {
    [WHAT] = {.head = "Step, or order", .least = 24, .most = 60, .gap = 2, .fills = true},
    [QUANTITY] = {.head = "Quantity", .least = 8, .most = 12, .gap = 2, .right = true},
    [DAY] = {.head = "When", .least = 14, .most = 22, .gap = 2},
    [FROM] = {.head = "From", .least = 18, .most = 34},
};

static const char *day_words(const char *format, bk_day day, bk_day today, bk_arena *arena)
{
    char words[BK_DAY_WORDS_ROOM];
    return day == BK_NO_DAY ? NULL : bk_arena_print(arena, format, bk_day_words(day, today, words));
}

static const char *met_from(const bk_material_need *need, int unit, bk_arena *arena)
{
    if (need->unmet > 0)
        return bk_arena_print(arena, "short of %s", bk_material_words(need->unmet, unit, arena));
    return need->on_order > 0 ? "from an order" : "from the shelf";
}

static void add_need(bk_screen *screen, bk_ledger *ledger, const bk_material_need *need, int unit)
{
    bk_arena *arena = ledger->arena;
    bk_day today = screen->wall->today;
    int style = need->unmet > 0 ? BK_STYLE_LATE : need->on_order > 0 ? BK_STYLE_TIGHT : BK_STYLE_PLAIN;
    const bk_ledger_line line = {
        .id = need->step_id,
        .family = BK_STEPS,
        .style = style,
        .cells = {[WHAT] = bk_arena_print(arena, "%s/%s %s", need->piece, need->step, need->step_title),
                  [QUANTITY] = bk_material_words(need->quantity, unit, arena),
                  [DAY] = day_words("due %s", need->due, today, arena),
                  [FROM] = met_from(need, unit, arena)},
        .detail = bk_arena_print(arena, "%s: %s/%s %s", need->production, need->piece, need->step,
                                 need->step_title),
    };
    bk_ledger_add(ledger, &line);
}

static const char *order_day(const bk_order *order, bk_day today, bk_arena *arena)
{
    if (order->arrived_on != BK_NO_DAY)
        return day_words("arrived %s", order->arrived_on, today, arena);
    if (order->due_on == BK_NO_DAY)
        return "no date";
    return day_words(order->due_on < today ? "late, was due %s" : "due %s", order->due_on, today, arena);
}

static void add_order(bk_screen *screen, bk_ledger *ledger, const bk_order *order, int unit, size_t index)
{
    bk_arena *arena = ledger->arena;
    bk_day today = screen->wall->today;
    char cost[BK_AMOUNT_ROOM];
    bool open = order->arrived_on == BK_NO_DAY;
    bool late = open && order->due_on != BK_NO_DAY && order->due_on < today;
    const char *ordered = day_words("ordered %s", order->ordered_on, today, arena);
    bk_money_write(order->cost, order->currency ? order->currency : "", NULL, cost);
    const bk_ledger_line line = {
        .id = order->id,
        .family = BK_ORDERS,
        .style = late   ? BK_STYLE_LATE
                 : open ? BK_STYLE_PLAIN
                        : BK_STYLE_DIM,
        .name = bk_arena_print(arena, "the order of %s, %s", bk_material_words(order->quantity, unit, arena),
                               ordered),
        .cells = {[WHAT] = ordered,
                  [QUANTITY] = bk_material_words(order->quantity, unit, arena),
                  [DAY] = order_day(order, today, arena),
                  [FROM] = order->from},
        .detail = cost[0] ? bk_arena_print(arena, "cost %s", cost) : NULL,
        .argument = (int64_t)index,
    };
    bk_ledger_add(ledger, &line);
}

static void add_lines(bk_screen *screen, bk_ledger *ledger, const bk_material_line *material)
{
    int unit = material->record.unit;
    bk_arena *arena = ledger->arena;
    const char *needed =
        material->need_count == 0
            ? "No open step needs it"
            : bk_arena_print(arena, "Needed: %s", bk_material_words(material->needed, unit, arena));
    bk_ledger_add(ledger, &(bk_ledger_line){.cells = {needed}});
    for (size_t i = 0; i < material->need_count; i++)
        add_need(screen, ledger, &material->needs[i], unit);
    const char *orders = material->order_count == 0 ? "Never ordered" : "Orders";
    bk_ledger_add(ledger, &(bk_ledger_line){.cells = {orders}});
    for (size_t i = 0; i < material->order_count; i++)
        add_order(screen, ledger, &material->orders[i], unit, i);
}

static const char *summary(const bk_material_line *material, bk_day today, bk_arena *arena)
{
    const char *standing = bk_material_standing(material, today, arena);
    if (material->record.on_hand == BK_NO_AMOUNT)
        return bk_arena_print(arena, "not counted yet: k counts it");
    return bk_arena_print(arena, "%s on the shelf%s%s",
                          bk_material_words(material->record.on_hand, material->record.unit, arena),
                          standing[0] ? "; " : "", standing);
}

static const bk_material_line *find_material(const bk_material_list *list, int64_t id)
{
    for (size_t i = 0; i < list->count; i++)
        if (list->items[i].record.id == id)
            return &list->items[i];
    return NULL;
}

static bk_status fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    material_view *view = ledger->own;
    const bk_wall *wall = screen->wall;
    bk_material_list list = {0};
    int64_t production = wall->rail ? wall->rail->production.id : 0;
    bk_status status = bk_materials_read(wall->store, production, wall->today, ledger->arena, &list, error);
    if (status)
        return status;
    const bk_material_line *material = find_material(&list, view->id);
    if (!material) {
        bk_wall_say(screen->wall, "That material is no longer in the workroom.");
        bk_stack_pop(screen->stack);
        return BK_OK;
    }
    view->material = *material;
    ledger->title = material->record.name;
    ledger->summary = summary(material, wall->today, ledger->arena);
    add_lines(screen, ledger, material);
    return BK_OK;
}

static bool start(bk_screen *screen, const bk_ledger_line *line, bool fresh, bk_form_start *form)
{
    (void)line;
    (void)form;
    if (fresh)
        bk_material_open_order(screen, &view_of(screen)->material);
    return !fresh;
}

static const bk_ledger_kind ledger_kind = {
    .columns = columns,
    .column_count = COLUMNS,
    .fill = fill,
    .start = start,
    .family = BK_ORDERS,
    .detail_rows = DETAIL_ROWS,
};

void *bk_material_screen_new(int64_t material)
{
    material_view *view = bk_alloc_clear(1, sizeof *view);
    view->id = material;
    return bk_ledger_new(&ledger_kind, view);
}

// -------------------------------------------------------------------------------------------------- its keys

static void count(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_material_open_count(screen, &view_of(screen)->material);
}

static void order(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_material_open_order(screen, &view_of(screen)->material);
}

// The order under the cursor, else the first one under way.
static const bk_order *order_at_hand(const bk_screen *screen)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    const bk_material_line *material = &view_of(screen)->material;
    if (line && line->family == BK_ORDERS)
        return &material->orders[line->argument];
    return bk_material_under_way(material);
}

static void arrived(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_order *at_hand = order_at_hand(screen);
    if (!at_hand)
        bk_wall_say(screen->wall, "Nothing of it is on order.");
    else if (at_hand->arrived_on != BK_NO_DAY)
        bk_wall_say(screen->wall, "That order has arrived already; u undoes what was entered last.");
    else
        bk_material_open_arrived(screen, at_hand, &view_of(screen)->material.record);
}

static bool may_arrive(const bk_screen *screen)
{
    const bk_order *at_hand = order_at_hand(screen);
    return at_hand && at_hand->arrived_on == BK_NO_DAY;
}

static bool on_order_line(const bk_screen *screen)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    return line && line->family == BK_ORDERS;
}

// Steps are taken away where they stand, on the Costume screen.
static void take_away(bk_screen *screen, const bk_key_row *row)
{
    if (on_order_line(screen))
        bk_ledger_take_away(screen, row);
    else
        bk_wall_say(screen->wall, "A need goes with its step, on the Costume screen.");
}

#define TYPED(c) .name = BK_KEY_TYPED, .typed = c, .written = c

static const bk_key_row rows[] = {
    {TYPED("k"), .bottom = "count", .help = "say how much of it lies on the shelf", .act = count},
    {TYPED("g"), .bottom = "order", .help = "order some; what is short stands there already", .act = order},
    {TYPED("+"), .act = order},
    {TYPED("v"), .bottom = "arrived", .help = "the order under the cursor, or the first, has arrived",
     .act = arrived, .matters = may_arrive},
    {TYPED("e"), .bottom = "change", .help = "change the order or the step under the cursor",
     .act = bk_ledger_change, .matters = bk_ledger_has_line},
    {TYPED("-"), .bottom = "take away", .spare = true, .help = "take the order away; it asks first",
     .act = take_away, .matters = on_order_line},
    BK_LEDGER_ROWS,
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

const bk_screen_kind bk_material_screen = {
    .name = "Material",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    BK_LEDGER_OPERATIONS,
};
