#include "bodkin/work/record_move.h"

#include <string.h>

#include "bodkin/work/record.h"
#include "bodkin/work/record_kinds.h"
#include "bodkin/work/record_names.h"
#include "bodkin/work/record_words.h"

/// A list whose order is changed: its records from first to last, as they stand
/// and as they shall stand.
typedef struct list_order {
    bk_desk *desk;
    bk_family family;
    bk_place *places, *wanted;
    size_t count;
} list_order;

// --------------------------------------------------------------------------------------------
// lists of a store

static bk_status read_company(list_order *order)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(order->desk, BK_COMPANY, &rows);
    const bk_link *links = rows.items;
    order->count = rows.count;
    order->places = bk_arena_clear(order->desk->scratch, rows.count, sizeof *order->places);
    for (size_t i = 0; i < rows.count; i++) {
        order->places[i] = (bk_place){links[i].to_id, links[i].position};
    }
    return status;
}

static bk_status read_places(list_order *order, const void *record)
{
    int64_t key = 0;
    bk_rows rows = {0};
    bk_desk *desk = order->desk;
    const bk_record_kind *kind = &bk_record_kinds[order->family];
    bk_status status = BK_OK;
    if (order->family == BK_PERFORMERS) {
        status = read_company(order);
    } else {
        if (kind->list != BK_NO_OFFSET) {
            memcpy(&key, (const char *)record + kind->list, sizeof key);
        }
        status = bk_store_places(desk->job->store, order->family, key, desk->scratch, &rows, desk->error);
        order->places = rows.items;
        order->count = rows.count;
    }
    order->wanted = bk_arena_clear(desk->scratch, order->count, sizeof *order->wanted);
    if (!status && order->count) {
        memcpy(order->wanted, order->places, order->count * sizeof *order->wanted);
    }
    return status;
}

static bk_status put_place(const list_order *order, int64_t id, int64_t position)
{
    bk_desk *desk = order->desk;
    bk_store *store = desk->job->store;
    if (order->family != BK_PERFORMERS) {
        return bk_store_place(store, order->family, id, position, desk->error);
    }
    bk_link link = {.from_id = desk->production, .to_id = id};
    bk_status status = bk_store_remove_link(store, BK_COMPANY, desk->production, id, desk->error);
    return status ? status : bk_store_add(store, BK_COMPANY, &link, position, NULL, desk->error);
}

/// Gives the places of the list to its records in the order that is wanted.
/// Where a place is given twice (imports may have done so) the later record
/// gets one more, unless its id puts it behind all the same.
static bk_status put_order(const list_order *order)
{
    int64_t last = 0;
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < order->count; i++) {
        const bk_place *place = &order->wanted[i];
        int64_t position = order->places[i].position;
        int64_t least = i ? last + (place->id < order->wanted[i - 1].id) : position;
        position = position < least ? least : position;
        if (position != place->position) {
            status = put_place(order, place->id, position);
        }
        last = position;
    }
    return status;
}

// --------------------------------------------------------------------------------------------------
// moving

static size_t place_of(const list_order *order, int64_t id)
{
    size_t at = 0;
    while (at < order->count && order->wanted[at].id != id) {
        at++;
    }
    return at;
}

static void shift(list_order *order, size_t from, size_t to)
{
    bk_place moved = order->wanted[from];
    if (from < to) {
        memmove(&order->wanted[from], &order->wanted[from + 1], (to - from) * sizeof moved);
    } else {
        memmove(&order->wanted[to + 1], &order->wanted[to], (from - to) * sizeof moved);
    }
    order->wanted[to] = moved;
}

bk_status bk_places_behind(bk_desk *desk, bk_family family, const void *record, int64_t behind)
{
    int64_t id;
    list_order order = {.desk = desk, .family = family};
    memcpy(&id, record, sizeof id);
    bk_status status = read_places(&order, record);
    if (status || !order.count) {
        return status;
    }
    size_t before = place_of(&order, behind);
    size_t from = place_of(&order, id);
    if (before >= order.count || from >= order.count || from == before + 1) {
        return BK_OK;
    }
    shift(&order, from, before + (from > before));
    return put_order(&order);
}

/// Whether two pieces are worn with the same costume.
static bool worn_together(const bk_rows *rows, int64_t left, int64_t right)
{
    const bk_link *links = rows->items;
    for (size_t i = 0; i < rows->count; i++) {
        for (size_t j = 0; links[i].from_id == left && j < rows->count; j++) {
            if (links[j].from_id == right && links[j].to_id == links[i].to_id) {
                return true;
            }
        }
    }
    return false;
}

/// A piece is moved among those that it is worn with.
static bk_status keep_worn_together(list_order *order, int64_t piece)
{
    bk_rows rows;
    size_t kept = 0;
    bk_status status = bk_desk_rows(order->desk, BK_PIECE_COSTUMES, &rows);
    for (size_t i = 0; !status && i < order->count; i++) {
        if (order->places[i].id == piece || worn_together(&rows, piece, order->places[i].id)) {
            order->places[kept] = order->places[i];
            order->wanted[kept++] = order->places[i];
        }
    }
    order->count = kept;
    return status;
}

static bk_status move_record(bk_desk *desk, bk_family family, bk_any_record *record, int by, bool *moved)
{
    list_order order = {.desk = desk, .family = family};
    bk_status status = read_places(&order, record);
    if (!status && family == BK_PIECES) {
        status = keep_worn_together(&order, record->id);
    }
    size_t from = status ? 0 : place_of(&order, record->id);
    if (status || from >= order.count) {
        return status;
    }
    size_t earlier = from < (size_t) - (int64_t)by ? 0 : from - (size_t) - (int64_t)by;
    size_t later = (size_t)by > order.count - 1 - from ? order.count - 1 : from + (size_t)by;
    size_t to = by < 0 ? earlier : later;
    *moved = to != from;
    if (*moved) {
        shift(&order, from, to);
        status = put_order(&order);
    }
    return status;
}

/// Reads the record and moves it; what is moved of an order of work makes that
/// the workroom's own.
static bk_status move_one(bk_desk *desk, bk_family family, int64_t id, int by, const char **sentence)
{
    bk_any_record record;
    bool found = false;
    bool moved = false;
    bk_status status = bk_record_look(desk, family, id, &record, &found);
    if (!status && !found) {
        return bk_desk_refuse(desk, NULL, "It is no longer there: somebody has taken it away.");
    }
    if (!status) {
        status = move_record(desk, family, &record, by, &moved);
    }
    if (!status && moved && family == BK_WORK_STEPS) {
        status = bk_work_own(desk, record.work_step.work_id);
    }
    if (!status && moved) {
        *sentence = bk_arena_print(desk->job->arena, "Moved %s: %s", by < 0 ? "earlier" : "later",
                                   bk_record_called(desk, family, &record));
    }
    return status;
}

bk_status bk_record_move(const bk_job *job, bk_family family, int64_t id, int by, const char **sentence,
                         bk_error *error)
{
    *sentence = NULL;
    if (!bk_record_kinds[family].moves) {
        return bk_fail(error, BK_REFUSED, "These stand in an order of their own and are not moved.");
    }
    bk_status status = bk_store_change_begin(job->store, error);
    if (status) {
        return status;
    }
    bk_desk desk = bk_desk_lay(job, error);
    status = move_one(&desk, family, id, by, sentence);
    bk_desk_clear(&desk);
    if (!status && *sentence) {
        return bk_store_change_commit(job->store, job->made_at, *sentence, NULL, error);
    }
    bk_store_change_drop(job->store);
    return status;
}
