#include "bodkin/ui/fitting_record_form.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/fitting_words.h"
#include "bodkin/ui/form.h"
#include "bodkin/ui/form_choices.h"
#include "bodkin/work/change.h"
#include "bodkin/work/noted_step.h"

// The form that records what came of the fitting of one piece, with what is to be altered.

enum { ALTERATIONS = 6, MOST_MINUTES = 100000 };

typedef struct came {
    int outcome;
    bk_day held_on;
    const char *note;
    const char *text[ALTERATIONS];
    int work[ALTERATIONS]; // into `works`
    int64_t minutes[ALTERATIONS];
    bk_day booked_on; // is not asked, nor is the next
    int seen;         // the outcome that stood there when the form was opened
    int line;
} came;

// Kinds of step, in their order, and that it is only noted.
enum { ONLY_NOTED = BK_KINDS, WORKS };
static const char *const work_items[WORKS] = {"source", "draft", "cut",   "tack", "machine", "press",
                                              "fit",    "hand",  "craft", "dye",  "no"};
static const bk_words works = {"kind of step, or no", work_items, WORKS};

// ------------------------------------------------------------------------------------------------- its columns

#define ALTERATION_COLUMNS(number) \
    {"alter" #number, false, BK_CELL_TEXT, offsetof(came, text[(number)-1]), \
     .example = "shorten the sleeves 1 cm"}, \
        {"work" #number,       false,          BK_CELL_WORD, offsetof(came, work[(number)-1]), \
         .example = "machine", .words = &works}, \
    { \
        "minutes" #number, false, BK_CELL_WHOLE, offsetof(came, minutes[(number)-1]), \
            .example = "15", .unit = "minutes", .most = MOST_MINUTES \
    }

static const bk_column columns[] = {
    {"outcome", false, BK_CELL_WORD, offsetof(came, outcome), .example = "fits", .words = &bk_outcome_words},
    {"held_on", false, BK_CELL_DAY, offsetof(came, held_on), .example = "2027-03-02"},
    {"note", false, BK_CELL_TEXT, offsetof(came, note), .example = "bring the shoes"},
    ALTERATION_COLUMNS(1),
    ALTERATION_COLUMNS(2),
    ALTERATION_COLUMNS(3),
    ALTERATION_COLUMNS(4),
    ALTERATION_COLUMNS(5),
    ALTERATION_COLUMNS(6),
    {"booked_on", false, BK_CELL_DAY, offsetof(came, booked_on), .example = "2027-03-02"},
    {"seen", false, BK_CELL_WORD, offsetof(came, seen), .example = "fits", .words = &bk_outcome_words},
};

static const bk_sheet sheet = BK_FORM_SHEET(came, columns, "fitting");

// -------------------------------------------------------------------------------------------------- what is asked

static bool is_filled(const bk_form *form, const char *column)
{
    return *bk_form_text(form, column) != '\0';
}

static bool was_held(const bk_form *form)
{
    const char *outcome = bk_form_text(form, "outcome");
    return bk_same_text(outcome, bk_word_text(&bk_outcome_words, BK_FITS)) ||
           bk_same_text(outcome, bk_word_text(&bk_outcome_words, BK_AGAIN));
}

static bool is_said(const bk_form *form)
{
    return is_filled(form, "outcome");
}

static bool never(const bk_form *form)
{
    (void)form;
    return false;
}

static const char *suggest_held(const bk_form *form, bk_arena *arena)
{
    bk_day today = bk_form_wall(form)->today, booked = today;
    char day[BK_DAY_ROOM];
    (void)bk_day_read(bk_form_text(form, "booked_on"), &booked);
    return bk_arena_text(arena, bk_day_write(booked < today ? booked : today, day));
}

// Kinds of work, and that it is only noted.
static bk_status choose_work(const bk_form *form, bk_arena *arena, bk_form_choices *choices, bk_error *error)
{
    bk_form_choices kinds = {0};
    bk_status status = bk_choose_kinds(form, arena, &kinds, error);
    bk_form_choice *items = bk_arena_clear(arena, kinds.count + 1, sizeof *items);
    items[0] = (bk_form_choice){work_items[ONLY_NOTED], "no step, it is only noted"};
    for (size_t i = 0; i < kinds.count; i++)
        items[i + 1] = kinds.items[i];
    *choices = (bk_form_choices){items, kinds.count + 1};
    return status;
}

// Most of what a fitting asks for is done on the machine, as in the ready orders of work.
static const char *usual_work(const bk_form *form, bk_arena *arena)
{
    (void)form;
    (void)arena;
    return bk_word_text(&bk_kind_words, BK_MACHINE);
}

static const char *usual_minutes(const bk_form *form, bk_arena *arena)
{
    (void)form;
    return bk_arena_print(arena, "%d", BK_NOTE_MINUTES);
}

// The questions of one alteration: it is asked when the one before is filled, its work when it is filled itself, and how
// long that takes when it becomes a step.
#define ALTERATION_ASKED(number, before) \
    static bool asks_text_##number(const bk_form *form) \
    { \
        return is_filled(form, "alter" #number) || (before); \
    } \
    static bool asks_work_##number(const bk_form *form) \
    { \
        return is_filled(form, "alter" #number); \
    } \
    static bool asks_minutes_##number(const bk_form *form) \
    { \
        return is_filled(form, "alter" #number) && \
               !bk_same_text(bk_form_text(form, "work" #number), work_items[ONLY_NOTED]); \
    }

ALTERATION_ASKED(1, was_held(form))
ALTERATION_ASKED(2, is_filled(form, "alter1"))
ALTERATION_ASKED(3, is_filled(form, "alter2"))
ALTERATION_ASKED(4, is_filled(form, "alter3"))
ALTERATION_ASKED(5, is_filled(form, "alter4"))
ALTERATION_ASKED(6, is_filled(form, "alter5"))

#define ALTERATION_FIELDS(number) \
    {.column = "alter" #number, \
     .label = "to alter", \
     .help = "one thing a line; a step before this fitting, or behind it where it fits; Tab: its kind", \
     .asked = asks_text_##number}, \
        {.column = "work" #number, \
         .label = "step of kind", \
         .help = "what kind of work it is; no: it is only noted", \
         .choices = choose_work, \
         .asked = asks_work_##number, \
         .suggests = usual_work, \
         .beside = true}, \
    { \
        .column = "minutes" #number, .label = "minutes", .help = "how long it may take", \
        .asked = asks_minutes_##number, .suggests = usual_minutes, .beside = true \
    }

static const bk_form_field fields[] = {
    {.column = "outcome",
     .label = "what came of it",
     .help = "Empty: not said yet. Count the pins when it is off.",
     .choices = bk_choose_outcomes},
    {.column = "held_on",
     .label = "held on",
     .help = "the day it took place",
     .asked = was_held,
     .suggests = suggest_held},
    {.column = "note", .label = "note", .help = "of the fitting itself", .whole = true, .asked = is_said},
    ALTERATION_FIELDS(1),
    ALTERATION_FIELDS(2),
    ALTERATION_FIELDS(3),
    ALTERATION_FIELDS(4),
    ALTERATION_FIELDS(5),
    ALTERATION_FIELDS(6),
    {.column = "booked_on", .label = "booked on", .help = "the day of the call", .asked = never},
    {.column = "seen", .label = "seen", .help = "what stood there before", .asked = never},
};

// ------------------------------------------------------------------------------------------------------- saving

static bool is_altered(const came *filled, size_t alteration)
{
    return filled->text[alteration] && !bk_text_blank(filled->text[alteration]);
}

// What is to be altered, in `arena`.
static bk_fitting_note *read_notes(const came *filled, bk_arena *arena, size_t *count)
{
    bk_fitting_note *notes = bk_arena_clear(arena, ALTERATIONS, sizeof *notes);
    *count = 0;
    for (size_t i = 0; i < ALTERATIONS; i++)
        if (is_altered(filled, i))
            notes[(*count)++] = (bk_fitting_note){filled->text[i], filled->work[i] != ONLY_NOTED,
                                                  filled->work[i], filled->minutes[i]};
    return notes;
}

// Every alteration has a kind, or is only noted.
static bk_status check_kinds(const came *filled, const bk_job *job, bk_form_saved *saved, bk_error *error)
{
    for (size_t i = 0; i < ALTERATIONS; i++) {
        if (!is_altered(filled, i) || filled->work[i] != BK_NO_WORD)
            continue;
        saved->column = bk_arena_print(job->arena, "work%zu", i + 1);
        return bk_fail(error, BK_REFUSED, "What kind of step is it? Pick one, or no where it is only noted.");
    }
    return BK_OK;
}

static bool says_nothing_new(const came *filled, const bk_fitting_line *fitting)
{
    bool same_day = filled->outcome == BK_MISSED || filled->held_on == fitting->held_on;
    return filled->outcome == fitting->outcome &&
           (filled->outcome == BK_NO_WORD || (same_day && bk_same_text(filled->note, fitting->note)));
}

// The fitting as it stands now; BK_REFUSED where another terminal has taken it away.
static bk_status read_fitting(const bk_form *form, const bk_job *job, const bk_fitting_line **fitting,
                              bk_error *error)
{
    bk_fitting_list list;
    size_t at = 0;
    bk_status status = bk_fittings_read(job->store, job->production, job->today, job->arena, &list, error);
    if (status)
        return status;
    const bk_fitting_call *call = bk_fitting_call_of(&list, bk_form_about(form), &at);
    if (!call)
        return bk_fail(error, BK_REFUSED,
                       "This fitting is no longer there; another terminal has called it off.");
    *fitting = &call->fittings[at];
    return BK_OK;
}

// Where nothing is said of it, it stays as it is; where something was, that is taken back.
// Both stand in the daybook; who saves last is told what the other one said.
static const char *with_the_other(const char *sentence, const came *filled, const bk_fitting_line *fitting,
                                  bk_arena *arena)
{
    const char *other = bk_word_text(&bk_outcome_words, fitting->outcome);
    if (!sentence || fitting->outcome == filled->seen)
        return sentence;
    return bk_arena_print(arena, "%s; another terminal meanwhile %s%s", sentence,
                          other ? "recorded: " : "took back what was recorded", other ? other : "");
}

static bk_status save(const bk_form *form, const bk_job *job, const void *record, bk_form_saved *saved,
                      bk_error *error)
{
    const came *filled = record;
    const bk_fitting_line *fitting = NULL;
    bk_fitting_result result = {.fitting_id = bk_form_about(form),
                                .outcome = filled->outcome,
                                .held_on = filled->held_on,
                                .note = filled->note ? filled->note : ""};
    bk_status status = check_kinds(filled, job, saved, error);
    if (!status)
        status = read_fitting(form, job, &fitting, error);
    if (status)
        return status;
    saved->id = result.fitting_id;
    saved->column = "outcome";
    result.notes = read_notes(filled, job->arena, &result.note_count);
    if (filled->outcome == BK_NO_WORD && result.note_count > 0)
        return bk_fail(
            error, BK_REFUSED,
            "Say what came of it, fits, again or missed; what is to be altered is kept with that.");
    if (result.note_count == 0 && says_nothing_new(filled, fitting))
        return BK_OK;
    if (was_held(form))
        saved->column = "held_on";
    status = bk_fitting_record(job, &result, &saved->sentence, error);
    saved->sentence = status ? NULL : with_the_other(saved->sentence, filled, fitting, job->arena);
    return status;
}

static const bk_form_kind kind = {.name = "What came of it",
                                  .sheet = &sheet,
                                  .fields = fields,
                                  .field_count = sizeof fields / sizeof fields[0],
                                  .family = BK_FITTINGS,
                                  .save = save};

void bk_fitting_open_record(bk_screen *screen, const bk_fitting_call *call, size_t at)
{
    const bk_fitting_line *fitting = &call->fittings[at];
    bk_arena *arena = bk_arena_new();
    came begun;
    bk_sheet_clear(&sheet, &begun);
    begun.outcome = begun.seen = fitting->outcome;
    begun.held_on = fitting->held_on;
    begun.note = fitting->note;
    begun.booked_on = call->moment.day;
    const char *which = call->count > 1 ? bk_arena_print(arena, "%zu of %zu: ", at + 1, call->count) : "";
    const char *title = bk_arena_print(arena, "%s%s %s: %s", which, fitting->piece, fitting->piece_title,
                                       fitting->step_title);
    bk_form_open(
        screen, &kind,
        &(bk_form_start){.record = &begun, .about = fitting->id, .title = title, .first = "outcome"});
    bk_arena_free(arena);
}
