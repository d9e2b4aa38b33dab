#ifndef BODKIN_UI_QUERY_LINE_H
#define BODKIN_UI_QUERY_LINE_H

#include "bodkin/ui/narrow.h"
#include "bodkin/ui/paint.h"
#include "bodkin/ui/wall.h"

/// The words that narrow a list, while they are typed on the bottom line.

/// Takes a key: a character, Backspace (without a character to take back it ends the typing, `*typing`), Ctrl-U. False where the
/// key is none of these. What finds no room is told.
bool bk_query_line_take(bk_query *query, bool *typing, const bk_key *key, bk_wall *wall);

/// Draws the prompt and the words with the terminal's cursor at their end; returns the columns used.
size_t bk_query_prompt_draw(const bk_query *query, const bk_paint *paint, bk_spot spot, const char *prompt);

/// The same with the prompt of narrowing, `/`.
size_t bk_query_line_draw(const bk_query *query, const bk_paint *paint, bk_spot spot);

/// "Narrowed to "cape": 1 of 20"; in the picture's arena.
const char *bk_query_words(const bk_query *query, const bk_paint *paint, size_t shown, size_t all);

#endif
