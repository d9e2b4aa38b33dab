#include "bodkin/ui/rescue.h"

#include <fcntl.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <termios.h>
#include <unistd.h>

#include "bodkin/base/arena.h"

// A handler that runs because the stack is full needs another one.
enum { FAREWELL_ROOM = 256, HANDLER_STACK = 65536 };

// Signals that end a program; those that are asked for from outside are left alone where they are ignored (nohup).
static const struct fatal_signal {
    int number;
    int asked_for;
} fatal_signals[] = {
    {SIGSEGV, 0}, {SIGBUS, 0}, {SIGFPE, 0}, {SIGILL, 0},  {SIGABRT, 0},
    {SIGTERM, 1}, {SIGHUP, 1}, {SIGINT, 1}, {SIGQUIT, 1},
};

enum { FATAL_SIGNALS = sizeof fatal_signals / sizeof fatal_signals[0] };

struct bk_rescue_stack {
    void *memory;
    stack_t before;
};

static volatile sig_atomic_t armed;
static struct termios settings_before;
static struct sigaction actions_before[FATAL_SIGNALS];
static char farewell[FAREWELL_ROOM];
static size_t farewell_length;
static bk_rescue_stack *handler_stack;

void bk_rescue_now(void)
{
    if (!armed)
        return;
    armed = 0;
    for (size_t sent = 0; sent < farewell_length;) {
        ssize_t more = write(STDOUT_FILENO, farewell + sent, farewell_length - sent);
        if (more <= 0)
            break;
        sent += (size_t)more;
    }
    tcsetattr(STDIN_FILENO, TCSANOW, &settings_before);
}

static void restore_action(size_t which)
{
    sigaction(fatal_signals[which].number, &actions_before[which], NULL);
}

// A terminal that nobody reads any more takes no farewell: then it goes without, and the program ends all the same.
static void rescue_without_waiting(void)
{
    int flags = fcntl(STDOUT_FILENO, F_GETFL);
    fcntl(STDOUT_FILENO, F_SETFL, flags | O_NONBLOCK);
    bk_rescue_now();
    fcntl(STDOUT_FILENO, F_SETFL, flags);
}

static void on_fatal_signal(int number)
{
    rescue_without_waiting();
    for (size_t i = 0; i < FATAL_SIGNALS; i++)
        if (fatal_signals[i].number == number)
            restore_action(i);
    raise(number);
}

bk_rescue_stack *bk_rescue_stack_take(void)
{
    bk_rescue_stack *taken = bk_alloc(sizeof *taken);
    taken->memory = bk_alloc(HANDLER_STACK);
    stack_t stack = {.ss_sp = taken->memory, .ss_size = HANDLER_STACK};
    sigaltstack(&stack, &taken->before);
    return taken;
}

void bk_rescue_stack_give(bk_rescue_stack *stack)
{
    if (!stack)
        return;
    sigaltstack(&stack->before, NULL);
    free(stack->memory);
    free(stack);
}

void bk_rescue_arm(void)
{
    tcgetattr(STDIN_FILENO, &settings_before);
    farewell_length = 0;
    armed = 1;
    handler_stack = bk_rescue_stack_take();
    struct sigaction action = {.sa_handler = on_fatal_signal, .sa_flags = SA_NODEFER | SA_ONSTACK};
    sigemptyset(&action.sa_mask);
    sigaddset(&action.sa_mask, SIGTTOU); // also in the background the settings are put back
    for (size_t i = 0; i < FATAL_SIGNALS; i++) {
        sigaction(fatal_signals[i].number, &action, &actions_before[i]);
        if (fatal_signals[i].asked_for && actions_before[i].sa_handler == SIG_IGN)
            restore_action(i);
    }
}

void bk_rescue_farewell(const char *bytes, size_t length)
{
    farewell_length = 0;
    if (length > FAREWELL_ROOM)
        length = FAREWELL_ROOM;
    memcpy(farewell, bytes, length);
    farewell_length = length;
}

void bk_rescue_disarm(void)
{
    armed = 0;
    for (size_t i = 0; i < FATAL_SIGNALS; i++)
        restore_action(i);
    bk_rescue_stack_give(handler_stack);
    handler_stack = NULL;
}
