#include "bodkin/work/editor.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "support/testing.h"

enum { SCRIPT_ROOM = 4096 };

// A program that does `commands` with the file named in "$1", as this person's editor.
static void set_editor(const char *name, const char *commands)
{
    char script[SCRIPT_ROOM];
    const char *path = bk_test_path(name);
    snprintf(script, sizeof script, "#!/bin/sh\n%s\n", commands);
    bk_test_write_text(path, script);
    ck_assert_int_eq(chmod(path, 0700), 0);
    unsetenv("VISUAL");
    ck_assert_int_eq(setenv("EDITOR", path, 1), 0);
}

static const char *runtime_folder(void)
{
    const char *folder = bk_test_path("run");
    mkdir(folder, 0700);
    ck_assert_int_eq(setenv("XDG_RUNTIME_DIR", folder, 1), 0);
    return folder;
}

static size_t files_in(const char *folder)
{
    size_t count = 0;
    DIR *opened = opendir(folder);
    ck_assert_ptr_nonnull(opened);
    for (struct dirent *entry = readdir(opened); entry; entry = readdir(opened))
        count += entry->d_name[0] != '.';
    closedir(opened);
    return count;
}

static void assert_edited(const char *text, const char *wanted)
{
    bk_error error;
    const char *edited = NULL;
    bk_arena *arena = bk_arena_new();
    ck_assert_msg(bk_editor_edit(text, arena, &edited, &error) == BK_OK, "%s", error.text);
    ck_assert_str_eq(edited, wanted);
    bk_arena_free(arena);
}

static void assert_refused(const char *sentence)
{
    bk_error error;
    const char *edited = NULL;
    bk_arena *arena = bk_arena_new();
    ck_assert_int_eq(bk_editor_edit("as it was", arena, &edited, &error), BK_REFUSED);
    ck_assert_ptr_null(edited);
    ck_assert_msg(strstr(error.text, sentence) != NULL, "%s", error.text);
    bk_arena_free(arena);
}

START_TEST(the_editor_changes_the_text)
{
    const char *folder = runtime_folder();
    set_editor("editor", "sed -i 's/hem/hems/' \"$1\"; echo 'and hooks' >>\"$1\"");
    assert_edited("let down the hem", "let down the hems\nand hooks");
    ck_assert_uint_eq(files_in(folder), 0);
}
END_TEST

START_TEST(an_editor_that_changes_nothing_leaves_the_text)
{
    runtime_folder();
    set_editor("editor", "true");
    assert_edited("let down the hem", "let down the hem");
    assert_edited("", "");
}
END_TEST

START_TEST(the_file_is_its_owners_alone)
{
    runtime_folder();
    set_editor("editor", "stat -c %a \"$1\" >\"$1.mode\"; cat \"$1.mode\" >\"$1\"; rm \"$1.mode\"");
    assert_edited("a note about a performer", "600");
}
END_TEST

START_TEST(visual_comes_before_editor_and_may_have_arguments)
{
    runtime_folder();
    set_editor("editor", "echo \"$1\" >\"$2\"");
    char visual[SCRIPT_ROOM];
    snprintf(visual, sizeof visual, "%s 'two words'", getenv("EDITOR"));
    setenv("VISUAL", visual, 1);
    setenv("EDITOR", "false", 1);
    assert_edited("", "two words");
}
END_TEST

START_TEST(the_text_and_the_name_of_the_file_are_no_commands)
{
    const char *folder = bk_test_path("run; touch hurt");
    mkdir(folder, 0700);
    setenv("XDG_RUNTIME_DIR", folder, 1);
    set_editor("editor", "cat \"$1\" >\"$1.copy\"; mv \"$1.copy\" \"$1\"");
    assert_edited("$(touch hurt); `touch hurt`", "$(touch hurt); `touch hurt`");
    ck_assert_uint_eq(files_in(folder), 0);
}
END_TEST

START_TEST(an_editor_that_fails_loses_nothing)
{
    const char *folder = runtime_folder();
    set_editor("editor", "echo lost >\"$1\"; exit 3");
    assert_refused("ended with a fault");
    set_editor("editor", "kill -9 $$");
    assert_refused("ended with a fault");
    setenv("EDITOR", bk_test_path("no-such-editor"), 1);
    assert_refused("was not found");
    ck_assert_uint_eq(files_in(folder), 0);
}
END_TEST

START_TEST(a_file_that_is_gone_or_no_text_is_told)
{
    const char *folder = runtime_folder();
    set_editor("editor", "rm \"$1\"");
    assert_refused("no text in UTF-8");
    set_editor("editor", "printf 'caf\\351' >\"$1\"");
    assert_refused("no text in UTF-8");
    set_editor("editor", "printf 'a\\000b' >\"$1\"");
    assert_refused("no text in UTF-8");
    ck_assert_uint_eq(files_in(folder), 0);
}
END_TEST

START_TEST(a_folder_that_cannot_be_written_is_told)
{
    setenv("XDG_RUNTIME_DIR", bk_test_path("not-there"), 1);
    set_editor("editor", "true");
    assert_refused("No file for the editor could be made");
}
END_TEST

BK_TEST_MAIN("the editor", the_editor_changes_the_text, an_editor_that_changes_nothing_leaves_the_text,
             the_file_is_its_owners_alone, visual_comes_before_editor_and_may_have_arguments,
             the_text_and_the_name_of_the_file_are_no_commands, an_editor_that_fails_loses_nothing,
             a_file_that_is_gone_or_no_text_is_told, a_folder_that_cannot_be_written_is_told)
