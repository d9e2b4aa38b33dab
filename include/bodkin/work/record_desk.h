#ifndef BODKIN_WORK_RECORD_DESK_H
#define BODKIN_WORK_RECORD_DESK_H

#include <stdbool.h>

#include "bodkin/store/one.h"
#include "bodkin/store/records_bench.h"
#include "bodkin/work/job.h"

/// What lies on the desk while one record is worked on: its job, and the rows
/// that were looked at, each family read once. Shared by the files of record*.c
/// and by jobs that are done in the same way.

typedef struct bk_desk {
    const bk_job *job;
    bk_error *error;
    bk_arena *scratch;  ///< for what is needed until the desk is cleared
    int64_t production; ///< the one that the record belongs to, else the job's
    const char *column; ///< of what was refused, or NULL
    bk_rows rows[BK_FAMILIES];
    bool read[BK_FAMILIES];
    int64_t *linked; ///< what the record's list names, by their ids; see
                     ///< bk_names_resolve
    size_t linked_count;
    bool relink; ///< the list is not as it was
} bk_desk;

/// Room for one record of any family that is filled in.
typedef union bk_any_record {
    int64_t id;
    bk_production production;
    bk_date date;
    bk_person person;
    bk_away away;
    bk_performer performer;
    bk_role role;
    bk_costume costume;
    bk_piece piece;
    bk_step step;
    bk_need need;
    bk_material material;
    bk_order order;
    bk_fitting fitting;
    bk_work work;
    bk_work_step work_step;
    bk_equipment equipment;
    bk_note note;
} bk_any_record;

/// Lays a desk; bk_desk_clear gives its memory back.
bk_desk bk_desk_lay(const bk_job *job, bk_error *error);
void bk_desk_clear(bk_desk *desk);

/// The rows of a family, of the desk's production or all; read at the first
/// call, NULL rows where that failed.
bk_status bk_desk_rows(bk_desk *desk, bk_family family, bk_rows *rows) BK_MUST_USE;

/// Makes the rows of a family be read again, after they were changed.
void bk_desk_forget(bk_desk *desk, bk_family family);

/// A record as the store has it; texts live in the job's arena.
bk_status bk_desk_get(bk_desk *desk, bk_family family, int64_t id, void *record, bool *found) BK_MUST_USE;

/// Refuses, because of a column (NULL: of none).
bk_status bk_desk_refuse(bk_desk *desk, const char *column, const char *format, ...) BK_PRINTF(3, 4);

/// A text made safe for a message.
const char *bk_desk_safe(const bk_desk *desk, const char *text);

/// Looks up a name in a family whose records have one: `within` is the piece of
/// a step or the order of work of its step, else 0. `*id` 0 where there is none
/// of that name; of several the first one counts.
bk_status bk_desk_find(bk_desk *desk, bk_family family, int64_t within, const char *name, int64_t *id)
    BK_MUST_USE;

/// Refuses a name that bk_desk_find did not find, with the nearest one and
/// where to add it.
bk_status bk_desk_refuse_name(bk_desk *desk, const char *column, bk_family family, int64_t within,
                              const char *name);

/// Refuses a record whose name another one of its family has (within its piece
/// or order of work, where it is of one). `now`, the record as it stands, may
/// have had that name all along; families without names pass.
bk_status bk_desk_check_name(bk_desk *desk, bk_family family, const void *now, const void *record)
    BK_MUST_USE;

/// The name of a record of a family whose records have one; NULL for another
/// family.
const char *bk_desk_name_of(bk_family family, const void *record);

/// A step with its piece, `4A-2/hem`, in the job's arena; NULL where it is not
/// there.
bk_status bk_desk_step_name(bk_desk *desk, int64_t step, const char **name) BK_MUST_USE;

#endif
