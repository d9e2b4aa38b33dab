#include "bodkin/ui/leaving.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/stack.h"

enum { GAP = 3 };

typedef struct leaving {
    const char *back;
    void (*save)(bk_screen *screen);
} leaving;

static void close_question(bk_screen *screen)
{
    free(screen->self);
}

// All of it stands on the bottom line, below what it is about.
static void draw_nothing(bk_screen *screen, const bk_paint *paint)
{
    (void)screen;
    (void)paint;
}

static size_t draw_question(bk_screen *screen, const bk_paint *paint, bk_spot spot)
{
    const leaving *asked = screen->self;
    const bk_item answers[] = {{.key = "y", .word = "yes"},
                               {.key = "Ctrl-S", .word = "save"},
                               {.key = "any other key:", .word = asked->back}};
    bk_spot rest = spot;
    size_t used = bk_paint_text(paint, spot, BK_STYLE_BOLD, "Leave without saving?") + GAP;
    rest.column += used;
    rest.width -= used;
    bk_paint_items(paint, rest, answers, sizeof answers / sizeof answers[0]);
    bk_term_cursor(spot.row, 0, true);
    return spot.width;
}

// Enter leaves nothing: it is the key after every field.
static bool take_answer(bk_screen *screen, const bk_key *key)
{
    bk_stack *stack = screen->stack;
    const leaving asked = *(const leaving *)screen->self;
    bk_stack_pop(stack);
    if (key->name == BK_KEY_SAVE)
        asked.save(bk_stack_top(stack));
    else if (key->name == BK_KEY_TYPED && !key->pasted && bk_same_text(key->text, "y"))
        bk_stack_pop(stack);
    return true;
}

static const bk_key_table tables[] = {{.alone = true}};

static const bk_screen_kind question_screen = {
    .name = "Leaving",
    .over = true,
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .close = close_question,
    .draw = draw_nothing,
    .take = take_answer,
    .draw_bottom = draw_question,
};

void bk_leaving_ask(bk_screen *screen, const char *back, void (*save)(bk_screen *screen))
{
    leaving *asked = bk_alloc(sizeof *asked);
    *asked = (leaving){.back = back, .save = save};
    bk_stack_push(screen->stack, &question_screen, asked);
}
