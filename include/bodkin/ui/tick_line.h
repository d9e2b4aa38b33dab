#ifndef BODKIN_UI_TICK_LINE_H
#define BODKIN_UI_TICK_LINE_H

#include "bodkin/ui/cursor.h"
#include "bodkin/ui/screen.h"
#include "bodkin/work/outlook.h"

/// A question about one of a few steps, asked at the bottom of the Rail, the Bench and of a costume: is it done, is it open again, does
/// its clock start? Up and Down choose another of the steps offered, digits are the minutes it took, Enter does it, Escape
/// leaves it. It stays with the step that it was asked about: where that one is done, changed or taken away at another terminal
/// meanwhile, the question goes, the bottom line says why, and the Enter that was meant for it does nothing.

typedef enum bk_step_act { BK_STEP_DONE, BK_STEP_OPEN, BK_STEP_CLOCK, BK_STEP_ACTS } bk_step_act;

enum { BK_TOOK_ROOM = 7 }; // "10h30"

typedef struct bk_tick_line {
    bool asked;
    bk_step_act act;
    int64_t *steps; ///< ids of those offered; owned
    bool anywhere;  ///< the one offered need not be of the rail
    bk_cursor cursor;
    char took[BK_TOOK_ROOM]; ///< what was typed of the time it took: "45", "1h30"
    bk_wall *wall;
    bk_arena *arena;         ///< of the outlook; NULL: nothing is asked
    bk_step_outlook outlook; ///< of the step asked about, as the person sees it
    bool overtaken;          ///< the question has just gone because of another terminal
} bk_tick_line;

void bk_tick_line_close(bk_tick_line *line);

/// The steps of a costume that are next, in the order in which its pieces and their steps are listed, as indices into the
/// rail's steps; only those of `piece` unless that is BK_NO_INDEX. In `arena`.
bk_indices bk_steps_offered(const bk_rail *rail, const bk_rail_costume *costume, size_t piece,
                            bk_arena *arena);

/// Which of them is most likely meant, as a place among them: the one with id `in_hand` (whose clock runs; 0: none), else the
/// first that waits on nothing but hand sewing, else the first that is no fitting, else the first.
size_t bk_step_likely(const bk_rail *rail, const bk_rail_costume *costume, bk_indices steps, int64_t in_hand);

/// Asks about the steps (indices into those of the wall's rail, at least one), beginning with place `at` among them.
void bk_tick_line_ask(bk_tick_line *line, bk_step_act act, bk_wall *wall, bk_indices steps, size_t at);

/// Asks about one step, known by its id, of whatever production.
void bk_tick_line_ask_one(bk_tick_line *line, bk_step_act act, bk_wall *wall, int64_t step);

/// After a reading: steps that are gone, or no longer as they must be to be asked about, are no longer offered; where that is
/// the one asked about, nothing is asked any more.
void bk_tick_line_keep(bk_tick_line *line, const bk_rail *rail);

/// The step asked about, as an index into the rail's; BK_NO_INDEX where nothing is asked.
size_t bk_tick_line_step(const bk_tick_line *line, const bk_rail *rail);

/// Takes a key while something is asked; true when it was its own.
bool bk_tick_line_take(bk_screen *screen, bk_tick_line *line, const bk_key *key);

/// Draws the question into `rows` rows, at least 2; beneath it what is to be said about the step, and, where `costume` is not
/// NULL and several steps are offered, those with what each waits on, as many as there is room for.
void bk_tick_line_draw(const bk_paint *paint, bk_tick_line *line, const bk_rail *rail,
                       const bk_rail_costume *costume, size_t row, size_t rows);

/// Draws the keys that matter while something is asked over the whole bottom line, and returns the columns used: all.
size_t bk_tick_line_draw_keys(const bk_tick_line *line, const bk_paint *paint, bk_spot spot);

/// What the Keys screen says of them: rows for a table of the screen.
enum { BK_TICK_LINE_ROWS = 4 };
extern const bk_key_row bk_tick_line_rows[BK_TICK_LINE_ROWS];
#define BK_TICK_LINE_TABLE \
    { \
        "While a step is asked about", bk_tick_line_rows, BK_TICK_LINE_ROWS, .alone = true \
    }

#endif
