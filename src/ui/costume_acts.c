#include "bodkin/ui/costume_acts.h"

#include "bodkin/ui/booking.h"
#include "bodkin/ui/chain_screen.h"
#include "bodkin/ui/costume_facts.h"
#include "bodkin/ui/record_acts.h"
#include "bodkin/ui/stack.h"
#include "bodkin/ui/whereabouts_form.h"
#include "bodkin/ui/work_forms.h"

// ------------------------------------------------------------------------------------- changing and taking away

void bk_costume_change(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_costume_stop *stop = bk_costume_stop_chosen(screen);
    bk_act_change_record(screen, stop->family, stop->id);
}

void bk_costume_move(bk_screen *screen, const bk_key_row *row)
{
    const bk_costume_stop *stop = bk_costume_stop_chosen(screen);
    bk_act_move_record(screen, stop->family, stop->id, row->argument);
}

static const char *name_of(const bk_screen *screen, const bk_costume_stop *stop, bk_arena *arena)
{
    const bk_rail *rail = screen->wall->rail;
    const bk_costume_view *view = screen->self;
    const bk_costume *costume = bk_costume_shown(screen)->record;
    switch (stop->family) {
    case BK_PIECES:
        return bk_arena_print(arena, "piece %s %s", rail->pieces[stop->piece].name,
                              rail->pieces[stop->piece].title);
    case BK_STEPS:
        return bk_arena_print(arena, "step %s/%s %s", rail->pieces[stop->piece].name,
                              rail->steps[stop->step].key, rail->steps[stop->step].title);
    case BK_NEEDS:
        return bk_arena_print(arena, "the need of %s",
                              bk_costume_need_words(&view->beside, stop->need, arena));
    default:
        return bk_arena_print(arena, "costume %s %s", costume->number, costume->title);
    }
}

// A piece that is worn with other costumes too goes from all of them.
static const char *worn_with(const bk_screen *screen, const bk_costume_stop *stop, bk_arena *arena)
{
    if (stop->family != BK_PIECES || screen->wall->rail->rows.pieces[stop->piece].costumes.count < 2)
        return NULL;
    return bk_arena_print(
        arena, "It is also worn with %s; e takes it from one of them",
        bk_piece_other_costumes(screen->wall->rail, bk_costume_shown(screen), stop->piece, arena));
}

void bk_costume_take_away(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_arena *arena = bk_arena_new();
    const bk_costume_stop *stop = bk_costume_stop_chosen(screen);
    bk_act_take_away_record(screen, stop->family, stop->id, name_of(screen, stop, arena),
                            worn_with(screen, stop, arena));
    bk_arena_free(arena);
}

// ------------------------------------------------------------------------------------------------- notes and forms

void bk_costume_note(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_rail *rail = screen->wall->rail;
    const bk_costume_stop *stop = bk_costume_stop_chosen(screen);
    bk_act_add_note(screen, bk_costume_shown(screen)->record->number,
                    stop->piece == BK_NO_INDEX ? NULL : rail->pieces[stop->piece].name,
                    stop->step == BK_NO_INDEX ? NULL : rail->steps[stop->step].key);
}

void bk_costume_book(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_costume_stop *stop = bk_costume_stop_chosen(screen);
    bk_booking_of(screen, bk_costume_shown(screen), stop->piece, stop->step);
}

void bk_costume_chain(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_stack_push(screen->stack, &bk_chain_screen, bk_chain_screen_new(bk_costume_shown(screen)->record->id));
}

static void with_piece(bk_screen *screen, void (*open)(bk_screen *screen, size_t piece))
{
    const bk_costume_stop *stop = bk_costume_stop_chosen(screen);
    const bk_indices *pieces = &screen->wall->rail->rows.costumes[bk_costume_shown(screen)->index].pieces;
    if (stop->piece != BK_NO_INDEX)
        open(screen, stop->piece);
    else if (pieces->count == 1)
        open(screen, pieces->items[0]);
    else
        bk_wall_say(screen->wall, "%s",
                    pieces->count == 0 ? "There is no piece yet: + adds one."
                                       : "Go down to the piece that is meant first.");
}

void bk_costume_where(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    with_piece(screen, bk_whereabouts_open);
}

void bk_costume_use_work(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    with_piece(screen, bk_work_use_open);
}

void bk_costume_keep_work(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    with_piece(screen, bk_work_keep_open);
}
