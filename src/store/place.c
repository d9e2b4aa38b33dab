#include "bodkin/store/place.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "bodkin/base/arena.h"

enum { FILE_MODE = 0600, FOLDER_MODE = 0700, NUMBER_ROOM = 16, MOST_BESIDE = 999 };

bk_place_kind bk_place_look(const char *path)
{
    struct stat status;
    if (stat(path, &status) != 0)
        return BK_PLACE_NONE;
    if (!S_ISREG(status.st_mode))
        return BK_PLACE_OTHER;
    return status.st_size == 0 ? BK_PLACE_EMPTY : BK_PLACE_FILE;
}

bk_status bk_place_make(const char *path, bool *made, bk_error *error)
{
    int file = open(path, O_CREAT | O_EXCL | O_WRONLY | O_CLOEXEC, FILE_MODE);
    *made = file >= 0;
    if (file >= 0)
        close(file);
    else if (errno != EEXIST)
        return bk_fail(error, BK_STORE, "The file %s could not be made: %s.", path, strerror(errno));
    return BK_OK;
}

bk_status bk_place_make_folders(const char *path, bk_error *error)
{
    bk_status status = BK_OK;
    char *folder = bk_alloc(strlen(path) + 1);
    strcpy(folder, path);
    for (char *end = strchr(folder + 1, '/'); end != NULL && status == BK_OK; end = strchr(end + 1, '/')) {
        *end = '\0';
        if (mkdir(folder, FOLDER_MODE) != 0 && errno != EEXIST && access(folder, F_OK) != 0)
            status =
                bk_fail(error, BK_STORE, "The folder %s could not be made: %s.", folder, strerror(errno));
        *end = '/';
    }
    free(folder);
    return status;
}

bk_status bk_place_keep_private(const char *path, bk_error *error)
{
    if (chmod(path, FILE_MODE) != 0)
        return bk_fail(error, BK_STORE, "The file %s could not be kept private: %s.", path, strerror(errno));
    return BK_OK;
}

bk_status bk_place_make_beside(const char *path, const char *word, char **beside, bk_error *error)
{
    size_t size = strlen(path) + strlen(word) + NUMBER_ROOM;
    char *name = bk_alloc(size);
    snprintf(name, size, "%s.%s", path, word);
    bk_status status = BK_OK;
    bool made = false;
    for (int number = 1; number <= MOST_BESIDE && status == BK_OK && !made; number++) {
        if (number > 1)
            snprintf(name, size, "%s.%s-%d", path, word, number);
        status = bk_place_make(name, &made, error);
    }
    if (status == BK_OK && !made)
        status = bk_fail(error, BK_STORE, "There are too many backups beside %s: move some away.", path);
    if (status != BK_OK) {
        free(name);
        return status;
    }
    *beside = name;
    return BK_OK;
}
