#ifndef BODKIN_UI_WHEREABOUTS_FORM_H
#define BODKIN_UI_WHEREABOUTS_FORM_H

#include "bodkin/ui/screen.h"

/// Opens the form that says where a piece is (an index into the rail's pieces), or whom it is out with and until when.
void bk_whereabouts_open(bk_screen *from, size_t piece);

#endif
