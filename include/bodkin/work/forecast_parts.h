#ifndef BODKIN_WORK_FORECAST_PARTS_H
#define BODKIN_WORK_FORECAST_PARTS_H

#include "bodkin/plan/planner.h"
#include "bodkin/plan/tracer.h"
#include "bodkin/work/forecast.h"

/// The forecast from inside: what its files share. First the workroom is looked at as it is supposed to be (the prospect), then its
/// hands become resources and its steps tasks (the frame), the frame is planned and tried, and what comes of it is told in days and
/// names (the forecast). Prospect and frame live in a scratch arena; the forecast keeps copies.

// ------------------------------------------------------------------------------------------------- the prospect

/// A production as supposed.
typedef struct bk_prospect_production {
    const bk_rail *rail;
    bk_day opens, usual_due;
    bool *dropped;                       ///< of each costume of the rail, the order of costumes.csv
    const bk_rail_costume **costumes;    ///< in the same order
    size_t *at;                          ///< of each step of the rail: which open step it is, or BK_NO_INDEX
    size_t first_costume, costume_count; ///< its costumes that are not dropped
} bk_prospect_production;

typedef struct bk_prospect_costume {
    size_t production;
    size_t index;       ///< into the rail's rows.costumes
    bk_day due;         ///< as supposed
    const size_t *open; ///< its open steps, in the order of pieces.csv, then steps.csv
    size_t open_count;
    const size_t *firm; ///< those whose end is its finish: all that cannot wait or, where there are none, all
    size_t firm_count;
    bool can_wait; ///< steps are open, and all of them can wait
    bool can_go;   ///< and no piece is out
} bk_prospect_costume;

typedef struct bk_prospect_step {
    size_t production;
    size_t index; ///< into the rail's rows.steps
    const bk_wait_step *wait;
    const bk_step *record;
    const bk_wait_piece *piece;
    size_t costume;                 ///< the most urgent that wears it; BK_NO_INDEX
    bk_day due;                     ///< that one's; BK_NO_DAY
    int64_t hands;                  ///< 1 or more
    int64_t rest;                   ///< minutes
    bool yields;                    ///< it can wait, and nothing that cannot comes after it
    size_t performer;               ///< of a fitting: index into the room's performers; BK_NO_INDEX
    const bk_fitting *booked;       ///< an appointment to come; NULL
    const uint32_t *before, *after; ///< open steps
    size_t before_count, after_count;
} bk_prospect_step;

typedef struct bk_prospect_person {
    bk_planned_person shown; ///< its calendar lives as long as the forecast
    int64_t used_today;      ///< minutes
    bool works;              ///< has any hours from the day on
} bk_prospect_person;

typedef struct bk_prospect {
    bk_arena *scratch, *kept; ///< until the forecast is made; as long as the forecast
    const bk_workroom *room;
    bk_day today;
    bk_prospect_production *productions;
    size_t production_count;
    bk_prospect_person *people; ///< those of the workroom, then supposed helpers
    size_t person_count;
    bk_prospect_costume *costumes;
    size_t costume_count;
    bk_prospect_step *steps;
    size_t step_count;
    const uint32_t *order; ///< the open steps, each after those it comes after
} bk_prospect;

/// The workroom as supposed. What comes of it lives in the two arenas and points into the room.
bk_prospect *bk_prospect_new(const bk_workroom *room, const bk_supposition *suppositions, size_t count,
                             bk_arena *scratch, bk_arena *kept);

/// Fills in the open steps, their links and order, and those of each costume: the second half of bk_prospect_new.
void bk_prospect_steps(bk_prospect *prospect);

/// Days on which anybody works, after `from` up to `to`, which is not before it.
int64_t bk_prospect_workdays(const bk_prospect *prospect, bk_day from, bk_day to);

/// Whether a performer is away on that day; `until` gets the last day of being away without a break.
bool bk_performer_away(const bk_room_performer *performer, bk_day day, bk_day *until);

// ---------------------------------------------------------------------------------------------------- the frame

enum {
    BK_FRAME_FEWEST_DAYS = 400, ///< of the calendars
    BK_FRAME_MOST_DAYS = 2190,  ///< six years: after that nobody is there
    BK_FRAME_FARTHEST =
        (BK_FRAME_MOST_DAYS + BK_FRAME_FEWEST_DAYS) * BK_DAY_MINUTES ///< no minute lies farther off
};

/// A stretch of minutes: first, and first after the last.
typedef struct bk_span {
    bk_clock_minute from, to;
} bk_span;

/// Pieces of equipment with the same kinds: one resource.
typedef struct bk_frame_equipment {
    unsigned kinds;
    uint32_t resource;
} bk_frame_equipment;

/// How a step can be done.
typedef struct bk_frame_ways {
    const bk_mode *modes; ///< with whoever can do it, at any time
    size_t mode_count;
    const bk_mode *plan; ///< as the plan takes it: the same, or at its appointment
    size_t plan_count;
    bk_estimate estimate; ///< of its first mode in the plan
} bk_frame_ways;

/// The general problem, and what its numbers stand for. Resources: the people (same index), equipment, performers, calls, and last
/// one that is never there.
typedef struct bk_frame {
    const bk_prospect *prospect;
    bk_paces paces;
    bk_day last;            ///< of the calendars
    bk_resource *resources; ///< room for all of them
    const char **names;     ///< of each resource
    const size_t **people;  ///< of a call: who fits, indices of people; else NULL
    size_t *people_counts;
    size_t resource_count;
    bk_frame_equipment *equipment;
    size_t equipment_count;
    uint32_t *performers; ///< resource of each performer of the room; `nobody` where none is needed
    uint32_t nobody;
    bk_frame_ways *ways; ///< of each step
    bk_problem problem;
    const bk_spread *const *spreads;
} bk_frame;

/// Makes the problem of a prospect; in its scratch arena, the paces in the kept one.
bk_frame *bk_frame_new(const bk_prospect *prospect);

/// The spread of each step's minutes, for the odds; steps with the same estimate share one.
void bk_frame_spreads(bk_frame *frame);

/// The people, equipment and performers as resources: within bk_frame_new.
void bk_frame_hands(bk_frame *frame);
/// The ways to do each step, without appointments: within bk_frame_new.
void bk_frame_modes(bk_frame *frame);
/// Calls that are booked with a time: within bk_frame_new. An appointment outside the hours of those who fit happens all the same:
/// they come in for it. So each call is a resource of its own, open while the call is on and then in the hours of whoever fits, who is
/// closed to other work for as long. All fittings of one performer at one moment are one call, one after another in the order of
/// fittings.csv. `appointments[step]` gets its moment, BK_CLOCK_NONE where it has none.
void bk_frame_calls(bk_frame *frame, bk_clock_minute *appointments);

/// The minutes from the midnight that begins the plan to the midnight of a day.
bk_clock_minute bk_frame_midnight(const bk_prospect *prospect, bk_day day);
/// The day of a moment: of its last minute where it is an `end` of work.
bk_day bk_frame_day(const bk_prospect *prospect, bk_clock_minute minute, bool end);
bk_moment bk_frame_moment(const bk_prospect *prospect, bk_clock_minute minute, bool end);

/// A resource closed in spans (in order of their beginning), in `arena`.
bk_resource bk_resource_without(const bk_resource *open, const bk_span *spans, size_t count, bk_arena *arena);

/// What a step takes of a person (index; BK_NO_INDEX: anybody), by the workroom's record. `minutes` BK_NOT_KNOWN: the step's own.
bk_estimate bk_frame_estimate(const bk_frame *frame, const bk_prospect_step *step, size_t person,
                              int64_t minutes);

/// The people who can do a kind and have hours left, those with the fewest skills first, then by index. Returns how many, in `found`
/// (room for all people).
size_t bk_frame_able(const bk_prospect *prospect, int kind, size_t *found);

// ------------------------------------------------------------------------------------------------- the forecast

/// The latest beginning of every step of a costume's pieces, so that the costume is done by its due day, with the hands for its own
/// work alone: `latest[i]` for `open[i]`, BK_CLOCK_NEVER where there is none. `due` in minutes.
typedef struct bk_backward bk_backward;
bk_backward *bk_backward_new(const bk_frame *frame);
void bk_backward_free(bk_backward *backward);
void bk_backward_costume(bk_backward *backward, size_t costume, bk_clock_minute *latest);

/// What the plan and its trials came to.
typedef struct bk_outcome_of_plan {
    const bk_frame *frame;
    const bk_placing *placings;  ///< NULL: nobody is there to plan for
    bk_tracer *tracer;           ///< of these placings; NULL where there are none
    const bk_odds_group *groups; ///< each costume, then each production
    const bk_group_odds *odds;   ///< of each costume, then of each production; NULL: not tried
} bk_outcome_of_plan;

/// The groups whose odds are asked: each costume, then each production with every task by its own due. In the scratch arena.
const bk_odds_group *bk_forecast_groups(const bk_frame *frame, size_t *count);

/// Fill in parts of the forecast, in this order; what the first two give back is the forecast's own, to be written to by the last two.
bk_planned_step *bk_forecast_fill_steps(bk_forecast *forecast, const bk_outcome_of_plan *outcome);
bk_costume_forecast *bk_forecast_fill_costumes(bk_forecast *forecast, const bk_outcome_of_plan *outcome);
void bk_forecast_fill_productions(bk_forecast *forecast, const bk_outcome_of_plan *outcome);
void bk_forecast_fill_stretches(bk_forecast *forecast, const bk_outcome_of_plan *outcome);
void bk_forecast_fill_latest(const bk_frame *frame, bk_planned_step *planned, bk_costume_forecast *costumes,
                             bk_arena *arena);
void bk_forecast_fill_snags(const bk_frame *frame, const bk_planned_step *planned,
                            bk_costume_forecast *costumes, bk_arena *arena);

#endif
