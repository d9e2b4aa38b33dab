#include "bodkin/base/typed.h"

#include <string.h>
#include <strings.h>

enum {
    TEN = 10,
    HUNDRED = 100,
    DAYS_PER_WEEK = 7,
    DAYS_PER_YEAR = 365,
    MONTHS = 12,
    MONTHS_AHEAD = 9, ///< how far a day without its year may lie ahead
    HOURS_PER_DAY = 24,
    HOURS_OF_HALF_DAY = 12,
    MINUTES_PER_HOUR = 60,
    ISO_LENGTH = 10,
    STEP_DIGITS = 4, ///< of `+3`
    LEAST_MONTH = 3, ///< letters of a month's name
    LEAST_WEEKDAY = 2,
    CENTURY = 2000, ///< first of the hundred years that are read
    LAST_YEAR = 9999
};

static const char *const weekdays[] = {"monday", "tuesday",  "wednesday", "thursday",
                                       "friday", "saturday", "sunday"};
static const char *const months[] = {"january", "february", "march",     "april",   "may",      "june",
                                     "july",    "august",   "september", "october", "november", "december"};

static const struct near_day {
    const char *word;
    int from_today;
} near_days[] = {{"today", 0}, {"tomorrow", 1}, {"yesterday", -1}};

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool is_letter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static const char *skip_blank(const char *text)
{
    return bk_skip_blank(text);
}

/// Reads a number of `least` to `most` digits, and no more; -1 where none stands there, and `*at` stays where it is.
static int read_number(const char **at, size_t least, size_t most)
{
    size_t count = strspn(*at, "0123456789");
    int number = 0;
    if (count < least || count > most)
        return -1;
    for (const char *end = *at + count; *at < end; (*at)++)
        number = number * TEN + (**at - '0');
    return number;
}

static size_t count_letters(const char *text)
{
    size_t count = 0;
    while (is_letter(text[count]))
        count++;
    return count;
}

/// Reads one of `count` words, or its beginning of at least `least` letters; its place, or -1.
static int read_name(const char **at, const char *const *words, size_t count, size_t least)
{
    size_t length = count_letters(*at);
    for (size_t i = 0; i < count && length >= least; i++)
        if (length <= strlen(words[i]) && strncasecmp(words[i], *at, length) == 0) {
            *at += length;
            return (int)i;
        }
    return -1;
}

/// Whether the letters at `*at` are exactly `word`; steps behind them.
static bool read_word(const char **at, const char *word)
{
    size_t length = count_letters(*at);
    if (length != strlen(word) || strncasecmp(word, *at, length) != 0)
        return false;
    *at += length;
    return true;
}

// ------------------------------------------------------------------------------------------------------------- days

static bool exists(int year, int month, int day)
{
    int year_again = 0, month_again = 0, day_again = 0;
    if (month < 1 || month > MONTHS || day < 1)
        return false;
    bk_day_parts(bk_day_of(year, month, day), &year_again, &month_again, &day_again);
    return month_again == month && day_again == day;
}

/// The same day of the month nine months later, or the last of that month.
static bk_day farthest(bk_day today)
{
    int year = 0, month = 0, day = 0;
    bk_day_parts(today, &year, &month, &day);
    month += MONTHS_AHEAD;
    if (month > MONTHS) {
        month -= MONTHS;
        year++;
    }
    while (!exists(year, month, day))
        day--;
    return bk_day_of(year, month, day);
}

/// The day of a date without its year: of the twelve months that end nine months after today.
static bool nearest(bk_day today, int month, int month_day, bk_day *day)
{
    int year = 0, unused = 0;
    bk_day last = farthest(today);
    bk_day_parts(last, &year, &unused, &unused);
    for (int i = year; i >= year - 1; i--)
        if (exists(i, month, month_day) && bk_day_of(i, month, month_day) <= last) {
            *day = bk_day_of(i, month, month_day);
            return last - *day <= DAYS_PER_YEAR;
        }
    return false;
}

/// A date as it is taken from the text; `year` -1 where none is written.
typedef struct date {
    int year, month, day;
} date;

/// Reads the year behind a date: four digits of a year that is read, or two when they may stand there.
static int read_year(const char **at, bool two_digits)
{
    const char *from = two_digits ? *at : skip_blank(*at);
    int year = two_digits ? read_number(&from, 2, 2) : -1;
    if (year >= 0) {
        year += CENTURY;
    } else {
        from = skip_blank(from);
        year = read_number(&from, 4, 4);
    }
    if (year < CENTURY || year >= CENTURY + HUNDRED)
        return -1;
    *at = from;
    return year;
}

/// Reads what follows the day of `9.3.`, `9/3`, `9.3.27`, from its separator on.
static bool read_numbers(const char **at, date *read)
{
    char separator = **at;
    const char *from = skip_blank(*at + 1);
    read->month = read_number(&from, 1, 2);
    const char *behind = skip_blank(from);
    if (read->month < 0 || (separator == '.' && *behind != '.'))
        return false;
    if (*behind == separator) {
        from = behind + 1;
        read->year = read_year(&from, true);
        if (separator == '/' && read->year < 0)
            return false;
    }
    *at = from;
    return true;
}

static bool read_month(const char **at, date *read)
{
    read->month = 1 + read_name(at, months, sizeof months / sizeof *months, LEAST_MONTH);
    return read->month > 0;
}

/// Reads `9 mar`, `9. march 2027`, `9.3.`, `9/3`.
static bool read_day_first(const char **at, date *read)
{
    const char *from = *at;
    read->day = read_number(&from, 1, 2);
    if (read->day < 0)
        return false;
    from = skip_blank(from);
    const char *behind = *from == '.' ? skip_blank(from + 1) : from;
    if (read_month(&behind, read)) {
        from = behind;
        read->year = read_year(&from, false);
    } else if ((*from != '.' && *from != '/') || !read_numbers(&from, read)) {
        return false;
    }
    *at = from;
    return true;
}

/// Reads `mar 9`, `march 9 2027`.
static bool read_month_first(const char **at, date *read)
{
    const char *from = *at;
    if (!read_month(&from, read))
        return false;
    from = skip_blank(from);
    read->day = read_number(&from, 1, 2);
    if (read->day < 0)
        return false;
    read->year = read_year(&from, false);
    *at = from;
    return true;
}

/// Reads `2027-03-09`.
static bool read_iso(const char **at, bk_day *day)
{
    char text[ISO_LENGTH + 1] = "";
    strncpy(text, *at, ISO_LENGTH);
    if (!bk_day_read(text, day))
        return false;
    *at += ISO_LENGTH;
    return true;
}

static bool read_date(const char **at, bk_day today, bk_day *day)
{
    const char *from = *at;
    date read = {.year = -1};
    if (read_iso(at, day))
        return true;
    if (!read_day_first(&from, &read) && !read_month_first(&from, &read))
        return false;
    if (read.year >= 0 ? !exists(read.year, read.month, read.day)
                       : !nearest(today, read.month, read.day, day))
        return false;
    if (read.year >= 0)
        *day = bk_day_of(read.year, read.month, read.day);
    *at = from;
    return true;
}

/// Reads `+3`, `-2`, `+2w`.
static bool read_step(const char **at, bk_day today, bk_day *day)
{
    if (**at != '+' && **at != '-')
        return false;
    const char *from = skip_blank(*at + 1);
    int step = read_number(&from, 1, STEP_DIGITS);
    if (step < 0)
        return false;
    const char *unit = skip_blank(from);
    if (read_word(&unit, "w")) {
        step *= DAYS_PER_WEEK;
        from = unit;
    } else if (read_word(&unit, "d")) {
        from = unit;
    }
    *day = today + (**at == '-' ? -step : step);
    *at = from;
    return true;
}

static bool read_near(const char **at, bk_day today, bk_day *day)
{
    for (size_t i = 0; i < sizeof near_days / sizeof *near_days; i++)
        if (read_word(at, near_days[i].word)) {
            *day = today + near_days[i].from_today;
            return true;
        }
    return false;
}

/// Reads a weekday, alone or before the date that it is the weekday of.
static bool read_weekday(const char **at, bk_day today, bk_day *day)
{
    const char *from = *at;
    int weekday = read_name(&from, weekdays, DAYS_PER_WEEK, LEAST_WEEKDAY);
    if (weekday < 0)
        return false;
    *at = from;
    from = skip_blank(from);
    if (read_date(&from, today, day)) {
        *at = from;
        return bk_weekday(*day) == weekday;
    }
    int ahead = (weekday - bk_weekday(today) + DAYS_PER_WEEK) % DAYS_PER_WEEK;
    *day = today + (ahead == 0 ? DAYS_PER_WEEK : ahead);
    return true;
}

/// Reads a day of any form, and steps behind it.
static bool read_day(const char **at, bk_day today, bk_day *day)
{
    static bool (*const forms[])(const char **, bk_day, bk_day *) = {read_date, read_step, read_near,
                                                                     read_weekday};
    char written[BK_DAY_ROOM];
    for (size_t i = 0; i < sizeof forms / sizeof *forms; i++)
        if (forms[i](at, today, day))
            return bk_day_write(*day, written)[0] != '\0';
    return false;
}

// ------------------------------------------------------------------------------------------------------------ times

/// Reads `am` or `pm`; false where the hours do not go with it.
static bool read_half_day(const char **at, int *hours)
{
    const char *from = skip_blank(*at);
    bool afternoon = read_word(&from, "pm");
    if (!afternoon && !read_word(&from, "am"))
        return true;
    *at = from;
    if (*hours < 1 || *hours > HOURS_OF_HALF_DAY)
        return false;
    *hours = *hours % HOURS_OF_HALF_DAY + (afternoon ? HOURS_OF_HALF_DAY : 0);
    return true;
}

/// Reads the minutes behind the hours: `:30`, `.30`, `h30`, `h`; false where they are begun and not there.
static bool read_minutes(const char **at, int *minutes)
{
    const char *from = skip_blank(*at);
    if (*from == ':' || *from == '.') {
        from++;
        *minutes = read_number(&from, 2, 2);
        *at = from;
    } else if (*from == 'h' || *from == 'H') {
        *at = from + 1;
        from = skip_blank(*at);
        if (is_digit(*from)) {
            *minutes = read_number(&from, 2, 2);
            *at = from;
        }
    }
    return *minutes >= 0;
}

static bool read_time(const char *at, bk_minute *time)
{
    int minutes = 0;
    int hours = read_number(&at, 1, 2);
    if (hours < 0) {
        int together = read_number(&at, 3, 4);
        if (together < 0)
            return false;
        hours = together / HUNDRED;
        minutes = together % HUNDRED;
    } else if (!read_minutes(&at, &minutes)) {
        return false;
    }
    if (!read_half_day(&at, &hours) || *skip_blank(at) != '\0')
        return false;
    if (hours >= HOURS_PER_DAY || minutes >= MINUTES_PER_HOUR)
        return false;
    *time = hours * MINUTES_PER_HOUR + minutes;
    return true;
}

// -------------------------------------------------------------------------------------------------------- as a whole

bool bk_day_typed(const char *text, bk_day today, bk_day *day)
{
    bk_day read = BK_NO_DAY;
    if (text == NULL)
        return false;
    text = skip_blank(text);
    if (!read_day(&text, today, &read) || *skip_blank(text) != '\0')
        return false;
    *day = read;
    return true;
}

bool bk_time_typed(const char *text, bk_minute *time)
{
    return text != NULL && read_time(skip_blank(text), time);
}

bool bk_moment_typed(const char *text, bk_day today, bk_moment *moment)
{
    bk_moment read = {.day = BK_NO_DAY, .time = BK_NO_TIME};
    if (text == NULL)
        return false;
    const char *from = skip_blank(text), *at = from;
    if (!read_day(&at, today, &read.day))
        return false;
    const char *behind = skip_blank(at);
    bool joined = at == from + ISO_LENGTH && is_digit(at[-1]) && (*at == 'T' || *at == 't');
    if (*behind != '\0' && ((behind == at && !joined) || !read_time(behind + joined, &read.time)))
        return false;
    *moment = read;
    return true;
}
