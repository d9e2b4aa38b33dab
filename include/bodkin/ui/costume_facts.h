#ifndef BODKIN_UI_COSTUME_FACTS_H
#define BODKIN_UI_COSTUME_FACTS_H

#include "bodkin/work/rail.h"

/// What the Costume screen says of pieces and steps in words. All texts are in `arena`.

/// The numbers of the other costumes it is worn with: "4B, 4C"; empty where there is none.
const char *bk_piece_other_costumes(const bk_rail *rail, const bk_rail_costume *costume, size_t piece,
                                    bk_arena *arena);

/// For the piece's line: "made here; stand 2; also worn with 4B".
const char *bk_piece_facts(const bk_rail *rail, const bk_rail_costume *costume, size_t piece,
                           bk_arena *arena);

/// Below, whole: the same, whom it is out with and until when, where it comes from and when it goes back.
const char *bk_piece_more(const bk_rail *rail, const bk_rail_costume *costume, size_t piece, bk_arena *arena);

/// What there is to say of a step beyond its line: what it comes after, how many hands, which measures, its note; empty where
/// there is nothing.
const char *bk_step_facts(const bk_rail *rail, size_t step, bk_arena *arena);

#endif
