#ifndef BODKIN_UI_RAIL_DETAIL_H
#define BODKIN_UI_RAIL_DETAIL_H

#include "bodkin/ui/paint.h"
#include "bodkin/ui/wall.h"

/// What the Rail screen tells below its list of the costume under the cursor, one of the wall's rail: nothing of it is cut that has
/// room. When it will be ready, what stands in the way of that, and every wait is a sentence, first those where somebody must act.
void bk_rail_draw_detail(const bk_paint *paint, const bk_wall *wall, const bk_rail_costume *costume,
                         size_t row, size_t rows);

/// "12 of 18 steps done, 6 h 20 left", "no step is listed"; in `arena`.
const char *bk_costume_progress(const bk_rail_costume *costume, bk_arena *arena);

/// "Lamplighter, played by Ana Ruiz"; in `arena`.
const char *bk_costume_wearer(const bk_rail_costume *costume, bk_arena *arena);

/// "can go on" where it can though something is open; else NULL.
const char *bk_costume_goes_on(const bk_rail_costume *costume);

/// A wait's sentence with the piece it is about in front; in `arena`.
const char *bk_wait_of_piece(const bk_rail *rail, const bk_wait *wait, bk_arena *arena);

#endif
