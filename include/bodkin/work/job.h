#ifndef BODKIN_WORK_JOB_H
#define BODKIN_WORK_JOB_H

#include "bodkin/store/store.h"

/// What every job takes that changes something: where, when and for whom.
typedef struct bk_job {
    bk_store *store;
    int64_t production; ///< the production at hand (its id); 0: none
    bk_day today;
    const char *made_at; ///< the moment for the daybook, see bk_store_change_commit
    const char *who;     ///< the person at this terminal
    bk_arena *arena;     ///< what is given back lives there
} bk_job;

#endif
