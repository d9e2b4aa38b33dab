#include "bodkin/base/typed.h"

#include <inttypes.h>
#include <string.h>
#include <strings.h>

#include "bodkin/base/text.h"

enum { INCHES_PER_FOOT = 12, CM_PER_METRE = 100, CM_DIGITS = 2 };

/// More than 1 km of any unit.
#define TOO_MANY UINT64_C(1000001)

static const char digits[] = "0123456789";

/// What is typed for what bk_length_read knows.
static const struct sign {
    int32_t code;
    const char *text;
} signs[] = {
    {0xBD, " 1/2"},   {0xBC, " 1/4"},   {0xBE, " 3/4"}, {0x215B, " 1/8"}, {0x215C, " 3/8"},
    {0x215D, " 5/8"}, {0x215E, " 7/8"}, {0x2044, "/"},  {0x2032, "'"},    {0x2018, "'"},
    {0x2019, "'"},    {0x2033, "\""},   {0x201C, "\""}, {0x201D, "\""},   {0xA0, " "},
    {0x2009, " "},    {0x202F, " "},    {0x2010, "-"},  {0x2011, "-"},    {0x2013, "-"},
};

/// The units by the words and marks that are typed for them.
static const struct word {
    const char *typed;
    const char *unit; ///< as bk_length_read knows it
} words[] = {
    {"in", "in"}, {"inch", "in"}, {"inches", "in"}, {"\"", "in"}, {"''", "in"},
    {"ft", "ft"}, {"foot", "ft"}, {"feet", "ft"},   {"'", "ft"},  {"m", "m"},
    {"cm", "cm"}, {"mm", "mm"},   {"yd", "yd"},
};

/// Fractions of what is not inches.
static const struct fraction {
    const char *common, *decimals;
    bool fine; ///< nobody reads it off a tape in centimetres
} fractions[] = {
    {"1/2", ".5", false},  {"1/4", ".25", false}, {"3/4", ".75", false}, {"1/8", ".125", true},
    {"3/8", ".375", true}, {"5/8", ".625", true}, {"7/8", ".875", true},
};

/// Two units that are written one behind the other.
static const struct pair {
    const char *large, *small;
    uint64_t times;       ///< so many of the small make one of the large
    size_t digits_needed; ///< of the small, where its unit is not written
} pairs[] = {{"ft", "in", INCHES_PER_FOOT, 1}, {"m", "cm", CM_PER_METRE, CM_DIGITS}};

/// One number with its unit; the texts are those of what was typed.
typedef struct part {
    bool negative;
    uint64_t whole;
    size_t whole_digits;
    const char *decimals; ///< `count` digits behind the point
    size_t count;
    const char *fraction; ///< `3/8`, `length` bytes, or NULL
    size_t length;
    const char *unit; ///< NULL: none is written
} part;

/// Writes the text with its signs spelled in ASCII.
static void spell(bk_buffer *plain, const char *text)
{
    int32_t code = 0;
    bk_buffer_add(plain, "", 0);
    for (size_t step = 0; *text != '\0'; text += step) {
        step = bk_utf8_next(text, &code);
        const char *spelled = NULL;
        for (size_t i = 0; i < sizeof signs / sizeof *signs; i++)
            if (signs[i].code == code)
                spelled = signs[i].text;
        if (spelled != NULL)
            bk_buffer_text(plain, spelled);
        else
            bk_buffer_add(plain, text, step);
    }
}

/// Reads a common fraction at `*at`.
static bool read_fraction(const char **at, part *read)
{
    size_t over = strspn(*at, digits);
    if (over == 0 || (*at)[over] != '/')
        return false;
    size_t under = strspn(*at + over + 1, digits);
    if (under == 0)
        return false;
    read->fraction = *at;
    read->length = over + 1 + under;
    *at += read->length;
    return true;
}

/// Reads a number of any form: `36`, `36.5`, `36 3/8`, `36-3/8`, `3/8`.
static bk_reading read_number(const char **at, part *read)
{
    bk_decimal number = {0};
    const char *from = bk_skip_blank(*at);
    bk_reading reading = bk_decimal_read(at, &number);
    if (reading != BK_READ_OK)
        return reading;
    read->negative = number.negative;
    read->decimals = number.fraction;
    read->count = number.decimals;
    if (read_fraction(&from, read)) {
        *at = from;
        return BK_READ_OK;
    }
    read->whole = number.whole;
    read->whole_digits = strspn(from + number.negative, digits);
    const char *behind = **at == '-' ? *at + 1 : bk_skip_blank(*at);
    if (behind > *at && read_fraction(&behind, read))
        *at = behind;
    return BK_READ_OK;
}

/// Reads the unit, if there is one.
static bk_reading read_unit(const char **at, part *read)
{
    const char *from = bk_skip_blank(*at);
    size_t length = strcspn(from, " \t\r\n-+.,0123456789");
    if (length == 0)
        return BK_READ_OK;
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (strlen(words[i].typed) == length && strncasecmp(words[i].typed, from, length) == 0) {
            read->unit = words[i].unit;
            *at = from + length;
            return BK_READ_OK;
        }
    return BK_READ_UNIT;
}

static bk_reading read_part(const char **at, part *read)
{
    bk_reading reading = read_number(at, read);
    if (reading == BK_READ_OK)
        reading = read_unit(at, read);
    if (reading == BK_READ_OK && read->negative)
        reading = BK_READ_NEGATIVE;
    if (reading == BK_READ_OK && read->whole >= TOO_MANY)
        reading = BK_READ_TOO_LARGE;
    return reading;
}

/// Makes one part of two: feet and inches, metres and centimetres.
static bk_reading join(const part *large, part *small)
{
    for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
        const struct pair *pair = &pairs[i];
        if (large->unit == NULL || strcmp(large->unit, pair->large) != 0)
            continue;
        if (large->count > 0 || large->fraction != NULL || small->whole >= pair->times)
            return BK_READ_NOT_NUMBER;
        if (small->unit == NULL ? small->whole_digits < pair->digits_needed && small->fraction == NULL
                                : strcmp(small->unit, pair->small) != 0)
            return BK_READ_NOT_NUMBER;
        small->unit = pair->small;
        small->whole += large->whole * pair->times;
        return BK_READ_OK;
    }
    return BK_READ_NOT_NUMBER;
}

/// Writes the fraction behind the whole: as it is for inches, else as decimals.
static bk_reading write_fraction(bk_buffer *out, const part *read, bool fine)
{
    if (read->count > 0)
        return BK_READ_NOT_NUMBER;
    for (size_t i = 0; i < sizeof fractions / sizeof *fractions; i++)
        if (strlen(fractions[i].common) == read->length &&
            memcmp(fractions[i].common, read->fraction, read->length) == 0) {
            bk_buffer_print(out, "%" PRIu64 "%s", read->whole, fractions[i].decimals);
            return fine || !fractions[i].fine ? BK_READ_OK : BK_READ_NO_UNIT;
        }
    return fine ? BK_READ_NOT_NUMBER : BK_READ_NO_UNIT;
}

/// Writes the part as bk_length_read reads it.
static bk_reading write_part(bk_buffer *out, const part *read, bk_unit unit)
{
    const char *name = read->unit != NULL ? read->unit : unit == BK_INCH ? "in" : "cm";
    bk_reading reading = BK_READ_OK;
    if (read->fraction != NULL && strcmp(name, "in") != 0) {
        reading = write_fraction(out, read, read->unit != NULL);
    } else if (read->fraction != NULL && read->whole == 0 && read->whole_digits == 0) {
        bk_buffer_add(out, read->fraction, read->length);
    } else {
        bk_buffer_print(out, "%" PRIu64, read->whole);
        bk_buffer_text(out, read->count > 0 ? "." : read->fraction != NULL ? " " : "");
        bk_buffer_add(out, read->decimals, read->count);
        bk_buffer_add(out, read->fraction, read->length);
    }
    bk_buffer_print(out, " %s", name);
    return reading;
}

/// Reads the one or two parts of a length that is spelled in ASCII, and writes them as one.
static bk_reading rewrite(const char *text, bk_unit unit, bk_buffer *out)
{
    part read = {0};
    bk_reading reading = read_part(&text, &read);
    if (reading == BK_READ_OK && *bk_skip_blank(text) != '\0') {
        part first = read;
        read = (part){0};
        reading = read_part(&text, &read);
        if (reading == BK_READ_OK)
            reading = *bk_skip_blank(text) == '\0' ? join(&first, &read) : BK_READ_NOT_NUMBER;
    }
    return reading == BK_READ_OK ? write_part(out, &read, unit) : reading;
}

bk_reading bk_length_typed(const char *text, bk_unit unit, bk_length *length)
{
    bk_buffer plain = {0}, pointed = {0}, written = {0};
    if (text == NULL)
        return BK_READ_EMPTY;
    spell(&plain, text);
    bk_comma_typed(plain.bytes, &pointed);
    bk_reading reading = rewrite(pointed.bytes, unit, &written);
    if (reading == BK_READ_OK)
        reading = bk_length_read(written.bytes, length);
    bk_buffer_free(&plain);
    bk_buffer_free(&pointed);
    bk_buffer_free(&written);
    return reading;
}
