#ifndef BODKIN_TESTS_STORE_WORKROOM_H
#define BODKIN_TESTS_STORE_WORKROOM_H

#include "bodkin/store/inside.h"
#include "bodkin/store/store.h"

#include "support/testing.h"

/// What went wrong in the last call of MUST or REFUSED.
extern bk_error trouble;

/// The call succeeds, or the test ends with its sentence.
#define MUST(call) ck_assert_msg((call) == BK_OK, "%s", trouble.text)

/// The call fails with that status and a sentence that holds `words`.
#define REFUSED(call, expected, words) \
    do { \
        ck_assert_int_eq((call), (expected)); \
        ck_assert_int_eq(trouble.status, (expected)); \
        ck_assert_msg(strstr(trouble.text, (words)) != NULL, "\"%s\" lacks \"%s\"", trouble.text, (words)); \
    } while (0)

#define MADE_AT "2027-03-02T09:30:00+01:00"

/// Opens the store `workroom.db` of the test's folder, making it where it is missing. Closed by the test.
bk_store *open_workroom(void);
bk_store *open_workroom_as(bk_as as);

/// Adds one record of each family, every field of it filled, within a change of the caller's; ids as in
/// `ids`.
typedef struct record_ids {
    int64_t production, date, performer, other_performer, person, away, role, costume, piece, first_step,
        second_step, material, order, movement, need, fitting, measure_name, sheet, work, work_step, note,
        running, setting, equipment;
} record_ids;
record_ids add_one_of_each(bk_store *store);

/// The same without what the second version of the store brought, and what the fourth did.
record_ids add_one_of_each_of_version_one(bk_store *store);
record_ids add_one_of_each_of_version_three(bk_store *store);

/// Takes the orders of work away that come with a new store.
void clear_works(bk_store *store);

/// The same in a change of its own; the id of its entry.
int64_t import_one_of_each(bk_store *store, record_ids *ids);

/// Runs SQL of a test's own on the store, outside all that the store does by itself.
void run_sql(bk_store *store, const char *sql);
/// The first column of the first row as a number.
int64_t ask_number(bk_store *store, const char *sql);

/// All rows, a line each with `|` between the columns; in `arena`.
const char *ask_lines(bk_store *store, const char *sql, bk_arena *arena);

/// All recorded tables, row by row, as text; in `arena`.
const char *dump(bk_store *store, bk_arena *arena);

#endif
