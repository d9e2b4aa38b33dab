#include "bodkin/work/record_names.h"

#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"

#define COUNT(array) (sizeof(array) / sizeof(array)[0])

// ---------------------------------------------------------------------------------------------------
// tables

/// A column that names one record.
typedef struct reference {
    bk_family family;
    const char *column;
    size_t name, id; ///< offsets in the record
    bk_family to;
} reference;

static const reference references[] = {
    {BK_ROLES, "performer", offsetof(bk_role, performer), offsetof(bk_role, performer_id), BK_PERFORMERS},
    {BK_COSTUMES, "role", offsetof(bk_costume, role), offsetof(bk_costume, role_id), BK_ROLES},
    {BK_STEPS, "piece", offsetof(bk_step, piece), offsetof(bk_step, piece_id), BK_PIECES},
    {BK_NEEDS, "material", offsetof(bk_need, material), offsetof(bk_need, material_id), BK_MATERIALS},
    {BK_ORDERS, "material", offsetof(bk_order, material), offsetof(bk_order, material_id), BK_MATERIALS},
    {BK_FITTINGS, "performer", offsetof(bk_fitting, performer), offsetof(bk_fitting, performer_id),
     BK_PERFORMERS},
    {BK_WORK_STEPS, "work", offsetof(bk_work_step, work), offsetof(bk_work_step, work_id), BK_WORKS},
    {BK_NOTES, "costume", offsetof(bk_note, costume), offsetof(bk_note, costume_id), BK_COSTUMES},
    {BK_NOTES, "piece", offsetof(bk_note, piece), offsetof(bk_note, piece_id), BK_PIECES},
};

/// Two columns that name a step: its piece, and its key in that piece.
typedef struct step_reference {
    bk_family family;
    size_t piece, key, id; ///< offsets in the record
    bool fit;              ///< only a step of kind fit
} step_reference;

static const step_reference step_references[] = {
    {BK_NEEDS, offsetof(bk_need, piece), offsetof(bk_need, step), offsetof(bk_need, step_id), false},
    {BK_FITTINGS, offsetof(bk_fitting, piece), offsetof(bk_fitting, step), offsetof(bk_fitting, step_id),
     true},
    {BK_NOTES, offsetof(bk_note, piece), offsetof(bk_note, step), offsetof(bk_note, step_id), false},
};

/// A column that names several records, kept as links.
typedef struct list_reference {
    bk_family family;
    const char *column;
    size_t names, within; ///< offsets in the record: the list, and for steps the
                          ///< piece that a bare key means
    bk_family links, to;
} list_reference;

static const list_reference list_references[] = {
    {BK_ROLES, "cover", offsetof(bk_role, cover), 0, BK_COVERS, BK_PERFORMERS},
    {BK_PIECES, "costumes", offsetof(bk_piece, costumes), 0, BK_PIECE_COSTUMES, BK_COSTUMES},
    {BK_STEPS, "after", offsetof(bk_step, after), offsetof(bk_step, piece_id), BK_STEP_AFTERS, BK_STEPS},
};

/// What stands in a private table beside the record: a text, or an amount with
/// its currency.
typedef struct private_value {
    bk_family family, kept;
    bool text;
    size_t value, currency; ///< offsets in the record
} private_value;

static const private_value private_values[] = {
    {BK_PERFORMERS, BK_CONTACTS, true, offsetof(bk_performer, contact), 0},
    {BK_MATERIALS, BK_PRICES, false, offsetof(bk_material, price), offsetof(bk_material, currency)},
    {BK_ORDERS, BK_ORDER_COSTS, false, offsetof(bk_order, cost), offsetof(bk_order, currency)},
    {BK_PIECES, BK_PIECE_COSTS, false, offsetof(bk_piece, cost), offsetof(bk_piece, currency)},
};

static const char *text_at(const void *record, size_t offset)
{
    const char *text;
    memcpy(&text, (const char *)record + offset, sizeof text);
    return text;
}

static void put_text(void *record, size_t offset, const char *text)
{
    memcpy((char *)record + offset, &text, sizeof text);
}

static int64_t number_at(const void *record, size_t offset)
{
    int64_t number;
    memcpy(&number, (const char *)record + offset, sizeof number);
    return number;
}

static void put_number(void *record, size_t offset, int64_t number)
{
    memcpy((char *)record + offset, &number, sizeof number);
}

static int64_t id_of(const void *record)
{
    return number_at(record, 0);
}

static const list_reference *list_of(bk_family family)
{
    for (size_t i = 0; i < COUNT(list_references); i++) {
        if (list_references[i].family == family) {
            return &list_references[i];
        }
    }
    return NULL;
}

// --------------------------------------------------------------------------------------------
// ids to names

/// The name of the record with that id; NULL for id 0, and where it is gone.
static bk_status name_by_id(bk_desk *desk, bk_family family, int64_t id, const char **name)
{
    bk_any_record row;
    bool found = false;
    bk_status status = id ? bk_desk_get(desk, family, id, &row, &found) : BK_OK;
    *name = !status && found ? bk_desk_name_of(family, &row) : NULL;
    return status;
}

static bk_status fill_reference(bk_desk *desk, const reference *at, void *record)
{
    const char *name = NULL;
    bk_status status = name_by_id(desk, at->to, number_at(record, at->id), &name);
    put_text(record, at->name, name);
    return status;
}

static bk_status fill_step(bk_desk *desk, const step_reference *at, void *record)
{
    bk_step step;
    bool found = false;
    int64_t id = number_at(record, at->id);
    bk_status status = id ? bk_desk_get(desk, BK_STEPS, id, &step, &found) : BK_OK;
    if (status || !found) {
        return status;
    }
    const char *piece = NULL;
    desk->production = step.production_id;
    status = name_by_id(desk, BK_PIECES, step.piece_id, &piece);
    put_text(record, at->piece, piece);
    put_text(record, at->key, step.key);
    return status;
}

/// The item of a list that means the record `to`; NULL where that is gone.
static bk_status item_by_id(bk_desk *desk, const list_reference *at, const void *record, int64_t to,
                            const char **item)
{
    bk_step step;
    bool found = false;
    if (at->to != BK_STEPS) {
        return name_by_id(desk, at->to, to, item);
    }
    bk_status status = bk_desk_get(desk, BK_STEPS, to, &step, &found);
    *item = !status && found ? step.key : NULL;
    return *item && step.piece_id != number_at(record, at->within) ? bk_desk_step_name(desk, to, item)
                                                                   : status;
}

static bk_status fill_list(bk_desk *desk, const list_reference *at, void *record)
{
    bk_rows rows;
    const char *list = NULL;
    bk_status status = bk_desk_rows(desk, at->links, &rows);
    const bk_link *links = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        const char *item = NULL;
        if (links[i].from_id != id_of(record)) {
            continue;
        }
        status = item_by_id(desk, at, record, links[i].to_id, &item);
        if (item) {
            list = list ? bk_arena_print(desk->job->arena, "%s;%s", list, item) : item;
        }
    }
    put_text(record, at->names, list);
    return status;
}

static bk_status fill_private(bk_desk *desk, const private_value *at, void *record)
{
    bk_private row = {.amount = BK_NO_AMOUNT};
    bool found = false;
    bk_status status = bk_desk_get(desk, at->kept, id_of(record), &row, &found);
    if (at->text) {
        put_text(record, at->value, row.text);
    } else {
        put_number(record, at->value, row.amount);
        put_text(record, at->currency, row.currency);
    }
    return status;
}

bk_status bk_names_fill(bk_desk *desk, bk_family family, void *record)
{
    bk_status status = BK_OK;
    const list_reference *list = list_of(family);
    for (size_t i = 0; !status && i < COUNT(references); i++) {
        if (references[i].family == family) {
            status = fill_reference(desk, &references[i], record);
        }
    }
    for (size_t i = 0; !status && i < COUNT(step_references); i++) {
        if (step_references[i].family == family) {
            status = fill_step(desk, &step_references[i], record);
        }
    }
    for (size_t i = 0; !status && i < COUNT(private_values); i++) {
        if (private_values[i].family == family) {
            status = fill_private(desk, &private_values[i], record);
        }
    }
    return !status && list ? fill_list(desk, list, record) : status;
}

// --------------------------------------------------------------------------------------------
// names to ids

static bk_status resolve_reference(bk_desk *desk, const reference *at, const void *now, void *record)
{
    int64_t id = 0;
    const char *name = text_at(record, at->name);
    if (now && bk_same_text(name, text_at(now, at->name))) {
        put_number(record, at->id, number_at(now, at->id));
        return BK_OK;
    }
    bk_status status = name ? bk_desk_find(desk, at->to, 0, name, &id) : BK_OK;
    if (!status && name && !id) {
        status = bk_desk_refuse_name(desk, at->column, at->to, 0, name);
    }
    put_number(record, at->id, id);
    return status;
}

/// The step of that piece and key.
static bk_status find_step(bk_desk *desk, const char *column, const char *piece, const char *key, int64_t *id)
{
    int64_t piece_id = 0;
    *id = 0;
    bk_status status = bk_desk_find(desk, BK_PIECES, 0, piece, &piece_id);
    if (!status && !piece_id) {
        status = bk_desk_refuse_name(desk, column, BK_PIECES, 0, piece);
    }
    if (!status) {
        status = bk_desk_find(desk, BK_STEPS, piece_id, key, id);
    }
    if (!status && !*id) {
        status = bk_desk_refuse_name(desk, column, BK_STEPS, piece_id, key);
    }
    return status;
}

static bk_status check_fit(bk_desk *desk, int64_t id)
{
    bk_step step;
    bool found = false;
    bk_status status = bk_desk_get(desk, BK_STEPS, id, &step, &found);
    if (status || !found || step.kind == BK_FIT) {
        return status;
    }
    return bk_desk_refuse(desk, "step", "\"%s\" is a step of kind %s: only a step of kind fit has fittings.",
                          bk_desk_safe(desk, step.key), bk_word_text(&bk_kind_words, step.kind));
}

static bk_status resolve_step(bk_desk *desk, const step_reference *at, const void *now, void *record)
{
    int64_t id = 0;
    const char *piece = text_at(record, at->piece);
    const char *key = text_at(record, at->key);
    if (now && bk_same_text(piece, text_at(now, at->piece)) && bk_same_text(key, text_at(now, at->key))) {
        put_number(record, at->id, number_at(now, at->id));
        return BK_OK;
    }
    bk_status status = BK_OK;
    if (key && !piece) {
        status = bk_desk_refuse(desk, "piece", "Fill in \"piece\": \"%s\" is a step of a piece.",
                                bk_desk_safe(desk, key));
    } else if (key) {
        status = find_step(desk, "step", piece, key, &id);
    }
    put_number(record, at->id, id);
    return !status && at->fit && id ? check_fit(desk, id) : status;
}

/// What an item of a list means; where `now` has the same item, what it means
/// there.
static bk_status resolve_item(bk_desk *desk, const list_reference *at, const void *record, bk_index *known,
                              const char *item, int64_t *id)
{
    const long long *same = bk_index_find(known, item);
    const char *slash = at->to == BK_STEPS ? strchr(item, '/') : NULL;
    if (same) {
        *id = *same;
        return BK_OK;
    }
    if (slash) {
        const char *piece = bk_arena_bytes(desk->scratch, item, (size_t)(slash - item));
        return find_step(desk, at->column, piece, slash + 1, id);
    }
    int64_t within = at->to == BK_STEPS ? number_at(record, at->within) : 0;
    bk_status status = bk_desk_find(desk, at->to, within, item, id);
    return !status && !*id ? bk_desk_refuse_name(desk, at->column, at->to, within, item) : status;
}

static bool is_linked(const bk_desk *desk, int64_t id)
{
    for (size_t i = 0; i < desk->linked_count; i++) {
        if (desk->linked[i] == id) {
            return true;
        }
    }
    return false;
}

static bk_status resolve_items(bk_desk *desk, const list_reference *at, const void *record, bk_index *known)
{
    const char *list = text_at(record, at->names);
    const char *rest = list ? list : "";
    const char *item;
    size_t length;
    bk_status status = BK_OK;
    desk->linked = bk_arena_clear(desk->scratch, strlen(rest) + 1, sizeof *desk->linked);
    while (!status && bk_list_item(&rest, &item, &length)) {
        int64_t id = 0;
        const char *name = bk_arena_bytes(desk->scratch, item, length);
        status = resolve_item(desk, at, record, known, name, &id);
        if (!status && is_linked(desk, id)) {
            status = bk_desk_refuse(desk, at->column, "\"%s\" is named twice: once is enough.",
                                    bk_desk_safe(desk, name));
        }
        desk->linked[desk->linked_count++] = id;
    }
    return status;
}

/// The items that the record has now, each with what it means.
static bk_status index_items(bk_desk *desk, const list_reference *at, const void *now, bk_index *known)
{
    bk_rows rows = {0};
    bk_status status = now ? bk_desk_rows(desk, at->links, &rows) : BK_OK;
    const bk_link *links = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        const char *item = NULL;
        if (links[i].from_id == id_of(now)) {
            status = item_by_id(desk, at, now, links[i].to_id, &item);
        }
        if (item) {
            bk_index_put(known, item, links[i].to_id);
        }
    }
    return status;
}

static bk_status resolve_list(bk_desk *desk, const list_reference *at, const void *now, void *record)
{
    desk->relink = !now || !bk_same_text(text_at(now, at->names), text_at(record, at->names));
    bk_index *known = bk_index_new();
    bk_status status = index_items(desk, at, now, known);
    if (!status) {
        status = resolve_items(desk, at, record, known);
    }
    bk_index_free(known);
    return status;
}

bk_status bk_names_resolve(bk_desk *desk, bk_family family, const void *now, void *record)
{
    bk_status status = BK_OK;
    const list_reference *list = list_of(family);
    for (size_t i = 0; !status && i < COUNT(references); i++) {
        if (references[i].family == family) {
            status = resolve_reference(desk, &references[i], now, record);
        }
    }
    for (size_t i = 0; !status && i < COUNT(step_references); i++) {
        if (step_references[i].family == family) {
            status = resolve_step(desk, &step_references[i], now, record);
        }
    }
    return !status && list ? resolve_list(desk, list, now, record) : status;
}

// --------------------------------------------------------------------------------------------------
// writing

static bk_status write_list(bk_desk *desk, const list_reference *at, const void *now, const void *record)
{
    bk_store *store = desk->job->store;
    bk_status status = BK_OK;
    if (!desk->relink) {
        return BK_OK;
    }
    if (now) {
        status = bk_store_remove_links(store, at->links, id_of(record), desk->error);
    }
    for (size_t i = 0; !status && i < desk->linked_count; i++) {
        bk_link link = {.from_id = id_of(record), .to_id = desk->linked[i]};
        status = bk_store_add(store, at->links, &link, (int64_t)i, NULL, desk->error);
    }
    bk_desk_forget(desk, at->links);
    return status;
}

static bk_status write_private(bk_desk *desk, const private_value *at, const void *record)
{
    bk_store *store = desk->job->store;
    bk_private row = {.id = id_of(record), .amount = BK_NO_AMOUNT};
    if (at->text) {
        row.text = text_at(record, at->value);
    } else {
        row.amount = number_at(record, at->value);
        row.currency = text_at(record, at->currency);
    }
    if (!row.text && row.amount == BK_NO_AMOUNT) {
        return bk_store_remove(store, at->kept, row.id, desk->error);
    }
    return bk_store_put(store, at->kept, &row, desk->error);
}

bk_status bk_names_write(bk_desk *desk, bk_family family, const void *now, const void *record)
{
    bk_status status = BK_OK;
    const list_reference *list = list_of(family);
    for (size_t i = 0; !status && i < COUNT(private_values); i++) {
        if (private_values[i].family == family) {
            status = write_private(desk, &private_values[i], record);
        }
    }
    return !status && list ? write_list(desk, list, now, record) : status;
}

bk_status bk_names_remove(bk_desk *desk, bk_family family, int64_t id)
{
    bk_status status = BK_OK;
    const list_reference *list = list_of(family);
    for (size_t i = 0; !status && i < COUNT(private_values); i++) {
        if (private_values[i].family == family) {
            status = bk_store_remove(desk->job->store, private_values[i].kept, id, desk->error);
        }
    }
    return !status && list ? bk_store_remove_links(desk->job->store, list->links, id, desk->error) : status;
}
