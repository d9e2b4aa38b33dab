#ifndef BODKIN_TESTS_SCREEN_FORM_FIELDS_H
#define BODKIN_TESTS_SCREEN_FORM_FIELDS_H

#include "screen/terminal.h"

/// The fields of a form on the screen, by their labels.

/// The row of a field; fails the test where there is none.
const char *bk_field_row(const bk_terminal *terminal, const char *label);

/// The field holds that text, or it stands beside it.
void bk_assert_field(const bk_terminal *terminal, const char *label, const char *text);

/// The cursor is in that field.
void bk_assert_at_field(const bk_terminal *terminal, const char *label);

#endif
