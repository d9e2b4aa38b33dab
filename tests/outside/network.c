// Reckons the network that stands on its input, for networks.py: the number of steps and of links; for each step its duration
// and its release; for each link the earlier step, the later one and the rest between. It prints the length, then a line for
// each step with its early and its late start, then the chain.
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>

#include "bodkin/plan/network.h"

typedef struct read_network {
    size_t count, rank_count;
    int64_t *durations, *releases;
    bk_network_rank *ranks;
} read_network;

static bool read_all(read_network *network)
{
    if (scanf("%zu %zu", &network->count, &network->rank_count) != 2)
        return false;
    network->durations = bk_alloc_clear(network->count, sizeof *network->durations);
    network->releases = bk_alloc_clear(network->count, sizeof *network->releases);
    network->ranks = bk_alloc_clear(network->rank_count, sizeof *network->ranks);
    for (size_t i = 0; i < network->count; i++)
        if (scanf("%" SCNd64 " %" SCNd64, &network->durations[i], &network->releases[i]) != 2)
            return false;
    for (size_t i = 0; i < network->rank_count; i++) {
        bk_network_rank *rank = &network->ranks[i];
        if (scanf("%zu %zu %" SCNd64, &rank->from, &rank->to, &rank->rest) != 3 ||
            rank->from >= network->count || rank->to >= network->count)
            return false;
    }
    return true;
}

static void print_reckoned(const read_network *network)
{
    bk_arena *arena = bk_arena_new();
    bk_network_times *times = bk_alloc_clear(network->count, sizeof *times);
    int64_t length;
    size_t *chain;
    bk_network_times_reckon(network->count, network->durations, network->releases, network->ranks,
                            network->rank_count, times, &length);
    printf("%" PRId64 "\n", length);
    for (size_t i = 0; i < network->count; i++)
        printf("%" PRId64 " %" PRId64 "\n", times[i].early_start, times[i].late_start);
    size_t found =
        bk_network_chain(network->count, times, network->ranks, network->rank_count, arena, &chain);
    for (size_t place = 0; place < found; place++)
        printf("%zu%c", chain[place], place + 1 < found ? ' ' : '\n');
    free(times);
    bk_arena_free(arena);
}

int main(void)
{
    read_network network = {0};
    bool understood = read_all(&network);
    if (understood)
        print_reckoned(&network);
    else
        fputs("this is no network\n", stderr);
    free(network.durations);
    free(network.releases);
    free(network.ranks);
    return understood ? EXIT_SUCCESS : EXIT_FAILURE;
}
