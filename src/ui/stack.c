#include "bodkin/ui/stack.h"

#include <assert.h>

void bk_stack_push(bk_stack *stack, const bk_screen_kind *kind, void *self)
{
    assert(stack->count < BK_STACK_ROOM);
    stack->screens[stack->count++] =
        (bk_screen){.kind = kind, .wall = stack->wall, .stack = stack, .stale = true, .self = self};
}

static void take_off(bk_stack *stack)
{
    bk_screen *top = &stack->screens[--stack->count];
    if (top->kind->close)
        top->kind->close(top);
}

void bk_stack_pop(bk_stack *stack)
{
    if (stack->count > 1)
        take_off(stack);
}

void bk_stack_pop_to_lowest(bk_stack *stack)
{
    while (stack->count > 1)
        take_off(stack);
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

bk_status bk_stack_read(bk_stack *stack, bk_error *error)
{
    bk_status status = BK_OK;
    while (!status && bk_stack_top(stack)->stale) {
        bk_screen *top = bk_stack_top(stack);
        top->stale = false;
        status = top->kind->read ? top->kind->read(top, error) : BK_OK;
    }
    return status;
}
