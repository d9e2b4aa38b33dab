#ifndef BODKIN_STORE_INSIDE_H
#define BODKIN_STORE_INSIDE_H

#include "bodkin/store/db.h"
#include "bodkin/store/store.h"

/// What the files of this floor share; nothing of it is for the floors above.

struct bk_store {
    bk_db *db;
    char *path;
    char *who;
    char *terminal; ///< NULL: not known
    bk_as as;
    bool changing; ///< a change is open
};

#endif
