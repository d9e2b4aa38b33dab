#include <stdio.h>
#include <string.h>

#include "screen/seen.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/testing.h"

// One production from nothing to the rail, with nothing but keys: before each of them the test looks whether the screen, or
// the list of keys behind "?", tells of it.

enum { CHARACTER_ROOM = 8 };

// What a screen shows of a key, or asks for; then the keys; then what is typed as it is.
typedef struct stroke {
    const char *shown;
    const char *keys;
    const char *typed;
} stroke;

static void type(bk_terminal *terminal, const char *text)
{
    char character[CHARACTER_ROOM] = "";
    for (; *text; text++) {
        character[0] = *text;
        bk_terminal_send(terminal, character);
    }
}

// Where the bottom line tells what was done, the keys stand there again behind a look at all of them.
static void see_keys(bk_terminal *terminal)
{
    if (bk_terminal_shows(terminal, " u undo"))
        bk_terminal_press(terminal, "? Escape");
}

static void play(bk_terminal *terminal, const stroke *strokes, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        see_keys(terminal);
        assert_shows(terminal, strokes[i].shown);
        bk_terminal_press(terminal, strokes[i].keys);
        if (strokes[i].typed)
            type(terminal, strokes[i].typed);
    }
}

#define PLAY(terminal, ...) \
    play(terminal, (const stroke[]){__VA_ARGS__}, sizeof((const stroke[]){__VA_ARGS__}) / sizeof(stroke))

// Goes to another screen by the letter that the keys of this one tell.
static void go(bk_terminal *terminal, const char *letter, const char *told, const char *title)
{
    bk_terminal_press(terminal, "?");
    for (size_t most = 4; most > 0 && !bk_terminal_shows(terminal, told); most--)
        PLAY(terminal, {"Down more", "PageDown", NULL});
    assert_shows(terminal, told);
    PLAY(terminal, {"Escape back", "Escape", NULL}, {"", letter, NULL});
    assert_shows(terminal, title);
}

// ------------------------------------------------------------------------------------------- the chapters

static void make_the_production(bk_terminal *terminal)
{
    PLAY(terminal, {"Press + to make one", "+", "The Glass Orchard"}, {"Enter next", "Enter", "26 mar"});
    assert_shows(terminal, "Fri 26 Mar");
    PLAY(terminal, {"Enter next", "Enter", NULL}, {"centimetres, suggested", "Enter", "eur"},
         {"Ctrl-S save", "Control-S", NULL});
    assert_shows(terminal, "New: production The Glass Orchard");
    PLAY(terminal, {"Enter its rail", "Enter", NULL});
    assert_shows(terminal, "24 days to opening, Fri 26 Mar");
}

static void write_its_dates(bk_terminal *terminal)
{
    go(terminal, "T", "T              Dates", "Dates of The Glass Orchard");
    PLAY(terminal, {"+ new", "+", "par"}, {"Enter take it", "Enter", "fri 19 mar"},
         {"Enter next", "Enter", "18:30"}, {"Ctrl-S save", "Control-S", NULL}, {"+ new", "+", "dress"},
         {"Enter take it", "Enter", "24 mar"}, {"Ctrl-S save", "Control-S", NULL});
    assert_shows(terminal, "Fri 19 Mar  18:30  parade");
    assert_shows(terminal, "Wed 24 Mar         dress");
}

static void cast_it(bk_terminal *terminal)
{
    go(terminal, "C", "C              Cast", "Cast of The Glass Orchard");
    PLAY(terminal, {"+ adds a performer", "+", "Ines Varga"}, {"Ctrl-S save", "Control-S", NULL},
         {"none yet", "Down", NULL}, {"No role stands here yet: + adds one", "+", "The Gardener"},
         {"Enter next", "Enter", "in"}, {"Enter take it", "Enter", NULL}, {"Ctrl-S save", "Control-S", NULL});
    assert_shows(terminal, "The Gardener is played by Ines Varga");
}

static void pass_over(bk_terminal *terminal, size_t count)
{
    for (size_t i = 0; i < count; i++)
        PLAY(terminal, {"Enter pass over", "Enter", NULL});
}

// From the measure that is under the cursor to the one called so, by the key that passes measures over.
static void measure(bk_terminal *terminal, const char *name, const char *value)
{
    char line[CHARACTER_ROOM * CHARACTER_ROOM];
    snprintf(line, sizeof line, "> %s", name);
    while (!bk_terminal_shows(terminal, line))
        pass_over(terminal, 1);
    type(terminal, value);
    PLAY(terminal, {"Enter next", "Enter", NULL});
}

static void measure_the_performer(bk_terminal *terminal)
{
    static const char *const sheet[][2] = {
        {"height", "1m68"},    {"neck girth", "36.5"}, {"shoulder length", "12.5"}, {"bust girth", "92"},
        {"waist girth", "74"}, {"hip girth", "98"},    {"upper arm girth", "29"},   {"wrist girth", "16"},
        {"arm length", "58"},  {"nape to waist", "41"}};
    PLAY(terminal, {"", "Up", NULL}, {"Enter measures", "Enter", NULL},
         {"Press + to take the first sheet", "+", NULL});
    for (size_t i = 0; i < sizeof sheet / sizeof sheet[0]; i++)
        measure(terminal, sheet[i][0], sheet[i][1]);
    assert_shows(terminal, "10 measures typed");
    PLAY(terminal, {"Ctrl-S save", "Control-S", NULL});
    assert_shows(terminal, "Measured: Ines Varga, 10 measures");
}

static void hang_a_costume_with_two_pieces(bk_terminal *terminal)
{
    go(terminal, "R", "R              Rail", "No costume hangs on this rail yet");
    PLAY(terminal, {"+ new", "+", "gar"}, {"Enter take it", "Enter", NULL},
         {"Enter next", "Enter", "Sunday best"}, {"Ctrl-S save", "Control-S", NULL},
         {"Enter open", "Enter", NULL},
         {"No piece hangs under this costume yet. + adds the first", "+", "Skirt"},
         {"Enter next", "Enter", "ma"}, {"Enter take it", "Enter", NULL}, {"Ctrl-S save", "Control-S", NULL},
         {"y takes an order of work", "y", "gath"}, {"Enter take it", "Enter", NULL});
    assert_shows(terminal, "0 of 8 done");
    PLAY(terminal, {"+ add", "+", NULL}, {"p a piece", "p", "Shawl"}, {"Enter next", "Enter", "ma"},
         {"Enter take it", "Enter", NULL}, {"Ctrl-S save", "Control-S", NULL});
    assert_chosen(terminal, "1A-2  Shawl");
}

static void list_the_steps_of_the_second(bk_terminal *terminal)
{
    PLAY(terminal, {"+ adds a step", "+", NULL}, {"s or Enter a step", "Enter", "Cut the square"},
         {"Enter next", "Enter", "cut"}, {"Enter take it", "Enter", "30"}, {"Ctrl-S save", "Control-S", NULL},
         {"+ add", "+", NULL}, {"s or Enter a step", "Enter", "Machine the edge"},
         {"Enter next", "Enter", "mach"}, {"Enter take it", "Enter", "40"},
         {"Ctrl-S save", "Control-S", NULL}, {"+ add", "+", NULL},
         {"s or Enter a step", "Enter", "Knot the fringe"}, {"Enter next", "Enter", "hand"},
         {"Enter take it", "Enter", "1h30"}, {"Enter next", "Enter", NULL}, {"Enter next", "Enter", NULL},
         {"Ctrl-U empty", "Control-U", "square"}, {"Enter take it", "Enter", NULL},
         {"Ctrl-S save", "Control-S", NULL});
    assert_chosen(terminal, "Knot the fringe");
    assert_shows(terminal, "comes after: Cut the square");
}

static void say_what_they_need(bk_terminal *terminal)
{
    go(terminal, "M", "M              Materials", "Materials of the workroom");
    PLAY(terminal, {"Press + to add one", "+", "cotton twill"}, {"Enter next", "Enter", "m"},
         {"Enter take it", "Enter", "1.5"}, {"Ctrl-S save", "Control-S", NULL}, {"+ new", "+", "skirt hooks"},
         {"Enter next", "Enter", "each"}, {"Enter take it", "Enter", NULL},
         {"Ctrl-S save", "Control-S", NULL});
    go(terminal, "l", "l              look for", "Type a few letters");
    PLAY(terminal, {"Look for", "", "tear"}, {"Enter go there", "Enter", NULL}, {"+ add", "+", NULL},
         {"n a need", "n", "cot"}, {"Enter take it", "Enter", "2.8"}, {"Enter save", "Enter", NULL},
         {"l look for", "l", "stud"}, {"Enter go there", "Enter", NULL}, {"+ add", "+", NULL},
         {"n a need", "n", "hook"}, {"Enter take it", "Enter", "3"}, {"Enter save", "Enter", NULL});
    assert_chosen(terminal, "needs 3 skirt hooks");
}

static void fill_the_shelf(bk_terminal *terminal)
{
    go(terminal, "M", "M              Materials", "2 to buy now");
    PLAY(terminal, {"g order", "g", NULL}, {"Enter next", "Enter", "fri"},
         {"Ctrl-S save", "Control-S", NULL});
    assert_shows(terminal, "on order, due Fri 5 Mar");
    PLAY(terminal, {"v arrived", "v", "0.5"}, {"Ctrl-S save", "Control-S", NULL});
    assert_shows(terminal, "0.8 m     2.8 m  on order");
    PLAY(terminal, {"v arrived", "v", NULL}, {"Ctrl-S save", "Control-S", NULL});
    assert_shows(terminal, "Arrived: cotton twill, 0.8 m");
    PLAY(terminal, {"", "Down", NULL}, {"k count", "k", "10"}, {"Enter save", "Enter", NULL});
    assert_shows(terminal, "nothing to buy now");
}

static void take_the_measure_that_is_missing(bk_terminal *terminal)
{
    go(terminal, "R", "R              Rail", "in work; measures");
    go(terminal, "C", "C              Cast", "Cast of The Glass Orchard");
    PLAY(terminal, {"s take a sheet", "s", NULL});
    measure(terminal, "waist to floor", "105");
    PLAY(terminal, {"Ctrl-S save", "Control-S", NULL});
    go(terminal, "R", "R              Rail", "m measures 0");
}

// The step that the bottom line offers first.
static void tick(bk_terminal *terminal, const char *step)
{
    PLAY(terminal, {"x done", "x", NULL});
    assert_shows(terminal, step);
    PLAY(terminal, {"Enter yes", "Enter", NULL});
    assert_shows(terminal, "u undo");
}

static void tick_all(bk_terminal *terminal, const char *const *steps, size_t count)
{
    for (size_t i = 0; i < count; i++)
        tick(terminal, steps[i]);
}

static void make_what_comes_before_the_fitting(bk_terminal *terminal)
{
    static const char *const steps[] = {"Done: 1A-1/draft", "Done: 1A-1/cut", "Done: 1A-1/seams",
                                        "Done: 1A-1/gath"};
    tick_all(terminal, steps, sizeof steps / sizeof steps[0]);
    assert_shows(terminal, "Skirt: the fitting is not booked");
}

static void leave(bk_terminal *terminal)
{
    see_keys(terminal);
    assert_shows(terminal, "q leave");
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    bk_terminal_close(terminal);
}

static bk_terminal *come_back_on(bk_terminal *terminal, const char *day)
{
    leave(terminal);
    terminal = bk_terminal_start(&(bk_terminal_options){.today = day});
    assert_shows(terminal, "The Glass Orchard");
    return terminal;
}

static bk_terminal *fit_it_twice(bk_terminal *terminal)
{
    PLAY(terminal, {"b book", "b", "tomorrow 14:30"}, {"Ctrl-S save", "Control-S", NULL});
    terminal = come_back_on(terminal, "2027-03-03");
    assert_shows(terminal, "Skirt: the fitting is booked for Wed 3 Mar");
    go(terminal, "F", "F              Fittings", "1 to record");
    PLAY(terminal, {"Enter record", "Enter", "ag"}, {"Enter take it", "Enter", NULL},
         {"Enter next", "Enter", NULL}, {"Enter next", "Enter", "let the back down 2 cm"},
         {"Ctrl-S save", "Control-S", NULL});
    assert_shows(terminal, "1 step made");
    go(terminal, "R", "R              Rail", "4 of 12 steps done");
    tick(terminal, "let the back down");
    assert_shows(terminal, "Skirt: the fitting is not booked");
    go(terminal, "F", "F              Fittings", "1 to book now");
    PLAY(terminal, {"b book", "b", "tomorrow 10:00"}, {"Ctrl-S save", "Control-S", NULL});
    terminal = come_back_on(terminal, "2027-03-04");
    go(terminal, "F", "F              Fittings", "1 to record");
    PLAY(terminal, {"Enter record", "Enter", "fi"}, {"Enter take it", "Enter", NULL},
         {"Ctrl-S save", "Control-S", NULL});
    return terminal;
}

static void take_notes(bk_terminal *terminal)
{
    go(terminal, "N", "N              Notes", "0 open, 1 done with");
    PLAY(terminal, {"+ new", "+", "the shawl slips"}, {"Enter next", "Enter", NULL},
         {"Enter next", "Enter", "sh"}, {"Enter take it", "Enter", "par"}, {"Enter take it", "Enter", NULL},
         {"Ctrl-S save", "Control-S", NULL}, {"s step", "s", NULL}, {"Enter next", "Control-U", "ha"},
         {"Enter take it", "Enter", "10"}, {"Ctrl-S save", "Control-S", NULL});
    assert_shows(terminal, "Step from a note: 1A-2 the shawl slips");
    PLAY(terminal, {"+ new", "+", "who washes the shirts?"}, {"Ctrl-S save", "Control-S", NULL},
         {"x done", "x", NULL});
    assert_shows(terminal, "1 open, 2 done with");
}

static void finish_it(bk_terminal *terminal)
{
    static const char *const steps[] = {"Done: 1A-1/hem",  "Done: 1A-1/hook",    "Done: 1A-1/off",
                                        "Done: 1A-2/cut",  "Done: 1A-2/machine", "Done: 1A-2/knot",
                                        "Done: 1A-2/shawl"};
    go(terminal, "R", "R              Rail", "6 of 13 steps done");
    tick_all(terminal, steps, sizeof steps / sizeof steps[0]);
    assert_chosen(terminal, "ready");
    assert_shows(terminal, "all 13 steps done");
}

static void undo_three_and_redo_them(bk_terminal *terminal)
{
    assert_shows(terminal, "u undo");
    bk_terminal_press(terminal, "u");
    assert_shows(terminal, "Undone: Done: 1A-2 the shawl slips");
    go(terminal, "u", "u              undo", "Undone: Done: 1A-2 Knot the fringe");
    go(terminal, "u", "u              undo", "Undone: Done: 1A-2 Machine the edge");
    assert_shows(terminal, "10 of 13 steps done");
    assert_shows(terminal, "U redo");
    bk_terminal_press(terminal, "U");
    go(terminal, "U", "U              redo", "12 of 13 steps done");
    go(terminal, "U", "U              redo", "Redone: Done: 1A-2 the shawl slips");
    assert_chosen(terminal, "ready");
    go(terminal, "D", "D              Daybook", "Undone: Done: 1A-2 Machine the edge");
}

// -------------------------------------------------------------------------------------- what comes of it

static const char *sheet(const char *name)
{
    char path[CHARACTER_ROOM * CHARACTER_ROOM];
    snprintf(path, sizeof path, "sheets/%s.csv", name);
    return bk_test_read(bk_test_path(path), NULL);
}

static void assert_row(const char *name, const char *row)
{
    if (!strstr(sheet(name), row))
        ck_abort_msg("\"%s\" is not in %s.csv:\n%s", row, name, sheet(name));
}

static void assert_all_is_in_the_sheets(void)
{
    static const char *const rows[][2] = {
        {"production", "The Glass Orchard,2027-03-26,EUR,cm,"},
        {"dates", "parade,2027-03-19,18:30,"},
        {"measures", "Ines Varga,2027-03-02,height,168 cm,"},
        {"measures", "Ines Varga,2027-03-02,waist to floor,105 cm,"},
        {"roles", "The Gardener,Ines Varga,"},
        {"costumes", "1A,The Gardener,Sunday best,"},
        {"pieces", "1A-2,1A,Shawl,make,"},
        {"steps", "1A-1,let,let the back down 2 cm,machine,15,"},
        {"steps", "1A-2,knot,Knot the fringe,hand,90,,,cut,"},
        {"materials", "cotton twill,m,0,"},
        {"materials", "skirt hooks,each,7,"},
        {"needs", "1A-1,cut,cotton twill,2.8"},
        {"orders", "cotton twill,0.5,2027-03-02,2027-03-05,2027-03-02,"},
        {"orders", "cotton twill,0.8,2027-03-02,2027-03-05,2027-03-02,"},
        {"fittings", "1A-1,fit,2027-03-03T14:30,,20,2027-03-03,again,"},
        {"fittings", "1A-1,fit,2027-03-04T10:00,,20,2027-03-04,fits,"},
        {"notes", "2027-03-04,parade,,,1A-2,shawl,the shawl slips,"},
        {"notes", ",who washes the shirts?,2027-03-04"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        assert_row(rows[i][0], rows[i][1]);
}

// What was given out is the same production in an empty store.
static void assert_the_sheets_are_all_of_it(void)
{
    const char *other = bk_test_path("other.db");
    bk_program_must(bodkin_with(OPTIONS(.store = other), "import", bk_test_path("sheets")), 0);
    bk_program_must(bodkin_with(OPTIONS(.store = other), "check"), 0);
    bk_program_end here = bk_program_must(bodkin("rail", "--json"), 0);
    bk_program_end there = bk_program_must(bodkin_with(OPTIONS(.store = other), "rail", "--json"), 0);
    ck_assert_ptr_nonnull(strstr(here.output, "\"state\": \"ready\""));
    ck_assert_str_eq(here.output, there.output);
}

START_TEST(a_production_is_entered_measured_made_fitted_and_finished_with_the_keys_the_screens_show)
{
    bk_terminal *terminal = bk_terminal_start(NULL);
    make_the_production(terminal);
    write_its_dates(terminal);
    cast_it(terminal);
    measure_the_performer(terminal);
    hang_a_costume_with_two_pieces(terminal);
    list_the_steps_of_the_second(terminal);
    say_what_they_need(terminal);
    fill_the_shelf(terminal);
    take_the_measure_that_is_missing(terminal);
    make_what_comes_before_the_fitting(terminal);
    terminal = fit_it_twice(terminal);
    take_notes(terminal);
    finish_it(terminal);
    undo_three_and_redo_them(terminal);
    leave(terminal);
    bk_program_must(bodkin("check"), 0);
    bk_program_must(bodkin("export", bk_test_path("sheets")), 0);
    assert_all_is_in_the_sheets();
    assert_the_sheets_are_all_of_it();
}
END_TEST

BK_TEST_MAIN("a whole production",
             a_production_is_entered_measured_made_fitted_and_finished_with_the_keys_the_screens_show)
