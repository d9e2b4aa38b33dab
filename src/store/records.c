#include <assert.h>
#include <inttypes.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/store/families.h"
#include "bodkin/store/inside.h"

enum { MEASURES_AT_ONCE = 10 }; // rows of the statement add_measures
enum { TEXT_MOST = 65535 };     // bytes of a text; in its cell an apostrophe may stand before it

static_assert(BK_NO_AMOUNT == BK_NOT_KNOWN, "numbers of every sort have one \"not known\"");

// -------------------------------------------------------------------------------------------------- writing

static void give_when(bk_query *query, int parameter, bk_moment moment)
{
    char text[BK_MOMENT_ROOM];
    bk_query_give_copy(query, parameter, moment.day == BK_NO_DAY ? NULL : bk_moment_write(moment, text));
}

static void give_time(bk_query *query, int parameter, bk_minute time)
{
    char text[BK_TIME_ROOM];
    bk_query_give_copy(query, parameter, time == BK_NO_TIME ? NULL : bk_time_write(time, text));
}

static void give_number(bk_query *query, int parameter, int64_t number, int64_t nothing)
{
    if (number == nothing)
        bk_query_give_nothing(query, parameter);
    else
        bk_query_give(query, parameter, number);
}

static void give_field(bk_query *query, int parameter, const bk_field *field, const void *record)
{
    const void *place = (const char *)record + field->offset;
    switch (field->type) {
    case BK_FIELD_ID:
        give_number(query, parameter, *(const int64_t *)place, 0);
        break;
    case BK_FIELD_NUMBER:
    case BK_FIELD_AMOUNT:
    case BK_FIELD_SUM:
        give_number(query, parameter, *(const int64_t *)place, BK_NOT_KNOWN);
        break;
    case BK_FIELD_TEXT:
    case BK_FIELD_SHARED:
        bk_query_give_text(query, parameter, *(const char *const *)place);
        break;
    case BK_FIELD_DAY:
        give_when(query, parameter, (bk_moment){*(const bk_day *)place, BK_NO_TIME});
        break;
    case BK_FIELD_TIME:
        give_time(query, parameter, *(const bk_minute *)place);
        break;
    case BK_FIELD_MOMENT:
        give_when(query, parameter, *(const bk_moment *)place);
        break;
    case BK_FIELD_WORD:
        bk_query_give_text(query, parameter, bk_word_text(field->words, *(const int *)place));
        break;
    }
}

// Gives all fields that are written, from `parameter` on; returns the number of the next parameter.
static int give_record(bk_query *query, int parameter, const bk_family_table *table, const void *record)
{
    for (size_t i = 0; i < table->field_count && table->fields[i].use == BK_FIELD_BOTH; i++)
        give_field(query, parameter++, &table->fields[i], record);
    return parameter;
}

// Refuses a text that no sheet could give back: whatever a person wrote comes from here into the store.
static bk_status check_texts(const bk_family_table *table, const void *record, bk_error *error)
{
    for (size_t i = 0; i < table->field_count && table->fields[i].use == BK_FIELD_BOTH; i++) {
        const bk_field *field = &table->fields[i];
        if (field->type != BK_FIELD_TEXT && field->type != BK_FIELD_SHARED)
            continue;
        const char *text = *(const char *const *)(const void *)((const char *)record + field->offset);
        size_t length = text == NULL ? 0 : strlen(text);
        if (text != NULL && bk_text_fault(text, length) < length)
            return bk_fail(error, BK_REFUSED, "A text of this %s is not UTF-8: nothing was changed.",
                           table->what);
        if (length > TEXT_MOST)
            return bk_fail(error, BK_REFUSED,
                           "A text of this %s is longer than the %d bytes that a sheet can hold: nothing was "
                           "changed.",
                           table->what, TEXT_MOST);
    }
    return BK_OK;
}

bk_status bk_store_add(bk_store *store, bk_family family, const void *record, int64_t position, int64_t *id,
                       bk_error *error)
{
    const bk_family_table *table = &bk_families[family];
    assert(table->add != BK_NO_STATEMENT);
    bk_query *query = NULL;
    bk_status status = check_texts(table, record, error);
    if (status == BK_OK)
        status = bk_query_begin(&query, store->db, (bk_sql)table->add, error);
    if (status != BK_OK)
        return status;
    int next = give_record(query, 1, table, record);
    if (table->placed)
        bk_query_give(query, next, position);
    status = bk_query_run(query, error);
    bk_query_end(query);
    if (status == BK_OK && id != NULL)
        *id = table->has_id ? bk_db_added(store->db) : 0;
    return status;
}

// Adds as many measures as the statement takes at once.
static bk_status add_batch(bk_store *store, const bk_measure *measures, bk_error *error)
{
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, BK_SQL_ADD_MEASURES, error);
    if (status != BK_OK)
        return status;
    int next = 1;
    for (size_t i = 0; i < MEASURES_AT_ONCE; i++) {
        next = give_record(query, next, &bk_families[BK_MEASURES], &measures[i]);
        bk_query_give(query, next++, measures[i].position);
    }
    status = bk_query_run(query, error);
    bk_query_end(query);
    return status;
}

bk_status bk_store_add_measures(bk_store *store, const bk_measure *measures, size_t count, bk_error *error)
{
    bk_status status = BK_OK;
    size_t added = 0;
    while (status == BK_OK && count - added >= MEASURES_AT_ONCE) {
        status = add_batch(store, measures + added, error);
        added += MEASURES_AT_ONCE;
    }
    for (; status == BK_OK && added < count; added++)
        status = bk_store_add(store, BK_MEASURES, &measures[added], measures[added].position, NULL, error);
    return status;
}

bk_status bk_store_put(bk_store *store, bk_family family, const void *record, bk_error *error)
{
    const bk_family_table *table = &bk_families[family];
    assert(table->put != BK_NO_STATEMENT);
    bk_query *query = NULL;
    bk_status status = check_texts(table, record, error);
    if (status == BK_OK)
        status = bk_query_begin(&query, store->db, (bk_sql)table->put, error);
    if (status != BK_OK)
        return status;
    give_record(query, 1, table, record);
    status = bk_query_run(query, error);
    bk_query_end(query);
    if (status == BK_OK && bk_db_touched(store->db) == 0)
        return bk_fail(error, BK_REFUSED, "This %s is no longer in the workroom: somebody has removed it.",
                       table->what);
    return status;
}

// -------------------------------------------------------------------------------------------------- reading

// A reading of one family: its rows grow here and go to the arena as a whole at the end.
typedef struct row_reading {
    const bk_family_table *table;
    bk_arena *arena;
    bk_index *shared; // texts kept once, by their place in `copies`
    BK_LIST(const char *) copies;
    char *empty; // a row with nothing known
    char *rows;
    size_t count, room;
    bk_error *error;
} row_reading;

static void forget_field(const bk_field *field, void *place)
{
    switch (field->type) {
    case BK_FIELD_ID:
        *(int64_t *)place = 0;
        break;
    case BK_FIELD_NUMBER:
    case BK_FIELD_AMOUNT:
    case BK_FIELD_SUM:
        *(int64_t *)place = BK_NOT_KNOWN;
        break;
    case BK_FIELD_TEXT:
    case BK_FIELD_SHARED:
        *(const char **)place = NULL;
        break;
    case BK_FIELD_DAY:
        *(bk_day *)place = BK_NO_DAY;
        break;
    case BK_FIELD_TIME:
        *(bk_minute *)place = BK_NO_TIME;
        break;
    case BK_FIELD_MOMENT:
        *(bk_moment *)place = (bk_moment){BK_NO_DAY, BK_NO_TIME};
        break;
    case BK_FIELD_WORD:
        *(int *)place = BK_NO_WORD;
        break;
    }
}

// A row with nothing known in it.
static void forget_row(const bk_family_table *table, char *row)
{
    memset(row, 0, table->size);
    for (size_t i = 0; i < table->field_count; i++)
        forget_field(&table->fields[i], row + table->fields[i].offset);
}

static const char *shared_text(row_reading *reading, const char *text, size_t length)
{
    const long long *known = bk_index_find(reading->shared, text);
    if (known != NULL)
        return reading->copies.items[*known];
    const char *copy = bk_arena_bytes(reading->arena, text, length);
    bk_index_put(reading->shared, copy, (long long)reading->copies.count);
    bk_list_add(&reading->copies, copy);
    return copy;
}

static bool read_word(const bk_words *words, const char *text, void *place)
{
    int word = bk_word_find(words, text);
    *(int *)place = word;
    return word != BK_NO_WORD;
}

// Takes a text that is there; false where it is none of its type.
static bool take_text(row_reading *reading, const bk_field *field, const char *text, size_t length,
                      void *place)
{
    switch (field->type) {
    case BK_FIELD_TEXT:
        *(const char **)place = bk_arena_bytes(reading->arena, text, length);
        return true;
    case BK_FIELD_SHARED:
        *(const char **)place = shared_text(reading, text, length);
        return true;
    case BK_FIELD_DAY:
        return bk_day_read(text, place);
    case BK_FIELD_TIME:
        return bk_time_read(text, false, place);
    case BK_FIELD_MOMENT:
        return bk_moment_read(text, place);
    case BK_FIELD_WORD:
        return read_word(field->words, text, place);
    case BK_FIELD_ID:
    case BK_FIELD_NUMBER:
    case BK_FIELD_AMOUNT:
    case BK_FIELD_SUM:
        break;
    }
    return false;
}

// How far from zero a number of each type may lie, so that all rows of a store add up without overflow: what is farther
// was written by no sheet and no screen. 0: no number, or one without bounds.
static const int64_t most_of[] = {
    [BK_FIELD_NUMBER] = INT64_C(1000000000000),
    [BK_FIELD_AMOUNT] = BK_QUANTITY_MOST,
    [BK_FIELD_SUM] = BK_SHELF_MOST,
    [BK_FIELD_WORD] = 0,
};

static_assert(BK_MONEY_MOST <= BK_QUANTITY_MOST, "amounts of money have the bounds of quantities");

// Takes a number, NULL as "not known"; false where it is out of bounds.
static bool take_number(bk_query *query, int column, int64_t most, int64_t *place)
{
    int64_t number = bk_query_number(query, column, 0);
    *place = bk_query_number(query, column, BK_NOT_KNOWN);
    return number >= -most && number <= most;
}

static bool take_field(row_reading *reading, bk_query *query, int column, void *place)
{
    const bk_field *field = &reading->table->fields[column];
    if (field->type == BK_FIELD_ID) {
        *(int64_t *)place = bk_query_number(query, column, 0);
        return true;
    }
    if (most_of[field->type] > 0)
        return take_number(query, column, most_of[field->type], place);
    size_t length = 0;
    const char *text = bk_query_text(query, column, &length);
    return text == NULL || take_text(reading, field, text, length, place);
}

static bk_status tell_fault(const row_reading *reading, const bk_field *field, const char *row)
{
    int64_t id = *(const int64_t *)(const void *)row;
    if (most_of[field->type] > 0)
        return bk_fail(reading->error, BK_STORE,
                       "The %s number %" PRId64 " in the workroom has a number out of all bounds.",
                       reading->table->what, id);
    const char *what = field->type == BK_FIELD_WORD ? field->words->what : "day or time";
    return bk_fail(reading->error, BK_STORE,
                   "The %s number %" PRId64 " in the workroom has a %s that is none.", reading->table->what,
                   id, what);
}

// All columns are taken, also behind a faulty one: the first fault is told.
static bk_status take_row(row_reading *reading, bk_query *query, char *row)
{
    bk_status status = BK_OK;
    for (size_t i = 0; i < reading->table->field_count; i++) {
        const bk_field *field = &reading->table->fields[i];
        if (field->use == BK_FIELD_LEFT)
            break;
        if (!take_field(reading, query, (int)i, row + field->offset) && status == BK_OK)
            status = tell_fault(reading, field, row);
    }
    return status;
}

static char *next_row(row_reading *reading)
{
    size_t size = reading->table->size;
    reading->rows = bk_list_grow(reading->rows, &reading->room, reading->count, size);
    return memcpy(reading->rows + size * reading->count++, reading->empty, size);
}

static bk_status take_rows(row_reading *reading, bk_query *query)
{
    for (;;) {
        bool row = false;
        bk_status status = bk_query_row(query, &row, reading->error);
        if (status == BK_OK && row)
            status = take_row(reading, query, next_row(reading));
        if (status != BK_OK || !row)
            return status;
    }
}

static bk_status read_query(bk_query *query, const bk_family_table *table, bk_arena *arena, bk_rows *rows,
                            bk_error *error)
{
    row_reading reading = {.table = table, .arena = arena, .error = error};
    reading.shared = bk_index_new();
    reading.empty = bk_arena_take(arena, table->size);
    forget_row(table, reading.empty);
    bk_status status = take_rows(&reading, query);
    *rows = (bk_rows){NULL, 0};
    if (status == BK_OK && reading.count > 0) {
        rows->count = reading.count;
        rows->items = bk_arena_take(arena, reading.count * table->size);
        memcpy(rows->items, reading.rows, reading.count * table->size);
    }
    free(reading.rows);
    bk_list_free(&reading.copies);
    bk_index_free(reading.shared);
    return status;
}

bk_status bk_store_read_by(bk_store *store, bk_sql sql, const int64_t *key, const bk_family_table *table,
                           bk_arena *arena, bk_rows *rows, bk_error *error)
{
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, sql, error);
    if (status != BK_OK)
        return status;
    if (key != NULL)
        bk_query_give(query, 1, *key);
    status = read_query(query, table, arena, rows, error);
    bk_query_end(query);
    return status;
}

bk_status bk_store_read(bk_store *store, bk_family family, int64_t key, bk_arena *arena, bk_rows *rows,
                        bk_error *error)
{
    const bk_family_table *table = &bk_families[family];
    return bk_store_read_by(store, (bk_sql)table->read, table->key == BK_KEY_NONE ? NULL : &key, table, arena,
                            rows, error);
}

bk_status bk_store_find_by_name(bk_store *store, bk_sql sql, const char *name, int64_t *id, bk_error *error)
{
    *id = 0;
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, sql, error);
    if (status != BK_OK)
        return status;
    bool row = false;
    bk_query_give_text(query, 1, name);
    status = bk_query_row(query, &row, error);
    if (status == BK_OK && row)
        *id = bk_query_number(query, 0, 0);
    bk_query_end(query);
    return status;
}
