#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/plan/network.h"
#include "bodkin/work/forecast_parts.h"

/// The open steps of a prospect: which they are, for which costume, who is fitted, and the order among them.

// ------------------------------------------------------------------------------------------------------- which

/// Whether a piece is still to be made: it was not worn with dropped costumes alone.
static bool piece_kept(const bk_prospect_production *production, const bk_wait_piece *piece)
{
    for (size_t i = 0; i < piece->costumes.count; i++) {
        if (!production->dropped[piece->costumes.items[i]]) {
            return true;
        }
    }
    return piece->costumes.count == 0;
}

/// The most urgent costume that wears a piece: the first due, then by number in natural order.
static size_t most_urgent(const bk_prospect *prospect, const size_t *costume_at, const bk_wait_piece *piece)
{
    size_t best = BK_NO_INDEX;
    const char *best_number = NULL;
    for (size_t i = 0; i < piece->costumes.count; i++) {
        size_t at = costume_at[piece->costumes.items[i]];
        if (at == BK_NO_INDEX) {
            continue;
        }
        const bk_prospect_costume *costume = &prospect->costumes[at];
        const char *number =
            prospect->productions[costume->production].rail->costume_records[costume->index].number;
        if (best == BK_NO_INDEX || costume->due < prospect->costumes[best].due ||
            (costume->due == prospect->costumes[best].due && bk_natural_order(number, best_number) < 0)) {
            best = at;
            best_number = number;
        }
    }
    return best;
}

static size_t room_performer(const bk_workroom *room, int64_t id)
{
    for (size_t i = 0; id && i < room->performer_count; i++) {
        if (room->performers[i].id == id) {
            return i;
        }
    }
    return BK_NO_INDEX;
}

/// Who is fitted: whom the newest fitting names, else who plays the role of the piece's first costume.
static size_t fitted_performer(const bk_prospect *prospect, const bk_rail *rail, const bk_prospect_step *step)
{
    const bk_fitting *newest = rail->fittings[step->index];
    size_t named = newest ? room_performer(prospect->room, newest->performer_id) : BK_NO_INDEX;
    if (named != BK_NO_INDEX || step->piece->costumes.count == 0) {
        return named;
    }
    size_t player = rail->rows.costumes[step->piece->costumes.items[0]].performer;
    return player == BK_NO_INDEX ? BK_NO_INDEX : room_performer(prospect->room, rail->performers[player].id);
}

static void add_step(bk_prospect *prospect, size_t production, size_t index, const size_t *costume_at)
{
    const bk_rail *rail = prospect->productions[production].rail;
    const bk_wait_step *wait = &rail->rows.steps[index];
    const bk_step *record = &rail->steps[index];
    bk_prospect_step *step = &prospect->steps[prospect->step_count++];
    *step = (bk_prospect_step){
        .production = production,
        .index = index,
        .wait = wait,
        .record = record,
        .piece = &rail->rows.pieces[wait->piece],
        .hands = record->hands == BK_NOT_KNOWN || record->hands < 1 ? 1 : record->hands,
        .rest = record->rest_minutes == BK_NOT_KNOWN || record->rest_minutes < 0 ? 0 : record->rest_minutes,
        .performer = BK_NO_INDEX,
        .due = BK_NO_DAY,
    };
    step->costume = most_urgent(prospect, costume_at, step->piece);
    if (step->costume != BK_NO_INDEX) {
        step->due = prospect->costumes[step->costume].due;
    }
    if (wait->kind != BK_FIT) {
        return;
    }
    const bk_fitting *newest = rail->fittings[index];
    if (newest && newest->outcome == BK_NO_WORD && newest->booked_at.day >= prospect->today) {
        step->booked = newest;
    }
    step->performer = fitted_performer(prospect, rail, step);
}

static void add_steps(bk_prospect *prospect, size_t at)
{
    bk_prospect_production *production = &prospect->productions[at];
    const bk_wait_rows *rows = &production->rail->rows;
    production->at = bk_arena_clear(prospect->scratch, rows->step_count, sizeof *production->at);
    size_t *costume_at = bk_arena_clear(prospect->scratch, rows->costume_count, sizeof *costume_at);
    for (size_t i = 0; i < rows->costume_count; i++) {
        costume_at[i] = BK_NO_INDEX;
    }
    for (size_t i = 0; i < production->costume_count; i++) {
        size_t costume = production->first_costume + i;
        costume_at[prospect->costumes[costume].index] = costume;
    }
    for (size_t i = 0; i < rows->step_count; i++) {
        production->at[i] = BK_NO_INDEX;
        if (!rows->steps[i].done && piece_kept(production, &rows->pieces[rows->steps[i].piece])) {
            production->at[i] = prospect->step_count;
            add_step(prospect, at, i, costume_at);
        }
    }
}

// ------------------------------------------------------------------------------------------------------- links

typedef BK_LIST(bk_network_link) link_list;

static void add_links(const bk_prospect *prospect, link_list *links)
{
    for (size_t i = 0; i < prospect->step_count; i++) {
        const bk_prospect_step *step = &prospect->steps[i];
        const size_t *at = prospect->productions[step->production].at;
        for (size_t a = 0; a < step->wait->after.count; a++) {
            size_t from = at[step->wait->after.items[a]];
            if (from != BK_NO_INDEX) {
                bk_list_add(links, ((bk_network_link){from, i}));
            }
        }
    }
}

static void drop_link(link_list *links, size_t from, size_t to)
{
    size_t left = 0;
    for (size_t i = 0; i < links->count; i++) {
        if (links->items[i].from != from || links->items[i].to != to) {
            links->items[left++] = links->items[i];
        }
    }
    links->count = left;
}

/// No sheet and no form lets a circle in. In a store that was written by other hands there may be one: it is cut open, so that the
/// rest can be planned.
static void cut_circles(const bk_prospect *prospect, link_list *links)
{
    size_t *circle;
    size_t length;
    while (bk_network_circle(prospect->step_count, links->items, links->count, prospect->scratch, &circle,
                             &length)) {
        drop_link(links, circle[length - 1], circle[0]);
    }
}

/// Hangs the links on the steps, both ways, in the order they are in.
static void hang_links(bk_prospect *prospect, const link_list *links)
{
    uint32_t *room = bk_arena_clear(prospect->scratch, 2 * links->count, sizeof *room);
    bk_prospect_step *steps = prospect->steps;
    for (size_t i = 0; i < links->count; i++) {
        steps[links->items[i].to].before_count++;
        steps[links->items[i].from].after_count++;
    }
    uint32_t **before = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *before);
    uint32_t **after = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *after);
    for (size_t i = 0; i < prospect->step_count; i++) {
        steps[i].before = before[i] = room;
        room += steps[i].before_count;
        steps[i].after = after[i] = room;
        room += steps[i].after_count;
    }
    for (size_t i = 0; i < links->count; i++) {
        *before[links->items[i].to]++ = (uint32_t)links->items[i].from;
        *after[links->items[i].from]++ = (uint32_t)links->items[i].to;
    }
}

/// An order in which each stands after those it comes after.
static void fill_order(bk_prospect *prospect)
{
    uint32_t *order = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *order);
    size_t *waits_for = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *waits_for);
    size_t known = 0;
    for (size_t i = 0; i < prospect->step_count; i++) {
        waits_for[i] = prospect->steps[i].before_count;
        if (!waits_for[i]) {
            order[known++] = (uint32_t)i;
        }
    }
    for (size_t next = 0; next < known; next++) {
        const bk_prospect_step *step = &prospect->steps[order[next]];
        for (size_t i = 0; i < step->after_count; i++) {
            if (--waits_for[step->after[i]] == 0) {
                order[known++] = step->after[i];
            }
        }
    }
    prospect->order = order;
}

/// What can wait gives way, unless something that does not comes after it.
static void fill_yields(bk_prospect *prospect)
{
    for (size_t i = prospect->step_count; i-- > 0;) {
        bk_prospect_step *step = &prospect->steps[prospect->order[i]];
        step->yields = step->wait->can_wait;
        for (size_t a = 0; a < step->after_count; a++) {
            step->yields = step->yields && prospect->steps[step->after[a]].yields;
        }
    }
}

// ---------------------------------------------------------------------------------------------- of each costume

static void fill_costume(bk_prospect *prospect, bk_prospect_costume *costume)
{
    const bk_prospect_production *production = &prospect->productions[costume->production];
    const bk_wait_rows *rows = &production->rail->rows;
    const bk_indices *pieces = &rows->costumes[costume->index].pieces;
    size_t steps = 0;
    bool out = false;
    for (size_t p = 0; p < pieces->count; p++) {
        out = out || rows->pieces[pieces->items[p]].out;
        steps += rows->pieces[pieces->items[p]].steps.count;
    }
    size_t *open = bk_arena_clear(prospect->scratch, 2 * steps, sizeof *open);
    size_t *firm = open + steps;
    for (size_t p = 0; p < pieces->count; p++) {
        const bk_indices *of_piece = &rows->pieces[pieces->items[p]].steps;
        for (size_t s = 0; s < of_piece->count; s++) {
            size_t at = production->at[of_piece->items[s]];
            if (at != BK_NO_INDEX) {
                open[costume->open_count++] = at;
                if (!prospect->steps[at].wait->can_wait) {
                    firm[costume->firm_count++] = at;
                }
            }
        }
    }
    costume->open = open;
    costume->can_wait = costume->open_count > 0 && costume->firm_count == 0;
    costume->can_go = costume->can_wait && !out;
    costume->firm = costume->firm_count ? firm : open;
    costume->firm_count = costume->firm_count ? costume->firm_count : costume->open_count;
}

// ------------------------------------------------------------------------------------------------------ public

void bk_prospect_steps(bk_prospect *prospect)
{
    size_t most = 0;
    for (size_t i = 0; i < prospect->production_count; i++) {
        most += prospect->productions[i].rail->rows.step_count;
    }
    prospect->steps = bk_arena_clear(prospect->scratch, most, sizeof *prospect->steps);
    for (size_t i = 0; i < prospect->production_count; i++) {
        add_steps(prospect, i);
    }
    link_list links = {0};
    add_links(prospect, &links);
    cut_circles(prospect, &links);
    hang_links(prospect, &links);
    bk_list_free(&links);
    fill_order(prospect);
    fill_yields(prospect);
    for (size_t i = 0; i < prospect->costume_count; i++) {
        fill_costume(prospect, &prospect->costumes[i]);
    }
}
