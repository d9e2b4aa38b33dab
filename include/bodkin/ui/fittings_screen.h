#ifndef BODKIN_UI_FITTINGS_SCREEN_H
#define BODKIN_UI_FITTINGS_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Fittings screen: whom to call, what came of those who came, and who comes when; by day, or by performer.
extern const bk_screen_kind bk_fittings_screen;
void *bk_fittings_screen_new(void);

#endif
