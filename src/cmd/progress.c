#include "bodkin/cmd/progress.h"

#include <signal.h>
#include <stdio.h>
#include <unistd.h>

static volatile sig_atomic_t stop_asked;

static const double patience = 0.5; // seconds before anything is shown
static const double pause_between = 0.1;

static void ask_to_stop(int signal_number)
{
    (void)signal_number;
    stop_asked = 1;
}

static void watch_for_stops(void)
{
    static const int stops[] = {SIGINT, SIGTERM, SIGHUP};
    struct sigaction stop = {.sa_handler = ask_to_stop, .sa_flags = (int)SA_RESETHAND};
    stop_asked = 0;
    for (size_t i = 0; i < sizeof stops / sizeof *stops; i++) {
        struct sigaction before;
        if (!sigaction(stops[i], NULL, &before) && before.sa_handler != SIG_IGN) {
            sigaction(stops[i], &stop, NULL);
        }
    }
}

static double seconds_since(const struct timespec *from)
{
    const double nanoseconds = 1e9;
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)(now.tv_sec - from->tv_sec) + (double)(now.tv_nsec - from->tv_nsec) / nanoseconds;
}

bk_progress_line bk_progress_line_begin(void)
{
    bk_progress_line line = {.on_terminal = isatty(STDERR_FILENO)};
    clock_gettime(CLOCK_MONOTONIC, &line.begun);
    watch_for_stops();
    return line;
}

bool bk_progress_line_show(void *self, const char *what, int64_t done, int64_t all)
{
    enum { PERCENT = 100 };
    bk_progress_line *line = self;
    if (stop_asked) {
        return false;
    }
    if (!line->on_terminal || seconds_since(&line->begun) < patience ||
        seconds_since(&line->told) < pause_between) {
        return true;
    }
    clock_gettime(CLOCK_MONOTONIC, &line->told);
    line->shown = true;
    fprintf(stderr, "\r%-20s %3d %%   Ctrl-C stops", what, all ? (int)(done * PERCENT / all) : 0);
    fflush(stderr);
    return true;
}

bool bk_progress_line_last(bk_progress_line *line)
{
    if (line->on_terminal && (line->shown || seconds_since(&line->begun) >= patience)) {
        bk_progress_line_clear(line);
        line->shown = true;
        fprintf(stderr, "\rwriting ...");
        fflush(stderr);
    }
    return !stop_asked;
}

void bk_progress_line_clear(const bk_progress_line *line)
{
    enum { LINE_COLUMNS = 60 };
    if (line->shown) {
        fprintf(stderr, "\r%*s\r", LINE_COLUMNS, "");
    }
}
