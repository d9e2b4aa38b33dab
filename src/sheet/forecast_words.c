#include "bodkin/sheet/forecast_words.h"

#include "bodkin/base/text.h"

// ------------------------------------------------------------------------------------------ days and chances

static const char *plural(int64_t count)
{
    return count == 1 ? "" : "s";
}

static bool never(const bk_outlook_days *days)
{
    return days->days_known && days->finish == BK_NO_DAY;
}

static const char *day_text(bk_day day, bk_day today, bk_arena *arena)
{
    char text[BK_DAY_WORDS_ROOM];
    return day == today ? "today" : bk_arena_text(arena, bk_day_words(day, today, text));
}

/// "3 working days in hand", "just in time", "1 working day late"; `sort` is "working " or "".
static const char *in_hand(const bk_outlook_days *days, const char *sort, bk_arena *arena)
{
    int64_t count = days->days_in_hand;
    if (!days->days_known)
        return "";
    if (never(days))
        return "never";
    if (count == 0)
        return "just in time";
    if (count > 0)
        return bk_arena_print(arena, "%lld %sday%s in hand", (long long)count, sort, plural(count));
    return bk_arena_print(arena, "%lld %sday%s late", (long long)-count, sort, plural(-count));
}

const char *bk_days_in_hand_words(const bk_outlook_days *days, bk_arena *arena)
{
    return in_hand(days, "", arena);
}

const char *bk_days_in_hand_brief(const bk_outlook_days *days, bk_arena *arena)
{
    int64_t count = days->days_in_hand;
    if (!days->days_known)
        return "";
    if (never(days))
        return "never";
    return count < 0 ? bk_arena_print(arena, "%lld late", (long long)-count)
                     : bk_arena_print(arena, "%lld day%s", (long long)count, plural(count));
}

enum { THOUSANDTHS_OF_PERCENT = 10, SURE = 990, HARDLY = 10 };

const char *bk_chance_words(const bk_outlook_days *days, bk_arena *arena)
{
    if (days->chance < 0)
        return "";
    if (days->chance > SURE)
        return "over 99 %";
    if (days->chance < HARDLY)
        return "under 1 %";
    int percent = (days->chance + THOUSANDTHS_OF_PERCENT / 2) / THOUSANDTHS_OF_PERCENT;
    return bk_arena_print(arena, "%d %%", percent);
}

/// "84 % (give or take 2)": one standard error in whole percent, rounded up.
static const char *chance_with_error(const bk_outlook_days *days, bk_arena *arena)
{
    int error = (days->chance_error + THOUSANDTHS_OF_PERCENT - 1) / THOUSANDTHS_OF_PERCENT;
    return bk_arena_print(arena, "%s (give or take %d)", bk_chance_words(days, arena), error > 0 ? error : 1);
}

/// "; half the trials are done by Wed 10 Mar, nine in ten by Mon 15 Mar"; "" where none were made.
static const char *trial_days(const bk_outlook_days *days, bk_day today, bk_arena *arena)
{
    if (days->chance < 0)
        return "";
    if (days->even == BK_NO_DAY)
        return "; fewer than half the trials are ever done";
    if (days->likely == BK_NO_DAY)
        return bk_arena_print(arena, "; half the trials are done by %s, more than one in ten of them never",
                              day_text(days->even, today, arena));
    if (days->even == days->likely)
        return bk_arena_print(arena, "; nine in ten trials are done by %s",
                              day_text(days->likely, today, arena));
    return bk_arena_print(arena, "; half the trials are done by %s, nine in ten by %s",
                          day_text(days->even, today, arena), day_text(days->likely, today, arena));
}

// -------------------------------------------------------------------------------------------------- urgency

bk_urgency bk_outlook_urgency(const bk_outlook_days *days)
{
    enum { TIGHT_DAYS = 1, EVEN_CHANCE = 500, GOOD_CHANCE = 850 };
    if (!days->days_known)
        return BK_NOT_SAID;
    bool odds = days->chance >= 0;
    if (never(days) || days->days_in_hand < 0 || (odds && days->chance < EVEN_CHANCE))
        return BK_LATE;
    return days->days_in_hand <= TIGHT_DAYS || (odds && days->chance < GOOD_CHANCE) ? BK_TIGHT : BK_IN_TIME;
}

bk_urgency bk_urgency_of(const bk_rail *rail, const bk_rail_costume *costume,
                         const bk_costume_forecast *forecast)
{
    if (costume->reckoned->state == BK_READY || costume->reckoned->can_go_on)
        return BK_IN_TIME;
    if (forecast && forecast->open && forecast->days.days_known)
        return bk_outlook_urgency(&forecast->days);
    return bk_costume_urgency(rail, costume);
}

/// "late: none; " or "tight: 3B, 7B and 9 more; ", behind what there is.
static const char *named_as(const bk_rail *rail, const bk_forecast *forecast, bk_urgency urgency,
                            const char *before, bk_arena *arena)
{
    enum { NAMED_MOST = 12 };
    size_t count = 0;
    const char *text = bk_arena_print(arena, "%s%s: ", before, bk_urgency_word(urgency));
    for (size_t i = 0; i < rail->costume_count; i++) {
        const bk_rail_costume *costume = &rail->costumes[i];
        const bk_costume_forecast *outlook = bk_forecast_costume(forecast, costume->record->id);
        if (bk_urgency_of(rail, costume, outlook) == urgency && count++ < NAMED_MOST)
            text = bk_arena_print(arena, "%s%s%s", text, count > 1 ? ", " : "", costume->record->number);
    }
    if (count > NAMED_MOST)
        text = bk_arena_print(arena, "%s and %zu more", text, count - NAMED_MOST);
    return bk_arena_print(arena, "%s%s", text, count ? "; " : "none; ");
}

const char *bk_forecast_verdict(const bk_rail *rail, const bk_forecast *forecast, bk_arena *arena)
{
    char left[BK_AMOUNT_ROOM];
    const char *late = named_as(rail, forecast, BK_LATE, "", arena);
    const char *text = named_as(rail, forecast, BK_TIGHT, late, arena);
    return bk_arena_print(arena, "%s%s of work left", text, bk_minutes_words(rail->minutes_left, left));
}

// ------------------------------------------------------------------------------------ costume and production

/// "; 84 % (give or take 2) to be ready by Fri 12 Mar", or "".
static const char *odds_by(const bk_outlook_days *days, const char *what, bk_arena *arena)
{
    return days->chance < 0 ? "" : bk_arena_print(arena, "; %s %s", chance_with_error(days, arena), what);
}

const char *bk_costume_forecast_sentence(const bk_costume_forecast *costume, bk_day today, bk_arena *arena)
{
    const bk_outlook_days *days = &costume->days;
    if (!costume->open)
        return days->finish == BK_NO_DAY
                   ? "Nothing is left to do"
                   : bk_arena_print(arena, "Done %s", day_text(days->finish, today, arena));
    if (!days->days_known)
        return "When it will be ready is not known yet";
    if (never(days))
        return "It is never done with the hands and hours there are";
    const char *by = bk_arena_print(arena, "to be ready by %s", day_text(costume->due, today, arena));
    const char *odds = odds_by(days, by, arena);
    return bk_arena_print(arena, "Expected %s, %s%s%s", day_text(days->finish, today, arena),
                          in_hand(days, "working ", arena), odds, trial_days(days, today, arena));
}

/// "2 costumes late", or "every costume in time, 1 working day in hand at the least".
static const char *lateness(const bk_production_forecast *production, bk_arena *arena)
{
    const bk_outlook_days *days = &production->days;
    if (production->late)
        return bk_arena_print(arena, "%lld costume%s late", (long long)production->late,
                              plural(production->late));
    if (days->days_in_hand > 0)
        return bk_arena_print(arena, "every costume in time, the closest with %lld working day%s in hand",
                              (long long)days->days_in_hand, plural(days->days_in_hand));
    return "every costume in time, the closest just so";
}

const char *bk_production_forecast_sentence(const bk_production_forecast *production, bk_day today,
                                            bk_arena *arena)
{
    const bk_outlook_days *days = &production->days;
    if (!days->days_known)
        return "When all will be ready is not known yet";
    if (!never(days) && days->finish < today)
        return bk_arena_print(arena, "All is done, since %s", day_text(days->finish, today, arena));
    if (never(days))
        return bk_arena_print(arena, "Not all can be done with the hands and hours there are: %s",
                              lateness(production, arena));
    const char *odds = odds_by(days, "that each is ready by its day", arena);
    return bk_arena_print(arena, "All is expected done %s, %s%s%s", day_text(days->finish, today, arena),
                          lateness(production, arena), odds, trial_days(days, today, arena));
}

// ---------------------------------------------------------------------------------------------------- bench

/// "is due in 3 days", "was due 2 days ago", "has no due day".
static const char *due_words(int64_t days_left, bk_arena *arena)
{
    if (days_left == INT64_MIN)
        return "has no due day";
    if (days_left == 0)
        return "is due today";
    if (days_left == 1)
        return "is due tomorrow";
    if (days_left > 0)
        return bk_arena_print(arena, "is due in %lld days", (long long)days_left);
    return bk_arena_print(arena, "was due %lld day%s ago", (long long)-days_left, plural(-days_left));
}

/// "4A is due in 3 days, 6 h behind it".
static const char *due_and_behind(const bk_bench_line *line, bk_arena *arena)
{
    char minutes[BK_AMOUNT_ROOM];
    const bk_planned_step *step = line->step;
    return bk_arena_print(arena, "%s %s, %s behind it", step->costume ? step->costume : step->piece,
                          due_words(line->days_left, arena),
                          line->behind ? bk_minutes_words(line->behind, minutes) : "nothing");
}

/// What makes a tight one tight: "begin by Thu 4 Mar"; "" where there is no latest beginning.
static const char *begin_by(const bk_planned_step *step, bk_day today, bk_arena *arena)
{
    if (step->latest.day == BK_NO_DAY)
        return "";
    return bk_arena_print(arena, "; to begin by %s",
                          day_text(step->latest.day < today ? today : step->latest.day, today, arena));
}

const char *bk_bench_why_sentence(const bk_bench_line *line, bk_day today, bk_arena *arena)
{
    const char *due = due_and_behind(line, arena);
    char minutes[BK_AMOUNT_ROOM];
    switch (line->why) {
    case BK_WHY_RUNNING:
        return bk_arena_print(arena, "in hand for %s; %s",
                              bk_minutes_words(line->ran > 0 ? line->ran : 0, minutes), due);
    case BK_WHY_LATE:
        return bk_arena_print(arena, "%s; expected late", due);
    case BK_WHY_TIGHT:
        return bk_arena_print(arena, "%s%s", due, begin_by(line->step, today, arena));
    case BK_WHY_PLANNED:
        return bk_arena_print(arena, "%s; planned for today", due);
    case BK_WHY_OTHERS:
        return bk_arena_print(arena, "%s; others wait for it", due);
    case BK_WHY_CAN_WAIT:
        return bk_arena_print(arena, "can wait until after the opening; %s", due);
    default:
        return due;
    }
}

// --------------------------------------------------------------------------------------------------- chains

static const char *release_words(const bk_planned_step *step)
{
    if (step->booked)
        return "the fitting is booked then";
    return step->material_count ? "what it needs is there then" : "what it waits for comes then";
}

const char *bk_link_words(const bk_forecast *forecast, const bk_planned_link *links, size_t index,
                          bk_arena *arena)
{
    const bk_planned_link *link = &links[index];
    const bk_planned_step *before = index ? &forecast->steps[links[index - 1].step] : NULL;
    switch (link->bound) {
    case BK_BOUND_ORDER:
        return before ? bk_arena_print(arena, "after %s/%s", before->piece, before->key)
                      : "after what comes before it";
    case BK_BOUND_HANDS:
        return link->held_by ? bk_arena_print(arena, "%s is free then", link->held_by)
                             : "hands are free then";
    case BK_BOUND_RELEASE:
        return release_words(&forecast->steps[link->step]);
    case BK_BOUND_HOURS:
        return "nobody works before";
    default:
        return "can begin at once";
    }
}
