#include "bodkin/base/text.h"
#include "bodkin/sheet/columns.h"
#include "bodkin/ui/costume_acts.h"
#include "bodkin/ui/record_acts.h"

// Adding to a costume: a piece, a step of a piece, a need of a step.

static void add_piece(bk_screen *screen, const bk_costume_stop *stop)
{
    const bk_rail *rail = screen->wall->rail;
    bk_piece piece;
    bk_sheet_clear(&bk_sheets[BK_SHEET_PIECES], &piece);
    piece.costumes = bk_costume_shown(screen)->record->number;
    bk_act_add_record(screen, BK_PIECES, &piece,
                      stop->piece == BK_NO_INDEX ? 0 : rail->pieces[stop->piece].id, "title");
}

// Behind a step it comes after it, too.
static void add_step(bk_screen *screen, const bk_costume_stop *stop)
{
    const bk_rail *rail = screen->wall->rail;
    bk_step step;
    bk_sheet_clear(&bk_sheets[BK_SHEET_STEPS], &step);
    step.piece = rail->pieces[stop->piece].name;
    if (stop->step != BK_NO_INDEX)
        step.after = rail->steps[stop->step].key;
    bk_act_add_record(screen, BK_STEPS, &step, stop->step == BK_NO_INDEX ? 0 : rail->steps[stop->step].id,
                      "title");
}

static void add_need(bk_screen *screen, const bk_costume_stop *stop)
{
    const bk_rail *rail = screen->wall->rail;
    bk_need need;
    bk_sheet_clear(&bk_sheets[BK_SHEET_NEEDS], &need);
    need.piece = rail->pieces[stop->piece].name;
    need.step = rail->steps[stop->step].key;
    bk_act_add_record(screen, BK_NEEDS, &need, stop->family == BK_NEEDS ? stop->id : 0, "material");
}

// From the nearest: what stands where the cursor is comes first and is what Enter adds.
static const struct addition {
    const char *letter, *what;
    void (*add)(bk_screen *screen, const bk_costume_stop *stop);
} additions[] = {
    {"n", "a need of material", add_need},
    {"s", "a step", add_step},
    {"p", "a piece", add_piece},
};

enum { ADDITIONS = sizeof additions / sizeof additions[0] };

// The first that makes sense at a stop: a piece can be added anywhere, a step on a piece, a need on a step.
static size_t first_addition(const bk_costume_stop *stop)
{
    return stop->step != BK_NO_INDEX ? 0 : stop->piece != BK_NO_INDEX ? 1 : ADDITIONS - 1;
}

// What Enter adds: another of what the cursor stands on, but to a piece a step.
static size_t usual_addition(const bk_costume_stop *stop)
{
    return stop->family == BK_NEEDS ? 0 : first_addition(stop) + (stop->family == BK_STEPS);
}

void bk_costume_add(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_costume_view *view = screen->self;
    const bk_costume_stop *stop = bk_costume_stop_chosen(screen);
    if (first_addition(stop) + 1 == ADDITIONS)
        add_piece(screen, stop);
    else
        view->adding = true;
}

bool bk_costume_add_take(bk_screen *screen, const bk_key *key)
{
    bk_costume_view *view = screen->self;
    const bk_costume_stop *stop = bk_costume_stop_chosen(screen);
    if (!view->adding)
        return false;
    view->adding = key->name ==
                   BK_KEY_TYPED; // a letter that is none of these does nothing: what is asked is asked still
    for (size_t i = first_addition(stop); i < ADDITIONS; i++)
        if ((key->name == BK_KEY_TYPED && bk_same_text(key->text, additions[i].letter)) ||
            (key->name == BK_KEY_ENTER && i == usual_addition(stop))) {
            view->adding = false;
            additions[i].add(screen, stop);
        }
    return true;
}

size_t bk_costume_add_draw(const bk_screen *screen, const bk_paint *paint, bk_spot spot)
{
    bk_item items[ADDITIONS + 2];
    const bk_costume_stop *stop = bk_costume_stop_chosen(screen);
    size_t count = 0, usual = usual_addition(stop);
    items[count++] = (bk_item){.word = "Add:"};
    items[count++] = (bk_item){.key = bk_arena_print(paint->arena, "%s or Enter", additions[usual].letter),
                               .word = additions[usual].what};
    for (size_t i = first_addition(stop); i < ADDITIONS; i++)
        if (i != usual)
            items[count++] = (bk_item){.key = additions[i].letter, .word = additions[i].what};
    items[count++] = (bk_item){.key = "Escape", .word = "nothing"};
    bk_paint_items(paint, spot, items, count);
    return spot.width;
}
