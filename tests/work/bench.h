#ifndef BODKIN_TESTS_WORK_BENCH_H
#define BODKIN_TESTS_WORK_BENCH_H

#include "bodkin/work/job.h"
#include "work/show.h"

/// "The Fish Fair", for tests of what is done at the bench. Ines Varga plays the Miller and Tomas Lind the Boy; nobody plays
/// the Crow.
///
///     costume  4A, 4B (the Miller), 5A (the Boy), 6A (the Crow)
///     4A-1     worn with 4A and 4B: cut (done on 20 Feb), toile (fit, 30 min), sew, 4B due on 20 Mar
///     4A-2     worn with 4A: cut, fit (20 min, after cut), hem
///     5A-1     fit (40 min)
///     6A-1     fit (10 min)
///     wool     5 m counted, 8.90 GBP a metre from "the mill": 1.2 for 4A-1/toile, 3 for 4A-2/cut
///     hooks    never counted: 12 for 4A-2/hem
///
/// It opens on 4 Jun; today is 2 Mar 2027, a Tuesday.
bk_store *bench_store(void);

/// A job of that production on 2 Mar at 9:30, by Ada.
bk_job bench_job(bk_store *store);
/// The same on another day, at 10:00.
bk_job bench_job_on(bk_store *store, bk_day day);

/// What the sqlite3 command says, as a number.
int64_t ask_id(const char *sql);
int64_t step_id(const char *piece, const char *key);
int64_t piece_id(const char *piece);
int64_t performer_id(const char *name);
int64_t material_id(const char *name);

/// The sentence of the newest entry of the daybook.
const char *newest_entry(void);

/// Undoes the newest entry, which must give the records `before`, and redoes it, which must give those of now.
void expect_undone(bk_store *store, const char *before);

#define AT(month, day, hour, minute) ((bk_moment){DAY(month, day), (hour)*60 + (minute)})
#define ON(month, day) ((bk_moment){DAY(month, day), BK_NO_TIME})

#endif
