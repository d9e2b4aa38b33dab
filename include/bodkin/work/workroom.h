#ifndef BODKIN_WORK_WORKROOM_H
#define BODKIN_WORK_WORKROOM_H

#include "bodkin/plan/calendar.h"
#include "bodkin/plan/pace.h"
#include "bodkin/store/records_bench.h"
#include "bodkin/work/rail.h"

/// All that the reckoning of days and hands takes from the store, read at one moment: every production that is not put away,
/// and the people, equipment and records of minutes that they share. Once read it needs no store, so that it can be reckoned
/// on while others write. Everything in it belongs to it.

typedef struct bk_room_person {
    const bk_person *record;
    unsigned skills;             ///< bit 1 << bk_kind
    bk_hours hours;              ///< as the calendar was made from
    const bk_calendar *calendar; ///< absences taken off
    int64_t used_today;          ///< minutes of steps that this person marked done on the day at hand
} bk_room_person;

/// When a performer is away.
typedef struct bk_room_performer {
    int64_t id;
    const char *name;
    const bk_day (*away)[2]; ///< first and last day, both included
    size_t away_count;
} bk_room_performer;

typedef struct bk_room_equipment {
    int64_t id;
    const char *name;
    unsigned kinds;
    int32_t count;
} bk_room_equipment;

typedef struct bk_workroom {
    bk_arena *arena;
    bk_day today;
    bk_rail *const *rails; ///< of each production not put away: by opening, then by name
    size_t rail_count;
    const bk_room_person *people; ///< in the order of people.csv
    size_t person_count;
    const bk_room_performer *performers;
    size_t performer_count;
    const bk_room_equipment *equipment;
    size_t equipment_count;
    const bk_minutes_taken *
        taken; ///< every finished step whose minutes taken are known, of all productions, also those put away
    size_t taken_count;
} bk_workroom;

/// Reads it as one reading. `*room` is the caller's, freed with bk_workroom_free.
bk_status bk_workroom_read(bk_store *store, bk_day today, bk_workroom **room, bk_error *error) BK_MUST_USE;
void bk_workroom_free(bk_workroom *room);

/// How many steps of all its productions are open: what bk_effort_usual asks for.
size_t bk_workroom_open_steps(const bk_workroom *room);

#endif
