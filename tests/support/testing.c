#include "support/testing.h"

#include <errno.h>
#include <ftw.h>
#include <limits.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum {
    TEST_SECONDS = 120, // a test under Valgrind on a busy machine takes its time
    OPEN_FOLDERS = 16   // file descriptors that removing a tree may use
};

// What a helper returned, to be freed when the test ends.
typedef struct kept {
    struct kept *next;
    char bytes[];
} kept;

static kept *everything_kept;
static const char *this_folder;    // of the running test; NULL until it asks
static char all_folders[PATH_MAX]; // holds the folders of all tests of this program

static char *keep(size_t size)
{
    kept *one = malloc(sizeof *one + size);
    if (one == NULL)
        ck_abort_msg("no memory for %zu bytes", size);
    one->next = everything_kept;
    everything_kept = one;
    return one->bytes;
}

static int remove_one(const char *path, const struct stat *status, int kind, struct FTW *place)
{
    (void)status;
    (void)kind;
    (void)place;
    return remove(path);
}

static void remove_tree(const char *path)
{
    if (nftw(path, remove_one, OPEN_FOLDERS, FTW_DEPTH | FTW_PHYS) != 0)
        fprintf(stderr, "the test folder %s could not be removed: %s\n", path, strerror(errno));
}

static void begin_test(void)
{
    this_folder = NULL;
}

static void end_test(void)
{
    if (this_folder != NULL)
        remove_tree(this_folder);
    this_folder = NULL;
    while (everything_kept != NULL) {
        kept *next = everything_kept->next;
        free(everything_kept);
        everything_kept = next;
    }
}

static int make_folder_of_all(void)
{
    const char *parent = getenv("TMPDIR");
    if (parent == NULL || parent[0] == '\0')
        parent = "/tmp";
    snprintf(all_folders, sizeof all_folders, "%s/bodkin-test-XXXXXX", parent);
    return mkdtemp(all_folders) == NULL ? -1 : 0;
}

int bk_run_tests(const char *suite, const TTest *const *tests, size_t count)
{
    return bk_run_tests_times(suite, 1, tests, count);
}

int bk_run_tests_times(const char *suite, int times, const TTest *const *tests, size_t count)
{
    if (count == 0 || make_folder_of_all() != 0) {
        fprintf(stderr, "%s: no test to run, or no temporary folder to run it in\n", suite);
        return EXIT_FAILURE;
    }
    Suite *all = suite_create(suite);
    TCase *one_case = tcase_create(suite);
    tcase_set_timeout(one_case, TEST_SECONDS);
    tcase_add_checked_fixture(one_case, begin_test, end_test);
    for (size_t i = 0; i < count; i++)
        tcase_add_loop_test(one_case, tests[i], 0, times);
    suite_add_tcase(all, one_case);
    SRunner *runner = srunner_create(all);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    int run = srunner_ntests_run(runner);
    srunner_free(runner);
    remove_tree(all_folders);
    return failed == 0 && run > 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}

const char *bk_test_folder(void)
{
    if (this_folder == NULL) {
        size_t size = strlen(all_folders) + sizeof "/XXXXXX";
        char *path = keep(size);
        snprintf(path, size, "%s/XXXXXX", all_folders);
        if (mkdtemp(path) == NULL)
            ck_abort_msg("no folder could be made in %s: %s", all_folders, strerror(errno));
        this_folder = path;
    }
    return this_folder;
}

const char *bk_test_path(const char *name)
{
    const char *folder = bk_test_folder();
    size_t size = strlen(folder) + 1 + strlen(name) + 1;
    char *path = keep(size);
    snprintf(path, size, "%s/%s", folder, name);
    return path;
}

void bk_test_write(const char *path, const void *bytes, size_t length)
{
    FILE *file = fopen(path, "wb");
    if (file == NULL)
        ck_abort_msg("%s could not be opened to write: %s", path, strerror(errno));
    size_t written = fwrite(bytes, 1, length, file);
    if (fclose(file) != 0 || written != length)
        ck_abort_msg("%s could not be written: %s", path, strerror(errno));
}

void bk_test_write_text(const char *path, const char *text)
{
    bk_test_write(path, text, strlen(text));
}

char *bk_test_read(const char *path, size_t *length)
{
    struct stat status;
    FILE *file = fopen(path, "rb");
    if (file == NULL || fstat(fileno(file), &status) != 0)
        ck_abort_msg("%s could not be opened to read: %s", path, strerror(errno));
    size_t size = (size_t)status.st_size;
    char *bytes = keep(size + 1);
    size_t read = fread(bytes, 1, size, file);
    fclose(file);
    if (read != size)
        ck_abort_msg("%s could not be read whole", path);
    bytes[size] = '\0';
    if (length != NULL)
        *length = size;
    return bytes;
}
