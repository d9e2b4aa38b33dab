#ifndef BODKIN_UI_FITTING_LINES_H
#define BODKIN_UI_FITTING_LINES_H

#include "bodkin/ui/ledger.h"
#include "bodkin/work/fittings.h"

/// The lines of the Fittings screen.

/// What a line is about: a call, or what is to be booked of a performer, all or one step.
typedef struct bk_fitting_entry {
    const bk_fitting_call *call;
    const bk_fitting_to_book *group; ///< NULL: a call's
    const bk_fitting_wanted *wanted; ///< one step of the group; NULL: all of it
} bk_fitting_entry;

/// Pieces of a call that are gone through in one go; one more key goes on behind them.
enum { BK_FITTING_QUEUE = 32 };

/// What the screen remembers; what it was read lives in the ledger's arena.
typedef struct bk_fittings_view {
    bool by_performer;
    bk_fitting_list list;
    const bk_performer *performers; ///< of the company
    size_t performer_count;
    bk_fitting_entry *entries; ///< a line's argument is an index into these
    size_t entry_count;
    int64_t queue[BK_FITTING_QUEUE]; ///< fittings of one call whose forms are opened one after the other
    size_t queued, filled;           ///< how many there are, and how many of the forms were opened
    bool seeks;                      ///< the cursor goes to the next call that is to be recorded
    void (*open)(bk_screen *screen, int64_t fitting); ///< opens one of them
} bk_fittings_view;

enum { BK_FITTING_COLUMNS = 6 };
extern const bk_list_column bk_fitting_columns[BK_FITTING_COLUMNS];

/// Reads the fittings and fills the ledger (bk_ledger_kind); the view is its `own`.
bk_status bk_fitting_lines_fill(bk_screen *screen, bk_ledger *ledger, bk_error *error);

#endif
