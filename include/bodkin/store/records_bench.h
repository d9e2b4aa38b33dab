#ifndef BODKIN_STORE_RECORDS_BENCH_H
#define BODKIN_STORE_RECORDS_BENCH_H

#include "bodkin/store/records.h"

/// The records that the workroom keeps beside those of its garments; the same rules hold as in records.h.

/// An order of work: a reusable list of steps for a kind of garment (works.csv).
typedef struct bk_work {
    int64_t id;
    const char *name;
    const char *note;
    int64_t ready; ///< 1: it came with the program and was not changed
    int line;
} bk_work;

/// One step of an order of work (work_steps.csv).
typedef struct bk_work_step {
    int64_t id, work_id;
    const char *work;
    const char *key;
    const char *title;
    int kind; ///< bk_kind
    int64_t minutes, quickest, longest;
    const char *after;                  ///< list of keys of the same order of work
    int64_t hands, level, rest_minutes; ///< BK_NOT_KNOWN: the usual
    int64_t can_wait;                   ///< 1 or 0
    const char *measures;               ///< list of names
    const char *note;
    int line;
} bk_work_step;

/// What the workroom shares: the cutting table, the machines, the dye room (equipment.csv).
typedef struct bk_equipment {
    int64_t id;
    const char *name;
    const char *kinds; ///< list of the kinds of step that occupy one of it while they are worked on
    int64_t count;     ///< how many there are, 1 or more; BK_NOT_KNOWN: one
    int line;
} bk_equipment;

/// Something noted at a rehearsal, a fitting, the parade ... (notes.csv).
typedef struct bk_note {
    int64_t id, production_id;
    int64_t costume_id, piece_id, step_id; ///< what it is about, and the step it became; 0: none
    bk_day noted_on;
    int source;      ///< bk_note_source, or BK_NO_WORD
    const char *who; ///< whose note it is
    const char *costume, *piece, *step;
    const char *what;
    bk_day done_on; ///< BK_NO_DAY while open
    int line;
} bk_note;

/// A clock that runs for a step.
typedef struct bk_running {
    int64_t id, step_id;
    const char *who;
    const char *started_at; ///< ISO 8601 with UTC offset
} bk_running;

/// A setting of the workroom.
typedef struct bk_setting {
    int64_t id;
    const char *name;
    const char *value;
} bk_setting;

#endif
