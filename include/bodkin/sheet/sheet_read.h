#ifndef BODKIN_SHEET_SHEET_READ_H
#define BODKIN_SHEET_SHEET_READ_H

#include "bodkin/sheet/columns.h"
#include "bodkin/sheet/faults.h"
#include "bodkin/sheet/names.h"
#include "bodkin/work/progress.h"

/// The reading of a folder, as its parts share it.
typedef struct bk_sheet_reading {
    bk_folder *folder;
    bk_faults *faults;
    bk_names *names;
    const bk_progress *progress;
    const char *currency; ///< the production's, NULL while not known
    bool unreadable
        [BK_SHEETS]; ///< there are rows in the sheet that could not be read: what seems missing there may not be
} bk_sheet_reading;

/// Reads the rows of one sheet from the bytes of its file into the folder, each cell checked by itself, all faults noted.
/// The bytes stay the caller's and are not needed afterwards. BK_REFUSED when it was stopped; faults are no error here.
bk_status bk_sheet_read(bk_sheet_reading *reading, bk_sheet_number sheet, const char *bytes, size_t length,
                        bk_error *error) BK_MUST_USE;

/// Refuses because the person who was told how far the work is stopped it.
bk_status bk_sheet_stopped(bk_error *error) BK_MUST_USE;

#endif
