#include "bodkin/work/hands_week.h"

#include <stdlib.h>

static bool is_away(int64_t person, bk_day day, const bk_away *aways, size_t count)
{
    for (size_t i = 0; i < count; i++)
        if (aways[i].person_id == person && aways[i].from <= day && day <= aways[i].to)
            return true;
    return false;
}

static bool is_there(const bk_person *person, bk_day day)
{
    return (person->from == BK_NO_DAY || person->from <= day) &&
           (person->until == BK_NO_DAY || day <= person->until);
}

static int64_t minutes_of(const bk_person *person, bk_day day)
{
    bk_stretch stretches[BK_STRETCHES];
    const char *hours = person->hours[bk_weekday(day)];
    int count = hours ? bk_hours_read(hours, stretches) : 0;
    int64_t minutes = 0;
    for (int i = 0; i < count; i++)
        minutes += stretches[i].to - stretches[i].from;
    return minutes;
}

static bk_hand hand_of(const bk_person *person, bk_day today, const bk_away *aways, size_t count)
{
    bk_hand hand = {.record = *person};
    bk_day monday = today - bk_weekday(today);
    for (bk_day day = monday; day < monday + BK_WEEKDAYS; day++) {
        if (!is_there(person, day) || is_away(person->id, day, aways, count))
            continue;
        int64_t minutes = minutes_of(person, day);
        hand.minutes += minutes;
        hand.minutes_left += day >= today ? minutes : 0;
    }
    return hand;
}

// An absence and whether it is over, to be put in order.
typedef struct sorted_away {
    bk_away away;
    bool over;
} sorted_away;

static int in_order(const void *left, const void *right)
{
    const sorted_away *one = left, *other = right;
    if (one->over != other->over)
        return one->over ? 1 : -1;
    int order = (one->away.from > other->away.from) - (one->away.from < other->away.from);
    if (order == 0)
        order = (one->away.id > other->away.id) - (one->away.id < other->away.id);
    return one->over ? -order : order;
}

static bk_away *sort_aways(const bk_away *aways, size_t count, bk_day today, bk_arena *arena)
{
    sorted_away *sorted = bk_arena_clear(arena, count, sizeof *sorted);
    bk_away *result = bk_arena_clear(arena, count, sizeof *result);
    for (size_t i = 0; i < count; i++)
        sorted[i] = (sorted_away){aways[i], aways[i].to < today};
    qsort(sorted, count, sizeof *sorted, in_order);
    for (size_t i = 0; i < count; i++)
        result[i] = sorted[i].away;
    return result;
}

// All that is read, as one reading.
typedef struct read_hands {
    bk_rows people, aways, equipment;
} read_hands;

static bk_status read_rows(bk_store *store, bk_arena *arena, read_hands *rows, bk_error *error)
{
    bk_status status = bk_store_read_begin(store, error);
    if (status)
        return status;
    status = bk_store_read(store, BK_PEOPLE, 0, arena, &rows->people, error);
    if (!status)
        status = bk_store_read(store, BK_AWAYS, 0, arena, &rows->aways, error);
    if (!status)
        status = bk_store_read(store, BK_EQUIPMENT, 0, arena, &rows->equipment, error);
    bk_store_read_end(store);
    return status;
}

bk_status bk_hands_week_read(bk_store *store, bk_day today, bk_arena *arena, bk_hands_week *week,
                             bk_error *error)
{
    read_hands rows = {0};
    bk_status status = read_rows(store, arena, &rows, error);
    if (status)
        return status;
    bk_rows people = rows.people, aways = rows.aways;
    const bk_person *persons = people.items;
    bk_hand *hands = bk_arena_clear(arena, people.count, sizeof *hands);
    *week = (bk_hands_week){.people = hands,
                            .person_count = people.count,
                            .away_count = aways.count,
                            .equipment = rows.equipment.items,
                            .equipment_count = rows.equipment.count};
    for (size_t i = 0; i < people.count; i++) {
        hands[i] = hand_of(&persons[i], today, aways.items, aways.count);
        week->minutes += hands[i].minutes;
        week->minutes_left += hands[i].minutes_left;
    }
    week->aways = sort_aways(aways.items, aways.count, today, arena);
    return BK_OK;
}
