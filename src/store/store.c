#include "bodkin/store/store.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "bodkin/store/inside.h"
#include "bodkin/store/migrate.h"
#include "bodkin/store/place.h"

enum {
    APPLICATION = 0x426F646B, // "Bodk", as schema/001-workroom.sql sets it
    JOURNAL_TRIES = 5         // of programs that make the same store at the same moment
};

static char *copy_of(const char *text)
{
    if (text == NULL)
        return NULL;
    char *copy = bk_alloc(strlen(text) + 1);
    return strcpy(copy, text);
}

static bk_status refuse_foreign(const char *path, bk_error *error)
{
    return bk_fail(error, BK_STORE, "%s is no workroom of Bodkin's. Name another file with --store.", path);
}

// Makes the file where it is missing and may be made.
static bk_status make_file(const bk_store_options *options, bk_error *error)
{
    bool made = false;
    switch (bk_place_look(options->path)) {
    case BK_PLACE_EMPTY:
    case BK_PLACE_FILE:
        return BK_OK;
    case BK_PLACE_OTHER:
        return refuse_foreign(options->path, error);
    case BK_PLACE_NONE:
        break;
    }
    if (!options->create)
        return bk_fail(error, BK_STORE,
                       "There is no workroom at %s. \"bodkin import DIR\" makes one from a folder of sheets.",
                       options->path);
    bk_status status = bk_place_make_folders(options->path, error);
    return status == BK_OK ? bk_place_make(options->path, &made, error) : status;
}

// What a file says of itself, all of it at one moment.
typedef struct marks {
    int64_t application, version, tables;
} marks;

static bk_status read_marks(bk_db *db, marks *found, bk_error *error)
{
    bk_status status = bk_db_run(db, BK_SQL_BEGIN_READING, error);
    if (status == BK_OK)
        status = bk_db_number(db, BK_SQL_GET_APPLICATION, &found->application, error);
    if (status == BK_OK)
        status = bk_db_number(db, BK_SQL_GET_SCHEMA_VERSION, &found->version, error);
    if (status == BK_OK && found->version == 0)
        status = bk_db_number(db, BK_SQL_GET_TABLE_COUNT, &found->tables, error);
    bk_db_roll_back(db);
    return status;
}

// Finds out whether the file is ours; `*version` is 0 for a new one.
static bk_status identify(bk_db *db, const bk_store_options *options, int64_t *version, bk_error *error)
{
    marks found = {0};
    bk_status status = read_marks(db, &found, error);
    if (status != BK_OK)
        return status;
    *version = found.version;
    if (found.application == APPLICATION && found.version > bk_migration_count)
        return bk_fail(error, BK_STORE, "The workroom %s was written by a newer Bodkin. Use that one.",
                       options->path);
    if (found.application == APPLICATION && found.version > 0)
        return BK_OK;
    if (found.application == 0 && found.version == 0 && found.tables == 0 && !options->create)
        return bk_fail(error, BK_STORE,
                       "The workroom %s is empty: its making was cut off. Import a production to begin it.",
                       options->path);
    if (found.application != 0 || found.version != 0 || found.tables > 0 || !options->create)
        return refuse_foreign(options->path, error);
    return bk_place_keep_private(options->path, error);
}

static bk_status ask_journal(bk_db *db, bk_sql sql, bool *granted, bk_error *error)
{
    *granted = false;
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, db, sql, error);
    if (status != BK_OK)
        return status;
    bool row = false;
    size_t length = 0;
    status = bk_query_row(query, &row, error);
    if (status == BK_OK && row)
        *granted = strcmp(bk_query_text(query, 0, &length), "wal") == 0;
    bk_query_end(query);
    return status;
}

// Waits until nobody else writes; false where that takes too long.
static bool wait_for_others(bk_db *db)
{
    if (bk_db_run(db, BK_SQL_BEGIN_ALONE, NULL) != BK_OK)
        return false;
    bk_db_roll_back(db);
    return true;
}

// Several programs may make the same store at one moment: then only one of them is allowed to change its
// journal, and the others find it changed.
static bk_status secure_journal(bk_db *db, const bk_store_options *options, bk_error *error)
{
    bool granted = false;
    bk_status status = ask_journal(db, BK_SQL_GET_JOURNAL, &granted, error);
    for (int i = 0; i < JOURNAL_TRIES && !granted && options->as == BK_AS_MAKER; i++) {
        if (i > 0 && !wait_for_others(db))
            break;
        status = ask_journal(db, BK_SQL_SET_JOURNAL, &granted, error);
    }
    if (status == BK_OK && !granted)
        status = bk_fail(error, BK_STORE,
                         "The workroom %s cannot be shared safely where it lies (no write-ahead log is "
                         "granted there). Put it on a disk of this computer.",
                         options->path);
    return status;
}

static bk_status bring_up_to_date(bk_db *db, const bk_store_options *options, int64_t version,
                                  bk_error *error)
{
    if (version == bk_migration_count)
        return BK_OK;
    if (options->as != BK_AS_MAKER)
        return bk_fail(error, BK_STORE,
                       "The workroom %s is of an older version: let the maker open it first.", options->path);
    return bk_store_migrate(db, options->path, bk_migrations, bk_migration_count, error);
}

static bk_status prepare(bk_db *db, const bk_store_options *options, bk_error *error)
{
    int64_t version = 0;
    bk_status status = identify(db, options, &version, error);
    if (status == BK_OK)
        status = secure_journal(db, options, error);
    if (status == BK_OK)
        status = bk_db_script(db, bk_statements[BK_SQL_SET_HABITS].text, NULL, NULL, error);
    if (status == BK_OK)
        status = bring_up_to_date(db, options, version, error);
    if (status == BK_OK)
        bk_db_permit(db, options->as);
    return status;
}

bk_status bk_store_open(bk_store **store, const bk_store_options *options, bk_error *error)
{
    bk_db *db = NULL;
    bk_status status = make_file(options, error);
    if (status == BK_OK)
        status = bk_db_open(&db, options->path, error);
    if (status == BK_OK)
        status = prepare(db, options, error);
    if (status != BK_OK) {
        bk_db_close(db);
        return status;
    }
    bk_store *opened = bk_alloc_clear(1, sizeof *opened);
    opened->db = db;
    opened->path = copy_of(options->path);
    opened->who = copy_of(options->who);
    opened->terminal = copy_of(options->terminal);
    opened->as = options->as;
    *store = opened;
    return BK_OK;
}

void bk_store_close(bk_store *store)
{
    if (store == NULL)
        return;
    bk_store_change_drop(store);
    bk_db_close(store->db);
    free(store->path);
    free(store->who);
    free(store->terminal);
    free(store);
}

bk_status bk_store_version(bk_store *store, int64_t *version, bk_error *error)
{
    return bk_db_number(store->db, BK_SQL_GET_DATA_VERSION, version, error);
}

bk_status bk_store_read_begin(bk_store *store, bk_error *error)
{
    return bk_db_run(store->db, BK_SQL_BEGIN_READING, error);
}

void bk_store_read_end(bk_store *store)
{
    bk_db_roll_back(store->db);
}

bk_status bk_store_backup(bk_store *store, const char *path, bk_error *error)
{
    bool made = false;
    if (store->as != BK_AS_MAKER)
        return bk_fail(error, BK_REFUSED,
                       "A backup holds what is for the maker alone: let the maker make it.");
    if (bk_place_make(path, &made, error) != BK_OK) {
        error->status = BK_REFUSED; // the store is well, the place for the copy is not
        return BK_REFUSED;
    }
    if (!made)
        return bk_fail(error, BK_REFUSED, "There is a file %s already: a backup is never written over one.",
                       path);
    bk_status status = bk_db_copy(store->db, path, error);
    if (status != BK_OK)
        unlink(path);
    return status;
}
