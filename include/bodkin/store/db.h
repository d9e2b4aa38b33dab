#ifndef BODKIN_STORE_DB_H
#define BODKIN_STORE_DB_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "bodkin/base/error.h"
#include "bodkin/store/rights.h"
#include "bodkin/store/statements.h"

/// The gateway to SQLite: the one place that knows it. For the files of this floor only.

/// An open file, and a statement of it in use.
typedef struct bk_db bk_db;
typedef struct bk_query bk_query;

/// Opens the SQLite file at `path`, which must be there; nothing is read yet. `*db` is the caller's
/// (bk_db_close). Every call below waits up to ten seconds for a busy file. Errors of this file are BK_STORE
/// with a sentence that names the file, or BK_REFUSED where the rights forbid it.
bk_status bk_db_open(bk_db **db, const char *path, bk_error *error) BK_MUST_USE;
void bk_db_close(bk_db *db);

/// From here on every statement is prepared under the rights of `as`.
void bk_db_permit(bk_db *db, bk_as as);

/// Takes one row of a script: its columns as text, NULL where a column is.
typedef void bk_db_take_row(void *context, int columns, const char *const *values);
/// Runs all statements of a text, which have no parameters, and hands their rows to `take` (NULL: they are
/// passed over).
bk_status bk_db_script(bk_db *db, const char *text, bk_db_take_row *take, void *context, bk_error *error)
    BK_MUST_USE;
/// Runs a named statement without parameters and rows.
bk_status bk_db_run(bk_db *db, bk_sql sql, bk_error *error) BK_MUST_USE;
/// The first column of the first row of a named statement without parameters; 0 where there is no row.
bk_status bk_db_number(bk_db *db, bk_sql sql, int64_t *number, bk_error *error) BK_MUST_USE;
/// Ends the transaction; where committing fails it stays open.
bk_status bk_db_commit(bk_db *db, bk_error *error) BK_MUST_USE;
/// Takes everything back that the transaction did; harmless where none is open.
void bk_db_roll_back(bk_db *db);
/// The id of the row added last, and how many rows the last change touched.
int64_t bk_db_added(const bk_db *db);
int64_t bk_db_touched(const bk_db *db);

/// Begins the use of a named statement, kept prepared from one use to the next; not within a use of the same
/// one. Ended by bk_query_end. Parameters count from 1, columns from 0.
bk_status bk_query_begin(bk_query **query, bk_db *db, bk_sql sql, bk_error *error) BK_MUST_USE;
/// Parameters: a whole number, a text or bytes (kept by the caller until the end; NULL is nothing), a text
/// that is copied, nothing.
void bk_query_give(bk_query *query, int parameter, int64_t number);
void bk_query_give_text(bk_query *query, int parameter, const char *text);
void bk_query_give_copy(bk_query *query, int parameter, const char *text);
void bk_query_give_bytes(bk_query *query, int parameter, const void *bytes, size_t size);
void bk_query_give_nothing(bk_query *query, int parameter);
/// Goes to the next row; `*row` is false after the last. All parameters must have been given.
bk_status bk_query_row(bk_query *query, bool *row, bk_error *error) BK_MUST_USE;
/// Runs a statement that has no rows and makes it ready for other parameters.
bk_status bk_query_run(bk_query *query, bk_error *error) BK_MUST_USE;
/// A column of the row: a whole number (`nothing` where it is NULL), a text or bytes (NULL where it is; good
/// until the next row) with its length in bytes.
int64_t bk_query_number(bk_query *query, int column, int64_t nothing);
const char *bk_query_text(bk_query *query, int column, size_t *length);
const void *bk_query_bytes(bk_query *query, int column, size_t *length);
void bk_query_end(bk_query *query);

/// Takes bytes in turn; or hands them out: `*size` 0 is the end, the bytes are good until the next call.
typedef bk_status bk_db_sink(void *context, const void *bytes, size_t size, bk_error *error);
typedef bk_status bk_db_source(void *context, const void **bytes, size_t *size, bk_error *error);

/// Begins to record all changes of these tables (a list that ends with NULL), in whose order they stand in
/// the changeset; one recording at a time.
bk_status bk_db_record(bk_db *db, const char *const *tables, bk_error *error) BK_MUST_USE;
/// Hands the changeset recorded so far to `sink`, a few KiB at a time; `sink` may write to tables not
/// recorded.
bk_status bk_db_changeset(bk_db *db, bk_db_sink *sink, void *context, bk_error *error) BK_MUST_USE;
void bk_db_record_end(bk_db *db);

/// Applies the changeset that `source` hands out the other way round, all of it or nothing. `*conflict` tells
/// whether it was refused because something was changed since. The table `left` (NULL: none) is left as it is.
bk_status bk_db_turn_back(bk_db *db, bk_db_source *source, void *context, const char *left, bool *conflict,
                          bk_error *error) BK_MUST_USE;

/// Copies the whole file, in one state, over the empty file at `path`.
bk_status bk_db_copy(bk_db *db, const char *path, bk_error *error) BK_MUST_USE;

#endif
