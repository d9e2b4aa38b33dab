#ifndef BODKIN_STORE_MIGRATE_H
#define BODKIN_STORE_MIGRATE_H

#include "bodkin/store/db.h"

/// Brings the store at `path` from the version it has to the last of `count` migrations (all of them, from
/// version 1 on, each ending by writing its number), after a backup beside the file unless the store is new
/// (version 0). Nothing is done where it is there already. Older entries of the daybook can no longer be
/// turned back. On failure the store is as it was. For the files of this floor only.
bk_status bk_store_migrate(bk_db *db, const char *path, const char *const *migrations, int count,
                           bk_error *error) BK_MUST_USE;

#endif
