#include "bodkin/store/migrate.h"

#include <glob.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include "workroom.h"

static const char add_a_column[] = "ALTER TABLE person ADD COLUMN pronoun TEXT;";
static const char add_a_table[] = "CREATE TABLE hat (id INTEGER PRIMARY KEY) STRICT;";

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

// The migrations of this program and further ones.
enum { FURTHER_MOST = 2, MIGRATIONS_MOST = 100, MIGRATION_ROOM = 512 };

typedef struct migration_list {
    const char *items[MIGRATIONS_MOST];
    char further[FURTHER_MOST][MIGRATION_ROOM];
    int count;
} migration_list;

static void list_migrations(migration_list *list)
{
    list->count = bk_migration_count;
    memcpy(list->items, bk_migrations, (size_t)bk_migration_count * sizeof *list->items);
}

// One more, which writes its own number.
static void list_further(migration_list *list, const char *sql)
{
    char *text = list->further[list->count - bk_migration_count];
    snprintf(text, MIGRATION_ROOM, "%s PRAGMA user_version = %d;", sql, list->count + 1);
    list->items[list->count++] = text;
}

static bk_status migrate(const migration_list *list)
{
    bk_db *db = open_file();
    bk_status status = bk_store_migrate(db, store_path(), list->items, list->count, &trouble);
    bk_db_close(db);
    return status;
}

static bk_status migrate_further(const char *sql)
{
    migration_list list;
    list_migrations(&list);
    list_further(&list, sql);
    return migrate(&list);
}

// Where the backup lies that is made before a store of this program's version goes further.
static const char *backup_path(const char *after)
{
    char name[64];
    snprintf(name, sizeof name, "workroom.db.before-%d%s", bk_migration_count + 1, after);
    return bk_test_path(name);
}

static size_t count_backups(void)
{
    glob_t backups;
    int status = glob(bk_test_path("*.before-*"), 0, NULL, &backups);
    size_t count = status == GLOB_NOMATCH ? 0 : backups.gl_pathc;
    globfree(&backups);
    return count;
}

static int64_t make_newest(void)
{
    record_ids ids;
    bk_store *store = open_workroom();
    int64_t entry = import_one_of_each(store, &ids);
    bk_store_close(store);
    return entry;
}

START_TEST(an_older_store_is_brought_to_the_last_version)
{
    make_newest();
    migration_list list;
    list_migrations(&list);
    list_further(&list, add_a_column);
    list_further(&list, add_a_table);
    MUST(migrate(&list));
    ck_assert_int_eq(version_of(store_path()), bk_migration_count + 2);
    bk_db *db = NULL;
    MUST(bk_db_open(&db, store_path(), &trouble));
    MUST(bk_db_script(db, "SELECT pronoun FROM person; SELECT id FROM hat", NULL, NULL, &trouble));
    bk_db_close(db);
}
END_TEST

START_TEST(before_it_a_backup_is_put_beside_the_file)
{
    umask(0);
    make_newest();
    struct stat status;
    MUST(migrate_further(add_a_column));
    const char *backup = backup_path("");
    ck_assert_int_eq(stat(backup, &status), 0);
    ck_assert_uint_eq(status.st_mode & 07777, 0600);
    ck_assert_int_eq(version_of(backup), bk_migration_count);
}
END_TEST

START_TEST(a_backup_that_is_there_is_kept_and_another_made)
{
    make_newest();
    bk_test_write_text(backup_path(""), "kept");
    MUST(migrate_further(add_a_column));
    ck_assert_str_eq(bk_test_read(backup_path(""), NULL), "kept");
    ck_assert_int_eq(version_of(backup_path("-2")), bk_migration_count);
}
END_TEST

START_TEST(a_new_store_needs_no_backup)
{
    bk_store_close(open_workroom());
    ck_assert_uint_eq(count_backups(), 0);
}
END_TEST

START_TEST(nothing_is_done_to_a_store_that_is_up_to_date)
{
    make_newest();
    migration_list list;
    list_migrations(&list);
    MUST(migrate(&list));
    ck_assert_uint_eq(count_backups(), 0);
}
END_TEST

START_TEST(a_migration_ends_the_undo_of_older_entries)
{
    int64_t entry = make_newest();
    MUST(migrate_further(add_a_column));
    bk_db *db = NULL;
    char lower[MIGRATION_ROOM]; // so that this program opens it
    snprintf(lower, sizeof lower, "PRAGMA user_version = %d", bk_migration_count);
    MUST(bk_db_open(&db, store_path(), &trouble));
    MUST(bk_db_script(db, lower, NULL, NULL, &trouble));
    bk_db_close(db);
    bk_store *store = open_workroom();
    MUST(bk_store_change_begin(store, &trouble));
    REFUSED(bk_store_turn_back(store, entry, &trouble), BK_REFUSED, "can no longer be turned back");
    bk_store_close(store);
}
END_TEST

START_TEST(the_first_migration_ends_the_undo_of_nothing)
{
    int64_t entry = make_newest();
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
        {"ALTER TABLE person ADD COLUMN pronoun TEXT; NONSENSE;", "NONSENSE"},
        {"ALTER TABLE person ADD COLUMN pronoun TEXT; -- and no number after it:",
         "could not be brought to version"},
        {"ALTER TABLE person ADD COLUMN pronoun TEXT; DELETE FROM performer;",
         "would refer to what is not there"},
    };
    make_newest();
    bk_arena *arena = bk_arena_new();
    bk_store *store = open_workroom();
    const char *before = dump(store, arena);
    bk_store_close(store);
    for (size_t i = 0; i < sizeof migrations / sizeof migrations[0]; i++) {
        REFUSED(migrate_further(migrations[i].sql), BK_STORE, migrations[i].words);
        ck_assert_int_eq(version_of(store_path()), bk_migration_count);
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
        "performer; DROP TABLE performer; ALTER TABLE fresh RENAME TO performer;";
    make_newest();
    MUST(migrate_further(rebuild));
    ck_assert_int_eq(version_of(store_path()), bk_migration_count + 1);
}
END_TEST

START_TEST(foreign_keys_are_on_again_afterwards)
{
    make_newest();
    migration_list list;
    list_migrations(&list);
    list_further(&list, add_a_column);
    bk_db *db = open_file();
    MUST(bk_store_migrate(db, store_path(), list.items, list.count, &trouble));
    ck_assert_int_ne(bk_db_script(db, "INSERT INTO role_cover VALUES (98, 99, 1)", NULL, NULL, &trouble),
                     BK_OK);
    bk_db_close(db);
}
END_TEST

START_TEST(two_programs_may_bring_the_same_store_up_to_date)
{
    enum { PROGRAMS = 4 };
    make_newest();
    migration_list list;
    list_migrations(&list);
    list_further(&list, add_a_column);
    list_further(&list, add_a_table);
    pid_t programs[PROGRAMS];
    for (int i = 0; i < PROGRAMS; i++) {
        programs[i] = fork();
        if (programs[i] == 0)
            _exit((int)migrate(&list));
    }
    for (int i = 0; i < PROGRAMS; i++) {
        int ended = -1;
        ck_assert_int_eq(waitpid(programs[i], &ended, 0), programs[i]);
        ck_assert_int_eq(ended, 0);
    }
    ck_assert_int_eq(version_of(store_path()), list.count);
    ck_assert_uint_eq(count_backups(), 1); // those who came too late removed theirs
    glob_t backups;
    ck_assert_int_eq(glob(bk_test_path("*.before-*"), 0, NULL, &backups), 0);
    ck_assert_int_eq(version_of(backups.gl_pathv[0]), bk_migration_count);
    globfree(&backups);
}
END_TEST

// ---------------------------------------------------------------------------------------- from the first version

// A store as the first version of the program left it.
static void make_version_one(void)
{
    bk_test_write_text(store_path(), "");
    bk_db *db = open_file();
    bk_store old = {.db = db};
    MUST(bk_store_migrate(db, store_path(), bk_migrations, 1, &trouble));
    add_one_of_each_of_version_one(&old);
    run_sql(&old,
            "INSERT INTO daybook (made_at, made_by, sentence) VALUES ('" MADE_AT "', 'Ada', 'Imported.')");
    bk_db_close(db);
}

static bk_store *open_fresh(void)
{
    bk_store *store = NULL;
    bk_store_options options = {.path = bk_test_path("fresh.db"), .who = "Ada", .create = true};
    MUST(bk_store_open(&store, &options, &trouble));
    return store;
}

START_TEST(a_store_of_the_first_version_becomes_like_a_new_one_and_keeps_its_rows)
{
    static const char schema[] = "SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY type, name";
    make_version_one();
    bk_arena *arena = bk_arena_new();
    bk_store *store = open_workroom();
    bk_store *fresh = open_fresh();
    ck_assert_int_eq(version_of(store_path()), bk_migration_count);
    ck_assert_str_eq(ask_lines(store, schema, arena), ask_lines(fresh, schema, arena));
    add_one_of_each_of_version_one(fresh);
    ck_assert_str_eq(dump(store, arena), dump(fresh, arena));
    bk_store_close(fresh);
    bk_store_close(store);
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_store_of_the_first_version_is_sound_and_goes_on_when_up_to_date)
{
    make_version_one();
    bk_arena *arena = bk_arena_new();
    bk_findings findings;
    record_ids ids;
    bk_store *store = open_workroom();
    MUST(bk_store_check(store, arena, &findings, &trouble));
    ck_assert_msg(findings.count == 0, "%s", findings.count > 0 ? findings.items[0] : "");
    const char *before = dump(store, arena);
    int64_t entry = import_one_of_each(store, &ids);
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_turn_back(store, entry, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Turned back.", NULL, &trouble));
    ck_assert_str_eq(dump(store, arena), before);
    bk_store_close(store);
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_store_of_the_first_version_is_backed_up_and_its_old_entries_stay_done)
{
    make_version_one();
    bk_store *store = open_workroom();
    ck_assert_int_eq(version_of(bk_test_path("workroom.db.before-2")), 1);
    ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM daybook WHERE undo_ended"), 1);
    bk_store_close(store);
}
END_TEST

// ---------------------------------------------------------------------------------------- from the third version

// A store as the third version of the program left it, with one of each of its records.
static void make_version_three(void)
{
    bk_test_write_text(store_path(), "");
    bk_db *db = open_file();
    bk_store old = {.db = db};
    MUST(bk_store_migrate(db, store_path(), bk_migrations, 3, &trouble));
    add_one_of_each_of_version_three(&old);
    bk_db_close(db);
}

START_TEST(a_store_of_the_third_version_gets_equipment_and_keeps_its_rows)
{
    static const char schema[] = "SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY type, name";
    make_version_three();
    ck_assert_int_eq(version_of(store_path()), 3);
    bk_arena *arena = bk_arena_new();
    bk_store *store = open_workroom();
    bk_store *fresh = open_fresh();
    ck_assert_str_eq(ask_lines(store, schema, arena), ask_lines(fresh, schema, arena));
    add_one_of_each_of_version_three(fresh);
    ck_assert_str_eq(dump(store, arena), dump(fresh, arena));
    ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM equipment"), 0);
    ck_assert_int_eq(version_of(bk_test_path("workroom.db.before-4")), 3);
    bk_store_close(fresh);
    bk_store_close(store);
    bk_arena_free(arena);
}
END_TEST

BK_TEST_MAIN("migrate", an_older_store_is_brought_to_the_last_version,
             before_it_a_backup_is_put_beside_the_file, a_backup_that_is_there_is_kept_and_another_made,
             a_new_store_needs_no_backup, nothing_is_done_to_a_store_that_is_up_to_date,
             a_migration_ends_the_undo_of_older_entries, the_first_migration_ends_the_undo_of_nothing,
             a_migration_that_fails_leaves_the_store_as_it_was,
             rows_may_be_moved_to_a_new_table_whatever_refers_to_them, foreign_keys_are_on_again_afterwards,
             two_programs_may_bring_the_same_store_up_to_date,
             a_store_of_the_first_version_becomes_like_a_new_one_and_keeps_its_rows,
             a_store_of_the_first_version_is_sound_and_goes_on_when_up_to_date,
             a_store_of_the_first_version_is_backed_up_and_its_old_entries_stay_done,
             a_store_of_the_third_version_gets_equipment_and_keeps_its_rows)
