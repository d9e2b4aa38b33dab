#include "sheet/hand_rail.h"

static void put_steps(hand_rail *hand)
{
    hand->steps[GOWN_CUT] = (bk_step){.key = "cut"};
    hand->steps[CLOAK_HEM] = (bk_step){.key = "hem"};
    hand->steps[CLOAK_FIT] = (bk_step){.key = "fit"};
    hand->wait_steps[GOWN_CUT] = (bk_wait_step){.key = "cut", .piece = GOWN, .kind = BK_CUT};
    hand->wait_steps[CLOAK_HEM] = (bk_wait_step){.key = "hem", .piece = CLOAK, .kind = BK_HAND};
    hand->wait_steps[CLOAK_FIT] = (bk_wait_step){.key = "fit", .piece = CLOAK, .kind = BK_FIT};
}

static void put_pieces(hand_rail *hand)
{
    static const size_t costumes[] = {0};
    hand->pieces[GOWN] =
        (bk_piece){.name = "G1", .title = "Gown", .out_with = "the dye house", .back_by = BK_NO_DAY};
    hand->pieces[CLOAK] = (bk_piece){.name = "C1", .title = "Cloak", .back_by = BK_NO_DAY};
    for (size_t i = 0; i < sizeof hand->pieces / sizeof *hand->pieces; i++)
        hand->wait_pieces[i] = (bk_wait_piece){.name = hand->pieces[i].name, .costumes = {costumes, 1}};
}

hand_rail *hand_rail_new(void)
{
    static hand_rail hand;
    hand = (hand_rail){.record = {.number = "1A", .title = "Coronation gown", .due = BK_NO_DAY}};
    put_steps(&hand);
    put_pieces(&hand);
    hand.materials[FLANNEL] = (bk_material){.name = "wool flannel", .unit = BK_METRE};
    hand.materials[HOOKS] = (bk_material){.name = "hooks", .unit = BK_EACH};
    hand.wait_costume = (bk_wait_costume){.number = "1A", .performer = 0, .due = DAY(3, 16)};
    hand.reckoned = (bk_costume_waits){.state = BK_READY, .minutes = 100};
    hand.costume = (bk_rail_costume){.record = &hand.record,
                                     .role = "Salt Queen",
                                     .performer = "Ana Ruíz",
                                     .due = DAY(3, 16),
                                     .reckoned = &hand.reckoned};
    hand.rail = (bk_rail){.production = {.name = "The Salt Road", .opens = DAY(3, 19)},
                          .today = DAY(3, 2),
                          .days_left = 17,
                          .costumes = &hand.costume,
                          .costume_count = 1,
                          .pieces = hand.pieces,
                          .steps = hand.steps,
                          .materials = hand.materials,
                          .rows = {.today = DAY(3, 2),
                                   .costumes = &hand.wait_costume,
                                   .costume_count = 1,
                                   .pieces = hand.wait_pieces,
                                   .piece_count = 2,
                                   .steps = hand.wait_steps,
                                   .step_count = 3}};
    return &hand;
}

void hand_rail_wait(hand_rail *hand, bk_state state, const bk_wait *waits, size_t count)
{
    hand->reckoned.state = state;
    hand->reckoned.waits = waits;
    hand->reckoned.wait_count = count;
    hand->reckoned.minutes_left = 40;
    hand->rail.counts = (bk_rail_counts){.costumes = 1};
    hand->rail.counts.states[state] = 1;
    for (int on = 0; on < BK_WAITS_ON; on++)
        hand->rail.counts.waits[on] = bk_rail_waits_on(&hand->costume, (bk_wait_on)on);
}
