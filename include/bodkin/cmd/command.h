#ifndef BODKIN_CMD_COMMAND_H
#define BODKIN_CMD_COMMAND_H

#include <stdbool.h>

#include "bodkin/store/store.h"

/// The command line: one table lists the subcommands, one the options.

/// What was asked, options read.
typedef struct bk_call {
    const char *store;      ///< file; never NULL
    const char *production; ///< NULL: the usual one
    const char *name;       ///< who I am, for the daybook
    bk_as as;
    bk_day pinned_today; ///< BK_NO_DAY: the computer's date
    bool json;
    bool replace;
    bool check;
    const char *by;         ///< who did it; NULL: who I am
    bk_day on;              ///< the day on which it was done; BK_NO_DAY: today
    int64_t took;           ///< minutes; BK_NOT_KNOWN: not told
    const char *over;       ///< what was worn while measured; NULL: not told
    const char *performer;  ///< who is fitted; NULL: who plays the role
    int64_t minutes;        ///< of a call, or that somebody has; BK_NOT_KNOWN: not told
    const char *from;       ///< where a note comes from; NULL: not told
    const char *who;        ///< whose note it is; NULL: not told
    const char *about;      ///< what a note is about; NULL: nothing
    const char *person;     ///< whose bench it is; NULL: not told
    uint64_t seed;          ///< of the reckoning of days and odds
    int64_t tries;          ///< likewise, see bk_effort_usual; below 0: the usual
    char *const *arguments; ///< behind the subcommand
    int argument_count;
} bk_call;

/// Options that only some subcommands take.
enum {
    BK_OPTION_JSON = 1,
    BK_OPTION_REPLACE = 2,
    BK_OPTION_TOOK = 4,
    BK_OPTION_BY = 8,
    BK_OPTION_ON = 16,
    BK_OPTION_CHECK = 32,
    BK_OPTION_OVER = 64,
    BK_OPTION_PERFORMER = 128,
    BK_OPTION_MINUTES = 256,
    BK_OPTION_FROM = 512,
    BK_OPTION_WHO = 1024,
    BK_OPTION_ABOUT = 2048, ///< with BK_OPTION_ON: it names what something is about, not a day
    BK_OPTION_PERSON = 4096,
    BK_OPTION_SEED = 8192,
    BK_OPTION_TRIES = 16384
};

typedef struct bk_command {
    const char *name;
    const char *arguments; ///< as usage shows them: "DIR"
    const char *purpose;   ///< a line of --help
    const char *details;   ///< what `bodkin NAME --help` says besides
    int argument_count;    ///< exactly that many
    bool or_more;          ///< at least that many
    unsigned options;
    bk_status (*run)(const bk_call *call, bk_error *error);
} bk_command;

extern const bk_command bk_commands[];
extern const size_t bk_command_count;

/// Runs the program: reads the options, runs what they ask for, prints trouble to stderr. Returns the exit status.
int bk_command_line(int argc, char **argv);

bk_status bk_screens_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_rail_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_bench_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_import_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_export_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_tick_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_untick_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_undo_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_redo_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_daybook_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_book_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_count_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_note_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_measure_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_measures_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_check_command(const bk_call *call, bk_error *error) BK_MUST_USE;
bk_status bk_backup_command(const bk_call *call, bk_error *error) BK_MUST_USE;

#endif
