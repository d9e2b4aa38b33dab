#ifndef BODKIN_SHEET_FOLDER_CHECK_H
#define BODKIN_SHEET_FOLDER_CHECK_H

#include "bodkin/base/list.h"
#include "bodkin/plan/network.h"
#include "bodkin/sheet/keys.h"
#include "bodkin/sheet/sheet_read.h"

/// The sheets of a folder held against each other.
typedef struct bk_folder_checking {
    bk_sheet_reading *reading;
    const bk_known *known;    ///< names the workroom has, NULL for none
    bk_keys *keys[BK_SHEETS]; ///< of the sheets that have a key
    bk_arena *scratch;
} bk_folder_checking;

/// Checks all that was read: keys used twice, references to other sheets, the order of the steps, days before others. All
/// faults are noted; BK_REFUSED only when it was stopped.
bk_status bk_folder_check(bk_sheet_reading *reading, const bk_known *known, bk_error *error) BK_MUST_USE;

/// The same for what is said of steps: what they come after, in a circle or not, what they need, their fittings, the notes
/// that became steps.
bk_status bk_folder_check_steps(bk_folder_checking *checking, bk_error *error) BK_MUST_USE;

/// The same for what the steps of orders of work come after.
bk_status bk_folder_check_works(const bk_folder_checking *checking, bk_error *error) BK_MUST_USE;

/// What comes after what among the rows of a sheet of steps, as far as it could be read; freed with bk_list_free.
typedef BK_LIST(bk_network_link) bk_step_links;

/// Tells the circles of a sheet of steps that share no step, up to as many as faults are told. Uses up the links.
void bk_folder_check_circles(const bk_folder_checking *checking, bk_sheet_number sheet, bk_step_links *links);

/// What a step is called: PIECE/KEY in steps.csv, its key in an order of work. In the scratch arena.
const char *bk_folder_check_step_name(const bk_folder_checking *checking, bk_sheet_number number, size_t row);

/// Tells how far the check of a sheet is; BK_REFUSED when it was stopped.
bk_status bk_folder_check_progress(const bk_folder_checking *checking, bk_sheet_number sheet, size_t row,
                                   bk_error *error) BK_MUST_USE;

/// Notes that `name` stands in no row of the sheet `to` (and, where the workroom may know such names, not there either).
void bk_folder_check_unknown(const bk_folder_checking *checking, bk_sheet_number from, int line,
                             const char *column, const char *name, bk_sheet_number to);

#endif
