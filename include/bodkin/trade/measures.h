#ifndef BODKIN_TRADE_MEASURES_H
#define BODKIN_TRADE_MEASURES_H

#include <stddef.h>

/// One measure of the body that is known by name.
typedef struct bk_measure_term {
    const char *name;   ///< the trade's name, as in the sheets: "nape to waist"
    const char *term;   ///< the ISO 8559-1:2017 term where it has one, else NULL
    const char *clause; ///< its clause, "5.4.5", where a source gives it, else NULL
    const char *how;    ///< the landmarks in one line of at most 76 columns, in our own words
} bk_measure_term;

/// The measures known by name, in the order a sheet is taken, from the head down.
extern const bk_measure_term bk_measure_terms[];
extern const size_t bk_measure_term_count;

/// The term of a name (exact), or NULL for a name of the workroom's own.
const bk_measure_term *bk_measure_term_find(const char *name);

#endif
