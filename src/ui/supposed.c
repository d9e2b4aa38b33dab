#include "bodkin/ui/supposed.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/arena.h"
#include "bodkin/base/list.h"
#include "bodkin/base/text.h"

static bool about_costume(const bk_supposition *one)
{
    return one->what == BK_SUPPOSE_DUE || one->what == BK_SUPPOSE_DROP;
}

// Whether both cannot be supposed at once.
static bool contradict(const bk_supposition *one, const bk_supposition *other)
{
    if (about_costume(one))
        return about_costume(other) && one->costume_id == other->costume_id;
    return one->what == BK_SUPPOSE_DATE && other->what == BK_SUPPOSE_DATE &&
           one->production_id == other->production_id && one->date_id == other->date_id;
}

static void forget(bk_supposition *one)
{
    free((void *)one->person);
}

static void remove_at(bk_supposed *supposed, size_t at)
{
    forget(&supposed->items[at]);
    supposed->count--;
    memmove(&supposed->items[at], &supposed->items[at + 1], (supposed->count - at) * sizeof *supposed->items);
}

size_t bk_supposed_put(bk_supposed *supposed, size_t at, const bk_supposition *supposition)
{
    bk_supposition one = *supposition;
    one.person = one.person ? bk_text_copy(one.person) : NULL;
    if (at >= supposed->count) {
        supposed->items =
            bk_list_grow(supposed->items, &supposed->room, supposed->count, sizeof *supposed->items);
        at = supposed->count++;
    } else {
        forget(&supposed->items[at]);
    }
    supposed->items[at] = one;
    supposed->changes++;
    for (size_t i = supposed->count; i-- > 0;)
        if (i != at && contradict(&supposed->items[i], &one)) {
            remove_at(supposed, i);
            at -= i < at ? 1 : 0;
        }
    return at;
}

void bk_supposed_take_off(bk_supposed *supposed, size_t at)
{
    if (at >= supposed->count)
        return;
    remove_at(supposed, at);
    supposed->changes++;
}

void bk_supposed_clear(bk_supposed *supposed)
{
    for (size_t i = 0; i < supposed->count; i++)
        forget(&supposed->items[i]);
    free(supposed->items);
    *supposed = (bk_supposed){.changes = supposed->changes + 1};
}
