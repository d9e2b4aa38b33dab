#ifndef BODKIN_WORK_RECORD_MOVE_H
#define BODKIN_WORK_RECORD_MOVE_H

#include "bodkin/work/record_desk.h"

/// Puts a record that stands last in its list directly behind another of that
/// list (not in it: it stays last), within a change. Families as
/// bk_record_move.
bk_status bk_places_behind(bk_desk *desk, bk_family family, const void *record, int64_t behind) BK_MUST_USE;

#endif
