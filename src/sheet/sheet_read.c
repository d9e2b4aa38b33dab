#include "bodkin/sheet/sheet_read.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/cell_read.h"
#include "bodkin/sheet/csv.h"

enum {
    TOLD_EVERY =
        256 * 1024,   ///< bytes after which it is told how far the reading is: some milliseconds of work
    NAME_COLUMNS = 40 ///< of an unknown column's name, as it is told
};

/// One sheet on its way into the folder.
typedef struct sheet_job {
    bk_sheet_reading *reading;
    bk_sheet_number number;
    const bk_sheet *sheet;
    bk_arena *scratch;         ///< for what is only needed while this sheet is read
    size_t width;              ///< cells of the first line
    const bk_column **columns; ///< the column of each, NULL where it is unknown
    const char **names;        ///< what the first line calls each
    bool *filled;              ///< of the sheet's columns: whether the first line has it
    char *records;             ///< `count` of them, in memory of their own while they grow
    size_t count, room;
    void *unknown; ///< a record of which nothing is known
} sheet_job;

static void note(const sheet_job *job, int line, const char *column, const char *what)
{
    bk_faults_add(job->reading->faults, job->number, job->sheet->file, line, column, "%s", what);
}

bk_status bk_sheet_stopped(bk_error *error)
{
    return bk_fail(error, BK_REFUSED, "the reading of the sheets was stopped; nothing was changed");
}

// --------------------------------------------------------------------------------------------------- cells at fault

static const char *const csv_faults[] = {
    [BK_CSV_QUOTE_OPEN] = "opens a double quote that is never closed; what follows could not be read: close "
                          "it, or write a quote within a text twice",
    [BK_CSV_QUOTE_AFTER] = "goes on behind its closing double quote; put the whole cell in double quotes, "
                           "and write a quote within the text twice",
    [BK_CSV_QUOTE_INSIDE] = "has a double quote inside; put the whole cell in double quotes and write that "
                            "quote twice, such as \"a 2\"\" hem\"",
    [BK_CSV_NUL] = "holds a NUL byte, which no text has; type the cell anew",
    [BK_CSV_LARGE] = "is larger than 65536 bytes; a cell holds a few lines at most",
};

/// Tells what is wrong with the bytes of a cell.
static void note_csv_fault(sheet_job *job, int line, const char *column, const bk_csv_cell *cell)
{
    bool rows_within = cell->fault == BK_CSV_QUOTE_OPEN || cell->fault == BK_CSV_QUOTE_AFTER;
    job->reading->unreadable[job->number] |= rows_within;
    if (cell->fault == BK_CSV_UTF8)
        bk_faults_add(job->reading->faults, job->number, job->sheet->file, line, column,
                      "is not UTF-8 (byte 0x%02X); save the file anew as CSV in UTF-8", cell->byte);
    else
        note(job, line, column, csv_faults[cell->fault]);
}

/// What a column is called for a person: its name, or its place where it has none.
static const char *called(const sheet_job *job, size_t place)
{
    if (place < job->width && job->names[place] != NULL)
        return job->names[place];
    return bk_arena_print(job->scratch, "column %zu", place + 1);
}

// --------------------------------------------------------------------------------------------------- the first line

static void note_unknown_column(const sheet_job *job, int line, const char *name)
{
    const bk_sheet *sheet = job->sheet;
    const char **known = bk_arena_take(job->scratch, sheet->column_count * sizeof *known);
    bk_buffer all = {0};
    for (size_t i = 0; i < sheet->column_count; i++) {
        known[i] = sheet->columns[i].name;
        bk_buffer_print(&all, "%s%s", i == 0 ? "" : ", ", known[i]);
    }
    const char *nearest = bk_nearest(name, known, sheet->column_count);
    if (nearest != NULL)
        bk_faults_add(job->reading->faults, job->number, sheet->file, line, name,
                      "there is no column of this name; did you mean %s?", nearest);
    else
        bk_faults_add(job->reading->faults, job->number, sheet->file, line, name,
                      "there is no column of this name; the columns are %s", all.bytes);
    bk_buffer_free(&all);
}

/// Takes in one cell of the first line.
static void read_column_name(sheet_job *job, int line, size_t place, const bk_csv_cell *cell)
{
    const char *name = bk_csv_unguard(cell->text);
    if (cell->fault != BK_CSV_OK) {
        note_csv_fault(job, line, called(job, place), cell);
        return;
    }
    if (bk_cell_blank(name)) {
        note(job, line, called(job, place), "has no name in the first line; name it, or take out its comma");
        return;
    }
    job->names[place] = bk_text_cut(job->scratch, name, NAME_COLUMNS, false);
    size_t number = bk_column_find(job->sheet, name);
    if (number == job->sheet->column_count)
        note_unknown_column(job, line, job->names[place]);
    else if (job->filled[number])
        note(job, line, name, "stands twice in the first line; a column may be there only once");
    else
        job->columns[place] = &job->sheet->columns[number];
    if (number < job->sheet->column_count)
        job->filled[number] = true;
}

/// Whether the quotes of a record are at fault, so that it cannot be told where its cells begin.
static bool quotes_at_fault(const bk_csv_record *record)
{
    for (size_t i = 0; i < record->count; i++)
        if (record->cells[i].fault == BK_CSV_QUOTE_OPEN || record->cells[i].fault == BK_CSV_QUOTE_AFTER)
            return true;
    return false;
}

/// Reads the first line, which names the columns.
static void read_header(sheet_job *job, const bk_csv_record *header)
{
    job->width = header->count;
    job->columns = bk_arena_clear(job->scratch, header->count, sizeof *job->columns);
    job->names = bk_arena_clear(job->scratch, header->count, sizeof *job->names);
    job->filled = bk_arena_clear(job->scratch, job->sheet->column_count, sizeof *job->filled);
    for (size_t i = 0; i < header->count; i++)
        read_column_name(job, header->line, i, &header->cells[i]);
    for (size_t i = 0; i < job->sheet->column_count; i++) {
        const bk_column *column = &job->sheet->columns[i];
        if (!column->required || job->filled[i] || quotes_at_fault(header))
            continue;
        note(job, header->line, column->name,
             "is missing from the first line; this sheet must have that column");
        job->reading->unreadable[job->number] |= i == 0 || i < job->sheet->key_count;
    }
}

static void note_empty_file(const sheet_job *job)
{
    bk_buffer all = {0};
    for (size_t i = 0; i < job->sheet->column_count; i++)
        bk_buffer_print(&all, "%s%s", i == 0 ? "" : ", ", job->sheet->columns[i].name);
    bk_faults_add(job->reading->faults, job->number, job->sheet->file, 1, "sheet",
                  "the file is empty; its first line must name its columns: %s", all.bytes);
    bk_buffer_free(&all);
    job->reading->unreadable[job->number] = true;
}

// --------------------------------------------------------------------------------------------------------- the rows

static bool all_blank(const bk_csv_record *record, size_t from)
{
    for (size_t i = from; i < record->count; i++)
        if (record->cells[i].fault != BK_CSV_OK || !bk_cell_blank(record->cells[i].text))
            return false;
    return true;
}

/// Tells a row that has not as many cells as the first line; true when its cells can be read all the same.
static bool check_width(const sheet_job *job, const bk_csv_record *record)
{
    bk_faults *faults = job->reading->faults;
    const char *file = job->sheet->file;
    if (record->count == job->width || quotes_at_fault(record))
        return true;
    if (record->count < job->width) {
        bk_faults_add(
            faults, job->number, file, record->line, called(job, record->count),
            "the row ends before this column, after %zu of %zu cells; write a comma for each empty cell too",
            record->count, job->width);
        return true;
    }
    bool blank = all_blank(record, job->width);
    bk_faults_add(faults, job->number, file, record->line, called(job, job->width - 1),
                  "the row has %zu cells, but the first line names %zu column%s; %s", record->count,
                  job->width, job->width == 1 ? "" : "s",
                  blank
                      ? "take out the commas at its end"
                      : "put a text that has commas in double quotes, and write a decimal comma as a point");
    return blank;
}

/// Reads one cell of a row.
static void read_one(sheet_job *job, const bk_csv_record *record, size_t place, bk_cell *cell)
{
    const bk_csv_cell *raw = &record->cells[place];
    if (raw->fault != BK_CSV_OK) {
        note_csv_fault(job, record->line, called(job, place), raw);
        return;
    }
    if (place >= job->width || job->columns[place] == NULL)
        return;
    cell->column = job->columns[place];
    cell->text = bk_csv_unguard(raw->text);
    bk_cell_read(cell);
}

/// Whether others refer to the row by that cell.
static bool in_key(const sheet_job *job, size_t place)
{
    if (place >= job->width || job->columns[place] == NULL)
        return false;
    size_t number = (size_t)(job->columns[place] - job->sheet->columns);
    return number == 0 || number < job->sheet->key_count;
}

static void read_row(sheet_job *job, const bk_csv_record *record)
{
    if (all_blank(record, 0))
        return; // spreadsheets leave rows of nothing but commas behind
    const bk_sheet *sheet = job->sheet;
    bk_sheet_reading *reading = job->reading;
    job->records = bk_list_grow(job->records, &job->room, job->count, sheet->record_size);
    char *to = job->records + job->count * sheet->record_size;
    memcpy(to, job->unknown, sheet->record_size);
    memcpy(to + sheet->line, &record->line, sizeof record->line);
    bk_cell cell = {.sheet = job->number,
                    .line = record->line,
                    .record = to,
                    .before = job->count == 0 ? NULL : to - sheet->record_size,
                    .arena = reading->folder->arena,
                    .names = reading->names,
                    .faults = reading->faults,
                    .currency = reading->currency};
    job->count++;
    bool readable = check_width(job, record);
    for (size_t i = 0; i < record->count; i++)
        if (readable || in_key(job, i))
            read_one(job, record, i, &cell);
}

static bk_status read_rows(sheet_job *job, bk_csv_reader *csv, size_t length, bk_error *error)
{
    const bk_progress *progress = job->reading->progress;
    size_t told = 0;
    bk_csv_record record;
    while (bk_csv_next(csv, &record)) {
        read_row(job, &record);
        if (bk_csv_position(csv) - told < TOLD_EVERY)
            continue;
        told = bk_csv_position(csv);
        if (!bk_progress_tell(progress, job->sheet->file, (int64_t)told, (int64_t)length))
            return bk_sheet_stopped(error);
    }
    return BK_OK;
}

/// Tells a file that is no CSV in UTF-8 at all, once and not cell by cell: UTF-16, or other separators than commas.
static bool note_other_form(const sheet_job *job, const bk_csv_record *header, const char *bytes,
                            size_t length)
{
    const char *separator = header->count == 1 ? strpbrk(header->cells[0].text, ";\t") : NULL;
    bool utf16 = length > 1 && (!memcmp(bytes, "\xff\xfe", 2) || !memcmp(bytes, "\xfe\xff", 2));
    if (!separator && !utf16)
        return false;
    note(job, 1, "sheet",
         utf16 ? "is Unicode of another sort (UTF-16); save the file anew as CSV in UTF-8"
         : *separator == ';'
             ? "the cells are separated by semicolons; save the file anew with commas between them"
             : "the cells are separated by tabs; save the file anew with commas between them");
    job->reading->unreadable[job->number] = true;
    return true;
}

/// Puts the records that were read into the folder.
static void keep_records(const sheet_job *job)
{
    bk_folder *folder = job->reading->folder;
    size_t size = job->count * job->sheet->record_size;
    bk_sheet_rows rows = {.items = bk_arena_take(folder->arena, size), .count = job->count};
    if (size > 0)
        memcpy(rows.items, job->records, size);
    bk_sheet_rows_set(folder, job->sheet, rows);
}

static bk_status read_sheet(sheet_job *job, bk_csv_reader *csv, const char *bytes, size_t length,
                            bk_error *error)
{
    bk_csv_record header;
    if (!bk_progress_tell(job->reading->progress, job->sheet->file, 0, (int64_t)length))
        return bk_sheet_stopped(error);
    if (!bk_csv_next(csv, &header)) {
        note_empty_file(job);
        return BK_OK;
    }
    if (note_other_form(job, &header, bytes, length))
        return BK_OK;
    read_header(job, &header);
    job->unknown = bk_arena_take(job->scratch, job->sheet->record_size);
    bk_sheet_clear(job->sheet, job->unknown);
    bk_status status = read_rows(job, csv, length, error);
    keep_records(job);
    return status;
}

bk_status bk_sheet_read(bk_sheet_reading *reading, bk_sheet_number sheet, const char *bytes, size_t length,
                        bk_error *error)
{
    sheet_job job = {
        .reading = reading, .number = sheet, .sheet = &bk_sheets[sheet], .scratch = bk_arena_new()};
    bk_csv_reader *csv = bk_csv_reader_new(bytes, length);
    bk_status status = read_sheet(&job, csv, bytes, length, error);
    free(job.records);
    bk_csv_reader_free(csv);
    bk_arena_free(job.scratch);
    return status;
}
