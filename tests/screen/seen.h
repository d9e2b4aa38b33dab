#ifndef BODKIN_TESTS_SCREEN_SEEN_H
#define BODKIN_TESTS_SCREEN_SEEN_H

#include "screen/terminal.h"

/// What must be seen on a terminal; what is seen instead is told where it is not.

void assert_shows(const bk_terminal *terminal, const char *text);
void assert_hides(const bk_terminal *terminal, const char *text);

/// The text in the first row that holds `key`.
void assert_row_has(const bk_terminal *terminal, const char *key, const char *text);
void assert_row_lacks(const bk_terminal *terminal, const char *key, const char *text);

/// The text in the chosen line.
void assert_chosen(const bk_terminal *terminal, const char *text);

#endif
