#ifndef BODKIN_TESTS_WORK_PLANNED_H
#define BODKIN_TESTS_WORK_PLANNED_H

#include "bodkin/work/forecast.h"
#include "support/shell.h"
#include "work/show.h"

/// Small workrooms whose days can be worked out by hand, and what is told of their forecasts. The day is Tuesday, 2 March 2027.

/// Every kind of step.
#define ALL_SKILLS "source;draft;cut;tack;machine;press;fit;hand;craft;dye"

/// A person with every skill and the hours of a working week: 10 to 13 and 14 to 18 o'clock, Monday to Friday (seven hours a day).
bk_person maker(const char *name);
/// The same with other skills and hours on one weekday (0: Monday) alone.
bk_person helper(const char *name, const char *skills, int weekday, const char *hours);

/// A production that opens that day: Ada makes it, Ines Varga plays the Miller, whose costume 1A is due on `due` and has the piece P1,
/// pulled from stock. It has no steps yet.
bk_folder *one_costume(const char *name, bk_day opens, bk_day due);

/// A step for that many hands, or with that rest (minutes); one that can wait.
bk_step for_hands(bk_step step, int64_t hands);
bk_step with_rest(bk_step step, int64_t minutes);
bk_step that_can_wait(bk_step step);
bk_step done_on(bk_step step, bk_day day, const char *who, int64_t took);

/// Takes the folder into the store of the test, frees it, and reckons with so many tries. The forecast is freed by the test.
bk_forecast *forecast_of(bk_folder *folder, int64_t tries);
/// Reckons the store as it is.
bk_forecast *forecast_again(int64_t tries);

/// "1A Thu 4 Mar, 3 in hand", a line for each costume ("never", "not known").
const char *days_told(const bk_forecast *forecast);
/// "Tue 2 Mar 10:00 to Tue 2 Mar 12:00, Ada" or "never".
const char *step_told(const bk_forecast *forecast, const char *piece, const char *key);
/// "Thu 4 Mar 10:00", or "never".
const char *latest_told(const bk_forecast *forecast, const char *piece, const char *key);
/// "Tue 2 Mar Ada 10:00-12:00 P1/cut", a line for each stretch.
const char *stretches_told(const bk_forecast *forecast);
/// "no skill P1/cut", a line for each snag of each costume.
const char *snags_told(const bk_forecast *forecast);
/// The day by which a wait of costume `number` must clear; `key` NULL: the piece must be back.
const char *wanted_told(const bk_forecast *forecast, const char *number, const char *piece, const char *key);

const bk_planned_step *planned_step(const bk_forecast *forecast, const char *piece, const char *key);
const bk_costume_forecast *planned_costume(const bk_forecast *forecast, const char *number);

#endif
