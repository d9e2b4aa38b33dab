#include <dirent.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/stat.h>
#include <unistd.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/cell_write.h"
#include "bodkin/sheet/csv.h"
#include "bodkin/sheet/folder_sheets.h"

enum { FOLDER_MODE = 0700 };

/// A folder on its way to the disk.
typedef struct writing {
    const char *path;
    const bk_folder *folder;
    bk_cell_style style;
    bk_arena *arena;
    bool made;               ///< the folder was made by this writing
    char *beside[BK_SHEETS]; ///< files written so far, under other names
} writing;

/// The text of one sheet, in `out`.
static void write_rows(const writing *job, const bk_sheet *sheet, bk_buffer *out)
{
    bk_sheet_rows rows = bk_sheet_rows_get(job->folder, sheet);
    for (size_t i = 0; i < sheet->column_count; i++)
        bk_csv_write_cell(out, sheet->columns[i].name, i == 0, false);
    bk_csv_write_end(out);
    for (size_t row = 0; row < rows.count; row++) {
        const void *record = bk_sheet_row(sheet, rows, row);
        for (size_t i = 0; i < sheet->column_count; i++)
            bk_cell_write(out, &sheet->columns[i], record, &job->style, i == 0);
        bk_csv_write_end(out);
    }
}

static bool write_whole(int file, const char *bytes, size_t length)
{
    while (length > 0) {
        ssize_t put = write(file, bytes, length);
        if (put < 0 && errno != EINTR)
            return false;
        if (put > 0) {
            bytes += put;
            length -= (size_t)put;
        }
    }
    return true;
}

/// Writes a sheet beside its place, readable by its owner only, because it may hold measures and contacts of people.
static bk_status write_beside(writing *job, size_t number, bk_error *error)
{
    const bk_sheet *sheet = &bk_sheets[number];
    char *name = bk_arena_print(job->arena, "%s/.%s.XXXXXX", job->path, sheet->file);
    int file = mkstemp(name);
    if (file < 0)
        return bk_fail(error, BK_REFUSED, "%s could not be written in %s: %s", sheet->file, job->path,
                       strerror(errno));
    job->beside[number] = name;
    bk_buffer text = {0};
    write_rows(job, sheet, &text);
    bool written = write_whole(file, text.bytes, text.length) && fsync(file) == 0;
    int reason = errno;
    bk_buffer_free(&text);
    if (close(file) != 0 && written) {
        written = false;
        reason = errno;
    }
    if (written)
        return BK_OK;
    return bk_fail(error, BK_REFUSED, "%s could not be written in %s: %s", sheet->file, job->path,
                   strerror(reason));
}

/// Puts a sheet that was written beside in its place.
static bk_status put_in_place(writing *job, size_t number, bk_error *error)
{
    const char *file = bk_sheets[number].file;
    const char *name = bk_arena_print(job->arena, "%s/%s", job->path, file);
    if (rename(job->beside[number], name) != 0)
        return bk_fail(error, BK_REFUSED, "%s could not be put in its place in %s: %s", file, job->path,
                       strerror(errno));
    job->beside[number] = NULL;
    return BK_OK;
}

static bool is_sheet(const char *name)
{
    const char *end = strrchr(name, '.');
    return name[0] != '.' && end != NULL && strcasecmp(end, ".csv") == 0;
}

/// Refuses a folder that holds sheets.
static bk_status check_empty(const char *path, DIR *folder, bk_error *error)
{
    for (const struct dirent *entry = readdir(folder); entry != NULL; entry = readdir(folder))
        if (is_sheet(entry->d_name))
            return bk_fail(
                error, BK_REFUSED,
                "%s holds sheets already (%s); name another folder, or replace them with --replace", path,
                entry->d_name);
    return BK_OK;
}

/// Makes the folder, or looks whether it can be written to.
static bk_status prepare(writing *job, bool over, bk_error *error)
{
    if (mkdir(job->path, FOLDER_MODE) == 0) {
        job->made = true;
        return BK_OK;
    }
    if (errno != EEXIST)
        return bk_fail(error, BK_REFUSED, "the folder %s cannot be made: %s", job->path, strerror(errno));
    DIR *folder = opendir(job->path);
    if (folder == NULL && errno == ENOTDIR)
        return bk_fail(error, BK_REFUSED, "%s is not a folder; name a folder for the sheets", job->path);
    if (folder == NULL)
        return bk_fail(error, BK_REFUSED, "the folder %s cannot be read: %s", job->path, strerror(errno));
    bk_status status = over ? BK_OK : check_empty(job->path, folder, error);
    closedir(folder);
    return status;
}

static bk_status write_all(writing *job, bool over, bk_error *error)
{
    bk_status status = prepare(job, over, error);
    for (size_t i = 0; i < BK_SHEETS && status == BK_OK; i++)
        status = write_beside(job, i, error);
    for (size_t i = 0; i < BK_SHEETS && status == BK_OK; i++)
        status = put_in_place(job, i, error);
    return status;
}

/// Leaves nothing half written behind.
static void clear_away(writing *job)
{
    for (size_t i = 0; i < BK_SHEETS; i++)
        if (job->beside[i] != NULL)
            unlink(job->beside[i]);
    if (job->made)
        rmdir(job->path); // stays where a sheet is in its place
}

bk_status bk_folder_write(const char *path, const bk_folder *folder, bool over, bk_error *error)
{
    writing job = {.path = path, .folder = folder, .arena = bk_arena_new()};
    if (folder->production.count > 0) {
        const bk_production *production = &folder->production.items[0];
        job.style.currency = production->currency;
        job.style.unit = production->unit == BK_INCH ? BK_INCH : BK_CM;
    }
    bk_status status = write_all(&job, over, error);
    if (status != BK_OK)
        clear_away(&job);
    bk_arena_free(job.arena);
    return status;
}
