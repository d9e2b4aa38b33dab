#include "bodkin/base/text.h"
#include "bodkin/ui/form_choices.h"
#include "bodkin/ui/form_suggest.h"
#include "bodkin/ui/forms.h"

// What is made and how: pieces, their steps and needs, and orders of work.

// ---------------------------------------------------------------------------------------------- when it is asked

static bool says(const bk_form *form, const char *column, const char *word)
{
    return bk_same_text(bk_form_text(form, column), word);
}

static bool filled(const bk_form *form, const char *column)
{
    return bk_form_text(form, column)[0] != '\0';
}

static bool goes_back(const bk_form *form)
{
    return says(form, "origin", "hire") || says(form, "origin", "borrow") || filled(form, "due_back") ||
           filled(form, "returned_on");
}

static bool comes_from_somebody(const bk_form *form)
{
    return (filled(form, "origin") && !says(form, "origin", "make")) || filled(form, "from") ||
           filled(form, "cost");
}

static bool is_out(const bk_form *form)
{
    return filled(form, "out_with") || filled(form, "out_since") || filled(form, "back_by");
}

static bool is_done(const bk_form *form)
{
    return filled(form, "done_on") || filled(form, "done_by") || filled(form, "took");
}

// ---------------------------------------------------------------------------------------------------- pieces

static const bk_form_field piece_fields[] = {
    {.column = "costumes",
     .label = "worn with",
     .help = "the costumes it belongs to, with ; between them",
     .choices = bk_choose_costumes,
     .makes = {&bk_costume_form}},
    {.column = "piece",
     .label = "key",
     .help = "short, for labels: 4A-1 is the first piece of 4A",
     .suggests = bk_suggest_piece},
    {.column = "title", .label = "title", .help = "one garment or accessory, in a few words"},
    {.column = "origin", .label = "origin", .help = "where it comes from", .choices = bk_choose_origins},
    {.column = "place", .label = "place", .help = "where it hangs or lies", .choices = bk_choose_places},
    {.column = "out_with",
     .label = "out with",
     .help = "who has it outside the workroom; empty while it is here",
     .choices = bk_choose_everybody,
     .loose = true},
    {.column = "out_since", .label = "out since", .help = "the day it left", .asked = is_out},
    {.column = "back_by", .label = "back by", .help = "the day it is promised back", .asked = is_out},
    {.column = "from",
     .label = "from",
     .help = "whom it was bought, hired or borrowed from",
     .choices = bk_choose_suppliers,
     .asked = comes_from_somebody},
    {.column = "cost", .label = "cost", .help = "what it cost or costs", .asked = comes_from_somebody},
    {.column = "due_back", .label = "give back by", .help = "when it must be given back", .asked = goes_back},
    {.column = "returned_on", .label = "given back on", .help = "when it was given back", .asked = goes_back},
    {.column = "note",
     .label = "note",
     .help = "what to mind when it is made, worn or washed",
     .whole = true},
};

// ----------------------------------------------------------------------------------------------------- steps

// What a step of a piece and one of an order of work have in common, from the hands on.
#define STEP_END_FIELDS \
    {.column = "quickest", .label = "quickest", .help = "minutes when all goes well"}, \
        {.column = "longest", .label = "longest", .help = "minutes when it does not"}, \
        {.column = "level", \
         .label = "level", \
         .help = "who can do it; empty is the usual of its kind", \
         .choices = bk_choose_levels}, \
        {.column = "hands", .label = "hands", .help = "people it takes at once; empty is one"}, \
        {.column = "rest", .label = "rest", .help = "hours it must dry, hang or set before what follows"}, \
        {.column = "can_wait", \
         .label = "can wait", \
         .help = "whether it can wait until after the opening", \
         .choices = bk_choose_yes}, \
        {.column = "measures", \
         .label = "measures", \
         .help = "those it needs, with ; between them; also ones of your own", \
         .choices = bk_choose_measures, \
         .loose = true}, \
    { \
        .column = "note", .label = "note", .help = "how to do it, and what to mind", .whole = true \
    }

#define STEP_TITLE_FIELDS \
    {.column = "title", .label = "title", .help = "what is done, in a few words"}, \
    { \
        .column = "kind", .label = "kind", .help = "which kind of work it is", .choices = bk_choose_kinds \
    }

static const bk_form_field step_fields[] = {
    {.column = "piece",
     .label = "piece",
     .help = "what it is a step of",
     .choices = bk_choose_pieces,
     .makes = {&bk_piece_form}},
    STEP_TITLE_FIELDS,
    {.column = "minutes",
     .label = "minutes",
     .help = "how long it usually takes",
     .suggests = bk_suggest_minutes},
    {.column = "step",
     .label = "key",
     .help = "a short word for it, its own within the piece",
     .suggests = bk_suggest_key},
    {.column = "after",
     .label = "after",
     .help = "steps that must be done before, with ; between them",
     .choices = bk_choose_earlier},
    STEP_END_FIELDS,
    {.column = "done_on", .label = "done on", .help = "the day it was done", .asked = is_done},
    {.column = "done_by",
     .label = "done by",
     .help = "who did it",
     .choices = bk_choose_people,
     .asked = is_done,
     .makes = {&bk_person_form}},
    {.column = "took", .label = "took", .help = "minutes it really took", .asked = is_done},
};

static const bk_form_field need_fields[] = {
    {.column = "piece",
     .label = "piece",
     .help = "what it is for",
     .choices = bk_choose_pieces,
     .makes = {&bk_piece_form}},
    {.column = "step", .label = "step", .help = "the step that uses it up", .choices = bk_choose_steps},
    {.column = "material",
     .label = "material",
     .help = "what is used",
     .choices = bk_choose_materials,
     .makes = {&bk_material_form}},
    {.column = "quantity", .label = "quantity", .help = "how much", .unit = bk_unit_of_material},
};

static const bk_form_field work_fields[] = {
    {.column = "work", .label = "order of work", .help = "the kind of garment that these steps make"},
    {.column = "note", .label = "note", .help = "when to use it, and what it leaves out", .whole = true},
};

static const bk_form_field work_step_fields[] = {
    {.column = "work",
     .label = "order of work",
     .help = "what it is a step of",
     .choices = bk_choose_works,
     .makes = {&bk_work_form}},
    STEP_TITLE_FIELDS,
    {.column = "minutes",
     .label = "minutes",
     .help = "how long it usually takes",
     .suggests = bk_suggest_minutes},
    {.column = "step",
     .label = "key",
     .help = "a short word for it, its own within the order of work",
     .suggests = bk_suggest_work_key},
    {.column = "after",
     .label = "after",
     .help = "steps that must be done before, with ; between them",
     .choices = bk_choose_work_steps},
    STEP_END_FIELDS,
};

const bk_form_kind bk_piece_form = BK_RECORD_FORM("Piece", BK_SHEET_PIECES, BK_PIECES, piece_fields);
const bk_form_kind bk_step_form = BK_RECORD_FORM("Step", BK_SHEET_STEPS, BK_STEPS, step_fields);
const bk_form_kind bk_need_form = BK_RECORD_FORM("Need", BK_SHEET_NEEDS, BK_NEEDS, need_fields);
const bk_form_kind bk_work_form = BK_RECORD_FORM("Order of work", BK_SHEET_WORKS, BK_WORKS, work_fields);
const bk_form_kind bk_work_step_form =
    BK_RECORD_FORM("Step", BK_SHEET_WORK_STEPS, BK_WORK_STEPS, work_step_fields);
