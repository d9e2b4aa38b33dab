#include "bodkin/ui/tick_line.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/base/typed.h"
#include "bodkin/sheet/outlook_words.h"
#include "bodkin/ui/acts.h"
#include "bodkin/work/clock.h"
#include "bodkin/work/tick.h"

// ------------------------------------------------------------------------------------------ the steps offered

bk_indices bk_steps_offered(const bk_rail *rail, const bk_rail_costume *costume, size_t piece,
                            bk_arena *arena)
{
    const bk_indices *pieces = &rail->rows.costumes[costume->index].pieces;
    size_t *offered = bk_arena_take(arena, rail->rows.step_count * sizeof *offered);
    size_t count = 0;
    for (size_t i = 0; i < pieces->count; i++) {
        const bk_indices *steps = &rail->rows.pieces[pieces->items[i]].steps;
        if (piece != BK_NO_INDEX && piece != pieces->items[i])
            continue;
        for (size_t j = 0; j < steps->count; j++)
            if (bk_step_next(&rail->rows, steps->items[j]))
                offered[count++] = steps->items[j];
    }
    return (bk_indices){offered, count};
}

static bool waits_on_more_than_hands(const bk_rail_costume *costume, size_t step)
{
    for (size_t i = 0; i < costume->reckoned->wait_count; i++)
        if (costume->reckoned->waits[i].step == step && costume->reckoned->waits[i].on != BK_WAIT_HAND)
            return true;
    return false;
}

size_t bk_step_likely(const bk_rail *rail, const bk_rail_costume *costume, bk_indices steps, int64_t in_hand)
{
    size_t free = BK_NO_INDEX, no_fitting = BK_NO_INDEX;
    for (size_t i = 0; i < steps.count; i++) {
        size_t step = steps.items[i];
        if (in_hand != 0 && rail->steps[step].id == in_hand)
            return i;
        if (rail->steps[step].kind == BK_FIT)
            continue;
        if (free == BK_NO_INDEX && !waits_on_more_than_hands(costume, step))
            free = i;
        if (no_fitting == BK_NO_INDEX)
            no_fitting = i;
    }
    return free != BK_NO_INDEX ? free : no_fitting != BK_NO_INDEX ? no_fitting : 0;
}

static size_t index_of(const bk_rail *rail, int64_t id)
{
    for (size_t i = 0; i < rail->rows.step_count; i++)
        if (rail->steps[i].id == id)
            return i;
    return BK_NO_INDEX;
}

// -------------------------------------------------------------------------------------------------- the line

void bk_tick_line_close(bk_tick_line *line)
{
    free(line->steps);
    bk_arena_free(line->arena);
    *line = (bk_tick_line){.asked = false};
}

static int64_t asked_about(const bk_tick_line *line)
{
    return line->steps[line->cursor.at];
}

// Looks at the step asked about, as it stands from now on in the question.
static void look(bk_tick_line *line)
{
    bk_error error;
    bk_arena_reset(line->arena);
    if (bk_step_outlook_read(line->wall->store, asked_about(line), line->arena, &line->outlook, &error))
        bk_wall_say(line->wall, "%s", error.text);
}

static void begin(bk_tick_line *line, bk_step_act act, bk_wall *wall, size_t count)
{
    bk_tick_line_close(line);
    *line = (bk_tick_line){.asked = true, .act = act, .wall = wall, .arena = bk_arena_new()};
    line->steps = bk_alloc(count * sizeof *line->steps);
    bk_cursor_fit(&line->cursor, count, 1);
}

void bk_tick_line_ask(bk_tick_line *line, bk_step_act act, bk_wall *wall, bk_indices steps, size_t at)
{
    begin(line, act, wall, steps.count);
    for (size_t i = 0; i < steps.count; i++)
        line->steps[i] = wall->rail->steps[steps.items[i]].id;
    bk_cursor_put(&line->cursor, at);
    look(line);
}

void bk_tick_line_ask_one(bk_tick_line *line, bk_step_act act, bk_wall *wall, int64_t step)
{
    begin(line, act, wall, 1);
    line->steps[0] = step;
    line->anywhere = true;
    look(line);
}

// ------------------------------------------------------------------------------------------- another terminal

static const char *name_of(const bk_step_outlook *outlook, bk_arena *arena)
{
    return bk_arena_print(arena, "%s/%s", outlook->step.step.piece, outlook->step.step.key);
}

static bool is_same(const bk_step_outlook *left, const bk_step_outlook *right)
{
    const bk_step *one = &left->step.step, *other = &right->step.step;
    return bk_same_text(one->piece, other->piece) && bk_same_text(one->key, other->key) &&
           bk_same_text(one->title, other->title) && one->done_on == other->done_on;
}

static const char *done_words(const bk_step_outlook *outlook, bk_arena *arena)
{
    const char *by = outlook->step.step.done_by;
    if (outlook->step.fits)
        return "was done meanwhile, as its fitting fits";
    return by ? bk_arena_print(arena, "was done by %s meanwhile", by) : "was done meanwhile";
}

// What became of the step asked about since it was shown; NULL: nothing.
static const char *became(const bk_tick_line *line, const bk_step_outlook *now, bk_arena *arena)
{
    bool wants_done = line->act == BK_STEP_OPEN;
    if (!now->found)
        return "was taken away meanwhile";
    if (bk_step_outlook_done(now) != wants_done)
        return wants_done ? "was opened again meanwhile" : done_words(now, arena);
    return is_same(&line->outlook, now) ? NULL : "was changed meanwhile";
}

// Whether something became of it; then the question goes, and the bottom line says why.
static bool is_overtaken(bk_tick_line *line)
{
    bk_error error;
    bk_step_outlook now;
    bk_arena *arena = bk_arena_new();
    bk_status status = bk_step_outlook_read(line->wall->store, asked_about(line), arena, &now, &error);
    const char *words = status ? NULL : became(line, &now, arena);
    bool gone = status || words;
    if (gone) {
        const char *name = bk_text_safe(arena, name_of(&line->outlook, arena), line->wall->ascii);
        bk_wall *wall = line->wall;
        if (status)
            bk_wall_say(wall, "%s", error.text);
        else
            bk_wall_say(wall, "%s %s; nothing was done here.", name, bk_text_safe(arena, words, wall->ascii));
        bk_tick_line_close(line);
    }
    bk_arena_free(arena);
    return gone;
}

// Takes those off that can no longer be asked about; the cursor stays on the one that is.
static void keep_offered(bk_tick_line *line, const bk_rail *rail)
{
    size_t count = 0, at = line->cursor.at;
    for (size_t i = 0; i < line->cursor.count; i++) {
        size_t step = index_of(rail, line->steps[i]);
        bool fits = step != BK_NO_INDEX && rail->rows.steps[step].done == (line->act == BK_STEP_OPEN);
        if (fits)
            line->steps[count++] = line->steps[i];
        else if (i < line->cursor.at)
            at--;
    }
    bk_cursor_fit(&line->cursor, count, line->cursor.seen);
    bk_cursor_put(&line->cursor, at);
}

void bk_tick_line_keep(bk_tick_line *line, const bk_rail *rail)
{
    if (!line->asked)
        return;
    int64_t step = asked_about(line);
    if (!rail && !line->anywhere) {
        bk_tick_line_close(line);
        return;
    }
    if (is_overtaken(line)) {
        line->overtaken = true;
        return;
    }
    if (!line->anywhere)
        keep_offered(line, rail);
    if (line->cursor.count == 0 || asked_about(line) != step)
        bk_tick_line_close(line);
    else
        look(line);
}

size_t bk_tick_line_step(const bk_tick_line *line, const bk_rail *rail)
{
    return line->asked ? index_of(rail, asked_about(line)) : BK_NO_INDEX;
}

// ---------------------------------------------------------------------------------------------------- doing it

static int64_t took_of(const bk_tick_line *line)
{
    int64_t minutes = 0;
    return bk_minutes_typed(line->took, &minutes) ? minutes : BK_NOT_KNOWN;
}

static bk_status mark_done(const bk_tick_line *line, const bk_job *job, int64_t step, const char **sentence,
                           bk_error *error)
{
    bk_tick tick = {.done_on = job->today, .done_by = job->who, .took = took_of(line)};
    return bk_step_tick(job->store, step, &tick, job->made_at, job->arena, sentence, error);
}

static bk_status mark_open(const bk_tick_line *line, const bk_job *job, int64_t step, const char **sentence,
                           bk_error *error)
{
    (void)line;
    return bk_step_untick(job->store, step, job->today, job->made_at, job->arena, sentence, error);
}

static bk_status start_clock(const bk_tick_line *line, const bk_job *job, int64_t step, const char **sentence,
                             bk_error *error)
{
    (void)line;
    return bk_running_start(job, step, sentence, error);
}

static const struct act {
    const char *asks; ///< before the step's name
    const char *does; ///< what Enter does
    bool took;        ///< minutes may be typed
    bk_status (*run)(const bk_tick_line *line, const bk_job *job, int64_t step, const char **sentence,
                     bk_error *error);
} acts[BK_STEP_ACTS] = {
    [BK_STEP_DONE] = {"Done", "yes", true, mark_done},
    [BK_STEP_OPEN] = {"Open again", "yes", false, mark_open},
    [BK_STEP_CLOCK] = {"Start the clock", "yes", false, start_clock},
};

// What was done, and what the shelf did not have for it.
static const char *with_lacks(const bk_tick_line *line, const char *sentence, bk_arena *arena)
{
    const char *lacks = line->act == BK_STEP_DONE ? bk_outlook_lacks(&line->outlook, true, arena) : NULL;
    return sentence && lacks ? bk_arena_print(arena, "%s; %s", sentence, lacks) : sentence;
}

static void run(bk_screen *screen, bk_tick_line *line)
{
    bk_error error;
    const char *sentence = NULL;
    if (is_overtaken(line))
        return;
    if (*line->took && took_of(line) == BK_NOT_KNOWN) {
        bk_wall_say(screen->wall, "%s is no length of time; type it such as 45 or 1h30.", line->took);
        return;
    }
    look(line);
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(screen->wall, arena);
    bk_status status = acts[line->act].run(line, &job, asked_about(line), &sentence, &error);
    sentence = with_lacks(line, sentence, arena);
    bk_tick_line_close(line);
    bk_act_did(screen, status, sentence, &error);
    bk_arena_free(arena);
}

// A digit or sign more, if there is room; a time begins with a digit that is no nought.
static void add_to_time(bk_tick_line *line, char sign)
{
    size_t length = strlen(line->took);
    if (length + 1 < BK_TOOK_ROOM && (length > 0 || (sign >= '1' && sign <= '9')))
        line->took[length] = sign;
}

static void take_digit_back(bk_tick_line *line)
{
    size_t length = strlen(line->took);
    if (length > 0)
        line->took[length - 1] = '\0';
}

// What a time is typed with: 45, 1h30, 1:30.
static bool is_of_time(const bk_key *key)
{
    return key->name == BK_KEY_TYPED && strchr("0123456789h:", key->text[0]) && key->text[1] == '\0';
}

// Up and Down go to another step, which is asked about instead.
static void choose(bk_tick_line *line, bk_key_name name)
{
    size_t before = line->cursor.at;
    bk_cursor_key(&line->cursor, name);
    if (line->cursor.at != before)
        look(line);
}

bool bk_tick_line_take(bk_screen *screen, bk_tick_line *line, const bk_key *key)
{
    if (line->overtaken) {
        line->overtaken = false;
        return key->name == BK_KEY_ENTER || key->name == BK_KEY_ESCAPE;
    }
    if (!line->asked || (key->name == BK_KEY_TYPED && bk_same_text(key->text, "?")))
        return false;
    if (key->name == BK_KEY_ENTER)
        run(screen, line);
    else if (key->name == BK_KEY_ESCAPE)
        bk_tick_line_close(line);
    else if (key->name == BK_KEY_BACKSPACE)
        take_digit_back(line);
    else if (is_of_time(key) && acts[line->act].took)
        add_to_time(line, key->text[0]);
    else
        choose(line, key->name);
    return true;
}

// ----------------------------------------------------------------------------------------------------- drawing

// What is to be said of a step before it is done or begun, a line each.
static const char *remarks_of(const bk_tick_line *line, bk_arena *arena)
{
    const char *all = "", *remarks[BK_OUTLOOK_REMARKS];
    if (line->act == BK_STEP_OPEN)
        return all;
    size_t count = bk_outlook_remarks(&line->outlook, line->wall->today, arena, remarks);
    for (size_t i = 0; i < count; i++)
        all = bk_arena_print(arena, "%s%s\n", all, remarks[i]);
    if (line->act == BK_STEP_DONE && line->outlook.step.step.kind == BK_FIT)
        all = bk_arena_print(
            arena, "%sbetter record what came of the fitting under Fittings (F): what fits is done", all);
    return all;
}

// What the step's clocks have measured, where that would be kept.
static int64_t took_by_clock(const bk_tick_line *line)
{
    char now[BK_MADE_AT_ROOM];
    if (!acts[line->act].took || *line->took)
        return BK_NOT_KNOWN;
    line->wall->clock.now(line->wall->clock.self, now);
    return bk_step_outlook_took(&line->outlook, now);
}

static const char *took_words(const bk_tick_line *line, bk_arena *arena)
{
    char took[BK_AMOUNT_ROOM];
    int64_t by_clock = took_by_clock(line);
    if (*line->took)
        return bk_arena_print(arena, ", it took %s",
                              took_of(line) == BK_NOT_KNOWN ? line->took
                                                            : bk_minutes_words(took_of(line), took));
    return by_clock == BK_NOT_KNOWN
               ? ""
               : bk_arena_print(arena, ", %s by the clock", bk_minutes_words(by_clock, took));
}

static void draw_question(const bk_paint *paint, const bk_tick_line *line, bk_spot spot)
{
    const char *const parts[] = {
        bk_arena_print(paint->arena, "%s: %s ", acts[line->act].asks, name_of(&line->outlook, paint->arena)),
        line->outlook.step.step.title,
        bk_arena_print(paint->arena, "%s?", took_words(line, paint->arena)),
    };
    size_t end = bk_text_columns(parts[2]), right = spot.column + spot.width;
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++) {
        size_t left = right - spot.column;
        spot.width = i < 2 ? (left > end ? left - end : 0) : left;
        spot.column += bk_paint_text(paint, spot, i == 0 ? BK_STYLE_ACCENT : BK_STYLE_BOLD, parts[i]);
    }
    bk_term_cursor(spot.row, spot.column - 1, true);
}

static const char *first_wait(const bk_rail *rail, const bk_rail_costume *costume, size_t step,
                              bk_arena *arena)
{
    for (size_t i = 0; i < costume->reckoned->wait_count; i++)
        if (costume->reckoned->waits[i].step == step && costume->reckoned->waits[i].on != BK_WAIT_HAND)
            return bk_wait_brief(rail, &costume->reckoned->waits[i], arena);
    return NULL;
}

static void draw_step(const bk_paint *paint, const bk_rail *rail, const bk_rail_costume *costume, size_t step,
                      size_t row, bool chosen)
{
    enum { NAME_COLUMNS = 12, GAP = 2 };
    int style = chosen ? BK_STYLE_CHOSEN : BK_STYLE_PLAIN;
    char minutes[BK_AMOUNT_ROOM];
    const bk_step *record = &rail->steps[step];
    bk_spot spot = bk_paint_row(paint, row);
    if (chosen)
        bk_paint_chosen(paint, row);
    const char *wait = first_wait(rail, costume, step, paint->arena);
    const char *right = wait ? wait : bk_minutes_words(record->minutes, minutes);
    bk_spot half = {row, spot.column + spot.width / 2, spot.width - spot.width / 2};
    spot.width -= bk_paint_right(paint, half, style, right) + GAP;
    bk_spot name = {row, spot.column, NAME_COLUMNS};
    size_t used = bk_paint_text(
        paint, name, style,
        bk_arena_print(paint->arena, "%s/%s", rail->pieces[rail->rows.steps[step].piece].name, record->key));
    used = (used > NAME_COLUMNS ? used : NAME_COLUMNS) + GAP;
    spot.column += used;
    spot.width -= used;
    bk_paint_text(paint, spot, style, record->title);
}

static void draw_steps(const bk_paint *paint, const bk_rail *rail, bk_tick_line *line,
                       const bk_rail_costume *costume, size_t row, size_t rows)
{
    bk_cursor_fit(&line->cursor, line->cursor.count, rows);
    for (size_t i = line->cursor.top; i < line->cursor.count && i < line->cursor.top + rows; i++, row++) {
        size_t step = index_of(rail, line->steps[i]);
        if (step != BK_NO_INDEX)
            draw_step(paint, rail, costume, step, row, i == line->cursor.at);
    }
}

void bk_tick_line_draw(const bk_paint *paint, bk_tick_line *line, const bk_rail *rail,
                       const bk_rail_costume *costume, size_t row, size_t rows)
{
    if (!line->asked || !line->outlook.found)
        return;
    bk_spot spot = bk_paint_row(paint, row), below = bk_paint_row(paint, row + 1);
    const char *more = remarks_of(line, paint->arena);
    size_t used = 1 + bk_paint_paragraphs(paint, below, rows - 1, BK_STYLE_PLAIN, more);
    if (costume && line->cursor.count > 1 && rows > used)
        draw_steps(paint, rail, line, costume, row + used, rows - used);
    draw_question(paint, line, spot);
}

// ------------------------------------------------------------------------------------------------- its keys

size_t bk_tick_line_draw_keys(const bk_tick_line *line, const bk_paint *paint, bk_spot spot)
{
    enum { MOST_ITEMS = 4 };
    const struct act *act = &acts[line->act];
    bk_item items[MOST_ITEMS];
    size_t count = 0;
    items[count++] = (bk_item){.key = "Enter", .word = act->does};
    if (line->cursor.count > 1)
        items[count++] = (bk_item){.key = "Up, Down", .word = "another"};
    if (act->took)
        items[count++] = (bk_item){
            .key = "0-9", .word = took_by_clock(line) == BK_NOT_KNOWN ? "minutes it took" : "other minutes"};
    items[count++] = (bk_item){.key = "Escape", .word = "no"};
    bk_paint_items(paint, spot, items, count);
    return spot.width;
}

static void ignore(bk_screen *screen, const bk_key_row *row)
{
    (void)screen;
    (void)row;
}

const bk_key_row bk_tick_line_rows[BK_TICK_LINE_ROWS] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .help = "yes: it is done, open again, or its clock starts",
     .act = ignore},
    {.name = BK_KEY_UP, .written = "Up, Down", .help = "another of the steps that are next", .act = ignore},
    {.name = BK_KEY_TYPED,
     .typed = "0",
     .written = "0-9",
     .help = "the minutes it took; else those of its clock are kept",
     .act = ignore},
    {.name = BK_KEY_ESCAPE, .written = "Escape", .help = "leave everything as it is", .act = ignore},
};
