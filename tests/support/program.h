#ifndef BODKIN_TESTS_SUPPORT_PROGRAM_H
#define BODKIN_TESTS_SUPPORT_PROGRAM_H

#include <stddef.h>
#include <sys/types.h>

/// The real program run as a child, with nothing of the person's own surroundings: HOME, XDG_DATA_HOME and
/// BODKIN_STORE lie in the test's folder, and the day is pinned.

typedef struct bk_program_options {
    const char *program;  ///< file of the program: BK_TEST_PROGRAM
    const char *store;    ///< BODKIN_STORE; NULL: bk_program_store(), "": not set
    const char *today;    ///< BODKIN_TODAY; NULL: 2027-03-02, "": not set
    const char *tries;    ///< BODKIN_TRIES; NULL: 20, so that it is quick, "": not set
    const char *locale;   ///< LC_ALL; NULL: C.UTF-8
    const char *variable; ///< one more, "NAME=value"; or NULL
    const char *output;   ///< NULL: caught; a file to write to, such as /dev/full; "": closed
    long largest_file;    ///< bytes that a file can have before the disk counts as full; 0: no limit
    int terminal;         ///< a terminal that is its own and its stderr; 0: none
} bk_program_options;

/// How it ended, and what it said; the texts live until the test ends.
typedef struct bk_program_end {
    int status;         ///< exit status; -1 where a signal ended it
    const char *output; ///< stdout; "" where it was not caught
    size_t output_length;
    const char *trouble; ///< stderr; "" where it was a terminal
} bk_program_end;

/// The store that the program uses unless told otherwise.
const char *bk_program_store(void);

/// Runs the program with the arguments up to a NULL and waits until it ends.
bk_program_end bk_program_call(bk_program_options options, const char *const *arguments);

/// Starts it; one at a time. It is waited for by bk_program_wait.
pid_t bk_program_start(bk_program_options options, const char *const *arguments);
bk_program_end bk_program_wait(pid_t program);

/// Waits until the program has a handler of its own for that signal.
void bk_program_await_handler(pid_t program, int signal_number);

/// Fails the test unless it ended with that status; returns it as it is.
bk_program_end bk_program_must(bk_program_end end, int status);

#define ARGUMENTS(...) ((const char *const[]){__VA_ARGS__, NULL})

/// `bodkin("rail", "--json")` runs the program and gives its end; `bodkin_with((...), ...)` takes options.
#define OPTIONS(...) ((bk_program_options){.program = BK_TEST_PROGRAM, __VA_ARGS__})
#define bodkin_with(options, ...) bk_program_call(options, ARGUMENTS(__VA_ARGS__))
#define bodkin(...) bodkin_with(OPTIONS(.store = NULL), __VA_ARGS__)

#endif
