#ifndef BODKIN_UI_MEASURING_ASKED_H
#define BODKIN_UI_MEASURING_ASKED_H

#include "bodkin/ui/measuring_lines.h"

/// Marks the lines of the measures that open steps of the performer's pieces list; one that no sheet knows yet gets a line of
/// its own. For the files of the Measuring screen only.
void bk_measuring_mark_asked(bk_measuring *sheet);

/// Whether a measure is asked for and still lacks: nothing is typed, and none was taken that is still good.
bool bk_measuring_lacks(const bk_measuring *sheet, const bk_measuring_line *line);

#endif
