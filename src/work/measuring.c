#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/store/one.h"
#include "bodkin/store/performer_rows.h"
#include "bodkin/work/history.h"

// Taking, correcting and taking away measures: bodkin/work/history.h.

/// One change of a performer's measures under way.
typedef struct measuring {
    bk_store *store;
    bk_day on, today;
    bk_arena *arena;
    bk_error *error;
    bk_performer performer;
    int64_t sheet;                   ///< id; 0: there is none of that day
    bk_rows known;                   ///< its measures
    int64_t next;                    ///< position of the next new measure
    size_t added;                    ///< measures that were not there
    BK_LIST(const char *) corrected; ///< names of those that were
} measuring;

/// A text that says something, without blanks at its ends; else NULL.
static const char *filled(bk_arena *arena, const char *text)
{
    static const char blanks[] = " \t\r\n";
    if (!text) {
        return NULL;
    }
    text += strspn(text, blanks);
    size_t length = strlen(text);
    while (length && strchr(blanks, text[length - 1])) {
        length--;
    }
    return length ? bk_arena_bytes(arena, text, length) : NULL;
}

/// "3 Feb", with the year where it is not this one.
static const char *day_words(const measuring *job, bk_day day)
{
    char words[BK_DAY_WORDS_ROOM];
    const char *text = bk_day_words(day, job->today, words);
    const char *behind_weekday = strchr(text, ' ');
    return bk_arena_text(job->arena, behind_weekday ? behind_weekday + 1 : text);
}

static const char *safe(const measuring *job, const char *text)
{
    return bk_text_safe(job->arena, text, false);
}

// ------------------------------------------------------------------------------------------------------ finding

static bk_status find_performer(measuring *job, int64_t performer)
{
    bool found = false;
    bk_status status =
        bk_store_get(job->store, BK_PERFORMERS, performer, job->arena, &job->performer, &found, job->error);
    if (!status && !found) {
        status = bk_fail(job->error, BK_REFUSED, "This performer is no longer in the workroom.");
    }
    return status;
}

/// The id of the performer's sheet of a day; 0 where there is none.
static bk_status find_sheet(const measuring *job, bk_day on, int64_t *sheet)
{
    bk_rows days = {0};
    bk_status status =
        bk_store_performer_sheets(job->store, job->performer.id, job->arena, &days, job->error);
    const bk_sheet_day *items = days.items;
    *sheet = 0;
    for (size_t i = 0; !status && i < days.count; i++) {
        if (items[i].taken_on == on) {
            *sheet = items[i].id;
        }
    }
    return status;
}

static bk_status read_sheet(measuring *job)
{
    bk_status status = find_sheet(job, job->on, &job->sheet);
    if (!status && job->sheet) {
        status =
            bk_store_read(job->store, BK_MEASURES_OF_SHEET, job->sheet, job->arena, &job->known, job->error);
    }
    const bk_measure *items = job->known.items;
    for (size_t i = 0; !status && i < job->known.count; i++) {
        job->next = items[i].position >= job->next ? items[i].position + 1 : job->next;
    }
    return status;
}

static bk_measure *find_known(const measuring *job, const char *name)
{
    bk_measure *items = job->known.items;
    for (size_t i = 0; i < job->known.count; i++) {
        if (bk_same_text(items[i].name, name)) {
            return &items[i];
        }
    }
    return NULL;
}

/// The change begins, with the performer and the sheet of the day.
static bk_status begin(measuring *job, int64_t performer)
{
    if (!bk_store_sees_measures(job->store)) {
        return bk_fail(job->error, BK_REFUSED, "Only the maker takes measures.");
    }
    bk_status status = bk_store_change_begin(job->store, job->error);
    if (status) {
        return status;
    }
    status = find_performer(job, performer);
    return status ? status : read_sheet(job);
}

/// Commits what the sentence says; drops the change where something failed or there is nothing to say.
static bk_status finish(measuring *job, bk_status status, const char *made_at, const char **sentence)
{
    bk_list_free(&job->corrected);
    if (status || !*sentence) {
        bk_store_change_drop(job->store);
        return status;
    }
    return bk_store_change_commit(job->store, made_at, *sentence, NULL, job->error);
}

static bk_status check_day(bk_day on, bk_day today, bk_error *error)
{
    if (on == BK_NO_DAY) {
        return bk_fail(error, BK_REFUSED, "A sheet needs the day on which it was taken.");
    }
    return on > today ? bk_fail(error, BK_REFUSED, "A sheet cannot be taken on a day to come.") : BK_OK;
}

// ------------------------------------------------------------------------------------------------------- saving

static bk_status name_id(const measuring *job, const char *name, int64_t *id)
{
    bk_status status = bk_store_find_measure_name(job->store, name, id, job->error);
    if (status || *id) {
        return status;
    }
    bk_named named = {0, name};
    return bk_store_add(job->store, BK_MEASURE_NAMES, &named, 0, id, job->error);
}

static bk_status add_measure(measuring *job, const char *name, const bk_measure_mark *mark)
{
    bk_measure measure = {.value = mark->value, .over = mark->over, .taken_by = mark->taken_by};
    bk_status status = name_id(job, name, &measure.name_id);
    if (!status && !job->sheet) {
        bk_sheet_day day = {0, job->performer.id, job->on};
        status = bk_store_add(job->store, BK_MEASURE_SHEETS, &day, 0, &job->sheet, job->error);
    }
    measure.sheet_id = job->sheet;
    if (!status) {
        job->added++;
        status = bk_store_add(job->store, BK_MEASURES, &measure, job->next++, NULL, job->error);
    }
    return status;
}

static bk_status correct_measure(measuring *job, bk_measure *known, const bk_measure_mark *mark)
{
    known->value = mark->value;
    known->over = mark->over;
    known->taken_by = mark->taken_by;
    bk_list_add(&job->corrected, known->name);
    return bk_store_put(job->store, BK_MEASURES, known, job->error);
}

static bool same_mark(const bk_measure_mark *left, const bk_measure_mark *right)
{
    return left->value == right->value && bk_same_text(left->over, right->over) &&
           bk_same_text(left->taken_by, right->taken_by);
}

static bk_measure_mark mark_of(const bk_measure *measure)
{
    return measure ? (bk_measure_mark){measure->value, measure->over, measure->taken_by}
                   : (bk_measure_mark){BK_NO_AMOUNT, NULL, NULL};
}

/// One measure of a saving: new, correcting one that is there, or nothing new.
static bk_status save_measure(measuring *job, const char *name, bk_measure_mark mark)
{
    bk_measure *known = find_known(job, name);
    if (!known) {
        return add_measure(job, name, &mark);
    }
    bk_measure_mark there = mark_of(known);
    mark.over = mark.over ? mark.over : there.over;
    mark.taken_by = mark.taken_by ? mark.taken_by : there.taken_by;
    return same_mark(&mark, &there) ? BK_OK : correct_measure(job, known, &mark);
}

static const char *corrected_words(const measuring *job)
{
    enum { NAMED = 3 }; // as many are named, more are counted
    const char *words = "";
    size_t count = job->corrected.count;
    if (count > NAMED) {
        return bk_arena_print(job->arena, "%zu measures", count);
    }
    for (size_t i = 0; i < count; i++) {
        const char *between = i == 0 ? "" : (i + 1 < count ? ", " : " and ");
        words = bk_arena_print(job->arena, "%s%s%s", words, between, job->corrected.items[i]);
    }
    return words;
}

static const char *saved_sentence(const measuring *job)
{
    if (!job->added && !job->corrected.count) {
        return NULL;
    }
    if (!job->added) {
        return bk_arena_print(job->arena, "Corrected: %s of %s, %s", corrected_words(job),
                              job->performer.name, day_words(job, job->on));
    }
    const char *sentence = bk_arena_print(job->arena, "Measured: %s, %zu measure%s", job->performer.name,
                                          job->added, job->added == 1 ? "" : "s");
    return job->corrected.count
               ? bk_arena_print(job->arena, "%s; corrected: %s", sentence, corrected_words(job))
               : sentence;
}

static bk_status check_name(const measuring *job, const char *name)
{
    if (!name) {
        return bk_fail(job->error, BK_REFUSED, "A measure needs a name.");
    }
    if (strpbrk(name, ";/")) {
        return bk_fail(job->error, BK_REFUSED, "The name of a measure holds no \";\" and no \"/\": \"%s\".",
                       safe(job, name));
    }
    return BK_OK;
}

/// The names of what is to be saved, NULL for what is passed over.
static bk_status check_items(const measuring *job, const bk_measures_saving *saving, const char **names)
{
    size_t count = 0;
    bk_status status = BK_OK;
    bk_index *seen = bk_index_new();
    for (size_t i = 0; !status && i < saving->count; i++) {
        if (saving->items[i].value == BK_NO_AMOUNT) {
            continue;
        }
        names[i] = filled(job->arena, saving->items[i].measure);
        status = check_name(job, names[i]);
        if (!status && bk_index_find(seen, names[i])) {
            status = bk_fail(job->error, BK_REFUSED, "The %s is given twice.", safe(job, names[i]));
        }
        if (!status) {
            bk_index_put(seen, names[i], (long long)count++);
        }
    }
    bk_index_free(seen);
    return status || count ? status : bk_fail(job->error, BK_REFUSED, "No measure was given.");
}

bk_status bk_measures_save(bk_store *store, const bk_measures_saving *saving, const char *made_at,
                           bk_arena *arena, const char **sentence, bk_error *error)
{
    measuring job = {
        .store = store, .on = saving->on, .today = saving->today, .arena = arena, .error = error, .next = 1};
    const char **names = bk_arena_clear(arena, saving->count, sizeof *names);
    *sentence = NULL;
    bk_status status = check_day(saving->on, saving->today, error);
    if (!status) {
        status = check_items(&job, saving, names);
    }
    if (status) {
        return status;
    }
    status = begin(&job, saving->performer);
    for (size_t i = 0; !status && i < saving->count; i++) {
        bk_measure_mark mark = {saving->items[i].value, filled(arena, saving->over),
                                filled(arena, saving->taken_by)};
        status = names[i] ? save_measure(&job, names[i], mark) : BK_OK;
    }
    *sentence = status ? NULL : saved_sentence(&job);
    return finish(&job, status, made_at, sentence);
}

// --------------------------------------------------------------------------------------------------- correcting

static bk_status remove_measure(measuring *job, const bk_measure *known)
{
    bk_status status = bk_store_remove_measure(job->store, job->sheet, known->name_id, job->error);
    if (!status && job->known.count == 1) {
        status = bk_store_remove(job->store, BK_MEASURE_SHEETS, job->sheet, job->error);
    }
    return status;
}

/// Makes the measure what is wanted, and says what that was.
static bk_status mend(measuring *job, const char *name, const bk_measure_mark *wanted, const char **done)
{
    bk_measure *known = find_known(job, name);
    bk_measure_mark there = mark_of(known);
    if (same_mark(wanted, &there) || (!known && wanted->value == BK_NO_AMOUNT)) {
        return BK_OK;
    }
    if (!known) {
        *done = "Added";
        return add_measure(job, name, wanted);
    }
    if (wanted->value == BK_NO_AMOUNT) {
        *done = "Taken away";
        return remove_measure(job, known);
    }
    *done = wanted->value == there.value ? "Changed" : "Corrected";
    return correct_measure(job, known, wanted);
}

static bk_measure_mark filled_mark(bk_arena *arena, const bk_measure_mark *mark)
{
    bool any = mark->value != BK_NO_AMOUNT;
    return (bk_measure_mark){mark->value, any ? filled(arena, mark->over) : NULL,
                             any ? filled(arena, mark->taken_by) : NULL};
}

/// Refuses where what stands there is not what was seen.
static bk_status check_seen(const measuring *job, const char *name, const bk_measure_mark *seen)
{
    bk_measure_mark there = mark_of(find_known(job, name));
    if (job->sheet && same_mark(seen, &there)) {
        return BK_OK;
    }
    return bk_fail(job->error, BK_REFUSED,
                   "Nothing was saved: the %s of %s, %s, was changed meanwhile; look at it again.",
                   safe(job, name), safe(job, job->performer.name), day_words(job, job->on));
}

bk_status bk_measure_correct(bk_store *store, const bk_measure_correcting *correcting, const char *made_at,
                             bk_arena *arena, const char **sentence, bk_error *error)
{
    measuring job = {.store = store,
                     .on = correcting->on,
                     .today = correcting->today,
                     .arena = arena,
                     .error = error,
                     .next = 1};
    const char *name = filled(arena, correcting->name), *done = NULL;
    bk_measure_mark seen = filled_mark(arena, &correcting->seen);
    bk_measure_mark wanted = filled_mark(arena, &correcting->wanted);
    *sentence = NULL;
    bk_status status = check_name(&job, name);
    if (status) {
        return status;
    }
    status = begin(&job, correcting->performer);
    if (!status) {
        status = check_seen(&job, name, &seen);
    }
    if (!status) {
        status = mend(&job, name, &wanted, &done);
    }
    if (!status && done) {
        *sentence = bk_arena_print(arena, "%s: %s of %s, %s", done, name, job.performer.name,
                                   day_words(&job, job.on));
    }
    return finish(&job, status, made_at, sentence);
}

// ------------------------------------------------------------------------------------------------ whole sheets

static bk_status check_sheet(const measuring *job)
{
    if (job->sheet) {
        return BK_OK;
    }
    return bk_fail(job->error, BK_REFUSED, "There is no sheet of %s, %s, any more.",
                   safe(job, job->performer.name), day_words(job, job->on));
}

/// Puts the sheet on another day that has none.
static bk_status redate(const measuring *job, bk_day to)
{
    int64_t other = 0;
    bk_status status = find_sheet(job, to, &other);
    if (!status && other) {
        status = bk_fail(job->error, BK_REFUSED, "There is a sheet of %s, %s, already.",
                         safe(job, job->performer.name), day_words(job, to));
    }
    bk_sheet_day day = {job->sheet, job->performer.id, to};
    return status ? status : bk_store_put(job->store, BK_MEASURE_SHEETS, &day, job->error);
}

bk_status bk_sheet_redate(bk_store *store, int64_t performer, bk_day on, bk_day to, bk_day today,
                          const char *made_at, bk_arena *arena, const char **sentence, bk_error *error)
{
    measuring job = {.store = store, .on = on, .today = today, .arena = arena, .error = error};
    *sentence = NULL;
    bk_status status = check_day(to, today, error);
    if (status) {
        return status;
    }
    status = begin(&job, performer);
    if (!status) {
        status = check_sheet(&job);
    }
    if (!status && on != to) {
        status = redate(&job, to);
        *sentence = status ? NULL
                           : bk_arena_print(arena, "Changed: the sheet of %s, %s, is of %s",
                                            job.performer.name, day_words(&job, on), day_words(&job, to));
    }
    return finish(&job, status, made_at, sentence);
}

static bk_status remove_sheet(const measuring *job)
{
    const bk_measure *items = job->known.items;
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < job->known.count; i++) {
        status = bk_store_remove_measure(job->store, job->sheet, items[i].name_id, job->error);
    }
    return status ? status : bk_store_remove(job->store, BK_MEASURE_SHEETS, job->sheet, job->error);
}

bk_status bk_sheet_take_away(bk_store *store, int64_t performer, bk_day on, bk_day today, const char *made_at,
                             bk_arena *arena, const char **sentence, bk_error *error)
{
    measuring job = {.store = store, .on = on, .today = today, .arena = arena, .error = error};
    *sentence = NULL;
    bk_status status = begin(&job, performer);
    if (!status) {
        status = check_sheet(&job);
    }
    if (!status) {
        status = remove_sheet(&job);
    }
    if (!status) {
        *sentence =
            bk_arena_print(arena, "Taken away: the sheet of %s, %s", job.performer.name, day_words(&job, on));
    }
    return finish(&job, status, made_at, sentence);
}
