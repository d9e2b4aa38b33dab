#include "bodkin/ui/materials_screen.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/stack.h"

enum { DETAIL_ROWS = 4, NEEDS_TOLD = 3 };

// What the list shows, and the reading it was made from.
typedef struct materials_view {
    bool shopping; // what to buy instead of all
    bk_material_list list;
} materials_view;

static materials_view *view_of(const bk_screen *screen)
{
    return bk_ledger_of(screen)->own;
}

// ------------------------------------------------------------------------------------------------- all of them

enum { NAME, SHELF, PROMISED, NEEDED, STANDING, SUPPLIER, COLUMNS };

static const bk_list_column columns[COLUMNS] = {
    [NAME] = {.head = "Material", .least = 18, .most = 40, .gap = 2, .fills = true},
    [SHELF] = {.head = "On shelf", .least = 8, .most = 12, .gap = 2, .right = true},
    [PROMISED] = {.head = "Promised", .least = 8, .most = 12, .gap = 2, .right = true},
    [NEEDED] = {.head = "Needed", .least = 8, .most = 12, .gap = 2, .right = true},
    [STANDING] = {.head = "How it stands", .least = 24, .most = 30, .gap = 2},
    [SUPPLIER] = {.head = "Supplier", .least = 12, .most = 30, .spare = true},
};

static const char *quantity_or_nothing(bk_quantity quantity, int unit, bk_arena *arena)
{
    return quantity > 0 ? bk_material_words(quantity, unit, arena) : NULL;
}

static const char *need_words(const bk_material_need *need, int unit, bk_day today, bk_arena *arena)
{
    char day[BK_DAY_WORDS_ROOM];
    const char *due =
        need->due == BK_NO_DAY ? "" : bk_arena_print(arena, ", due %s", bk_day_words(need->due, today, day));
    const char *lacks = need->unmet > 0 ? bk_arena_print(arena, "; %s of it from nowhere yet",
                                                         bk_material_words(need->unmet, unit, arena))
                                        : "";
    return bk_arena_print(arena, "%s %s for %s/%s %s%s%s", need->unmet > 0 ? "short:" : "needs",
                          bk_material_words(need->quantity, unit, arena), need->piece, need->step,
                          need->step_title, due, lacks);
}

static const char *detail(const bk_material_line *material, bk_day today, bk_arena *arena)
{
    const char *all =
        bk_arena_print(arena, "%s%s%s%s%s", material->record.name, material->record.supplier ? ", from " : "",
                       material->record.supplier ? material->record.supplier : "",
                       material->record.note ? ": " : "", material->record.note ? material->record.note : "");
    if (material->need_count == 0)
        return bk_arena_print(arena, "%s\nNo open step needs it.", all);
    for (size_t i = 0; i < material->need_count && i < NEEDS_TOLD - 1; i++)
        all = bk_arena_print(arena, "%s\n%s", all,
                             need_words(&material->needs[i], material->record.unit, today, arena));
    if (material->need_count >= NEEDS_TOLD)
        all = bk_arena_print(arena, "%s\nand %zu more; Enter shows all", all,
                             material->need_count - NEEDS_TOLD + 1);
    return all;
}

static void add_material(bk_ledger *ledger, bk_day today, const bk_material_line *material, size_t index)
{
    bk_arena *arena = ledger->arena;
    int unit = material->record.unit;
    bool counted = material->record.on_hand != BK_NO_AMOUNT;
    const bk_ledger_line line = {
        .id = material->record.id,
        .family = BK_MATERIALS,
        .style = bk_material_style(material, today),
        .name = material->record.name,
        .cells = {[NAME] = material->record.name,
                  [SHELF] = counted ? bk_material_words(material->record.on_hand, unit, arena) : NULL,
                  [PROMISED] = quantity_or_nothing(material->promised, unit, arena),
                  [NEEDED] = quantity_or_nothing(material->needed, unit, arena),
                  [STANDING] = bk_material_standing(material, today, arena),
                  [SUPPLIER] = material->record.supplier},
        .detail = detail(material, today, arena),
        .argument = (int64_t)index,
    };
    bk_ledger_add(ledger, &line);
}

static const char *summary(const bk_material_list *list, bk_arena *arena)
{
    size_t lacking = 0;
    for (size_t i = 0; i < list->count; i++)
        lacking += list->items[i].short_of > 0 ? 1 : 0;
    const char *costs = bk_costs_words(list->costs, list->cost_count, arena);
    if (lacking == 0)
        return "nothing to buy now: the shelf and the orders meet all open steps";
    return bk_arena_print(arena, "%zu to buy now%s%s; Tab shows them by supplier", lacking,
                          costs ? ", about " : "", costs ? costs : "");
}

static void fill_all(bk_ledger *ledger, bk_day today, const bk_material_list *list)
{
    ledger->title = "Materials of the workroom";
    ledger->summary = summary(list, ledger->arena);
    for (size_t i = 0; i < list->count; i++)
        add_material(ledger, today, &list->items[i], i);
}

// -------------------------------------------------------------------------------------------------- what to buy

enum { TO_BUY, BUY, COST, BUY_COLUMNS };

static const bk_list_column buy_columns[BUY_COLUMNS] = {
    [TO_BUY] = {.head = "To buy", .least = 24, .most = 50, .gap = 2},
    [BUY] = {.head = "Quantity", .least = 10, .most = 14, .gap = 3, .right = true},
    [COST] = {.head = "About", .least = 15, .most = 20, .right = true},
};

static void add_to_buy(bk_ledger *ledger, bk_day today, const bk_material_list *list, const bk_to_buy *item)
{
    char cost[BK_AMOUNT_ROOM];
    bk_arena *arena = ledger->arena;
    const bk_material *record = &item->material->record;
    bk_money_write(item->cost, item->currency ? item->currency : "", NULL, cost);
    const bk_ledger_line line = {
        .id = record->id,
        .family = BK_MATERIALS,
        .name = record->name,
        .cells = {[TO_BUY] = record->name,
                  [BUY] = bk_material_words(item->quantity, record->unit, arena),
                  [COST] = item->cost == BK_NO_AMOUNT ? "price not known" : bk_arena_text(arena, cost)},
        .detail = detail(item->material, today, arena),
        .argument = item->material - list->items,
    };
    bk_ledger_add(ledger, &line);
}

static void add_supplier(bk_ledger *ledger, bk_day today, const bk_material_list *list,
                         const bk_shopping *shopping)
{
    bk_arena *arena = ledger->arena;
    const char *costs = bk_costs_words(shopping->costs, shopping->cost_count, arena);
    const char *name = shopping->supplier ? shopping->supplier : "No supplier named";
    const char *heading = costs ? bk_arena_print(arena, "%s: about %s", name, costs) : name;
    bk_ledger_add(ledger, &(bk_ledger_line){.cells = {heading}});
    for (size_t i = 0; i < shopping->count; i++)
        add_to_buy(ledger, today, list, &shopping->items[i]);
}

static void fill_shopping(bk_ledger *ledger, bk_day today, const bk_material_list *list)
{
    const char *costs = bk_costs_words(list->costs, list->cost_count, ledger->arena);
    ledger->title = "To buy now";
    ledger->summary = costs ? bk_arena_print(ledger->arena, "about %s in all; Tab shows all materials", costs)
                            : "Tab shows all materials";
    for (size_t i = 0; i < list->shopping_count; i++)
        add_supplier(ledger, today, list, &list->shopping[i]);
}

static bk_status fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    materials_view *view = ledger->own;
    const bk_wall *wall = screen->wall;
    bk_material_list list;
    int64_t production = wall->rail ? wall->rail->production.id : 0;
    bk_status status = bk_materials_read(wall->store, production, wall->today, ledger->arena, &list, error);
    if (status)
        return status;
    view->list = list; // only now: where it cannot be read the lines of the one before stay
    if (view->shopping)
        fill_shopping(ledger, wall->today, &view->list);
    else
        fill_all(ledger, wall->today, &view->list);
    return BK_OK;
}

static const bk_ledger_kind all_kind = {
    .columns = columns,
    .column_count = COLUMNS,
    .fill = fill,
    .family = BK_MATERIALS,
    .detail_rows = DETAIL_ROWS,
    .empty =
        "No material stands here yet.\n\nMaterials are anything measured by length or by count: cloth, "
        "lining, ribbon, hooks, zips. Press + to add one. What a step needs of it is said with the step, "
        "on the Costume screen.",
};

static const bk_ledger_kind buy_kind = {
    .columns = buy_columns,
    .column_count = BUY_COLUMNS,
    .fill = fill,
    .family = BK_MATERIALS,
    .detail_rows = DETAIL_ROWS,
    .empty = "Nothing is to be bought now: the shelf and the orders meet all that open steps need. Tab shows "
             "all materials.",
};

void *bk_materials_screen_new(void)
{
    return bk_ledger_new(&all_kind, bk_alloc_clear(1, sizeof(materials_view)));
}

// -------------------------------------------------------------------------------------------------- its keys

static const bk_material_line *chosen(const bk_screen *screen)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    return line ? &view_of(screen)->list.items[line->argument] : NULL;
}

static void open_material(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_material_line *material = chosen(screen);
    if (material)
        bk_stack_push(screen->stack, &bk_material_screen, bk_material_screen_new(material->record.id));
}

static void count(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_material_line *material = chosen(screen);
    if (material)
        bk_material_open_count(screen, material);
}

static void order(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_material_line *material = chosen(screen);
    if (material)
        bk_material_open_order(screen, material);
}

static void arrived(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_material_line *material = chosen(screen);
    const bk_order *first = material ? bk_material_under_way(material) : NULL;
    if (first)
        bk_material_open_arrived(screen, first, &material->record);
    else
        bk_wall_say(screen->wall, "Nothing of it is on order.");
}

static bool is_on_order(const bk_screen *screen)
{
    const bk_material_line *material = chosen(screen);
    return material && bk_material_under_way(material);
}

static void turn_view(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    materials_view *view = view_of(screen);
    view->shopping = !view->shopping;
    bk_ledger_of(screen)->kind = view->shopping ? &buy_kind : &all_kind;
    screen->stale = true;
}

static bool shows_all(const bk_screen *screen)
{
    return !view_of(screen)->shopping;
}

static bool shows_shopping(const bk_screen *screen)
{
    return view_of(screen)->shopping;
}

#define TYPED(c) .name = BK_KEY_TYPED, .typed = c, .written = c

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "open",
     .help = "who needs it, and its orders",
     .act = open_material,
     .matters = bk_ledger_has_line},
    {TYPED("k"), .bottom = "count", .help = "say how much of it lies on the shelf", .act = count,
     .matters = bk_ledger_has_line},
    {TYPED("g"), .bottom = "order", .help = "order some; what is short stands there already", .act = order,
     .matters = bk_ledger_has_line},
    {TYPED("v"), .bottom = "arrived", .help = "its first order has arrived, whole or in part", .act = arrived,
     .matters = is_on_order},
    {.name = BK_KEY_TAB,
     .written = "Tab",
     .bottom = "to buy",
     .help = "what to buy now by supplier; again: all materials",
     .act = turn_view,
     .matters = shows_all},
    {.name = BK_KEY_TAB, .written = "Tab", .bottom = "all", .act = turn_view, .matters = shows_shopping},
    BK_LEDGER_EDIT_ROWS,
    BK_LEDGER_ROWS,
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

static const bk_meaning meanings[] = {
    {"short of", "neither the shelf nor the orders meet it: it must be bought"},
    {"on order", "the shelf lacks it, the orders meet it"},
    {"needed", "by the open steps of all productions that are not put away"},
    {"not counted", "nobody has said yet how much of it there is: press k"},
};

const bk_screen_kind bk_materials_screen = {
    .name = "Materials",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    BK_LEDGER_OPERATIONS,
};
