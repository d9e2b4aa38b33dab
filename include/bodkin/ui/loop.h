#ifndef BODKIN_UI_LOOP_H
#define BODKIN_UI_LOOP_H

#include "bodkin/ui/stack.h"

/// Paints the screen on top, waits for keys, and looks twice a second whether the store or the day has changed, until the
/// person leaves; what is reckoned meanwhile is shown as it comes, and no key waits for it. `idle_fd` as in bk_screens_options:
/// nothing is told there before all is reckoned. The terminal is taken over already. Errors: the store could not be read
/// at the start, the terminal is gone.
bk_status bk_loop_run(bk_stack *stack, int idle_fd, bk_error *error) BK_MUST_USE;

#endif
