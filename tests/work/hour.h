#ifndef BODKIN_TESTS_WORK_HOUR_H
#define BODKIN_TESTS_WORK_HOUR_H

#include <stdbool.h>

#include "bodkin/work/job.h"

/// Changes at random, of every kind that the workroom knows, each made by the job that makes it for a person.

/// Where a row of changes begins; the same seed makes the same changes of the same store.
typedef struct hour {
    bk_job job;
    uint32_t dice;
    size_t names; ///< how many names were made up so far
} hour;

/// Tries one change; whether it was made. Refused it may be, and there may be nothing to change; any other failure ends the
/// test.
typedef bool hour_kind(hour *at);

/// The jobs that are done otherwise than by a form: bench work, fittings, materials, measures, notes, orders of work, imports.
extern hour_kind *const hour_jobs[];
extern const size_t hour_job_count;

/// How many kinds of changes there are.
size_t hour_kinds(void);

/// Tries one change of that kind, as above.
bool hour_change(hour *at, size_t kind);

/// Tries kinds at random until a change is made; which kind it was.
size_t hour_change_any(hour *at);

// Chance, for the kinds themselves.
uint32_t hour_dice(hour *at, uint32_t sides);
bool hour_heads(hour *at);
bk_day hour_day(hour *at);
bk_day hour_maybe_day(hour *at); ///< BK_NO_DAY half of the time
/// A name that nothing has yet, in the job's arena.
const char *hour_name(hour *at);
/// Any row of a family of the job's production or of the workroom, and its id; NULL and 0 where there is none.
void *hour_row(hour *at, bk_family family, size_t size);
int64_t hour_id(hour *at, bk_family family, size_t size);
#define ANY(at, family, type) hour_id((at), (family), sizeof(type))
/// Whether a job that ended so made a change.
bool hour_made(bk_status status, const char *sentence);

#endif
