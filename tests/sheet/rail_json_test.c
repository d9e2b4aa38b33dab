// The rail as one JSON object (design, section 7). What Python reads of it stands in tests/cmd/rail_test.c.

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/rail_sheet.h"
#include "sheet/hand_forecast.h"
#include "sheet/hand_rail.h"
#include "support/testing.h"

static char *forecast_json(const hand_rail *hand, const bk_forecast *forecast)
{
    static bk_buffer out;
    bk_buffer_free(&out);
    bk_rail_json(&hand->rail, forecast, &out);
    return out.bytes;
}

/// Without a forecast.
static char *json_of(const hand_rail *hand)
{
    return forecast_json(hand, NULL);
}

static void expect_words(const char *text, const char *words)
{
    ck_assert_msg(strstr(text, words) != NULL, "missing: %s\nin: %s", words, text);
}

/// The one wait of the costume, from its `on` to its last member.
static void expect_wait(const bk_wait *wait, const char *members)
{
    hand_rail *hand = hand_rail_new();
    hand_rail_wait(hand, BK_HELD, wait, 1);
    const char *json = json_of(hand);
    expect_words(json, members);
    ck_assert_str_eq(strstr(json, members) + strlen(members),
                     "\n        }\n      ],\n      \"chance_error\": null\n    }\n  ]\n}\n");
}

START_TEST(a_wait_on_materials_has_the_material_and_what_the_shelf_lacks)
{
    bk_claim claim = {.material = FLANNEL, .quantity = 2400000, .short_of = 1400000, .supply_day = DAY(3, 9)};
    expect_wait(
        &(bk_wait){.on = BK_WAIT_MATERIALS,
                   .piece = GOWN,
                   .step = GOWN_CUT,
                   .detail = BK_DETAIL_DUE,
                   .day = DAY(3, 9),
                   .claim = &claim},
        "          \"on\": \"materials\",\n          \"piece\": \"G1\",\n          \"step\": \"cut\",\n"
        "          \"detail\": \"due 2027-03-09\",\n          \"wanted_by\": null,\n"
        "          \"material\": \"wool flannel\",\n          \"short\": 1.4");
}
END_TEST

START_TEST(a_piece_that_is_out_has_no_step)
{
    expect_wait(
        &(bk_wait){.on = BK_WAIT_OUT, .piece = GOWN, .step = BK_NO_INDEX, .detail = BK_DETAIL_NO_DATE},
        "          \"on\": \"out\",\n          \"piece\": \"G1\",\n          \"step\": null,\n"
        "          \"detail\": \"no date\",\n          \"wanted_by\": null");
}
END_TEST

START_TEST(a_wait_on_others_steps_names_them_in_order)
{
    static const size_t steps[] = {CLOAK_HEM, GOWN_CUT};
    expect_wait(&(bk_wait){.on = BK_WAIT_ORDER,
                           .piece = CLOAK,
                           .step = CLOAK_FIT,
                           .detail = BK_DETAIL_STEPS,
                           .steps = {steps, 2}},
                "          \"on\": \"order\",\n          \"piece\": \"C1\",\n          \"step\": \"fit\",\n"
                "          \"detail\": \"C1/hem;G1/cut\",\n          \"wanted_by\": null");
}
END_TEST

START_TEST(a_costume_that_nobody_wears_has_no_performer_and_what_is_not_reckoned_yet_is_null)
{
    hand_rail *hand = hand_rail_new();
    hand->costume.performer = NULL;
    hand->reckoned.can_go_on = true;
    hand->reckoned.steps = 7;
    hand->reckoned.steps_done = 5;
    hand->reckoned.minutes_left = 90;
    expect_words(json_of(hand),
                 "    {\n"
                 "      \"costume\": \"1A\",\n      \"role\": \"Salt Queen\",\n      \"performer\": null,\n"
                 "      \"title\": \"Coronation gown\",\n      \"state\": \"ready\",\n"
                 "      \"can_go_on\": true,\n      \"due\": \"2027-03-16\",\n      \"steps\": 7,\n"
                 "      \"steps_done\": 5,\n      \"minutes_left\": 90,\n      \"finish\": null,\n"
                 "      \"days_in_hand\": null,\n      \"chance\": null,\n      \"waits\": [],\n"
                 "      \"chance_error\": null\n    }\n");
}
END_TEST

START_TEST(a_forecast_tells_finish_days_in_hand_chance_and_its_error)
{
    hand_rail *hand = hand_rail_new();
    hand_forecast *own = hand_forecast_new();
    expect_words(forecast_json(hand, &own->forecast),
                 "      \"finish\": \"2027-03-11\",\n      \"days_in_hand\": 3,\n"
                 "      \"chance\": 0.920,\n      \"waits\": [],\n"
                 "      \"chance_error\": 0.009\n");
    own->costume.days.chance = 1000;
    own->costume.days.days_in_hand = -2;
    expect_words(forecast_json(hand, &own->forecast), "\"days_in_hand\": -2,\n      \"chance\": 1.000,\n");
    own->costume.days.chance = -1;
    expect_words(forecast_json(hand, &own->forecast), "\"chance\": null,\n");
    expect_words(forecast_json(hand, &own->forecast), "\"chance_error\": null\n");
    own->costume.days.finish = BK_NO_DAY;
    expect_words(forecast_json(hand, &own->forecast), "\"finish\": null,\n      \"days_in_hand\": null,\n");
}
END_TEST

START_TEST(each_wait_tells_by_when_it_must_clear)
{
    static const bk_wait waits[] = {
        {.on = BK_WAIT_FITTING, .piece = CLOAK, .step = CLOAK_FIT, .detail = BK_DETAIL_MISSED},
        {.on = BK_WAIT_OUT, .piece = GOWN, .step = BK_NO_INDEX, .detail = BK_DETAIL_NO_DATE},
        {.on = BK_WAIT_HAND, .piece = CLOAK, .step = CLOAK_HEM, .detail = BK_DETAIL_OPEN},
    };
    const bk_wanted wanted[] = {{11, 0, DAY(3, 9)}, {12, 3, DAY(3, 10)}};
    hand_rail *hand = hand_rail_new();
    hand_forecast *own = hand_forecast_new();
    hand_rail_wait(hand, BK_HELD, waits, 3);
    hand->pieces[GOWN].id = 11;
    hand->pieces[CLOAK].id = 12;
    hand->steps[CLOAK_HEM].id = 2;
    hand->steps[CLOAK_FIT].id = 3;
    own->costume.wanted = wanted;
    own->costume.wanted_count = 2;
    const char *json = forecast_json(hand, &own->forecast);
    expect_words(json, "\"detail\": \"missed\",\n          \"wanted_by\": \"2027-03-10\"\n");
    expect_words(json, "\"detail\": \"no date\",\n          \"wanted_by\": \"2027-03-09\"\n");
    expect_words(json, "\"detail\": \"open\",\n          \"wanted_by\": null\n");
}
END_TEST

START_TEST(a_rail_without_costumes_is_whole_too)
{
    hand_rail *hand = hand_rail_new();
    hand->rail.costume_count = 0;
    hand->rail.days_left = -3;
    const char *json = json_of(hand);
    expect_words(
        json,
        "{\n  \"production\": \"The Salt Road\",\n  \"today\": \"2027-03-02\",\n"
        "  \"opens\": \"2027-03-19\",\n  \"days_left\": -3,\n  \"minutes_left\": 0,\n  \"counts\": {\n");
    expect_words(json, "\n  \"costumes\": []\n}\n");
}
END_TEST

BK_TEST_MAIN("rail json", a_wait_on_materials_has_the_material_and_what_the_shelf_lacks,
             a_piece_that_is_out_has_no_step, a_wait_on_others_steps_names_them_in_order,
             a_costume_that_nobody_wears_has_no_performer_and_what_is_not_reckoned_yet_is_null,
             a_forecast_tells_finish_days_in_hand_chance_and_its_error, each_wait_tells_by_when_it_must_clear,
             a_rail_without_costumes_is_whole_too)
