#ifndef BODKIN_UI_FITTING_RECORD_FORM_H
#define BODKIN_UI_FITTING_RECORD_FORM_H

#include "bodkin/ui/screen.h"
#include "bodkin/work/fittings.h"

/// Opens the form that records what came of the fitting of one piece of a call (its place in it), with what is to be altered.
/// When it is saved the wall's `saved_id` is that fitting.
void bk_fitting_open_record(bk_screen *screen, const bk_fitting_call *call, size_t at);

#endif
