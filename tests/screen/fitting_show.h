#ifndef BODKIN_TESTS_SCREEN_FITTING_SHOW_H
#define BODKIN_TESTS_SCREEN_FITTING_SHOW_H

#include "screen/terminal.h"

/// "The Ferry", which opens on Fri 19 Mar 2027, and its Fittings screen on Tue 2 Mar 2027. Ines Varga wears coat 4A-1 (its
/// first fitting, 30 minutes, takes 2 hooks of 10; the hem comes after it) and skirt 4A-2 (toile fitting, 20 minutes), both due
/// on Wed 10 Mar; Tomas Lind wears waistcoat 5A-1 (fitting, 15 minutes, after the cut that is still to do) and trousers 5A-2
/// (length, 10 minutes). Ines is away on 8 and 9 March.

/// The rows of fittings.csv below its heads: nothing is booked.
#define BK_NONE_BOOKED ""
/// A call of two pieces on Sat 27 Feb that nobody recorded, and one to come on Fri 5 Mar.
#define BK_TWO_CALLS \
    "4A-1,fit,2027-02-27T11:00,,,,,\n" \
    "4A-2,fit,2027-02-27T11:00,,,,,\n" \
    "5A-2,fit,2027-03-05T10:00,,,,,\n"

/// Brings it in with these rows of fittings.csv, and opens the Fittings as `as` (NULL: the maker).
bk_terminal *bk_among_fittings(const char *fittings, const char *as);

/// Whether the line under the cursor shows a text; whether the first line that shows `text` shows `also`.
bool bk_chosen_shows(const bk_terminal *terminal, const char *text);
bool bk_line_shows(const bk_terminal *terminal, const char *text, const char *also);

#endif
