#ifndef BODKIN_WORK_SUPPOSE_H
#define BODKIN_WORK_SUPPOSE_H

#include "bodkin/work/job.h"

/// What if: changes that are only supposed until they are kept.

typedef enum bk_supposing {
    BK_SUPPOSE_HELPER, ///< a helper comes on one day
    BK_SUPPOSE_DATE,   ///< a date of the production is another day
    BK_SUPPOSE_DUE,    ///< a costume is due on another day
    BK_SUPPOSE_DROP,   ///< a costume is dropped, with the pieces that are worn with nothing else
    BK_SUPPOSINGS
} bk_supposing;

typedef struct bk_supposition {
    bk_supposing what;
    const char *person;    ///< HELPER: the name; nobody in the workroom bears it
    unsigned skills;       ///< HELPER: bit 1 << bk_kind
    bk_day day;            ///< HELPER: when; DATE, DUE: the new day
    bk_stretch hours;      ///< HELPER
    int64_t production_id; ///< DATE
    int64_t date_id;       ///< DATE: the row of dates.csv; 0: the day of opening in production.csv
    int64_t costume_id;    ///< DUE, DROP
} bk_supposition;

/// Makes them real, as one change of the daybook: a helper becomes a person with hours on that day (one person where a name comes
/// several times, away on the days between), dates and due days are changed, costumes are taken away. The opening takes along what
/// a date says of it. `*sentence` NULL where all is so already and nothing was written. BK_REFUSED, with one sentence and nothing
/// changed, where one of them cannot be: the name is borne already, the date or the costume is gone.
bk_status bk_suppose_keep(const bk_job *job, const bk_supposition *suppositions, size_t count,
                          const char **sentence, bk_error *error) BK_MUST_USE;

#endif
