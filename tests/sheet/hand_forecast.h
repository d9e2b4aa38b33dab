#ifndef BODKIN_TESTS_SHEET_HAND_FORECAST_H
#define BODKIN_TESTS_SHEET_HAND_FORECAST_H

#include "bodkin/work/forecast.h"

/// A forecast put together by hand for the production, the costume and the day of tests/sheet/hand_rail.h (all of their ids are 0):
/// 1A, due on Tue 16 Mar 2027, is expected on Thu 11 Mar with 3 days in hand, 92 % likely, and the production likewise. Its steps are
/// those of the hand-made rail, with Ada in the workroom. A test changes what it looks at; everything lasts until the next call.
typedef struct hand_forecast {
    bk_forecast forecast;
    bk_planned_step steps[3];
    bk_planned_person person;
    bk_costume_forecast costume;
    bk_production_forecast production;
} hand_forecast;

hand_forecast *hand_forecast_new(void);

#endif
