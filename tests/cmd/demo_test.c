// The demo, on the day that its script pins: every state and every kind of wait with every detail is in it.

#include <stdio.h>
#include <string.h>

#include "cmd/sheets.h"

static const char demo[] = BK_TEST_SOURCE_DIR "/demo/the-heron-toll";

/// Writes the demo's rail as rail.json and runs a job of Python's on it, `rail` read already; what it prints.
static const char *ask_rail(const char *job)
{
    bk_program_must(bodkin("import", demo), 0);
    bk_program_end end = bk_program_must(bodkin("rail", "--json"), 0);
    bk_test_write(bk_test_path("rail.json"), end.output, end.output_length);
    bk_test_write_text(bk_test_path("job.py"), job);
    return bk_shell("python3 -c \"import json; rail = json.load(open('rail.json', encoding='utf-8'))\n"
                    "exec(open('job.py', encoding='utf-8').read())\"");
}

START_TEST(the_demo_has_costumes_in_every_state)
{
    ck_assert_str_eq(ask_rail("print(' '.join(sorted({c['state'] for c in rail['costumes']})))\n"
                              "print(any(c['can_go_on'] for c in rail['costumes']))\n"),
                     "finishing held in-work ready unlisted waiting\nTrue");
}
END_TEST

START_TEST(the_demo_has_every_kind_of_wait_with_every_detail)
{
    ck_assert_str_eq(
        ask_rail("import re\n"
                 "seen = set()\n"
                 "for costume in rail['costumes']:\n"
                 "    for wait in costume['waits']:\n"
                 "        detail = re.sub('[0-9]{4}-[0-9]{2}-[0-9]{2}', 'DATE', wait['detail'])\n"
                 "        detail = 'STEP' if wait['on'] == 'order' else detail\n"
                 "        seen.add(wait['on'] + ': ' + detail)\n"
                 "print('\\n'.join(sorted(seen)))\n"),
        "fitting: booked DATE\nfitting: missed\nfitting: unbooked\n"
        "hand: open\n"
        "materials: due DATE\nmaterials: late\nmaterials: no date\nmaterials: not ordered\n"
        "measures: none\nmeasures: old\nmeasures: part\nmeasures: uncast\n"
        "order: STEP\n"
        "out: back DATE\nout: no date\nout: overdue\n"
        "people: nobody");
}
END_TEST

START_TEST(the_demo_is_a_workroom_of_a_believable_size)
{
    bk_program_must(bodkin("import", demo), 0);
    static const struct {
        const char *table;
        const char *between;
    } sizes[] = {{"performer", "8 AND 12"}, {"costume", "18 AND 24"}, {"piece", "50 AND 70"},
                 {"step", "300 AND 420"},   {"person", "4 AND 12"},   {"purchase", "10 AND 60"},
                 {"fitting", "10 AND 100"}, {"equipment", "3 AND 8"}, {"material", "20 AND 90"},
                 {"note", "10 AND 40"}};
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        char sql[200];
        snprintf(sql, sizeof sql, "SELECT count(*) BETWEEN %s FROM %s", sizes[i].between, sizes[i].table);
        ck_assert_msg(strcmp(bk_ask(sql), "1") == 0, "%s is not between %s", sizes[i].table,
                      sizes[i].between);
    }
}
END_TEST

START_TEST(the_names_of_the_demo_are_of_several_scripts)
{
    ck_assert_str_eq(ask_rail("import unicodedata\n"
                              "names = ''.join(c['performer'] or '' for c in rail['costumes'])\n"
                              "scripts = {unicodedata.name(n).split()[0] for n in names if n.isalpha()}\n"
                              "print(len(scripts & {'LATIN', 'GREEK', 'CYRILLIC', 'HEBREW', 'CJK'}) >= 4)\n"
                              "print(any(unicodedata.decomposition(n) for n in names))\n"),
                     "True\nTrue");
}
END_TEST

START_TEST(the_demo_opens_in_seventeen_days_and_is_sound)
{
    ck_assert_str_eq(ask_rail("print(rail['production'], rail['opens'], rail['days_left'])\n"
                              "print([c['costume'] for c in rail['costumes']][-3:])\n"),
                     "The Heron Toll 2027-03-19 17\n['1A', '3A', '5A']");
    bk_program_must(bodkin("check"), 0);
}
END_TEST

START_TEST(most_of_the_demo_has_a_day_a_chance_and_something_to_do_now)
{
    ck_assert_str_eq(
        ask_rail("ahead = [c for c in rail['costumes'] if c['steps'] > c['steps_done']]\n"
                 "print(all(c['finish'] >= rail['today'] and c['chance'] is not None for c in ahead))\n"
                 "print(len({c['days_in_hand'] for c in ahead}) > 4)\n"
                 "print(any(w['wanted_by'] for c in ahead for w in c['waits']))\n"),
        "True\nTrue\nTrue");
    expect_words(bk_program_must(bodkin("bench"), 0).output, " steps can be worked on now, best first.\n");
}
END_TEST

START_TEST(the_demo_has_notes_open_and_done_on_everything_a_note_can_be_about)
{
    bk_program_must(bodkin("import", demo), 0);
    ck_assert_str_eq(bk_ask("SELECT DISTINCT source FROM note ORDER BY 1"), "fitting\nrehearsal\nworkroom");
    ck_assert_str_eq(
        bk_ask("SELECT sum(done_on IS NULL) > 5, sum(done_on IS NOT NULL) > 2, sum(costume_id IS NULL), "
               "sum(costume_id IS NOT NULL AND piece_id IS NULL), sum(step_id IS NOT NULL) > 4, "
               "max(noted_on) FROM note"),
        "1|1|1|1|1|2027-03-02");
    // What is done of a note that became a step, is done of the step.
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM note JOIN step ON step.id = step_id "
                            "WHERE (note.done_on IS NULL) <> (step.done_on IS NULL)"),
                     "0");
}
END_TEST

START_TEST(the_demo_has_an_order_of_work_of_its_own_beside_the_ready_ones)
{
    bk_program_must(bodkin("import", demo), 0);
    ck_assert_str_eq(
        bk_ask("SELECT name, count(*), sum(can_wait) FROM work JOIN work_step ON work_id = work.id "
               "WHERE ready = 0 GROUP BY work.id"),
        "Copy for the river|10|1");
    ck_assert_str_eq(bk_ask("SELECT sum(ready) FROM work"), "26");
}
END_TEST

BK_TEST_MAIN("demo", the_demo_has_costumes_in_every_state, the_demo_has_every_kind_of_wait_with_every_detail,
             the_demo_is_a_workroom_of_a_believable_size, the_names_of_the_demo_are_of_several_scripts,
             the_demo_opens_in_seventeen_days_and_is_sound,
             most_of_the_demo_has_a_day_a_chance_and_something_to_do_now,
             the_demo_has_notes_open_and_done_on_everything_a_note_can_be_about,
             the_demo_has_an_order_of_work_of_its_own_beside_the_ready_ones)
