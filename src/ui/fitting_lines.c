#include "bodkin/ui/fitting_lines.h"

#include "bodkin/base/text.h"
#include "bodkin/sheet/wait_words.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/fitting_words.h"

enum cell { WHEN, WHO, TAKES, PIECES, STANDING, TITLES };

const bk_list_column bk_fitting_columns[BK_FITTING_COLUMNS] = {
    [WHEN] = {.head = "When", .least = 17, .most = 20, .gap = 2},
    [WHO] = {.head = "Performer", .least = 14, .most = 26, .gap = 2},
    [TAKES] = {.head = "Takes", .least = 6, .most = 8, .gap = 2, .right = true},
    [PIECES] = {.head = "Pieces", .least = 14, .most = 40, .gap = 2},
    [STANDING] = {.head = "How it stands", .least = 14, .most = 20, .gap = 2},
    [TITLES] = {.head = "What", .least = 24, .most = 200, .spare = true, .fills = true},
};

static const char nobody[] = "nobody plays it";

// What a filling works on.
typedef struct filling {
    const bk_wall *wall;
    bk_ledger *ledger;
    bk_fittings_view *view;
} filling;

static const char *performer_or_nobody(const char *name)
{
    return name ? name : nobody;
}

static int64_t entry(const filling *all, bk_fitting_entry one)
{
    all->view->entries[all->view->entry_count] = one;
    return (int64_t)all->view->entry_count++;
}

// With the note kept about a performer: what does not suit them, who comes with them.
static const char *with_note(const filling *all, int64_t performer, const char *detail)
{
    const bk_fittings_view *view = all->view;
    for (size_t i = 0; i < view->performer_count; i++)
        if (view->performers[i].id == performer && view->performers[i].note)
            return bk_arena_print(all->ledger->arena, "%s\n%s", detail, view->performers[i].note);
    return detail;
}

static const char *with_care(const filling *all, const char *detail)
{
    return bk_arena_print(all->ledger->arena, "%s\n%s", bk_fitting_care, detail);
}

// ------------------------------------------------------------------------------------------------ the first column

// A day of another year goes without the weekday, so that nothing of it is cut: "20 Jan 2027".
static const char *day_words(bk_day day, bk_day today, bk_arena *arena)
{
    enum { COLUMNS_WITHOUT_YEAR = 10, WEEKDAY_BYTES = 4 };
    const char *words = bk_cell_day(day, today, arena);
    return words && bk_text_columns(words) > COLUMNS_WITHOUT_YEAR ? words + WEEKDAY_BYTES : words;
}

static const char *when_words(bk_moment moment, bk_day today, bk_arena *arena)
{
    const char *day = day_words(moment.day, today, arena), *time = bk_cell_time(moment.time, arena);
    return time ? bk_arena_print(arena, "%s %s", day, time) : day;
}

static const char *by_words(bk_day due, bk_day today, bk_arena *arena)
{
    if (due == BK_NO_DAY)
        return NULL;
    return bk_arena_print(arena, due < today ? "late: %s" : "by %s", day_words(due, today, arena));
}

// ------------------------------------------------------------------------------------------------ kinds of lines

static void add_heading(const filling *all, const char *text, int style)
{
    bk_ledger_add(all->ledger, &(bk_ledger_line){.cells = {text}, .style = style});
}

static bool is_past(const bk_fitting_call *call)
{
    return call->state == BK_FITTING_MISSED || call->state == BK_FITTING_HELD;
}

static int call_style(const bk_fitting_call *call)
{
    return is_past(call)                         ? BK_STYLE_DIM
           : call->state == BK_FITTING_TO_RECORD ? BK_STYLE_TIGHT
           : call->state == BK_FITTING_TODAY     ? BK_STYLE_BOLD
                                                 : BK_STYLE_PLAIN;
}

static void add_call(const filling *all, const bk_fitting_call *call)
{
    bk_arena *arena = all->ledger->arena;
    bk_day today = all->wall->today;
    const char *detail = with_note(all, call->performer_id, bk_fitting_call_detail(call, today, arena));
    bool is_near = call->state == BK_FITTING_TODAY || call->state == BK_FITTING_TO_COME;
    const bk_ledger_line line = {
        .id = call->fittings[0].id,
        .family = BK_FITTINGS,
        .cells = {[WHEN] = when_words(call->moment, today, arena),
                  [WHO] = all->view->by_performer ? NULL : performer_or_nobody(call->performer),
                  [TAKES] = bk_cell_minutes(call->minutes, arena),
                  [PIECES] = bk_fitting_call_pieces(call, arena),
                  [STANDING] = bk_fitting_call_standing(call, today, arena),
                  [TITLES] = bk_fitting_call_titles(call, arena)},
        .style = call_style(call),
        .detail = is_near ? with_care(all, detail) : detail,
        .argument = entry(all, (bk_fitting_entry){.call = call}),
    };
    bk_ledger_add(all->ledger, &line);
}

// All that is to be booked of a performer.
static void add_group(const filling *all, const bk_fitting_to_book *group)
{
    bk_arena *arena = all->ledger->arena;
    bk_day today = all->wall->today;
    const bk_ledger_line line = {
        .id = -1 - group->performer_id,
        .family = BK_PERFORMERS,
        .cells = {[WHEN] = by_words(group->due, today, arena),
                  [WHO] = performer_or_nobody(group->performer),
                  [TAKES] = bk_cell_minutes(bk_to_book_minutes(group), arena),
                  [PIECES] = bk_to_book_pieces(group, arena),
                  [STANDING] = bk_to_book_standing(group, arena),
                  [TITLES] = bk_to_book_titles(group, arena)},
        .style = bk_to_book_next(group) > 0 ? bk_due_style(group->due, today) : BK_STYLE_DIM,
        .detail = with_note(all, group->performer_id, bk_to_book_detail(group, today, arena)),
        .argument = entry(all, (bk_fitting_entry){.group = group}),
    };
    bk_ledger_add(all->ledger, &line);
}

// One step that is to be booked.
static void add_wanted(const filling *all, const bk_fitting_to_book *group, const bk_fitting_wanted *wanted)
{
    bk_arena *arena = all->ledger->arena;
    bk_day today = all->wall->today;
    const bk_ledger_line line = {
        .id = -wanted->step_id,
        .family = BK_STEPS,
        .cells = {[WHEN] = by_words(wanted->due, today, arena),
                  [TAKES] = bk_cell_minutes(wanted->minutes, arena),
                  [PIECES] = wanted->piece,
                  [STANDING] = wanted->next ? "to book" : "to book later",
                  [TITLES] = bk_arena_print(arena, "%s: %s", wanted->piece_title, wanted->step_title)},
        .style = wanted->next ? bk_due_style(wanted->due, today) : BK_STYLE_DIM,
        .detail = with_note(all, group->performer_id, bk_wanted_detail(wanted, today, arena)),
        .argument = entry(all, (bk_fitting_entry){.group = group, .wanted = wanted}),
    };
    bk_ledger_add(all->ledger, &line);
}

// ------------------------------------------------------------------------------------------------------- by day

// Those of whom something can be fitted now, or those of whom nothing can yet.
static void add_groups(const filling *all, bool now, const char *heading, int style)
{
    const bk_fitting_list *list = &all->view->list;
    bool headed = false;
    for (size_t i = 0; i < list->to_book_count; i++) {
        if ((bk_to_book_next(&list->to_book[i]) > 0) != now)
            continue;
        if (!headed)
            add_heading(all, heading, style);
        headed = true;
        add_group(all, &list->to_book[i]);
    }
}

typedef bool call_test(const bk_fitting_call *call);

static bool is_to_record(const bk_fitting_call *call)
{
    return call->state == BK_FITTING_TO_RECORD || call->state == BK_FITTING_TODAY;
}

static bool is_to_come(const bk_fitting_call *call)
{
    return call->state == BK_FITTING_TO_COME;
}

static void add_calls(const filling *all, call_test *test, const char *heading, int style)
{
    const bk_fitting_list *list = &all->view->list;
    bool headed = false;
    for (size_t i = 0; i < list->call_count; i++) {
        if (!test(&list->calls[i]))
            continue;
        if (!headed)
            add_heading(all, heading, style);
        headed = true;
        add_call(all, &list->calls[i]);
    }
}

// The newest first.
static void add_past(const filling *all)
{
    const bk_fitting_list *list = &all->view->list;
    bool headed = false;
    for (size_t i = list->call_count; i-- > 0;) {
        if (!is_past(&list->calls[i]))
            continue;
        if (!headed)
            add_heading(all, "Past", BK_STYLE_DIM);
        headed = true;
        add_call(all, &list->calls[i]);
    }
}

static void fill_by_day(const filling *all)
{
    add_groups(all, true, "To book", BK_STYLE_BOLD);
    add_calls(all, is_to_record, "To record", BK_STYLE_BOLD);
    add_calls(all, is_to_come, "To come", BK_STYLE_BOLD);
    add_groups(all, false, "To book later, when other work is done", BK_STYLE_DIM);
    add_past(all);
}

// ------------------------------------------------------------------------------------------------- by performer

typedef struct fitted_person {
    int64_t id;
    const char *name;
} fitted_person;

static bool is_known(const fitted_person *people, size_t count, int64_t id)
{
    for (size_t i = 0; i < count; i++)
        if (people[i].id == id)
            return true;
    return false;
}

// Puts a person in, by name; nobody is last.
static void put_in(fitted_person *people, size_t *count, int64_t id, const char *name)
{
    if (is_known(people, *count, id))
        return;
    size_t at = (*count)++;
    while (at > 0 && name && (!people[at - 1].name || bk_natural_order(name, people[at - 1].name) < 0)) {
        people[at] = people[at - 1];
        at--;
    }
    people[at] = (fitted_person){id, name};
}

static void add_of_person(const filling *all, const fitted_person *person)
{
    const bk_fitting_list *list = &all->view->list;
    add_heading(all, person->name ? person->name : "Nobody plays it", BK_STYLE_BOLD);
    for (size_t i = 0; i < list->to_book_count; i++)
        for (size_t j = 0; list->to_book[i].performer_id == person->id && j < list->to_book[i].count; j++)
            add_wanted(all, &list->to_book[i], &list->to_book[i].steps[j]);
    for (size_t i = 0; i < list->call_count; i++)
        if (list->calls[i].performer_id == person->id && !is_past(&list->calls[i]))
            add_call(all, &list->calls[i]);
    for (size_t i = list->call_count; i-- > 0;)
        if (list->calls[i].performer_id == person->id && is_past(&list->calls[i]))
            add_call(all, &list->calls[i]);
}

static void fill_by_performer(const filling *all)
{
    const bk_fitting_list *list = &all->view->list;
    size_t count = 0;
    fitted_person *people =
        bk_arena_clear(all->ledger->arena, list->call_count + list->to_book_count, sizeof *people);
    for (size_t i = 0; i < list->to_book_count; i++)
        put_in(people, &count, list->to_book[i].performer_id, list->to_book[i].performer);
    for (size_t i = 0; i < list->call_count; i++)
        put_in(people, &count, list->calls[i].performer_id, list->calls[i].performer);
    for (size_t i = 0; i < count; i++)
        add_of_person(all, &people[i]);
}

// ------------------------------------------------------------------------------------------------------ reading

static const char *summary(const bk_fittings_view *view, bk_arena *arena)
{
    const bk_fitting_list *list = &view->list;
    size_t book = 0, record = 0, come = 0;
    for (size_t i = 0; i < list->to_book_count; i++)
        book += bk_to_book_next(&list->to_book[i]) > 0 ? 1 : 0;
    for (size_t i = 0; i < list->call_count; i++) {
        record += is_to_record(&list->calls[i]) ? 1 : 0;
        come += is_to_come(&list->calls[i]) ? 1 : 0;
    }
    return bk_arena_print(arena, "%zu to book now, %zu to record, %zu to come", book, record, come);
}

// Room for a line of every call, every performer and every step.
static void make_room(bk_fittings_view *view, bk_arena *arena)
{
    size_t room = view->list.call_count + view->list.to_book_count;
    for (size_t i = 0; i < view->list.to_book_count; i++)
        room += view->list.to_book[i].count;
    view->entries = bk_arena_clear(arena, room, sizeof *view->entries);
    view->entry_count = 0;
}

bk_status bk_fitting_lines_fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    const bk_wall *wall = screen->wall;
    const bk_production *production = &wall->rail->production;
    bk_fittings_view *view = ledger->own;
    bk_fitting_list list;
    bk_rows company = {0};
    bk_status status =
        bk_fittings_read(wall->store, production->id, wall->today, ledger->arena, &list, error);
    if (!status)
        status =
            bk_store_read(wall->store, BK_COMPANY_PERFORMERS, production->id, ledger->arena, &company, error);
    if (status)
        return status;
    view->list = list;
    view->performers = company.items;
    view->performer_count = company.count;
    make_room(view, ledger->arena);
    ledger->title = bk_arena_print(ledger->arena, "Fittings of %s", production->name);
    ledger->aside = bk_countdown(wall->rail, ledger->arena);
    if (list.call_count + list.to_book_count > 0)
        ledger->summary = summary(view, ledger->arena);
    const filling all = {wall, ledger, view};
    if (view->by_performer)
        fill_by_performer(&all);
    else
        fill_by_day(&all);
    return BK_OK;
}
