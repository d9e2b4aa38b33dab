#ifndef BODKIN_UI_COSTUME_LINES_H
#define BODKIN_UI_COSTUME_LINES_H

#include "bodkin/ui/costume_beside.h"
#include "bodkin/work/forecast.h"

/// The body of the Costume screen as a list of lines, broken for one width of the screen, and the places among them where the
/// cursor can stand.

typedef enum bk_costume_line_kind {
    BK_LINE_EMPTY,
    BK_LINE_PIECE, ///< name, title, where it comes from, where it is
    BK_LINE_TEXT,  ///< a sentence about the piece above
    BK_LINE_STEP,
    BK_LINE_NEED, ///< what the step above needs: a text, or the sentence of a wait
    BK_LINE_WAIT  ///< a sentence, or a part of it, under the step it belongs to or under its piece
} bk_costume_line_kind;

/// Columns of a step's line beside those that depend on what stands there, and between them.
enum { BK_LINE_KIND_COLUMNS = 7, BK_LINE_MINUTES_COLUMNS = 8, BK_LINE_CAN_WAIT_COLUMNS = 8, BK_LINE_GAP = 2 };

enum { BK_LINE_STEP_COLUMN = 3, BK_LINE_MARK_COLUMNS = 4, BK_LINE_WAIT_COLUMN = 11, BK_LINE_MARGIN = 1 };

typedef struct bk_costume_line {
    bk_costume_line_kind kind;
    size_t piece;     ///< into the rail's pieces
    size_t step;      ///< into its steps, for all lines of a step
    const char *text; ///< for BK_LINE_TEXT, BK_LINE_NEED and BK_LINE_WAIT
    bool waits;       ///< of a need: it is a wait
    bool acts;        ///< of a wait: somebody must act
} bk_costume_line;

/// Where the cursor can stand: on the costume itself, which is told above the lines, on a piece, a step or a need.
typedef struct bk_costume_stop {
    bk_family family; ///< BK_COSTUMES, BK_PIECES, BK_STEPS or BK_NEEDS
    int64_t id;
    size_t line; ///< the first of its lines; BK_NO_INDEX for the costume
    size_t piece, step,
        need; ///< into the rail's pieces and steps, and the needs; BK_NO_INDEX where it is of none
} bk_costume_stop;

typedef struct bk_costume_lines {
    const bk_costume_line *items;
    size_t count;
    const bk_costume_stop *stops; ///< the first one is the costume
    size_t stop_count;
    size_t title_width; ///< of the titles of steps that are done
    size_t day_width;   ///< of when they were
    size_t by_width;    ///< of who did them
    size_t open_width;  ///< of the titles of open steps, which have the room of day and name too
    bool wait_within;   ///< that they can wait is told at the end of the title: behind the minutes is no room
    bool planned;       ///< open steps have a planned day and who does them where done ones have theirs
} bk_costume_lines;

/// Lists the lines of a costume for a screen so wide; they live in `arena` and refer to the rail. `forecast` may be NULL.
bk_costume_lines bk_costume_lines_make(const bk_rail *rail, const bk_rail_costume *costume,
                                       const bk_costume_beside *beside, const bk_forecast *forecast,
                                       size_t columns, bool ascii, bk_arena *arena);

/// The column at which a line's text begins.
size_t bk_costume_line_column(bk_costume_line_kind kind);

#endif
