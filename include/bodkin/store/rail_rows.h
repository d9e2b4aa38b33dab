#ifndef BODKIN_STORE_RAIL_ROWS_H
#define BODKIN_STORE_RAIL_ROWS_H

#include "bodkin/plan/pace.h"
#include "bodkin/store/store.h"

/// What the rail needs of the rest of the workroom, read by statements of its own so that a large store stays fast.

/// An open step's need of a material in another production that is not put away.
typedef struct bk_other_claim {
    int64_t production_id, piece_id, step_id, material_id;
    int64_t step_position, need_position;
    bk_quantity quantity;
} bk_other_claim;

/// Needs of all open steps (not done, no fitting of it that fits) of productions not put away, other than `production`.
bk_status bk_store_other_claims(bk_store *store, int64_t production, bk_arena *arena, bk_rows *claims,
                                bk_error *error) BK_MUST_USE;

/// A piece of another production not put away, one row for each costume it is worn with (costume fields empty where it
/// has none). Only pieces with an open step that needs a material.
typedef struct bk_other_piece {
    int64_t production_id, piece_id;
    const char *name;
    const char *costume;
    bk_day costume_due;
} bk_other_piece;
bk_status bk_store_other_pieces(bk_store *store, int64_t production, bk_arena *arena, bk_rows *pieces,
                                bk_error *error) BK_MUST_USE;

/// The first day of the parade and dress dates and the opening of each production not put away (design, section 6).
typedef struct bk_usual_due {
    int64_t production_id;
    const char *name;
    bk_day opens;
    bk_day due;
} bk_usual_due;
bk_status bk_store_usual_dues(bk_store *store, int64_t production, bk_arena *arena, bk_rows *dues,
                              bk_error *error) BK_MUST_USE;

/// The shelf and the orders not arrived of the materials that `production` needs for open steps. Materials: bk_material
/// (id, name, unit, on_hand); orders: bk_order in the order of orders.csv.
bk_status bk_store_shelf(bk_store *store, int64_t production, bk_arena *arena, bk_rows *materials,
                         bk_rows *orders, bk_error *error) BK_MUST_USE;

/// The newest measure sheet of each performer of the company who has one: bk_sheet_day (id 0).
bk_status bk_store_newest_sheets(bk_store *store, int64_t production, bk_arena *arena, bk_rows *sheets,
                                 bk_error *error) BK_MUST_USE;

/// The day of the newest taking of one measure of one performer; BK_NO_DAY where it was never taken.
bk_status bk_store_newest_taking(bk_store *store, int64_t performer, const char *measure, bk_day *taken_on,
                                 bk_error *error) BK_MUST_USE;

/// The finished steps of all productions, also those put away, whose minutes taken are known (both above 0): bk_minutes_taken, by kind,
/// then by who did them.
bk_status bk_store_taken(bk_store *store, bk_arena *arena, bk_rows *taken, bk_error *error) BK_MUST_USE;

/// The production with that name, or 0.
bk_status bk_store_find_production(bk_store *store, const char *name, int64_t *id, bk_error *error)
    BK_MUST_USE;

#endif
