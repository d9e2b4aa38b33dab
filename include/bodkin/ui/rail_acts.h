#ifndef BODKIN_UI_RAIL_ACTS_H
#define BODKIN_UI_RAIL_ACTS_H

#include "bodkin/ui/clock_line.h"
#include "bodkin/ui/tick_line.h"

/// What the keys of the Rail do to the costume under its cursor.

/// Asks which of the costume's next steps is done, or whose clock starts; where none is next, says why. `only` is what the rail
/// is narrowed to, a bk_wait_on or BK_RAIL_SHOWS_ALL: the first step that waits on it is the likely one.
void bk_rail_ask_step(bk_screen *screen, bk_tick_line *line, const bk_clock_line *clock,
                      const bk_rail_costume *costume, bk_step_act act, int only);

/// Opens the form of a new costume behind that one (NULL: the first).
void bk_rail_add_costume(bk_screen *screen, const bk_rail_costume *costume);

/// Asks whether to take the costume away.
void bk_rail_take_costume_away(bk_screen *screen, const bk_rail_costume *costume);

#endif
