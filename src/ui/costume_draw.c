#include "bodkin/ui/costume_draw.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/costume_facts.h"
#include "bodkin/ui/forecast_told.h"

enum { GAP = BK_LINE_GAP };

static const char can_wait[] = "can wait";

// ------------------------------------------------------------------------------------------- a line of a piece

static const char *piece_count(const bk_rail *rail, size_t piece, bk_arena *arena)
{
    const bk_indices *steps = &rail->rows.pieces[piece].steps;
    size_t done = 0;
    for (size_t i = 0; i < steps->count; i++)
        done += rail->rows.steps[steps->items[i]].done;
    return bk_arena_print(arena, "%zu of %zu done", done, steps->count);
}

static void draw_piece(const bk_paint *paint, const bk_rail *rail, const bk_rail_costume *costume,
                       size_t piece, bk_spot spot, bool chosen)
{
    static const int styles[] = {BK_STYLE_DIM, BK_STYLE_BOLD, BK_STYLE_DIM};
    const bk_piece *record = &rail->pieces[piece];
    int dim = chosen ? BK_STYLE_CHOSEN : BK_STYLE_DIM;
    if (rail->rows.pieces[piece].steps.count > 0)
        spot.width -= bk_paint_right(paint, spot, dim, piece_count(rail, piece, paint->arena)) + GAP;
    const char *const parts[] = {record->name, record->title,
                                 bk_piece_facts(rail, costume, piece, paint->arena)};
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++) {
        int style = !chosen ? styles[i] : styles[i] == BK_STYLE_BOLD ? BK_STYLE_CHOSEN | BK_STYLE_BOLD : dim;
        size_t used = bk_paint_text(paint, spot, style, parts[i]) + GAP;
        spot.column += used;
        spot.width -= used < spot.width ? used : spot.width;
    }
}

// --------------------------------------------------------------------------------------------- a line of a step

static const char *mark_of(const bk_rail *rail, size_t step)
{
    if (rail->rows.steps[step].done)
        return "done";
    return bk_step_next(&rail->rows, step) ? "next" : "";
}

static void draw_done(const bk_paint *paint, const bk_rail *rail, const bk_costume_lines *lines, size_t step,
                      int style, bk_spot spot)
{
    const bk_step *record = &rail->steps[step];
    char day[BK_DAY_WORDS_ROOM];
    bk_spot left = {spot.row, spot.column, lines->day_width};
    bk_spot by = {spot.row, spot.column + lines->day_width + 1, lines->by_width};
    if (record->done_on == BK_NO_DAY) {
        bk_paint_text(paint, left, style, "fits");
        return;
    }
    bk_paint_right(paint, left, style, bk_day_words(record->done_on, rail->today, day));
    bk_paint_text(paint, by, style, record->done_by);
}

// When an open step is planned, and who does it.
static void draw_planned(const bk_paint *paint, const bk_costume_sight *sight, const bk_costume_lines *lines,
                         size_t step, int style, bk_spot spot)
{
    char day[BK_DAY_WORDS_ROOM];
    const bk_planned_step *planned = bk_forecast_step(sight->forecast, sight->rail->steps[step].id);
    bk_spot left = {spot.row, spot.column, lines->day_width};
    bk_spot by = {spot.row, spot.column + lines->day_width + 1, lines->by_width};
    if (!planned)
        return;
    if (planned->begin.day == BK_NO_DAY) {
        bk_paint_right(paint, left, style, "never");
        return;
    }
    bk_paint_right(paint, left, style, bk_day_words(planned->begin.day, sight->rail->today, day));
    bk_paint_text(paint, by, style, bk_planned_who(sight->forecast, planned, paint->arena));
}

// The title of a step, and within its room that it can wait, where that is told there.
static void draw_title(const bk_paint *paint, const bk_step *step, bool told_within, int style, bk_spot spot)
{
    if (told_within && step->can_wait == 1)
        spot.width -= bk_paint_right(paint, spot, style, can_wait) + GAP;
    bk_paint_text(paint, spot, style, step->title);
}

static void draw_step(const bk_paint *paint, const bk_costume_sight *sight, const bk_costume_lines *lines,
                      size_t step, size_t row, bool chosen)
{
    const bk_rail *rail = sight->rail;
    const bk_step *record = &rail->steps[step];
    char minutes[BK_AMOUNT_ROOM];
    bool done = rail->rows.steps[step].done, next = !done && bk_step_next(&rail->rows, step);
    int style = chosen ? BK_STYLE_CHOSEN : done ? BK_STYLE_DIM : BK_STYLE_PLAIN;
    int mark_style = chosen ? BK_STYLE_CHOSEN : next ? BK_STYLE_ACCENT : style;
    bk_spot spot = {row, BK_LINE_STEP_COLUMN, BK_LINE_MARK_COLUMNS};
    bk_paint_text(paint, spot, mark_style, mark_of(rail, step));
    spot.column += spot.width + GAP;
    spot.width = done ? lines->title_width : lines->open_width;
    draw_title(paint, record, !done && lines->wait_within, style, spot);
    spot.column += spot.width + GAP;
    spot.width = BK_LINE_KIND_COLUMNS;
    bk_paint_text(paint, spot, style, bk_word_text(&bk_kind_words, record->kind));
    spot.column += spot.width + GAP;
    spot.width = BK_LINE_MINUTES_COLUMNS;
    bk_paint_right(paint, spot, style, bk_minutes_words(record->minutes, minutes));
    spot.column += spot.width + GAP;
    spot.width = BK_LINE_CAN_WAIT_COLUMNS;
    if (done)
        draw_done(paint, rail, lines, step, style, spot);
    else if (lines->planned)
        draw_planned(paint, sight, lines, step, style, spot);
    else if (record->can_wait == 1 && !lines->wait_within)
        bk_paint_text(paint, spot, style, can_wait);
}

// ----------------------------------------------------------------------------------------------- all lines

// A need or a wait stands out where somebody must act; what the shelf has does not.
static int text_style(const bk_costume_line *line, bool chosen)
{
    bool waits = line->kind == BK_LINE_WAIT || (line->kind == BK_LINE_NEED && line->waits);
    if (chosen)
        return BK_STYLE_CHOSEN;
    return !waits ? BK_STYLE_DIM : line->acts ? BK_STYLE_TIGHT : BK_STYLE_PLAIN;
}

void bk_costume_line_draw(const bk_paint *paint, const bk_costume_sight *sight, const bk_costume_lines *lines,
                          size_t line, size_t row, bool chosen)
{
    const bk_costume_line *drawn = &lines->items[line];
    bk_spot spot = bk_paint_row(paint, row);
    if (chosen)
        bk_paint_chosen(paint, row);
    if (drawn->kind == BK_LINE_PIECE) {
        draw_piece(paint, sight->rail, sight->costume, drawn->piece, spot, chosen);
    } else if (drawn->kind == BK_LINE_STEP) {
        draw_step(paint, sight, lines, drawn->step, row, chosen);
    } else if (drawn->text) {
        spot.column = bk_costume_line_column(drawn->kind);
        spot.width = paint->columns - spot.column - BK_LINE_MARGIN;
        bk_paint_text(paint, spot, text_style(drawn, chosen), drawn->text);
    }
}

// -------------------------------------------------------------------------------------- below: a stop told whole

typedef struct told {
    const char *title, *name;
    const char *facts; ///< paragraphs
} told;

// What stands in the way of a step (its id), or, with 0, of the costume as a whole, each as a paragraph.
static const char *snag_facts(const bk_costume_sight *sight, int64_t step, bk_arena *arena)
{
    const bk_costume_forecast *outlook = bk_forecast_costume(sight->forecast, sight->costume->record->id);
    const char *facts = "";
    bool of_room = step == 0 && outlook && outlook->open && sight->forecast->room_snag.kind != BK_SNAGS;
    if (of_room)
        facts = bk_snag_sentence(&sight->forecast->room_snag, sight->rail->today, arena);
    for (size_t i = 0; outlook && i < outlook->snag_count; i++)
        if (outlook->snags[i].step_id == step)
            facts = bk_cell_joined(arena, facts, "\n",
                                   bk_snag_sentence(&outlook->snags[i], sight->rail->today, arena));
    return facts;
}

static const char *costume_facts(const bk_costume_sight *sight, bk_arena *arena)
{
    const bk_costume_forecast *outlook = bk_forecast_costume(sight->forecast, sight->costume->record->id);
    const char *deciders = outlook ? bk_deciders_sentence(sight->forecast, &outlook->days, arena) : NULL;
    return bk_cell_joined(arena, snag_facts(sight, 0, arena), "\n", deciders ? deciders : "");
}

static const char *step_facts(const bk_costume_sight *sight, size_t step, bk_arena *arena)
{
    const bk_rail *rail = sight->rail;
    int64_t id = rail->steps[step].id;
    const char *facts = bk_step_facts(rail, step, arena);
    if (rail->rows.steps[step].done)
        return bk_cell_joined(arena, facts, "; ", bk_costume_used_words(sight->beside, id, arena));
    const bk_planned_step *planned = bk_forecast_step(sight->forecast, id);
    const bk_costume_forecast *outlook = bk_forecast_costume(sight->forecast, sight->costume->record->id);
    if (planned && outlook && outlook->days.days_known)
        facts = bk_cell_joined(arena, bk_planned_sentence(sight->forecast, planned, arena), "; ", facts);
    return bk_cell_joined(arena, snag_facts(sight, id, arena), "\n", facts);
}

static told tell(const bk_costume_sight *sight, const bk_costume_stop *stop, bk_arena *arena)
{
    const bk_rail *rail = sight->rail;
    const bk_rail_costume *costume = sight->costume;
    const bk_costume_beside *beside = sight->beside;
    int64_t piece = stop->piece == BK_NO_INDEX ? 0 : rail->pieces[stop->piece].id;
    int64_t step = stop->step == BK_NO_INDEX ? 0 : rail->steps[stop->step].id;
    const char *notes = bk_costume_notes(beside, costume->record->id, piece, step, rail->today, arena);
    told all = {costume->record->title, costume->record->number, ""};
    if (stop->family == BK_COSTUMES)
        all.facts = costume_facts(sight, arena);
    if (stop->family == BK_PIECES) {
        all = (told){rail->pieces[stop->piece].title, rail->pieces[stop->piece].name,
                     bk_piece_more(rail, costume, stop->piece, arena)};
    } else if (stop->step != BK_NO_INDEX) {
        const char *name =
            bk_arena_print(arena, "%s/%s", rail->pieces[stop->piece].name, rail->steps[stop->step].key);
        all = (told){rail->steps[stop->step].title, name, step_facts(sight, stop->step, arena)};
    }
    if (stop->family == BK_NEEDS)
        all.facts = bk_arena_print(arena, "needs %s", bk_costume_need_words(beside, stop->need, arena));
    all.facts = bk_cell_joined(arena, all.facts, "\n", notes);
    return all;
}

void bk_costume_stop_draw(const bk_paint *paint, const bk_costume_sight *sight, const bk_costume_stop *stop,
                          size_t row, size_t rows)
{
    told all = tell(sight, stop, paint->arena);
    bk_spot spot = bk_paint_row(paint, row);
    spot.width -= bk_paint_right(paint, spot, BK_STYLE_DIM, all.name) + GAP;
    size_t used = bk_paint_whole(paint, spot, rows - 1, BK_STYLE_BOLD, all.title);
    used = used > 0 ? used : 1;
    bk_paint_paragraphs(paint, bk_paint_row(paint, row + used), rows - used, BK_STYLE_DIM, all.facts);
}
