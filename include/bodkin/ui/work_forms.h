#ifndef BODKIN_UI_WORK_FORMS_H
#define BODKIN_UI_WORK_FORMS_H

#include "bodkin/ui/screen.h"

/// Opens the form that uses an order of work on a piece (an index into the rail's pieces): its steps are added to the piece.
void bk_work_use_open(bk_screen *from, size_t piece);

/// Opens the form that keeps the steps of a piece as a new order of work.
void bk_work_keep_open(bk_screen *from, size_t piece);

#endif
