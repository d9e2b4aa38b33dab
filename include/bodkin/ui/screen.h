#ifndef BODKIN_UI_SCREEN_H
#define BODKIN_UI_SCREEN_H

#include "bodkin/ui/paint.h"
#include "bodkin/ui/wall.h"

/// A screen is one const table of operations and what it remembers (`self`). Screens lie on a stack; the one on top is
/// seen and gets the keys.

typedef struct bk_screen bk_screen;
typedef struct bk_key_row bk_key_row;
struct bk_stack;

/// One key of a screen: what it is called, what it says, what it does.
struct bk_key_row {
    bk_key_name name;
    const char *typed;   ///< the character, for BK_KEY_TYPED
    const char *written; ///< as people read it: "Enter"
    const char *bottom;  ///< what the bottom line says; NULL: nothing
    const char *help;    ///< what the Keys screen says; NULL: the row is a second key of the one before
    void (*act)(bk_screen *screen, const bk_key_row *row);
    int argument;                             ///< for `act`
    bool (*matters)(const bk_screen *screen); ///< whether it is told at the bottom now; NULL: always
    bool spare;                               ///< it is told there only where there is room
};

/// Keys that belong together.
typedef struct bk_key_table {
    const char *title; ///< on the Keys screen; NULL: none
    const bk_key_row *rows;
    size_t count;
    bool
        alone; ///< the keys of every screen (bk_everywhere_table) do not work beside these: something is typed
} bk_key_table;

/// A word or sign that a screen shows, and what it means.
typedef struct bk_meaning {
    const char *word;
    const char *meaning;
} bk_meaning;

typedef struct bk_screen_kind {
    const char *name;
    bool over;                  ///< the screen below is drawn first
    const bk_key_table *tables; ///< all its keys, for the Keys screen
    size_t table_count;
    const bk_meaning *meanings; ///< its words, also told there
    size_t meaning_count;

    /// Frees what the screen remembers.
    void (*close)(bk_screen *screen);

    /// The wall or the store is another one now: takes from it what it shows, keeping the cursor where it was. The screen may
    /// take itself off the stack.
    bk_status (*read)(bk_screen *screen, bk_error *error);

    /// Draws all but the bottom line: rows 0 to paint->rows - 2.
    void (*draw)(bk_screen *screen, const bk_paint *paint);

    /// Time has passed, at most a second: whether the picture is another one now. NULL: it never is.
    bool (*moves)(bk_screen *screen);

    /// Which of the tables the keys go to now; NULL: the first.
    size_t (*table)(const bk_screen *screen);

    /// Takes a key before the tables do; true when it was its own. NULL: takes none.
    bool (*take)(bk_screen *screen, const bk_key *key);

    /// Draws the left of the bottom line itself and returns the columns used; 0: the keys alone stand there. NULL: draws none.
    size_t (*draw_bottom)(bk_screen *screen, const bk_paint *paint, bk_spot spot);
} bk_screen_kind;

struct bk_screen {
    const bk_screen_kind *kind;
    bk_wall *wall;          ///< shared
    struct bk_stack *stack; ///< the stack it lies on
    bool stale;             ///< must read before it is drawn
    void *self;
};

/// Rows from `of` on: the key that was typed, or NULL.
const bk_key_row *bk_key_row_find(const bk_key_table *table, const bk_key *key);

/// The same, and where it is none of them and the table does not stand alone, the row of the keys of every screen.
const bk_key_row *bk_key_row_beside(const bk_key_table *table, const bk_key *key);

/// The table a screen's keys go to now.
const bk_key_table *bk_screen_table(const bk_screen *screen);

/// Draws the bottom line: the message, or what the screen writes there, and the keys that matter now.
void bk_screen_draw_bottom(bk_screen *screen, const bk_paint *paint);

/// What several screens' tables name as what a key does: go back, open the Keys screen, leave the program.
void bk_screen_back(bk_screen *screen, const bk_key_row *row);
void bk_screen_help(bk_screen *screen, const bk_key_row *row);
void bk_screen_leave(bk_screen *screen, const bk_key_row *row);

#endif
