#ifndef BODKIN_SHEET_FOLDER_SHEETS_H
#define BODKIN_SHEET_FOLDER_SHEETS_H

#include "bodkin/sheet/faults.h"
#include "bodkin/work/folder.h"
#include "bodkin/work/progress.h"

/// Reads all sheets of a folder on disk into `folder`: every cell is checked by itself and against the other sheets and the
/// names the workroom `known` (NULL: an empty workroom) has, and all faults are noted. Returns BK_REFUSED when there are
/// faults (the error's text then says how many) or the folder cannot be read, or it was stopped.
bk_status bk_folder_read(const char *path, const bk_known *known, bk_folder *folder, bk_faults *faults,
                         const bk_progress *progress, bk_error *error) BK_MUST_USE;

/// Writes every sheet of `folder` into the folder `path`, which is made when missing and must otherwise hold no sheets
/// (*.csv) unless `over`: a production's sheets are replaced there. Files are written beside, `.NAME.new`, and renamed, so
/// that no half-written sheet is left; what an export that was killed left under those names is cleared away. A sheet
/// without rows is written with its header only. BK_REFUSED with nothing changed when it was stopped, a place is taken by
/// what is no file, or another export writes there; where only some could be put in place, the sentence names them.
bk_status bk_folder_write(const char *path, const bk_folder *folder, bool over, const bk_progress *progress,
                          bk_error *error) BK_MUST_USE;

#endif
