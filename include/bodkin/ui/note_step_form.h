#ifndef BODKIN_UI_NOTE_STEP_FORM_H
#define BODKIN_UI_NOTE_STEP_FORM_H

#include "bodkin/ui/screen.h"
#include "bodkin/work/notes.h"

/// Opens the form by which a note becomes a step: of which piece, of which kind, how long, and before which step.
void bk_note_step_form_open(bk_screen *screen, const bk_note_line *note);

#endif
