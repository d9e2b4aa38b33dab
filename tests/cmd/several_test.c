// Several programs ticking in one store at the same time, and programs killed while they tick.

#include <signal.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <time.h>

#include "bodkin/base/buffer.h"
#include "cmd/sheets.h"

enum { HANDS = 8, TICKS = 40, KILLS = 20 };

/// A show with a piece for each pair of hands, each with as many steps, each of which needs 0.01 of the
/// linen.
static void import_work(int pieces, int steps)
{
    bk_buffer piece_rows = {0};
    bk_buffer step_rows = {0};
    bk_buffer need_rows = {0};
    bk_buffer_text(&piece_rows, "piece,costumes,title,origin\n");
    bk_buffer_text(&step_rows, "piece,step,title,kind,minutes\n");
    bk_buffer_text(&need_rows, "piece,step,material,quantity\n");
    for (int piece = 1; piece <= pieces; piece++) {
        bk_buffer_print(&piece_rows, "P%d,1A,Apron,make\n", piece);
        for (int step = 1; step <= steps; step++) {
            bk_buffer_print(&step_rows, "P%d,s%d,seam %d,hand,5\n", piece, step, step);
            bk_buffer_print(&need_rows, "P%d,s%d,linen,0.01\n", piece, step);
        }
    }
    sheet_write("work", "production.csv", "production,opens\nThe Loom,2027-06-04\n");
    sheet_write("work", "roles.csv", "role\nThe Weaver\n");
    sheet_write("work", "costumes.csv", "costume,role,title\n1A,The Weaver,Apron\n");
    sheet_write("work", "materials.csv", "material,unit,on_hand\nlinen,m,100\n");
    sheet_write("work", "pieces.csv", piece_rows.bytes);
    sheet_write("work", "steps.csv", step_rows.bytes);
    sheet_write("work", "needs.csv", need_rows.bytes);
    bk_buffer_free(&piece_rows);
    bk_buffer_free(&step_rows);
    bk_buffer_free(&need_rows);
    bk_program_must(bodkin("import", bk_test_path("work")), 0);
}

static int number(const char *sql)
{
    return (int)strtol(bk_ask(sql), NULL, 10);
}

START_TEST(all_that_tick_at_the_same_time_succeed)
{
    char command[1024];
    import_work(HANDS, TICKS);
    snprintf(command, sizeof command,
             "for hand in $(seq %d); do (for step in $(seq %d); do "
             "'%s' --store workroom.db tick P$hand/s$step --name hand$hand >>told.$hand 2>>trouble.$hand || "
             "echo it ended with $? >>trouble.$hand; done) & done; wait; cat trouble.*",
             HANDS, TICKS, BK_TEST_PROGRAM);
    ck_assert_str_eq(bk_shell(command), "");
    ck_assert_int_eq(number("SELECT count(*) FROM step WHERE done_on IS NOT NULL"), HANDS * TICKS);
    ck_assert_int_eq(number("SELECT count(*) FROM movement WHERE kind = 'use'"), HANDS * TICKS);
    ck_assert_int_eq(number("SELECT count(*) FROM daybook JOIN daybook_changes ON daybook_id = daybook.id"),
                     HANDS * TICKS + 1);
    ck_assert_int_eq(
        number("SELECT count(*) FROM daybook AS one JOIN daybook AS next ON next.id = one.id + 1 "
               "WHERE julianday(next.made_at) < julianday(one.made_at)"),
        0);
    ck_assert_str_eq(bk_shell("cat told.* | sort -u | grep -c ^Done:"), "320");
    bk_program_must(bodkin("check"), 0);
    bk_program_must(bodkin("undo", "--name", "hand3"), 0);
}
END_TEST

// -------------------------------------------------------------------------------------------------- killing

/// Waits until the program ends, or for that long, and kills it.
static void kill_after(pid_t program, long nanoseconds)
{
    sigset_t ended;
    struct timespec patience = {.tv_nsec = nanoseconds};
    sigemptyset(&ended);
    sigaddset(&ended, SIGCHLD);
    sigtimedwait(&ended, NULL, &patience);
    kill(program, SIGKILL);
}

static void hold_back_children(void)
{
    sigset_t ended;
    sigemptyset(&ended);
    sigaddset(&ended, SIGCHLD);
    sigprocmask(SIG_BLOCK, &ended, NULL);
}

/// How long one tick takes, below a second.
static long tick_nanoseconds(void)
{
    static const long SECOND = 1000000000L;
    struct timespec from;
    struct timespec to;
    clock_gettime(CLOCK_MONOTONIC, &from);
    bk_program_must(bodkin("tick", "P1/s40"), 0);
    clock_gettime(CLOCK_MONOTONIC, &to);
    long spent = (to.tv_sec - from.tv_sec) * SECOND + to.tv_nsec - from.tv_nsec;
    return spent < SECOND ? spent : SECOND - 1;
}

static int done_steps(void)
{
    return number("SELECT count(*) FROM step WHERE done_on IS NOT NULL");
}

/// Ticks a step and kills the program after that long; whether it was confirmed.
static bool tick_and_kill(int step, long nanoseconds)
{
    char name[32];
    char asked[100];
    snprintf(name, sizeof name, "P1/s%d", step);
    pid_t program = bk_program_start(OPTIONS(.store = NULL), ARGUMENTS("tick", name));
    kill_after(program, nanoseconds);
    bk_program_end end = bk_program_wait(program);
    if (strncmp(end.output, "Done: ", strlen("Done: ")) != 0)
        return false;
    snprintf(asked, sizeof asked, "SELECT done_on FROM step WHERE key = 's%d'", step);
    ck_assert_str_eq(bk_ask(asked), "2027-03-02");
    return true;
}

START_TEST(what_was_confirmed_before_a_kill_is_there_and_the_store_is_sound)
{
    import_work(1, TICKS);
    long whole = tick_nanoseconds();
    int confirmed = 0;
    hold_back_children();
    for (int i = 1; i <= KILLS; i++) {
        confirmed += tick_and_kill(i, whole / KILLS * i);
        bk_program_must(bodkin("check"), 0);
        ck_assert_int_eq(number("SELECT count(*) FROM movement WHERE kind = 'use'"), done_steps());
        ck_assert_int_eq(number("SELECT count(*) FROM daybook WHERE sentence LIKE 'Done%'"), done_steps());
    }
    ck_assert_int_lt(confirmed, KILLS);
    for (int left = done_steps(); left > 0; left--)
        expect_words(bk_program_must(bodkin("undo"), 0).output, "Undone: Done: P1 seam");
    ck_assert_str_eq(bk_ask("SELECT sum(quantity) FROM movement"), "100000000");
}
END_TEST

BK_TEST_MAIN("several", all_that_tick_at_the_same_time_succeed,
             what_was_confirmed_before_a_kill_is_there_and_the_store_is_sound)
