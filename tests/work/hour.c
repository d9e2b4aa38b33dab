#include "work/hour.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/record.h"
#include "work/show.h"

// ---------------------------------------------------------------------------------------------------- dice

uint32_t hour_dice(hour *at, uint32_t sides)
{
    at->dice = at->dice * 1664525u + 1013904223u;
    return (at->dice >> 8) % sides;
}

bool hour_heads(hour *at)
{
    return hour_dice(at, 2) == 0;
}

const char *hour_name(hour *at)
{
    return bk_arena_print(at->job.arena, "made up %zu", ++at->names);
}

bk_day hour_day(hour *at)
{
    return DAY(2, 1) + (bk_day)hour_dice(at, 60);
}

bk_day hour_maybe_day(hour *at)
{
    return hour_heads(at) ? BK_NO_DAY : hour_day(at);
}

void *hour_row(hour *at, bk_family family, size_t size)
{
    bk_rows rows;
    MUST(bk_store_read(at->job.store, family, at->job.production, at->job.arena, &rows, &trouble));
    return rows.count ? (char *)rows.items + size * hour_dice(at, (uint32_t)rows.count) : NULL;
}

int64_t hour_id(hour *at, bk_family family, size_t size)
{
    int64_t id = 0;
    const void *row = hour_row(at, family, size);
    if (row)
        memcpy(&id, row, sizeof id);
    return id;
}

bool hour_made(bk_status status, const char *sentence)
{
    ck_assert_msg(status == BK_OK || status == BK_REFUSED, "%s", trouble.text);
    return status == BK_OK && sentence != NULL;
}

// ------------------------------------------------------------------------------------------- records, new

static bool save_it(hour *at, const bk_record_saving *saving)
{
    bk_record_saved saved;
    bk_status status = bk_record_save(&at->job, saving, &saved, &trouble);
    ck_assert(!saved.newer && !saved.gone);
    return hour_made(status, saved.sentence);
}

static bool add(hour *at, bk_family family, const void *record, int64_t behind)
{
    bk_record_saving saving = {.family = family, .after = record, .behind = behind};
    return save_it(at, &saving);
}

static bool add_person(hour *at)
{
    bk_person person = PERSON(hour_name(at), "cut;hand");
    return add(at, BK_PEOPLE, &person, 0);
}

static bool add_cast(hour *at)
{
    const bk_performer *known = hour_row(at, BK_PERFORMERS, sizeof *known);
    bk_performer performer = PERFORMER(hour_name(at), "a private line", NULL);
    bk_role role = ROLE(hour_name(at), known && hour_heads(at) ? known->name : NULL, NULL);
    return hour_heads(at) ? add(at, BK_PERFORMERS, &performer, ANY(at, BK_COMPANY_PERFORMERS, bk_performer))
                          : add(at, BK_ROLES, &role, ANY(at, BK_ROLES, bk_role));
}

static bool add_garment(hour *at)
{
    const bk_role *role = hour_row(at, BK_ROLES, sizeof *role);
    const bk_costume *worn = hour_row(at, BK_COSTUMES, sizeof *worn);
    bk_costume costume = {.number = hour_name(at),
                          .role = role ? role->name : NULL,
                          .title = "A costume",
                          .due = hour_maybe_day(at)};
    bk_piece piece = PIECE("x", NULL, BK_MAKE);
    piece.name = hour_name(at);
    piece.costumes = worn ? worn->number : NULL;
    piece.cost = hour_heads(at) ? BK_NO_AMOUNT : (bk_money)hour_dice(at, 9999);
    return hour_heads(at) ? add(at, BK_COSTUMES, &costume, ANY(at, BK_COSTUMES, bk_costume))
                          : add(at, BK_PIECES, &piece, ANY(at, BK_PIECES, bk_piece));
}

/// A step of any piece, perhaps behind and after another one.
static bool add_step(hour *at)
{
    const bk_piece *piece = hour_row(at, BK_PIECES, sizeof *piece);
    bk_step other;
    bool found = false;
    bk_step step = STEP(piece ? piece->name : NULL, "x", BK_HAND, 0, NULL);
    step.key = hour_name(at);
    step.kind = (int)hour_dice(at, BK_KINDS);
    step.minutes = hour_dice(at, 500);
    step.done_on = hour_dice(at, 4) ? BK_NO_DAY : hour_day(at);
    int64_t behind = ANY(at, BK_STEPS, bk_step);
    if (behind && hour_heads(at)) {
        MUST(bk_record_read(&at->job, BK_STEPS, behind, &other, &found, &trouble));
        step.after = bk_arena_print(at->job.arena, "%s/%s", other.piece, other.key);
    }
    bk_record_saving saving = {.family = BK_STEPS, .after = &step, .behind = behind};
    return save_it(at, &saving);
}

static bool add_of_step(hour *at)
{
    bk_step step;
    bool found = false;
    int64_t id = ANY(at, BK_STEPS, bk_step);
    const bk_material *material = hour_row(at, BK_MATERIALS, sizeof *material);
    if (!id)
        return false;
    MUST(bk_record_read(&at->job, BK_STEPS, id, &step, &found, &trouble));
    bk_need need = NEED(step.piece, step.key, material ? material->name : NULL, hour_dice(at, 5000000));
    bk_fitting fitting = FITTING(step.piece, step.key, hour_day(at));
    return step.kind == BK_FIT ? add(at, BK_FITTINGS, &fitting, 0) : add(at, BK_NEEDS, &need, 0);
}

static bool add_material(hour *at)
{
    const bk_material *known = hour_row(at, BK_MATERIALS, sizeof *known);
    bk_material material = MATERIAL(hour_name(at), BK_METRE, BK_NO_AMOUNT);
    material.on_hand = hour_heads(at) ? BK_NO_AMOUNT : (bk_quantity)hour_dice(at, 9000000);
    material.price = hour_heads(at) ? BK_NO_AMOUNT : (bk_money)hour_dice(at, 9999);
    bk_order order = ORDER(known ? known->name : NULL, hour_dice(at, 5000000), hour_day(at),
                           hour_maybe_day(at), hour_maybe_day(at));
    return hour_heads(at) ? add(at, BK_MATERIALS, &material, 0) : add(at, BK_ORDERS, &order, 0);
}

static bool add_day(hour *at)
{
    const bk_person *person = hour_row(at, BK_PEOPLE, sizeof *person);
    bk_date date = DATE((int)hour_dice(at, BK_OCCASIONS), hour_day(at));
    bk_away away = AWAY(person ? person->name : NULL, DAY(3, 1), hour_day(at), "a rest");
    bk_note note = {.noted_on = hour_day(at),
                    .source = (int)hour_dice(at, BK_NOTE_SOURCES),
                    .what = hour_name(at),
                    .done_on = hour_maybe_day(at)};
    bool noted = hour_heads(at) && add(at, BK_NOTES, &note, ANY(at, BK_NOTES, bk_note));
    bool dated = !noted && hour_heads(at) && add(at, BK_DATES, &date, 0);
    return noted || dated || add(at, BK_AWAYS, &away, 0);
}

static bool add_work(hour *at)
{
    const bk_work_step *known = hour_row(at, BK_WORK_STEPS, sizeof *known);
    bk_work work = {.name = hour_name(at)};
    if (!known || hour_heads(at))
        return add(at, BK_WORKS, &work, ANY(at, BK_WORKS, bk_work));
    bk_work_step step = *known;
    step.id = 0;
    step.key = hour_name(at);
    step.after = known->key;
    return add(at, BK_WORK_STEPS, &step, known->id);
}

static bool add_equipment(hour *at)
{
    bk_equipment equipment = {.name = hour_name(at),
                              .kinds = hour_heads(at) ? "cut;draft" : "machine",
                              .count = hour_heads(at) ? BK_NOT_KNOWN : 1 + (int64_t)hour_dice(at, 3)};
    return add(at, BK_EQUIPMENT, &equipment, ANY(at, BK_EQUIPMENT, bk_equipment));
}

// --------------------------------------------------------------------------------------- records, changed

/// A field of a record that is filled in anew.
typedef enum fill_kind { TEXT, RENAME, DAY_OR_NONE, MINUTES, QUANTITY, OUTCOME } fill_kind;

static const struct changing {
    bk_family family;
    size_t size, field;
    fill_kind filling;
} changings[] = {
    {BK_PRODUCTIONS, sizeof(bk_production), offsetof(bk_production, name), RENAME},
    {BK_DATES, sizeof(bk_date), offsetof(bk_date, note), TEXT},
    {BK_PEOPLE, sizeof(bk_person), offsetof(bk_person, name), RENAME},
    {BK_AWAYS, sizeof(bk_away), offsetof(bk_away, reason), TEXT},
    {BK_COMPANY_PERFORMERS, sizeof(bk_performer), offsetof(bk_performer, contact), TEXT},
    {BK_COMPANY_PERFORMERS, sizeof(bk_performer), offsetof(bk_performer, name), RENAME},
    {BK_ROLES, sizeof(bk_role), offsetof(bk_role, name), RENAME},
    {BK_ROLES, sizeof(bk_role), offsetof(bk_role, cover), TEXT},
    {BK_COSTUMES, sizeof(bk_costume), offsetof(bk_costume, number), RENAME},
    {BK_COSTUMES, sizeof(bk_costume), offsetof(bk_costume, due), DAY_OR_NONE},
    {BK_PIECES, sizeof(bk_piece), offsetof(bk_piece, name), RENAME},
    {BK_PIECES, sizeof(bk_piece), offsetof(bk_piece, cost), QUANTITY},
    {BK_STEPS, sizeof(bk_step), offsetof(bk_step, key), RENAME},
    {BK_STEPS, sizeof(bk_step), offsetof(bk_step, minutes), MINUTES},
    {BK_STEPS, sizeof(bk_step), offsetof(bk_step, done_on), DAY_OR_NONE},
    {BK_STEPS, sizeof(bk_step), offsetof(bk_step, after), TEXT},
    {BK_NEEDS, sizeof(bk_need), offsetof(bk_need, quantity), QUANTITY},
    {BK_MATERIALS, sizeof(bk_material), offsetof(bk_material, on_hand), QUANTITY},
    {BK_MATERIALS, sizeof(bk_material), offsetof(bk_material, price), QUANTITY},
    {BK_ORDERS, sizeof(bk_order), offsetof(bk_order, arrived_on), DAY_OR_NONE},
    {BK_ORDERS, sizeof(bk_order), offsetof(bk_order, quantity), QUANTITY},
    {BK_FITTINGS, sizeof(bk_fitting), offsetof(bk_fitting, outcome), OUTCOME},
    {BK_WORKS, sizeof(bk_work), offsetof(bk_work, note), TEXT},
    {BK_WORK_STEPS, sizeof(bk_work_step), offsetof(bk_work_step, key), RENAME},
    {BK_EQUIPMENT, sizeof(bk_equipment), offsetof(bk_equipment, name), RENAME},
    {BK_EQUIPMENT, sizeof(bk_equipment), offsetof(bk_equipment, count), MINUTES},
    {BK_NOTES, sizeof(bk_note), offsetof(bk_note, done_on), DAY_OR_NONE},
};

enum { CHANGINGS = sizeof changings / sizeof changings[0], RECORD_ROOM = 512 };

static void fill(hour *at, fill_kind filling, char *field)
{
    const char *text = filling == RENAME || hour_heads(at) ? hour_name(at) : NULL;
    bk_day day = hour_maybe_day(at);
    int64_t number = hour_dice(at, 900);
    int outcome = (int)hour_dice(at, BK_OUTCOMES + 1) - 1;
    if (filling == TEXT || filling == RENAME)
        memcpy(field, &text, sizeof text);
    else if (filling == DAY_OR_NONE)
        memcpy(field, &day, sizeof day);
    else if (filling == OUTCOME)
        memcpy(field, &outcome, sizeof outcome);
    else {
        number *= filling == QUANTITY ? 10000 : 1;
        memcpy(field, &number, sizeof number);
    }
}

/// The family of a record that is read from another one's rows.
static bk_family own_family(bk_family family)
{
    return family == BK_COMPANY_PERFORMERS ? BK_PERFORMERS : family;
}

static bool change_record(hour *at)
{
    const struct changing *kind = &changings[hour_dice(at, CHANGINGS)];
    union {
        int64_t id;
        char bytes[RECORD_ROOM];
    } before, after;
    bool found = false;
    int64_t id = hour_id(at, kind->family, kind->size);
    if (!id)
        return false;
    MUST(bk_record_read(&at->job, own_family(kind->family), id, &before, &found, &trouble));
    ck_assert(found && kind->size <= sizeof before);
    after = before;
    fill(at, kind->filling, after.bytes + kind->field);
    bk_record_saving saving = {.family = own_family(kind->family), .before = &before, .after = &after};
    return save_it(at, &saving);
}

static bool move_step_to_other_piece(hour *at)
{
    bk_step before;
    bool found = false;
    int64_t id = ANY(at, BK_STEPS, bk_step);
    const bk_piece *piece = hour_row(at, BK_PIECES, sizeof *piece);
    if (!id || !piece)
        return false;
    MUST(bk_record_read(&at->job, BK_STEPS, id, &before, &found, &trouble));
    bk_step after = before;
    after.piece = piece->name;
    bk_record_saving saving = {.family = BK_STEPS, .before = &before, .after = &after};
    return save_it(at, &saving);
}

// ----------------------------------------------------------------------------- records, moved and taken away

static bool move_record(hour *at)
{
    const char *sentence = NULL;
    const struct changing *kind = &changings[hour_dice(at, CHANGINGS)];
    int64_t id = hour_id(at, kind->family, kind->size);
    int by = (int)hour_dice(at, 7) - 3;
    bk_status status =
        id ? bk_record_move(&at->job, own_family(kind->family), id, by, &sentence, &trouble) : BK_OK;
    return hour_made(status, sentence);
}

static bool take_record_away(hour *at)
{
    const char *sentence = NULL;
    const char *goes_with = NULL;
    const struct changing *kind = &changings[hour_dice(at, CHANGINGS)];
    bk_family family = own_family(kind->family);
    int64_t id = hour_id(at, kind->family, kind->size);
    if (!id)
        return false;
    bk_status weighed = bk_record_weigh(&at->job, family, id, &goes_with, &trouble);
    bk_status status = bk_record_take_away(&at->job, family, id, &sentence, &trouble);
    ck_assert_int_eq(weighed, status);
    return hour_made(status, sentence);
}

/// The kinds of this file, and behind them those of hour_jobs.c.
static hour_kind *const kinds[] = {
    add_person,
    add_cast,
    add_garment,
    add_step,
    add_of_step,
    add_material,
    add_day,
    add_work,
    add_equipment,
    change_record,
    change_record,
    change_record,
    move_step_to_other_piece,
    move_record,
    move_record,
    take_record_away,
};

enum { KINDS = sizeof kinds / sizeof kinds[0] };

size_t hour_kinds(void)
{
    return KINDS + hour_job_count;
}

bool hour_change(hour *at, size_t kind)
{
    return kind < KINDS ? kinds[kind](at) : hour_jobs[kind - KINDS](at);
}

size_t hour_change_any(hour *at)
{
    for (;;) {
        size_t kind = hour_dice(at, (uint32_t)hour_kinds());
        bk_arena_reset(at->job.arena);
        if (hour_change(at, kind))
            return kind;
    }
}
