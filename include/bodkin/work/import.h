#ifndef BODKIN_WORK_IMPORT_H
#define BODKIN_WORK_IMPORT_H

#include "bodkin/store/store.h"
#include "bodkin/work/folder.h"
#include "bodkin/work/progress.h"

/// Taking a folder of sheets into the store: one change, one entry of the daybook.

typedef struct bk_import_options {
    bool replace; ///< put it in the place of a production of the same name
    bk_day today; ///< day of the shelf's movements
    const bk_progress *progress;
} bk_import_options;

/// What an import did, for a person to read; texts live in the arena handed in.
typedef struct bk_import_report {
    const char *sentence; ///< as in the daybook
    /// Filled cells that differed from what the workroom knew: "performers.csv: X: note: was ..., is now ..."
    const char **replaced;
    size_t replaced_count;
    /// What the production of that name had before of what the folder has nothing of: "1 need and 1 fitting"; NULL: nothing.
    const char *gone;
} bk_import_report;

/// Names the workroom knows, for the checks of a folder; `known` is the caller's (bk_known_free).
bk_status bk_import_known(bk_store *store, bk_known **known, bk_error *error) BK_MUST_USE;

/// Takes a checked folder in. The caller has begun a change and commits it with `report->sentence`. Errors: BK_REFUSED when
/// a production of that name is there and `replace` is not asked for, or when it was stopped.
bk_status bk_import_folder(bk_store *store, const bk_folder *folder, const bk_import_options *options,
                           bk_arena *arena, bk_import_report *report, bk_error *error) BK_MUST_USE;

#endif
