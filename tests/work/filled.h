#ifndef BODKIN_TESTS_WORK_FILLED_H
#define BODKIN_TESTS_WORK_FILLED_H

#include "bodkin/work/record.h"
#include "work/show.h"

/// Records filled in as a form does it, in the store of the test's folder with "The Salt Road" in it.

#define MADE_AT "2027-03-02T09:30:00+01:00"

/// The store with "The Salt Road" taken in. Closed by the test.
bk_store *store_with_salt_road(void);

/// A job in that production, on the day of the imports.
bk_job job_in(bk_store *store);

/// The first number that a statement gives.
int64_t id_by(const char *sql);
/// The id of the record whose name is that, by its table and column: `id_of("piece", "name", "P2")`.
int64_t id_of(const char *table, const char *column, const char *name);

/// Reads a record that is there: `FILLED(bk_piece, piece, store, BK_PIECES, id)`.
#define FILLED(type, name, store, family, id) \
    type name; \
    read_filled((store), (family), (id), &name)
void read_filled(bk_store *store, bk_family family, int64_t id, void *record);

/// Saves a changed record that was read as `before`, or a new one (NULL); what came of it.
bk_record_saved save(bk_store *store, bk_family family, const void *before, const void *after);
/// The same where it is refused; the column that it is about, "-" for none. The sentence is in `trouble`.
const char *refused(bk_store *store, bk_family family, const void *before, const void *after);

/// Steps that nobody said anything about but this.
bk_step step_of(const char *piece, const char *key, const char *after);
bk_work_step work_step_of(const char *work, const char *key, const char *after);
/// The id of a step of the order of work "Smock".
int64_t smock_step(const char *key);

/// Takes a record away; the sentence.
const char *take_away(bk_store *store, bk_family family, int64_t id);
/// What goes with it, "-" for nothing.
const char *weigh(bk_store *store, bk_family family, int64_t id);
/// Moves it; the sentence, "-" where it stays.
const char *move(bk_store *store, bk_family family, int64_t id, int by);

/// Undoes the newest change.
void undo(bk_store *store);

/// What lies on the shelf, in words; "-" where it was never counted.
const char *on_shelf(bk_store *store, const char *name);

#endif
