#include "bodkin/sheet/cell_faults.h"

#include <ctype.h>
#include <stdio.h>
#include <string.h>

#include "bodkin/base/text.h"

static const char *file_of(const bk_cell *cell)
{
    return bk_sheets[cell->sheet].file;
}

/// Whether the sentence of a fault here would be told; counts the fault when it would not.
static bool wanted(const bk_cell *cell)
{
    if (bk_faults_wanted(cell->faults, cell->sheet, cell->line, cell->column->name))
        return true;
    bk_faults_add(cell->faults, cell->sheet, file_of(cell), cell->line, cell->column->name, "%s", "");
    return false;
}

/// Notes `what`, which is whole already.
static void note(const bk_cell *cell, const char *what)
{
    bk_faults_add(cell->faults, cell->sheet, file_of(cell), cell->line, cell->column->name, "%s", what);
}

void bk_cell_fault(const bk_cell *cell, const char *format, ...)
{
    if (!wanted(cell))
        return;
    bk_buffer text = {0};
    va_list arguments;
    va_start(arguments, format);
    char message[BK_ERROR_ROOM];
    vsnprintf(message, sizeof message, format, arguments);
    va_end(arguments);
    bk_buffer_print(&text, "%s %s", bk_faults_quote(cell->arena, cell->text), message);
    note(cell, text.bytes);
    bk_buffer_free(&text);
}

void bk_cell_fault_empty(const bk_cell *cell)
{
    if (wanted(cell))
        note(cell, bk_arena_print(cell->arena, "is empty; every row must have one, such as %s",
                                  cell->column->example));
}

void bk_cell_fault_letter(const bk_cell *cell, char letter)
{
    const char *use = letter == ';' ? "the items of a list" : "a piece and its step";
    bk_cell_fault(cell, "holds a %c, which stands between %s; names hold no ; and no /, such as %s", letter,
                  use, cell->column->example);
}

void bk_cell_fault_twice(const bk_cell *cell, const char *item, size_t length)
{
    if (!wanted(cell))
        return;
    const char *quoted = bk_faults_quote(cell->arena, bk_arena_bytes(cell->arena, item, length));
    note(cell, bk_arena_print(cell->arena, "names %s twice; write it once", quoted));
}

/// "fits, again or missed", in `out`.
static void list_words(const bk_words *words, bk_buffer *out)
{
    for (size_t i = 0; i < words->count; i++) {
        if (i > 0)
            bk_buffer_text(out, i + 1 == words->count ? " or " : ", ");
        bk_buffer_text(out, words->items[i]);
    }
}

void bk_cell_fault_word(const bk_cell *cell, const char *word)
{
    if (!wanted(cell))
        return;
    const bk_words *words = cell->column->words;
    const char *near = bk_nearest(word, words->items, words->count);
    bk_buffer text = {0};
    bk_buffer_print(&text, "%s is no %s; write ", bk_faults_quote(cell->arena, word), words->what);
    list_words(words, &text);
    if (near != NULL)
        bk_buffer_print(&text, "; did you mean %s?", near);
    note(cell, text.bytes);
    bk_buffer_free(&text);
}

// ------------------------------------------------------------------------------------------------------------- days

/// Whether `text` begins with digits and hyphens as a day does, whatever they say.
static bool day_shaped(const char *text)
{
    static const char shape[] = "0000-00-00";
    for (size_t i = 0; i + 1 < sizeof shape; i++)
        if (shape[i] == '0' ? !isdigit((unsigned char)text[i]) : text[i] != shape[i])
            return false;
    return true;
}

void bk_cell_fault_day(const bk_cell *cell, const char *text)
{
    bool shaped = day_shaped(text) && text[sizeof "0000-00-00" - 1] == '\0';
    bk_cell_fault(cell, "is no day%s; write YYYY-MM-DD, such as 2027-02-28",
                  shaped ? " of the calendar" : "");
}

void bk_cell_fault_moment(const bk_cell *cell, const char *text)
{
    bk_day day = BK_NO_DAY;
    char first[BK_DAY_ROOM] = "";
    snprintf(first, sizeof first, "%.*s", (int)(sizeof "0000-00-00" - 1), text);
    if (!day_shaped(text) || bk_day_read(first, &day))
        bk_cell_fault(cell, "is no day, with or without a time; write YYYY-MM-DD or YYYY-MM-DDTHH:MM, such "
                            "as 2027-02-28 or 2027-02-28T14:30");
    else
        bk_cell_fault(cell, "is no day of the calendar; write YYYY-MM-DD or YYYY-MM-DDTHH:MM, such as "
                            "2027-02-28 or 2027-02-28T14:30");
}

// ---------------------------------------------------------------------------------------------------------- numbers

enum {
    READINGS = BK_READ_TOO_SMALL + 1,
    THOUSANDS = 3,      ///< digits between the marks of a large number
    LONGEST_NUMBER = 40 ///< bytes up to which a mended number is worth showing
};

/// What is said of a value that could not be read, by the reason; a missing one counts as "no number".
typedef const char *const reading_faults[READINGS];

static reading_faults length_faults = {
    [BK_READ_NOT_NUMBER] = "is no length; write a number and its unit, such as 92.5 cm or 36 3/8 in",
    [BK_READ_COMMA] = "has a comma; write a point and a unit, such as 92.5 cm or 36 3/8 in",
    [BK_READ_UNIT] = "has an unknown unit; write mm, cm, m, in, ft or yd, such as 92.5 cm or 36 3/8 in",
    [BK_READ_NEGATIVE] = "is below zero; write a length such as 92.5 cm or 36 3/8 in",
    [BK_READ_TOO_LARGE] = "is too long; at most 1 km can be kept, write a length such as 92.5 cm",
};

static reading_faults quantity_faults = {
    [BK_READ_NOT_NUMBER] = "is no plain number; write it without a unit, such as 2.4",
    [BK_READ_COMMA] = "has a comma; write a point and no other mark, such as 2.4",
    [BK_READ_NEGATIVE] = "is below zero; write a quantity such as 2.4",
    [BK_READ_DECIMALS] = "has more than six decimals; write at most six, such as 2.333333",
    [BK_READ_TOO_LARGE] = "is too large; write a quantity such as 2.4",
};

static reading_faults money_faults = {
    [BK_READ_NOT_NUMBER] = "is no amount of money; write a number, such as 12.50 or 12.50 GBP",
    [BK_READ_COMMA] = "has a comma; write a point and no other mark, such as 12.50",
    [BK_READ_UNIT] = "has an unknown currency; write its three capital letters, such as 12.50 GBP",
    [BK_READ_NEGATIVE] = "is below zero; write an amount such as 12.50",
    [BK_READ_DECIMALS] =
        "has more decimals than its currency; leave out what is smaller than the smallest coin",
    [BK_READ_TOO_LARGE] = "is too large; write an amount such as 12.50",
};

static reading_faults rest_faults = {
    [BK_READ_NOT_NUMBER] = "is no number of hours; write hours such as 12 or 0.25",
    [BK_READ_COMMA] = "has a comma; write a point and no other mark, such as 0.25",
    [BK_READ_NEGATIVE] = "is below zero; write hours such as 12 or 0.25",
    [BK_READ_DECIMALS] = "has more than six decimals; write hours such as 12 or 0.25",
    [BK_READ_TOO_LARGE] = "is too large; write at most 10000 hours, such as 12 or 0.25",
};

static void fault_of(const bk_cell *cell, reading_faults *faults, bk_reading reading)
{
    const char *fault = (*faults)[reading];
    bk_cell_fault(cell, "%s", fault != NULL ? fault : (*faults)[BK_READ_NOT_NUMBER]);
}

/// The text with its comma made a point, or with the comma left out; NULL where it has more marks than the one comma,
/// or is too long to be shown.
static const char *mended(const bk_cell *cell, const char *text, bool point)
{
    const char *comma = strchr(text, ',');
    if (comma == NULL || strlen(text) > LONGEST_NUMBER || strpbrk(comma + 1, ",.") != NULL ||
        memchr(text, '.', (size_t)(comma - text)) != NULL)
        return NULL;
    return bk_arena_print(cell->arena, "%.*s%s%s", (int)(comma - text), text, point ? "." : "", comma + 1);
}

/// Whether three digits stand behind the comma, as behind one between thousands.
static bool like_thousands(const char *text)
{
    const char *comma = strchr(text, ',');
    return comma != NULL && strspn(comma + 1, "0123456789") == THOUSANDS;
}

/// Says how to write a number that has a comma, when it can be told from `text`.
static void fault_comma(const bk_cell *cell, reading_faults *faults, const char *text)
{
    const char *pointed = mended(cell, text, true);
    if (pointed == NULL)
        fault_of(cell, faults, BK_READ_COMMA);
    else if (like_thousands(text))
        bk_cell_fault(cell, "has a comma; write %s, or %s if it is a decimal comma",
                      mended(cell, text, false), pointed);
    else
        bk_cell_fault(cell, "has a decimal comma; write a point: %s", pointed);
}

static void fault_no_unit(const bk_cell *cell, const char *text, const char *what)
{
    if (strlen(text) > LONGEST_NUMBER)
        bk_cell_fault(cell, "%s; write it with one, such as 92.5 cm or 36 3/8 in", what);
    else if (strchr(text, '/') != NULL)
        bk_cell_fault(cell, "%s; write %s in or 92.5 cm", what, text);
    else
        bk_cell_fault(cell, "%s; write %s cm or 36 3/8 in", what, text);
}

void bk_cell_fault_length(const bk_cell *cell, const char *text, bk_reading reading)
{
    bk_length length = BK_NO_AMOUNT;
    const char *pointed = reading == BK_READ_COMMA ? mended(cell, text, true) : NULL;
    bk_reading again = pointed == NULL ? BK_READ_NOT_NUMBER : bk_length_read(pointed, &length);
    if (reading == BK_READ_NO_UNIT)
        fault_no_unit(cell, text, "has no unit");
    else if (again == BK_READ_NO_UNIT)
        fault_no_unit(cell, pointed, "has a decimal comma and no unit");
    else if (again == BK_READ_OK)
        fault_comma(cell, &length_faults, text);
    else
        fault_of(cell, &length_faults, reading);
}

void bk_cell_fault_quantity(const bk_cell *cell, const char *text, bk_reading reading)
{
    if (reading == BK_READ_COMMA)
        fault_comma(cell, &quantity_faults, text);
    else
        fault_of(cell, &quantity_faults, reading);
}

void bk_cell_fault_money(const bk_cell *cell, const char *text, bk_reading reading)
{
    if (reading == BK_READ_COMMA)
        fault_comma(cell, &money_faults, text);
    else
        fault_of(cell, &money_faults, reading);
}

void bk_cell_fault_rest(const bk_cell *cell, const char *text, bk_reading reading)
{
    if (reading == BK_READ_COMMA)
        fault_comma(cell, &rest_faults, text);
    else
        fault_of(cell, &rest_faults, reading);
}

void bk_cell_fault_whole(const bk_cell *cell, const char *text, bk_reading reading)
{
    const bk_column *column = cell->column;
    const char *joined = mended(cell, text, false);
    if (reading == BK_READ_TOO_LARGE || reading == BK_READ_TOO_SMALL)
        bk_cell_fault(cell, "is too %s; write %s from %lld to %lld, such as %s",
                      reading == BK_READ_TOO_LARGE ? "large" : "small", column->unit,
                      (long long)column->least, (long long)column->most, column->example);
    else if (reading == BK_READ_NEGATIVE)
        bk_cell_fault(cell, "is below zero; write %s such as %s", column->unit, column->example);
    else if (reading == BK_READ_COMMA && joined != NULL && like_thousands(text))
        bk_cell_fault(cell, "has a comma; write it without: %s", joined);
    else
        bk_cell_fault(cell, "is no whole number; write %s such as %s", column->unit, column->example);
}
