#include "bodkin/store/migrate.h"

#include <glob.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "workroom.h"

static const char add_a_column[] = "ALTER TABLE person ADD COLUMN pronoun TEXT; PRAGMA user_version = 2;";
static const char add_a_table[] =
    "CREATE TABLE hat (id INTEGER PRIMARY KEY) STRICT; PRAGMA user_version = 3;";

static int64_t version_of(const char *path)
{
    bk_db *db = NULL;
    int64_t version = 0;
    MUST(bk_db_open(&db, path, &trouble));
    MUST(bk_db_number(db, BK_SQL_GET_SCHEMA_VERSION, &version, &trouble));
    bk_db_close(db);
    return version;
}

static const char *store_path(void)
{
    return bk_test_path("workroom.db");
}

// Opens the file with the habits of a store, foreign keys among them.
static bk_db *open_file(void)
{
    bk_db *db = NULL;
    MUST(bk_db_open(&db, store_path(), &trouble));
    MUST(bk_db_script(db, bk_statements[BK_SQL_SET_HABITS].text, NULL, NULL, &trouble));
    return db;
}

static bk_status migrate(const char *const *migrations, int count)
{
    bk_db *db = open_file();
    bk_status status = bk_store_migrate(db, store_path(), migrations, count, &trouble);
    bk_db_close(db);
    return status;
}

static int64_t make_version_one(void)
{
    record_ids ids;
    bk_store *store = open_workroom();
    int64_t entry = import_one_of_each(store, &ids);
    bk_store_close(store);
    return entry;
}

START_TEST(an_older_store_is_brought_to_the_last_version)
{
    make_version_one();
    const char *const migrations[] = {bk_migrations[0], add_a_column, add_a_table};
    MUST(migrate(migrations, 3));
    ck_assert_int_eq(version_of(store_path()), 3);
    bk_db *db = NULL;
    MUST(bk_db_open(&db, store_path(), &trouble));
    MUST(bk_db_script(db, "SELECT pronoun FROM person; SELECT id FROM hat", NULL, NULL, &trouble));
    bk_db_close(db);
}
END_TEST

START_TEST(before_it_a_backup_is_put_beside_the_file)
{
    umask(0);
    make_version_one();
    struct stat status;
    const char *const migrations[] = {bk_migrations[0], add_a_column};
    MUST(migrate(migrations, 2));
    const char *backup = bk_test_path("workroom.db.before-2");
    ck_assert_int_eq(stat(backup, &status), 0);
    ck_assert_uint_eq(status.st_mode & 07777, 0600);
    ck_assert_int_eq(version_of(backup), 1);
}
END_TEST

START_TEST(a_backup_that_is_there_is_kept_and_another_made)
{
    make_version_one();
    bk_test_write_text(bk_test_path("workroom.db.before-2"), "kept");
    const char *const migrations[] = {bk_migrations[0], add_a_column};
    MUST(migrate(migrations, 2));
    ck_assert_str_eq(bk_test_read(bk_test_path("workroom.db.before-2"), NULL), "kept");
    ck_assert_int_eq(version_of(bk_test_path("workroom.db.before-2-2")), 1);
}
END_TEST

START_TEST(a_new_store_needs_no_backup)
{
    bk_store_close(open_workroom());
    ck_assert_int_ne(access(bk_test_path("workroom.db.before-1"), F_OK), 0);
}
END_TEST

START_TEST(nothing_is_done_to_a_store_that_is_up_to_date)
{
    make_version_one();
    MUST(migrate(bk_migrations, bk_migration_count));
    ck_assert_int_ne(access(bk_test_path("workroom.db.before-2"), F_OK), 0);
}
END_TEST

START_TEST(a_migration_ends_the_undo_of_older_entries)
{
    int64_t entry = make_version_one();
    const char *const migrations[] = {bk_migrations[0], add_a_column};
    MUST(migrate(migrations, 2));
    bk_db *db = NULL;
    MUST(bk_db_open(&db, store_path(), &trouble));
    MUST(bk_db_script(db, "PRAGMA user_version = 1", NULL, NULL, &trouble)); // so that this program opens it
    bk_db_close(db);
    bk_store *store = open_workroom();
    MUST(bk_store_change_begin(store, &trouble));
    REFUSED(bk_store_turn_back(store, entry, &trouble), BK_REFUSED, "can no longer be turned back");
    bk_store_close(store);
}
END_TEST

START_TEST(the_first_migration_ends_the_undo_of_nothing)
{
    int64_t entry = make_version_one();
    bk_store *store = open_workroom();
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_turn_back(store, entry, &trouble));
    bk_store_close(store);
}
END_TEST

typedef struct broken {
    const char *sql, *words;
} broken;

START_TEST(a_migration_that_fails_leaves_the_store_as_it_was)
{
    static const broken migrations[] = {
        {"ALTER TABLE person ADD COLUMN pronoun TEXT; NONSENSE; PRAGMA user_version = 2;", "NONSENSE"},
        {"ALTER TABLE person ADD COLUMN pronoun TEXT;", "could not be brought to version 2"},
        {"ALTER TABLE person ADD COLUMN pronoun TEXT; DELETE FROM performer; PRAGMA user_version = 2;",
         "would refer to what is not there"},
    };
    make_version_one();
    bk_arena *arena = bk_arena_new();
    bk_store *store = open_workroom();
    const char *before = dump(store, arena);
    bk_store_close(store);
    for (size_t i = 0; i < sizeof migrations / sizeof migrations[0]; i++) {
        const char *const list[] = {bk_migrations[0], migrations[i].sql};
        REFUSED(migrate(list, 2), BK_STORE, migrations[i].words);
        ck_assert_int_eq(version_of(store_path()), 1);
        store = open_workroom();
        ck_assert_str_eq(dump(store, arena), before);
        ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM daybook WHERE undo_ended"), 0);
        bk_store_close(store);
    }
    bk_arena_free(arena);
}
END_TEST

START_TEST(rows_may_be_moved_to_a_new_table_whatever_refers_to_them)
{
    static const char rebuild[] =
        "CREATE TABLE fresh (id INTEGER PRIMARY KEY, name TEXT NOT NULL) STRICT; INSERT INTO fresh SELECT "
        "id, name FROM "
        "performer; DROP TABLE performer; ALTER TABLE fresh RENAME TO performer; PRAGMA user_version = 2;";
    make_version_one();
    const char *const migrations[] = {bk_migrations[0], rebuild};
    MUST(migrate(migrations, 2));
    ck_assert_int_eq(version_of(store_path()), 2);
}
END_TEST

START_TEST(foreign_keys_are_on_again_afterwards)
{
    make_version_one();
    const char *const migrations[] = {bk_migrations[0], add_a_column};
    bk_db *db = open_file();
    MUST(bk_store_migrate(db, store_path(), migrations, 2, &trouble));
    ck_assert_int_ne(bk_db_script(db, "INSERT INTO role_cover VALUES (98, 99, 1)", NULL, NULL, &trouble),
                     BK_OK);
    bk_db_close(db);
}
END_TEST

START_TEST(two_programs_may_bring_the_same_store_up_to_date)
{
    enum { PROGRAMS = 4 };
    make_version_one();
    const char *const migrations[] = {bk_migrations[0], add_a_column, add_a_table};
    pid_t programs[PROGRAMS];
    for (int i = 0; i < PROGRAMS; i++) {
        programs[i] = fork();
        if (programs[i] == 0)
            _exit((int)migrate(migrations, 3));
    }
    for (int i = 0; i < PROGRAMS; i++) {
        int ended = -1;
        ck_assert_int_eq(waitpid(programs[i], &ended, 0), programs[i]);
        ck_assert_int_eq(ended, 0);
    }
    ck_assert_int_eq(version_of(store_path()), 3);
    glob_t backups;
    ck_assert_int_eq(glob(bk_test_path("*.before-*"), 0, NULL, &backups), 0);
    ck_assert_uint_eq(backups.gl_pathc, 1); // those who came too late removed theirs
    ck_assert_int_eq(version_of(backups.gl_pathv[0]), 1);
    globfree(&backups);
}
END_TEST

BK_TEST_MAIN("migrate", an_older_store_is_brought_to_the_last_version,
             before_it_a_backup_is_put_beside_the_file, a_backup_that_is_there_is_kept_and_another_made,
             a_new_store_needs_no_backup, nothing_is_done_to_a_store_that_is_up_to_date,
             a_migration_ends_the_undo_of_older_entries, the_first_migration_ends_the_undo_of_nothing,
             a_migration_that_fails_leaves_the_store_as_it_was,
             rows_may_be_moved_to_a_new_table_whatever_refers_to_them, foreign_keys_are_on_again_afterwards,
             two_programs_may_bring_the_same_store_up_to_date)
