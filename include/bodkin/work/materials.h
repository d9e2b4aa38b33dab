#ifndef BODKIN_WORK_MATERIALS_H
#define BODKIN_WORK_MATERIALS_H

#include "bodkin/work/job.h"

/// Materials: what lies on the shelf, what is promised, who needs it, what to buy now.

/// An open step that needs a material, in a production that is not put away. What it takes is `on_shelf` + `on_order` +
/// `unmet` = `quantity`.
typedef struct bk_material_need {
    int64_t production_id, step_id;
    const char *production;
    const char *piece;
    const char *step, *step_title; ///< key and title
    bk_day due;                    ///< of the piece's first costume; BK_NO_DAY where it has none
    bk_quantity quantity;
    bk_quantity on_shelf; ///< met from the shelf
    bk_quantity on_order; ///< met from orders
    bk_quantity unmet;    ///< neither
    bk_day comes;         ///< due day of the last order it draws on; BK_NO_DAY: none, or no date
} bk_material_need;

typedef struct bk_material_line {
    bk_material record; ///< with its price where the reader may know it; on_hand BK_NO_AMOUNT: never counted
    bool here;          ///< some step of the production, open or done, needs it
    bk_quantity promised;          ///< in orders not arrived
    bk_day promised_due;           ///< the earliest due day of these; BK_NO_DAY: none has one
    bk_quantity needed;            ///< by the open steps of all productions
    bk_quantity needed_here;       ///< by those of the production
    bk_quantity short_of;          ///< what neither shelf nor orders meet
    const bk_material_need *needs; ///< most urgent first
    size_t need_count;
    const bk_order
        *orders; ///< those under way by due day, then those arrived, newest first; with their costs
    size_t order_count;
} bk_material_line;

/// Something to buy.
typedef struct bk_to_buy {
    const bk_material_line *material;
    bk_quantity quantity; ///< what it is short of, lengths up to the next tenth, things counted whole
    bk_money cost;        ///< BK_NO_AMOUNT where the price is not known
    const char *currency; ///< NULL: not said
} bk_to_buy;

typedef struct bk_money_sum {
    const char *currency; ///< NULL: not said
    bk_money amount;
} bk_money_sum;

/// What to buy from one supplier.
typedef struct bk_shopping {
    const char *supplier;   ///< NULL: nobody named
    const bk_to_buy *items; ///< by name
    size_t count;
    const bk_money_sum *costs; ///< a sum for each currency
    size_t cost_count;
    size_t unpriced; ///< how many of the items have no known price
} bk_shopping;

typedef struct bk_material_list {
    const bk_material_line *items; ///< all of the workroom, in natural order of their names
    size_t count;
    const bk_shopping *shopping; ///< by supplier, those with none last
    size_t shopping_count;
    const bk_money_sum *costs; ///< of all that is to be bought, a sum for each currency
    size_t cost_count;
} bk_material_list;

/// Reads all materials of the workroom as they stand on `today`; everything lives in `arena`. `production` says which one is
/// meant by "here" (0: none). The shelf and the orders are shared out as for the rail. Prices and costs stay not known to
/// whoever may not know them.
bk_status bk_materials_read(bk_store *store, int64_t production, bk_day today, bk_arena *arena,
                            bk_material_list *list, bk_error *error) BK_MUST_USE;

/// "2.4 m", "12": a quantity with its unit (bk_material_unit), but for things counted; in `arena`.
const char *bk_material_words(bk_quantity quantity, int unit, bk_arena *arena);

/// The material with that name. BK_REFUSED where there is none, with the nearest one.
bk_status bk_material_find(bk_store *store, const char *name, int64_t *material, bk_error *error) BK_MUST_USE;

/// So much lies on the shelf: a movement of kind count brings it there. "Counted: grey wool, 2.4 m (it was 1 m)". BK_REFUSED for
/// what is below zero, or in parts where things are counted whole.
bk_status bk_material_count(const bk_job *job, int64_t material, bk_quantity quantity, const char **sentence,
                            bk_error *error) BK_MUST_USE;

/// Orders a material: `order` with material_id and quantity; `ordered_on` BK_NO_DAY is today, `from` NULL the material's
/// supplier. One that has arrived already lies on the shelf. "Ordered: grey wool, 3 m, due Fri 12 Mar".
bk_status bk_material_order(const bk_job *job, const bk_order *order, const char **sentence, bk_error *error)
    BK_MUST_USE;

/// An order arrived on `on`, whole (`quantity` BK_NO_AMOUNT) or in part; what arrived lies on the shelf. Of a part the part
/// becomes an order of its own, and the rest stays under way; the cost is shared in proportion, so that both add up to it.
/// Where more arrives than was ordered that is the order's quantity. BK_REFUSED for one that has arrived already.
bk_status bk_order_arrived(const bk_job *job, int64_t order, bk_quantity quantity, bk_day on,
                           const char **sentence, bk_error *error) BK_MUST_USE;

#endif
