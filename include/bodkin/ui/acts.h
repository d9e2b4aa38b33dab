#ifndef BODKIN_UI_ACTS_H
#define BODKIN_UI_ACTS_H

#include "bodkin/ui/screen.h"
#include "bodkin/work/job.h"

/// What screens share when something is done from them: jobs, questions, going to another screen, and the keys that mean the
/// same everywhere.

/// A job for the production shown, now, by the person at this terminal; `arena` is the caller's. The moment is kept on the
/// wall until the next one.
bk_job bk_act_job(bk_wall *wall, bk_arena *arena);

/// After a job: says the sentence (or, where `status` is not BK_OK, the error) on the bottom line, reads the wall again and
/// makes every screen read before it is drawn.
void bk_act_did(bk_screen *screen, bk_status status, const char *sentence, const bk_error *error);

/// Undoes an entry of the daybook (0: the newest not undone of the person at this terminal), and says so.
void bk_act_undo(bk_screen *screen, int64_t entry);

/// Asks on the bottom line; Enter does `yes` with `argument`, every other key leaves it. The question is copied.
void bk_act_ask(bk_screen *screen, const char *text, void (*yes)(bk_screen *screen, int64_t argument),
                int64_t argument);

/// Goes to a screen of the production shown and lays it on top, so that Escape leads back; where one of that kind lies on the
/// stack already, it takes its place, and what lay above it goes, `screen` too. The Rail is gone back to.
void bk_act_go(bk_screen *screen, const bk_screen_kind *kind, void *self);

/// The keys that mean the same on every screen: u U undo and redo, l look for, P R B W S C F M N O H T D the screens, ? keys, q leave.
/// A screen's own table comes first; while a form or narrowing takes what is typed they do not work.
extern const bk_key_table bk_everywhere_table;

#endif
