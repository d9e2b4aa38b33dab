#include "screen/terminal.h"

#include <poll.h>
#include <pty.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>
#include <utmp.h>

#include "screen/surroundings.h"
#include "screen/terminal_parts.h"
#include "support/testing.h"

enum {
    PATIENCE_MILLISECONDS = 60000, // a program under sanitizers on a busy machine takes its time
    MILLISECONDS = 1000,
    NANOSECONDS = 1000000,
    READ_ROOM = 65536,
    USUAL_ROWS = 24,
    USUAL_COLUMNS = 80,
    KEY_BYTES = 32
};

// ------------------------------------------------------------------------------------------ what it sends

static int property_set(VTermProp property, VTermValue *value, void *user)
{
    bk_terminal *terminal = user;
    if (property == VTERM_PROP_ALTSCREEN)
        terminal->alternate = value->boolean;
    if (property == VTERM_PROP_CURSORVISIBLE)
        terminal->cursor_seen = value->boolean;
    return 1;
}

static const VTermScreenCallbacks callbacks = {.settermprop = property_set};

// Notes colours: any "ESC [ ... m" with a part from 30 to 49.
static void note_colours(bk_terminal *terminal, const char *bytes, size_t length)
{
    enum { FIRST_COLOUR = 30, LAST_COLOUR = 49 };
    for (size_t i = 0; i + 1 < length; i++) {
        if (bytes[i] != '\033' || bytes[i + 1] != '[')
            continue;
        size_t end = i + 2 + strspn(bytes + i + 2, "0123456789;");
        if (bytes[end] != 'm')
            continue;
        for (const char *part = bytes + i + 2; part < bytes + end; part += strcspn(part, ";m") + 1) {
            int number = atoi(part);
            terminal->coloured |= number >= FIRST_COLOUR && number <= LAST_COLOUR;
        }
    }
}

// Reads what is there now; false at the end.
static bool read_some(bk_terminal *terminal)
{
    static char bytes[READ_ROOM + 1];
    ssize_t length = read(terminal->master, bytes, READ_ROOM);
    if (length <= 0)
        return false;
    bytes[length] = '\0';
    note_colours(terminal, bytes, (size_t)length);
    for (ssize_t i = 0; i < length; i++)
        terminal->beyond_ascii |= (unsigned char)bytes[i] > 0x7F;
    terminal->sent += (size_t)length;
    vterm_input_write(terminal->emulator, bytes, (size_t)length);
    return true;
}

// Looking at a pseudo-terminal hands over everything written to its other side before, so that nothing stays behind.
static void read_all(bk_terminal *terminal)
{
    struct pollfd output = {.fd = terminal->master, .events = POLLIN};
    while (poll(&output, 1, 0) > 0 && (output.revents & POLLIN))
        if (!read_some(terminal))
            return;
}

static long milliseconds_now(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return now.tv_sec * MILLISECONDS + now.tv_nsec / NANOSECONDS;
}

// Waits until `end` has a byte (true) or its end (false), reading meanwhile what the program sends.
static bool await_byte(bk_terminal *terminal, int end)
{
    long until = milliseconds_now() + PATIENCE_MILLISECONDS;
    struct pollfd ends[] = {{.fd = end, .events = POLLIN}, {.fd = terminal->master, .events = POLLIN}};
    for (;;) {
        long left = until - milliseconds_now();
        if (left <= 0 || poll(ends, 2, (int)left) == 0)
            ck_abort_msg("the program did not answer; the screen is:\n%s", bk_terminal_screen(terminal));
        if ((ends[1].revents & (POLLIN | POLLHUP)) && !read_some(terminal))
            ends[1].fd = -1;
        if (ends[0].revents & (POLLIN | POLLHUP)) {
            char byte;
            bool came = read(end, &byte, 1) == 1;
            read_all(terminal);
            return came;
        }
    }
}

static void await_painting(bk_terminal *terminal)
{
    if (!await_byte(terminal, terminal->idle))
        ck_abort_msg("the program has ended; the screen is:\n%s", bk_terminal_screen(terminal));
}

// ---------------------------------------------------------------------------------------- start and end

typedef struct ends {
    int idle[2], stopped[2], resume[2];
} ends;

// What a shell does for the one program it has started: waits, tells when it stops, brings it back when asked.
static void be_shell(pid_t program, const ends *pipes)
{
    int status = 0;
    char byte = '.';
    signal(SIGTTOU, SIG_IGN);
    close(pipes->idle[1]);
    while (waitpid(program, &status, WUNTRACED) == program && WIFSTOPPED(status)) {
        tcsetpgrp(STDIN_FILENO, getpgrp());
        if (write(pipes->stopped[1], &byte, 1) != 1 || read(pipes->resume[0], &byte, 1) != 1)
            break;
        tcsetpgrp(STDIN_FILENO, program);
        kill(-program, SIGCONT);
    }
    _exit(WIFEXITED(status) ? WEXITSTATUS(status) : EXIT_FAILURE);
}

static void begin_shell(const ends *pipes)
{
    pid_t program = fork();
    if (program != 0) {
        setpgid(program, program);
        be_shell(program, pipes);
    }
    setpgid(0, 0);
    signal(SIGTTOU, SIG_IGN);
    tcsetpgrp(STDIN_FILENO, getpid());
    signal(SIGTTOU, SIG_DFL);
}

static void run_program(const bk_terminal_options *options, const ends *pipes)
{
    const char *const arguments[] = {BK_TEST_PROGRAM, options->as ? "--as" : NULL, options->as, NULL};
    if (options->with_shell)
        begin_shell(pipes);
    close(pipes->idle[0]);
    close(pipes->stopped[0]);
    close(pipes->stopped[1]);
    close(pipes->resume[0]);
    close(pipes->resume[1]);
    bk_set_surroundings(options, pipes->idle[1]);
    execv(BK_TEST_PROGRAM, (char *const *)arguments);
    perror(BK_TEST_PROGRAM);
    _exit(EXIT_FAILURE);
}

static void start_emulator(bk_terminal *terminal)
{
    terminal->emulator = vterm_new((int)terminal->rows, (int)terminal->columns);
    vterm_set_utf8(terminal->emulator, 1);
    terminal->screen = vterm_obtain_screen(terminal->emulator);
    terminal->cursor_seen = true;
    vterm_screen_set_callbacks(terminal->screen, &callbacks, terminal);
    vterm_screen_enable_altscreen(terminal->screen, 1);
    vterm_screen_reset(terminal->screen, 1);
}

// Starts the program; nothing is waited for.
static bk_terminal *begin(const bk_terminal_options *options)
{
    static const bk_terminal_options usual = {0};
    const bk_terminal_options *chosen = options ? options : &usual;
    bk_terminal *terminal = calloc(1, sizeof *terminal);
    ends pipes;
    ck_assert_ptr_nonnull(terminal);
    bk_test_folder(); // made here, so that the program does not make one of its own
    ck_assert_int_eq(pipe(pipes.idle) | pipe(pipes.stopped) | pipe(pipes.resume), 0);
    terminal->rows = chosen->rows ? chosen->rows : USUAL_ROWS;
    terminal->columns = chosen->columns ? chosen->columns : USUAL_COLUMNS;
    struct winsize size = {.ws_row = (unsigned short)terminal->rows,
                           .ws_col = (unsigned short)terminal->columns};
    int slave = -1;
    ck_assert_int_eq(openpty(&terminal->master, &slave, NULL, NULL, &size), 0);
    tcgetattr(slave, &terminal->before);
    terminal->child = fork();
    ck_assert_int_ge(terminal->child, 0);
    if (terminal->child == 0) {
        close(terminal->master);
        login_tty(slave);
        run_program(chosen, &pipes);
    }
    close(slave);
    close(pipes.idle[1]);
    close(pipes.stopped[1]);
    close(pipes.resume[0]);
    terminal->idle = pipes.idle[0];
    terminal->stopped = pipes.stopped[0];
    terminal->resume = pipes.resume[1];
    start_emulator(terminal);
    return terminal;
}

bk_terminal *bk_terminal_start(const bk_terminal_options *options)
{
    bk_terminal *terminal = begin(options);
    await_painting(terminal);
    return terminal;
}

// Reads what it sends until the text is on the screen.
static void await_text(bk_terminal *terminal, const char *text)
{
    long until = milliseconds_now() + PATIENCE_MILLISECONDS;
    struct pollfd output = {.fd = terminal->master, .events = POLLIN};
    while (!bk_terminal_shows(terminal, text)) {
        long left = until - milliseconds_now();
        if (left <= 0 || poll(&output, 1, (int)left) == 0 || !read_some(terminal))
            ck_abort_msg("\"%s\" did not come; the screen is:\n%s", text, bk_terminal_screen(terminal));
    }
}

bk_terminal *bk_terminal_start_reckoning(const bk_terminal_options *options, const char *text)
{
    bk_terminal *terminal = begin(options);
    await_text(terminal, text);
    return terminal;
}

static int await_end(bk_terminal *terminal)
{
    int status = 0;
    while (await_byte(terminal, terminal->idle))
        continue;
    ck_assert_int_eq(waitpid(terminal->child, &status, 0), terminal->child);
    read_all(terminal);
    terminal->ended = true;
    return status;
}

bk_terminal *bk_terminal_refused(const bk_terminal_options *options, int *status)
{
    bk_terminal *terminal = begin(options);
    *status = await_end(terminal);
    return terminal;
}

void bk_terminal_close(bk_terminal *terminal)
{
    if (!terminal->ended) {
        kill(terminal->child, SIGKILL);
        waitpid(terminal->child, NULL, 0);
    }
    vterm_free(terminal->emulator);
    close(terminal->master);
    close(terminal->idle);
    close(terminal->stopped);
    close(terminal->resume);
    free(terminal);
}

int bk_terminal_kill(bk_terminal *terminal, int signal_number)
{
    kill(terminal->child, signal_number);
    return await_end(terminal);
}

// -------------------------------------------------------------------------------------------------- keys

static const struct named_key {
    const char *name;
    VTermKey key;
    VTermModifier held;
} named_keys[] = {
    {"Up", VTERM_KEY_UP, VTERM_MOD_NONE},
    {"Down", VTERM_KEY_DOWN, VTERM_MOD_NONE},
    {"Left", VTERM_KEY_LEFT, VTERM_MOD_NONE},
    {"Right", VTERM_KEY_RIGHT, VTERM_MOD_NONE},
    {"PageUp", VTERM_KEY_PAGEUP, VTERM_MOD_NONE},
    {"PageDown", VTERM_KEY_PAGEDOWN, VTERM_MOD_NONE},
    {"Home", VTERM_KEY_HOME, VTERM_MOD_NONE},
    {"End", VTERM_KEY_END, VTERM_MOD_NONE},
    {"Enter", VTERM_KEY_ENTER, VTERM_MOD_NONE},
    {"Escape", VTERM_KEY_ESCAPE, VTERM_MOD_NONE},
    {"Backspace", VTERM_KEY_BACKSPACE, VTERM_MOD_NONE},
    {"Delete", VTERM_KEY_DEL, VTERM_MOD_NONE},
    {"Tab", VTERM_KEY_TAB, VTERM_MOD_NONE},
    {"BackTab", VTERM_KEY_TAB, VTERM_MOD_SHIFT},
};

// Letters pressed with Control.
static const struct control_key {
    const char *name;
    const char *bytes;
} control_keys[] = {{"Control-E", "\005"}, {"Control-S", "\023"}, {"Control-U", "\025"}};

static void write_bytes(const bk_terminal *terminal, const char *bytes, size_t length)
{
    ck_assert_int_eq(write(terminal->master, bytes, length), (ssize_t)length);
}

// What a terminal sends for a key depends on how the program has set it.
static void write_key(const bk_terminal *terminal, const struct named_key *key)
{
    char bytes[KEY_BYTES];
    vterm_keyboard_key(terminal->emulator, key->key, key->held);
    size_t length = vterm_output_read(terminal->emulator, bytes, sizeof bytes);
    write_bytes(terminal, bytes, length);
}

static size_t character_length(const char *text)
{
    size_t length = 1;
    while (((unsigned char)text[length] & 0xC0) == 0x80)
        length++;
    return length;
}

static bool is_word(const char *name, const char *word, size_t length)
{
    return strlen(name) == length && strncmp(name, word, length) == 0;
}

// Writes what a key with a name sends; false where the word is none.
static bool write_named(const bk_terminal *terminal, const char *word, size_t length)
{
    for (size_t i = 0; i < sizeof named_keys / sizeof named_keys[0]; i++)
        if (is_word(named_keys[i].name, word, length)) {
            write_key(terminal, &named_keys[i]);
            return true;
        }
    for (size_t i = 0; i < sizeof control_keys / sizeof control_keys[0]; i++)
        if (is_word(control_keys[i].name, word, length)) {
            write_bytes(terminal, control_keys[i].bytes, strlen(control_keys[i].bytes));
            return true;
        }
    return false;
}

static void press_word(bk_terminal *terminal, const char *word, size_t length, bool await)
{
    if (write_named(terminal, word, length)) {
        if (await)
            await_painting(terminal);
        return;
    }
    if (is_word("Space", word, length)) {
        word = " ";
        length = 1;
    }
    for (const char *end = word + length; word < end; word += character_length(word)) {
        write_bytes(terminal, word, character_length(word));
        if (await)
            await_painting(terminal);
    }
}

static void press(bk_terminal *terminal, const char *keys, bool await)
{
    while (*keys) {
        size_t length = strcspn(keys, " ");
        press_word(terminal, keys, length, await);
        keys += length;
        keys += strspn(keys, " ");
    }
}

void bk_terminal_press(bk_terminal *terminal, const char *keys)
{
    press(terminal, keys, true);
}

void bk_terminal_type(bk_terminal *terminal, const char *keys, const char *text)
{
    press(terminal, keys, false);
    await_text(terminal, text);
}

void bk_terminal_send(bk_terminal *terminal, const char *bytes)
{
    write_bytes(terminal, bytes, strlen(bytes));
    await_painting(terminal);
}

int bk_terminal_end(bk_terminal *terminal, const char *keys)
{
    press(terminal, keys, false);
    return await_end(terminal);
}

void bk_terminal_resize(bk_terminal *terminal, size_t rows, size_t columns)
{
    struct winsize size = {.ws_row = (unsigned short)rows, .ws_col = (unsigned short)columns};
    terminal->rows = rows;
    terminal->columns = columns;
    vterm_set_size(terminal->emulator, (int)rows, (int)columns);
    ck_assert_int_eq(ioctl(terminal->master, TIOCSWINSZ, &size), 0);
    await_painting(terminal);
}

void bk_terminal_await(bk_terminal *terminal, const char *text)
{
    while (!bk_terminal_shows(terminal, text))
        await_painting(terminal);
}

void bk_terminal_pause(bk_terminal *terminal)
{
    write_bytes(terminal, "\032", 1);
    ck_assert(await_byte(terminal, terminal->stopped));
}

void bk_terminal_resume(bk_terminal *terminal)
{
    ck_assert_int_eq(write(terminal->resume, ".", 1), 1);
    await_painting(terminal);
}

bool bk_terminal_settings_as_before(const bk_terminal *terminal)
{
    struct termios now;
    tcgetattr(terminal->master, &now);
    return now.c_iflag == terminal->before.c_iflag && now.c_oflag == terminal->before.c_oflag &&
           now.c_lflag == terminal->before.c_lflag &&
           memcmp(now.c_cc, terminal->before.c_cc, sizeof now.c_cc) == 0;
}
