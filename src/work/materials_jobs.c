#include "bodkin/base/proportion.h"
#include "bodkin/base/text.h"
#include "bodkin/store/one.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/change.h"
#include "bodkin/work/materials.h"

// Counting the shelf, ordering, and what arrives.

bk_status bk_material_find(bk_store *store, const char *name, int64_t *material, bk_error *error)
{
    bk_rows rows = {0};
    bk_arena *arena = bk_arena_new();
    *material = 0;
    bk_status status = bk_store_read(store, BK_MATERIALS, 0, arena, &rows, error);
    const bk_material *items = rows.items;
    const char **names = bk_arena_clear(arena, rows.count, sizeof *names);
    for (size_t i = 0; !status && i < rows.count; i++) {
        names[i] = items[i].name;
        if (bk_same_text(items[i].name, name)) {
            *material = items[i].id;
        }
    }
    if (!status && !*material) {
        const char *near = bk_nearest(name, names, rows.count);
        status = bk_fail(error, BK_REFUSED, "There is no material \"%s\" in the workroom%s%s%s",
                         bk_text_safe(arena, name, false), near ? "; did you mean \"" : "",
                         near ? bk_text_safe(arena, near, false) : "", near ? "\"?" : ".");
    }
    bk_arena_free(arena);
    return status;
}

static bk_status get_material(const bk_job *job, int64_t id, bk_material *material, bk_error *error)
{
    bool found;
    bk_status status = bk_store_get(job->store, BK_MATERIALS, id, job->arena, material, &found, error);
    if (!status && !found) {
        return bk_fail(error, BK_REFUSED, "This material is no longer in the workroom.");
    }
    return status;
}

/// A quantity that can lie on a shelf or be ordered: whole where things are counted, and not too large to add up.
static bk_status check_quantity(const bk_job *job, const bk_material *material, bk_quantity quantity,
                                bk_quantity least, bk_error *error)
{
    const char *name = bk_change_name(job, material->name);
    if (quantity < least || quantity > BK_QUANTITY_MOST) {
        return bk_fail(error, BK_REFUSED, "The quantity of %s must be %s and at most %s.", name,
                       least ? "more than nothing" : "nothing or more",
                       bk_material_words(BK_QUANTITY_MOST, material->unit, job->arena));
    }
    if (material->unit == BK_EACH && quantity % BK_QUANTITY_ONE) {
        return bk_fail(error, BK_REFUSED, "%s are counted whole, not %s.", name,
                       bk_material_words(quantity, material->unit, job->arena));
    }
    return BK_OK;
}

static const char *words_of(const bk_job *job, const bk_material *material, bk_quantity quantity)
{
    return bk_material_words(quantity, material->unit, job->arena);
}

// -------------------------------------------------------------------------------------------------- counting

typedef struct shelf_count {
    int64_t material;
    bk_quantity quantity;
} shelf_count;

static bk_status count(const bk_job *job, void *context, const char **sentence, bk_error *error)
{
    const shelf_count *counted = context;
    bk_material material;
    bk_status status = get_material(job, counted->material, &material, error);
    if (!status) {
        status = check_quantity(job, &material, counted->quantity, 0, error);
    }
    if (status) {
        return status;
    }
    bool known = material.on_hand != BK_NO_AMOUNT;
    bk_movement movement = {
        .material_id = counted->material,
        .kind = BK_MOVED_COUNT,
        .quantity = counted->quantity - (known ? material.on_hand : 0),
        .moved_on = job->today,
    };
    *sentence = bk_arena_print(job->arena, "Counted: %s, %s%s%s%s", material.name,
                               words_of(job, &material, counted->quantity), known ? " (it was " : "",
                               known ? words_of(job, &material, material.on_hand) : "", known ? ")" : "");
    return bk_store_add(job->store, BK_MOVEMENTS, &movement, 0, NULL, error);
}

bk_status bk_material_count(const bk_job *job, int64_t material, bk_quantity quantity, const char **sentence,
                            bk_error *error)
{
    shelf_count counted = {material, quantity};
    return bk_change_run(job, count, &counted, sentence, error);
}

// -------------------------------------------------------------------------------------------------- ordering

/// Puts what arrived on the shelf, as far as there is room for it.
static bk_status deliver(const bk_job *job, const bk_material *material, const bk_order *order, int64_t id,
                         bk_error *error)
{
    bk_quantity there = material->on_hand == BK_NO_AMOUNT ? 0 : material->on_hand;
    if (there + order->quantity > BK_QUANTITY_MOST) { // both within their bounds
        return bk_fail(error, BK_REFUSED, "There would be more %s than can be kept, which is %s.",
                       bk_change_name(job, material->name), words_of(job, material, BK_QUANTITY_MOST));
    }
    bk_movement delivery = {
        .material_id = order->material_id,
        .kind = BK_MOVED_DELIVERY,
        .quantity = order->quantity,
        .moved_on = order->arrived_on,
        .order_id = id,
    };
    return bk_store_add(job->store, BK_MOVEMENTS, &delivery, 0, NULL, error);
}

static bk_status put_cost(const bk_job *job, int64_t id, bk_money cost, const char *currency, bk_error *error)
{
    bk_private amount = {id, NULL, cost, currency};
    return cost == BK_NO_AMOUNT ? BK_OK : bk_store_put(job->store, BK_ORDER_COSTS, &amount, error);
}

static bk_status check_order(const bk_job *job, const bk_material *material, const bk_order *order,
                             bk_error *error)
{
    if (order->cost != BK_NO_AMOUNT && (order->cost < 0 || order->cost > BK_MONEY_MOST)) {
        return bk_fail(error, BK_REFUSED, "An order costs nothing or more.");
    }
    return check_quantity(job, material, order->quantity, 1, error);
}

static bk_status place_order(const bk_job *job, void *context, const char **sentence, bk_error *error)
{
    bk_order *order = context;
    bk_material material;
    int64_t id = 0;
    bk_status status = get_material(job, order->material_id, &material, error);
    if (!status) {
        status = check_order(job, &material, order, error);
    }
    if (status) {
        return status;
    }
    order->ordered_on = order->ordered_on == BK_NO_DAY ? job->today : order->ordered_on;
    order->from = order->from ? order->from : material.supplier;
    status = bk_store_add(job->store, BK_ORDERS, order, 0, &id, error);
    if (!status) {
        status = put_cost(job, id, order->cost, order->currency, error);
    }
    if (!status && order->arrived_on != BK_NO_DAY) {
        status = deliver(job, &material, order, id, error);
    }
    *sentence =
        bk_arena_print(job->arena, "Ordered: %s, %s%s%s", material.name,
                       words_of(job, &material, order->quantity), order->due_on == BK_NO_DAY ? "" : ", due ",
                       order->due_on == BK_NO_DAY ? "" : bk_change_day(job, order->due_on));
    return status;
}

bk_status bk_material_order(const bk_job *job, const bk_order *order, const char **sentence, bk_error *error)
{
    bk_order placed = *order;
    placed.id = 0;
    return bk_change_run(job, place_order, &placed, sentence, error);
}

// -------------------------------------------------------------------------------------------------- arriving

typedef struct order_arriving {
    int64_t id;
    bk_quantity quantity; ///< BK_NO_AMOUNT: all of it
    bk_day on;
    bk_order order;
    bk_material material;
    bk_private cost;
    bool has_cost;
} order_arriving;

static bk_status read_order(const bk_job *job, order_arriving *arriving, bk_error *error)
{
    bool found;
    bk_status status =
        bk_store_get(job->store, BK_ORDERS, arriving->id, job->arena, &arriving->order, &found, error);
    if (!status && !found) {
        return bk_fail(error, BK_REFUSED, "This order is no longer in the workroom.");
    }
    if (!status) {
        status = get_material(job, arriving->order.material_id, &arriving->material, error);
    }
    if (!status && arriving->order.arrived_on != BK_NO_DAY) {
        return bk_fail(error, BK_REFUSED, "This order of %s has arrived already, on %s.",
                       bk_change_name(job, arriving->material.name),
                       bk_change_day(job, arriving->order.arrived_on));
    }
    if (!status && arriving->quantity == BK_NO_AMOUNT) {
        arriving->quantity = arriving->order.quantity;
    }
    if (!status) {
        status = check_quantity(job, &arriving->material, arriving->quantity, 1, error);
    }
    if (!status) {
        status = bk_store_get(job->store, BK_ORDER_COSTS, arriving->id, job->arena, &arriving->cost,
                              &arriving->has_cost, error);
    }
    return status;
}

/// All of it, or more than was ordered.
static bk_status arrive_whole(const bk_job *job, const order_arriving *arriving, bk_error *error)
{
    bk_order order = arriving->order;
    order.quantity = arriving->quantity;
    order.arrived_on = arriving->on;
    bk_status status = bk_store_put(job->store, BK_ORDERS, &order, error);
    return status ? status : deliver(job, &arriving->material, &order, order.id, error);
}

/// The part becomes an order of its own; the rest keeps the order, and what is left of its cost.
static bk_status arrive_part(const bk_job *job, const order_arriving *arriving, bk_error *error)
{
    bk_order rest = arriving->order;
    bk_order part = arriving->order;
    int64_t id = 0;
    part.id = 0;
    part.quantity = arriving->quantity;
    part.arrived_on = arriving->on;
    rest.quantity -= arriving->quantity;
    bk_status status = bk_store_put(job->store, BK_ORDERS, &rest, error);
    if (!status) {
        status = bk_store_add(job->store, BK_ORDERS, &part, 0, &id, error);
    }
    if (!status && arriving->has_cost) {
        const bk_private *cost = &arriving->cost;
        bk_money paid = bk_in_proportion(cost->amount, part.quantity, arriving->order.quantity);
        status = put_cost(job, id, paid, cost->currency, error);
        if (!status) {
            status = put_cost(job, rest.id, cost->amount - paid, cost->currency, error);
        }
    }
    return status ? status : deliver(job, &arriving->material, &part, id, error);
}

static bk_status arrive(const bk_job *job, void *context, const char **sentence, bk_error *error)
{
    order_arriving *arriving = context;
    bk_status status = read_order(job, arriving, error);
    if (status) {
        return status;
    }
    bool part = arriving->quantity < arriving->order.quantity;
    const char *rest = "";
    if (part) {
        rest =
            bk_arena_print(job->arena, " (%s still to come)",
                           words_of(job, &arriving->material, arriving->order.quantity - arriving->quantity));
    }
    *sentence = bk_arena_print(job->arena, "Arrived: %s, %s%s", arriving->material.name,
                               words_of(job, &arriving->material, arriving->quantity), rest);
    return part ? arrive_part(job, arriving, error) : arrive_whole(job, arriving, error);
}

bk_status bk_order_arrived(const bk_job *job, int64_t order, bk_quantity quantity, bk_day on,
                           const char **sentence, bk_error *error)
{
    order_arriving arriving = {.id = order, .quantity = quantity, .on = on == BK_NO_DAY ? job->today : on};
    return bk_change_run(job, arrive, &arriving, sentence, error);
}
