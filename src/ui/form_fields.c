#include "bodkin/ui/form_fields.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/cell_read.h"
#include "bodkin/ui/form_typed.h"

const bk_column *bk_form_column(const bk_form *form, size_t field)
{
    const bk_sheet *sheet = form->kind->sheet;
    return &sheet->columns[bk_column_find(sheet, form->kind->fields[field].column)];
}

size_t bk_form_find(const bk_form *form, const char *column)
{
    size_t field = 0;
    while (field < form->kind->field_count && !bk_same_text(form->kind->fields[field].column, column))
        field++;
    return field;
}

bool bk_form_asked(const bk_form *form, size_t field)
{
    const bk_form_field *asked = &form->kind->fields[field];
    return !asked->asked || asked->asked(form);
}

bool bk_form_is_strict(const bk_form *form, size_t field)
{
    static const bool refers[BK_CELL_TYPES] = {
        [BK_CELL_NAME] = true, [BK_CELL_NAMES] = true, [BK_CELL_AFTER] = true,
        [BK_CELL_WORD] = true, [BK_CELL_WORDS] = true, [BK_CELL_YES] = true,
    };
    const bk_form_field *asked = &form->kind->fields[field];
    const bk_column *column = bk_form_column(form, field);
    return !asked->loose && refers[column->type] && (asked->choices || column->words);
}

bool bk_form_replaces(const bk_form *form)
{
    static const bool typed_anew[BK_CELL_TYPES] = {
        [BK_CELL_WORD] = true,  [BK_CELL_HOURS] = true,  [BK_CELL_CURRENCY] = true, [BK_CELL_DAY] = true,
        [BK_CELL_TIME] = true,  [BK_CELL_MOMENT] = true, [BK_CELL_LENGTH] = true,   [BK_CELL_QUANTITY] = true,
        [BK_CELL_MONEY] = true, [BK_CELL_WHOLE] = true,  [BK_CELL_REST] = true,     [BK_CELL_YES] = true,
    };
    const bk_form_value *value = &form->values[form->at];
    const bk_column *column = bk_form_column(form, form->at);
    bool suggested = !value->typed && value->begun[0] == '\0';
    bool picked = column->type == BK_CELL_NAME && bk_form_is_strict(form, form->at);
    return !value->wrong && (suggested || picked || typed_anew[column->type]);
}

size_t bk_form_next(const bk_form *form, size_t from, int by)
{
    size_t field = from;
    while (by < 0 ? field > 0 : field + 1 < form->kind->field_count) {
        field = by < 0 ? field - 1 : field + 1;
        if (bk_form_asked(form, field))
            return field;
    }
    return from;
}

void bk_form_keep(char **place, const char *sentence)
{
    char *kept = sentence ? strdup(sentence) : NULL;
    free(*place);
    *place = kept;
}

// -------------------------------------------------------------------------------------------- ways of writing

bk_cell_style bk_form_style(const bk_form *form)
{
    const bk_rail *rail = form->wall->rail;
    bool inches = rail && rail->production.unit == BK_INCH;
    return (bk_cell_style){inches ? BK_INCH : BK_CM, rail ? rail->production.currency : NULL};
}

static bk_form_ways ways_of(const bk_form *form)
{
    bk_cell_style style = bk_form_style(form);
    return (bk_form_ways){form->wall->today, style.unit, style.currency};
}

const char *bk_form_record_text(const bk_form *form, size_t field, const void *record, bk_arena *arena)
{
    bk_buffer text = {0};
    bk_cell_style style = bk_form_style(form);
    const bk_column *column = bk_form_column(form, field);
    bk_cell_text(&text, column, record, &style);
    const char *shown = bk_arena_text(arena, bk_form_shown(column, text.bytes, arena));
    bk_buffer_free(&text);
    return shown;
}

bool bk_form_same(const void *context, const void *left, const void *right)
{
    const bk_form *form = context;
    const bk_sheet *sheet = form->kind->sheet;
    bk_cell_style style = bk_form_style(form);
    bk_buffer one = {0}, other = {0};
    bool same = true;
    for (size_t i = 0; same && i < sheet->column_count; i++) {
        one.length = other.length = 0;
        bk_cell_text(&one, &sheet->columns[i], left, &style);
        bk_cell_text(&other, &sheet->columns[i], right, &style);
        same = bk_same_text(one.bytes, other.bytes);
    }
    bk_buffer_free(&one);
    bk_buffer_free(&other);
    return same;
}

static bool holds_text(bk_cell_type type)
{
    static const bool holds[BK_CELL_TYPES] = {
        [BK_CELL_NAME] = true,  [BK_CELL_TEXT] = true,  [BK_CELL_NAMES] = true,    [BK_CELL_AFTER] = true,
        [BK_CELL_WORDS] = true, [BK_CELL_HOURS] = true, [BK_CELL_CURRENCY] = true,
    };
    return holds[type];
}

static void copy_text(bk_arena *arena, void *record, size_t offset)
{
    const char *text = bk_arena_text(arena, bk_sheet_text(record, offset));
    memcpy((char *)record + offset, &text, sizeof text);
}

void *bk_form_record_copy(const bk_form *form, const void *record)
{
    const bk_sheet *sheet = form->kind->sheet;
    void *copy = memcpy(bk_arena_take(form->arena, sheet->record_size), record, sheet->record_size);
    for (size_t i = 0; i < sheet->column_count; i++) {
        const bk_column *column = &sheet->columns[i];
        if (holds_text(column->type))
            copy_text(form->arena, copy, column->offset);
        else if (column->type == BK_CELL_MONEY)
            copy_text(form->arena, copy, column->currency);
    }
    return copy;
}

// ---------------------------------------------------------------------------------------------- the values

void bk_form_values_begin(bk_form *form)
{
    form->values = bk_alloc_clear(form->kind->field_count, sizeof *form->values);
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < form->kind->field_count; i++) {
        const char *text = bk_form_record_text(form, i, form->before, arena);
        bk_form_line_put(&form->values[i].line, text);
        bk_form_keep(&form->values[i].begun, text);
    }
    bk_arena_free(arena);
}

void bk_form_values_free(bk_form *form)
{
    for (size_t i = 0; i < form->kind->field_count; i++) {
        bk_form_value *value = &form->values[i];
        bk_form_line_free(&value->line);
        free(value->begun);
        free(value->wrong);
        free(value->doubt);
        free(value->tells);
        free(value->unit);
    }
    free(form->values);
}

bool bk_form_field_changed(const bk_form *form, size_t field)
{
    const bk_form_value *value = &form->values[field];
    return value->typed && !bk_same_text(bk_form_line_text(&value->line), value->begun);
}

bool bk_form_changed(const bk_form *form)
{
    for (size_t i = 0; i < form->kind->field_count; i++)
        if (bk_form_field_changed(form, i))
            return true;
    return false;
}

const char *bk_form_text(const bk_form *form, const char *column)
{
    size_t field = bk_form_find(form, column);
    return field < form->kind->field_count ? bk_form_line_text(&form->values[field].line) : "";
}

// -------------------------------------------------------------------------------------------------- reading

// Reads what is already a cell by the readers of the sheets.
static const char *read_cell(const bk_form *form, const bk_column *column, const char *text, bk_arena *arena,
                             void *record)
{
    bk_names *names = bk_names_new(arena);
    bk_faults *faults = bk_faults_new();
    bk_cell cell = {
        .column = column,
        .text = text,
        .record = record,
        .arena = arena,
        .names = names,
        .faults = faults,
        .currency = bk_form_style(form).currency,
    };
    bk_cell_read(&cell);
    const char *wrong = bk_faults_count(faults) > 0 ? bk_arena_text(arena, bk_faults_says(faults, 0)) : NULL;
    bk_faults_free(faults);
    bk_names_free(names);
    return wrong;
}

static const char *must_be_filled(const bk_form *form, size_t field, bk_arena *arena)
{
    const char *example = bk_form_example(bk_form_column(form, field), arena);
    return bk_arena_print(arena, "This must be filled in, such as %s", example ? example : "a word");
}

const char *bk_form_read_field(const bk_form *form, size_t field, bk_arena *arena, void *record)
{
    const bk_column *column = bk_form_column(form, field);
    const char *text = bk_form_line_text(&form->values[field].line);
    bk_form_ways ways = ways_of(form);
    const char *cell = bk_form_cell(&ways, column, text, arena);
    if (!cell)
        return bk_form_not_understood(column, text, arena);
    bk_column_clear(column, record);
    if (!*cell)
        return column->required ? must_be_filled(form, field, arena) : NULL;
    const char *wrong = read_cell(form, column, cell, arena, record);
    const char *better = wrong ? bk_form_not_understood(column, text, arena) : NULL;
    return better ? better : wrong;
}

void *bk_form_filled(const bk_form *form, bk_arena *arena)
{
    size_t size = form->kind->sheet->record_size;
    void *record = bk_arena_take(arena, size);
    memcpy(record, form->before, size);
    for (size_t i = 0; i < form->kind->field_count; i++)
        if (!bk_same_text(bk_form_line_text(&form->values[i].line), form->values[i].begun))
            (void)bk_form_read_field(form, i, arena, record);
    return record;
}

void bk_form_check(bk_form *form, size_t field)
{
    bk_arena *arena = bk_arena_new();
    bk_form_value *value = &form->values[field];
    void *record = bk_form_filled(form, arena);
    const char *wrong = bk_form_read_field(form, field, arena, record);
    bk_form_keep(&value->wrong, wrong);
    bool doubted = !wrong && form->kind->doubt && value->line.text.length > 0;
    bk_form_keep(&value->doubt, doubted ? form->kind->doubt(form, field, record, arena) : NULL);
    bk_arena_free(arena);
}

const char *bk_form_understood(const bk_form *form, size_t field, bk_arena *arena)
{
    const bk_column *column = bk_form_column(form, field);
    const char *text = bk_form_line_text(&form->values[field].line);
    bk_form_ways ways = ways_of(form);
    const char *cell = bk_form_cell(&ways, column, text, arena);
    return cell ? bk_form_shown(column, cell, arena) : text;
}

const char *bk_form_aside(const bk_form *form, size_t field, bk_arena *arena)
{
    const bk_column *column = bk_form_column(form, field);
    const char *text = bk_form_line_text(&form->values[field].line);
    bk_form_ways ways = ways_of(form);
    const char *cell = bk_form_cell(&ways, column, text, arena);
    if (!cell || !*cell)
        return NULL;
    const char *beside = bk_form_beside(&ways, column, cell, arena);
    bool other = !form->kind->fields[field].whole && column->type != BK_CELL_TEXT &&
                 strcmp(bk_form_shown(column, cell, arena), text) != 0;
    return beside || !other || bk_form_is_list(column) ? beside : bk_form_shown(column, cell, arena);
}

// ---------------------------------------------------------------------------------------------- suggestions

void bk_form_suggest(bk_form *form)
{
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < form->kind->field_count; i++) {
        bk_form_value *value = &form->values[i];
        const bk_form_field *field = &form->kind->fields[i];
        if (field->unit)
            bk_form_keep(&value->unit, field->unit(form, arena));
        if (form->id != 0 || !field->suggests || value->typed || value->begun[0])
            continue;
        const char *suggested = field->suggests(form, arena);
        bk_form_line_put(&value->line, suggested ? suggested : "");
    }
    bk_arena_free(arena);
}
