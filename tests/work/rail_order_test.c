// The order in which the costumes of a rail are shown.

#include "bodkin/work/rail_order.h"

#include "support/testing.h"

enum { COSTUMES = 4 };

static const char *order_of(const bk_forecast *forecast, bk_arena *arena)
{
    static const bk_costume records[COSTUMES] = {{.id = 1, .number = "1A"},
                                                 {.id = 2, .number = "2A"},
                                                 {.id = 3, .number = "3A"},
                                                 {.id = 4, .number = "4A"}};
    bk_rail_costume costumes[COSTUMES];
    for (size_t i = 0; i < COSTUMES; i++)
        costumes[i] = (bk_rail_costume){.record = &records[i]};
    bk_rail rail = {.costumes = costumes, .costume_count = COSTUMES};
    const bk_rail_costume *const *ordered = bk_rail_most_urgent(&rail, forecast, arena);
    const char *numbers = "";
    for (size_t i = 0; i < COSTUMES; i++)
        numbers = bk_arena_print(arena, "%s %s", numbers, ordered[i]->record->number);
    return numbers;
}

START_TEST(the_most_urgent_come_first_and_what_is_in_no_forecast_last)
{
    const bk_costume_forecast forecasts[] = {
        {.id = 1, .number = "1A", .open = true, .days = {.finish = 9, .days_known = true, .days_in_hand = 4}},
        {.id = 2, .number = "2A", .open = false},
        {.id = 4,
         .number = "4A",
         .open = true,
         .days = {.finish = 9, .days_known = true, .days_in_hand = -1}},
    };
    bk_forecast forecast = {.costumes = forecasts,
                            .costume_count = 3,
                            .costume_at = bk_id_index_of(forecasts, 3, sizeof *forecasts)};
    bk_arena *arena = bk_arena_new();
    ck_assert_str_eq(order_of(&forecast, arena), " 4A 1A 2A 3A");
    bk_id_index_free(forecast.costume_at);
    bk_arena_free(arena);
}
END_TEST

START_TEST(without_a_forecast_they_stay_as_they_hang)
{
    bk_arena *arena = bk_arena_new();
    ck_assert_str_eq(order_of(NULL, arena), " 1A 2A 3A 4A");
    bk_arena_free(arena);
}
END_TEST

BK_TEST_MAIN("rail order", the_most_urgent_come_first_and_what_is_in_no_forecast_last,
             without_a_forecast_they_stay_as_they_hang)
