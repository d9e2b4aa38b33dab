#include "bodkin/ui/hands_screen.h"

#include "bodkin/base/text.h"
#include "bodkin/sheet/columns.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/minutes_taken_screen.h"
#include "bodkin/ui/stack.h"
#include "bodkin/work/hands_week.h"

enum { DETAIL_ROWS = 4, NOBODY_YET = -1 };

enum cell { NAME, WHAT, WEEK, WHEN, CELLS };

static const bk_list_column columns[CELLS] = {
    [NAME] = {.head = "Who or what", .least = 14, .most = 26, .gap = 2},
    [WHAT] = {.head = "Skills, or why away", .least = 20, .most = 60, .gap = 2},
    [WEEK] = {.head = "This week", .least = 9, .most = 10, .gap = 2, .right = true},
    [WHEN] = {.head = "When", .least = 24, .most = 34},
};

// ------------------------------------------------------------------------------------------------- its lines

static const char *stay_words(const bk_person *person, bk_day today, bk_arena *arena)
{
    const char *from = bk_cell_day(person->from, today, arena);
    const char *until = bk_cell_day(person->until, today, arena);
    if (from && until)
        return bk_arena_print(arena, "%s to %s", from, until);
    if (from)
        return bk_arena_print(arena, "from %s", from);
    return until ? bk_arena_print(arena, "until %s", until) : NULL;
}

// "Mon to Fri 10:00-13:00, 14:00-18:00; Sat 10:00-16:00".
static const char *hours_words(const bk_person *person, bk_arena *arena)
{
    static const char *const names[BK_WEEKDAYS] = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
    const char *words = "";
    for (size_t first = 0, last = 0; first < BK_WEEKDAYS; first = last + 1) {
        last = first;
        while (last + 1 < BK_WEEKDAYS && bk_same_text(person->hours[last + 1], person->hours[first]))
            last++;
        const char *hours = bk_cell_list(person->hours[first], arena);
        const char *days =
            last > first ? bk_arena_print(arena, "%s to %s", names[first], names[last]) : names[first];
        if (hours)
            words = bk_arena_print(arena, "%s%s%s %s", words, *words ? "; " : "", days, hours);
    }
    return *words ? words : "no hours yet: e enters them";
}

static const char *detail_of(const bk_person *person, bk_arena *arena)
{
    const char *skills = bk_cell_list(person->skills, arena);
    return bk_arena_print(arena, "%s: %s\n%s%s%s", person->name,
                          skills ? skills : "no skills yet: e enters them", hours_words(person, arena),
                          person->note ? "\n" : "", person->note ? person->note : "");
}

static void add_person(const bk_wall *wall, bk_ledger *ledger, const bk_hand *hand)
{
    bk_arena *arena = ledger->arena;
    const bk_person *person = &hand->record;
    bool gone = person->until != BK_NO_DAY && person->until < wall->today;
    const bk_ledger_line line = {
        .id = person->id,
        .family = BK_PEOPLE,
        .cells = {[NAME] = person->name,
                  [WHAT] = bk_cell_list(person->skills, arena),
                  [WEEK] = hand->minutes > 0 ? bk_cell_minutes(hand->minutes, arena) : "none",
                  [WHEN] = stay_words(person, wall->today, arena)},
        .style = gone ? BK_STYLE_DIM : BK_STYLE_PLAIN,
        .detail = detail_of(person, arena),
    };
    bk_ledger_add(ledger, &line);
}

static void add_away(const bk_wall *wall, bk_ledger *ledger, const bk_away *away)
{
    bk_arena *arena = ledger->arena;
    const char *from = bk_cell_day(away->from, wall->today, arena);
    long long days = (long long)away->to - away->from + 1;
    const bk_ledger_line line = {
        .id = away->id,
        .family = BK_AWAYS,
        .cells = {[NAME] = away->who,
                  [WHAT] = away->reason,
                  [WEEK] = bk_arena_print(arena, "%lld day%s", days, days == 1 ? "" : "s"),
                  [WHEN] = away->from == away->to
                               ? from
                               : bk_arena_print(arena, "%s to %s", from,
                                                bk_cell_day(away->to, wall->today, arena))},
        .style = away->to < wall->today ? BK_STYLE_DIM : BK_STYLE_PLAIN,
        .detail = away->reason ? bk_arena_print(arena, "%s: %s", away->who, away->reason) : away->who,
        .name = bk_arena_print(arena, "the absence of %s from %s", away->who, from),
    };
    bk_ledger_add(ledger, &line);
}

static const char *shared_words(const bk_equipment *equipment, long long count, bk_arena *arena)
{
    const char *kinds = bk_cell_list(equipment->kinds, arena);
    const char *there = count == 1 ? "is one" : bk_arena_print(arena, "are %lld", count);
    return bk_arena_print(arena, "%s: %s\nThere %s; a step of such a kind occupies %s while it is worked on.",
                          equipment->name, kinds, there, count == 1 ? "it" : "one of them");
}

static void add_equipment(bk_ledger *ledger, const bk_equipment *equipment)
{
    bk_arena *arena = ledger->arena;
    long long count = equipment->count == BK_NOT_KNOWN ? 1 : equipment->count;
    const char *many = count == 1 ? "one" : bk_arena_print(arena, "%lld of them", count);
    const bk_ledger_line line = {
        .id = equipment->id,
        .family = BK_EQUIPMENT,
        .cells = {[NAME] = equipment->name, [WHAT] = bk_cell_list(equipment->kinds, arena), [WEEK] = many},
        .detail = shared_words(equipment, count, arena),
    };
    bk_ledger_add(ledger, &line);
}

static void add_heading(bk_ledger *ledger, const char *text)
{
    const bk_ledger_line line = {.cells = {text}};
    bk_ledger_add(ledger, &line);
}

// Where a group is empty, a line stands for it, so that the cursor can go there.
static const bk_ledger_line empty_groups[] = {
    {.id = NOBODY_YET,
     .family = BK_PEOPLE,
     .cells = {[NAME] = "nobody yet"},
     .style = BK_STYLE_DIM,
     .detail =
         "+ enters somebody who makes costumes here: yourself first, with all you can do. As soon as one "
         "person stands here, a step that nobody here can do is held."},
    {.id = NOBODY_YET,
     .family = BK_AWAYS,
     .cells = {[NAME] = "nobody"},
     .style = BK_STYLE_DIM,
     .detail = "+ enters who is away and when, people and performers."},
    {.id = NOBODY_YET,
     .family = BK_EQUIPMENT,
     .cells = {[NAME] = "none yet"},
     .style = BK_STYLE_DIM,
     .detail =
         "+ enters what people here share: the cutting table, the machines, the dye room. Where none stands "
         "here, there is enough for all at once."},
};

static void add_empty(bk_ledger *ledger, bk_family family)
{
    for (size_t i = 0; i < sizeof empty_groups / sizeof *empty_groups; i++)
        if (empty_groups[i].family == family)
            bk_ledger_add(ledger, &empty_groups[i]);
}

static bk_status fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    bk_hands_week week = {0};
    const bk_wall *wall = screen->wall;
    bk_status status = bk_hands_week_read(wall->store, wall->today, ledger->arena, &week, error);
    if (status)
        return status;
    ledger->title = "Hands";
    if (week.person_count > 0)
        ledger->aside = bk_arena_print(ledger->arena, "%s of work this week, %s from today on",
                                       bk_cell_minutes(week.minutes, ledger->arena),
                                       bk_cell_minutes(week.minutes_left, ledger->arena));
    add_heading(ledger, "People");
    for (size_t i = 0; i < week.person_count; i++)
        add_person(wall, ledger, &week.people[i]);
    if (week.person_count == 0)
        add_empty(ledger, BK_PEOPLE);
    add_heading(ledger, "Away");
    for (size_t i = 0; i < week.away_count; i++)
        add_away(wall, ledger, &week.aways[i]);
    if (week.away_count == 0)
        add_empty(ledger, BK_AWAYS);
    add_heading(ledger, "Equipment");
    for (size_t i = 0; i < week.equipment_count; i++)
        add_equipment(ledger, &week.equipment[i]);
    if (week.equipment_count == 0)
        add_empty(ledger, BK_EQUIPMENT);
    return BK_OK;
}

static const bk_ledger_kind ledger_kind = {
    .columns = columns,
    .column_count = CELLS,
    .fill = fill,
    .family = BK_PEOPLE,
    .moves = true,
    .detail_rows = DETAIL_ROWS,
};

void *bk_hands_screen_new(void)
{
    return bk_ledger_new(&ledger_kind, NULL);
}

// -------------------------------------------------------------------------------------------------- its keys

static void add_to_group(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_ledger_line *chosen = bk_ledger_chosen(screen);
    bk_ledger_open_form(screen, chosen ? chosen->family : BK_PEOPLE, true);
}

// The person under the cursor is offered.
static void add_absence(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_away away;
    const bk_ledger_line *chosen = bk_ledger_chosen(screen);
    bk_sheet_clear(&bk_sheets[BK_SHEET_AWAY], &away);
    if (chosen && chosen->id > 0 && chosen->family != BK_EQUIPMENT)
        away.who = chosen->cells[NAME];
    const bk_form_start start = {.record = &away, .first = away.who ? "from" : NULL};
    bk_form_open(screen, bk_form_of(BK_AWAYS), &start);
}

static void show_taken(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_stack_push(screen->stack, &bk_minutes_taken_screen, bk_minutes_taken_screen_new());
}

static const bk_key_row rows[] = {
    {.name = BK_KEY_TYPED,
     .typed = "+",
     .written = "+",
     .bottom = "new",
     .help = "add one to the group under the cursor: a person, an absence, or equipment",
     .act = add_to_group},
    {.name = BK_KEY_TYPED,
     .typed = "a",
     .written = "a",
     .bottom = "away",
     .help = "enter when somebody is away; the person under the cursor is offered",
     .act = add_absence},
    {.name = BK_KEY_TYPED,
     .typed = "r",
     .written = "r",
     .bottom = "minutes taken",
     .spare = true,
     .help = "the workroom's record: minutes taken against minutes guessed",
     .act = show_taken},
    BK_LEDGER_CHANGE_ROWS,
    {.name = BK_KEY_TYPED,
     .typed = "[",
     .written = "[ ]",
     .help = "move equipment earlier or later in its list",
     .act = bk_ledger_shift,
     .argument = -1},
    {.name = BK_KEY_TYPED, .typed = "]", .act = bk_ledger_shift, .argument = 1},
    BK_LEDGER_ROWS,
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

static const bk_meaning meanings[] = {
    {"this week", "hours from Monday to Sunday, absences taken off; of an absence, its days; of equipment, "
                  "how many there are"},
    {"skills",
     "the kinds of step that somebody can do; a step of a kind that nobody listed can do, with hours before "
     "its costume is due, is held: so list yourself too"},
    {"equipment", "what people share; a step of one of its kinds occupies one while it is worked on, so that "
                  "others wait for it"},
};

const bk_screen_kind bk_hands_screen = {
    .name = "Hands",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    BK_LEDGER_OPERATIONS,
};
