#ifndef BODKIN_UI_PERSON_PICK_H
#define BODKIN_UI_PERSON_PICK_H

#include "bodkin/ui/screen.h"
#include "bodkin/work/forecast.h"

/// Choosing one of the workroom's people, or all: a list above the bottom line, narrowed by typing.
extern const bk_screen_kind bk_person_pick_screen;

/// What is done with the choice, on the screen it was made for; `name` NULL: everybody.
typedef void bk_person_picked(bk_screen *screen, const char *name);

/// Lays the list over the screen, the cursor on `chosen` (NULL: everybody). `prompt` is asked on the bottom line ("Whose bench?").
/// The names are copied. Where the forecast knows nobody (or is NULL) the bottom line says so instead.
void bk_person_pick_open(bk_screen *screen, const char *prompt, const bk_forecast *forecast,
                         const char *chosen, bk_person_picked *picked);

#endif
