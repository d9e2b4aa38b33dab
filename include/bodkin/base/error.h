#ifndef BODKIN_BASE_ERROR_H
#define BODKIN_BASE_ERROR_H

#include <stdarg.h>

/// How a job ended; the numbers are the exit statuses of the command line.
typedef enum bk_status {
    BK_OK = 0,      ///< done
    BK_REFUSED = 1, ///< refused, or the input is faulty
    BK_USAGE = 2,   ///< the command was called wrongly
    BK_STORE = 3    ///< the store could not be used
} bk_status;

enum { BK_ERROR_ROOM = 1024 };

/// What went wrong, in one sentence for a person: what happened, to what, and what to do. The caller owns it
/// and hands it in; it is written once, where the trouble is known, and passed up unchanged.
typedef struct bk_error {
    bk_status status;
    char text[BK_ERROR_ROOM];
} bk_error;

#define BK_MUST_USE __attribute__((warn_unused_result))
#define BK_PRINTF(text, first) __attribute__((format(printf, text, first)))

/// Writes the sentence into `error` (cut at a whole character when it is too long) and returns `status`, so
/// that a function can end with `return bk_fail(error, BK_REFUSED, "...")`. `error` may be NULL.
bk_status bk_fail(bk_error *error, bk_status status, const char *format, ...) BK_PRINTF(3, 4);

/// The same with a va_list.
bk_status bk_fail_list(bk_error *error, bk_status status, const char *format, va_list arguments)
    BK_PRINTF(3, 0);

#endif
