#ifndef BODKIN_UI_SUPPOSE_WORDS_H
#define BODKIN_UI_SUPPOSE_WORDS_H

#include "bodkin/ui/wall.h"

/// What is supposed, in words. All texts in the arena handed in, as the store has them.

typedef struct bk_supposed_told {
    const char *sort;       ///< "helper", "date", "due", "drop"
    const char *what;       ///< who, which date, which costume
    const char *now;        ///< the day as it is; NULL: none
    const char *then;       ///< the day as it is supposed; NULL: none
    const char *hours;      ///< of a helper, "18:00-21:00"; NULL: no helper
    const char *words;      ///< the whole: "Bo Lind helps Thu 4 Mar 18:00-21:00: cut, hand"
    const char *number;     ///< of its costume; NULL: about none
    const char *production; ///< that it is of, where that is not the one shown; NULL
    bool gone;              ///< what it is about is no longer in the workroom
} bk_supposed_told;

/// Tells one; reads the store.
bk_status bk_supposed_tell(const bk_wall *wall, const bk_supposition *one, bk_arena *arena,
                           bk_supposed_told *told, bk_error *error) BK_MUST_USE;

/// "dress Wed 17 Mar 19:00": how a date of a production is called where one is picked.
const char *bk_supposed_date_words(const bk_date *date, bk_day today, bk_arena *arena);

/// "cut;hand" of a set of kinds, as a sheet has them.
const char *bk_supposed_skills(unsigned skills, bk_arena *arena);

/// "18:00-21:00".
const char *bk_supposed_hours(const bk_stretch *hours, bk_arena *arena);

#endif
