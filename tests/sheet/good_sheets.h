#ifndef BODKIN_TESTS_SHEET_GOOD_SHEETS_H
#define BODKIN_TESTS_SHEET_GOOD_SHEETS_H

#include "bodkin/sheet/columns.h"
#include "bodkin/sheet/folder_sheets.h"

/// A small production without a fault, every column of every sheet used, for tests that change one thing of it.

/// The text of each sheet, with LF line ends.
extern const char *const good_sheets[BK_SHEETS];

/// Writes all good sheets into the test's folder.
void good_sheets_put(void);
/// Writes one file there.
void sheet_put(const char *file, const char *text);
/// Takes one file away.
void sheet_remove(const char *file);
/// Writes a good sheet with its first `from` replaced by `to`; the test fails when it is not there.
void sheet_change(const char *file, const char *from, const char *to);

/// The test's folder as it was read; everything is freed by reading_free.
typedef struct reading {
    bk_folder *folder;
    bk_faults *faults;
    bk_error error;
    bk_status status;
} reading;

reading reading_of(const char *path, const bk_known *known);
void reading_free(reading *read);

/// Reads the test's folder and demands exactly these sentences, in order, the last one NULL.
void faults_expected(const char *const *sentences);
/// The same with one sentence.
void fault_expected(const char *sentence);
/// The folder has no fault.
void no_fault_expected(void);

/// One change of a good sheet, and the one sentence that is told of it.
typedef struct change {
    const char *file, *from, *to;
    const char *sentence;
} change;

/// Makes each change by itself and demands its sentence.
void changes_expected(const change *changes, size_t count);

#define CHANGES(...) (const change[]){__VA_ARGS__}, sizeof((const change[]){__VA_ARGS__}) / sizeof(change)
#define SENTENCES(...) ((const char *const[]){__VA_ARGS__, NULL})

#endif
