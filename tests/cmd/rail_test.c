// `bodkin rail`, for people and for programs.

#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <wchar.h>

#include "cmd/sheets.h"

enum { MOST_COLUMNS = 80, PATH_ROOM = 512 };

static const char demo[] = BK_TEST_SOURCE_DIR "/demo/the-heron-toll";

// ------------------------------------------------------------------------------------------------ for people

/// Columns of a line as the C library counts them, up to its end.
static int columns_of(const char *line, const char **end)
{
    int columns = 0;
    mbstate_t state = {0};
    wchar_t letter = 0;
    while (*line != '\n' && *line != '\0') {
        size_t bytes = mbrtowc(&letter, line, MB_CUR_MAX, &state);
        ck_assert_msg(bytes > 0 && bytes <= MB_CUR_MAX, "no character: %s", line);
        int width = wcwidth(letter);
        ck_assert_msg(width >= 0, "a character that a terminal would obey: %s", line);
        columns += width;
        line += bytes;
    }
    *end = *line == '\n' ? line + 1 : line;
    return columns;
}

static void expect_narrow(const char *text)
{
    ck_assert_ptr_nonnull(setlocale(LC_ALL, "C.UTF-8"));
    ck_assert_str_ne(text, "");
    while (*text != '\0') {
        const char *line = text;
        int columns = columns_of(line, &text);
        ck_assert_msg(columns <= MOST_COLUMNS, "%d columns: %.*s", columns, (int)(text - line), line);
    }
}

START_TEST(the_text_says_what_each_costume_waits_on)
{
    show_import();
    ck_assert_str_eq(bk_program_must(bodkin("rail"), 0).output,
                     "The Salt Road                                      94 days to opening, Fri 4 Jun\n"
                     "Not all can be done with the hands and hours there are: 2 costumes late.\n"
                     "late: 1A, 1B; tight: none; 4 h 10 of work left\n"
                     "3 costumes: 1 waiting, 1 held, 1 unlisted\n"
                     "Waiting on: materials 2, people 1\n"
                     "\n"
                     "No    Costume                 Seam     State     Due        Expected   Chance\n"
                     "1A    Grey working dress      ┃· · · · waiting   Sun 30 May            under 1 %\n"
                     "      never done as things are; Ines Varga, The Miller: wool flannel due Tue 9\n"
                     "      Mar\n"
                     "      1A-1/fit: nobody can fit; give somebody the skill, or ask for help\n"
                     "      (Hands).\n"
                     "1B    Cloak                   ┃· · · · held      Sun 30 May            under 1 %\n"
                     "      never done as things are; Ines Varga, The Miller: nobody to press; wool\n"
                     "      flannel due Tue 9 Mar\n"
                     "      1A-1/fit: nobody can fit; give somebody the skill, or ask for help\n"
                     "      (Hands).\n"
                     "      1B-1/press: nobody can press; give somebody the skill, or ask for help\n"
                     "      (Hands).\n"
                     "2A    Shirt                            unlisted  Sun 30 May\n"
                     "      not cast, The Boy\n");
}
END_TEST

/// The same show with a person who can do all of it, on Mondays from 10 to 13. Reckoned by hand: the cloak is pressed on Mon 8 Mar;
/// the cloth comes on the 9th, so the bodice is cut on Mon 15 Mar (75 min) and sewn from then (105 min) to Mon 22 Mar (15 min), and
/// fitted there (40 min), since it is not sewn when the fitting is booked. Nine Mondays follow until Sun 30 May. Counted back from
/// Mon 24 May, 13:00: the fitting from 12:20, sewing from 10:20, and of the cutting 20 minutes, so that 55 are left for Mon 17 May.
static void import_for_ada(void)
{
    const char *folder = sheets_put("show");
    sheet_change("show", "people.csv", "cut;machine;hand", "cut;machine;hand;press;fit");
    bk_program_must(bodkin("import", folder), 0);
}

START_TEST(with_hands_enough_the_days_are_those_reckoned_by_hand)
{
    import_for_ada();
    const char *text = bk_program_must(bodkin("rail", "--tries", "0"), 0).output;
    expect_words(text, "\nAll is expected done Mon 22 Mar, every costume in time, the closest with "
                       "9\nworking days in hand.\n"
                       "late: none; tight: none; 4 h 10 of work left\n");
    expect_words(
        text, "\n1A    Grey working dress      ┃· · · · waiting   Sun 30 May Mon 22 Mar\n"
              "      in time, 9 days in hand; Ines Varga, The Miller: wool flannel due Tue 9\n      Mar\n");
    const char *json = bk_program_must(bodkin("rail", "--tries", "0", "--json"), 0).output;
    expect_words(json,
                 "\"minutes_left\": 235,\n      \"finish\": \"2027-03-22\",\n      \"days_in_hand\": 9,\n"
                 "      \"chance\": null,\n");
    expect_words(json, "\"step\": \"cut\",\n          \"detail\": \"due 2027-03-09\",\n"
                       "          \"wanted_by\": \"2027-05-17\",\n");
}
END_TEST

START_TEST(with_odds_chance_and_its_error_are_told_in_text_and_in_json)
{
    import_for_ada();
    const char *text = bk_program_must(bodkin("rail", "--tries", "100"), 0).output;
    expect_words(text, "days in hand; over 99 % (give or take 3) that each is ready by its day;\n");
    expect_words(text, " Sun 30 May Mon 22 Mar over 99 %\n");
    const char *json = bk_program_must(bodkin("rail", "--tries", "100", "--json"), 0).output;
    expect_words(json, "\"days_in_hand\": 9,\n      \"chance\": 1.000,\n");
    expect_words(json, "],\n      \"chance_error\": 0.030\n    }");
}
END_TEST

static void expect_same(const char *got, const char *wanted)
{
    ck_assert_msg(strcmp(got, wanted) == 0, "not the same bytes");
}

START_TEST(the_same_store_day_and_seed_give_the_same_bytes)
{
    bk_program_must(bodkin("import", demo), 0);
    const char *first = bk_program_must(bodkin("rail", "--json"), 0).output;
    expect_same(bk_program_must(bodkin("rail", "--json"), 0).output, first);
    expect_same(bk_program_must(bodkin("rail", "--json", "--tries", "20", "--seed", "1"), 0).output, first);
    ck_assert_msg(strcmp(bk_program_must(bodkin("rail", "--json", "--tries", "0"), 0).output, first) != 0,
                  "the same");
    const char *text = bk_program_must(bodkin("rail", "--seed", "3"), 0).output;
    expect_same(bk_program_must(bodkin("--seed", "3", "rail"), 0).output, text);
}
END_TEST

START_TEST(text_and_json_of_the_demo_tell_the_same_costumes_in_the_same_order)
{
    bk_program_must(bodkin("import", demo), 0);
    bk_test_write_text(bk_test_path("rail.txt"), bk_program_must(bodkin("rail"), 0).output);
    bk_test_write_text(bk_test_path("rail.json"), bk_program_must(bodkin("rail", "--json"), 0).output);
    bk_test_write_text(
        bk_test_path("same.py"),
        "import datetime, json, re\n"
        "lines = open('rail.txt', encoding='utf-8').read().split('\\n')\n"
        "lines = [l for l in lines[lines.index(next(l for l in lines if l.startswith('No '))) + 1:] if "
        "re.match('[0-9]', l)]\n"
        "costumes = json.load(open('rail.json', encoding='utf-8'))['costumes']\n"
        "assert [l.split()[0] for l in lines] == [c['costume'] for c in costumes]\n"
        "for line, costume in zip(lines, costumes):\n"
        "    open_steps = costume['steps'] > costume['steps_done']\n"
        "    day = datetime.date.fromisoformat(costume['finish']) if costume['finish'] and open_steps else "
        "None\n"
        "    if day:\n"
        "        assert f'{day:%a} {day.day} {day:%b}' in line, (line, costume)\n"
        "        chance = costume['chance']\n"
        "        words = 'over 99 %' if chance > .99 else 'under 1 %' if chance < .01 else f'{int(chance * "
        "100 + .5)} %'\n"
        "        assert line.endswith(words), (line, costume)\n"
        "hands = [c['days_in_hand'] for c in costumes if c['finish'] and c['steps'] > c['steps_done']]\n"
        "assert hands == sorted(hands) and len(hands) > 10, hands\n"
        "print('the same')\n");
    ck_assert_str_eq(bk_shell("python3 same.py"), "the same");
}
END_TEST

START_TEST(the_text_of_a_whole_show_fits_80_columns_and_holds_nothing_that_a_terminal_obeys)
{
    bk_program_must(bodkin("import", demo), 0);
    expect_narrow(bk_program_must(bodkin("rail"), 0).output);
    expect_narrow(bk_program_must(bodkin("rail", "--today", "2028-03-02"), 0).output);
    expect_narrow(bk_program_must(bodkin("rail", "--today", "1999-12-31"), 0).output);
}
END_TEST

START_TEST(in_a_c_locale_the_text_is_ascii)
{
    bk_program_must(bodkin("import", demo), 0);
    const char *text = bk_program_must(bodkin_with(OPTIONS(.locale = "C"), "rail"), 0).output;
    ck_assert_uint_eq(odd_bytes(text), 0);
    expect_narrow(text);
    expect_words(text, "Maelys Kerouedan, Ottoline Marrow");
    expect_words(text, "- - |. .");
}
END_TEST

static const char *const odd_names[] = {
    "\xe6\xb0\xb4\xe6\xb2\xa2 \xe5\x8d\x83\xe7\xbe\xbd\xe6\xb0\xb4\xe6\xb2\xa2 "
    "\xe5\x8d\x83\xe7\xbe\xbd\xe6\xb0\xb4\xe6\xb2\xa2\xe5\x8d\x83\xe7\xbe\xbd\xe6\xb0\xb4\xe6\xb2\xa2\xe5\x8d"
    "\x83",
    "A coat of a name so long that no line of any rail has ever had the room for it, nor will one have it in "
    "a hundred years",
    "Donaudampfschifffahrtsgesellschaftskapitaensuniformknopflochverzierungsgarnrollenhalteraufbewahrungskast"
    "en",
    "e\xcc\x81\xcc\x81\xcc\x81\xcc\x81\xcc\x81\xcc\x81\xcc\x81 \x1b[2J\xe2\x80\xae gown \xc2\x9b 31m\x7f",
    "\xd7\xa2\xd7\x9e\xd7\xa8\xd7\x9d \xd7\xa4\xd7\xaa\xd7\x99\xd7\x9c\xd7\x90\xd7\x99 cloak",
};

/// A show in which everything that has a name has this one.
static void import_named(const char *name)
{
    char text[2048];
    sheet_write("odd", "production.csv", "production,opens\nOdd Names,2027-03-19\n");
    snprintf(text, sizeof text, "performer\n\"%s\"\n", name);
    sheet_write("odd", "performers.csv", text);
    snprintf(text, sizeof text, "role,performer\n\"%s\",\"%s\"\n", name, name);
    sheet_write("odd", "roles.csv", text);
    snprintf(text, sizeof text, "costume,role,title\n\"%s\",\"%s\",\"%s\"\n", name, name, name);
    sheet_write("odd", "costumes.csv", text);
    snprintf(text, sizeof text, "piece,costumes,title\n\"%s\",\"%s\",\"%s\"\n", name, name, name);
    sheet_write("odd", "pieces.csv", text);
    snprintf(text, sizeof text, "material,unit\n\"%s\",m\n", name);
    sheet_write("odd", "materials.csv", text);
    snprintf(text, sizeof text, "piece,step,title,kind,minutes\n\"%s\",\"%s\",x,cut,10\n", name, name);
    sheet_write("odd", "steps.csv", text);
    snprintf(text, sizeof text, "piece,step,material,quantity\n\"%s\",\"%s\",\"%s\",2.4\n", name, name, name);
    sheet_write("odd", "needs.csv", text);
    bk_program_must(bodkin("import", bk_test_path("odd"), "--replace"), 0);
}

START_TEST(names_of_any_length_and_script_fit_too)
{
    for (size_t i = 0; i < sizeof odd_names / sizeof *odd_names; i++) {
        import_named(odd_names[i]);
        expect_narrow(bk_program_must(bodkin("rail"), 0).output);
        const char *plain = bk_program_must(bodkin_with(OPTIONS(.locale = "C"), "rail"), 0).output;
        ck_assert_uint_eq(odd_bytes(plain), 0);
        expect_narrow(plain);
    }
}
END_TEST

// ---------------------------------------------------------------------------------------------- for programs

static const char json_job[] =
    "import json, sys\n"
    "rail = json.load(open('rail.json', encoding='utf-8'))\n"
    "assert list(rail) == ['production', 'today', 'opens', 'days_left', 'minutes_left', 'counts', "
    "'costumes']\n"
    "assert list(rail['counts']) == ['costumes', 'ready', 'in-work', 'finishing', 'waiting', 'held', "
    "'unlisted',\n"
    "                                'can_go_on', 'waits']\n"
    "ons = ['measures', 'materials', 'fitting', 'hand', 'people', 'out', 'order']\n"
    "assert list(rail['counts']['waits']) == ons\n"
    "wait_keys = ['on', 'piece', 'step', 'detail', 'wanted_by']\n"
    "for costume in rail['costumes']:\n"
    "    assert list(costume) == ['costume', 'role', 'performer', 'title', 'state', 'can_go_on', 'due', "
    "'steps',\n"
    "        'steps_done', 'minutes_left', 'finish', 'days_in_hand', 'chance', 'waits', 'chance_error'], "
    "costume\n"
    "    assert (costume['days_in_hand'] is None) >= (costume['finish'] is None)\n"
    "    assert (costume['chance'] is None) == (costume['chance_error'] is None)\n"
    "    assert costume['chance'] is None or 0 <= costume['chance'] <= 1\n"
    "    assert type(costume['can_go_on']) is bool and type(costume['minutes_left']) is int\n"
    "    for wait in costume['waits']:\n"
    "        more = ['material', 'short'] if wait['on'] == 'materials' else []\n"
    "        assert list(wait) == wait_keys + more, wait\n"
    "        assert (wait['wanted_by'] or '2027-01-01') > '2000' and wait['on'] in ons\n"
    "        assert (wait['step'] is None) == (wait['on'] == 'out'), wait\n"
    "        assert not more or type(wait['short']) in (int, float)\n"
    "counts = rail['counts']\n"
    "assert counts['costumes'] == len(rail['costumes'])\n"
    "for state in list(counts)[1:7]:\n"
    "    assert counts[state] == sum(c['state'] == state for c in rail['costumes']), state\n"
    "assert counts['can_go_on'] == sum(c['can_go_on'] for c in rail['costumes'])\n"
    "for on in ons:\n"
    "    assert counts['waits'][on] == sum(any(w['on'] == on for w in c['waits']) for c in "
    "rail['costumes']), on\n"
    "print('sound')\n";

static void expect_sound_json(void)
{
    bk_program_end end = bk_program_must(bodkin("rail", "--json"), 0);
    bk_test_write(bk_test_path("rail.json"), end.output, end.output_length);
    bk_test_write_text(bk_test_path("job.py"), json_job);
    ck_assert_str_eq(bk_shell("python3 job.py"), "sound");
}

START_TEST(python_reads_the_json_and_finds_exactly_the_keys_in_their_order)
{
    show_import();
    expect_sound_json();
    bk_program_must(bodkin("import", demo), 0);
    expect_sound_json();
}
END_TEST

// Reckoned by hand from the sheets: the cloth comes with the order, nobody in the workroom presses or fits,
// so that no day can be told.
static const char json_head[] =
    "{\n"
    "  \"production\": \"The Salt Road\",\n  \"today\": \"2027-03-02\",\n  \"opens\": \"2027-06-04\",\n"
    "  \"days_left\": 94,\n  \"minutes_left\": 250,\n"
    "  \"counts\": {\n    \"costumes\": 3,\n    \"ready\": 0,\n    \"in-work\": 0,\n    \"finishing\": 0,\n"
    "    \"waiting\": 1,\n    \"held\": 1,\n    \"unlisted\": 1,\n    \"can_go_on\": 0,\n"
    "    \"waits\": {\n      \"measures\": 0,\n      \"materials\": 2,\n      \"fitting\": 0,\n      "
    "\"hand\": 0,\n"
    "      \"people\": 1,\n      \"out\": 0,\n      \"order\": 0\n    }\n  },\n"
    "  \"costumes\": [\n";
static const char json_waiting[] =
    "    {\n"
    "      \"costume\": \"1A\",\n      \"role\": \"The Miller\",\n      \"performer\": \"Ines Varga\",\n"
    "      \"title\": \"Grey working dress\",\n      \"state\": \"waiting\",\n      \"can_go_on\": false,\n"
    "      \"due\": \"2027-05-30\",\n      \"steps\": 3,\n      \"steps_done\": 0,\n      \"minutes_left\": "
    "235,\n"
    "      \"finish\": null,\n      \"days_in_hand\": null,\n      \"chance\": null,\n"
    "      \"waits\": [\n        {\n"
    "          \"on\": \"materials\",\n          \"piece\": \"1A-1\",\n          \"step\": \"cut\",\n"
    "          \"detail\": \"due 2027-03-09\",\n          \"wanted_by\": null,\n"
    "          \"material\": \"wool flannel\",\n          \"short\": 1.4\n        }\n      ],\n"
    "      \"chance_error\": null\n    },\n";
static const char json_people[] =
    "        {\n"
    "          \"on\": \"people\",\n          \"piece\": \"1B-1\",\n          \"step\": \"press\",\n"
    "          \"detail\": \"nobody\",\n          \"wanted_by\": null\n        }\n      ],\n"
    "      \"chance_error\": null\n    },\n";
static const char json_unlisted[] =
    "    {\n"
    "      \"costume\": \"2A\",\n      \"role\": \"The Boy\",\n      \"performer\": null,\n"
    "      \"title\": \"Shirt\",\n      \"state\": \"unlisted\",\n      \"can_go_on\": false,\n"
    "      \"due\": \"2027-05-30\",\n      \"steps\": 0,\n      \"steps_done\": 0,\n      \"minutes_left\": "
    "0,\n"
    "      \"finish\": null,\n      \"days_in_hand\": null,\n      \"chance\": null,\n"
    "      \"waits\": [],\n      \"chance_error\": null\n    }\n  ]\n}\n";

START_TEST(the_json_of_a_small_show_is_this_to_the_byte)
{
    show_import();
    const char *json = bk_program_must(bodkin("rail", "--json", "--tries", "0"), 0).output;
    const char *const parts[] = {json_head, json_waiting, json_people, json_unlisted};
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
        expect_words(json, parts[i]);
    ck_assert_ptr_eq(strstr(json, json_head), json);
    ck_assert_str_eq(strstr(json, json_unlisted), json_unlisted);
}
END_TEST

START_TEST(names_come_out_of_the_json_as_they_went_into_the_sheets)
{
    static const char name[] = "A \"\"quoted\"\" \\ name\twith\x01 a \xe6\xb0\xb4 and \x7f";
    import_named(name);
    expect_sound_json();
    bk_test_write_text(
        bk_test_path("names.py"),
        "import json\n"
        "costume, = json.load(open('rail.json', encoding='utf-8'))['costumes']\n"
        "name = 'A \"quoted\" \\\\ name\\twith\\x01 a \\u6c34 and \\x7f'\n"
        "wait = costume['waits'][-1]\n"
        "for text in (costume['costume'], costume['role'], costume['performer'], costume['title'],\n"
        "             wait['piece'], wait['step'], wait['material']):\n"
        "    assert text == name, text\n"
        "print('the same')\n");
    ck_assert_str_eq(bk_shell("python3 names.py"), "the same");
    const char *plain = bodkin_with(OPTIONS(.locale = "C"), "rail", "--json").output;
    expect_words(plain, "\xe6\xb0\xb4");
}
END_TEST

// ------------------------------------------------------------------------------------------------- which one

START_TEST(the_production_that_is_meant_can_be_named)
{
    show_import();
    bk_program_must(bodkin("import", demo), 0);
    expect_words(bodkin("rail").output, "The Heron Toll  ");
    expect_words(bk_program_must(bodkin("rail", "--production", "The Salt Road"), 0).output,
                 "The Salt Road  ");
    bk_program_end end = bk_program_must(bodkin("rail", "--production", "The Salt Rood"), 1);
    ck_assert_str_eq(end.output, "");
    ck_assert_str_eq(end.trouble,
                     "bodkin: There is no production \"The Salt Rood\" in this workroom; did you mean "
                     "\"The Salt Road\"?\n");
}
END_TEST

START_TEST(a_workroom_without_a_production_says_how_to_bring_one_in)
{
    show_import();
    bk_program_must(bodkin("rail"), 0);
    bk_ask("DELETE FROM production");
    bk_program_end end = bk_program_must(bodkin("rail", "--json"), 1);
    ck_assert_str_eq(end.output, "");
    ck_assert_str_eq(end.trouble,
                     "bodkin: There is no production in this workroom yet; bring one in with: bodkin "
                     "import FOLDER\n");
}
END_TEST

START_TEST(reading_the_rail_changes_nothing)
{
    show_import();
    bk_shell("cp workroom.db before");
    bk_program_must(bodkin("rail"), 0);
    bk_program_must(bodkin("rail", "--json"), 0);
    bk_shell("cmp workroom.db before");
    ck_assert_str_eq(bk_shell("ls"), "before\nshow\nworkroom.db");
}
END_TEST

START_TEST(a_workroom_without_people_says_so_once_and_tells_no_day)
{
    const char *folder = sheets_put("show");
    sheet_remove("show", "people.csv");
    bk_program_must(bodkin("import", folder), 0);
    const char *text = bk_program_must(bodkin("rail"), 0).output;
    expect_words(text, "Fri 4 Jun\nNobody is in the workroom yet, so no day can be told: add who works, and "
                       "when\n(Hands).\nlate: ");
    expect_words(text, "Sun 30 May\n      Ines Varga");
    expect_words(bk_program_must(bodkin("rail", "--json"), 0).output,
                 "\"finish\": null,\n      \"days_in_hand\": null,\n      \"chance\": null,\n");
}
END_TEST

START_TEST(a_production_that_is_put_away_has_no_days)
{
    import_for_ada();
    bk_ask("UPDATE production SET put_away_on = '2027-03-01'");
    const char *text = bk_program_must(bodkin("rail"), 0).output;
    expect_words(text, "Fri 4 Jun\nlate: none; tight: none; 4 h 10 of work left\n");
    expect_words(text, "waiting   Sun 30 May\n      Ines Varga");
}
END_TEST

BK_TEST_MAIN("rail", the_text_says_what_each_costume_waits_on,
             with_hands_enough_the_days_are_those_reckoned_by_hand,
             with_odds_chance_and_its_error_are_told_in_text_and_in_json,
             the_same_store_day_and_seed_give_the_same_bytes,
             text_and_json_of_the_demo_tell_the_same_costumes_in_the_same_order,
             a_workroom_without_people_says_so_once_and_tells_no_day,
             a_production_that_is_put_away_has_no_days,
             the_text_of_a_whole_show_fits_80_columns_and_holds_nothing_that_a_terminal_obeys,
             in_a_c_locale_the_text_is_ascii, names_of_any_length_and_script_fit_too,
             python_reads_the_json_and_finds_exactly_the_keys_in_their_order,
             the_json_of_a_small_show_is_this_to_the_byte,
             names_come_out_of_the_json_as_they_went_into_the_sheets,
             the_production_that_is_meant_can_be_named,
             a_workroom_without_a_production_says_how_to_bring_one_in, reading_the_rail_changes_nothing)
