#include "bodkin/ui/costume_head.h"

#include "bodkin/sheet/forecast_words.h"
#include "bodkin/ui/rail_detail.h"

enum {
    NAME_ROW,
    WEARER_ROW,
    PROGRESS_ROW,
    FORECAST_ROW,
    FORECAST_ROWS = 2,
    NOTE_ROWS = 2,
    GAP = 3,
    SEAM_COLUMNS = 20
};

static void draw_name(const bk_paint *paint, const bk_rail *rail, const bk_rail_costume *costume,
                      const bk_costume_forecast *forecast, bool chosen)
{
    char day[BK_DAY_WORDS_ROOM];
    bk_urgency urgency = bk_urgency_of(rail, costume, forecast);
    bk_spot spot = bk_paint_row(paint, NAME_ROW);
    const char *due = bk_arena_print(paint->arena, "due %s%s%s", bk_day_words(costume->due, rail->today, day),
                                     *bk_urgency_word(urgency) ? ", " : "", bk_urgency_word(urgency));
    if (chosen)
        bk_paint_chosen(paint, NAME_ROW);
    spot.width -=
        bk_paint_right(paint, spot, chosen ? BK_STYLE_CHOSEN : bk_urgency_style(urgency), due) + GAP;
    bk_paint_text(paint, spot, chosen ? BK_STYLE_CHOSEN | BK_STYLE_BOLD : BK_STYLE_BOLD,
                  bk_arena_print(paint->arena, "%s  %s", costume->record->number, costume->record->title));
}

static void draw_wearer(const bk_paint *paint, const bk_rail *rail, const bk_rail_costume *costume,
                        const char *clock)
{
    bk_spot spot = bk_paint_row(paint, WEARER_ROW);
    if (clock)
        spot.width -= bk_paint_right(paint, spot, BK_STYLE_ACCENT, clock) + GAP;
    size_t used = bk_paint_text(paint, spot, BK_STYLE_PLAIN, bk_costume_wearer(costume, paint->arena)) + GAP;
    spot.column += used;
    spot.width -= used < spot.width ? used : spot.width;
    if (!clock)
        bk_paint_right(paint, spot, BK_STYLE_DIM, rail->production.name);
}

static void draw_progress(const bk_paint *paint, const bk_rail_costume *costume, const char *reckons)
{
    bk_spot spot = bk_paint_row(paint, PROGRESS_ROW);
    if (reckons)
        spot.width -= bk_paint_right(paint, spot, BK_STYLE_DIM, reckons) + GAP;
    bk_spot seam = {spot.row, spot.column, SEAM_COLUMNS};
    bk_spot words = {spot.row, spot.column + SEAM_COLUMNS + GAP, spot.width - SEAM_COLUMNS - GAP};
    bk_paint_seam(paint, seam, false, bk_rail_seam(costume));
    const char *goes_on = bk_costume_goes_on(costume);
    bk_paint_text(paint, words, BK_STYLE_PLAIN,
                  bk_arena_print(paint->arena, "%s; %s%s%s", bk_state_word(costume->reckoned->state),
                                 bk_costume_progress(costume, paint->arena), goes_on ? "; " : "",
                                 goes_on ? goes_on : ""));
}

// When it will be ready; returns the rows used.
static size_t draw_forecast(const bk_paint *paint, const bk_rail *rail, const bk_costume_forecast *forecast)
{
    if (!forecast || !forecast->open || !forecast->days.days_known)
        return 0;
    return bk_paint_whole(paint, bk_paint_row(paint, FORECAST_ROW), FORECAST_ROWS, BK_STYLE_PLAIN,
                          bk_costume_forecast_sentence(forecast, rail->today, paint->arena));
}

size_t bk_costume_head_draw(const bk_paint *paint, const bk_rail *rail, const bk_rail_costume *costume,
                            bk_costume_head head)
{
    draw_name(paint, rail, costume, head.forecast, head.chosen);
    draw_wearer(paint, rail, costume, head.clock);
    draw_progress(paint, costume, head.reckons);
    size_t row = FORECAST_ROW + draw_forecast(paint, rail, head.forecast);
    if (costume->record->note)
        row +=
            bk_paint_whole(paint, bk_paint_row(paint, row), NOTE_ROWS, BK_STYLE_DIM, costume->record->note);
    return row + 1;
}
