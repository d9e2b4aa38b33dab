#include "bodkin/work/export.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"

// Rows of the store become rows of the sheets: ids become names, links become lists.

typedef struct export_state {
    bk_store *store;
    bk_folder *folder;
    bk_error *error;
    int64_t production;
    bk_id_index *performers, *roles, *costumes, *pieces, *steps, *materials; ///< id to index of the rows
    bk_rows covers, piece_costumes, afters, contacts, prices, order_costs, piece_costs;
} export_state;

// ------------------------------------------------------------------------------------------------- reading

static const struct read_into {
    bk_family family;
    bool by_production;
    size_t offset;
} folder_reads[] = {
    {BK_DATES, true, offsetof(bk_folder, dates)},
    {BK_PEOPLE, false, offsetof(bk_folder, people)},
    {BK_AWAYS, false, offsetof(bk_folder, away)},
    {BK_EQUIPMENT, false, offsetof(bk_folder, equipment)},
    {BK_COMPANY_PERFORMERS, true, offsetof(bk_folder, performers)},
    {BK_MEASURES, true, offsetof(bk_folder, measures)},
    {BK_ROLES, true, offsetof(bk_folder, roles)},
    {BK_COSTUMES, true, offsetof(bk_folder, costumes)},
    {BK_PIECES, true, offsetof(bk_folder, pieces)},
    {BK_STEPS, true, offsetof(bk_folder, steps)},
    {BK_MATERIALS, false, offsetof(bk_folder, materials)},
    {BK_NEEDS, true, offsetof(bk_folder, needs)},
    {BK_ORDERS, false, offsetof(bk_folder, orders)},
    {BK_FITTINGS, true, offsetof(bk_folder, fittings)},
    {BK_WORKS, false, offsetof(bk_folder, works)},
    {BK_WORK_STEPS, false, offsetof(bk_folder, work_steps)},
    {BK_NOTES, true, offsetof(bk_folder, notes)},
};

static const struct read_into state_reads[] = {
    {BK_COVERS, true, offsetof(export_state, covers)},
    {BK_PIECE_COSTUMES, true, offsetof(export_state, piece_costumes)},
    {BK_STEP_AFTERS, true, offsetof(export_state, afters)},
    {BK_CONTACTS, false, offsetof(export_state, contacts)},
    {BK_PRICES, false, offsetof(export_state, prices)},
    {BK_ORDER_COSTS, false, offsetof(export_state, order_costs)},
    {BK_PIECE_COSTS, true, offsetof(export_state, piece_costs)},
};

/// Reads each family into its place in `base`; all those places hold an array and a count, as bk_rows does.
static bk_status read_all(export_state *exporting, const struct read_into *reads, size_t count, void *base)
{
    for (size_t i = 0; i < count; i++) {
        bk_rows rows = {0};
        bk_status status = bk_store_read(exporting->store, reads[i].family,
                                         reads[i].by_production ? exporting->production : 0,
                                         exporting->folder->arena, &rows, exporting->error);
        if (status) {
            return status;
        }
        memcpy((char *)base + reads[i].offset, &rows, sizeof rows);
    }
    return BK_OK;
}

static bk_status read_production(export_state *exporting)
{
    bk_rows rows = {0};
    bk_status status =
        bk_store_read(exporting->store, BK_PRODUCTIONS, 0, exporting->folder->arena, &rows, exporting->error);
    bk_production *productions = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (productions[i].id == exporting->production) {
            productions[i].sheets = 1;
            exporting->folder->production.items = &productions[i];
            exporting->folder->production.count = 1;
            return BK_OK;
        }
    }
    return status ? status
                  : bk_fail(exporting->error, BK_REFUSED,
                            "This production is no longer in the workroom; choose another.");
}

// --------------------------------------------------------------------------------------------- ids to names

#define INDEX(rows) bk_id_index_of((rows).items, (rows).count, sizeof *(rows).items)

static void index_all(export_state *exporting)
{
    bk_folder *folder = exporting->folder;
    exporting->performers = INDEX(folder->performers);
    exporting->roles = INDEX(folder->roles);
    exporting->costumes = INDEX(folder->costumes);
    exporting->pieces = INDEX(folder->pieces);
    exporting->steps = INDEX(folder->steps);
    exporting->materials = INDEX(folder->materials);
}

static void exporting_free(export_state *exporting)
{
    bk_id_index *const tables[] = {exporting->performers, exporting->roles, exporting->costumes,
                                   exporting->pieces,     exporting->steps, exporting->materials};
    for (size_t i = 0; i < sizeof tables / sizeof *tables; i++) {
        bk_id_index_free(tables[i]);
    }
}

/// The row with that id in an array, or NULL.
static const void *row_of(const bk_id_index *table, int64_t id, const void *items, size_t size)
{
    const long long *at = id ? bk_id_index_find(table, id) : NULL;
    return at ? (const char *)items + (size_t)*at * size : NULL;
}

#define ROW(exporting, name, id) \
    row_of((exporting)->name, id, (exporting)->folder->name.items, sizeof *(exporting)->folder->name.items)

static const char *performer_name(const export_state *exporting, int64_t id)
{
    const bk_performer *performer = ROW(exporting, performers, id);
    return performer ? performer->name : NULL;
}

static const bk_step *step_row(const export_state *exporting, int64_t id)
{
    return ROW(exporting, steps, id);
}

static const char *piece_name(const export_state *exporting, int64_t id)
{
    const bk_piece *piece = ROW(exporting, pieces, id);
    return piece ? piece->name : NULL;
}

static const char *material_name(const export_state *exporting, int64_t id)
{
    const bk_material *material = ROW(exporting, materials, id);
    return material ? material->name : NULL;
}

/// A note that became a step names the piece of that step, whatever piece it was about before.
static void name_notes(export_state *exporting)
{
    bk_folder *folder = exporting->folder;
    for (size_t i = 0; i < folder->notes.count; i++) {
        bk_note *note = &folder->notes.items[i];
        const bk_costume *costume = ROW(exporting, costumes, note->costume_id);
        const bk_step *step = step_row(exporting, note->step_id);
        note->costume = costume ? costume->number : NULL;
        note->piece = step ? step->piece : piece_name(exporting, note->piece_id);
        note->step = step ? step->key : NULL;
    }
}

static void name_rows(export_state *exporting)
{
    bk_folder *folder = exporting->folder;
    for (size_t i = 0; i < folder->measures.count; i++) {
        folder->measures.items[i].performer =
            performer_name(exporting, folder->measures.items[i].performer_id);
    }
    for (size_t i = 0; i < folder->roles.count; i++) {
        folder->roles.items[i].performer = performer_name(exporting, folder->roles.items[i].performer_id);
    }
    for (size_t i = 0; i < folder->costumes.count; i++) {
        const bk_role *role = ROW(exporting, roles, folder->costumes.items[i].role_id);
        folder->costumes.items[i].role = role ? role->name : NULL;
    }
    for (size_t i = 0; i < folder->steps.count; i++) {
        folder->steps.items[i].piece = piece_name(exporting, folder->steps.items[i].piece_id);
    }
    for (size_t i = 0; i < folder->needs.count; i++) {
        bk_need *need = &folder->needs.items[i];
        const bk_step *step = step_row(exporting, need->step_id);
        need->piece = step ? step->piece : NULL;
        need->step = step ? step->key : NULL;
        need->material = material_name(exporting, need->material_id);
    }
    for (size_t i = 0; i < folder->orders.count; i++) {
        folder->orders.items[i].material = material_name(exporting, folder->orders.items[i].material_id);
    }
    for (size_t i = 0; i < folder->fittings.count; i++) {
        bk_fitting *fitting = &folder->fittings.items[i];
        const bk_step *step = step_row(exporting, fitting->step_id);
        fitting->piece = step ? step->piece : NULL;
        fitting->step = step ? step->key : NULL;
        fitting->performer = performer_name(exporting, fitting->performer_id);
    }
    name_notes(exporting);
}

// ------------------------------------------------------------------------------------------- links to lists

/// Appends `name` to the list that `*list` points to.
static void append(bk_arena *arena, const char **list, const char *name)
{
    if (name) {
        *list = *list ? bk_arena_print(arena, "%s;%s", *list, name) : name;
    }
}

static const char *after_name(const export_state *exporting, const bk_step *step, const bk_step *earlier)
{
    if (!step || !earlier || step->piece_id == earlier->piece_id) {
        return earlier ? earlier->key : NULL;
    }
    return bk_arena_print(exporting->folder->arena, "%s/%s", earlier->piece, earlier->key);
}

static void fill_lists(export_state *exporting)
{
    bk_folder *folder = exporting->folder;
    const bk_link *links = exporting->covers.items;
    for (size_t i = 0; i < exporting->covers.count; i++) {
        const long long *at = bk_id_index_find(exporting->roles, links[i].from_id);
        if (at) {
            append(folder->arena, &folder->roles.items[*at].cover, performer_name(exporting, links[i].to_id));
        }
    }
    links = exporting->piece_costumes.items;
    for (size_t i = 0; i < exporting->piece_costumes.count; i++) {
        const long long *at = bk_id_index_find(exporting->pieces, links[i].from_id);
        const bk_costume *costume = ROW(exporting, costumes, links[i].to_id);
        if (at && costume) {
            append(folder->arena, &folder->pieces.items[*at].costumes, costume->number);
        }
    }
    links = exporting->afters.items;
    for (size_t i = 0; i < exporting->afters.count; i++) {
        const long long *at = bk_id_index_find(exporting->steps, links[i].from_id);
        if (at) {
            bk_step *step = &folder->steps.items[*at];
            append(folder->arena, &step->after,
                   after_name(exporting, step, step_row(exporting, links[i].to_id)));
        }
    }
}

/// Where the price or the cost of a record stands in it.
typedef struct amount_place {
    size_t size, amount, currency;
} amount_place;

/// Puts amounts of a private table back beside their records.
static void put_amounts(const bk_rows *amounts, const bk_id_index *record_at, void *records,
                        amount_place place)
{
    const bk_private *rows = amounts->items;
    for (size_t i = 0; i < amounts->count; i++) {
        const long long *at = bk_id_index_find(record_at, rows[i].id);
        if (at) {
            char *record = (char *)records + (size_t)*at * place.size;
            memcpy(record + place.amount, &rows[i].amount, sizeof rows[i].amount);
            memcpy(record + place.currency, &rows[i].currency, sizeof rows[i].currency);
        }
    }
}

#define PLACE(record, amount) \
    (amount_place) \
    { \
        sizeof(record), offsetof(record, amount), offsetof(record, currency) \
    }

/// Puts what stands in the private tables back beside its records.
static void fill_private(export_state *exporting)
{
    bk_folder *folder = exporting->folder;
    bk_id_index *orders = INDEX(folder->orders);
    const bk_private *contacts = exporting->contacts.items;
    for (size_t i = 0; i < exporting->contacts.count; i++) {
        const long long *at = bk_id_index_find(exporting->performers, contacts[i].id);
        if (at) {
            folder->performers.items[*at].contact = contacts[i].text;
        }
    }
    put_amounts(&exporting->prices, exporting->materials, folder->materials.items, PLACE(bk_material, price));
    put_amounts(&exporting->order_costs, orders, folder->orders.items, PLACE(bk_order, cost));
    put_amounts(&exporting->piece_costs, exporting->pieces, folder->pieces.items, PLACE(bk_piece, cost));
    bk_id_index_free(orders);
}

/// Keeps the absences of people and of this company.
static void keep_aways(export_state *exporting)
{
    bk_folder *folder = exporting->folder;
    size_t kept = 0;
    for (size_t i = 0; i < folder->away.count; i++) {
        const bk_away *away = &folder->away.items[i];
        if (away->person_id || performer_name(exporting, away->performer_id)) {
            folder->away.items[kept++] = *away;
        }
    }
    folder->away.count = kept;
}

/// Keeps the orders of work that the workroom made or changed, and their steps.
static void keep_own_works(export_state *exporting)
{
    bk_folder *folder = exporting->folder;
    size_t kept = 0;
    for (size_t i = 0; i < folder->works.count; i++) {
        if (folder->works.items[i].ready != 1) {
            folder->works.items[kept++] = folder->works.items[i];
        }
    }
    folder->works.count = kept;
    bk_id_index *own = INDEX(folder->works);
    kept = 0;
    for (size_t i = 0; i < folder->work_steps.count; i++) {
        if (bk_id_index_find(own, folder->work_steps.items[i].work_id)) {
            folder->work_steps.items[kept++] = folder->work_steps.items[i];
        }
    }
    folder->work_steps.count = kept;
    bk_id_index_free(own);
}

// --------------------------------------------------------------------------------------------------- public

static bk_status gather(export_state *exporting)
{
    bk_status status = read_production(exporting);
    if (!status) {
        status =
            read_all(exporting, folder_reads, sizeof folder_reads / sizeof *folder_reads, exporting->folder);
    }
    if (!status) {
        status = read_all(exporting, state_reads, sizeof state_reads / sizeof *state_reads, exporting);
    }
    return status;
}

bk_status bk_export_folder(bk_store *store, int64_t production, bk_folder **folder, bk_error *error)
{
    *folder = NULL;
    bk_status status = bk_store_read_begin(store, error);
    if (status) {
        return status;
    }
    export_state exporting = {
        .store = store, .folder = bk_folder_new(), .error = error, .production = production};
    status = gather(&exporting);
    bk_store_read_end(store);
    if (status) {
        bk_folder_free(exporting.folder);
        return status;
    }
    index_all(&exporting);
    name_rows(&exporting);
    fill_lists(&exporting);
    fill_private(&exporting);
    keep_aways(&exporting);
    keep_own_works(&exporting);
    exporting_free(&exporting);
    *folder = exporting.folder;
    return BK_OK;
}
