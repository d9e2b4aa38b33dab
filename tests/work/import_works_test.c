// Orders of work and notes taken in: what is known by name, what gives way, what refers to what.

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/export.h"
#include "work/show.h"

static const char all_works[] = "SELECT name, note, ready FROM work ORDER BY position, id";
static const char own_works[] = "SELECT name, note FROM work WHERE ready = 0 ORDER BY position, id";
static const char smock_steps[] =
    "SELECT key, minutes, after FROM work_step WHERE work_id = (SELECT id FROM work WHERE name = 'Smock') "
    "ORDER BY position";

static const char *ask_apron(const char *columns)
{
    return bk_ask(bk_arena_print(texts(),
                                 "SELECT %s FROM work_step JOIN work ON work.id = work_id "
                                 "WHERE name = 'Apron' ORDER BY work_step.position",
                                 columns));
}

/// A show with nothing but orders of work.
static bk_folder *show_of_works(const char *name)
{
    return bare_show(name, DAY(4, 1));
}

/// Takes a folder into the workroom and frees it; the notes.
static const char *take_in_and_free(bk_folder *folder)
{
    bk_import_report report;
    bk_store *store = open_store();
    take_in(store, folder, false, &report);
    bk_store_close(store);
    bk_folder_free(folder);
    return notes_of(&report);
}

// ---------------------------------------------------------------------------------------------- orders of work

START_TEST(a_folder_without_orders_of_work_leaves_those_of_the_workroom_alone)
{
    bk_store_close(open_store());
    const char *before = bk_ask(all_works);
    bk_folder *folder = salt_road();
    folder->works.count = folder->work_steps.count = 0;
    folder->works.items = NULL;
    folder->work_steps.items = NULL;
    ck_assert_str_eq(take_in_and_free(folder), "");
    ck_assert_str_eq(bk_ask(all_works), before);
    ck_assert_str_eq(bk_ask("SELECT count(*), max(id) FROM work_step"), "249|249");
}
END_TEST

START_TEST(new_orders_of_work_stand_behind_those_that_are_there_each_with_its_steps)
{
    ck_assert_str_eq(take_in_and_free(salt_road()), "");
    ck_assert_str_eq(bk_ask("SELECT name, note, ready FROM work ORDER BY position DESC, id DESC LIMIT 3"),
                     "Neck cloth||0\nSmock|as for the harvest play|0\n"
                     "Breaking down (ageing) a finished piece|after the last fitting; never on a hired "
                     "piece|1");
    ck_assert_str_eq(
        bk_ask("SELECT work.name, key, title, kind, minutes, quickest, longest, after, hands, level, "
               "rest_minutes, can_wait, measures, work_step.note FROM work_step "
               "JOIN work ON work.id = work_id WHERE ready = 0 ORDER BY work.position, work_step.position"),
        "Smock|sew|Step sew|machine|120|||cut||||0||\n"
        "Smock|cut|Cut the drill|cut|45|30|90||2|3|30|1|waist girth;nape to waist|mind the nap\n"
        "Neck cloth|hem|Step hem|hand|30|||||||0||");
}
END_TEST

START_TEST(a_known_order_of_work_takes_in_what_differs_and_tells_it)
{
    take_in_and_free(salt_road());
    bk_folder *folder = show_of_works("Chalk");
    ROWS(folder, works, bk_work, {.name = "Smock"}, {.name = "Neck cloth", .note = "of fine lawn"});
    ROWS(folder, work_steps, bk_work_step, WORK_STEP("Smock", "cut", BK_CUT, 50, NULL),
         WORK_STEP("Smock", "sew", BK_MACHINE, 120, "cut"), WORK_STEP("Smock", "hem", BK_HAND, 30, "sew"));
    ck_assert_str_eq(take_in_and_free(folder),
                     "work_steps.csv: Smock: steps: was \"2 steps\", is now \"3 steps\"\n"
                     "works.csv: Neck cloth: note: was empty, is now \"of fine lawn\"\n");
    ck_assert_str_eq(bk_ask(own_works), "Smock|as for the harvest play\nNeck cloth|of fine lawn");
    ck_assert_str_eq(bk_ask(smock_steps), "cut|50|\nsew|120|cut\nhem|30|sew");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM work_step JOIN work ON work.id = work_id "
                            "WHERE name = 'Neck cloth'"),
                     "1");
}
END_TEST

START_TEST(the_same_orders_of_work_again_change_nothing)
{
    take_in_and_free(salt_road());
    const char *works = bk_ask("SELECT * FROM work");
    const char *steps = bk_ask("SELECT * FROM work_step WHERE id > 249");
    bk_folder *folder = salt_road();
    folder->production.items[0].name = "The Sugar Road";
    ck_assert_str_eq(take_in_and_free(folder), "");
    ck_assert_str_eq(bk_ask("SELECT * FROM work"), works);
    ck_assert_str_eq(bk_ask("SELECT * FROM work_step WHERE id > 249"), steps);
}
END_TEST

START_TEST(each_cell_of_a_step_makes_its_list_another_one)
{
    take_in_and_free(salt_road());
    static const bk_work_step sound = {.work = "Smock",
                                       .key = "cut",
                                       .title = "Cut",
                                       .kind = BK_CUT,
                                       .minutes = 45,
                                       .quickest = 30,
                                       .longest = 90,
                                       .after = NULL,
                                       .hands = 1,
                                       .level = 3,
                                       .rest_minutes = 30,
                                       .measures = "height"};
    bk_work_step others[13];
    for (size_t i = 0; i < sizeof others / sizeof *others; i++)
        others[i] = sound;
    others[0].key = "c";
    others[1].title = "C";
    others[2].kind = BK_TACK;
    others[3].minutes = 46;
    others[4].quickest = BK_NOT_KNOWN;
    others[5].longest = 91;
    others[6].hands = 2;
    others[7].level = BK_NOT_KNOWN;
    others[8].rest_minutes = 0;
    others[9].can_wait = 1;
    others[10].measures = NULL;
    others[11].note = "mind the nap";
    others[12].after = "cut"; // no sound order, but only the list is held against the other here
    for (size_t i = 0; i < sizeof others / sizeof *others; i++) {
        bk_folder *folder = show_of_works(bk_arena_print(texts(), "Sound %zu", i));
        put_rows(folder->arena, &folder->work_steps, &sound, sizeof sound, 1);
        take_in_and_free(folder);
        folder = show_of_works(bk_arena_print(texts(), "Other %zu", i));
        put_rows(folder->arena, &folder->work_steps, &others[i], sizeof others[i], 1);
        ck_assert_str_eq(take_in_and_free(folder), "work_steps.csv: Smock: steps: was \"1 step\", is now \"1 "
                                                   "step that differs\"\n");
    }
}
END_TEST

// ------------------------------------------------------------------------------ those that came with the program

/// An apron of the workroom's own.
static bk_folder *show_of_aprons(void)
{
    bk_folder *folder = show_of_works("Chalk");
    ROWS(folder, works, bk_work, {.name = "Smock"}, {.name = "Apron", .note = "in drill"});
    ROWS(folder, work_steps, bk_work_step, WORK_STEP("Apron", "cut", BK_CUT, 25, NULL),
         WORK_STEP("Apron", "bind", BK_MACHINE, 60, "cut"));
    return folder;
}

START_TEST(one_of_the_same_name_takes_the_place_of_one_that_came_with_the_program)
{
    ck_assert_str_eq(take_in_and_free(show_of_aprons()),
                     "works.csv: Apron: note: was empty, is now \"in drill\"\n"
                     "work_steps.csv: Apron: steps: was \"4 steps\", is now \"2 steps\"\n");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM work WHERE name = 'Apron'"), "1");
    ck_assert_str_eq(ask_apron("ready, key, minutes, after"), "0|cut|25|\n0|bind|60|cut");
    // In the order of the folder, behind all others.
    ck_assert_str_eq(bk_ask(own_works), "Smock|\nApron|in drill");
    ck_assert_str_eq(bk_ask("SELECT count(*), sum(ready) FROM work"), "27|25");
}
END_TEST

START_TEST(an_empty_note_replaces_that_of_one_that_came_with_the_program)
{
    bk_folder *folder = show_of_works("Chalk");
    ROWS(folder, works, bk_work, {.name = "Circle skirt"});
    ck_assert_str_eq(take_in_and_free(folder),
                     "works.csv: Circle skirt: note: was \"must hang before the hem "
                     "is levelled\", is now empty\n");
    ck_assert_str_eq(bk_ask(own_works), "Circle skirt|");
}
END_TEST

START_TEST(without_a_sheet_of_steps_those_that_came_with_the_program_stay)
{
    bk_folder *folder = show_of_works("Chalk");
    ROWS(folder, works, bk_work, {.name = "Apron", .note = "in drill"});
    take_in_and_free(folder);
    ck_assert_str_eq(ask_apron("ready, key"), "0|cut\n0|sew\n0|band\n0|off");
}
END_TEST

START_TEST(steps_alone_make_an_order_of_work_the_workrooms_own)
{
    bk_folder *folder = show_of_works("Chalk");
    ROWS(folder, work_steps, bk_work_step, WORK_STEP("Circle skirt", "cut", BK_CUT, 25, NULL));
    ck_assert_str_eq(take_in_and_free(folder),
                     "work_steps.csv: Circle skirt: steps: was \"9 steps\", is now \"1 step\"\n");
    ck_assert_str_eq(bk_ask(own_works), "Circle skirt|must hang before the hem is levelled");
}
END_TEST

START_TEST(an_import_turned_back_leaves_the_orders_of_work_as_they_came)
{
    bk_store_close(open_store());
    const char *before = bk_records();
    bk_store *store = open_store();
    bk_folder *folder = show_of_aprons();
    int64_t entry = take_in(store, folder, false, NULL);
    ck_assert_str_ne(bk_records(), before);
    MUST(bk_store_change_begin(store, &trouble));
    MUST(bk_store_turn_back(store, entry, &trouble));
    MUST(bk_store_change_commit(store, "2027-03-02T10:00:00+01:00", "Undone", NULL, &trouble));
    ck_assert_str_eq(bk_records(), before);
    bk_store_close(store);
    bk_folder_free(folder);
}
END_TEST

START_TEST(the_workroom_tells_the_names_of_its_orders_of_work)
{
    bk_known *known = NULL;
    bk_store *store = open_store();
    MUST(bk_import_known(store, &known, &trouble));
    ck_assert_ptr_nonnull(bk_index_find(known->works, "Apron"));
    ck_assert_ptr_null(bk_index_find(known->works, "Smock"));
    bk_known_free(known);
    bk_store_close(store);
}
END_TEST

// ------------------------------------------------------------------------------------------------------- notes

START_TEST(notes_refer_to_costumes_pieces_and_steps_by_name)
{
    take_in_and_free(salt_road());
    ck_assert_str_eq(bk_ask("SELECT noted_on, source, who, number, piece.name, key, what, note.done_on "
                            "FROM note LEFT JOIN costume ON costume.id = costume_id "
                            "LEFT JOIN piece ON piece.id = note.piece_id "
                            "LEFT JOIN step ON step.id = step_id ORDER BY note.position"),
                     "2027-03-05|||10A|||too new for a miller|\n"
                     "2027-03-04|rehearsal|the director|2B|P2|sew|cuffs catch on the basket|2027-03-05\n"
                     "2027-03-04||||||flour on everything|");
}
END_TEST

START_TEST(notes_are_the_productions_own_and_go_with_it)
{
    take_in_and_free(salt_road());
    bk_folder *folder = salt_road();
    folder->production.items[0].name = "The Sugar Road";
    folder->notes.count = 1;
    take_in_and_free(folder);
    ck_assert_str_eq(bk_ask("SELECT production_id, count(*) FROM note GROUP BY 1"), "1|3\n2|1");
    folder = salt_road();
    folder->notes.count = 2;
    bk_store *store = open_store();
    take_in(store, folder, true, NULL);
    bk_store_close(store);
    bk_folder_free(folder);
    ck_assert_str_eq(bk_ask("SELECT production_id, count(*) FROM note GROUP BY 1"), "2|1\n3|2");
}
END_TEST

// ------------------------------------------------------------------------------------------------------ out again

static bk_folder *out_again(const char *store_name)
{
    bk_folder *folder = NULL;
    bk_store *store = open_store_named(store_name);
    MUST(bk_export_folder(store, 1, &folder, &trouble));
    bk_store_close(store);
    return folder;
}

START_TEST(only_orders_of_work_of_the_workrooms_own_come_out)
{
    take_in_and_free(show_of_aprons());
    bk_folder *folder = out_again("workroom.db");
    ck_assert_uint_eq(folder->works.count, 2);
    ck_assert_str_eq(folder->works.items[0].name, "Smock");
    ck_assert_str_eq(folder->works.items[1].name, "Apron");
    ck_assert_uint_eq(folder->work_steps.count, 2);
    ck_assert_str_eq(folder->work_steps.items[1].work, "Apron");
    ck_assert_str_eq(folder->work_steps.items[1].after, "cut");
    bk_folder_free(folder);
}
END_TEST

START_TEST(a_changed_ready_one_before_or_behind_others_comes_back_as_the_same_rows_in_the_same_order)
{
    take_in_and_free(salt_road());
    bk_shell("sqlite3 workroom.db \"UPDATE work SET ready = 0, note = NULL WHERE name = 'Circle skirt'; "
             "UPDATE work SET ready = 0, position = 99 WHERE name = 'Apron'; "
             "UPDATE work SET position = 0 WHERE name = 'Neck cloth'; "
             "DELETE FROM work_step WHERE work_id = 5\"");
    const char *works = bk_ask(own_works);
    const char *steps = bk_ask("SELECT work.name, key, minutes FROM work_step JOIN work ON work.id = work_id "
                               "WHERE ready = 0 ORDER BY work.position, work_step.position");
    bk_folder *folder = out_again("workroom.db");
    bk_store *store = open_store_named("other.db");
    take_in(store, folder, false, NULL);
    bk_store_close(store);
    bk_folder_free(folder);
    bk_shell("mv other.db workroom.db");
    ck_assert_str_eq(works, "Neck cloth|\nCircle skirt|\nSmock|as for the harvest play\nApron|");
    ck_assert_str_eq(bk_ask(own_works), works);
    ck_assert_str_eq(bk_ask("SELECT work.name, key, minutes FROM work_step JOIN work ON work.id = work_id "
                            "WHERE ready = 0 ORDER BY work.position, work_step.position"),
                     steps);
}
END_TEST

START_TEST(notes_come_out_with_the_piece_of_the_step_they_became)
{
    take_in_and_free(salt_road());
    bk_shell("sqlite3 workroom.db 'UPDATE note SET piece_id = 2 WHERE step_id IS NOT NULL'");
    bk_folder *folder = out_again("workroom.db");
    ck_assert_uint_eq(folder->notes.count, 3);
    ck_assert_str_eq(folder->notes.items[0].costume, "10A");
    ck_assert_ptr_null(folder->notes.items[0].piece);
    ck_assert_str_eq(folder->notes.items[1].piece, "P2");
    ck_assert_str_eq(folder->notes.items[1].step, "sew");
    ck_assert_int_eq(folder->notes.items[1].source, BK_FROM_REHEARSAL);
    ck_assert_int_eq(folder->notes.items[2].done_on, BK_NO_DAY);
    bk_folder_free(folder);
}
END_TEST

BK_TEST_MAIN("import works", a_folder_without_orders_of_work_leaves_those_of_the_workroom_alone,
             new_orders_of_work_stand_behind_those_that_are_there_each_with_its_steps,
             a_known_order_of_work_takes_in_what_differs_and_tells_it,
             the_same_orders_of_work_again_change_nothing, each_cell_of_a_step_makes_its_list_another_one,
             one_of_the_same_name_takes_the_place_of_one_that_came_with_the_program,
             an_empty_note_replaces_that_of_one_that_came_with_the_program,
             without_a_sheet_of_steps_those_that_came_with_the_program_stay,
             steps_alone_make_an_order_of_work_the_workrooms_own,
             an_import_turned_back_leaves_the_orders_of_work_as_they_came,
             the_workroom_tells_the_names_of_its_orders_of_work,
             notes_refer_to_costumes_pieces_and_steps_by_name, notes_are_the_productions_own_and_go_with_it,
             only_orders_of_work_of_the_workrooms_own_come_out,
             a_changed_ready_one_before_or_behind_others_comes_back_as_the_same_rows_in_the_same_order,
             notes_come_out_with_the_piece_of_the_step_they_became)
