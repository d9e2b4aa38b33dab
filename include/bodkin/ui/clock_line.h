#ifndef BODKIN_UI_CLOCK_LINE_H
#define BODKIN_UI_CLOCK_LINE_H

#include "bodkin/ui/paint.h"
#include "bodkin/ui/screen.h"
#include "bodkin/work/clock.h"

/// The clock that runs for the step in hand of the person at this terminal, as the screens show it.

typedef struct bk_clock_line {
    bk_arena *arena; ///< of what was read; NULL: nothing yet
    bool runs;
    bk_running_line line; ///< with the minutes that are shown
} bk_clock_line;

/// Reads it as it stands now. What it holds is freed by bk_clock_line_close.
bk_status bk_clock_line_read(bk_wall *wall, bk_clock_line *clock, bk_error *error) BK_MUST_USE;
void bk_clock_line_close(bk_clock_line *clock);

/// Looks at the time; whether another minute is shown now.
bool bk_clock_line_moves(const bk_wall *wall, bk_clock_line *clock);

/// The id of the step whose clock runs; 0: none.
int64_t bk_clock_line_step(const bk_clock_line *clock);

/// "clock 25 min: 4A-2/hem"; NULL where none runs. In `arena`.
const char *bk_clock_line_words(const bk_clock_line *clock, bk_arena *arena);

/// Starts it for a step, or stops it where it runs for that one already.
void bk_clock_line_toggle(bk_screen *screen, const bk_clock_line *clock, int64_t step);

#endif
