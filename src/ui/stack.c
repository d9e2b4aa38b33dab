#include "bodkin/ui/stack.h"

void bk_stack_push(bk_stack *stack, const bk_screen_kind *kind, void *self)
{
    bk_screen pushed = {.kind = kind, .wall = stack->wall, .stack = stack, .stale = true, .self = self};
    if (stack->count < BK_STACK_ROOM) {
        stack->screens[stack->count++] = pushed;
        return;
    }
    if (kind->close)
        kind->close(&pushed);
    bk_wall_say(stack->wall, "Too many screens lie on each other: go back first, with Escape.");
}

static void take_off(bk_stack *stack)
{
    bk_screen *top = &stack->screens[--stack->count];
    if (top->kind->close)
        top->kind->close(top);
}

void bk_stack_pop_to(bk_stack *stack, size_t count)
{
    while (stack->count > 1 && stack->count > count)
        take_off(stack);
}

void bk_stack_pop(bk_stack *stack)
{
    bk_stack_pop_to(stack, (stack->reading > 0 ? stack->reading : stack->count) - 1);
}

void bk_stack_pop_to_lowest(bk_stack *stack)
{
    bk_stack_pop_to(stack, 1);
}

size_t bk_stack_lowest_seen(const bk_stack *stack)
{
    size_t index = stack->count - 1;
    while (index > 0 && stack->screens[index].kind->over)
        index--;
    return index;
}

void bk_stack_close(bk_stack *stack)
{
    while (stack->count > 0)
        take_off(stack);
}

bk_screen *bk_stack_top(bk_stack *stack)
{
    return &stack->screens[stack->count - 1];
}

void bk_stack_stale(bk_stack *stack)
{
    for (size_t i = 0; i < stack->count; i++)
        stack->screens[i].stale = true;
}

// The lowest one seen that must read, or NULL.
static bk_screen *stale_one(bk_stack *stack)
{
    for (size_t i = bk_stack_lowest_seen(stack); i < stack->count; i++)
        if (stack->screens[i].stale)
            return &stack->screens[i];
    return NULL;
}

bk_status bk_stack_read(bk_stack *stack, bk_error *error)
{
    bk_status status = BK_OK;
    bk_screen *screen = NULL;
    while ((screen = stale_one(stack)) != NULL) {
        bk_error trouble = {0};
        screen->stale = false;
        stack->reading = (size_t)(screen - stack->screens) + 1;
        bk_status one = screen->kind->read ? screen->kind->read(screen, &trouble) : BK_OK;
        stack->reading = 0;
        if (one && !status) {
            status = one;
            *error = trouble;
        }
    }
    return status;
}
