// The rail as text for people.

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/rail_sheet.h"
#include "sheet/hand_rail.h"
#include "support/testing.h"

enum { MOST_COLUMNS = 80 };

static bk_arena *texts(void)
{
    static bk_arena *arena;
    if (arena == NULL)
        arena = bk_arena_new();
    return arena;
}

static const char *text_of(const hand_rail *hand, bool ascii)
{
    bk_buffer out = {0};
    bk_rail_text(&hand->rail, ascii, &out);
    const char *text = bk_arena_text(texts(), out.bytes);
    bk_buffer_free(&out);
    return text;
}

/// Line number `number` (from 0) of the text.
static const char *line_of(const char *text, size_t number)
{
    for (; number > 0; number--)
        text = strchr(text, '\n') + 1;
    return bk_arena_bytes(texts(), text, strcspn(text, "\n"));
}

static const bk_wait missed = {
    .on = BK_WAIT_FITTING, .piece = CLOAK, .step = CLOAK_FIT, .detail = BK_DETAIL_MISSED, .acts = true};

START_TEST(a_costume_has_a_line_and_beneath_it_who_wears_it_and_what_it_waits_on)
{
    hand_rail *hand = hand_rail_new();
    hand_rail_wait(hand, BK_HELD, &missed, 1);
    ck_assert_str_eq(text_of(hand, false),
                     "The Salt Road                                     17 days to opening, Fri 19 Mar\n"
                     "late: none; tight: 1A; 0 min of work left\n"
                     "1 costume: 1 held\n"
                     "Waiting on: a fitting 1\n"
                     "\n"
                     "No    Costume, who wears it, waiting on   Seam         State     Due\n"
                     "1A    Coronation gown                     ━ ━ ━ ━ ┃· · held      Tue 16 Mar\n"
                     "      Ana Ruíz, Salt Queen: fitting missed\n");
    ck_assert_str_eq(line_of(text_of(hand, true), 6),
                     "1A    Coronation gown                     - - - - |. . held      Tue 16 Mar");
    ck_assert_str_eq(line_of(text_of(hand, true), 7), "      Ana Ruiz, Salt Queen: fitting missed");
}
END_TEST

START_TEST(what_there_is_none_of_is_not_said)
{
    hand_rail *hand = hand_rail_new();
    hand_rail_wait(hand, BK_READY, NULL, 0);
    hand->reckoned.minutes_left = 0;
    hand->costume.performer = NULL;
    ck_assert_str_eq(text_of(hand, true),
                     "The Salt Road                                     17 days to opening, Fri 19 Mar\n"
                     "late: none; tight: none; 0 min of work left\n"
                     "1 costume: 1 ready\n"
                     "\n"
                     "No    Costume, who wears it, waiting on   Seam         State     Due\n"
                     "1A    Coronation gown                     - - - - - -  ready     Tue 16 Mar\n"
                     "      not cast, Salt Queen\n");
}
END_TEST

START_TEST(a_production_without_costumes_has_its_head_only)
{
    hand_rail *hand = hand_rail_new();
    hand->rail.costume_count = 0;
    ck_assert_str_eq(text_of(hand, true),
                     "The Salt Road                                     17 days to opening, Fri 19 Mar\n"
                     "0 costumes\n");
}
END_TEST

START_TEST(what_can_go_on_as_it_is_says_so_before_its_waits)
{
    static const bk_wait hand_wait = {
        .on = BK_WAIT_HAND, .piece = CLOAK, .step = CLOAK_HEM, .detail = BK_DETAIL_OPEN};
    hand_rail *hand = hand_rail_new();
    hand_rail_wait(hand, BK_FINISHING, &hand_wait, 1);
    hand->reckoned.can_go_on = true;
    hand->rail.counts.can_go_on = 1;
    ck_assert_str_eq(line_of(text_of(hand, true), 2), "1 costume: 1 finishing; 1 can go on as it is");
    ck_assert_str_eq(line_of(text_of(hand, true), 7),
                     "      Ana Ruiz, Salt Queen: can go on as it is; hand sewing");
    hand->rail.counts.can_go_on = 2;
    ck_assert_str_eq(line_of(text_of(hand, true), 2), "1 costume: 1 finishing; 2 can go on as they are");
    hand_rail_wait(hand, BK_READY, NULL, 0);
    ck_assert_str_eq(line_of(text_of(hand, true), 6), "      Ana Ruiz, Salt Queen");
}
END_TEST

/// No line is wider than the sheet, ends with a space, or holds what a terminal would obey.
static void expect_neat(const char *text)
{
    while (*text != '\0') {
        const char *line = line_of(text, 0);
        ck_assert_msg(bk_text_columns(line) <= MOST_COLUMNS, "%zu columns: %s", bk_text_columns(line), line);
        ck_assert_msg(line[0] == '\0' || line[strlen(line) - 1] != ' ', "a space at the end: %s", line);
        ck_assert_ptr_null(strpbrk(line, "\x1b\x7f\t\r"));
        text += strlen(line) + 1;
    }
}

START_TEST(no_line_is_wider_than_80_columns_whatever_the_names_and_days)
{
    static const char *const names[] = {
        "a name of many words that goes on for longer than any line of the rail has ever had room, and then "
        "goes on more",
        "Donaudampfschifffahrtsgesellschaftskapitaensuniformknopflochverzierungsgarnrollenhalteraufbewahrungs"
        "kasten",
        "水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽",
        "\x1b[31m red \xe2\x80\xae\x7f\t\r\n",
        "",
    };
    static const int years[] = {1, 1999, 2027, 9999};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        for (size_t year = 0; year < sizeof years / sizeof *years; year++) {
            hand_rail *hand = hand_rail_new();
            hand_rail_wait(hand, BK_FINISHING, &missed, 1);
            hand->rail.production.name = hand->record.number = hand->record.title = names[i];
            hand->costume.performer = hand->costume.role = names[i];
            hand->costume.due = hand->rail.production.opens = bk_day_of(years[year], 12, 28);
            hand->rail.days_left = hand->rail.production.opens - hand->rail.today;
            expect_neat(text_of(hand, true));
            expect_neat(text_of(hand, false));
        }
}
END_TEST

START_TEST(a_long_number_takes_its_room_from_the_title)
{
    hand_rail *hand = hand_rail_new();
    hand->record.number = "Chorus 12B";
    ck_assert_str_eq(line_of(text_of(hand, true), 5),
                     "Chorus 12B Coronation gown                - - - - - -  ready     Tue 16 Mar");
    hand->record.number = "the seventh walker of the second crowd";
    ck_assert_str_eq(line_of(text_of(hand, true), 5),
                     "the seventh walke... Coronation gown      - - - - - -  ready     Tue 16 Mar");
}
END_TEST

BK_TEST_MAIN("rail text", a_costume_has_a_line_and_beneath_it_who_wears_it_and_what_it_waits_on,
             what_there_is_none_of_is_not_said, a_production_without_costumes_has_its_head_only,
             what_can_go_on_as_it_is_says_so_before_its_waits,
             no_line_is_wider_than_80_columns_whatever_the_names_and_days,
             a_long_number_takes_its_room_from_the_title)
