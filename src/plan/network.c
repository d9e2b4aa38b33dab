#include "bodkin/plan/network.h"

#include <assert.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/arena.h"

enum { UNSEEN, ON_THE_WAY, LEFT };

// A walk in depth over the network, without recursion: the network may be a single chain of any length.
typedef struct network_walk {
    size_t *first; // links of step i lead to to[first[i]] .. to[first[i + 1] - 1]
    size_t *to;
    size_t *next;        // the next of its links that each step will follow
    unsigned char *seen; // UNSEEN, ON_THE_WAY or LEFT, for each step
    size_t *way;         // the steps from where the walk began to where it is
    size_t length;
} network_walk;

static void group_links(network_walk *walk, size_t count, const bk_network_link *links, size_t link_count)
{
    for (size_t i = 0; i < link_count; i++)
        walk->first[links[i].from + 1]++;
    for (size_t i = 0; i < count; i++)
        walk->first[i + 1] += walk->first[i];
    memcpy(walk->next, walk->first, count * sizeof *walk->next);
    for (size_t i = 0; i < link_count; i++)
        walk->to[walk->next[links[i].from]++] = links[i].to;
    memcpy(walk->next, walk->first, count * sizeof *walk->next);
}

static void begin(network_walk *walk, size_t count, const bk_network_link *links, size_t link_count)
{
    walk->first = bk_alloc_clear(count + 1, sizeof *walk->first);
    walk->to = bk_alloc_clear(link_count, sizeof *walk->to);
    walk->next = bk_alloc_clear(count, sizeof *walk->next);
    walk->seen = bk_alloc_clear(count, sizeof *walk->seen);
    walk->way = bk_alloc_clear(count, sizeof *walk->way);
    walk->length = 0;
    group_links(walk, count, links, link_count);
}

static void end(network_walk *walk)
{
    free(walk->first);
    free(walk->to);
    free(walk->next);
    free(walk->seen);
    free(walk->way);
}

static void enter(network_walk *walk, size_t step)
{
    walk->seen[step] = ON_THE_WAY;
    walk->way[walk->length++] = step;
}

// Follows the links from `start`; true when one leads back to a step on the way, which is then in `met`.
static bool meets_itself(network_walk *walk, size_t start, size_t *met)
{
    enter(walk, start);
    while (walk->length > 0) {
        size_t here = walk->way[walk->length - 1];
        if (walk->next[here] == walk->first[here + 1]) {
            walk->seen[here] = LEFT;
            walk->length--;
            continue;
        }
        size_t there = walk->to[walk->next[here]++];
        if (walk->seen[there] == ON_THE_WAY) {
            *met = there;
            return true;
        }
        if (walk->seen[there] == UNSEEN)
            enter(walk, there);
    }
    return false;
}

// The end of the way, from `met` on, turned so that its lowest index stands first.
static size_t *from_lowest(const network_walk *walk, size_t met, bk_arena *arena, size_t *length)
{
    size_t begins = walk->length - 1;
    while (walk->way[begins] != met)
        begins--;
    const size_t *round = walk->way + begins;
    *length = walk->length - begins;
    size_t lowest = 0;
    for (size_t i = 1; i < *length; i++)
        if (round[i] < round[lowest])
            lowest = i;
    size_t *circle = bk_arena_take(arena, *length * sizeof *circle);
    memcpy(circle, round + lowest, (*length - lowest) * sizeof *circle);
    memcpy(circle + (*length - lowest), round, lowest * sizeof *circle);
    return circle;
}

bool bk_network_circle(size_t count, const bk_network_link *links, size_t link_count, bk_arena *arena,
                       size_t **circle, size_t *length)
{
    network_walk walk;
    begin(&walk, count, links, link_count);
    bool found = false;
    size_t met = 0;
    for (size_t start = 0; start < count && !found; start++)
        found = walk.seen[start] == UNSEEN && meets_itself(&walk, start, &met);
    *circle = NULL;
    *length = 0;
    if (found)
        *circle = from_lowest(&walk, met, arena, length);
    end(&walk);
    return found;
}

// ----------------------------------------------------------------------------------------------------------- times

// A link as it is kept with the step it leads away from.
typedef struct follower {
    size_t to;
    int64_t rest;
} follower;

// The network in an order in which every step stands behind those it comes after.
typedef struct network_order {
    size_t *first; // the followers of step i are followers[first[i]] .. followers[first[i + 1] - 1]
    follower *followers;
    size_t *steps;
} network_order;

static void group_followers(network_order *order, size_t count, const bk_network_rank *ranks,
                            size_t rank_count)
{
    order->first = bk_alloc_clear(count + 2, sizeof *order->first);
    order->followers = bk_alloc_clear(rank_count, sizeof *order->followers);
    size_t *next =
        order->first +
        1; // where the next follower of each step goes: in the end, where those of step i + 1 begin
    for (size_t i = 0; i < rank_count; i++)
        next[ranks[i].from + 1]++;
    for (size_t i = 0; i < count; i++)
        next[i + 1] += next[i];
    for (size_t i = 0; i < rank_count; i++)
        order->followers[next[ranks[i].from]++] = (follower){ranks[i].to, ranks[i].rest};
}

// Kahn 1962: a step follows when all before it stand in the order.
static void order_steps(network_order *order, size_t count, const bk_network_rank *ranks, size_t rank_count)
{
    order->steps = bk_alloc_clear(count, sizeof *order->steps);
    size_t *before = bk_alloc_clear(count, sizeof *before);
    for (size_t i = 0; i < rank_count; i++)
        before[ranks[i].to]++;
    size_t found = 0;
    for (size_t i = 0; i < count; i++)
        if (before[i] == 0)
            order->steps[found++] = i;
    for (size_t place = 0; place < found; place++) {
        size_t step = order->steps[place];
        for (size_t i = order->first[step]; i < order->first[step + 1]; i++)
            if (--before[order->followers[i].to] == 0)
                order->steps[found++] = order->followers[i].to;
    }
    assert(found == count); // no circles
    free(before);
}

static int64_t reckon_early(const network_order *order, size_t count, const int64_t *durations,
                            const int64_t *releases, bk_network_times *times)
{
    int64_t length = 0;
    for (size_t i = 0; i < count; i++)
        times[i] = (bk_network_times){.early_start = releases == NULL || releases[i] < 0 ? 0 : releases[i]};
    for (size_t place = 0; place < count; place++) {
        size_t step = order->steps[place];
        int64_t finish = times[step].early_start + durations[step];
        times[step].early_finish = finish;
        if (finish > length)
            length = finish;
        for (size_t i = order->first[step]; i < order->first[step + 1]; i++) {
            const follower *next = &order->followers[i];
            if (finish + next->rest > times[next->to].early_start)
                times[next->to].early_start = finish + next->rest;
        }
    }
    return length;
}

static void reckon_late(const network_order *order, size_t count, const int64_t *durations, int64_t length,
                        bk_network_times *times)
{
    for (size_t place = count; place-- > 0;) {
        size_t step = order->steps[place];
        int64_t finish = length;
        for (size_t i = order->first[step]; i < order->first[step + 1]; i++) {
            const follower *next = &order->followers[i];
            if (times[next->to].late_start - next->rest < finish)
                finish = times[next->to].late_start - next->rest;
        }
        times[step].late_finish = finish;
        times[step].late_start = finish - durations[step];
        times[step].slack = times[step].late_start - times[step].early_start;
    }
}

void bk_network_times_reckon(size_t count, const int64_t *durations, const int64_t *releases,
                             const bk_network_rank *ranks, size_t rank_count, bk_network_times *times,
                             int64_t *length)
{
    network_order order;
    group_followers(&order, count, ranks, rank_count);
    order_steps(&order, count, ranks, rank_count);
    *length = reckon_early(&order, count, durations, releases, times);
    reckon_late(&order, count, durations, *length, times);
    free(order.first);
    free(order.followers);
    free(order.steps);
}

// ----------------------------------------------------------------------------------------------------------- chain

// Whether neither step has spare time and the later one cannot begin earlier because of the other.
static bool binds(const bk_network_times *times, const bk_network_rank *rank)
{
    const bk_network_times *from = &times[rank->from], *to = &times[rank->to];
    return from->slack == 0 && to->slack == 0 && from->early_finish + rank->rest == to->early_start;
}

size_t bk_network_chain(size_t count, const bk_network_times *times, const bk_network_rank *ranks,
                        size_t rank_count, bk_arena *arena, size_t **chain)
{
    bool *bound = bk_alloc_clear(count, sizeof *bound);
    size_t *next = bk_alloc_clear(count, sizeof *next); // the lowest step that each one binds; itself: none
    for (size_t i = 0; i < count; i++)
        next[i] = i;
    for (size_t i = 0; i < rank_count; i++) {
        size_t from = ranks[i].from, to = ranks[i].to;
        if (!binds(times, &ranks[i]))
            continue;
        bound[to] = true;
        if (next[from] == from || to < next[from])
            next[from] = to;
    }
    size_t step = 0, length = 0;
    while (step < count && (bound[step] || times[step].slack != 0))
        step++;
    *chain = bk_arena_take(arena, count * sizeof **chain);
    bool more = step < count;
    while (more) {
        (*chain)[length++] = step;
        more = next[step] != step;
        step = next[step];
    }
    free(bound);
    free(next);
    return length;
}
