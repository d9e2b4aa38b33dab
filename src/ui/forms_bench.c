#include "bodkin/ui/form_choices.h"
#include "bodkin/ui/form_suggest.h"
#include "bodkin/ui/forms.h"

// What goes on at the bench: materials and their orders, fittings and notes.

static bool is_new(const bk_form *form)
{
    return bk_form_id(form) == 0;
}

static bool is_there(const bk_form *form)
{
    return bk_form_id(form) != 0;
}

static const bk_form_field material_fields[] = {
    {.column = "material", .label = "material", .help = "what it is called in the workroom and on orders"},
    {.column = "unit", .label = "unit", .help = "what it is counted in", .choices = bk_choose_material_units},
    {.column = "on_hand",
     .label = "on the shelf",
     .help = "how much lies there now, or empty; it is counted in Materials later",
     .asked = is_new,
     .unit = bk_unit_in_form},
    {.column = "width", .label = "width", .help = "of cloth, from selvedge to selvedge"},
    {.column = "supplier", .label = "supplier", .help = "where it is bought", .choices = bk_choose_suppliers},
    {.column = "price", .label = "price", .help = "of one unit; only the maker sees it"},
    {.column = "note", .label = "note", .help = "how to wash, press and cut it", .whole = true},
};

static const bk_form_field order_fields[] = {
    {.column = "material",
     .label = "material",
     .help = "what is ordered",
     .choices = bk_choose_materials,
     .makes = {&bk_material_form}},
    {.column = "quantity", .label = "quantity", .help = "how much", .unit = bk_unit_of_material},
    {.column = "due_on", .label = "due", .help = "the day it is promised; empty: no day"},
    {.column = "from",
     .label = "from",
     .help = "who sends it",
     .choices = bk_choose_suppliers,
     .suggests = bk_suggest_supplier},
    {.column = "cost", .label = "cost", .help = "of the whole order; only the maker sees it"},
    {.column = "ordered_on",
     .label = "ordered on",
     .help = "the day it was ordered",
     .suggests = bk_suggest_today},
    {.column = "arrived_on",
     .label = "arrived on",
     .help = "the day it came, or empty; then it lies on the shelf",
     .asked = is_there},
};

static const bk_form_field fitting_fields[] = {
    {.column = "piece",
     .label = "piece",
     .help = "what is tried on",
     .choices = bk_choose_pieces,
     .makes = {&bk_piece_form}},
    {.column = "step",
     .label = "step",
     .help = "which fitting it is, a step of the piece",
     .choices = bk_choose_fit_steps,
     .suggests = bk_suggest_fit_step},
    {.column = "booked_at", .label = "when", .help = "the day, and the time if there is one yet"},
    {.column = "performer",
     .label = "performer",
     .help = "who comes; empty is who plays the role",
     .choices = bk_choose_performers,
     .makes = {&bk_performer_form}},
    {.column = "minutes", .label = "minutes", .help = "how long it takes; empty is the step's"},
    {.column = "held_on", .label = "held on", .help = "the day it took place", .asked = is_there},
    {.column = "outcome",
     .label = "outcome",
     .help = "what came of it",
     .choices = bk_choose_outcomes,
     .asked = is_there},
    {.column = "note", .label = "note", .help = "what to change", .whole = true},
};

static const bk_form_field note_fields[] = {
    {.column = "what", .label = "what", .help = "what was seen, asked for or decided", .whole = true},
    {.column = "costume",
     .label = "costume",
     .help = "which one it is about, or empty",
     .choices = bk_choose_costumes,
     .makes = {&bk_costume_form}},
    {.column = "piece",
     .label = "piece",
     .help = "which piece, or empty",
     .choices = bk_choose_pieces,
     .makes = {&bk_piece_form}},
    {.column = "from", .label = "from", .help = "where the note comes from", .choices = bk_choose_sources},
    {.column = "who",
     .label = "who",
     .help = "whose note it is",
     .choices = bk_choose_people,
     .makes = {&bk_person_form}},
    {.column = "noted_on", .label = "noted on", .help = "the day", .suggests = bk_suggest_today},
    {.column = "step",
     .label = "step",
     .help = "the step it became, or empty",
     .choices = bk_choose_steps,
     .asked = is_there},
    {.column = "done_on",
     .label = "done on",
     .help = "the day it was dealt with, or empty",
     .asked = is_there},
};

const bk_form_kind bk_material_form =
    BK_RECORD_FORM("Material", BK_SHEET_MATERIALS, BK_MATERIALS, material_fields);
const bk_form_kind bk_order_form = BK_RECORD_FORM("Order", BK_SHEET_ORDERS, BK_ORDERS, order_fields);
const bk_form_kind bk_fitting_form =
    BK_RECORD_FORM("Fitting", BK_SHEET_FITTINGS, BK_FITTINGS, fitting_fields);
const bk_form_kind bk_note_form = BK_RECORD_FORM("Note", BK_SHEET_NOTES, BK_NOTES, note_fields);
