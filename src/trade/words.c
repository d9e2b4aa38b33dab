#include "bodkin/trade/words.h"

#include <string.h>

static const char *const kinds[] = {
    [BK_SOURCE] = "source",   [BK_DRAFT] = "draft", [BK_CUT] = "cut", [BK_TACK] = "tack",
    [BK_MACHINE] = "machine", [BK_PRESS] = "press", [BK_FIT] = "fit", [BK_HAND] = "hand",
    [BK_CRAFT] = "craft",     [BK_DYE] = "dye",
};

static const char *const origins[] = {
    [BK_MAKE] = "make", [BK_ALTER] = "alter",   [BK_BUY] = "buy",
    [BK_HIRE] = "hire", [BK_BORROW] = "borrow", [BK_STOCK] = "stock",
};

static const char *const outcomes[] = {[BK_FITS] = "fits", [BK_AGAIN] = "again", [BK_MISSED] = "missed"};

static const char *const occasions[] = {
    [BK_ON_MEASURING] = "measuring", [BK_ON_FITTINGS] = "fittings", [BK_ON_PHOTO] = "photo",
    [BK_ON_PARADE] = "parade",       [BK_ON_TECH] = "tech",         [BK_ON_DRESS] = "dress",
    [BK_ON_PREVIEW] = "preview",     [BK_ON_OPENING] = "opening",   [BK_ON_PERFORMANCE] = "performance",
    [BK_ON_CLOSING] = "closing",     [BK_ON_STRIKE] = "strike",     [BK_ON_RETURN] = "return",
};

static const char *const note_sources[] = {
    [BK_FROM_REHEARSAL] = "rehearsal", [BK_FROM_FITTING] = "fitting",   [BK_FROM_PARADE] = "parade",
    [BK_FROM_TECH] = "tech",           [BK_FROM_DRESS] = "dress",       [BK_FROM_PREVIEW] = "preview",
    [BK_FROM_SHOW] = "show",           [BK_FROM_WORKROOM] = "workroom",
};

static const char *const material_units[] = {[BK_METRE] = "m", [BK_YARD] = "yd", [BK_EACH] = "each"};

static const char *const length_units[] = {"cm", "in"};

#define COUNT(table) (sizeof(table) / sizeof(table)[0])

const bk_words bk_kind_words = {"kind of step", kinds, COUNT(kinds)};
const bk_words bk_origin_words = {"origin of a piece", origins, COUNT(origins)};
const bk_words bk_outcome_words = {"outcome of a fitting", outcomes, COUNT(outcomes)};
const bk_words bk_occasion_words = {"kind of date", occasions, COUNT(occasions)};
const bk_words bk_note_source_words = {"source of a note", note_sources, COUNT(note_sources)};
const bk_words bk_material_unit_words = {"unit of a material", material_units, COUNT(material_units)};
const bk_words bk_length_unit_words = {"unit of length", length_units, COUNT(length_units)};

int bk_word_find(const bk_words *words, const char *word)
{
    if (word == NULL)
        return BK_NO_WORD;
    for (size_t i = 0; i < words->count; i++)
        if (strcmp(words->items[i], word) == 0)
            return (int)i;
    return BK_NO_WORD;
}

const char *bk_word_text(const bk_words *words, int number)
{
    return number < 0 || (size_t)number >= words->count ? NULL : words->items[number];
}

int bk_usual_level(bk_kind kind)
{
    return kind == BK_HAND ? BK_LEVEL_SEWER : BK_LEVEL_MAKER;
}
