#ifndef BODKIN_UI_STACK_H
#define BODKIN_UI_STACK_H

#include "bodkin/ui/screen.h"

/// The screens that lie on each other.

enum { BK_STACK_ROOM = 8 };

typedef struct bk_stack {
    bk_wall *wall;
    bk_screen screens[BK_STACK_ROOM];
    size_t count;
    bool left; ///< the person leaves
} bk_stack;

/// Lays a screen on top; it takes `self` over and is read before it is drawn. The stack never holds more than
/// BK_STACK_ROOM screens.
void bk_stack_push(bk_stack *stack, const bk_screen_kind *kind, void *self);

/// Takes the top one off and closes it; the last one stays.
void bk_stack_pop(bk_stack *stack);

/// Takes off all but the lowest.
void bk_stack_pop_to_lowest(bk_stack *stack);

/// Closes them all.
void bk_stack_close(bk_stack *stack);

/// The one seen.
bk_screen *bk_stack_top(bk_stack *stack);

/// Every screen must read before it is drawn again.
void bk_stack_stale(bk_stack *stack);

/// Reads the top screen if it must, also the one below where it takes itself off.
bk_status bk_stack_read(bk_stack *stack, bk_error *error) BK_MUST_USE;

#endif
