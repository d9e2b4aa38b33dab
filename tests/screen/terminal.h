#ifndef BODKIN_TESTS_SCREEN_TERMINAL_H
#define BODKIN_TESTS_SCREEN_TERMINAL_H

#include <stdbool.h>
#include <stddef.h>

/// The real program on a pseudo-terminal, and an emulator that reads what it draws. Nothing here waits for time: the program
/// tells when its picture is painted and it waits for a key, and every wait that lasts too long fails the test.

typedef struct bk_terminal bk_terminal;

typedef struct bk_terminal_options {
    const char *type;     ///< TERM; NULL: xterm-256color
    const char *locale;   ///< LC_ALL; NULL: C.UTF-8
    const char *today;    ///< NULL: 2027-03-02
    const char *editor;   ///< EDITOR; NULL: not set
    const char *as;       ///< --as; NULL: not given
    const char *tries;    ///< BODKIN_TRIES; NULL: a few, so that all is reckoned soon
    size_t rows, columns; ///< 0: 24 and 80
    bool no_colour;       ///< NO_COLOR is set
    bool with_shell;      ///< started by something like a shell, so that it can be paused
} bk_terminal_options;

/// Starts the program on a terminal (NULL: the usual options), with the store of bk_program_store(), and waits until it is
/// painted. Ended by bk_terminal_close.
bk_terminal *bk_terminal_start(const bk_terminal_options *options);

/// Starts it and waits until the text is on the screen, whether or not it is still reckoning; then no key is answered by a byte:
/// bk_terminal_type is for that.
bk_terminal *bk_terminal_start_reckoning(const bk_terminal_options *options, const char *text);

/// Starts it where it must refuse, and waits until it has ended; `*status` is its wait status (waitpid).
bk_terminal *bk_terminal_refused(const bk_terminal_options *options, int *status);

/// Takes the program away, if it still runs.
void bk_terminal_close(bk_terminal *terminal);

/// Presses keys, each when the one before is answered: names between spaces (Up Down Left Right PageUp PageDown Home End Enter
/// Escape Backspace Delete Tab BackTab Control-E Control-S Control-U Space), everything else is typed character by character.
void bk_terminal_press(bk_terminal *terminal, const char *keys);

/// Presses keys at once, one after the other, and waits until the text is on the screen, whether or not it is still reckoning.
void bk_terminal_type(bk_terminal *terminal, const char *keys, const char *text);

/// Sends bytes as they are and waits until they are answered.
void bk_terminal_send(bk_terminal *terminal, const char *bytes);

/// Makes the terminal another size and waits until the program is painted.
void bk_terminal_resize(bk_terminal *terminal, size_t rows, size_t columns);

/// Waits for paintings until the text is on the screen.
void bk_terminal_await(bk_terminal *terminal, const char *text);

/// A row as text without the spaces at its end, or the whole screen with line ends; good until the next call of the same.
const char *bk_terminal_row(const bk_terminal *terminal, size_t row);
const char *bk_terminal_screen(const bk_terminal *terminal);
bool bk_terminal_shows(const bk_terminal *terminal, const char *text);

/// The first row that holds the text; fails the test where none does.
size_t bk_terminal_find(const bk_terminal *terminal, const char *text);

/// The row whose first cell is shown in reverse: the chosen line. Fails the test where there is none.
size_t bk_terminal_chosen(const bk_terminal *terminal);

/// Whether the program has asked for a colour since it was started.
bool bk_terminal_coloured(const bk_terminal *terminal);

/// Whether a byte outside ASCII was sent since it was started.
bool bk_terminal_beyond_ascii(const bk_terminal *terminal);

bool bk_terminal_cursor_seen(const bk_terminal *terminal);
bool bk_terminal_alternate(const bk_terminal *terminal); ///< the other screen is shown

/// Bytes the program has sent since the last call.
size_t bk_terminal_sent(bk_terminal *terminal);

/// Presses keys without waiting for an answer, and waits until the program ends; its wait status (waitpid).
int bk_terminal_end(bk_terminal *terminal, const char *keys);

/// Sends a signal, and waits until the program ends; its wait status.
int bk_terminal_kill(bk_terminal *terminal, int signal_number);

/// With a shell: pauses by the key Control-Z and waits until the program has stopped; brings it back and waits until it is
/// painted.
void bk_terminal_pause(bk_terminal *terminal);
void bk_terminal_resume(bk_terminal *terminal);

/// Whether the terminal is set (termios) as it was before the program started.
bool bk_terminal_settings_as_before(const bk_terminal *terminal);

#endif
