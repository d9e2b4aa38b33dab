#ifndef BODKIN_TESTS_SUPPORT_MADE_WORKROOM_H
#define BODKIN_TESTS_SUPPORT_MADE_WORKROOM_H

#include "bodkin/plan/chance.h"
#include "bodkin/plan/problem.h"

/// A made-up workroom to measure with: 100 costumes and 2,000 steps among 6 people with two stretches of work a day, each step with
/// three or four people who could do it, every seventh a fitting.

enum { BK_MADE_COSTUMES = 100, BK_MADE_STEPS = 2000 };

/// Makes it, with so many days of hours; the same chance gives the same one. In `arena`.
bk_problem bk_made_workroom(uint32_t days, bk_chance *chance, bk_arena *arena);

#endif
