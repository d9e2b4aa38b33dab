#ifndef BODKIN_WORK_HISTORY_H
#define BODKIN_WORK_HISTORY_H

#include "bodkin/store/store.h"
#include "bodkin/trade/doubts.h"
#include "bodkin/trade/measures.h"
#include "bodkin/work/cast.h"

/// A performer's measurement history, and taking, correcting and taking away measures. All of it is the maker's alone. No
/// sentence of these jobs holds a value: the daybook tells whose measures were touched, not what they are.

// ------------------------------------------------------------------------------------------------------- reading

/// From which change on a measure is marked: by more than both of these (common practice: 2 cm or 3 %, whichever is more).
typedef struct bk_change_limit {
    bk_length length;
    bk_quantity percent; ///< of the earlier value; millionths
} bk_change_limit;

/// One measure on one sheet.
typedef struct bk_history_cell {
    bk_length value;  ///< micrometres; BK_NO_AMOUNT: not on this sheet
    bk_length change; ///< since the newest earlier sheet that has it; BK_NO_AMOUNT: there is none
    bool beyond;      ///< the change is beyond the limit
    const char
        *doubt; ///< why it can hardly be true, one sentence that holds values; NULL: nothing against it
    const char *over, *taken_by; ///< worn while measured, who measured; NULL: not known
} bk_history_cell;

/// One sheet: a column.
typedef struct bk_history_sheet {
    int64_t id;
    bk_day on;
    const char *over, *taken_by; ///< what all its measures have in common; NULL: nothing
    size_t count;                ///< measures
    size_t doubts;               ///< those of them that are doubted
    size_t beyond;               ///< those of them that are beyond the limit
} bk_history_sheet;

/// One measure through all sheets: a row.
typedef struct bk_history_row {
    const char *name;
    const bk_measure_term *term;  ///< NULL: a name of the workroom's own
    const bk_history_cell *cells; ///< one for each sheet
} bk_history_row;

typedef struct bk_history {
    bk_performer performer; ///< without contact
    bk_change_limit limit;
    const bk_history_sheet *sheets; ///< newest first
    size_t sheet_count;
    const bk_history_row
        *rows; ///< in the order a sheet is taken; names of the workroom's own behind, in natural order
    size_t row_count;
} bk_history;

/// Reads the history of a performer (its id); all of it lives in `arena`. Doubts are told in the unit that a sheet seems to
/// have been typed in, `usual` where that cannot be told. BK_REFUSED where the performer is no longer there, or the store was
/// not opened for the maker.
bk_status bk_history_read(bk_store *store, int64_t performer, bk_unit usual, bk_arena *arena,
                          bk_history *history, bk_error *error) BK_MUST_USE;

/// The limit of the workroom: its settings measure_change_cm and measure_change_percent, plain numbers; where one is not set
/// or no such number, 2 cm and 3 %.
bk_status bk_change_limit_read(bk_store *store, bk_change_limit *limit, bk_error *error) BK_MUST_USE;

/// Sets it, as one change with one entry of the daybook: "Measures are marked from a change of 2.5 cm or 4 % on". At most 1 m
/// and 100 %, whole micrometres. `*sentence` is in `arena`, NULL where nothing differs and nothing was written.
bk_status bk_change_limit_put(bk_store *store, bk_change_limit limit, const char *made_at, bk_arena *arena,
                              const char **sentence, bk_error *error) BK_MUST_USE;

// -------------------------------------------------------------------------------------------------------- saving

/// Measures taken of one performer on one day.
typedef struct bk_measures_saving {
    int64_t performer;
    bk_day on;             ///< the day they were taken, at most `today`
    bk_day today;          ///< also for the words of the sentence
    const char *taken_by;  ///< NULL: not known
    const char *over;      ///< worn while measured; NULL: not known
    const bk_taken *items; ///< each name once; items of value BK_NO_AMOUNT are passed over
    size_t count;
} bk_measures_saving;

/// Saves them as one change with one entry of the daybook. Where that performer has a sheet of that day the new measures are
/// added to it, and what differs from one there corrects it (`taken_by` and `over` too, where they are given). A name that is
/// new to the workroom is made. Sentences: "Measured: Ines Varga, 31 measures", "Corrected: waist girth of Ines Varga, 3 Feb",
/// or both in one; in `arena`, NULL where nothing differs and nothing was written. BK_REFUSED with one sentence: nothing to
/// save, a name that the sheets do not allow or that stands twice, a day to come, a performer no longer there.
bk_status bk_measures_save(bk_store *store, const bk_measures_saving *saving, const char *made_at,
                           bk_arena *arena, const char **sentence, bk_error *error) BK_MUST_USE;

/// What stands in one cell.
typedef struct bk_measure_mark {
    bk_length value;             ///< BK_NO_AMOUNT: no such measure
    const char *over, *taken_by; ///< NULL: not known
} bk_measure_mark;

typedef struct bk_measure_correcting {
    int64_t performer;
    bk_day on;              ///< the day of its sheet
    bk_day today;           ///< for the words of the sentence
    const char *name;       ///< of the measure
    bk_measure_mark seen;   ///< what the person saw when they began
    bk_measure_mark wanted; ///< what shall stand there; a value of BK_NO_AMOUNT takes the measure away
} bk_measure_correcting;

/// Corrects, adds or takes away one measure of a sheet that is there, as one change: "Corrected: waist girth of Ines Varga,
/// 3 Feb", "Taken away: ..."; with its last measure the sheet goes too. `*sentence` as above. BK_REFUSED where what stands
/// there is not what was seen: another person changed it meanwhile.
bk_status bk_measure_correct(bk_store *store, const bk_measure_correcting *correcting, const char *made_at,
                             bk_arena *arena, const char **sentence, bk_error *error) BK_MUST_USE;

/// Gives a performer's sheet another day, as one change: "Changed: sheet of Ines Varga, 3 Feb, is of 4 Feb". BK_REFUSED where
/// there is no such sheet, one of the new day already, or that day is to come.
bk_status bk_sheet_redate(bk_store *store, int64_t performer, bk_day on, bk_day to, bk_day today,
                          const char *made_at, bk_arena *arena, const char **sentence, bk_error *error)
    BK_MUST_USE;

/// Takes a performer's sheet away with all its measures, as one change: "Taken away: sheet of Ines Varga, 3 Feb". BK_REFUSED
/// where there is none.
bk_status bk_sheet_take_away(bk_store *store, int64_t performer, bk_day on, bk_day today, const char *made_at,
                             bk_arena *arena, const char **sentence, bk_error *error) BK_MUST_USE;

#endif
