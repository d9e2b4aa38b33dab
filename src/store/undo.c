#include "bodkin/store/daybook.h"

#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/store/inside.h"
#include "bodkin/store/one.h"

// -------------------------------------------------------------------------------------------------- reading

static const char *kept_text(bk_query *query, int column, bk_arena *arena)
{
    size_t length = 0;
    const char *text = bk_query_text(query, column, &length);
    return text ? bk_arena_bytes(arena, text, length) : NULL;
}

static bk_entry entry_of(bk_query *query, bk_arena *arena)
{
    return (bk_entry){
        .id = bk_query_number(query, 0, 0),
        .made_at = kept_text(query, 1, arena),
        .made_by = kept_text(query, 2, arena),
        .sentence = kept_text(query, 3, arena),
        .undone = bk_query_number(query, 4, 0) != 0,
        .undoes = bk_query_number(query, 5, 0),
        .ended = bk_query_number(query, 6, 0) != 0,
    };
}

bk_status bk_daybook_read(bk_store *store, int64_t before, int64_t most, bk_arena *arena, bk_rows *entries,
                          bk_error *error)
{
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, BK_SQL_READ_ENTRIES, error);
    if (status) {
        return status;
    }
    BK_LIST(bk_entry) read = {0};
    bool row = true;
    bk_query_give(query, 1, before ? before : INT64_MAX);
    bk_query_give(query, 2, most);
    while (!(status = bk_query_row(query, &row, error)) && row) {
        bk_list_add(&read, entry_of(query, arena));
    }
    bk_query_end(query);
    entries->count = read.count;
    entries->items = bk_arena_take(arena, read.count * sizeof *read.items);
    if (read.count) {
        memcpy(entries->items, read.items, read.count * sizeof *read.items);
    }
    bk_list_free(&read);
    return status;
}

static bk_status read_entry(bk_store *store, int64_t id, bk_arena *arena, bk_entry *entry, bk_error *error)
{
    bk_query *query = NULL;
    bool row = false;
    bk_status status = bk_query_begin(&query, store->db, BK_SQL_READ_ENTRY, error);
    if (status) {
        return status;
    }
    bk_query_give(query, 1, id);
    status = bk_query_row(query, &row, error);
    if (!status && row) {
        *entry = entry_of(query, arena);
    }
    bk_query_end(query);
    if (!status && !row) {
        status = bk_fail(error, BK_REFUSED, "There is no such entry in the daybook; nothing was changed.");
    }
    return status;
}

/// Asks for one entry of the person at this terminal; `than` is the entry that it must be newer than.
static bk_status find_own(bk_store *store, bk_sql statement, int64_t than, int64_t *entry, bk_error *error)
{
    bk_query *query = NULL;
    bool row = false;
    *entry = 0;
    bk_status status = bk_query_begin(&query, store->db, statement, error);
    if (status) {
        return status;
    }
    bk_query_give_text(query, 1, store->who);
    bk_query_give_text(query, 2, store->terminal);
    bk_query_give(query, 3, than);
    status = bk_query_row(query, &row, error);
    if (!status && row) {
        *entry = bk_query_number(query, 0, 0);
    }
    bk_query_end(query);
    return status;
}

bk_status bk_daybook_to_undo(bk_store *store, int64_t *entry, bk_error *error)
{
    return find_own(store, BK_SQL_FIND_TO_UNDO, 0, entry, error);
}

// ------------------------------------------------------------------------------------------- undo and redo

static bk_status put_link(bk_store *store, bk_sql statement, int64_t entry, int64_t other, bk_error *error)
{
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, statement, error);
    if (status) {
        return status;
    }
    bk_query_give(query, 1, entry);
    if (other) {
        bk_query_give(query, 2, other);
    } else {
        bk_query_give_nothing(query, 2);
    }
    status = bk_query_run(query, error);
    bk_query_end(query);
    return status;
}

/// What is undone or redone: the entry turned back, and for a redo the first one, which becomes undoable
/// again.
typedef struct turning {
    bk_entry entry;
    int64_t freed;
    const char *word; ///< "Undone" or "Redone"
    const char *of;   ///< the first entry's sentence
} turning;

static bk_status find_undo(bk_store *store, int64_t chosen, bk_arena *arena, turning *found, bk_error *error)
{
    bk_status status = chosen ? BK_OK : bk_daybook_to_undo(store, &chosen, error);
    if (status) {
        return status;
    }
    if (!chosen) {
        return bk_fail(error, BK_REFUSED, "There is nothing of yours to undo at this terminal.");
    }
    status = read_entry(store, chosen, arena, &found->entry, error);
    if (status) {
        return status;
    }
    if (found->entry.undone) {
        return bk_fail(error, BK_REFUSED, "That is undone already.");
    }
    if (found->entry.undoes) {
        return bk_fail(error, BK_REFUSED, "That entry undoes or redoes another; choose the change itself.");
    }
    found->word = "Undone";
    found->of = found->entry.sentence;
    return BK_OK;
}

static bk_status find_redo(bk_store *store, bk_arena *arena, turning *found, bk_error *error)
{
    int64_t undoing = 0;
    int64_t newer = 0;
    bk_entry first = {0};
    bk_status status = find_own(store, BK_SQL_FIND_TO_REDO, 0, &undoing, error);
    if (!status) {
        status = find_own(store, BK_SQL_FIND_NEWER_CHANGE, undoing, &newer, error);
    }
    if (status) {
        return status;
    }
    if (!undoing || newer) {
        return bk_fail(error, BK_REFUSED,
                       "There is nothing to redo: nothing was undone since your last change.");
    }
    status = read_entry(store, undoing, arena, &found->entry, error);
    if (!status) {
        status = read_entry(store, found->entry.undoes, arena, &first, error);
    }
    found->freed = first.id;
    found->word = "Redone";
    found->of = first.sentence;
    return status;
}

/// Whether changes were made after the entry that still hold; entries undone or redone since go back to before it.
static bk_status has_newer(bk_store *store, int64_t entry, bool *newer, bk_error *error)
{
    bk_query *query = NULL;
    bk_status status = bk_query_begin(&query, store->db, BK_SQL_FIND_HOLDING_SINCE, error);
    if (status) {
        return status;
    }
    bk_query_give(query, 1, entry);
    status = bk_query_row(query, newer, error);
    if (!status && *newer) {
        *newer = bk_query_number(query, 0, 0) != 0;
    }
    bk_query_end(query);
    return status;
}

// ------------------------------------------------------------------------------------ whether it still fits

/// How often a material was counted, and the last of it.
typedef struct counted_material {
    int64_t material, newest, times;
} counted_material;

/// What is as it is before an entry is turned back.
typedef struct standing {
    bk_arena *arena;
    bk_findings findings;
    BK_LIST(counted_material) counted; ///< by material
} standing;

static bk_status read_standing(bk_store *store, standing *as, bk_error *error)
{
    bk_query *query = NULL;
    bool row = false;
    bk_status status = bk_store_check_rows(store, as->arena, &as->findings, error);
    if (!status) {
        status = bk_query_begin(&query, store->db, BK_SQL_CHECK_COUNTS, error);
    }
    if (status) {
        return status;
    }
    while (!(status = bk_query_row(query, &row, error)) && row) {
        bk_list_add(&as->counted,
                    ((counted_material){bk_query_number(query, 0, 0), bk_query_number(query, 1, 0),
                                        bk_query_number(query, 2, 0)}));
    }
    bk_query_end(query);
    return status;
}

/// A count says what lies there, so one beneath a newer one neither goes nor comes back: the newer one would say
/// something else then.
static bk_status check_counts(bk_store *store, const standing *before, const standing *now, bk_error *error)
{
    bk_material row = {.name = ""};
    bool found = false;
    size_t at = 0;
    for (size_t i = 0; i < now->counted.count; i++) {
        const counted_material *counted = &now->counted.items[i];
        while (at < before->counted.count && before->counted.items[at].material < counted->material) {
            at++;
        }
        const counted_material *was = at < before->counted.count ? &before->counted.items[at] : NULL;
        if (!was || was->newest != counted->newest || was->times == counted->times) {
            continue;
        }
        bk_status status =
            bk_store_get(store, BK_MATERIALS, counted->material, now->arena, &row, &found, error);
        return status ? status
                      : bk_fail(error, BK_REFUSED,
                                "That cannot be turned back any more: \"%s\" was counted again after that. "
                                "Nothing was changed.",
                                row.name);
    }
    return BK_OK;
}

static bool has_finding(const bk_findings *findings, const char *finding)
{
    for (size_t i = 0; i < findings->count; i++) {
        if (!strcmp(findings->items[i], finding)) {
            return true;
        }
    }
    return false;
}

/// Refuses what would leave rows that contradict newer ones, though it touched none of their values: a name that
/// another bears by now, a circle, a count that was overtaken.
static bk_status check_turned(bk_store *store, const standing *before, standing *now, bk_error *error)
{
    bk_status status = read_standing(store, now, error);
    for (size_t i = 0; !status && i < now->findings.count; i++) {
        if (!has_finding(&before->findings, now->findings.items[i])) {
            status = bk_fail(error, BK_REFUSED,
                             "That cannot be turned back any more, for then: %s Nothing was changed.",
                             now->findings.items[i]);
        }
    }
    return status ? status : check_counts(store, before, now, error);
}

/// Turns an entry back, and looks whether it still fits where others were made after it; before the newest one all was
/// as it had been.
static bk_status turn_soundly(bk_store *store, int64_t entry, bk_error *error)
{
    bool newer = false;
    bk_arena *arena = bk_arena_new();
    standing before = {.arena = arena};
    standing now = {.arena = arena};
    bk_status status = has_newer(store, entry, &newer, error);
    if (!status && newer) {
        status = read_standing(store, &before, error);
    }
    if (!status) {
        status = bk_store_turn_back(store, entry, error);
    }
    if (!status && newer) {
        status = check_turned(store, &before, &now, error);
    }
    bk_list_free(&before.counted);
    bk_list_free(&now.counted);
    bk_arena_free(arena);
    return status;
}

// ---------------------------------------------------------------------------------------------------- turning

/// Turns the entry back as a change of its own and links the entries.
static bk_status turn(bk_store *store, const turning *found, const char *made_at, const char *sentence,
                      bk_error *error)
{
    int64_t made = 0;
    bk_status status = turn_soundly(store, found->entry.id, error);
    if (!status) {
        status = bk_store_entry_write(store, made_at, sentence, &made, error);
    }
    if (!status) {
        status = put_link(store, BK_SQL_PUT_UNDOES, made, found->entry.id, error);
    }
    if (!status) {
        status = put_link(store, BK_SQL_PUT_UNDONE_BY, found->entry.id, made, error);
    }
    if (!status && found->freed) {
        status = put_link(store, BK_SQL_PUT_UNDONE_BY, found->freed, 0, error);
    }
    return status ? status : bk_store_entry_commit(store, error);
}

static bk_status turn_one(bk_store *store, bool redo, int64_t chosen, const char *made_at, bk_arena *arena,
                          const char **sentence, bk_error *error)
{
    turning found = {0};
    bk_status status = bk_store_change_begin(store, error);
    if (status) {
        return status;
    }
    status = redo ? find_redo(store, arena, &found, error) : find_undo(store, chosen, arena, &found, error);
    if (!status) {
        *sentence = bk_arena_print(arena, "%s: %s", found.word, found.of);
        status = turn(store, &found, made_at, *sentence, error);
    }
    if (status) {
        bk_store_change_drop(store);
    }
    return status;
}

bk_status bk_daybook_undo(bk_store *store, int64_t entry, const char *made_at, bk_arena *arena,
                          const char **sentence, bk_error *error)
{
    return turn_one(store, false, entry, made_at, arena, sentence, error);
}

bk_status bk_daybook_redo(bk_store *store, const char *made_at, bk_arena *arena, const char **sentence,
                          bk_error *error)
{
    return turn_one(store, true, 0, made_at, arena, sentence, error);
}
