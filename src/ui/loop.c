#include "bodkin/ui/loop.h"

#include <time.h>
#include <unistd.h>

enum {
    FEWEST_ROWS = 24,
    FEWEST_COLUMNS = 80,
    LOOK_MILLISECONDS = 500,
    LISTEN_MILLISECONDS = 30, // while something is reckoned
    MILLISECONDS = 1000,      // in a second
    NANOSECONDS = 1000 * 1000 // in a millisecond
};

typedef struct loop {
    bk_stack *stack;
    bk_arena *arena; // of the picture
    int idle_fd;
    int64_t looked_at; // milliseconds of the steady clock
    bool unread;       // the wall could not be read when it changed
    bool painted;      // what is on the terminal is how it should be
} loop;

static int64_t milliseconds_now(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (int64_t)now.tv_sec * MILLISECONDS + now.tv_nsec / NANOSECONDS;
}

// ------------------------------------------------------------------------------------------------- painting

static bool too_small(void)
{
    return bk_term_rows() < FEWEST_ROWS || bk_term_columns() < FEWEST_COLUMNS;
}

static void draw_too_small(const bk_paint *paint, const bk_screen *top)
{
    bk_spot spot = {0, 0, paint->columns};
    const char *text = bk_arena_print(paint->arena,
                                      "Bodkin needs %d columns and %d rows; this terminal has %zu and %zu. "
                                      "Make it larger%s.",
                                      FEWEST_COLUMNS, FEWEST_ROWS, paint->columns, paint->rows,
                                      top->kind->tables[0].alone ? "" : ", or leave with q");
    bk_paint_whole(paint, spot, paint->rows, BK_STYLE_PLAIN, text);
    bk_term_cursor(0, 0, false);
}

static void draw_screens(bk_stack *stack, const bk_paint *picture)
{
    for (size_t i = bk_stack_lowest_seen(stack); i < stack->count; i++)
        stack->screens[i].kind->draw(&stack->screens[i], picture);
    bk_screen_draw_bottom(bk_stack_top(stack), picture);
}

static void paint(loop *run)
{
    bk_screen *top = bk_stack_top(run->stack);
    bk_paint picture = {run->arena, bk_term_ascii(), bk_term_rows(), bk_term_columns()};
    bk_term_clear();
    if (too_small())
        draw_too_small(&picture, top);
    else
        draw_screens(run->stack, &picture);
    bk_term_show();
    bk_arena_reset(run->arena);
    run->painted = true;
}

// A picture is shown, nothing is reckoned and no key is there: whoever listens may look at the screen now.
static void tell_idle(const loop *run)
{
    if (run->idle_fd >= 0 && write(run->idle_fd, ".", 1) < 0)
        return; // nobody listens any more
}

// ----------------------------------------------------------------------------------------------------- keys

static void take_key(loop *run, const bk_key *key)
{
    bk_screen *top = bk_stack_top(run->stack);
    run->painted = false;
    if (key->name == BK_KEY_RESIZED || key->name == BK_KEY_REPAINT)
        return;
    bk_wall_hush(top->wall);
    if (key->pasted && !bk_screen_table(top)->alone) {
        bk_wall_say(top->wall,
                    "What you pasted has no place here; open a form for it, or narrow with / first.");
        return;
    }
    if (!too_small() && top->kind->take && top->kind->take(top, key))
        return;
    const bk_key_table *table = too_small() ? &top->kind->tables[0] : bk_screen_table(top);
    const bk_key_row *row = bk_key_row_beside(table, key);
    if (row && !too_small())
        row->act(top, row);
    else if (row && row->act == bk_screen_leave)
        run->stack->left = true; // there is no room to ask anything
}

// Takes all keys that are there, so that a picture is not painted for each of many; false when the terminal is gone.
static bool take_keys(loop *run, bool *any)
{
    bk_key key;
    *any = false;
    while (!run->stack->left && bk_term_key(&key)) {
        if (key.name == BK_KEY_GONE)
            return false;
        take_key(run, &key);
        *any = true;
        bk_error error;
        if (bk_stack_read(run->stack, &error))
            bk_wall_say(run->stack->wall, "%s", error.text);
    }
    return true;
}

// ------------------------------------------------------------------------------------------------- the store

// The screens read anew. What was saved by the last key they have found by now, and must not go back to.
static bk_status read_screens(loop *run, bk_error *error)
{
    run->painted = false;
    run->stack->wall->saved_id = 0;
    bk_stack_stale(run->stack);
    return bk_stack_read(run->stack, error);
}

// Reads anew where the store or the day has changed. Trouble is said on the bottom line and what was read before stays; it
// is tried again at the next look.
static void look(loop *run)
{
    bk_error error;
    bool changed = false;
    bk_wall *wall = run->stack->wall;
    run->looked_at = milliseconds_now();
    bk_status status = bk_wall_look(wall, &changed, &error);
    if (!status && (changed || run->unread)) {
        run->unread = true;
        status = bk_wall_read(wall, &error);
        if (!status) {
            run->unread = false;
            status = read_screens(run, &error);
        }
    }
    if (status) {
        bk_wall_say(wall, "%s", error.text);
        run->painted = false;
    }
    bk_screen *top = bk_stack_top(run->stack);
    if (!status && top->kind->moves && top->kind->moves(top))
        run->painted = false;
}

// Shows what was reckoned meanwhile.
static void listen(loop *run)
{
    bk_error error;
    bool answered = false;
    if (bk_wall_listen(run->stack->wall, &answered))
        run->painted = false;
    if (answered && read_screens(run, &error))
        bk_wall_say(run->stack->wall, "%s", error.text);
}

// Takes what was reckoned, and where that is nothing to show waits for a key and looks at the store.
static void wait_and_look(loop *run)
{
    bool busy = bk_wall_busy(run->stack->wall);
    if (busy)
        listen(run);
    if (!run->painted)
        return;
    bk_term_wait(busy ? LISTEN_MILLISECONDS : LOOK_MILLISECONDS);
    if (milliseconds_now() - run->looked_at >= LOOK_MILLISECONDS)
        look(run);
}

bk_status bk_loop_run(bk_stack *stack, int idle_fd, bk_error *error)
{
    loop run = {.stack = stack, .arena = bk_arena_new(), .idle_fd = idle_fd, .looked_at = milliseconds_now()};
    bk_status status = bk_stack_read(stack, error);
    bool told = false, any = false;
    while (!status && !stack->left) {
        if (!run.painted) {
            paint(&run);
            told = false;
        }
        if (!take_keys(&run, &any))
            status = bk_fail(error, BK_REFUSED, "The terminal is gone.");
        if (status || any)
            continue;
        if (!told && !bk_wall_busy(stack->wall)) {
            tell_idle(&run);
            told = true;
        }
        wait_and_look(&run);
    }
    bk_arena_free(run.arena);
    return status;
}
