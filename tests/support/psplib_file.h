#ifndef BODKIN_TESTS_SUPPORT_PSPLIB_FILE_H
#define BODKIN_TESTS_SUPPORT_PSPLIB_FILE_H

#include "bodkin/plan/problem.h"

/// Reads a single-mode instance of the project scheduling library (Kolisch & Sprecher 1996) in its `.sm` text form: jobs with
/// a duration, their successors, renewable resources. `text` ends with NUL after `length` bytes. Everything in `problem` is in
/// `arena`. BK_REFUSED, with a sentence that names the line, where it is not such a text: also where a job needs more than there
/// is, or the order runs in a circle.
bk_status bk_psplib_read(const char *text, size_t length, bk_arena *arena, bk_problem *problem,
                         bk_error *error) BK_MUST_USE;

#endif
