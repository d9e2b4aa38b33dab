#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/daybook.h"
#include "bodkin/trade/words.h"
#include "work/filled.h"

static int64_t costume_id(const char *number)
{
    return id_of("costume", "number", number);
}

static bk_costume new_costume(const char *number)
{
    return (bk_costume){.number = number, .role = "The Boy", .title = "Feast clothes", .due = BK_NO_DAY};
}

static const char *last_entry(void)
{
    return bk_ask("SELECT sentence FROM daybook ORDER BY id DESC LIMIT 1");
}

// ------------------------------------------------------------------------------------------------- reading

START_TEST(a_record_is_read_with_names_lists_and_private_values)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_piece, piece, store, BK_PIECES, id_of("piece", "name", "P2"));
    ck_assert_str_eq(piece.costumes, "2B;10A");
    ck_assert_int_eq(piece.cost, 1250);
    ck_assert_str_eq(piece.currency, "GBP");
    FILLED(bk_role, role, store, BK_ROLES, id_of("role", "name", "The Miller"));
    ck_assert_str_eq(role.performer, "Ines Varga");
    ck_assert_str_eq(role.cover, "Zoë Ngô;Tomas Lind");
    FILLED(bk_step, step, store, BK_STEPS, id_of("step", "key", "fit"));
    ck_assert_str_eq(step.piece, "P2");
    ck_assert_str_eq(step.after, "P1/press;sew");
    FILLED(bk_performer, performer, store, BK_PERFORMERS, id_of("performer", "name", "Ines Varga"));
    ck_assert_str_eq(performer.contact, "ines@stage.example");
    bk_store_close(store);
}
END_TEST

START_TEST(needs_fittings_orders_and_notes_name_what_they_belong_to)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_need, need, store, BK_NEEDS, id_by("SELECT min(id) FROM need"));
    ck_assert_str_eq(need.piece, "P2");
    ck_assert_str_eq(need.step, "sew");
    ck_assert_str_eq(need.material, "wool");
    FILLED(bk_fitting, fitting, store, BK_FITTINGS, id_by("SELECT min(id) FROM fitting"));
    ck_assert_str_eq(fitting.step, "fit");
    ck_assert_str_eq(fitting.performer, "Tomas Lind");
    FILLED(bk_order, order, store, BK_ORDERS, id_by("SELECT id FROM purchase WHERE supplier IS NOT NULL"));
    ck_assert_str_eq(order.material, "linen");
    ck_assert_int_eq(order.cost, 5200);
    FILLED(bk_note, note, store, BK_NOTES, id_by("SELECT id FROM note WHERE step_id IS NOT NULL"));
    ck_assert_str_eq(note.costume, "2B");
    ck_assert_str_eq(note.piece, "P2");
    ck_assert_str_eq(note.step, "sew");
    FILLED(bk_work_step, step, store, BK_WORK_STEPS, smock_step("cut"));
    ck_assert_str_eq(step.work, "Smock");
    bk_store_close(store);
}
END_TEST

START_TEST(what_is_no_longer_there_is_not_found)
{
    bk_store *store = store_with_salt_road();
    bk_job job = job_in(store);
    bk_piece piece;
    bool found = true;
    MUST(bk_record_read(&job, BK_PIECES, 999, &piece, &found, &trouble));
    ck_assert(!found);
    bk_store_close(store);
}
END_TEST

// ---------------------------------------------------------------------------------------------- new, changed

START_TEST(a_new_record_is_one_entry_of_the_daybook_that_undo_takes_back)
{
    bk_store *store = store_with_salt_road();
    const char *before = bk_records();
    bk_costume costume = new_costume("2C");
    bk_record_saved saved = save(store, BK_COSTUMES, NULL, &costume);
    ck_assert_str_eq(saved.sentence, "New: costume 2C Feast clothes");
    ck_assert_str_eq(last_entry(), saved.sentence);
    ck_assert_int_eq(saved.id, costume_id("2C"));
    FILLED(bk_costume, read, store, BK_COSTUMES, saved.id);
    ck_assert_str_eq(read.role, "The Boy");
    undo(store);
    ck_assert_str_eq(bk_records(), before);
    bk_store_close(store);
}
END_TEST

START_TEST(a_change_says_which_one_or_two_fields_it_touched)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_step, before, store, BK_STEPS, id_of("step", "key", "sew"));
    bk_step after = before;
    after.minutes = 90;
    after.note = "by hand where it shows";
    ck_assert_str_eq(save(store, BK_STEPS, &before, &after).sentence,
                     "Changed: step P2/sew Step sew: minutes, note");
    FILLED(bk_step, again, store, BK_STEPS, before.id);
    after = again;
    after.note = NULL;
    ck_assert_str_eq(save(store, BK_STEPS, &again, &after).sentence, "Changed: step P2/sew Step sew: note");
    bk_store_close(store);
}
END_TEST

START_TEST(a_change_of_many_fields_names_none)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_step, before, store, BK_STEPS, id_of("step", "key", "sew"));
    bk_step after = before;
    after.minutes = 90;
    after.quickest = 60;
    after.longest = 200;
    ck_assert_str_eq(save(store, BK_STEPS, &before, &after).sentence, "Changed: step P2/sew Step sew");
    bk_store_close(store);
}
END_TEST

START_TEST(where_nothing_differs_nothing_is_written)
{
    bk_store *store = store_with_salt_road();
    const char *entries = bk_ask("SELECT count(*) FROM daybook");
    FILLED(bk_costume, costume, store, BK_COSTUMES, costume_id("2B"));
    bk_costume after = costume;
    after.note = "";
    bk_record_saved saved = save(store, BK_COSTUMES, &costume, &after);
    ck_assert_ptr_null(saved.sentence);
    ck_assert_int_eq(saved.id, costume.id);
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM daybook"), entries);
    bk_store_close(store);
}
END_TEST

START_TEST(a_private_value_never_stands_in_a_sentence)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_performer, before, store, BK_PERFORMERS, id_of("performer", "name", "Ines Varga"));
    bk_performer after = before;
    after.contact = "555 0199";
    ck_assert_str_eq(save(store, BK_PERFORMERS, &before, &after).sentence,
                     "Changed: performer Ines Varga: contact");
    FILLED(bk_piece, piece, store, BK_PIECES, id_of("piece", "name", "P1"));
    bk_piece dearer = piece;
    dearer.cost = 987654;
    dearer.currency = "USD";
    ck_assert_str_eq(save(store, BK_PIECES, &piece, &dearer).sentence, "Changed: piece P1 Cloak: cost");
    ck_assert_str_eq(
        bk_ask("SELECT count(*) FROM daybook WHERE sentence LIKE '%0199%' OR sentence LIKE '%9876%'"), "0");
    bk_store_close(store);
}
END_TEST

START_TEST(a_private_value_is_put_and_taken_away)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_performer, before, store, BK_PERFORMERS, id_of("performer", "name", "Ines Varga"));
    bk_performer after = before;
    after.contact = NULL;
    save(store, BK_PERFORMERS, &before, &after);
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM performer_contact"), "0");
    FILLED(bk_material, wool, store, BK_MATERIALS, id_of("material", "name", "wool"));
    bk_material priced = wool;
    priced.price = 1150;
    priced.currency = "GBP";
    save(store, BK_MATERIALS, &wool, &priced);
    ck_assert_str_eq(bk_ask("SELECT price, material_price.currency FROM material_price JOIN material ON "
                            "material.id = material_id WHERE name = 'wool'"),
                     "1150|GBP");
    bk_store_close(store);
}
END_TEST

START_TEST(without_a_production_nothing_of_one_is_made)
{
    bk_store *store = store_with_salt_road();
    bk_job job = job_in(store);
    bk_costume costume = new_costume("2C");
    bk_record_saving saving = {.family = BK_COSTUMES, .after = &costume};
    bk_record_saved saved;
    job.production = 0;
    REFUSED(bk_record_save(&job, &saving, &saved, &trouble), BK_REFUSED, "Open a production first");
    bk_store_close(store);
}
END_TEST

// ---------------------------------------------------------------------------------------- another terminal

/// Two costumes say the same when their titles do.
static bool same_title(const void *context, const void *left, const void *right)
{
    const bk_costume *a = left;
    const bk_costume *b = right;
    (*(int *)(uintptr_t)context)++;
    return bk_same_text(a->title, b->title);
}

START_TEST(what_another_terminal_changed_meanwhile_is_told_and_nothing_is_saved)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_costume, before, store, BK_COSTUMES, costume_id("2B"));
    bk_costume theirs = before;
    bk_costume ours = before;
    theirs.note = "torn";
    ours.title = "Sunday best";
    save(store, BK_COSTUMES, &before, &theirs);
    bk_record_saved saved = save(store, BK_COSTUMES, &before, &ours);
    ck_assert_ptr_null(saved.sentence);
    ck_assert_ptr_nonnull(saved.newer);
    ck_assert_str_eq(((const bk_costume *)saved.newer)->note, "torn");
    ck_assert_str_eq(bk_ask("SELECT title FROM costume WHERE number = '2B'"), "Costume 2B");
    bk_store_close(store);
}
END_TEST

START_TEST(it_is_saved_over_a_newer_change_where_that_is_wanted)
{
    bk_store *store = store_with_salt_road();
    bk_job job = job_in(store);
    int asked = 0;
    FILLED(bk_costume, before, store, BK_COSTUMES, costume_id("2B"));
    bk_costume theirs = before;
    bk_costume ours = before;
    theirs.note = "torn";
    ours.title = "Sunday best";
    save(store, BK_COSTUMES, &before, &theirs);
    bk_record_saving saving = {.family = BK_COSTUMES,
                               .before = &before,
                               .after = &ours,
                               .same = same_title,
                               .context = &asked,
                               .over = true};
    bk_record_saved saved;
    MUST(bk_record_save(&job, &saving, &saved, &trouble));
    ck_assert_ptr_nonnull(saved.sentence);
    ck_assert_str_eq(bk_ask("SELECT title, coalesce(note, '-') FROM costume WHERE number = '2B'"),
                     "Sunday best|-");
    bk_store_close(store);
}
END_TEST

START_TEST(what_another_terminal_took_away_is_told_as_gone)
{
    bk_store *store = store_with_salt_road();
    FILLED(bk_costume, before, store, BK_COSTUMES, costume_id("2A"));
    bk_costume after = before;
    after.title = "Sunday best";
    take_away(store, BK_COSTUMES, before.id);
    bk_record_saved saved = save(store, BK_COSTUMES, &before, &after);
    ck_assert(saved.gone);
    ck_assert_ptr_null(saved.sentence);
    bk_store_close(store);
}
END_TEST

// --------------------------------------------------------------------------------------------- productions

START_TEST(a_production_is_made_put_away_and_brought_back)
{
    bk_store *store = store_with_salt_road();
    bk_job job = job_in(store);
    const char *sentence = NULL;
    bk_production fresh = {.name = "The Winter Fair",
                           .opens = DAY(9, 3),
                           .unit = BK_NO_WORD,
                           .measures_good_for = BK_NOT_KNOWN,
                           .put_away_on = BK_NO_DAY};
    bk_record_saved saved = save(store, BK_PRODUCTIONS, NULL, &fresh);
    ck_assert_str_eq(saved.sentence, "New: production The Winter Fair");
    MUST(bk_production_put_away(&job, saved.id, true, &sentence, &trouble));
    ck_assert_str_eq(sentence, "Put away: production The Winter Fair");
    ck_assert_str_eq(bk_ask("SELECT put_away_on FROM production WHERE name LIKE '%Fair'"), "2027-03-02");
    MUST(bk_production_put_away(&job, saved.id, true, &sentence, &trouble));
    ck_assert_ptr_null(sentence);
    MUST(bk_production_put_away(&job, saved.id, false, &sentence, &trouble));
    ck_assert_str_eq(sentence, "Back in work: production The Winter Fair");
    REFUSED(bk_production_put_away(&job, 999, true, &sentence, &trouble), BK_REFUSED, "no longer");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("record", a_record_is_read_with_names_lists_and_private_values,
             needs_fittings_orders_and_notes_name_what_they_belong_to, what_is_no_longer_there_is_not_found,
             a_new_record_is_one_entry_of_the_daybook_that_undo_takes_back,
             a_change_says_which_one_or_two_fields_it_touched, a_change_of_many_fields_names_none,
             where_nothing_differs_nothing_is_written, a_private_value_never_stands_in_a_sentence,
             a_private_value_is_put_and_taken_away, without_a_production_nothing_of_one_is_made,
             what_another_terminal_changed_meanwhile_is_told_and_nothing_is_saved,
             it_is_saved_over_a_newer_change_where_that_is_wanted,
             what_another_terminal_took_away_is_told_as_gone, a_production_is_made_put_away_and_brought_back)
