// The reader of CSV: whatever the bytes are, reading goes forward and stays within them, every cell is sound text or a fault, and
// what is written of the cells is read again as the same cells.

#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/arena.h"
#include "bodkin/base/list.h"
#include "bodkin/sheet/csv.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/// Ends the run where something does not hold; the fuzzer then keeps the input.
static void hold(bool it)
{
    if (!it)
        abort();
}

/// The cells of a file, record by record; a record ends with NULL.
typedef struct table {
    bk_arena *arena;
    BK_LIST(const char *) cells;
} table;

static void check_cell(const bk_csv_cell *cell)
{
    hold(strlen(cell->text) == cell->length);
    hold(cell->length <= BK_CSV_CELL_MOST);
    hold(cell->fault == BK_CSV_OK || cell->length == 0);
    hold(bk_text_fault(cell->text, cell->length) == cell->length);
    const char *plain = bk_csv_unguard(cell->text);
    hold(plain == cell->text || plain == cell->text + 1);
}

/// Reads all of `bytes` into `read`, checking each record.
static void read_all(const char *bytes, size_t length, table *read)
{
    bk_csv_reader *reader = bk_csv_reader_new(bytes, length);
    bk_csv_record record;
    size_t position = bk_csv_position(reader);
    int line = 0;
    while (bk_csv_next(reader, &record)) {
        hold(bk_csv_position(reader) > position && bk_csv_position(reader) <= length);
        hold(record.line > line && record.count > 0 && record.count <= BK_CSV_CELLS_MOST);
        position = bk_csv_position(reader);
        line = record.line;
        for (size_t i = 0; i < record.count; i++) {
            check_cell(&record.cells[i]);
            bk_list_add(&read->cells, bk_arena_text(read->arena, record.cells[i].text));
        }
        bk_list_add(&read->cells, NULL);
    }
    hold(bk_csv_position(reader) == length);
    hold(!bk_csv_next(reader, &record));
    bk_csv_reader_free(reader);
}

/// A sheet with a first line and these records.
static void write_all(const table *read, bool guard, bk_buffer *out)
{
    bool first = true;
    bk_csv_write_cell(out, "first line", true, guard);
    bk_csv_write_end(out);
    for (size_t i = 0; i < read->cells.count; i++) {
        if (read->cells.items[i] == NULL)
            bk_csv_write_end(out);
        else
            bk_csv_write_cell(out, read->cells.items[i], first, guard);
        first = read->cells.items[i] == NULL;
    }
}

static void check_again(const table *read, bool guard)
{
    bk_buffer out = {0};
    table again = {.arena = read->arena};
    write_all(read, guard, &out);
    read_all(out.bytes, out.length, &again);
    hold(again.cells.count == read->cells.count + 2);
    for (size_t i = 0; i < read->cells.count; i++) {
        const char *before = read->cells.items[i], *after = again.cells.items[i + 2];
        hold((before == NULL) == (after == NULL));
        hold(before == NULL || strcmp(before, guard ? bk_csv_unguard(after) : after) == 0);
    }
    bk_list_free(&again.cells);
    bk_buffer_free(&out);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *bytes = bk_alloc(size); // of exactly that size, so that a byte read too many is seen
    if (size > 0)
        memcpy(bytes, data, size);
    table read = {.arena = bk_arena_new()};
    read_all(bytes, size, &read);
    check_again(&read, false);
    check_again(&read, true);
    bk_list_free(&read.cells);
    bk_arena_free(read.arena);
    free(bytes);
    return 0;
}
