#include "bodkin/work/suppose.h"

#include "bodkin/base/text.h"
#include "bodkin/store/one.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/change.h"
#include "bodkin/work/record_inside.h"

enum { TOLD_MOST = 4 };

/// What is supposed on its way into the store.
typedef struct keeping {
    const bk_job *job;
    const bk_supposition *all;
    size_t count;
    size_t made;       ///< changes made
    const char *words; ///< the first few of them, or NULL
    bk_error *error;
} keeping;

static void tell(keeping *all, const char *what)
{
    if (all->made++ < TOLD_MOST) {
        all->words = all->words ? bk_arena_print(all->job->arena, "%s; %s", all->words, what) : what;
    }
}

/// " of The Mill" where it is another production than the one at hand.
static bk_status of_production(const keeping *all, int64_t id, const char **words)
{
    bool found = false;
    bk_production production;
    *words = "";
    if (id == all->job->production) {
        return BK_OK;
    }
    bk_status status =
        bk_store_get(all->job->store, BK_PRODUCTIONS, id, all->job->arena, &production, &found, all->error);
    if (!status && found) {
        *words = bk_arena_print(all->job->arena, " of %s", production.name);
    }
    return status;
}

/// Puts a record that stands as `now`, or NULL, as `after`; `*changed` where it was another one.
static bk_status put(keeping *all, bk_family family, const void *now, const void *after, bool *changed)
{
    bk_record_saved saved;
    const bk_record_saving saving = {.family = family, .before = now, .after = after, .over = true};
    bk_status status = bk_record_save_inside(all->job, &saving, &saved, all->error);
    *changed = !status && saved.sentence;
    return status;
}

// ------------------------------------------------------------------------------------------------- helpers

/// A helper of one name, with all the days on which it comes.
typedef struct helper {
    bk_person record;
    unsigned skills;
} helper;

static bool is_of(const bk_supposition *one, const bk_supposition *other)
{
    return one->what == BK_SUPPOSE_HELPER && bk_same_text(one->person, other->person);
}

static const char *hours_text(const keeping *all, const bk_stretch *hours, const char *joint)
{
    char from[BK_TIME_ROOM];
    char to[BK_TIME_ROOM];
    return bk_arena_print(all->job->arena, "%s%s%s", bk_time_write(hours->from, from), joint,
                          bk_time_write(hours->to, to));
}

/// All hours of a helper on a day, as people.csv has them; NULL: it does not come.
static const char *hours_on(const keeping *all, const bk_supposition *first, bk_day day)
{
    const char *text = NULL;
    for (const bk_supposition *one = first; one < all->all + all->count; one++) {
        if (is_of(one, first) && one->day == day) {
            text = bk_arena_print(all->job->arena, "%s%s%s", text ? text : "", text ? ";" : "",
                                  hours_text(all, &one->hours, "-"));
        }
    }
    return text;
}

/// Refuses hours that lie over each other, and others on a weekday than on that weekday before.
static bk_status check_hours(const keeping *all, const char *known, const char *hours,
                             const bk_supposition *one)
{
    bk_stretch stretches[BK_STRETCHES];
    const char *name = bk_change_name(all->job, one->person);
    const char *day = bk_change_day(all->job, one->day);
    if (bk_hours_read(hours, stretches) < 0) {
        return bk_fail(all->error, BK_REFUSED,
                       "%s comes twice at the same time on %s: change one of the two.", name, day);
    }
    if (known && !bk_same_text(known, hours)) {
        return bk_fail(all->error, BK_REFUSED,
                       "%s has other hours on %s than on that weekday in another week: give one of the two "
                       "another name.",
                       name, day);
    }
    return BK_OK;
}

static bk_status gather(const keeping *all, const bk_supposition *first, helper *known)
{
    bk_status status = BK_OK;
    known->record = (bk_person){.name = first->person, .from = first->day, .until = first->day};
    for (const bk_supposition *one = first; !status && one < all->all + all->count; one++) {
        if (!is_of(one, first)) {
            continue;
        }
        const char **hours = &known->record.hours[bk_weekday(one->day)];
        const char *on_day = hours_on(all, first, one->day);
        status = check_hours(all, *hours, on_day, one);
        *hours = on_day;
        known->skills |= one->skills;
        known->record.from = one->day < known->record.from ? one->day : known->record.from;
        known->record.until = one->day > known->record.until ? one->day : known->record.until;
    }
    return status;
}

static const char *skills_text(const keeping *all, unsigned skills)
{
    const char *text = NULL;
    for (int kind = 0; kind < BK_KINDS; kind++) {
        if (skills & 1U << kind) {
            text = bk_arena_print(all->job->arena, "%s%s%s", text ? text : "", text ? ";" : "",
                                  bk_word_text(&bk_kind_words, kind));
        }
    }
    return text;
}

/// Hours are the same every week: on the days between on which nobody supposed the helper to come, it is away.
static bk_status keep_away(keeping *all, const bk_supposition *first, const bk_person *person)
{
    bool changed;
    bk_status status = BK_OK;
    for (bk_day day = person->from; !status && day <= person->until; day++) {
        if (person->hours[bk_weekday(day)] && !hours_on(all, first, day)) {
            const bk_away away = {.who = first->person, .from = day, .to = day};
            status = put(all, BK_AWAYS, NULL, &away, &changed);
        }
    }
    return status;
}

/// The first supposition about a helper makes the person, with the days of all that name it.
static bk_status keep_helper(keeping *all, const bk_supposition *one)
{
    bool changed;
    helper known = {.skills = 0};
    tell(all, bk_arena_print(all->job->arena, "%s helps %s %s", one->person,
                             bk_change_day(all->job, one->day), hours_text(all, &one->hours, " to ")));
    for (const bk_supposition *before = all->all; before < one; before++) {
        if (is_of(before, one)) {
            return BK_OK;
        }
    }
    bk_status status = gather(all, one, &known);
    if (status) {
        return status;
    }
    known.record.skills = skills_text(all, known.skills);
    status = put(all, BK_PEOPLE, NULL, &known.record, &changed);
    return status ? status : keep_away(all, one, &known.record);
}

// --------------------------------------------------------------------------------------------------- dates

static bk_status moved(keeping *all, const char *what, bk_day from, bk_day to, int64_t production)
{
    const char *of = "";
    bk_status status = of_production(all, production, &of);
    tell(all, bk_arena_print(all->job->arena, "%s%s moved from %s to %s", what, of,
                             bk_change_day(all->job, from), bk_change_day(all->job, to)));
    return status;
}

/// What dates.csv says of the opening goes with it.
static bk_status move_told_opening(keeping *all, int64_t production, bk_day from, bk_day to)
{
    bk_rows rows;
    bool changed;
    bk_status status =
        bk_store_read(all->job->store, BK_DATES, production, all->job->arena, &rows, all->error);
    for (size_t i = 0; !status && i < rows.count; i++) {
        const bk_date *now = (const bk_date *)rows.items + i;
        bk_date after = *now;
        after.on = to;
        if (now->what == BK_ON_OPENING && now->on == from) {
            status = put(all, BK_DATES, now, &after, &changed);
        }
    }
    return status;
}

static bk_status keep_opening(keeping *all, const bk_supposition *one)
{
    bool found = false;
    bool changed = false;
    bk_production now;
    bk_status status =
        bk_record_read_inside(all->job, BK_PRODUCTIONS, one->production_id, &now, &found, all->error);
    if (!status && !found) {
        status = bk_fail(all->error, BK_REFUSED,
                         "The production whose opening was to move is no longer there: take that off first.");
    }
    if (status) {
        return status;
    }
    bk_production after = now;
    after.opens = one->day;
    status = put(all, BK_PRODUCTIONS, &now, &after, &changed);
    if (!status && changed) {
        status = move_told_opening(all, now.id, now.opens, one->day);
    }
    return status || !changed ? status : moved(all, "opening", now.opens, one->day, now.id);
}

static bk_status keep_date(keeping *all, const bk_supposition *one)
{
    bool found = false;
    bool changed = false;
    bk_date now;
    if (one->date_id == 0) {
        return keep_opening(all, one);
    }
    bk_status status = bk_record_read_inside(all->job, BK_DATES, one->date_id, &now, &found, all->error);
    if (!status && !found) {
        status = bk_fail(all->error, BK_REFUSED,
                         "A date that was to move to %s is no longer there: take that off first.",
                         bk_change_day(all->job, one->day));
    }
    if (status) {
        return status;
    }
    bk_date after = now;
    after.on = one->day;
    status = put(all, BK_DATES, &now, &after, &changed);
    const char *what = bk_word_text(&bk_occasion_words, now.what);
    return status || !changed ? status
                              : moved(all, what ? what : "date", now.on, one->day, now.production_id);
}

// ------------------------------------------------------------------------------------------------ costumes

static bk_status read_costume(keeping *all, const bk_supposition *one, bk_costume *now, const char **called)
{
    bool found = false;
    const char *of = "";
    bk_status status = bk_record_read_inside(all->job, BK_COSTUMES, one->costume_id, now, &found, all->error);
    if (!status && !found) {
        return bk_fail(all->error, BK_REFUSED,
                       "A costume that was to be %s is no longer there: take that off first.",
                       one->what == BK_SUPPOSE_DROP ? "dropped" : "due on another day");
    }
    if (!status) {
        status = of_production(all, now->production_id, &of);
    }
    if (!status) {
        *called = bk_arena_print(all->job->arena, "%s %s%s", now->number, now->title, of);
    }
    return status;
}

static bk_status keep_due(keeping *all, const bk_supposition *one)
{
    bool changed = false;
    bk_costume now;
    const char *called = NULL;
    bk_status status = read_costume(all, one, &now, &called);
    if (status) {
        return status;
    }
    bk_costume after = now;
    after.due = one->day;
    status = put(all, BK_COSTUMES, &now, &after, &changed);
    if (changed) {
        tell(all, bk_arena_print(all->job->arena, "%s due %s", called, bk_change_day(all->job, one->day)));
    }
    return status;
}

static bk_status keep_drop(keeping *all, const bk_supposition *one)
{
    bk_costume now;
    const char *called = NULL;
    const char *sentence = NULL;
    bk_status status = read_costume(all, one, &now, &called);
    if (!status) {
        status = bk_record_take_away_inside(all->job, BK_COSTUMES, now.id, &sentence, all->error);
    }
    if (!status) {
        tell(all, bk_arena_print(all->job->arena, "%s dropped", called));
    }
    return status;
}

// ---------------------------------------------------------------------------------------------- all of them

/// What is dropped comes last, so that nothing else is about what is no longer there.
static bk_status (*const keepers[BK_SUPPOSINGS])(keeping *all, const bk_supposition *one) = {
    [BK_SUPPOSE_HELPER] = keep_helper,
    [BK_SUPPOSE_DATE] = keep_date,
    [BK_SUPPOSE_DUE] = keep_due,
    [BK_SUPPOSE_DROP] = keep_drop,
};

static bk_status keep(const bk_job *job, void *context, const char **sentence, bk_error *error)
{
    keeping *all = context;
    bk_status status = BK_OK;
    all->job = job;
    all->error = error;
    for (int what = 0; what < BK_SUPPOSINGS; what++) {
        for (size_t i = 0; !status && i < all->count; i++) {
            if (all->all[i].what == (bk_supposing)what) {
                status = keepers[what](all, &all->all[i]);
            }
        }
    }
    if (!status && all->made > TOLD_MOST) {
        *sentence = bk_arena_print(job->arena, "Kept what was supposed: %s and %zu more", all->words,
                                   all->made - TOLD_MOST);
    } else if (!status && all->made) {
        *sentence = bk_arena_print(job->arena, "Kept what was supposed: %s", all->words);
    }
    return status;
}

bk_status bk_suppose_keep(const bk_job *job, const bk_supposition *suppositions, size_t count,
                          const char **sentence, bk_error *error)
{
    keeping all = {.all = suppositions, .count = count};
    return bk_change_run(job, keep, &all, sentence, error);
}
