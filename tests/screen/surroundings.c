#include "screen/surroundings.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "support/program.h"
#include "support/testing.h"

extern char **environ;

enum { NUMBER_ROOM = 16, OPTIONS_ROOM = 512 };

// The sanitizers' own handlers of fatal signals would end the program in another way than it does for a person.
static void set_sanitizers(const char *usual)
{
    char options[OPTIONS_ROOM];
    snprintf(options, sizeof options,
             "%s%shandle_segv=0:handle_abort=0:handle_sigbus=0:handle_sigfpe=0:handle_sigill=0",
             usual ? usual : "", usual ? ":" : "");
    setenv("ASAN_OPTIONS", options, 1);
}

void bk_set_surroundings(const bk_terminal_options *options, int idle)
{
    const char *sanitizers = getenv("ASAN_OPTIONS");
    char number[NUMBER_ROOM];
    static char *nothing[] = {NULL};
    char *kept = sanitizers ? strdup(sanitizers) : NULL;
    environ = nothing;
    set_sanitizers(kept);
    free(kept);
    snprintf(number, sizeof number, "%d", idle);
    setenv("BODKIN_IDLE_FD", number, 1);
    setenv("HOME", bk_test_folder(), 1);
    setenv("XDG_DATA_HOME", bk_test_folder(), 1);
    setenv("BODKIN_STORE", bk_program_store(), 1);
    setenv("BODKIN_TODAY", options->today ? options->today : "2027-03-02", 1);
    setenv("TERM", options->type ? options->type : "xterm-256color", 1);
    setenv("LC_ALL", options->locale ? options->locale : "C.UTF-8", 1);
    setenv("BODKIN_TRIES", options->tries ? options->tries : "20", 1);
    setenv("TZ", "UTC", 1);
    setenv("LINES", "30", 1); // as some shells do, and wrong
    setenv("COLUMNS", "90", 1);
    if (options->editor)
        setenv("EDITOR", options->editor, 1);
    if (options->no_colour)
        setenv("NO_COLOR", "1", 1);
}
