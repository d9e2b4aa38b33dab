#ifndef BODKIN_WORK_FINDER_H
#define BODKIN_WORK_FINDER_H

#include "bodkin/store/store.h"

/// Looking for anything of a production by a few letters of it: its performers, roles, costumes, pieces, steps and notes, and
/// the materials of the workroom.

/// Something that can be found.
typedef struct bk_found {
    bk_family family; ///< BK_PERFORMERS, BK_ROLES, BK_COSTUMES, BK_PIECES, BK_STEPS, BK_MATERIALS or BK_NOTES
    int64_t id;
    const char *name;  ///< what it is called: "4A-2/hem"
    const char *tells; ///< what it is: "hem of the skirt"; NULL: nothing more
    const char *
        costume; ///< of a piece or a step: number of the first costume that it is worn with; of a costume its own;
                 ///< else NULL
} bk_found;

/// What can be found, folded for finding once.
typedef struct bk_finder bk_finder;

/// Reads what can be found; `*finder` is the caller's, freed by bk_finder_free (NULL allowed).
bk_status bk_finder_read(bk_store *store, int64_t production, bk_finder **finder, bk_error *error)
    BK_MUST_USE;
void bk_finder_free(bk_finder *finder);

/// Finds what has every word of `typed` somewhere in its name or in what it tells, case and accents aside; a text without a
/// word finds nothing. The best at most `room` are put into `found`: first those whose name begins with what was typed, then
/// those where a word begins with it, then the others; among equals in the order of the families above and then in natural
/// order of the names. Returns how many match in all.
size_t bk_finder_find(const bk_finder *finder, const char *typed, bk_found *found, size_t room);

#endif
