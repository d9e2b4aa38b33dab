// `bodkin import` through the real program: what it says, what it keeps, what it leaves when it is stopped.

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "bodkin/store/store.h"
#include "bodkin/trade/words.h"
#include "cmd/sheets.h"

static bk_error trouble;

START_TEST(a_first_import_says_what_was_taken_in)
{
    bk_program_end end = bk_program_must(bodkin("import", sheets_put("show")), 0);
    ck_assert_str_eq(end.output, "Imported \"The Salt Road\": 3 costumes, 2 pieces, 4 steps.\n");
    ck_assert_str_eq(end.trouble, "");
    ck_assert_str_eq(bk_ask("SELECT count(*), sentence FROM daybook"),
                     "1|Imported \"The Salt Road\": 3 costumes, 2 pieces, 4 steps");
    ck_assert_str_eq(bk_shell("ls"), "show\nworkroom.db");
}
END_TEST

START_TEST(the_store_is_its_owners_alone)
{
    struct stat status;
    mode_t before = umask(0);
    show_import();
    umask(before);
    ck_assert_int_eq(stat(bk_program_store(), &status), 0);
    ck_assert_uint_eq(status.st_mode & 0777U, 0600);
}
END_TEST

START_TEST(a_production_that_is_there_is_refused_until_it_may_be_replaced)
{
    show_import();
    bk_shell("cp workroom.db before");
    for (int i = 0; i < 2; i++) {
        bk_program_end end = bk_program_must(bodkin("import", bk_test_path("show")), 1);
        ck_assert_str_eq(end.trouble,
                         "bodkin: There is already a production \"The Salt Road\" in this workroom; to put "
                         "this one in its place, import with --replace.\n");
        ck_assert_str_eq(end.output, "");
        bk_shell("cmp workroom.db before");
    }
    sheet_change("show", "costumes.csv", "2A,The Boy,Shirt\n", "");
    ck_assert_str_eq(bk_program_must(bodkin("import", bk_test_path("show"), "--replace"), 0).output,
                     "Imported in place of the former \"The Salt Road\": 2 costumes, 2 pieces, 4 steps.\n");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM production"), "1");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM costume"), "2");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), "2");
    ck_assert_str_eq(bk_program_must(bodkin("check"), 0).trouble, "");
}
END_TEST

START_TEST(what_a_missing_sheet_empties_is_told)
{
    show_import();
    bk_shell("rm show/fittings.csv show/needs.csv");
    ck_assert_str_eq(bk_program_must(bodkin("import", bk_test_path("show"), "--replace"), 0).output,
                     "Imported in place of the former \"The Salt Road\": 3 costumes, 2 pieces, 4 steps.\n"
                     "Gone with the former one, since the folder has none: 1 need and 1 fitting.\n");
    ck_assert_str_eq(bk_program_must(bodkin("import", bk_test_path("show"), "--replace"), 0).output,
                     "Imported in place of the former \"The Salt Road\": 3 costumes, 2 pieces, 4 steps.\n");
}
END_TEST

START_TEST(what_was_replaced_in_the_workroom_is_listed_without_measures_and_contacts)
{
    show_import();
    sheet_change("show", "performers.csv", "ines@stage.example,no wool",
                 "ines@road.example,no wool and no silk");
    sheet_change("show", "measures.csv", "71.3 cm", "72.4 cm");
    sheet_change("show", "materials.csv", "m,1,8.90", "m,2.5,9.20");
    sheet_change("show", "orders.csv", "2027-03-09", "2027-03-16");
    sheet_change("show", "away.csv", "a wedding", "two weddings");
    sheet_change("show", "people.csv", "cut;machine;hand", "cut;machine;press;hand");
    ck_assert_str_eq(
        bk_program_must(bodkin("import", bk_test_path("show"), "--replace"), 0).output,
        "Imported in place of the former \"The Salt Road\": 3 costumes, 2 pieces, 4 steps.\n"
        "Replaced in the workroom:\n"
        "  performers.csv: Ines Varga: note: was \"no wool\", is now \"no wool and no silk\"\n"
        "  performers.csv: Ines Varga: contact: replaced\n"
        "  people.csv: Ada Pell: skills: was \"cut;machine;hand\", is now \"cut;machine;press;hand\"\n"
        "  away.csv: Ines Varga: reason: was \"a wedding\", is now \"two weddings\"\n"
        "  measures.csv: Ines Varga, 2027-02-03, waist girth: value: replaced\n"
        "  materials.csv: wool flannel: on_hand: was \"1\", is now \"2.5\"\n"
        "  materials.csv: wool flannel: price: was \"8.90\", is now \"9.20\"\n"
        "  orders.csv: wool flannel, 2027-02-01: due_on: was \"2027-03-09\", is now \"2027-03-16\"\n");
}
END_TEST

START_TEST(the_same_sheets_again_replace_nothing_in_the_workroom)
{
    show_import();
    ck_assert_str_eq(bk_program_must(bodkin("import", bk_test_path("show"), "--replace"), 0).output,
                     "Imported in place of the former \"The Salt Road\": 3 costumes, 2 pieces, 4 steps.\n");
}
END_TEST

START_TEST(names_that_the_workroom_knows_need_no_row_of_their_own)
{
    show_import();
    sheet_change("show", "production.csv", "The Salt Road", "The Salt Road at Sea");
    static const char *const left_out[] = {"performers.csv", "people.csv", "materials.csv", "measures.csv"};
    for (size_t i = 0; i < sizeof left_out / sizeof *left_out; i++)
        sheet_remove("show", left_out[i]);
    bk_program_must(bodkin("import", bk_test_path("show")), 0);
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM performer"), "2");
    sheet_change("show", "production.csv", "at Sea", "on Land");
    sheet_change("show", "roles.csv", "Ines Varga", "Ines Vargas");
    expect_words(bk_program_must(bodkin("import", bk_test_path("show")), 1).trouble,
                 "roles.csv:2: performer: no performer is called \"Ines Vargas\", neither in performers.csv "
                 "nor in the "
                 "workroom; add a row there, or write a name that stands there\n");
}
END_TEST

// --------------------------------------------------------------------------------------------- being stopped

enum { MANY_MEASURES = 400000, MEASURES_A_DAY = 40, LINE_ROOM = 96, FIRST_DAY = 6000 };

/// The show with measures of many years more, so that taking it in lasts a while.
static void put_long_show(void)
{
    char *text = malloc((size_t)MANY_MEASURES * LINE_ROOM);
    ck_assert_ptr_nonnull(text);
    size_t length = (size_t)sprintf(text, "performer,taken_on,measure,value\n");
    for (int i = 0; i < MANY_MEASURES; i++) {
        char day[BK_DAY_ROOM];
        bk_day_write(FIRST_DAY + i / MEASURES_A_DAY, day);
        length += (size_t)sprintf(text + length, "Ines Varga,%s,round %d,71.3 cm\n", day, i % MEASURES_A_DAY);
    }
    sheets_put("long");
    sheet_change("long", "production.csv", "The Salt Road", "The Long Road");
    sheet_write_bytes("long", "measures.csv", text, length);
    free(text);
}

START_TEST(an_interrupt_stops_a_long_import_and_nothing_of_it_stays)
{
    static const int signals[] = {SIGINT, SIGTERM, SIGHUP};
    show_import();
    put_long_show();
    const char *before = bk_records();
    for (size_t i = 0; i < sizeof signals / sizeof *signals; i++) {
        pid_t program = bk_program_start(OPTIONS(.store = NULL), ARGUMENTS("import", bk_test_path("long")));
        bk_program_await_handler(program, signals[i]);
        ck_assert_int_eq(kill(program, signals[i]), 0);
        bk_program_end end = bk_program_must(bk_program_wait(program), 1);
        expect_words(end.trouble, "stopped; nothing was changed");
        ck_assert_str_eq(end.output, "");
        ck_assert_str_eq(bk_records(), before);
    }
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), "1");
    ck_assert_str_eq(bk_shell("ls"), "long\nshow\nworkroom.db");
}
END_TEST

START_TEST(an_interrupt_before_there_is_a_store_leaves_none)
{
    put_long_show();
    pid_t program = bk_program_start(OPTIONS(.store = NULL), ARGUMENTS("import", bk_test_path("long")));
    bk_program_await_handler(program, SIGINT);
    ck_assert_int_eq(kill(program, SIGINT), 0);
    bk_program_must(bk_program_wait(program), 1);
    ck_assert_str_eq(bk_shell("ls"), "long");
}
END_TEST

START_TEST(an_interrupt_that_was_to_be_ignored_is_ignored)
{
    sheets_put("show");
    ck_assert_str_eq(bk_shell("trap '' HUP; sh -c 'kill -HUP $$; exec \"" BK_TEST_PROGRAM
                              "\" import show --store workroom.db'"),
                     "Imported \"The Salt Road\": 3 costumes, 2 pieces, 4 steps.");
}
END_TEST

/// A pseudo-terminal; the program's end of it is returned, ours goes to `*ours`.
static int open_terminal(int *ours)
{
    *ours = posix_openpt(O_RDWR | O_NOCTTY | O_CLOEXEC);
    ck_assert_int_ge(*ours, 0);
    ck_assert_int_eq(grantpt(*ours), 0);
    ck_assert_int_eq(unlockpt(*ours), 0);
    int program_end = open(ptsname(*ours), O_RDWR | O_NOCTTY | O_CLOEXEC);
    ck_assert_int_ge(program_end, 0);
    return program_end;
}

enum { TERMINAL_ROOM = 65536 };

/// Reads what the terminal is sent until it holds `words`; all of it up to the end where they are NULL.
static void read_terminal(int terminal, char *said, const char *words)
{
    size_t length = strlen(said);
    while (words == NULL || strstr(said, words) == NULL) {
        ssize_t got = read(terminal, said + length, TERMINAL_ROOM - 1 - length);
        if (got <= 0) { // the program has closed its end
            ck_assert_msg(words == NULL, "\"%s\" was never said: %s", words, said);
            return;
        }
        length += (size_t)got;
        said[length] = '\0';
    }
}

START_TEST(a_long_import_shows_on_a_terminal_how_far_it_is_and_stops_at_its_key)
{
    static char said[TERMINAL_ROOM];
    int terminal = -1;
    int program_end = open_terminal(&terminal);
    show_import();
    put_long_show();
    const char *before = bk_records();
    pid_t program =
        bk_program_start(OPTIONS(.terminal = program_end), ARGUMENTS("import", bk_test_path("long")));
    close(program_end);
    read_terminal(terminal, said, "%   Ctrl-C stops");
    expect_words(said, ".csv ");
    ck_assert_int_eq(write(terminal, "\x03", 1), 1);
    read_terminal(terminal, said, NULL);
    bk_program_must(bk_program_wait(program), 1);
    close(terminal);
    const char *cleared = strrchr(said, '\r');
    const char *last = strstr(said, "bodkin: ");
    ck_assert_msg(last != NULL && strstr(last, "stopped; nothing was changed") != NULL, "%s", said);
    ck_assert_ptr_nonnull(cleared);
    ck_assert_int_eq(last[-1], '\r');
    ck_assert_int_eq(last[-2], ' ');
    ck_assert_str_eq(bk_records(), before);
}
END_TEST

START_TEST(a_killed_import_leaves_a_sound_store_without_it)
{
    show_import();
    put_long_show();
    const char *before = bk_records();
    pid_t program = bk_program_start(OPTIONS(.store = NULL), ARGUMENTS("import", bk_test_path("long")));
    bk_program_await_handler(program, SIGINT);
    ck_assert_int_eq(kill(program, SIGKILL), 0);
    bk_program_must(bk_program_wait(program), -1);
    ck_assert_str_eq(bk_records(), before);
    bk_program_must(bodkin("check"), 0);
}
END_TEST

// ----------------------------------------------------------------------------------------------- a full disk

START_TEST(a_full_disk_is_told_and_nothing_of_the_import_stays)
{
    enum { LITTLE_MORE = 40000 };
    struct stat status;
    show_import();
    put_long_show();
    const char *before = bk_records();
    ck_assert_int_eq(stat(bk_program_store(), &status), 0);
    bk_program_end end =
        bk_program_must(bodkin_with(OPTIONS(.largest_file = (long)status.st_size + LITTLE_MORE), "import",
                                    bk_test_path("long")),
                        3);
    expect_words(end.trouble, "bodkin: ");
    expect_words(end.trouble, "workroom.db");
    ck_assert_str_eq(end.output, "");
    ck_assert_str_eq(bk_records(), before);
    bk_program_must(bodkin("check"), 0);
}
END_TEST

// ---------------------------------------------------------------------------------------------------- others

START_TEST(an_import_waits_while_somebody_else_writes)
{
    bk_store *store = NULL;
    show_import();
    bk_store_options options = {.path = bk_program_store(), .as = BK_AS_MAKER, .who = "Bo"};
    ck_assert_msg(bk_store_open(&store, &options, &trouble) == BK_OK, "%s", trouble.text);
    ck_assert_msg(bk_store_change_begin(store, &trouble) == BK_OK, "%s", trouble.text);
    sheet_change("show", "production.csv", "Salt", "Sugar");
    pid_t program = bk_program_start(OPTIONS(.store = NULL), ARGUMENTS("import", bk_test_path("show")));
    bk_program_await_handler(program, SIGINT);
    bk_day day = bk_day_of(2027, 3, 2);
    bk_production production = {.name = "Chalk",
                                .opens = day,
                                .unit = BK_NO_WORD,
                                .measures_good_for = BK_NOT_KNOWN,
                                .put_away_on = BK_NO_DAY};
    ck_assert_int_eq(bk_store_add(store, BK_PRODUCTIONS, &production, 0, NULL, &trouble), BK_OK);
    ck_assert_int_eq(bk_store_change_commit(store, "2027-03-02T09:30:00+00:00", "Chalk.", NULL, &trouble),
                     BK_OK);
    bk_store_close(store);
    bk_program_must(bk_program_wait(program), 0);
    ck_assert_str_eq(bk_ask("SELECT group_concat(name, ', ') FROM (SELECT name FROM production ORDER BY id)"),
                     "The Salt Road, Chalk, The Sugar Road");
}
END_TEST

BK_TEST_MAIN("import", a_first_import_says_what_was_taken_in, the_store_is_its_owners_alone,
             a_production_that_is_there_is_refused_until_it_may_be_replaced,
             what_a_missing_sheet_empties_is_told,
             what_was_replaced_in_the_workroom_is_listed_without_measures_and_contacts,
             the_same_sheets_again_replace_nothing_in_the_workroom,
             names_that_the_workroom_knows_need_no_row_of_their_own,
             an_interrupt_stops_a_long_import_and_nothing_of_it_stays,
             an_interrupt_before_there_is_a_store_leaves_none, an_interrupt_that_was_to_be_ignored_is_ignored,
             a_long_import_shows_on_a_terminal_how_far_it_is_and_stops_at_its_key,
             a_killed_import_leaves_a_sound_store_without_it,
             a_full_disk_is_told_and_nothing_of_the_import_stays, an_import_waits_while_somebody_else_writes)
