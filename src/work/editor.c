#include "bodkin/work/editor.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <spawn.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "bodkin/base/text.h"

extern char **environ;

enum { NOT_FOUND = 127, PART_BYTES = 4096 };

static const char *setting(const char *name)
{
    const char *value = getenv(name);
    return value && *value ? value : NULL;
}

static const char *usual_editor(void)
{
    const char *visual = setting("VISUAL"), *editor = setting("EDITOR");
    return visual ? visual : editor ? editor : "vi";
}

// ------------------------------------------------------------------------------------------------ the file

static bool write_all(int file, const char *text, size_t length)
{
    while (length > 0) {
        ssize_t written = write(file, text, length);
        if (written < 0 && errno != EINTR)
            return false;
        if (written > 0) {
            text += written;
            length -= (size_t)written;
        }
    }
    return true;
}

// Makes the file with the text and a line end in it; NULL where it could not be made.
static const char *make_file(const char *text, bk_arena *arena)
{
    const char *folder = setting("XDG_RUNTIME_DIR");
    char *path = bk_arena_print(arena, "%s/bodkin-XXXXXX", folder ? folder : "/tmp");
    int file = mkstemp(path); // 0600
    if (file < 0)
        return NULL;
    bool whole = write_all(file, text, strlen(text)) && write_all(file, "\n", 1);
    if (close(file) == 0 && whole)
        return path;
    unlink(path);
    return NULL;
}

// The bytes of the file as a string in `arena`; NULL where it cannot be read or is no text.
static char *read_file(const char *path, bk_arena *arena)
{
    int file = open(path, O_RDONLY | O_CLOEXEC);
    if (file < 0)
        return NULL;
    bk_buffer read_so_far = {0};
    char part[PART_BYTES];
    ssize_t length = 0;
    bk_buffer_text(&read_so_far, "");
    while ((length = read(file, part, sizeof part)) > 0 || (length < 0 && errno == EINTR))
        bk_buffer_add(&read_so_far, part, length > 0 ? (size_t)length : 0);
    close(file);
    bool sound = length == 0 && strlen(read_so_far.bytes) == read_so_far.length &&
                 bk_text_fault(read_so_far.bytes, read_so_far.length) == read_so_far.length;
    char *text = sound ? bk_arena_bytes(arena, read_so_far.bytes, read_so_far.length) : NULL;
    bk_buffer_free(&read_so_far);
    return text;
}

static char *without_last_line_ends(char *text)
{
    size_t end = strlen(text);
    while (end > 0 && (text[end - 1] == '\n' || text[end - 1] == '\r'))
        text[--end] = '\0';
    return text;
}

// -------------------------------------------------------------------------------------------------- the editor

// Starts it with no signal held back; false where there is no shell.
static bool start(const char *path, bk_arena *arena, pid_t *child)
{
    char *command = bk_arena_print(arena, "%s \"$1\"", usual_editor());
    char shell[] = "sh", option[] = "-c", name[] = "bodkin";
    char *arguments[] = {shell, option, command, name, bk_arena_text(arena, path), NULL};
    posix_spawnattr_t attributes;
    sigset_t none, usual;
    sigemptyset(&none);
    sigemptyset(&usual);
    sigaddset(&usual, SIGINT);
    sigaddset(&usual, SIGQUIT);
    posix_spawnattr_init(&attributes);
    posix_spawnattr_setsigmask(&attributes, &none);
    posix_spawnattr_setsigdefault(&attributes, &usual);
    posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETSIGMASK | POSIX_SPAWN_SETSIGDEF);
    bool started = posix_spawn(child, "/bin/sh", NULL, &attributes, arguments, environ) == 0;
    posix_spawnattr_destroy(&attributes);
    return started;
}

// Runs it to its end; keys that interrupt it do not end this program. Its wait status, -1 where it was not started.
static int run(const char *path, bk_arena *arena)
{
    struct sigaction ignored = {.sa_handler = SIG_IGN}, interrupt, quit;
    pid_t child = 0;
    int status = -1;
    sigaction(SIGINT, &ignored, &interrupt);
    sigaction(SIGQUIT, &ignored, &quit);
    if (start(path, arena, &child))
        while (waitpid(child, &status, 0) < 0 && errno == EINTR)
            status = -1;
    sigaction(SIGINT, &interrupt, NULL);
    sigaction(SIGQUIT, &quit, NULL);
    return status;
}

bk_status bk_editor_edit(const char *text, bk_arena *arena, const char **edited, bk_error *error)
{
    const char *path = make_file(text, arena);
    if (!path)
        return bk_fail(error, BK_REFUSED,
                       "No file for the editor could be made in XDG_RUNTIME_DIR or /tmp: %s.",
                       strerror(errno));
    int ended = run(path, arena);
    char *changed = ended == 0 ? read_file(path, arena) : NULL;
    unlink(path);
    if (ended >= 0 && WIFEXITED(ended) && WEXITSTATUS(ended) == NOT_FOUND)
        return bk_fail(error, BK_REFUSED,
                       "The editor \"%.60s\" was not found; set VISUAL or EDITOR to one that is there.",
                       usual_editor());
    if (ended != 0)
        return bk_fail(error, BK_REFUSED,
                       "The editor \"%.60s\" ended with a fault; the text is as it was before.",
                       usual_editor());
    if (!changed)
        return bk_fail(error, BK_REFUSED,
                       "What the editor left is no text in UTF-8; the text is as it was before.");
    *edited = without_last_line_ends(changed);
    return BK_OK;
}
