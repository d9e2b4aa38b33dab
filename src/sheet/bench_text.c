#include "bodkin/sheet/bench_sheet.h"
#include "bodkin/sheet/forecast_words.h"

// The bench as text of 80 columns: whose it is, then each step with its minutes and the costume it is for, and beneath it why it stands
// there and what is best done with it.

enum { SHEET_COLUMNS = 80, STEP_COLUMNS = 12, TITLE_COLUMNS = 35, MINUTES_COLUMNS = 8, INDENT = 6 };
enum { COSTUME_COLUMNS = SHEET_COLUMNS - STEP_COLUMNS - TITLE_COLUMNS - MINUTES_COLUMNS - 4 };
enum { LONGEST_STEP = 24 };

typedef struct bench_sheet {
    const bk_forecast *forecast;
    const bk_bench_list *list;
    int64_t minutes;
    bool several; ///< its steps are of several productions
    bk_buffer *out;
    bk_arena *arena; ///< for the line under way
    bool ascii;
} bench_sheet;

/// Text made safe and cut to `columns`.
static const char *cut(const bench_sheet *writing, const char *text, size_t columns)
{
    const char *safe = bk_text_safe(writing->arena, text, writing->ascii);
    return bk_text_cut(writing->arena, safe, columns, writing->ascii);
}

/// The same filled up, and a space behind it.
static void write_cell(const bench_sheet *writing, const char *text, size_t columns)
{
    const char *part = cut(writing, text, columns);
    bk_buffer_print(writing->out, "%s%*s", part, (int)(columns - bk_text_columns(part)) + 1, "");
}

/// Ends a line without spaces at its end.
static void end_line(bk_buffer *out)
{
    while (out->length && out->bytes[out->length - 1] == ' ')
        out->bytes[--out->length] = '\0';
    bk_buffer_char(out, '\n');
}

static void write_lines(const bench_sheet *writing, const char *text, int indent)
{
    size_t count;
    const char *safe = bk_text_safe(writing->arena, text, writing->ascii);
    char **lines = bk_text_wrap(writing->arena, safe, (size_t)(SHEET_COLUMNS - indent), &count);
    for (size_t i = 0; i < count; i++) {
        bk_buffer_print(writing->out, "%*s%s", indent, "", lines[i]);
        end_line(writing->out);
    }
}

// ----------------------------------------------------------------------------------------------------- head

/// "Joaquim's hours of today last until 17:00" in few words.
static const char *hours_words(const bench_sheet *writing)
{
    char time[BK_TIME_ROOM];
    if (!writing->list->person)
        return "";
    if (writing->list->free_until.day == BK_NO_DAY)
        return ", no hours today";
    return bk_arena_print(writing->arena, ", hours until %s",
                          bk_time_write(writing->list->free_until.time, time));
}

/// "14 steps can be worked on now, 5 of them within 30 min".
static const char *count_words(const bench_sheet *writing)
{
    char minutes[BK_AMOUNT_ROOM];
    const bk_bench_list *list = writing->list;
    if (!list->count && list->person && !list->person->skills)
        return "Nothing: no kind of work is among the skills written down (Hands).";
    if (!list->count)
        return "Nothing can be worked on now; the rail says what each costume waits on.";
    const char *text = bk_arena_print(writing->arena, "%zu step%s can be worked on now", list->count,
                                      list->count == 1 ? "" : "s");
    if (writing->minutes > 0)
        return bk_arena_print(writing->arena, "%s, %zu of them within %s.", text, list->fitting,
                              bk_minutes_words(writing->minutes, minutes));
    return bk_arena_print(writing->arena, "%s, best first.", text);
}

static void write_head(const bench_sheet *writing)
{
    char day[BK_DAY_WORDS_ROOM];
    const bk_forecast *forecast = writing->forecast;
    const bk_planned_person *person = writing->list->person;
    bk_day_words(forecast->today, forecast->today, day);
    write_lines(writing,
                bk_arena_print(writing->arena, "Bench: %s, %s%s", person ? person->name : "everybody", day,
                               hours_words(writing)),
                0);
    if (forecast->room_snag.kind != BK_SNAGS)
        write_lines(writing,
                    bk_arena_print(writing->arena, "%s.",
                                   bk_snag_sentence(&forecast->room_snag, forecast->today, writing->arena)),
                    0);
    write_lines(writing, count_words(writing), 0);
}

// ---------------------------------------------------------------------------------------------------- steps

/// "4A the Miller".
static const char *costume_words(const bench_sheet *writing, const bk_planned_step *step)
{
    return step->costume
               ? bk_arena_print(writing->arena, "%s %s", step->costume, step->role ? step->role : "")
               : "";
}

/// A long name of a step takes its room from the title.
static size_t step_columns(const bench_sheet *writing, const char *name)
{
    size_t columns = bk_text_columns(bk_text_safe(writing->arena, name, writing->ascii));
    if (columns < STEP_COLUMNS)
        return STEP_COLUMNS;
    return columns < LONGEST_STEP ? columns : LONGEST_STEP;
}

static void write_step(const bench_sheet *writing, const bk_bench_line *line)
{
    char minutes[BK_AMOUNT_ROOM];
    const bk_planned_step *step = line->step;
    const char *name = bk_arena_print(writing->arena, "%s/%s", step->piece, step->key);
    const char *title = cut(writing, step->title ? step->title : "", TITLE_COLUMNS);
    const char *costume = cut(writing, costume_words(writing, step), COSTUME_COLUMNS);
    size_t columns = step_columns(writing, name);
    write_cell(writing, name, columns);
    write_cell(writing, title, STEP_COLUMNS + TITLE_COLUMNS - columns);
    bk_buffer_print(writing->out, "%*s  %s", MINUTES_COLUMNS, bk_minutes_words(line->minutes, minutes),
                    costume);
    end_line(writing->out);
}

/// "together with 1B-1/cut, 2A-1/cut and 3 more: the same linen"; the first of a group names the others, these name the first alone. ""
/// where it goes with none of the list.
static const char *together_words(const bench_sheet *writing, const bk_bench_line *line)
{
    enum { NAMED_MOST = 3 };
    size_t count = 0;
    bool first = true;
    const char *text = "";
    for (size_t i = 0; line->together && i < writing->list->count && (first || !count); i++) {
        const bk_bench_line *other = &writing->list->lines[i];
        if (other == line || other->together != line->together)
            continue;
        first = first && other > line;
        if (count++ < NAMED_MOST)
            text = bk_arena_print(writing->arena, "%s%s%s/%s", text, count > 1 ? ", " : "",
                                  other->step->piece, other->step->key);
    }
    if (count > NAMED_MOST)
        text = bk_arena_print(writing->arena, "%s and %zu more", text, count - NAMED_MOST);
    return count ? bk_arena_print(writing->arena, "best together with %s: the same %s", text, line->shared)
                 : "";
}

static void write_line(const bench_sheet *writing, const bk_bench_line *line)
{
    const char *together = together_words(writing, line);
    const char *why = bk_bench_why_sentence(line, writing->forecast->today, writing->arena);
    if (line->step->hands > 1)
        why = bk_arena_print(writing->arena, "%s; needs %lld people", why, (long long)line->step->hands);
    if (writing->several)
        why = bk_arena_print(writing->arena, "%s; %s", why, line->step->production);
    write_step(writing, line);
    write_lines(writing, why, INDENT);
    if (*together)
        write_lines(writing, together, INDENT);
}

/// Between what fits the minutes asked for and what does not.
static void write_heading(const bench_sheet *writing, size_t index)
{
    char minutes[BK_AMOUNT_ROOM];
    const bk_bench_line *lines = writing->list->lines;
    bool first = index == 0;
    if (writing->minutes <= 0) {
        if (first)
            bk_buffer_char(writing->out, '\n');
    } else if (first || lines[index].fits != lines[index - 1].fits) {
        bk_buffer_print(writing->out, "\n%s %s\n", lines[index].fits ? "Within" : "Longer than",
                        bk_minutes_words(writing->minutes, minutes));
    }
}

static bool of_several(const bk_bench_list *list)
{
    for (size_t i = 1; i < list->count; i++)
        if (list->lines[i].step->production_id != list->lines[0].step->production_id)
            return true;
    return false;
}

void bk_bench_text(const bk_forecast *forecast, const bk_bench_list *list, int64_t minutes, bool ascii,
                   bk_buffer *out)
{
    bench_sheet writing = {.forecast = forecast,
                           .list = list,
                           .minutes = minutes,
                           .several = of_several(list),
                           .out = out,
                           .arena = bk_arena_new(),
                           .ascii = ascii};
    write_head(&writing);
    for (size_t i = 0; i < list->count; i++) {
        write_heading(&writing, i);
        write_line(&writing, &list->lines[i]);
        bk_arena_reset(writing.arena);
    }
    bk_arena_free(writing.arena);
}
