#ifndef BODKIN_UI_MINUTES_TAKEN_SCREEN_H
#define BODKIN_UI_MINUTES_TAKEN_SCREEN_H

#include "bodkin/plan/pace.h"
#include "bodkin/ui/screen.h"

/// Minutes taken: the workroom's record of minutes taken against minutes guessed, by kind of step and by person, and whether the plan
/// uses it. It lies on Hands, or on Who and When.
extern const bk_screen_kind bk_minutes_taken_screen;

/// What it remembers, for bk_stack_push.
void *bk_minutes_taken_screen_new(void);

/// Pure: "machine: 12 steps, took 118 % of the guess, used in the plan"; "Ida, hand: 5 steps, took 90 % of the guess, not yet used
/// (8 needed)". In `arena`.
const char *bk_pace_sentence(const bk_pace *pace, bk_arena *arena);

#endif
