#ifndef BODKIN_PLAN_WAITS_H
#define BODKIN_PLAN_WAITS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "bodkin/base/arena.h"
#include "bodkin/plan/shelf.h"
#include "bodkin/trade/words.h"

/// What each costume waits on, and its state, for one production on one day: design, section 6, as pure functions of the
/// rows. Records refer to each other by index into the arrays of bk_wait_rows.

/// Indices into an array, in their order.
typedef struct bk_indices {
    const size_t *items;
    size_t count;
} bk_indices;

#define BK_NO_INDEX SIZE_MAX

typedef struct bk_wait_performer {
    bk_day newest_sheet;       ///< BK_NO_DAY: no measure sheet
    int64_t measures_good_for; ///< days, the performer's else the production's
} bk_wait_performer;

typedef struct bk_wait_costume {
    const char *number;
    size_t performer;  ///< who plays its role; BK_NO_INDEX: not cast
    bk_day due;        ///< its own due day, else the production's usual one
    bk_indices pieces; ///< in the order of pieces.csv
} bk_wait_costume;

typedef struct bk_wait_piece {
    const char *name;
    int origin; ///< bk_origin or BK_NO_WORD
    bool out;
    bk_day back_by;      ///< BK_NO_DAY: no day promised
    bool fitting_held;   ///< some fitting of the piece has a held_on
    bk_indices costumes; ///< in the order written
    bk_indices steps;    ///< in the order of steps.csv
} bk_wait_piece;

/// When a performer's measure that a step lists was newest taken.
typedef struct bk_wait_taking {
    size_t performer;
    bk_day newest;       ///< BK_NO_DAY: never taken
    const char *measure; ///< its name, for words; may be NULL
} bk_wait_taking;

typedef struct bk_wait_step {
    const char *key;
    size_t piece;
    int kind; ///< bk_kind
    int64_t minutes;
    bool done; ///< has done_on, or a fitting that fits
    bool can_wait;
    bk_indices after; ///< steps, in the order written
    bool lists_measures;
    const bk_wait_taking *takings; ///< for each listed measure and each performer of the piece's costumes
    size_t taking_count;
    const bk_claim *claims; ///< shared out, in the order of needs.csv
    size_t claim_count;
    // The newest fitting (latest booked_at, later row at a tie):
    bool fitted; ///< there is one
    bk_day fitting_day;
    int fitting_outcome; ///< bk_outcome or BK_NO_WORD
} bk_wait_step;

typedef struct bk_wait_person {
    unsigned skills;         ///< bit 1 << kind
    bool works_on[7];        ///< has hours on that weekday, Monday first
    bk_day from, until;      ///< BK_NO_DAY: open
    const bk_day (*away)[2]; ///< first and last day, both included
    size_t away_count;
} bk_wait_person;

typedef struct bk_wait_rows {
    bk_day today;
    const bk_wait_performer *performers;
    size_t performer_count;
    const bk_wait_costume *costumes;
    size_t costume_count;
    const bk_wait_piece *pieces;
    size_t piece_count;
    const bk_wait_step *steps; ///< in the order of steps.csv
    size_t step_count;
    const bk_wait_person *people;
    size_t person_count;
} bk_wait_rows;

/// On what.
typedef enum bk_wait_on {
    BK_WAIT_MEASURES,
    BK_WAIT_MATERIALS,
    BK_WAIT_FITTING,
    BK_WAIT_HAND,
    BK_WAIT_PEOPLE,
    BK_WAIT_OUT,
    BK_WAIT_ORDER,
    BK_WAITS_ON
} bk_wait_on;

extern const bk_words bk_wait_words; ///< measures materials fitting hand people out order

typedef enum bk_wait_detail {
    BK_DETAIL_UNCAST,
    BK_DETAIL_NONE,
    BK_DETAIL_PART,
    BK_DETAIL_OLD,
    BK_DETAIL_NOT_ORDERED,
    BK_DETAIL_DUE, ///< with `day`
    BK_DETAIL_LATE,
    BK_DETAIL_NO_DATE,
    BK_DETAIL_UNBOOKED,
    BK_DETAIL_MISSED,
    BK_DETAIL_BOOKED, ///< with `day`
    BK_DETAIL_OPEN,
    BK_DETAIL_NOBODY,
    BK_DETAIL_BACK, ///< with `day`
    BK_DETAIL_OVERDUE,
    BK_DETAIL_STEPS, ///< with `steps`: those of pieces not worn with this costume
    BK_DETAILS
} bk_wait_detail;

typedef struct bk_wait {
    bk_wait_on on;
    size_t piece;
    size_t step; ///< BK_NO_INDEX for `out`
    bk_wait_detail detail;
    bk_day day;
    bool acts;             ///< marked (A): somebody must act
    const bk_claim *claim; ///< for materials
    bk_indices steps;      ///< for order
} bk_wait;

typedef enum bk_state {
    BK_READY,
    BK_IN_WORK,
    BK_FINISHING,
    BK_WAITING,
    BK_HELD,
    BK_UNLISTED,
    BK_STATES
} bk_state;

extern const bk_words bk_state_words; ///< ready in-work finishing waiting held unlisted

typedef struct bk_costume_waits {
    bk_state state;
    bool can_go_on;
    const bk_wait *waits; ///< in the order of pieces.csv, then steps.csv, then section 6
    size_t wait_count;
    int64_t steps, steps_done;
    int64_t minutes, minutes_left;
} bk_costume_waits;

/// The earliest due day of the piece's costumes; BK_NO_DAY where it has none.
bk_day bk_piece_due(const bk_wait_rows *rows, size_t piece);

/// Whether every step named in `after` is done and the step itself is open.
bool bk_step_next(const bk_wait_rows *rows, size_t step);

/// Reckons every costume; the array (one for each costume, in their order) and all it points to live in `arena`.
bk_costume_waits *bk_waits_reckon(const bk_wait_rows *rows, bk_arena *arena);

/// Text of a wait's detail as section 6 writes it: "due 2027-03-09", "4A-1/cut;4A-1/sew"; in `arena`.
const char *bk_wait_detail_text(const bk_wait_rows *rows, const bk_wait *wait, bk_arena *arena);

#endif
