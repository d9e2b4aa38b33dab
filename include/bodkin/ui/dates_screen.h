#ifndef BODKIN_UI_DATES_SCREEN_H
#define BODKIN_UI_DATES_SCREEN_H

#include "bodkin/ui/screen.h"

/// The Dates screen: the timetable of the production shown.
extern const bk_screen_kind bk_dates_screen;

/// What it remembers, for bk_stack_push.
void *bk_dates_screen_new(void);

#endif
