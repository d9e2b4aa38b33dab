#include "bodkin/ui/measuring_lines.h"

#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/base/typed.h"
#include "bodkin/ui/measuring_asked.h"
#include "bodkin/work/sheet_names.h"

void bk_measuring_keep(char **place, const char *sentence)
{
    char *kept = sentence ? strdup(sentence) : NULL;
    free(*place);
    *place = kept;
}

// ---------------------------------------------------------------------------------------------- the lines

bk_measuring_line *bk_measuring_at_hand(const bk_measuring *sheet)
{
    return &sheet->lines[sheet->at];
}

static const char blanks[] = " \t";

bool bk_measuring_is_typed(const bk_measuring_line *line)
{
    const char *text = bk_form_line_text(&line->text);
    return text[strspn(text, blanks)] != '\0';
}

size_t bk_measuring_typed_count(const bk_measuring *sheet)
{
    size_t typed = 0;
    for (size_t i = BK_MEASURING_FIRST; i < sheet->count; i++)
        typed += bk_measuring_is_typed(&sheet->lines[i]) ? 1 : 0;
    return typed;
}

bool bk_measuring_is_changed(const bk_measuring *sheet)
{
    const bk_measuring_line *by = &sheet->lines[BK_MEASURING_BY];
    const char *who = sheet->wall->who ? sheet->wall->who : "";
    return bk_measuring_typed_count(sheet) > 0 || sheet->day != sheet->wall->today ||
           bk_measuring_is_typed(&sheet->lines[BK_MEASURING_OVER]) ||
           strcmp(bk_form_line_text(&by->text), who) != 0;
}

void bk_measuring_arrive(bk_measuring *sheet, size_t index)
{
    sheet->at = index;
    bk_form_line_key(&bk_measuring_at_hand(sheet)->text, BK_KEY_END);
}

size_t bk_measuring_next(const bk_measuring *sheet, size_t from, int by)
{
    size_t index = from;
    while (by < 0 ? index > 0 : index + 1 < sheet->count) {
        index = by < 0 ? index - 1 : index + 1;
        if (sheet->lines[index].part != BK_MEASURING_GAP)
            return index;
    }
    return from;
}

static const char *trimmed(const char *text, bk_arena *arena)
{
    text += strspn(text, blanks);
    size_t length = strlen(text);
    while (length > 0 && strchr(blanks, text[length - 1]))
        length--;
    return bk_arena_bytes(arena, text, length);
}

// The line of a measure, however it is capitalised; `count` where there is none.
static size_t find(const bk_measuring *sheet, const char *name)
{
    bk_arena *arena = bk_arena_new();
    const char *folded = bk_text_fold(arena, name);
    size_t index = BK_MEASURING_FIRST;
    while (index < sheet->count && (sheet->lines[index].part != BK_MEASURING_VALUE ||
                                    !bk_same_text(bk_text_fold(arena, sheet->lines[index].name), folded)))
        index++;
    bk_arena_free(arena);
    return index;
}

static void insert(bk_measuring *sheet, size_t index, bk_measuring_part part, const char *name)
{
    sheet->lines = bk_list_grow(sheet->lines, &sheet->room, sheet->count, sizeof *sheet->lines);
    memmove(&sheet->lines[index + 1], &sheet->lines[index], (sheet->count - index) * sizeof *sheet->lines);
    sheet->lines[index] = (bk_measuring_line){.part = part,
                                              .term = bk_measure_term_find(name),
                                              .value = BK_NO_AMOUNT,
                                              .last = BK_NO_AMOUNT,
                                              .last_on = BK_NO_DAY};
    bk_measuring_keep(&sheet->lines[index].name, name);
    sheet->count++;
}

size_t bk_measuring_line_of(bk_measuring *sheet, const char *name)
{
    size_t index = find(sheet, name);
    if (index < sheet->count)
        return index;
    insert(sheet, sheet->count - 1, BK_MEASURING_VALUE, name);
    return sheet->count - 2;
}

void bk_measuring_begin_other(bk_measuring *sheet)
{
    bk_arena *arena = bk_arena_new();
    const char *name = trimmed(bk_form_line_text(&sheet->lines[sheet->count - 1].text), arena);
    size_t index = bk_measuring_line_of(sheet, name);
    bk_form_line_put(&sheet->lines[sheet->count - 1].text, "");
    sheet->left = sheet->count;
    bk_measuring_arrive(sheet, index);
    bk_arena_free(arena);
}

static void append(bk_measuring *sheet, bk_measuring_part part, const char *name)
{
    insert(sheet, sheet->count, part, name);
}

static void make_lines(bk_measuring *sheet, const bk_sheet_names *names)
{
    append(sheet, BK_MEASURING_DAY, "day");
    append(sheet, BK_MEASURING_BY, "taken by");
    append(sheet, BK_MEASURING_OVER, "over");
    for (size_t i = 0; i < names->count; i++) {
        if (i == names->usual)
            append(sheet, BK_MEASURING_GAP, "Not on the sheets so far");
        append(sheet, BK_MEASURING_VALUE, names->items[i]);
    }
    append(sheet, BK_MEASURING_OTHER, "another measure");
    char day[BK_DAY_ROOM];
    const char *who = sheet->wall->who;
    bk_form_line_put(&sheet->lines[BK_MEASURING_DAY].text, bk_day_write(sheet->day, day));
    bk_form_line_put(&sheet->lines[BK_MEASURING_BY].text, who ? who : "");
    sheet->at = BK_MEASURING_FIRST;
    sheet->left = sheet->count;
}

// --------------------------------------------------------------------------------------- what was measured

static const bk_history_row *row_of(const bk_measuring *sheet, const char *name)
{
    for (size_t i = 0; i < sheet->history.row_count; i++)
        if (bk_same_text(sheet->history.rows[i].name, name))
            return &sheet->history.rows[i];
    return NULL;
}

// The newest value up to the sheet's day; that of the day itself will be corrected.
static void find_last(const bk_measuring *sheet, bk_measuring_line *line)
{
    const bk_history_row *row = row_of(sheet, line->name);
    line->last = BK_NO_AMOUNT;
    line->last_on = BK_NO_DAY;
    for (size_t i = 0; row && i < sheet->history.sheet_count; i++) {
        if (row->cells[i].value == BK_NO_AMOUNT ||
            (sheet->day != BK_NO_DAY && sheet->history.sheets[i].on > sheet->day))
            continue;
        line->last = row->cells[i].value;
        line->last_on = sheet->history.sheets[i].on;
        return;
    }
}

static void find_all_last(bk_measuring *sheet)
{
    for (size_t i = BK_MEASURING_FIRST; i < sheet->count; i++)
        find_last(sheet, &sheet->lines[i]);
}

bk_status bk_measuring_read(bk_measuring *sheet, bk_error *error)
{
    const bk_rail *rail = sheet->wall->rail;
    bk_arena *arena = bk_arena_new();
    bk_history history = {0};
    bk_sheet_names names = {0};
    bk_status status =
        bk_history_read(sheet->wall->store, sheet->performer, sheet->unit, arena, &history, error);
    if (!status && sheet->count == 0)
        status = bk_sheet_names_read(sheet->wall->store, rail ? rail->production.id : 0, &history, arena,
                                     &names, error);
    if (status) {
        bk_arena_free(arena);
        return status;
    }
    bk_arena_free(sheet->arena);
    sheet->arena = arena;
    sheet->history = history;
    if (sheet->count == 0)
        make_lines(sheet, &names);
    bk_measuring_mark_asked(sheet);
    find_all_last(sheet);
    return BK_OK;
}

bk_measuring *bk_measuring_new(bk_wall *wall, int64_t performer)
{
    bool inches = wall->rail && wall->rail->production.unit == BK_INCH;
    bk_measuring *sheet = bk_alloc_clear(1, sizeof *sheet);
    *sheet = (bk_measuring){.wall = wall,
                            .performer = performer,
                            .unit = inches ? BK_INCH : BK_CM,
                            .day = wall->today,
                            .arena = bk_arena_new(),
                            .checked = bk_arena_new()};
    return sheet;
}

void bk_measuring_free(bk_measuring *sheet)
{
    for (size_t i = 0; i < sheet->count; i++) {
        free(sheet->lines[i].name);
        free(sheet->lines[i].wrong);
        free(sheet->lines[i].doubt);
        bk_form_line_free(&sheet->lines[i].text);
    }
    free(sheet->lines);
    bk_arena_free(sheet->arena);
    bk_arena_free(sheet->checked);
    free(sheet);
}

// --------------------------------------------------------------------------------------- what was typed

void bk_measuring_touch(bk_measuring *sheet)
{
    bk_measuring_line *line = bk_measuring_at_hand(sheet);
    bk_measuring_keep(&line->wrong, NULL);
    bk_measuring_keep(&line->doubt, NULL);
    line->told = false;
    sheet->left = sheet->count;
}

static const char *length_fault(const bk_measuring *sheet, bk_reading reading)
{
    if (reading == BK_READ_NO_UNIT)
        return "is finer than centimetres are read; write the unit, such as 36 3/8 in";
    if (reading == BK_READ_COMMA)
        return "can be read in two ways; write a point for decimals, such as 92.5";
    if (reading == BK_READ_TOO_LARGE)
        return "is too long for any body";
    return sheet->unit == BK_INCH ? "is no length; type inches such as 36 3/8, or 92.5 cm, 5' 4\", 1m64"
                                  : "is no length; type centimetres such as 92.5, or 36 3/8 in, 5' 4\", 1m64";
}

static void understand_value(bk_measuring *sheet, bk_measuring_line *line, bk_arena *arena)
{
    const char *text = bk_form_line_text(&line->text), *fault = NULL;
    line->value = BK_NO_AMOUNT;
    if (bk_measuring_is_typed(line)) {
        bk_reading reading = bk_length_typed(text, sheet->unit, &line->value);
        fault = reading ? length_fault(sheet, reading) : NULL;
        if (line->value == 0)
            fault = "is nothing to sew for; empty the line with Ctrl-U if it was not taken";
        if (fault)
            line->value = BK_NO_AMOUNT;
    }
    bk_measuring_keep(&line->wrong, fault ? bk_arena_print(arena, "\"%s\" %s.", text, fault) : NULL);
}

// A weekday alone is the last one: nothing is measured on days to come.
static bool is_weekday(const char *text)
{
    text = bk_skip_blank(text);
    return strpbrk(text, "0123456789") == NULL && strncasecmp(text, "to", 2) != 0;
}

static bool read_day(const char *text, bk_day today, bk_day *day)
{
    if (!bk_day_typed(text, today, day))
        return false;
    if (*day > today && is_weekday(text))
        *day -= BK_WEEKDAYS;
    return true;
}

static void understand_day(bk_measuring *sheet, bk_measuring_line *line, bk_arena *arena)
{
    const char *text = bk_form_line_text(&line->text), *fault = NULL;
    bk_day today = sheet->wall->today;
    sheet->day = BK_NO_DAY;
    if (!bk_measuring_is_typed(line))
        fault = "A sheet needs the day on which it was taken, such as today, -1 or 9 mar.";
    else if (!read_day(text, today, &sheet->day))
        fault = bk_arena_print(arena, "\"%s\" is no day; type one such as today, -1, mon or 9 mar.", text);
    else if (sheet->day > today)
        fault = "A sheet cannot be taken on a day to come.";
    bk_measuring_keep(&line->wrong, fault);
    if (fault) {
        sheet->day = BK_NO_DAY;
    } else {
        char written[BK_DAY_ROOM];
        bk_form_line_put(&line->text, bk_day_write(sheet->day, written));
    }
    find_all_last(sheet);
}

static void understand_name(bk_measuring_line *line)
{
    bool fits = strpbrk(bk_form_line_text(&line->text), ";/") == NULL;
    bk_measuring_keep(&line->wrong, fits ? NULL : "The name of a measure holds no ; and no /.");
}

void bk_measuring_understand(bk_measuring *sheet, size_t index)
{
    bk_arena *arena = bk_arena_new();
    bk_measuring_line *line = &sheet->lines[index];
    if (line->part == BK_MEASURING_VALUE)
        understand_value(sheet, line, arena);
    else if (line->part == BK_MEASURING_DAY)
        understand_day(sheet, line, arena);
    else if (line->part == BK_MEASURING_OTHER)
        understand_name(line);
    bk_arena_free(arena);
}

// --------------------------------------------------------------------------------------------- its doubts

// The sheet so far: what is typed, and what stands on the sheet of that day already. Item i is line i.
static bk_taken_sheet taken_so_far(const bk_measuring *sheet, bk_arena *arena)
{
    bk_taken *items = bk_arena_clear(arena, sheet->count, sizeof *items);
    for (size_t i = 0; i < sheet->count; i++) {
        const bk_measuring_line *line = &sheet->lines[i];
        bool there = line->last_on != BK_NO_DAY && line->last_on == sheet->day;
        items[i] = (bk_taken){line->name, line->value};
        if (line->value == BK_NO_AMOUNT && there)
            items[i].value = line->last;
    }
    return (bk_taken_sheet){items, sheet->count, sheet->day};
}

// The newest sheet before that day; false where there is none.
static bool sheet_before(const bk_measuring *sheet, bk_arena *arena, bk_taken_sheet *before)
{
    const bk_history *history = &sheet->history;
    size_t column = 0;
    while (column < history->sheet_count && history->sheets[column].on >= sheet->day)
        column++;
    if (column == history->sheet_count)
        return false;
    bk_taken *items = bk_arena_clear(arena, history->row_count, sizeof *items);
    for (size_t i = 0; i < history->row_count; i++)
        items[i] = (bk_taken){history->rows[i].name, history->rows[i].cells[column].value};
    *before = (bk_taken_sheet){items, history->row_count, history->sheets[column].on};
    return true;
}

void bk_measuring_doubt(bk_measuring *sheet)
{
    bk_arena *arena = bk_arena_new();
    bk_taken_sheet taken = taken_so_far(sheet, arena), before = {0};
    bool has_before = sheet->day != BK_NO_DAY && sheet_before(sheet, arena, &before);
    bk_doubts doubts = bk_doubts_of_sheet(&taken, has_before ? &before : NULL, sheet->unit, arena);
    for (size_t i = 0; i < sheet->count; i++)
        bk_measuring_keep(&sheet->lines[i].doubt, NULL);
    for (size_t i = 0; i < doubts.count; i++)
        if (sheet->lines[doubts.items[i].item].value != BK_NO_AMOUNT)
            bk_measuring_keep(&sheet->lines[doubts.items[i].item].doubt, doubts.items[i].says);
    bk_arena_free(arena);
}
