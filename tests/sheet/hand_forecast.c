#include "sheet/hand_forecast.h"

#include "sheet/hand_rail.h"

static bk_planned_step step_of(int64_t id, const char *piece, const char *key, const char *title, int kind)
{
    return (bk_planned_step){.id = id,
                             .production = "The Salt Road",
                             .piece = piece,
                             .key = key,
                             .title = title,
                             .costume = "1A",
                             .role = "Salt Queen",
                             .kind = kind,
                             .level = 2,
                             .hands = 1,
                             .minutes = 40,
                             .guessed = 40,
                             .next = true,
                             .free_now = true,
                             .due = DAY(3, 16),
                             .begin = {DAY(3, 3), 600},
                             .end = {DAY(3, 3), 640},
                             .latest = {DAY(3, 12), 600}};
}

hand_forecast *hand_forecast_new(void)
{
    static hand_forecast hand;
    bk_id_index_free(hand.forecast.costume_at);
    bk_id_index_free(hand.forecast.production_at);
    bk_outlook_days days = {.finish = DAY(3, 11),
                            .days_known = true,
                            .days_in_hand = 3,
                            .chance = 920,
                            .chance_error = 9,
                            .even = DAY(3, 11),
                            .likely = DAY(3, 15)};
    hand = (hand_forecast){
        .steps = {step_of(1, "G1", "cut", "cut the gown", BK_CUT),
                  step_of(2, "C1", "hem", "hem the cloak", BK_HAND),
                  step_of(3, "C1", "fit", "fit the cloak", BK_FIT)},
        .person = {.id = 1, .name = "Ada Å", .skills = 1U << BK_CUT | 1U << BK_HAND},
        .costume = {.number = "1A", .due = DAY(3, 16), .open = true, .days = days},
        .production = {.name = "The Salt Road", .opens = DAY(3, 19), .days = days},
    };
    hand.forecast =
        (bk_forecast){.today = DAY(3, 2),
                      .steps = hand.steps,
                      .step_count = 3,
                      .people = &hand.person,
                      .person_count = 1,
                      .costumes = &hand.costume,
                      .costume_count = 1,
                      .productions = &hand.production,
                      .production_count = 1,
                      .room_snag = {.kind = BK_SNAGS},
                      .costume_at = bk_id_index_of(&hand.costume, 1, sizeof hand.costume),
                      .production_at = bk_id_index_of(&hand.production, 1, sizeof hand.production)};
    return &hand;
}
