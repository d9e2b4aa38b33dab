#ifndef BODKIN_WORK_FORECAST_H
#define BODKIN_WORK_FORECAST_H

#include "bodkin/base/list.h"
#include "bodkin/plan/odds.h"
#include "bodkin/work/suppose.h"
#include "bodkin/work/workroom.h"

/// Will it be ready: the plan of all open steps of all productions not put away, with the hands, hours and equipment there are, and
/// the odds of it. Records are told by id, since the store may have moved on since. Everything belongs to the forecast.

/// How much is tried. The same workroom, day, seed and effort give the same forecast, byte for byte.
typedef struct bk_effort {
    uint64_t seed;
    int64_t schedules; ///< at least 1
    int32_t trials;    ///< 0: no odds
} bk_effort;

enum { BK_USUAL_SEED = 1, BK_USUAL_TRIALS = 1000 };

/// The usual effort for a workroom with so many open steps: about a second's work, never depending on the machine. `tries` 0 or more
/// pins both numbers (0: one schedule and no trials); below 0: the usual.
bk_effort bk_effort_usual(size_t open_steps, uint64_t seed, int64_t tries);

/// What stands in the way of a forecast, or makes it a poor one; each is a plain sentence on the rail (sheet/forecast_words.h).
typedef enum bk_snag_kind {
    BK_SNAG_NOBODY,     ///< the workroom has no people yet: no day can be told
    BK_SNAG_NO_SKILL,   ///< nobody, or too few at once, have the step's kind among their skills
    BK_SNAG_NO_HOURS,   ///< those who have it have no hours left before the due day
    BK_SNAG_AWAY,       ///< the performer of a fitting is away until after the opening
    BK_SNAG_NO_MINUTES, ///< the step has no minutes (0): it counts as none
    BK_SNAG_PAST,       ///< the costume's due day is past
    BK_SNAG_UNCAST,     ///< a fitting of a role that nobody plays: planned as if somebody did
    BK_SNAG_NO_DATE, ///< the step waits for what has no day (not ordered, an order or a piece without a day, measures): planned as if it
                     ///< came today
    BK_SNAGS
} bk_snag_kind;

typedef struct bk_snag {
    bk_snag_kind kind;
    int64_t step_id;          ///< 0: of the costume or the workroom as a whole
    const char *piece, *step; ///< name and key; NULL where step_id is 0
    int step_kind;            ///< bk_kind, or BK_NO_WORD
    const char *who;          ///< the performer; NULL
    bk_day day;               ///< until when, or which day; BK_NO_DAY
    int64_t hands;            ///< with BK_SNAG_NO_SKILL: how many are needed at once
} bk_snag;

/// An open step in the plan.
typedef struct bk_planned_step {
    int64_t id, production_id, piece_id;
    const char *production, *piece, *piece_title, *key, *title;
    int64_t costume_id;         ///< the most urgent costume it is for; 0: it is worn with none
    const char *costume, *role; ///< its number and role; NULL
    int kind;                   ///< bk_kind
    int64_t level, hands;
    int64_t minutes; ///< as the plan counts them, for whoever does it (by the workroom's record)
    int64_t guessed; ///< as written
    bool can_wait;
    bool next;            ///< all it comes after is done
    bool free_now;        ///< and it waits on nothing but the hand-sewing table
    bk_day due;           ///< its piece's
    bk_moment begin, end; ///< `day` BK_NO_DAY: it never comes about
    const size_t *people; ///< indices into the forecast's people, who does it
    size_t person_count;
    bk_moment
        latest; ///< the latest it can begin so that its costume is still finished by its due day, with the workroom's
    ///< hands for that costume's work behind it alone; BK_NO_DAY: it has no due day, or there is no such time
    int64_t behind;               ///< minutes of work that come after it, directly or not
    bool booked;                  ///< a fitting with an appointment to come
    const char *const *materials; ///< names of what it needs
    size_t material_count;
} bk_planned_step;

/// A piece of somebody's day.
typedef struct bk_planned_stretch {
    bk_day day;
    size_t person; ///< index into the forecast's people
    bk_minute from, to;
    size_t step;
    bool again; ///< taken up again: it was set down before
} bk_planned_stretch;

typedef struct bk_planned_person {
    int64_t id; ///< 0: supposed
    const char *name;
    unsigned skills;
    const bk_calendar *calendar;
} bk_planned_person;

/// A link of the chain that leads to a finish: a step, and what it waited for last.
typedef struct bk_planned_link {
    size_t step;
    bk_bound bound;
    const char *held_by; ///< with BK_BOUND_HANDS: the person, the equipment or the performer; else NULL
} bk_planned_link;

typedef struct bk_planned_decider {
    size_t step;
    int32_t trials; ///< in how many of them it was in the deciding chain
} bk_planned_decider;

/// A costume's, or a production's, outlook.
typedef struct bk_outlook_days {
    bk_day
        finish; ///< the day on which all that cannot wait is done (or, where only what can wait is open, that); for a
                ///< finished costume the day on which it was; BK_NO_DAY: not known, or never
    bool
        days_known; ///< false: not known; true with `finish` BK_NO_DAY: it never comes about, and `days_in_hand` says nothing
    int64_t
        days_in_hand; ///< days on which anybody works, after `finish` up to the due day; late: those after the due day up to
    ///< `finish`, below zero; never below zero where all that is open can wait: that makes nothing late
    int32_t chance;       ///< thousandths of being done by the due day; -1: not reckoned
    int32_t chance_error; ///< one standard error, thousandths
    bk_day even, likely;  ///< the 50 % and the 90 % day; BK_NO_DAY
    const bk_planned_decider *deciders;
    size_t decider_count;
} bk_outlook_days;

typedef struct bk_wanted {
    int64_t piece_id, step_id; ///< step_id 0: the piece is out
    bk_day by;
} bk_wanted;

typedef struct bk_costume_forecast {
    int64_t id, production_id;
    const char *number, *title, *role;
    bk_day due;
    bool open; ///< some step is open, a piece is out, or it is not listed yet what it takes
    bk_outlook_days days;
    const bk_wanted *wanted; ///< one for each piece and step with waits
    size_t wanted_count;
    const bk_planned_link *chain; ///< to its finish
    size_t chain_count;
    const bk_snag *snags;
    size_t snag_count;
} bk_costume_forecast;

typedef struct bk_production_forecast {
    int64_t id;
    const char *name;
    bk_day opens;
    int64_t late; ///< open costumes that are finished after their due day, or never
    bk_outlook_days
        days; ///< of all its costumes, each by its own due day; `days_in_hand` is the least of theirs
    const bk_planned_link *chain;
    size_t chain_count;
} bk_production_forecast;

typedef struct bk_forecast {
    bk_arena *arena;
    bk_day today;
    bk_effort effort;             ///< what was asked
    int64_t schedules;            ///< made
    int32_t trials;               ///< made
    const bk_planned_step *steps; ///< every open step, by production, in the order of steps.csv
    size_t step_count;
    const bk_planned_person *people;
    size_t person_count;
    const bk_planned_stretch *stretches; ///< by day, person, time
    size_t stretch_count;
    const bk_costume_forecast *costumes; ///< by production, in the order of costumes.csv
    size_t costume_count;
    const bk_production_forecast *productions;
    size_t production_count;
    bk_paces paces;
    bk_snag room_snag;                                 ///< kind BK_SNAG_NOBODY; BK_SNAGS: none
    bk_id_index *step_at, *costume_at, *production_at; ///< id to index
} bk_forecast;

/// Asked now and then: false stops the reckoning. `done` is how far it is, in thousandths. May be NULL.
typedef bool bk_forecast_goes_on(void *context, int done);

/// Reckons it; pure but for the arena. `suppositions` (may be none) are taken as if they were so. `*forecast` is the caller's, freed with
/// bk_forecast_free; NULL where it was stopped. It does not need the room afterwards.
void bk_forecast_reckon(const bk_workroom *room, const bk_supposition *suppositions, size_t supposition_count,
                        bk_effort effort, bk_forecast_goes_on *goes_on, void *context,
                        bk_forecast **forecast);
void bk_forecast_free(bk_forecast *forecast);

/// Reads the workroom and reckons it: for the command line.
bk_status bk_forecast_read(bk_store *store, bk_day today, uint64_t seed, int64_t tries,
                           bk_forecast **forecast, bk_error *error) BK_MUST_USE;

/// By id; NULL where it is not in the forecast (`forecast` may be NULL).
const bk_planned_step *bk_forecast_step(const bk_forecast *forecast, int64_t id);
const bk_costume_forecast *bk_forecast_costume(const bk_forecast *forecast, int64_t id);
const bk_production_forecast *bk_forecast_production(const bk_forecast *forecast, int64_t id);

/// The day by which a wait of a costume must clear, BK_NO_DAY where it is not known. `step_id` 0: the piece is out.
bk_day bk_forecast_wanted(const bk_costume_forecast *costume, int64_t piece_id, int64_t step_id);

/// Which of two costumes is the more urgent, for the rail: those that are open before those that are not; what never comes
/// about first, then the fewest days in hand, the lowest chance, the first due, the number in natural order. Either forecast may be
/// NULL (then the due day and the number decide).
int bk_forecast_order(const bk_costume_forecast *left, const bk_costume_forecast *right);

#endif
