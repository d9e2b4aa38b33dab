#include "bodkin/ui/reckoning.h"

#include <pthread.h>
#include <signal.h>
#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/rescue.h"

// What is asked. It and what it points to lie in memory of its own, handed from the screens to the thread.
typedef struct question {
    int64_t number; // from 1; a later one takes the place of an earlier one
    bk_day today;
    bool first_at_once; // there is no answer yet, so any is welcome
    bk_arena *arena;
    bk_supposition *suppositions;
    size_t count;
} question;

// What came of it.
typedef struct answer {
    bk_forecast *forecast; // NULL: none came since the last look
    int64_t settled;       // number of the question answered to the end last, or given up
    bool in_trouble;       // given up: `trouble` says why
    bk_error trouble;
} answer;

struct bk_reckoning {
    bk_reckoning_options options;
    char *store_path;

    // The thread's alone.
    bk_store *store; // opened at its first question; NULL: not open

    // Shared; all but the atomic ones under the lock.
    pthread_mutex_t lock;
    pthread_cond_t asked;
    question *waiting; // NULL: none
    answer came;
    atomic_llong wanted; // number of the question asked last
    atomic_bool ending;
    atomic_int done; // thousandths

    // The screens' alone.
    bool started;
    pthread_t thread;
    answer taken;
    int64_t answers;
    int64_t forecast_number; // number of the question that the forecast taken last settles; 0: none
    int percent_seen;
};

// --------------------------------------------------------------------------------------------- the question

static void free_question(question *asked)
{
    if (asked)
        bk_arena_free(asked->arena);
}

static question *new_question(int64_t number, bk_day today, const bk_supposition *suppositions, size_t count)
{
    bk_arena *arena = bk_arena_new();
    question *asked = bk_arena_clear(arena, 1, sizeof *asked);
    *asked = (question){.number = number, .today = today, .arena = arena, .count = count};
    asked->suppositions = bk_arena_clear(arena, count, sizeof *asked->suppositions);
    for (size_t i = 0; i < count; i++) {
        asked->suppositions[i] = suppositions[i];
        asked->suppositions[i].person = bk_arena_text(arena, suppositions[i].person);
    }
    return asked;
}

// --------------------------------------------------------------------------------------------- the thread

typedef struct course {
    bk_reckoning *reckoning;
    int64_t number;
} course;

static bool still_wanted(const course *run)
{
    return !atomic_load(&run->reckoning->ending) && atomic_load(&run->reckoning->wanted) == run->number;
}

static bool goes_on(void *context, int done)
{
    const course *run = context;
    bool wanted = still_wanted(run);
    if (wanted)
        atomic_store(&run->reckoning->done, done);
    return wanted;
}

static bool goes_on_unseen(void *context, int done)
{
    (void)done;
    return still_wanted(context);
}

// Hands over a forecast, its owner from here on, and whether it is the last one to the question.
static void publish(bk_reckoning *reckoning, const question *asked, bk_forecast *forecast, bool settled)
{
    pthread_mutex_lock(&reckoning->lock);
    bk_forecast *unseen = reckoning->came.forecast;
    reckoning->came.forecast = forecast;
    reckoning->came.in_trouble = false;
    if (settled)
        reckoning->came.settled = asked->number;
    pthread_mutex_unlock(&reckoning->lock);
    bk_forecast_free(unseen);
}

static void give_up(bk_reckoning *reckoning, int64_t number, const bk_error *trouble)
{
    pthread_mutex_lock(&reckoning->lock);
    reckoning->came.settled = number;
    reckoning->came.in_trouble = true;
    reckoning->came.trouble = *trouble;
    pthread_mutex_unlock(&reckoning->lock);
}

static bk_status read_room(bk_reckoning *reckoning, bk_day today, bk_workroom **room, bk_error *error)
{
    bk_store_options options = {.path = reckoning->store_path, .as = reckoning->options.as};
    bk_status status = reckoning->store ? BK_OK : bk_store_open(&reckoning->store, &options, error);
    return status ? status : bk_workroom_read(reckoning->store, today, room, error);
}

// One forecast; false where it was stopped.
static bool reckon(const course *run, const question *asked, const bk_workroom *room, bk_effort effort,
                   bk_forecast_goes_on *asks, bool settled)
{
    bk_forecast *forecast = NULL;
    course context = *run;
    bk_forecast_reckon(room, asked->suppositions, asked->count, effort, asks, &context, &forecast);
    if (forecast)
        publish(run->reckoning, asked, forecast, settled);
    return forecast != NULL;
}

static void answer_question(bk_reckoning *reckoning, const question *asked)
{
    const bk_reckoning_options *options = &reckoning->options;
    const course run = {reckoning, asked->number};
    bk_workroom *room = NULL;
    bk_error trouble;
    if (read_room(reckoning, asked->today, &room, &trouble)) {
        give_up(reckoning, asked->number, &trouble);
        return;
    }
    const bk_effort at_once = {.seed = options->seed, .schedules = 1};
    bk_effort whole = bk_effort_usual(bk_workroom_open_steps(room), options->seed, options->tries);
    bool first = asked->first_at_once && (whole.schedules > at_once.schedules || whole.trials > 0);
    if (!first || reckon(&run, asked, room, at_once, goes_on_unseen, false))
        reckon(&run, asked, room, whole, goes_on, true);
    bk_workroom_free(room);
}

// The next question; NULL: it ends.
static question *take_question(bk_reckoning *reckoning)
{
    pthread_mutex_lock(&reckoning->lock);
    while (!reckoning->waiting && !atomic_load(&reckoning->ending))
        pthread_cond_wait(&reckoning->asked, &reckoning->lock);
    question *asked = atomic_load(&reckoning->ending) ? NULL : reckoning->waiting;
    if (asked)
        reckoning->waiting = NULL;
    pthread_mutex_unlock(&reckoning->lock);
    return asked;
}

static void *run_thread(void *context)
{
    bk_reckoning *reckoning = context;
    question *asked = NULL;
    bk_rescue_stack *stack = bk_rescue_stack_take();
    while ((asked = take_question(reckoning)) != NULL) {
        atomic_store(&reckoning->done, 0);
        answer_question(reckoning, asked);
        free_question(asked);
    }
    bk_store_close(reckoning->store);
    bk_rescue_stack_give(stack);
    return NULL;
}

// Starts it with every signal held back but those of its own faults: the others are the screens'.
static bool start_thread(bk_reckoning *reckoning)
{
    static const int faults[] = {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT};
    sigset_t held_back, before;
    sigfillset(&held_back);
    for (size_t i = 0; i < sizeof faults / sizeof faults[0]; i++)
        sigdelset(&held_back, faults[i]);
    pthread_sigmask(SIG_BLOCK, &held_back, &before);
    bool started = pthread_create(&reckoning->thread, NULL, run_thread, reckoning) == 0;
    pthread_sigmask(SIG_SETMASK, &before, NULL);
    return started;
}

// ---------------------------------------------------------------------------------------------- the screens

bk_reckoning *bk_reckoning_begin(const bk_reckoning_options *options)
{
    bk_reckoning *reckoning = bk_alloc_clear(1, sizeof *reckoning);
    reckoning->options = *options;
    reckoning->store_path = bk_text_copy(options->store_path);
    pthread_mutex_init(&reckoning->lock, NULL);
    pthread_cond_init(&reckoning->asked, NULL);
    atomic_init(&reckoning->wanted, 0);
    atomic_init(&reckoning->ending, false);
    atomic_init(&reckoning->done, 0);
    return reckoning;
}

void bk_reckoning_end(bk_reckoning *reckoning)
{
    if (!reckoning)
        return;
    pthread_mutex_lock(&reckoning->lock);
    atomic_store(&reckoning->ending, true);
    pthread_cond_signal(&reckoning->asked);
    pthread_mutex_unlock(&reckoning->lock);
    if (reckoning->started)
        pthread_join(reckoning->thread, NULL);
    free_question(reckoning->waiting);
    bk_forecast_free(reckoning->came.forecast);
    bk_forecast_free(reckoning->taken.forecast);
    pthread_cond_destroy(&reckoning->asked);
    pthread_mutex_destroy(&reckoning->lock);
    free(reckoning->store_path);
    free(reckoning);
}

void bk_reckoning_want(bk_reckoning *reckoning, bk_day today, const bk_supposition *suppositions,
                       size_t count)
{
    question *asked = new_question(atomic_load(&reckoning->wanted) + 1, today, suppositions, count);
    asked->first_at_once = reckoning->taken.forecast == NULL;
    pthread_mutex_lock(&reckoning->lock);
    question *unread = reckoning->waiting;
    reckoning->waiting = asked;
    atomic_store(&reckoning->wanted, asked->number);
    pthread_cond_signal(&reckoning->asked);
    pthread_mutex_unlock(&reckoning->lock);
    free_question(unread);
    atomic_store(&reckoning->done, 0);
    reckoning->percent_seen = 0;
}

// The thread is started no sooner than it is looked for, so that it takes no time from the first painting.
static void start_where_asked(bk_reckoning *reckoning)
{
    bk_error trouble;
    if (reckoning->started || !bk_reckoning_busy(reckoning))
        return;
    reckoning->started = start_thread(reckoning);
    if (reckoning->started)
        return;
    (void)!bk_fail(&trouble, BK_REFUSED,
                   "The computer has no room for the reckoning to run: close something, then come back.");
    give_up(reckoning, atomic_load(&reckoning->wanted), &trouble);
}

// How far it is in whole percent, as it is told.
static int percent(const bk_reckoning *reckoning)
{
    enum { THOUSANDTHS_OF_PERCENT = 10 };
    return bk_reckoning_busy(reckoning) ? bk_reckoning_done(reckoning) / THOUSANDTHS_OF_PERCENT : 0;
}

// Takes the forecast that came in place of the one before.
static void take_forecast(bk_reckoning *reckoning, const answer *came)
{
    bk_forecast_free(reckoning->taken.forecast);
    reckoning->taken.forecast = came->forecast;
    reckoning->forecast_number = came->in_trouble ? 0 : came->settled;
    reckoning->answers++;
}

bool bk_reckoning_look(bk_reckoning *reckoning)
{
    start_where_asked(reckoning);
    bool was_busy = bk_reckoning_busy(reckoning);
    pthread_mutex_lock(&reckoning->lock);
    answer came = reckoning->came;
    reckoning->came.forecast = NULL;
    pthread_mutex_unlock(&reckoning->lock);
    bool another = came.forecast != NULL;
    if (another)
        take_forecast(reckoning, &came);
    came.forecast = reckoning->taken.forecast;
    reckoning->taken = came;
    int now = percent(reckoning);
    bool news = another || was_busy != bk_reckoning_busy(reckoning) || now != reckoning->percent_seen;
    reckoning->percent_seen = now;
    return news;
}

const bk_forecast *bk_reckoning_forecast(const bk_reckoning *reckoning)
{
    return reckoning->taken.forecast;
}

int64_t bk_reckoning_answers(const bk_reckoning *reckoning)
{
    return reckoning->answers;
}

bool bk_reckoning_settled(const bk_reckoning *reckoning)
{
    return reckoning->taken.forecast && reckoning->forecast_number == atomic_load(&reckoning->wanted);
}

bool bk_reckoning_busy(const bk_reckoning *reckoning)
{
    return reckoning->taken.settled != atomic_load(&reckoning->wanted);
}

int bk_reckoning_done(const bk_reckoning *reckoning)
{
    return atomic_load(&reckoning->done);
}

const char *bk_reckoning_trouble(const bk_reckoning *reckoning)
{
    return reckoning->taken.in_trouble && !bk_reckoning_busy(reckoning) ? reckoning->taken.trouble.text
                                                                        : NULL;
}
