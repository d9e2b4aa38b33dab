#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "screen/hostile_names.h"
#include "support/program.h"
#include "support/testing.h"

// Hostile names and long texts on the screens and forms beside the rail, at every size, in ASCII and without colour.

enum { PATH_BYTES = 512, COPIES = 7 };

// Every `%s` is the name, seven at most.
static const struct sheet {
    const char *name, *text;
} sheets[] = {
    {"production.csv", "production,opens\n\"%s\",2027-03-19\n"},
    {"dates.csv", "what,on,note\nparade,2027-03-13,\"%s\"\n"},
    {"people.csv", "person,skills,mon,note\n\"%s\",machine;fit,10:00-18:00,\"%s\"\n"},
    {"performers.csv", "performer,contact,note\n\"%s\",\"%s\",\"%s\"\n"},
    {"equipment.csv", "equipment,kinds,count\n\"%s\",cut;machine,2\n"},
    {"away.csv", "who,from,to,reason\n\"%s\",2027-03-08,2027-03-09,\"%s\"\n"},
    {"roles.csv", "role,performer,note\n\"%s\",\"%s\",\"%s\"\nGhost,,\"%s\"\n"},
    {"costumes.csv", "costume,role,title,note\n1A,\"%s\",\"%s\",\"%s\"\n"},
    {"pieces.csv", "piece,costumes,title,origin,place,out_with,back_by,note\nP1,1A,\"%s\",hire,\"%s\",\"%s\","
                   "2027-03-01,\"%s\"\n"},
    {"steps.csv",
     "piece,step,title,kind,minutes,after,done_by,done_on,note\nP1,cut,\"%s\",cut,30,,\"%s\","
     "2027-03-01,\"%s\"\nP1,sew,\"%s\",machine,30,,,,\nP1,fit,\"%s\",fit,30,,,,\nP1,last,\"%s\",fit,30,"
     ",,,\n"},
    {"materials.csv", "material,unit,on_hand,supplier,note\n\"%s\",m,1,\"%s\",\"%s\"\n"},
    {"needs.csv", "piece,step,material,quantity\nP1,sew,\"%s\",4\n"},
    {"orders.csv", "material,quantity,ordered_on,due_on,from\n\"%s\",2,2027-02-20,2027-03-01,\"%s\"\n"},
    {"fittings.csv", "piece,step,booked_at,note\nP1,fit,2027-03-04T11:00,\"%s\"\n"},
    {"notes.csv", "noted_on,from,who,costume,piece,what\n2027-03-01,rehearsal,\"%s\",1A,P1,\"%s\"\n"},
    {"works.csv", "work,note\n\"%s\",\"%s\"\n"},
    {"work_steps.csv", "work,step,title,kind,minutes,note\n\"%s\",cut,\"%s\",cut,30,\"%s\"\n"},
};

static void write_sheet(const struct sheet *sheet, const char *name)
{
    char path[PATH_BYTES];
    size_t room = strlen(sheet->text) + COPIES * strlen(name) + 1;
    char *text = malloc(room);
    ck_assert_ptr_nonnull(text);
    snprintf(text, room, sheet->text, name, name, name, name, name, name, name);
    snprintf(path, sizeof path, "%s/%s", bk_test_path("odd"), sheet->name);
    bk_test_write_text(path, text);
    free(text);
}

static void import_all(const char *name)
{
    mkdir(bk_test_path("odd"), 0700);
    remove(bk_program_store());
    for (size_t i = 0; i < sizeof sheets / sizeof sheets[0]; i++)
        write_sheet(&sheets[i], name);
    bk_program_must(bodkin("import", bk_test_path("odd")), EXIT_SUCCESS);
}

// From the Rail to somewhere; what stands at the head and at the bottom there, and the way back.
static const struct way {
    const char *there, *head, *bottom, *back;
} ways[] = {
    {"R", " ", "? keys", "R"},
    {"Enter", " 1A", "? keys", "R"},
    {"Enter Home Down w", "Where is P1", "Escape leave", "Escape R"},
    {"Enter Home Down e", "Piece P1", "Escape leave", "Escape R"},
    {"Enter End e", "Step P1 last", "Escape leave", "Escape R"},
    {"b", "Book a fitting", "Escape leave", "Escape R"},
    {"e", "Costume 1A", "Escape leave", "Escape R"},
    {"j", "New note", "Escape leave", "Escape R"},
    {"x", " ", "Escape no", "Escape R"},
    {"-", " ", "other keys no", "Escape R"},
    {"B", "Bench", "? keys", "R"},
    {"B p", "Bench", "Escape back", "Escape R"},
    {"B p Down Enter", "Bench", "? keys", "R"},
    {"B m 9", "Bench", "Escape back", "Escape R"},
    {"W", "Who and When", "? keys", "R"},
    {"W p Down Enter", "Who and When", "? keys", "R"},
    {"W Enter", "today", "? keys", "R"},
    {"S", "Suppose:", "? keys", "R"},
    {"S + d", "Suppose a date", "Escape leave", "Escape R"},
    {"S + c 1A Enter fri Enter Down", "Suppose:", "? keys", "R"},
    {"S End Home e", "Suppose another", "Escape leave", "Escape R"},
    {"S Home -", "Suppose:", "other keys no", "Escape R"},
    {"S f Enter Down", "Suppose:", "? keys", "R"},
    {"H r", "Minutes taken", "? keys", "R"},
    {"C", "Cast", "? keys", "R"},
    {"C End", "Cast", "? keys", "R"},
    {"C e", "Performer", "Escape leave", "Escape R"},
    {"F", "Fittings of", "? keys", "R"},
    {"F Tab End", "Fittings of", "? keys", "R"},
    {"F End Enter", "P1", "Escape leave", "Escape R"},
    {"F End v", "Move:", "Escape leave", "Escape R"},
    {"F End -", "Fittings of", "other keys no", "Escape R"},
    {"M", "Materials", "? keys", "R"},
    {"M Tab", "To buy now", "? keys", "R"},
    {"M e", "Material", "Escape leave", "Escape R"},
    {"M k", "Count:", "Escape leave", "Escape R"},
    {"M v", "Arrived:", "Escape leave", "Escape R"},
    {"M Enter End", " ", "? keys", "R"},
    {"N", "Notes of", "? keys", "R"},
    {"N e", "Note", "Escape leave", "Escape R"},
    {"N s", "Step:", "Escape leave", "Escape R"},
    {"N -", "Notes of", "other keys no", "Escape R"},
    {"H", "Hands", "? keys", "R"},
    {"H End", "Hands", "? keys", "R"},
    {"H e", "Person", "Escape leave", "Escape R"},
    {"H End e", "Equipment", "Escape leave", "Escape R"},
    {"T", "Dates of", "? keys", "R"},
    {"T e", "Date", "Escape leave", "Escape R"},
    {"O End", "Orders of work", "? keys", "R"},
    {"O End Enter", " ", "? keys", "R"},
    {"O End c", "Copy of", "Escape leave", "Escape R"},
    {"D", "Daybook", "? keys", "R"},
    {"D Enter", "Daybook", "other keys no", "Escape R"},
    {"l 1", " ", "Escape back", "Escape R"},
    {"P", "Productions", "? keys", "Enter"},
};

static void assert_whole(const bk_terminal *terminal, const char *name, const struct way *way, size_t rows)
{
    bk_assert_nothing_forbidden(terminal, name);
    if (!strstr(bk_terminal_row(terminal, 0), way->head))
        ck_abort_msg("after %s with %s the head is not \"%s\":\n%s", way->there, name, way->head,
                     bk_terminal_screen(terminal));
    if (!strstr(bk_terminal_row(terminal, rows - 1), way->bottom))
        ck_abort_msg("after %s with %s the bottom does not tell \"%s\":\n%s", way->there, name, way->bottom,
                     bk_terminal_screen(terminal));
}

static void go_all_ways(const char *name, const bk_terminal_options *options)
{
    import_all(name);
    bk_terminal *terminal = bk_terminal_start(options);
    for (size_t i = 0; i < sizeof ways / sizeof ways[0]; i++) {
        bk_terminal_press(terminal, ways[i].there);
        assert_whole(terminal, name, &ways[i], 24);
        bk_terminal_press(terminal, ways[i].back);
    }
    if (options)
        ck_assert(!bk_terminal_coloured(terminal) && !bk_terminal_beyond_ascii(terminal));
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    bk_terminal_close(terminal);
}

START_TEST(a_hostile_name_leaves_every_screen_and_form_whole)
{
    for (size_t i = 0; i < BK_HOSTILE_NAMES; i++)
        go_all_ways(bk_hostile_names[i], NULL);
}
END_TEST

START_TEST(it_leaves_them_whole_in_ascii_and_without_colour_too)
{
    for (size_t i = 0; i < BK_HOSTILE_NAMES; i++)
        go_all_ways(bk_hostile_names[i],
                    &(bk_terminal_options){.type = "xterm-256color", .locale = "C", .no_colour = true});
}
END_TEST

// A text of some thousand characters, with words and without.
static const char *long_text(bool words)
{
    enum { LONG_BYTES = 3000, WORD = 7 };
    static char text[LONG_BYTES + 1];
    for (size_t i = 0; i < LONG_BYTES; i++)
        text[i] = words && i % WORD == WORD - 1 ? ' ' : 'w';
    text[LONG_BYTES - 1] = 'w';
    return text;
}

START_TEST(a_text_of_thousands_of_characters_does_too)
{
    go_all_ways(long_text(false), NULL);
    go_all_ways(long_text(true), NULL);
}
END_TEST

START_TEST(every_screen_and_form_is_whole_at_every_size_and_lives_through_one_that_is_too_small)
{
    static const struct size {
        size_t rows, columns;
    } sizes[] = {{5, 20}, {24, 80}, {60, 200}, {23, 79}, {1, 1}, {24, 80}, {40, 80}, {24, 300}};
    import_all("Name of somebody");
    bk_terminal *terminal = bk_terminal_start(NULL);
    for (size_t i = 0; i < sizeof ways / sizeof ways[0]; i++) {
        bk_terminal_press(terminal, ways[i].there);
        for (size_t s = 0; s < sizeof sizes / sizeof sizes[0]; s++) {
            bk_terminal_resize(terminal, sizes[s].rows, sizes[s].columns);
            if (sizes[s].rows >= 24 && sizes[s].columns >= 80)
                assert_whole(terminal, "a plain name", &ways[i], sizes[s].rows);
            else
                bk_terminal_press(terminal, "x Down u - Enter Escape");
        }
        bk_terminal_resize(terminal, 24, 80);
        bk_terminal_press(terminal, ways[i].back);
    }
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("hostile screens", a_hostile_name_leaves_every_screen_and_form_whole,
             it_leaves_them_whole_in_ascii_and_without_colour_too, a_text_of_thousands_of_characters_does_too,
             every_screen_and_form_is_whole_at_every_size_and_lives_through_one_that_is_too_small)
