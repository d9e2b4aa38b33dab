#ifndef BODKIN_UI_COSTUME_VIEW_H
#define BODKIN_UI_COSTUME_VIEW_H

#include "bodkin/ui/clock_line.h"
#include "bodkin/ui/costume_place.h"
#include "bodkin/ui/tick_line.h"

/// What the Costume screen remembers; shared by its files only.

typedef struct bk_costume_view {
    char *number; ///< of the costume as it was read last
    int64_t id;   ///< of the costume, which may be renumbered; 0: not read yet
    bk_arena *beside_arena;
    bk_costume_beside beside;
    bk_clock_line clock;
    bk_arena *arena; ///< of the lines
    bk_costume_lines lines;
    size_t columns; ///< that the lines were broken for; 0: not yet
    bk_costume_place place;
    bk_family chosen_family; ///< of the record under the cursor, which a reading may move
    int64_t chosen_id;       ///< 0: none before the first drawing
    char *chosen_name;       ///< its own; NULL: none yet
    bk_tick_line tick;
    bool adding; ///< a letter is awaited for what to add
} bk_costume_view;

/// The costume shown; NULL where it is no longer there.
const bk_rail_costume *bk_costume_shown(const bk_screen *screen);

/// Where the cursor stands.
const bk_costume_stop *bk_costume_stop_chosen(const bk_screen *screen);

/// After the lines were made: the cursor goes to the record that was chosen, by its id, else by its name; at first to a step that
/// is next. Where it is gone the cursor stays where it was.
void bk_costume_find_chosen(const bk_screen *screen);

/// Remembers the record where the cursor stands as the chosen one.
void bk_costume_remember_chosen(const bk_screen *screen);

#endif
