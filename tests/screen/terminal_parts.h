#ifndef BODKIN_TESTS_SCREEN_TERMINAL_PARTS_H
#define BODKIN_TESTS_SCREEN_TERMINAL_PARTS_H

#include <sys/types.h>
#include <termios.h>

#include <vterm.h>

#include "screen/terminal.h"

/// What terminal.c and picture.c share.
struct bk_terminal {
    int master;
    int idle;    ///< a byte comes for each painting; its end when the program has ended
    int stopped; ///< with a shell: a byte comes when the program has stopped
    int resume;  ///< with a shell: a byte brings it back
    pid_t child; ///< the program, or the shell
    size_t rows, columns;
    size_t sent;
    bool coloured, beyond_ascii, alternate, cursor_seen, ended;
    struct termios before;
    VTerm *emulator;
    VTermScreen *screen;
};

#endif
