#include "bodkin/ui/form_suggest.h"
#include "bodkin/ui/materials_screen.h"

// The forms of the jobs on materials: counting, ordering, what arrived.

// ------------------------------------------------------------------------------------- what it is counted in

static const char *unit_of(const bk_form *form, int64_t material, bk_arena *arena)
{
    bk_error error;
    bk_rows rows = {0};
    if (bk_store_read(bk_form_wall(form)->store, BK_MATERIALS, 0, arena, &rows, &error))
        return NULL;
    const bk_material *materials = rows.items;
    for (size_t i = 0; i < rows.count; i++)
        if (materials[i].id == material)
            return bk_form_unit_words(materials[i].unit);
    return NULL;
}

static const char *unit_counted(const bk_form *form, bk_arena *arena)
{
    return unit_of(form, bk_form_about(form), arena);
}

static const char *unit_arrived(const bk_form *form, bk_arena *arena)
{
    bk_error error;
    bk_rows rows = {0};
    if (bk_store_read(bk_form_wall(form)->store, BK_ORDERS, 0, arena, &rows, &error))
        return NULL;
    const bk_order *orders = rows.items;
    for (size_t i = 0; i < rows.count; i++)
        if (orders[i].id == bk_form_about(form))
            return unit_of(form, orders[i].material_id, arena);
    return NULL;
}

// -------------------------------------------------------------------------------------------------- counting

typedef struct counted {
    bk_quantity on_hand;
    int line;
} counted;

static const bk_column count_columns[] = {
    {"on_hand", true, BK_CELL_QUANTITY, offsetof(counted, on_hand), .example = "2.4"},
};

static const bk_sheet count_sheet = BK_FORM_SHEET(counted, count_columns, "material");

static const bk_form_field count_fields[] = {
    {.column = "on_hand",
     .label = "on the shelf",
     .help = "what you find when you measure or count it",
     .unit = unit_counted},
};

static bk_status save_count(const bk_form *form, const bk_job *job, const void *filled, bk_form_saved *saved,
                            bk_error *error)
{
    const counted *count = filled;
    saved->column = "on_hand";
    saved->id = bk_form_about(form);
    return bk_material_count(job, bk_form_about(form), count->on_hand, &saved->sentence, error);
}

static const bk_form_kind count_form = {
    .name = "Count the shelf",
    .sheet = &count_sheet,
    .fields = count_fields,
    .field_count = sizeof count_fields / sizeof count_fields[0],
    .family = BK_MATERIALS,
    .save = save_count,
};

void bk_material_open_count(bk_screen *screen, const bk_material_line *material)
{
    bk_arena *arena = bk_arena_new();
    const char *title = bk_arena_print(arena, "Count: %s", material->record.name);
    bk_form_open(screen, &count_form,
                 &(bk_form_start){.record = &(counted){.on_hand = BK_NO_AMOUNT},
                                  .about = material->record.id,
                                  .title = title});
    bk_arena_free(arena);
}

// ------------------------------------------------------------------------------------------------- ordering

void bk_material_open_order(bk_screen *screen, const bk_material_line *material)
{
    bk_order order;
    const bk_sheet *sheet = &bk_sheets[BK_SHEET_ORDERS];
    bk_sheet_clear(sheet, &order);
    order.material = material->record.name;
    order.quantity = material->short_of > 0 ? material->short_of : BK_NO_AMOUNT;
    order.ordered_on = screen->wall->today;
    order.from = material->record.supplier;
    bk_form_open(screen, bk_form_of(BK_ORDERS),
                 &(bk_form_start){.record = &order, .about = material->record.id, .first = "quantity"});
}

// -------------------------------------------------------------------------------------------------- arriving

typedef struct arrived {
    bk_quantity quantity;
    bk_day on;
    int line;
} arrived;

static const bk_column arrived_columns[] = {
    {"quantity", true, BK_CELL_QUANTITY, offsetof(arrived, quantity), .example = "2.4"},
    {"arrived_on", true, BK_CELL_DAY, offsetof(arrived, on), .example = "2027-02-23"},
};

static const bk_sheet arrived_sheet = BK_FORM_SHEET(arrived, arrived_columns, "material");

static const bk_form_field arrived_fields[] = {
    {.column = "quantity",
     .label = "arrived",
     .help = "all of it stands here; where less came, the rest stays on order",
     .unit = unit_arrived},
    {.column = "arrived_on", .label = "on", .help = "the day it came; it lies on the shelf from then on"},
};

static bk_status save_arrived(const bk_form *form, const bk_job *job, const void *filled,
                              bk_form_saved *saved, bk_error *error)
{
    const arrived *came = filled;
    saved->column = "quantity";
    saved->id = bk_form_about(form);
    return bk_order_arrived(job, bk_form_about(form), came->quantity, came->on, &saved->sentence, error);
}

static const bk_form_kind arrived_form = {
    .name = "Arrived",
    .sheet = &arrived_sheet,
    .fields = arrived_fields,
    .field_count = sizeof arrived_fields / sizeof arrived_fields[0],
    .family = BK_ORDERS,
    .save = save_arrived,
};

void bk_material_open_arrived(bk_screen *screen, const bk_order *order, const bk_material *material)
{
    char day[BK_DAY_WORDS_ROOM];
    bk_arena *arena = bk_arena_new();
    bk_day today = screen->wall->today;
    const char *title = bk_arena_print(arena, "Arrived: %s of %s, ordered %s",
                                       bk_material_words(order->quantity, material->unit, arena),
                                       material->name, bk_day_words(order->ordered_on, today, day));
    bk_form_open(screen, &arrived_form,
                 &(bk_form_start){.record = &(arrived){.quantity = order->quantity, .on = today},
                                  .about = order->id,
                                  .title = title});
    bk_arena_free(arena);
}
