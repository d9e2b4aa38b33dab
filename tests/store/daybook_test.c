#include <stdio.h>
#include <string.h>

#include "workroom.h"

START_TEST(an_entry_says_who_did_what_when_and_where)
{
    bk_store *store = open_workroom();
    record_ids ids;
    int64_t entry = import_one_of_each(store, &ids);
    ck_assert_int_eq(entry, 1);
    ck_assert_int_eq(
        ask_number(store, "SELECT count(*) FROM daybook WHERE id = 1 AND made_at = '" MADE_AT
                          "' AND made_by = 'Ada' AND terminal = 'tty1' AND sentence = 'Imported The Salt "
                          "Road.' AND undone_by IS NULL AND undoes IS NULL AND undo_ended = 0"),
        1);
    ck_assert_int_gt(ask_number(store, "SELECT sum(length(bytes)) FROM daybook_changes WHERE daybook_id = 1"),
                     0);
    bk_store_close(store);
}
END_TEST

START_TEST(a_dropped_change_leaves_nothing)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    const char *before = dump(store, arena);
    MUST(bk_store_change_begin(store, &trouble));
    add_one_of_each(store);
    bk_store_change_drop(store);
    bk_store_change_drop(store); // harmless
    ck_assert_str_eq(dump(store, arena), before);
    ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM daybook"), 0);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(a_change_open_when_the_store_is_closed_leaves_nothing)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    const char *before = dump(store, arena);
    MUST(bk_store_change_begin(store, &trouble));
    add_one_of_each(store);
    bk_store_close(store);
    store = open_workroom();
    ck_assert_str_eq(dump(store, arena), before);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

// Turns an entry back in a change of its own; the id of the new entry.
static int64_t turn_back(bk_store *store, int64_t entry)
{
    int64_t back = 0;
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_turn_back(store, entry, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Took it back.", &back, &trouble));
    return back;
}

START_TEST(an_import_turned_back_leaves_the_rows_of_before)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    record_ids ids;
    import_one_of_each(store, &ids); // so that there is something before
    const char *before = dump(store, arena);
    int64_t entry = import_one_of_each(store, &ids);
    ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM production"), 2);
    turn_back(store, entry);
    ck_assert_str_eq(dump(store, arena), before);
    ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM pragma_foreign_key_check"), 0);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

static void take_name(void *context, int columns, const char *const *values)
{
    (void)columns;
    char sql[128];
    snprintf(sql, sizeof sql, "SELECT count(*) FROM %s", values[0]);
    ck_assert_msg(ask_number(context, sql) > 0, "no row in %s", values[0]);
}

START_TEST(the_import_that_is_turned_back_has_rows_in_every_table)
{
    bk_store *store = open_workroom();
    record_ids ids;
    import_one_of_each(store, &ids);
    MUST(bk_db_script(store->db,
                      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%'",
                      take_name, store, &trouble));
    bk_store_close(store);
}
END_TEST

START_TEST(changed_and_removed_rows_come_back_too)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    record_ids ids;
    int64_t entry = 0;
    import_one_of_each(store, &ids);
    const char *before = dump(store, arena);
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_put(store, BK_PERFORMERS, &(bk_performer){.id = ids.performer, .name = "Zoë Marsh-Lund"},
                      &trouble));
    MUST(bk_store_remove_production(store, ids.production, &trouble));
    add_one_of_each(store);
    MUST(bk_store_change_commit(store, MADE_AT, "Replaced The Salt Road.", &entry, &trouble));
    turn_back(store, entry);
    ck_assert_str_eq(dump(store, arena), before);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(what_was_turned_back_can_be_brought_back)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    record_ids ids;
    int64_t entry = import_one_of_each(store, &ids);
    const char *after = dump(store, arena);
    int64_t back = turn_back(store, entry);
    ck_assert_str_ne(dump(store, arena), after);
    turn_back(store, back);
    ck_assert_str_eq(dump(store, arena), after);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(a_value_changed_since_is_a_conflict_and_nothing_changes)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    record_ids ids;
    int64_t entry = import_one_of_each(store, &ids);
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_put(store, BK_COSTUMES,
                      &(bk_costume){.id = ids.costume,
                                    .production_id = ids.production,
                                    .role_id = ids.role,
                                    .number = "1A",
                                    .title = "half mourning",
                                    .due = BK_NO_DAY},
                      &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Half mourning.", NULL, &trouble));
    const char *before = dump(store, arena);
    MUST(bk_store_change_begin(store, &trouble));
    REFUSED(bk_store_turn_back(store, entry, &trouble), BK_REFUSED, "has been changed since");
    ck_assert_str_eq(dump(store, arena), before);
    bk_store_change_drop(store);
    ck_assert_str_eq(dump(store, arena), before);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(a_row_that_others_refer_to_by_now_is_a_conflict)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    int64_t entry = 0;
    int64_t performer = 0;
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_PERFORMERS, &(bk_performer){.name = "Tam Okoro"}, 0, &performer, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Added Tam Okoro.", &entry, &trouble));
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_MEASURE_SHEETS, &(bk_sheet_day){.performer_id = performer, .taken_on = 20000},
                      0, NULL, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Measured.", NULL, &trouble));
    const char *before = dump(store, arena);
    MUST(bk_store_change_begin(store, &trouble));
    REFUSED(bk_store_turn_back(store, entry, &trouble), BK_REFUSED, "has been changed since");
    bk_store_change_drop(store);
    ck_assert_str_eq(dump(store, arena), before);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(a_later_change_of_other_values_is_no_conflict)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    int64_t entry = 0;
    import_one_of_each(store, &ids);
    MUST(bk_store_read(store, BK_PIECES, ids.production, arena, &rows, &trouble));
    bk_piece piece = *(bk_piece *)rows.items;
    MUST(bk_store_change_begin(store, &trouble));
    piece.place = "rail nine";
    MUST(bk_store_put(store, BK_PIECES, &piece, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Moved.", &entry, &trouble));
    MUST(bk_store_change_begin(store, &trouble));
    piece.note = "washed";
    MUST(bk_store_put(store, BK_PIECES, &piece, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Washed.", NULL, &trouble));
    turn_back(store, entry);
    MUST(bk_store_read(store, BK_PIECES, ids.production, arena, &rows, &trouble));
    ck_assert_str_eq(((bk_piece *)rows.items)->place, "rail two");
    ck_assert_str_eq(((bk_piece *)rows.items)->note, "washed");
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

enum { MANY_PERFORMERS = 20000 };

static int64_t import_many(bk_store *store)
{
    static const char note[] =
        "A long note, so that the changeset takes several parts: tall, sings the second act, needs "
        "room in the shoulders.";
    int64_t entry = 0;
    MUST(bk_store_change_begin(store, &trouble));
    for (int i = 0; i < MANY_PERFORMERS; i++) {
        char name[32];
        snprintf(name, sizeof name, "Performer %d", i);
        bk_performer performer = {.name = name, .measures_good_for = BK_NOT_KNOWN, .note = note};
        MUST(bk_store_add(store, BK_PERFORMERS, &performer, 0, NULL, &trouble));
    }
    MUST(bk_store_change_commit(store, MADE_AT, "A crowd.", &entry, &trouble));
    return entry;
}

START_TEST(a_large_changeset_is_kept_in_parts_and_turned_back_from_them)
{
    bk_store *store = open_workroom();
    int64_t entry = import_many(store);
    ck_assert_int_ge(ask_number(store, "SELECT count(*) FROM daybook_changes"), 3);
    ck_assert_int_eq(ask_number(store, "SELECT min(part) FROM daybook_changes"), 1);
    ck_assert_int_le(ask_number(store, "SELECT max(length(bytes)) FROM daybook_changes"), 1100 * 1024);
    ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM performer"), MANY_PERFORMERS);
    turn_back(store, entry);
    ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM performer"), 0);
    bk_store_close(store);
}
END_TEST

START_TEST(an_entry_that_is_not_there_cannot_be_turned_back)
{
    bk_store *store = open_workroom();
    MUST(bk_store_change_begin(store, &trouble));
    REFUSED(bk_store_turn_back(store, 7, &trouble), BK_REFUSED, "no such entry");
    bk_store_close(store);
}
END_TEST

START_TEST(a_change_that_refers_to_nothing_is_refused_as_a_whole)
{
    bk_store *store = open_workroom();
    bk_arena *arena = bk_arena_new();
    const char *before = dump(store, arena);
    MUST(bk_store_change_begin(store, &trouble));
    add_one_of_each(store);
    MUST(bk_store_add(store, BK_ROLES, &(bk_role){.production_id = 99, .name = "Nobody"}, 1, NULL, &trouble));
    REFUSED(bk_store_change_commit(store, MADE_AT, "Broken.", NULL, &trouble), BK_STORE, "FOREIGN KEY");
    ck_assert_str_eq(dump(store, arena), before);
    MUST(bk_store_change_begin(store, &trouble)); // the store can be used again
    bk_store_change_drop(store);
    bk_arena_free(arena);
    bk_store_close(store);
}
END_TEST

START_TEST(a_change_is_refused_once_a_newer_program_has_been_there)
{
    bk_store *store = open_workroom();
    run_sql(store, "PRAGMA user_version = 99");
    REFUSED(bk_store_change_begin(store, &trouble), BK_STORE, "newer");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("daybook", an_entry_says_who_did_what_when_and_where, a_dropped_change_leaves_nothing,
             a_change_open_when_the_store_is_closed_leaves_nothing,
             an_import_turned_back_leaves_the_rows_of_before,
             the_import_that_is_turned_back_has_rows_in_every_table, changed_and_removed_rows_come_back_too,
             what_was_turned_back_can_be_brought_back,
             a_value_changed_since_is_a_conflict_and_nothing_changes,
             a_row_that_others_refer_to_by_now_is_a_conflict, a_later_change_of_other_values_is_no_conflict,
             a_large_changeset_is_kept_in_parts_and_turned_back_from_them,
             an_entry_that_is_not_there_cannot_be_turned_back,
             a_change_that_refers_to_nothing_is_refused_as_a_whole,
             a_change_is_refused_once_a_newer_program_has_been_there)
