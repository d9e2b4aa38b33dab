#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/work/import_parts.h"

// What is a production's own: its company, dates, roles, costumes, pieces, steps, needs, fittings and notes.

static bk_status link_records(bk_importing *importing, bk_family family, int64_t from, int64_t to,
                              size_t position)
{
    bk_link link = {from, to, (int64_t)position};
    return bk_import_add(importing, family, &link, position, NULL);
}

/// The id behind an item of a list.
static int64_t item_id(bk_importing *importing, const bk_index *names, const char *item, size_t length)
{
    return bk_import_id(names, bk_arena_bytes(importing->arena, item, length));
}

/// Links a record with each name of a list.
static bk_status link_list(bk_importing *importing, bk_family family, int64_t from, const bk_index *names,
                           const char *list)
{
    const char *rest = list ? list : "";
    const char *item;
    size_t length;
    size_t position = 0;
    bk_status status = BK_OK;
    while (!status && bk_list_item(&rest, &item, &length)) {
        status = link_records(importing, family, from, item_id(importing, names, item, length), position++);
    }
    return status;
}

// ------------------------------------------------------------------------------------------------- company

enum { COMPANY_TOLD = 1024 }; // members after which it is told how far it is

typedef struct company_state {
    bk_importing *importing;
    bk_id_index *members;
    size_t count;
} company_state;

static bk_status join_company(company_state *company, int64_t performer)
{
    long long fresh = (long long)company->count;
    if (!performer || *bk_id_index_put(company->members, performer, fresh) != fresh) {
        return BK_OK;
    }
    bk_importing *importing = company->importing;
    bk_status status =
        link_records(importing, BK_COMPANY, importing->production, performer, company->count++);
    return status || company->count % COMPANY_TOLD ? status : bk_import_told(importing, "performers.csv", 0);
}

static bk_status join_covers(company_state *company, const char *list)
{
    const char *rest = list ? list : "";
    const char *item;
    size_t length;
    bk_status status = BK_OK;
    while (!status && bk_list_item(&rest, &item, &length)) {
        status =
            join_company(company, item_id(company->importing, company->importing->performers, item, length));
    }
    return status;
}

/// The company: the performers of the sheet, then those that roles, measures and fittings name besides.
static bk_status gather_company(company_state *company)
{
    const bk_folder *folder = company->importing->folder;
    const bk_index *ids = company->importing->performers;
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < folder->performers.count; i++) {
        status = join_company(company, bk_import_id(ids, folder->performers.items[i].name));
    }
    for (size_t i = 0; !status && i < folder->roles.count; i++) {
        status = join_company(company, bk_import_id(ids, folder->roles.items[i].performer));
        if (!status) {
            status = join_covers(company, folder->roles.items[i].cover);
        }
    }
    const char *last = NULL;
    for (size_t i = 0; !status && i < folder->measures.count; i++) {
        if (folder->measures.items[i].performer != last) {
            last = folder->measures.items[i].performer;
            status = join_company(company, bk_import_id(ids, last));
        }
    }
    for (size_t i = 0; !status && i < folder->fittings.count; i++) {
        status = join_company(company, bk_import_id(ids, folder->fittings.items[i].performer));
    }
    return status;
}

static bk_status add_company(bk_importing *importing)
{
    company_state company = {importing, bk_id_index_new(), 0};
    bk_status status = gather_company(&company);
    bk_id_index_free(company.members);
    return status;
}

// ----------------------------------------------------------------------------------- dates, roles, costumes

static bk_status add_dates(bk_importing *importing)
{
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < importing->folder->dates.count; i++) {
        bk_date date = importing->folder->dates.items[i];
        date.production_id = importing->production;
        status = bk_import_add(importing, BK_DATES, &date, i, NULL);
        if (!status) {
            status = bk_import_row(importing, "dates.csv", i);
        }
    }
    return status ? status : bk_import_told(importing, "dates.csv", importing->folder->dates.count);
}

static bk_status add_roles(bk_importing *importing)
{
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < importing->folder->roles.count; i++) {
        bk_role role = importing->folder->roles.items[i];
        int64_t id = 0;
        role.production_id = importing->production;
        role.performer_id = bk_import_id(importing->performers, role.performer);
        status = bk_import_add(importing, BK_ROLES, &role, i, &id);
        bk_index_put(importing->roles, role.name, id);
        if (!status) {
            status = link_list(importing, BK_COVERS, id, importing->performers, role.cover);
        }
        if (!status) {
            status = bk_import_row(importing, "roles.csv", i);
        }
    }
    return status ? status : bk_import_told(importing, "roles.csv", importing->folder->roles.count);
}

static bk_status add_costumes(bk_importing *importing)
{
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < importing->folder->costumes.count; i++) {
        bk_costume costume = importing->folder->costumes.items[i];
        int64_t id = 0;
        costume.production_id = importing->production;
        costume.role_id = bk_import_id(importing->roles, costume.role);
        status = bk_import_add(importing, BK_COSTUMES, &costume, i, &id);
        bk_index_put(importing->costumes, costume.number, id);
        if (!status) {
            status = bk_import_row(importing, "costumes.csv", i);
        }
    }
    return status ? status : bk_import_told(importing, "costumes.csv", importing->folder->costumes.count);
}

// ------------------------------------------------------------------------------------------ pieces and steps

static bk_status add_piece(bk_importing *importing, const bk_piece *row, size_t position)
{
    bk_piece piece = *row;
    int64_t id = 0;
    piece.production_id = importing->production;
    bk_status status = bk_import_add(importing, BK_PIECES, &piece, position, &id);
    bk_index_put(importing->pieces, piece.name, id);
    if (!status) {
        status = link_list(importing, BK_PIECE_COSTUMES, id, importing->costumes, piece.costumes);
    }
    bk_private cost = {id, NULL, piece.cost, piece.currency};
    return status ? status : bk_import_private(importing, BK_PIECE_COSTS, &cost, NULL, piece.name, "cost");
}

static bk_status add_pieces(bk_importing *importing)
{
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < importing->folder->pieces.count; i++) {
        status = add_piece(importing, &importing->folder->pieces.items[i], i);
        if (!status) {
            status = bk_import_row(importing, "pieces.csv", i);
        }
    }
    return status ? status : bk_import_told(importing, "pieces.csv", importing->folder->pieces.count);
}

static const char *step_name(bk_importing *importing, const char *piece, const char *key)
{
    return bk_arena_print(importing->arena, "%s/%s", piece, key);
}

static bk_status add_steps(bk_importing *importing)
{
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < importing->folder->steps.count; i++) {
        bk_step step = importing->folder->steps.items[i];
        int64_t id = 0;
        step.production_id = importing->production;
        step.piece_id = bk_import_id(importing->pieces, step.piece);
        status = bk_import_add(importing, BK_STEPS, &step, i, &id);
        bk_index_put(importing->steps, step_name(importing, step.piece, step.key), id);
        if (!status) {
            status = bk_import_row(importing, "steps.csv", i);
        }
    }
    return status ? status : bk_import_told(importing, "steps.csv", importing->folder->steps.count);
}

static bk_status add_after(bk_importing *importing, const bk_step *row)
{
    int64_t id = bk_import_id(importing->steps, step_name(importing, row->piece, row->key));
    const char *rest = row->after ? row->after : "";
    const char *item;
    size_t length;
    size_t position = 0;
    bk_status status = BK_OK;
    while (!status && bk_list_item(&rest, &item, &length)) {
        const char *name = bk_arena_bytes(importing->arena, item, length);
        if (!memchr(item, '/', length)) {
            name = step_name(importing, row->piece, name);
        }
        status =
            link_records(importing, BK_STEP_AFTERS, id, bk_import_id(importing->steps, name), position++);
    }
    return status;
}

static bk_status add_afters(bk_importing *importing)
{
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < importing->folder->steps.count; i++) {
        status = add_after(importing, &importing->folder->steps.items[i]);
        if (!status) {
            status = bk_import_row(importing, "steps.csv", i);
        }
    }
    importing->rows_done += (int64_t)importing->folder->steps.count;
    return status;
}

// ---------------------------------------------------------------------------------------- needs, fittings, notes

static bk_status add_needs(bk_importing *importing)
{
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < importing->folder->needs.count; i++) {
        bk_need need = importing->folder->needs.items[i];
        need.step_id = bk_import_id(importing->steps, step_name(importing, need.piece, need.step));
        need.material_id = bk_import_id(importing->materials, need.material);
        status = bk_import_add(importing, BK_NEEDS, &need, i, NULL);
        if (!status) {
            status = bk_import_row(importing, "needs.csv", i);
        }
    }
    return status ? status : bk_import_told(importing, "needs.csv", importing->folder->needs.count);
}

static bk_status add_fittings(bk_importing *importing)
{
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < importing->folder->fittings.count; i++) {
        bk_fitting fitting = importing->folder->fittings.items[i];
        fitting.production_id = importing->production;
        fitting.step_id = bk_import_id(importing->steps, step_name(importing, fitting.piece, fitting.step));
        fitting.performer_id = bk_import_id(importing->performers, fitting.performer);
        status = bk_import_add(importing, BK_FITTINGS, &fitting, i, NULL);
        if (!status) {
            status = bk_import_row(importing, "fittings.csv", i);
        }
    }
    return status ? status : bk_import_told(importing, "fittings.csv", importing->folder->fittings.count);
}

static bk_status add_notes(bk_importing *importing)
{
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < importing->folder->notes.count; i++) {
        bk_note note = importing->folder->notes.items[i];
        note.production_id = importing->production;
        note.costume_id = bk_import_id(importing->costumes, note.costume);
        note.piece_id = bk_import_id(importing->pieces, note.piece);
        note.step_id =
            note.step ? bk_import_id(importing->steps, step_name(importing, note.piece, note.step)) : 0;
        status = bk_import_add(importing, BK_NOTES, &note, i, NULL);
        if (!status) {
            status = bk_import_row(importing, "notes.csv", i);
        }
    }
    return status ? status : bk_import_told(importing, "notes.csv", importing->folder->notes.count);
}

bk_status bk_import_show(bk_importing *importing)
{
    static bk_status (*const parts[])(bk_importing *) = {
        add_company, add_dates,  add_roles, add_costumes, add_pieces,
        add_steps,   add_afters, add_needs, add_fittings, add_notes,
    };
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < sizeof parts / sizeof *parts; i++) {
        status = parts[i](importing);
    }
    return status;
}
