#ifndef BODKIN_STORE_RECORDS_H
#define BODKIN_STORE_RECORDS_H

#include <stdint.h>

#include "bodkin/base/amount.h"
#include "bodkin/base/date.h"

/// The records of a workroom, one struct each, used both for rows of the store and for rows of the sheets. Texts are
/// UTF-8 in the arena they were read into; NULL stands for an empty cell, BK_NOT_KNOWN for an unknown whole number,
/// BK_NO_AMOUNT, BK_NO_DAY, BK_NO_TIME and BK_NO_WORD for theirs.
///
/// A row of the store has ids set; names of other records (`performer`, `piece` ...) are set in rows of the sheets, and
/// in rows of the store where the comment says so. `line` is the line of the sheet that a row came from. Lists are text
/// with `;` between the items.

#define BK_NOT_KNOWN INT64_MIN

typedef struct bk_production {
    int64_t id;
    const char *name;
    bk_day opens;
    const char *currency;      ///< ISO 4217 code
    int unit;                  ///< bk_unit, or BK_NO_WORD
    int64_t measures_good_for; ///< days
    bk_day put_away_on;        ///< BK_NO_DAY while in work
    int64_t sheets;            ///< version of the table of sheets, only in sheets
    int line;
} bk_production;

typedef struct bk_date {
    int64_t id, production_id;
    int what; ///< bk_occasion
    bk_day on;
    bk_minute at;
    const char *note;
    int line;
} bk_date;

enum { BK_WEEKDAYS = 7 };

typedef struct bk_person {
    int64_t id;
    const char *name;
    const char *skills;             ///< list of kinds
    const char *hours[BK_WEEKDAYS]; ///< Monday first, as bk_hours_read takes them
    bk_day from, until;             ///< first and last day, both included
    const char *note;
    int line;
} bk_person;

typedef struct bk_away {
    int64_t id, person_id, performer_id; ///< 0 where it is of none
    const char *who;                     ///< also set in rows of the store
    bk_day from, to;                     ///< both included
    const char *reason;
    int line;
} bk_away;

typedef struct bk_performer {
    int64_t id;
    const char *name;
    const char *contact;       ///< private: in a table of its own, NULL unless read by the maker
    int64_t measures_good_for; ///< days
    const char *note;
    int line;
} bk_performer;

/// One measure of one performer on one day.
typedef struct bk_measure {
    int64_t sheet_id, name_id, performer_id;
    const char *performer;
    bk_day taken_on;
    const char *name; ///< also set in rows of the store
    bk_length value;  ///< private
    const char *over; ///< worn while measured
    const char *taken_by;
    int64_t position; ///< order within its sheet
    int line;
} bk_measure;

typedef struct bk_role {
    int64_t id, production_id, performer_id; ///< performer_id 0: not cast
    const char *name;
    const char *performer;
    const char *cover; ///< list of performers
    const char *note;
    int line;
} bk_role;

typedef struct bk_costume {
    int64_t id, production_id, role_id;
    const char *number; ///< "4A"
    const char *role;
    const char *title;
    bk_day due; ///< its own, or BK_NO_DAY
    const char *note;
    int line;
} bk_costume;

typedef struct bk_piece {
    int64_t id, production_id;
    const char *name; ///< its short key, "4A-1"
    const char *costumes;
    const char *title;
    int origin; ///< bk_origin, or BK_NO_WORD
    const char *place;
    const char *out_with;
    bk_day out_since, back_by;
    const char *from;
    bk_money cost; ///< private: in a table of its own
    const char *currency;
    bk_day due_back, returned_on; ///< of a hired or borrowed piece
    const char *note;
    int line;
} bk_piece;

typedef struct bk_step {
    int64_t id, production_id, piece_id;
    const char *piece;
    const char *key;
    const char *title;
    int kind; ///< bk_kind
    int64_t minutes, quickest, longest;
    const char *after;                  ///< list of keys, or PIECE/KEY
    int64_t hands, level, rest_minutes; ///< BK_NOT_KNOWN: the usual
    int64_t can_wait;                   ///< 1 or 0
    const char *measures;               ///< list of names
    const char *note;
    bk_day done_on;
    const char *done_by;
    int64_t took; ///< minutes
    int line;
} bk_step;

typedef struct bk_material {
    int64_t id;
    const char *name;
    int unit;            ///< bk_material_unit
    bk_quantity on_hand; ///< in rows of the store: the sum of its movements, BK_NO_AMOUNT when there is none
    bk_length width;
    const char *supplier;
    bk_money price; ///< of one unit; private: in a table of its own
    const char *currency;
    const char *note;
    int line;
} bk_material;

typedef struct bk_need {
    int64_t id, step_id, material_id;
    const char *piece, *step, *material;
    bk_quantity quantity;
    int line;
} bk_need;

/// What was ordered from a supplier (orders.csv).
typedef struct bk_order {
    int64_t id, material_id;
    const char *material;
    bk_quantity quantity;
    bk_day ordered_on, due_on, arrived_on;
    const char *from;
    bk_money cost; ///< private: in a table of its own
    const char *currency;
    int line;
} bk_order;

typedef struct bk_fitting {
    int64_t id, production_id, step_id, performer_id; ///< performer_id 0: who plays the role
    const char *piece, *step, *performer;
    bk_moment booked_at;
    int64_t minutes;
    bk_day held_on;
    int outcome; ///< bk_outcome, or BK_NO_WORD
    const char *note;
    int line;
} bk_fitting;

/// A link between two records, in its order: a performer in a company, a cover of a role, a costume of a piece, what a
/// step comes after.
typedef struct bk_link {
    int64_t from_id; ///< production, role, piece or step
    int64_t to_id;   ///< performer, performer, costume or the earlier step
    int64_t position;
} bk_link;

/// A change of what lies on the shelf.
typedef struct bk_movement {
    int64_t id, material_id;
    int kind;             ///< bk_movement_kind
    bk_quantity quantity; ///< what it adds; below zero takes away
    bk_day moved_on;
    int64_t order_id; ///< 0: none
    int64_t step_id;  ///< 0: none; the step may be gone since
    const char *note;
} bk_movement;

enum bk_movement_kind { BK_MOVED_COUNT, BK_MOVED_DELIVERY, BK_MOVED_USE, BK_MOVED_RETURN };

#endif
