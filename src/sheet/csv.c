#include "bodkin/sheet/csv.h"

#include <stdlib.h>
#include <string.h>

// Rules named by number are those of RFC 4180, section 2.

static const char byte_order_mark[] = "\xEF\xBB\xBF";

struct bk_csv_reader {
    const char *bytes, *at, *end;
    int line;   ///< of `at`, from 1
    bool sound; ///< the whole file is UTF-8 and without NUL, so that its cells need not be looked at again
    bk_buffer text;     ///< the cells of the record, one behind the other, each with a NUL
    bk_csv_cell *cells; ///< room for BK_CSV_CELLS_MOST
    size_t count;
};

bk_csv_reader *bk_csv_reader_new(const char *bytes, size_t length)
{
    bk_csv_reader *reader = bk_alloc_clear(1, sizeof *reader);
    const size_t mark = sizeof byte_order_mark - 1;
    reader->bytes = reader->at = bytes;
    reader->end = length > 0 ? bytes + length : bytes;
    if (length >= mark && memcmp(bytes, byte_order_mark, mark) == 0)
        reader->at += mark;
    reader->line = 1;
    reader->sound =
        length == 0 || (memchr(bytes, '\0', length) == NULL && bk_text_fault(bytes, length) == length);
    reader->cells = bk_alloc(BK_CSV_CELLS_MOST * sizeof *reader->cells);
    return reader;
}

void bk_csv_reader_free(bk_csv_reader *reader)
{
    if (reader == NULL)
        return;
    bk_buffer_free(&reader->text);
    free(reader->cells);
    free(reader);
}

size_t bk_csv_position(const bk_csv_reader *reader)
{
    return (size_t)(reader->at - reader->bytes);
}

/// Adds to the cell that begins at `start` of the record's text, up to one byte more than a cell may have.
static void add_text(bk_csv_reader *reader, size_t start, const char *bytes, size_t length)
{
    size_t room = BK_CSV_CELL_MOST + 1 - (reader->text.length - start);
    bk_buffer_add(&reader->text, bytes, length < room ? length : room);
}

/// What is wrong with the bytes of a cell, wherever it stood.
static bk_csv_fault fault_of(const bk_csv_reader *reader, const char *bytes, size_t length,
                             unsigned char *byte)
{
    if (length > BK_CSV_CELL_MOST)
        return BK_CSV_LARGE;
    if (reader->sound || length == 0)
        return BK_CSV_OK;
    if (memchr(bytes, '\0', length) != NULL)
        return BK_CSV_NUL;
    size_t fault = bk_text_fault(bytes, length);
    if (fault == length)
        return BK_CSV_OK;
    *byte = (unsigned char)bytes[fault];
    return BK_CSV_UTF8;
}

/// Ends the cell that begins at `start` of the record's text.
static void end_cell(bk_csv_reader *reader, size_t start, bk_csv_fault fault)
{
    if (reader->count == BK_CSV_CELLS_MOST) {
        reader->text.length = start;
        return;
    }
    bk_csv_cell *cell = &reader->cells[reader->count++];
    *cell = (bk_csv_cell){.length = reader->text.length - start, .fault = fault};
    if (fault == BK_CSV_OK && cell->length > 0)
        cell->fault = fault_of(reader, reader->text.bytes + start, cell->length, &cell->byte);
    if (cell->fault != BK_CSV_OK) {
        reader->text.length = start;
        cell->length = 0;
    }
    bk_buffer_char(&reader->text, '\0');
}

/// Where a cell ends that is not quoted: its comma, its line end, or the end of the file. Tells whether it has a quote.
static const char *plain_end(const char *at, const char *end, bool *quote)
{
    while (at < end && *at != ',' && *at != '\n') {
        *quote |= *at == '"';
        at++;
    }
    return at;
}

/// The same without the CR of a line end (rule 1: CRLF; the end of the file may lack its LF).
static const char *without_return(const char *start, const char *stop, const char *end)
{
    bool line_end = stop == end || *stop == '\n';
    return line_end && stop > start && stop[-1] == '\r' ? stop - 1 : stop;
}

/// Reads a cell that begins with something other than a quote (rule 5: it may hold none; rule 4: spaces are data).
static void read_plain(bk_csv_reader *reader)
{
    bool quote = false;
    size_t start = reader->text.length;
    const char *stop = plain_end(reader->at, reader->end, &quote);
    const char *last = without_return(reader->at, stop, reader->end);
    add_text(reader, start, reader->at, (size_t)(last - reader->at));
    end_cell(reader, start, quote ? BK_CSV_QUOTE_INSIDE : BK_CSV_OK);
    reader->at = stop;
}

static int lines_in(const char *at, const char *end)
{
    int lines = 0;
    while (at < end && (at = memchr(at, '\n', (size_t)(end - at))) != NULL) {
        lines++;
        at++;
    }
    return lines;
}

/// Takes over what stands in the quotes that open at `at` (rule 6), each two quotes as one (rule 7). Returns where the
/// closing quote stands, or NULL.
static const char *read_inside_quotes(bk_csv_reader *reader, size_t start)
{
    const char *from = reader->at + 1;
    for (;;) {
        const char *quote = from < reader->end ? memchr(from, '"', (size_t)(reader->end - from)) : NULL;
        if (quote == NULL)
            return NULL;
        bool doubled = quote + 1 < reader->end && quote[1] == '"';
        add_text(reader, start, from, (size_t)(quote - from) + (doubled ? 1 : 0));
        if (!doubled)
            return quote;
        from = quote + 2;
    }
}

static void read_quoted(bk_csv_reader *reader)
{
    bool unused = false;
    size_t start = reader->text.length;
    const char *quote = read_inside_quotes(reader, start);
    if (quote == NULL) {
        end_cell(reader, start, BK_CSV_QUOTE_OPEN);
        reader->at = reader->end;
        return;
    }
    reader->line += lines_in(reader->at, quote);
    const char *stop = plain_end(quote + 1, reader->end, &unused);
    bool after = without_return(quote + 1, stop, reader->end) != quote + 1;
    end_cell(reader, start, after ? BK_CSV_QUOTE_AFTER : BK_CSV_OK);
    reader->at = stop;
}

/// Reads one cell and steps behind the comma or the line end that follows; true when it was a comma.
static bool read_cell(bk_csv_reader *reader)
{
    if (reader->at < reader->end && *reader->at == '"')
        read_quoted(reader);
    else
        read_plain(reader);
    if (reader->at == reader->end)
        return false;
    bool comma = *reader->at == ',';
    reader->line += comma ? 0 : 1;
    reader->at++;
    return comma;
}

static void pass_empty_lines(bk_csv_reader *reader)
{
    while (reader->at < reader->end) {
        const char *at = reader->at + (*reader->at == '\r' ? 1 : 0);
        if (at < reader->end && *at != '\n')
            return;
        reader->at = at < reader->end ? at + 1 : at;
        reader->line++;
    }
}

bool bk_csv_next(bk_csv_reader *reader, bk_csv_record *record)
{
    pass_empty_lines(reader);
    if (reader->at == reader->end)
        return false;
    reader->text.length = 0;
    reader->count = 0;
    int line = reader->line;
    while (read_cell(reader))
        continue;
    const char *text = reader->text.bytes;
    for (size_t i = 0; i < reader->count; i++) {
        reader->cells[i].text = text;
        text += reader->cells[i].length + 1;
    }
    *record = (bk_csv_record){.cells = reader->cells, .count = reader->count, .line = line};
    return true;
}

/// Whether a spreadsheet would take the text for a formula, or it begins with what is put in front of one.
static bool like_formula(const char *text)
{
    text += strspn(text, "'");
    return *text != '\0' && strchr("=+-@", *text) != NULL;
}

static void add_quoted(bk_buffer *out, const char *text, bool guard)
{
    bk_buffer_char(out, '"');
    if (guard)
        bk_buffer_char(out, '\'');
    for (const char *quote = strchr(text, '"'); quote != NULL; quote = strchr(text, '"')) {
        bk_buffer_add(out, text, (size_t)(quote - text) + 1);
        bk_buffer_char(out, '"');
        text = quote + 1;
    }
    bk_buffer_text(out, text);
    bk_buffer_char(out, '"');
}

void bk_csv_write_cell(bk_buffer *out, const char *text, bool first, bool guard)
{
    if (text == NULL)
        text = "";
    if (!first)
        bk_buffer_char(out, ',');
    guard = guard && like_formula(text);
    bool alone = first && *text == '\0'; // an empty line would be passed over
    if (alone || text[strcspn(text, ",\"\r\n")] != '\0') {
        add_quoted(out, text, guard);
        return;
    }
    if (guard)
        bk_buffer_char(out, '\'');
    bk_buffer_text(out, text);
}

void bk_csv_write_end(bk_buffer *out)
{
    bk_buffer_text(out, "\r\n");
}

const char *bk_csv_unguard(const char *text)
{
    return *text == '\'' && like_formula(text) ? text + 1 : text;
}
