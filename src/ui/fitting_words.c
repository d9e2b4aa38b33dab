#include "bodkin/ui/fitting_words.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/term.h"
#include "bodkin/work/timetable.h"

// Above so many the detail tells them one behind the other instead of one in a row.
enum { ROWS_TOLD = 3 };

const char bk_fitting_care[] = "Count the pins on and off; a child comes with a chaperone.";

static const char *joined(bk_arena *arena, const char *before, const char *between, const char *text)
{
    return before ? bk_arena_print(arena, "%s%s%s", before, between, text) : text;
}

static const char *between_rows(size_t count)
{
    return count > ROWS_TOLD ? "; " : "\n";
}

// ------------------------------------------------------------------------------------------------------- calls

bool bk_fitting_is_open(const bk_fitting_line *fitting)
{
    return fitting->outcome == BK_NO_WORD && fitting->held_on == BK_NO_DAY;
}

int64_t *bk_fitting_call_open(const bk_fitting_call *call, bk_arena *arena, size_t *count)
{
    int64_t *ids = bk_arena_clear(arena, call->count, sizeof *ids);
    *count = 0;
    for (size_t i = 0; i < call->count; i++)
        if (bk_fitting_is_open(&call->fittings[i]))
            ids[(*count)++] = call->fittings[i].id;
    return ids;
}

const bk_fitting_call *bk_fitting_call_of(const bk_fitting_list *list, int64_t fitting, size_t *at)
{
    for (size_t i = 0; i < list->call_count; i++)
        for (size_t j = 0; j < list->calls[i].count; j++)
            if (list->calls[i].fittings[j].id == fitting) {
                if (at)
                    *at = j;
                return &list->calls[i];
            }
    return NULL;
}

const char *bk_fitting_call_pieces(const bk_fitting_call *call, bk_arena *arena)
{
    const char *all = NULL;
    for (size_t i = 0; i < call->count; i++)
        if (i == 0 || call->fittings[i].piece_id != call->fittings[i - 1].piece_id)
            all = joined(arena, all, ", ", call->fittings[i].piece);
    return all;
}

static const char *title_of(const char *piece, const char *step, bk_arena *arena)
{
    return bk_arena_print(arena, "%s: %s", piece, step);
}

const char *bk_fitting_call_titles(const bk_fitting_call *call, bk_arena *arena)
{
    const char *all = NULL;
    for (size_t i = 0; i < call->count; i++)
        all = joined(arena, all, "; ",
                     title_of(call->fittings[i].piece_title, call->fittings[i].step_title, arena));
    return all;
}

const char *bk_moment_words(bk_moment moment, bk_day today, bk_arena *arena)
{
    const char *day = bk_cell_day(moment.day, today, arena);
    return moment.time == BK_NO_TIME ? day
                                     : bk_arena_print(arena, "%s %s", day, bk_cell_time(moment.time, arena));
}

static size_t count_outcome(const bk_fitting_call *call, int outcome)
{
    size_t count = 0;
    for (size_t i = 0; i < call->count; i++)
        count += call->fittings[i].outcome == outcome ? 1 : 0;
    return count;
}

static const char *outcomes(const bk_fitting_call *call, bk_arena *arena)
{
    const char *all = NULL;
    for (int outcome = 0; outcome < BK_OUTCOMES; outcome++) {
        size_t count = count_outcome(call, outcome);
        const char *word = bk_word_text(&bk_outcome_words, outcome);
        if (count > 0)
            all = joined(arena, all, ", ",
                         count == call->count ? word : bk_arena_print(arena, "%zu %s", count, word));
    }
    return all;
}

const char *bk_fitting_call_standing(const bk_fitting_call *call, bk_day today, bk_arena *arena)
{
    size_t recorded = call->count - count_outcome(call, BK_NO_WORD);
    if (recorded == call->count)
        return outcomes(call, arena);
    if (recorded > 0)
        return bk_arena_print(arena, "%zu not recorded", call->count - recorded);
    return call->state == BK_FITTING_TO_RECORD ? "not recorded"
                                               : bk_days_away(call->moment.day, today, arena);
}

// ", again on Sat 20 Feb (right arm stuck)": the day where it was another than that of the call.
static const char *came_of(const bk_fitting_line *fitting, bk_day booked, bk_day today, bk_arena *arena)
{
    const char *word = bk_word_text(&bk_outcome_words, fitting->outcome);
    const char *all = word ? bk_arena_print(arena, ", %s", word) : "";
    if (fitting->held_on != BK_NO_DAY && fitting->held_on != booked)
        all = bk_arena_print(arena, "%s%s on %s", all, word ? "" : ", held",
                             bk_cell_day(fitting->held_on, today, arena));
    return fitting->note ? bk_arena_print(arena, "%s (%s)", all, fitting->note) : all;
}

const char *bk_fitting_call_detail(const bk_fitting_call *call, bk_day today, bk_arena *arena)
{
    const char *all = NULL;
    for (size_t i = 0; i < call->count; i++) {
        const bk_fitting_line *fitting = &call->fittings[i];
        all = joined(arena, all, between_rows(call->count),
                     bk_arena_print(arena, "%s %s, %s%s", fitting->piece,
                                    title_of(fitting->piece_title, fitting->step_title, arena),
                                    bk_cell_minutes(fitting->minutes, arena),
                                    came_of(fitting, call->moment.day, today, arena)));
    }
    return all;
}

// ------------------------------------------------------------------------------------------------------ to book

size_t bk_to_book_next(const bk_fitting_to_book *group)
{
    size_t count = 0;
    for (size_t i = 0; i < group->count; i++)
        count += group->steps[i].next ? 1 : 0;
    return count;
}

// Whether a step is told of: those that can be fitted now, else all.
static bool is_told(const bk_fitting_to_book *group, size_t step)
{
    return group->steps[step].next || bk_to_book_next(group) == 0;
}

const char *bk_to_book_pieces(const bk_fitting_to_book *group, bk_arena *arena)
{
    const char *all = NULL, *before = NULL;
    for (size_t i = 0; i < group->count; i++)
        if (is_told(group, i) && !bk_same_text(before, group->steps[i].piece)) {
            before = group->steps[i].piece;
            all = joined(arena, all, ", ", before);
        }
    return all;
}

const char *bk_to_book_titles(const bk_fitting_to_book *group, bk_arena *arena)
{
    const char *all = NULL;
    for (size_t i = 0; i < group->count; i++)
        if (is_told(group, i))
            all = joined(arena, all, "; ",
                         title_of(group->steps[i].piece_title, group->steps[i].step_title, arena));
    return all;
}

int64_t bk_to_book_minutes(const bk_fitting_to_book *group)
{
    int64_t minutes = 0;
    for (size_t i = 0; i < group->count; i++)
        minutes += is_told(group, i) ? group->steps[i].minutes : 0;
    return minutes;
}

const char *bk_to_book_standing(const bk_fitting_to_book *group, bk_arena *arena)
{
    size_t next = bk_to_book_next(group), later = group->count - next;
    if (next == 0)
        return bk_arena_print(arena, "%zu later", later);
    return later == 0 ? bk_arena_print(arena, "%zu now", next)
                      : bk_arena_print(arena, "%zu now, %zu later", next, later);
}

// "3B-3 Mantle: try on over the petticoat, 20 min; can be fitted since Wed 24 Feb".
static const char *next_words(const bk_fitting_wanted *wanted, bk_day today, bk_arena *arena)
{
    const char *since = wanted->since == BK_NO_DAY
                            ? "now"
                            : bk_arena_print(arena, "since %s", bk_cell_day(wanted->since, today, arena));
    return bk_arena_print(arena, "%s %s, %s; can be fitted %s", wanted->piece,
                          title_of(wanted->piece_title, wanted->step_title, arena),
                          bk_cell_minutes(wanted->minutes, arena), since);
}

const char *bk_wanted_detail(const bk_fitting_wanted *wanted, bk_day today, bk_arena *arena)
{
    if (wanted->next)
        return next_words(wanted, today, arena);
    return bk_arena_print(arena, "%s %s, %s; other work comes first", wanted->piece,
                          title_of(wanted->piece_title, wanted->step_title, arena),
                          bk_cell_minutes(wanted->minutes, arena));
}

const char *bk_to_book_detail(const bk_fitting_to_book *group, bk_day today, bk_arena *arena)
{
    const char *now = NULL, *later = NULL;
    const char *between = between_rows(bk_to_book_next(group));
    for (size_t i = 0; i < group->count; i++) {
        const bk_fitting_wanted *wanted = &group->steps[i];
        if (wanted->next)
            now = joined(arena, now, between, next_words(wanted, today, arena));
        else
            later =
                joined(arena, later, "; ", bk_arena_print(arena, "%s %s", wanted->piece, wanted->step_title));
    }
    if (!later)
        return now;
    later = bk_arena_print(arena, "later: %s", later);
    return joined(arena, now, "\n", later);
}

int bk_due_style(bk_day due, bk_day today)
{
    return due != BK_NO_DAY && due < today ? BK_STYLE_LATE : BK_STYLE_PLAIN;
}

const char *bk_to_book_names(const bk_fitting_to_book *group, bk_arena *arena)
{
    const char *all = NULL;
    bool any = bk_to_book_next(group) > 0;
    for (size_t i = 0; i < group->count && (any || !all); i++)
        if (is_told(group, i))
            all = joined(arena, all, ";",
                         bk_arena_print(arena, "%s/%s", group->steps[i].piece, group->steps[i].step));
    return all;
}
