#include "bodkin/ui/screens.h"

#include <stdlib.h>
#include <unistd.h>

#include "bodkin/cmd/command.h"
#include "bodkin/cmd/surroundings.h"

static bk_day clock_today(void *self)
{
    return bk_call_today(self);
}

/// The descriptor that wants to know when the screen is painted (for tests that wait for it), or -1.
static int idle_descriptor(void)
{
    enum { DECIMAL = 10, MOST = 1 << 16 };
    const char *text = getenv("BODKIN_IDLE_FD");
    char *end;
    if (!text || !*text) {
        return -1;
    }
    long number = strtol(text, &end, DECIMAL);
    return *end || number < 0 || number > MOST ? -1 : (int)number;
}

bk_status bk_screens_command(const bk_call *call, bk_error *error)
{
    if (!isatty(STDIN_FILENO) || !isatty(STDOUT_FILENO)) {
        return bk_fail(error, BK_USAGE, "The screens need a terminal; to print the rail, use: bodkin rail");
    }
    bk_store *store;
    bk_status status = bk_call_open(call, true, &store, error);
    if (status) {
        return status;
    }
    bk_call own = *call;
    bk_screens_options options = {
        .store = store,
        .production = call->production,
        .clock = {clock_today, &own},
        .idle_fd = idle_descriptor(),
    };
    status = bk_screens_run(&options, error);
    bk_store_close(store);
    return status;
}
