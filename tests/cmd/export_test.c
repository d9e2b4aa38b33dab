// `bodkin export` through the real program: the same rows in the same order, the same bytes again and again.

#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

#include "cmd/sheets.h"

static const char demo[] = BK_TEST_SOURCE_DIR "/demo/the-heron-toll";

/// Takes the folder `from` of the test's folder into the empty store `to`.db, and writes it out as `to`.
static void carry_over(const char *from, const char *to)
{
    char store[64];
    snprintf(store, sizeof store, "%s.db", to);
    bk_program_must(bodkin("import", bk_test_path(from), "--store", bk_test_path(store)), 0);
    bk_program_must(bodkin("export", bk_test_path(to), "--store", bk_test_path(store)), 0);
}

START_TEST(the_demo_exported_and_imported_and_exported_is_the_same_to_the_byte)
{
    bk_program_must(bodkin("import", demo), 0);
    bk_program_end end = bk_program_must(bodkin("export", bk_test_path("once")), 0);
    expect_words(end.output, "Exported \"The Heron Toll\" into ");
    ck_assert_str_eq(end.trouble, "");
    carry_over("once", "twice");
    carry_over("twice", "thrice");
    ck_assert_str_eq(bk_shell("diff -r once twice && diff -r twice thrice && ls once | wc -l"), "18");
    const char *records = bk_records();
    bk_shell("mv twice.db workroom.db");
    ck_assert_str_eq(bk_records(), records);
}
END_TEST

START_TEST(what_is_exported_is_what_was_written_in_the_sheets)
{
    bk_program_must(bodkin("import", demo), 0);
    bk_program_must(bodkin("export", bk_test_path("out")), 0);
    // The quoting may differ, the columns may be fuller: the cells that were written are there, row by row.
    bk_test_write_text(
        bk_test_path("job.py"),
        "import csv, glob, os, re\n"
        "def as_written(row):\n"
        "    row = dict(row)\n"
        "    millimetres = re.fullmatch('([0-9.]+) mm', row.get('width', ''))\n"
        "    if millimetres:\n"
        "        row['width'] = '%g cm' % (float(millimetres[1]) / 10)\n"
        "    for column in {'cost', 'price'} & set(row):\n"
        "        row[column] = re.sub('^[0-9]+$', r'\\g<0>.00', row[column])\n"
        "    return row\n"
        "for path in sorted(glob.glob('" BK_TEST_SOURCE_DIR "/demo/the-heron-toll/*.csv')):\n"
        "    name = os.path.basename(path)\n"
        "    was = list(csv.DictReader(open(path, encoding='utf-8', newline='')))\n"
        "    now = list(csv.DictReader(open('out/' + name, encoding='utf-8', newline='')))\n"
        "    if name == 'measures.csv':\n"
        "        key = lambda row: (row['performer'], row['taken_on'])\n"
        "        was.sort(key=key), now.sort(key=key)\n"
        "    now = [{column: row[column] for column in was[0]} for row in now]\n"
        "    was = [as_written(row) for row in was]\n"
        "    assert was == now, (name, [pair for pair in zip(was, now) if pair[0] != pair[1]][:3])\n"
        "print('the same')\n");
    ck_assert_str_eq(bk_shell("python3 job.py"), "the same");
}
END_TEST

START_TEST(lists_and_keys_are_written_as_a_person_would)
{
    show_import();
    bk_program_must(bodkin("export", bk_test_path("out")), 0);
    expect_words(bk_test_read(path_in("out", "steps.csv"), NULL), ",sew;1B-1/press,");
    expect_words(bk_test_read(path_in("out", "steps.csv"), NULL),
                 "\r\n1A-1,sew,body seams,machine,120,,,cut,");
    expect_words(bk_test_read(path_in("out", "pieces.csv"), NULL),
                 "\r\n1A-1,1A;1B,Bodice,make,,,,,,12.50,,,\r\n");
    expect_words(bk_test_read(path_in("out", "roles.csv"), NULL),
                 "\r\nThe Miller,Ines Varga,Tomas Lind,\r\n");
    expect_words(bk_test_read(path_in("out", "performers.csv"), NULL),
                 "performer,contact,measures_good_for,note\r\nInes Varga,ines@stage.example,,no wool\r\n"
                 "Tomas Lind,,,\r\n");
}
END_TEST

START_TEST(texts_that_a_spreadsheet_would_trip_over_come_back)
{
    sheets_put("show");
    sheet_write("show", "performers.csv",
                "performer,contact,note\nInes Varga,'@ines,\"says \"\"no\"\" to wool,\nand to silk\"\n"
                "Tomas Lind,'+44 20,'=SUM(A1:A9)\n\"Bo \xc3\x85s, the elder\",,''=quoted'\n");
    bk_program_must(bodkin("import", bk_test_path("show")), 0);
    ck_assert_str_eq(bk_ask("SELECT contact FROM performer_contact ORDER BY 1"), "+44 20\n@ines");
    ck_assert_str_eq(bk_ask("SELECT note FROM performer ORDER BY id"),
                     "says \"no\" to wool,\nand to silk\n=SUM(A1:A9)\n'=quoted'");
    bk_program_must(bodkin("export", bk_test_path("once")), 0);
    expect_words(bk_test_read(path_in("once", "performers.csv"), NULL), ",'=SUM(A1:A9)\r\n");
    carry_over("once", "twice");
    ck_assert_str_eq(bk_shell("diff -r once twice"), "");
}
END_TEST

START_TEST(money_of_another_country_keeps_its_currency)
{
    sheets_put("show");
    sheet_change("show", "pieces.csv", "Cloak,stock,", "Cloak,hire,44.00 EUR");
    sheet_change("show", "orders.csv", "26.70", "5200 JPY");
    bk_program_must(bodkin("import", bk_test_path("show")), 0);
    bk_program_must(bodkin("export", bk_test_path("once")), 0);
    expect_words(bk_test_read(path_in("once", "pieces.csv"), NULL), ",44.00 EUR,");
    expect_words(bk_test_read(path_in("once", "pieces.csv"), NULL), ",12.50,");
    expect_words(bk_test_read(path_in("once", "orders.csv"), NULL), ",5200 JPY\r\n");
    carry_over("once", "twice");
    ck_assert_str_eq(bk_shell("diff -r once twice"), "");
}
END_TEST

START_TEST(a_production_of_little_more_than_a_name_is_exported_as_little)
{
    sheet_write("bare", "production.csv", "production,opens\nBare Boards,2027-05-01\n");
    bk_program_must(bodkin("import", bk_test_path("bare")), 0);
    bk_program_must(bodkin("export", bk_test_path("out")), 0);
    ck_assert_str_eq(
        bk_test_read(path_in("out", "production.csv"), NULL),
        "production,opens,currency,unit,measures_good_for,sheets\r\nBare Boards,2027-05-01,,,,1\r\n");
    ck_assert_str_eq(bk_shell("cat out/*.csv | wc -l"), "19");
}
END_TEST

// ------------------------------------------------------------------------------------------------ the folder

START_TEST(the_folder_and_its_files_are_their_owners_alone)
{
    show_import();
    mode_t before = umask(0);
    bk_program_must(bodkin("export", bk_test_path("out")), 0);
    umask(before);
    ck_assert_str_eq(bk_shell("stat -c %a out; stat -c %a out/*.csv | sort -u"), "700\n600");
    ck_assert_str_eq(bk_shell("ls -A out | wc -l"), "18");
}
END_TEST

START_TEST(sheets_that_are_there_are_replaced_only_when_it_is_asked_for)
{
    show_import();
    bk_shell("mkdir out && echo mine >out/roles.csv && echo kept >out/letter.txt");
    bk_program_end end = bk_program_must(bodkin("export", bk_test_path("out")), 1);
    expect_words(end.trouble, "holds sheets already (roles.csv); ");
    expect_words(end.trouble, "--replace");
    ck_assert_str_eq(bk_shell("cat out/roles.csv; ls out"), "mine\nletter.txt\nroles.csv");
    bk_program_must(bodkin("export", bk_test_path("out"), "--replace"), 0);
    ck_assert_str_eq(bk_shell("cat out/letter.txt; head -1 out/roles.csv; ls out | wc -l"),
                     "kept\nrole,performer,cover,note\r\n19");
}
END_TEST

START_TEST(a_full_disk_is_told_and_no_sheet_is_left)
{
    enum { LONG_NOTE = 60000, TOO_LITTLE = 40000 };
    static char note[LONG_NOTE + 1];
    sheets_put("show");
    memset(note, 'x', LONG_NOTE);
    sheet_change("show", "performers.csv", "no wool", note);
    bk_program_must(bodkin("import", bk_test_path("show")), 0);
    bk_program_end end =
        bk_program_must(bodkin_with(OPTIONS(.largest_file = TOO_LITTLE), "export", bk_test_path("out")), 1);
    expect_words(end.trouble, "bodkin: performers.csv could not be written in ");
    ck_assert_str_eq(end.output, "");
    ck_assert_str_eq(bk_shell("ls"), "show\nworkroom.db");
}
END_TEST

START_TEST(the_production_that_is_meant_can_be_named)
{
    show_import();
    bk_program_must(bodkin("import", demo), 0);
    bk_program_must(bodkin("export", bk_test_path("out"), "--production", "The Salt Road"), 0);
    expect_words(bk_test_read(path_in("out", "production.csv"), NULL), "\r\nThe Salt Road,");
    expect_no_words(bk_test_read(path_in("out", "performers.csv"), NULL), "company.example");
    expect_no_words(bk_test_read(path_in("out", "measures.csv"), NULL), "2027-01-16");
    expect_words(bk_test_read(path_in("out", "materials.csv"), NULL), "calico for toiles");
    bk_program_must(bodkin("export", bk_test_path("other"), "--production", "The Sugar Road"), 1);
    ck_assert_str_eq(bk_shell("ls"), "out\nshow\nworkroom.db");
}
END_TEST

BK_TEST_MAIN("export", the_demo_exported_and_imported_and_exported_is_the_same_to_the_byte,
             what_is_exported_is_what_was_written_in_the_sheets, lists_and_keys_are_written_as_a_person_would,
             texts_that_a_spreadsheet_would_trip_over_come_back, money_of_another_country_keeps_its_currency,
             a_production_of_little_more_than_a_name_is_exported_as_little,
             the_folder_and_its_files_are_their_owners_alone,
             sheets_that_are_there_are_replaced_only_when_it_is_asked_for,
             a_full_disk_is_told_and_no_sheet_is_left, the_production_that_is_meant_can_be_named)
