#include "bodkin/work/existing.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/amount.h"
#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/store/records_bench.h"
#include "bodkin/trade/measures.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/materials.h"

typedef struct gathering {
    bk_store *store;
    int64_t production;
    const char *of;
    bk_arena *arena;
    bk_index *seen; ///< names that are in the list
    BK_LIST(bk_existing) items;
    bk_error *error;
} gathering;

static void add(gathering *all, const char *name, const char *tells)
{
    if (!name || !*name || bk_index_find(all->seen, name))
        return;
    bk_index_put(all->seen, name, 1);
    bk_existing one = {name, tells && *tells ? tells : NULL};
    bk_list_add(&all->items, one);
}

static bk_status rows_of(gathering *all, bk_family family, bk_rows *rows)
{
    bool everywhere = family == BK_PERFORMERS || family == BK_PEOPLE || family == BK_MATERIALS ||
                      family == BK_ORDERS || family == BK_WORKS || family == BK_WORK_STEPS ||
                      family == BK_MEASURE_NAMES;
    int64_t key = everywhere ? 0 : all->production;
    return bk_store_read(all->store, family, key, all->arena, rows, all->error);
}

// ------------------------------------------------------------------------------------------------------ people

// Names of the roles that a performer plays.
static const char *roles_of(gathering *all, const bk_rows *roles, int64_t performer)
{
    const char *names = NULL;
    const bk_role *role = roles->items;
    for (size_t i = 0; i < roles->count; i++, role++)
        if (role->performer_id == performer)
            names = names ? bk_arena_print(all->arena, "%s, %s", names, role->name) : role->name;
    return names ? bk_arena_print(all->arena, "plays %s", names) : NULL;
}

static bk_status add_performers(gathering *all)
{
    static const bk_family families[] = {BK_COMPANY_PERFORMERS, BK_PERFORMERS};
    bk_rows roles, rows;
    bk_status status = rows_of(all, BK_ROLES, &roles);
    for (size_t f = 0; !status && f < sizeof families / sizeof families[0]; f++) {
        status = rows_of(all, families[f], &rows);
        const bk_performer *performer = rows.items;
        for (size_t i = 0; !status && i < rows.count; i++, performer++)
            add(all, performer->name, roles_of(all, &roles, performer->id));
    }
    return status;
}

static const char *with_commas(gathering *all, const char *list)
{
    const char *rest = list, *item = NULL, *whole = NULL;
    size_t length = 0;
    while (list && bk_list_item(&rest, &item, &length))
        whole =
            bk_arena_print(all->arena, "%s%s%.*s", whole ? whole : "", whole ? ", " : "", (int)length, item);
    return whole;
}

static bk_status add_people(gathering *all)
{
    bk_rows rows;
    bk_status status = rows_of(all, BK_PEOPLE, &rows);
    const bk_person *person = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++, person++)
        add(all, person->name, with_commas(all, person->skills));
    return status;
}

static bk_status add_everybody(gathering *all)
{
    bk_status status = add_people(all);
    return status ? status : add_performers(all);
}

// ----------------------------------------------------------------------------------------------------- the show

static bk_status add_roles(gathering *all)
{
    bk_rows roles, performers;
    bk_status status = rows_of(all, BK_ROLES, &roles);
    if (!status)
        status = rows_of(all, BK_PERFORMERS, &performers);
    if (status)
        return status;
    const bk_role *role = roles.items;
    const bk_performer *known = performers.items;
    bk_id_index *places = bk_id_index_of(performers.items, performers.count, sizeof *known);
    for (size_t i = 0; i < roles.count; i++, role++) {
        const long long *at = bk_id_index_find(places, role->performer_id);
        add(all, role->name, at ? bk_arena_print(all->arena, "played by %s", known[*at].name) : "not cast");
    }
    bk_id_index_free(places);
    return BK_OK;
}

static bk_status add_costumes(gathering *all)
{
    bk_rows costumes, roles;
    bk_status status = rows_of(all, BK_COSTUMES, &costumes);
    if (!status)
        status = rows_of(all, BK_ROLES, &roles);
    if (status)
        return status;
    const bk_costume *costume = costumes.items;
    const bk_role *known = roles.items;
    bk_id_index *places = bk_id_index_of(roles.items, roles.count, sizeof *known);
    for (size_t i = 0; i < costumes.count; i++, costume++) {
        const long long *at = bk_id_index_find(places, costume->role_id);
        const char *role = at ? known[*at].name : "";
        add(all, costume->number, bk_arena_print(all->arena, "%s%s%s", role, at ? ", " : "", costume->title));
    }
    bk_id_index_free(places);
    return BK_OK;
}

static bk_status add_pieces(gathering *all)
{
    bk_rows rows;
    bk_status status = rows_of(all, BK_PIECES, &rows);
    const bk_piece *piece = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++, piece++)
        add(all, piece->name, piece->title);
    return status;
}

// ------------------------------------------------------------------------------------------------------ steps

static const char *step_tells(gathering *all, const char *title, int kind, int64_t minutes)
{
    char words[BK_AMOUNT_ROOM];
    return bk_arena_print(all->arena, "%s (%s, %s)", title, bk_word_text(&bk_kind_words, kind),
                          bk_minutes_words(minutes, words));
}

// Steps of the piece named in `of`, or all of the others; only those of a kind where it is one.
static void add_steps_of(gathering *all, const bk_rows *steps, const bk_rows *pieces, bool own, int kind)
{
    const bk_step *step = steps->items;
    const bk_piece *piece = pieces->items;
    bk_id_index *places = bk_id_index_of(pieces->items, pieces->count, sizeof *piece);
    for (size_t i = 0; i < steps->count; i++, step++) {
        const long long *at = bk_id_index_find(places, step->piece_id);
        if (!at || bk_same_text(piece[*at].name, all->of) != own ||
            (kind != BK_NO_WORD && step->kind != kind))
            continue;
        const char *name = own ? step->key : bk_arena_print(all->arena, "%s/%s", piece[*at].name, step->key);
        add(all, name, step_tells(all, step->title, step->kind, step->minutes));
    }
    bk_id_index_free(places);
}

static bk_status add_steps_with(gathering *all, bool others, int kind)
{
    bk_rows steps, pieces;
    bk_status status = rows_of(all, BK_STEPS, &steps);
    if (!status)
        status = rows_of(all, BK_PIECES, &pieces);
    if (status)
        return status;
    add_steps_of(all, &steps, &pieces, true, kind);
    if (others)
        add_steps_of(all, &steps, &pieces, false, kind);
    return BK_OK;
}

static bk_status add_steps(gathering *all)
{
    return add_steps_with(all, false, BK_NO_WORD);
}

static bk_status add_fit_steps(gathering *all)
{
    return add_steps_with(all, false, BK_FIT);
}

static bk_status add_earlier(gathering *all)
{
    return add_steps_with(all, true, BK_NO_WORD);
}

// -------------------------------------------------------------------------------------------------- the workroom

static bk_status add_materials(gathering *all)
{
    bk_rows rows;
    bk_status status = rows_of(all, BK_MATERIALS, &rows);
    const bk_material *material = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++, material++) {
        const char *words = bk_material_words(material->on_hand, material->unit, all->arena);
        bool counted = material->on_hand != BK_NO_AMOUNT;
        add(all, material->name,
            counted ? bk_arena_print(all->arena, "%s on the shelf", words) : "never counted");
    }
    return status;
}

static bk_status add_works(gathering *all)
{
    bk_rows rows;
    bk_status status = rows_of(all, BK_WORKS, &rows);
    const bk_work *work = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++, work++)
        add(all, work->name, work->note);
    return status;
}

static bk_status add_work_steps(gathering *all)
{
    bk_rows rows;
    bk_status status = rows_of(all, BK_WORK_STEPS, &rows);
    const bk_work_step *step = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++, step++)
        if (bk_same_text(step->work, all->of))
            add(all, step->key, step_tells(all, step->title, step->kind, step->minutes));
    return status;
}

static bk_status add_measures(gathering *all)
{
    bk_rows rows;
    bk_status status = rows_of(all, BK_MEASURE_NAMES, &rows);
    const bk_named *named = rows.items;
    for (size_t i = 0; i < bk_measure_term_count; i++)
        add(all, bk_measure_terms[i].name, bk_measure_terms[i].how);
    for (size_t i = 0; !status && i < rows.count; i++, named++)
        add(all, named->name, "a measure of the workroom's own");
    return status;
}

// --------------------------------------------------------------------------------------------- texts used before

static int by_name(const void *left, const void *right)
{
    return bk_natural_order(((const bk_existing *)left)->name, ((const bk_existing *)right)->name);
}

static void sort_by_name(gathering *all)
{
    if (all->items.count > 0)
        qsort(all->items.items, all->items.count, sizeof *all->items.items, by_name);
}

static bk_status add_places(gathering *all)
{
    bk_rows rows;
    bk_status status = rows_of(all, BK_PIECES, &rows);
    const bk_piece *piece = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++, piece++)
        add(all, piece->place, NULL);
    sort_by_name(all);
    return status;
}

static bk_status add_suppliers(gathering *all)
{
    bk_rows materials, orders, pieces;
    bk_status status = rows_of(all, BK_MATERIALS, &materials);
    if (!status)
        status = rows_of(all, BK_ORDERS, &orders);
    if (!status)
        status = rows_of(all, BK_PIECES, &pieces);
    if (status)
        return status;
    for (size_t i = 0; i < materials.count; i++)
        add(all, ((const bk_material *)materials.items)[i].supplier, NULL);
    for (size_t i = 0; i < orders.count; i++)
        add(all, ((const bk_order *)orders.items)[i].from, NULL);
    for (size_t i = 0; i < pieces.count; i++)
        add(all, ((const bk_piece *)pieces.items)[i].from, NULL);
    sort_by_name(all);
    return BK_OK;
}

// --------------------------------------------------------------------------------------------------- public

static bk_status (*const adders[BK_EXISTING_KINDS])(gathering *all) = {
    [BK_EXISTING_PERFORMERS] = add_performers, [BK_EXISTING_PEOPLE] = add_people,
    [BK_EXISTING_EVERYBODY] = add_everybody,   [BK_EXISTING_ROLES] = add_roles,
    [BK_EXISTING_COSTUMES] = add_costumes,     [BK_EXISTING_PIECES] = add_pieces,
    [BK_EXISTING_STEPS] = add_steps,           [BK_EXISTING_FIT_STEPS] = add_fit_steps,
    [BK_EXISTING_EARLIER] = add_earlier,       [BK_EXISTING_MATERIALS] = add_materials,
    [BK_EXISTING_WORKS] = add_works,           [BK_EXISTING_WORK_STEPS] = add_work_steps,
    [BK_EXISTING_MEASURES] = add_measures,     [BK_EXISTING_PLACES] = add_places,
    [BK_EXISTING_SUPPLIERS] = add_suppliers,
};

bk_status bk_existing_read(bk_store *store, int64_t production, bk_existing_kind kind, const char *of,
                           bk_arena *arena, bk_existing_list *list, bk_error *error)
{
    gathering all = {.store = store, .production = production, .of = of, .arena = arena, .error = error};
    *list = (bk_existing_list){0};
    bk_status status = bk_store_read_begin(store, error);
    if (status)
        return status;
    all.seen = bk_index_new();
    status = adders[kind](&all);
    bk_store_read_end(store);
    bk_index_free(all.seen);
    if (!status) {
        bk_existing *kept = bk_arena_clear(arena, all.items.count, sizeof *kept);
        if (all.items.count > 0)
            memcpy(kept, all.items.items, all.items.count * sizeof *kept);
        *list = (bk_existing_list){kept, all.items.count};
    }
    bk_list_free(&all.items);
    return status;
}
