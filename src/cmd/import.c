#include "bodkin/work/import.h"

#include <stdio.h>
#include <sys/stat.h>

#include "bodkin/cmd/command.h"
#include "bodkin/cmd/progress.h"
#include "bodkin/cmd/surroundings.h"
#include "bodkin/sheet/folder_sheets.h"

// Importing: the folder is read and checked first, within the change that takes it in, so that what it is checked
// against cannot move; a store that is not there yet is made only for a folder without faults.

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
    if (report->gone) {
        bk_buffer_print(&text, "Gone with the former one, since the folder has none: %s.\n", report->gone);
    }
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
    bk_progress_line line;
    bk_progress progress; ///< tells the line
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

/// From here on it cannot be stopped any more, so it is asked once more before.
static bk_status commit(import_run *run, bk_error *error)
{
    if (!bk_progress_line_last(&run->line)) {
        bk_store_change_drop(run->store);
        return bk_fail(error, BK_REFUSED, "The import was stopped; nothing was changed.");
    }
    char now[BK_NOW_ROOM];
    return bk_store_change_commit(run->store, bk_now(now), run->report.sentence, NULL, error);
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
    return status ? status : commit(run, error);
}

bk_status bk_import_command(const bk_call *call, bk_error *error)
{
    if (call->as != BK_AS_MAKER) {
        return bk_fail(error, BK_REFUSED, "Only the maker imports; leave out --as.");
    }
    import_run run = {
        .call = call,
        .folder = bk_folder_new(),
        .faults = bk_faults_new(),
        .arena = bk_arena_new(),
        .line = bk_progress_line_begin(),
    };
    run.progress = (bk_progress){bk_progress_line_show, &run.line};
    bk_status status = take_in(&run, error);
    bk_progress_line_clear(&run.line);
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
