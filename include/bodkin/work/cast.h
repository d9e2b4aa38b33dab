#ifndef BODKIN_WORK_CAST_H
#define BODKIN_WORK_CAST_H

#include "bodkin/store/store.h"

/// The cast of a production: who plays and covers what, and how far everybody is measured.

typedef struct bk_cast_performer {
    const bk_performer *record; ///< without contact
    const char *const *plays;   ///< names of roles, in their order
    size_t play_count;
    const char *const *covers; ///< names of roles, in their order
    size_t cover_count;
    size_t sheet_count;
    bk_day newest;    ///< day of the newest sheet; BK_NO_DAY: never measured
    int64_t measures; ///< on that sheet
    int64_t doubts;   ///< measures of it that can hardly be true; BK_NOT_KNOWN where values may not be read
    bool old;         ///< that sheet is older than measures of this performer are good for
    bool has_contact; ///< false also where contacts may not be read
} bk_cast_performer;

typedef struct bk_cast_role {
    const bk_role *record;
    const char *performer;     ///< who plays it; NULL: not cast
    const char *const *covers; ///< names of performers, in their order
    size_t cover_count;
    size_t costume_count;
} bk_cast_role;

typedef struct bk_cast {
    bk_production production;
    const bk_cast_performer *performers; ///< of the company, in its order
    size_t performer_count;
    const bk_cast_role *roles; ///< in their order
    size_t role_count;
    size_t uncast; ///< roles that nobody plays
} bk_cast;

/// Reads the cast of a production (its id) for `today`; all of it lives in `arena`. For everybody: the director and
/// volunteers see the days of sheets, no values, doubts or contacts. BK_REFUSED where the production is no longer there.
bk_status bk_cast_read(bk_store *store, int64_t production, bk_day today, bk_arena *arena, bk_cast *cast,
                       bk_error *error) BK_MUST_USE;

#endif
