// `bodkin check` and `bodkin backup`.

#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

#include "cmd/sheets.h"

enum { SENTENCE_ROOM = 512 };

START_TEST(a_sound_store_is_said_to_be_sound)
{
    char expected[SENTENCE_ROOM];
    show_import();
    snprintf(expected, sizeof expected, "%s is sound.\n", bk_program_store());
    ck_assert_str_eq(bk_program_must(bodkin("check"), 0).output, expected);
}
END_TEST

START_TEST(each_thing_that_is_wrong_is_a_line_and_the_way_out_is_said)
{
    show_import();
    bk_ask("PRAGMA foreign_keys = OFF; DELETE FROM role WHERE name = 'The Boy'");
    bk_program_end end = bk_program_must(bodkin("check"), 1);
    expect_words(end.output, "refer to a row of \"role\" that is not there.\n");
    ck_assert_str_eq(end.trouble,
                     "bodkin: The store has 1 fault; restore a backup, or export and import anew.\n");
    bk_ask("INSERT INTO performer (name) VALUES ('Ines Varga')");
    end = bk_program_must(bodkin("check"), 1);
    expect_words(end.output, "2 performers are called \"Ines Varga\".\n");
    expect_words(end.trouble, "The store has 2 faults; ");
}
END_TEST

START_TEST(a_file_that_is_damaged_is_told_and_not_changed)
{
    show_import();
    bk_shell(
        "dd if=/dev/zero of=workroom.db bs=1 seek=20000 count=9000 conv=notrunc 2>dd.log; cp workroom.db "
        "before");
    bk_program_end end = bodkin("check");
    ck_assert_msg(end.status == 1 || end.status == 3, "%d", end.status);
    ck_assert_str_ne(end.trouble, "");
    bk_shell("cmp workroom.db before");
}
END_TEST

START_TEST(a_backup_is_the_whole_store_and_its_owners_alone)
{
    char expected[SENTENCE_ROOM];
    show_import();
    mode_t before = umask(0);
    bk_program_end end = bk_program_must(bodkin("backup", bk_test_path("copy.db")), 0);
    umask(before);
    snprintf(expected, sizeof expected, "The workroom is copied into %s.\n", bk_test_path("copy.db"));
    ck_assert_str_eq(end.output, expected);
    ck_assert_str_eq(end.trouble, "");
    ck_assert_str_eq(bk_shell("stat -c %a copy.db; ls"), "600\ncopy.db\nshow\nworkroom.db");
    const char *rail = bodkin("rail", "--json").output;
    const char *records = bk_records();
    ck_assert_str_eq(bk_program_must(bodkin("rail", "--json", "--store", bk_test_path("copy.db")), 0).output,
                     rail);
    bk_shell("mv copy.db workroom.db");
    ck_assert_str_eq(bk_records(), records);
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), "1");
}
END_TEST

START_TEST(a_backup_is_never_written_over_a_file)
{
    show_import();
    bk_test_write_text(bk_test_path("letter"), "dear");
    bk_program_end end = bk_program_must(bodkin("backup", bk_test_path("letter")), 1);
    expect_words(end.trouble, "already: a backup is never written over one.");
    expect_words(bk_program_must(bodkin("backup", bk_program_store()), 1).trouble, "already");
    ck_assert_str_eq(bk_test_read(bk_test_path("letter"), NULL), "dear");
    bk_program_must(bodkin("check"), 0);
}
END_TEST

START_TEST(a_backup_that_cannot_be_written_is_told_and_leaves_nothing)
{
    show_import();
    bk_program_end end = bk_program_must(bodkin("backup", bk_test_path("no/such/folder.db")), 1);
    expect_words(end.trouble, "could not be made: No such file or directory.");
    end = bk_program_must(bodkin_with(OPTIONS(.largest_file = 100000), "backup", bk_test_path("copy.db")), 3);
    expect_words(end.trouble, "bodkin: ");
    ck_assert_str_eq(bk_shell("ls"), "show\nworkroom.db");
}
END_TEST

BK_TEST_MAIN("keep", a_sound_store_is_said_to_be_sound,
             each_thing_that_is_wrong_is_a_line_and_the_way_out_is_said,
             a_file_that_is_damaged_is_told_and_not_changed, a_backup_is_the_whole_store_and_its_owners_alone,
             a_backup_is_never_written_over_a_file,
             a_backup_that_cannot_be_written_is_told_and_leaves_nothing)
