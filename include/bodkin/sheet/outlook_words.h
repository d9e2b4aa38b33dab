#ifndef BODKIN_SHEET_OUTLOOK_WORDS_H
#define BODKIN_SHEET_OUTLOOK_WORDS_H

#include "bodkin/work/outlook.h"

/// What is worth knowing before a step is marked done, in the words that screens and the command line share. Texts live in
/// `arena`, are as the store has them, and have no full stop; NULL where there is nothing to say.

/// "it comes after what is still open: 1A-1/cut, 1A-1/tack".
const char *bk_outlook_before(const bk_step_outlook *outlook, bk_arena *arena);

/// "1A-1 is out with Dye house, was to be back Sun 28 Feb".
const char *bk_outlook_out(const bk_step_outlook *outlook, bk_day today, bk_arena *arena);

/// "the shelf lacks 5 m of fur, red; 12 hooks", or, once the step is done (`done`), "the shelf lacked ...".
const char *bk_outlook_lacks(const bk_step_outlook *outlook, bool done, bk_arena *arena);

enum { BK_OUTLOOK_REMARKS = 3 };

/// All of it, a sentence each; returns how many.
size_t bk_outlook_remarks(const bk_step_outlook *outlook, bk_day today, bk_arena *arena,
                          const char *remarks[BK_OUTLOOK_REMARKS]);

#endif
