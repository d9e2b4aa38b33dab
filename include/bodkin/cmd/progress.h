#ifndef BODKIN_CMD_PROGRESS_H
#define BODKIN_CMD_PROGRESS_H

#include <stdbool.h>
#include <stdint.h>
#include <time.h>

/// Long work of the command line: the line on the terminal that says how far it is, and the signals that stop it.

typedef struct bk_progress_line {
    struct timespec begun, told;
    bool on_terminal; ///< somebody sees it
    bool shown;
} bk_progress_line;

/// Begins the work: from now on SIGINT, SIGTERM and SIGHUP ask it to stop. A signal that was ignored stays so (nohup). A
/// second one ends the program at once.
bk_progress_line bk_progress_line_begin(void);

/// What a bk_progress tells, `self` being the line: false when the work was asked to stop; else it shows on stderr, once
/// the work takes longer than half a second, how far it is.
bool bk_progress_line_show(void *self, const char *what, int64_t done, int64_t all);

/// Call before what cannot be stopped any more: the line no longer says that it can. False when a stop was asked for.
bool bk_progress_line_last(bk_progress_line *line);

/// Takes the line off the terminal.
void bk_progress_line_clear(const bk_progress_line *line);

#endif
