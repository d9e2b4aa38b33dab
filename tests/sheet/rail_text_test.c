// The rail as text for people.

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/rail_sheet.h"
#include "sheet/hand_forecast.h"
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

static const char *forecast_text(const hand_rail *hand, const bk_forecast *forecast, bool ascii)
{
    bk_buffer out = {0};
    bk_rail_text(&hand->rail, forecast, ascii, &out);
    const char *text = bk_arena_text(texts(), out.bytes);
    bk_buffer_free(&out);
    return text;
}

/// The text without a forecast.
static const char *text_of(const hand_rail *hand, bool ascii)
{
    return forecast_text(hand, NULL, ascii);
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
                     "No    Costume                 Seam     State     Due        Expected   Chance\n"
                     "1A    Coronation gown         ━ ━ ┃· · held      Tue 16 Mar\n"
                     "      Ana Ruíz, Salt Queen: fitting missed\n");
    ck_assert_str_eq(line_of(text_of(hand, true), 6),
                     "1A    Coronation gown         - - |. . held      Tue 16 Mar");
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
                     "No    Costume                 Seam     State     Due        Expected   Chance\n"
                     "1A    Coronation gown         - - - -  ready     Tue 16 Mar\n"
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

START_TEST(a_forecast_tells_the_day_the_chance_and_the_days_in_hand)
{
    hand_rail *hand = hand_rail_new();
    hand_forecast *own = hand_forecast_new();
    hand_rail_wait(hand, BK_HELD, &missed, 1);
    ck_assert_str_eq(forecast_text(hand, &own->forecast, true),
                     "The Salt Road                                     17 days to opening, Fri 19 Mar\n"
                     "All is expected done Thu 11 Mar, every costume in time, the closest with 3\n"
                     "working days in hand; 92 % (give or take 1) that each is ready by its day; half\n"
                     "the trials are done by Thu 11 Mar, nine in ten by Mon 15 Mar.\n"
                     "late: none; tight: none; 0 min of work left\n"
                     "1 costume: 1 held\n"
                     "Waiting on: a fitting 1\n"
                     "\n"
                     "No    Costume                 Seam     State     Due        Expected   Chance\n"
                     "1A    Coronation gown         - - |. . held      Tue 16 Mar Thu 11 Mar 92 %\n"
                     "      in time, 3 days in hand; Ana Ruiz, Salt Queen: fitting missed\n");
}
END_TEST

/// The line beneath the costume's, up to the name of who wears it.
static const char *urgency_of(const hand_rail *hand, const hand_forecast *own)
{
    const char *line = strstr(forecast_text(hand, &own->forecast, true), "\n1A ") + 1;
    line = line_of(line, 1);
    return bk_arena_bytes(texts(), line, (size_t)(strstr(line, "Ana") - line));
}

START_TEST(beneath_a_costume_stands_how_urgent_it_is)
{
    hand_rail *hand = hand_rail_new();
    hand_forecast *own = hand_forecast_new();
    hand_rail_wait(hand, BK_HELD, &missed, 1);
    own->costume.days.chance = 600;
    ck_assert_str_eq(urgency_of(hand, own), "      tight, 3 days in hand; ");
    own->costume.days.chance = 300;
    ck_assert_str_eq(urgency_of(hand, own), "      likely late, 3 days in hand; ");
    own->costume.days.days_in_hand = -2;
    ck_assert_str_eq(urgency_of(hand, own), "      2 days late; ");
    own->costume.days.finish = BK_NO_DAY;
    ck_assert_str_eq(urgency_of(hand, own), "      never done as things are; ");
    hand->reckoned.can_go_on = true;
    ck_assert_str_eq(urgency_of(hand, own), "      in time; ");
    hand->reckoned.can_go_on = false;
    own->costume.days.days_known = false;
    ck_assert_str_eq(urgency_of(hand, own), "      ");
    own->costume.days.days_known = true;
    own->costume.open = false;
    ck_assert_str_eq(urgency_of(hand, own), "      ");
}
END_TEST

START_TEST(what_stands_in_the_way_is_a_sentence_beneath_the_costume_and_nobody_at_all_one_on_top)
{
    static const bk_snag snags[] = {{.kind = BK_SNAG_NO_MINUTES, .step_id = 1, .piece = "G1", .step = "cut"},
                                    {.kind = BK_SNAG_NO_MINUTES, .step_id = 2, .piece = "C1", .step = "hem"}};
    hand_rail *hand = hand_rail_new();
    hand_forecast *own = hand_forecast_new();
    hand_rail_wait(hand, BK_HELD, &missed, 1);
    own->costume.snags = snags;
    own->costume.snag_count = 2;
    ck_assert_ptr_nonnull(
        strstr(forecast_text(hand, &own->forecast, true),
               ": fitting missed\n"
               "      G1/cut, C1/hem: no minutes, so it counts as no work: say how long it\n"
               "      takes.\n"));
    own->forecast.room_snag = (bk_snag){.kind = BK_SNAG_NOBODY};
    ck_assert_str_eq(line_of(forecast_text(hand, &own->forecast, true), 1),
                     "Nobody is in the workroom yet, so no day can be told: add who works, and when");
    static const bk_snag as_if[] = {{.kind = BK_SNAG_NO_DATE, .step_id = 1, .piece = "G1", .step = "cut"},
                                    {.kind = BK_SNAG_UNCAST, .step_id = 2, .piece = "C1", .step = "fit"},
                                    {.kind = BK_SNAG_PAST, .day = BK_NO_DAY}};
    own->costume.snags = as_if;
    own->costume.snag_count = 3;
    const char *text = forecast_text(hand, &own->forecast, true);
    ck_assert_ptr_null(strstr(text, "as if"));
    ck_assert_ptr_nonnull(strstr(text, "\n      The due day is past;"));
    own->forecast.room_snag.kind = BK_SNAGS;
    ck_assert_ptr_nonnull(strstr(forecast_text(hand, &own->forecast, true), "as if"));
}
END_TEST

START_TEST(a_title_that_is_cut_stands_whole_beneath)
{
    hand_rail *hand = hand_rail_new();
    hand->record.title = "Coronation gown, the second";
    ck_assert_str_eq(line_of(text_of(hand, true), 5),
                     "1A    Coronation gown, the... - - - -  ready     Tue 16 Mar");
    ck_assert_str_eq(line_of(text_of(hand, true), 6),
                     "      Coronation gown, the second; Ana Ruiz, Salt Queen");
}
END_TEST

START_TEST(a_day_of_another_year_is_told_in_figures)
{
    hand_rail *hand = hand_rail_new();
    hand_forecast *own = hand_forecast_new();
    hand->costume.due = bk_day_of(2028, 5, 3);
    own->costume.days.finish = bk_day_of(2029, 1, 2);
    ck_assert_ptr_nonnull(strstr(forecast_text(hand, &own->forecast, true), " 2028-05-03 2029-01-02 92 %\n"));
}
END_TEST

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
            hand_forecast *own = hand_forecast_new();
            hand_rail_wait(hand, BK_FINISHING, &missed, 1);
            hand->rail.production.name = hand->record.number = hand->record.title = names[i];
            hand->costume.performer = hand->costume.role = names[i];
            hand->costume.due = hand->rail.production.opens = bk_day_of(years[year], 12, 28);
            hand->rail.days_left = hand->rail.production.opens - hand->rail.today;
            own->costume.days.finish = own->production.days.even = hand->costume.due;
            own->costume.days.chance = 1000;
            expect_neat(forecast_text(hand, &own->forecast, true));
            expect_neat(forecast_text(hand, &own->forecast, false));
        }
}
END_TEST

START_TEST(a_long_number_takes_its_room_from_the_title)
{
    hand_rail *hand = hand_rail_new();
    hand->record.number = "Chorus 12B";
    ck_assert_str_eq(line_of(text_of(hand, true), 5),
                     "Chorus 12B Coronation gown    - - - -  ready     Tue 16 Mar");
    hand->record.number = "the seventh walker of the second crowd";
    ck_assert_str_eq(line_of(text_of(hand, true), 5),
                     "the seventh walke... Coron... - - - -  ready     Tue 16 Mar");
}
END_TEST

BK_TEST_MAIN("rail text", a_costume_has_a_line_and_beneath_it_who_wears_it_and_what_it_waits_on,
             what_there_is_none_of_is_not_said, a_production_without_costumes_has_its_head_only,
             what_can_go_on_as_it_is_says_so_before_its_waits,
             a_forecast_tells_the_day_the_chance_and_the_days_in_hand,
             beneath_a_costume_stands_how_urgent_it_is,
             what_stands_in_the_way_is_a_sentence_beneath_the_costume_and_nobody_at_all_one_on_top,
             a_title_that_is_cut_stands_whole_beneath, a_day_of_another_year_is_told_in_figures,
             no_line_is_wider_than_80_columns_whatever_the_names_and_days,
             a_long_number_takes_its_room_from_the_title)
