#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/cell_write.h"
#include "bodkin/sheet/csv.h"
#include "bodkin/sheet/folder_sheets.h"

enum { FOLDER_MODE = 0700, SHEET_MODE = 0600, TELL_EVERY = 1024 };

/// A folder on its way to the disk.
typedef struct writing {
    const char *path;
    const bk_folder *folder;
    const bk_progress *progress;
    bk_cell_style style;
    bk_arena *arena;
    int at;                  ///< the folder, opened; -1 before
    bool made;               ///< the folder was made by this writing
    bool beside[BK_SHEETS];  ///< written under its other name
    bool renamed[BK_SHEETS]; ///< in its place
    int64_t rows_done, rows;
} writing;

static const char *beside_name(const writing *job, size_t number)
{
    return bk_arena_print(job->arena, ".%s.new", bk_sheets[number].file);
}

/// Tells how far it is; refused when it is to stop.
static bk_status tell(const writing *job, const char *sheet, bk_error *error)
{
    if (bk_progress_tell(job->progress, sheet, job->rows_done, job->rows))
        return BK_OK;
    return bk_fail(error, BK_REFUSED, "The export was stopped; nothing was changed.");
}

/// The text of one sheet, in `out`.
static bk_status write_rows(writing *job, const bk_sheet *sheet, bk_buffer *out, bk_error *error)
{
    bk_sheet_rows rows = bk_sheet_rows_get(job->folder, sheet);
    bk_status status = tell(job, sheet->file, error);
    for (size_t i = 0; i < sheet->column_count; i++)
        bk_csv_write_cell(out, sheet->columns[i].name, i == 0, false);
    bk_csv_write_end(out);
    for (size_t row = 0; row < rows.count && status == BK_OK; row++) {
        const void *record = bk_sheet_row(sheet, rows, row);
        for (size_t i = 0; i < sheet->column_count; i++)
            bk_cell_write(out, &sheet->columns[i], record, &job->style, i == 0);
        bk_csv_write_end(out);
        if (++job->rows_done % TELL_EVERY == 0)
            status = tell(job, sheet->file, error);
    }
    return status;
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

static bk_status cannot_write(const writing *job, const bk_sheet *sheet, int reason, bk_error *error)
{
    return bk_fail(error, BK_REFUSED, "%s could not be written in %s: %s", sheet->file, job->path,
                   strerror(reason));
}

/// Writes a text beside the place of a sheet, readable by its owner only, because it may hold measures and contacts of
/// people.
static bk_status write_beside(writing *job, size_t number, const bk_buffer *text, bk_error *error)
{
    const bk_sheet *sheet = &bk_sheets[number];
    int file = openat(job->at, beside_name(job, number), O_WRONLY | O_CREAT | O_EXCL | O_NOFOLLOW | O_CLOEXEC,
                      SHEET_MODE);
    if (file < 0)
        return cannot_write(job, sheet, errno, error);
    job->beside[number] = true;
    bool written = write_whole(file, text->bytes, text->length) && fsync(file) == 0;
    int reason = errno;
    if (close(file) != 0 && written) {
        written = false;
        reason = errno;
    }
    return written ? BK_OK : cannot_write(job, sheet, reason, error);
}

static bk_status write_sheet(writing *job, size_t number, bk_error *error)
{
    bk_buffer text = {0};
    bk_status status = write_rows(job, &bk_sheets[number], &text, error);
    if (status == BK_OK)
        status = write_beside(job, number, &text, error);
    bk_buffer_free(&text);
    return status;
}

// ---------------------------------------------------------------------------------------------- putting in place

/// Looks whether every place is free or holds a file, before the first is taken.
static bk_status check_places(const writing *job, bk_error *error)
{
    for (size_t i = 0; i < BK_SHEETS; i++) {
        struct stat there;
        bool taken = fstatat(job->at, bk_sheets[i].file, &there, AT_SYMLINK_NOFOLLOW) == 0;
        if (!taken && errno != ENOENT)
            return cannot_write(job, &bk_sheets[i], errno, error);
        if (taken && !S_ISREG(there.st_mode))
            return bk_fail(error, BK_REFUSED,
                           "%s in %s is no file, but a folder, a link or the like; move it away first. "
                           "Nothing was changed.",
                           bk_sheets[i].file, job->path);
    }
    return BK_OK;
}

/// The sheets that are in their places, as a list for a person.
static const char *renamed_list(const writing *job)
{
    const char *list = NULL;
    for (size_t i = 0; i < BK_SHEETS; i++)
        if (job->renamed[i])
            list = list == NULL ? bk_sheets[i].file
                                : bk_arena_print(job->arena, "%s, %s", list, bk_sheets[i].file);
    return list == NULL ? "none" : list;
}

static bk_status put_in_place(writing *job, bk_error *error)
{
    for (size_t i = 0; i < BK_SHEETS; i++) {
        if (renameat(job->at, beside_name(job, i), job->at, bk_sheets[i].file) != 0)
            return bk_fail(error, BK_REFUSED,
                           "%s could not be put in its place in %s: %s. The sheets there are not of one "
                           "export; new are: %s.",
                           bk_sheets[i].file, job->path, strerror(errno), renamed_list(job));
        job->beside[i] = false;
        job->renamed[i] = true;
    }
    // Not every file system has folders that can be written through to the disk.
    if (fsync(job->at) != 0 && errno != EINVAL)
        return bk_fail(error, BK_REFUSED, "the sheets are in %s, but may be lost when the power fails: %s",
                       job->path, strerror(errno));
    return BK_OK;
}

// ------------------------------------------------------------------------------------------------- the folder

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

static bk_status check_no_sheets(const writing *job, bk_error *error)
{
    DIR *folder = opendir(job->path);
    if (folder == NULL)
        return bk_fail(error, BK_REFUSED, "the folder %s cannot be read: %s", job->path, strerror(errno));
    bk_status status = check_empty(job->path, folder, error);
    closedir(folder);
    return status;
}

/// Opens the folder, and keeps other exports out of it, whose files have the same names.
static bk_status open_folder(writing *job, bk_error *error)
{
    job->at = open(job->path, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (job->at < 0 && errno == ENOTDIR)
        return bk_fail(error, BK_REFUSED, "%s is not a folder; name a folder for the sheets", job->path);
    if (job->at < 0)
        return bk_fail(error, BK_REFUSED, "the folder %s cannot be read: %s", job->path, strerror(errno));
    if (flock(job->at, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK)
        return bk_fail(error, BK_REFUSED, "another export is writing into %s; wait until it is done",
                       job->path);
    for (size_t i = 0; i < BK_SHEETS; i++)
        unlinkat(job->at, beside_name(job, i), 0); // where it stays, writing it tells why
    return BK_OK;
}

/// Makes the folder, or looks whether it can be written to.
static bk_status prepare(writing *job, bool over, bk_error *error)
{
    job->made = mkdir(job->path, FOLDER_MODE) == 0;
    if (!job->made && errno != EEXIST)
        return bk_fail(error, BK_REFUSED, "the folder %s cannot be made: %s", job->path, strerror(errno));
    bk_status status = open_folder(job, error);
    return status != BK_OK || over ? status : check_no_sheets(job, error);
}

static bk_status write_all(writing *job, bool over, bk_error *error)
{
    bk_status status = prepare(job, over, error);
    for (size_t i = 0; i < BK_SHEETS && status == BK_OK; i++)
        status = write_sheet(job, i, error);
    if (status == BK_OK)
        status = check_places(job, error);
    if (status == BK_OK)
        status = tell(job, "sheets", error);
    return status == BK_OK ? put_in_place(job, error) : status;
}

/// Leaves nothing half written behind.
static void clear_away(const writing *job)
{
    for (size_t i = 0; i < BK_SHEETS; i++)
        if (job->beside[i])
            unlinkat(job->at, beside_name(job, i), 0);
    if (job->made)
        rmdir(job->path); // stays where a sheet is in its place
}

static int64_t rows_of(const bk_folder *folder)
{
    int64_t rows = 0;
    for (size_t i = 0; i < BK_SHEETS; i++)
        rows += (int64_t)bk_sheet_rows_get(folder, &bk_sheets[i]).count;
    return rows;
}

bk_status bk_folder_write(const char *path, const bk_folder *folder, bool over, const bk_progress *progress,
                          bk_error *error)
{
    writing job = {.path = path,
                   .folder = folder,
                   .progress = progress,
                   .arena = bk_arena_new(),
                   .at = -1,
                   .rows = rows_of(folder)};
    if (folder->production.count > 0) {
        const bk_production *production = &folder->production.items[0];
        job.style.currency = production->currency;
        job.style.unit = production->unit == BK_INCH ? BK_INCH : BK_CM;
    }
    bk_status status = write_all(&job, over, error);
    if (status != BK_OK)
        clear_away(&job);
    if (job.at >= 0)
        close(job.at);
    bk_arena_free(job.arena);
    return status;
}
