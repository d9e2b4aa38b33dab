#ifndef BODKIN_UI_BENCH_SCREEN_H
#define BODKIN_UI_BENCH_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Bench: what one person can do now, best first, with why; it begins with who is at this terminal, where the workroom knows
/// the name, else with everybody.
extern const bk_screen_kind bk_bench_screen;

/// What it remembers, for bk_stack_push.
void *bk_bench_screen_new(void);

#endif
