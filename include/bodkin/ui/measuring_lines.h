#ifndef BODKIN_UI_MEASURING_LINES_H
#define BODKIN_UI_MEASURING_LINES_H

#include "bodkin/ui/cursor.h"
#include "bodkin/ui/form_line.h"
#include "bodkin/ui/wall.h"
#include "bodkin/work/history.h"

/// A measure sheet while it is taken: its lines, what is typed in them and what that means. For the files of the Measuring
/// screen only.

/// What a line asks for. The first three stand above the list.
typedef enum bk_measuring_part {
    BK_MEASURING_DAY,
    BK_MEASURING_BY,
    BK_MEASURING_OVER,
    BK_MEASURING_VALUE,
    BK_MEASURING_GAP,  ///< nothing: from here on are measures that a sheet seldom has
    BK_MEASURING_OTHER ///< the name of one more measure
} bk_measuring_part;

enum { BK_MEASURING_FIRST = BK_MEASURING_VALUE }; ///< the first line of the list

typedef struct bk_measuring_line {
    bk_measuring_part part;
    char *name; ///< owned; of a value the measure
    const bk_measure_term *term;
    bk_form_line text;
    bk_length value; ///< what was typed; BK_NO_AMOUNT: nothing, or no length
    bk_length last;  ///< on the newest sheet up to the day, or BK_NO_AMOUNT
    bk_day last_on;
    bool asked;  ///< open steps list it
    char *wrong; ///< owned; why it is no length, no day; NULL: nothing against it
    char *doubt; ///< owned; why it can hardly be true; NULL: nothing against it
    bool told;   ///< what is wrong was seen when the cursor would have gone on
} bk_measuring_line;

typedef enum bk_measuring_mode {
    BK_MEASURING_FILLING,
    BK_MEASURING_CHECKING ///< shows what is doubtful on the whole sheet, and asks
} bk_measuring_mode;

/// Something to look at before the sheet is saved.
typedef struct bk_measuring_finding {
    size_t line;
    const char *says;
} bk_measuring_finding;

typedef struct bk_measuring {
    bk_wall *wall;
    int64_t performer;
    bk_unit unit;    ///< that is typed where none is written
    bk_arena *arena; ///< of the history
    bk_history history;
    bk_measuring_line *lines; ///< owned
    size_t count, room;
    bk_day day;     ///< of the sheet; BK_NO_DAY while none is typed
    size_t at;      ///< the line at hand
    size_t left;    ///< the line that was left last; `count`: none
    bk_cursor seen; ///< the part of the list that is seen, from BK_MEASURING_FIRST on
    bk_measuring_mode mode;
    bk_arena *checked; ///< of the findings
    bk_measuring_finding *findings;
    bk_cursor finding; ///< the one at hand
} bk_measuring;

/// Begins for a performer (its id), with nothing read yet; freed by bk_measuring_free.
bk_measuring *bk_measuring_new(bk_wall *wall, int64_t performer);
void bk_measuring_free(bk_measuring *sheet);

/// Reads the history again; the first time it makes the lines. BK_REFUSED as bk_history_read.
bk_status bk_measuring_read(bk_measuring *sheet, bk_error *error) BK_MUST_USE;

bk_measuring_line *bk_measuring_at_hand(const bk_measuring *sheet);
bool bk_measuring_is_typed(const bk_measuring_line *line);  ///< more than blanks stand there
size_t bk_measuring_typed_count(const bk_measuring *sheet); ///< lines of the list where something is typed
/// The nearest line from `from` on where the cursor can stand, `by` 1 or -1; `from` where there is none.
size_t bk_measuring_next(const bk_measuring *sheet, size_t from, int by);
/// Puts the cursor on a line, behind what is typed there.
void bk_measuring_arrive(bk_measuring *sheet, size_t index);
/// The line of a measure, however it is capitalised; a new one before the last line where it has none.
size_t bk_measuring_line_of(bk_measuring *sheet, const char *name);
/// Puts it on the measure whose name is typed in the last line, in a line of its own where it has none yet.
void bk_measuring_begin_other(bk_measuring *sheet);
/// Whether anything was typed that would be lost.
bool bk_measuring_is_changed(const bk_measuring *sheet);

/// Something was typed in the line at hand: what was said about it no longer holds.
void bk_measuring_touch(bk_measuring *sheet);
/// Reads what is typed in a line: sets `value` or `day`, and `wrong`.
void bk_measuring_understand(bk_measuring *sheet, size_t index);
/// Doubts all values anew by what is on the sheet so far.
void bk_measuring_doubt(bk_measuring *sheet);

/// Keeps a copy of a sentence (NULL: none) in place of the one before.
void bk_measuring_keep(char **place, const char *sentence);

#endif
