#include "bodkin/ui/screens.h"

#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include "bodkin/cmd/command.h"
#include "bodkin/cmd/surroundings.h"

static bk_day clock_today(void *self)
{
    return bk_call_today(self);
}

static void clock_now(void *self, char out[BK_MADE_AT_ROOM])
{
    (void)self;
    char now[BK_NOW_ROOM];
    snprintf(out, BK_MADE_AT_ROOM, "%s", bk_now(now));
}

/// The pipe that wants to know when the screen is painted (for tests that wait for it), or -1. Asked before any file is
/// opened, and only a pipe that came with the program counts: no byte may ever go into a file.
static int idle_pipe(void)
{
    enum { DECIMAL = 10, MOST = 1 << 16 };
    const char *text = getenv("BODKIN_IDLE_FD");
    char *end;
    struct stat kind;
    if (!text || !*text) {
        return -1;
    }
    long number = strtol(text, &end, DECIMAL);
    if (*end || number <= STDERR_FILENO || number > MOST || fstat((int)number, &kind) ||
        !S_ISFIFO(kind.st_mode)) {
        return -1;
    }
    return (int)number;
}

bk_status bk_screens_command(const bk_call *call, bk_error *error)
{
    if (!isatty(STDIN_FILENO) || !isatty(STDOUT_FILENO)) {
        return bk_fail(error, BK_USAGE, "The screens need a terminal; to print the rail, use: bodkin rail");
    }
    int idle_fd = idle_pipe();
    bk_store *store;
    bk_status status = bk_screens_possible(error);
    if (!status) {
        status = bk_call_open(call, !call->production, &store, error);
    }
    if (status) {
        return status;
    }
    bk_call own = *call;
    bk_screens_options options = {
        .store = store,
        .production = call->production,
        .who = call->name,
        .clock = {.today = clock_today, .now = clock_now, .self = &own},
        .store_path = call->store,
        .as = call->as,
        .seed = call->seed,
        .tries = call->tries,
        .idle_fd = idle_fd,
    };
    status = bk_screens_run(&options, error);
    bk_store_close(store);
    return status;
}
