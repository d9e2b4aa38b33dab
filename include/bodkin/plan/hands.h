#ifndef BODKIN_PLAN_HANDS_H
#define BODKIN_PLAN_HANDS_H

#include <stddef.h>
#include <stdint.h>

#include "bodkin/plan/waits.h"

/// When the hands for each kind of step are there. Pure.

/// A day that does not come.
#define BK_NEVER INT32_MAX

/// Writes, for each kind of step, the first day from `today` on (itself included) on which anybody with that skill has
/// hours: a weekday with hours, within `from` and `until`, in no absence; BK_NEVER where there is none. Time grows with
/// people and absences, not with days.
void bk_hands_first(const bk_wait_person *people, size_t count, bk_day today, bk_day first[BK_KINDS]);

#endif
