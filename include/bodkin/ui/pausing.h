#ifndef BODKIN_UI_PAUSING_H
#define BODKIN_UI_PAUSING_H

#include <signal.h>
#include <stdbool.h>

/// The signals by which a person pauses the program (Control-Z) and brings it back. They and the one that tells of a new size
/// are held back except while a key is waited for, so none is missed between. For src/ui/term.c.

/// From here on the signals are ours; to bk_pausing_end, which puts them back as they were.
void bk_pausing_begin(void);
void bk_pausing_end(void);

/// What is held back while a key is waited for: what was held back before bk_pausing_begin.
const sigset_t *bk_pausing_mask(void);

/// Whether the person wants to pause.
bool bk_pausing_asked(void);

/// Stops until the person comes back; the terminal must have been given away.
void bk_pausing_now(void);

/// Whether the program comes back from a pause; true once for each.
bool bk_pausing_over(void);

#endif
