#ifndef BODKIN_SHEET_SNAG_WORDS_H
#define BODKIN_SHEET_SNAG_WORDS_H

#include "bodkin/work/forecast.h"

/// What stands in the way of a forecast, in plain sentences with what to do, without a full stop. Texts in `arena`, as the store has
/// them (not yet made safe for a terminal).

/// One sentence about one snag: "4A-1/cut: nobody can cut; give somebody the skill, or ask for help (Hands)".
const char *bk_snag_sentence(const bk_snag *snag, bk_day today, bk_arena *arena);

/// The same for all snags of a costume: those that say the same of several steps are one sentence, which names them all: "4A-1/cut,
/// 4A-2/cut: ...". `*sentences` in `arena`; returns how many.
size_t bk_snag_sentences(const bk_snag *snags, size_t count, bk_day today, bk_arena *arena,
                         const char *const **sentences);

#endif
