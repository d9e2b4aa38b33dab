#include "bodkin/sheet/cell_write.h"

#include <stdio.h>
#include <string.h>

#include "bodkin/sheet/csv.h"

/// A cell on its way out; what is written goes to `text`, or, when that is longer, `written` points to it.
typedef struct cell {
    const bk_column *column;
    const void *record;
    const bk_cell_style *style;
    char room[BK_AMOUNT_ROOM];
    const char *written; ///< NULL: an empty cell
} cell;

static const void *field(const cell *one)
{
    return (const char *)one->record + one->column->offset;
}

static int64_t number(const cell *one)
{
    int64_t number = 0;
    memcpy(&number, field(one), sizeof number);
    return number;
}

static void write_text(cell *one)
{
    one->written = bk_sheet_text(one->record, one->column->offset);
}

static void write_word(cell *one)
{
    int word = BK_NO_WORD;
    memcpy(&word, field(one), sizeof word);
    one->written = bk_word_text(one->column->words, word);
}

static void write_day(cell *one)
{
    bk_day day = BK_NO_DAY;
    memcpy(&day, field(one), sizeof day);
    one->written = bk_day_write(day, one->room);
}

static void write_time(cell *one)
{
    bk_minute time = BK_NO_TIME;
    memcpy(&time, field(one), sizeof time);
    one->written = bk_time_write(time, one->room);
}

static void write_moment(cell *one)
{
    bk_moment moment = {.day = BK_NO_DAY, .time = BK_NO_TIME};
    memcpy(&moment, field(one), sizeof moment);
    one->written = bk_moment_write(moment, one->room);
}

static void write_length(cell *one)
{
    one->written = bk_length_write(number(one), one->style->unit, one->room);
}

static void write_quantity(cell *one)
{
    one->written = bk_quantity_write(number(one), one->room);
}

static void write_money(cell *one)
{
    const char *currency = bk_sheet_text(one->record, one->column->currency);
    one->written = bk_money_write(number(one), currency, one->style->currency, one->room);
}

static void write_whole(cell *one)
{
    if (number(one) == BK_NOT_KNOWN)
        return;
    snprintf(one->room, sizeof one->room, "%lld", (long long)number(one));
    one->written = one->room;
}

static void write_version(cell *one)
{
    snprintf(one->room, sizeof one->room, "%d", BK_SHEETS_VERSION);
    one->written = one->room;
}

enum { MINUTES_PER_HOUR = 60 };

static void write_rest(cell *one)
{
    if (number(one) == BK_NOT_KNOWN)
        return;
    bk_quantity hours = (number(one) * BK_QUANTITY_ONE + MINUTES_PER_HOUR / 2) / MINUTES_PER_HOUR;
    one->written = bk_quantity_write(hours, one->room);
}

static void write_yes(cell *one)
{
    one->written = number(one) == 1 ? "yes" : NULL;
}

/// How a field of each type becomes text, and whether a spreadsheet could take that for a formula: what people typed.
static const struct {
    void (*write)(cell *one);
    bool guard;
} writers[BK_CELL_TYPES] = {
    [BK_CELL_NAME] = {write_text, true},          [BK_CELL_TEXT] = {write_text, true},
    [BK_CELL_NAMES] = {write_text, true},         [BK_CELL_AFTER] = {write_text, true},
    [BK_CELL_WORDS] = {write_text, true},         [BK_CELL_WORD] = {write_word, false},
    [BK_CELL_HOURS] = {write_text, true},         [BK_CELL_CURRENCY] = {write_text, true},
    [BK_CELL_DAY] = {write_day, false},           [BK_CELL_TIME] = {write_time, false},
    [BK_CELL_MOMENT] = {write_moment, false},     [BK_CELL_LENGTH] = {write_length, false},
    [BK_CELL_QUANTITY] = {write_quantity, false}, [BK_CELL_MONEY] = {write_money, false},
    [BK_CELL_WHOLE] = {write_whole, false},       [BK_CELL_VERSION] = {write_version, false},
    [BK_CELL_REST] = {write_rest, false},         [BK_CELL_YES] = {write_yes, false},
};

void bk_cell_write(bk_buffer *out, const bk_column *column, const void *record, const bk_cell_style *style,
                   bool first)
{
    cell one = {.column = column, .record = record, .style = style, .written = NULL};
    writers[column->type].write(&one);
    bk_csv_write_cell(out, one.written, first, writers[column->type].guard);
}

void bk_cell_text(bk_buffer *out, const bk_column *column, const void *record, const bk_cell_style *style)
{
    cell one = {.column = column, .record = record, .style = style, .written = NULL};
    writers[column->type].write(&one);
    bk_buffer_text(out, one.written == NULL ? "" : one.written);
}
