#ifndef BODKIN_UI_SCREENS_H
#define BODKIN_UI_SCREENS_H

#include "bodkin/store/store.h"

/// The full-screen program.

enum { BK_MADE_AT_ROOM = 32 };

typedef struct bk_clock {
    bk_day (*today)(void *self); ///< asked anew while the program runs
    /// Writes the moment for the daybook, see bk_store_change_commit.
    void (*now)(void *self, char out[BK_MADE_AT_ROOM]);
    void *self;
} bk_clock;

typedef struct bk_screens_options {
    bk_store *store;        ///< open; stays the caller's
    const char *production; ///< name, or NULL: the usual choice
    const char *who;        ///< the person at this terminal; stays the caller's
    bk_clock clock;
    const char *
        store_path; ///< of its file, for the connection that the reckoning makes of its own; stays the caller's
    bk_as as;       ///< of that connection
    uint64_t seed; ///< of the reckoning, see bk_effort_usual
    int64_t tries; ///< likewise; below 0: the usual
    int idle_fd; ///< a byte is written there each time everything is reckoned and painted and a key is waited for; -1: none
} bk_screens_options;

/// Whether this terminal can show the screens; to be asked before a store is made for them.
bk_status bk_screens_possible(bk_error *error) BK_MUST_USE;

/// Runs the screens until the person leaves. Errors: no terminal, a terminal that cannot be driven, trouble with the
/// store.
bk_status bk_screens_run(const bk_screens_options *options, bk_error *error) BK_MUST_USE;

#endif
