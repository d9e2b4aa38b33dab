#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#include "workroom.h"

// What a careless file of this floor might do with the gateway; each in a program of its own.
typedef void careless(bk_store *store);

static void leaves_a_parameter_out(bk_store *store)
{
    bk_query *query = NULL;
    bool row = false;
    MUST(bk_query_begin(&query, store->db, BK_SQL_FIND_PRODUCTION, &trouble));
    MUST(bk_query_row(query, &row, &trouble));
}

static void gives_a_parameter_too_many(bk_store *store)
{
    bk_query *query = NULL;
    MUST(bk_query_begin(&query, store->db, BK_SQL_FIND_PRODUCTION, &trouble));
    bk_query_give(query, 2, 7);
}

static void leaves_a_column_out(bk_store *store)
{
    bk_query *query = NULL;
    bool row = false;
    MUST(bk_query_begin(&query, store->db, BK_SQL_READ_PERFORMERS, &trouble));
    MUST(bk_query_row(query, &row, &trouble));
    bk_query_number(query, 0, 0);
    bk_query_end(query);
}

static void asks_for_a_column_too_many(bk_store *store)
{
    bk_query *query = NULL;
    bool row = false;
    MUST(bk_query_begin(&query, store->db, BK_SQL_READ_PERFORMERS, &trouble));
    MUST(bk_query_row(query, &row, &trouble));
    bk_query_number(query, 40, 0);
}

static void asks_where_there_is_no_row(bk_store *store)
{
    bk_query *query = NULL;
    MUST(bk_query_begin(&query, store->db, BK_SQL_READ_PERFORMERS, &trouble));
    bk_query_number(query, 0, 0);
}

static void uses_a_statement_within_its_use(bk_store *store)
{
    bk_query *query = NULL;
    MUST(bk_query_begin(&query, store->db, BK_SQL_READ_PERFORMERS, &trouble));
    MUST(bk_query_begin(&query, store->db, BK_SQL_READ_PERFORMERS, &trouble));
}

static void ends_a_statement_twice(bk_store *store)
{
    bk_query *query = NULL;
    MUST(bk_query_begin(&query, store->db, BK_SQL_READ_PERFORMERS, &trouble));
    bk_query_end(query);
    bk_query_end(query);
}

static void leaves_a_statement_open_at_the_commit(bk_store *store)
{
    bk_query *query = NULL;
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_query_begin(&query, store->db, BK_SQL_READ_PERFORMERS, &trouble));
    MUST(bk_store_change_commit(store, MADE_AT, "Left it open.", NULL, &trouble));
}

static void leaves_a_statement_open_at_the_end(bk_store *store)
{
    bk_query *query = NULL;
    MUST(bk_query_begin(&query, store->db, BK_SQL_READ_PERFORMERS, &trouble));
    bk_store_close(store);
}

// What the careless program said before it was ended.
static void run_careless(careless *job, char *said, size_t room)
{
    int ends[2];
    int ended = 0;
    ck_assert_int_eq(pipe(ends), 0);
    pid_t program = fork();
    if (program == 0) {
        record_ids ids;
        dup2(ends[1], STDERR_FILENO);
        bk_store *store = open_workroom();
        import_one_of_each(store, &ids);
        job(store);
        _exit(0);
    }
    close(ends[1]);
    ssize_t length = read(ends[0], said, room - 1);
    said[length < 0 ? 0 : length] = '\0';
    close(ends[0]);
    ck_assert_int_eq(waitpid(program, &ended, 0), program);
    ck_assert(WIFSIGNALED(ended) && WTERMSIG(ended) == SIGABRT);
}

#ifdef BK_GUARDS
static const bool guarded = true;
#else
static const bool guarded = false;
#endif

START_TEST(careless_use_of_a_statement_ends_the_program)
{
    static const struct {
        careless *job;
        const char *words;
    } jobs[] = {
        {leaves_a_parameter_out, "statement find_production: a parameter was not given"},
        {gives_a_parameter_too_many, "statement find_production: has no such parameter"},
        {leaves_a_column_out, "statement read_performers: a column was never asked for"},
        {asks_for_a_column_too_many, "statement read_performers: has no such column"},
        {asks_where_there_is_no_row,
         "statement read_performers: a column was asked for where there is no row"},
        {uses_a_statement_within_its_use, "statement read_performers: begun while it is in use"},
        {ends_a_statement_twice, "statement read_performers: ended twice"},
        {leaves_a_statement_open_at_the_commit, "statement read_performers: left in use"},
        {leaves_a_statement_open_at_the_end, "statement read_performers: left in use"},
    };
    for (size_t i = 0; guarded && i < sizeof jobs / sizeof jobs[0]; i++) {
        char said[512];
        run_careless(jobs[i].job, said, sizeof said);
        ck_assert_msg(strstr(said, jobs[i].words) != NULL, "\"%s\" lacks \"%s\"", said, jobs[i].words);
    }
}
END_TEST

BK_TEST_MAIN("guards", careless_use_of_a_statement_ends_the_program)
