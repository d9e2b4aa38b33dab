#include "bodkin/sheet/folder_sheets.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/stat.h>
#include <unistd.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/folder_check.h"
#include "bodkin/sheet/sheet_read.h"

static const char ending[] = ".csv";

/// No sheet is larger: 2^30 bytes.
#define FILE_MOST (INT64_C(1) << 30)

// ------------------------------------------------------------------------------------------- what is in the folder

/// What a folder on disk holds.
typedef struct listing {
    bk_arena *arena;
    BK_LIST(const char *) strays; ///< what looks like a sheet and is none, in order
    bool there[BK_SHEETS];
} listing;

static int text_order(const void *left, const void *right)
{
    return strcmp(*(const char *const *)left, *(const char *const *)right);
}

/// The sheet whose name this is but for capital letters, or BK_SHEETS.
static size_t sheet_in_capitals(const char *name)
{
    size_t sheet = 0;
    while (sheet < BK_SHEETS && strcasecmp(bk_sheets[sheet].file, name) != 0)
        sheet++;
    return sheet;
}

static bool has_ending(const char *name)
{
    size_t length = strlen(name);
    return length >= sizeof ending - 1 && strcmp(name + length + 1 - sizeof ending, ending) == 0;
}

static void list_name(listing *list, const char *name)
{
    bk_sheet_number sheet = bk_sheet_find(name);
    if (sheet < BK_SHEETS)
        list->there[sheet] = true;
    else if (name[0] != '.' && (has_ending(name) || sheet_in_capitals(name) < BK_SHEETS))
        bk_list_add(&list->strays, bk_arena_text(list->arena, name));
}

static bk_status list_folder(const char *path, listing *list, bk_error *error)
{
    DIR *folder = opendir(path);
    if (folder == NULL && errno == ENOENT)
        return bk_fail(error, BK_REFUSED, "there is no folder %s; give the folder that holds the sheets",
                       path);
    if (folder == NULL && errno == ENOTDIR)
        return bk_fail(error, BK_REFUSED, "%s is not a folder; give the folder that holds the sheets", path);
    if (folder == NULL)
        return bk_fail(error, BK_REFUSED, "the folder %s cannot be read: %s", path, strerror(errno));
    for (const struct dirent *entry = readdir(folder); entry != NULL; entry = readdir(folder))
        list_name(list, entry->d_name);
    closedir(folder);
    if (list->strays.count > 0)
        qsort(list->strays.items, list->strays.count, sizeof *list->strays.items, text_order);
    return BK_OK;
}

/// Notes a fault of a whole file; what seems missing from the sheet `sheet` may stand there.
static void note_file(bk_sheet_reading *reading, size_t sheet, const char *what)
{
    bk_faults_add(reading->faults, sheet, bk_sheets[sheet].file, 1, "sheet", "%s", what);
    reading->unreadable[sheet] = true;
}

/// Notes a file that looks like a sheet and is none.
static void note_stray(bk_sheet_reading *reading, const listing *list, const char *name)
{
    const char *files[BK_SHEETS];
    bk_buffer all = {0};
    for (size_t i = 0; i < BK_SHEETS; i++) {
        files[i] = bk_sheets[i].file;
        bk_buffer_print(&all, "%s%s", i == 0 ? "" : ", ", files[i]);
    }
    const char *nearest = bk_nearest(name, files, BK_SHEETS);
    size_t meant = nearest == NULL ? BK_SHEETS : bk_sheet_find(nearest);
    if (sheet_in_capitals(name) < BK_SHEETS)
        bk_faults_add(reading->faults, BK_SHEETS, name, 1, "sheet",
                      "the names of sheets are in small letters; call the file %s", bk_sheets[meant].file);
    else if (nearest != NULL)
        bk_faults_add(reading->faults, BK_SHEETS, name, 1, "sheet",
                      "there is no sheet of this name; did you mean %s?", nearest);
    else
        bk_faults_add(reading->faults, BK_SHEETS, name, 1, "sheet",
                      "there is no sheet of this name; the sheets are %s", all.bytes);
    if (meant < BK_SHEETS && !list->there[meant])
        reading->unreadable[meant] = true;
    bk_buffer_free(&all);
}

// ---------------------------------------------------------------------------------------------------------- a file

/// Reads an open file whole into `*bytes`, which is the caller's; false with `errno` set where it cannot be read.
static bool read_whole(int file, size_t size, char **bytes, size_t *length)
{
    *bytes = bk_alloc(size + 1);
    *length = 0;
    while (*length < size) {
        ssize_t got = read(file, *bytes + *length, size - *length);
        if (got < 0 && errno != EINTR)
            return false;
        if (got == 0)
            break;
        *length += got > 0 ? (size_t)got : 0;
    }
    return true;
}

/// Opens the file of a sheet; -1 when it cannot be read as one, which is then noted.
static int open_sheet(bk_sheet_reading *reading, const char *path, size_t sheet, struct stat *status)
{
    char *name = bk_arena_print(reading->folder->arena, "%s/%s", path, bk_sheets[sheet].file);
    int file = open(name, O_RDONLY | O_CLOEXEC | O_NONBLOCK);
    if (file < 0 || fstat(file, status) != 0)
        note_file(reading, sheet,
                  bk_arena_print(reading->folder->arena, "the file cannot be read: %s", strerror(errno)));
    else if (!S_ISREG(status->st_mode))
        note_file(reading, sheet, "this is no plain file; a sheet is a file of comma-separated values");
    else if (status->st_size > FILE_MOST)
        note_file(reading, sheet, "the file is larger than 1 GB, which is too large for a sheet");
    else
        return file;
    if (file >= 0)
        close(file);
    return -1;
}

static bk_status read_file(bk_sheet_reading *reading, const char *path, bk_sheet_number sheet,
                           bk_error *error)
{
    struct stat on_disk;
    int file = open_sheet(reading, path, sheet, &on_disk);
    if (file < 0)
        return BK_OK;
    char *bytes = NULL;
    size_t length = 0;
    bk_status status = BK_OK;
    if (!bk_progress_tell(reading->progress, bk_sheets[sheet].file, 0, on_disk.st_size))
        status = bk_sheet_stopped(error);
    else if (read_whole(file, (size_t)on_disk.st_size, &bytes, &length))
        status = bk_sheet_read(reading, sheet, bytes, length, error);
    else
        note_file(reading, sheet,
                  bk_arena_print(reading->folder->arena, "the file cannot be read: %s", strerror(errno)));
    free(bytes);
    close(file);
    return status;
}

// ------------------------------------------------------------------------------------------------------- the folder

static bk_status read_sheets(bk_sheet_reading *reading, const char *path, const listing *list,
                             bk_error *error)
{
    bk_status status = BK_OK;
    for (size_t i = 0; i < list->strays.count; i++)
        note_stray(reading, list, list->strays.items[i]);
    for (size_t i = 0; i < BK_SHEETS && status == BK_OK; i++) {
        if (list->there[i])
            status = read_file(reading, path, (bk_sheet_number)i, error);
        else if (i == BK_SHEET_PRODUCTION)
            note_file(reading, i, "the file is missing; it must name the production and the day it opens");
        if (i == BK_SHEET_PRODUCTION && reading->folder->production.count > 0)
            reading->currency = reading->folder->production.items[0].currency;
    }
    return status;
}

static bk_status read_all(bk_sheet_reading *reading, const char *path, const bk_known *known, bk_error *error)
{
    listing list = {.arena = bk_arena_new()};
    bk_status status = list_folder(path, &list, error);
    if (status == BK_OK)
        status = read_sheets(reading, path, &list, error);
    if (status == BK_OK)
        status = bk_folder_check(reading, known, error);
    bk_list_free(&list.strays);
    bk_arena_free(list.arena);
    return status;
}

bk_status bk_folder_read(const char *path, const bk_known *known, bk_folder *folder, bk_faults *faults,
                         const bk_progress *progress, bk_error *error)
{
    bk_sheet_reading reading = {
        .folder = folder, .faults = faults, .names = bk_names_new(folder->arena), .progress = progress};
    bk_status status = read_all(&reading, path, known, error);
    bk_names_free(reading.names);
    size_t count = bk_faults_count(faults);
    if (status != BK_OK || count == 0)
        return status;
    return bk_fail(error, BK_REFUSED, "%zu %s found in the sheets of %s; nothing was changed", count,
                   count == 1 ? "fault was" : "faults were", path);
}
