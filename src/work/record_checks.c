#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/clock.h"
#include "bodkin/work/record_kinds.h"
#include "bodkin/work/record_order.h"

// What is particular to a family when one of its records is filled in.

static bk_status check_period(bk_desk *desk, const char *column, bk_day from, bk_day to)
{
    if (from == BK_NO_DAY || to == BK_NO_DAY || to >= from) {
        return BK_OK;
    }
    char first[BK_DAY_WORDS_ROOM];
    return bk_desk_refuse(desk, column, "The last day comes before the first, %s: write that day or a later.",
                          bk_day_words(from, desk->job->today, first));
}

bk_status bk_check_person(bk_desk *desk, const void *now, void *record)
{
    (void)now;
    const bk_person *person = record;
    return check_period(desk, "until", person->from, person->until);
}

/// Refuses an absence of nobody, with the nearest name among people and performers.
static bk_status refuse_who(bk_desk *desk, const char *who)
{
    bk_rows people;
    bk_rows performers;
    bk_status status = bk_desk_rows(desk, BK_PEOPLE, &people);
    if (!status) {
        status = bk_desk_rows(desk, BK_PERFORMERS, &performers);
    }
    if (status) {
        return status;
    }
    const char **names = bk_arena_clear(desk->scratch, people.count + performers.count, sizeof *names);
    for (size_t i = 0; i < people.count; i++) {
        names[i] = ((const bk_person *)people.items)[i].name;
    }
    for (size_t i = 0; i < performers.count; i++) {
        names[people.count + i] = ((const bk_performer *)performers.items)[i].name;
    }
    const char *near = bk_nearest(who, names, people.count + performers.count);
    return bk_desk_refuse(desk, "who", "No person and no performer is called \"%s\"%s%s%s",
                          bk_desk_safe(desk, who), near ? ": did you mean " : ".",
                          near ? bk_desk_safe(desk, near) : "", near ? "?" : "");
}

bk_status bk_check_away(bk_desk *desk, const void *now, void *record)
{
    bk_away *away = record;
    const bk_away *known = now;
    bk_status status = check_period(desk, "to", away->from, away->to);
    if (!status && known && bk_same_text(known->who, away->who)) {
        away->person_id = known->person_id;
        away->performer_id = known->performer_id;
        return BK_OK;
    }
    if (!status) {
        status = bk_desk_find(desk, BK_PEOPLE, 0, away->who, &away->person_id);
    }
    if (!status) {
        status = bk_desk_find(desk, BK_PERFORMERS, 0, away->who, &away->performer_id);
    }
    if (!status && !away->person_id && !away->performer_id) {
        status = refuse_who(desk, away->who);
    }
    return status;
}

static bk_status check_minutes(bk_desk *desk, int64_t quickest, int64_t longest)
{
    if (quickest == BK_NOT_KNOWN || longest == BK_NOT_KNOWN || quickest <= longest) {
        return BK_OK;
    }
    char least[BK_AMOUNT_ROOM];
    char most[BK_AMOUNT_ROOM];
    return bk_desk_refuse(desk, "longest", "The longest, %s, is less than the quickest, %s.",
                          bk_minutes_words(longest, most), bk_minutes_words(quickest, least));
}

/// A step that has fittings stays one of kind fit.
static bk_status check_kind(bk_desk *desk, const bk_step *now, const bk_step *step)
{
    bk_rows rows;
    if (!now || now->kind != BK_FIT || step->kind == BK_FIT) {
        return BK_OK;
    }
    bk_status status = bk_desk_rows(desk, BK_FITTINGS, &rows);
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (((const bk_fitting *)rows.items)[i].step_id == step->id) {
            status = bk_desk_refuse(desk, "kind",
                                    "This step has fittings: take them away first, "
                                    "or let it stay a fit.");
        }
    }
    return status;
}

/// A step that becomes done has no clock running; how long it took is what was filled in, else what the clock measured.
static bk_status end_clock(bk_desk *desk, const bk_step *now, bk_step *step)
{
    int64_t took = step->took;
    if (!now || now->done_on != BK_NO_DAY || step->done_on == BK_NO_DAY) {
        return BK_OK;
    }
    bk_status status = bk_running_end(desk->job->store, step, desk->job->made_at, desk->error);
    step->took = took == now->took ? step->took : took;
    return status;
}

bk_status bk_check_step(bk_desk *desk, const void *now, void *record)
{
    bk_step *step = record;
    bk_status status = check_minutes(desk, step->quickest, step->longest);
    if (!status) {
        status = check_kind(desk, now, step);
    }
    if (!status && desk->relink) {
        status = bk_order_check(desk, step);
    }
    return status ? status : end_clock(desk, now, step);
}

bk_status bk_check_need(bk_desk *desk, const void *now, void *record)
{
    bk_rows rows;
    const bk_need *known = now;
    const bk_need *need = record;
    if (known && known->step_id == need->step_id && known->material_id == need->material_id) {
        return BK_OK;
    }
    bk_status status = bk_desk_rows(desk, BK_NEEDS, &rows);
    const bk_need *others = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (others[i].id != need->id && others[i].step_id == need->step_id &&
            others[i].material_id == need->material_id) {
            status =
                bk_desk_refuse(desk, "material", "%s/%s needs \"%s\" already: change the quantity of that.",
                               bk_desk_safe(desk, need->piece), bk_desk_safe(desk, need->step),
                               bk_desk_safe(desk, need->material));
        }
    }
    return status;
}

bk_status bk_check_work(bk_desk *desk, const void *now, void *record)
{
    (void)desk;
    (void)now;
    ((bk_work *)record)->ready = 0;
    return BK_OK;
}

bk_status bk_check_work_step(bk_desk *desk, const void *now, void *record)
{
    const bk_work_step *known = now;
    const bk_work_step *step = record;
    if (known && known->work_id != step->work_id) {
        return bk_desk_refuse(desk, "work", "A step stays in its order of work: add it to the other one.");
    }
    bk_status status = check_minutes(desk, step->quickest, step->longest);
    bool same = known && bk_same_text(known->after, step->after) && bk_same_text(known->key, step->key);
    return status || same ? status : bk_order_check_work(desk, known, step);
}
