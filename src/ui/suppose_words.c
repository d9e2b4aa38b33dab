#include "bodkin/ui/suppose_words.h"

#include "bodkin/store/one.h"
#include "bodkin/trade/words.h"
#include "bodkin/ui/cells.h"

const char *bk_supposed_skills(unsigned skills, bk_arena *arena)
{
    const char *text = "";
    for (int kind = 0; kind < BK_KINDS; kind++)
        if (skills & 1U << kind)
            text = bk_cell_joined(arena, text, ";", bk_word_text(&bk_kind_words, kind));
    return text;
}

const char *bk_supposed_hours(const bk_stretch *hours, bk_arena *arena)
{
    return bk_arena_print(arena, "%s-%s", bk_cell_time(hours->from, arena), bk_cell_time(hours->to, arena));
}

const char *bk_supposed_date_words(const bk_date *date, bk_day today, bk_arena *arena)
{
    const char *what = bk_word_text(&bk_occasion_words, date->what);
    const char *time = bk_cell_time(date->at, arena);
    return bk_arena_print(arena, "%s %s%s%s", what ? what : "date", bk_cell_day(date->on, today, arena),
                          time ? " " : "", time ? time : "");
}

// What one is told with.
typedef struct telling {
    const bk_wall *wall;
    const bk_supposition *one;
    bk_arena *arena;
    bk_supposed_told *told;
    bk_error *error;
} telling;

static const char *day_words(const telling *at, bk_day day)
{
    return bk_cell_day(day, at->wall->today, at->arena);
}

static bk_status get(const telling *at, bk_family family, int64_t id, void *record)
{
    bool found = false;
    bk_status status = bk_store_get(at->wall->store, family, id, at->arena, record, &found, at->error);
    at->told->gone = !status && !found;
    return status;
}

static bk_status tell_production(const telling *at, int64_t id, bk_production *production)
{
    bk_status status = get(at, BK_PRODUCTIONS, id, production);
    bool shown = at->wall->rail && at->wall->rail->production.id == id;
    if (!status && !at->told->gone && !shown)
        at->told->production = production->name;
    return status;
}

static const char *of_production(const telling *at)
{
    const char *name = at->told->production;
    return name ? bk_arena_print(at->arena, " of %s", name) : "";
}

static bk_status tell_helper(const telling *at)
{
    const bk_supposition *one = at->one;
    const char *skills = bk_cell_list(bk_supposed_skills(one->skills, at->arena), at->arena);
    at->told->what = bk_arena_print(at->arena, "%s: %s", one->person, skills ? skills : "");
    at->told->then = day_words(at, one->day);
    at->told->hours = bk_supposed_hours(&one->hours, at->arena);
    at->told->words = bk_arena_print(at->arena, "%s helps %s %s: %s", one->person, at->told->then,
                                     at->told->hours, skills ? skills : "");
    return BK_OK;
}

static bk_status tell_date(const telling *at)
{
    const bk_supposition *one = at->one;
    bk_date date = {.what = BK_ON_OPENING, .on = BK_NO_DAY};
    bk_production production = {.opens = BK_NO_DAY};
    bk_status status = tell_production(at, one->production_id, &production);
    date.on = production.opens;
    if (!status && !at->told->gone && one->date_id != 0)
        status = get(at, BK_DATES, one->date_id, &date);
    const char *what = at->told->gone ? NULL : bk_word_text(&bk_occasion_words, date.what);
    at->told->what = bk_arena_print(at->arena, "%s%s", what ? what : "a date", of_production(at));
    at->told->now = at->told->gone ? NULL : day_words(at, date.on);
    at->told->then = day_words(at, one->day);
    at->told->words = bk_arena_print(at->arena, "%s on %s%s%s", at->told->what, at->told->then,
                                     at->told->now ? " instead of " : "", at->told->now ? at->told->now : "");
    return status;
}

static bk_status tell_costume(const telling *at)
{
    bk_costume costume = {.due = BK_NO_DAY};
    bk_production production;
    bool drops = at->one->what == BK_SUPPOSE_DROP;
    bk_status status = get(at, BK_COSTUMES, at->one->costume_id, &costume);
    bool gone = at->told->gone;
    if (!status && !gone)
        status = tell_production(at, costume.production_id, &production);
    at->told->gone = gone;
    at->told->number = costume.number;
    at->told->what =
        gone ? "a costume"
             : bk_arena_print(at->arena, "%s %s%s", costume.number, costume.title, of_production(at));
    at->told->now = drops ? NULL : day_words(at, costume.due);
    at->told->then = drops ? "dropped" : day_words(at, at->one->day);
    at->told->words =
        bk_arena_print(at->arena, "%s %s%s", at->told->what, drops ? "" : "due ", at->told->then);
    return status;
}

static const struct {
    const char *sort;
    bk_status (*tell)(const telling *at);
} sorts[BK_SUPPOSINGS] = {
    [BK_SUPPOSE_HELPER] = {"helper", tell_helper},
    [BK_SUPPOSE_DATE] = {"date", tell_date},
    [BK_SUPPOSE_DUE] = {"due", tell_costume},
    [BK_SUPPOSE_DROP] = {"drop", tell_costume},
};

bk_status bk_supposed_tell(const bk_wall *wall, const bk_supposition *one, bk_arena *arena,
                           bk_supposed_told *told, bk_error *error)
{
    const telling at = {wall, one, arena, told, error};
    *told = (bk_supposed_told){.sort = sorts[one->what].sort};
    bk_status status = sorts[one->what].tell(&at);
    if (!status && told->gone)
        told->words = bk_arena_print(arena, "%s: no longer there", told->words);
    return status;
}
