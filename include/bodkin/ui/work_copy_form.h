#ifndef BODKIN_UI_WORK_COPY_FORM_H
#define BODKIN_UI_WORK_COPY_FORM_H

#include <stdint.h>

#include "bodkin/ui/screen.h"

/// Opens the form by which an order of work (its id and name) is copied as one of the workroom's own.
void bk_work_copy_form_open(bk_screen *screen, int64_t work, const char *name);

#endif
