#ifndef BODKIN_WORK_NEXT_NAME_H
#define BODKIN_WORK_NEXT_NAME_H

#include "bodkin/work/rail.h"

/// Names that what is new may have: free ones in the way in which those there are go on. Pure functions of a rail; the texts
/// live in `arena`. NULL where there is nothing to go by.

/// A number for a costume of a role: "4C" after 4A and 4B; for a role's first one its place among `roles`, or where that number
/// is taken the first that is not, with an A.
const char *bk_next_costume(const bk_rail *rail, const char *role, const char *const *roles, size_t count,
                            bk_arena *arena);

/// A key for a piece of a costume: "4A-3" after 4A-1 and 4A-2.
const char *bk_next_piece(const bk_rail *rail, const char *costume, bk_arena *arena);

/// A key for a step, made of the first word of its title: "hem", or "hem2" where that is taken. `taken` are the keys of its piece
/// or its order of work.
const char *bk_next_key(const char *title, const char *const *taken, size_t count, bk_arena *arena);

/// The middle one of the minutes of all steps of a kind, where there are at least three of them; else BK_NOT_KNOWN.
int64_t bk_usual_minutes(const bk_rail *rail, int kind);

#endif
