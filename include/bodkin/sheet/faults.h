#ifndef BODKIN_SHEET_FAULTS_H
#define BODKIN_SHEET_FAULTS_H

#include <stdbool.h>

#include "bodkin/base/arena.h"

/// What is wrong with a folder of sheets, all of it: told as `file.csv:LINE: COLUMN: what is wrong and what was expected`.

enum { BK_FAULTS_TOLD = 20 };

typedef struct bk_faults bk_faults;

bk_faults *bk_faults_new(void);
void bk_faults_free(bk_faults *faults);

/// Notes a fault; `sheet` is the number of the file in the order of the sheets, so that they can be told in order. The
/// sentence is made safe for a terminal; the texts handed in stay the caller's.
void bk_faults_add(bk_faults *faults, size_t sheet, const char *file, int line, const char *column,
                   const char *format, ...) BK_PRINTF(6, 7);
/// Whether a fault there would be among those told, so that its sentence is worth making.
bool bk_faults_wanted(const bk_faults *faults, size_t sheet, int line, const char *column);
size_t bk_faults_count(const bk_faults *faults);
/// The sentence of fault number `index` (below count and BK_FAULTS_TOLD) in order of file, line and column.
const char *bk_faults_text(bk_faults *faults, size_t index);

/// The same without file, line and column in front: what is wrong and what was expected.
const char *bk_faults_says(const bk_faults *faults, size_t index);

/// `text` in double quotes for a sentence, cut to a readable length; it lives in `arena`.
const char *bk_faults_quote(bk_arena *arena, const char *text);

#endif
