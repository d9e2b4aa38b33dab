#include "bodkin/store/db.h"

#include <assert.h>
#include <limits.h>
#include <sqlite3.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/arena.h"
#include "bodkin/store/guards.h"

enum { BUSY_MILLISECONDS = 10000 };

struct bk_query {
    bk_db *db;
    sqlite3_stmt *statement;
    bk_guard guard;
};

struct bk_db {
    sqlite3 *connection;
    char *path;
    bk_as as;
    sqlite3_session *recording;
    bk_query queries[BK_SQL_COUNT];
};

// -------------------------------------------------------------------------------------------------- trouble

typedef struct known_trouble {
    int code;
    bk_status status;
    const char *before, *after; // the name of the file
} known_trouble;

static const known_trouble troubles[] = {
    {SQLITE_BUSY, BK_STORE, "The workroom ",
     " is busy: another program has not finished writing to it. Try again when it is done."},
    {SQLITE_NOTADB, BK_STORE, "", " is no workroom of Bodkin's: it is a file of another kind."},
    {SQLITE_CORRUPT, BK_STORE, "The workroom ",
     " is damaged. Put a copy of it aside and go back to a backup."},
    {SQLITE_FULL, BK_STORE, "No room is left on the disk of the workroom ",
     ": nothing was changed. Make room and try again."},
    {SQLITE_READONLY, BK_STORE, "The workroom ",
     " cannot be written to: the file or its folder is write-protected."},
    {SQLITE_CANTOPEN, BK_STORE, "The workroom ",
     " cannot be opened: you must be allowed to read and write both the file and the folder that it lies "
     "in."},
    {SQLITE_PERM, BK_STORE, "The workroom ", " cannot be opened: you are not allowed to."},
    {SQLITE_IOERR, BK_STORE, "The disk of the workroom ",
     " failed to read or write; find out whether it is sound."},
    {SQLITE_AUTH, BK_REFUSED, "That is for the maker alone: nothing of it was shown or changed in ", "."},
};

static bk_status fail(const bk_db *db, int code, bk_error *error)
{
    for (size_t i = 0; i < sizeof troubles / sizeof troubles[0]; i++) {
        const known_trouble *known = &troubles[i];
        if (known->code == (code & UCHAR_MAX))
            return bk_fail(error, known->status, "%s%s%s", known->before, db->path, known->after);
    }
    return bk_fail(error, BK_STORE, "The workroom %s could not be used: %s.", db->path,
                   sqlite3_errmsg(db->connection));
}

static bk_status judge(const bk_db *db, int code, bk_error *error)
{
    return code == SQLITE_OK ? BK_OK : fail(db, code, error);
}

// -------------------------------------------------------------------------------------- opening and closing

// SQLite takes some names for something else than a file (":memory:", "file:..."), none of which has a
// folder.
static char *plain_path(const char *path)
{
    size_t size = strlen(path) + sizeof "./";
    char *plain = bk_alloc(size);
    plain[0] = '\0';
    if (path[0] != '/')
        strcpy(plain, "./");
    return strcat(plain, path);
}

static int open_connection(const char *path, sqlite3 **connection)
{
    // Counting memory costs a lock at every allocation; refused, and harmlessly, once SQLite is in use.
    sqlite3_config(SQLITE_CONFIG_MEMSTATUS, 0);
    char *plain = plain_path(path);
    int code = sqlite3_open_v2(plain, connection, SQLITE_OPEN_READWRITE | SQLITE_OPEN_NOMUTEX, NULL);
    free(plain);
    if (code == SQLITE_OK)
        code = sqlite3_busy_timeout(*connection, BUSY_MILLISECONDS);
    return code;
}

bk_status bk_db_open(bk_db **db, const char *path, bk_error *error)
{
    bk_db *opened = bk_alloc_clear(1, sizeof *opened);
    opened->path = bk_alloc(strlen(path) + 1);
    strcpy(opened->path, path);
    int code = open_connection(path, &opened->connection);
    if (code == SQLITE_OK)
        code = sqlite3_db_config(opened->connection, SQLITE_DBCONFIG_DEFENSIVE, 1, NULL);
    if (code == SQLITE_OK)
        code = sqlite3_db_config(opened->connection, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, NULL);
    if (code != SQLITE_OK) {
        bk_status status = fail(opened, code, error);
        bk_db_close(opened);
        return status;
    }
    *db = opened;
    return BK_OK;
}

static void guard_all_closed(const bk_db *db)
{
    for (size_t i = 0; i < BK_SQL_COUNT; i++)
        bk_guard_closed(&db->queries[i].guard);
}

void bk_db_close(bk_db *db)
{
    if (db == NULL)
        return;
    guard_all_closed(db);
    bk_db_record_end(db);
    for (size_t i = 0; i < BK_SQL_COUNT; i++)
        sqlite3_finalize(db->queries[i].statement);
    int code = sqlite3_close(db->connection);
    assert(code == SQLITE_OK);
    (void)code;
    free(db->path);
    free(db);
}

typedef struct action_doing {
    int action;
    bk_doing doing;
} action_doing;

// What SQLite asks leave for, in our terms; all that is not listed is BK_DOING_OTHER.
static const action_doing doings[] = {
    {SQLITE_READ, BK_DOING_READ},          {SQLITE_INSERT, BK_DOING_INSERT},
    {SQLITE_UPDATE, BK_DOING_UPDATE},      {SQLITE_DELETE, BK_DOING_DELETE},
    {SQLITE_PRAGMA, BK_DOING_ASK},         {SQLITE_SELECT, BK_DOING_ORDINARY},
    {SQLITE_FUNCTION, BK_DOING_ORDINARY},  {SQLITE_TRANSACTION, BK_DOING_ORDINARY},
    {SQLITE_SAVEPOINT, BK_DOING_ORDINARY}, {SQLITE_RECURSIVE, BK_DOING_ORDINARY},
};

static int authorize(void *context, int action, const char *table, const char *column, const char *database,
                     const char *trigger)
{
    (void)database;
    (void)trigger;
    const bk_db *db = context;
    bk_doing asked = BK_DOING_OTHER;
    for (size_t i = 0; i < sizeof doings / sizeof doings[0]; i++) {
        if (doings[i].action == action)
            asked = doings[i].doing;
    }
    return bk_rights_allow(db->as, asked, table, column) ? SQLITE_OK : SQLITE_DENY;
}

void bk_db_permit(bk_db *db, bk_as as)
{
    db->as = as;
    sqlite3_set_authorizer(db->connection, authorize, db);
}

// ----------------------------------------------------------------------------------------------- statements

bk_status bk_query_begin(bk_query **query, bk_db *db, bk_sql sql, bk_error *error)
{
    bk_query *begun = &db->queries[sql];
    if (begun->statement == NULL) {
        int code = sqlite3_prepare_v3(db->connection, bk_statements[sql].text, -1, SQLITE_PREPARE_PERSISTENT,
                                      &begun->statement, NULL);
        if (code != SQLITE_OK)
            return fail(db, code, error);
        begun->db = db;
    }
    bk_guard_begin(&begun->guard, sql, sqlite3_bind_parameter_count(begun->statement),
                   sqlite3_column_count(begun->statement));
    *query = begun;
    return BK_OK;
}

void bk_query_give(bk_query *query, int parameter, int64_t number)
{
    bk_guard_given(&query->guard, parameter);
    sqlite3_bind_int64(query->statement, parameter, number);
}

void bk_query_give_text(bk_query *query, int parameter, const char *text)
{
    bk_guard_given(&query->guard, parameter);
    sqlite3_bind_text(query->statement, parameter, text, -1, SQLITE_STATIC);
}

void bk_query_give_copy(bk_query *query, int parameter, const char *text)
{
    bk_guard_given(&query->guard, parameter);
    sqlite3_bind_text(query->statement, parameter, text, -1, SQLITE_TRANSIENT);
}

void bk_query_give_bytes(bk_query *query, int parameter, const void *bytes, size_t size)
{
    bk_guard_given(&query->guard, parameter);
    sqlite3_bind_blob64(query->statement, parameter, bytes, size, SQLITE_STATIC);
}

void bk_query_give_nothing(bk_query *query, int parameter)
{
    bk_guard_given(&query->guard, parameter);
    sqlite3_bind_null(query->statement, parameter);
}

bk_status bk_query_row(bk_query *query, bool *row, bk_error *error)
{
    bk_guard_step(&query->guard);
    int code = sqlite3_step(query->statement);
    *row = code == SQLITE_ROW;
    bk_guard_row(&query->guard, *row);
    return code == SQLITE_ROW || code == SQLITE_DONE ? BK_OK : fail(query->db, code, error);
}

bk_status bk_query_run(bk_query *query, bk_error *error)
{
    bk_guard_step(&query->guard);
    int code = sqlite3_step(query->statement);
    if (code != SQLITE_ROW && code != SQLITE_DONE)
        return fail(query->db, code, error);
    return judge(query->db, sqlite3_reset(query->statement), error);
}

int64_t bk_query_number(bk_query *query, int column, int64_t nothing)
{
    bk_guard_asked(&query->guard, column);
    int64_t number = sqlite3_column_int64(query->statement, column); // 0 where the column is NULL
    if (number == 0 && sqlite3_column_type(query->statement, column) == SQLITE_NULL)
        return nothing;
    return number;
}

const char *bk_query_text(bk_query *query, int column, size_t *length)
{
    bk_guard_asked(&query->guard, column);
    const char *text = (const char *)sqlite3_column_text(query->statement, column);
    *length = text == NULL ? 0 : (size_t)sqlite3_column_bytes(query->statement, column);
    return text;
}

const void *bk_query_bytes(bk_query *query, int column, size_t *length)
{
    bk_guard_asked(&query->guard, column);
    const void *bytes = sqlite3_column_blob(query->statement, column);
    *length = (size_t)sqlite3_column_bytes(query->statement, column);
    return bytes;
}

void bk_query_end(bk_query *query)
{
    bk_guard_end(&query->guard);
    sqlite3_reset(query->statement);
    sqlite3_clear_bindings(query->statement);
}

typedef struct row_taker {
    bk_db_take_row *take;
    void *context;
} row_taker;

static int take_row(void *context, int columns, char **values, char **names)
{
    (void)names;
    const row_taker *taker = context;
    if (taker->take != NULL)
        taker->take(taker->context, columns, (const char *const *)values);
    return 0;
}

bk_status bk_db_script(bk_db *db, const char *text, bk_db_take_row *take, void *context, bk_error *error)
{
    row_taker taker = {take, context};
    return judge(db, sqlite3_exec(db->connection, text, take_row, &taker, NULL), error);
}

bk_status bk_db_run(bk_db *db, bk_sql sql, bk_error *error)
{
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, db, sql, error);
    if (status != BK_OK)
        return status;
    status = bk_query_run(query, error);
    bk_query_end(query);
    return status;
}

bk_status bk_db_number(bk_db *db, bk_sql sql, int64_t *number, bk_error *error)
{
    *number = 0;
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, db, sql, error);
    if (status != BK_OK)
        return status;
    bool row = false;
    status = bk_query_row(query, &row, error);
    if (status == BK_OK && row)
        *number = bk_query_number(query, 0, 0);
    bk_query_end(query);
    return status;
}

bk_status bk_db_commit(bk_db *db, bk_error *error)
{
    guard_all_closed(db);
    return bk_db_run(db, BK_SQL_COMMIT_ALL, error);
}

void bk_db_roll_back(bk_db *db)
{
    guard_all_closed(db);
    if (sqlite3_get_autocommit(db->connection) == 0 && bk_db_run(db, BK_SQL_ROLL_BACK, NULL) != BK_OK)
        return; // SQLite has done it already, or does when the file is closed
}

int64_t bk_db_added(const bk_db *db)
{
    return sqlite3_last_insert_rowid(db->connection);
}

int64_t bk_db_touched(const bk_db *db)
{
    return sqlite3_changes(db->connection);
}

// ----------------------------------------------------------------------------------------------- changesets

bk_status bk_db_record(bk_db *db, const char *const *tables, bk_error *error)
{
    assert(db->recording == NULL);
    int code = sqlite3session_create(db->connection, "main", &db->recording);
    for (size_t i = 0; code == SQLITE_OK && tables[i] != NULL; i++)
        code = sqlite3session_attach(db->recording, tables[i]);
    if (code == SQLITE_OK)
        return BK_OK;
    bk_db_record_end(db);
    return fail(db, code, error);
}

void bk_db_record_end(bk_db *db)
{
    if (db->recording != NULL)
        sqlite3session_delete(db->recording);
    db->recording = NULL;
}

// Bytes on their way between SQLite and a sink or a source of ours.
typedef struct passage {
    bk_db_sink *sink;
    bk_db_source *source;
    void *context;
    const char *bytes; // got from the source and not yet handed on
    size_t size;
    const char *left; // a table that is not turned back; NULL: none
    bool conflict;
    bk_status status; // of the sink or the source
    bk_error *error;
} passage;

static int pass_out(void *context, const void *bytes, int size)
{
    passage *way = context;
    way->status = way->sink(way->context, bytes, (size_t)size, way->error);
    return way->status == BK_OK ? SQLITE_OK : SQLITE_ABORT;
}

bk_status bk_db_changeset(bk_db *db, bk_db_sink *sink, void *context, bk_error *error)
{
    assert(db->recording != NULL);
    passage way = {.sink = sink, .context = context, .error = error};
    int code = sqlite3session_changeset_strm(db->recording, pass_out, &way);
    return way.status != BK_OK ? way.status : judge(db, code, error);
}

static int pass_in(void *context, void *bytes, int *size)
{
    passage *way = context;
    if (way->size == 0) {
        const void *fresh = NULL;
        way->status = way->source(way->context, &fresh, &way->size, way->error);
        way->bytes = fresh;
    }
    if (way->status != BK_OK)
        return SQLITE_ABORT;
    size_t part = way->size < (size_t)*size ? way->size : (size_t)*size;
    if (part > 0) {
        memcpy(bytes, way->bytes, part);
        way->bytes += part;
        way->size -= part;
    }
    *size = (int)part;
    return SQLITE_OK;
}

static int refuse_conflict(void *context, int kind, sqlite3_changeset_iter *change)
{
    (void)kind;
    (void)change;
    passage *way = context;
    way->conflict = true;
    return SQLITE_CHANGESET_ABORT;
}

static int is_turned(void *context, const char *table)
{
    const passage *way = context;
    return way->left == NULL || strcmp(table, way->left) != 0;
}

bk_status bk_db_turn_back(bk_db *db, bk_db_source *source, void *context, const char *left, bool *conflict,
                          bk_error *error)
{
    passage way = {.source = source, .context = context, .left = left, .error = error};
    int code = sqlite3changeset_apply_v2_strm(db->connection, pass_in, &way, is_turned, refuse_conflict, &way,
                                              NULL, NULL, SQLITE_CHANGESETAPPLY_INVERT);
    *conflict = way.conflict;
    if (way.status != BK_OK || way.conflict)
        return way.status;
    return judge(db, code, error);
}

// -------------------------------------------------------------------------------------------------- copying

static int copy_all(sqlite3 *from, sqlite3 *to)
{
    sqlite3_backup *copy = sqlite3_backup_init(to, "main", from, "main");
    if (copy == NULL)
        return sqlite3_errcode(to);
    int stepped = sqlite3_backup_step(copy, -1);
    int finished = sqlite3_backup_finish(copy);
    return stepped == SQLITE_DONE ? finished : stepped;
}

bk_status bk_db_copy(bk_db *db, const char *path, bk_error *error)
{
    bk_db *copy = NULL;
    bk_status status = bk_db_open(&copy, path, error);
    if (status != BK_OK)
        return status;
    int code = copy_all(db->connection, copy->connection);
    status = judge(copy, code, error);
    bk_db_close(copy);
    return status;
}
