#ifndef BODKIN_UI_PLAN_DAYS_H
#define BODKIN_UI_PLAN_DAYS_H

#include "bodkin/work/forecast.h"

/// The plan as days and people: what a table of who does what when shows. Pure; texts live in the arena handed in, as the store
/// has them.

/// What somebody's day holds.
typedef struct bk_plan_share {
    int64_t hours;   ///< minutes there are
    int64_t planned; ///< minutes of them that the plan fills
    const bk_planned_stretch *stretches;
    size_t count;
} bk_plan_share;

/// What the plan has for a person (an index into its people) on a day.
bk_plan_share bk_plan_share_of(const bk_forecast *forecast, size_t person, bk_day day);

/// How much room the share has: "full", "2 h 30"; NULL where there are no hours.
const char *bk_plan_free(const bk_plan_share *share, bk_arena *arena);

/// The same with how much there is: "2 h 30 free of 6 h", "6 h, full", "6 h free"; NULL where there are no hours.
const char *bk_plan_load(const bk_plan_share *share, bk_arena *arena);

/// A step in a few letters: "4A-2 hem".
const char *bk_plan_step(const bk_planned_step *step, bk_arena *arena);

/// The steps of a share, each once, as many as go into `width` columns, and how many more there are: "4A-2 hem, press, 3B-1 cut +2".
/// The first stands there always. NULL where there are none.
const char *bk_plan_steps(const bk_forecast *forecast, const bk_plan_share *share, size_t width,
                          bk_arena *arena);

/// A day that has a name.
typedef struct bk_plan_date {
    bk_day on;
    const char *what; ///< "dress"
} bk_plan_date;

/// The names of a day in the order given, each once: "tech, dress"; NULL where it has none.
const char *bk_plan_date_words(const bk_plan_date *dates, size_t count, bk_day day, bk_arena *arena);

/// A line of the table: a day, or several in a row on which nobody works and which have no name.
typedef struct bk_plan_day {
    bk_day from, to; ///< both included
    bool works;      ///< somebody has hours, or something is planned
} bk_plan_day;

enum {
    BK_PLAN_FOLDS = 3,       ///< so many empty days in a row become one line
    BK_PLAN_MOST_DAYS = 1000 ///< further ahead nothing is listed
};

#define BK_PLAN_ALL SIZE_MAX ///< for a person: everybody

/// The days from the forecast's today to the last one that is planned on, has a name, or is an opening; `person` an index, or
/// BK_PLAN_ALL. `*days` in `arena`; returns how many, at least 1.
size_t bk_plan_days(const bk_forecast *forecast, size_t person, const bk_plan_date *dates, size_t date_count,
                    bk_arena *arena, const bk_plan_day **days);

/// How people stand beside each other.
typedef struct bk_plan_columns {
    size_t people; ///< so many at once, at least 1
    size_t steps;  ///< columns of each for steps
} bk_plan_columns;

enum {
    BK_PLAN_MOST_PEOPLE = 5,
    BK_PLAN_FREE_COLUMNS = 6, ///< of each for how much room there is: "7 h 20"
    BK_PLAN_INNER_GAP = 1,    ///< between the two
    BK_PLAN_GAP = 2           ///< between people
};

/// Shares out so many columns of the terminal over `count` people.
bk_plan_columns bk_plan_columns_of(size_t width, size_t count);

#endif
