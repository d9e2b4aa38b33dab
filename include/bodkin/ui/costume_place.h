#ifndef BODKIN_UI_COSTUME_PLACE_H
#define BODKIN_UI_COSTUME_PLACE_H

#include "bodkin/ui/costume_lines.h"
#include "bodkin/ui/keys.h"

/// The cursor of the Costume screen: at which stop it stands, and which lines are seen. Pure.

typedef struct bk_costume_place {
    size_t at;   ///< into the stops
    size_t top;  ///< the first line seen
    size_t seen; ///< how many lines are seen at once, at least 1
} bk_costume_place;

/// Brings the chosen stop, with what belongs to it, in sight.
void bk_costume_place_fit(bk_costume_place *place, const bk_costume_lines *lines);

/// The piece of the chosen stop begins at the top.
void bk_costume_place_begin(bk_costume_place *place, const bk_costume_lines *lines);

/// Moves by an arrow, a page, Home or End.
void bk_costume_place_key(bk_costume_place *place, const bk_costume_lines *lines, bk_key_name name);

#endif
