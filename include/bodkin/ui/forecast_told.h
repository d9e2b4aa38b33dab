#ifndef BODKIN_UI_FORECAST_TOLD_H
#define BODKIN_UI_FORECAST_TOLD_H

#include "bodkin/sheet/forecast_words.h"

/// What the screens tell of a forecast beside the words that every view has. All texts in `arena`, as the store has them.

/// A production in few words: "ready by Thu 18 Mar, 84 % in time", "all done", "not all comes about"; `brief` without " in time". NULL
/// where no day is known.
const char *bk_outlook_brief(const bk_production_forecast *production, bk_day today, bool brief,
                             bk_arena *arena);

/// Which steps most often decide the finish: "Most often decided by First fitting (2A-1/fit), in 64 % of the trials, and Hem
/// (2A-1/hem), in 20 %"; NULL where none is told.
const char *bk_deciders_sentence(const bk_forecast *forecast, const bk_outlook_days *days, bk_arena *arena);

/// A wait of a costume as it is told: its sentence, and by when it must clear: "the fitting is not booked; wanted by Thu 4 Mar".
/// `costume` may be NULL.
const char *bk_wait_wanted(const bk_rail *rail, const bk_costume_forecast *costume, const bk_wait *wait,
                           const char *sentence, bk_arena *arena);

/// Who does a step: "Ida", "Ida and Bo"; "" where nobody is named.
const char *bk_planned_who(const bk_forecast *forecast, const bk_planned_step *step, bk_arena *arena);

/// When it is done and by whom: "planned Thu 4 Mar 10:00 to 12:30, Ida"; where it never comes about it says so.
const char *bk_planned_sentence(const bk_forecast *forecast, const bk_planned_step *step, bk_arena *arena);

#endif
