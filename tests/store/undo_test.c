#include <stdio.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/daybook.h"
#include "bodkin/trade/words.h"
#include "workroom.h"

// Undo and redo, by several people at several terminals.

static bk_store *open_for(const char *who, const char *terminal)
{
    bk_store *store = NULL;
    bk_store_options options = {.path = bk_test_path("workroom.db"),
                                .as = BK_AS_MAKER,
                                .who = who,
                                .terminal = terminal,
                                .create = true};
    MUST(bk_store_open(&store, &options, &trouble));
    return store;
}

static bk_arena *texts(void)
{
    static bk_arena *arena;
    if (arena == NULL)
        arena = bk_arena_new();
    return arena;
}

static int64_t add_performer(bk_store *store, const char *name)
{
    int64_t id = 0;
    bk_performer performer = {.name = name, .measures_good_for = BK_NOT_KNOWN};
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_PERFORMERS, &performer, 0, &id, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, bk_arena_print(texts(), "Added %s", name), NULL, &trouble));
    return id;
}

static void rename_performer(bk_store *store, int64_t id, const char *name)
{
    bk_performer performer = {.id = id, .name = name, .measures_good_for = BK_NOT_KNOWN};
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_put(store, BK_PERFORMERS, &performer, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, bk_arena_print(texts(), "Renamed %s", name), NULL, &trouble));
}

static const char *names(bk_store *store)
{
    bk_rows rows;
    const char *all = "";
    MUST(bk_store_read(store, BK_PERFORMERS, 0, texts(), &rows, &trouble));
    for (size_t i = 0; i < rows.count; i++)
        all = bk_arena_print(texts(), "%s%s%s", all, i == 0 ? "" : " ",
                             ((const bk_performer *)rows.items)[i].name);
    return all;
}

static const char *undo(bk_store *store, int64_t entry)
{
    const char *sentence = NULL;
    MUST(bk_daybook_undo(store, entry, MADE_AT, texts(), &sentence, &trouble));
    return sentence;
}

static const char *redo(bk_store *store)
{
    const char *sentence = NULL;
    MUST(bk_daybook_redo(store, MADE_AT, texts(), &sentence, &trouble));
    return sentence;
}

/// Undo, or where `entry` is negative redo, is refused with these words, and neither rows nor the daybook change.
static void expect_refused(bk_store *store, int64_t entry, const char *words)
{
    const char *sentence = NULL;
    const char *before = dump(store, texts());
    int64_t entries = ask_number(store, "SELECT count(*) FROM daybook");
    if (entry >= 0)
        REFUSED(bk_daybook_undo(store, entry, MADE_AT, texts(), &sentence, &trouble), BK_REFUSED, words);
    else
        REFUSED(bk_daybook_redo(store, MADE_AT, texts(), &sentence, &trouble), BK_REFUSED, words);
    ck_assert_str_eq(dump(store, texts()), before);
    ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM daybook"), entries);
    ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM pragma_foreign_key_check"), 0);
}

enum { REDO = -1, NEWEST = 0 };

static const char nothing_to_undo[] = "There is nothing of yours to undo at this terminal.";
static const char nothing_to_redo[] = "There is nothing to redo: nothing was undone since your last change.";
static const char changed_since[] = "has been changed since";

// -------------------------------------------------------------------------------------------------- reading

START_TEST(the_daybook_is_read_newest_first_a_page_at_a_time)
{
    bk_store *store = open_for("Ada", "tty1");
    bk_rows rows;
    for (int i = 1; i <= 5; i++)
        add_performer(store, bk_arena_print(texts(), "P%d", i));
    MUST(bk_daybook_read(store, 0, 3, texts(), &rows, &trouble));
    const bk_entry *entries = rows.items;
    ck_assert_uint_eq(rows.count, 3);
    ck_assert_int_eq(entries[0].id, 5);
    ck_assert_int_eq(entries[2].id, 3);
    ck_assert_str_eq(entries[0].sentence, "Added P5");
    ck_assert_str_eq(entries[0].made_by, "Ada");
    ck_assert_str_eq(entries[0].made_at, MADE_AT);
    ck_assert(!entries[0].undone && !entries[0].ended && entries[0].undoes == 0);
    MUST(bk_daybook_read(store, entries[2].id, 3, texts(), &rows, &trouble));
    ck_assert_uint_eq(rows.count, 2);
    ck_assert_str_eq(((const bk_entry *)rows.items)[1].sentence, "Added P1");
    MUST(bk_daybook_read(store, 1, 3, texts(), &rows, &trouble));
    ck_assert_uint_eq(rows.count, 0);
    bk_store_close(store);
}
END_TEST

static const char *moment_after(bk_store *store, const char *made_at)
{
    bk_rows rows;
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_change_commit(store, made_at, "Nothing", NULL, &trouble));
    MUST(bk_daybook_read(store, 0, 1, texts(), &rows, &trouble));
    return ((const bk_entry *)rows.items)[0].made_at;
}

START_TEST(a_moment_taken_before_the_store_was_waited_for_does_not_go_back_in_time)
{
    bk_store *store = open_for("Ada", "tty1");
    static const char *const later = "2027-03-02T09:30:09+01:00";
    ck_assert_str_eq(moment_after(store, later), later);
    ck_assert_str_eq(moment_after(store, "2027-03-02T09:30:00+01:00"), later);
    ck_assert_str_eq(moment_after(store, "2027-03-02T08:30:01+00:00"), later);
    ck_assert_str_eq(moment_after(store, "2027-03-02T09:30:10+01:00"), "2027-03-02T09:30:10+01:00");
    // a clock that was put right is believed
    ck_assert_str_eq(moment_after(store, "2027-03-02T08:00:00+01:00"), "2027-03-02T08:00:00+01:00");
    bk_store_close(store);
}
END_TEST

START_TEST(an_undone_entry_and_its_undoing_name_each_other)
{
    bk_store *store = open_for("Ada", "tty1");
    bk_rows rows;
    add_performer(store, "Tam");
    ck_assert_str_eq(undo(store, NEWEST), "Undone: Added Tam");
    MUST(bk_daybook_read(store, 0, 9, texts(), &rows, &trouble));
    const bk_entry *entries = rows.items;
    ck_assert_uint_eq(rows.count, 2);
    ck_assert_str_eq(entries[0].sentence, "Undone: Added Tam");
    ck_assert_int_eq(entries[0].undoes, 1);
    ck_assert(!entries[0].undone);
    ck_assert(entries[1].undone);
    ck_assert_str_eq(redo(store), "Redone: Added Tam");
    MUST(bk_daybook_read(store, 0, 9, texts(), &rows, &trouble));
    entries = rows.items;
    ck_assert_int_eq(entries[0].undoes, 2);
    ck_assert(entries[1].undone);
    ck_assert(!entries[2].undone);
    bk_store_close(store);
}
END_TEST

// -------------------------------------------------------------------------------------------------- whose

START_TEST(undo_takes_the_newest_of_the_person_at_this_terminal)
{
    bk_store *mine = open_for("Ada", "tty1");
    bk_store *yours = open_for("Bo", "tty2");
    bk_store *elsewhere = open_for("Ada", "tty2");
    bk_store *nowhere = open_for("Ada", NULL);
    int64_t entry = -1;
    add_performer(mine, "A1");
    add_performer(nowhere, "A0");
    add_performer(yours, "B2");
    add_performer(elsewhere, "A2");
    MUST(bk_daybook_to_undo(mine, &entry, &trouble));
    ck_assert_int_eq(entry, 1);
    undo(mine, NEWEST);
    ck_assert_str_eq(names(mine), "A0 B2 A2");
    expect_refused(mine, NEWEST, nothing_to_undo);
    undo(nowhere, NEWEST);
    ck_assert_str_eq(names(mine), "B2 A2");
    expect_refused(nowhere, NEWEST, nothing_to_undo);
    undo(elsewhere, NEWEST);
    undo(yours, NEWEST);
    ck_assert_str_eq(names(mine), "");
    MUST(bk_daybook_to_undo(mine, &entry, &trouble));
    ck_assert_int_eq(entry, 0);
    bk_store_close(nowhere);
    bk_store_close(elsewhere);
    bk_store_close(yours);
    bk_store_close(mine);
}
END_TEST

START_TEST(redo_too_is_of_the_person_at_this_terminal)
{
    bk_store *mine = open_for("Ada", "tty1");
    bk_store *yours = open_for("Bo", "tty1");
    add_performer(mine, "A1");
    undo(mine, NEWEST);
    expect_refused(yours, REDO, nothing_to_redo);
    add_performer(yours, "B1"); // ends nobody's redo but Bo's
    redo(mine);
    ck_assert_str_eq(names(mine), "A1 B1");
    bk_store_close(yours);
    bk_store_close(mine);
}
END_TEST

START_TEST(the_maker_may_undo_what_another_did_by_choosing_it)
{
    bk_store *mine = open_for("Ada", "tty1");
    bk_store *yours = open_for("Bo", "tty2");
    add_performer(yours, "B1");
    undo(mine, 1);
    ck_assert_str_eq(names(mine), "");
    expect_refused(yours, NEWEST, nothing_to_undo);
    expect_refused(yours, REDO, nothing_to_redo);
    redo(mine);
    ck_assert_str_eq(names(mine), "B1");
    undo(yours, NEWEST);
    ck_assert_str_eq(names(mine), "");
    bk_store_close(yours);
    bk_store_close(mine);
}
END_TEST

START_TEST(a_director_undoes_and_redoes_nothing)
{
    bk_store *store = open_for("Ada", "tty1");
    add_performer(store, "A1");
    bk_store_close(store);
    const char *sentence = NULL;
    store = open_workroom_as(BK_AS_DIRECTOR);
    REFUSED(bk_daybook_undo(store, 0, MADE_AT, texts(), &sentence, &trouble), BK_REFUSED, "Only the maker");
    REFUSED(bk_daybook_redo(store, MADE_AT, texts(), &sentence, &trouble), BK_REFUSED, "Only the maker");
    bk_rows rows;
    REFUSED(bk_daybook_read(store, 0, 9, texts(), &rows, &trouble), BK_REFUSED, "for the maker alone");
    bk_store_close(store);
}
END_TEST

// ------------------------------------------------------------------------------------------------- choosing

START_TEST(a_chosen_older_one_is_undone_where_nothing_newer_touched_its_values)
{
    bk_store *store = open_for("Ada", "tty1");
    add_performer(store, "A1");
    add_performer(store, "A2");
    add_performer(store, "A3");
    undo(store, 2);
    ck_assert_str_eq(names(store), "A1 A3");
    expect_refused(store, 2, "That is undone already.");
    undo(store, NEWEST);
    undo(store, NEWEST);
    ck_assert_str_eq(names(store), "");
    expect_refused(store, NEWEST, nothing_to_undo);
    redo(store);
    redo(store);
    redo(store);
    ck_assert_str_eq(names(store), "A1 A2 A3");
    expect_refused(store, REDO, nothing_to_redo);
    bk_store_close(store);
}
END_TEST

START_TEST(an_entry_that_is_not_there_or_undoes_another_is_refused)
{
    bk_store *store = open_for("Ada", "tty1");
    add_performer(store, "A1");
    undo(store, NEWEST);
    expect_refused(store, 99, "There is no such entry in the daybook");
    expect_refused(store, 2, "choose the change itself");
    redo(store);
    expect_refused(store, 3, "choose the change itself");
    bk_store_close(store);
}
END_TEST

START_TEST(a_newer_change_of_the_same_value_is_a_conflict_until_it_is_undone)
{
    bk_store *store = open_for("Ada", "tty1");
    bk_store *other = open_for("Bo", "tty2");
    int64_t id = add_performer(store, "Tam");
    rename_performer(store, id, "Tom");
    rename_performer(other, id, "Tim");
    expect_refused(store, NEWEST, changed_since);
    expect_refused(store, 1, changed_since);
    undo(other, NEWEST);
    undo(store, NEWEST);
    ck_assert_str_eq(names(store), "Tam");
    bk_store_close(other);
    bk_store_close(store);
}
END_TEST

START_TEST(a_row_that_newer_ones_refer_to_is_a_conflict)
{
    bk_store *store = open_for("Ada", "tty1");
    int64_t id = add_performer(store, "Tam");
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_add(store, BK_MEASURE_SHEETS, &(bk_sheet_day){.performer_id = id, .taken_on = 20000}, 0,
                      NULL, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Measured Tam", NULL, &trouble));
    expect_refused(store, 1, changed_since);
    undo(store, NEWEST);
    undo(store, NEWEST);
    ck_assert_str_eq(names(store), "");
    bk_store_close(store);
}
END_TEST

START_TEST(what_was_removed_does_not_come_back_where_what_it_refers_to_is_gone)
{
    bk_store *store = open_for("Ada", "tty1");
    record_ids ids;
    import_one_of_each(store, &ids);
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_remove_production(store, ids.production, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Removed it", NULL, &trouble));
    run_sql(store, "DELETE FROM movement; DELETE FROM purchase_cost; DELETE FROM purchase; "
                   "DELETE FROM material_price; DELETE FROM material");
    expect_refused(store, NEWEST, changed_since);
    bk_store_close(store);
}
END_TEST

START_TEST(what_another_changed_between_undo_and_redo_is_a_conflict_of_the_redo)
{
    bk_store *store = open_for("Ada", "tty1");
    bk_store *other = open_for("Bo", "tty2");
    int64_t id = add_performer(store, "Tam");
    rename_performer(store, id, "Tom");
    undo(store, NEWEST);
    rename_performer(other, id, "Tim");
    expect_refused(store, REDO, changed_since);
    undo(other, NEWEST);
    redo(store);
    ck_assert_str_eq(names(store), "Tom");
    bk_store_close(other);
    bk_store_close(store);
}
END_TEST

// --------------------------------------------------------------------------------------------- back and forth

START_TEST(a_new_change_ends_redo)
{
    bk_store *store = open_for("Ada", "tty1");
    add_performer(store, "A1");
    undo(store, NEWEST);
    add_performer(store, "A2");
    expect_refused(store, REDO, nothing_to_redo);
    undo(store, NEWEST);
    redo(store);
    expect_refused(store, REDO, nothing_to_redo);
    ck_assert_str_eq(names(store), "A2");
    bk_store_close(store);
}
END_TEST

START_TEST(a_new_change_ends_redo_even_when_another_has_undone_it)
{
    bk_store *store = open_for("Ada", "tty1");
    bk_store *other = open_for("Bo", "tty2");
    add_performer(store, "A1");
    undo(store, NEWEST);
    add_performer(store, "A2");
    undo(other, 3);
    expect_refused(store, REDO, nothing_to_redo);
    bk_store_close(other);
    bk_store_close(store);
}
END_TEST

START_TEST(undo_redo_and_undo_again_go_on_for_ever)
{
    bk_store *store = open_for("Ada", "tty1");
    add_performer(store, "A1");
    add_performer(store, "A2");
    for (int i = 0; i < 5; i++) {
        ck_assert_str_eq(undo(store, NEWEST), "Undone: Added A2");
        ck_assert_str_eq(undo(store, NEWEST), "Undone: Added A1");
        ck_assert_str_eq(names(store), "");
        ck_assert_str_eq(redo(store), "Redone: Added A1");
        ck_assert_str_eq(undo(store, NEWEST), "Undone: Added A1");
        ck_assert_str_eq(redo(store), "Redone: Added A1");
        ck_assert_str_eq(redo(store), "Redone: Added A2");
        ck_assert_str_eq(names(store), "A1 A2");
        expect_refused(store, REDO, nothing_to_redo);
    }
    bk_store_close(store);
}
END_TEST

START_TEST(a_change_that_changed_nothing_is_undone_all_the_same)
{
    bk_store *store = open_for("Ada", "tty1");
    int64_t id = add_performer(store, "A1");
    rename_performer(store, id, "A1");
    undo(store, NEWEST);
    ck_assert_str_eq(names(store), "A1");
    redo(store);
    undo(store, NEWEST);
    undo(store, NEWEST);
    ck_assert_str_eq(names(store), "");
    bk_store_close(store);
}
END_TEST

START_TEST(an_empty_daybook_has_nothing_to_undo_or_redo)
{
    bk_store *store = open_for("Ada", "tty1");
    expect_refused(store, NEWEST, nothing_to_undo);
    expect_refused(store, REDO, nothing_to_redo);
    bk_store_close(store);
}
END_TEST

START_TEST(an_entry_from_before_a_migration_can_no_longer_be_undone_or_redone)
{
    bk_store *store = open_for("Ada", "tty1");
    bk_rows rows;
    add_performer(store, "A1");
    add_performer(store, "A2");
    undo(store, NEWEST);
    MUST(bk_db_run(store->db, BK_SQL_END_UNDO, &trouble));
    expect_refused(store, NEWEST, "newer version");
    expect_refused(store, REDO, "newer version");
    MUST(bk_daybook_read(store, 0, 1, texts(), &rows, &trouble));
    ck_assert(((const bk_entry *)rows.items)[0].ended);
    add_performer(store, "A3");
    undo(store, NEWEST);
    ck_assert_str_eq(names(store), "A1");
    bk_store_close(store);
}
END_TEST

// ---------------------------------------------------------------------------------------------------- imports

START_TEST(an_import_is_undone_and_redone)
{
    bk_store *store = open_for("Ada", "tty1");
    record_ids ids;
    const char *before = dump(store, texts());
    import_one_of_each(store, &ids);
    const char *after = dump(store, texts());
    undo(store, NEWEST);
    ck_assert_str_eq(dump(store, texts()), before);
    redo(store);
    ck_assert_str_eq(dump(store, texts()), after);
    bk_store_close(store);
}
END_TEST

START_TEST(an_import_in_place_of_another_is_undone_and_redone)
{
    bk_store *store = open_for("Ada", "tty1");
    record_ids ids;
    import_one_of_each(store, &ids);
    const char *before = dump(store, texts());
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_remove_production(store, ids.production, &trouble));
    add_one_of_each(store);
    MUST(bk_store_change_commit(store, MADE_AT, "Imported in place of the former", NULL, &trouble));
    const char *after = dump(store, texts());
    for (int i = 0; i < 3; i++) {
        undo(store, NEWEST);
        ck_assert_str_eq(dump(store, texts()), before);
        redo(store);
        ck_assert_str_eq(dump(store, texts()), after);
    }
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("undo", the_daybook_is_read_newest_first_a_page_at_a_time,
             a_moment_taken_before_the_store_was_waited_for_does_not_go_back_in_time,
             an_undone_entry_and_its_undoing_name_each_other,
             undo_takes_the_newest_of_the_person_at_this_terminal, redo_too_is_of_the_person_at_this_terminal,
             the_maker_may_undo_what_another_did_by_choosing_it, a_director_undoes_and_redoes_nothing,
             a_chosen_older_one_is_undone_where_nothing_newer_touched_its_values,
             an_entry_that_is_not_there_or_undoes_another_is_refused,
             a_newer_change_of_the_same_value_is_a_conflict_until_it_is_undone,
             a_row_that_newer_ones_refer_to_is_a_conflict,
             what_was_removed_does_not_come_back_where_what_it_refers_to_is_gone,
             what_another_changed_between_undo_and_redo_is_a_conflict_of_the_redo, a_new_change_ends_redo,
             a_new_change_ends_redo_even_when_another_has_undone_it, undo_redo_and_undo_again_go_on_for_ever,
             a_change_that_changed_nothing_is_undone_all_the_same,
             an_empty_daybook_has_nothing_to_undo_or_redo,
             an_entry_from_before_a_migration_can_no_longer_be_undone_or_redone,
             an_import_is_undone_and_redone, an_import_in_place_of_another_is_undone_and_redone)
