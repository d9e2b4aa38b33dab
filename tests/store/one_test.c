#include "bodkin/store/one.h"

#include <string.h>

#include "bodkin/store/families.h"
#include "bodkin/store/records_bench.h"
#include "workroom.h"

static bk_arena *texts(void)
{
    static bk_arena *arena;
    if (arena == NULL)
        arena = bk_arena_new();
    return arena;
}

static bk_store *open_with_one_of_each(record_ids *ids)
{
    bk_store *store = open_workroom();
    import_one_of_each(store, ids);
    return store;
}

// The same, and one more of each after it.
static bk_store *open_with_two_of_each(record_ids *ids, record_ids *others)
{
    bk_store *store = open_with_one_of_each(ids);
    import_one_of_each(store, others);
    return store;
}

static bk_rows read_all(bk_store *store, bk_family family, const record_ids *ids)
{
    bk_rows rows;
    int64_t key = 0;
    if (bk_families[family].key == BK_KEY_PRODUCTION)
        key = ids->production;
    else if (bk_families[family].key == BK_KEY_MATERIAL)
        key = ids->material;
    MUST(bk_store_read(store, family, key, texts(), &rows, &trouble));
    return rows;
}

static bool has_single_records(bk_family family)
{
    return bk_families[family].get != BK_NO_STATEMENT;
}

// ---------------------------------------------------------------------------------------------- one is read

static size_t field_size(const bk_field *field)
{
    static const size_t sizes[] = {
        [BK_FIELD_ID] = sizeof(int64_t),     [BK_FIELD_NUMBER] = sizeof(int64_t),
        [BK_FIELD_AMOUNT] = sizeof(int64_t), [BK_FIELD_SUM] = sizeof(int64_t),
        [BK_FIELD_DAY] = sizeof(bk_day),     [BK_FIELD_TIME] = sizeof(bk_minute),
        [BK_FIELD_WORD] = sizeof(int),
    };
    return sizes[field->type];
}

static bool same_field(const bk_field *field, const void *one, const void *other)
{
    if (field->type == BK_FIELD_TEXT || field->type == BK_FIELD_SHARED) {
        const char *text = *(const char *const *)one;
        const char *other_text = *(const char *const *)other;
        return text == NULL || other_text == NULL ? text == other_text : strcmp(text, other_text) == 0;
    }
    if (field->type == BK_FIELD_MOMENT) {
        const bk_moment *moment = one;
        const bk_moment *other_moment = other;
        return moment->day == other_moment->day && moment->time == other_moment->time;
    }
    return memcmp(one, other, field_size(field)) == 0;
}

static void expect_same(const bk_family_table *table, const char *one, const char *other)
{
    for (size_t i = 0; i < table->field_count; i++) {
        size_t offset = table->fields[i].offset;
        ck_assert_msg(same_field(&table->fields[i], one + offset, other + offset), "%s: field %zu",
                      table->what, i);
    }
}

START_TEST(one_record_reads_as_it_does_in_its_list)
{
    record_ids ids;
    record_ids others;
    bk_store *store = open_with_two_of_each(&ids, &others);
    for (int family = 0; family < BK_FAMILIES; family++) {
        const bk_family_table *table = &bk_families[family];
        if (!has_single_records((bk_family)family))
            continue;
        bk_rows rows = read_all(store, (bk_family)family, &others);
        ck_assert_msg(rows.count > 0, "no %s", table->what);
        for (size_t i = 0; i < rows.count; i++) {
            const char *row = (const char *)rows.items + i * table->size;
            char *record = bk_arena_clear(texts(), 1, table->size);
            bool found = false;
            MUST(bk_store_get(store, (bk_family)family, *(const int64_t *)(const void *)row, texts(), record,
                              &found, &trouble));
            ck_assert(found);
            expect_same(table, row, record);
        }
    }
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_of_an_order_of_work_names_it_and_a_material_tells_what_is_on_hand)
{
    record_ids ids;
    bool found = false;
    bk_work_step step;
    bk_material material;
    bk_store *store = open_with_one_of_each(&ids);
    MUST(bk_store_get(store, BK_WORK_STEPS, ids.work_step, texts(), &step, &found, &trouble));
    ck_assert_str_eq(step.work, "bodice with bones");
    MUST(bk_store_get(store, BK_MATERIALS, ids.material, texts(), &material, &found, &trouble));
    ck_assert_int_eq(material.on_hand, 3000000);
    bk_store_close(store);
}
END_TEST

START_TEST(a_record_that_is_not_there_is_not_found_and_nothing_is_written_over)
{
    record_ids ids;
    bk_store *store = open_with_one_of_each(&ids);
    for (int family = 0; family < BK_FAMILIES; family++) {
        if (!has_single_records((bk_family)family))
            continue;
        size_t size = bk_families[family].size;
        char *record = memset(bk_arena_take(texts(), size), 'x', size);
        bool found = true;
        MUST(bk_store_get(store, (bk_family)family, 999, texts(), record, &found, &trouble));
        ck_assert(!found);
        for (size_t i = 0; i < size; i++)
            ck_assert_int_eq(record[i], 'x');
    }
    bk_store_close(store);
}
END_TEST

START_TEST(a_record_with_a_word_that_is_none_is_told)
{
    record_ids ids;
    bool found = false;
    bk_note note;
    bk_store *store = open_with_one_of_each(&ids);
    run_sql(store, "UPDATE note SET source = 'the bus'");
    REFUSED(bk_store_get(store, BK_NOTES, ids.note, texts(), &note, &found, &trouble), BK_STORE,
            "source of a note that is none");
    ck_assert(!found);
    bk_store_close(store);
}
END_TEST

// ------------------------------------------------------------------------------------------- one is removed

// Removes the last record of the family within a change that is dropped again.
static void remove_last(bk_store *store, bk_family family, const record_ids *ids)
{
    const bk_family_table *table = &bk_families[family];
    bk_rows rows = read_all(store, family, ids);
    const char *last = (const char *)rows.items + (rows.count - 1) * table->size;
    int64_t id = *(const int64_t *)(const void *)last;
    bool found = true;
    char *record = bk_arena_clear(texts(), 1, table->size);
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_remove(store, family, id, &trouble));
    ck_assert_msg(bk_db_touched(store->db) == 1, "%s", table->what);
    MUST(bk_store_get(store, family, id, texts(), record, &found, &trouble));
    ck_assert_msg(!found, "%s", table->what);
    MUST(bk_store_remove(store, family, id, &trouble)); // once more: nothing happens
    ck_assert_msg(bk_db_touched(store->db) == 0, "%s", table->what);
    bk_store_change_drop(store);
}

START_TEST(a_removed_record_is_gone_and_no_other)
{
    record_ids ids;
    record_ids others;
    bk_store *store = open_with_two_of_each(&ids, &others);
    const char *before = dump(store, texts());
    for (int family = 0; family < BK_FAMILIES; family++) {
        if (has_single_records((bk_family)family) && bk_families[family].remove != BK_NO_STATEMENT)
            remove_last(store, (bk_family)family, &others);
    }
    ck_assert_str_eq(dump(store, texts()), before);
    bk_store_close(store);
}
END_TEST

START_TEST(a_record_that_others_refer_to_cannot_be_left_removed)
{
    record_ids ids;
    bk_store *store = open_with_one_of_each(&ids);
    const char *before = dump(store, texts());
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_remove(store, BK_ROLES, ids.role, &trouble));
    ck_assert_int_eq(bk_store_change_commit(store, MADE_AT, "Removed the Widow.", NULL, &trouble), BK_STORE);
    ck_assert_str_eq(dump(store, texts()), before);
    bk_store_close(store);
}
END_TEST

START_TEST(what_was_removed_is_turned_back)
{
    record_ids ids;
    int64_t entry = 0;
    bk_store *store = open_with_one_of_each(&ids);
    const char *before = dump(store, texts());
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_remove(store, BK_NOTES, ids.note, &trouble));
    MUST(bk_store_remove(store, BK_RUNNINGS, ids.running, &trouble));
    MUST(bk_store_remove(store, BK_WORK_STEPS, ids.work_step, &trouble));
    MUST(bk_store_remove(store, BK_WORKS, ids.work, &trouble));
    MUST(bk_store_remove(store, BK_SETTINGS, ids.setting, &trouble));
    MUST(bk_store_remove(store, BK_EQUIPMENT, ids.equipment, &trouble));
    MUST(bk_store_remove_links(store, BK_STEP_AFTERS, ids.second_step, &trouble));
    MUST(bk_store_remove_measure(store, ids.sheet, ids.measure_name, &trouble));
    MUST(bk_store_place(store, BK_PIECES, ids.piece, 77, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Removed.", &entry, &trouble));
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_turn_back(store, entry, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Turned back.", NULL, &trouble));
    ck_assert_str_eq(dump(store, texts()), before);
    bk_store_close(store);
}
END_TEST

// ----------------------------------------------------------------------------------------------------- links

// The links of one of each, by their families; of the others from_id is 0.
static void list_links(const record_ids *ids, bk_link links[BK_FAMILIES])
{
    memset(links, 0, BK_FAMILIES * sizeof *links);
    links[BK_COMPANY] = (bk_link){.from_id = ids->production, .to_id = ids->performer};
    links[BK_COVERS] = (bk_link){.from_id = ids->role, .to_id = ids->other_performer};
    links[BK_PIECE_COSTUMES] = (bk_link){.from_id = ids->piece, .to_id = ids->costume};
    links[BK_STEP_AFTERS] = (bk_link){.from_id = ids->second_step, .to_id = ids->first_step};
}

START_TEST(links_are_removed_one_or_all_and_those_from_other_records_stay)
{
    record_ids ids;
    record_ids others;
    bk_link links[BK_FAMILIES], far[BK_FAMILIES];
    bk_store *store = open_with_two_of_each(&ids, &others);
    list_links(&ids, far);
    list_links(&others, links);
    for (int family = 0; family < BK_FAMILIES; family++) {
        const bk_link *link = &links[family];
        if (link->from_id == 0)
            continue;
        int64_t count = (int64_t)read_all(store, (bk_family)family, &others).count;
        MUST(bk_store_change_begin(store, &trouble));
        far[family].to_id = link->to_id; // what is linked from two sides
        MUST(bk_store_add(store, (bk_family)family, &far[family], 1, NULL, &trouble));
        MUST(bk_store_remove_link(store, (bk_family)family, link->from_id, link->to_id, &trouble));
        ck_assert_int_eq(bk_db_touched(store->db), 1);
        MUST(bk_store_remove_link(store, (bk_family)family, link->from_id, link->to_id, &trouble));
        ck_assert_int_eq(bk_db_touched(store->db), 0);
        bk_store_change_drop(store);
        MUST(bk_store_change_begin(store, &trouble));
        MUST(bk_store_remove_links(store, (bk_family)family, link->from_id, &trouble));
        ck_assert_int_eq(bk_db_touched(store->db), count);
        bk_store_change_drop(store);
    }
    bk_store_close(store);
}
END_TEST

START_TEST(one_measure_of_a_sheet_is_removed)
{
    record_ids ids;
    int64_t name = 0;
    bk_store *store = open_with_one_of_each(&ids);
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_MEASURE_NAMES, &(bk_named){.name = "hip girth"}, 0, &name, &trouble));
    bk_measure hip = {.sheet_id = ids.sheet, .name_id = name, .value = 980000};
    MUST(bk_store_add(store, BK_MEASURES, &hip, 8, NULL, &trouble));
    MUST(bk_store_remove_measure(store, ids.sheet, ids.measure_name, &trouble));
    ck_assert_int_eq(bk_db_touched(store->db), 1);
    bk_rows measures = read_all(store, BK_MEASURES, &ids);
    ck_assert_uint_eq(measures.count, 1);
    ck_assert_str_eq(((const bk_measure *)measures.items)->name, "hip girth");
    bk_store_close(store);
}
END_TEST

// ---------------------------------------------------------------------------------------------------- places

typedef struct listed {
    bk_family family;
    int64_t places_key, last_key; // of the list read, and of that which adding goes to
    int64_t id, position;
} listed;

enum { LISTS = 10 };

static void list_placed(const record_ids *ids, listed lists[LISTS])
{
    const listed all[LISTS] = {
        {BK_ROLES, ids->production, ids->production, ids->role, 3},
        {BK_COSTUMES, ids->production, ids->production, ids->costume, 5},
        {BK_PIECES, ids->production, ids->production, ids->piece, 6},
        {BK_STEPS, ids->piece, ids->production, ids->second_step, 10},
        {BK_NEEDS, ids->first_step, ids->first_step, ids->need, 12},
        {BK_FITTINGS, ids->production, ids->production, ids->fitting, 13},
        {BK_NOTES, ids->production, ids->production, ids->note, 16},
        {BK_WORKS, 0, 0, ids->work, 14},
        {BK_WORK_STEPS, ids->work, ids->work, ids->work_step, 15},
        {BK_EQUIPMENT, 0, 0, ids->equipment, 17},
    };
    memcpy(lists, all, sizeof all);
}

static const bk_place *last_of(bk_store *store, const listed *list, size_t *count)
{
    bk_rows places;
    MUST(bk_store_places(store, list->family, list->places_key, texts(), &places, &trouble));
    *count = places.count;
    return (const bk_place *)places.items + places.count - 1;
}

// Adds a copy of the record at a position.
static int64_t add_copy(bk_store *store, bk_family family, int64_t id, int64_t position)
{
    bool found = false;
    char *record = bk_arena_clear(texts(), 1, bk_families[family].size);
    MUST(bk_store_get(store, family, id, texts(), record, &found, &trouble));
    *(int64_t *)(void *)record = 0;
    MUST(bk_store_add(store, family, record, position, &id, &trouble));
    return id;
}

START_TEST(every_list_tells_its_places_and_no_others)
{
    record_ids ids;
    record_ids others;
    listed lists[LISTS];
    bk_store *store = open_with_two_of_each(&ids, &others);
    list_placed(&ids, lists);
    MUST(bk_store_change_begin(store, &trouble));
    for (size_t i = 0; i < LISTS; i++) {
        size_t count = 0;
        size_t copied = 0;
        bk_family family = lists[i].family;
        last_of(store, &lists[i], &count);
        int64_t id = add_copy(store, family, lists[i].id, 4000);
        const bk_place *last = last_of(store, &lists[i], &copied);
        ck_assert_uint_eq(copied, count + 1);
        ck_assert_int_eq(last->id, id);
        ck_assert_int_eq(last->position, 4000);
        if (!bk_families[family].one_list)
            ck_assert_uint_eq(count, family == BK_STEPS ? 2 : 1);
    }
    bk_store_close(store);
}
END_TEST

START_TEST(every_list_tells_the_place_after_all_of_it)
{
    record_ids ids;
    record_ids others;
    listed lists[LISTS];
    bk_store *store = open_with_two_of_each(&ids, &others);
    MUST(bk_store_change_begin(store, &trouble));
    list_placed(&others, lists);
    for (size_t i = 0; i < LISTS; i++)
        MUST(bk_store_place(store, lists[i].family, lists[i].id, 3000, &trouble));
    list_placed(&ids, lists);
    for (size_t i = 0; i < LISTS; i++) {
        int64_t after = 0;
        int64_t place = bk_families[lists[i].family].one_list ? 4000 : 2000;
        add_copy(store, lists[i].family, lists[i].id, place);
        MUST(bk_store_last_place(store, lists[i].family, lists[i].last_key, &after, &trouble));
        ck_assert_int_eq(after, place + 1);
    }
    bk_store_close(store);
}
END_TEST

START_TEST(an_empty_list_begins_at_one)
{
    record_ids ids;
    listed lists[LISTS];
    bk_store *store = open_with_one_of_each(&ids);
    list_placed(&ids, lists);
    for (size_t i = 0; i < LISTS; i++) {
        bk_rows places;
        int64_t after = 0;
        if (bk_families[lists[i].family].one_list)
            continue;
        MUST(bk_store_places(store, lists[i].family, 999, texts(), &places, &trouble));
        ck_assert_uint_eq(places.count, 0);
        MUST(bk_store_last_place(store, lists[i].family, 999, &after, &trouble));
        ck_assert_int_eq(after, 1);
    }
    bk_store_close(store);
}
END_TEST

START_TEST(a_record_is_put_in_another_place_and_all_else_of_it_stays)
{
    record_ids ids;
    listed lists[LISTS];
    record_ids others;
    bk_store *store = open_with_two_of_each(&ids, &others);
    list_placed(&ids, lists);
    const char *before = dump(store, texts());
    MUST(bk_store_change_begin(store, &trouble));
    for (size_t i = 0; i < LISTS; i++) {
        size_t count = 0;
        MUST(bk_store_place(store, lists[i].family, lists[i].id, 5000, &trouble));
        ck_assert_int_eq(bk_db_touched(store->db), 1);
        const bk_place *last = last_of(store, &lists[i], &count);
        ck_assert_int_eq(last->id, lists[i].id);
        ck_assert_int_eq(last->position, 5000);
        MUST(bk_store_place(store, lists[i].family, lists[i].id, lists[i].position, &trouble));
    }
    ck_assert_str_eq(dump(store, texts()), before);
    bk_store_close(store);
}
END_TEST

START_TEST(two_steps_change_places)
{
    record_ids ids;
    bk_store *store = open_with_one_of_each(&ids);
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_place(store, BK_STEPS, ids.first_step, 10, &trouble));
    MUST(bk_store_place(store, BK_STEPS, ids.second_step, 9, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Moved.", NULL, &trouble));
    ck_assert_int_eq(((const bk_step *)read_all(store, BK_STEPS, &ids).items)->id, ids.second_step);
    bk_store_close(store);
}
END_TEST

static int64_t place_after(bk_store *store, bk_family family, int64_t from)
{
    int64_t after = 0;
    MUST(bk_store_last_place(store, family, from, &after, &trouble));
    return after;
}

START_TEST(links_tell_the_place_after_all_those_from_one_record)
{
    record_ids ids;
    record_ids others;
    bk_link links[BK_FAMILIES];
    bk_link far[BK_FAMILIES];
    bk_store *store = open_with_two_of_each(&ids, &others);
    list_links(&ids, links);
    list_links(&others, far);
    MUST(bk_store_change_begin(store, &trouble));
    for (int family = 0; family < BK_FAMILIES; family++) {
        bk_link link = {.from_id = links[family].from_id, .to_id = far[family].to_id};
        bk_link farther = {.from_id = far[family].from_id, .to_id = links[family].to_id};
        if (link.from_id == 0)
            continue;
        MUST(bk_store_add(store, (bk_family)family, &link, 2000, NULL, &trouble));
        MUST(bk_store_add(store, (bk_family)family, &farther, 3000, NULL, &trouble));
        ck_assert_int_eq(place_after(store, (bk_family)family, link.from_id), 2001);
        ck_assert_int_eq(place_after(store, (bk_family)family, 999), 1);
    }
    bk_store_close(store);
}
END_TEST

START_TEST(measures_tell_the_place_after_all_of_their_sheet)
{
    record_ids ids;
    record_ids others;
    bk_store *store = open_with_two_of_each(&ids, &others);
    bk_measure measure = {.sheet_id = ids.sheet, .name_id = others.measure_name, .value = 980000};
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_MEASURES, &measure, 2000, NULL, &trouble));
    measure.sheet_id = others.sheet;
    measure.name_id = ids.measure_name;
    MUST(bk_store_add(store, BK_MEASURES, &measure, 3000, NULL, &trouble));
    ck_assert_int_eq(place_after(store, BK_MEASURES, ids.sheet), 2001);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("one record", one_record_reads_as_it_does_in_its_list,
             a_step_of_an_order_of_work_names_it_and_a_material_tells_what_is_on_hand,
             a_record_that_is_not_there_is_not_found_and_nothing_is_written_over,
             a_record_with_a_word_that_is_none_is_told, a_removed_record_is_gone_and_no_other,
             a_record_that_others_refer_to_cannot_be_left_removed, what_was_removed_is_turned_back,

             links_are_removed_one_or_all_and_those_from_other_records_stay,
             one_measure_of_a_sheet_is_removed, every_list_tells_its_places_and_no_others,
             every_list_tells_the_place_after_all_of_it, an_empty_list_begins_at_one,
             a_record_is_put_in_another_place_and_all_else_of_it_stays, two_steps_change_places,
             links_tell_the_place_after_all_those_from_one_record,
             measures_tell_the_place_after_all_of_their_sheet)
