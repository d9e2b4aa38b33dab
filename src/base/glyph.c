#include "bodkin/base/glyph.h"

#include <stddef.h>
#include <utf8proc.h>

/// Code points from `first` to `last`, both included; tables of them are in order.
typedef struct range {
    int32_t first, last;
} range;

/// Hangul vowels and finals: they join the syllable before them.
static const range joining[] = {{0x1160, 0x11FF}, {0xD7B0, 0xD7FB}};

static const range selectors[] = {{0x180B, 0x180D}, {0x180F, 0x180F}, {0xFE00, 0xFE0F}, {0xE0100, 0xE01EF}};

/// What nobody sees though its category is a letter's or a mark's: the grapheme joiner, fillers of Hangul,
/// and inherent vowels.
static const range unseen[] = {
    {0x034F, 0x034F}, {0x115F, 0x1160}, {0x17B4, 0x17B5}, {0x3164, 0x3164}, {0xFFA0, 0xFFA0},
};

/// What terminals draw one or two columns wide, each as it likes: trigrams, monograms and digrams, Hangul
/// tone marks, numbers in black squares, hexagrams, tetragrams and counting rods (some became wide with
/// Unicode 16: from memory).
static const range unsettled[] = {
    {0x2630, 0x2637}, {0x268A, 0x268F}, {0x302E, 0x302F},
    {0x3248, 0x324F}, {0x4DC0, 0x4DFF}, {0x1D300, 0x1D376},
};

/// What came with Unicode 15; a C library that knows Unicode 14 takes it for unprintable.
static const range newer[] = {
    {0x0CF3, 0x0CF3},   {0x0ECE, 0x0ECE},   {0x10EFD, 0x10EFF}, {0x1123F, 0x11241}, {0x11B00, 0x11B09},
    {0x11F00, 0x11F59}, {0x1342F, 0x1342F}, {0x13440, 0x13455}, {0x1B132, 0x1B132}, {0x1B155, 0x1B155},
    {0x1D2C0, 0x1D2D3}, {0x1DF25, 0x1DF2A}, {0x1E030, 0x1E08F}, {0x1E4D0, 0x1E4F9}, {0x1F6DC, 0x1F6DC},
    {0x1F774, 0x1F776}, {0x1F77B, 0x1F77F}, {0x1F7D9, 0x1F7D9}, {0x1FA75, 0x1FA77}, {0x1FA87, 0x1FA88},
    {0x1FAAD, 0x1FAAF}, {0x1FABB, 0x1FABD}, {0x1FABF, 0x1FABF}, {0x1FACE, 0x1FACF}, {0x1FADA, 0x1FADB},
    {0x1FAE8, 0x1FAE8}, {0x1FAF7, 0x1FAF8}, {0x2B739, 0x2B739}, {0x31350, 0x323AF},
};

#define COUNT(table) (sizeof(table) / sizeof *(table))

static bool within(int32_t code, const range *ranges, size_t count)
{
    for (size_t i = 0; i < count && code >= ranges[i].first; i++)
        if (code <= ranges[i].last)
            return true;
    return false;
}

int bk_glyph_columns(int32_t code)
{
    if (within(code, joining, COUNT(joining)))
        return 0;
    switch (utf8proc_category(code)) {
    case UTF8PROC_CATEGORY_MN:
    case UTF8PROC_CATEGORY_ME:
        return 0;
    default: // spacing marks too take a column of their own
        return utf8proc_charwidth(code) == 2 ? 2 : 1;
    }
}

bool bk_glyph_hidden(int32_t code)
{
    switch (utf8proc_category(code)) {
    case UTF8PROC_CATEGORY_CC:
    case UTF8PROC_CATEGORY_CF:
    case UTF8PROC_CATEGORY_CN:
    case UTF8PROC_CATEGORY_CO:
    case UTF8PROC_CATEGORY_CS:
    case UTF8PROC_CATEGORY_ZL:
    case UTF8PROC_CATEGORY_ZP:
        return true;
    default:
        return within(code, unseen, COUNT(unseen)) || within(code, unsettled, COUNT(unsettled)) ||
               within(code, newer, COUNT(newer));
    }
}

bool bk_glyph_selector(int32_t code)
{
    return within(code, selectors, COUNT(selectors));
}
