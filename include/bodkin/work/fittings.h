#ifndef BODKIN_WORK_FITTINGS_H
#define BODKIN_WORK_FITTINGS_H

#include "bodkin/store/records_bench.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/job.h"

/// Fittings: what is booked, what is to be booked, and what came of it. All fittings of one performer at one time are one
/// call.

/// How a fitting stands; of a call the first of these that is true of any of its fittings.
typedef enum bk_fitting_state {
    BK_FITTING_TO_RECORD, ///< its day is past, or it was held, and nobody said what came of it
    BK_FITTING_TODAY,     ///< booked for today; what comes of it may be recorded
    BK_FITTING_TO_COME,
    BK_FITTING_MISSED,
    BK_FITTING_HELD, ///< it fits, or is wanted again
    BK_FITTING_STATES
} bk_fitting_state;

extern const bk_words bk_fitting_state_words; ///< to record, today, to come, missed, held

/// One piece in a call.
typedef struct bk_fitting_line {
    int64_t id, step_id, piece_id;
    const char *piece, *piece_title;
    const char *step, *step_title; ///< key and title
    const char *costumes;          ///< numbers of the costumes it is worn with, "4A, 4B"
    int64_t minutes;               ///< its own, else those of its step
    bk_fitting_state state;
    int outcome; ///< bk_outcome, or BK_NO_WORD
    bk_day held_on;
    const char *note;
} bk_fitting_line;

typedef struct bk_fitting_call {
    int64_t performer_id;  ///< the one named, else who plays the role; 0: nobody plays it
    const char *performer; ///< NULL for nobody
    bk_moment moment;
    int64_t minutes; ///< of all its pieces
    bk_fitting_state state;
    const bk_fitting_line *fittings; ///< in the order of fittings.csv
    size_t count;
} bk_fitting_call;

/// A step of kind fit that is open and has no booking.
typedef struct bk_fitting_wanted {
    int64_t step_id, piece_id;
    const char *piece, *piece_title;
    const char *step, *step_title;
    const char *costumes;
    int64_t minutes;
    bool next; ///< all that it comes after is done
    bk_day
        since; ///< a next one: when the last of these was done, or the fitting that was missed or did not fit; BK_NO_DAY: not
               ///< known
    bk_day due; ///< of the piece's first costume; BK_NO_DAY where it has none
} bk_fitting_wanted;

typedef struct bk_fitting_to_book {
    int64_t performer_id;           ///< 0: nobody plays it
    const char *performer;          ///< NULL for nobody
    bk_day due;                     ///< the first of its pieces' due days
    const bk_fitting_wanted *steps; ///< most urgent first
    size_t count;
} bk_fitting_to_book;

typedef struct bk_fitting_list {
    const bk_fitting_call *calls; ///< by moment, then performer
    size_t call_count;
    const bk_fitting_to_book *to_book; ///< by performer, most urgent first
    size_t to_book_count;
} bk_fitting_list;

/// Reads the fittings of a production as they stand on `today`; everything lives in `arena`. BK_REFUSED where the production
/// is no longer there.
bk_status bk_fittings_read(bk_store *store, int64_t production, bk_day today, bk_arena *arena,
                           bk_fitting_list *list, bk_error *error) BK_MUST_USE;

/// A call to be booked.
typedef struct bk_fitting_booking {
    int64_t performer_id; ///< 0: who plays the role
    bk_moment moment;     ///< a bare day: at any time of it
    int64_t minutes;      ///< of the whole call, shared out over its pieces; BK_NOT_KNOWN: those of the steps
    const int64_t *steps; ///< ids of steps of kind fit; one that stands twice counts once
    size_t count;
} bk_fitting_booking;

/// Sentences about a booking that may be right all the same.
typedef struct bk_fitting_doubts {
    const char **items;
    size_t count;
} bk_fitting_doubts;

/// Says, before it is booked, what speaks against it: its day is past, or after the day its costume is due; the performer is
/// away then; another call of the same performer, or of another one in any production not put away (there is one fitter), is at
/// the same time. Nothing is refused for it. With `fittings` (as for bk_fitting_move; may be NULL) those are moved and do not
/// count against themselves.
bk_status bk_fitting_doubt(const bk_job *job, const bk_fitting_booking *booking, const int64_t *fittings,
                           size_t count, bk_fitting_doubts *doubts, bk_error *error) BK_MUST_USE;

/// Books one call for all these steps, as one change: "Booked: Ines Varga, Fri 12 Mar 14:30: 4A-1 toile fitting, 4A-2 first
/// fitting". Of a step that has a booking for today or later that booking is moved. BK_REFUSED where a step is of another
/// kind, done or gone, or none is named.
bk_status bk_fitting_book(const bk_job *job, const bk_fitting_booking *booking, const char **sentence,
                          bk_error *error) BK_MUST_USE;

/// Moves bookings to another moment, as one change. BK_REFUSED for one that was held or missed: it is booked anew.
bk_status bk_fitting_move(const bk_job *job, const int64_t *fittings, size_t count, bk_moment moment,
                          const char **sentence, bk_error *error) BK_MUST_USE;

/// Takes bookings away, as one change: "Called off: ...". BK_REFUSED for one that was held or missed.
bk_status bk_fitting_call_off(const bk_job *job, const int64_t *fittings, size_t count, const char **sentence,
                              bk_error *error) BK_MUST_USE;

/// Marks them missed, as one change. BK_REFUSED for one that was held.
bk_status bk_fitting_missed(const bk_job *job, const int64_t *fittings, size_t count, const char **sentence,
                            bk_error *error) BK_MUST_USE;

/// A note from a fitting.
typedef struct bk_fitting_note {
    const char *text;
    bool make_step;  ///< it becomes a step of the piece
    int kind;        ///< bk_kind of that step
    int64_t minutes; ///< of that step; BK_NOT_KNOWN: BK_NOTE_MINUTES, see bodkin/work/notes.h
} bk_fitting_note;

/// What came of the fitting of one piece.
typedef struct bk_fitting_result {
    int64_t fitting_id;
    int outcome;      ///< bk_outcome; BK_NO_WORD takes back what was recorded
    bk_day held_on;   ///< BK_NO_DAY: today, or its day where that is earlier; of a missed one not kept
    const char *note; ///< of the fitting itself; NULL: as it was
    const bk_fitting_note *notes;
    size_t note_count;
} bk_fitting_result;

/// Records what came of a fitting, as one change. With `fits` its step is done and its materials leave the shelf, once, as by a
/// tick; with any other outcome after that it is open again and they come back. Each note is kept among the production's notes.
/// One that becomes a step stands before the fitting's step, which comes after it and so is next again when it is done; after
/// `fits` it stands and comes behind.
bk_status bk_fitting_record(const bk_job *job, const bk_fitting_result *result, const char **sentence,
                            bk_error *error) BK_MUST_USE;

#endif
