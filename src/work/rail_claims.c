#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/rail_rows.h"
#include "bodkin/work/rail_gather.h"

// The claims on the shelf: this production's first, in one stretch a step, then those of the others.

/// How urgent a piece is: what a claim of it carries.
typedef struct piece_urgency {
    bk_day due;
    const char *costume;
    const char *piece;
} piece_urgency;

static void urgency_costume(piece_urgency *urgency, const char *number, bk_day due)
{
    if (urgency->due == BK_NO_DAY || due < urgency->due) {
        urgency->due = due;
    }
    if (!urgency->costume || bk_natural_order(number, urgency->costume) < 0) {
        urgency->costume = number;
    }
}

static piece_urgency *own_urgencies(const bk_gathered *gathered)
{
    size_t count = gathered->pieces.count;
    piece_urgency *built = bk_arena_clear(gathered->arena, count, sizeof *built);
    for (size_t i = 0; i < count; i++) {
        const bk_wait_piece *piece = &gathered->wait_pieces[i];
        built[i] = (piece_urgency){BK_NO_DAY, NULL, piece->name};
        for (size_t c = 0; c < piece->costumes.count; c++) {
            const bk_wait_costume *costume = &gathered->wait_costumes[piece->costumes.items[c]];
            urgency_costume(&built[i], costume->number, costume->due);
        }
    }
    return built;
}

/// Fills the claims of this production's open steps and hangs them on the steps. Returns how many there are.
static size_t own_claims(bk_gathered *gathered, bk_claim *claims)
{
    const bk_need *needs = gathered->needs.items;
    const piece_urgency *urgent = own_urgencies(gathered);
    size_t *start = bk_arena_clear(gathered->arena, gathered->steps.count + 1, sizeof *start);
    size_t *step_of = bk_arena_clear(gathered->arena, gathered->needs.count, sizeof *step_of);
    for (size_t i = 0; i < gathered->needs.count; i++) {
        step_of[i] = bk_gathered_index(gathered->step_at, needs[i].step_id);
        if (step_of[i] != BK_NO_INDEX &&
            (gathered->wait_steps[step_of[i]].done ||
             bk_gathered_index(gathered->material_at, needs[i].material_id) == BK_NO_INDEX)) {
            step_of[i] = BK_NO_INDEX;
        }
        if (step_of[i] != BK_NO_INDEX) {
            gathered->wait_steps[step_of[i]].claim_count++;
        }
    }
    size_t total = 0;
    for (size_t step = 0; step < gathered->steps.count; step++) {
        start[step] = total;
        gathered->wait_steps[step].claims = claims + total;
        total += gathered->wait_steps[step].claim_count;
    }
    for (size_t i = 0; i < gathered->needs.count; i++) {
        if (step_of[i] == BK_NO_INDEX) {
            continue;
        }
        const piece_urgency *piece = &urgent[gathered->wait_steps[step_of[i]].piece];
        claims[start[step_of[i]]++] = (bk_claim){
            .material = bk_gathered_index(gathered->material_at, needs[i].material_id),
            .quantity = needs[i].quantity,
            .due = piece->due,
            .opens = gathered->production.opens,
            .production = gathered->production.name,
            .costume = piece->costume,
            .piece = piece->piece,
            .step_position = (int64_t)step_of[i],
            .need_position = (int64_t)i,
        };
    }
    return total;
}

// ------------------------------------------------------------------------------------- other productions

typedef struct other_rows {
    bk_rows claims, pieces, dues;
    bk_id_index *due_at;     ///< production id to index of `dues`
    bk_id_index *urgency_at; ///< piece id to index of `urgencies`
    piece_urgency *urgencies;
} other_rows;

static bk_status read_others(bk_store *store, const bk_gathered *gathered, other_rows *others,
                             bk_error *error)
{
    int64_t production = gathered->production.id;
    bk_status status = bk_store_other_claims(store, production, gathered->arena, &others->claims, error);
    if (!status) {
        status = bk_store_other_pieces(store, production, gathered->arena, &others->pieces, error);
    }
    if (!status) {
        status = bk_store_usual_dues(store, production, gathered->arena, &others->dues, error);
    }
    return status;
}

static void index_others(const bk_gathered *gathered, other_rows *others)
{
    const bk_usual_due *dues = others->dues.items;
    const bk_other_piece *pieces = others->pieces.items;
    others->due_at = bk_id_index_new();
    others->urgency_at = bk_id_index_new();
    others->urgencies = bk_arena_clear(gathered->arena, others->pieces.count, sizeof *others->urgencies);
    for (size_t i = 0; i < others->dues.count; i++) {
        bk_id_index_put(others->due_at, dues[i].production_id, (long long)i);
    }
    long long used = 0;
    for (size_t i = 0; i < others->pieces.count; i++) {
        long long *at = bk_id_index_put(others->urgency_at, pieces[i].piece_id, used);
        piece_urgency *piece = &others->urgencies[*at];
        if (*at == used) {
            *piece = (piece_urgency){BK_NO_DAY, NULL, pieces[i].name};
            used++;
        }
        size_t due = bk_gathered_index(others->due_at, pieces[i].production_id);
        if (pieces[i].costume && due != BK_NO_INDEX) {
            urgency_costume(piece, pieces[i].costume,
                            pieces[i].costume_due != BK_NO_DAY ? pieces[i].costume_due : dues[due].due);
        }
    }
}

/// Fills the claims of the others, and keeps the rows that they are of, in the same order. Returns how many there are.
static size_t other_claims(bk_gathered *gathered, const other_rows *others, bk_claim *claims)
{
    bk_other_claim *items = others->claims.items;
    const bk_usual_due *dues = others->dues.items;
    size_t total = 0;
    for (size_t i = 0; i < others->claims.count; i++) {
        size_t material = bk_gathered_index(gathered->material_at, items[i].material_id);
        size_t due = bk_gathered_index(others->due_at, items[i].production_id);
        size_t piece = bk_gathered_index(others->urgency_at, items[i].piece_id);
        if (material == BK_NO_INDEX || due == BK_NO_INDEX || piece == BK_NO_INDEX) {
            continue;
        }
        claims[total] = (bk_claim){
            .material = material,
            .quantity = items[i].quantity,
            .due = others->urgencies[piece].due,
            .opens = dues[due].opens,
            .production = dues[due].name,
            .costume = others->urgencies[piece].costume,
            .piece = others->urgencies[piece].piece,
            .step_position = items[i].step_position,
            .need_position = items[i].need_position,
        };
        items[total++] = items[i];
    }
    gathered->other_claims = (bk_rows){items, total};
    gathered->other_shares = claims;
    return total;
}

// -------------------------------------------------------------------------------------------------- sharing

static void share(const bk_gathered *gathered, bk_claim *claims, size_t count)
{
    const bk_material *materials = gathered->materials.items;
    const bk_order *orders = gathered->orders.items;
    bk_quantity *on_hand = bk_arena_clear(gathered->arena, gathered->materials.count, sizeof *on_hand);
    bk_incoming *incoming = bk_arena_clear(gathered->arena, gathered->orders.count, sizeof *incoming);
    size_t coming = 0;
    for (size_t i = 0; i < gathered->materials.count; i++) {
        on_hand[i] = materials[i].on_hand;
    }
    for (size_t i = 0; i < gathered->orders.count; i++) {
        size_t material = bk_gathered_index(gathered->material_at, orders[i].material_id);
        if (material != BK_NO_INDEX) {
            incoming[coming++] = (bk_incoming){material, orders[i].quantity, orders[i].due_on, (int64_t)i};
        }
    }
    bk_shelf_share(on_hand, gathered->materials.count, incoming, coming, gathered->today, claims, count);
}

bk_status bk_gather_claims(bk_store *store, bk_gathered *gathered, bk_error *error)
{
    other_rows others = {0};
    if (gathered->materials.count) {
        bk_status status = read_others(store, gathered, &others, error);
        if (status) {
            return status;
        }
    }
    bk_claim *claims =
        bk_arena_clear(gathered->arena, gathered->needs.count + others.claims.count, sizeof *claims);
    size_t count = own_claims(gathered, claims);
    index_others(gathered, &others);
    count += other_claims(gathered, &others, claims + count);
    share(gathered, claims, count);
    bk_id_index_free(others.due_at);
    bk_id_index_free(others.urgency_at);
    return BK_OK;
}
