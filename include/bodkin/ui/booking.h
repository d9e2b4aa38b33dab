#ifndef BODKIN_UI_BOOKING_H
#define BODKIN_UI_BOOKING_H

#include "bodkin/ui/screen.h"

/// The form that books a call: one performer, one time, all pieces that are tried on then. The same on every screen.

/// Opens it for a performer (a name; NULL: who plays the role) with steps of kind fit already named, "4A-1/fit;4A-2/f1" (NULL:
/// none yet).
void bk_booking_open(bk_screen *from, const char *performer, const char *steps);

/// Opens it for who wears a costume, with all that is to be fitted next on that performer; for one of its pieces or steps
/// (indices into the rail's, else BK_NO_INDEX) with the fittings of that. Where none is to be booked it says so.
void bk_booking_of(bk_screen *from, const bk_rail_costume *costume, size_t piece, size_t step);

#endif
