#include "bodkin/work/rail.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/work/rail_gather.h"

// -------------------------------------------------------------------------------------- order and counting

static int more_urgent(const void *left, const void *right)
{
    const bk_rail_costume *a = left;
    const bk_rail_costume *b = right;
    if (a->due != b->due) {
        return a->due < b->due ? -1 : 1;
    }
    int order = bk_natural_order(a->record->number, b->record->number);
    return order ? order : (a->index > b->index) - (a->index < b->index);
}

static void fill_costumes(bk_rail *rail, const bk_gathered *gathered, const bk_costume_waits *reckoned)
{
    const bk_costume *costumes = gathered->costumes.items;
    const bk_role *roles = gathered->roles.items;
    const bk_performer *performers = gathered->performers.items;
    size_t count = gathered->costumes.count;
    bk_rail_costume *built = bk_arena_clear(rail->arena, count, sizeof *built);
    for (size_t i = 0; i < count; i++) {
        size_t role = bk_gathered_index(gathered->role_at, costumes[i].role_id);
        size_t performer = gathered->wait_costumes[i].performer;
        built[i] = (bk_rail_costume){
            .index = i,
            .record = &costumes[i],
            .role = role == BK_NO_INDEX ? NULL : roles[role].name,
            .performer = performer == BK_NO_INDEX ? NULL : performers[performer].name,
            .due = gathered->wait_costumes[i].due,
            .reckoned = &reckoned[i],
        };
    }
    if (count) {
        qsort(built, count, sizeof *built, more_urgent);
    }
    rail->costumes = built;
    rail->costume_count = count;
}

bool bk_rail_waits_on(const bk_rail_costume *costume, bk_wait_on on)
{
    for (size_t i = 0; i < costume->reckoned->wait_count; i++) {
        if (costume->reckoned->waits[i].on == on) {
            return true;
        }
    }
    return false;
}

static void count_costumes(bk_rail *rail)
{
    bk_rail_counts *counts = &rail->counts;
    counts->costumes = (int64_t)rail->costume_count;
    for (size_t i = 0; i < rail->costume_count; i++) {
        const bk_rail_costume *costume = &rail->costumes[i];
        counts->states[costume->reckoned->state]++;
        counts->can_go_on += costume->reckoned->can_go_on;
        for (int on = 0; on < BK_WAITS_ON; on++) {
            counts->waits[on] += bk_rail_waits_on(costume, (bk_wait_on)on);
        }
    }
}

static void count_minutes(bk_rail *rail)
{
    for (size_t i = 0; i < rail->rows.step_count; i++) {
        const bk_wait_step *step = &rail->rows.steps[i];
        rail->minutes += step->minutes;
        rail->minutes_left += step->done ? 0 : step->minutes;
    }
}

// --------------------------------------------------------------------------------------------------- public

static bk_status gather(bk_store *store, int64_t production, bk_gathered *gathered, bk_error *error)
{
    bk_status status = bk_gather_rows(store, production, gathered, error);
    if (!status) {
        status = bk_gather_claims(store, gathered, error);
    }
    if (!status) {
        status = bk_gather_takings(store, gathered, error);
    }
    return status;
}

static bk_rail *rail_of(const bk_gathered *gathered)
{
    bk_rail *built = bk_arena_clear(gathered->arena, 1, sizeof *built);
    built->arena = gathered->arena;
    built->production = gathered->production;
    built->today = gathered->today;
    built->days_left = (int64_t)gathered->production.opens - gathered->today;
    built->rows = bk_gathered_rows(gathered);
    built->pieces = gathered->pieces.items;
    built->steps = gathered->steps.items;
    built->materials = gathered->materials.items;
    built->usual_due = gathered->usual_due;
    built->costume_records = gathered->costumes.items;
    built->performers = gathered->performers.items;
    built->fittings = gathered->newest;
    built->fits = gathered->fits;
    built->dates = gathered->dates.items;
    built->date_count = gathered->dates.count;
    built->reckoned = bk_waits_reckon(&built->rows, built->arena);
    fill_costumes(built, gathered, built->reckoned);
    count_costumes(built);
    count_minutes(built);
    return built;
}

bk_status bk_rail_gather(bk_store *store, int64_t production, bk_day today, bk_rail **rail, bk_error *error)
{
    *rail = NULL;
    bk_gathered gathered = {.arena = bk_arena_new(), .today = today};
    bk_status status = gather(store, production, &gathered, error);
    if (status) {
        bk_arena_free(gathered.arena);
    } else {
        *rail = rail_of(&gathered);
    }
    bk_gathered_free(&gathered);
    return status;
}

bk_status bk_rail_read(bk_store *store, int64_t production, bk_day today, bk_rail **rail, bk_error *error)
{
    *rail = NULL;
    bk_status status = bk_store_read_begin(store, error);
    if (status) {
        return status;
    }
    status = bk_rail_gather(store, production, today, rail, error);
    bk_store_read_end(store);
    return status;
}

void bk_rail_free(bk_rail *rail)
{
    if (rail) {
        bk_arena_free(rail->arena);
    }
}

bk_seam bk_rail_seam(const bk_rail_costume *costume)
{
    const bk_costume_waits *reckoned = costume->reckoned;
    bool stopped =
        reckoned->state == BK_HELD || reckoned->state == BK_WAITING || reckoned->state == BK_FINISHING;
    return (bk_seam){reckoned->minutes - reckoned->minutes_left, reckoned->minutes_left, stopped};
}
