// How long the times of a network take for each step, as it grows to a million steps: it should stay nearly the same, and the
// million be done in a second. The network stands in layers; each step comes after two, drawn by chance, of the layer before.
// The numbers of the steps are dealt out by chance, so that what belongs together does not lie together.
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "bodkin/plan/chance.h"
#include "bodkin/plan/network.h"

enum { LAYERS = 100, BEFORE_EACH = 2, LONGEST = 480, RUNS = 5, SEED = 1 };

typedef struct made_network {
    size_t count, rank_count;
    int64_t *durations;
    bk_network_rank *ranks;
    bk_network_times *times;
} made_network;

// The numbers 0 to count - 1 in an order drawn by chance (Fisher & Yates 1938).
static size_t *deal(bk_chance *chance, size_t count)
{
    size_t *numbers = bk_alloc_clear(count, sizeof *numbers);
    for (size_t i = 0; i < count; i++) {
        size_t other = bk_chance_below(chance, (uint32_t)(i + 1));
        numbers[i] = numbers[other];
        numbers[other] = i;
    }
    return numbers;
}

static void make_network(made_network *made, size_t count)
{
    bk_chance chance = bk_chance_from(SEED);
    size_t width = count / LAYERS;
    size_t *numbers = deal(&chance, count);
    *made = (made_network){.count = count,
                           .durations = bk_alloc_clear(count, sizeof *made->durations),
                           .ranks = bk_alloc_clear(count * BEFORE_EACH, sizeof *made->ranks),
                           .times = bk_alloc_clear(count, sizeof *made->times)};
    for (size_t step = 0; step < count; step++) {
        made->durations[step] = bk_chance_below(&chance, LONGEST);
        for (int i = 0; step >= width && i < BEFORE_EACH; i++) {
            size_t from = (step / width - 1) * width + bk_chance_below(&chance, (uint32_t)width);
            made->ranks[made->rank_count++] = (bk_network_rank){numbers[from], numbers[step], 0};
        }
    }
    free(numbers);
}

static void forget_network(made_network *made)
{
    free(made->durations);
    free(made->ranks);
    free(made->times);
}

static double seconds_now(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}

// The quickest of some runs: of the times, and of the chain.
static void measure(made_network *made, double *times, double *chain, int64_t *length, size_t *chain_length)
{
    *times = *chain = 1e9;
    for (int run = 0; run < RUNS; run++) {
        bk_arena *arena = bk_arena_new();
        size_t *steps;
        double begin = seconds_now();
        bk_network_times_reckon(made->count, made->durations, NULL, made->ranks, made->rank_count,
                                made->times, length);
        double reckoned = seconds_now();
        *chain_length =
            bk_network_chain(made->count, made->times, made->ranks, made->rank_count, arena, &steps);
        double found = seconds_now();
        *times = reckoned - begin < *times ? reckoned - begin : *times;
        *chain = found - reckoned < *chain ? found - reckoned : *chain;
        bk_arena_free(arena);
    }
}

int main(void)
{
    static const size_t sizes[] = {10000, 100000, 1000000};
    double first = 0;
    printf("%10s %10s %10s %8s %10s %12s %10s %8s\n", "steps", "links", "length", "chain", "times s",
           "times ns/step", "chain s", "ratio");
    for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++) {
        made_network made;
        double times, chain;
        int64_t length;
        size_t chain_length;
        make_network(&made, sizes[i]);
        measure(&made, &times, &chain, &length, &chain_length);
        double each = times * 1e9 / (double)sizes[i];
        if (i == 0)
            first = each;
        printf("%10zu %10zu %10lld %8zu %10.4f %12.1f %10.4f %8.2f\n", made.count, made.rank_count,
               (long long)length, chain_length, times, each, chain, each / first);
        forget_network(&made);
    }
    return EXIT_SUCCESS;
}
