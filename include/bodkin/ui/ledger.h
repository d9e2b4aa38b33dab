#ifndef BODKIN_UI_LEDGER_H
#define BODKIN_UI_LEDGER_H

#include "bodkin/ui/columns.h"
#include "bodkin/ui/cursor.h"
#include "bodkin/ui/form.h"
#include "bodkin/ui/narrow.h"

/// A screen that is a list: a head, columns, a cursor, narrowing, the chosen line told whole below. Most screens are one:
/// they say what the lines are, and which form adds and changes them. Their `self` is a bk_ledger, with what they remember
/// themselves in `own`.

typedef struct bk_ledger_line {
    int64_t
        id; ///< of its record; 0: a heading, where the cursor does not stop; below 0: a line that is no record's
    bk_family family;
    const char *cells[BK_COLUMNS_MOST]; ///< NULL: empty; a heading has its text in the first and no others
    int style;                          ///< of the line (bk_style)
    const int *styles;                  ///< one for each column, in place of `style`; NULL: none
    const char *name;   ///< what a question calls it: "piece 4A-1 Linen shirt"; NULL: its first cell
    const char *detail; ///< what is told below while it is chosen, perhaps several paragraphs with '\n'
    int64_t argument;   ///< the screen's own
} bk_ledger_line;

typedef struct bk_ledger bk_ledger;

typedef struct bk_ledger_kind {
    /// A column in which no line has anything is left out, and where room is short those that are `spare`, the last first.
    const bk_list_column *columns;
    size_t column_count;
    /// Adds the lines with bk_ledger_add, and sets the ledger's `title`, `aside` and `summary`; texts in the ledger's arena.
    /// May take the screen off the stack, and then returns at once.
    bk_status (*fill)(bk_screen *screen, bk_ledger *ledger, bk_error *error);
    const char *empty; ///< what is said where there is no line: what it is for and which key adds one
    /// Fills in what the form that `+` (`fresh`) and `e` open begins with, beyond the record's id and which one it follows;
    /// `chosen` NULL for none. False: nothing opens. NULL: nothing more is needed. The form is bk_form_of the line's family
    /// (`e`) or of `family` (`+`).
    bool (*start)(bk_screen *screen, const bk_ledger_line *chosen, bool fresh, bk_form_start *start);
    bk_family family;   ///< that `+` adds; BK_FAMILIES: nothing is added by it
    bool moves;         ///< `[` and `]` move its lines
    bool of_production; ///< it goes when no production is shown any more
    size_t detail_rows; ///< rows kept for the detail; 0: none
} bk_ledger_kind;

struct bk_ledger {
    const bk_ledger_kind *kind;
    bk_arena *arena;       ///< of the lines; another one at each reading
    bk_ledger_line *lines; ///< all of them
    size_t line_count, line_room;
    size_t *shown; ///< indices into `lines` of those that match; BK_NO_LINE: an empty row
    size_t shown_count;
    bk_cursor cursor; ///< in `shown`
    bk_query query;
    bool typing;
    const char *title;   ///< left of the head
    const char *aside;   ///< right of the head; may be NULL
    const char *summary; ///< the second row; may be NULL
    size_t begin;        ///< set by the first `fill`: the line where the cursor begins
    size_t
        window; ///< for a list that is read in parts: lines to read, doubled when the cursor comes to the end
    bool more;  ///< set by `fill`: there are more lines than `window`
    void *own;  ///< the screen's own; freed with free()

    size_t wanted[BK_COLUMNS_MOST]; ///< cells that the texts of each column want
    bool headed;                    ///< some line is a heading
    bk_findable *findable;          ///< made when it is first needed after each reading
    bool filled;                    ///< was read at least once
    bool stays;      ///< at the next reading the cursor stays at its place in the list, not on its record
    bk_family asked; ///< of the record that a question is about
};

#define BK_NO_LINE SIZE_MAX

/// A ledger for bk_stack_push.
void *bk_ledger_new(const bk_ledger_kind *kind, void *own);
bk_ledger *bk_ledger_of(const bk_screen *screen);
/// Adds a line (copied; its texts stay where they are, in the ledger's arena).
void bk_ledger_add(bk_ledger *ledger, const bk_ledger_line *line);
/// The chosen line, or NULL.
const bk_ledger_line *bk_ledger_chosen(const bk_screen *screen);
/// Puts the cursor on the line of that record where it is shown.
void bk_ledger_find(const bk_screen *screen, bk_family family, int64_t id);
/// Opens the form of a family: of the chosen line's record, or `fresh` a new one.
void bk_ledger_open_form(bk_screen *screen, bk_family family, bool fresh);
/// Shows what matches the query, the cursor on that record where it is shown, else on line `at` of `shown`.
void bk_ledger_show(bk_ledger *ledger, bk_family family, int64_t id, size_t at);
/// Whether a line of `shown` is one where the cursor can stand.
bool bk_ledger_stands(const bk_ledger *ledger, size_t at);

/// The rows kept for the detail, just above the bottom line, for a screen that draws something else there while the chosen line
/// has none.
size_t bk_ledger_detail_rows(const bk_screen *screen, const bk_paint *paint);

/// Operations for the table of a screen's kind.
void bk_ledger_close(bk_screen *screen);
/// A screen that cannot be read the first time takes itself off.
bk_status bk_ledger_read(bk_screen *screen, bk_error *error);
void bk_ledger_draw(bk_screen *screen, const bk_paint *paint);
size_t bk_ledger_table(const bk_screen *screen);
bool bk_ledger_take(bk_screen *screen, const bk_key *key);
size_t bk_ledger_draw_bottom(bk_screen *screen, const bk_paint *paint, bk_spot spot);
#define BK_LEDGER_OPERATIONS \
    .close = bk_ledger_close, .read = bk_ledger_read, .draw = bk_ledger_draw, .table = bk_ledger_table, \
    .take = bk_ledger_take, .draw_bottom = bk_ledger_draw_bottom

/// What keys do; rows for a screen's own key table.
void bk_ledger_move(bk_screen *screen, const bk_key_row *row);
void bk_ledger_narrow(bk_screen *screen, const bk_key_row *row);
void bk_ledger_add_record(bk_screen *screen, const bk_key_row *row);
void bk_ledger_change(bk_screen *screen, const bk_key_row *row);
void bk_ledger_take_away(bk_screen *screen, const bk_key_row *row); ///< asks first
void bk_ledger_shift(bk_screen *screen, const bk_key_row *row);     ///< argument -1: earlier, 1: later
bool bk_ledger_has_line(const bk_screen *screen);

/// Rows that every ledger has: arrows and pages, `/`.
#define BK_LEDGER_MOVE_ROWS \
    {.name = BK_KEY_UP, .written = "Up, Down", .help = "to the line above or below", .act = bk_ledger_move}, \
        {.name = BK_KEY_DOWN, .act = bk_ledger_move}, \
        {.name = BK_KEY_PAGE_UP, \
         .written = "PgUp, PgDn", \
         .help = "a page up or down", \
         .act = bk_ledger_move}, \
        {.name = BK_KEY_PAGE_DOWN, .act = bk_ledger_move}, \
        {.name = BK_KEY_HOME, \
         .written = "Home, End", \
         .help = "to the first or the last line", \
         .act = bk_ledger_move}, \
        {.name = BK_KEY_END, .act = bk_ledger_move}, \
    { \
        .name = BK_KEY_TYPED, .typed = "/", .written = "/", .bottom = "narrow", .spare = true, \
        .help = "narrow the list to what matches the words you type", .act = bk_ledger_narrow \
    }
/// The same with Escape back, for the end of its own table.
#define BK_LEDGER_ROWS \
    BK_LEDGER_MOVE_ROWS, \
    { \
        .name = BK_KEY_ESCAPE, .written = "Escape", .bottom = "back", .help = "end narrowing, or go back", \
        .act = bk_ledger_back \
    }
/// Rows of a ledger whose lines are added, changed and taken away; for one that adds in a way of its own, the last two.
#define BK_LEDGER_EDIT_ROWS \
    {.name = BK_KEY_TYPED, \
     .typed = "+", \
     .written = "+", \
     .bottom = "new", \
     .help = "add one", \
     .act = bk_ledger_add_record}, \
        BK_LEDGER_CHANGE_ROWS
#define BK_LEDGER_CHANGE_ROWS \
    {.name = BK_KEY_TYPED, \
     .typed = "e", \
     .written = "e", \
     .bottom = "change", \
     .help = "change the one under the cursor", \
     .act = bk_ledger_change, \
     .matters = bk_ledger_has_line}, \
    { \
        .name = BK_KEY_TYPED, .typed = "-", .written = "-", .bottom = "take away", .spare = true, \
        .help = "take away the one under the cursor; it asks first", .act = bk_ledger_take_away, \
        .matters = bk_ledger_has_line \
    }
#define BK_LEDGER_SHIFT_ROWS \
    {.name = BK_KEY_TYPED, \
     .typed = "[", \
     .written = "[ ]", \
     .help = "move it earlier or later in the list", \
     .act = bk_ledger_shift, \
     .argument = -1}, \
    { \
        .name = BK_KEY_TYPED, .typed = "]", .act = bk_ledger_shift, .argument = 1 \
    }
void bk_ledger_back(bk_screen *screen, const bk_key_row *row);

/// The keys while a ledger is narrowed by typing: the second table of every ledger screen, whose tables are
/// `{{.rows = rows, .count = sizeof rows / sizeof rows[0]}, BK_LEDGER_TYPING_TABLE}`.
enum { BK_LEDGER_TYPING_ROWS = 8 };
extern const bk_key_row bk_ledger_typing_rows[BK_LEDGER_TYPING_ROWS];
#define BK_LEDGER_TYPING_TABLE \
    { \
        .title = "While you type after /", .rows = bk_ledger_typing_rows, .count = BK_LEDGER_TYPING_ROWS, \
        .alone = true \
    }

#endif
