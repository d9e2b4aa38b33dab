#ifndef BODKIN_PLAN_PACE_H
#define BODKIN_PLAN_PACE_H

#include "bodkin/base/arena.h"
#include "bodkin/plan/spread.h"
#include "bodkin/trade/words.h"

/// The workroom's own record: minutes taken against minutes guessed, by kind of step and by person. Pure.

/// Minutes beyond these are no record of a step.
enum { BK_PACE_MOST = 1000000 };

/// A finished step of which both are known. One whose minutes are not within 1 and BK_PACE_MOST is left out.
typedef struct bk_minutes_taken {
    int kind;           ///< bk_kind; any other number: not known
    const char *person; ///< who did it; NULL: not known
    int64_t guessed;    ///< its minutes
    int64_t took;
} bk_minutes_taken;

/// A record is used where there are at least so many.
enum { BK_PACE_ENOUGH = 8 };

/// One record: how the steps in it went. Its ratios are exact and then rounded half up to thousandths of the guess.
typedef struct bk_pace {
    int kind;           ///< bk_kind, or BK_NO_WORD: all kinds
    const char *person; ///< NULL: everybody
    int64_t count;
    int64_t guessed, took; ///< sums, minutes
    int64_t middle;        ///< the median of took / guessed
    int64_t quickest,
        longest; ///< its 5th and 95th percentile: linear between the neighbours, the least being 0 and the
                 ///< greatest 100 (Hyndman & Fan 1996, definition 7)
} bk_pace;

typedef struct bk_paces {
    const bk_pace *
        items; ///< everybody and all kinds first, then by kind, then by person, then by kind and person; none empty
    size_t count;
} bk_paces;

/// Reckons all of them, in `arena`, names too. Persons are in the order of their bytes. Time grows as n log n.
bk_paces bk_paces_reckon(const bk_minutes_taken *taken, size_t count, bk_arena *arena);

/// The one that holds for a person (NULL: anybody) and a kind: theirs of that kind where there are enough, else that kind's, else
/// the person's, else NULL. What is known of everybody and all kinds is only shown, never used.
const bk_pace *bk_pace_for(const bk_paces *paces, int kind, const char *person);

/// A step's estimate after the record: its usual minutes by the middle; quickest and longest as the step says, by the middle too, or,
/// where it does not say (INT64_MIN), the usual minutes by the record's own; each rounded half up, on the right side of the
/// usual. Without a record (`pace` NULL): bk_estimate_complete.
bk_estimate bk_pace_estimate(const bk_pace *pace, int64_t quickest, int64_t usual, int64_t longest);

#endif
