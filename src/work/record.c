#include "bodkin/work/record.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/work/record_fields.h"
#include "bodkin/work/record_inside.h"
#include "bodkin/work/record_kinds.h"
#include "bodkin/work/record_move.h"
#include "bodkin/work/record_names.h"
#include "bodkin/work/record_words.h"

// --------------------------------------------------------------------------------------------------
// reading

bk_status bk_record_look(bk_desk *desk, bk_family family, int64_t id, bk_any_record *record, bool *found)
{
    long production = bk_record_kinds[family].production;
    bk_status status = bk_desk_get(desk, family, id, record, found);
    if (status || !*found) {
        return status;
    }
    if (production != BK_NO_OFFSET) {
        memcpy(&desk->production, (const char *)record + production, sizeof desk->production);
    }
    return bk_names_fill(desk, family, record);
}

bk_status bk_record_read_inside(const bk_job *job, bk_family family, int64_t id, void *record, bool *found,
                                bk_error *error)
{
    bk_any_record read;
    bk_desk desk = bk_desk_lay(job, error);
    *found = false;
    bk_status status = bk_record_look(&desk, family, id, &read, found);
    bk_desk_clear(&desk);
    *found = *found && !status;
    if (*found) {
        memcpy(record, &read, bk_record_kinds[family].size);
    }
    return status;
}

bk_status bk_record_read(const bk_job *job, bk_family family, int64_t id, void *record, bool *found,
                         bk_error *error)
{
    *found = false;
    bk_status status = bk_store_read_begin(job->store, error);
    if (status) {
        return status;
    }
    status = bk_record_read_inside(job, family, id, record, found, error);
    bk_store_read_end(job->store);
    return status;
}

// ---------------------------------------------------------------------------------------------------
// saving

/// A record on its way into the store.
typedef struct saving_work {
    bk_desk desk;
    bk_family family;
    const bk_record_kind *kind;
    const bk_record_saving *saving;
    bk_record_saved *saved;
    bk_any_record now, record; ///< as it stands, and as it shall be
    bool known;                ///< it stands already
    bool joins;                ///< a performer whom the workroom knows joins the company
} saving_work;

static const void *now_of(const saving_work *work)
{
    return work->known ? &work->now : NULL;
}

static bool differs(const saving_work *work, const void *left, const void *right)
{
    const char *names[BK_FIELDS_NAMED];
    const bk_record_saving *saving = work->saving;
    return bk_fields_differ(work->family, left, right, names) ||
           (saving->same && !saving->same(saving->context, left, right));
}

/// Reads the record as it stands; `*stop` where it is gone, or newer than it
/// was when it was read.
static bk_status compare(saving_work *work, bool *stop)
{
    int64_t id;
    memcpy(&id, work->saving->before, sizeof id);
    bk_status status = bk_record_look(&work->desk, work->family, id, &work->now, &work->known);
    if (status) {
        return status;
    }
    work->record.id = id;
    work->saved->gone = !work->known;
    *stop = work->saved->gone;
    if (work->known && !work->saving->over && differs(work, work->saving->before, &work->now)) {
        void *newer = bk_arena_take(work->desk.job->arena, work->kind->size);
        work->saved->newer = memcpy(newer, &work->now, work->kind->size);
        *stop = true;
    }
    return BK_OK;
}

/// A new performer of a name that the workroom knows is that performer, and
/// joins the company.
static bk_status adopt(saving_work *work)
{
    int64_t id = 0;
    bool has = false;
    bk_performer *performer = &work->record.performer;
    bk_status status = bk_desk_find(&work->desk, BK_PERFORMERS, 0, performer->name, &id);
    if (status || !id || !work->desk.production) {
        return status;
    }
    status = bk_company_has(&work->desk, id, &has);
    if (!status && !has) {
        status = bk_record_look(&work->desk, BK_PERFORMERS, id, &work->now, &work->known);
    }
    if (status || !work->known) {
        return status;
    }
    bk_performer filled = *performer;
    *performer = work->now.performer;
    bk_fields_fill(BK_PERFORMERS, &filled, performer);
    work->joins = true;
    return BK_OK;
}

/// Puts what a form does not ask: the production, and that a step cannot wait
/// where nothing is said.
static bk_status prepare(saving_work *work)
{
    long at = work->kind->production;
    int64_t production = work->desk.production;
    bk_fields_tidy(work->family, &work->record, work->desk.job->arena);
    if (work->family == BK_STEPS && work->record.step.can_wait == BK_NOT_KNOWN) {
        work->record.step.can_wait = 0;
    }
    if (work->family == BK_WORK_STEPS && work->record.work_step.can_wait == BK_NOT_KNOWN) {
        work->record.work_step.can_wait = 0;
    }
    if (at == BK_NO_OFFSET) {
        return BK_OK;
    }
    if (!production) {
        return bk_desk_refuse(&work->desk, NULL, "Open a production first: %s belongs to one.",
                              bk_record_noun(work->family));
    }
    memcpy((char *)&work->record + at, &production, sizeof production);
    return BK_OK;
}

static bk_status check(saving_work *work)
{
    bk_status status =
        bk_fields_check(&work->desk, work->family, bk_record_noun(work->family), &work->record);
    if (!status) {
        status = bk_names_resolve(&work->desk, work->family, now_of(work), &work->record);
    }
    if (!status) {
        status = bk_desk_check_name(&work->desk, work->family, now_of(work), &work->record);
    }
    return !status && work->kind->check ? work->kind->check(&work->desk, now_of(work), &work->record)
                                        : status;
}

/// The list's key by which the last place of it is asked: as its list, but
/// steps are counted by production.
static bk_status last_place(saving_work *work, int64_t *position)
{
    int64_t key = 0;
    long at = work->kind->production == BK_NO_OFFSET ? work->kind->list : work->kind->production;
    if (!work->kind->placed) {
        return BK_OK;
    }
    if (at != BK_NO_OFFSET) {
        memcpy(&key, (const char *)&work->record + at, sizeof key);
    }
    return bk_store_last_place(work->desk.job->store, work->family, key, position, work->desk.error);
}

static bk_status write_row(saving_work *work)
{
    bk_desk *desk = &work->desk;
    int64_t position = 0;
    if (work->known) {
        return bk_store_put(desk->job->store, work->family, &work->record, desk->error);
    }
    work->record.id = 0;
    bk_status status = last_place(work, &position);
    if (!status) {
        status = bk_store_add(desk->job->store, work->family, &work->record, position, &work->record.id,
                              desk->error);
    }
    return status;
}

/// The day as of which a step is done by what is saved.
static bk_day done_day(const saving_work *work)
{
    bk_day day = BK_NO_DAY;
    if (work->family == BK_STEPS) {
        day = work->record.step.done_on;
    } else if (work->family == BK_FITTINGS) {
        day = work->record.fitting.held_on;
    }
    return day == BK_NO_DAY ? work->desk.job->today : day;
}

static bk_status write(saving_work *work)
{
    bk_desk *desk = &work->desk;
    bk_step_watch watch = {.count = 0};
    const void *now = now_of(work);
    bk_status status = work->kind->watch ? work->kind->watch(desk, now, &work->record, &watch) : BK_OK;
    if (!status) {
        status = write_row(work);
    }
    if (!status) {
        status = bk_names_write(desk, work->family, now, &work->record);
    }
    if (!status && work->kind->follow) {
        status = work->kind->follow(desk, now, &work->record);
    }
    if (!status && work->joins) {
        status = bk_company_join(desk, work->record.id);
    }
    if (!status && (!work->known || work->joins) && work->kind->moves && work->saving->behind) {
        status = bk_places_behind(desk, work->family, &work->record, work->saving->behind);
    }
    return status ? status : bk_shelf_settle(desk, &watch, done_day(work));
}

/// "Changed: step 4A-1/cut Cut the linen: minutes, note"; more than two fields
/// are not told.
static const char *changed_sentence(const saving_work *work)
{
    bk_arena *arena = work->desk.job->arena;
    const char *names[BK_FIELDS_NAMED];
    const char *name = bk_desk_name_of(work->family, &work->record);
    if (!bk_same_text(name, bk_desk_name_of(work->family, &work->now))) {
        return bk_arena_print(arena, "Renamed: %s, now %s",
                              bk_record_called(&work->desk, work->family, &work->now), name);
    }
    size_t count = bk_fields_differ(work->family, &work->now, &work->record, names);
    const char *called = bk_record_called(&work->desk, work->family, &work->record);
    if (!count || count > BK_FIELDS_NAMED) {
        return bk_arena_print(arena, "Changed: %s", called);
    }
    return bk_arena_print(arena, "Changed: %s: %s%s%s", called, names[0], names[1] ? ", " : "",
                          names[1] ? names[1] : "");
}

static const char *sentence_of(const saving_work *work)
{
    if (work->known && !work->joins) {
        return changed_sentence(work);
    }
    return bk_arena_print(work->desk.job->arena, "%s: %s", work->joins ? "Joined the company" : "New",
                          bk_record_called(&work->desk, work->family, &work->record));
}

/// All of it within the change; `saved->sentence` stays NULL where nothing is
/// to be written.
static bk_status save(saving_work *work)
{
    bool stop = false;
    bk_status status = work->saving->before ? compare(work, &stop) : BK_OK;
    if (!status && !stop) {
        status = prepare(work);
    }
    if (!status && !stop && !work->known && work->family == BK_PERFORMERS) {
        status = adopt(work);
    }
    if (status || stop) {
        return status;
    }
    if (work->known && !work->joins && !differs(work, &work->now, &work->record)) {
        work->saved->id = work->record.id;
        return BK_OK;
    }
    status = check(work);
    if (!status) {
        status = write(work);
    }
    if (!status) {
        work->saved->id = work->record.id;
        work->saved->sentence = sentence_of(work);
    }
    return status;
}

bk_status bk_record_save_inside(const bk_job *job, const bk_record_saving *saving, bk_record_saved *saved,
                                bk_error *error)
{
    saving_work work = {.desk = bk_desk_lay(job, error),
                        .family = saving->family,
                        .kind = &bk_record_kinds[saving->family],
                        .saving = saving,
                        .saved = saved};
    *saved = (bk_record_saved){0};
    memcpy(&work.record, saving->after, work.kind->size);
    bk_status status = save(&work);
    saved->column = work.desk.column;
    bk_desk_clear(&work.desk);
    return status;
}

bk_status bk_record_save(const bk_job *job, const bk_record_saving *saving, bk_record_saved *saved,
                         bk_error *error)
{
    *saved = (bk_record_saved){0};
    bk_status status = bk_store_change_begin(job->store, error);
    if (status) {
        return status;
    }
    status = bk_record_save_inside(job, saving, saved, error);
    if (!status && saved->sentence) {
        return bk_store_change_commit(job->store, job->made_at, saved->sentence, NULL, error);
    }
    bk_store_change_drop(job->store);
    return status;
}

bk_status bk_production_put_away(const bk_job *job, int64_t id, bool away, const char **sentence,
                                 bk_error *error)
{
    bk_production row;
    bool found = false;
    *sentence = NULL;
    bk_status status = bk_store_change_begin(job->store, error);
    if (status) {
        return status;
    }
    status = bk_store_get(job->store, BK_PRODUCTIONS, id, job->arena, &row, &found, error);
    if (!status && !found) {
        status = bk_fail(error, BK_REFUSED, "This production is no longer in the workroom.");
    }
    if (!status && away != (row.put_away_on != BK_NO_DAY)) {
        row.put_away_on = away ? job->today : BK_NO_DAY;
        status = bk_store_put(job->store, BK_PRODUCTIONS, &row, error);
        *sentence =
            bk_arena_print(job->arena, "%s: production %s", away ? "Put away" : "Back in work", row.name);
    }
    if (!status && *sentence) {
        return bk_store_change_commit(job->store, job->made_at, *sentence, NULL, error);
    }
    bk_store_change_drop(job->store);
    return status;
}
