#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "workroom.h"

static unsigned mode_of(const char *path)
{
    struct stat status;
    ck_assert_msg(stat(path, &status) == 0, "%s is not there", path);
    return status.st_mode & 07777;
}

static bk_status open_at(const char *path, bk_as as, bool create, bk_store **store)
{
    bk_store_options options = {.path = path, .as = as, .who = "Ada", .create = create};
    return bk_store_open(store, &options, &trouble);
}

START_TEST(a_new_store_and_its_folders_are_their_owners_alone)
{
    umask(0);
    bk_store *store = NULL;
    record_ids ids;
    const char *path = bk_test_path("share/bodkin/workroom.db");
    MUST(open_at(path, BK_AS_MAKER, true, &store));
    import_one_of_each(store, &ids);
    ck_assert_uint_eq(mode_of(path), 0600);
    ck_assert_uint_eq(mode_of(bk_test_path("share/bodkin/workroom.db-wal")), 0600);
    ck_assert_uint_eq(mode_of(bk_test_path("share/bodkin/workroom.db-shm")), 0600);
    ck_assert_uint_eq(mode_of(bk_test_path("share/bodkin")), 0700);
    ck_assert_uint_eq(mode_of(bk_test_path("share")), 0700);
    bk_store_close(store);
}
END_TEST

START_TEST(a_folder_that_was_there_keeps_its_mode)
{
    bk_store *store = NULL;
    ck_assert_int_eq(mkdir(bk_test_path("open"), 0755), 0);
    ck_assert_int_eq(chmod(bk_test_path("open"), 0755), 0);
    MUST(open_at(bk_test_path("open/workroom.db"), BK_AS_MAKER, true, &store));
    ck_assert_uint_eq(mode_of(bk_test_path("open")), 0755);
    bk_store_close(store);
}
END_TEST

START_TEST(a_store_keeps_the_habits_that_the_design_asks_for)
{
    bk_store *store = open_workroom();
    ck_assert_int_eq(ask_number(store, "PRAGMA application_id"), 0x426F646B);
    ck_assert_int_eq(ask_number(store, "PRAGMA user_version"), bk_migration_count);
    ck_assert_int_eq(ask_number(store, "PRAGMA foreign_keys"), 1);
    ck_assert_int_eq(ask_number(store, "PRAGMA synchronous"), 2);
    ck_assert_int_eq(ask_number(store, "PRAGMA busy_timeout"), 10000);
    ck_assert_int_eq(ask_number(store, "SELECT journal_mode = 'wal' FROM pragma_journal_mode"), 1);
    ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM sqlite_schema WHERE type = 'trigger'"), 0);
    ck_assert_int_eq(
        ask_number(store,
                   "SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND sql NOT LIKE '%STRICT%' "
                   "AND name NOT LIKE 'sqlite%'"),
        0);
    bk_store_close(store);
}
END_TEST

START_TEST(foreign_keys_are_deferred_and_act_on_nothing)
{
    bk_store *store = open_workroom();
    ck_assert_int_eq(
        ask_number(store, "SELECT count(*) FROM sqlite_schema AS t JOIN pragma_foreign_key_list(t.name) AS k "
                          "WHERE k.on_update <> 'NO ACTION' OR k.on_delete <> 'NO ACTION'"),
        0);
    int64_t keys =
        ask_number(store, "SELECT count(*) FROM sqlite_schema AS t JOIN pragma_foreign_key_list(t.name)");
    int64_t deferred =
        ask_number(store, "SELECT sum((length(sql) - length(replace(sql, 'INITIALLY DEFERRED', ''))) / "
                          "length('INITIALLY DEFERRED')) FROM sqlite_schema");
    ck_assert_int_gt(keys, 0);
    ck_assert_int_eq(keys, deferred);
    bk_store_close(store);
}
END_TEST

START_TEST(a_missing_store_is_told_and_not_made)
{
    bk_store *store = NULL;
    const char *path = bk_test_path("none.db");
    REFUSED(open_at(path, BK_AS_MAKER, false, &store), BK_STORE, "There is no workroom at ");
    ck_assert_int_ne(access(path, F_OK), 0);
}
END_TEST

START_TEST(a_folder_is_no_store)
{
    bk_store *store = NULL;
    REFUSED(open_at(bk_test_folder(), BK_AS_MAKER, true, &store), BK_STORE, "is no workroom of Bodkin's");
}
END_TEST

START_TEST(a_text_is_no_store_and_stays_as_it_is)
{
    bk_store *store = NULL;
    const char *path = bk_test_path("letter.txt");
    char text[4000];
    memset(text, 'a', sizeof text);
    bk_test_write(path, text, sizeof text);
    REFUSED(open_at(path, BK_AS_MAKER, true, &store), BK_STORE, "is no workroom of Bodkin's");
    size_t length = 0;
    ck_assert_mem_eq(bk_test_read(path, &length), text, sizeof text);
    ck_assert_uint_eq(length, sizeof text);
}
END_TEST

// An SQLite file that a program of another kind made.
static void make_foreign(const char *path, const char *sql)
{
    bk_db *db = NULL;
    bk_test_write_text(path, "");
    MUST(bk_db_open(&db, path, &trouble));
    MUST(bk_db_script(db, sql, NULL, NULL, &trouble));
    bk_db_close(db);
}

START_TEST(a_file_of_another_application_is_refused_and_stays_as_it_is)
{
    static const char *const kinds[] = {
        "CREATE TABLE recipe (name)",
        "PRAGMA application_id = 7; CREATE TABLE recipe (name)",
        "PRAGMA application_id = 7",
        "PRAGMA user_version = 1",
    };
    for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++) {
        char name[32];
        bk_store *store = NULL;
        size_t before = 0;
        size_t after = 0;
        snprintf(name, sizeof name, "recipes%zu.db", i);
        const char *path = bk_test_path(name);
        make_foreign(path, kinds[i]);
        const char *bytes = bk_test_read(path, &before);
        REFUSED(open_at(path, BK_AS_MAKER, true, &store), BK_STORE, "is no workroom of Bodkin's");
        ck_assert_mem_eq(bk_test_read(path, &after), bytes, before);
        ck_assert_uint_eq(after, before);
    }
}
END_TEST

START_TEST(a_newer_store_is_refused)
{
    bk_store *store = open_workroom();
    run_sql(store, "PRAGMA user_version = 99");
    bk_store_close(store);
    REFUSED(open_at(bk_test_path("workroom.db"), BK_AS_MAKER, true, &store), BK_STORE, "newer Bodkin");
}
END_TEST

START_TEST(an_empty_file_becomes_a_store_where_one_may_be_made)
{
    bk_store *store = NULL;
    const char *path = bk_test_path("empty.db");
    bk_test_write_text(path, "");
    ck_assert_int_eq(chmod(path, 0644), 0);
    REFUSED(open_at(path, BK_AS_MAKER, false, &store), BK_STORE, "is empty: its making was cut off");
    MUST(open_at(path, BK_AS_MAKER, true, &store));
    ck_assert_uint_eq(mode_of(path), 0600);
    bk_store_close(store);
    MUST(open_at(path, BK_AS_MAKER, false, &store));
    bk_store_close(store);
}
END_TEST

START_TEST(a_damaged_store_is_told)
{
    bk_store *store = open_workroom();
    record_ids ids;
    import_one_of_each(store, &ids);
    bk_store_close(store);
    size_t length = 0;
    const char *path = bk_test_path("workroom.db");
    char *bytes = bk_test_read(path, &length);
    memset(bytes + 100, 0x55, 3000); // the first page behind the header
    bk_test_write(path, bytes, length);
    REFUSED(open_at(path, BK_AS_MAKER, false, &store), BK_STORE, "is damaged");
}
END_TEST

START_TEST(names_that_mean_something_to_sqlite_are_files_here)
{
    static const char *const names[] = {":memory:", "file:workroom.db?mode=memory", "a b%20c.db"};
    ck_assert_int_eq(chdir(bk_test_folder()), 0);
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        bk_store *store = NULL;
        MUST(open_at(names[i], BK_AS_MAKER, true, &store));
        bk_store_close(store);
        ck_assert_uint_eq(mode_of(names[i]), 0600);
        ck_assert_uint_gt(strlen(bk_test_read(bk_test_path(names[i]), NULL)), 0);
    }
    ck_assert_int_eq(chdir("/"), 0);
}
END_TEST

START_TEST(a_guest_of_a_store_without_its_log_is_refused)
{
    bk_store *store = open_workroom();
    run_sql(store, "PRAGMA journal_mode = DELETE");
    bk_store_close(store);
    REFUSED(open_at(bk_test_path("workroom.db"), BK_AS_DIRECTOR, false, &store), BK_STORE,
            "cannot be shared safely");
    MUST(open_at(bk_test_path("workroom.db"), BK_AS_MAKER, false, &store)); // the maker puts it right
    bk_store_close(store);
    MUST(open_at(bk_test_path("workroom.db"), BK_AS_DIRECTOR, false, &store));
    bk_store_close(store);
}
END_TEST

START_TEST(the_version_tells_the_changes_of_others)
{
    bk_store *mine = open_workroom();
    bk_store *yours = open_workroom();
    record_ids ids;
    int64_t versions[3];
    MUST(bk_store_version(mine, &versions[0], &trouble));
    MUST(bk_store_version(mine, &versions[1], &trouble));
    import_one_of_each(yours, &ids);
    MUST(bk_store_version(mine, &versions[2], &trouble));
    ck_assert_int_eq(versions[0], versions[1]);
    ck_assert_int_ne(versions[1], versions[2]);
    bk_store_close(mine);
    bk_store_close(yours);
}
END_TEST

START_TEST(a_reading_sees_one_state_of_the_store)
{
    bk_store *mine = open_workroom();
    bk_store *yours = open_workroom();
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    MUST(bk_store_read_begin(mine, &trouble));
    MUST(bk_store_read(mine, BK_PERFORMERS, 0, arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 0);
    import_one_of_each(yours, &ids);
    MUST(bk_store_read(mine, BK_PRODUCTIONS, 0, arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 0);
    bk_store_read_end(mine);
    MUST(bk_store_read(mine, BK_PRODUCTIONS, 0, arena, &rows, &trouble));
    ck_assert_uint_eq(rows.count, 1);
    bk_arena_free(arena);
    bk_store_close(mine);
    bk_store_close(yours);
}
END_TEST

START_TEST(a_backup_is_the_same_store_and_its_owners_alone)
{
    umask(0);
    bk_store *store = open_workroom();
    bk_store *copy = NULL;
    bk_arena *arena = bk_arena_new();
    record_ids ids;
    import_one_of_each(store, &ids);
    const char *path = bk_test_path("copy.db");
    MUST(bk_store_backup(store, path, &trouble));
    ck_assert_uint_eq(mode_of(path), 0600);
    MUST(open_at(path, BK_AS_MAKER, false, &copy));
    ck_assert_str_eq(dump(copy, arena), dump(store, arena));
    bk_store_close(copy);
    bk_store_close(store);
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_backup_is_taken_while_another_reads_and_writes)
{
    bk_store *store = open_workroom();
    bk_store *reader = open_workroom();
    bk_store *writer = open_workroom();
    bk_store *copy = NULL;
    bk_arena *arena = bk_arena_new();
    bk_rows rows;
    record_ids ids;
    import_one_of_each(store, &ids);
    const char *before = dump(store, arena);
    MUST(bk_store_read_begin(reader, &trouble));
    MUST(bk_store_read(reader, BK_PRODUCTIONS, 0, arena, &rows, &trouble));
    MUST(bk_store_change_begin(writer, &trouble));
    add_one_of_each(writer);
    MUST(bk_store_backup(store, bk_test_path("copy.db"), &trouble));
    bk_store_change_drop(writer);
    bk_store_read_end(reader);
    MUST(open_at(bk_test_path("copy.db"), BK_AS_MAKER, false, &copy));
    ck_assert_str_eq(dump(copy, arena), before);
    bk_store_close(copy);
    bk_store_close(writer);
    bk_store_close(reader);
    bk_store_close(store);
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_backup_is_never_written_over_a_file)
{
    bk_store *store = open_workroom();
    const char *path = bk_test_path("letter.txt");
    bk_test_write_text(path, "Dear Ivo,");
    REFUSED(bk_store_backup(store, path, &trouble), BK_REFUSED, "There is a file ");
    ck_assert_str_eq(bk_test_read(path, NULL), "Dear Ivo,");
    REFUSED(bk_store_backup(store, bk_test_path("nowhere/copy.db"), &trouble), BK_REFUSED,
            "could not be made");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("store", a_new_store_and_its_folders_are_their_owners_alone,
             a_folder_that_was_there_keeps_its_mode, a_store_keeps_the_habits_that_the_design_asks_for,
             foreign_keys_are_deferred_and_act_on_nothing, a_missing_store_is_told_and_not_made,
             a_folder_is_no_store, a_text_is_no_store_and_stays_as_it_is,
             a_file_of_another_application_is_refused_and_stays_as_it_is, a_newer_store_is_refused,
             an_empty_file_becomes_a_store_where_one_may_be_made, a_damaged_store_is_told,
             names_that_mean_something_to_sqlite_are_files_here,
             a_guest_of_a_store_without_its_log_is_refused, the_version_tells_the_changes_of_others,
             a_reading_sees_one_state_of_the_store, a_backup_is_the_same_store_and_its_owners_alone,
             a_backup_is_taken_while_another_reads_and_writes, a_backup_is_never_written_over_a_file)
