#ifndef BODKIN_TESTS_SCREEN_MEASURED_H
#define BODKIN_TESTS_SCREEN_MEASURED_H

#include <stddef.h>

#include "screen/terminal.h"

/// Measures of the performers of "The Salt Road", at the keyboard and in the store.

/// Brings the show in, with `measures` in place of its own sheet of measures (rows without the head; NULL: its own), and opens
/// its Cast. There the cursor is on Ana Ruíz, then come Bo Lindqvist and Chidi Okoro, who was never measured.
bk_terminal *bk_cast_open(const char *measures);

/// Types values, each with its Enter; "" passes a measure over.
void bk_type_values(bk_terminal *terminal, const char *const *values, size_t count);
#define TYPE_VALUES(terminal, ...) \
    bk_type_values((terminal), (const char *const[]){__VA_ARGS__}, \
                   sizeof((const char *const[]){__VA_ARGS__}) / sizeof(const char *))

/// Micrometres of a measure of a performer on a day ("2027-03-02") as the store has it; 0: it is not there.
long bk_stored_measure(const char *performer, const char *on, const char *measure);

/// How many measures a performer's sheet of a day has.
long bk_stored_count(const char *performer, const char *on);

/// Fails the test where the screen does not show the text, and shows the screen.
void bk_must_show(const bk_terminal *terminal, const char *text);
void bk_must_not_show(const bk_terminal *terminal, const char *text);

#endif
