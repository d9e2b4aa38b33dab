#include "bodkin/base/glyph.h"

#include <locale.h>
#include <wchar.h>

#include "support/testing.h"

enum { LAST_CODE = 0x10FFFF };

START_TEST(what_may_be_drawn_is_as_wide_as_the_c_library_says)
{
    ck_assert_ptr_nonnull(setlocale(LC_ALL, "C.UTF-8"));
    int drawn = 0;
    for (int32_t code = 0; code <= LAST_CODE; code++) {
        if (bk_glyph_hidden(code))
            continue;
        drawn++;
        if (wcwidth((wchar_t)code) != bk_glyph_columns(code))
            ck_abort_msg("U+%04X is %d columns wide, not %d", (unsigned)code, wcwidth((wchar_t)code),
                         bk_glyph_columns(code));
    }
    ck_assert_int_gt(drawn, 140000); // Unicode 14 has 144,697 characters
}
END_TEST

START_TEST(widths_of_well_known_characters)
{
    static const struct {
        int32_t code;
        int columns;
    } known[] = {
        {'a', 1},    {0x00B7, 1}, {0x2026, 1}, {0x0301, 0},  {0x20DD, 0},  {0x0903, 1},  {0x4E00, 2},
        {0xAC00, 2}, {0x1161, 0}, {0xFF21, 2}, {0x1F9F5, 2}, {0x1F44D, 2}, {0x2501, 1},  {0x05D0, 1},
        {0x2764, 1}, {0x00A7, 1}, {0x0E33, 1}, {0x3000, 2},  {0x1F1EB, 1}, {0x1F3FD, 2}, {0x2588, 1},
    };
    for (size_t i = 0; i < sizeof known / sizeof *known; i++) {
        ck_assert_msg(bk_glyph_columns(known[i].code) == known[i].columns, "U+%04X", (unsigned)known[i].code);
        ck_assert_msg(!bk_glyph_hidden(known[i].code), "U+%04X is hidden", (unsigned)known[i].code);
    }
}
END_TEST

START_TEST(what_could_harm_a_terminal_is_hidden)
{
    static const int32_t ranges[][2] = {
        {0x00, 0x1F},       {0x7F, 0x9F},       {0xAD, 0xAD},         {0x034F, 0x034F}, {0x061C, 0x061C},
        {0x115F, 0x1160},   {0x180E, 0x180E},   {0x200B, 0x200F},     {0x2028, 0x202E}, {0x2060, 0x206F},
        {0x302E, 0x302F},   {0x3164, 0x3164},   {0xD800, 0xDFFF},     {0xE000, 0xF8FF}, {0xFDD0, 0xFDEF},
        {0xFEFF, 0xFEFF},   {0xFFA0, 0xFFA0},   {0xFFF0, 0xFFFB},     {0xFFFE, 0xFFFF}, {0xE0000, 0xE007F},
        {0xE0080, 0xE00FF}, {0xF0000, 0xFFFFF}, {0x100000, 0x10FFFF}, {0x4DC0, 0x4DFF}, {0x1FA75, 0x1FA77},
    };
    for (size_t i = 0; i < sizeof ranges / sizeof *ranges; i++)
        for (int32_t code = ranges[i][0]; code <= ranges[i][1]; code++)
            if (!bk_glyph_hidden(code))
                ck_abort_msg("U+%04X is let through", (unsigned)code);
}
END_TEST

START_TEST(selectors_are_told_from_marks)
{
    static const int32_t are[] = {0xFE00, 0xFE0E, 0xFE0F, 0xE0100, 0xE01EF, 0x180B, 0x180D, 0x180F};
    static const int32_t are_not[] = {'a', 0x0301, 0x180E, 0x1810, 0xFDFF, 0xFE10, 0xE00FF, 0xE01F0};
    for (size_t i = 0; i < sizeof are / sizeof *are; i++)
        ck_assert_msg(bk_glyph_selector(are[i]), "U+%04X", (unsigned)are[i]);
    for (size_t i = 0; i < sizeof are_not / sizeof *are_not; i++)
        ck_assert_msg(!bk_glyph_selector(are_not[i]), "U+%04X", (unsigned)are_not[i]);
}
END_TEST

BK_TEST_MAIN("glyph", what_may_be_drawn_is_as_wide_as_the_c_library_says, widths_of_well_known_characters,
             what_could_harm_a_terminal_is_hidden, selectors_are_told_from_marks)
