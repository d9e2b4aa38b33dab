#ifndef BODKIN_UI_COSTUME_LINES_H
#define BODKIN_UI_COSTUME_LINES_H

#include "bodkin/ui/paint.h"
#include "bodkin/work/rail.h"

/// The body of the Costume screen as a list of lines, broken for one width of the screen.

typedef enum bk_costume_line_kind {
    BK_LINE_EMPTY,
    BK_LINE_PIECE, ///< name, title, where it comes from, where it is
    BK_LINE_TEXT,  ///< a sentence about the piece above
    BK_LINE_STEP,
    BK_LINE_WAIT ///< a sentence, or a part of it, under the step it belongs to or under its piece
} bk_costume_line_kind;

typedef struct bk_costume_line {
    bk_costume_line_kind kind;
    size_t piece;     ///< into the rail's pieces
    size_t step;      ///< into its steps, for BK_LINE_STEP
    const char *text; ///< for BK_LINE_TEXT and BK_LINE_WAIT
    bool acts;        ///< of a wait: somebody must act
} bk_costume_line;

typedef struct bk_costume_lines {
    const bk_costume_line *items;
    size_t count;
    const size_t *steps; ///< lines that the cursor can stand on
    size_t step_count;
    size_t title_width; ///< of the steps' titles
    size_t by_width;    ///< of who did them
} bk_costume_lines;

/// Lists the lines of a costume for a screen so wide; they live in `arena` and refer to the rail.
bk_costume_lines bk_costume_lines_make(const bk_rail *rail, const bk_rail_costume *costume, size_t columns,
                                       bool ascii, bk_arena *arena);

/// Draws one of them.
void bk_costume_line_draw(const bk_paint *paint, const bk_rail *rail, const bk_rail_costume *costume,
                          const bk_costume_lines *lines, size_t line, size_t row, bool chosen);

/// What there is to say of a step beyond its line: what it comes after, how many hands, which measures, its note; empty where
/// there is nothing. In `arena`.
const char *bk_step_facts(const bk_rail *rail, size_t step, bk_arena *arena);

#endif
