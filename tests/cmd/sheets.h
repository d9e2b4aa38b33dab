#ifndef BODKIN_TESTS_CMD_SHEETS_H
#define BODKIN_TESTS_CMD_SHEETS_H

#include <stddef.h>

#include "support/program.h"
#include "support/shell.h"
#include "support/testing.h"

/// Folders of sheets in the test's folder, for the real program to take in.

/// "The Salt Road", opening on Fri 4 Jun 2027: three costumes, with a contact, measures, an order, a fitting.
/// Written as the folder of that name; returns its path.
const char *sheets_put(const char *folder);

/// Writes one file of it, all of it (`length` bytes, for those that hold a NUL), or takes it out.
void sheet_write(const char *folder, const char *file, const char *text);
void sheet_write_bytes(const char *folder, const char *file, const char *bytes, size_t length);
void sheet_remove(const char *folder, const char *file);

/// Puts `to` in the place of the first `from` in one of its sheets; the test fails when that is not there.
void sheet_change(const char *folder, const char *file, const char *from, const char *to);

/// Writes the sheets anew as "show" and takes them into the store.
void show_import(void);

/// The path of `file` in a folder of the test's folder.
const char *path_in(const char *folder, const char *file);

/// Fails the test unless `text` holds `words`; or where it does.
void expect_words(const char *text, const char *words);
void expect_no_words(const char *text, const char *words);

/// How many bytes of a text are no printable ASCII and no line end.
size_t odd_bytes(const char *text);

#endif
