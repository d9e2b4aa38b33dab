#include "bodkin/work/workroom.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/rail_rows.h"
#include "bodkin/work/rail_gather.h"

// -------------------------------------------------------------------------------------------------- reading

/// The rows of the workroom as they were read.
typedef struct room_rows {
    bk_rows productions, people, aways, performers, equipment, taken;
} room_rows;

static const struct read_of {
    bk_family family;
    size_t offset;
} reads[] = {
    {BK_PRODUCTIONS, offsetof(room_rows, productions)},
    {BK_PEOPLE, offsetof(room_rows, people)},
    {BK_AWAYS, offsetof(room_rows, aways)},
    {BK_PERFORMERS, offsetof(room_rows, performers)},
    {BK_EQUIPMENT, offsetof(room_rows, equipment)},
};

static bk_status read_rows(bk_store *store, bk_workroom *room, room_rows *rows, bk_error *error)
{
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < sizeof reads / sizeof *reads; i++) {
        bk_rows *into = (bk_rows *)(void *)((char *)rows + reads[i].offset);
        status = bk_store_read(store, reads[i].family, 0, room->arena, into, error);
    }
    if (!status) {
        status = bk_store_taken(store, room->arena, &rows->taken, error);
    }
    return status;
}

static int sooner(const void *left, const void *right)
{
    const bk_rail *a = *(bk_rail *const *)left;
    const bk_rail *b = *(bk_rail *const *)right;
    if (a->production.opens != b->production.opens) {
        return a->production.opens < b->production.opens ? -1 : 1;
    }
    int order = strcmp(a->production.name, b->production.name);
    return order ? order : (a->production.id > b->production.id) - (a->production.id < b->production.id);
}

static bk_status read_rails(bk_store *store, bk_workroom *room, const bk_rows *productions, bk_error *error)
{
    const bk_production *items = productions->items;
    bk_rail **rails = bk_arena_clear(room->arena, productions->count, sizeof(bk_rail *));
    room->rails = rails;
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < productions->count; i++) {
        if (items[i].put_away_on == BK_NO_DAY) {
            status = bk_rail_gather(store, items[i].id, room->today, &rails[room->rail_count], error);
            room->rail_count += status == BK_OK;
        }
    }
    if (room->rail_count) {
        qsort(rails, room->rail_count, sizeof *rails, sooner);
    }
    return status;
}

// ----------------------------------------------------------------------------------------------- absences

/// The days of absence of those whose id stands at `offset` in a bk_away, in the order of away.csv.
static const bk_day (*absences(bk_arena *arena, const bk_rows *aways, size_t offset, int64_t id,
                               size_t *count))[2]
{
    const bk_away *items = aways->items;
    BK_LIST(size_t) found = {0};
    for (size_t i = 0; i < aways->count; i++) {
        int64_t whose;
        memcpy(&whose, (const char *)&items[i] + offset, sizeof whose);
        if (whose == id) {
            bk_list_add(&found, i);
        }
    }
    bk_day(*days)[2] = bk_arena_clear(arena, found.count, sizeof *days);
    for (size_t i = 0; i < found.count; i++) {
        days[i][0] = items[found.items[i]].from;
        days[i][1] = items[found.items[i]].to;
    }
    *count = found.count;
    bk_list_free(&found);
    return (const bk_day(*)[2])days;
}

// -------------------------------------------------------------------------------------------------- people

static bk_week_hours week_of(const bk_person *person)
{
    bk_week_hours week = {0};
    for (int day = 0; day < BK_WEEKDAYS; day++) {
        int count = person->hours[day] ? bk_hours_read(person->hours[day], week.stretches[day]) : 0;
        week.counts[day] = count > 0 ? count : 0;
    }
    return week;
}

/// Minutes of all steps that were marked done on that day by that name: what they took, else what was guessed.
static int64_t used_on(const bk_workroom *room, bk_day day, const char *name)
{
    int64_t used = 0;
    for (size_t r = 0; r < room->rail_count; r++) {
        const bk_step *steps = room->rails[r]->steps;
        for (size_t i = 0; i < room->rails[r]->rows.step_count; i++) {
            if (steps[i].done_on == day && bk_same_text(steps[i].done_by, name)) {
                used += steps[i].took != BK_NOT_KNOWN ? steps[i].took : steps[i].minutes;
            }
        }
    }
    return used;
}

static void fill_people(bk_workroom *room, const room_rows *rows)
{
    const bk_person *records = rows->people.items;
    bk_room_person *people = bk_arena_clear(room->arena, rows->people.count, sizeof *people);
    for (size_t i = 0; i < rows->people.count; i++) {
        bk_room_person *person = &people[i];
        person->record = &records[i];
        person->skills = bk_skills_of(records[i].skills);
        person->hours.week = week_of(&records[i]);
        person->hours.from = records[i].from;
        person->hours.until = records[i].until;
        person->hours.away = absences(room->arena, &rows->aways, offsetof(bk_away, person_id), records[i].id,
                                      &person->hours.away_count);
        person->calendar = bk_calendar_new(&person->hours, room->arena);
        person->used_today = used_on(room, room->today, records[i].name);
    }
    room->people = people;
    room->person_count = rows->people.count;
}

static void fill_performers(bk_workroom *room, const room_rows *rows)
{
    const bk_performer *records = rows->performers.items;
    bk_room_performer *performers = bk_arena_clear(room->arena, rows->performers.count, sizeof *performers);
    for (size_t i = 0; i < rows->performers.count; i++) {
        performers[i].id = records[i].id;
        performers[i].name = records[i].name;
        performers[i].away = absences(room->arena, &rows->aways, offsetof(bk_away, performer_id),
                                      records[i].id, &performers[i].away_count);
    }
    room->performers = performers;
    room->performer_count = rows->performers.count;
}

static void fill_equipment(bk_workroom *room, const room_rows *rows)
{
    const bk_equipment *records = rows->equipment.items;
    bk_room_equipment *equipment = bk_arena_clear(room->arena, rows->equipment.count, sizeof *equipment);
    for (size_t i = 0; i < rows->equipment.count; i++) {
        int64_t count = records[i].count == BK_NOT_KNOWN || records[i].count < 1 ? 1 : records[i].count;
        equipment[i] = (bk_room_equipment){records[i].id, records[i].name, bk_skills_of(records[i].kinds),
                                           count < INT32_MAX ? (int32_t)count : INT32_MAX};
    }
    room->equipment = equipment;
    room->equipment_count = rows->equipment.count;
}

// --------------------------------------------------------------------------------------------------- public

static bk_status read_all(bk_store *store, bk_workroom *room, bk_error *error)
{
    room_rows rows = {0};
    bk_status status = read_rows(store, room, &rows, error);
    if (!status) {
        status = read_rails(store, room, &rows.productions, error);
    }
    if (!status) {
        fill_people(room, &rows);
        fill_performers(room, &rows);
        fill_equipment(room, &rows);
        room->taken = rows.taken.items;
        room->taken_count = rows.taken.count;
    }
    return status;
}

bk_status bk_workroom_read(bk_store *store, bk_day today, bk_workroom **room, bk_error *error)
{
    *room = NULL;
    bk_status status = bk_store_read_begin(store, error);
    if (status) {
        return status;
    }
    bk_arena *arena = bk_arena_new();
    bk_workroom *built = bk_arena_clear(arena, 1, sizeof *built);
    built->arena = arena;
    built->today = today;
    status = read_all(store, built, error);
    bk_store_read_end(store);
    if (status) {
        bk_workroom_free(built);
        return status;
    }
    *room = built;
    return BK_OK;
}

void bk_workroom_free(bk_workroom *room)
{
    if (!room) {
        return;
    }
    for (size_t i = 0; i < room->rail_count; i++) {
        bk_rail_free(room->rails[i]);
    }
    bk_arena_free(room->arena);
}

size_t bk_workroom_open_steps(const bk_workroom *room)
{
    size_t open = 0;
    for (size_t r = 0; r < room->rail_count; r++) {
        for (size_t i = 0; i < room->rails[r]->rows.step_count; i++) {
            open += !room->rails[r]->rows.steps[i].done;
        }
    }
    return open;
}
