#ifndef BODKIN_UI_LOOK_FOR_H
#define BODKIN_UI_LOOK_FOR_H

#include "bodkin/ui/screen.h"

/// "Look for": a line at the bottom of whatever screen is seen, which finds performers, roles, costumes, pieces, steps,
/// materials and notes of the production while they are typed, and goes to the one chosen.

extern const bk_screen_kind bk_look_for_screen;

/// Opens it on top of a screen; says so at the bottom where no production is shown.
void bk_look_for_open(bk_screen *screen, const bk_key_row *row);

#endif
