#ifndef BODKIN_WORK_RECORD_WORDS_H
#define BODKIN_WORK_RECORD_WORDS_H

#include "bodkin/work/record_desk.h"

/// How records are called in sentences of the daybook; never with a private
/// value. Texts in the job's arena.

/// What one record of a family is: "a costume"; NULL where the family is not
/// filled in one at a time.
const char *bk_record_noun(bk_family family);

/// A record with its names filled in, as it is called: "piece 4A-1 Linen
/// shirt".
const char *bk_record_called(const bk_desk *desk, bk_family family, const void *record);

/// So many of something.
typedef struct bk_counted {
    size_t count;
    const char *one, *many; ///< "piece", "pieces"
} bk_counted;

/// Those that are not 0, joined: "3 pieces, 24 steps and 2 fittings"; NULL
/// where all are 0.
const char *bk_counted_words(bk_arena *arena, const bk_counted *items, size_t count);

#endif
