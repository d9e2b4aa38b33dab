#ifndef BODKIN_WORK_RECORD_KINDS_H
#define BODKIN_WORK_RECORD_KINDS_H

#include "bodkin/base/list.h"
#include "bodkin/work/record_shelf.h"

/// What is particular to each family of records that are filled in one at a
/// time, as one table.

enum { BK_NO_OFFSET = -1 };

/// What goes with a record that is taken away.
typedef struct bk_leaving {
    bk_id_index *pieces, *steps; ///< their ids
    size_t piece_count, step_count, need_count, fitting_count, clock_count, order_count, absence_count;
    const char *words; ///< in place of the counts: what else is said; or NULL
} bk_leaving;

typedef struct bk_record_kind {
    size_t size;     ///< of the struct; 0: not filled in one at a time
    long production; ///< offset of the production's id, or BK_NO_OFFSET
    bool placed;     ///< it has a place in a list
    bool moves;      ///< which a person can change
    long list;       ///< offset of the id whose list it is in, or BK_NO_OFFSET: one
                     ///< list of all
    /// Checks what is particular, and fills in what follows from the rest; names
    /// are resolved. `now` NULL: a new one.
    bk_status (*check)(bk_desk *desk, const void *now, void *record);
    /// Looks at the steps whose doing may change; `record` NULL: it is taken
    /// away.
    bk_status (*watch)(bk_desk *desk, const void *now, const void *record, bk_step_watch *watch);
    /// Changes what has to change with it, once it is written.
    bk_status (*follow)(bk_desk *desk, const void *now, const void *record);
    /// Finds what goes with it, or refuses.
    bk_status (*weigh)(bk_desk *desk, const void *record, bk_leaving *leaving);
    /// Removes what is particular, before the record itself.
    bk_status (*part)(bk_desk *desk, const void *record, const bk_leaving *leaving);
} bk_record_kind;

extern const bk_record_kind bk_record_kinds[BK_FAMILIES];

/// Reads a record with its names and private values, and lets the desk be of
/// its production.
bk_status bk_record_look(bk_desk *desk, bk_family family, int64_t id, bk_any_record *record, bool *found)
    BK_MUST_USE;

// The functions of the table, by what they are for: record_checks.c,
// record_follow.c, record_weigh.c, record_part.c.

bk_status bk_check_person(bk_desk *desk, const void *now, void *record) BK_MUST_USE;
bk_status bk_check_away(bk_desk *desk, const void *now, void *record) BK_MUST_USE;
bk_status bk_check_step(bk_desk *desk, const void *now, void *record) BK_MUST_USE;
bk_status bk_check_need(bk_desk *desk, const void *now, void *record) BK_MUST_USE;
bk_status bk_check_work(bk_desk *desk, const void *now, void *record) BK_MUST_USE;
bk_status bk_check_work_step(bk_desk *desk, const void *now, void *record) BK_MUST_USE;

bk_status bk_watch_step(bk_desk *desk, const void *now, const void *record, bk_step_watch *watch) BK_MUST_USE;
bk_status bk_watch_fitting(bk_desk *desk, const void *now, const void *record, bk_step_watch *watch)
    BK_MUST_USE;

bk_status bk_follow_person(bk_desk *desk, const void *now, const void *record) BK_MUST_USE;
bk_status bk_follow_performer(bk_desk *desk, const void *now, const void *record) BK_MUST_USE;
bk_status bk_follow_role(bk_desk *desk, const void *now, const void *record) BK_MUST_USE;
bk_status bk_follow_need(bk_desk *desk, const void *now, const void *record) BK_MUST_USE;
bk_status bk_follow_fitting(bk_desk *desk, const void *now, const void *record) BK_MUST_USE;
bk_status bk_follow_step(bk_desk *desk, const void *now, const void *record) BK_MUST_USE;
bk_status bk_follow_material(bk_desk *desk, const void *now, const void *record) BK_MUST_USE;
bk_status bk_follow_order(bk_desk *desk, const void *now, const void *record) BK_MUST_USE;
bk_status bk_follow_work_step(bk_desk *desk, const void *now, const void *record) BK_MUST_USE;

bk_status bk_weigh_production(bk_desk *desk, const void *record, bk_leaving *leaving) BK_MUST_USE;
bk_status bk_weigh_person(bk_desk *desk, const void *record, bk_leaving *leaving) BK_MUST_USE;
bk_status bk_weigh_performer(bk_desk *desk, const void *record, bk_leaving *leaving) BK_MUST_USE;
bk_status bk_weigh_role(bk_desk *desk, const void *record, bk_leaving *leaving) BK_MUST_USE;
bk_status bk_weigh_costume(bk_desk *desk, const void *record, bk_leaving *leaving) BK_MUST_USE;
bk_status bk_weigh_piece(bk_desk *desk, const void *record, bk_leaving *leaving) BK_MUST_USE;
bk_status bk_weigh_step(bk_desk *desk, const void *record, bk_leaving *leaving) BK_MUST_USE;
bk_status bk_weigh_material(bk_desk *desk, const void *record, bk_leaving *leaving) BK_MUST_USE;
bk_status bk_weigh_work(bk_desk *desk, const void *record, bk_leaving *leaving) BK_MUST_USE;

bk_status bk_part_person(bk_desk *desk, const void *record, const bk_leaving *leaving) BK_MUST_USE;
bk_status bk_part_performer(bk_desk *desk, const void *record, const bk_leaving *leaving) BK_MUST_USE;
bk_status bk_part_costume(bk_desk *desk, const void *record, const bk_leaving *leaving) BK_MUST_USE;
bk_status bk_part_piece(bk_desk *desk, const void *record, const bk_leaving *leaving) BK_MUST_USE;
bk_status bk_part_step(bk_desk *desk, const void *record, const bk_leaving *leaving) BK_MUST_USE;
bk_status bk_part_material(bk_desk *desk, const void *record, const bk_leaving *leaving) BK_MUST_USE;
bk_status bk_part_order(bk_desk *desk, const void *record, const bk_leaving *leaving) BK_MUST_USE;
bk_status bk_part_work(bk_desk *desk, const void *record, const bk_leaving *leaving) BK_MUST_USE;
bk_status bk_part_work_step(bk_desk *desk, const void *record, const bk_leaving *leaving) BK_MUST_USE;

/// Lets a performer join the company of the desk's production, as its last,
/// unless there already; within a change.
bk_status bk_company_join(bk_desk *desk, int64_t performer) BK_MUST_USE;
/// Whether a performer is in the company of the desk's production.
bk_status bk_company_has(bk_desk *desk, int64_t performer, bool *has) BK_MUST_USE;

/// Makes an order of work the workroom's own, because it or a step of it is
/// changed; within a change.
bk_status bk_work_own(bk_desk *desk, int64_t work) BK_MUST_USE;

#endif
