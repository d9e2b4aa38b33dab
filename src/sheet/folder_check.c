#include "bodkin/sheet/folder_check.h"

#include <string.h>

#include "bodkin/base/text.h"

/// Rows after which it is told how far a check is: some milliseconds of work.
enum { TOLD_EVERY = 65536 };

bk_status bk_folder_check_progress(const bk_folder_checking *checking, bk_sheet_number sheet, size_t row,
                                   bk_error *error)
{
    size_t count = bk_sheet_rows_get(checking->reading->folder, &bk_sheets[sheet]).count;
    if (row % TOLD_EVERY != 0 ||
        bk_progress_tell(checking->reading->progress, bk_sheets[sheet].file, (int64_t)row, (int64_t)count))
        return BK_OK;
    return bk_sheet_stopped(error);
}

/// Whether the sentence of a fault there would be told; counts the fault when it would not.
static bool wanted(const bk_folder_checking *checking, bk_sheet_number sheet, int line, const char *column)
{
    bk_faults *faults = checking->reading->faults;
    if (bk_faults_wanted(faults, sheet, line, column))
        return true;
    bk_faults_add(faults, sheet, bk_sheets[sheet].file, line, column, "%s", "");
    return false;
}

// ------------------------------------------------------------------------------------------------------ keys, twice

static void note_twice(const bk_folder_checking *checking, bk_sheet_number number, const void *record,
                       int first)
{
    const bk_sheet *sheet = &bk_sheets[number];
    const bk_column *last = &sheet->columns[sheet->key_count - 1];
    int line = bk_sheet_line(sheet, record);
    if (!wanted(checking, number, line, last->name))
        return;
    bk_buffer same = {0};
    for (size_t i = 0; i + 1 < sheet->key_count; i++)
        bk_buffer_print(&same, "%s%s", i == 0 ? " with the same " : " and ", sheet->columns[i].name);
    bk_faults_add(checking->reading->faults, number, sheet->file, line, last->name,
                  "%s stands on line %d already%s; take one of the two out, or change one",
                  bk_faults_quote(checking->scratch, bk_sheet_text(record, last->offset)), first,
                  same.length == 0 ? "" : same.bytes);
    bk_buffer_free(&same);
}

/// Gathers the keys of a sheet, and tells those that are used twice.
static bk_status check_keys(bk_folder_checking *checking, bk_sheet_number number, bk_error *error)
{
    const bk_sheet *sheet = &bk_sheets[number];
    bk_sheet_rows rows = bk_sheet_rows_get(checking->reading->folder, sheet);
    checking->keys[number] = bk_keys_new(sheet, rows);
    bk_status status = BK_OK;
    for (size_t i = 0; i < rows.count && status == BK_OK; i++) {
        size_t first = bk_keys_put(checking->keys[number], i);
        if (first != i)
            note_twice(checking, number, bk_sheet_row(sheet, rows, i),
                       bk_sheet_line(sheet, bk_sheet_row(sheet, rows, first)));
        status = bk_folder_check_progress(checking, number, i, error);
    }
    return status;
}

// ------------------------------------------------------------------------------------------------------- references

/// Where a column names a row of another sheet; `or_to` is a second sheet that may have it, BK_SHEETS for none.
typedef struct reference {
    bk_sheet_number from;
    const char *column;
    bk_sheet_number to, or_to;
} reference;

static const reference references[] = {
    {BK_SHEET_AWAY, "who", BK_SHEET_PEOPLE, BK_SHEET_PERFORMERS},
    {BK_SHEET_MEASURES, "performer", BK_SHEET_PERFORMERS, BK_SHEETS},
    {BK_SHEET_ROLES, "performer", BK_SHEET_PERFORMERS, BK_SHEETS},
    {BK_SHEET_ROLES, "cover", BK_SHEET_PERFORMERS, BK_SHEETS},
    {BK_SHEET_COSTUMES, "role", BK_SHEET_ROLES, BK_SHEETS},
    {BK_SHEET_PIECES, "costumes", BK_SHEET_COSTUMES, BK_SHEETS},
    {BK_SHEET_STEPS, "piece", BK_SHEET_PIECES, BK_SHEETS},
    {BK_SHEET_NEEDS, "piece", BK_SHEET_PIECES, BK_SHEETS},
    {BK_SHEET_NEEDS, "material", BK_SHEET_MATERIALS, BK_SHEETS},
    {BK_SHEET_ORDERS, "material", BK_SHEET_MATERIALS, BK_SHEETS},
    {BK_SHEET_FITTINGS, "piece", BK_SHEET_PIECES, BK_SHEETS},
    {BK_SHEET_FITTINGS, "performer", BK_SHEET_PERFORMERS, BK_SHEETS},
    {BK_SHEET_WORK_STEPS, "work", BK_SHEET_WORKS, BK_SHEETS},
    {BK_SHEET_NOTES, "costume", BK_SHEET_COSTUMES, BK_SHEETS},
    {BK_SHEET_NOTES, "piece", BK_SHEET_PIECES, BK_SHEETS},
};

/// Names of that kind that the workroom knows; NULL where it knows none, whatever the folder says.
static const bk_index *known_names(const bk_known *known, bk_sheet_number sheet)
{
    if (known == NULL)
        return NULL;
    switch (sheet) {
    case BK_SHEET_PEOPLE:
        return known->people;
    case BK_SHEET_PERFORMERS:
        return known->performers;
    case BK_SHEET_MATERIALS:
        return known->materials;
    case BK_SHEET_WORKS:
        return known->works;
    default:
        return NULL;
    }
}

static const char *nearest_name(const bk_folder_checking *checking, bk_sheet_number to, const char *name)
{
    if (to == BK_SHEETS)
        return NULL;
    const bk_sheet *sheet = &bk_sheets[to];
    bk_sheet_rows rows = bk_sheet_rows_get(checking->reading->folder, sheet);
    const char **names = bk_arena_take(checking->scratch, rows.count * sizeof *names);
    size_t count = 0;
    for (size_t i = 0; i < rows.count; i++) {
        const char *there = bk_sheet_text(bk_sheet_row(sheet, rows, i), sheet->columns[0].offset);
        if (there != NULL)
            names[count++] = there;
    }
    return bk_nearest(name, names, count);
}

static void note_unknown(const bk_folder_checking *checking, const reference *at, int line, const char *name)
{
    if (!wanted(checking, at->from, line, at->column))
        return;
    bk_arena *scratch = checking->scratch;
    const bk_sheet *to = &bk_sheets[at->to];
    const char *quoted = bk_faults_quote(scratch, name);
    const char *nearest = nearest_name(checking, at->to, name);
    if (nearest == NULL)
        nearest = nearest_name(checking, at->or_to, name);
    const char *what = "";
    if (at->or_to != BK_SHEETS)
        what = bk_arena_print(scratch, "nobody is called %s, neither in %s or %s nor in the workroom", quoted,
                              to->file, bk_sheets[at->or_to].file);
    else if (known_names(checking->known, at->to) != NULL)
        what = bk_arena_print(scratch, "no %s is called %s, neither in %s nor in the workroom", to->noun,
                              quoted, to->file);
    else
        what = bk_arena_print(scratch, "no %s is called %s in %s", to->noun, quoted, to->file);
    const char *advice = "; add a row there, or write a name that stands there";
    if (nearest != NULL)
        advice = bk_arena_print(scratch, "; did you mean %s?", bk_faults_quote(scratch, nearest));
    bk_faults_add(checking->reading->faults, at->from, bk_sheets[at->from].file, line, at->column, "%s%s",
                  what, advice);
}

void bk_folder_check_unknown(const bk_folder_checking *checking, bk_sheet_number from, int line,
                             const char *column, const char *name, bk_sheet_number to)
{
    reference at = {.from = from, .column = column, .to = to, .or_to = BK_SHEETS};
    note_unknown(checking, &at, line, name);
}

/// Whether a row of the sheet, or the workroom, bears the name; also where the sheet is not wholly readable.
static bool is_known(const bk_folder_checking *checking, bk_sheet_number to, const char *name)
{
    size_t row = 0;
    if (to == BK_SHEETS)
        return false;
    if (checking->reading->unreadable[to] || bk_keys_find(checking->keys[to], name, NULL, &row))
        return true;
    const bk_index *known = known_names(checking->known, to);
    return known != NULL && bk_index_find(known, name) != NULL;
}

static bool reference_known(const bk_folder_checking *checking, const reference *at, const char *name)
{
    return is_known(checking, at->to, name) || is_known(checking, at->or_to, name);
}

/// Checks each item of a list.
static void check_items(const bk_folder_checking *checking, const reference *at, int line, const char *items)
{
    const char *item = NULL;
    size_t length = 0;
    while (bk_list_item(&items, &item, &length)) {
        const char *name = bk_names_keep(checking->reading->names, item, length);
        if (!reference_known(checking, at, name))
            note_unknown(checking, at, line, name);
    }
}

static bk_status check_reference(const bk_folder_checking *checking, const reference *at, bk_error *error)
{
    const bk_sheet *sheet = &bk_sheets[at->from];
    const bk_column *column = &sheet->columns[bk_column_find(sheet, at->column)];
    bk_sheet_rows rows = bk_sheet_rows_get(checking->reading->folder, sheet);
    bk_status status = BK_OK;
    const char *last = NULL; // of many rows in turn for the same performer only the first is looked up
    for (size_t i = 0; i < rows.count && status == BK_OK; i++) {
        const void *record = bk_sheet_row(sheet, rows, i);
        const char *text = bk_sheet_text(record, column->offset);
        status = bk_folder_check_progress(checking, at->from, i, error);
        if (text == NULL || text == last)
            continue;
        if (column->type == BK_CELL_NAMES)
            check_items(checking, at, bk_sheet_line(sheet, record), text);
        else if (reference_known(checking, at, text))
            last = text;
        else
            note_unknown(checking, at, bk_sheet_line(sheet, record), text);
    }
    return status;
}

// ------------------------------------------------------------------------------------------------------------- days

/// Two days of a row of which the second may not come before the first.
static const struct period {
    bk_sheet_number sheet;
    const char *from, *to;
} periods[] = {{BK_SHEET_PEOPLE, "from", "until"}, {BK_SHEET_AWAY, "from", "to"}};

static bk_day day_of(const bk_column *column, const void *record)
{
    bk_day day = BK_NO_DAY;
    memcpy(&day, (const char *)record + column->offset, sizeof day);
    return day;
}

static void check_period(const bk_folder_checking *checking, const struct period *period)
{
    const bk_sheet *sheet = &bk_sheets[period->sheet];
    const bk_column *from = &sheet->columns[bk_column_find(sheet, period->from)];
    const bk_column *to = &sheet->columns[bk_column_find(sheet, period->to)];
    bk_sheet_rows rows = bk_sheet_rows_get(checking->reading->folder, sheet);
    for (size_t i = 0; i < rows.count; i++) {
        const void *record = bk_sheet_row(sheet, rows, i);
        char first[BK_DAY_ROOM], last[BK_DAY_ROOM];
        if (day_of(to, record) == BK_NO_DAY || day_of(to, record) >= day_of(from, record))
            continue;
        bk_faults_add(
            checking->reading->faults, period->sheet, sheet->file, bk_sheet_line(sheet, record), to->name,
            "\"%s\" is before the first day, %s in %s; write the last day, that one or a later",
            bk_day_write(day_of(to, record), last), bk_day_write(day_of(from, record), first), from->name);
    }
}

static void check_production(const bk_folder_checking *checking)
{
    const bk_sheet *sheet = &bk_sheets[BK_SHEET_PRODUCTION];
    bk_sheet_rows rows = bk_sheet_rows_get(checking->reading->folder, sheet);
    if (checking->reading->unreadable[BK_SHEET_PRODUCTION])
        return;
    if (rows.count == 0)
        bk_faults_add(
            checking->reading->faults, BK_SHEET_PRODUCTION, sheet->file, 1, "sheet",
            "has no row below its first line; write one, with the production's name and the day it opens");
    if (rows.count > 1)
        bk_faults_add(checking->reading->faults, BK_SHEET_PRODUCTION, sheet->file,
                      bk_sheet_line(sheet, bk_sheet_row(sheet, rows, 1)), sheet->columns[0].name,
                      "is in a second row; a folder holds one production, so this sheet has one row");
}

static bk_status check_all(bk_folder_checking *checking, bk_error *error)
{
    bk_status status = BK_OK;
    check_production(checking);
    for (size_t i = 0; i < BK_SHEETS && status == BK_OK; i++)
        if (bk_sheets[i].key_count > 0)
            status = check_keys(checking, (bk_sheet_number)i, error);
    for (size_t i = 0; i < sizeof references / sizeof *references && status == BK_OK; i++)
        status = check_reference(checking, &references[i], error);
    for (size_t i = 0; i < sizeof periods / sizeof *periods; i++)
        check_period(checking, &periods[i]);
    if (status == BK_OK)
        status = bk_folder_check_steps(checking, error);
    return status == BK_OK ? bk_folder_check_works(checking, error) : status;
}

bk_status bk_folder_check(bk_sheet_reading *reading, const bk_known *known, bk_error *error)
{
    bk_folder_checking checking = {.reading = reading, .known = known, .scratch = bk_arena_new()};
    bk_status status = check_all(&checking, error);
    for (size_t i = 0; i < BK_SHEETS; i++)
        bk_keys_free(checking.keys[i]);
    bk_arena_free(checking.scratch);
    return status;
}
