// The bench as one JSON object.

#include <stdio.h>
#include <string.h>

#include "bodkin/sheet/bench_sheet.h"
#include "sheet/hand_forecast.h"
#include "sheet/hand_rail.h"
#include "support/testing.h"

static char *json_of(const hand_forecast *hand, const bk_bench_list *list, int64_t minutes)
{
    static bk_buffer out;
    bk_buffer_free(&out);
    bk_bench_json(&hand->forecast, list, minutes, &out);
    return out.bytes;
}

START_TEST(a_bench_is_one_object_with_its_steps_in_order)
{
    hand_forecast *hand = hand_forecast_new();
    const bk_bench_line line = {.step = &hand->steps[0],
                                .why = BK_WHY_LATE,
                                .days_left = 14,
                                .behind = 60,
                                .minutes = 45,
                                .fits = true,
                                .together = 2,
                                .shared = "linen",
                                .ran = 5};
    bk_bench_list list = {
        .person = &hand->person, .lines = &line, .count = 1, .free_until = {DAY(3, 2), 1020}};
    ck_assert_str_eq(
        json_of(hand, &list, 50),
        "{\n  \"today\": \"2027-03-02\",\n  \"person\": \"Ada Å\",\n  \"free_until\": \"17:00\",\n"
        "  \"minutes\": 50,\n  \"steps\": [\n    {\n"
        "      \"production\": \"The Salt Road\",\n      \"piece\": \"G1\",\n      \"step\": \"cut\",\n"
        "      \"title\": \"cut the gown\",\n      \"kind\": \"cut\",\n      \"costume\": \"1A\",\n"
        "      \"role\": \"Salt Queen\",\n      \"minutes\": 45,\n      \"fits\": true,\n"
        "      \"due\": \"2027-03-16\",\n      \"days_left\": 14,\n      \"behind\": 60,\n"
        "      \"latest\": \"2027-03-12T10:00\",\n      \"why\": \"late\",\n"
        "      \"says\": \"1A is due in 14 days, 1 h behind it; expected late\",\n"
        "      \"together\": 2,\n      \"material\": \"linen\",\n      \"running\": 5\n    }\n  ]\n}\n");
}
END_TEST

START_TEST(what_is_not_known_is_null)
{
    hand_forecast *hand = hand_forecast_new();
    hand->steps[0].costume = NULL;
    hand->steps[0].due = hand->steps[0].latest.day = BK_NO_DAY;
    const bk_bench_line line = {
        .step = &hand->steps[0], .why = BK_WHY_CAN_WAIT, .days_left = INT64_MIN, .ran = -1};
    bk_bench_list list = {.lines = &line, .count = 1, .free_until = {BK_NO_DAY, BK_NO_TIME}};
    const char *json = json_of(hand, &list, 0);
    static const char *const nulls[] = {"person",    "free_until", "minutes",  "costume",  "role",   "due",
                                        "days_left", "latest",     "together", "material", "running"};
    for (size_t i = 0; i < sizeof nulls / sizeof *nulls; i++) {
        char words[40];
        snprintf(words, sizeof words, "\"%s\": null", nulls[i]);
        ck_assert_msg(strstr(json, words) != NULL, "%s in %s", words, json);
    }
    ck_assert_ptr_nonnull(strstr(json, "\"why\": \"can_wait\""));
    list.count = 0;
    ck_assert_ptr_nonnull(strstr(json_of(hand, &list, 0), "\"steps\": []\n}\n"));
}
END_TEST

BK_TEST_MAIN("bench json", a_bench_is_one_object_with_its_steps_in_order, what_is_not_known_is_null)
