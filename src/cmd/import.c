#include "bodkin/work/import.h"

#include <signal.h>
#include <stdio.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#include "bodkin/cmd/command.h"
#include "bodkin/cmd/surroundings.h"
#include "bodkin/sheet/folder_sheets.h"

// Importing: the folder is read and checked first, within the change that takes it in, so that what it is checked
// against cannot move; a store that is not there yet is made only for a folder without faults.

// ------------------------------------------------------------------------------------------------- progress

static volatile sig_atomic_t stop_asked;

static void ask_to_stop(int signal_number)
{
    (void)signal_number;
    stop_asked = 1;
}

/// A signal that is ignored stays so (nohup). A second one ends the program at once; the store takes back by itself what
/// was not committed.
static void watch_for_stops(void)
{
    static const int stops[] = {SIGINT, SIGTERM, SIGHUP};
    struct sigaction stop = {.sa_handler = ask_to_stop, .sa_flags = (int)SA_RESETHAND};
    for (size_t i = 0; i < sizeof stops / sizeof *stops; i++) {
        struct sigaction before;
        if (!sigaction(stops[i], NULL, &before) && before.sa_handler != SIG_IGN) {
            sigaction(stops[i], &stop, NULL);
        }
    }
}

typedef struct progress_line {
    struct timespec begun, told;
    bool on_terminal; ///< somebody sees it
    bool shown;
} progress_line;

static double seconds_since(const struct timespec *from)
{
    const double nanoseconds = 1e9;
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)(now.tv_sec - from->tv_sec) + (double)(now.tv_nsec - from->tv_nsec) / nanoseconds;
}

/// Stops the import when asked to; else shows how far it is on the terminal, once it takes longer than half a second.
static bool show_progress(void *self, const char *what, int64_t done, int64_t all)
{
    static const double patience = 0.5;
    static const double pause = 0.1;
    enum { PERCENT = 100 };
    progress_line *line = self;
    if (stop_asked) {
        return false;
    }
    if (!line->on_terminal || seconds_since(&line->begun) < patience || seconds_since(&line->told) < pause) {
        return true;
    }
    clock_gettime(CLOCK_MONOTONIC, &line->told);
    line->shown = true;
    fprintf(stderr, "\r%-20s %3d %%   Ctrl-C stops", what, all ? (int)(done * PERCENT / all) : 0);
    fflush(stderr);
    return true;
}

static void clear_progress(const progress_line *line)
{
    enum { LINE_COLUMNS = 60 };
    if (line->shown) {
        fprintf(stderr, "\r%*s\r", LINE_COLUMNS, "");
    }
}

// --------------------------------------------------------------------------------------------------- report

static void print_faults(bk_faults *faults, bk_arena *arena)
{
    bool ascii = bk_ascii_only();
    size_t count = bk_faults_count(faults);
    size_t told = count < BK_FAULTS_TOLD ? count : BK_FAULTS_TOLD;
    for (size_t i = 0; i < told; i++) {
        fprintf(stderr, "%s\n", bk_text_safe(arena, bk_faults_text(faults, i), ascii));
    }
    if (count > told) {
        fprintf(stderr, "... and %zu more.\n", count - told);
    }
}

static bk_status print_report(const bk_import_report *report, bk_arena *arena, bk_error *error)
{
    bool ascii = bk_ascii_only();
    bk_buffer text = {0};
    bk_buffer_print(&text, "%s.\n", bk_text_safe(arena, report->sentence, ascii));
    if (report->replaced_count) {
        bk_buffer_text(&text, "Replaced in the workroom:\n");
    }
    for (size_t i = 0; i < report->replaced_count; i++) {
        bk_buffer_print(&text, "  %s\n", bk_text_safe(arena, report->replaced[i], ascii));
    }
    bk_status status = bk_print_out(&text, error);
    bk_buffer_free(&text);
    return status ? bk_fail(error, status, "The import is done, but could not be reported: %s", error->text)
                  : BK_OK;
}

// ---------------------------------------------------------------------------------------------------- import

typedef struct import_run {
    const bk_call *call;
    bk_store *store; ///< NULL until there is one
    bk_folder *folder;
    bk_faults *faults;
    bk_arena *arena;
    bk_progress progress;
    bk_import_report report;
} import_run;

/// Whether there is a store already; a file without a byte is not one yet.
static bool is_there(const char *path)
{
    struct stat file;
    return !stat(path, &file) && (!S_ISREG(file.st_mode) || file.st_size > 0);
}

static bk_status begin(import_run *run, bk_error *error)
{
    bk_status status = bk_call_open(run->call, true, &run->store, error);
    return status ? status : bk_store_change_begin(run->store, error);
}

static bk_status read_folder(import_run *run, bk_error *error)
{
    bk_known *known = NULL;
    bk_status status = run->store ? bk_import_known(run->store, &known, error) : BK_OK;
    if (!status) {
        status =
            bk_folder_read(run->call->arguments[0], known, run->folder, run->faults, &run->progress, error);
    }
    bk_known_free(known);
    return status;
}

static bk_status take_in(import_run *run, bk_error *error)
{
    bool there = is_there(run->call->store);
    bk_status status = there ? begin(run, error) : BK_OK;
    if (!status) {
        status = read_folder(run, error);
    }
    if (!status && !there) {
        status = begin(run, error);
    }
    bk_import_options options = {
        .replace = run->call->replace,
        .today = bk_call_today(run->call),
        .progress = &run->progress,
    };
    if (!status) {
        status = bk_import_folder(run->store, run->folder, &options, run->arena, &run->report, error);
    }
    char now[BK_NOW_ROOM];
    return status ? status
                  : bk_store_change_commit(run->store, bk_now(now), run->report.sentence, NULL, error);
}

bk_status bk_import_command(const bk_call *call, bk_error *error)
{
    progress_line line = {0};
    clock_gettime(CLOCK_MONOTONIC, &line.begun);
    line.on_terminal = isatty(STDERR_FILENO);
    watch_for_stops();
    if (call->as != BK_AS_MAKER) {
        return bk_fail(error, BK_REFUSED, "Only the maker imports; leave out --as.");
    }
    import_run run = {
        .call = call,
        .folder = bk_folder_new(),
        .faults = bk_faults_new(),
        .arena = bk_arena_new(),
        .progress = {show_progress, &line},
    };
    bk_status status = take_in(&run, error);
    clear_progress(&line);
    print_faults(run.faults, run.arena);
    if (!status) {
        status = print_report(&run.report, run.arena, error);
    }
    bk_store_close(run.store);
    bk_faults_free(run.faults);
    bk_folder_free(run.folder);
    bk_arena_free(run.arena);
    return status;
}
