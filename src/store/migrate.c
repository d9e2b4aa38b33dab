#include "bodkin/store/migrate.h"

#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

#include "bodkin/store/place.h"

enum { WORD_ROOM = 32 };

static bk_status back_up(bk_db *db, const char *path, int version, char **backup, bk_error *error)
{
    char word[WORD_ROOM];
    snprintf(word, sizeof word, "before-%d", version);
    bk_status status = bk_place_make_beside(path, word, backup, error);
    if (status != BK_OK)
        return status;
    status = bk_db_copy(db, *backup, error);
    if (status == BK_OK)
        return BK_OK;
    unlink(*backup);
    free(*backup);
    *backup = NULL;
    return status;
}

// One migration, which ends by writing its own number.
static bk_status run_one(bk_db *db, const char *path, const char *text, int number, bk_error *error)
{
    int64_t version = 0;
    bk_status status = bk_db_script(db, text, NULL, NULL, error);
    if (status == BK_OK)
        status = bk_db_number(db, BK_SQL_GET_SCHEMA_VERSION, &version, error);
    if (status == BK_OK && version != number)
        status =
            bk_fail(error, BK_STORE, "The workroom %s could not be brought to version %d.", path, number);
    return status;
}

static bk_status refuse_dangling(bk_db *db, const char *path, bk_error *error)
{
    int64_t dangling = 0;
    bk_status status = bk_db_number(db, BK_SQL_COUNT_DANGLING, &dangling, error);
    if (status == BK_OK && dangling > 0)
        status = bk_fail(
            error, BK_STORE,
            "The workroom %s was left as it is: brought up to date, %d of its records would refer to what "
            "is not there.",
            path, (int)dangling);
    return status;
}

// Within the transaction: all migrations that are missing; `*from` is the version found.
static bk_status run_missing(bk_db *db, const char *path, const char *const *migrations, int count,
                             int64_t *from, bk_error *error)
{
    bk_status status = bk_db_number(db, BK_SQL_GET_SCHEMA_VERSION, from, error);
    if (status != BK_OK || *from >= count)
        return status;
    for (int64_t i = *from; i < count && status == BK_OK; i++)
        status = run_one(db, path, migrations[i], (int)i + 1, error);
    if (status == BK_OK && *from > 0)
        status = bk_db_run(db, BK_SQL_END_UNDO, error);
    return status == BK_OK ? refuse_dangling(db, path, error) : status;
}

static bk_status run_alone(bk_db *db, const char *path, const char *const *migrations, int count,
                           int64_t *from, bk_error *error)
{
    bk_status status = bk_db_run(db, BK_SQL_BEGIN_ALONE, error);
    if (status != BK_OK)
        return status;
    status = run_missing(db, path, migrations, count, from, error);
    if (status == BK_OK)
        status = bk_db_commit(db, error);
    if (status != BK_OK)
        bk_db_roll_back(db);
    return status;
}

static bk_status migrate(bk_db *db, const char *path, const char *const *migrations, int count, int64_t *from,
                         bk_error *error)
{
    bk_status status = bk_db_run(db, BK_SQL_SET_FOREIGN_KEYS_OFF, error);
    if (status != BK_OK)
        return status;
    status = run_alone(db, path, migrations, count, from, error);
    bk_status after = bk_db_run(db, BK_SQL_SET_FOREIGN_KEYS_ON, status == BK_OK ? error : NULL);
    return status == BK_OK ? after : status;
}

bk_status bk_store_migrate(bk_db *db, const char *path, const char *const *migrations, int count,
                           bk_error *error)
{
    int64_t version = 0;
    bk_status status = bk_db_number(db, BK_SQL_GET_SCHEMA_VERSION, &version, error);
    if (status != BK_OK || version >= count)
        return status;
    char *backup = NULL;
    if (version > 0)
        status = back_up(db, path, (int)version + 1, &backup, error);
    if (status == BK_OK)
        status = migrate(db, path, migrations, count, &version, error);
    bool needless = status == BK_OK && version >= count; // another program was quicker
    if (needless && backup != NULL)
        unlink(backup);
    free(backup);
    return status;
}
