#include "bodkin/sheet/cell_read.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/cell_faults.h"

static const char blanks[] = " \t\r\n";

bool bk_cell_blank(const char *text)
{
    return text[strspn(text, blanks)] == '\0';
}

static void *field(const bk_cell *cell)
{
    return (char *)cell->record + cell->column->offset;
}

/// Texts up to this size are kept once for the whole folder; longer ones are hardly ever the same.
enum { SHARED_TEXT_MOST = 48 };

/// Stores the first `length` bytes of `text`, NUL-terminated there, as a name: the same pointer for the same text.
static void put_name(const bk_cell *cell, const char *text, size_t length)
{
    const char *kept = cell->before == NULL ? NULL : bk_sheet_text(cell->before, cell->column->offset);
    if (kept == NULL || strncmp(kept, text, length) != 0 || kept[length] != '\0')
        kept = bk_names_keep(cell->names, text, length);
    memcpy(field(cell), &kept, sizeof kept);
}

static void put_text(const bk_cell *cell, const char *text, size_t length)
{
    if (length <= SHARED_TEXT_MOST) {
        put_name(cell, text, length);
        return;
    }
    const char *kept = bk_arena_bytes(cell->arena, text, length);
    memcpy(field(cell), &kept, sizeof kept);
}

/// The text without spaces at its ends.
static const char *trimmed(const bk_cell *cell, size_t *length)
{
    const char *text = cell->text + strspn(cell->text, blanks);
    size_t end = strlen(text);
    while (end > 0 && strchr(blanks, text[end - 1]) != NULL)
        end--;
    *length = end;
    return text;
}

/// The same with a NUL behind it.
static const char *trimmed_text(const bk_cell *cell)
{
    size_t length = 0;
    const char *text = trimmed(cell, &length);
    return text[length] == '\0' ? text : bk_arena_bytes(cell->arena, text, length);
}

static void read_name(const bk_cell *cell)
{
    size_t length = 0;
    const char *text = trimmed(cell, &length);
    const char *wrong = strpbrk(text, ";/");
    if (wrong != NULL)
        bk_cell_fault_letter(cell, *wrong);
    else if (text != cell->text)
        bk_cell_fault(cell, "begins with a space; take it out, names neither begin nor end with one");
    else if (text[length] != '\0')
        bk_cell_fault(cell, "ends with a space; take it out, names neither begin nor end with one");
    put_name(cell, text, length);
}

static void read_text(const bk_cell *cell)
{
    put_text(cell, cell->text, strlen(cell->text));
}

// ------------------------------------------------------------------------------------------------------------ lists

typedef struct item {
    const char *text;
    size_t length;
} item;

/// A list as it is read: its items, and the whole as it will be kept.
typedef struct list {
    item items[BK_CELL_ITEMS_MOST];
    size_t count;
    bk_buffer text;
} list;

static bool same_item(item left, item right)
{
    return left.length == right.length && memcmp(left.text, right.text, left.length) == 0;
}

/// What is wrong with an item by its column's type; told, and false.
typedef bool item_check(const bk_cell *cell, item one);

static bool add_item(const bk_cell *cell, list *all, item one, item_check *check)
{
    for (size_t i = 0; i < all->count; i++)
        if (same_item(all->items[i], one)) {
            bk_cell_fault_twice(cell, one.text, one.length);
            return false;
        }
    if (all->count == BK_CELL_ITEMS_MOST) {
        bk_cell_fault(cell, "names more than %d; that is more than a list can hold", BK_CELL_ITEMS_MOST);
        return false;
    }
    if (!check(cell, one))
        return false;
    if (all->count > 0)
        bk_buffer_char(&all->text, ';');
    bk_buffer_add(&all->text, one.text, one.length);
    all->items[all->count++] = one;
    return true;
}

static bool has_gap(const char *text)
{
    const char *rest = text;
    item one = {0};
    bool gap = false;
    while (bk_list_item(&rest, &one.text, &one.length))
        gap |= one.length == 0 || (*rest == '\0' && rest[-1] == ';');
    return gap;
}

static void read_list(const bk_cell *cell, item_check *check)
{
    if (has_gap(cell->text)) {
        bk_cell_fault(cell,
                      "has a ; with nothing before or behind it; write one ; between two items, such as %s",
                      cell->column->example);
        return;
    }
    list all;
    all.count = 0;
    all.text = (bk_buffer){0};
    const char *rest = cell->text;
    item one = {0};
    bool sound = true;
    while (sound && bk_list_item(&rest, &one.text, &one.length))
        sound = add_item(cell, &all, one, check);
    if (sound)
        put_text(cell, all.text.bytes, all.text.length);
    bk_buffer_free(&all.text);
}

static bool check_name(const bk_cell *cell, item one)
{
    if (memchr(one.text, '/', one.length) == NULL)
        return true;
    bk_cell_fault_letter(cell, '/');
    return false;
}

static bool check_after(const bk_cell *cell, item one)
{
    const char *slash = memchr(one.text, '/', one.length);
    if (slash == NULL)
        return true;
    size_t behind = one.length - (size_t)(slash - one.text) - 1;
    if (slash > one.text && behind > 0 && memchr(slash + 1, '/', behind) == NULL)
        return true;
    bk_cell_fault(
        cell,
        "names a step that is not to be understood; write a key of the same piece, or PIECE/KEY, such as %s",
        cell->column->example);
    return false;
}

static bool check_word(const bk_cell *cell, item one)
{
    const char *word = bk_arena_bytes(cell->arena, one.text, one.length);
    if (bk_word_find(cell->column->words, word) != BK_NO_WORD)
        return true;
    bk_cell_fault_word(cell, word);
    return false;
}

static void read_names(const bk_cell *cell)
{
    read_list(cell, check_name);
}

static void read_after(const bk_cell *cell)
{
    read_list(cell, check_after);
}

static void read_words(const bk_cell *cell)
{
    read_list(cell, check_word);
}

// ----------------------------------------------------------------------------------------------------------- values

static void read_word(const bk_cell *cell)
{
    const char *word = trimmed_text(cell);
    int number = bk_word_find(cell->column->words, word);
    if (number == BK_NO_WORD)
        bk_cell_fault_word(cell, word);
    else
        memcpy(field(cell), &number, sizeof number);
}

static void read_hours(const bk_cell *cell)
{
    bk_stretch stretches[BK_STRETCHES];
    const char *text = trimmed_text(cell);
    if (has_gap(text) || bk_hours_read(text, stretches) < 0)
        bk_cell_fault(cell, "is no hours of a day; write HH:MM-HH:MM, each ending after it begins and none "
                            "over another, such as 10:00-13:00 or 10:00-13:00;14:00-18:00");
    else
        put_text(cell, text, strlen(text));
}

static void read_currency(const bk_cell *cell)
{
    const char *code = trimmed_text(cell);
    if (!bk_currency_valid(code))
        bk_cell_fault(cell, "is no currency; write its three capital letters (ISO 4217), such as GBP or EUR");
    else
        put_text(cell, code, strlen(code));
}

static void read_day(const bk_cell *cell)
{
    bk_day day = BK_NO_DAY;
    const char *text = trimmed_text(cell);
    if (!bk_day_read(text, &day))
        bk_cell_fault_day(cell, text);
    else
        memcpy(field(cell), &day, sizeof day);
}

static void read_time(const bk_cell *cell)
{
    bk_minute time = BK_NO_TIME;
    if (!bk_time_read(trimmed_text(cell), false, &time))
        bk_cell_fault(cell, "is no time of a day; write HH:MM, from 00:00 to 23:59, such as 19:30");
    else
        memcpy(field(cell), &time, sizeof time);
}

static void read_moment(const bk_cell *cell)
{
    bk_moment moment = {.day = BK_NO_DAY, .time = BK_NO_TIME};
    const char *text = trimmed_text(cell);
    if (!bk_moment_read(text, &moment))
        bk_cell_fault_moment(cell, text);
    else
        memcpy(field(cell), &moment, sizeof moment);
}

static void put_number(const bk_cell *cell, int64_t number)
{
    memcpy(field(cell), &number, sizeof number);
}

static void read_length(const bk_cell *cell)
{
    bk_length length = BK_NO_AMOUNT;
    bk_reading reading = bk_length_read(cell->text, &length);
    if (reading != BK_READ_OK)
        bk_cell_fault_length(cell, trimmed_text(cell), reading);
    else
        put_number(cell, length);
}

static void read_quantity(const bk_cell *cell)
{
    bk_quantity quantity = BK_NO_AMOUNT;
    bk_reading reading = bk_quantity_read(cell->text, cell->column->least < 0, &quantity);
    if (reading != BK_READ_OK)
        bk_cell_fault_quantity(cell, trimmed_text(cell), reading);
    else
        put_number(cell, quantity);
}

static void read_money(const bk_cell *cell)
{
    bk_money money = BK_NO_AMOUNT;
    char currency[BK_CURRENCY_ROOM] = "";
    bk_reading reading = bk_money_read(cell->text, cell->currency, &money, currency);
    if (reading != BK_READ_OK) {
        bk_cell_fault_money(cell, trimmed_text(cell), reading);
        return;
    }
    put_number(cell, money);
    const char *kept = currency[0] == '\0' ? NULL : bk_names_keep(cell->names, currency, strlen(currency));
    memcpy((char *)cell->record + cell->column->currency, &kept, sizeof kept);
}

static void read_whole(const bk_cell *cell)
{
    int64_t number = BK_NOT_KNOWN;
    bk_reading reading = bk_whole_read(cell->text, cell->column->least, cell->column->most, &number);
    if (reading != BK_READ_OK)
        bk_cell_fault_whole(cell, trimmed_text(cell), reading);
    else
        put_number(cell, number);
}

static void read_version(const bk_cell *cell)
{
    int64_t version = BK_NOT_KNOWN;
    bk_reading reading = bk_whole_read(cell->text, BK_SHEETS_VERSION, BK_SHEETS_VERSION, &version);
    if (reading != BK_READ_OK)
        bk_cell_fault(cell, "is a version of these sheets that is not known here; they are version %d",
                      BK_SHEETS_VERSION);
    else
        put_number(cell, version);
}

enum { MINUTES_PER_HOUR = 60 };

/// Decimal hours to whole minutes; six decimals of a third of an hour are 20 minutes. False where they make none.
static bool whole_minutes(bk_quantity hours, int64_t *minutes)
{
    *minutes = (hours * MINUTES_PER_HOUR + BK_QUANTITY_ONE / 2) / BK_QUANTITY_ONE;
    int64_t off = hours * MINUTES_PER_HOUR - *minutes * BK_QUANTITY_ONE;
    return off >= -MINUTES_PER_HOUR / 2 && off <= MINUTES_PER_HOUR / 2; // half of the last decimal
}

static void read_rest(const bk_cell *cell)
{
    bk_quantity hours = BK_NO_AMOUNT;
    int64_t minutes = BK_NOT_KNOWN;
    bk_reading reading = bk_quantity_read(cell->text, false, &hours);
    if (reading == BK_READ_OK && hours > cell->column->most * BK_QUANTITY_ONE)
        reading = BK_READ_TOO_LARGE;
    if (reading != BK_READ_OK)
        bk_cell_fault_rest(cell, trimmed_text(cell), reading);
    else if (!whole_minutes(hours, &minutes))
        bk_cell_fault(cell, "hours are not a whole number of minutes; write hours such as 12 or 0.25");
    else
        put_number(cell, minutes);
}

static void read_yes(const bk_cell *cell)
{
    if (!bk_same_text(trimmed_text(cell), "yes"))
        bk_cell_fault(cell, "is neither yes nor nothing; write yes, or leave the cell empty");
    else
        put_number(cell, 1);
}

static void (*const readers[BK_CELL_TYPES])(const bk_cell *cell) = {
    [BK_CELL_NAME] = read_name,         [BK_CELL_TEXT] = read_text,         [BK_CELL_NAMES] = read_names,
    [BK_CELL_AFTER] = read_after,       [BK_CELL_WORDS] = read_words,       [BK_CELL_WORD] = read_word,
    [BK_CELL_HOURS] = read_hours,       [BK_CELL_CURRENCY] = read_currency, [BK_CELL_DAY] = read_day,
    [BK_CELL_TIME] = read_time,         [BK_CELL_MOMENT] = read_moment,     [BK_CELL_LENGTH] = read_length,
    [BK_CELL_QUANTITY] = read_quantity, [BK_CELL_MONEY] = read_money,       [BK_CELL_WHOLE] = read_whole,
    [BK_CELL_VERSION] = read_version,   [BK_CELL_REST] = read_rest,         [BK_CELL_YES] = read_yes,
};

void bk_cell_read(const bk_cell *cell)
{
    if (bk_cell_blank(cell->text)) {
        if (cell->column->required)
            bk_cell_fault_empty(cell);
        return;
    }
    readers[cell->column->type](cell);
}
