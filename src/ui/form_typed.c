#include "bodkin/ui/form_typed.h"

#include <ctype.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>

#include "bodkin/base/text.h"
#include "bodkin/base/typed.h"
#include "bodkin/sheet/faults.h"

enum { MINUTES_PER_HOUR = 60, MILLION = 1000000 };

typedef struct typed {
    const bk_form_ways *ways;
    const bk_column *column;
    const char *text; ///< without blanks at its ends
    bk_arena *arena;
} typed;

bool bk_form_is_list(const bk_column *column)
{
    return column->type == BK_CELL_NAMES || column->type == BK_CELL_AFTER || column->type == BK_CELL_WORDS;
}

bool bk_form_is_minutes(const bk_column *column)
{
    return column->type == BK_CELL_WHOLE && bk_same_text(column->unit, "minutes");
}

// ------------------------------------------------------------------------------------------- days and times

static const char *day_cell(const typed *one)
{
    bk_day day = BK_NO_DAY;
    if (!bk_day_typed(one->text, one->ways->today, &day))
        return NULL;
    char written[BK_DAY_ROOM];
    return bk_arena_text(one->arena, bk_day_write(day, written));
}

static const char *time_cell(const typed *one)
{
    bk_minute time = BK_NO_TIME;
    char written[BK_TIME_ROOM];
    return bk_time_typed(one->text, &time) ? bk_arena_text(one->arena, bk_time_write(time, written)) : NULL;
}

static const char *moment_cell(const typed *one)
{
    bk_moment moment = {BK_NO_DAY, BK_NO_TIME};
    if (!bk_moment_typed(one->text, one->ways->today, &moment))
        return NULL;
    char written[BK_MOMENT_ROOM];
    return bk_arena_text(one->arena, bk_moment_write(moment, written));
}

// "10-13" as "10:00-13:00"; NULL where it is none.
static const char *stretch_cell(const typed *one, const char *item, size_t length)
{
    const char *dash = memchr(item, '-', length);
    if (!dash)
        return NULL;
    bk_minute from = BK_NO_TIME, to = BK_NO_TIME;
    char first[BK_TIME_ROOM], last[BK_TIME_ROOM];
    const char *end = bk_arena_bytes(one->arena, dash + 1, length - (size_t)(dash - item) - 1);
    if (!bk_time_typed(bk_arena_bytes(one->arena, item, (size_t)(dash - item)), &from))
        return NULL;
    if (!bk_time_typed(end, &to) && !bk_time_read(bk_skip_blank(end), true, &to))
        return NULL;
    return bk_arena_print(one->arena, "%s-%s", bk_time_write(from, first), bk_time_write(to, last));
}

// Hours of a day, a `,` or `;` between the stretches.
static const char *hours_cell(const typed *one)
{
    char *text = bk_arena_text(one->arena, one->text);
    for (char *comma = text; (comma = strchr(comma, ',')) != NULL;)
        *comma = ';';
    const char *rest = text, *item = NULL, *whole = "";
    bk_stretch stretches[BK_STRETCHES];
    size_t length = 0;
    while (bk_list_item(&rest, &item, &length)) {
        const char *stretch = stretch_cell(one, item, length);
        if (!stretch)
            return NULL;
        whole = bk_arena_print(one->arena, "%s%s%s", whole, *whole ? ";" : "", stretch);
    }
    return bk_hours_read(whole, stretches) < 0 ? NULL : whole;
}

// -------------------------------------------------------------------------------------------------- amounts

static const char *length_cell(const typed *one)
{
    bk_length length = BK_NO_AMOUNT;
    char written[BK_AMOUNT_ROOM];
    if (bk_length_typed(one->text, one->ways->unit, &length) != BK_READ_OK)
        return NULL;
    return bk_arena_text(one->arena, bk_length_write(length, one->ways->unit, written));
}

// A decimal comma becomes a point; what is wrong beyond that the sheets tell.
static const char *decimal_cell(const typed *one)
{
    bk_buffer pointed = {0};
    bk_comma_typed(one->text, &pointed);
    const char *cell = bk_arena_text(one->arena, pointed.bytes);
    bk_buffer_free(&pointed);
    return cell;
}

static const char *whole_cell(const typed *one)
{
    int64_t minutes = 0;
    if (bk_form_is_minutes(one->column) && bk_minutes_typed(one->text, &minutes))
        return bk_arena_print(one->arena, "%lld", (long long)minutes);
    return one->text;
}

static bool has_letter(const char *text)
{
    while (*text && !isalpha((unsigned char)*text) && *text != ':')
        text++;
    return *text != '\0';
}

// Hours; with a unit or a colon a length of time as it is typed elsewhere.
static const char *rest_cell(const typed *one)
{
    int64_t minutes = 0;
    if (!has_letter(one->text))
        return decimal_cell(one);
    if (!bk_minutes_typed(one->text, &minutes))
        return NULL;
    char written[BK_AMOUNT_ROOM];
    bk_quantity hours = (minutes * MILLION + MINUTES_PER_HOUR / 2) / MINUTES_PER_HOUR;
    return bk_arena_text(one->arena, bk_quantity_write(hours, written));
}

// ---------------------------------------------------------------------------------------------------- words

static const char *same_cell(const typed *one)
{
    return one->text;
}

static const char *capital_cell(const typed *one)
{
    char *code = bk_arena_text(one->arena, one->text);
    for (char *letter = code; *letter; letter++)
        *letter = (char)toupper((unsigned char)*letter);
    return code;
}

static const char *yes_cell(const typed *one)
{
    static const char *const yes[] = {"y", "yes"}, *const no[] = {"n", "no"};
    for (size_t i = 0; i < sizeof yes / sizeof yes[0]; i++) {
        if (strcasecmp(one->text, yes[i]) == 0)
            return "yes";
        if (strcasecmp(one->text, no[i]) == 0)
            return "";
    }
    return NULL;
}

// The word that `text` is, or is the beginning of and of no other; NULL where there is none.
static const char *word_of(const bk_words *words, const char *text)
{
    const char *found = NULL;
    size_t matches = 0;
    for (size_t i = 0; i < words->count; i++) {
        if (strcasecmp(words->items[i], text) == 0)
            return words->items[i];
        if (strncasecmp(words->items[i], text, strlen(text)) == 0) {
            found = words->items[i];
            matches++;
        }
    }
    return matches == 1 ? found : NULL;
}

static const char *word_cell(const typed *one)
{
    const char *word = word_of(one->column->words, one->text);
    return word ? word : one->text;
}

// The items of a list with nothing but `;` between them, those of a set as its words; gaps are passed over.
static const char *list_cell(const typed *one)
{
    const char *rest = one->text, *item = NULL, *whole = "";
    size_t length = 0;
    while (bk_list_item(&rest, &item, &length)) {
        const char *text = bk_arena_bytes(one->arena, item, length);
        const char *word = one->column->type == BK_CELL_WORDS ? word_of(one->column->words, text) : NULL;
        if (length > 0)
            whole =
                bk_arena_print(one->arena, "%s%s%s", whole, *whole ? ";" : "", word && *text ? word : text);
    }
    return whole;
}

// --------------------------------------------------------------------------------------------- what is shown

static const char *shown_list(const char *cell, bk_arena *arena)
{
    const char *rest = cell, *item = NULL, *whole = "";
    size_t length = 0;
    while (bk_list_item(&rest, &item, &length))
        whole = bk_arena_print(arena, "%s%s%.*s", whole, *whole ? "; " : "", (int)length, item);
    return whole;
}

static const char *shown_moment(const char *cell, bk_arena *arena)
{
    char *shown = bk_arena_text(arena, cell);
    char *mark = strchr(shown, 'T');
    if (mark)
        *mark = ' ';
    return shown;
}

// -------------------------------------------------------------------------------------------- what is beside

static const char *beside_day(const typed *one)
{
    bk_day day = BK_NO_DAY;
    char words[BK_DAY_WORDS_ROOM];
    if (!bk_day_read(one->text, &day))
        return NULL;
    return bk_arena_text(one->arena, bk_day_words(day, one->ways->today, words));
}

static const char *beside_moment(const typed *one)
{
    bk_moment moment = {BK_NO_DAY, BK_NO_TIME};
    char words[BK_DAY_WORDS_ROOM], time[BK_TIME_ROOM];
    if (!bk_moment_read(one->text, &moment))
        return NULL;
    bk_day_words(moment.day, one->ways->today, words);
    if (moment.time == BK_NO_TIME)
        return bk_arena_print(one->arena, "%s, no time yet", words);
    return bk_arena_print(one->arena, "%s, %s", words, bk_time_write(moment.time, time));
}

static const char *beside_whole(const typed *one)
{
    int64_t number = 0;
    char words[BK_AMOUNT_ROOM];
    if (bk_whole_read(one->text, one->column->least, one->column->most, &number) != BK_READ_OK)
        return NULL;
    if (bk_form_is_minutes(one->column))
        return bk_arena_text(one->arena, bk_minutes_words(number, words));
    return bk_same_text(one->column->unit, "days") ? "days" : NULL;
}

static const char *beside_rest(const typed *one)
{
    return one->text[0] ? "hours" : NULL;
}

static const char *beside_money(const typed *one)
{
    return one->text[0] && one->ways->currency && !has_letter(one->text) ? one->ways->currency : NULL;
}

// ------------------------------------------------------------------------------------------------ the table

static const struct way {
    const char *(*cell)(const typed *one);
    const char *(*shown)(const char *cell, bk_arena *arena); ///< NULL: as it is
    const char *(*beside)(const typed *one);                 ///< NULL: nothing
    const char *fault;                                       ///< NULL: the sheets' own
    const char *example;                                     ///< NULL: the column's own
} ways_of[BK_CELL_TYPES] = {
    [BK_CELL_NAME] = {.cell = same_cell},
    [BK_CELL_TEXT] = {.cell = same_cell},
    [BK_CELL_NAMES] = {.cell = list_cell, .shown = shown_list},
    [BK_CELL_AFTER] = {.cell = list_cell, .shown = shown_list},
    [BK_CELL_WORDS] = {.cell = list_cell, .shown = shown_list},
    [BK_CELL_WORD] = {.cell = word_cell},
    [BK_CELL_HOURS] = {.cell = hours_cell,
                       .shown = shown_list,
                       .example = "10-13, or 10-13; 14-18",
                       .fault = "is no hours of a day; type from and to, such as 10-13 or 10-13; 14-18:30"},
    [BK_CELL_CURRENCY] = {.cell = capital_cell},
    [BK_CELL_DAY] = {.cell = day_cell,
                     .beside = beside_day,
                     .example = "fri, +3, 9 mar or 2027-03-09",
                     .fault = "is no day; type one such as fri, +3, 9 mar or 2027-03-09"},
    [BK_CELL_TIME] = {.cell = time_cell,
                      .example = "19:30 or 7:30 pm",
                      .fault = "is no time of day; type one such as 19:30, 1930 or 7:30 pm"},
    [BK_CELL_MOMENT] = {.cell = moment_cell,
                        .shown = shown_moment,
                        .beside = beside_moment,
                        .example = "fri 14:30, +3 2pm or 9 mar",
                        .fault = "is no day and time; type them such as fri 14:30, +3 2pm or 9 mar"},
    [BK_CELL_LENGTH] = {.cell = length_cell,
                        .example = "150, 59 in or 1.5 m",
                        .fault = "is no length; type one such as 150, 1.5 m, 36 3/8 in or 5' 4\""},
    [BK_CELL_QUANTITY] = {.cell = decimal_cell},
    [BK_CELL_MONEY] = {.cell = decimal_cell, .beside = beside_money},
    [BK_CELL_WHOLE] = {.cell = whole_cell, .beside = beside_whole},
    [BK_CELL_VERSION] = {.cell = same_cell},
    [BK_CELL_REST] = {.cell = rest_cell,
                      .beside = beside_rest,
                      .example = "12, 0.5 or 30 min",
                      .fault = "is no number of hours; type hours such as 12 or 0.5, or 30 min"},
    [BK_CELL_YES] = {.cell = yes_cell,
                     .example = "y, or leave it empty",
                     .fault = "is neither yes nor no; type y, or leave it empty"},
};

// What people type for minutes is more than the sheets take.
static const char minutes_fault[] = "is no length of time; type minutes, or hours such as 1h30";

static const char blanks[] = " \t\r\n";

static const char *trimmed(const char *text, bk_arena *arena)
{
    text += strspn(text, blanks);
    size_t end = strlen(text);
    while (end > 0 && strchr(blanks, text[end - 1]))
        end--;
    return bk_arena_bytes(arena, text, end);
}

const char *bk_form_cell(const bk_form_ways *ways, const bk_column *column, const char *text, bk_arena *arena)
{
    typed one = {ways, column, trimmed(text, arena), arena};
    return *one.text ? ways_of[column->type].cell(&one) : "";
}

const char *bk_form_not_understood(const bk_column *column, const char *text, bk_arena *arena)
{
    int64_t minutes = 0;
    const char *fault = ways_of[column->type].fault;
    if (bk_form_is_minutes(column) && !bk_minutes_typed(text, &minutes))
        fault = minutes_fault;
    return fault ? bk_arena_print(arena, "%s %s", bk_faults_quote(arena, trimmed(text, arena)), fault) : NULL;
}

const char *bk_form_shown(const bk_column *column, const char *cell, bk_arena *arena)
{
    const struct way *way = &ways_of[column->type];
    return way->shown ? way->shown(cell, arena) : cell;
}

const char *bk_form_beside(const bk_form_ways *ways, const bk_column *column, const char *cell,
                           bk_arena *arena)
{
    typed one = {ways, column, cell, arena};
    const struct way *way = &ways_of[column->type];
    return way->beside ? way->beside(&one) : NULL;
}

const char *bk_form_example(const bk_column *column, bk_arena *arena)
{
    const struct way *way = &ways_of[column->type];
    if (bk_form_is_minutes(column))
        return bk_arena_print(arena, "%s or 1h30", column->example);
    if (way->example || !column->example)
        return way->example;
    return bk_form_shown(column, column->example, arena);
}
