#ifndef BODKIN_BASE_SAFE_H
#define BODKIN_BASE_SAFE_H

#include <stdbool.h>

#include "bodkin/base/arena.h"

/// `text` made safe for a terminal: control characters (C0, C1, DEL), bidirectional controls, line and
/// paragraph separators and other invisible format characters become a visible "·" (line ends and tabs a
/// space), malformed bytes "?", more than four combining marks in a row are dropped, a variation selector
/// behind its character is dropped, and a mark with nothing before it gets a "·" to sit on. A right-to-left
/// run stays as it is, in logical order; the controls that could reorder what stands round it are gone.
/// `ascii` transliterates to plain ASCII by decomposition (é to e) and a short table of letters that have
/// none (ø to o), else "?". Making it safe again changes nothing. NULL gives the empty text.
char *bk_text_safe(bk_arena *arena, const char *text, bool ascii);

/// `text` folded for finding: case folded, accents removed, compatibility forms unified. Folding it again
/// changes nothing. NULL gives the empty text.
char *bk_text_fold(bk_arena *arena, const char *text);

#endif
