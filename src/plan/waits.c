#include "bodkin/plan/waits.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/plan/hands.h"

static const char *const waits_on[] = {
    [BK_WAIT_MEASURES] = "measures", [BK_WAIT_MATERIALS] = "materials", [BK_WAIT_FITTING] = "fitting",
    [BK_WAIT_HAND] = "hand",         [BK_WAIT_PEOPLE] = "people",       [BK_WAIT_OUT] = "out",
    [BK_WAIT_ORDER] = "order",
};
const bk_words bk_wait_words = {"kind of wait", waits_on, BK_WAITS_ON};

static const char *const states[] = {
    [BK_READY] = "ready",     [BK_IN_WORK] = "in-work", [BK_FINISHING] = "finishing",
    [BK_WAITING] = "waiting", [BK_HELD] = "held",       [BK_UNLISTED] = "unlisted",
};
const bk_words bk_state_words = {"state of a costume", states, BK_STATES};

// How each detail is written, and whether somebody must act for it to clear.
static const struct {
    const char *text;
    bool with_day;
    bool acts;
} details[BK_DETAILS] = {
    [BK_DETAIL_UNCAST] = {"uncast", false, true},
    [BK_DETAIL_NONE] = {"none", false, true},
    [BK_DETAIL_PART] = {"part", false, true},
    [BK_DETAIL_OLD] = {"old", false, true},
    [BK_DETAIL_NOT_ORDERED] = {"not ordered", false, true},
    [BK_DETAIL_DUE] = {"due", true, false},
    [BK_DETAIL_LATE] = {"late", false, true},
    [BK_DETAIL_NO_DATE] = {"no date", false, true},
    [BK_DETAIL_UNBOOKED] = {"unbooked", false, true},
    [BK_DETAIL_MISSED] = {"missed", false, true},
    [BK_DETAIL_BOOKED] = {"booked", true, false},
    [BK_DETAIL_OPEN] = {"open", false, false},
    [BK_DETAIL_NOBODY] = {"nobody", false, true},
    [BK_DETAIL_BACK] = {"back", true, false},
    [BK_DETAIL_OVERDUE] = {"overdue", false, true},
    [BK_DETAIL_STEPS] = {NULL, false, false},
};

// Stands for "no wait" where a detail is asked for.
#define NO_WAIT BK_DETAILS

static const bk_wait_detail supply_details[] = {
    [BK_SUPPLY_SHELF] = NO_WAIT,
    [BK_SUPPLY_NOT_ORDERED] = BK_DETAIL_NOT_ORDERED,
    [BK_SUPPLY_DUE] = BK_DETAIL_DUE,
    [BK_SUPPLY_LATE] = BK_DETAIL_LATE,
    [BK_SUPPLY_NO_DATE] = BK_DETAIL_NO_DATE,
};

typedef BK_LIST(bk_wait) wait_list;

// What is the same for a piece in every costume that it is worn with.
typedef struct piece_facts {
    bk_day due;
    bk_wait_detail sheets; // what its performers' measure sheets lack, for a step that lists no measures
    bk_wait_detail out;
    size_t done; // steps
    int64_t minutes, minutes_left;
    bool can_go_on;
} piece_facts;

// What is the same for a step in every costume.
typedef struct step_facts {
    bool open, next;
    size_t first_wait, wait_count; // of a next step, in `step_waits`, without its piece being out
    bk_indices open_after; // of an open step that is not next: those that it comes after and that are open
} step_facts;

typedef struct waits_reckoning {
    const bk_wait_rows *rows;
    bk_arena *arena;
    bk_day hands_from[BK_KINDS]; // the first day from today on which anybody with this skill has hours
    piece_facts *pieces;
    step_facts *steps;
    wait_list step_waits;
    wait_list told;    // of the costume that is being reckoned
    size_t *worn_with; // for each piece, the last costume reckoned that it belongs to
} waits_reckoning;

// What has been seen of a costume's pieces and steps while its waits were told.
typedef struct costume_sight {
    bool out, without_steps;
    bool any_open, any_next;
    bool some_free;    // a next step waits on nothing
    bool only_by_hand; // every next step waits on hand sewing alone
    bool must_act;
} costume_sight;

bk_day bk_piece_due(const bk_wait_rows *rows, size_t piece)
{
    const bk_indices *costumes = &rows->pieces[piece].costumes;
    bk_day due = BK_NO_DAY;
    for (size_t i = 0; i < costumes->count; i++) {
        bk_day day = rows->costumes[costumes->items[i]].due;
        if (day != BK_NO_DAY && (due == BK_NO_DAY || day < due))
            due = day;
    }
    return due;
}

bool bk_step_next(const bk_wait_rows *rows, size_t step)
{
    const bk_indices *after = &rows->steps[step].after;
    if (rows->steps[step].done)
        return false;
    for (size_t i = 0; i < after->count; i++)
        if (!rows->steps[after->items[i]].done)
            return false;
    return true;
}

// ----------------------------------------------------------------------------------------------------------- measures

static bool too_old(const bk_wait_rows *rows, size_t performer, bk_day taken)
{
    return (int64_t)rows->today - taken > rows->performers[performer].measures_good_for;
}

// Uncast before none before old, over all who wear the piece.
static bk_wait_detail sheets_detail(const bk_wait_rows *rows, const bk_wait_piece *piece)
{
    bk_wait_detail worst = NO_WAIT;
    for (size_t i = 0; i < piece->costumes.count; i++) {
        size_t performer = rows->costumes[piece->costumes.items[i]].performer;
        bk_wait_detail detail = NO_WAIT;
        if (performer == BK_NO_INDEX)
            return BK_DETAIL_UNCAST;
        if (rows->performers[performer].newest_sheet == BK_NO_DAY)
            detail = BK_DETAIL_NONE;
        else if (too_old(rows, performer, rows->performers[performer].newest_sheet))
            detail = BK_DETAIL_OLD;
        if (detail < worst)
            worst = detail;
    }
    return worst;
}

// Part before old, over the measures that the step lists.
static bk_wait_detail takings_detail(const bk_wait_rows *rows, const bk_wait_step *step)
{
    bk_wait_detail worst = NO_WAIT;
    for (size_t i = 0; i < step->taking_count; i++) {
        const bk_wait_taking *taking = &step->takings[i];
        if (taking->newest == BK_NO_DAY)
            return BK_DETAIL_PART;
        if (too_old(rows, taking->performer, taking->newest))
            worst = BK_DETAIL_OLD;
    }
    return worst;
}

static bool cut_to_the_body(const bk_wait_step *step, const bk_wait_piece *piece)
{
    return (step->kind == BK_DRAFT || step->kind == BK_CUT) &&
           (piece->origin == BK_MAKE || piece->origin == BK_ALTER);
}

static bk_wait_detail measures_detail(const waits_reckoning *reckoning, const bk_wait_step *step)
{
    const bk_wait_piece *piece = &reckoning->rows->pieces[step->piece];
    if (piece->fitting_held || !(step->lists_measures || cut_to_the_body(step, piece)))
        return NO_WAIT;
    bk_wait_detail sheets = reckoning->pieces[step->piece].sheets;
    if (!step->lists_measures || sheets == BK_DETAIL_UNCAST || sheets == BK_DETAIL_NONE)
        return sheets;
    return takings_detail(reckoning->rows, step);
}

// -------------------------------------------------------------------------------------- the other waits of a next step

static bk_wait_detail fitting_detail(const bk_wait_rows *rows, const bk_wait_step *step)
{
    if (step->kind != BK_FIT)
        return NO_WAIT;
    if (!step->fitted || step->fitting_outcome == BK_AGAIN)
        return BK_DETAIL_UNBOOKED;
    bool past = step->fitting_outcome == BK_NO_WORD && step->fitting_day < rows->today;
    return past || step->fitting_outcome == BK_MISSED ? BK_DETAIL_MISSED : BK_DETAIL_BOOKED;
}

static bk_wait_detail people_detail(const waits_reckoning *reckoning, const bk_wait_step *step)
{
    if (reckoning->rows->person_count == 0)
        return NO_WAIT;
    bk_day due = reckoning->pieces[step->piece].due;
    bk_day from = reckoning->hands_from[step->kind];
    return from != BK_NEVER && (due == BK_NO_DAY || from <= due) ? NO_WAIT : BK_DETAIL_NOBODY;
}

static bk_wait_detail out_detail(const bk_wait_rows *rows, const bk_wait_piece *piece)
{
    if (!piece->out)
        return NO_WAIT;
    if (piece->back_by == BK_NO_DAY)
        return BK_DETAIL_NO_DATE;
    return piece->back_by < rows->today ? BK_DETAIL_OVERDUE : BK_DETAIL_BACK;
}

static void add_wait(wait_list *waits, bk_wait wait)
{
    if (wait.detail == NO_WAIT)
        return;
    wait.acts = details[wait.detail].acts;
    bk_list_add(waits, wait);
}

static void add_materials(waits_reckoning *reckoning, bk_wait wait)
{
    const bk_wait_step *step = &reckoning->rows->steps[wait.step];
    for (size_t i = 0; i < step->claim_count; i++) {
        if (step->claims[i].supply == BK_SUPPLY_SHELF)
            continue;
        bk_claim *claim = bk_arena_take(reckoning->arena, sizeof *claim);
        *claim = step->claims[i];
        wait.on = BK_WAIT_MATERIALS;
        wait.detail = supply_details[claim->supply];
        wait.day = claim->supply_day;
        wait.claim = claim;
        add_wait(&reckoning->step_waits, wait);
    }
}

static void add_step_waits(waits_reckoning *reckoning, size_t index)
{
    const bk_wait_rows *rows = reckoning->rows;
    const bk_wait_step *step = &rows->steps[index];
    bk_wait wait = {.piece = step->piece, .step = index, .day = BK_NO_DAY};
    wait.on = BK_WAIT_MEASURES;
    wait.detail = measures_detail(reckoning, step);
    add_wait(&reckoning->step_waits, wait);
    add_materials(reckoning, wait);
    wait.on = BK_WAIT_FITTING;
    wait.detail = fitting_detail(rows, step);
    wait.day = step->fitted ? step->fitting_day : BK_NO_DAY;
    add_wait(&reckoning->step_waits, wait);
    wait.day = BK_NO_DAY;
    wait.on = BK_WAIT_HAND;
    wait.detail = step->kind == BK_HAND ? BK_DETAIL_OPEN : NO_WAIT;
    add_wait(&reckoning->step_waits, wait);
    wait.on = BK_WAIT_PEOPLE;
    wait.detail = people_detail(reckoning, step);
    add_wait(&reckoning->step_waits, wait);
}

// ------------------------------------------------------------------------------------------ what no costume changes

static bk_indices open_after(const bk_wait_rows *rows, const bk_wait_step *step, bk_arena *arena)
{
    size_t *items = bk_arena_take(arena, step->after.count * sizeof *items);
    size_t count = 0;
    for (size_t i = 0; i < step->after.count; i++)
        if (!rows->steps[step->after.items[i]].done)
            items[count++] = step->after.items[i];
    return (bk_indices){items, count};
}

static void find_piece_facts(const bk_wait_rows *rows, size_t index, piece_facts *facts)
{
    const bk_wait_piece *piece = &rows->pieces[index];
    facts->due = bk_piece_due(rows, index);
    facts->sheets = sheets_detail(rows, piece);
    facts->out = out_detail(rows, piece);
    facts->can_go_on = piece->steps.count > 0 && !piece->out;
    for (size_t i = 0; i < piece->steps.count; i++) {
        const bk_wait_step *step = &rows->steps[piece->steps.items[i]];
        facts->minutes += step->minutes;
        facts->minutes_left += step->done ? 0 : step->minutes;
        facts->done += step->done;
        facts->can_go_on = facts->can_go_on && (step->done || step->can_wait);
    }
}

static void find_step_facts(waits_reckoning *reckoning, size_t index)
{
    const bk_wait_rows *rows = reckoning->rows;
    step_facts *facts = &reckoning->steps[index];
    facts->open = !rows->steps[index].done;
    facts->next = bk_step_next(rows, index);
    if (facts->open && !facts->next)
        facts->open_after = open_after(rows, &rows->steps[index], reckoning->arena);
    if (!facts->next)
        return;
    facts->first_wait = reckoning->step_waits.count;
    add_step_waits(reckoning, index);
    facts->wait_count = reckoning->step_waits.count - facts->first_wait;
}

static void find_facts(waits_reckoning *reckoning)
{
    const bk_wait_rows *rows = reckoning->rows;
    for (size_t piece = 0; piece < rows->piece_count; piece++) {
        const bk_indices *steps = &rows->pieces[piece].steps;
        find_piece_facts(rows, piece, &reckoning->pieces[piece]);
        for (size_t i = 0; i < steps->count; i++)
            find_step_facts(reckoning, steps->items[i]);
        reckoning->worn_with[piece] = BK_NO_INDEX;
    }
}

// -------------------------------------------------------------------------------------------------------- one costume

static void tell_out(waits_reckoning *reckoning, size_t piece, costume_sight *sight)
{
    bk_wait wait = {.on = BK_WAIT_OUT,
                    .piece = piece,
                    .step = BK_NO_INDEX,
                    .detail = reckoning->pieces[piece].out,
                    .day = reckoning->rows->pieces[piece].back_by};
    add_wait(&reckoning->told, wait);
    sight->out = sight->out || wait.detail != NO_WAIT;
}

static void tell_next(waits_reckoning *reckoning, const step_facts *facts, bool out, costume_sight *sight)
{
    const bk_wait *waits = reckoning->step_waits.items;
    for (size_t i = 0; i < facts->wait_count; i++)
        bk_list_add(&reckoning->told, waits[facts->first_wait + i]);
    bool by_hand = facts->wait_count == 1 && waits[facts->first_wait].on == BK_WAIT_HAND && !out;
    sight->any_next = true;
    sight->some_free = sight->some_free || (facts->wait_count == 0 && !out);
    sight->only_by_hand = sight->only_by_hand && by_hand;
}

static void tell_order(waits_reckoning *reckoning, size_t costume, size_t piece, size_t step)
{
    const bk_wait_rows *rows = reckoning->rows;
    const bk_indices *before = &reckoning->steps[step].open_after;
    for (size_t i = 0; i < before->count; i++)
        if (reckoning->worn_with[rows->steps[before->items[i]].piece] == costume)
            return;
    bk_wait wait = {.on = BK_WAIT_ORDER,
                    .piece = piece,
                    .step = step,
                    .detail = BK_DETAIL_STEPS,
                    .day = BK_NO_DAY,
                    .steps = *before};
    add_wait(&reckoning->told, wait);
}

static void tell_piece(waits_reckoning *reckoning, size_t costume, size_t piece, costume_sight *sight)
{
    const bk_indices *steps = &reckoning->rows->pieces[piece].steps;
    bool out = reckoning->pieces[piece].out != NO_WAIT;
    tell_out(reckoning, piece, sight);
    sight->without_steps = sight->without_steps || steps->count == 0;
    for (size_t i = 0; i < steps->count; i++) {
        const step_facts *facts = &reckoning->steps[steps->items[i]];
        sight->any_open = sight->any_open || facts->open;
        if (facts->next)
            tell_next(reckoning, facts, out, sight);
        else if (facts->open)
            tell_order(reckoning, costume, piece, steps->items[i]);
    }
}

static bk_state state_of(const bk_wait_costume *costume, const costume_sight *sight)
{
    if (costume->pieces.count == 0 || (!sight->any_open && sight->without_steps))
        return BK_UNLISTED;
    if (!sight->any_open && !sight->out)
        return BK_READY;
    if (sight->some_free)
        return BK_IN_WORK;
    if (sight->any_next && sight->only_by_hand)
        return BK_FINISHING;
    return sight->must_act ? BK_HELD : BK_WAITING;
}

static void add_up_pieces(const waits_reckoning *reckoning, const bk_wait_costume *costume,
                          bk_costume_waits *result)
{
    result->can_go_on = costume->pieces.count > 0;
    for (size_t i = 0; i < costume->pieces.count; i++) {
        size_t piece = costume->pieces.items[i];
        const piece_facts *facts = &reckoning->pieces[piece];
        result->steps += (int64_t)reckoning->rows->pieces[piece].steps.count;
        result->steps_done += (int64_t)facts->done;
        result->minutes += facts->minutes;
        result->minutes_left += facts->minutes_left;
        result->can_go_on = result->can_go_on && facts->can_go_on;
    }
}

static void reckon_costume(waits_reckoning *reckoning, size_t index, bk_costume_waits *result)
{
    const bk_wait_costume *costume = &reckoning->rows->costumes[index];
    costume_sight sight = {.only_by_hand = true};
    reckoning->told.count = 0;
    for (size_t i = 0; i < costume->pieces.count; i++)
        reckoning->worn_with[costume->pieces.items[i]] = index;
    for (size_t i = 0; i < costume->pieces.count; i++)
        tell_piece(reckoning, index, costume->pieces.items[i], &sight);
    for (size_t i = 0; i < reckoning->told.count; i++)
        sight.must_act = sight.must_act || reckoning->told.items[i].acts;
    add_up_pieces(reckoning, costume, result);
    result->state = state_of(costume, &sight);
    result->wait_count = reckoning->told.count;
    bk_wait *waits = bk_arena_clear(reckoning->arena, result->wait_count, sizeof *waits);
    if (result->wait_count > 0)
        memcpy(waits, reckoning->told.items, result->wait_count * sizeof *waits);
    result->waits = waits;
}

bk_costume_waits *bk_waits_reckon(const bk_wait_rows *rows, bk_arena *arena)
{
    waits_reckoning reckoning = {.rows = rows, .arena = arena};
    reckoning.pieces = bk_alloc_clear(rows->piece_count, sizeof *reckoning.pieces);
    reckoning.steps = bk_alloc_clear(rows->step_count, sizeof *reckoning.steps);
    reckoning.worn_with = bk_alloc_clear(rows->piece_count, sizeof *reckoning.worn_with);
    bk_hands_first(rows->people, rows->person_count, rows->today, reckoning.hands_from);
    find_facts(&reckoning);
    bk_costume_waits *results = bk_arena_clear(arena, rows->costume_count, sizeof *results);
    for (size_t i = 0; i < rows->costume_count; i++)
        reckon_costume(&reckoning, i, &results[i]);
    bk_list_free(&reckoning.step_waits);
    bk_list_free(&reckoning.told);
    free(reckoning.worn_with);
    free(reckoning.steps);
    free(reckoning.pieces);
    return results;
}

// ------------------------------------------------------------------------------------------------------------ in words

static const char *steps_text(const bk_wait_rows *rows, const bk_indices *steps, bk_arena *arena)
{
    bk_buffer text = {0};
    for (size_t i = 0; i < steps->count; i++) {
        const bk_wait_step *step = &rows->steps[steps->items[i]];
        bk_buffer_print(&text, "%s%s/%s", i > 0 ? ";" : "", rows->pieces[step->piece].name, step->key);
    }
    char *kept = bk_arena_bytes(arena, text.bytes, text.length);
    bk_buffer_free(&text);
    return kept;
}

const char *bk_wait_detail_text(const bk_wait_rows *rows, const bk_wait *wait, bk_arena *arena)
{
    if (wait->detail == BK_DETAIL_STEPS)
        return steps_text(rows, &wait->steps, arena);
    if (!details[wait->detail].with_day)
        return details[wait->detail].text;
    char day[BK_DAY_ROOM];
    return bk_arena_print(arena, "%s %s", details[wait->detail].text, bk_day_write(wait->day, day));
}
