#include "support/psplib_file.h"

#include <ctype.h>
#include <errno.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/plan/network.h"

enum { JOBS_MOST = 100000, RESOURCES_MOST = 1000, NUMBER_MOST = 1000000 };

// A text that is read line by line.
typedef struct sm_text {
    const char *rest; // the next line
    const char *line; // where the line at hand is read on
    const char *end;  // of the line at hand
    const char *last; // the end of the text
    int number;       // of the line at hand, from 1
    bk_error *error;
} sm_text;

typedef struct sm_network {
    bk_arena *arena;
    long jobs, resources;
    BK_LIST(bk_rank) ranks;
    bk_mode *modes;   // of each job its one
    bk_use *uses;     // `resources` for each job
    bk_stage *stages; // of each resource its one
} sm_network;

static bool next_line(sm_text *text)
{
    if (text->rest >= text->last)
        return false;
    text->line = text->rest;
    text->end = memchr(text->line, '\n', (size_t)(text->last - text->line));
    if (text->end == NULL)
        text->end = text->last;
    text->rest = text->end < text->last ? text->end + 1 : text->last;
    text->number++;
    return true;
}

// Whether the words stand in the line at hand; moves behind them.
static bool has(sm_text *text, const char *words)
{
    size_t length = strlen(words);
    for (const char *at = text->line; at + length <= text->end; at++)
        if (memcmp(at, words, length) == 0) {
            text->line = at + length;
            return true;
        }
    return false;
}

static bk_status find_line(sm_text *text, const char *words)
{
    while (next_line(text))
        if (has(text, words))
            return BK_OK;
    return bk_fail(text->error, BK_REFUSED, "the line \"%s\" is missing: it is no .sm file, or cut short.",
                   words);
}

// The next number of the line at hand, from 0 to `most`.
static bk_status number(sm_text *text, const char *what, long most, long *value)
{
    while (text->line < text->end && (isspace((unsigned char)*text->line) || *text->line == ':'))
        text->line++;
    char *behind;
    errno = 0;
    *value = text->line < text->end ? strtol(text->line, &behind, 10) : -1;
    if (text->line == text->end || behind == text->line || errno != 0 || *value < 0 || *value > most)
        return bk_fail(text->error, BK_REFUSED, "line %d: %s should be a whole number from 0 to %ld.",
                       text->number, what, most);
    text->line = behind;
    return BK_OK;
}

static bk_status number_after(sm_text *text, const char *words, long most, long *value)
{
    bk_status status = find_line(text, words);
    return status == BK_OK ? number(text, words, most, value) : status;
}

static bk_status read_sizes(sm_text *text, sm_network *network)
{
    long others;
    bk_status status = number_after(text, "jobs (incl. supersource/sink ):", JOBS_MOST, &network->jobs);
    if (status == BK_OK)
        status = number_after(text, "- renewable", RESOURCES_MOST, &network->resources);
    if (status == BK_OK)
        status = number_after(text, "- nonrenewable", RESOURCES_MOST, &others);
    if (status == BK_OK && others > 0)
        return bk_fail(text->error, BK_REFUSED, "line %d: resources that are used up are not known here.",
                       text->number);
    if (status == BK_OK && network->jobs == 0)
        return bk_fail(text->error, BK_REFUSED, "there are no jobs.");
    return status;
}

// The start of a job's line: its number, which must be the next one.
static bk_status read_job(sm_text *text, long job)
{
    long found;
    if (!next_line(text))
        return bk_fail(text->error, BK_REFUSED, "the line of job %ld is missing.", job + 1);
    bk_status status = number(text, "the job", JOBS_MOST, &found);
    if (status == BK_OK && found != job + 1)
        return bk_fail(text->error, BK_REFUSED, "line %d: job %ld was expected.", text->number, job + 1);
    return status;
}

static bk_status read_successors(sm_text *text, sm_network *network, long job)
{
    long modes, count, successor;
    bk_status status = read_job(text, job);
    if (status == BK_OK)
        status = number(text, "the number of modes", JOBS_MOST, &modes);
    if (status == BK_OK && modes != 1)
        return bk_fail(text->error, BK_REFUSED, "line %d: a job should have one mode.", text->number);
    if (status == BK_OK)
        status = number(text, "the number of successors", network->jobs, &count);
    for (long i = 0; status == BK_OK && i < count; i++) {
        status = number(text, "a successor", network->jobs, &successor);
        if (status == BK_OK && successor == 0)
            return bk_fail(text->error, BK_REFUSED, "line %d: there is no job 0.", text->number);
        if (status == BK_OK)
            bk_list_add(&network->ranks, ((bk_rank){(uint32_t)job, (uint32_t)successor - 1, 0}));
    }
    return status;
}

static bk_status read_requests(sm_text *text, sm_network *network, long job)
{
    long mode, minutes = 0, amount;
    bk_mode *made = &network->modes[job];
    bk_use *uses = &network->uses[job * network->resources];
    bk_status status = read_job(text, job);
    if (status == BK_OK)
        status = number(text, "the mode", 1, &mode);
    if (status == BK_OK)
        status = number(text, "the duration", NUMBER_MOST, &minutes);
    *made = (bk_mode){(int32_t)minutes, uses, 0};
    for (long i = 0; status == BK_OK && i < network->resources; i++) {
        status = number(text, "what is needed of a resource", NUMBER_MOST, &amount);
        if (status == BK_OK && amount > 0)
            uses[made->use_count++] = (bk_use){(uint32_t)i, (int32_t)amount};
    }
    return status;
}

static bk_status read_rows(sm_text *text, sm_network *network,
                           bk_status (*row)(sm_text *, sm_network *, long))
{
    bk_status status = BK_OK;
    for (long job = 0; status == BK_OK && job < network->jobs; job++)
        status = row(text, network, job);
    return status;
}

static bk_status read_capacities(sm_text *text, sm_network *network)
{
    long capacity;
    bk_status status = find_line(text, "RESOURCEAVAILABILITIES:");
    if (status == BK_OK && !(next_line(text) && next_line(text)))
        return bk_fail(text->error, BK_REFUSED, "the line of what there is of each resource is missing.");
    for (long i = 0; status == BK_OK && i < network->resources; i++) {
        status = number(text, "what there is of a resource", NUMBER_MOST, &capacity);
        network->stages[i] = (bk_stage){0, (int32_t)capacity};
    }
    return status;
}

static bk_status read_all(sm_text *text, sm_network *network)
{
    bk_status status = read_sizes(text, network);
    if (status != BK_OK)
        return status;
    size_t jobs = (size_t)network->jobs, resources = (size_t)network->resources;
    network->modes = bk_arena_clear(network->arena, jobs, sizeof *network->modes);
    network->uses = bk_arena_clear(network->arena, jobs * resources, sizeof *network->uses);
    network->stages = bk_arena_clear(network->arena, resources, sizeof *network->stages);
    status = find_line(text, "PRECEDENCE RELATIONS:");
    if (status == BK_OK)
        status = find_line(text, "#successors");
    if (status == BK_OK)
        status = read_rows(text, network, read_successors);
    if (status == BK_OK)
        status = find_line(text, "REQUESTS/DURATIONS:");
    if (status == BK_OK && !(next_line(text) && next_line(text)))
        return bk_fail(text->error, BK_REFUSED, "the lines of durations are missing.");
    if (status == BK_OK)
        status = read_rows(text, network, read_requests);
    return status == BK_OK ? read_capacities(text, network) : status;
}

static bk_status check_needs(const sm_network *network, bk_error *error)
{
    for (long job = 0; job < network->jobs; job++)
        for (size_t i = 0; i < network->modes[job].use_count; i++) {
            const bk_use *use = &network->modes[job].uses[i];
            if (use->amount > network->stages[use->resource].capacity)
                return bk_fail(error, BK_REFUSED, "job %ld needs more of resource %u than there is.", job + 1,
                               use->resource + 1);
        }
    return BK_OK;
}

static bk_status check_order(const sm_network *network, bk_error *error)
{
    size_t *circle, length;
    bk_network_link *links = bk_arena_take(network->arena, network->ranks.count * sizeof *links);
    for (size_t i = 0; i < network->ranks.count; i++)
        links[i] = (bk_network_link){network->ranks.items[i].from, network->ranks.items[i].to};
    if (bk_network_circle((size_t)network->jobs, links, network->ranks.count, network->arena, &circle,
                          &length))
        return bk_fail(error, BK_REFUSED, "the order runs in a circle through job %zu.", circle[0] + 1);
    return BK_OK;
}

static void fill(sm_network *network, bk_problem *problem)
{
    size_t jobs = (size_t)network->jobs, resources = (size_t)network->resources;
    bk_task *tasks = bk_arena_clear(network->arena, jobs, sizeof *tasks);
    for (size_t i = 0; i < jobs; i++)
        tasks[i] = (bk_task){.modes = &network->modes[i], .mode_count = 1, .appointment = BK_CLOCK_NONE};
    bk_resource *kinds = bk_arena_clear(network->arena, resources, sizeof *kinds);
    for (size_t i = 0; i < resources; i++)
        kinds[i] = (bk_resource){&network->stages[i], 1};
    bk_rank *ranks = bk_arena_take(network->arena, network->ranks.count * sizeof *ranks);
    if (network->ranks.count > 0)
        memcpy(ranks, network->ranks.items, network->ranks.count * sizeof *ranks);
    *problem = (bk_problem){.tasks = tasks,
                            .task_count = jobs,
                            .resources = kinds,
                            .resource_count = resources,
                            .ranks = ranks,
                            .rank_count = network->ranks.count};
}

bk_status bk_psplib_read(const char *text, size_t length, bk_arena *arena, bk_problem *problem,
                         bk_error *error)
{
    sm_text lines = {.rest = text, .last = text + length, .error = error};
    sm_network network = {.arena = arena};
    bk_status status = read_all(&lines, &network);
    if (status == BK_OK)
        status = check_needs(&network, error);
    if (status == BK_OK)
        status = check_order(&network, error);
    if (status == BK_OK)
        fill(&network, problem);
    bk_list_free(&network.ranks);
    return status;
}
