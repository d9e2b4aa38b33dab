// The bench as text for people.

#include "sheet/hand_forecast.h"

#include <string.h>

#include "bodkin/sheet/bench_sheet.h"
#include "sheet/hand_rail.h"
#include "support/testing.h"

enum { MOST_COLUMNS = 80, LINES = 3 };

static bk_arena *texts(void)
{
    static bk_arena *arena;
    if (!arena)
        arena = bk_arena_new();
    return arena;
}

/// A bench with the three steps of the hand-made forecast, for everybody.
static bk_bench_list bench_of(const hand_forecast *hand)
{
    static bk_bench_line lines[LINES];
    for (size_t i = 0; i < LINES; i++)
        lines[i] = (bk_bench_line){.step = &hand->steps[i],
                                   .why = BK_WHY_TIME,
                                   .days_left = 14,
                                   .behind = 60,
                                   .minutes = hand->steps[i].minutes,
                                   .fits = true,
                                   .ran = -1};
    return (bk_bench_list){
        .lines = lines, .count = LINES, .fitting = LINES, .free_until = {BK_NO_DAY, BK_NO_TIME}};
}

static bk_bench_line *line_of(const bk_bench_list *list, size_t index)
{
    return (bk_bench_line *)list->lines + index; // they are bench_of's own
}

static const char *text_of(const hand_forecast *hand, const bk_bench_list *list, int64_t minutes)
{
    bk_buffer out = {0};
    bk_bench_text(&hand->forecast, list, minutes, true, &out);
    const char *text = bk_arena_text(texts(), out.bytes);
    bk_buffer_free(&out);
    return text;
}

START_TEST(each_step_has_its_minutes_its_costume_and_beneath_it_why)
{
    hand_forecast *hand = hand_forecast_new();
    bk_bench_list list = bench_of(hand);
    line_of(&list, 0)->minutes = 70;
    line_of(&list, 1)->why = BK_WHY_LATE;
    ck_assert_str_eq(text_of(hand, &list, 0),
                     "Bench: everybody, Tue 2 Mar\n"
                     "3 steps can be worked on now, best first.\n"
                     "\n"
                     "G1/cut       cut the gown                          1 h 10  1A Salt Queen\n"
                     "      1A is due in 14 days, 1 h behind it\n"
                     "C1/hem       hem the cloak                         40 min  1A Salt Queen\n"
                     "      1A is due in 14 days, 1 h behind it; expected late\n"
                     "C1/fit       fit the cloak                         40 min  1A Salt Queen\n"
                     "      1A is due in 14 days, 1 h behind it\n");
}
END_TEST

START_TEST(the_head_names_the_person_and_the_hours_of_today)
{
    hand_forecast *hand = hand_forecast_new();
    bk_bench_list list = bench_of(hand);
    list.person = &hand->person;
    ck_assert_ptr_nonnull(strstr(text_of(hand, &list, 0), "Bench: Ada A, Tue 2 Mar, no hours today\n"));
    list.free_until = (bk_moment){DAY(3, 2), 1020};
    ck_assert_ptr_nonnull(strstr(text_of(hand, &list, 0), "Bench: Ada A, Tue 2 Mar, hours until 17:00\n"));
}
END_TEST

START_TEST(what_fits_the_minutes_stands_apart_from_what_does_not)
{
    hand_forecast *hand = hand_forecast_new();
    bk_bench_list list = bench_of(hand);
    line_of(&list, 2)->fits = false;
    list.fitting = 2;
    const char *text = text_of(hand, &list, 30);
    ck_assert_ptr_nonnull(
        strstr(text, "\n3 steps can be worked on now, 2 of them within 30 min.\n\nWithin 30 min\nG1/cut "));
    ck_assert_ptr_nonnull(strstr(text, "\n\nLonger than 30 min\nC1/fit "));
    ck_assert_ptr_null(strstr(text, "best first"));
}
END_TEST

START_TEST(what_is_best_done_together_is_named_at_the_first_and_the_first_at_the_others)
{
    hand_forecast *hand = hand_forecast_new();
    bk_bench_list list = bench_of(hand);
    for (size_t i = 0; i < LINES; i++) {
        line_of(&list, i)->together = 1;
        line_of(&list, i)->shared = "linen";
    }
    const char *text = text_of(hand, &list, 0);
    ck_assert_ptr_nonnull(
        strstr(text, "1 h behind it\n      best together with C1/hem, C1/fit: the same linen\nC1/hem "));
    ck_assert_ptr_nonnull(
        strstr(text, "1 h behind it\n      best together with G1/cut: the same linen\nC1/fit "));
    ck_assert_str_eq(strstr(text, "C1/fit       "),
                     "C1/fit       fit the cloak                         40 min  1A Salt Queen\n"
                     "      1A is due in 14 days, 1 h behind it\n"
                     "      best together with G1/cut: the same linen\n");
    bk_bench_line many[6];
    for (size_t i = 0; i < 6; i++)
        many[i] = list.lines[0];
    bk_bench_list six = {.lines = many, .count = 6};
    ck_assert_ptr_nonnull(
        strstr(text_of(hand, &six, 0), "with G1/cut, G1/cut, G1/cut and 2 more: the same linen\n"));
    six.count = 1;
    ck_assert_ptr_null(strstr(text_of(hand, &six, 0), "together"));
}
END_TEST

START_TEST(several_people_and_several_productions_are_told)
{
    hand_forecast *hand = hand_forecast_new();
    bk_bench_list list = bench_of(hand);
    hand->steps[0].hands = 2;
    ck_assert_ptr_nonnull(strstr(text_of(hand, &list, 0), "1 h behind it; needs 2 people\n"));
    hand->steps[1].production_id = 9;
    hand->steps[1].production = "Nine Lamps";
    ck_assert_ptr_nonnull(strstr(text_of(hand, &list, 0), "1 h behind it; needs 2 people; The Salt Road\n"));
    ck_assert_ptr_nonnull(strstr(text_of(hand, &list, 0), "1 h behind it; Nine Lamps\n"));
}
END_TEST

START_TEST(an_empty_bench_and_an_empty_workroom_say_so)
{
    hand_forecast *hand = hand_forecast_new();
    bk_bench_list list = {.free_until = {BK_NO_DAY, BK_NO_TIME}};
    ck_assert_str_eq(text_of(hand, &list, 0),
                     "Bench: everybody, Tue 2 Mar\n"
                     "Nothing can be worked on now; the rail says what each costume waits on.\n");
    list.person = &hand->person;
    hand->person.skills = 0;
    ck_assert_ptr_nonnull(strstr(text_of(hand, &list, 0),
                                 "\nNothing: no kind of work is among the skills written down (Hands).\n"));
    hand->forecast.room_snag.kind = BK_SNAG_NOBODY;
    list.person = NULL;
    ck_assert_ptr_nonnull(strstr(
        text_of(hand, &list, 0),
        "Mar\nNobody is in the workroom yet, so no day can be told: add who works, and when\n(Hands).\n"));
}
END_TEST

START_TEST(no_line_is_wider_than_80_columns_whatever_the_names)
{
    static const char *const names[] = {
        ("a name of many words that goes on for longer than any line of the bench has ever had room, and "
         "then "
         "more"),
        "Donaudampfschifffahrtsgesellschaftskapitaensuniformknopflochverzierungsgarnrollenhalteraufbewahrung",
        "水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽水沢千羽",
        "\x1b[31m red \xe2\x80\xae\x7f\t\r\n",
        "",
    };
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        hand_forecast *hand = hand_forecast_new();
        bk_bench_list list = bench_of(hand);
        list.person = &hand->person;
        hand->person.name = hand->steps[0].piece = hand->steps[0].key = hand->steps[1].title = names[i];
        hand->steps[2].costume = hand->steps[2].role = names[i];
        line_of(&list, 0)->together = line_of(&list, 1)->together = 1;
        line_of(&list, 0)->shared = line_of(&list, 1)->shared = names[i];
        line_of(&list, 0)->minutes = 1000000;
        const char *text = text_of(hand, &list, 20);
        for (; *text; text += strcspn(text, "\n") + 1) {
            const char *line = bk_arena_bytes(texts(), text, strcspn(text, "\n"));
            ck_assert_msg(bk_text_columns(line) <= MOST_COLUMNS, "%zu columns: %s", bk_text_columns(line),
                          line);
            ck_assert_msg(!*line || line[strlen(line) - 1] != ' ', "a space at the end: %s", line);
            ck_assert_ptr_null(strpbrk(line, "\x1b\x7f\t\r"));
        }
    }
}
END_TEST

BK_TEST_MAIN("bench text", each_step_has_its_minutes_its_costume_and_beneath_it_why,
             the_head_names_the_person_and_the_hours_of_today,
             what_fits_the_minutes_stands_apart_from_what_does_not,
             what_is_best_done_together_is_named_at_the_first_and_the_first_at_the_others,
             several_people_and_several_productions_are_told, an_empty_bench_and_an_empty_workroom_say_so,
             no_line_is_wider_than_80_columns_whatever_the_names)
