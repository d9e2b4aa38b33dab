#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/families.h"
#include "bodkin/store/records_bench.h"
#include "workroom.h"

// The columns stand as in the migrations of schema/.
static const char one_of_each[] =
    "away:\n1|1|1|2027-02-01|2027-02-03|a wedding\n"
    "company:\n1|1|2\n1|2|1\n"
    "costume:\n1|1|5|1A|1|mourning|2027-03-19|rain in act two\n"
    "equipment:\n1|17|machine|machine;craft|2\n"
    "fitting:\n1|1|2|13|2027-03-01T10:00|2|20|2027-03-02|again|hem up\n"
    "material:\n1|wool flannel|yd|1500000|the mill|grey\n"
    "material_price:\n1|1850|GBP\n"
    "measure:\n1|1|7|712000|a shirt|Ada\n"
    "measure_name:\n1|waist girth\n"
    "measure_sheet:\n1|1|2027-01-09\n"
    "movement:\n1|1|delivery|3000000|2027-03-08|1|1|two parcels\n"
    "need:\n1|1|1|12|2400000\n"
    "note:\n1|1|16|2027-03-21|parade|the director|1|1|2|sleeve pulls|2027-03-22\n"
    "performer:\n1|Zoë Marsh|90|left-handed\n2|Tam Okoro|-|-\n"
    "performer_contact:\n1|zoe@example.org\n"
    "person:\n1|Ivo "
    "Lund|hand;press|09:00-10:00|09:00-11:00|09:00-12:00|09:00-13:00|09:00-14:00|09:00-15:00|09:00-16:00|"
    "2027-01-01|2027-06-30|own iron\n"
    "piece:\n1|1|6|1A-1|bodice|alter|rail two|Ivo Lund|2027-02-20|2027-02-27|the store "
    "room|2027-05-02|2027-05-03|"
    "mind the lace\n"
    "piece_cost:\n1|99|SEK\n"
    "piece_costume:\n1|1|8\n"
    "production:\n1|The Salt Road|2027-04-01|NOK|in|120|2027-05-01\n"
    "purchase:\n1|1|3000000|2027-02-10|2027-03-09|2027-03-08|the other mill\n"
    "purchase_cost:\n1|5550|EUR\n"
    "role:\n1|1|3|The Widow|1|recast\n"
    "role_cover:\n1|2|4\n"
    "running:\n1|Ivo Lund|2|2027-03-02T10:00:00+01:00\n"
    "setting:\n1|marked change|3 %\n"
    "show_date:\n1|1|parade|2027-03-20|14:30|on stage\n"
    "step:\n1|1|1|9|cut|fit the bodice|cut|45|30|60|2|3|240|1|waist girth|with the corset|2027-02-28|Ada|50\n"
    "2|1|1|10|fit|fit the bodice|fit|45|30|60|2|3|240|1|waist girth|with the corset|2027-02-28|Ada|50\n"
    "step_after:\n2|1|11\n"
    "work:\n1|14|bodice with bones|closed at the back|0\n"
    "work_step:\n1|1|15|bones|bone the bodice|craft|90|60|150|channels;fit|2|3|10|1|waist girth|tips "
    "rounded\n";

static bk_store *open_workroom_without_works(void)
{
    bk_store *store = open_workroom();
    clear_works(store);
    return store;
}

START_TEST(every_field_goes_to_its_column)
{
    bk_store *store = open_workroom_without_works();
    bk_arena *arena = bk_arena_new();
    record_ids ids;
    import_one_of_each(store, &ids);
    ck_assert_str_eq(dump(store, arena), one_of_each);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

// Where the rows of one_of_each stand in their lists; the others carry their place with them or have none.
static int64_t first_position(bk_family family)
{
    static const int64_t positions[BK_FAMILIES] = {
        [BK_ROLES] = 3,     [BK_COSTUMES] = 5, [BK_PIECES] = 6,      [BK_STEPS] = 9,  [BK_NEEDS] = 12,
        [BK_FITTINGS] = 13, [BK_WORKS] = 14,   [BK_WORK_STEPS] = 15, [BK_NOTES] = 16, [BK_EQUIPMENT] = 17};
    return positions[family];
}

static int64_t own_position(bk_family family, const void *record)
{
    if (family == BK_MEASURES)
        return ((const bk_measure *)record)->position;
    bool link = family == BK_COMPANY || family == BK_COVERS || family == BK_PIECE_COSTUMES ||
                family == BK_STEP_AFTERS;
    return link ? ((const bk_link *)record)->position : 0;
}

static const void *read_one(bk_store *store, bk_family family, bk_arena *arena, bk_rows *rows)
{
    int64_t key = bk_families[family].key == BK_KEY_NONE ? 0 : 1; // every id of one_of_each is 1
    MUST(bk_store_read(store, family, key, arena, rows, &trouble));
    ck_assert_uint_gt(rows->count, 0);
    return rows->items;
}

static void add_again(bk_store *from, bk_store *to, bk_family family, bk_arena *arena)
{
    bk_rows rows;
    const char *record = read_one(from, family, arena, &rows);
    for (size_t i = 0; i < rows.count; i++, record += bk_families[family].size) {
        int64_t position =
            first_position(family) == 0 ? own_position(family, record) : first_position(family) + (int64_t)i;
        MUST(bk_store_add(to, family, record, position, NULL, &trouble));
    }
}

static bk_store *open_other(void)
{
    bk_store *store = NULL;
    bk_store_options options = {.path = bk_test_path("other.db"), .who = "Ada", .create = true};
    MUST(bk_store_open(&store, &options, &trouble));
    clear_works(store);
    return store;
}

START_TEST(what_is_read_and_added_to_another_store_is_the_same)
{
    bk_store *store = open_workroom_without_works();
    bk_store *other = open_other();
    bk_arena *arena = bk_arena_new();
    record_ids ids;
    import_one_of_each(store, &ids);
    MUST(bk_store_change_begin(other, &trouble));
    for (int family = 0; family < BK_FAMILIES; family++) {
        if (bk_families[family].add != BK_NO_STATEMENT)
            add_again(store, other, (bk_family)family, arena);
    }
    MUST(bk_store_change_commit(other, MADE_AT, "Copied.", NULL, &trouble));
    ck_assert_str_eq(dump(other, arena), one_of_each);
    bk_arena_free(arena);
    bk_store_close(other);
    bk_store_close(store);
}
END_TEST

static void take_update(void *context, int columns, const char *const *values)
{
    (void)columns;
    bk_buffer_text(context, values[0]);
}

// Writes something else into every column that says nothing about which row it is and where it stands.
static void garble(bk_store *store)
{
    bk_buffer updates = {0};
    MUST(bk_db_script(
        store->db,
        "SELECT printf('UPDATE %s SET %s = %s;', t.name, c.name, iif(c.type = 'TEXT', '''x''', '77')) "
        "FROM sqlite_schema AS t JOIN pragma_table_info(t.name) AS c "
        "WHERE t.type = 'table' AND t.name NOT LIKE 'sqlite%' AND t.name NOT LIKE 'daybook%' "
        "AND c.pk = 0 AND c.name NOT LIKE '%id' AND c.name <> 'position'",
        take_update, &updates, &trouble));
    run_sql(store, updates.bytes);
    bk_buffer_free(&updates);
}

static void put_again(bk_store *from, bk_store *to, bk_family family, bk_arena *arena)
{
    bk_rows rows;
    const char *record = read_one(from, family, arena, &rows);
    for (size_t i = 0; i < rows.count; i++, record += bk_families[family].size)
        MUST(bk_store_put(to, family, record, &trouble));
}

START_TEST(putting_a_record_writes_all_its_fields)
{
    bk_store *store = open_workroom_without_works();
    bk_store *other = open_other();
    bk_arena *arena = bk_arena_new();
    record_ids ids;
    import_one_of_each(store, &ids);
    import_one_of_each(other, &ids);
    garble(other);
    ck_assert_str_ne(dump(other, arena), one_of_each);
    MUST(bk_store_change_begin(other, &trouble));
    for (int family = 0; family < BK_FAMILIES; family++) {
        if (bk_families[family].put != BK_NO_STATEMENT)
            put_again(store, other, (bk_family)family, arena);
    }
    MUST(bk_store_change_commit(other, MADE_AT, "Put.", NULL, &trouble));
    ck_assert_str_eq(dump(other, arena), one_of_each);
    bk_arena_free(arena);
    bk_store_close(other);
    bk_store_close(store);
}
END_TEST

START_TEST(a_text_that_is_not_utf_8_is_refused_because_no_sheet_could_give_it_back)
{
    bk_store *store = open_workroom();
    bk_performer performer = {.name = "Zo\xEB", .measures_good_for = BK_NOT_KNOWN};
    bk_setting setting = {.name = "x", .value = "y"};
    MUST(bk_store_change_begin(store, &trouble));
    REFUSED(bk_store_add(store, BK_PERFORMERS, &performer, 0, NULL, &trouble), BK_REFUSED, "is not UTF-8");
    MUST(bk_store_add(store, BK_SETTINGS, &setting, 0, &setting.id, &trouble));
    setting.value = "\xFF";
    REFUSED(bk_store_put(store, BK_SETTINGS, &setting, &trouble), BK_REFUSED, "is not UTF-8");
    bk_store_change_drop(store);
    bk_store_close(store);
}
END_TEST

START_TEST(putting_a_record_may_refer_it_to_another)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    import_one_of_each(store, &ids);
    MUST(bk_store_read(store, BK_ROLES, ids.production, arena, &rows, &trouble));
    bk_role role = *(bk_role *)rows.items;
    role.performer_id = 0;
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_put(store, BK_ROLES, &role, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "The Widow is not cast.", NULL, &trouble));
    MUST(bk_store_read(store, BK_ROLES, ids.production, arena, &rows, &trouble));
    ck_assert_int_eq(((bk_role *)rows.items)->performer_id, 0);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(a_removed_record_cannot_be_put)
{
    bk_store *store = open_workroom();
    bk_performer nobody = {.id = 99, .name = "Nobody", .measures_good_for = BK_NOT_KNOWN};
    MUST(bk_store_change_begin(store, &trouble));
    REFUSED(bk_store_put(store, BK_PERFORMERS, &nobody, &trouble), BK_REFUSED, "This performer is no longer");
    bk_store_close(store);
}
END_TEST

START_TEST(a_price_is_added_and_then_changed)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    import_one_of_each(store, &ids);
    run_sql(store, "DELETE FROM material_price");
    MUST(bk_store_change_begin(store, &trouble));
    bk_private price = {.id = ids.material, .amount = 2000, .currency = "GBP"};
    MUST(bk_store_put(store, BK_PRICES, &price, &trouble));
    price.amount = 2100;
    MUST(bk_store_put(store, BK_PRICES, &price, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Priced.", NULL, &trouble));
    MUST(bk_store_read(store, BK_PRICES, 0, arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 1);
    ck_assert_int_eq(((bk_private *)rows.items)->amount, 2100);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(a_removed_production_leaves_the_workroom_and_nothing_of_its_own)
{
    bk_store *store = open_workroom_without_works();
    bk_arena *arena = bk_arena_new();
    record_ids ids;
    import_one_of_each(store, &ids);
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_remove_production(store, ids.production, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Removed.", NULL, &trouble));
    ck_assert_str_eq(
        dump(store, arena),
        "away:\n1|1|1|2027-02-01|2027-02-03|a wedding\n"
        "company:\ncostume:\n"
        "equipment:\n1|17|machine|machine;craft|2\n"
        "fitting:\n"
        "material:\n1|wool flannel|yd|1500000|the mill|grey\n"
        "material_price:\n1|1850|GBP\n"
        "measure:\n1|1|7|712000|a shirt|Ada\n"
        "measure_name:\n1|waist girth\n"
        "measure_sheet:\n1|1|2027-01-09\n"
        "movement:\n1|1|delivery|3000000|2027-03-08|1|1|two parcels\n"
        "need:\nnote:\n"
        "performer:\n1|Zoë Marsh|90|left-handed\n2|Tam Okoro|-|-\n"
        "performer_contact:\n1|zoe@example.org\n"
        "person:\n1|Ivo Lund|hand;press|09:00-10:00|09:00-11:00|09:00-12:00|09:00-13:00|09:00-14:00|"
        "09:00-15:00|09:00-16:00|2027-01-01|2027-06-30|own iron\n"
        "piece:\npiece_cost:\npiece_costume:\nproduction:\n"
        "purchase:\n1|1|3000000|2027-02-10|2027-03-09|2027-03-08|the other mill\n"
        "purchase_cost:\n1|5550|EUR\n"
        "role:\nrole_cover:\nrunning:\n"
        "setting:\n1|marked change|3 %\n"
        "show_date:\nstep:\nstep_after:\n"
        "work:\n1|14|bodice with bones|closed at the back|0\n"
        "work_step:\n1|1|15|bones|bone the bodice|craft|90|60|150|channels;fit|2|3|10|1|waist girth|tips "
        "rounded\n");
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("records", every_field_goes_to_its_column, what_is_read_and_added_to_another_store_is_the_same,
             putting_a_record_writes_all_its_fields,
             a_text_that_is_not_utf_8_is_refused_because_no_sheet_could_give_it_back,
             putting_a_record_may_refer_it_to_another, a_removed_record_cannot_be_put,
             a_price_is_added_and_then_changed,
             a_removed_production_leaves_the_workroom_and_nothing_of_its_own)
