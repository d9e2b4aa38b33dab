// What a director and a volunteer can do on the command line, and that nobody's measures or contacts are told
// to anyone.

#include <stdio.h>
#include <string.h>

#include "cmd/sheets.h"

static const char *const others[] = {"director", "volunteer"};

START_TEST(a_director_and_a_volunteer_see_the_same_rail_as_the_maker)
{
    show_import();
    const char *text = bodkin("rail").output;
    const char *json = bodkin("rail", "--json").output;
    for (size_t i = 0; i < sizeof others / sizeof *others; i++) {
        ck_assert_str_eq(bk_program_must(bodkin("rail", "--as", others[i]), 0).output, text);
        ck_assert_str_eq(bk_program_must(bodkin("--as", others[i], "rail", "--json"), 0).output, json);
    }
}
END_TEST

START_TEST(only_the_maker_imports_exports_checks_and_makes_backups)
{
    show_import();
    bk_shell("cp workroom.db before");
    sheet_change("show", "production.csv", "Salt", "Sugar");
    for (size_t i = 0; i < sizeof others / sizeof *others; i++) {
        const char *as = others[i];
        expect_words(bk_program_must(bodkin("import", bk_test_path("show"), "--as", as), 1).trouble,
                     "Only the maker imports; leave out --as.");
        expect_words(bk_program_must(bodkin("export", bk_test_path("out"), "--as", as), 1).trouble,
                     "Only the maker exports; leave out --as.");
        expect_words(bk_program_must(bodkin("backup", bk_test_path("copy.db"), "--as", as), 1).trouble,
                     "Only the maker makes backups; leave out --as.");
        expect_words(bk_program_must(bodkin("check", "--as", as), 1).trouble, "maker alone");
    }
    ck_assert_str_eq(bk_shell("ls"), "before\nshow\nworkroom.db");
    bk_shell("cmp workroom.db before");
}
END_TEST

START_TEST(a_director_makes_no_store)
{
    sheets_put("show");
    bk_program_must(bodkin("import", bk_test_path("show"), "--as", "director"), 1);
    bk_program_must(bodkin("rail", "--as", "director"), 3);
    ck_assert_str_eq(bk_shell("ls"), "show");
}
END_TEST

// ------------------------------------------------------------------------------ nothing private is ever told

/// The measures of the show as people and as the store write them, and its contacts.
static const char *const secrets[] = {"71.3",  "713000", "98.6", "986000", "72.4", "724000",
                                      "28.07", "38.82",  "28.5", "@stage", "@road"};

static void expect_discreet(bk_program_end end)
{
    for (size_t i = 0; i < sizeof secrets / sizeof *secrets; i++) {
        expect_no_words(end.output, secrets[i]);
        expect_no_words(end.trouble, secrets[i]);
    }
}

START_TEST(no_import_tells_a_measure_or_a_contact)
{
    sheets_put("show");
    expect_discreet(bk_program_must(bodkin("import", bk_test_path("show")), 0));
    expect_discreet(bk_program_must(bodkin("import", bk_test_path("show")), 1));
    sheet_change("show", "performers.csv", "ines@stage.example", "ines@road.example");
    sheet_change("show", "measures.csv", "71.3 cm", "72.4 cm");
    bk_program_end end = bk_program_must(bodkin("import", bk_test_path("show"), "--replace"), 0);
    expect_words(end.output, "contact: replaced");
    expect_words(end.output, "waist girth: value: replaced");
    expect_discreet(end);
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook WHERE sentence LIKE '%72%' OR sentence LIKE '%@%'"),
                     "0");
}
END_TEST

START_TEST(no_fault_in_other_cells_tells_a_measure_or_a_contact)
{
    static const struct {
        const char *file, *from, *to;
    } faults[] = {
        {"measures.csv", "Ines Varga,2027-02-03,waist", "Inez Varga,2027-02-03,waist"},
        {"measures.csv", "2027-02-03,hip girth", "2027-02-03,waist girth"},
        {"measures.csv", "2027-02-03,hip girth", "2027-02-30,hip girth"},
        {"measures.csv", "98.6 cm,,", "98.6 cm,"},
        {"performers.csv", "no wool", "no wool,"},
        {"performers.csv", "Ines Varga", "Tomas Lind"},
    };
    for (size_t i = 0; i < sizeof faults / sizeof *faults; i++) {
        sheets_put("show");
        sheet_change("show", faults[i].file, faults[i].from, faults[i].to);
        expect_discreet(bk_program_must(bodkin("import", bk_test_path("show")), 1));
    }
}
END_TEST

START_TEST(no_other_command_tells_a_measure_or_a_contact)
{
    show_import();
    sheet_change("show", "measures.csv", "waist girth,71.3 cm", "waist girth,72.4 cm");
    bk_program_must(bodkin("import", bk_test_path("show"), "--replace"), 0);
    expect_discreet(bodkin("rail"));
    expect_discreet(bodkin("rail", "--json"));
    expect_discreet(bodkin("rail", "--as", "director"));
    expect_discreet(bodkin("export", bk_test_path("out")));
    expect_discreet(bodkin("export", bk_test_path("out")));
    expect_discreet(bodkin("backup", bk_test_path("copy.db")));
    bk_ask("PRAGMA foreign_keys = OFF; DELETE FROM performer; UPDATE measure SET name_id = 99 WHERE value "
           "= 986000");
    expect_discreet(bk_program_must(bodkin("check"), 1));
    expect_discreet(bodkin("rail"));
}
END_TEST

BK_TEST_MAIN("private", a_director_and_a_volunteer_see_the_same_rail_as_the_maker,
             only_the_maker_imports_exports_checks_and_makes_backups, a_director_makes_no_store,
             no_import_tells_a_measure_or_a_contact, no_fault_in_other_cells_tells_a_measure_or_a_contact,
             no_other_command_tells_a_measure_or_a_contact)
