#ifndef BODKIN_STORE_RIGHTS_H
#define BODKIN_STORE_RIGHTS_H

#include <stdbool.h>

#include "bodkin/store/store.h"

/// Who may do what with which table: one const table, asked by the connection itself for every statement it
/// prepares.

typedef enum bk_doing {
    BK_DOING_READ,
    BK_DOING_INSERT,
    BK_DOING_UPDATE,
    BK_DOING_DELETE,
    BK_DOING_ASK,      ///< a PRAGMA; `table` is its name, `column` its argument
    BK_DOING_ORDINARY, ///< what touches no table: selecting, functions, transactions
    BK_DOING_OTHER     ///< all else: the shape of the store, other files
} bk_doing;

/// Whether `as` may do that with a column (NULL or empty: with the table as a whole). The maker may do
/// everything.
bool bk_rights_allow(bk_as as, bk_doing doing, const char *table, const char *column);

#endif
