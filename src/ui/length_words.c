#include "bodkin/ui/length_words.h"

#include "bodkin/trade/words.h"

enum {
    SIXTEENTHS = 16,
    HUNDREDTH_CM = BK_MICROMETRES_PER_CM / 100,
    CM_DECIMALS = 2,
    HUNDREDTHS_PER_MM = 10,
};

// A number as it is written, and whether it was rounded.
typedef struct written {
    const char *text;
    bool rounded;
} written;

static written in_centimetres(bk_length value, bk_arena *arena)
{
    char text[BK_AMOUNT_ROOM];
    bool rounded = value % HUNDREDTH_CM != 0;
    int64_t millimetres = (value + BK_MICROMETRES_PER_MM / 2) / BK_MICROMETRES_PER_MM;
    int64_t hundredths = rounded ? millimetres * HUNDREDTHS_PER_MM : value / HUNDREDTH_CM;
    return (written){bk_arena_text(arena, bk_decimal_write(hundredths, CM_DECIMALS, true, text)), rounded};
}

// Sixteenths in lowest terms: "3/8", "36", "36 3/8".
static const char *fraction_words(int64_t sixteenths, bk_arena *arena)
{
    int64_t whole = sixteenths / SIXTEENTHS, part = sixteenths % SIXTEENTHS, of = SIXTEENTHS;
    while (part > 0 && part % 2 == 0) {
        part /= 2;
        of /= 2;
    }
    if (part == 0)
        return bk_arena_print(arena, "%lld", (long long)whole);
    if (whole == 0)
        return bk_arena_print(arena, "%lld/%lld", (long long)part, (long long)of);
    return bk_arena_print(arena, "%lld %lld/%lld", (long long)whole, (long long)part, (long long)of);
}

static written in_inches(bk_length value, bk_arena *arena)
{
    int64_t sixteenths = (value * SIXTEENTHS + BK_MICROMETRES_PER_INCH / 2) / BK_MICROMETRES_PER_INCH;
    int64_t exact = (sixteenths * BK_MICROMETRES_PER_INCH + SIXTEENTHS / 2) / SIXTEENTHS;
    return (written){fraction_words(sixteenths, arena), exact != value};
}

static written write_length(bk_length value, bk_unit unit, bk_arena *arena)
{
    return unit == BK_INCH ? in_inches(value, arena) : in_centimetres(value, arena);
}

const char *bk_length_number(bk_length value, bk_unit unit, bk_arena *arena)
{
    if (value == BK_NO_AMOUNT)
        return NULL;
    written number = write_length(value, unit, arena);
    return number.rounded ? bk_arena_print(arena, "~%s", number.text) : number.text;
}

const char *bk_length_words(bk_length value, bk_unit unit, bk_arena *arena)
{
    if (value == BK_NO_AMOUNT)
        return NULL;
    bk_unit other = unit == BK_INCH ? BK_CM : BK_INCH;
    written number = write_length(value, unit, arena), exact = write_length(value, other, arena);
    if (!number.rounded)
        return bk_arena_print(arena, "%s %s", number.text, bk_unit_word(unit));
    if (exact.rounded)
        return bk_arena_print(arena, "~%s %s", number.text, bk_unit_word(unit));
    return bk_arena_print(arena, "%s %s (~%s %s)", exact.text, bk_unit_word(other), number.text,
                          bk_unit_word(unit));
}

const char *bk_change_number(bk_length change, bk_unit unit, bk_arena *arena)
{
    if (change == BK_NO_AMOUNT)
        return NULL;
    if (change == 0)
        return "0";
    const char *size = write_length(change < 0 ? -change : change, unit, arena).text;
    return bk_arena_print(arena, "%c%s", change < 0 ? '-' : '+', size);
}

const char *bk_unit_word(bk_unit unit)
{
    return bk_word_text(&bk_length_unit_words, unit == BK_INCH ? BK_INCH : BK_CM);
}
