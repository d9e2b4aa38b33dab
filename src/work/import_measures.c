#include <stddef.h>

#include "bodkin/base/text.h"
#include "bodkin/work/import_parts.h"

// Measure sheets: a performer's sheet of a day that is known is merged, a new one is added.

static const bk_merge_field measure_fields[] = {
    {"value", BK_MERGE_LENGTH, offsetof(bk_measure, value), true},
    {"over", BK_MERGE_TEXT, offsetof(bk_measure, over), false},
    {"taken_by", BK_MERGE_TEXT, offsetof(bk_measure, taken_by), false},
};

enum { TELL_EVERY = 8192, ADD_AT_ONCE = 256 };

/// A measure sheet while rows of it are taken in.
typedef struct open_sheet {
    int64_t id, next_position;
    bk_rows known;         ///< its measures that the store had
    bk_id_index *known_at; ///< name id to index of `known`; NULL for a new sheet
} open_sheet;

typedef struct measuring_state {
    bk_importing *importing;
    bk_index *names;       ///< measure name to id
    bk_id_index *sheet_at; ///< performer and day to index of `sheets`
    BK_LIST(open_sheet) sheets;
    bk_id_index *stored_at;          ///< performer and day to the id of a sheet that the store has
    bk_measure waiting[ADD_AT_ONCE]; ///< new ones, not yet in the store
    size_t waiting_count;
    const char *performer; ///< of the last row, so that runs of one performer are looked up once
    int64_t performer_id;
} measuring_state;

/// One number for a performer and a day: days from 0001-01-01 to 9999-12-31 need 22 bits.
static long long sheet_key(int64_t performer, bk_day day)
{
    enum { DAY_BITS = 22, DAYS_BEFORE_1970 = 719162 };
    return (long long)((uint64_t)performer << DAY_BITS | (uint64_t)(day + DAYS_BEFORE_1970));
}

static bk_status read_known(measuring_state *measuring)
{
    bk_importing *importing = measuring->importing;
    bk_rows names = {0};
    bk_rows sheets = {0};
    bk_status status =
        bk_store_read(importing->store, BK_MEASURE_NAMES, 0, importing->arena, &names, importing->error);
    if (!status) {
        status = bk_store_read(importing->store, BK_MEASURE_SHEETS, 0, importing->arena, &sheets,
                               importing->error);
    }
    const bk_named *named = names.items;
    const bk_sheet_day *days = sheets.items;
    for (size_t i = 0; !status && i < names.count; i++) {
        bk_index_put(measuring->names, named[i].name, named[i].id);
    }
    for (size_t i = 0; !status && i < sheets.count; i++) {
        bk_id_index_put(measuring->stored_at, sheet_key(days[i].performer_id, days[i].taken_on), days[i].id);
    }
    return status;
}

/// Reads what a stored sheet holds, so that rows can be merged into it.
static bk_status reopen(measuring_state *measuring, open_sheet *sheet)
{
    bk_importing *importing = measuring->importing;
    bk_status status = bk_store_read(importing->store, BK_MEASURES_OF_SHEET, sheet->id, importing->arena,
                                     &sheet->known, importing->error);
    if (status) {
        return status;
    }
    const bk_measure *measures = sheet->known.items;
    sheet->known_at = bk_id_index_new();
    for (size_t i = 0; i < sheet->known.count; i++) {
        bk_id_index_put(sheet->known_at, measures[i].name_id, (long long)i);
        if (measures[i].position >= sheet->next_position) {
            sheet->next_position = measures[i].position + 1;
        }
    }
    return BK_OK;
}

static bk_status sheet_of(measuring_state *measuring, const bk_measure *row, open_sheet **found)
{
    if (measuring->performer != row->performer) {
        measuring->performer = row->performer;
        measuring->performer_id = bk_import_id(measuring->importing->performers, row->performer);
    }
    long long key = sheet_key(measuring->performer_id, row->taken_on);
    long long fresh = (long long)measuring->sheets.count;
    long long at = *bk_id_index_put(measuring->sheet_at, key, fresh);
    bk_status status = BK_OK;
    if (at == fresh) {
        open_sheet sheet = {0};
        const long long *stored = bk_id_index_find(measuring->stored_at, key);
        if (stored) {
            sheet.id = *stored;
            status = reopen(measuring, &sheet);
        } else {
            bk_sheet_day day = {0, measuring->performer_id, row->taken_on};
            status = bk_import_add(measuring->importing, BK_MEASURE_SHEETS, &day, 0, &sheet.id);
        }
        bk_list_add(&measuring->sheets, sheet);
    }
    *found = &measuring->sheets.items[at];
    return status;
}

static bk_status name_of(measuring_state *measuring, const char *name, int64_t *id)
{
    const long long *known = bk_index_find(measuring->names, name);
    if (known) {
        *id = *known;
        return BK_OK;
    }
    bk_named named = {0, name};
    bk_status status = bk_import_add(measuring->importing, BK_MEASURE_NAMES, &named, 0, id);
    bk_index_put(measuring->names, name, *id);
    return status;
}

static bk_status merge_measure(bk_importing *importing, const bk_measure *row, bk_measure *known)
{
    char day[BK_DAY_ROOM];
    const char *what = bk_arena_print(importing->arena, "measures.csv: %s, %s, %s", row->performer,
                                      bk_day_write(row->taken_on, day), row->name);
    size_t fields = sizeof measure_fields / sizeof *measure_fields;
    if (bk_merge(measure_fields, fields, row, known, what, &importing->notes)) {
        return bk_store_put(importing->store, BK_MEASURES, known, importing->error);
    }
    return BK_OK;
}

static bk_status add_waiting(measuring_state *measuring)
{
    bk_importing *importing = measuring->importing;
    size_t count = measuring->waiting_count;
    measuring->waiting_count = 0;
    return bk_store_add_measures(importing->store, measuring->waiting, count, importing->error);
}

static bk_status one_measure(measuring_state *measuring, const bk_measure *row)
{
    open_sheet *sheet = NULL;
    bk_measure measure = *row;
    bk_status status = sheet_of(measuring, row, &sheet);
    if (!status) {
        status = name_of(measuring, row->name, &measure.name_id);
    }
    if (status) {
        return status;
    }
    const long long *known = sheet->known_at ? bk_id_index_find(sheet->known_at, measure.name_id) : NULL;
    if (known) {
        return merge_measure(measuring->importing, row, (bk_measure *)sheet->known.items + *known);
    }
    measure.sheet_id = sheet->id;
    measure.position = sheet->next_position++;
    measuring->waiting[measuring->waiting_count++] = measure;
    return measuring->waiting_count == ADD_AT_ONCE ? add_waiting(measuring) : BK_OK;
}

static void measuring_free(measuring_state *measuring)
{
    for (size_t i = 0; i < measuring->sheets.count; i++) {
        bk_id_index_free(measuring->sheets.items[i].known_at);
    }
    bk_list_free(&measuring->sheets);
    bk_index_free(measuring->names);
    bk_id_index_free(measuring->sheet_at);
    bk_id_index_free(measuring->stored_at);
}

bk_status bk_import_measures(bk_importing *importing)
{
    size_t count = importing->folder->measures.count;
    if (!count) {
        return BK_OK;
    }
    measuring_state measuring = {
        .importing = importing,
        .names = bk_index_new(),
        .sheet_at = bk_id_index_new(),
        .stored_at = bk_id_index_new(),
    };
    bk_status status = read_known(&measuring);
    for (size_t i = 0; !status && i < count; i++) {
        status = one_measure(&measuring, &importing->folder->measures.items[i]);
        if (!status && (i + 1) % TELL_EVERY == 0) {
            status = bk_import_told(importing, "measures.csv", TELL_EVERY);
        }
    }
    if (!status) {
        status = add_waiting(&measuring);
    }
    measuring_free(&measuring);
    return status ? status : bk_import_told(importing, "measures.csv", count % TELL_EVERY);
}
