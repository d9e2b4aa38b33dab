#include "bodkin/work/rail_order.h"

#include <stdlib.h>

typedef struct hanger {
    const bk_rail_costume *costume;
    const bk_costume_forecast *forecast;
} hanger;

static int order_hangers(const void *left_hanger, const void *right_hanger)
{
    const hanger *left = left_hanger;
    const hanger *right = right_hanger;
    int order = bk_forecast_order(left->forecast, right->forecast);
    return order ? order : (left->costume > right->costume) - (left->costume < right->costume);
}

const bk_rail_costume *const *bk_rail_most_urgent(const bk_rail *rail, const bk_forecast *forecast,
                                                  bk_arena *arena)
{
    size_t count = rail->costume_count;
    hanger *hangers = bk_arena_clear(arena, count, sizeof *hangers);
    const bk_rail_costume **costumes = bk_arena_clear(arena, count, sizeof(const bk_rail_costume *));
    for (size_t i = 0; i < count; i++)
        hangers[i] =
            (hanger){&rail->costumes[i], bk_forecast_costume(forecast, rail->costumes[i].record->id)};
    if (count)
        qsort(hangers, count, sizeof *hangers, order_hangers);
    for (size_t i = 0; i < count; i++)
        costumes[i] = hangers[i].costume;
    return costumes;
}
