#include "bodkin/ui/materials_screen.h"

#include "bodkin/base/text.h"

// How a material stands, in words and in urgency.

const bk_order *bk_material_under_way(const bk_material_line *material)
{
    const bk_order *first = material->order_count > 0 ? &material->orders[0] : NULL;
    return first && first->arrived_on == BK_NO_DAY ? first : NULL;
}

// Whether what lies on the shelf is less than what open steps need.
static bool shelf_lacks(const bk_material_line *material)
{
    for (size_t i = 0; i < material->need_count; i++)
        if (material->needs[i].on_order > 0 || material->needs[i].unmet > 0)
            return true;
    return false;
}

static const char *promised_words(const bk_material_line *material, bk_day today, bk_arena *arena)
{
    char day[BK_DAY_WORDS_ROOM];
    if (material->promised_due == BK_NO_DAY)
        return "on order, no date";
    const char *words = bk_day_words(material->promised_due, today, day);
    return bk_arena_print(arena, material->promised_due < today ? "late, was due %s" : "on order, due %s",
                          words);
}

const char *bk_material_standing(const bk_material_line *material, bk_day today, bk_arena *arena)
{
    if (material->short_of > 0)
        return bk_arena_print(arena, "short of %s",
                              bk_material_words(material->short_of, material->record.unit, arena));
    if (shelf_lacks(material))
        return promised_words(material, today, arena);
    if (material->needed > 0)
        return "enough";
    return material->record.on_hand == BK_NO_AMOUNT ? "not counted" : "";
}

int bk_material_style(const bk_material_line *material, bk_day today)
{
    if (material->short_of > 0)
        return BK_STYLE_LATE;
    if (!shelf_lacks(material))
        return material->here ? BK_STYLE_PLAIN : BK_STYLE_DIM;
    bool late = material->promised_due != BK_NO_DAY && material->promised_due < today;
    return late ? BK_STYLE_LATE : BK_STYLE_TIGHT;
}

const char *bk_costs_words(const bk_money_sum *costs, size_t count, bk_arena *arena)
{
    const char *all = NULL;
    for (size_t i = 0; i < count; i++) {
        char amount[BK_AMOUNT_ROOM];
        bk_money_write(costs[i].amount, costs[i].currency ? costs[i].currency : "", NULL, amount);
        all = all ? bk_arena_print(arena, "%s and %s", all, amount) : bk_arena_text(arena, amount);
    }
    return all;
}
