#include "bodkin/work/record_inside.h"
#include "bodkin/work/record_kinds.h"
#include "bodkin/work/record_names.h"
#include "bodkin/work/record_words.h"

/// A record that is weighed or taken away.
typedef struct removal {
    bk_desk desk;
    bk_family family;
    const bk_record_kind *kind;
    bk_any_record record;
    bk_leaving leaving;
} removal;

static removal begin(const bk_job *job, bk_family family, bk_error *error)
{
    return (removal){.desk = bk_desk_lay(job, error),
                     .family = family,
                     .kind = &bk_record_kinds[family],
                     .leaving = {.pieces = bk_id_index_new(), .steps = bk_id_index_new()}};
}

static void end(removal *away)
{
    bk_id_index_free(away->leaving.pieces);
    bk_id_index_free(away->leaving.steps);
    bk_desk_clear(&away->desk);
}

static bk_status weigh(removal *away, int64_t id)
{
    bool found = false;
    bk_status status = bk_record_look(&away->desk, away->family, id, &away->record, &found);
    if (!status && !found) {
        return bk_desk_refuse(&away->desk, NULL, "It is no longer there: somebody has taken it away.");
    }
    return !status && away->kind->weigh ? away->kind->weigh(&away->desk, &away->record, &away->leaving)
                                        : status;
}

/// What goes with it, counted; NULL where nothing does.
static const char *counted(const removal *away, bool *one)
{
    const bk_leaving *leaving = &away->leaving;
    const bk_counted counts[] = {
        {leaving->piece_count, "piece", "pieces"},
        {leaving->step_count, "step", "steps"},
        {leaving->fitting_count, "fitting", "fittings"},
        {leaving->need_count, "need", "needs"},
        {leaving->clock_count, "running clock", "running clocks"},
        {leaving->order_count, "order", "orders"},
        {leaving->absence_count, "absence", "absences"},
    };
    size_t sum = 0;
    for (size_t i = 0; i < sizeof counts / sizeof *counts; i++) {
        sum += counts[i].count;
    }
    *one = sum == 1;
    return bk_counted_words(away->desk.job->arena, counts, sizeof counts / sizeof *counts);
}

bk_status bk_record_weigh(const bk_job *job, bk_family family, int64_t id, const char **goes_with,
                          bk_error *error)
{
    *goes_with = NULL;
    bk_status status = bk_store_read_begin(job->store, error);
    if (status) {
        return status;
    }
    removal away = begin(job, family, error);
    status = weigh(&away, id);
    bk_store_read_end(job->store);
    bool one = false;
    const char *words = status ? NULL : counted(&away, &one);
    if (!status) {
        *goes_with = away.leaving.words;
    }
    if (words) {
        *goes_with = bk_arena_print(job->arena, "%s %s with it", words, one ? "goes" : "go");
    }
    end(&away);
    return status;
}

/// "Taken away: costume 4A Working clothes with 3 pieces and 24 steps"
static const char *sentence_of(const removal *away)
{
    bool one = false;
    bk_arena *arena = away->desk.job->arena;
    const char *called = bk_record_called(&away->desk, away->family, &away->record);
    const char *words = counted(away, &one);
    if (away->family == BK_PERFORMERS) {
        return bk_arena_print(arena, "Left the company: %s", called);
    }
    return bk_arena_print(arena, "Taken away: %s%s%s", called, words ? " with " : "", words ? words : "");
}

/// Removes the record itself; a performer stays in the workroom.
static bk_status remove_itself(removal *away)
{
    bk_desk *desk = &away->desk;
    if (away->family == BK_PERFORMERS) {
        return BK_OK;
    }
    bk_status status = bk_names_remove(desk, away->family, away->record.id);
    return status ? status : bk_store_remove(desk->job->store, away->family, away->record.id, desk->error);
}

static bk_status take_away(removal *away, int64_t id)
{
    bk_desk *desk = &away->desk;
    bk_step_watch watch = {.count = 0};
    bk_status status = weigh(away, id);
    if (!status && away->kind->watch) {
        status = away->kind->watch(desk, &away->record, NULL, &watch);
    }
    if (!status && away->kind->part) {
        status = away->kind->part(desk, &away->record, &away->leaving);
    }
    if (!status) {
        status = remove_itself(away);
    }
    return status ? status : bk_shelf_settle(desk, &watch, desk->job->today);
}

bk_status bk_record_take_away_inside(const bk_job *job, bk_family family, int64_t id, const char **sentence,
                                     bk_error *error)
{
    removal away = begin(job, family, error);
    bk_status status = take_away(&away, id);
    *sentence = status ? NULL : sentence_of(&away);
    end(&away);
    return status;
}

bk_status bk_record_take_away(const bk_job *job, bk_family family, int64_t id, const char **sentence,
                              bk_error *error)
{
    *sentence = NULL;
    bk_status status = bk_store_change_begin(job->store, error);
    if (status) {
        return status;
    }
    status = bk_record_take_away_inside(job, family, id, sentence, error);
    if (!status) {
        return bk_store_change_commit(job->store, job->made_at, *sentence, NULL, error);
    }
    bk_store_change_drop(job->store);
    return status;
}
