// The rules named are those of RFC 4180, section 2. Python's csv module, written by others from the same rules, reads what is
// written here and writes what is read here.

#include "bodkin/sheet/csv.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/testing.h"

/// Cells of one file: `|` stands between them and `/` behind each record; faulty cells are `!` and the fault's number.
static char *shown(const char *bytes, size_t length)
{
    static char out[4096];
    bk_buffer text = {0};
    bk_csv_reader *reader = bk_csv_reader_new(bytes, length);
    bk_csv_record record;
    while (bk_csv_next(reader, &record)) {
        for (size_t i = 0; i < record.count; i++) {
            const bk_csv_cell *cell = &record.cells[i];
            ck_assert_uint_eq(strlen(cell->text), cell->length);
            bk_buffer_text(&text, i == 0 ? "" : "|");
            if (cell->fault != BK_CSV_OK)
                bk_buffer_print(&text, "!%d", cell->fault);
            bk_buffer_text(&text, cell->text);
        }
        bk_buffer_char(&text, '/');
    }
    ck_assert_uint_eq(bk_csv_position(reader), length);
    bk_csv_reader_free(reader);
    snprintf(out, sizeof out, "%s", text.bytes == NULL ? "" : text.bytes);
    bk_buffer_free(&text);
    return out;
}

static void expect(const char *file, const char *cells)
{
    ck_assert_str_eq(shown(file, strlen(file)), cells);
}

START_TEST(each_record_is_a_line_that_ends_in_cr_and_lf)
{
    expect("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "aaa|bbb|ccc/zzz|yyy|xxx/"); // rule 1, its own example
}
END_TEST

START_TEST(the_last_record_may_lack_its_line_end)
{
    expect("aaa,bbb,ccc\r\nzzz,yyy,xxx", "aaa|bbb|ccc/zzz|yyy|xxx/"); // rule 2, its own example
    expect("a,", "a|/");
    expect("a\r", "a/");
}
END_TEST

START_TEST(the_header_is_a_record_like_any_other)
{
    expect("field_name,field_name\r\naaa,bbb\r\n", "field_name|field_name/aaa|bbb/"); // rule 3
}
END_TEST

START_TEST(spaces_belong_to_the_cell)
{
    expect(" aaa , b b,\t\r\n", " aaa | b b|\t/"); // rule 4
}
END_TEST

START_TEST(cells_may_stand_in_quotes_or_not)
{
    expect("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|bbb|ccc/zzz|yyy|xxx/"); // rule 5, its own example
    expect("\"\",\"\"\r\n", "|/");
}
END_TEST

START_TEST(line_ends_quotes_and_commas_stand_in_quotes)
{
    expect("\"aaa\",\"b\r\nbb\",\"c,c\"\r\nzzz",
           "aaa|b\r\nbb|c,c/zzz/"); // rule 6, its own example and a comma
}
END_TEST

START_TEST(a_quote_within_quotes_is_doubled)
{
    expect("\"aaa\",\"b\"\"bb\",\"\"\"\"\r\n", "aaa|b\"bb|\"/"); // rule 7, its own example and a lone quote
}
END_TEST

START_TEST(lf_alone_ends_a_line_as_well)
{
    expect("a,b\nc,d\n", "a|b/c|d/");
}
END_TEST

START_TEST(a_byte_order_mark_is_no_part_of_the_first_cell)
{
    expect("\xEF\xBB\xBF"
           "a,b\r\n",
           "a|b/");
    expect("\xEF\xBB\xBF", "");
    expect("\xEF\xBB\xBF\"a,b\"\r\n", "a,b/");
}
END_TEST

START_TEST(empty_lines_are_passed_over)
{
    expect("\r\n\na,b\r\n\r\n\n\nc,d\r\n\r\n", "a|b/c|d/");
    expect("", "");
    expect("\r\n\r\n", "");
    expect("\r", "");
    expect("\"\"\r\n", "/"); // a cell stands there, though an empty one
}
END_TEST

START_TEST(a_cr_within_a_line_is_a_character_like_any_other)
{
    expect("a\rb,c\r\n\rd\n", "a\rb|c/\rd/");
}
END_TEST

START_TEST(a_record_knows_the_line_on_which_it_begins)
{
    const char *file = "\xEF\xBB\xBF\na,\"b\nb\r\nb\"\n\n\"c\n\"\nd";
    const int lines[] = {2, 6, 8};
    bk_csv_reader *reader = bk_csv_reader_new(file, strlen(file));
    bk_csv_record record;
    for (size_t i = 0; i < 3; i++) {
        ck_assert(bk_csv_next(reader, &record));
        ck_assert_int_eq(record.line, lines[i]);
    }
    ck_assert(!bk_csv_next(reader, &record));
    ck_assert(!bk_csv_next(reader, &record));
    bk_csv_reader_free(reader);
}
END_TEST

START_TEST(a_quote_that_is_never_closed_ends_the_reading)
{
    expect("a,b\r\nc,\"d\r\ne,f\r\n", "a|b/c|!1/");
    expect("\"", "!1/");
    expect("a,\"\"\"", "a|!1/");
}
END_TEST

START_TEST(what_follows_a_closing_quote_is_a_fault_of_that_cell_only)
{
    expect("\"a\"b,c\r\nd\r\n", "!2|c/d/");
    expect("\"a\" ,c\n", "!2|c/");
    expect("\"a\"\rb,c\n", "!2|c/");
}
END_TEST

START_TEST(a_quote_inside_a_bare_cell_is_a_fault_of_that_cell_only)
{
    expect("2\" hem,c\r\nd\r\n", "!3|c/d/");
    expect(" \"a\",c\r\n", "!3|c/");
}
END_TEST

START_TEST(a_nul_byte_is_a_fault_of_its_cell_only)
{
    static const char file[] = "a,b\0b,c\nd,\"\0\"\n";
    ck_assert_str_eq(shown(file, sizeof file - 1), "a|!4|c/d|!4/");
}
END_TEST

START_TEST(bytes_that_are_no_utf_8_are_a_fault_of_their_cell_only)
{
    static const char file[] = "Zo\xEB,Zoë,\"\xC3\"\n";
    ck_assert_str_eq(shown(file, sizeof file - 1), "!5|Zoë|!5/");
    bk_csv_reader *reader = bk_csv_reader_new(file, sizeof file - 1);
    bk_csv_record record;
    ck_assert(bk_csv_next(reader, &record));
    ck_assert_uint_eq(record.cells[0].byte, 0xEB);
    ck_assert_uint_eq(record.cells[2].byte, 0xC3);
    bk_csv_reader_free(reader);
}
END_TEST

/// One cell of `length` times `fill`, quoted or not, between two others.
static void expect_large(size_t length, char fill, bool quoted, const char *cells)
{
    bk_buffer file = {0};
    bk_buffer_text(&file, quoted ? "a,\"" : "a,");
    for (size_t i = 0; i < length; i++)
        bk_buffer_char(&file, fill);
    bk_buffer_text(&file, quoted ? "\",c\n" : ",c\n");
    bk_csv_reader *reader = bk_csv_reader_new(file.bytes, file.length);
    bk_csv_record record;
    ck_assert(bk_csv_next(reader, &record));
    ck_assert_uint_eq(record.count, 3);
    ck_assert_int_eq(record.cells[1].fault, cells[0] == '!' ? BK_CSV_LARGE : BK_CSV_OK);
    ck_assert_uint_eq(record.cells[1].length, cells[0] == '!' ? 0 : length);
    ck_assert_str_eq(record.cells[2].text, "c");
    bk_csv_reader_free(reader);
    bk_buffer_free(&file);
}

START_TEST(a_cell_of_65536_bytes_is_read_and_one_of_more_is_a_fault)
{
    for (int quoted = 0; quoted < 2; quoted++) {
        expect_large(BK_CSV_CELL_MOST, 'x', quoted == 1, "");
        expect_large(BK_CSV_CELL_MOST + 1, 'x', quoted == 1, "!");
        expect_large(1000000, 'x', quoted == 1, "!");
    }
    expect_large(1000000, '\n', true, "!");
}
END_TEST

START_TEST(cells_beyond_the_most_of_a_record_are_passed_over)
{
    bk_buffer file = {0};
    for (int i = 0; i < 2 * BK_CSV_CELLS_MOST; i++)
        bk_buffer_text(&file, "x,");
    bk_buffer_text(&file, "x\ny");
    bk_csv_reader *reader = bk_csv_reader_new(file.bytes, file.length);
    bk_csv_record record;
    ck_assert(bk_csv_next(reader, &record));
    ck_assert_uint_eq(record.count, BK_CSV_CELLS_MOST);
    ck_assert_str_eq(record.cells[BK_CSV_CELLS_MOST - 1].text, "x");
    ck_assert(bk_csv_next(reader, &record));
    ck_assert_int_eq(record.line, 2);
    ck_assert_str_eq(record.cells[0].text, "y");
    bk_csv_reader_free(reader);
    bk_buffer_free(&file);
}
END_TEST

// ---------------------------------------------------------------------------------------------------------- writing

static void expect_written(const char *const *cells, bool guard, const char *line)
{
    bk_buffer out = {0};
    for (size_t i = 0; cells[i] != NULL; i++)
        bk_csv_write_cell(&out, cells[i], i == 0, guard);
    bk_csv_write_end(&out);
    ck_assert_str_eq(out.bytes, line);
    bk_buffer_free(&out);
}

#define CELLS(...) ((const char *const[]){__VA_ARGS__, NULL})

START_TEST(only_cells_that_need_them_are_written_in_quotes)
{
    expect_written(CELLS("a", "", "b b", " c "), false, "a,,b b, c \r\n"); // rules 1, 4
    expect_written(CELLS("a,b", "c\r\nd", "e\rf", "g\nh"), false,
                   "\"a,b\",\"c\r\nd\",\"e\rf\",\"g\nh\"\r\n");                  // rule 6
    expect_written(CELLS("2\" hem", "\""), false, "\"2\"\" hem\",\"\"\"\"\r\n"); // rule 7
}
END_TEST

START_TEST(a_record_of_one_empty_cell_is_not_written_as_an_empty_line)
{
    expect_written(CELLS(""), false, "\"\"\r\n");
}
END_TEST

START_TEST(an_unknown_text_is_written_as_an_empty_cell)
{
    bk_buffer out = {0};
    bk_csv_write_cell(&out, "a", true, true);
    bk_csv_write_cell(&out, NULL, false, true);
    ck_assert_str_eq(out.bytes, "a,");
    bk_buffer_free(&out);
}
END_TEST

START_TEST(text_that_looks_like_a_formula_is_guarded)
{
    expect_written(CELLS("=1+1", "+44 20", "-x", "@me", "'=1", "''@"), true,
                   "'=1+1,'+44 20,'-x,'@me,''=1,'''@\r\n");
    expect_written(CELLS("=1,2"), true, "\"'=1,2\"\r\n");
    expect_written(CELLS("'tis", "a=b", "'"), true, "'tis,a=b,'\r\n");
    expect_written(CELLS("-3", "=1"), false, "-3,=1\r\n");
}
END_TEST

START_TEST(the_guard_is_taken_off_again)
{
    static const char *const texts[] = {"=1+1", "+44", "-x", "@me", "'=1", "''@", "'tis", "'", "", "x", "''"};
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        bk_buffer out = {0};
        bk_csv_write_cell(&out, texts[i], false, true);
        ck_assert_str_eq(bk_csv_unguard(out.bytes + 1), texts[i]);
        bk_buffer_free(&out);
    }
    ck_assert_str_eq(bk_csv_unguard("'tis"), "'tis");
    ck_assert_str_eq(bk_csv_unguard("=1"), "=1");
}
END_TEST

// ----------------------------------------------------------------------------------------------- an independent reader

/// Texts that are hard on quoting, in turn.
static const char *const hard[] = {"",           "a",    "\"",   ",",        "\r\n",     "\n",  "\r",
                                   "a,b",        "\"\"", "'",    " x ",      "Zoë",      "=1",  ",\",\"",
                                   "line\nline", "\t",   "\"a",  "a\"",      "日本",     "'=",  "\"\n",
                                   "\n\"",       ";",    "é,\"", "\r\n\r\n", "a\"\"b\"", "x\r", "\rx"};

enum { HARD = sizeof hard / sizeof *hard, ROWS = 200, COLUMNS = 5 };

static const char *hard_cell(int row, int column)
{
    return hard[(row * (column + 3) + column * 7 + row / HARD) % HARD];
}

static void run_python(const char *script)
{
    bk_test_write_text(bk_test_path("job.py"), script);
    bk_buffer command = {0};
    bk_buffer_print(&command, "cd '%s' && python3 job.py", bk_test_folder());
    ck_assert_msg(system(command.bytes) == 0, "python3 did not do its job");
    bk_buffer_free(&command);
}

/// The cells as they should be, each in hexadecimal digits, a line for each record.
static void expected_cells(bk_buffer *out)
{
    for (int row = 0; row < ROWS; row++)
        for (int column = 0; column < COLUMNS; column++) {
            for (const char *byte = hard_cell(row, column); *byte != '\0'; byte++)
                bk_buffer_print(out, "%02x", (unsigned char)*byte);
            bk_buffer_text(out, column + 1 == COLUMNS ? "\n" : " ");
        }
}

START_TEST(pythons_csv_module_reads_what_is_written)
{
    bk_buffer out = {0};
    for (int row = 0; row < ROWS; row++) {
        for (int column = 0; column < COLUMNS; column++)
            bk_csv_write_cell(&out, hard_cell(row, column), column == 0, false);
        bk_csv_write_end(&out);
    }
    bk_test_write(bk_test_path("ours.csv"), out.bytes, out.length);
    bk_buffer_free(&out);
    run_python("import csv\n"
               "rows = list(csv.reader(open('ours.csv', encoding='utf-8', newline=''), strict=True))\n"
               "lines = [' '.join(cell.encode().hex() for cell in row) + '\\n' for row in rows]\n"
               "open('cells', 'w').write(''.join(lines))\n");
    bk_buffer expected = {0};
    expected_cells(&expected);
    ck_assert_str_eq(bk_test_read(bk_test_path("cells"), NULL), expected.bytes);
    bk_buffer_free(&expected);
}
END_TEST

START_TEST(what_pythons_csv_module_writes_is_read)
{
    bk_buffer cells = {0};
    expected_cells(&cells);
    bk_test_write(bk_test_path("cells"), cells.bytes, cells.length);
    run_python(
        "import csv\n"
        "rows = [[bytes.fromhex(cell).decode() for cell in line[:-1].split(' ')] for line in open('cells')]\n"
        "csv.writer(open('theirs.csv', 'w', encoding='utf-8', newline='')).writerows(rows)\n");
    size_t length = 0;
    const char *bytes = bk_test_read(bk_test_path("theirs.csv"), &length);
    bk_csv_reader *reader = bk_csv_reader_new(bytes, length);
    bk_csv_record record;
    for (int row = 0; row < ROWS; row++) {
        ck_assert(bk_csv_next(reader, &record));
        ck_assert_uint_eq(record.count, COLUMNS);
        for (int column = 0; column < COLUMNS; column++)
            ck_assert_str_eq(record.cells[column].text, hard_cell(row, column));
    }
    ck_assert(!bk_csv_next(reader, &record));
    bk_csv_reader_free(reader);
    bk_buffer_free(&cells);
}
END_TEST

BK_TEST_MAIN(
    "csv", each_record_is_a_line_that_ends_in_cr_and_lf, the_last_record_may_lack_its_line_end,
    the_header_is_a_record_like_any_other, spaces_belong_to_the_cell, cells_may_stand_in_quotes_or_not,
    line_ends_quotes_and_commas_stand_in_quotes, a_quote_within_quotes_is_doubled,
    lf_alone_ends_a_line_as_well, a_byte_order_mark_is_no_part_of_the_first_cell, empty_lines_are_passed_over,
    a_cr_within_a_line_is_a_character_like_any_other, a_record_knows_the_line_on_which_it_begins,
    a_quote_that_is_never_closed_ends_the_reading, what_follows_a_closing_quote_is_a_fault_of_that_cell_only,
    a_quote_inside_a_bare_cell_is_a_fault_of_that_cell_only, a_nul_byte_is_a_fault_of_its_cell_only,
    bytes_that_are_no_utf_8_are_a_fault_of_their_cell_only,
    a_cell_of_65536_bytes_is_read_and_one_of_more_is_a_fault,
    cells_beyond_the_most_of_a_record_are_passed_over, only_cells_that_need_them_are_written_in_quotes,
    a_record_of_one_empty_cell_is_not_written_as_an_empty_line, an_unknown_text_is_written_as_an_empty_cell,
    text_that_looks_like_a_formula_is_guarded, the_guard_is_taken_off_again,
    pythons_csv_module_reads_what_is_written, what_pythons_csv_module_writes_is_read)
