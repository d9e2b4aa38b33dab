#ifndef BODKIN_UI_FITTING_MOVE_FORM_H
#define BODKIN_UI_FITTING_MOVE_FORM_H

#include "bodkin/ui/screen.h"
#include "bodkin/work/fittings.h"

/// Opens the form that moves a call, or some of its pieces, to another moment.
void bk_fitting_open_move(bk_screen *screen, const bk_fitting_call *call);

#endif
