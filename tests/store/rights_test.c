#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/store/families.h"
#include "bodkin/store/one.h"
#include "bodkin/store/rail_rows.h"
#include "workroom.h"

static const bk_as guests[] = {BK_AS_DIRECTOR, BK_AS_VOLUNTEER};

static bool is_private(bk_family family)
{
    static const bk_family families[] = {BK_CONTACTS,    BK_PRICES,   BK_ORDER_COSTS,
                                         BK_PIECE_COSTS, BK_MEASURES, BK_MEASURES_OF_SHEET};
    for (size_t i = 0; i < sizeof families / sizeof families[0]; i++) {
        if (families[i] == family)
            return true;
    }
    return false;
}

// A workroom with one of each, opened again as the guest.
static bk_store *open_as_guest(bk_as guest)
{
    record_ids ids;
    bk_store *store = open_workroom();
    if (ask_number(store, "SELECT count(*) FROM production") == 0)
        import_one_of_each(store, &ids);
    bk_store_close(store);
    return open_workroom_as(guest);
}

START_TEST(guests_read_all_but_measures_contacts_and_prices)
{
    for (size_t i = 0; i < 2; i++) {
        bk_store *store = open_as_guest(guests[i]);
        bk_arena *arena = bk_arena_new();
        bk_rows rows;
        for (int family = 0; family < BK_FAMILIES; family++) {
            int64_t key = bk_families[family].key == BK_KEY_NONE ? 0 : 1;
            if (is_private((bk_family)family))
                REFUSED(bk_store_read(store, (bk_family)family, key, arena, &rows, &trouble), BK_REFUSED,
                        "maker alone");
            else
                MUST(bk_store_read(store, (bk_family)family, key, arena, &rows, &trouble));
        }
        bk_arena_free(arena);
        bk_store_close(store);
    }
}
END_TEST

START_TEST(guests_get_single_records_but_not_what_is_private)
{
    for (size_t i = 0; i < 2; i++) {
        bk_store *store = open_as_guest(guests[i]);
        bk_arena *arena = bk_arena_new();
        for (int family = 0; family < BK_FAMILIES; family++) {
            bool found = false;
            void *record = bk_arena_clear(arena, 1, bk_families[family].size);
            if (bk_families[family].get == BK_NO_STATEMENT)
                continue;
            if (is_private((bk_family)family))
                REFUSED(bk_store_get(store, (bk_family)family, 1, arena, record, &found, &trouble),
                        BK_REFUSED, "maker alone");
            else
                MUST(bk_store_get(store, (bk_family)family, 1, arena, record, &found, &trouble));
        }
        bk_arena_free(arena);
        bk_store_close(store);
    }
}
END_TEST

// Each in turn: one removed, put in another place, all its links and its measures removed.
static void try_to_change_one(bk_store *guest, bk_family family)
{
    const bk_family_table *table = &bk_families[family];
    if (table->get != BK_NO_STATEMENT && table->remove != BK_NO_STATEMENT)
        REFUSED(bk_store_remove(guest, family, 1, &trouble), BK_REFUSED, "maker alone");
    if (table->place != BK_NO_STATEMENT)
        REFUSED(bk_store_place(guest, family, 1, 1, &trouble), BK_REFUSED, "maker alone");
    if (table->remove_all == BK_NO_STATEMENT)
        return;
    REFUSED(bk_store_remove_link(guest, family, 1, 1, &trouble), BK_REFUSED, "maker alone");
    REFUSED(bk_store_remove_links(guest, family, 1, &trouble), BK_REFUSED, "maker alone");
}

START_TEST(guests_change_no_single_record)
{
    for (size_t i = 0; i < 2; i++) {
        bk_store *store = open_as_guest(guests[i]);
        for (int family = 0; family < BK_FAMILIES; family++)
            try_to_change_one(store, (bk_family)family);
        REFUSED(bk_store_remove_measure(store, 1, 1, &trouble), BK_REFUSED, "maker alone");
        bk_store_close(store);
    }
}
END_TEST

START_TEST(guests_see_the_rail)
{
    for (size_t i = 0; i < 2; i++) {
        bk_store *store = open_as_guest(guests[i]);
        bk_arena *arena = bk_arena_new();
        bk_rows rows;
        bk_rows orders;
        bk_day taken = BK_NO_DAY;
        int64_t production = 0;
        MUST(bk_store_read_begin(store, &trouble));
        MUST(bk_store_find_production(store, "The Salt Road", &production, &trouble));
        MUST(bk_store_other_claims(store, production, arena, &rows, &trouble));
        MUST(bk_store_other_pieces(store, production, arena, &rows, &trouble));
        MUST(bk_store_usual_dues(store, production, arena, &rows, &trouble));
        MUST(bk_store_shelf(store, production, arena, &rows, &orders, &trouble));
        MUST(bk_store_newest_sheets(store, production, arena, &rows, &trouble));
        MUST(bk_store_newest_taking(store, 1, "waist girth", &taken, &trouble));
        ck_assert_int_eq(taken, bk_day_of(2027, 1, 9));
        bk_store_read_end(store);
        bk_arena_free(arena);
        bk_store_close(store);
    }
}
END_TEST

START_TEST(guests_write_nothing)
{
    for (size_t i = 0; i < 2; i++) {
        bk_store *store = open_as_guest(guests[i]);
        bk_arena *arena = bk_arena_new();
        for (int family = 0; family < BK_FAMILIES; family++) {
            const bk_family_table *table = &bk_families[family];
            void *record = bk_arena_clear(arena, 1, table->size);
            if (table->add != BK_NO_STATEMENT)
                REFUSED(bk_store_add(store, (bk_family)family, record, 1, NULL, &trouble), BK_REFUSED,
                        "maker alone");
            if (table->put != BK_NO_STATEMENT)
                REFUSED(bk_store_put(store, (bk_family)family, record, &trouble), BK_REFUSED, "maker alone");
        }
        REFUSED(bk_store_change_begin(store, &trouble), BK_REFUSED, "Only the maker");
        REFUSED(bk_store_remove_production(store, 1, &trouble), BK_REFUSED, "maker alone");
        bk_arena_free(arena);
        bk_store_close(store);
    }
}
END_TEST

START_TEST(guests_change_neither_the_store_nor_its_habits)
{
    static const char *const attempts[] = {
        "DELETE FROM step",
        "UPDATE step SET done_on = '2027-03-01'",
        "UPDATE equipment SET count = 9",
        "INSERT INTO production (name, opens) VALUES ('x', '2027-03-01')",
        "REPLACE INTO piece_cost VALUES (1, 1, 'NOK')",
        "DROP TABLE step",
        "CREATE TABLE mine (x)",
        "CREATE TEMP TABLE mine (x)",
        "CREATE TRIGGER mine AFTER UPDATE ON step BEGIN SELECT 1; END",
        "ALTER TABLE step ADD COLUMN x",
        "ATTACH 'other.db' AS other",
        "VACUUM INTO 'copy.db'",
        "PRAGMA user_version = 7",
        "PRAGMA journal_mode = DELETE",
        "PRAGMA foreign_keys = OFF",
        "PRAGMA writable_schema = ON",
        "SELECT contact FROM performer_contact",
        "SELECT count(*) FROM performer_contact",
        "SELECT name FROM performer JOIN performer_contact ON performer_id = id",
        "SELECT value FROM measure",
        "SELECT * FROM measure",
        "SELECT name_id FROM measure WHERE value > 700000",
        "SELECT 1 FROM measure ORDER BY value",
        "SELECT price FROM material_price",
        "SELECT cost FROM purchase_cost",
        "SELECT cost FROM piece_cost",
        "SELECT sentence FROM daybook",
        "SELECT bytes FROM daybook_changes",
        "SELECT sql FROM sqlite_schema",
    };
    for (size_t i = 0; i < 2; i++) {
        bk_store *store = open_as_guest(guests[i]);
        for (size_t j = 0; j < sizeof attempts / sizeof attempts[0]; j++) {
            bk_status status = bk_db_script(store->db, attempts[j], NULL, NULL, &trouble);
            ck_assert_msg(status == BK_REFUSED, "%s: %d", attempts[j], status);
        }
        bk_store_close(store);
    }
}
END_TEST

START_TEST(guests_read_the_days_of_measures_and_the_daybook_without_its_text)
{
    for (size_t i = 0; i < 2; i++) {
        bk_store *store = open_as_guest(guests[i]);
        run_sql(store,
                "SELECT sheet_id, name_id, taken_by FROM measure; SELECT made_at, made_by FROM daybook; "
                "SELECT count(*) FROM measure");
        bk_store_close(store);
    }
}
END_TEST

START_TEST(guests_notice_what_others_change)
{
    record_ids ids;
    int64_t before = 0;
    int64_t after = 0;
    bk_store *guest = open_as_guest(BK_AS_DIRECTOR);
    MUST(bk_store_version(guest, &before, &trouble));
    bk_store *maker = open_workroom();
    import_one_of_each(maker, &ids);
    MUST(bk_store_version(guest, &after, &trouble));
    ck_assert_int_ne(before, after);
    bk_store_close(maker);
    bk_store_close(guest);
}
END_TEST

START_TEST(guests_take_no_backup)
{
    bk_store *store = open_as_guest(BK_AS_VOLUNTEER);
    REFUSED(bk_store_backup(store, bk_test_path("copy.db"), &trouble), BK_REFUSED, "maker");
    bk_store_close(store);
}
END_TEST

static void take_listed(void *context, int columns, const char *const *values)
{
    (void)columns;
    int *readable = context;
    ck_assert(bk_rights_allow(BK_AS_MAKER, BK_DOING_READ, values[0], "x"));
    *readable += bk_rights_allow(BK_AS_DIRECTOR, BK_DOING_READ, values[0], "x");
}

START_TEST(every_table_has_its_right)
{
    enum { PRIVATE_TABLES = 5 }; // contacts, three of money, changesets
    bk_store *store = open_workroom();
    int readable = 0;
    MUST(bk_db_script(store->db,
                      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'",
                      take_listed, &readable, &trouble));
    int64_t tables = ask_number(
        store, "SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'");
    ck_assert_int_eq(readable, tables - PRIVATE_TABLES);
    ck_assert(!bk_rights_allow(BK_AS_DIRECTOR, BK_DOING_READ, "a table nobody thought of", "x"));
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("rights", guests_read_all_but_measures_contacts_and_prices,
             guests_get_single_records_but_not_what_is_private, guests_change_no_single_record,
             guests_see_the_rail, guests_write_nothing, guests_change_neither_the_store_nor_its_habits,
             guests_read_the_days_of_measures_and_the_daybook_without_its_text,
             guests_notice_what_others_change, guests_take_no_backup, every_table_has_its_right)
