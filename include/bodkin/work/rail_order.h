#ifndef BODKIN_WORK_RAIL_ORDER_H
#define BODKIN_WORK_RAIL_ORDER_H

#include "bodkin/work/forecast.h"
#include "bodkin/work/rail.h"

/// The costumes of a rail, most urgent first by their forecast (bk_forecast_order); where that makes no difference, or there is no
/// forecast (NULL) or none of a costume, they stay as they hang on the rail. An array of `rail->costume_count` in `arena`, pointing
/// into the rail.
const bk_rail_costume *const *bk_rail_most_urgent(const bk_rail *rail, const bk_forecast *forecast,
                                                  bk_arena *arena);

#endif
