#include "bodkin/ui/form_choices.h"
#include "bodkin/ui/form_suggest.h"
#include "bodkin/ui/forms.h"

// Those who work, those who perform, when they are away, and what those who work share.

#define HOURS(day, name) \
    { \
        .column = day, .label = name, .help = "hours in the workroom on a " name ", or empty" \
    }

static const bk_form_field person_fields[] = {
    {.column = "person", .label = "person", .help = "who helps to make the costumes"},
    {.column = "skills",
     .label = "skills",
     .help = "kinds of step this person can do, with ; between them",
     .choices = bk_choose_kinds},
    HOURS("mon", "Monday"),
    HOURS("tue", "Tuesday"),
    HOURS("wed", "Wednesday"),
    HOURS("thu", "Thursday"),
    HOURS("fri", "Friday"),
    HOURS("sat", "Saturday"),
    HOURS("sun", "Sunday"),
    {.column = "from", .label = "from", .help = "first day in the workroom; empty: here already"},
    {.column = "until", .label = "until", .help = "last day in the workroom; empty: stays"},
    {.column = "note", .label = "note", .help = "anything to know", .whole = true},
};

static const bk_form_field away_fields[] = {
    {.column = "who",
     .label = "who",
     .help = "who is away: a person or a performer",
     .choices = bk_choose_everybody,
     .makes = {&bk_person_form, &bk_performer_form}},
    {.column = "from", .label = "from", .help = "first day away"},
    {.column = "to", .label = "to", .help = "last day away", .suggests = bk_suggest_same_day},
    {.column = "reason", .label = "reason", .help = "why, or empty"},
};

static const bk_form_field performer_fields[] = {
    {.column = "performer", .label = "performer", .help = "a person on stage, by name"},
    {.column = "contact", .label = "contact", .help = "how to be reached; only the maker sees it"},
    {.column = "measures_good_for",
     .label = "measures good for",
     .help = "days, for a body that changes; empty is the production's"},
    {.column = "note",
     .label = "note",
     .help = "allergies, corsets, shoes, what to be careful of",
     .whole = true},
};

static const bk_form_field equipment_fields[] = {
    {.column = "equipment",
     .label = "equipment",
     .help = "what is shared: the cutting table, the machines ..."},
    {.column = "kinds",
     .label = "kinds of step",
     .help = "each occupies one of it while it is worked on; with ; between them",
     .choices = bk_choose_kinds},
    {.column = "count", .label = "how many", .help = "how many there are; empty: one"},
};

const bk_form_kind bk_person_form = BK_RECORD_FORM("Person", BK_SHEET_PEOPLE, BK_PEOPLE, person_fields);
const bk_form_kind bk_away_form = BK_RECORD_FORM("Absence", BK_SHEET_AWAY, BK_AWAYS, away_fields);
const bk_form_kind bk_performer_form =
    BK_RECORD_FORM("Performer", BK_SHEET_PERFORMERS, BK_PERFORMERS, performer_fields);
const bk_form_kind bk_equipment_form =
    BK_RECORD_FORM("Equipment", BK_SHEET_EQUIPMENT, BK_EQUIPMENT, equipment_fields);
