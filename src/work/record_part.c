#include "bodkin/work/record_kinds.h"
#include "bodkin/work/record_names.h"
#include "bodkin/work/record_order.h"

// What has to change before a record is removed, within a change.

static bk_status remove_row(bk_desk *desk, bk_family family, int64_t id)
{
    return bk_store_remove(desk->job->store, family, id, desk->error);
}

static bool has_id(const bk_id_index *ids, int64_t id)
{
    return bk_id_index_find(ids, id) != NULL;
}

// ----------------------------------------------------------------------------------------------------
// people

bk_status bk_part_person(bk_desk *desk, const void *record, const bk_leaving *leaving)
{
    (void)leaving;
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_AWAYS, &rows);
    for (size_t i = 0; !status && i < rows.count; i++) {
        bk_away away = ((const bk_away *)rows.items)[i];
        if (away.person_id != ((const bk_person *)record)->id) {
            continue;
        }
        away.person_id = 0;
        status = away.performer_id ? bk_store_put(desk->job->store, BK_AWAYS, &away, desk->error)
                                   : remove_row(desk, BK_AWAYS, away.id);
    }
    return status;
}

static bk_status uncast(bk_desk *desk, int64_t performer)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_ROLES, &rows);
    for (size_t i = 0; !status && i < rows.count; i++) {
        bk_role role = ((const bk_role *)rows.items)[i];
        if (role.performer_id == performer) {
            role.performer_id = 0;
            status = bk_store_put(desk->job->store, BK_ROLES, &role, desk->error);
        }
    }
    if (!status) {
        status = bk_desk_rows(desk, BK_COVERS, &rows);
    }
    for (size_t i = 0; !status && i < rows.count; i++) {
        const bk_link *link = (const bk_link *)rows.items + i;
        if (link->to_id == performer) {
            status = bk_store_remove_link(desk->job->store, BK_COVERS, link->from_id, performer, desk->error);
        }
    }
    return status;
}

bk_status bk_part_performer(bk_desk *desk, const void *record, const bk_leaving *leaving)
{
    (void)leaving;
    bk_rows rows;
    int64_t performer = ((const bk_performer *)record)->id;
    bk_status status = uncast(desk, performer);
    if (!status) {
        status = bk_desk_rows(desk, BK_FITTINGS, &rows);
    }
    for (size_t i = 0; !status && i < rows.count; i++) {
        bk_fitting fitting = ((const bk_fitting *)rows.items)[i];
        if (fitting.performer_id == performer) {
            fitting.performer_id = 0;
            status = bk_store_put(desk->job->store, BK_FITTINGS, &fitting, desk->error);
        }
    }
    return status
               ? status
               : bk_store_remove_link(desk->job->store, BK_COMPANY, desk->production, performer, desk->error);
}

// --------------------------------------------------------------------------------------------------
// garments

/// Notes stay, and refer to nothing where what they are about is gone.
static bk_status keep_notes(bk_desk *desk, int64_t costume, const bk_leaving *leaving)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_NOTES, &rows);
    for (size_t i = 0; !status && i < rows.count; i++) {
        bk_note note = ((const bk_note *)rows.items)[i];
        bool of_costume = costume && note.costume_id == costume;
        bool of_piece = has_id(leaving->pieces, note.piece_id);
        bool of_step = has_id(leaving->steps, note.step_id);
        if (of_costume || of_piece || of_step) {
            note.costume_id = of_costume ? 0 : note.costume_id;
            note.piece_id = of_piece ? 0 : note.piece_id;
            note.step_id = of_step ? 0 : note.step_id;
            status = bk_store_put(desk->job->store, BK_NOTES, &note, desk->error);
        }
    }
    return status;
}

static bk_status remove_fittings(bk_desk *desk, const bk_leaving *leaving)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_FITTINGS, &rows);
    const bk_fitting *fittings = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (has_id(leaving->steps, fittings[i].step_id)) {
            status = remove_row(desk, BK_FITTINGS, fittings[i].id);
        }
    }
    return status;
}

static bk_status remove_needs(bk_desk *desk, const bk_leaving *leaving)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_NEEDS, &rows);
    const bk_need *needs = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (has_id(leaving->steps, needs[i].step_id)) {
            status = remove_row(desk, BK_NEEDS, needs[i].id);
        }
    }
    return status;
}

static bk_status remove_clocks(bk_desk *desk, const bk_leaving *leaving)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_RUNNINGS, &rows);
    const bk_running *clocks = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (has_id(leaving->steps, clocks[i].step_id)) {
            status = remove_row(desk, BK_RUNNINGS, clocks[i].id);
        }
    }
    return status;
}

/// Removes the steps that leave, with what hangs on them. What they used of
/// materials stays used.
static bk_status remove_steps(bk_desk *desk, const bk_leaving *leaving)
{
    bk_rows rows;
    bk_status status = bk_order_take_out(desk, leaving->steps);
    static bk_status (*const parts[])(bk_desk *, const bk_leaving *) = {remove_fittings, remove_needs,
                                                                        remove_clocks};
    for (size_t i = 0; !status && i < sizeof parts / sizeof *parts; i++) {
        status = parts[i](desk, leaving);
    }
    if (!status) {
        status = bk_desk_rows(desk, BK_STEPS, &rows);
    }
    for (size_t i = 0; !status && i < rows.count; i++) {
        int64_t id = ((const bk_step *)rows.items)[i].id;
        if (has_id(leaving->steps, id)) {
            status = remove_row(desk, BK_STEPS, id);
        }
    }
    return status;
}

static bk_status remove_pieces(bk_desk *desk, const bk_leaving *leaving)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_PIECES, &rows);
    for (size_t i = 0; !status && i < rows.count; i++) {
        int64_t id = ((const bk_piece *)rows.items)[i].id;
        if (!has_id(leaving->pieces, id)) {
            continue;
        }
        status = bk_names_remove(desk, BK_PIECES, id);
        if (!status) {
            status = remove_row(desk, BK_PIECES, id);
        }
    }
    return status;
}

static bk_status remove_garments(bk_desk *desk, int64_t costume, const bk_leaving *leaving)
{
    bk_status status = keep_notes(desk, costume, leaving);
    if (!status) {
        status = remove_steps(desk, leaving);
    }
    return status ? status : remove_pieces(desk, leaving);
}

bk_status bk_part_costume(bk_desk *desk, const void *record, const bk_leaving *leaving)
{
    bk_rows rows;
    int64_t costume = ((const bk_costume *)record)->id;
    bk_status status = bk_desk_rows(desk, BK_PIECE_COSTUMES, &rows);
    const bk_link *links = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (links[i].to_id == costume) {
            status = bk_store_remove_link(desk->job->store, BK_PIECE_COSTUMES, links[i].from_id, costume,
                                          desk->error);
        }
    }
    return status ? status : remove_garments(desk, costume, leaving);
}

bk_status bk_part_piece(bk_desk *desk, const void *record, const bk_leaving *leaving)
{
    (void)record;
    return remove_garments(desk, 0, leaving);
}

bk_status bk_part_step(bk_desk *desk, const void *record, const bk_leaving *leaving)
{
    (void)record;
    return remove_garments(desk, 0, leaving);
}

// ----------------------------------------------------------------------------------
// materials, orders of work

bk_status bk_part_material(bk_desk *desk, const void *record, const bk_leaving *leaving)
{
    (void)leaving;
    bk_rows rows = {0};
    int64_t material = ((const bk_material *)record)->id;
    bk_status status = bk_shelf_forget_material(desk, material);
    if (!status) {
        status = bk_desk_rows(desk, BK_ORDERS, &rows);
    }
    const bk_order *orders = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (orders[i].material_id != material) {
            continue;
        }
        status = bk_names_remove(desk, BK_ORDERS, orders[i].id);
        if (!status) {
            status = remove_row(desk, BK_ORDERS, orders[i].id);
        }
    }
    return status;
}

bk_status bk_part_order(bk_desk *desk, const void *record, const bk_leaving *leaving)
{
    (void)leaving;
    return bk_shelf_forget_order(desk, record);
}

bk_status bk_part_work(bk_desk *desk, const void *record, const bk_leaving *leaving)
{
    (void)leaving;
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_WORK_STEPS, &rows);
    const bk_work_step *steps = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (steps[i].work_id == ((const bk_work *)record)->id) {
            status = remove_row(desk, BK_WORK_STEPS, steps[i].id);
        }
    }
    return status;
}

bk_status bk_part_work_step(bk_desk *desk, const void *record, const bk_leaving *leaving)
{
    (void)leaving;
    const bk_work_step *step = record;
    bk_status status = bk_order_put_instead(desk, step->work_id, step->key, step->after);
    return status ? status : bk_work_own(desk, step->work_id);
}
