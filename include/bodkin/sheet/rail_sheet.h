#ifndef BODKIN_SHEET_RAIL_SHEET_H
#define BODKIN_SHEET_RAIL_SHEET_H

#include "bodkin/base/text.h"
#include "bodkin/work/forecast.h"
#include "bodkin/work/rail.h"

/// The rail outside the screens, most urgent costume first. `forecast` may be NULL: then nothing is said of days and odds, and the
/// costumes come as they hang on the rail.

/// For people: at most 80 columns, no escape codes, names made safe; plain ASCII when asked. Appended to `out`.
void bk_rail_text(const bk_rail *rail, const bk_forecast *forecast, bool ascii, bk_buffer *out);

/// One JSON object as design, section 7, has it; beside that each costume has at its end `chance_error`, one standard error of
/// `chance` from the number of trials. What is not known, or never comes about, is null. Appended to `out`.
void bk_rail_json(const bk_rail *rail, const bk_forecast *forecast, bk_buffer *out);

#endif
