#include <stdio.h>
#include <sys/stat.h>

#include "screen/form_fields.h"
#include "screen/show.h"
#include "support/testing.h"

enum { SCRIPT_ROOM = 512 };

// A new date's form in the note, and a program that does `commands` with the file named in "$1" as the person's editor.
static bk_terminal *note_with_editor(const char *commands)
{
    char script[SCRIPT_ROOM];
    const char *path = bk_test_path("editor");
    snprintf(script, sizeof script, "#!/bin/sh\n%s\n", commands);
    bk_test_write_text(path, script);
    ck_assert_int_eq(chmod(path, 0700), 0);
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.editor = path});
    bk_terminal_press(terminal, "T + dress Enter fri Enter Enter bells");
    bk_assert_at_field(terminal, "note");
    return terminal;
}

START_TEST(a_long_text_is_written_in_the_persons_own_editor)
{
    bk_terminal *terminal = note_with_editor("sed -i 's/bells/hats and bells/' \"$1\"");
    ck_assert(bk_terminal_shows(terminal, "Ctrl-E your editor"));
    bk_terminal_press(terminal, "Control-E");
    bk_assert_field(terminal, "note", "hats and bells");
    bk_terminal_press(terminal, "! Control-S");
    ck_assert(bk_terminal_shows(terminal, "hats and bells!"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_the_editor_wrote_is_not_left_without_a_question)
{
    bk_terminal *terminal = note_with_editor("echo 'hats and bells' >\"$1\"");
    bk_terminal_press(terminal, "Control-S T Home e PageDown Control-E Escape");
    ck_assert(bk_terminal_shows(terminal, "Leave without saving?"));
    bk_terminal_press(terminal, "Control-S");
    ck_assert(bk_terminal_shows(terminal, "hats and bells"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_editor_has_the_terminal_and_gives_it_back)
{
    bk_terminal *terminal =
        note_with_editor("stty -a | grep -q -- '-icanon' && exit 1; echo written >\"$1\"");
    bk_terminal_press(terminal, "Control-E");
    bk_assert_field(terminal, "note", "written");
    bk_terminal_press(terminal, "s");
    bk_assert_field(terminal, "note", "writtens");
    ck_assert(bk_terminal_alternate(terminal));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(an_editor_that_fails_leaves_what_was_typed)
{
    bk_terminal *terminal = note_with_editor("echo lost >\"$1\"; exit 7");
    bk_terminal_press(terminal, "Control-E");
    ck_assert(bk_terminal_shows(terminal, "ended with a fault"));
    bk_assert_field(terminal, "note", "bells");
    bk_terminal_press(terminal, "!");
    bk_assert_field(terminal, "note", "bells!");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(several_lines_of_the_editor_are_shown_and_kept)
{
    bk_terminal *terminal = note_with_editor("printf 'hats\\nbells\\nboots\\n' >\"$1\"");
    bk_terminal_press(terminal, "Control-E");
    size_t row = bk_terminal_find(terminal, "hats");
    ck_assert_uint_eq(bk_terminal_find(terminal, "boots"), row + 2);
    bk_terminal_press(terminal, "Control-S Enter e");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_short_field_has_no_editor_and_says_so)
{
    bk_terminal *terminal = note_with_editor("echo lost >\"$1\"");
    bk_terminal_press(terminal, "Up Control-E");
    ck_assert(bk_terminal_shows(terminal, "Your own editor is for long texts"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("forms and the editor", a_long_text_is_written_in_the_persons_own_editor,
             what_the_editor_wrote_is_not_left_without_a_question,
             the_editor_has_the_terminal_and_gives_it_back, an_editor_that_fails_leaves_what_was_typed,
             several_lines_of_the_editor_are_shown_and_kept, a_short_field_has_no_editor_and_says_so)
