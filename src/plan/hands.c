#include "bodkin/plan/hands.h"

#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/arena.h"

enum { WEEKDAYS = 7 };

static int absence_order(const void *left, const void *right)
{
    const bk_day *one = left, *other = right;
    return (one[0] > other[0]) - (one[0] < other[0]);
}

static bool has_any_hours(const bk_wait_person *person)
{
    for (int i = 0; i < WEEKDAYS; i++)
        if (person->works_on[i])
            return true;
    return false;
}

// The first day from `day` on that lies in no absence and on a weekday with hours; `away` is in order of first days.
static bk_day first_day_there(const bk_wait_person *person, const bk_day (*away)[2], bk_day day)
{
    size_t i = 0;
    for (;; day++) {
        for (; i < person->away_count && away[i][0] <= day; i++)
            if (away[i][1] >= day)
                day = away[i][1] + 1;
        if (person->works_on[bk_weekday(day)])
            return day;
    }
}

// The first day from today on which the person has hours, or BK_NEVER.
static bk_day first_hours(const bk_wait_person *person, bk_day today)
{
    if (!has_any_hours(person))
        return BK_NEVER;
    bk_day(*away)[2] = bk_alloc_clear(person->away_count, sizeof *away);
    if (person->away_count > 0) {
        memcpy(away, person->away, person->away_count * sizeof *away);
        qsort(away, person->away_count, sizeof *away, absence_order);
    }
    bk_day begin = person->from != BK_NO_DAY && person->from > today ? person->from : today;
    bk_day day = first_day_there(person, (const bk_day(*)[2])away, begin);
    free(away);
    return person->until != BK_NO_DAY && day > person->until ? BK_NEVER : day;
}

void bk_hands_first(const bk_wait_person *people, size_t count, bk_day today, bk_day first[BK_KINDS])
{
    for (int kind = 0; kind < BK_KINDS; kind++)
        first[kind] = BK_NEVER;
    for (size_t i = 0; i < count; i++) {
        bk_day day = first_hours(&people[i], today);
        for (int kind = 0; kind < BK_KINDS; kind++)
            if ((people[i].skills & 1U << kind) != 0 && day < first[kind])
                first[kind] = day;
    }
}
