#include "bodkin/work/record_shelf.h"

#include "bodkin/base/text.h"
#include "bodkin/store/bench_rows.h"
#include "bodkin/work/clock.h"
#include "bodkin/work/tick.h"

// -----------------------------------------------------------------------------------------------
// movements

/// What lies on the shelf of a material; 0 where it was never counted.
static bk_status on_shelf(bk_desk *desk, int64_t material, bk_material *row)
{
    bool found = false;
    bk_status status = bk_desk_get(desk, BK_MATERIALS, material, row, &found);
    if (!status && (!found || row->on_hand == BK_NO_AMOUNT)) {
        row->on_hand = 0;
    }
    return status;
}

/// Adds a movement, unless it moves nothing. Refused where more would lie there
/// than can be kept.
static bk_status move(bk_desk *desk, const bk_movement *movement, const char *column)
{
    bk_material row = {.name = ""};
    bk_quantity after = 0;
    bk_status status = on_shelf(desk, movement->material_id, &row);
    if (status) {
        return status;
    }
    if (__builtin_add_overflow(row.on_hand, movement->quantity, &after) || after > BK_QUANTITY_MOST) {
        char most[BK_AMOUNT_ROOM];
        return bk_desk_refuse(desk, column, "There would be more \"%s\" than can be kept, which is %s.",
                              bk_desk_safe(desk, row.name), bk_quantity_write(BK_QUANTITY_MOST, most));
    }
    return bk_store_add(desk->job->store, BK_MOVEMENTS, movement, 0, NULL, desk->error);
}

bk_status bk_shelf_count(bk_desk *desk, const bk_material *now, const bk_material *material)
{
    bk_quantity known = now ? now->on_hand : BK_NO_AMOUNT;
    if (material->on_hand == known) {
        return BK_OK;
    }
    if (material->on_hand == BK_NO_AMOUNT) {
        return bk_desk_refuse(desk, "on_hand",
                              "What lies on the shelf was counted and stays known: "
                              "write 0 where nothing "
                              "lies there.");
    }
    bk_movement count = {
        .material_id = material->id,
        .kind = BK_MOVED_COUNT,
        .quantity = material->on_hand - (known == BK_NO_AMOUNT ? 0 : known), // both within their bounds
        .moved_on = desk->job->today,
    };
    return move(desk, &count, "on_hand");
}

/// What an order has brought to the shelf of a material so far.
static bk_status delivered(bk_desk *desk, int64_t order, int64_t material, bk_quantity *sum, bool *any)
{
    bk_rows rows;
    bk_status status =
        bk_store_read(desk->job->store, BK_MOVEMENTS, material, desk->scratch, &rows, desk->error);
    const bk_movement *movements = rows.items;
    *sum = 0;
    *any = false;
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (movements[i].order_id == order && movements[i].kind == BK_MOVED_DELIVERY) {
            *sum += movements[i].quantity;
            *any = true;
        }
    }
    return status;
}

static bk_status bring(bk_desk *desk, const bk_order *order, int64_t material, bk_quantity quantity)
{
    bk_movement delivery = {
        .material_id = material,
        .kind = BK_MOVED_DELIVERY,
        .quantity = quantity,
        .moved_on = order->arrived_on == BK_NO_DAY ? desk->job->today : order->arrived_on,
        .order_id = order->id,
    };
    return quantity ? move(desk, &delivery, "arrived_on") : BK_OK;
}

/// What the order as it stands has on the shelf: its quantity where it has
/// arrived and what lies there is known, else the part of it that was
/// delivered.
static bk_status known_on_shelf(bk_desk *desk, const bk_order *now, bk_quantity *sum, bool *moved)
{
    bk_material row = {.on_hand = BK_NO_AMOUNT};
    bool found = false;
    bk_status status = delivered(desk, now->id, now->material_id, sum, moved);
    if (!status) {
        status = bk_desk_get(desk, BK_MATERIALS, now->material_id, &row, &found);
    }
    if (!status && now->arrived_on != BK_NO_DAY) {
        *sum = row.on_hand == BK_NO_AMOUNT ? 0 : now->quantity;
    }
    *sum = *sum > 0 ? *sum : 0;
    return status;
}

bk_status bk_shelf_deliver(bk_desk *desk, const bk_order *now, const bk_order *order)
{
    bool arrived = order->arrived_on != BK_NO_DAY;
    bool had_arrived = now && now->arrived_on != BK_NO_DAY;
    bk_quantity had = 0;
    bk_quantity has = arrived ? order->quantity : 0;
    bool moved = false;
    bk_status status = now ? known_on_shelf(desk, now, &had, &moved) : BK_OK;
    if (status || (arrived == had_arrived && !moved)) {
        return status;
    }
    if (!now || now->material_id == order->material_id) {
        return bring(desk, order, order->material_id, has - had);
    }
    status = bring(desk, order, now->material_id, -had);
    return status ? status : bring(desk, order, order->material_id, has);
}

bk_status bk_shelf_forget_material(bk_desk *desk, int64_t material)
{
    bk_rows rows;
    bk_status status =
        bk_store_read(desk->job->store, BK_MOVEMENTS, material, desk->scratch, &rows, desk->error);
    const bk_movement *movements = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        status = bk_store_remove(desk->job->store, BK_MOVEMENTS, movements[i].id, desk->error);
    }
    return status;
}

bk_status bk_shelf_forget_order(bk_desk *desk, const bk_order *order)
{
    bk_rows rows;
    bk_status status =
        bk_store_read(desk->job->store, BK_MOVEMENTS, order->material_id, desk->scratch, &rows, desk->error);
    for (size_t i = 0; !status && i < rows.count; i++) {
        bk_movement movement = ((const bk_movement *)rows.items)[i];
        if (movement.order_id == order->id) {
            movement.order_id = 0;
            status = bk_store_put(desk->job->store, BK_MOVEMENTS, &movement, desk->error);
        }
    }
    return status;
}

// ---------------------------------------------------------------------------------------------
// done and open

static bk_status is_done(bk_desk *desk, int64_t step, bool *done)
{
    bk_bench_step row;
    bk_status status = bk_store_bench_step(desk->job->store, step, desk->scratch, &row, desk->error);
    *done = !status && (row.fits || row.step.done_on != BK_NO_DAY);
    return status;
}

bk_status bk_shelf_watch(bk_desk *desk, bk_step_watch *watch, int64_t step)
{
    for (size_t i = 0; i < watch->count; i++) {
        if (watch->steps[i] == step) {
            return BK_OK;
        }
    }
    if (!step) {
        return BK_OK;
    }
    watch->steps[watch->count] = step;
    return is_done(desk, step, &watch->done[watch->count++]);
}

bk_status bk_shelf_note_need(bk_desk *desk, const bk_need *need)
{
    bool done = false;
    bool found = false;
    bk_material row = {.on_hand = BK_NO_AMOUNT};
    bk_movement nothing = {.material_id = need->material_id,
                           .kind = BK_MOVED_USE,
                           .moved_on = desk->job->today,
                           .step_id = need->step_id};
    bk_status status = is_done(desk, need->step_id, &done);
    if (!status && done) {
        status = bk_desk_get(desk, BK_MATERIALS, need->material_id, &row, &found);
    }
    if (status || row.on_hand == BK_NO_AMOUNT) {
        return status;
    }
    return bk_store_add(desk->job->store, BK_MOVEMENTS, &nothing, 0, NULL, desk->error);
}

/// Nobody works on a step that is done: its clocks end, and it took what they measured.
static bk_status end_clocks(bk_desk *desk, int64_t step)
{
    bk_bench_step row;
    bk_store *store = desk->job->store;
    bk_status status = bk_store_bench_step(store, step, desk->scratch, &row, desk->error);
    if (!status) {
        status = bk_running_end(store, &row.step, desk->job->made_at, desk->error);
    }
    return status ? status : bk_store_put(store, BK_STEPS, &row.step, desk->error);
}

bk_status bk_shelf_settle(bk_desk *desk, const bk_step_watch *watch, bk_day done_on)
{
    bk_store *store = desk->job->store;
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < watch->count; i++) {
        bool done = false;
        status = is_done(desk, watch->steps[i], &done);
        if (!status && done && !watch->done[i]) {
            status = bk_step_take_materials(store, watch->steps[i], done_on, desk->error);
            status = status ? status : end_clocks(desk, watch->steps[i]);
        } else if (!status && !done && watch->done[i]) {
            status = bk_step_return_materials(store, watch->steps[i], desk->job->today, desk->error);
        }
    }
    return status;
}
