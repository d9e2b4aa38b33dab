#ifndef BODKIN_TESTS_WORK_SHOW_H
#define BODKIN_TESTS_WORK_SHOW_H

#include "bodkin/work/import.h"
#include "support/shell.h"
#include "support/testing.h"

/// What went wrong in the last call of MUST or REFUSED.
extern bk_error trouble;

/// The call succeeds, or the test ends with its sentence.
#define MUST(call) ck_assert_msg((call) == BK_OK, "%s", trouble.text)

/// The call fails with that status and a sentence that holds `words`.
#define REFUSED(call, expected, words) \
    do { \
        ck_assert_int_eq((call), (expected)); \
        ck_assert_msg(strstr(trouble.text, (words)) != NULL, "\"%s\" lacks \"%s\"", trouble.text, (words)); \
    } while (0)

/// Opens a store of the test's folder, made where it is missing: `workroom.db`, or one of another name.
/// Closed by the test.
bk_store *open_store(void);
bk_store *open_store_named(const char *name);

/// For texts that live as long as the test.
bk_arena *texts(void);

/// The day of the imports.
bk_day today(void);

/// "The Salt Road" as a folder of sheets, every family in it and no list in an order that sorting would give.
/// Freed by bk_folder_free; what a test changes in it stays its own.
bk_folder *salt_road(void);

/// The same production with nothing but its name and its opening.
bk_folder *bare_show(const char *name, bk_day opens);

/// Takes a folder in as one change; the id of its entry. What was noted is in `*report`, unless NULL.
int64_t take_in(bk_store *store, const bk_folder *folder, bool replace, bk_import_report *report);

/// All notes of a report, a line each.
const char *notes_of(const bk_import_report *report);

/// Puts rows into a folder: `ROWS(folder, costumes, {...}, {...})`. They are copied.
#define ROWS(folder, name, type, ...) \
    put_rows((folder)->arena, &(folder)->name, (const type[]){__VA_ARGS__}, sizeof(type), \
             sizeof((const type[]){__VA_ARGS__}) / sizeof(type))
void put_rows(bk_arena *arena, void *rows, const void *items, size_t size, size_t count);

// Rows whose other cells are empty.
#define DATE(what_, on_) \
    { \
        .what = (what_), .on = (on_), .at = BK_NO_TIME \
    }
#define PERSON(name_, skills_) \
    { \
        .name = (name_), .skills = (skills_), .from = BK_NO_DAY, .until = BK_NO_DAY \
    }
#define AWAY(who_, from_, to_, reason_) \
    { \
        .who = (who_), .from = (from_), .to = (to_), .reason = (reason_) \
    }
#define PERFORMER(name_, contact_, note_) \
    { \
        .name = (name_), .contact = (contact_), .measures_good_for = BK_NOT_KNOWN, .note = (note_) \
    }
#define MEASURE(performer_, day_, name_, value_) \
    { \
        .performer = (performer_), .taken_on = (day_), .name = (name_), .value = (value_) \
    }
#define ROLE(name_, performer_, cover_) \
    { \
        .name = (name_), .performer = (performer_), .cover = (cover_) \
    }
#define COSTUME(number_, role_, due_) \
    { \
        .number = (number_), .role = (role_), .title = "Costume " number_, .due = (due_) \
    }
#define PIECE(name_, costumes_, origin_) \
    { \
        .name = (name_), .costumes = (costumes_), .title = "Piece " name_, .origin = (origin_), \
        .out_since = BK_NO_DAY, .back_by = BK_NO_DAY, .cost = BK_NO_AMOUNT, .due_back = BK_NO_DAY, \
        .returned_on = BK_NO_DAY \
    }
#define STEP(piece_, key_, kind_, minutes_, after_) \
    { \
        .piece = (piece_), .key = (key_), .title = "Step " key_, .kind = (kind_), .minutes = (minutes_), \
        .quickest = BK_NOT_KNOWN, .longest = BK_NOT_KNOWN, .after = (after_), .hands = BK_NOT_KNOWN, \
        .level = BK_NOT_KNOWN, .rest_minutes = BK_NOT_KNOWN, .done_on = BK_NO_DAY, .took = BK_NOT_KNOWN \
    }
#define MATERIAL(name_, unit_, on_hand_) \
    { \
        .name = (name_), .unit = (unit_), .on_hand = (on_hand_), .width = BK_NO_AMOUNT, \
        .price = BK_NO_AMOUNT \
    }
#define NEED(piece_, step_, material_, quantity_) \
    { \
        .piece = (piece_), .step = (step_), .material = (material_), .quantity = (quantity_) \
    }
#define ORDER(material_, quantity_, ordered_, due_, arrived_) \
    { \
        .material = (material_), .quantity = (quantity_), .ordered_on = (ordered_), .due_on = (due_), \
        .arrived_on = (arrived_), .cost = BK_NO_AMOUNT \
    }
#define FITTING(piece_, step_, day_) \
    { \
        .piece = (piece_), .step = (step_), .booked_at = {(day_), BK_NO_TIME}, .minutes = BK_NOT_KNOWN, \
        .held_on = BK_NO_DAY, .outcome = BK_NO_WORD \
    }

#define WORK_STEP(work_, key_, kind_, minutes_, after_) \
    { \
        .work = (work_), .key = (key_), .title = "Step " key_, .kind = (kind_), .minutes = (minutes_), \
        .quickest = BK_NOT_KNOWN, .longest = BK_NOT_KNOWN, .after = (after_), .hands = BK_NOT_KNOWN, \
        .level = BK_NOT_KNOWN, .rest_minutes = BK_NOT_KNOWN \
    }
#define NOTE(day_, costume_, what_) \
    { \
        .noted_on = (day_), .source = BK_NO_WORD, .costume = (costume_), .what = (what_), \
        .done_on = BK_NO_DAY \
    }

/// A day of 2027.
#define DAY(month, day) bk_day_of(2027, (month), (day))
/// A quantity in whole units and tenths.
#define TENTHS(tenths) ((tenths) * (BK_QUANTITY_ONE / 10))

#endif
