#ifndef BODKIN_WORK_RAIL_H
#define BODKIN_WORK_RAIL_H

#include "bodkin/plan/waits.h"
#include "bodkin/store/store.h"

/// The rail: every costume of a production, how far it is and what it waits on, read from the store and reckoned for one
/// day. Everything belongs to the rail and is freed with it.

typedef struct bk_rail_costume {
    size_t index;             ///< into `rows.costumes`, the order of costumes.csv
    const bk_costume *record; ///< number, title, note
    const char *role;
    const char *performer; ///< NULL: not cast
    bk_day due;
    const bk_costume_waits *reckoned; ///< state, waits, steps, minutes
} bk_rail_costume;

typedef struct bk_rail_counts {
    int64_t costumes;
    int64_t states[BK_STATES];
    int64_t can_go_on;
    int64_t waits[BK_WAITS_ON]; ///< costumes that have a wait on it
} bk_rail_counts;

typedef struct bk_rail {
    bk_arena *arena;
    bk_production production;
    bk_day today;
    int64_t days_left;    ///< calendar days to the opening, below zero after it
    int64_t minutes;      ///< of all steps, a shared piece once
    int64_t minutes_left; ///< of the open ones, a shared piece once
    bk_rail_counts counts;
    const bk_rail_costume *costumes; ///< by due day, then number in natural order
    size_t costume_count;
    const bk_piece *pieces;       ///< same indices as `rows.pieces`, the order of pieces.csv
    const bk_step *steps;         ///< same indices as `rows.steps`, the order of steps.csv
    const bk_material *materials; ///< what a claim's `material` indexes
    bk_wait_rows rows;
    bk_day usual_due;                  ///< of a costume without a due day of its own
    const bk_costume *costume_records; ///< same indices as `rows.costumes`, the order of costumes.csv
    const bk_costume_waits *reckoned;  ///< same indices
    const bk_performer *performers;    ///< same indices as `rows.performers`
    const bk_fitting *const *fittings; ///< the newest of each step, same indices as `rows.steps`; NULL: none
    const bk_fitting *const *fits;     ///< the latest that fits of each step, in the same way
    const bk_date *dates;              ///< of the production
    size_t date_count;
} bk_rail;

/// Reads and reckons the rail of a production (its id) for `today`. `*rail` is the caller's, freed with bk_rail_free.
bk_status bk_rail_read(bk_store *store, int64_t production, bk_day today, bk_rail **rail, bk_error *error)
    BK_MUST_USE;
void bk_rail_free(bk_rail *rail);

/// Minutes as the lines of the rail count them for a costume's seam: sewn, and still to sew.
typedef struct bk_seam {
    int64_t done;
    int64_t open;
    bool waits; ///< nothing of it can be worked on now: a pin
} bk_seam;
bk_seam bk_rail_seam(const bk_rail_costume *costume);

/// Whether a costume has a wait on that.
bool bk_rail_waits_on(const bk_rail_costume *costume, bk_wait_on on);

#endif
