#ifndef BODKIN_WORK_RAIL_GATHER_H
#define BODKIN_WORK_RAIL_GATHER_H

#include "bodkin/base/list.h"
#include "bodkin/store/store.h"
#include "bodkin/work/rail.h"

/// The rows behind the rail, as the store has them, and the tables from ids to indices: between reading and reckoning.
/// Shared by the files of the rail only.

typedef struct bk_gathered {
    bk_arena *arena; ///< the rail's
    bk_production production;
    bk_day today;
    bk_day usual_due; ///< first of parade, dress and opening
    bk_rows dates, people, aways, performers, roles, costumes, pieces, piece_costumes, steps, afters, needs,
        fittings;
    bk_rows materials, orders, sheets;
    bk_id_index *performer_at, *role_at, *costume_at, *piece_at, *step_at, *material_at;
    bk_wait_performer *wait_performers;
    bk_wait_costume *wait_costumes;
    bk_wait_piece *wait_pieces;
    bk_wait_step *wait_steps;
    bk_wait_person *wait_people;
    const bk_fitting **newest,
        **fits;                   ///< fittings of each step: the newest, and the latest that fits; NULL: none
    bk_rows other_claims;         ///< bk_other_claim: what other productions need of these materials
    const bk_claim *other_shares; ///< how they are met, one a row of these
} bk_gathered;

/// Reads all rows of one production and what it shares with the rest of the workroom, and builds the rows that the
/// reckoning takes, all but the claims. Call within a read. Free with bk_gathered_free (the arena stays).
bk_status bk_gather_rows(bk_store *store, int64_t production, bk_gathered *gathered, bk_error *error)
    BK_MUST_USE;
void bk_gathered_free(bk_gathered *gathered);

/// Builds and shares out the claims of all productions on the shelf, and hangs this production's on its steps.
bk_status bk_gather_claims(bk_store *store, bk_gathered *gathered, bk_error *error) BK_MUST_USE;

/// When the measures that next steps list were newest taken.
bk_status bk_gather_takings(bk_store *store, bk_gathered *gathered, bk_error *error) BK_MUST_USE;

/// Reads and reckons the rail of a production within a read that the caller began: see bk_rail_read.
bk_status bk_rail_gather(bk_store *store, int64_t production, bk_day today, bk_rail **rail, bk_error *error)
    BK_MUST_USE;

/// The kinds in a list of skills, bit 1 << bk_kind each; words that are none are passed over. NULL gives 0.
unsigned bk_skills_of(const char *list);

/// The rows for the reckoning.
bk_wait_rows bk_gathered_rows(const bk_gathered *gathered);

/// The index of an id in one of the tables, or BK_NO_INDEX.
size_t bk_gathered_index(const bk_id_index *table, int64_t id);

#endif
