#ifndef BODKIN_STORE_FAMILIES_H
#define BODKIN_STORE_FAMILIES_H

#include <stdbool.h>
#include <stddef.h>

#include "bodkin/store/statements.h"
#include "bodkin/store/store.h"
#include "bodkin/trade/words.h"

/// How the records of each family stand in the store: tables that adding, reading and putting walk. For the
/// files of this floor only.

/// What a field holds, in the struct and in the store.
typedef enum bk_field_type {
    BK_FIELD_ID,     ///< int64_t; 0 is NULL
    BK_FIELD_NUMBER, ///< int64_t; BK_NOT_KNOWN (also BK_NO_AMOUNT) is NULL
    BK_FIELD_AMOUNT, ///< the same, for quantities and money, which are larger
    BK_FIELD_SUM,    ///< the same, for what movements add up to, and the largest of them
    BK_FIELD_TEXT,   ///< const char *; TEXT
    BK_FIELD_SHARED, ///< the same, for texts that many rows have in common: each is kept once a reading
    BK_FIELD_DAY,    ///< bk_day; TEXT YYYY-MM-DD
    BK_FIELD_TIME,   ///< bk_minute; TEXT HH:MM
    BK_FIELD_MOMENT, ///< bk_moment; TEXT YYYY-MM-DD or YYYY-MM-DDTHH:MM
    BK_FIELD_WORD    ///< int; TEXT, one of `words`
} bk_field_type;

typedef enum bk_field_use {
    BK_FIELD_BOTH, ///< read and written
    BK_FIELD_READ, ///< read only, after those that are read and written
    BK_FIELD_LEFT  ///< neither: always "not known"; the last
} bk_field_use;

typedef struct bk_field {
    size_t offset; ///< in the struct of its family
    bk_field_type type;
    bk_field_use use;
    const bk_words *words;
} bk_field;

/// Whose rows one reading gives.
typedef enum bk_family_key { BK_KEY_NONE, BK_KEY_PRODUCTION, BK_KEY_MATERIAL, BK_KEY_SHEET } bk_family_key;

typedef struct bk_family_table {
    const char *what; ///< one of them, for messages
    size_t size;      ///< of the struct
    const bk_field *fields;
    size_t field_count;
    int read, add, put; ///< bk_sql, or BK_NO_STATEMENT, as are all up to last_place
    int get;            ///< the row with an id
    int remove;         ///< by its id; a link by both ends, a measure by sheet and name
    int remove_all;     ///< all links from one record
    int places;         ///< the places of a list
    int place;          ///< puts the row with an id at a position
    int last_place;     ///< the position after all others
    bk_family_key key;  ///< what reading takes; BK_KEY_NONE: nothing, all rows are read
    bool placed;        ///< adding takes the position as its last parameter
    bool one_list;      ///< there is one list of all of them: places and last_place take nothing
    bool has_id;        ///< the store gives a row its id, the first field
} bk_family_table;

enum { BK_NO_STATEMENT = -1 };

extern const bk_family_table bk_families[BK_FAMILIES];

/// The words of a movement's kind: count delivery use return (bk_movement_kind).
extern const bk_words bk_movement_words;

/// Reads rows with any statement whose columns stand in the order of the table's fields; `key` is its one
/// parameter, NULL where it has none. Rows and their texts are in `arena`.
bk_status bk_store_read_by(bk_store *store, bk_sql sql, const int64_t *key, const bk_family_table *table,
                           bk_arena *arena, bk_rows *rows, bk_error *error) BK_MUST_USE;

#endif
