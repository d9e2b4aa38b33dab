#ifndef BODKIN_PLAN_PROBLEM_H
#define BODKIN_PLAN_PROBLEM_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "bodkin/base/arena.h"

/// Limited hands as the general problem: tasks with modes, an order among them, and renewable resources whose capacity
/// changes over time (the resource-constrained project scheduling problem of Kolisch & Sprecher 1996 and its multi-mode
/// form, with calendars). People, equipment and performers are all resources. Plain values; nobody owns anything here: what
/// the pointers lead to must live as long as the problem is used.

/// Minutes of clock time from the problem's own beginning (for a workroom: midnight before its first day; for a published
/// instance: its period 0).
typedef int32_t bk_clock_minute;

#define BK_CLOCK_NEVER INT32_MAX ///< it does not come about
#define BK_CLOCK_NONE INT32_MIN  ///< not given

/// Nobody is there: a task that may be set down is set down and taken up again. A capacity of 0 or more is what is there,
/// and a task that does not fit into it must not run across it.
enum { BK_CLOSED = -1 };

/// The capacity from one minute until the next stage begins; the last one lasts for ever.
typedef struct bk_stage {
    bk_clock_minute from;
    int32_t capacity; ///< units, or BK_CLOSED
} bk_stage;

typedef struct bk_resource {
    const bk_stage *stages; ///< the first from 0; each later than the one before; at least one
    size_t stage_count;
} bk_resource;

typedef struct bk_use {
    uint32_t resource;
    int32_t amount; ///< units, more than 0, all the while the task is worked on (not while it is set down)
} bk_use;

/// One way to do a task.
typedef struct bk_mode {
    int32_t minutes;    ///< of work, 0 or more; all of its resources must be open in each of them
    const bk_use *uses; ///< no resource twice
    size_t use_count;
} bk_mode;

typedef struct bk_task {
    const bk_mode *modes; ///< at least one
    size_t mode_count;
    bk_clock_minute release; ///< not begun before; 0 where it can begin at once
    bk_clock_minute
        appointment; ///< agreed beginning, BK_CLOCK_NONE: none. It is kept where all it comes after is done by then,
                     ///< and its resources are kept free for it; else the task begins later, like one without
    bool whole;  ///< done in one piece, never set down
    bool yields; ///< gives way: goes before no task that does not yield, unless that comes after it
} bk_task;

/// Task `to` begins no earlier than `rest` minutes of clock time after the end of task `from`.
typedef struct bk_rank {
    uint32_t from, to;
    int32_t rest; ///< 0 or more
} bk_rank;

/// Tasks that together should be done by `due` (a costume, or an appointment's forerunners): late by the minutes of clock
/// time from `due` to the end of its last task, each counted `weight` times.
typedef struct bk_target {
    const uint32_t *tasks;
    size_t task_count;
    bk_clock_minute due;
    int32_t weight; ///< more than 0
} bk_target;

typedef struct bk_problem {
    const bk_task *tasks;
    size_t task_count;
    const bk_resource *resources;
    size_t resource_count;
    const bk_rank *ranks; ///< free of circles (bk_network_circle)
    size_t rank_count;
    const bk_target *targets; ///< may be none: then the finish of the whole alone counts
    size_t target_count;
} bk_problem;

/// Where a task was put. One that never comes about (nobody for it until the end of all calendars, or after one such) has
/// both at BK_CLOCK_NEVER.
typedef struct bk_placing {
    bk_clock_minute begin;
    bk_clock_minute end; ///< first minute after its last one; equal to `begin` for no minutes of work
    uint32_t mode;       ///< index into the task's modes
} bk_placing;

/// What a schedule costs, compared in this order: tasks that never come about, lateness, the finish of what does not yield
/// and has an end, then the finish of the whole.
typedef struct bk_cost {
    int64_t never;
    int64_t late; ///< weighted minutes over all targets
    bk_clock_minute finish;
    bk_clock_minute last;
} bk_cost;

/// Below 0 where `left` is the better one, 0 where they are equal.
int bk_cost_order(const bk_cost *left, const bk_cost *right);

/// The cost of placings (one for each task).
bk_cost bk_cost_of(const bk_problem *problem, const bk_placing *placings);

/// The stretches in which a placed task is worked on: from `begin` to `end` without the times when one of its resources is
/// closed. `stretches` in `arena`, each two minutes: first, and first after the last.
size_t bk_placing_stretches(const bk_problem *problem, size_t task, const bk_placing *placing,
                            bk_arena *arena, bk_clock_minute (**stretches)[2]);

#endif
