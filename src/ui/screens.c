#include "bodkin/ui/screens.h"

#include <stdio.h>
#include <unistd.h>

#include "bodkin/ui/loop.h"
#include "bodkin/ui/productions_screen.h"
#include "bodkin/ui/rail_screen.h"
#include "bodkin/ui/rescue.h"
#include "bodkin/ui/stack.h"
#include "bodkin/ui/term.h"

// Memory has run out: the terminal is put right before the program ends.
static void say_exhausted(size_t wanted)
{
    bk_rescue_now();
    fprintf(stderr,
            "bodkin: The computer has no memory left (%zu bytes were wanted); nothing half-done was kept.\n",
            wanted);
    _exit(BK_STORE);
}

// Chooses the production to begin with; where there is none and none was asked for, the screens begin without.
static bk_status choose(bk_wall *wall, const char *production, bk_error *error)
{
    bk_status status = bk_wall_show(wall, production, error);
    return status == BK_REFUSED && !production ? BK_OK : status;
}

static bk_status run(bk_wall *wall, int idle_fd, bk_error *error)
{
    bk_status status = bk_term_start(error);
    if (status)
        return status;
    bk_stack stack = {.wall = wall};
    wall->ascii = bk_term_ascii();
    bk_on_exhausted(say_exhausted);
    bk_stack_push(&stack, &bk_productions_screen, bk_productions_screen_new());
    if (wall->rail)
        bk_stack_push(&stack, &bk_rail_screen, bk_rail_screen_new());
    status = bk_loop_run(&stack, idle_fd, error);
    bk_stack_close(&stack);
    bk_term_stop();
    return status;
}

bk_status bk_screens_possible(bk_error *error)
{
    return bk_term_possible(error);
}

bk_status bk_screens_run(const bk_screens_options *options, bk_error *error)
{
    bk_wall wall;
    bk_status status = bk_wall_begin(&wall, options, error);
    if (!status)
        status = choose(&wall, options->production, error);
    if (!status)
        status = run(&wall, options->idle_fd, error);
    bk_wall_free(&wall);
    return status;
}
