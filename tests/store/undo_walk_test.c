#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/daybook.h"
#include "bodkin/store/one.h"
#include "bodkin/store/records_bench.h"
#include "bodkin/trade/words.h"
#include "workroom.h"

// Changes of every kind at random, undone one by one to the start and redone one by one to the end.

static bk_arena *texts(void)
{
    static bk_arena *arena;
    if (arena == NULL)
        arena = bk_arena_new();
    return arena;
}

enum { WALK = 500, STRIDE = 25, MOST_AT_ONCE = 4 };

static uint32_t dice;

static uint32_t throw_dice(uint32_t sides)
{
    dice = dice * 1664525u + 1013904223u;
    return (dice >> 8) % sides;
}

static const char *new_text(void)
{
    return bk_arena_print(texts(), "text %u", (unsigned)throw_dice(1000000));
}

/// Any row of a family in any production; NULL where there is none.
static void *any_row(bk_store *store, bk_family family, int64_t key, size_t size)
{
    bk_rows rows;
    MUST(bk_store_read(store, family, key, texts(), &rows, &trouble));
    return rows.count == 0 ? NULL : (char *)rows.items + size * throw_dice((uint32_t)rows.count);
}

static int64_t any_production(bk_store *store)
{
    bk_production *production = any_row(store, BK_PRODUCTIONS, 0, sizeof *production);
    return production == NULL ? 0 : production->id;
}

static void change_show(bk_store *store)
{
    bk_piece *piece = any_row(store, BK_PIECES, any_production(store), sizeof *piece);
    bk_costume *costume = any_row(store, BK_COSTUMES, any_production(store), sizeof *costume);
    if (piece != NULL) {
        piece->place = new_text();
        piece->out_with = throw_dice(2) ? new_text() : NULL;
        MUST(bk_store_put(store, BK_PIECES, piece, &trouble));
        MUST(bk_store_put(store, BK_PIECE_COSTS, &(bk_private){.id = piece->id, .amount = throw_dice(9999)},
                          &trouble));
    }
    if (costume != NULL) {
        costume->number = new_text();
        costume->due = throw_dice(2) ? bk_day_of(2027, 3, 1) : BK_NO_DAY;
        MUST(bk_store_put(store, BK_COSTUMES, costume, &trouble));
        costume->id = 0;
        MUST(bk_store_add(store, BK_COSTUMES, costume, throw_dice(9), NULL, &trouble));
    }
}

static void change_steps(bk_store *store)
{
    int64_t production = any_production(store);
    bk_step *step = any_row(store, BK_STEPS, production, sizeof *step);
    bk_need *need = any_row(store, BK_NEEDS, production, sizeof *need);
    bk_fitting *fitting = any_row(store, BK_FITTINGS, production, sizeof *fitting);
    if (step != NULL) {
        step->done_on = step->done_on == BK_NO_DAY ? bk_day_of(2027, 3, 2) : BK_NO_DAY;
        step->took = throw_dice(2) ? BK_NOT_KNOWN : throw_dice(90);
        MUST(bk_store_put(store, BK_STEPS, step, &trouble));
        bk_step copy = *step;
        copy.id = 0;
        int64_t id = 0;
        MUST(bk_store_add(store, BK_STEPS, &copy, throw_dice(9), &id, &trouble));
        MUST(bk_store_add(store, BK_STEP_AFTERS, &(bk_link){.from_id = id, .to_id = step->id}, 0, NULL,
                          &trouble));
    }
    if (need != NULL) {
        need->quantity = throw_dice(9999999);
        MUST(bk_store_put(store, BK_NEEDS, need, &trouble));
        need->id = 0;
        MUST(bk_store_add(store, BK_NEEDS, need, 1, NULL, &trouble));
    }
    if (fitting != NULL) {
        fitting->outcome = throw_dice(2) ? BK_FITS : BK_NO_WORD;
        MUST(bk_store_put(store, BK_FITTINGS, fitting, &trouble));
    }
}

static void change_workroom(bk_store *store)
{
    bk_performer *performer = any_row(store, BK_PERFORMERS, 0, sizeof *performer);
    bk_material *material = any_row(store, BK_MATERIALS, 0, sizeof *material);
    bk_order *order = any_row(store, BK_ORDERS, 0, sizeof *order);
    if (performer != NULL) {
        performer->note = throw_dice(2) ? new_text() : NULL;
        MUST(bk_store_put(store, BK_PERFORMERS, performer, &trouble));
        MUST(bk_store_put(store, BK_CONTACTS, &(bk_private){.id = performer->id, .text = new_text()},
                          &trouble));
    }
    if (order != NULL) {
        order->arrived_on = bk_day_of(2027, 2, (int)throw_dice(28) + 1);
        MUST(bk_store_put(store, BK_ORDERS, order, &trouble));
    }
    if (material != NULL) {
        bk_movement moved = {.material_id = material->id,
                             .kind = BK_MOVED_USE,
                             .quantity = -(int64_t)throw_dice(9999),
                             .moved_on = bk_day_of(2027, 3, 2),
                             .order_id = 0};
        material->supplier = new_text();
        MUST(bk_store_put(store, BK_MATERIALS, material, &trouble));
        MUST(bk_store_add(store, BK_MOVEMENTS, &moved, 0, NULL, &trouble));
    }
}

static void change_measures(bk_store *store)
{
    bk_measure *measure = any_row(store, BK_MEASURES, any_production(store), sizeof *measure);
    bk_sheet_day *sheet = any_row(store, BK_MEASURE_SHEETS, 0, sizeof *sheet);
    int64_t name = 0;
    if (measure != NULL) {
        measure->value = throw_dice(999999);
        MUST(bk_store_put(store, BK_MEASURES, measure, &trouble));
    }
    if (sheet != NULL) {
        MUST(bk_store_add(store, BK_MEASURE_NAMES, &(bk_named){.name = new_text()}, 0, &name, &trouble));
        bk_measure fresh = {.sheet_id = sheet->id, .name_id = name, .value = throw_dice(999999)};
        MUST(bk_store_add(store, BK_MEASURES, &fresh, 1, NULL, &trouble));
    }
}

static void change_notes(bk_store *store)
{
    bk_note *note = any_row(store, BK_NOTES, any_production(store), sizeof *note);
    bk_running *running = any_row(store, BK_RUNNINGS, 0, sizeof *running);
    bk_setting *setting = any_row(store, BK_SETTINGS, 0, sizeof *setting);
    if (note != NULL) {
        note->done_on = throw_dice(2) ? bk_day_of(2027, 3, 3) : BK_NO_DAY;
        note->source = throw_dice(2) ? BK_FROM_DRESS : BK_NO_WORD;
        note->what = new_text();
        MUST(bk_store_put(store, BK_NOTES, note, &trouble));
        MUST(bk_store_place(store, BK_NOTES, note->id, throw_dice(99), &trouble));
        note->id = note->costume_id = note->piece_id = note->step_id = 0;
        MUST(bk_store_add(store, BK_NOTES, note, throw_dice(9), NULL, &trouble));
    }
    if (running != NULL) {
        MUST(bk_store_remove(store, BK_RUNNINGS, running->id, &trouble));
        running->id = 0;
        running->who = new_text();
        MUST(bk_store_add(store, BK_RUNNINGS, running, 0, NULL, &trouble));
    }
    if (setting != NULL) {
        setting->value = new_text();
        MUST(bk_store_put(store, BK_SETTINGS, setting, &trouble));
    }
}

static void change_works(bk_store *store)
{
    bk_work *work = any_row(store, BK_WORKS, 0, sizeof *work);
    bk_work_step *step = any_row(store, BK_WORK_STEPS, 0, sizeof *step);
    if (work == NULL || step == NULL)
        return;
    work->name = new_text();
    work->ready = 0;
    MUST(bk_store_put(store, BK_WORKS, work, &trouble));
    MUST(bk_store_place(store, BK_WORKS, work->id, throw_dice(99), &trouble));
    MUST(bk_store_remove(store, BK_WORK_STEPS, step->id, &trouble));
    work->id = step->id = 0;
    MUST(bk_store_add(store, BK_WORKS, work, throw_dice(9), &step->work_id, &trouble));
    step->minutes = throw_dice(90);
    for (uint32_t left = 2 + throw_dice(2); left > 0; left--)
        MUST(bk_store_add(store, BK_WORK_STEPS, step, throw_dice(9), NULL, &trouble));
}

static void change_equipment(bk_store *store)
{
    bk_equipment *equipment = any_row(store, BK_EQUIPMENT, 0, sizeof *equipment);
    if (equipment == NULL)
        return;
    equipment->name = new_text();
    equipment->count = throw_dice(2) ? BK_NOT_KNOWN : throw_dice(9) + 1;
    MUST(bk_store_put(store, BK_EQUIPMENT, equipment, &trouble));
    MUST(bk_store_place(store, BK_EQUIPMENT, equipment->id, throw_dice(99), &trouble));
    equipment->id = 0;
    MUST(bk_store_add(store, BK_EQUIPMENT, equipment, throw_dice(9), NULL, &trouble));
}

static void remove_any(bk_store *store, bk_family family, int64_t key, size_t size)
{
    void *row = any_row(store, family, key, size);
    if (row != NULL)
        MUST(bk_store_remove(store, family, *(int64_t *)row, &trouble));
}

static void take_away(bk_store *store)
{
    int64_t production = any_production(store);
    bk_measure *measure = any_row(store, BK_MEASURES, production, sizeof *measure);
    bk_link *link = any_row(store, BK_PIECE_COSTUMES, production, sizeof *link);
    bk_link *after = any_row(store, BK_STEP_AFTERS, production, sizeof *after);
    remove_any(store, BK_NOTES, production, sizeof(bk_note));
    remove_any(store, BK_NEEDS, production, sizeof(bk_need));
    remove_any(store, BK_FITTINGS, production, sizeof(bk_fitting));
    remove_any(store, BK_DATES, production, sizeof(bk_date));
    remove_any(store, BK_AWAYS, 0, sizeof(bk_away));
    remove_any(store, BK_EQUIPMENT, 0, sizeof(bk_equipment));
    remove_any(store, BK_CONTACTS, 0, sizeof(bk_private));
    remove_any(store, BK_PIECE_COSTS, production, sizeof(bk_private));
    if (measure != NULL)
        MUST(bk_store_remove_measure(store, measure->sheet_id, measure->name_id, &trouble));
    if (link != NULL)
        MUST(bk_store_remove_link(store, BK_PIECE_COSTUMES, link->from_id, link->to_id, &trouble));
    if (after != NULL)
        MUST(bk_store_remove_links(store, BK_STEP_AFTERS, after->from_id, &trouble));
}

static void move_places(bk_store *store)
{
    int64_t production = any_production(store);
    bk_costume *costume = any_row(store, BK_COSTUMES, production, sizeof *costume);
    bk_step *step = any_row(store, BK_STEPS, production, sizeof *step);
    if (costume != NULL)
        MUST(bk_store_place(store, BK_COSTUMES, costume->id, throw_dice(99), &trouble));
    if (step != NULL)
        MUST(bk_store_place(store, BK_STEPS, step->id, throw_dice(99), &trouble));
}

static void add_show(bk_store *store)
{
    add_one_of_each(store);
}

static void remove_show(bk_store *store)
{
    int64_t production = any_production(store);
    if (production != 0)
        MUST(bk_store_remove_production(store, production, &trouble));
}

static void replace_show(bk_store *store)
{
    remove_show(store);
    add_one_of_each(store);
}

static void (*const kinds_of_change[])(bk_store *) = {
    change_show,      change_steps, change_workroom, change_measures, change_notes, change_works,
    change_equipment, take_away,    move_places,     add_show,        replace_show, remove_show,
};

static void change_at_random(bk_store *store)
{
    uint32_t kinds = sizeof kinds_of_change / sizeof kinds_of_change[0];
    MUST(bk_store_change_begin(store, &trouble));
    for (uint32_t left = 1 + throw_dice(MOST_AT_ONCE); left > 0; left--)
        kinds_of_change[throw_dice(kinds)](store);
    MUST(bk_store_change_commit(store, MADE_AT, new_text(), NULL, &trouble));
}

// The store is looked at after every few changes, at the start and at the end.
static void look(bk_store *store, const char *states[], int change, bool first_time)
{
    if (change % STRIDE != 0)
        return;
    const char *state = dump(store, texts());
    if (first_time)
        states[change / STRIDE] = state;
    else
        ck_assert_str_eq(state, states[change / STRIDE]);
}

START_TEST(a_random_walk_is_undone_to_the_start_and_redone_to_the_end)
{
    bk_store *store = open_workroom();
    const char *sentence = NULL;
    const char *states[WALK / STRIDE + 1];
    look(store, states, 0, true);
    for (int i = 1; i <= WALK; i++) {
        change_at_random(store);
        look(store, states, i, true);
    }
    for (int i = WALK - 1; i >= 0; i--) {
        MUST(bk_daybook_undo(store, 0, MADE_AT, texts(), &sentence, &trouble));
        look(store, states, i, false);
    }
    REFUSED(bk_daybook_undo(store, 0, MADE_AT, texts(), &sentence, &trouble), BK_REFUSED, "nothing of yours");
    for (int i = 1; i <= WALK; i++) {
        MUST(bk_daybook_redo(store, MADE_AT, texts(), &sentence, &trouble));
        look(store, states, i, false);
    }
    REFUSED(bk_daybook_redo(store, MADE_AT, texts(), &sentence, &trouble), BK_REFUSED, "nothing to redo");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("undo_walk", a_random_walk_is_undone_to_the_start_and_redone_to_the_end)
