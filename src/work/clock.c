#include "bodkin/work/clock.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/bench_rows.h"
#include "bodkin/store/one.h"
#include "bodkin/work/change.h"

// -------------------------------------------------------------------------------------------------- moments

enum { TOOK_MOST = 1000000 }; // minutes, as the sheets take them

enum { MINUTE = 60, HOUR = 60 * MINUTE, DAY = 24 * HOUR }; // seconds

// "2027-03-02T09:30:00+01:00": where its parts stand.
enum { MOMENT_LENGTH = 16, OFFSET_LENGTH = 6, OFFSET_HOURS = 1, OFFSET_MINUTES = 4, TIME_DIGITS = 2 };

static bool read_number(const char *text, int64_t *number)
{
    *number = 0;
    for (int i = 0; i < TIME_DIGITS; i++) {
        if (text[i] < '0' || text[i] > '9') {
            return false;
        }
        *number = *number * 10 + (text[i] - '0');
    }
    return true;
}

/// Seconds that local time is ahead of UTC.
static bool read_offset(const char *text, int64_t *seconds)
{
    int64_t hours;
    int64_t minutes;
    *seconds = 0;
    if (!strcmp(text, "Z")) {
        return true;
    }
    if (strlen(text) != OFFSET_LENGTH || (*text != '+' && *text != '-') || text[OFFSET_MINUTES - 1] != ':' ||
        !read_number(text + OFFSET_HOURS, &hours) || !read_number(text + OFFSET_MINUTES, &minutes)) {
        return false;
    }
    *seconds = (hours * HOUR + minutes * MINUTE) * (*text == '-' ? -1 : 1);
    return true;
}

/// Seconds since the beginning of 1970, UTC.
static bool read_seconds(const char *text, int64_t *seconds)
{
    char minute[BK_MOMENT_ROOM];
    bk_moment moment;
    int64_t past = 0;
    int64_t offset;
    if (strlen(text) < MOMENT_LENGTH) {
        return false;
    }
    memcpy(minute, text, MOMENT_LENGTH);
    minute[MOMENT_LENGTH] = '\0';
    const char *rest = text + MOMENT_LENGTH;
    if (*rest == ':') {
        if (!read_number(rest + 1, &past)) {
            return false;
        }
        rest += 1 + TIME_DIGITS;
    }
    if (!bk_moment_read(minute, &moment) || moment.time == BK_NO_TIME || !read_offset(rest, &offset)) {
        return false;
    }
    *seconds = (int64_t)moment.day * DAY + (int64_t)moment.time * MINUTE + past - offset;
    return true;
}

int64_t bk_minutes_between(const char *from, const char *to)
{
    int64_t begun;
    int64_t ended;
    if (!from || !to || !read_seconds(from, &begun) || !read_seconds(to, &ended) || ended < begun) {
        return 0;
    }
    return (ended - begun + MINUTE / 2) / MINUTE;
}

// -------------------------------------------------------------------------------------------------- reading

static bk_status find_mine(bk_store *store, const char *who, bk_arena *arena, bk_running *mine, bool *runs,
                           bk_error *error)
{
    bk_rows rows = {0};
    *runs = false;
    bk_status status = bk_store_read(store, BK_RUNNINGS, 0, arena, &rows, error);
    const bk_running *items = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (bk_same_text(items[i].who, who)) {
            *mine = items[i];
            *runs = true;
        }
    }
    return status;
}

static bk_status read_line(bk_store *store, const char *who, const char *now, bk_arena *arena,
                           bk_running_line *line, bool *runs, bk_error *error)
{
    bk_bench_step found;
    bk_status status = find_mine(store, who, arena, &line->record, runs, error);
    if (status || !*runs) {
        return status;
    }
    status = bk_store_bench_step(store, line->record.step_id, arena, &found, error);
    if (!status) {
        line->piece = found.step.piece;
        line->step = found.step.key;
        line->step_title = found.step.title;
        line->minutes = bk_minutes_between(line->record.started_at, now);
    }
    return status;
}

bk_status bk_running_read(bk_store *store, const char *who, const char *now, bk_arena *arena,
                          bk_running_line *line, bool *runs, bk_error *error)
{
    bk_status status = bk_store_read_begin(store, error);
    if (!status) {
        status = read_line(store, who, now, arena, line, runs, error);
        bk_store_read_end(store);
    }
    return status;
}

// ------------------------------------------------------------------------------------------ starting, stopping

/// Adds what a clock measured to what the step took so far, as far as that can be kept; nothing under half a minute
/// counts.
static int64_t add_minutes(int64_t took, int64_t minutes)
{
    if (took == BK_NOT_KNOWN && !minutes) {
        return BK_NOT_KNOWN;
    }
    int64_t sum = took == BK_NOT_KNOWN ? minutes : took + minutes;
    return sum > TOOK_MOST ? TOOK_MOST : sum;
}

/// Stops a clock and keeps what it measured; `*words` says what was in hand and for how long.
static bk_status stop(const bk_job *job, const bk_running *mine, int64_t *minutes, const char **words,
                      bk_error *error)
{
    bk_bench_step found;
    bk_status status = bk_store_bench_step(job->store, mine->step_id, job->arena, &found, error);
    if (status) {
        return status;
    }
    *minutes = bk_minutes_between(mine->started_at, job->made_at);
    *words = bk_arena_print(job->arena, "%s %s, %s", found.step.piece, found.step.title,
                            bk_change_minutes(job, *minutes));
    found.step.took = add_minutes(found.step.took, *minutes);
    status = bk_store_put(job->store, BK_STEPS, &found.step, error);
    return status ? status : bk_store_remove(job->store, BK_RUNNINGS, mine->id, error);
}

static bk_status check_start(const bk_job *job, const bk_bench_step *found, const bk_running *mine, bool runs,
                             bk_error *error)
{
    const char *piece = bk_change_name(job, found->step.piece);
    const char *key = bk_change_name(job, found->step.key);
    if (found->fits || found->step.done_on != BK_NO_DAY) {
        return bk_fail(error, BK_REFUSED, "%s/%s is done already; open it again to work on it.", piece, key);
    }
    if (runs && mine->step_id == found->step.id) {
        return bk_fail(error, BK_REFUSED, "Your clock runs for %s/%s already, for %s now.", piece, key,
                       bk_change_minutes(job, bk_minutes_between(mine->started_at, job->made_at)));
    }
    return BK_OK;
}

static bk_status start(const bk_job *job, void *context, const char **sentence, bk_error *error)
{
    const int64_t *step = context;
    bk_bench_step found;
    bk_running mine;
    bool runs;
    int64_t minutes;
    const char *stopped = NULL;
    bk_status status = bk_store_bench_step(job->store, *step, job->arena, &found, error);
    if (!status) {
        status = find_mine(job->store, job->who, job->arena, &mine, &runs, error);
    }
    if (!status) {
        status = check_start(job, &found, &mine, runs, error);
    }
    if (!status && runs) {
        status = stop(job, &mine, &minutes, &stopped, error);
    }
    if (status) {
        return status;
    }
    bk_running running = {.step_id = *step, .who = job->who, .started_at = job->made_at};
    *sentence = bk_arena_print(job->arena, "Begun: %s %s%s%s%s", found.step.piece, found.step.title,
                               stopped ? " (stopped: " : "", stopped ? stopped : "", stopped ? ")" : "");
    return bk_store_add(job->store, BK_RUNNINGS, &running, 0, NULL, error);
}

bk_status bk_running_start(const bk_job *job, int64_t step, const char **sentence, bk_error *error)
{
    return bk_change_run(job, start, &step, sentence, error);
}

static bk_status stop_mine(const bk_job *job, void *context, const char **sentence, bk_error *error)
{
    bk_running mine;
    bool runs;
    const char *words = NULL;
    bk_status status = find_mine(job->store, job->who, job->arena, &mine, &runs, error);
    if (!status && !runs) {
        return bk_fail(error, BK_REFUSED, "No clock of yours is running.");
    }
    if (!status) {
        status = stop(job, &mine, context, &words, error);
    }
    *sentence = bk_arena_print(job->arena, "Stopped: %s", words ? words : "");
    return status;
}

bk_status bk_running_stop(const bk_job *job, int64_t *minutes, const char **sentence, bk_error *error)
{
    int64_t ran = 0;
    bk_status status = bk_change_run(job, stop_mine, &ran, sentence, error);
    if (!status && minutes) {
        *minutes = ran;
    }
    return status;
}

bk_status bk_running_end(bk_store *store, bk_step *step, const char *now, bk_error *error)
{
    bk_rows rows = {0};
    int64_t longest = 0;
    bk_arena *arena = bk_arena_new();
    bk_status status = bk_store_read(store, BK_RUNNINGS, 0, arena, &rows, error);
    const bk_running *items = rows.items;
    for (size_t i = 0; !status && i < rows.count; i++) {
        if (items[i].step_id == step->id) {
            int64_t minutes = bk_minutes_between(items[i].started_at, now);
            longest = minutes > longest ? minutes : longest;
            status = bk_store_remove(store, BK_RUNNINGS, items[i].id, error);
        }
    }
    bk_arena_free(arena);
    step->took = add_minutes(step->took, longest);
    return status;
}
