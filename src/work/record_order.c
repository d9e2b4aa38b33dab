#include "bodkin/work/record_order.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/plan/network.h"

enum { CIRCLE_NAMED = 12 }; // steps of a circle that are named; of a longer one the rest is counted

// -------------------------------------------------------------------------------------------------
// circles

/// An order that is looked through for a circle.
typedef struct order_network {
    bk_desk *desk;
    size_t count; ///< steps; the one that is saved is `own`
    size_t own;
    BK_LIST(bk_network_link) links;
    /// What a step is called.
    bk_status (*name)(const struct order_network *network, size_t step, const char **name);
    const void *context;
} order_network;

/// Tells a circle from the step that is saved on, each step before what it
/// comes after.
static bk_status refuse_circle(const order_network *network, const size_t *circle, size_t length)
{
    size_t begin = 0;
    bk_status status = BK_OK;
    bk_buffer text = {0};
    for (size_t i = 0; i < length; i++) {
        begin = circle[i] == network->own ? i : begin;
    }
    const char *name = NULL;
    for (size_t i = 0; !status && length > 0 && i <= length; i++) {
        if (i >= CIRCLE_NAMED && i < length) {
            continue;
        }
        status = network->name(network, circle[(begin + length - i % length) % length], &name);
        if (i == length && length > CIRCLE_NAMED) {
            bk_buffer_print(&text, ", and so on through %zu more", length - CIRCLE_NAMED);
        }
        static const char *const joints[] = {"", " comes after "};
        bk_buffer_print(&text, "%s%s", i < 2 ? joints[i] : ", which comes after ",
                        name ? bk_desk_safe(network->desk, name) : "?");
    }
    if (!status) {
        status = bk_desk_refuse(network->desk, "after", "That would be a circle: %s. Take one of them out.",
                                text.bytes);
    }
    bk_buffer_free(&text);
    return status;
}

static bk_status check_network(order_network *network)
{
    size_t *circle = NULL;
    size_t length = 0;
    bk_status status = BK_OK;
    if (bk_network_circle(network->count, network->links.items, network->links.count, network->desk->scratch,
                          &circle, &length)) {
        status = refuse_circle(network, circle, length);
    }
    bk_list_free(&network->links);
    return status;
}

// --------------------------------------------------------------------------------------
// steps of a production

/// The steps of the production, and behind them the one that is saved where it
/// is new.
typedef struct saved_step {
    bk_rows rows;
    const bk_step *step;
} saved_step;

static bk_status step_name(const order_network *network, size_t at, const char **name)
{
    const saved_step *saved = network->context;
    if (at == network->own) {
        *name = bk_arena_print(network->desk->scratch, "%s/%s", saved->step->piece, saved->step->key);
        return BK_OK;
    }
    return bk_desk_step_name(network->desk, ((const bk_step *)saved->rows.items)[at].id, name);
}

static void link_steps(order_network *network, const bk_id_index *places, const bk_rows *rows)
{
    const bk_link *links = rows->items;
    int64_t own_step = ((const saved_step *)network->context)->step->id;
    for (size_t i = 0; i < rows->count; i++) {
        const long long *from = bk_id_index_find(places, links[i].to_id);
        const long long *to = bk_id_index_find(places, links[i].from_id);
        if (from && to && links[i].from_id != own_step) {
            bk_list_add(&network->links, ((bk_network_link){(size_t)*from, (size_t)*to}));
        }
    }
    for (size_t i = 0; i < network->desk->linked_count; i++) {
        const long long *from = bk_id_index_find(places, network->desk->linked[i]);
        if (from) {
            bk_list_add(&network->links, ((bk_network_link){(size_t)*from, network->own}));
        }
    }
}

bk_status bk_order_check(bk_desk *desk, const bk_step *step)
{
    bk_rows links;
    saved_step saved = {.step = step};
    bk_status status = bk_desk_rows(desk, BK_STEPS, &saved.rows);
    if (!status) {
        status = bk_desk_rows(desk, BK_STEP_AFTERS, &links);
    }
    if (status) {
        return status;
    }
    bk_id_index *places = bk_id_index_of(saved.rows.items, saved.rows.count, sizeof(bk_step));
    const long long *own = step->id ? bk_id_index_find(places, step->id) : NULL;
    order_network network = {.desk = desk,
                             .count = saved.rows.count + 1,
                             .own = own ? (size_t)*own : saved.rows.count,
                             .name = step_name,
                             .context = &saved};
    link_steps(&network, places, &links);
    bk_id_index_free(places);
    return check_network(&network);
}

// ------------------------------------------------------------------------------------
// steps of an order of work

/// The steps of an order of work with the saved one last; keys lead to their
/// places.
typedef struct work_order {
    const bk_work_step **steps;
    bk_index *places;
} work_order;

static bk_status work_step_name(const order_network *network, size_t at, const char **name)
{
    const work_order *order = network->context;
    *name = order->steps[at]->key;
    return BK_OK;
}

static bk_status link_work_step(order_network *network, const work_order *order, size_t at)
{
    const char *rest = order->steps[at]->after ? order->steps[at]->after : "";
    const char *item;
    size_t length;
    while (bk_list_item(&rest, &item, &length)) {
        const char *key = bk_arena_bytes(network->desk->scratch, item, length);
        const long long *from = bk_index_find(order->places, key);
        if (from) {
            bk_list_add(&network->links, ((bk_network_link){(size_t)*from, at}));
        } else if (at == network->own) {
            return bk_desk_refuse_name(network->desk, "after", BK_WORK_STEPS, order->steps[at]->work_id, key);
        }
    }
    return BK_OK;
}

bk_status bk_order_check_work(bk_desk *desk, const bk_work_step *now, const bk_work_step *step)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_WORK_STEPS, &rows);
    if (status) {
        return status;
    }
    const bk_work_step *items = rows.items;
    work_order order = {bk_arena_clear(desk->scratch, rows.count + 1, sizeof *order.steps), bk_index_new()};
    order_network network = {.desk = desk, .name = work_step_name, .context = &order};
    for (size_t i = 0; i < rows.count; i++) {
        if (items[i].work_id == step->work_id && items[i].id != step->id) {
            bk_index_put(order.places, items[i].key, (long long)network.count);
            order.steps[network.count++] = &items[i];
        }
    }
    network.own = network.count++;
    order.steps[network.own] = step;
    bk_index_put(order.places, step->key, (long long)network.own);
    if (now) {
        bk_index_put(order.places, now->key, (long long)network.own);
    }
    for (size_t i = 0; !status && i < network.count; i++) {
        status = link_work_step(&network, &order, i);
    }
    if (!status) {
        status = check_network(&network);
    }
    bk_list_free(&network.links);
    bk_index_free(order.places);
    return status;
}

// ----------------------------------------------------------------------------------------
// steps that go away

/// What each step comes after, while steps are taken out.
typedef struct taking_out {
    bk_desk *desk;
    const bk_link *links; ///< those of one step stand together
    size_t count;
    bk_id_index *first; ///< step to its first link
    const bk_id_index *gone;
    bk_id_index *seen; ///< what the step at hand comes after already, and the
                       ///< gone ones passed through for it
    BK_LIST(int64_t) afters;
} taking_out;

/// Gathers what `step` comes after; through those that go, in depth and in
/// order.
static void gather_afters(taking_out *taking, int64_t step)
{
    const long long *first = bk_id_index_find(taking->first, step);
    size_t begin = first ? (size_t)*first : taking->count;
    for (size_t i = begin; i < taking->count && taking->links[i].from_id == step; i++) {
        int64_t earlier = taking->links[i].to_id;
        if ((*bk_id_index_put(taking->seen, earlier, 0))++) {
            continue;
        }
        if (bk_id_index_find(taking->gone, earlier)) {
            gather_afters(taking, earlier);
        } else {
            bk_list_add(&taking->afters, earlier);
        }
    }
}

static bk_status link_again(taking_out *taking, int64_t step)
{
    bk_store *store = taking->desk->job->store;
    taking->seen = bk_id_index_new();
    taking->afters.count = 0;
    bk_id_index_put(taking->seen, step, 1);
    gather_afters(taking, step);
    bk_id_index_free(taking->seen);
    bk_status status = bk_store_remove_links(store, BK_STEP_AFTERS, step, taking->desk->error);
    for (size_t i = 0; !status && i < taking->afters.count; i++) {
        bk_link link = {.from_id = step, .to_id = taking->afters.items[i]};
        status = bk_store_add(store, BK_STEP_AFTERS, &link, (int64_t)i, NULL, taking->desk->error);
    }
    return status;
}

bk_status bk_order_take_out(bk_desk *desk, const bk_id_index *gone)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_STEP_AFTERS, &rows);
    const bk_link *links = rows.items;
    taking_out taking = {.desk = desk,
                         .links = links,
                         .count = rows.count,
                         .first = bk_id_index_of(links, rows.count, sizeof *links),
                         .gone = gone};
    bk_id_index *done = bk_id_index_new();
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (bk_id_index_find(gone, links[i].to_id) && !bk_id_index_find(gone, links[i].from_id) &&
            !(*bk_id_index_put(done, links[i].from_id, 0))++) {
            status = link_again(&taking, links[i].from_id);
        }
    }
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (bk_id_index_find(gone, links[i].from_id)) {
            status = bk_store_remove_link(desk->job->store, BK_STEP_AFTERS, links[i].from_id, links[i].to_id,
                                          desk->error);
        }
    }
    bk_id_index_free(done);
    bk_id_index_free(taking.first);
    bk_list_free(&taking.afters);
    bk_desk_forget(desk, BK_STEP_AFTERS);
    return status;
}

/// A list of keys on its way, each once.
typedef struct key_list {
    bk_arena *arena;
    bk_index *seen;
    const char *text;
} key_list;

static void add_keys(key_list *list, const char *keys)
{
    const char *rest = keys ? keys : "";
    const char *item;
    size_t length;
    while (bk_list_item(&rest, &item, &length)) {
        const char *key = bk_arena_bytes(list->arena, item, length);
        if (!(*bk_index_put(list->seen, key, 0))++) {
            list->text = list->text ? bk_arena_print(list->arena, "%s;%s", list->text, key) : key;
        }
    }
}

/// `keys` with `instead` in the place of `key`; NULL where nothing is left.
static const char *put_instead(bk_desk *desk, const char *keys, const char *key, const char *instead)
{
    key_list list = {desk->scratch, bk_index_new(), NULL};
    const char *rest = keys;
    const char *item;
    size_t length;
    while (bk_list_item(&rest, &item, &length)) {
        const char *here = bk_arena_bytes(desk->scratch, item, length);
        add_keys(&list, bk_same_text(here, key) ? instead : here);
    }
    bk_index_free(list.seen);
    return list.text;
}

bk_status bk_order_put_instead(bk_desk *desk, int64_t work, const char *key, const char *instead)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_WORK_STEPS, &rows);
    const bk_work_step *items = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        bk_work_step step = items[i];
        if (step.work_id != work || !step.after || bk_same_text(step.key, key)) {
            continue;
        }
        step.after = put_instead(desk, step.after, key, instead);
        if (!bk_same_text(step.after, items[i].after)) {
            status = bk_store_put(desk->job->store, BK_WORK_STEPS, &step, desk->error);
        }
    }
    bk_desk_forget(desk, BK_WORK_STEPS);
    return status;
}
