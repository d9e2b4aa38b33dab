#ifndef BODKIN_WORK_EDITOR_H
#define BODKIN_WORK_EDITOR_H

#include "bodkin/base/arena.h"
#include "bodkin/base/error.h"

/// Lets the person's own editor change a text: $VISUAL, else $EDITOR, else vi, started by the shell as it stands there ("vim -n"
/// has an argument) with the name of a file of its own (0600, in $XDG_RUNTIME_DIR, else /tmp) that is removed afterwards. The
/// terminal must have been given away. `*edited` lives in `arena`, line ends at its end taken off. BK_REFUSED where the file
/// could not be made or read, is no text in UTF-8 any more, or the editor was not found or ended with a fault; `text` is then
/// all there is.
bk_status bk_editor_edit(const char *text, bk_arena *arena, const char **edited, bk_error *error) BK_MUST_USE;

#endif
