#ifndef BODKIN_WORK_RECORD_ORDER_H
#define BODKIN_WORK_RECORD_ORDER_H

#include "bodkin/base/list.h"
#include "bodkin/work/record_desk.h"

/// The order between steps of a production (links) and between steps of an
/// order of work (lists of keys).

/// Refuses a step that would come after itself by what its list on the desk
/// means; the circle is told by its steps.
bk_status bk_order_check(bk_desk *desk, const bk_step *step) BK_MUST_USE;

/// The same for a step of an order of work, which may also name keys that are
/// not there. `now`: as it stands, or NULL.
bk_status bk_order_check_work(bk_desk *desk, const bk_work_step *now, const bk_work_step *step) BK_MUST_USE;

/// Takes steps out of the order, within a change: what came after one of them
/// comes after what that came after. `gone` has the ids of the steps.
bk_status bk_order_take_out(bk_desk *desk, const bk_id_index *gone) BK_MUST_USE;

/// Puts `instead` (a list of keys, NULL: nothing) wherever steps of an order of
/// work come after `key`, within a change.
bk_status bk_order_put_instead(bk_desk *desk, int64_t work, const char *key, const char *instead) BK_MUST_USE;

#endif
