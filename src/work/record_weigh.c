#include "bodkin/base/text.h"
#include "bodkin/work/record_kinds.h"
#include "bodkin/work/record_words.h"

// What goes with a record that is taken away, and what cannot be taken away.

bk_status bk_weigh_production(bk_desk *desk, const void *record, bk_leaving *leaving)
{
    (void)record;
    (void)leaving;
    return bk_desk_refuse(desk, NULL,
                          "A production is not taken away: put it away, and it "
                          "is kept out of sight.");
}

bk_status bk_weigh_person(bk_desk *desk, const void *record, bk_leaving *leaving)
{
    bk_rows rows;
    const bk_person *person = record;
    bk_status status = bk_desk_rows(desk, BK_AWAYS, &rows);
    const bk_away *aways = rows.items;
    for (size_t i = 0; i < rows.count; i++) {
        leaving->absence_count += aways[i].person_id == person->id && !aways[i].performer_id;
    }
    return status;
}

// ---------------------------------------------------------------------------------------------------
// cast

static bk_status count_performer(bk_desk *desk, int64_t performer, bk_counted counts[3])
{
    bk_rows roles;
    bk_rows covers;
    bk_rows fittings;
    bk_status status = bk_desk_rows(desk, BK_ROLES, &roles);
    if (!status) {
        status = bk_desk_rows(desk, BK_COVERS, &covers);
    }
    if (!status) {
        status = bk_desk_rows(desk, BK_FITTINGS, &fittings);
    }
    if (status) {
        return status;
    }
    for (size_t i = 0; i < roles.count; i++) {
        counts[0].count += ((const bk_role *)roles.items)[i].performer_id == performer;
    }
    for (size_t i = 0; i < covers.count; i++) {
        counts[1].count += ((const bk_link *)covers.items)[i].to_id == performer;
    }
    for (size_t i = 0; i < fittings.count; i++) {
        counts[2].count += ((const bk_fitting *)fittings.items)[i].performer_id == performer;
    }
    return BK_OK;
}

bk_status bk_weigh_performer(bk_desk *desk, const void *record, bk_leaving *leaving)
{
    bool has = false;
    const bk_performer *performer = record;
    bk_counted counts[] = {{0, "role", "roles"}, {0, "cover", "covers"}, {0, "fitting", "fittings"}};
    bk_status status = bk_company_has(desk, performer->id, &has);
    if (!status && !has) {
        return bk_desk_refuse(desk, NULL, "%s is not in the company of this production.",
                              bk_desk_safe(desk, performer->name));
    }
    if (!status) {
        status = count_performer(desk, performer->id, counts);
    }
    const char *words = bk_counted_words(desk->job->arena, counts, sizeof counts / sizeof *counts);
    if (words) {
        leaving->words = bk_arena_print(
            desk->job->arena, "%s will no longer name them; the measures stay in the workroom", words);
    }
    return status;
}

bk_status bk_weigh_role(bk_desk *desk, const void *record, bk_leaving *leaving)
{
    (void)leaving;
    bk_rows rows;
    const bk_role *role = record;
    const char *worn = NULL;
    bk_status status = bk_desk_rows(desk, BK_COSTUMES, &rows);
    const bk_costume *costumes = rows.items;
    for (size_t i = 0; i < rows.count; i++) {
        if (costumes[i].role_id == role->id) {
            const char *number = bk_desk_safe(desk, costumes[i].number);
            worn = worn ? bk_arena_print(desk->scratch, "%s, %s", worn, number) : number;
        }
    }
    if (status || !worn) {
        return status;
    }
    return bk_desk_refuse(desk, NULL, "\"%s\" wears %s: take that away first, or give it to another role.",
                          bk_desk_safe(desk, role->name), worn);
}

// ---------------------------------------------------------------------------------------------
// garments

static bool has_id(const bk_id_index *ids, int64_t id)
{
    return bk_id_index_find(ids, id) != NULL;
}

/// Counts what hangs on the steps that leave.
static bk_status count_of_steps(bk_desk *desk, bk_leaving *leaving)
{
    bk_rows needs;
    bk_rows fittings;
    bk_rows clocks;
    bk_status status = bk_desk_rows(desk, BK_NEEDS, &needs);
    if (!status) {
        status = bk_desk_rows(desk, BK_FITTINGS, &fittings);
    }
    if (!status) {
        status = bk_desk_rows(desk, BK_RUNNINGS, &clocks);
    }
    if (status) {
        return status;
    }
    for (size_t i = 0; i < needs.count; i++) {
        leaving->need_count += has_id(leaving->steps, ((const bk_need *)needs.items)[i].step_id);
    }
    for (size_t i = 0; i < fittings.count; i++) {
        leaving->fitting_count += has_id(leaving->steps, ((const bk_fitting *)fittings.items)[i].step_id);
    }
    for (size_t i = 0; i < clocks.count; i++) {
        leaving->clock_count += has_id(leaving->steps, ((const bk_running *)clocks.items)[i].step_id);
    }
    return BK_OK;
}

/// The steps of the pieces that leave.
static bk_status gather_steps(bk_desk *desk, bk_leaving *leaving)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_STEPS, &rows);
    const bk_step *steps = rows.items;
    for (size_t i = 0; i < rows.count; i++) {
        if (has_id(leaving->pieces, steps[i].piece_id)) {
            bk_id_index_put(leaving->steps, steps[i].id, 1);
            leaving->step_count++;
        }
    }
    return status ? status : count_of_steps(desk, leaving);
}

bk_status bk_weigh_costume(bk_desk *desk, const void *record, bk_leaving *leaving)
{
    bk_rows rows;
    const bk_costume *costume = record;
    bk_id_index *elsewhere = bk_id_index_new();
    bk_status status = bk_desk_rows(desk, BK_PIECE_COSTUMES, &rows);
    const bk_link *links = rows.items;
    for (size_t i = 0; i < rows.count; i++) {
        if (links[i].to_id != costume->id) {
            bk_id_index_put(elsewhere, links[i].from_id, 1);
        }
    }
    for (size_t i = 0; i < rows.count; i++) {
        if (links[i].to_id == costume->id && !has_id(elsewhere, links[i].from_id)) {
            bk_id_index_put(leaving->pieces, links[i].from_id, 1);
            leaving->piece_count++;
        }
    }
    bk_id_index_free(elsewhere);
    return status ? status : gather_steps(desk, leaving);
}

bk_status bk_weigh_piece(bk_desk *desk, const void *record, bk_leaving *leaving)
{
    bk_id_index_put(leaving->pieces, ((const bk_piece *)record)->id, 1);
    return gather_steps(desk, leaving);
}

bk_status bk_weigh_step(bk_desk *desk, const void *record, bk_leaving *leaving)
{
    bk_id_index_put(leaving->steps, ((const bk_step *)record)->id, 1);
    return count_of_steps(desk, leaving);
}

// ----------------------------------------------------------------------------------
// materials, orders of work

/// Counts the steps of all productions that need a material.
static bk_status count_needing(bk_desk *desk, int64_t material, size_t *count)
{
    bk_rows productions;
    bk_status status = bk_desk_rows(desk, BK_PRODUCTIONS, &productions);
    *count = 0;
    for (size_t i = 0; !status && i < productions.count; i++) {
        bk_rows rows;
        int64_t production = ((const bk_production *)productions.items)[i].id;
        status = bk_store_read(desk->job->store, BK_NEEDS, production, desk->scratch, &rows, desk->error);
        for (size_t j = 0; !status && j < rows.count; j++) {
            *count += ((const bk_need *)rows.items)[j].material_id == material;
        }
    }
    return status;
}

bk_status bk_weigh_material(bk_desk *desk, const void *record, bk_leaving *leaving)
{
    bk_rows rows;
    size_t needing = 0;
    const bk_material *material = record;
    bk_status status = count_needing(desk, material->id, &needing);
    if (!status && needing) {
        return bk_desk_refuse(desk, NULL, "%zu step%s need%s \"%s\": change what they need first.", needing,
                              needing == 1 ? "" : "s", needing == 1 ? "s" : "",
                              bk_desk_safe(desk, material->name));
    }
    if (!status) {
        status = bk_desk_rows(desk, BK_ORDERS, &rows);
    }
    for (size_t i = 0; !status && i < rows.count; i++) {
        leaving->order_count += ((const bk_order *)rows.items)[i].material_id == material->id;
    }
    return status;
}

bk_status bk_weigh_work(bk_desk *desk, const void *record, bk_leaving *leaving)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_WORK_STEPS, &rows);
    for (size_t i = 0; i < rows.count; i++) {
        leaving->step_count += ((const bk_work_step *)rows.items)[i].work_id == ((const bk_work *)record)->id;
    }
    return status;
}
