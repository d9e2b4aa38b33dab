#ifndef BODKIN_UI_KEYS_H
#define BODKIN_UI_KEYS_H

#include <stdbool.h>

/// Keys as the screens know them, whatever the terminal sends for them.

enum { BK_KEY_TEXT_ROOM = 8 };

typedef enum bk_key_name {
    BK_KEY_NONE,  ///< something the program has no name for
    BK_KEY_TYPED, ///< a character, in `text`
    BK_KEY_UP,
    BK_KEY_DOWN,
    BK_KEY_LEFT,
    BK_KEY_RIGHT,
    BK_KEY_PAGE_UP,
    BK_KEY_PAGE_DOWN,
    BK_KEY_HOME,
    BK_KEY_END,
    BK_KEY_ENTER,
    BK_KEY_ESCAPE,
    BK_KEY_BACKSPACE,
    BK_KEY_DELETE,
    BK_KEY_TAB,
    BK_KEY_BACK_TAB, ///< Shift-Tab
    BK_KEY_EMPTY,    ///< Ctrl-U: empties a field
    BK_KEY_SAVE,     ///< Ctrl-S
    BK_KEY_EDITOR,   ///< Ctrl-E: the person's own editor
    BK_KEY_RESIZED,  ///< no key: the terminal has another size
    BK_KEY_REPAINT,  ///< no key: the terminal may show something else (it comes back from a pause)
    BK_KEY_GONE      ///< no key: the terminal is no longer there
} bk_key_name;

typedef struct bk_key {
    bk_key_name name;
    char text[BK_KEY_TEXT_ROOM]; ///< UTF-8 of what was typed, for BK_KEY_TYPED; else empty
    bool pasted; ///< it was not typed but put in from somewhere else: nothing may be done for it
} bk_key;

#endif
