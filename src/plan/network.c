#include "bodkin/plan/network.h"

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
