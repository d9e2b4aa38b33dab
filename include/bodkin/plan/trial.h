#ifndef BODKIN_PLAN_TRIAL_H
#define BODKIN_PLAN_TRIAL_H

#include "bodkin/plan/problem.h"

/// A plan tried with other minutes than it was made with, as a workroom would go about it: nobody knows how long
/// anything will take. Whoever is free takes of what is ready the task that comes first in the plan, under these
/// rules:
/// - A task whose planned time has come is begun by those who were to do it, or, where they are not free, by others
///   who can (the way   that ends first).
/// - A task is begun before its planned time only by those who are to do it, and only where that is expected to leave
///   them free for what they   have planned before it and whose time has not yet come. What is late is not waited
///   for.
/// - What yields does so for planned tasks of the others whose time has not yet come.
/// - Appointments are kept free, and given up when what comes before is not done by then.
/// With the minutes of the plan everything is done just when it was planned.

typedef struct bk_trial bk_trial;

/// For a problem and a plan (order as in bk_making, placings) that outlive it. What was planned is the serial
/// schedule (generate.h) of that order with the modes of the placings. Never NULL; freed by bk_trial_free.
bk_trial *bk_trial_new(const bk_problem *problem, const uint32_t *order, const bk_placing *placings);
void bk_trial_free(bk_trial *trial);

/// Goes through the plan with these minutes for each task, done in its planned mode (another one takes so much longer
/// or shorter as the problem says, rounded half up), and writes one placing for each.
void bk_trial_run(bk_trial *trial, const int32_t *minutes, bk_placing *placings);

#endif
