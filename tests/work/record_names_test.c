#include <string.h>

#include "bodkin/trade/words.h"
#include "work/filled.h"

static int64_t piece_id(const char *name)
{
    return id_of("piece", "name", name);
}

static int64_t step_id(const char *key)
{
    return id_of("step", "key", key);
}

static const bk_performer nobody = {.measures_good_for = BK_NOT_KNOWN};

// ------------------------------------------------------------------------------------------------ renaming

START_TEST(a_renamed_record_keeps_all_that_refers_to_it)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_costume, before, store, BK_COSTUMES, id_of("costume", "number", "10A"));
    bk_costume after = before;
    after.number = "11A";
    ck_assert_str_eq(save(store, BK_COSTUMES, &before, &after).sentence,
                     "Renamed: costume 10A Costume 10A, now 11A");
    FILLED(bk_piece, piece, store, BK_PIECES, piece_id("P2"));
    ck_assert_str_eq(piece.costumes, "2B;11A");
    FILLED(bk_step, press, store, BK_STEPS, step_id("press"));
    bk_step pressed = press;
    pressed.key = "iron";
    save(store, BK_STEPS, &press, &pressed);
    FILLED(bk_step, fit, store, BK_STEPS, step_id("fit"));
    ck_assert_str_eq(fit.after, "P1/iron;sew");
    bk_store_close(store);
}
END_TEST

START_TEST(a_name_that_another_one_has_is_refused)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_costume, costume, store, BK_COSTUMES, id_of("costume", "number", "10A"));
    bk_costume after = costume;
    after.number = "2B";
    ck_assert_str_eq(refused(store, BK_COSTUMES, &costume, &after), "costume");
    ck_assert_str_eq(trouble.text, "There is a costume called \"2B\" already.");
    FILLED(bk_step, step, store, BK_STEPS, step_id("sew"));
    bk_step same_key = step;
    same_key.key = "cut";
    ck_assert_str_eq(refused(store, BK_STEPS, &step, &same_key), "step");
    bk_material wool = {.name = "wool",
                        .unit = BK_METRE,
                        .on_hand = BK_NO_AMOUNT,
                        .width = BK_NO_AMOUNT,
                        .price = BK_NO_AMOUNT};
    ck_assert_str_eq(refused(store, BK_MATERIALS, NULL, &wool), "material");
    bk_store_close(store);
}
END_TEST

START_TEST(two_pieces_may_have_steps_of_the_same_key)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_step, press, store, BK_STEPS, step_id("press"));
    bk_step cut = press;
    cut.id = 0;
    cut.key = "cut";
    cut.after = NULL;
    ck_assert_str_eq(save(store, BK_STEPS, NULL, &cut).sentence, "New: step P1/cut Step press");
    bk_store_close(store);
}
END_TEST

// ------------------------------------------------------------------------------------------------ performers

START_TEST(a_role_played_by_somebody_unknown_is_refused_with_the_nearest_name)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_role, before, store, BK_ROLES, id_of("role", "name", "The Boy"));
    bk_role after = before;
    after.performer = "Tomas Lund";
    ck_assert_str_eq(refused(store, BK_ROLES, &before, &after), "performer");
    ck_assert_str_eq(
        trouble.text,
        "No performer is called \"Tomas Lund\": did you mean Tomas Lind? Add performers under Cast (C).");
    after.performer = "Quentin";
    refused(store, BK_ROLES, &before, &after);
    ck_assert_str_eq(trouble.text, "No performer is called \"Quentin\". Add performers under Cast (C).");
    after.performer = NULL;
    after.cover = "Tomas Lind;Zoe Ngo";
    ck_assert_str_eq(refused(store, BK_ROLES, &before, &after), "cover");
    bk_store_close(store);
}
END_TEST

START_TEST(a_cover_list_is_put_in_its_order_and_names_nobody_twice)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_role, before, store, BK_ROLES, id_of("role", "name", "The Miller"));
    bk_role after = before;
    after.cover = "Tomas Lind; Zoë Ngô";
    save(store, BK_ROLES, &before, &after);
    FILLED(bk_role, read, store, BK_ROLES, before.id);
    ck_assert_str_eq(read.cover, "Tomas Lind;Zoë Ngô");
    after = read;
    after.cover = "Tomas Lind;Tomas Lind";
    ck_assert_str_eq(refused(store, BK_ROLES, &read, &after), "cover");
    bk_store_close(store);
}
END_TEST

/// A production of its own, in which nobody plays yet.
static int64_t other_show(bk_store *store)
{
    bk_folder *folder = bare_show("The Winter Fair", DAY(9, 3));
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    return id_of("production", "name", "The Winter Fair");
}

static bk_status save_there(bk_store *store, int64_t production, bk_family family, const void *after,
                            bk_record_saved *saved)
{
    bk_job job = job_in(store);
    bk_record_saving saving = {.family = family, .after = after};
    job.production = production;
    return bk_record_save(&job, &saving, saved, &trouble);
}

START_TEST(a_new_performer_joins_the_company)
{
    bk_store *store = store_with_salt_road();
    bk_performer performer = nobody;
    performer.name = "Vera Holm";
    performer.contact = "stage door";
    ck_assert_str_eq(save(store, BK_PERFORMERS, NULL, &performer).sentence, "New: performer Vera Holm");
    ck_assert_str_eq(bk_ask("SELECT name FROM company JOIN performer ON performer.id = performer_id ORDER BY "
                            "position DESC LIMIT 1"),
                     "Vera Holm");
    ck_assert_str_eq(refused(store, BK_PERFORMERS, NULL, &performer), "performer");
    bk_store_close(store);
}
END_TEST

START_TEST(a_performer_the_workroom_knows_joins_as_they_are)
{
    bk_store *store = store_with_salt_road();
    bk_record_saved saved;
    int64_t there = other_show(store);
    bk_performer performer = nobody;
    performer.name = "Ines Varga";
    performer.note = "walks with a stick now";
    MUST(save_there(store, there, BK_PERFORMERS, &performer, &saved));
    ck_assert_str_eq(saved.sentence, "Joined the company: performer Ines Varga");
    ck_assert_int_eq(saved.id, id_of("performer", "name", "Ines Varga"));
    ck_assert_str_eq(bk_ask("SELECT count(*), max(note), max(measures_good_for) FROM performer WHERE name = "
                            "'Ines Varga'"),
                     "1|walks with a stick now|60");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM company JOIN performer ON performer.id = performer_id "
                            "WHERE name = 'Ines Varga'"),
                     "2");
    ck_assert_str_eq(bk_ask("SELECT contact FROM performer_contact"), "ines@stage.example");
    bk_store_close(store);
}
END_TEST

START_TEST(who_is_cast_or_covers_joins_the_company)
{
    bk_store *store = store_with_salt_road();
    bk_record_saved saved;
    int64_t there = other_show(store);
    bk_role role = {.name = "The Crone", .performer = "Ines Varga", .cover = "Tomas Lind"};
    MUST(save_there(store, there, BK_ROLES, &role, &saved));
    ck_assert_str_eq(bk_ask(bk_arena_print(texts(), "SELECT count(*) FROM company WHERE production_id = %lld",
                                           (long long)there)),
                     "2");
    bk_store_close(store);
}
END_TEST

START_TEST(an_absence_is_of_the_person_and_the_performer_of_that_name)
{
    bk_store *store = store_with_salt_road();
    bk_away away = {.who = "Zoë Ngô", .from = DAY(5, 1), .to = DAY(5, 3)};
    ck_assert_str_eq(save(store, BK_AWAYS, NULL, &away).sentence,
                     "New: absence of Zoë Ngô, Sat 1 May to Mon 3 May");
    ck_assert_str_eq(
        bk_ask("SELECT person_id IS NOT NULL, performer_id IS NOT NULL FROM away ORDER BY id DESC "
               "LIMIT 1"),
        "1|1");
    away.who = "Ines Vargo";
    ck_assert_str_eq(refused(store, BK_AWAYS, NULL, &away), "who");
    ck_assert_str_eq(trouble.text,
                     "No person and no performer is called \"Ines Vargo\": did you mean Ines Varga?");
    bk_store_close(store);
}
END_TEST

START_TEST(who_no_longer_bears_the_name_of_an_absence_of_two_keeps_it)
{
    bk_store *store = store_with_salt_road();
    bk_person person = PERSON("Tomas Lind", "cut");
    save(store, BK_PEOPLE, NULL, &person);
    bk_away away = AWAY("Tomas Lind", DAY(4, 1), DAY(4, 2), "a wedding");
    save(store, BK_AWAYS, NULL, &away);
    FILLED(bk_performer, before, store, BK_PERFORMERS, id_of("performer", "name", "Tomas Lind"));
    bk_performer after = before;
    after.name = "Tomas Berg";
    save(store, BK_PERFORMERS, &before, &after);
    ck_assert_str_eq(
        bk_ask("SELECT coalesce(person.name, '-'), coalesce(performer.name, '-'), reason FROM away LEFT "
               "JOIN person ON person.id = person_id LEFT JOIN performer ON performer.id = performer_id "
               "WHERE away.from_day = '2027-04-01' AND to_day = '2027-04-02' ORDER BY away.id"),
        "Tomas Lind|-|a wedding\n-|Tomas Berg|a wedding");
    bk_store_close(store);
}
END_TEST

START_TEST(the_absences_of_a_name_reach_a_performer_who_comes_later)
{
    bk_store *store = store_with_salt_road();
    bk_performer performer = nobody;
    performer.name = "Ada Pell";
    save(store, BK_PERFORMERS, NULL, &performer);
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM away JOIN performer ON performer.id = performer_id WHERE "
                            "name = 'Ada Pell'"),
                     "1");
    bk_store_close(store);
}
END_TEST

// ------------------------------------------------------------------------------------------ pieces and steps

START_TEST(a_piece_is_worn_with_the_costumes_it_names)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_piece, before, store, BK_PIECES, piece_id("P1"));
    bk_piece after = before;
    after.costumes = "2A;10A";
    save(store, BK_PIECES, &before, &after);
    FILLED(bk_piece, read, store, BK_PIECES, before.id);
    ck_assert_str_eq(read.costumes, "2A;10A");
    after = read;
    after.costumes = "2A;9Z";
    ck_assert_str_eq(refused(store, BK_PIECES, &read, &after), "costumes");
    after.costumes = NULL;
    ck_assert_str_eq(refused(store, BK_PIECES, &read, &after), "costumes");
    bk_store_close(store);
}
END_TEST

START_TEST(what_a_step_comes_after_is_named_by_key_or_by_piece_and_key)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_step, before, store, BK_STEPS, step_id("sew"));
    bk_step after = before;
    after.after = "P1/press;cut";
    save(store, BK_STEPS, &before, &after);
    FILLED(bk_step, read, store, BK_STEPS, before.id);
    ck_assert_str_eq(read.after, "P1/press;cut");
    after = read;
    after.after = "P1/prass";
    ck_assert_str_eq(refused(store, BK_STEPS, &read, &after), "after");
    ck_assert_ptr_nonnull(strstr(trouble.text, "did you mean press?"));
    after.after = "P9/press";
    refused(store, BK_STEPS, &read, &after);
    ck_assert_ptr_nonnull(strstr(trouble.text, "No piece is called \"P9\""));
    bk_store_close(store);
}
END_TEST

START_TEST(one_step_named_in_two_ways_is_named_twice)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_step, before, store, BK_STEPS, step_id("sew"));
    bk_step after = before;
    after.after = "cut;P2/cut";
    ck_assert_str_eq(refused(store, BK_STEPS, &before, &after), "after");
    bk_store_close(store);
}
END_TEST

START_TEST(a_step_moved_to_another_piece_keeps_its_order)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_step, before, store, BK_STEPS, step_id("sew"));
    bk_step after = before;
    after.piece = "P1";
    save(store, BK_STEPS, &before, &after);
    FILLED(bk_step, sew, store, BK_STEPS, before.id);
    ck_assert_str_eq(sew.piece, "P1");
    ck_assert_str_eq(sew.after, "P2/cut");
    FILLED(bk_step, fit, store, BK_STEPS, step_id("fit"));
    ck_assert_str_eq(fit.after, "P1/press;P1/sew");
    ck_assert_str_eq(bk_ask("SELECT group_concat(key) FROM (SELECT key FROM step ORDER BY position)"),
                     "cut,fit,press,sew");
    ck_assert_str_eq(
        bk_ask("SELECT name FROM note JOIN piece ON piece.id = piece_id WHERE step_id IS NOT NULL"), "P1");
    bk_store_close(store);
}
END_TEST

START_TEST(needs_and_fittings_name_steps_that_are_there)
{
    bk_store *store = store_with_salt_road();
    bk_need need = {.piece = "P2", .step = "sow", .material = "wool", .quantity = TENTHS(5)};
    ck_assert_str_eq(refused(store, BK_NEEDS, NULL, &need), "step");
    need.step = "sew";
    ck_assert_str_eq(refused(store, BK_NEEDS, NULL, &need), "material");
    ck_assert_str_eq(trouble.text, "P2/sew needs \"wool\" already: change the quantity of that.");
    need.material = "linen";
    ck_assert_str_eq(save(store, BK_NEEDS, NULL, &need).sentence, "New: need of P2/sew for linen");
    bk_fitting fitting = FITTING("P2", "sew", DAY(3, 9));
    ck_assert_str_eq(refused(store, BK_FITTINGS, NULL, &fitting), "step");
    fitting.step = "fit";
    ck_assert_str_eq(save(store, BK_FITTINGS, NULL, &fitting).sentence, "New: fitting P2/fit, Tue 9 Mar");
    bk_store_close(store);
}
END_TEST

START_TEST(a_note_may_be_about_a_step_of_the_piece_it_names)
{
    bk_store *store = store_with_salt_road();
    bk_note note = {.noted_on = DAY(3, 2),
                    .source = BK_FROM_DRESS,
                    .step = "sew",
                    .what = "the hem is coming down at the back, all along",
                    .done_on = BK_NO_DAY};
    ck_assert_str_eq(refused(store, BK_NOTES, NULL, &note), "piece");
    note.piece = "P2";
    ck_assert_str_eq(save(store, BK_NOTES, NULL, &note).sentence,
                     "New: note \"the hem is coming down at the back, all…\"");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("record_names", a_renamed_record_keeps_all_that_refers_to_it,
             a_name_that_another_one_has_is_refused, two_pieces_may_have_steps_of_the_same_key,
             a_role_played_by_somebody_unknown_is_refused_with_the_nearest_name,
             a_cover_list_is_put_in_its_order_and_names_nobody_twice, a_new_performer_joins_the_company,
             a_performer_the_workroom_knows_joins_as_they_are, who_is_cast_or_covers_joins_the_company,
             an_absence_is_of_the_person_and_the_performer_of_that_name,
             who_no_longer_bears_the_name_of_an_absence_of_two_keeps_it,
             the_absences_of_a_name_reach_a_performer_who_comes_later,
             a_piece_is_worn_with_the_costumes_it_names,
             what_a_step_comes_after_is_named_by_key_or_by_piece_and_key,
             one_step_named_in_two_ways_is_named_twice, a_step_moved_to_another_piece_keeps_its_order,
             needs_and_fittings_name_steps_that_are_there, a_note_may_be_about_a_step_of_the_piece_it_names)
