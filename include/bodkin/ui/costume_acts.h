#ifndef BODKIN_UI_COSTUME_ACTS_H
#define BODKIN_UI_COSTUME_ACTS_H

#include "bodkin/ui/costume_view.h"

/// What the keys of the Costume screen do to the record where its cursor stands.

void bk_costume_change(bk_screen *screen, const bk_key_row *row);
void bk_costume_take_away(bk_screen *screen, const bk_key_row *row); ///< asks first
void bk_costume_move(bk_screen *screen, const bk_key_row *row);      ///< argument -1: earlier, 1: later
void bk_costume_tick(bk_screen *screen, const bk_key_row *row);      ///< asks: done, or open again
void bk_costume_clock(bk_screen *screen, const bk_key_row *row);
void bk_costume_note(bk_screen *screen, const bk_key_row *row);
void bk_costume_book(bk_screen *screen, const bk_key_row *row);
void bk_costume_where(bk_screen *screen, const bk_key_row *row);
void bk_costume_chain(bk_screen *screen, const bk_key_row *row); ///< opens what decides its day
void bk_costume_use_work(bk_screen *screen, const bk_key_row *row);
void bk_costume_keep_work(bk_screen *screen, const bk_key_row *row);

/// Adds what can stand there, or, where that may be several, awaits the letter of one.
void bk_costume_add(bk_screen *screen, const bk_key_row *row);
/// Takes the letter; true while one is awaited.
bool bk_costume_add_take(bk_screen *screen, const bk_key *key);
/// Draws what can be added over the whole bottom line; returns the columns used.
size_t bk_costume_add_draw(const bk_screen *screen, const bk_paint *paint, bk_spot spot);

#endif
