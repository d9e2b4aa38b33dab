#ifndef BODKIN_WORK_SHEET_NAMES_H
#define BODKIN_WORK_SHEET_NAMES_H

#include "bodkin/work/history.h"

/// Which measures a new sheet of a performer asks for, and in which order.

typedef struct bk_sheet_names {
    const char *const *items; ///< names, all that the workroom knows
    size_t count;
    size_t usual; ///< so many of them, the first, are those that a sheet usually has; the others follow
} bk_sheet_names;

/// The names for a sheet of the performer whose history that is. Usual are those on this performer's own sheets; where these
/// are not a whole sheet, those on the sheets of the company of `production` (its id); where there is none either, all. Both
/// parts are in the order a sheet is taken, names of the workroom's own behind in natural order. Lives in `arena`. For the
/// maker.
bk_status bk_sheet_names_read(bk_store *store, int64_t production, const bk_history *history, bk_arena *arena,
                              bk_sheet_names *names, bk_error *error) BK_MUST_USE;

#endif
