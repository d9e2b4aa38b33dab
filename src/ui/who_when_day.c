#include "bodkin/ui/who_when_day.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/cells.h"

enum { GAP = 2, WIDE = 60, COSTUME_SHARE = 3 };

// How full the day is stands above too: where room is short, the name goes before.
static void draw_name(const bk_paint *paint, const char *name, const bk_plan_share *share, bk_spot spot)
{
    const char *load = bk_plan_load(share, paint->arena);
    size_t used = bk_paint_text(paint, spot, BK_STYLE_BOLD, name) + GAP;
    load = load ? load : "no hours";
    if (used + bk_text_columns(load) <= spot.width)
        bk_paint_right(paint, spot, BK_STYLE_DIM, load);
}

// Where there is room, the costume stands beside the step.
static void draw_stretch(const bk_paint *paint, const bk_forecast *forecast,
                         const bk_planned_stretch *stretch, bk_spot spot)
{
    bk_arena *arena = paint->arena;
    const bk_planned_step *step = &forecast->steps[stretch->step];
    if (spot.width >= WIDE && step->costume) {
        bk_spot end = {spot.row, spot.column + spot.width - spot.width / COSTUME_SHARE,
                       spot.width / COSTUME_SHARE};
        bk_paint_text(paint, end, BK_STYLE_DIM,
                      bk_arena_print(arena, "%s %s", step->costume, step->role ? step->role : ""));
        spot.width -= end.width + GAP;
    }
    bk_paint_text(paint, spot, BK_STYLE_PLAIN,
                  bk_arena_print(arena, "%s-%s  %s %s", bk_cell_time(stretch->from, arena),
                                 bk_cell_time(stretch->to, arena), step->piece, step->title));
}

static void draw_person(const bk_paint *paint, const bk_day_beneath *beneath, size_t person, bk_spot spot,
                        size_t rows)
{
    bk_plan_share share = bk_plan_share_of(beneath->forecast, person, beneath->day->from);
    size_t room = rows - 1, seen = share.count <= room ? share.count : room - 1;
    draw_name(paint, beneath->forecast->people[person].name, &share, spot);
    for (size_t i = 0; i < seen; i++) {
        spot.row++;
        draw_stretch(paint, beneath->forecast, &share.stretches[i], spot);
    }
    spot.row++;
    if (seen < share.count)
        bk_paint_text(paint, spot, BK_STYLE_DIM,
                      bk_arena_print(paint->arena, "and %zu more: Enter shows them", share.count - seen));
}

void bk_day_beneath_draw(const bk_paint *paint, const bk_day_beneath *beneath, size_t row, size_t rows)
{
    bk_spot spot = bk_paint_row(paint, row);
    if (beneath->is) {
        bk_paint_text(paint, spot, BK_STYLE_PLAIN, beneath->is);
        spot.row++;
        rows--;
    }
    if (!beneath->day->works) {
        bk_paint_text(paint, spot, BK_STYLE_DIM, "Nobody who is shown has hours.");
        return;
    }
    spot.width = (spot.width - (beneath->count - 1) * GAP) / beneath->count;
    for (size_t i = 0; i < beneath->count; i++) {
        draw_person(paint, beneath, beneath->people[i], spot, rows);
        spot.column += spot.width + GAP;
    }
}
