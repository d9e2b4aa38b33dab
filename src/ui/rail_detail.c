#include "bodkin/ui/rail_detail.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/forecast_told.h"

enum { GAP = 2 };

const char *bk_costume_progress(const bk_rail_costume *costume, bk_arena *arena)
{
    char left[BK_AMOUNT_ROOM];
    const bk_costume_waits *reckoned = costume->reckoned;
    if (reckoned->steps == 0)
        return "no step is listed";
    if (reckoned->steps_done == reckoned->steps)
        return reckoned->steps == 1
                   ? "its one step is done"
                   : bk_arena_print(arena, "all %lld steps done", (long long)reckoned->steps);
    return bk_arena_print(arena, "%lld of %lld step%s done, %s left", (long long)reckoned->steps_done,
                          (long long)reckoned->steps, reckoned->steps == 1 ? "" : "s",
                          bk_minutes_words(reckoned->minutes_left, left));
}

const char *bk_costume_wearer(const bk_rail_costume *costume, bk_arena *arena)
{
    const char *role = costume->role ? costume->role : "no role";
    if (!costume->performer)
        return bk_arena_print(arena, "%s, not cast yet", role);
    return bk_arena_print(arena, "%s, played by %s", role, costume->performer);
}

const char *bk_costume_goes_on(const bk_rail_costume *costume)
{
    return costume->reckoned->can_go_on && costume->reckoned->state != BK_READY ? "can go on" : NULL;
}

const char *bk_wait_of_piece(const bk_rail *rail, const bk_wait *wait, bk_arena *arena)
{
    bool piece_is_subject = wait->on == BK_WAIT_OUT || wait->on == BK_WAIT_HAND;
    return bk_arena_print(arena, "%s%s %s", rail->pieces[wait->piece].title, piece_is_subject ? "" : ":",
                          bk_wait_sentence(rail, wait, arena));
}

// ------------------------------------------------------------------------------------------- the sentences

enum { SENTENCES_MOST = 64 }; // more than the detail ever shows

typedef struct sentences {
    const char *items[SENTENCES_MOST];
    size_t count;
    size_t unsaid; // waits that were not looked at any more
} sentences;

static bool said(const sentences *told, const char *text)
{
    for (size_t i = 0; i < told->count; i++)
        if (bk_same_text(told->items[i], text))
            return true;
    return false;
}

static bool is_waited_on(const bk_rail_costume *costume, size_t piece, size_t step)
{
    for (size_t i = 0; i < costume->reckoned->wait_count; i++) {
        const bk_wait *wait = &costume->reckoned->waits[i];
        if (wait->step == step || (wait->step == BK_NO_INDEX && wait->piece == piece))
            return true;
    }
    return false;
}

// "can be worked on: 2A-1/cut cut out (45 min); ...": the next steps that wait on nothing; NULL where there is none.
static const char *now_words(const bk_rail *rail, const bk_rail_costume *costume, bk_arena *arena)
{
    char time[BK_AMOUNT_ROOM];
    const char *text = NULL;
    const bk_indices *pieces = &rail->rows.costumes[costume->index].pieces;
    for (size_t i = 0; i < pieces->count; i++) {
        const bk_indices *steps = &rail->rows.pieces[pieces->items[i]].steps;
        for (size_t j = 0; j < steps->count; j++) {
            size_t step = steps->items[j];
            if (!bk_step_next(&rail->rows, step) || is_waited_on(costume, pieces->items[i], step))
                continue;
            text = bk_arena_print(arena, "%s%s %s (%s)", text ? text : "",
                                  text ? ";" : "can be worked on:", rail->steps[step].title,
                                  bk_minutes_words(rail->steps[step].minutes, time));
        }
    }
    return text;
}

// "Fox head has no steps yet": why a costume is not listed whole; NULL where it is.
static const char *unlisted_words(const bk_rail *rail, const bk_rail_costume *costume, bk_arena *arena)
{
    const bk_indices *pieces = &rail->rows.costumes[costume->index].pieces;
    if (pieces->count == 0)
        return "no piece is listed yet: Enter opens it, and + adds one";
    for (size_t i = 0; i < pieces->count; i++)
        if (rail->rows.pieces[pieces->items[i]].steps.count == 0)
            return bk_arena_print(arena, "%s has no steps yet", rail->pieces[pieces->items[i]].title);
    return NULL;
}

static void tell(sentences *told, const char *text)
{
    if (text && told->count < SENTENCES_MOST && !said(told, text))
        told->items[told->count++] = text;
}

// What stands in the way of a forecast so that nothing else helps; all other snags are told by waits or words too.
static const bool is_grave[BK_SNAGS] = {
    [BK_SNAG_NO_SKILL] = true,
    [BK_SNAG_NO_HOURS] = true,
    [BK_SNAG_AWAY] = true,
};

static void tell_snags(const bk_forecast *forecast, const bk_costume_forecast *outlook, bool grave,
                       bk_arena *arena, sentences *told)
{
    for (size_t i = 0; outlook && i < outlook->snag_count; i++)
        if (is_grave[outlook->snags[i].kind] == grave)
            tell(told, bk_snag_sentence(&outlook->snags[i], forecast->today, arena));
    if (!grave && outlook && outlook->open && forecast->room_snag.kind != BK_SNAGS)
        tell(told, bk_snag_sentence(&forecast->room_snag, forecast->today, arena));
}

// When it will be ready; where that is not known the snags say why.
static void tell_days(const bk_forecast *forecast, const bk_costume_forecast *outlook, bk_arena *arena,
                      sentences *told)
{
    if (outlook && outlook->days.days_known)
        tell(told, bk_costume_forecast_sentence(outlook, forecast->today, arena));
}

// Whether a snag says the same, and what to do.
static bool told_as_snag(const bk_rail *rail, const bk_costume_forecast *outlook, const bk_wait *wait)
{
    for (size_t i = 0; outlook && wait->on == BK_WAIT_PEOPLE && i < outlook->snag_count; i++) {
        const bk_snag *snag = &outlook->snags[i];
        if ((snag->kind == BK_SNAG_NO_SKILL || snag->kind == BK_SNAG_NO_HOURS) &&
            snag->step_id == rail->steps[wait->step].id)
            return true;
    }
    return false;
}

// Each sentence once, those where somebody must act first.
static void gather(const bk_rail *rail, const bk_rail_costume *costume, const bk_costume_forecast *outlook,
                   bk_arena *arena, sentences *told)
{
    for (int turn = 1; turn >= 0; turn--)
        for (size_t i = 0; i < costume->reckoned->wait_count; i++) {
            const bk_wait *wait = &costume->reckoned->waits[i];
            if (wait->acts != (turn == 1) || told_as_snag(rail, outlook, wait))
                continue;
            if (told->count == SENTENCES_MOST) {
                told->unsaid++;
                continue;
            }
            tell(told, bk_wait_wanted(rail, outlook, wait, bk_wait_of_piece(rail, wait, arena), arena));
        }
}

// As many as there is room for; the last row says how many more there are. Where room is short, the first takes no more than its part.
static void draw_sentences(const bk_paint *paint, const sentences *told, bk_spot spot, size_t rows)
{
    enum { SHORT_ROWS = 6, SHORT_PART = 2 };
    bool is_short = rows < SHORT_ROWS;
    for (size_t i = 0; i < told->count && rows > 0; i++) {
        bool last = i + 1 == told->count;
        if (!last && i > 0 && rows == 1) {
            const char *more =
                bk_arena_print(paint->arena, "and %zu more; Enter shows all", told->count - i + told->unsaid);
            bk_paint_text(paint, spot, BK_STYLE_DIM, more);
            return;
        }
        size_t room = last ? rows : rows > 1 ? rows - 1 : 1;
        if (i == 0 && !last && is_short && room > SHORT_PART)
            room = SHORT_PART;
        size_t used = bk_paint_whole(paint, spot, room, BK_STYLE_PLAIN, told->items[i]);
        spot.row += used;
        rows -= used;
    }
}

// ---------------------------------------------------------------------------------------------- the costume

static void draw_name(const bk_paint *paint, const bk_rail *rail, const bk_rail_costume *costume,
                      const bk_costume_forecast *outlook, bk_spot spot)
{
    bk_urgency urgency = bk_urgency_of(rail, costume, outlook);
    const char *goes_on = bk_costume_goes_on(costume);
    const char *word = bk_urgency_word(urgency);
    const char *state = bk_arena_print(paint->arena, "%s%s%s%s%s", bk_state_word(costume->reckoned->state),
                                       *word ? ", " : "", word, goes_on ? ", " : "", goes_on ? goes_on : "");
    spot.width -= bk_paint_right(paint, spot, bk_urgency_style(urgency), state) + GAP;
    size_t used = bk_paint_text(paint, spot, BK_STYLE_BOLD, costume->record->number) + GAP;
    spot.column += used;
    spot.width -= used < spot.width ? used : spot.width;
    bk_paint_text(paint, spot, BK_STYLE_BOLD, costume->record->title);
}

void bk_rail_draw_detail(const bk_paint *paint, const bk_wall *wall, const bk_rail_costume *costume,
                         size_t row, size_t rows)
{
    enum { NAME_ROWS = 2 };
    sentences told = {0};
    const bk_rail *rail = wall->rail;
    const bk_forecast *forecast = bk_wall_forecast(wall);
    const bk_costume_forecast *outlook = bk_forecast_costume(forecast, costume->record->id);
    bk_spot spot = bk_paint_row(paint, row);
    draw_name(paint, rail, costume, outlook, spot);
    spot.row++;
    const char *about = bk_arena_print(paint->arena, "%s; %s", bk_costume_wearer(costume, paint->arena),
                                       bk_costume_progress(costume, paint->arena));
    bk_paint_text(paint, spot, BK_STYLE_PLAIN, about);
    spot.row++;
    tell(&told, wall->reckoning ? bk_reckoning_trouble(wall->reckoning) : NULL);
    tell_days(forecast, outlook, paint->arena, &told);
    tell(&told, unlisted_words(rail, costume, paint->arena));
    tell_snags(forecast, outlook, true, paint->arena, &told);
    tell(&told, now_words(rail, costume, paint->arena));
    gather(rail, costume, outlook, paint->arena, &told);
    tell_snags(forecast, outlook, false, paint->arena, &told);
    if (outlook)
        tell(&told, bk_deciders_sentence(forecast, &outlook->days, paint->arena));
    draw_sentences(paint, &told, spot, rows - NAME_ROWS);
}
