#ifndef BODKIN_UI_FITTING_WORDS_H
#define BODKIN_UI_FITTING_WORDS_H

#include "bodkin/work/fittings.h"

/// Words about calls and about what is to be booked, for the Fittings screen and its forms; all live in the arena handed in.

/// "4A-1, 4A-2": the pieces of a call.
const char *bk_fitting_call_pieces(const bk_fitting_call *call, bk_arena *arena);
/// "Coat: first fitting; Skirt: toile fitting".
const char *bk_fitting_call_titles(const bk_fitting_call *call, bk_arena *arena);
/// "Sat 6 Mar 10:30"; a call without a time has its day alone.
const char *bk_moment_words(bk_moment moment, bk_day today, bk_arena *arena);
/// "in 4 days", "today", "not recorded", "1 not recorded", "fits", "2 fits, 1 again".
const char *bk_fitting_call_standing(const bk_fitting_call *call, bk_day today, bk_arena *arena);
/// One row a piece: which piece, which step, how long, what came of it, what was noted.
const char *bk_fitting_call_detail(const bk_fitting_call *call, bk_day today, bk_arena *arena);

/// How many of a performer's steps can be fitted now.
size_t bk_to_book_next(const bk_fitting_to_book *group);
/// The pieces of those, or where there are none of all, each once: "4A-1, 4A-2".
const char *bk_to_book_pieces(const bk_fitting_to_book *group, bk_arena *arena);
/// The same with what they are: "Coat: first fitting".
const char *bk_to_book_titles(const bk_fitting_to_book *group, bk_arena *arena);
/// The minutes of those.
int64_t bk_to_book_minutes(const bk_fitting_to_book *group);
/// "2 now, 1 later".
const char *bk_to_book_standing(const bk_fitting_to_book *group, bk_arena *arena);
/// What each step is; of those that can be fitted now also how long and since when, one row each.
const char *bk_to_book_detail(const bk_fitting_to_book *group, bk_day today, bk_arena *arena);
/// The same of one step.
const char *bk_wanted_detail(const bk_fitting_wanted *wanted, bk_day today, bk_arena *arena);
/// How urgent a due day is, as a style.
int bk_due_style(bk_day due, bk_day today);

/// The steps that can be fitted now, else the first, as the booking form takes them: "4A-1/fit;4A-2/f1".
const char *bk_to_book_names(const bk_fitting_to_book *group, bk_arena *arena);

/// Whether nothing was recorded of a fitting yet: it can be moved, called off, missed.
bool bk_fitting_is_open(const bk_fitting_line *fitting);
/// The ids of those of a call, in the arena; `*count` how many.
int64_t *bk_fitting_call_open(const bk_fitting_call *call, bk_arena *arena, size_t *count);
/// The call that a fitting (its id) is in, or NULL; `*at` (may be NULL) its place in it.
const bk_fitting_call *bk_fitting_call_of(const bk_fitting_list *list, int64_t fitting, size_t *at);

/// What to mind at every fitting.
extern const char bk_fitting_care[];

#endif
