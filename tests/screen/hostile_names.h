#ifndef BODKIN_TESTS_SCREEN_HOSTILE_NAMES_H
#define BODKIN_TESTS_SCREEN_HOSTILE_NAMES_H

#include "screen/terminal.h"

/// Names that would do harm if they reached the terminal, or that do not take a cell a character.
enum { BK_HOSTILE_NAMES = 12 };
extern const char *const bk_hostile_names[BK_HOSTILE_NAMES];

/// Fails the test where a character that turns the order of a row round, or steers the terminal, is on the screen.
void bk_assert_nothing_forbidden(const bk_terminal *terminal, const char *name);

#endif
