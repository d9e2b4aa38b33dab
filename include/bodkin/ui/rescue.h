#ifndef BODKIN_UI_RESCUE_H
#define BODKIN_UI_RESCUE_H

#include <stddef.h>

/// A fatal signal must leave a usable terminal behind. All here may be called from a signal handler once armed.

/// Remembers how the terminal on standard input is set, and from here on catches the signals that end a program: it puts
/// the terminal right and lets the signal do what it would have done.
void bk_rescue_arm(void);

/// What must be written to standard output to leave the screen (`length` bytes, copied; cut at a fixed room).
void bk_rescue_farewell(const char *bytes, size_t length);

/// Puts the terminal right now. Harmless when not armed, or a second time.
void bk_rescue_now(void);

/// Gives the thread that calls it a stack for the handlers, so that a thread whose own is full is caught too; every thread but the
/// one that arms takes its own. Given back by the same thread before it ends; NULL is allowed there.
typedef struct bk_rescue_stack bk_rescue_stack;
bk_rescue_stack *bk_rescue_stack_take(void);
void bk_rescue_stack_give(bk_rescue_stack *stack);

/// Forgets it all; the signals do again what they did before.
void bk_rescue_disarm(void);

#endif
