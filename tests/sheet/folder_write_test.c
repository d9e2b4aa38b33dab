// Python's csv module, written by others from RFC 4180, reads what is written here.

#include <dirent.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/csv.h"
#include "sheet/good_sheets.h"
#include "support/testing.h"

static const char *in_folder(const char *folder, const char *file)
{
    static char name[100];
    snprintf(name, sizeof name, "%s/%s", folder, file);
    return bk_test_path(name);
}

/// Writes the folder `from`, as it is read, into `to`, both in the test's folder.
static void copy_folder(const char *from, const char *to, bool over)
{
    reading read = reading_of(from, NULL);
    ck_assert_msg(read.status == BK_OK, "%s", read.error.text);
    bk_error error = {0};
    bk_status status = bk_folder_write(bk_test_path(to), read.folder, over, NULL, &error);
    ck_assert_msg(status == BK_OK, "%s", error.text);
    reading_free(&read);
}

static void expect_same(const char *left, const char *right)
{
    for (size_t i = 0; i < BK_SHEETS; i++) {
        size_t left_length = 0, right_length = 0;
        const char *left_bytes = bk_test_read(in_folder(left, bk_sheets[i].file), &left_length);
        const char *right_bytes = bk_test_read(in_folder(right, bk_sheets[i].file), &right_length);
        ck_assert_str_eq(left_bytes, right_bytes);
        ck_assert_uint_eq(left_length, right_length);
    }
}

START_TEST(what_is_written_is_what_was_read_with_cr_and_lf)
{
    good_sheets_put();
    sheet_change("measures.csv", "16 3/8 in", "41.5925 cm"); // the production is in centimetres
    copy_folder(bk_test_folder(), "out", false);
    for (size_t i = 0; i < BK_SHEETS; i++) {
        bk_buffer expected = {0};
        for (const char *byte = bk_test_read(bk_test_path(bk_sheets[i].file), NULL); *byte != '\0'; byte++)
            bk_buffer_add(&expected, *byte == '\n' ? "\r\n" : byte, *byte == '\n' ? 2 : 1);
        ck_assert_str_eq(bk_test_read(in_folder("out", bk_sheets[i].file), NULL), expected.bytes);
        bk_buffer_free(&expected);
    }
}
END_TEST

START_TEST(written_and_read_and_written_again_are_the_same_bytes)
{
    good_sheets_put();
    sheet_change("production.csv", "cm", "in");
    sheet_change("roles.csv", "dances in act two", "\"a \"\"quoted\"\" word, and\r\na line end\"");
    sheet_change("costumes.csv", "wet in the last scene", "'=wet+'");
    sheet_change("steps.csv", "0.5", "0.333333");
    sheet_change("fittings.csv", "let out the sides", "'-");
    copy_folder(bk_test_folder(), "first", false);
    copy_folder(bk_test_path("first"), "second", false);
    expect_same("first", "second");
    ck_assert_ptr_nonnull(strstr(bk_test_read(in_folder("first", "measures.csv"), NULL), "16 3/8 in"));
    ck_assert_ptr_nonnull(strstr(bk_test_read(in_folder("first", "steps.csv"), NULL), "0.333333"));
    ck_assert_ptr_nonnull(strstr(bk_test_read(in_folder("first", "costumes.csv"), NULL), ",'=wet+'\r\n"));
    ck_assert_ptr_nonnull(strstr(bk_test_read(in_folder("first", "materials.csv"), NULL), ",-0.5,"));
}
END_TEST

START_TEST(a_sheet_without_rows_is_written_with_its_first_line)
{
    sheet_put("production.csv", "production,opens\nThe Winter Fair,2027-04-16\n");
    copy_folder(bk_test_folder(), "out", false);
    ck_assert_str_eq(
        bk_test_read(in_folder("out", "production.csv"), NULL),
        "production,opens,currency,unit,measures_good_for,sheets\r\nThe Winter Fair,2027-04-16,,,,1\r\n");
    ck_assert_str_eq(bk_test_read(in_folder("out", "needs.csv"), NULL), "piece,step,material,quantity\r\n");
}
END_TEST

static void expect_mode(const char *path, unsigned mode)
{
    struct stat status;
    ck_assert_int_eq(stat(path, &status), 0);
    ck_assert_uint_eq(status.st_mode & 0777U, mode);
}

START_TEST(only_the_owner_can_read_what_is_written)
{
    good_sheets_put();
    copy_folder(bk_test_folder(), "out", false);
    expect_mode(bk_test_path("out"), 0700);
    for (size_t i = 0; i < BK_SHEETS; i++)
        expect_mode(in_folder("out", bk_sheets[i].file), 0600);
}
END_TEST

static void put_good_sheets_here(void)
{
    good_sheets_put();
    ck_assert_int_eq(chdir(bk_test_folder()), 0);
}

/// Names in a folder but for `.` and `..`.
static int count_files(const char *path)
{
    int count = -2;
    DIR *folder = opendir(path);
    ck_assert_ptr_nonnull(folder);
    while (readdir(folder) != NULL)
        count++;
    closedir(folder);
    return count;
}

static void expect_refused(const char *to, bool over, const char *sentence)
{
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_int_eq(read.status, BK_OK);
    bk_error error = {0};
    ck_assert_int_eq(bk_folder_write(to, read.folder, over, NULL, &error), BK_REFUSED);
    ck_assert_str_eq(error.text, sentence);
    reading_free(&read);
}

START_TEST(a_folder_that_holds_sheets_is_refused_unless_they_may_be_replaced)
{
    put_good_sheets_here();
    ck_assert_int_eq(mkdir(bk_test_path("out"), 0755), 0);
    bk_test_write_text(in_folder("out", "notes.txt"), "kept");
    bk_test_write_text(in_folder("out", "roles.csv"), "old");
    expect_refused(
        "out", false,
        "out holds sheets already (roles.csv); name another folder, or replace them with --replace");
    ck_assert_int_eq(count_files(bk_test_path("out")), 2);
    ck_assert_str_eq(bk_test_read(in_folder("out", "roles.csv"), NULL), "old");
    copy_folder(bk_test_folder(), "out", true);
    ck_assert_int_eq(count_files(bk_test_path("out")), BK_SHEETS + 1);
    ck_assert_str_eq(bk_test_read(in_folder("out", "notes.txt"), NULL), "kept");
    copy_folder(bk_test_folder(), "new", false);
    expect_same("out", "new");
}
END_TEST

START_TEST(a_folder_with_other_files_only_is_written_to)
{
    good_sheets_put();
    ck_assert_int_eq(mkdir(bk_test_path("out"), 0755), 0);
    bk_test_write_text(in_folder("out", "notes.txt"), "kept");
    bk_test_write_text(in_folder("out", ".hidden.csv"), "kept");
    copy_folder(bk_test_folder(), "out", false);
    ck_assert_int_eq(count_files(bk_test_path("out")), BK_SHEETS + 2);
}
END_TEST

START_TEST(a_place_that_is_no_folder_is_refused)
{
    put_good_sheets_here();
    bk_test_write_text(bk_test_path("notes.txt"), "kept");
    expect_refused("notes.txt", false, "notes.txt is not a folder; name a folder for the sheets");
    expect_refused("no/where", false, "the folder no/where cannot be made: No such file or directory");
}
END_TEST

static void expect_no_hidden_files(const char *path)
{
    DIR *folder = opendir(path);
    ck_assert_ptr_nonnull(folder);
    for (const struct dirent *entry = readdir(folder); entry != NULL; entry = readdir(folder))
        ck_assert(entry->d_name[0] != '.' || strcmp(entry->d_name, ".") == 0 ||
                  strcmp(entry->d_name, "..") == 0);
    closedir(folder);
}

START_TEST(when_a_place_is_taken_by_a_folder_no_sheet_at_all_is_replaced)
{
    put_good_sheets_here();
    ck_assert_int_eq(mkdir(bk_test_path("out"), 0755), 0);
    ck_assert_int_eq(mkdir(in_folder("out", "needs.csv"), 0755), 0);
    bk_test_write_text(in_folder("out", "production.csv"), "old");
    expect_refused("out", true,
                   "needs.csv in out is no file, but a folder, a link or the like; move it away first. "
                   "Nothing was changed.");
    ck_assert_str_eq(bk_test_read(in_folder("out", "production.csv"), NULL), "old");
    ck_assert_int_eq(count_files(bk_test_path("out")), 2);
}
END_TEST

/// Whom the writing tells: the place of needs.csv is taken at the last moment, or it is stopped after `left` times.
typedef struct listener {
    bool takes_place;
    int left;
} listener;

static bool listen(void *self, const char *what, int64_t done, int64_t all)
{
    listener *listening = self;
    ck_assert_int_le(done, all);
    if (listening->takes_place && strcmp(what, "sheets") == 0)
        ck_assert_int_eq(mkdir("out/needs.csv", 0755), 0);
    return listening->left-- > 0;
}

static bk_status write_heard(bool over, listener listening, bk_error *error)
{
    reading read = reading_of(bk_test_folder(), NULL);
    ck_assert_int_eq(read.status, BK_OK);
    bk_progress progress = {listen, &listening};
    bk_status status = bk_folder_write("out", read.folder, over, &progress, error);
    reading_free(&read);
    return status;
}

START_TEST(when_a_later_sheet_cannot_be_put_in_its_place_those_that_are_new_are_named)
{
    bk_error error = {0};
    put_good_sheets_here();
    ck_assert_int_eq(write_heard(false, (listener){true, 1000}, &error), BK_REFUSED);
    ck_assert_str_eq(
        error.text,
        "needs.csv could not be put in its place in out: Is a directory. The sheets there are not "
        "of one export; new are: production.csv, dates.csv, people.csv, away.csv, equipment.csv, "
        "performers.csv, "
        "measures.csv, roles.csv, costumes.csv, pieces.csv, steps.csv, materials.csv.");
    expect_no_hidden_files("out");
}
END_TEST

START_TEST(an_export_that_is_stopped_leaves_nothing_behind_and_replaces_nothing)
{
    int patience = 0;
    bk_error error = {0};
    put_good_sheets_here();
    while (write_heard(false, (listener){false, patience}, &error) != BK_OK) {
        ck_assert_str_eq(error.text, "The export was stopped; nothing was changed.");
        ck_assert_int_ne(access("out", F_OK), 0);
        patience++;
    }
    ck_assert_int_eq(patience, BK_SHEETS + 1);
    bk_test_write_text("out/roles.csv", "old");
    while (patience-- > 0) {
        ck_assert_int_eq(write_heard(true, (listener){false, patience}, &error), BK_REFUSED);
        ck_assert_str_eq(bk_test_read("out/roles.csv", NULL), "old");
        ck_assert_int_eq(count_files("out"), BK_SHEETS);
    }
}
END_TEST

START_TEST(what_a_killed_export_left_hidden_is_cleared_away_and_no_link_is_followed)
{
    put_good_sheets_here();
    ck_assert_int_eq(mkdir("out", 0755), 0);
    bk_test_write_text("kept.txt", "kept");
    bk_test_write_text("out/.measures.csv.new", "half a sheet");
    ck_assert_int_eq(symlink("../kept.txt", "out/.needs.csv.new"), 0);
    copy_folder(bk_test_folder(), "out", false);
    ck_assert_int_eq(count_files("out"), BK_SHEETS);
    expect_no_hidden_files("out");
    expect_mode("out/measures.csv", 0600);
    ck_assert_str_eq(bk_test_read("kept.txt", NULL), "kept");
}
END_TEST

START_TEST(two_exports_into_one_folder_do_not_mix)
{
    put_good_sheets_here();
    ck_assert_int_eq(mkdir("out", 0755), 0);
    int other = open("out", O_RDONLY | O_DIRECTORY);
    ck_assert_int_eq(flock(other, LOCK_EX), 0);
    expect_refused("out", true, "another export is writing into out; wait until it is done");
    close(other);
    copy_folder(bk_test_folder(), "out", true);
}
END_TEST

/// Writes the folder while no file may grow beyond `room` bytes; nothing else may be written meanwhile, not even by Check.
static bk_status write_with_little_room(const char *to, const bk_folder *folder, rlim_t room, bk_error *error)
{
    struct rlimit all;
    signal(SIGXFSZ, SIG_IGN);
    bool limited = getrlimit(RLIMIT_FSIZE, &all) == 0 &&
                   setrlimit(RLIMIT_FSIZE, &(struct rlimit){.rlim_cur = room, .rlim_max = all.rlim_max}) == 0;
    bk_status status = bk_folder_write(to, folder, false, NULL, error);
    limited &= setrlimit(RLIMIT_FSIZE, &all) == 0;
    ck_assert(limited);
    return status;
}

START_TEST(when_a_sheet_cannot_be_written_whole_nothing_is_left_behind)
{
    const rlim_t room = 150; // for the sheets before people.csv
    put_good_sheets_here();
    reading read = reading_of(".", NULL);
    bk_error error = {0};
    ck_assert_int_eq(write_with_little_room("out", read.folder, room, &error), BK_REFUSED);
    ck_assert_str_eq(error.text, "people.csv could not be written in out: File too large");
    ck_assert_int_ne(access("out", F_OK), 0);
    reading_free(&read);
}
END_TEST

START_TEST(pythons_csv_module_reads_every_sheet_as_it_is_read_here)
{
    good_sheets_put();
    sheet_change("roles.csv", "dances in act two", "\"a \"\"quoted\"\" word, and\r\na line end\"");
    copy_folder(bk_test_folder(), "out", false);
    bk_test_write_text(
        bk_test_path("job.py"),
        "import csv, glob, os\n"
        "os.mkdir('again')\n"
        "for path in glob.glob('out/*.csv'):\n"
        "    rows = list(csv.DictReader(open(path, encoding='utf-8', newline=''), strict=True))\n"
        "    header = open(path, encoding='utf-8').readline().strip().split(',')\n"
        "    with open('again/' + os.path.basename(path), 'w', encoding='utf-8', newline='') as out:\n"
        "        writer = csv.DictWriter(out, header)\n"
        "        writer.writeheader()\n"
        "        writer.writerows(rows)\n");
    bk_buffer command = {0};
    bk_buffer_print(&command, "cd '%s' && python3 job.py", bk_test_folder());
    ck_assert_int_eq(system(command.bytes), 0);
    bk_buffer_free(&command);
    expect_same("out", "again");
    copy_folder(bk_test_path("again"), "last", false);
    expect_same("out", "last");
}
END_TEST

BK_TEST_MAIN("folder write", what_is_written_is_what_was_read_with_cr_and_lf,
             written_and_read_and_written_again_are_the_same_bytes,
             a_sheet_without_rows_is_written_with_its_first_line, only_the_owner_can_read_what_is_written,
             a_folder_that_holds_sheets_is_refused_unless_they_may_be_replaced,
             a_folder_with_other_files_only_is_written_to, a_place_that_is_no_folder_is_refused,
             when_a_place_is_taken_by_a_folder_no_sheet_at_all_is_replaced,
             when_a_later_sheet_cannot_be_put_in_its_place_those_that_are_new_are_named,
             an_export_that_is_stopped_leaves_nothing_behind_and_replaces_nothing,
             what_a_killed_export_left_hidden_is_cleared_away_and_no_link_is_followed,
             two_exports_into_one_folder_do_not_mix,
             when_a_sheet_cannot_be_written_whole_nothing_is_left_behind,
             pythons_csv_module_reads_every_sheet_as_it_is_read_here)
