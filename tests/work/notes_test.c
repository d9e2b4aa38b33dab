#include "bodkin/work/notes.h"

#include <string.h>

#include "bodkin/trade/words.h"
#include "bodkin/work/tick.h"
#include "work/bench.h"

static bk_note about(const char *what)
{
    return (bk_note){.what = what, .source = BK_NO_WORD, .noted_on = BK_NO_DAY, .done_on = BK_NO_DAY};
}

static int64_t add(bk_job job, bk_note note, const char *says)
{
    const char *sentence = NULL;
    int64_t id = 0;
    MUST(bk_note_add(&job, &note, &id, &sentence, &trouble));
    ck_assert_str_eq(sentence, says);
    ck_assert_str_eq(newest_entry(), says);
    return id;
}

static int64_t become(bk_job job, bk_note_step wanted)
{
    const char *sentence = NULL;
    int64_t step = 0;
    MUST(bk_note_to_step(&job, &wanted, &step, &sentence, &trouble));
    return step;
}

static const char *notes(void)
{
    return bk_ask(
        "SELECT noted_on, coalesce(source, '-'), coalesce(who, '-'), coalesce(number, '-'), "
        "coalesce(piece.name, '-'), coalesce(key, '-'), what, coalesce(note.done_on, '-') FROM note "
        "LEFT JOIN costume ON costume.id = costume_id LEFT JOIN piece ON piece.id = note.piece_id "
        "LEFT JOIN step ON step.id = step_id ORDER BY note.position");
}

/// Keys of a piece in their order, each with the keys that it comes after.
static const char *order_of(const char *piece)
{
    return bk_ask(bk_arena_print(
        texts(),
        "SELECT group_concat(key || after, ' ') FROM (SELECT step.key, coalesce((SELECT '<' || "
        "group_concat(earlier.key, ',') FROM (SELECT earlier.key FROM step_after JOIN step AS earlier ON "
        "earlier.id = after_id WHERE step_id = step.id ORDER BY step_after.position) AS earlier), '') AS "
        "after FROM step JOIN piece ON piece.id = piece_id WHERE piece.name = '%s' ORDER BY step.position)",
        piece));
}

START_TEST(notes_are_kept_in_the_order_in_which_they_were_made)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *before = bk_records();
    bk_note first = about("too new for a miller");
    first.source = BK_FROM_REHEARSAL;
    first.who = "the director";
    first.costume_id = ask_id("SELECT id FROM costume WHERE number = '4A'");
    add(job, first, "Noted: 4A: too new for a miller");
    expect_undone(store, before);
    bk_note second = about("cuffs catch");
    second.piece_id = piece_id("4A-2");
    add(job, second, "Noted: 4A-2: cuffs catch");
    bk_note third = about("mind the nap");
    third.step_id = step_id("4A-1", "sew");
    third.noted_on = DAY(2, 28);
    add(job, third, "Noted: 4A-1 Step sew: mind the nap");
    add(job, about("flour on everything"), "Noted: flour on everything");
    ck_assert_str_eq(notes(), "2027-03-02|rehearsal|the director|4A|-|-|too new for a miller|-\n"
                              "2027-03-02|-|-|-|4A-2|-|cuffs catch|-\n"
                              "2027-02-28|-|-|-|4A-1|sew|mind the nap|-\n"
                              "2027-03-02|-|-|-|-|-|flour on everything|-");
    bk_store_close(store);
}
END_TEST

START_TEST(a_long_note_is_cut_in_the_daybook_and_kept_whole)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    static const char what[] =
        "the left sleeve twists when she lifts the basket above her head in the market";
    add(job, about(what), "Noted: the left sleeve twists when she lifts the basket above her…");
    ck_assert_str_eq(bk_ask("SELECT what FROM note"), what);
    bk_store_close(store);
}
END_TEST

START_TEST(notes_are_read_with_the_names_of_what_they_are_about)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    bk_note_list list;
    bk_note note = about("mind the nap");
    note.step_id = step_id("4A-1", "toile");
    note.costume_id = ask_id("SELECT id FROM costume WHERE number = '4B'");
    add(job, note, "Noted: 4A-1 Step toile: mind the nap");
    add(job, about("flour on everything"), "Noted: flour on everything");
    MUST(bk_notes_read(store, job.production, texts(), &list, &trouble));
    ck_assert_uint_eq(list.count, 2);
    ck_assert_str_eq(list.items[0].record.costume, "4B");
    ck_assert_str_eq(list.items[0].record.piece, "4A-1");
    ck_assert_str_eq(list.items[0].record.step, "toile");
    ck_assert_str_eq(list.items[0].step_title, "Step toile");
    ck_assert(!list.items[0].step_done);
    ck_assert_ptr_null(list.items[1].record.piece);
    ck_assert_ptr_null(list.items[1].step_title);
    bk_ask("INSERT INTO fitting (production_id, step_id, position, booked_at, outcome) SELECT production_id, "
           "id, 1, '2027-03-01', 'fits' FROM step WHERE key = 'toile'");
    MUST(bk_notes_read(store, job.production, texts(), &list, &trouble));
    ck_assert(list.items[0].step_done);
    bk_store_close(store);
}
END_TEST

START_TEST(a_note_is_done_with_and_opened_again)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    int64_t id = add(job, about("flour on everything"), "Noted: flour on everything");
    const char *before = bk_records();
    MUST(bk_note_done(&job, id, true, &sentence, &trouble));
    ck_assert_str_eq(sentence, "Note done: flour on everything");
    ck_assert_str_eq(bk_ask("SELECT done_on FROM note"), "2027-03-02");
    expect_undone(store, before);
    MUST(bk_note_done(&job, id, true, &sentence, &trouble));
    ck_assert_ptr_null(sentence);
    MUST(bk_note_done(&job, id, false, &sentence, &trouble));
    ck_assert_str_eq(sentence, "Note open again: flour on everything");
    ck_assert_str_eq(bk_ask("SELECT coalesce(done_on, '-') FROM note"), "-");
    bk_store_close(store);
}
END_TEST

START_TEST(a_note_becomes_the_last_step_of_a_piece)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    bk_note note = about("Cuffs catch on the basket\nsays the director");
    note.costume_id = ask_id("SELECT id FROM costume WHERE number = '4A'");
    int64_t id = add(job, note, "Noted: 4A: Cuffs catch on the basket says the director");
    const char *before = bk_records();
    bk_note_step wanted = {id, piece_id("4A-2"), BK_HAND, BK_NOT_KNOWN, 0};
    int64_t step = 0;
    MUST(bk_note_to_step(&job, &wanted, &step, &sentence, &trouble));
    ck_assert_str_eq(sentence, "Step from a note: 4A-2 Cuffs catch on the basket");
    ck_assert_int_eq(step, step_id("4A-2", "cuffs-catch"));
    ck_assert_str_eq(order_of("4A-2"), "cut fit<cut hem<fit cuffs-catch");
    ck_assert_str_eq(bk_ask("SELECT title, kind, minutes FROM step WHERE key = 'cuffs-catch'"),
                     "Cuffs catch on the basket|hand|15");
    ck_assert_str_eq(
        bk_ask("SELECT piece_id = (SELECT id FROM piece WHERE name = '4A-2'), step_id FROM note"),
        bk_arena_print(texts(), "1|%lld", (long long)step));
    expect_undone(store, before);
    bk_store_close(store);
}
END_TEST

START_TEST(a_note_becomes_a_step_before_another_which_comes_after_it)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    int64_t id = add(job, about("let out the sides"), "Noted: let out the sides");
    const char *before = bk_records();
    become(job, (bk_note_step){id, piece_id("4A-2"), BK_MACHINE, 30, step_id("4A-2", "fit")});
    ck_assert_str_eq(order_of("4A-2"), "cut let-out fit<cut,let-out hem<fit");
    expect_undone(store, before);
    // The other pieces stay in their order.
    ck_assert_str_eq(order_of("4A-1"), "cut toile<cut sew<toile");
    ck_assert_str_eq(order_of("5A-1"), "fit");
    ck_assert_str_eq(bk_ask("SELECT count(*) - count(DISTINCT position) FROM step"), "0");
    bk_store_close(store);
}
END_TEST

typedef struct key_of_text {
    const char *text, *key;
} key_of_text;

static const key_of_text keys[] = {
    {"Let out the sides", "let-out"},
    {"let out the sides", "let-out-2"},
    {"  hem; 2 cm/shorter", "hem-2"},
    {"ärmel weiter", "ärmel-weiter"},
    {"!?", "note"},
    {"...", "note-2"},
    {"straighten-the-hem", "straighten"},
    {"let the back down 2 cm", "let"},
    {"The shawl slips", "shawl"},
    {"to the theatre on foot", "theatre"},
    {"theatre bag", "theatre-bag"},
    {"the", "note-3"},
    {"unbelievably-longwinded", "unbelievably-lon"},
    {"shorten", "shorten"},
};

START_TEST(the_key_of_a_step_is_made_of_the_first_words_and_new)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
        bk_note note = about(keys[i].text);
        const char *sentence = NULL;
        int64_t id = 0;
        MUST(bk_note_add(&job, &note, &id, &sentence, &trouble));
        int64_t step = become(job, (bk_note_step){id, piece_id("5A-1"), BK_HAND, 5, 0});
        ck_assert_str_eq(
            bk_ask(bk_arena_print(texts(), "SELECT key FROM step WHERE id = %lld", (long long)step)),
            keys[i].key);
    }
    bk_store_close(store);
}
END_TEST

START_TEST(a_note_that_became_a_step_becomes_no_second_one_while_that_is_there)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    int64_t id = add(job, about("let out the sides"), "Noted: let out the sides");
    bk_note_step wanted = {id, piece_id("4A-2"), BK_MACHINE, 30, 0};
    int64_t step = become(job, wanted);
    const char *before = bk_ask(".dump");
    REFUSED(bk_note_to_step(&job, &wanted, NULL, &sentence, &trouble), BK_REFUSED,
            "This note has become a step already: let-out.");
    ck_assert_str_eq(bk_ask(".dump"), before);
    bk_ask(bk_arena_print(texts(), "UPDATE note SET step_id = NULL; DELETE FROM step WHERE id = %lld",
                          (long long)step));
    become(job, wanted);
    bk_store_close(store);
}
END_TEST

START_TEST(a_note_about_a_step_can_become_another)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    bk_note note = about("let out the sides");
    note.step_id = step_id("4A-2", "cut");
    int64_t id = add(job, note, "Noted: 4A-2 Step cut: let out the sides");
    become(job, (bk_note_step){id, piece_id("4A-2"), BK_MACHINE, 30, 0});
    ck_assert_str_eq(order_of("4A-2"), "cut fit<cut hem<fit let-out");
    bk_store_close(store);
}
END_TEST

START_TEST(what_cannot_be_noted_is_told_and_changes_nothing)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    int64_t id = add(job, about("let out the sides"), "Noted: let out the sides");
    const char *before = bk_ask(".dump");
    bk_note note = about(" \n");
    REFUSED(bk_note_add(&job, &note, NULL, &sentence, &trouble), BK_REFUSED, "The note says nothing");
    note = about("x");
    note.piece_id = 999;
    REFUSED(bk_note_add(&job, &note, NULL, &sentence, &trouble), BK_REFUSED, "The piece of this note");
    note = about("x");
    note.costume_id = 999;
    REFUSED(bk_note_add(&job, &note, NULL, &sentence, &trouble), BK_REFUSED, "The costume of this note");
    note = about("x");
    note.step_id = 999;
    REFUSED(bk_note_add(&job, &note, NULL, &sentence, &trouble), BK_REFUSED, "no longer");
    REFUSED(bk_note_done(&job, 999, true, &sentence, &trouble), BK_REFUSED, "This note is no longer");
    bk_note_step wanted = {id, 999, BK_HAND, 5, 0};
    REFUSED(bk_note_to_step(&job, &wanted, NULL, &sentence, &trouble), BK_REFUSED, "The piece of this note");
    wanted = (bk_note_step){id, piece_id("4A-2"), BK_NO_WORD, 5, 0};
    REFUSED(bk_note_to_step(&job, &wanted, NULL, &sentence, &trouble), BK_REFUSED, "Say of what kind");
    wanted = (bk_note_step){id, piece_id("4A-2"), BK_HAND, -1, 0};
    REFUSED(bk_note_to_step(&job, &wanted, NULL, &sentence, &trouble), BK_REFUSED, "no less than 0 minutes");
    wanted = (bk_note_step){id, piece_id("4A-2"), BK_HAND, 5, step_id("4A-1", "sew")};
    REFUSED(bk_note_to_step(&job, &wanted, NULL, &sentence, &trouble), BK_REFUSED, "no longer of 4A-2");
    ck_assert_str_eq(bk_ask(".dump"), before);
    bk_store_close(store);
}
END_TEST

START_TEST(a_note_is_about_something_of_its_own_production)
{
    bk_store *store = bench_store();
    bk_job job = bench_job(store);
    const char *sentence = NULL;
    bk_note note = about("let out the sides");
    note.piece_id = piece_id("4A-2");
    note.production_id = job.production + 1;
    REFUSED(bk_note_add(&job, &note, NULL, &sentence, &trouble), BK_REFUSED, "not in its production");
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("notes", notes_are_kept_in_the_order_in_which_they_were_made,
             a_long_note_is_cut_in_the_daybook_and_kept_whole,
             notes_are_read_with_the_names_of_what_they_are_about, a_note_is_done_with_and_opened_again,
             a_note_becomes_the_last_step_of_a_piece,
             a_note_becomes_a_step_before_another_which_comes_after_it,
             the_key_of_a_step_is_made_of_the_first_words_and_new,
             a_note_that_became_a_step_becomes_no_second_one_while_that_is_there,
             a_note_about_a_step_can_become_another, what_cannot_be_noted_is_told_and_changes_nothing,
             a_note_is_about_something_of_its_own_production)
