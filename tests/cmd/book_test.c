// `bodkin book`, `count` and `note`.

#include <stdio.h>
#include <string.h>

#include "cmd/sheets.h"

// The Salt Road has 1A-1/fit (40 min), booked for 15 Mar, 10:00; Ines Varga plays it, and is away on 1 and 2 Apr. Today is
// Tue 2 Mar 2027.

static const char *bookings(void)
{
    return bk_ask("SELECT piece.name || '/' || key, booked_at, coalesce(performer.name, '-'), "
                  "coalesce(fitting.minutes, '-') FROM fitting JOIN step ON step.id = step_id JOIN piece ON "
                  "piece.id = piece_id LEFT JOIN performer ON performer.id = fitting.performer_id ORDER BY "
                  "fitting.id");
}

START_TEST(a_fitting_is_booked_or_moved_as_people_say_it)
{
    show_import();
    const char *before = bk_records();
    bk_program_end end = bk_program_must(bodkin("book", "1A-1/fit", "fri 14:30"), 0);
    ck_assert_str_eq(end.output, "Booked: Ines Varga, Fri 5 Mar 14:30: 1A-1 first fitting.\n");
    ck_assert_str_eq(end.trouble, "");
    ck_assert_str_eq(bookings(), "1A-1/fit|2027-03-05T14:30|-|-");
    bk_program_must(bodkin("undo"), 0);
    ck_assert_str_eq(bk_records(), before);
    bk_program_must(bodkin("book", "1A-1/fit", "+3"), 0);
    ck_assert_str_eq(bookings(), "1A-1/fit|2027-03-05|-|-");
}
END_TEST

START_TEST(several_steps_are_one_call)
{
    sheets_put("show");
    sheet_change("show", "steps.csv", "1B-1,press,press the cloak,press,15,",
                 "1B-1,press,press the cloak,press,15,\n1B-1,fit,final fitting,fit,20,press");
    bk_program_must(bodkin("import", bk_test_path("show")), 0);
    bk_program_end end = bk_program_must(
        bodkin("--minutes=45", "book", "1A-1/fit", "1B-1/fit", "9 mar 2pm", "--performer", "Tomas Lind"), 0);
    ck_assert_str_eq(end.output,
                     "Booked: Tomas Lind, Tue 9 Mar 14:00: 1A-1 first fitting, 1B-1 final fitting.\n");
    ck_assert_str_eq(bookings(), "1A-1/fit|2027-03-09T14:00|Tomas Lind|30\n"
                                 "1B-1/fit|2027-03-09T14:00|Tomas Lind|15");
}
END_TEST

START_TEST(what_speaks_against_a_booking_is_told_and_it_is_booked)
{
    show_import();
    bk_program_end end = bk_program_must(bodkin("book", "1A-1/fit", "2027-04-01T10:00"), 0);
    ck_assert_str_eq(end.output, "Booked: Ines Varga, Thu 1 Apr 10:00: 1A-1 first fitting.\n");
    ck_assert_str_eq(end.trouble, "Ines Varga is away on Thu 1 Apr: a wedding.\n");
    ck_assert_str_eq(bookings(), "1A-1/fit|2027-04-01T10:00|-|-");
}
END_TEST

START_TEST(the_shelf_is_counted)
{
    show_import();
    const char *before = bk_records();
    bk_program_end end = bk_program_must(bodkin("count", "wool flannel", "2,4"), 0);
    ck_assert_str_eq(end.output, "Counted: wool flannel, 2.4 m (it was 1 m).\n");
    ck_assert_str_eq(bk_ask("SELECT sum(quantity) FROM movement"), "2400000");
    bk_program_must(bodkin("undo"), 0);
    ck_assert_str_eq(bk_records(), before);
}
END_TEST

static const char *newest_note(void)
{
    return bk_ask("SELECT noted_on, coalesce(source, '-'), coalesce(who, '-'), coalesce(number, '-'), "
                  "coalesce(piece.name, '-'), coalesce(key, '-'), what FROM note LEFT JOIN costume ON "
                  "costume.id = costume_id LEFT JOIN piece ON piece.id = note.piece_id LEFT JOIN step ON "
                  "step.id = step_id ORDER BY note.id DESC LIMIT 1");
}

START_TEST(a_note_is_kept_about_a_costume_a_piece_a_step_or_nothing)
{
    show_import();
    const char *before = bk_records();
    bk_program_end end = bk_program_must(
        bodkin("note", "--on", "1B", "--from", "rehearsal", "--who", "the director", "too new"), 0);
    ck_assert_str_eq(end.output, "Noted: 1B: too new.\n");
    ck_assert_str_eq(newest_note(), "2027-03-02|rehearsal|the director|1B|-|-|too new");
    bk_program_must(bodkin("undo"), 0);
    ck_assert_str_eq(bk_records(), before);
    bk_program_must(bodkin("note", "--on=1A-1", "cuffs catch"), 0);
    ck_assert_str_eq(newest_note(), "2027-03-02|-|-|-|1A-1|-|cuffs catch");
    bk_program_must(bodkin("note", "--on=1A-1/sew", "mind the nap"), 0);
    ck_assert_str_eq(newest_note(), "2027-03-02|-|-|-|1A-1|sew|mind the nap");
    bk_program_must(bodkin("note", "flour on everything"), 0);
    ck_assert_str_eq(newest_note(), "2027-03-02|-|-|-|-|-|flour on everything");
    ck_assert_str_eq(bk_program_must(bodkin("note", "who washes the shirts?"), 0).output,
                     "Noted: who washes the shirts?\n");
}
END_TEST

enum { SENTENCE_ROOM = 250 };

typedef struct refusal {
    const char *words[6];
    int status;
    const char *sentence;
} refusal;

static const refusal refusals[] = {
    {{"book", "1A-1/fit"}, 2, "It is called so: bodkin book PIECE/STEP... WHEN"},
    {{"book", "1A-1/fit", "soon"},
     2,
     "\"soon\" is no day: write it such as \"fri 14:30\", \"9 mar 2pm\", +3 or 2027-03-12T14:30."},
    {{"book", "1A-1/fitt", "fri"}, 1, "The piece 1A-1 has no step \"fitt\"; did you mean 1A-1/fit?"},
    {{"book", "1A-1/sew", "fri"},
     1,
     "1A-1/sew is a step of kind machine; only a step of kind fit is booked."},
    {{"book", "1A-1/fit", "fri", "--performer", "Tomas Lint"},
     1,
     "There is no performer \"Tomas Lint\" in the workroom; did you mean \"Tomas Lind\"?"},
    {{"book", "1A-1/fit", "fri", "--performer="}, 2, "--performer wants a name."},
    {{"book", "1A-1/fit", "fri", "--minutes=x"}, 2, "--minutes wants whole minutes, such as 45, not \"x\"."},
    {{"book", "1A-1/fit", "fri", "--took=4"}, 2, "--took does not go with bodkin book."},
    {{"book", "1A-1/fit", "fri", "--as=director"},
     1,
     "Only the maker changes the workroom: nothing was changed."},
    {{"count", "wool flannel"}, 2, "It is called so: bodkin count MATERIAL QUANTITY"},
    {{"count", "wool flannel", "much"},
     2,
     "A quantity is a plain number in the material's unit, such as 2.4, not \"much\"."},
    {{"count", "wool flannel", "-1"}, 2, "There is no option -1; see bodkin --help."},
    {{"count", "wool flanel", "1"},
     1,
     "There is no material \"wool flanel\" in the workroom; did you mean \"wool flannel\"?"},
    {{"note"}, 2, "It is called so: bodkin note TEXT"},
    {{"note", " "}, 1, "The note says nothing; write what is to be remembered."},
    {{"note", "x", "--on=1C"},
     1,
     "There is no costume and no piece \"1C\" in \"The Salt Road\"; did you mean 1A?"},
    {{"note", "x", "--on=2A/hem"}, 1, "There is no piece \"2A\" in \"The Salt Road\"."},
    {{"note", "x", "--on="}, 2, "--on wants a name."},
    {{"note", "x", "--from=street"},
     2,
     "--from wants one of rehearsal, fitting, parade, tech, dress, preview, show, workroom, not \"street\"."},
    {{"note", "x", "--who="}, 2, "--who wants a name."},
    {{"note", "x", "--who", " \t"}, 2, "--who wants a name."},
    {{"note", "caf\xE9"}, 1, "A text of this note is not UTF-8: nothing was changed."},
    {{"count", "wool flannel", "1", "--on=1A"}, 2, "--on does not go with bodkin count."},
};

START_TEST(what_cannot_be_done_is_told_and_changes_nothing)
{
    show_import();
    const char *before = bk_ask(".dump");
    for (size_t i = 0; i < sizeof refusals / sizeof *refusals; i++) {
        char expected[SENTENCE_ROOM];
        bk_program_end end =
            bk_program_must(bk_program_call(OPTIONS(.store = NULL), refusals[i].words), refusals[i].status);
        snprintf(expected, sizeof expected, "bodkin: %s\n", refusals[i].sentence);
        ck_assert_str_eq(end.trouble, expected);
        ck_assert_str_eq(end.output, "");
    }
    ck_assert_str_eq(bk_ask(".dump"), before);
}
END_TEST

START_TEST(a_note_that_no_sheet_can_hold_is_refused)
{
    enum { LONGEST = 65535 }; // with the apostrophe that a sheet may put before it, as long as a cell can be
    static char text[LONGEST + 2];
    show_import();
    memset(text, 'x', LONGEST + 1);
    text[0] = '=';
    bk_program_end end = bk_program_must(bodkin("note", text), 1);
    ck_assert_str_eq(end.trouble,
                     "bodkin: A text of this note is longer than the 65535 bytes that a sheet can hold: "
                     "nothing was changed.\n");
    text[LONGEST] = '\0';
    bk_program_must(bodkin("note", text), 0);
    bk_program_must(bodkin("export", bk_test_path("again")), 0);
    bk_program_must(bodkin("import", bk_test_path("again"), "--replace"), 0);
    ck_assert_str_eq(bk_ask("SELECT length(what) FROM note ORDER BY id DESC LIMIT 1"), "65535");
}
END_TEST

START_TEST(the_help_tells_how_they_are_called)
{
    const char *help = bk_program_must(bodkin("--help"), 0).output;
    expect_words(help, "book PIECE/STEP... WHEN");
    expect_words(help, "count MATERIAL QUANTITY");
    expect_words(help, "note TEXT");
    expect_words(bk_program_must(bodkin("note", "--help"), 0).output, "--from WHERE");
}
END_TEST

BK_TEST_MAIN("book", a_fitting_is_booked_or_moved_as_people_say_it, several_steps_are_one_call,
             what_speaks_against_a_booking_is_told_and_it_is_booked, the_shelf_is_counted,
             a_note_is_kept_about_a_costume_a_piece_a_step_or_nothing,
             what_cannot_be_done_is_told_and_changes_nothing, a_note_that_no_sheet_can_hold_is_refused,
             the_help_tells_how_they_are_called)
