#ifndef BODKIN_UI_WHO_WHEN_DAY_H
#define BODKIN_UI_WHO_WHEN_DAY_H

#include "bodkin/ui/paint.h"
#include "bodkin/ui/plan_days.h"

/// The chosen day of Who and When, below the table: what each of the people shown does, and when.

typedef struct bk_day_beneath {
    const bk_forecast *forecast;
    const bk_plan_day *day;
    const char *is;       ///< what the day is; NULL: nothing special
    const size_t *people; ///< indices of those beside each other
    size_t count;         ///< at least 1
} bk_day_beneath;

/// Draws it into so many rows.
void bk_day_beneath_draw(const bk_paint *paint, const bk_day_beneath *beneath, size_t row, size_t rows);

#endif
