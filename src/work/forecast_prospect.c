#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/work/forecast_parts.h"

/// The workroom with what is supposed: people, productions, costumes.

// ------------------------------------------------------------------------------------------------------ people

static void add_person(bk_prospect *prospect, int64_t id, const char *name, unsigned skills,
                       const bk_hours *hours, int64_t used)
{
    const bk_calendar *calendar = bk_calendar_new(hours, prospect->kept);
    prospect->people[prospect->person_count++] = (bk_prospect_person){
        .shown = {id, bk_arena_text(prospect->kept, name), skills, calendar},
        .used_today = used,
        .works = bk_calendar_any(calendar, (bk_moment_minute)prospect->today * BK_DAY_MINUTES),
    };
}

/// A helper comes on one day, for one stretch.
static void add_helper(bk_prospect *prospect, const bk_supposition *helper)
{
    bk_hours hours = {.from = helper->day, .until = helper->day};
    int weekday = bk_weekday(helper->day);
    hours.week.counts[weekday] = 1;
    hours.week.stretches[weekday][0] = helper->hours;
    add_person(prospect, 0, helper->person, helper->skills, &hours, 0);
}

static void fill_people(bk_prospect *prospect, const bk_supposition *suppositions, size_t count)
{
    const bk_workroom *room = prospect->room;
    prospect->people =
        bk_arena_clear(prospect->scratch, room->person_count + count, sizeof *prospect->people);
    for (size_t i = 0; i < room->person_count; i++) {
        const bk_room_person *person = &room->people[i];
        add_person(prospect, person->record->id, person->record->name, person->skills, &person->hours,
                   person->used_today);
    }
    for (size_t i = 0; i < count; i++) {
        if (suppositions[i].what == BK_SUPPOSE_HELPER) {
            add_helper(prospect, &suppositions[i]);
        }
    }
}

// ------------------------------------------------------------------------------------------------- productions

/// The day of a date, as the last supposition about it has it.
static bk_day supposed_day(const bk_supposition *suppositions, size_t count, int64_t production, int64_t date,
                           bk_day day)
{
    for (size_t i = 0; i < count; i++) {
        if (suppositions[i].what == BK_SUPPOSE_DATE && suppositions[i].production_id == production &&
            suppositions[i].date_id == date) {
            day = suppositions[i].day;
        }
    }
    return day;
}

static void suppose_dates(bk_prospect_production *production, const bk_supposition *suppositions,
                          size_t count)
{
    const bk_rail *rail = production->rail;
    int64_t id = rail->production.id;
    production->opens = supposed_day(suppositions, count, id, 0, rail->production.opens);
    production->usual_due = production->opens;
    for (size_t i = 0; i < rail->date_count; i++) {
        const bk_date *date = &rail->dates[i];
        bk_day day = supposed_day(suppositions, count, id, date->id, date->on);
        if ((date->what == BK_ON_PARADE || date->what == BK_ON_DRESS) && day < production->usual_due) {
            production->usual_due = day;
        }
    }
}

static void index_costumes(bk_prospect *prospect, bk_prospect_production *production)
{
    const bk_rail *rail = production->rail;
    production->costumes =
        bk_arena_clear(prospect->scratch, rail->costume_count, sizeof *production->costumes);
    for (size_t i = 0; i < rail->costume_count; i++) {
        production->costumes[rail->costumes[i].index] = &rail->costumes[i];
    }
}

static void suppose_drops(bk_prospect *prospect, bk_prospect_production *production,
                          const bk_supposition *suppositions, size_t count)
{
    const bk_rail *rail = production->rail;
    production->dropped = bk_arena_clear(prospect->scratch, rail->rows.costume_count, sizeof(bool));
    for (size_t i = 0; i < count; i++) {
        for (size_t c = 0; suppositions[i].what == BK_SUPPOSE_DROP && c < rail->rows.costume_count; c++) {
            production->dropped[c] |= rail->costume_records[c].id == suppositions[i].costume_id;
        }
    }
}

// ---------------------------------------------------------------------------------------------------- costumes

static bk_day costume_due(const bk_prospect_production *production, size_t index,
                          const bk_supposition *suppositions, size_t count)
{
    const bk_costume *record = &production->rail->costume_records[index];
    bk_day due = record->due != BK_NO_DAY ? record->due : production->usual_due;
    for (size_t i = 0; i < count; i++) {
        if (suppositions[i].what == BK_SUPPOSE_DUE && suppositions[i].costume_id == record->id) {
            due = suppositions[i].day;
        }
    }
    return due;
}

static void add_costumes(bk_prospect *prospect, size_t at, const bk_supposition *suppositions, size_t count)
{
    bk_prospect_production *production = &prospect->productions[at];
    production->first_costume = prospect->costume_count;
    for (size_t i = 0; i < production->rail->rows.costume_count; i++) {
        if (!production->dropped[i]) {
            prospect->costumes[prospect->costume_count++] = (bk_prospect_costume){
                .production = at, .index = i, .due = costume_due(production, i, suppositions, count)};
        }
    }
    production->costume_count = prospect->costume_count - production->first_costume;
}

static void fill_productions(bk_prospect *prospect, const bk_supposition *suppositions, size_t count)
{
    const bk_workroom *room = prospect->room;
    size_t costumes = 0;
    for (size_t i = 0; i < room->rail_count; i++) {
        costumes += room->rails[i]->rows.costume_count;
    }
    prospect->production_count = room->rail_count;
    prospect->productions =
        bk_arena_clear(prospect->scratch, room->rail_count, sizeof *prospect->productions);
    prospect->costumes = bk_arena_clear(prospect->scratch, costumes, sizeof *prospect->costumes);
    for (size_t i = 0; i < room->rail_count; i++) {
        prospect->productions[i].rail = room->rails[i];
        index_costumes(prospect, &prospect->productions[i]);
        suppose_dates(&prospect->productions[i], suppositions, count);
        suppose_drops(prospect, &prospect->productions[i], suppositions, count);
        add_costumes(prospect, i, suppositions, count);
    }
}

// ------------------------------------------------------------------------------------------------------ public

bk_prospect *bk_prospect_new(const bk_workroom *room, const bk_supposition *suppositions, size_t count,
                             bk_arena *scratch, bk_arena *kept)
{
    bk_prospect *prospect = bk_arena_clear(scratch, 1, sizeof *prospect);
    prospect->scratch = scratch;
    prospect->kept = kept;
    prospect->room = room;
    prospect->today = room->today;
    fill_people(prospect, suppositions, count);
    fill_productions(prospect, suppositions, count);
    bk_prospect_steps(prospect);
    return prospect;
}

static bool anybody_works(const bk_prospect *prospect, bk_day day)
{
    bk_stretch stretches[BK_STRETCHES];
    for (size_t i = 0; i < prospect->person_count; i++) {
        if (bk_calendar_day(prospect->people[i].shown.calendar, day, stretches) > 0) {
            return true;
        }
    }
    return false;
}

int64_t bk_prospect_workdays(const bk_prospect *prospect, bk_day from, bk_day to)
{
    int64_t days = 0;
    for (bk_day day = from; day < to; day++) {
        days += anybody_works(prospect, day + 1);
    }
    return days;
}

bool bk_performer_away(const bk_room_performer *performer, bk_day day, bk_day *until)
{
    *until = day - 1;
    for (bool longer = true; longer;) {
        longer = false;
        for (size_t i = 0; i < performer->away_count; i++) {
            const bk_day *away = performer->away[i];
            if (away[0] <= *until + 1 && away[1] > *until) {
                *until = away[1];
                longer = true;
            }
        }
    }
    return *until >= day;
}
