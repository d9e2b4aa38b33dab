#ifndef BODKIN_UI_RECKONING_H
#define BODKIN_UI_RECKONING_H

#include "bodkin/work/forecast.h"

/// The reckoning of the forecast in the background: a thread with a connection of its own to the store, so that no key waits
/// for it. All functions are for the thread of the screens.

typedef struct bk_reckoning bk_reckoning;

typedef struct bk_reckoning_options {
    const char *store_path; ///< these as bk_store_options
    bk_as as;
    uint64_t seed;
    int64_t tries; ///< see bk_effort_usual
} bk_reckoning_options;

/// Makes one that has nothing to do yet; copies the options. Never NULL. bk_reckoning_end stops what is under way, waits for the
/// thread (it looks at least every few milliseconds) and frees all; NULL is allowed.
bk_reckoning *bk_reckoning_begin(const bk_reckoning_options *options);
void bk_reckoning_end(bk_reckoning *reckoning);

/// Asks for the forecast of the store as it is now, for that day, with suppositions (copied; may be none). What is under way for an
/// earlier question is stopped. Where there is no answer yet a first one comes at once (one schedule, no odds), then the settled
/// one; an older answer stays until the new settled one comes. The thread starts at the first look after the first question.
void bk_reckoning_want(bk_reckoning *reckoning, bk_day today, const bk_supposition *suppositions,
                       size_t count);

/// Takes what has come since the last look; true where there is something new to show: another forecast, how far it is, or that
/// there is trouble.
bool bk_reckoning_look(bk_reckoning *reckoning);

/// The forecast taken last, its owner being the reckoning: good until the next look. NULL: none yet.
const bk_forecast *bk_reckoning_forecast(const bk_reckoning *reckoning);

/// How many forecasts were taken so far: another number means another forecast.
int64_t bk_reckoning_answers(const bk_reckoning *reckoning);

/// Whether that is the settled answer to the question asked last.
bool bk_reckoning_settled(const bk_reckoning *reckoning);

/// Whether it is at work, as far as the last look knows, and how far in thousandths.
bool bk_reckoning_busy(const bk_reckoning *reckoning);
int bk_reckoning_done(const bk_reckoning *reckoning);

/// Why there is no answer to the question asked last: a sentence; NULL: no trouble.
const char *bk_reckoning_trouble(const bk_reckoning *reckoning);

#endif
