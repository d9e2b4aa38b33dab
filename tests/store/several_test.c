#include <stdio.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "workroom.h"

// Several programs at one store. They wait at a gate, so that all start at the same moment.

enum { PROGRAMS = 4, CHANGES = 25 };

typedef bk_status job(int number);

static void run_together(job *work)
{
    bk_test_folder(); // made before they part, so that all have the same one
    int gate[2];
    char byte = 0;
    pid_t programs[PROGRAMS];
    ck_assert_int_eq(pipe(gate), 0);
    for (int i = 0; i < PROGRAMS; i++) {
        programs[i] = fork();
        if (programs[i] == 0) {
            close(gate[1]);
            ssize_t open = read(gate[0], &byte, 1); // ends when the gate is closed
            bk_status status = work(i);
            if (status != BK_OK)
                fprintf(stderr, "%s\n", trouble.text);
            _exit(open == 0 ? (int)status : -1);
        }
    }
    close(gate[0]);
    close(gate[1]);
    for (int i = 0; i < PROGRAMS; i++) {
        int ended = -1;
        ck_assert_int_eq(waitpid(programs[i], &ended, 0), programs[i]);
        ck_assert_int_eq(ended, 0);
    }
}

static bk_status open_here(bk_store **store)
{
    bk_store_options options = {.path = bk_test_path("workroom.db"), .who = "Ada", .create = true};
    return bk_store_open(store, &options, &trouble);
}

static bk_status open_and_leave(int number)
{
    (void)number;
    bk_store *store = NULL;
    bk_status status = open_here(&store);
    if (status == BK_OK)
        bk_store_close(store);
    return status;
}

START_TEST(programs_that_make_the_same_store_all_succeed)
{
    for (int i = 0; i < 10; i++) {
        run_together(open_and_leave);
        bk_store *store = open_workroom();
        ck_assert_int_eq(ask_number(store, "PRAGMA user_version"), bk_migration_count);
        ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM performer"), 0);
        bk_store_close(store);
        ck_assert_int_eq(unlink(bk_test_path("workroom.db")), 0);
    }
}
END_TEST

static bk_status add_one(bk_store *store, const char *name)
{
    bk_performer performer = {.name = name, .measures_good_for = BK_NOT_KNOWN};
    bk_status status = bk_store_change_begin(store, &trouble);
    if (status == BK_OK)
        status = bk_store_add(store, BK_PERFORMERS, &performer, 0, NULL, &trouble);
    return status == BK_OK ? bk_store_change_commit(store, MADE_AT, "Added one.", NULL, &trouble) : status;
}

static bk_status add_many(int number)
{
    bk_store *store = NULL;
    bk_status status = open_here(&store);
    for (int i = 0; i < CHANGES && status == BK_OK; i++) {
        char name[32];
        snprintf(name, sizeof name, "Performer %d of %d", i, number);
        status = add_one(store, name);
    }
    bk_store_close(store);
    return status;
}

START_TEST(writers_at_the_same_time_lose_nothing_and_see_no_error)
{
    run_together(add_many);
    bk_store *store = open_workroom();
    ck_assert_int_eq(ask_number(store, "SELECT count(DISTINCT name) FROM performer"), PROGRAMS * CHANGES);
    ck_assert_int_eq(ask_number(store, "SELECT count(*) FROM daybook"), PROGRAMS * CHANGES);
    ck_assert_int_eq(ask_number(store, "SELECT count(DISTINCT daybook_id) FROM daybook_changes"),
                     PROGRAMS * CHANGES);
    bk_store_close(store);
}
END_TEST

START_TEST(a_change_has_the_store_to_itself_from_its_first_moment)
{
    bk_store *mine = open_workroom();
    bk_store *yours = open_workroom();
    run_sql(yours, "PRAGMA busy_timeout = 0");
    MUST(bk_store_change_begin(mine, &trouble)); // nothing is written yet
    REFUSED(bk_store_change_begin(yours, &trouble), BK_STORE, "is busy");
    bk_store_change_drop(mine);
    MUST(bk_store_change_begin(yours, &trouble));
    bk_store_close(yours);
    bk_store_close(mine);
}
END_TEST

BK_TEST_MAIN("several", a_change_has_the_store_to_itself_from_its_first_moment,
             programs_that_make_the_same_store_all_succeed,
             writers_at_the_same_time_lose_nothing_and_see_no_error)
