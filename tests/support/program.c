#include "support/program.h"

#include <fcntl.h>
#include <signal.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "support/testing.h"

extern char **environ;

enum {
    MOST_ARGUMENTS = 16,
    OPTIONS_ROOM = 512,
    PATH_ROOM = 64,
    LINE_ROOM = 256,
    HEXADECIMAL = 16,
    SANITIZER_STATUS = 86 // told apart from what the program itself ends with
};

static const char output_name[] = ".stdout";
static const char trouble_name[] = ".stderr";
static const char *begun; // file of the program started last

const char *bk_program_store(void)
{
    return bk_test_path("workroom.db");
}

// ---------------------------------------------------------------------------------------------- surroundings

static void set(const char *name, const char *given, const char *usual)
{
    const char *value = given != NULL ? given : usual;
    if (value[0] != '\0')
        setenv(name, value, 1);
}

// What the sanitizers are told stays; what they find must not look like an end of the program's own.
static void set_sanitizer(const char *name, const char *told, const char *usual)
{
    char options[OPTIONS_ROOM];
    snprintf(options, sizeof options, "%s%sexitcode=%d", told != NULL ? told : usual,
             told != NULL || usual[0] != '\0' ? ":" : "", SANITIZER_STATUS);
    setenv(name, options, 1);
}

static void set_surroundings(const bk_program_options *options)
{
    static char *nothing[] = {NULL};
    const char *address = getenv("ASAN_OPTIONS");
    const char *undefined = getenv("UBSAN_OPTIONS");
    const char *path = getenv("PATH");
    environ = nothing;
    set_sanitizer("ASAN_OPTIONS", address, "");
    set_sanitizer("UBSAN_OPTIONS", undefined, "halt_on_error=1:print_stacktrace=1");
    set("PATH", path, "");
    set("HOME", bk_test_path("home"), "");
    set("XDG_DATA_HOME", bk_test_path("data"), "");
    set("BODKIN_STORE", options->store, bk_program_store());
    set("BODKIN_TODAY", options->today, "2027-03-02");
    set("BODKIN_TRIES", options->tries, "20");
    set("LC_ALL", options->locale, "C.UTF-8");
    set("TZ", "UTC", "");
    if (options->variable != NULL)
        putenv((char *)(size_t)options->variable);
}

static void limit_files(long largest)
{
    struct rlimit limit = {.rlim_cur = (rlim_t)largest, .rlim_max = (rlim_t)largest};
    if (largest == 0)
        return;
    signal(SIGXFSZ, SIG_IGN);
    setrlimit(RLIMIT_FSIZE, &limit);
}

static void catch_in(int descriptor, const char *name)
{
    int file = open(name, O_WRONLY | O_CREAT | O_TRUNC, 0600);
    dup2(file, descriptor);
    close(file);
}

static void set_descriptors(const bk_program_options *options)
{
    catch_in(STDERR_FILENO, bk_test_path(trouble_name));
    if (options->terminal != 0) {
        setsid();
        ioctl(options->terminal, TIOCSCTTY, 0);
        dup2(options->terminal, STDERR_FILENO);
    }
    int nothing = open("/dev/null", O_RDONLY);
    dup2(nothing, STDIN_FILENO);
    close(nothing);
    catch_in(STDOUT_FILENO, bk_test_path(output_name));
    if (options->output != NULL && options->output[0] == '\0')
        close(STDOUT_FILENO);
    else if (options->output != NULL)
        catch_in(STDOUT_FILENO, options->output);
}

// --------------------------------------------------------------------------------------------------- running

pid_t bk_program_start(bk_program_options options, const char *const *arguments)
{
    char *all[MOST_ARGUMENTS] = {(char *)(size_t)options.program};
    size_t count = 0;
    for (; arguments[count] != NULL; count++)
        all[count + 1] = (char *)(size_t)arguments[count];
    ck_assert_uint_lt(count + 1, MOST_ARGUMENTS);
    bk_test_write_text(bk_test_path(output_name), "");
    bk_test_write_text(bk_test_path(trouble_name), "");
    begun = options.program;
    signal(SIGINT, SIG_DFL); // what is ignored here would be ignored by the program too
    signal(SIGTERM, SIG_DFL);
    pid_t program = fork();
    ck_assert_int_ge(program, 0);
    if (program > 0)
        return program;
    set_surroundings(&options);
    set_descriptors(&options);
    limit_files(options.largest_file);
    execv(options.program, all);
    _exit(EXIT_FAILURE);
}

bk_program_end bk_program_wait(pid_t program)
{
    int status = 0;
    bk_program_end end = {.status = -1};
    ck_assert_int_eq(waitpid(program, &status, 0), program);
    if (WIFEXITED(status))
        end.status = WEXITSTATUS(status);
    end.output = bk_test_read(bk_test_path(output_name), &end.output_length);
    end.trouble = bk_test_read(bk_test_path(trouble_name), NULL);
    remove(bk_test_path(output_name));
    remove(bk_test_path(trouble_name));
    return end;
}

bk_program_end bk_program_call(bk_program_options options, const char *const *arguments)
{
    return bk_program_wait(bk_program_start(options, arguments));
}

bk_program_end bk_program_must(bk_program_end end, int status)
{
    ck_assert_msg(end.status == status, "it ended with %d instead of %d: %s", end.status, status,
                  end.trouble);
    return end;
}

// Signals that a process handles itself, a bit each, as the kernel tells them.
static unsigned long long handled_by(pid_t program)
{
    char name[PATH_ROOM];
    char line[LINE_ROOM];
    unsigned long long handled = 0;
    snprintf(name, sizeof name, "/proc/%ld/status", (long)program);
    FILE *file = fopen(name, "r");
    ck_assert_ptr_nonnull(file);
    while (fgets(line, sizeof line, file) != NULL)
        if (strncmp(line, "SigCgt:", sizeof "SigCgt:" - 1) == 0)
            handled = strtoull(line + sizeof "SigCgt:", NULL, HEXADECIMAL);
    fclose(file);
    return handled;
}

// Whether it runs the program's own file yet, or still that of the test it was forked from.
static bool has_begun(pid_t program)
{
    char name[PATH_ROOM];
    struct stat wanted, running;
    snprintf(name, sizeof name, "/proc/%ld/exe", (long)program);
    return stat(begun, &wanted) == 0 && stat(name, &running) == 0 && wanted.st_dev == running.st_dev &&
           wanted.st_ino == running.st_ino;
}

void bk_program_await_handler(pid_t program, int signal_number)
{
    while (!has_begun(program) || (handled_by(program) >> (signal_number - 1) & 1) == 0)
        ck_assert_int_eq(waitpid(program, NULL, WNOHANG), 0);
}
