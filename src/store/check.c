#include <stdlib.h>
#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/plan/network.h"
#include "bodkin/store/families.h"
#include "bodkin/store/inside.h"

// Statements whose every row is a finding.
static const bk_sql file_sentences[] = {BK_SQL_CHECK_INTEGRITY, BK_SQL_CHECK_REFERENCES};
static const bk_sql row_sentences[] = {
    BK_SQL_CHECK_PRODUCTION_NAMES, BK_SQL_CHECK_PERFORMER_NAMES, BK_SQL_CHECK_PERSON_NAMES,
    BK_SQL_CHECK_MATERIAL_NAMES,   BK_SQL_CHECK_MEASURE_NAMES,   BK_SQL_CHECK_MEASURE_SHEETS,
    BK_SQL_CHECK_ROLE_NAMES,       BK_SQL_CHECK_COSTUME_NUMBERS, BK_SQL_CHECK_PIECE_NAMES,
    BK_SQL_CHECK_STEP_KEYS,        BK_SQL_CHECK_COSTUME_ROLES,   BK_SQL_CHECK_PIECE_COSTUMES,
    BK_SQL_CHECK_STEP_PIECES,      BK_SQL_CHECK_STEP_AFTERS,     BK_SQL_CHECK_FITTING_STEPS,
    BK_SQL_CHECK_WORK_NAMES,       BK_SQL_CHECK_WORK_STEP_KEYS,  BK_SQL_CHECK_NOTE_COSTUMES,
    BK_SQL_CHECK_NOTE_PIECES,      BK_SQL_CHECK_NOTE_STEPS,      BK_SQL_CHECK_RUNNINGS,
    BK_SQL_CHECK_SETTING_NAMES,    BK_SQL_CHECK_EQUIPMENT_NAMES,
};

// What SQLite says where it finds nothing wrong.
static const char all_well[] = "ok";

typedef struct checking {
    bk_store *store;
    bk_arena *arena;
    BK_LIST(const char *) findings;
    bk_error *error;
} checking;

static bk_status collect_sentences(checking *check, bk_sql sql)
{
    bk_query *query = NULL;
    bool row = false;
    bk_status status = bk_query_begin(&query, check->store->db, sql, check->error);
    if (status != BK_OK)
        return status;
    while ((status = bk_query_row(query, &row, check->error)) == BK_OK && row) {
        size_t length = 0;
        const char *sentence = bk_query_text(query, 0, &length);
        if (sentence != NULL && strcmp(sentence, all_well) != 0)
            bk_list_add(&check->findings, bk_arena_bytes(check->arena, sentence, length));
    }
    bk_query_end(query);
    return status;
}

// --------------------------------------------------------------------------------- rows that cannot be read

// Reads a family as any job would: words, days and times that are none come to light.
static void try_family(checking *check, bk_family family, int64_t key, const char *production)
{
    bk_error fault = {0};
    bk_rows rows;
    bk_arena *arena = bk_arena_new();
    if (bk_store_read(check->store, family, key, arena, &rows, &fault) != BK_OK) {
        const char *between = production == NULL ? "" : ": ";
        const char *finding =
            bk_arena_print(check->arena, "%s%s%s", production == NULL ? "" : production, between, fault.text);
        bk_list_add(&check->findings, finding);
    }
    bk_arena_free(arena);
}

static void try_production(checking *check, const bk_production *production)
{
    for (int family = 0; family < BK_FAMILIES; family++) {
        if (bk_families[family].key == BK_KEY_PRODUCTION && bk_families[family].add != BK_NO_STATEMENT)
            try_family(check, (bk_family)family, production->id, production->name);
    }
}

static void try_productions(checking *check, bk_arena *arena)
{
    bk_rows productions;
    if (bk_store_read(check->store, BK_PRODUCTIONS, 0, arena, &productions, NULL) != BK_OK)
        return; // told already
    const bk_production *production = productions.items;
    for (size_t i = 0; i < productions.count; i++)
        try_production(check, &production[i]);
}

static void try_materials(checking *check, bk_arena *arena)
{
    bk_rows materials;
    if (bk_store_read(check->store, BK_MATERIALS, 0, arena, &materials, NULL) != BK_OK)
        return; // told already
    const bk_material *material = materials.items;
    for (size_t i = 0; i < materials.count; i++)
        try_family(check, BK_MOVEMENTS, material[i].id, NULL);
}

static void try_all_families(checking *check)
{
    for (int family = 0; family < BK_FAMILIES; family++) {
        if (bk_families[family].key == BK_KEY_NONE)
            try_family(check, (bk_family)family, 0, NULL);
    }
    bk_arena *arena = bk_arena_new();
    try_productions(check, arena);
    try_materials(check, arena);
    bk_arena_free(arena);
}

// -------------------------------------------------------------------------------------------------- circles

typedef struct network {
    bk_id_index *places; // of steps, by their ids
    BK_LIST(int64_t) steps;
    BK_LIST(bk_network_link) links;
} network;

static bk_status read_steps(checking *check, network *all)
{
    bk_query *query = NULL;
    bool row = false;
    bk_status status = bk_query_begin(&query, check->store->db, BK_SQL_CHECK_STEPS, check->error);
    if (status != BK_OK)
        return status;
    while ((status = bk_query_row(query, &row, check->error)) == BK_OK && row) {
        int64_t id = bk_query_number(query, 0, 0);
        bk_id_index_put(all->places, id, (long long)all->steps.count);
        bk_list_add(&all->steps, id);
    }
    bk_query_end(query);
    return status;
}

static bk_status read_links(checking *check, network *all)
{
    bk_query *query = NULL;
    bool row = false;
    bk_status status = bk_query_begin(&query, check->store->db, BK_SQL_CHECK_LINKS, check->error);
    if (status != BK_OK)
        return status;
    while ((status = bk_query_row(query, &row, check->error)) == BK_OK && row) {
        const long long *from = bk_id_index_find(all->places, bk_query_number(query, 0, 0));
        const long long *to = bk_id_index_find(all->places, bk_query_number(query, 1, 0));
        if (from == NULL || to == NULL)
            continue; // a reference to nothing, told already
        bk_network_link link = {.from = (size_t)*from, .to = (size_t)*to};
        bk_list_add(&all->links, link);
    }
    bk_query_end(query);
    return status;
}

static bk_status add_step_name(checking *check, int64_t step, bk_buffer *text)
{
    bk_query *query = NULL;
    bool row = false;
    bk_status status = bk_query_begin(&query, check->store->db, BK_SQL_CHECK_STEP_NAME, check->error);
    if (status != BK_OK)
        return status;
    bk_query_give(query, 1, step);
    status = bk_query_row(query, &row, check->error);
    if (status == BK_OK && row) {
        size_t length = 0;
        bk_buffer_text(text, text->length == 0 ? "" : ", ");
        const char *name = bk_query_text(query, 0, &length);
        bk_buffer_add(text, name, length);
    }
    bk_query_end(query);
    return status;
}

static bk_status tell_circle(checking *check, const network *all, const size_t *circle, size_t length)
{
    bk_buffer names = {0};
    bk_status status = BK_OK;
    for (size_t i = 0; i < length && status == BK_OK; i++)
        status = add_step_name(check, all->steps.items[circle[i]], &names);
    if (status == BK_OK && names.length > 0) {
        const char *finding =
            bk_arena_print(check->arena, "These steps come after each other in a circle: %s.", names.bytes);
        bk_list_add(&check->findings, finding);
    }
    bk_buffer_free(&names);
    return status;
}

static bk_status find_circle(checking *check)
{
    network all = {.places = bk_id_index_new()};
    bk_arena *arena = bk_arena_new();
    size_t *circle = NULL;
    size_t length = 0;
    bk_status status = read_steps(check, &all);
    if (status == BK_OK)
        status = read_links(check, &all);
    if (status == BK_OK &&
        bk_network_circle(all.steps.count, all.links.items, all.links.count, arena, &circle, &length))
        status = tell_circle(check, &all, circle, length);
    bk_arena_free(arena);
    bk_list_free(&all.steps);
    bk_list_free(&all.links);
    bk_id_index_free(all.places);
    return status;
}

// ------------------------------------------------------------------------------------------------------ all

static bk_status check_rows(checking *check)
{
    bk_status status = BK_OK;
    for (size_t i = 0; i < sizeof row_sentences / sizeof row_sentences[0] && status == BK_OK; i++)
        status = collect_sentences(check, row_sentences[i]);
    return status == BK_OK ? find_circle(check) : status;
}

static bk_status check_all(checking *check)
{
    bk_status status = BK_OK;
    for (size_t i = 0; i < sizeof file_sentences / sizeof file_sentences[0] && status == BK_OK; i++)
        status = collect_sentences(check, file_sentences[i]);
    if (status != BK_OK)
        return status;
    try_all_families(check);
    return check_rows(check);
}

static bk_status collect(bk_store *store, bk_status (*run)(checking *check), bk_arena *arena,
                         bk_findings *findings, bk_error *error)
{
    checking check = {.store = store, .arena = arena, .error = error};
    *findings = (bk_findings){NULL, 0};
    bk_status status = run(&check);
    if (status == BK_OK && check.findings.count > 0) {
        size_t size = check.findings.count * sizeof *check.findings.items;
        findings->items = memcpy(bk_arena_take(arena, size), check.findings.items, size);
        findings->count = check.findings.count;
    }
    bk_list_free(&check.findings);
    return status;
}

bk_status bk_store_check(bk_store *store, bk_arena *arena, bk_findings *findings, bk_error *error)
{
    return collect(store, check_all, arena, findings, error);
}

bk_status bk_store_check_rows(bk_store *store, bk_arena *arena, bk_findings *findings, bk_error *error)
{
    return collect(store, check_rows, arena, findings, error);
}
