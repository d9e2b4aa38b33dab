#ifndef BODKIN_UI_RECORD_ACTS_H
#define BODKIN_UI_RECORD_ACTS_H

#include "bodkin/ui/screen.h"

/// What keys do to one record, whatever screen they are pressed on.

/// Opens the form of a record.
void bk_act_change_record(bk_screen *screen, bk_family family, int64_t id);

/// Opens the form of a new record of the family (`record`: what stands there at the beginning, copied) behind another one of its
/// list (its id; 0: the last), with the cursor in the field of column `first` (NULL: the first).
void bk_act_add_record(bk_screen *screen, bk_family family, const void *record, int64_t behind,
                       const char *first);

/// Opens the form of a new note about a costume, a piece of it, a step of that (number, names; NULL: none), with the cursor in
/// what is noted.
void bk_act_add_note(bk_screen *screen, const char *costume, const char *piece, const char *step);

/// Asks whether to take a record away, called `name` in the question ("piece 4A-1 Linen shirt"), with what goes with it and what
/// else is to be known (`besides`; may be NULL); or says why it cannot be taken away. Costumes, pieces, steps and needs.
void bk_act_take_away_record(bk_screen *screen, bk_family family, int64_t id, const char *name,
                             const char *besides);

/// Moves it in its list, `by` places (below 0: earlier).
void bk_act_move_record(bk_screen *screen, bk_family family, int64_t id, int by);

#endif
