#include "bodkin/ui/pausing.h"

#include <stddef.h>

// The signals of the process.
static struct {
    sigset_t mask_before;
    sigset_t mask_waiting;
    struct sigaction stop_before, continue_before;
} signals;

static volatile sig_atomic_t stop_asked;
static volatile sig_atomic_t continued;

static void on_stop(int number)
{
    (void)number;
    stop_asked = 1;
}

static void on_continue(int number)
{
    (void)number;
    continued = 1;
}

void bk_pausing_begin(void)
{
    struct sigaction stop = {.sa_handler = on_stop}, go_on = {.sa_handler = on_continue};
    sigset_t held_back;
    sigemptyset(&held_back);
    sigaddset(&held_back, SIGTSTP);
    sigaddset(&held_back, SIGCONT);
    sigaddset(&held_back, SIGWINCH);
    pthread_sigmask(SIG_BLOCK, &held_back, &signals.mask_before);
    signals.mask_waiting = signals.mask_before;
    sigdelset(&signals.mask_waiting, SIGTSTP);
    sigdelset(&signals.mask_waiting, SIGCONT);
    sigdelset(&signals.mask_waiting, SIGWINCH);
    sigaction(SIGCONT, &go_on, &signals.continue_before);
    sigaction(SIGTSTP, &stop, &signals.stop_before);
    if (signals.stop_before.sa_handler == SIG_IGN)
        sigaction(SIGTSTP, &signals.stop_before, NULL);
}

void bk_pausing_end(void)
{
    sigaction(SIGTSTP, &signals.stop_before, NULL);
    sigaction(SIGCONT, &signals.continue_before, NULL);
    pthread_sigmask(SIG_SETMASK, &signals.mask_before, NULL);
}

const sigset_t *bk_pausing_mask(void)
{
    return &signals.mask_waiting;
}

bool bk_pausing_asked(void)
{
    return stop_asked;
}

// What came while it was held back is not told a second time.
static void drop_continue(void)
{
    struct sigaction ours, dropped = {.sa_handler = SIG_IGN};
    sigaction(SIGCONT, &dropped, &ours);
    sigaction(SIGCONT, &ours, NULL);
}

void bk_pausing_now(void)
{
    struct sigaction ours, usual = {.sa_handler = SIG_DFL};
    sigset_t stop, before;
    sigemptyset(&stop);
    sigaddset(&stop, SIGTSTP);
    sigaction(SIGTSTP, &usual, &ours);
    raise(SIGTSTP);
    pthread_sigmask(SIG_UNBLOCK, &stop, &before);
    pthread_sigmask(SIG_SETMASK, &before, NULL);
    sigaction(SIGTSTP, &ours, NULL);
    drop_continue();
    stop_asked = 0;
    continued = 1;
}

bool bk_pausing_over(void)
{
    bool over = continued;
    continued = 0;
    return over;
}
