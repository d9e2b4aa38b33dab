#include "bodkin/ui/acts.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/store/daybook.h"
#include "bodkin/ui/rail_screen.h"
#include "bodkin/ui/stack.h"

// The Rail lies on the Productions, and all else on the Rail.
enum { UP_TO_RAIL = 2 };

bk_job bk_act_job(bk_wall *wall, bk_arena *arena)
{
    wall->clock.now(wall->clock.self, wall->moment);
    return (bk_job){
        .store = wall->store,
        .production = wall->rail ? wall->rail->production.id : 0,
        .today = wall->today,
        .made_at = wall->moment,
        .who = wall->who,
        .arena = arena,
    };
}

void bk_act_did(bk_screen *screen, bk_status status, const char *sentence, const bk_error *error)
{
    bk_wall *wall = screen->wall;
    bk_error trouble = {0};
    if (status) {
        bk_wall_say(wall, "%s", error->text);
        return;
    }
    status = bk_wall_read(wall, &trouble);
    bk_stack_stale(screen->stack);
    if (status) {
        bk_wall_say(wall, "%s", trouble.text);
    } else if (sentence) {
        bk_arena *arena = bk_arena_new();
        const char *safe = bk_text_safe(arena, sentence, wall->ascii);
        bk_wall_say(wall, "%s%s", safe, bk_full_stop(safe));
        wall->offer_key = "u";
        wall->offer = "undo";
        bk_arena_free(arena);
    }
}

void bk_act_undo(bk_screen *screen, int64_t entry)
{
    bk_error error;
    const char *sentence = NULL;
    bk_arena *arena = bk_arena_new();
    bk_wall *wall = screen->wall;
    bk_job job = bk_act_job(wall, arena);
    bk_status status = bk_daybook_undo(job.store, entry, job.made_at, arena, &sentence, &error);
    bk_act_did(screen, status, sentence, &error);
    if (wall->offer_key) {
        wall->offer_key = "U";
        wall->offer = "redo";
    }
    bk_arena_free(arena);
}

// How many screens stay when one of that kind is gone to: those below it where it lies on the stack already, else all
// but what is laid over another one.
static size_t staying(const bk_stack *stack, const bk_screen_kind *kind)
{
    size_t count = stack->count;
    while (count > 1 && stack->screens[count - 1].kind->over)
        count--;
    for (size_t i = UP_TO_RAIL; i < count; i++)
        if (stack->screens[i].kind == kind)
            return i;
    return count;
}

void bk_act_go(bk_screen *screen, const bk_screen_kind *kind, void *self)
{
    bk_stack *stack = screen->stack;
    bool has_rail = stack->count >= UP_TO_RAIL && stack->screens[UP_TO_RAIL - 1].kind == &bk_rail_screen;
    size_t wanted = has_rail && kind == &bk_rail_screen ? UP_TO_RAIL : staying(stack, kind);
    bk_stack_pop_to(stack, has_rail ? wanted : 1);
    if (!has_rail && stack->wall->rail)
        bk_stack_push(stack, &bk_rail_screen, bk_rail_screen_new());
    if (kind != &bk_rail_screen)
        bk_stack_push(stack, kind, self);
}

// ----------------------------------------------------------------------------------------------- questions

typedef struct question {
    void (*yes)(bk_screen *screen, int64_t argument);
    int64_t argument;
    char text[];
} question;

static void close_question(bk_screen *screen)
{
    free(screen->self);
}

static void draw_question(bk_screen *screen, const bk_paint *paint)
{
    static const bk_item answers[] = {{.key = "Enter", .word = "yes"}, {.key = "other keys", .word = "no"}};
    const question *asked = screen->self;
    bk_paint_notice(paint, asked->text, answers, sizeof answers / sizeof answers[0]);
    bk_term_cursor(paint->rows - 1, 0, true);
}

static size_t draw_no_keys(bk_screen *screen, const bk_paint *paint, bk_spot spot)
{
    (void)screen;
    (void)paint;
    return spot.width;
}

static bool take_answer(bk_screen *screen, const bk_key *key)
{
    bk_stack *stack = screen->stack;
    const question asked = *(const question *)screen->self;
    bk_stack_pop(stack);
    if (key->name == BK_KEY_ENTER || (key->name == BK_KEY_TYPED && bk_same_text(key->text, "y")))
        asked.yes(bk_stack_top(stack), asked.argument);
    return true;
}

static const bk_key_row answer_rows[] = {
    {.name = BK_KEY_ENTER, .written = "Enter", .help = "yes, do it"},
};

static const bk_key_table answer_tables[] = {
    {.rows = answer_rows, .count = sizeof answer_rows / sizeof answer_rows[0], .alone = true},
};

static const bk_screen_kind question_screen = {
    .name = "Question",
    .over = true,
    .tables = answer_tables,
    .table_count = 1,
    .close = close_question,
    .draw = draw_question,
    .take = take_answer,
    .draw_bottom = draw_no_keys,
};

void bk_act_ask(bk_screen *screen, const char *text, void (*yes)(bk_screen *screen, int64_t argument),
                int64_t argument)
{
    size_t size = strlen(text) + 1;
    question *asked = bk_alloc(sizeof *asked + size);
    *asked = (question){.yes = yes, .argument = argument};
    memcpy(asked->text, text, size);
    bk_stack_push(screen->stack, &question_screen, asked);
}
