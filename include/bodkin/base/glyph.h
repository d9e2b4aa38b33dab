#ifndef BODKIN_BASE_GLYPH_H
#define BODKIN_BASE_GLYPH_H

#include <stdbool.h>
#include <stdint.h>

/// Columns that one code point takes on a terminal: 2 for wide characters, 0 for marks that sit on the
/// character before (and Hangul vowels and finals, which join the syllable before), else 1, also where East
/// Asian width is ambiguous.
int bk_glyph_columns(int32_t code);

/// Whether a code point must not reach a terminal: controls, format and bidirectional controls, separators of
/// lines and paragraphs, fillers, tags, private, unassigned and surrogate code points, and those whose width
/// terminals do not agree on or that Unicode 14 does not know.
bool bk_glyph_hidden(int32_t code);

/// Whether a code point only chooses the shape of the character before it.
bool bk_glyph_selector(int32_t code);

#endif
