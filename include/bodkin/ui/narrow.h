#ifndef BODKIN_UI_NARROW_H
#define BODKIN_UI_NARROW_H

#include "bodkin/work/forecast.h"

/// Narrowing a list to what matches the words that are typed.

enum { BK_QUERY_ROOM = 120 };

/// What was typed, UTF-8.
typedef struct bk_query {
    char text[BK_QUERY_ROOM];
    size_t length;
} bk_query;

/// Adds a typed character (UTF-8); one that finds no room is not taken, and false says so.
bool bk_query_add(bk_query *query, const char *typed);
/// Takes the last character back; false when there was none.
bool bk_query_take_back(bk_query *query);
void bk_query_clear(bk_query *query);

/// What can be found, folded (bk_text_fold): a text for each line of a list.
typedef struct bk_findable bk_findable;

/// Gives text number `index` of what can be found; it lives in `arena`, or longer.
typedef const char *bk_findable_text(const void *context, size_t index, bk_arena *arena);

/// Folds `count` texts, which are not needed afterwards. Freed by bk_findable_free (NULL allowed).
bk_findable *bk_findable_of(size_t count, bk_findable_text *text, const void *context);

/// The same of the costumes of a rail: number, role, performer, title, state, urgency by the forecast (may be NULL), waits.
bk_findable *bk_findable_new(const bk_rail *rail, const bk_forecast *forecast);
void bk_findable_free(bk_findable *findable);

/// Sets `found[i]` for each text: whether every word of the query, folded, is somewhere in it. An empty query
/// finds all.
void bk_findable_match(const bk_findable *findable, const bk_query *query, bool *found);

#endif
