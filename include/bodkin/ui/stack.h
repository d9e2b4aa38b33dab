#ifndef BODKIN_UI_STACK_H
#define BODKIN_UI_STACK_H

#include "bodkin/ui/screen.h"

/// The screens that lie on each other.

enum { BK_STACK_ROOM = 32 };

typedef struct bk_stack {
    bk_wall *wall;
    bk_screen screens[BK_STACK_ROOM];
    size_t count;
    size_t reading; ///< how many there are up to the one that is being read; 0: none is
    bool left;      ///< the person leaves
} bk_stack;

/// Lays a screen on top; it takes `self` over and is read before it is drawn. Where BK_STACK_ROOM screens lie there already
/// the bottom line says so, and `self` is closed.
void bk_stack_push(bk_stack *stack, const bk_screen_kind *kind, void *self);

/// Takes the top one off and closes it; the last one stays. While a screen is being read it is that one which goes, with all
/// that lies on it.
void bk_stack_pop(bk_stack *stack);

/// Takes off all but the lowest `count`, at least one.
void bk_stack_pop_to(bk_stack *stack, size_t count);

/// Takes off all but the lowest.
void bk_stack_pop_to_lowest(bk_stack *stack);

/// The lowest one that is seen, an index: the top one, or what lies below overlays.
size_t bk_stack_lowest_seen(const bk_stack *stack);

/// Closes them all.
void bk_stack_close(bk_stack *stack);

/// The one seen.
bk_screen *bk_stack_top(bk_stack *stack);

/// Every screen must read before it is drawn again.
void bk_stack_stale(bk_stack *stack);

/// Reads the screens that are seen, as far as they must, also those below where one takes itself off. Where one cannot be
/// read the others are all the same; the first error is given.
bk_status bk_stack_read(bk_stack *stack, bk_error *error) BK_MUST_USE;

#endif
