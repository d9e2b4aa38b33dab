#ifndef BODKIN_UI_SUPPOSE_LINES_H
#define BODKIN_UI_SUPPOSE_LINES_H

#include "bodkin/ui/ledger.h"

/// What the screen Suppose lists: what is supposed, what becomes of the whole by it, and what of each costume.

enum { BK_SUPPOSE_COLUMNS = 6 };

extern const bk_list_column bk_suppose_columns[BK_SUPPOSE_COLUMNS];

/// Fills the ledger. A line of family BK_FAMILIES is number id - 1 of the wall's list, one of BK_COSTUMES a costume, one of
/// BK_PRODUCTIONS the whole of a production.
bk_status bk_suppose_fill(bk_screen *screen, bk_ledger *ledger, bk_error *error) BK_MUST_USE;

#endif
