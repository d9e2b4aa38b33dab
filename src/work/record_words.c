#include "bodkin/work/record_words.h"

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/materials.h"

enum { NOTE_COLUMNS = 40 };

static const char *day_words(const bk_desk *desk, bk_day day)
{
    char words[BK_DAY_WORDS_ROOM];
    return bk_arena_text(desk->job->arena, bk_day_words(day, desk->job->today, words));
}

static const char *filled(const char *text)
{
    return text ? text : "?";
}

static const char *call_production(const bk_desk *desk, const void *record)
{
    const bk_production *production = record;
    return bk_arena_print(desk->job->arena, "production %s", production->name);
}

static const char *call_date(const bk_desk *desk, const void *record)
{
    const bk_date *date = record;
    return bk_arena_print(desk->job->arena, "date %s, %s",
                          filled(bk_word_text(&bk_occasion_words, date->what)), day_words(desk, date->on));
}

static const char *call_person(const bk_desk *desk, const void *record)
{
    const bk_person *person = record;
    return bk_arena_print(desk->job->arena, "person %s", person->name);
}

static const char *call_away(const bk_desk *desk, const void *record)
{
    const bk_away *away = record;
    return bk_arena_print(desk->job->arena, "absence of %s, %s to %s", filled(away->who),
                          day_words(desk, away->from), day_words(desk, away->to));
}

static const char *call_performer(const bk_desk *desk, const void *record)
{
    const bk_performer *performer = record;
    return bk_arena_print(desk->job->arena, "performer %s", performer->name);
}

static const char *call_role(const bk_desk *desk, const void *record)
{
    const bk_role *role = record;
    return bk_arena_print(desk->job->arena, "role %s", role->name);
}

static const char *call_costume(const bk_desk *desk, const void *record)
{
    const bk_costume *costume = record;
    return bk_arena_print(desk->job->arena, "costume %s %s", costume->number, costume->title);
}

static const char *call_piece(const bk_desk *desk, const void *record)
{
    const bk_piece *piece = record;
    return bk_arena_print(desk->job->arena, "piece %s %s", piece->name, piece->title);
}

static const char *call_step(const bk_desk *desk, const void *record)
{
    const bk_step *step = record;
    return bk_arena_print(desk->job->arena, "step %s/%s %s", filled(step->piece), step->key, step->title);
}

static const char *call_need(const bk_desk *desk, const void *record)
{
    const bk_need *need = record;
    return bk_arena_print(desk->job->arena, "need of %s/%s for %s", filled(need->piece), filled(need->step),
                          filled(need->material));
}

static const char *call_material(const bk_desk *desk, const void *record)
{
    const bk_material *material = record;
    return bk_arena_print(desk->job->arena, "material %s", material->name);
}

/// The unit of a material; BK_NO_WORD where that cannot be read.
static int unit_of(const bk_desk *desk, int64_t material)
{
    bk_material found = {.unit = BK_NO_WORD};
    bk_error trouble;
    bool there = false;
    bk_status status =
        bk_store_get(desk->job->store, BK_MATERIALS, material, desk->scratch, &found, &there, &trouble);
    return status || !there ? BK_NO_WORD : found.unit;
}

/// "order of 1.3 m of cotton twill", "order of 50 hooks".
static const char *call_order(const bk_desk *desk, const void *record)
{
    const bk_order *order = record;
    int unit = unit_of(desk, order->material_id);
    bool counted = unit == BK_EACH || unit == BK_NO_WORD;
    return bk_arena_print(desk->job->arena, "order of %s %s%s",
                          bk_material_words(order->quantity, unit, desk->scratch), counted ? "" : "of ",
                          filled(order->material));
}

static const char *call_fitting(const bk_desk *desk, const void *record)
{
    char time[BK_TIME_ROOM] = "";
    const bk_fitting *fitting = record;
    bool timed = fitting->booked_at.time != BK_NO_TIME;
    return bk_arena_print(desk->job->arena, "fitting %s/%s, %s%s%s", filled(fitting->piece),
                          filled(fitting->step), day_words(desk, fitting->booked_at.day), timed ? " " : "",
                          timed ? bk_time_write(fitting->booked_at.time, time) : "");
}

static const char *call_work(const bk_desk *desk, const void *record)
{
    const bk_work *work = record;
    return bk_arena_print(desk->job->arena, "order of work %s", work->name);
}

static const char *call_work_step(const bk_desk *desk, const void *record)
{
    const bk_work_step *step = record;
    return bk_arena_print(desk->job->arena, "step %s of the order of work %s", step->key, filled(step->work));
}

static const char *call_equipment(const bk_desk *desk, const void *record)
{
    const bk_equipment *equipment = record;
    return bk_arena_print(desk->job->arena, "equipment %s", equipment->name);
}

static const char *call_note(const bk_desk *desk, const void *record)
{
    const bk_note *note = record;
    const char *line = bk_text_safe(desk->scratch, note->what, false);
    return bk_arena_print(desk->job->arena, "note \"%s\"",
                          bk_text_cut(desk->scratch, line, NOTE_COLUMNS, false));
}

static const struct called {
    const char *noun;
    const char *(*call)(const bk_desk *desk, const void *record);
} callings[BK_FAMILIES] = {
    [BK_PRODUCTIONS] = {"a production", call_production},
    [BK_DATES] = {"a date", call_date},
    [BK_PEOPLE] = {"a person", call_person},
    [BK_AWAYS] = {"an absence", call_away},
    [BK_PERFORMERS] = {"a performer", call_performer},
    [BK_ROLES] = {"a role", call_role},
    [BK_COSTUMES] = {"a costume", call_costume},
    [BK_PIECES] = {"a piece", call_piece},
    [BK_STEPS] = {"a step", call_step},
    [BK_NEEDS] = {"a need", call_need},
    [BK_MATERIALS] = {"a material", call_material},
    [BK_ORDERS] = {"an order", call_order},
    [BK_FITTINGS] = {"a fitting", call_fitting},
    [BK_WORKS] = {"an order of work", call_work},
    [BK_WORK_STEPS] = {"a step of an order of work", call_work_step},
    [BK_EQUIPMENT] = {"a piece of equipment", call_equipment},
    [BK_NOTES] = {"a note", call_note},
};

const char *bk_record_noun(bk_family family)
{
    return callings[family].noun;
}

const char *bk_record_called(const bk_desk *desk, bk_family family, const void *record)
{
    return callings[family].call(desk, record);
}

const char *bk_counted_words(bk_arena *arena, const bk_counted *items, size_t count)
{
    size_t left = 0;
    const char *words = NULL;
    for (size_t i = 0; i < count; i++) {
        left += items[i].count > 0;
    }
    for (size_t i = 0; i < count; i++) {
        if (!items[i].count) {
            continue;
        }
        left--;
        const char *name = items[i].count == 1 ? items[i].one : items[i].many;
        words = words
                    ? bk_arena_print(arena, "%s%s%zu %s", words, left ? ", " : " and ", items[i].count, name)
                    : bk_arena_print(arena, "%zu %s", items[i].count, name);
    }
    return words;
}
