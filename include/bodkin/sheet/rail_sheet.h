#ifndef BODKIN_SHEET_RAIL_SHEET_H
#define BODKIN_SHEET_RAIL_SHEET_H

#include "bodkin/base/text.h"
#include "bodkin/work/rail.h"

/// The rail outside the screens.

/// For people: at most 80 columns, no escape codes, names made safe; plain ASCII when asked. Appended to `out`.
void bk_rail_text(const bk_rail *rail, bool ascii, bk_buffer *out);

/// One JSON object as design, section 7, has it; `finish`, `days_in_hand`, `chance` and `wanted_by` are null. Appended.
void bk_rail_json(const bk_rail *rail, bk_buffer *out);

#endif
