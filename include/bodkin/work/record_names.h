#ifndef BODKIN_WORK_RECORD_NAMES_H
#define BODKIN_WORK_RECORD_NAMES_H

#include "bodkin/work/record_desk.h"

/// Other records stand in a record by name, in the store by id; private values
/// stand beside it. One table of references leads both ways.

/// Fills in the names, the list and the private values of a record as the store
/// has it; texts in the job's arena.
bk_status bk_names_fill(bk_desk *desk, bk_family family, void *record) BK_MUST_USE;

/// Finds what the names of a record mean and puts their ids; what its list
/// means goes onto the desk. `now` is the record as it stands (NULL: a new
/// one): a name that is the same means the same. BK_REFUSED where a name means
/// nothing.
bk_status bk_names_resolve(bk_desk *desk, bk_family family, const void *now, void *record) BK_MUST_USE;

/// Writes the list (as it lies on the desk) and the private values of a record,
/// within a change. `now` as above.
bk_status bk_names_write(bk_desk *desk, bk_family family, const void *now, const void *record) BK_MUST_USE;

/// Removes the list and the private values of a record, within a change.
bk_status bk_names_remove(bk_desk *desk, bk_family family, int64_t id) BK_MUST_USE;

#endif
