#ifndef BODKIN_SHEET_WAIT_WORDS_H
#define BODKIN_SHEET_WAIT_WORDS_H

#include "bodkin/work/rail.h"

/// Waits, states and urgencies in plain words, the same on screens, sheets and the command line. Texts live in `arena`
/// and are as the store has them (not yet made safe for a terminal).

/// A whole sentence without a full stop: "needs 2.4 m of wool flannel: 1 m on the shelf, 1.4 m due Tue 9 Mar".
const char *bk_wait_sentence(const bk_rail *rail, const bk_wait *wait, bk_arena *arena);

/// What an open step needs of one material and where it comes from, also while the step is not next: the same sentence, or
/// "needs 2.4 m of wool flannel: on the shelf".
const char *bk_claim_sentence(const bk_rail *rail, const bk_claim *claim, bk_arena *arena);

/// "late: none; tight: 3B, 7B and 9 more; 174 h of work left": who looks for ten seconds needs no more.
const char *bk_rail_verdict(const bk_rail *rail, bk_arena *arena);

/// "2.4 m", "12": a quantity with its unit, but for things counted.
const char *bk_quantity_words(const bk_material *material, bk_quantity quantity, bk_arena *arena);

/// "2.4 m of wool flannel", "12 hooks and bars".
const char *bk_need_words(const bk_material *material, bk_quantity quantity, bk_arena *arena);

/// A few words for a line of the rail: "wool flannel due Tue 9 Mar", "fitting not booked".
const char *bk_wait_brief(const bk_rail *rail, const bk_wait *wait, bk_arena *arena);

/// All waits of a costume in brief, the ones somebody must act on first, each said once: "measures old; thread short". Ends
/// early once the text is `enough` bytes long (SIZE_MAX: all of it), so that a line costs no more than what it shows.
const char *bk_costume_waits_brief(const bk_rail *rail, const bk_rail_costume *costume, size_t enough,
                                   bk_arena *arena);

/// "in work", "held" ... as a person reads it.
const char *bk_state_word(bk_state state);

/// How near the due day is.
typedef enum bk_urgency {
    BK_LATE,
    BK_TIGHT,
    BK_IN_TIME,
    BK_NOT_SAID, ///< nothing can be promised before hands and hours are reckoned; its word is empty
    BK_URGENCIES
} bk_urgency;

/// For a costume on the rail's day: in time when it is ready; else late when its due day is past; tight when it is due
/// within seven days, or is held and due within four weeks; else nothing is said. Common practice.
bk_urgency bk_costume_urgency(const bk_rail *rail, const bk_rail_costume *costume);
const char *bk_urgency_word(bk_urgency urgency);

/// "17 days to opening", "opens today", "opened 3 days ago".
const char *bk_countdown(const bk_rail *rail, bk_arena *arena);

/// The seam: `columns` wide, stitches for minutes done, a pin where it waits, chalk dots for those to do; ASCII when asked.
/// Nothing to do and nothing done gives spaces. Never shows all sewn while something is open.
const char *bk_seam_text(bk_seam seam, size_t columns, bool ascii, bk_arena *arena);

#endif
