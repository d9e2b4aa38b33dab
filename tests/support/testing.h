#ifndef BODKIN_TESTS_SUPPORT_TESTING_H
#define BODKIN_TESTS_SUPPORT_TESTING_H

#include <stddef.h>

#include <check.h>

/// The whole main() of a test program: runs the tests, each defined with Check's START_TEST, in the order given.
///
///     START_TEST(a_missed_fitting_holds_the_costume) { ck_assert_int_eq(...); } END_TEST
///     BK_TEST_MAIN("waits", a_missed_fitting_holds_the_costume)
#define BK_TEST_MAIN(suite, ...) \
    int main(void) \
    { \
        const TTest *const bk_tests[] = {__VA_ARGS__}; \
        return bk_run_tests(suite, bk_tests, sizeof bk_tests / sizeof bk_tests[0]); \
    }

/// The same where each test runs `times` times, its `_i` counting from 0.
#define BK_TEST_MAIN_TIMES(suite, times, ...) \
    int main(void) \
    { \
        const TTest *const bk_tests[] = {__VA_ARGS__}; \
        return bk_run_tests_times(suite, times, bk_tests, sizeof bk_tests / sizeof bk_tests[0]); \
    }

/// Runs `count` tests as one suite and returns what main() returns: 0 when all passed and there was at least one.
/// Check's own environment is honoured: CK_FORK=no runs them in this process, CK_RUN_CASE, CK_VERBOSITY.
int bk_run_tests(const char *suite, const TTest *const *tests, size_t count);
int bk_run_tests_times(const char *suite, int times, const TTest *const *tests, size_t count);

// The helpers below belong to the test that is running: what they return lives until it ends, and is not freed by the
// caller; when the file system refuses, the test fails.

/// An empty folder of this test's own, the same one at every call, removed with all it holds when the test ends.
const char *bk_test_folder(void);

/// The path of `name` inside the test's folder; nothing is made there.
const char *bk_test_path(const char *name);

/// Writes a file that holds exactly these bytes, in place of what was there.
void bk_test_write(const char *path, const void *bytes, size_t length);

/// The same with the bytes of a string, without its NUL.
void bk_test_write_text(const char *path, const char *text);

/// All bytes of a file, with a NUL after them; their number goes to `length` unless that is NULL.
char *bk_test_read(const char *path, size_t *length);

#endif
