#include "bodkin/plan/shelf.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/arena.h"
#include "bodkin/base/text.h"

// One material while it is shared out.
typedef struct material_shelf {
    bk_quantity left; // on the shelf; below zero, as BK_NO_AMOUNT is, there is nothing to draw
    size_t order;     // the order that is drawn on now, in the sorted orders
    size_t end;       // behind the last order of this material
} material_shelf;

typedef struct supply_order {
    const bk_incoming *order;
    bk_quantity left;
} supply_order;

#define SIGN(left, right) (((left) > (right)) - ((left) < (right)))

// BK_NO_DAY comes last.
static int day_order(bk_day left, bk_day right)
{
    bool left_open = left == BK_NO_DAY, right_open = right == BK_NO_DAY;
    return left_open != right_open ? left_open - right_open : SIGN(left, right);
}

static int natural_order(const char *left, const char *right)
{
    return left == right ? 0 : bk_natural_order(left, right);
}

int bk_claim_order(const bk_claim *left, const bk_claim *right)
{
    int order = day_order(left->due, right->due);
    if (order == 0)
        order = day_order(left->opens, right->opens);
    if (order == 0 && left->production != right->production)
        order = strcmp(left->production, right->production);
    if (order == 0)
        order = natural_order(left->costume, right->costume);
    if (order == 0)
        order = natural_order(left->piece, right->piece);
    if (order == 0)
        order = SIGN(left->step_position, right->step_position);
    return order != 0 ? order : SIGN(left->need_position, right->need_position);
}

// Claims that nothing tells apart stay in the order given.
static int claim_order(const void *left, const void *right)
{
    const bk_claim *const *one = left, *const *other = right;
    int order = bk_claim_order(*one, *other);
    return order != 0 ? order : SIGN(*one, *other);
}

static int supply_order_order(const void *left, const void *right)
{
    const bk_incoming *one = ((const supply_order *)left)->order;
    const bk_incoming *other = ((const supply_order *)right)->order;
    int order = SIGN(one->material, other->material);
    if (order == 0)
        order = day_order(one->due, other->due);
    if (order == 0)
        order = SIGN(one->position, other->position);
    return order != 0 ? order : SIGN(one, other);
}

static bk_claim **most_urgent_first(bk_claim *claims, size_t count)
{
    bk_claim **sorted = bk_alloc_clear(count, sizeof *sorted);
    for (size_t i = 0; i < count; i++)
        sorted[i] = &claims[i];
    if (count > 0)
        qsort(sorted, count, sizeof *sorted, claim_order);
    return sorted;
}

static supply_order *earliest_first(const bk_incoming *incoming, size_t count)
{
    supply_order *sorted = bk_alloc_clear(count, sizeof *sorted);
    for (size_t i = 0; i < count; i++)
        sorted[i] = (supply_order){&incoming[i], incoming[i].quantity};
    if (count > 0)
        qsort(sorted, count, sizeof *sorted, supply_order_order);
    return sorted;
}

static material_shelf *fill_shelves(const bk_quantity *on_hand, size_t materials, const supply_order *orders,
                                    size_t count)
{
    material_shelf *shelves = bk_alloc_clear(materials, sizeof *shelves);
    for (size_t i = 0; i < materials; i++)
        shelves[i].left = on_hand[i];
    for (size_t i = count; i-- > 0;) {
        material_shelf *shelf = &shelves[orders[i].order->material];
        shelf->order = i;
        if (shelf->end == 0)
            shelf->end = i + 1;
    }
    return shelves;
}

// Takes up to `wanted` of what is there and returns how much; of what is below zero nothing can be taken.
static bk_quantity draw(bk_quantity *there, bk_quantity wanted)
{
    bk_quantity taken = wanted < *there ? wanted : *there;
    taken = taken > 0 ? taken : 0;
    *there -= taken;
    return taken;
}

static bk_supply supply_by(bk_day day, bk_day today)
{
    if (day == BK_NO_DAY)
        return BK_SUPPLY_NO_DATE;
    return day < today ? BK_SUPPLY_LATE : BK_SUPPLY_DUE;
}

// Meets what the shelf lacks from the orders of that material.
static void meet_from_orders(bk_claim *claim, material_shelf *shelf, supply_order *orders, bk_day today)
{
    bk_quantity lacking = claim->short_of;
    while (lacking > 0 && shelf->order < shelf->end) {
        supply_order *order = &orders[shelf->order];
        bk_quantity taken = draw(&order->left, lacking);
        lacking -= taken;
        if (taken > 0)
            claim->supply_day = order->order->due;
        if (order->left <= 0)
            shelf->order++;
    }
    claim->unmet = lacking;
    claim->supply = lacking > 0 ? BK_SUPPLY_NOT_ORDERED : supply_by(claim->supply_day, today);
}

void bk_shelf_share(const bk_quantity *on_hand, size_t materials, const bk_incoming *incoming,
                    size_t incoming_count, bk_day today, bk_claim *claims, size_t claim_count)
{
    bk_claim **sorted = most_urgent_first(claims, claim_count);
    supply_order *orders = earliest_first(incoming, incoming_count);
    material_shelf *shelves = fill_shelves(on_hand, materials, orders, incoming_count);
    for (size_t i = 0; i < claim_count; i++) {
        bk_claim *claim = sorted[i];
        material_shelf *shelf = &shelves[claim->material];
        claim->short_of = claim->quantity - draw(&shelf->left, claim->quantity);
        claim->unmet = 0;
        claim->supply = BK_SUPPLY_SHELF;
        claim->supply_day = BK_NO_DAY;
        if (claim->short_of > 0)
            meet_from_orders(claim, shelf, orders, today);
    }
    free(shelves);
    free(orders);
    free(sorted);
}
