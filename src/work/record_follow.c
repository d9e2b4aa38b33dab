#include "bodkin/base/text.h"
#include "bodkin/work/record_kinds.h"
#include "bodkin/work/record_order.h"

// What else changes when a record was filled in, within the same change.

// ------------------------------------------------------------------------------------------
// people and performers

bk_status bk_company_has(bk_desk *desk, int64_t performer, bool *has)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_COMPANY, &rows);
    *has = false;
    for (size_t i = 0; i < rows.count; i++) {
        *has |= ((const bk_link *)rows.items)[i].to_id == performer;
    }
    return status;
}

bk_status bk_company_join(bk_desk *desk, int64_t performer)
{
    bool has = false;
    int64_t position = 0;
    bk_store *store = desk->job->store;
    bk_status status = performer && desk->production ? bk_company_has(desk, performer, &has) : BK_OK;
    if (status || has || !performer || !desk->production) {
        return status;
    }
    status = bk_store_last_place(store, BK_COMPANY, desk->production, &position, desk->error);
    bk_link link = {.from_id = desk->production, .to_id = performer};
    if (!status) {
        status = bk_store_add(store, BK_COMPANY, &link, position, NULL, desk->error);
    }
    bk_desk_forget(desk, BK_COMPANY);
    return status;
}

/// Lets the absences of that name reach one who came later.
static bk_status link_aways(bk_desk *desk, const char *name, int64_t person, int64_t performer)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_AWAYS, &rows);
    for (size_t i = 0; !status && i < rows.count; i++) {
        bk_away away = ((const bk_away *)rows.items)[i];
        bool new_person = person && !away.person_id;
        bool new_performer = performer && !away.performer_id;
        if (bk_same_text(away.who, name) && (new_person || new_performer)) {
            away.person_id = new_person ? person : away.person_id;
            away.performer_id = new_performer ? performer : away.performer_id;
            status = bk_store_put(desk->job->store, BK_AWAYS, &away, desk->error);
        }
    }
    return status;
}

/// Parts the absences that a person and a performer had together by their name, where one of them is renamed: each
/// keeps one.
static bk_status part_aways(bk_desk *desk, int64_t person, int64_t performer)
{
    bk_rows rows;
    bk_store *store = desk->job->store;
    bk_status status = bk_desk_rows(desk, BK_AWAYS, &rows);
    for (size_t i = 0; !status && i < rows.count; i++) {
        bk_away of_person = ((const bk_away *)rows.items)[i];
        bk_away of_performer = of_person;
        bool together = of_person.person_id && of_person.performer_id;
        if (!together || (of_person.person_id != person && of_person.performer_id != performer)) {
            continue;
        }
        of_person.performer_id = 0;
        of_performer.id = of_performer.person_id = 0;
        status = bk_store_put(store, BK_AWAYS, &of_person, desk->error);
        if (!status) {
            status = bk_store_add(store, BK_AWAYS, &of_performer, 0, NULL, desk->error);
        }
    }
    return status;
}

bk_status bk_follow_person(bk_desk *desk, const void *now, const void *record)
{
    const bk_person *known = now;
    const bk_person *person = record;
    if (known) {
        return bk_same_text(known->name, person->name) ? BK_OK : part_aways(desk, person->id, 0);
    }
    return link_aways(desk, person->name, person->id, 0);
}

bk_status bk_follow_performer(bk_desk *desk, const void *now, const void *record)
{
    const bk_performer *known = now;
    const bk_performer *performer = record;
    if (known) {
        return bk_same_text(known->name, performer->name) ? BK_OK : part_aways(desk, 0, performer->id);
    }
    bk_status status = link_aways(desk, performer->name, 0, performer->id);
    return status ? status : bk_company_join(desk, performer->id);
}

bk_status bk_follow_role(bk_desk *desk, const void *now, const void *record)
{
    (void)now;
    bk_status status = bk_company_join(desk, ((const bk_role *)record)->performer_id);
    for (size_t i = 0; !status && i < desk->linked_count; i++) {
        status = bk_company_join(desk, desk->linked[i]);
    }
    return status;
}

bk_status bk_follow_fitting(bk_desk *desk, const void *now, const void *record)
{
    (void)now;
    return bk_company_join(desk, ((const bk_fitting *)record)->performer_id);
}

// ----------------------------------------------------------------------------------------------------
// steps

bk_status bk_watch_step(bk_desk *desk, const void *now, const void *record, bk_step_watch *watch)
{
    (void)now;
    return record ? bk_shelf_watch(desk, watch, ((const bk_step *)record)->id) : BK_OK;
}

bk_status bk_watch_fitting(bk_desk *desk, const void *now, const void *record, bk_step_watch *watch)
{
    bk_status status = now ? bk_shelf_watch(desk, watch, ((const bk_fitting *)now)->step_id) : BK_OK;
    return status || !record ? status : bk_shelf_watch(desk, watch, ((const bk_fitting *)record)->step_id);
}

/// Notes that became a step of one piece are about the piece that it is moved
/// to.
static bk_status move_notes(bk_desk *desk, const bk_step *step)
{
    bk_rows rows;
    bk_status status = bk_desk_rows(desk, BK_NOTES, &rows);
    for (size_t i = 0; !status && i < rows.count; i++) {
        bk_note note = ((const bk_note *)rows.items)[i];
        if (note.step_id == step->id && note.piece_id != step->piece_id) {
            note.piece_id = step->piece_id;
            status = bk_store_put(desk->job->store, BK_NOTES, &note, desk->error);
        }
    }
    return status;
}

bk_status bk_follow_step(bk_desk *desk, const void *now, const void *record)
{
    const bk_step *known = now;
    const bk_step *step = record;
    int64_t position = 0;
    if (!known || known->piece_id == step->piece_id) {
        return BK_OK;
    }
    bk_store *store = desk->job->store;
    bk_status status = bk_store_last_place(store, BK_STEPS, step->production_id, &position, desk->error);
    if (!status) {
        status = bk_store_place(store, BK_STEPS, step->id, position, desk->error);
    }
    return status ? status : move_notes(desk, step);
}

// ----------------------------------------------------------------------------------
// the shelf, orders of work

bk_status bk_follow_material(bk_desk *desk, const void *now, const void *record)
{
    return bk_shelf_count(desk, now, record);
}

bk_status bk_follow_need(bk_desk *desk, const void *now, const void *record)
{
    const bk_need *known = now;
    const bk_need *need = record;
    bool same = known && known->step_id == need->step_id && known->material_id == need->material_id;
    return same ? BK_OK : bk_shelf_note_need(desk, need);
}

bk_status bk_follow_order(bk_desk *desk, const void *now, const void *record)
{
    return bk_shelf_deliver(desk, now, record);
}

bk_status bk_work_own(bk_desk *desk, int64_t work)
{
    bk_work row;
    bool found = false;
    bk_status status = bk_desk_get(desk, BK_WORKS, work, &row, &found);
    if (status || !found || !row.ready) {
        return status;
    }
    row.ready = 0;
    return bk_store_put(desk->job->store, BK_WORKS, &row, desk->error);
}

bk_status bk_follow_work_step(bk_desk *desk, const void *now, const void *record)
{
    const bk_work_step *known = now;
    const bk_work_step *step = record;
    bk_status status = BK_OK;
    if (known && !bk_same_text(known->key, step->key)) {
        bk_desk_forget(desk, BK_WORK_STEPS);
        status = bk_order_put_instead(desk, step->work_id, known->key, step->key);
    }
    return status ? status : bk_work_own(desk, step->work_id);
}
