#ifndef BODKIN_TESTS_SCREEN_SURROUNDINGS_H
#define BODKIN_TESTS_SCREEN_SURROUNDINGS_H

#include "screen/terminal.h"

/// Pins everything the program takes from its surroundings: nothing of the person's own environment is left.
void bk_set_surroundings(const bk_terminal_options *options, int idle);

#endif
