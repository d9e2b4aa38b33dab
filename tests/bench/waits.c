// How long sharing the shelf and reckoning the waits take for each step, as a production grows: it should stay the same,
// but for the sorting of the claims.
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "bodkin/plan/waits.h"

enum {
    TODAY = 20000,
    STEPS_A_PIECE = 7,
    PIECES_A_COSTUME = 3,
    PERFORMERS = 40,
    MATERIALS = 60,
    ORDERS = 200,
    PEOPLE = 8,
    NAME_ROOM = 48,
    RUNS = 7
};

// A production made up by rule: every kind of wait occurs in it.
typedef struct made_production {
    bk_wait_rows rows;
    bk_wait_performer performers[PERFORMERS];
    bk_wait_person people[PEOPLE];
    bk_wait_costume *costumes;
    bk_wait_piece *pieces;
    bk_wait_step *steps;
    bk_claim *claims; // one for every step; those of steps that are not done are shared out
    size_t *indices;  // index i stands at place i
    char (*names)[NAME_ROOM];
    bk_quantity on_hand[MATERIALS];
    bk_incoming orders[ORDERS];
} made_production;

static bk_indices run_of(const made_production *made, size_t first, size_t count)
{
    return (bk_indices){made->indices + first, count};
}

// The shelf and the orders grow with the production, so that the same share of steps is short.
static void make_workroom(made_production *made, size_t costumes)
{
    for (size_t i = 0; i < PERFORMERS; i++)
        made->performers[i] = (bk_wait_performer){TODAY - (bk_day)(i * 6), BK_USUAL_GOOD_FOR};
    for (size_t i = 0; i < PEOPLE; i++) {
        made->people[i] =
            (bk_wait_person){.skills = (unsigned)(3 << i), .from = BK_NO_DAY, .until = BK_NO_DAY};
        made->people[i].works_on[i % 7] = true;
    }
    for (size_t i = 0; i < MATERIALS; i++)
        made->on_hand[i] = (bk_quantity)(i * costumes) * BK_QUANTITY_ONE / 200;
    for (size_t i = 0; i < ORDERS; i++)
        made->orders[i] =
            (bk_incoming){i % MATERIALS, 5 * BK_QUANTITY_ONE, TODAY - 5 + (bk_day)(i % 30), (int64_t)i};
}

static void make_step(made_production *made, size_t i)
{
    size_t piece = i / STEPS_A_PIECE, place = i % STEPS_A_PIECE;
    bk_wait_step *step = &made->steps[i];
    *step = (bk_wait_step){.key = "step",
                           .piece = piece,
                           .kind = (int)((i * 7 + piece) % BK_KINDS),
                           .minutes = 30,
                           .done = place < piece % 5,
                           .fitting_outcome = BK_NO_WORD,
                           .claims = &made->claims[i],
                           .claim_count = 1};
    if (place > 0)
        step->after = run_of(made, i - 1, 1);
    else if (piece > PIECES_A_COSTUME)
        step->after = run_of(made, i - (size_t)PIECES_A_COSTUME * STEPS_A_PIECE, piece % 4 == 0);
    made->claims[i] = (bk_claim){.material = i % MATERIALS,
                                 .quantity = step->done ? 0 : BK_QUANTITY_ONE / 2,
                                 .due = TODAY + (bk_day)(piece % 40),
                                 .opens = TODAY + 50,
                                 .production = "Winter",
                                 .costume = made->names[piece / PIECES_A_COSTUME],
                                 .piece = made->names[piece],
                                 .step_position = (int64_t)i};
}

static void make_piece(made_production *made, size_t i)
{
    made->pieces[i] = (bk_wait_piece){.name = made->names[i],
                                      .origin = (int)(i % BK_ORIGINS),
                                      .out = i % 17 == 0,
                                      .back_by = TODAY + 3,
                                      .costumes = run_of(made, i / PIECES_A_COSTUME, 1),
                                      .steps = run_of(made, i * STEPS_A_PIECE, STEPS_A_PIECE)};
}

static void make_production(made_production *made, size_t costumes)
{
    size_t pieces = costumes * PIECES_A_COSTUME, steps = pieces * STEPS_A_PIECE;
    *made = (made_production){.costumes = bk_alloc_clear(costumes, sizeof *made->costumes),
                              .pieces = bk_alloc_clear(pieces, sizeof *made->pieces),
                              .steps = bk_alloc_clear(steps, sizeof *made->steps),
                              .claims = bk_alloc_clear(steps, sizeof *made->claims),
                              .indices = bk_alloc_clear(steps, sizeof *made->indices),
                              .names = bk_alloc_clear(pieces, NAME_ROOM)};
    make_workroom(made, costumes);
    for (size_t i = 0; i < pieces; i++)
        snprintf(made->names[i], NAME_ROOM, "%zuA-%zu", i / PIECES_A_COSTUME, i);
    for (size_t i = 0; i < steps; i++)
        made->indices[i] = i;
    for (size_t i = 0; i < steps; i++)
        make_step(made, i);
    for (size_t i = 0; i < pieces; i++)
        make_piece(made, i);
    for (size_t i = 0; i < costumes; i++)
        made->costumes[i] = (bk_wait_costume){.number = made->names[i],
                                              .performer = i % PERFORMERS,
                                              .due = TODAY + (bk_day)(i % 40),
                                              .pieces = run_of(made, i * PIECES_A_COSTUME, PIECES_A_COSTUME)};
    made->rows = (bk_wait_rows){TODAY,  made->performers, PERFORMERS, made->costumes, costumes, made->pieces,
                                pieces, made->steps,      steps,      made->people,   PEOPLE};
}

static void forget_production(made_production *made)
{
    free(made->costumes);
    free(made->pieces);
    free(made->steps);
    free(made->claims);
    free(made->indices);
    free(made->names);
}

static double nanoseconds_now(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec * 1e9 + (double)now.tv_nsec;
}

static double least(double left, double right)
{
    return left < right ? left : right;
}

// The quickest of some runs, in nanoseconds for each step.
static void measure(size_t costumes, double *sharing, double *reckoning, size_t *waits)
{
    static made_production made;
    *sharing = *reckoning = 1e18;
    for (int run = 0; run < RUNS; run++) {
        bk_arena *arena = bk_arena_new();
        make_production(&made, costumes);
        double steps = (double)made.rows.step_count;
        double begin = nanoseconds_now();
        bk_shelf_share(made.on_hand, MATERIALS, made.orders, ORDERS, TODAY, made.claims,
                       made.rows.step_count);
        double shared = nanoseconds_now();
        const bk_costume_waits *all = bk_waits_reckon(&made.rows, arena);
        double reckoned = nanoseconds_now();
        *sharing = least(*sharing, (shared - begin) / steps);
        *reckoning = least(*reckoning, (reckoned - shared) / steps);
        *waits = 0;
        for (size_t i = 0; i < costumes; i++)
            *waits += all[i].wait_count;
        forget_production(&made);
        bk_arena_free(arena);
    }
}

int main(void)
{
    static const size_t sizes[] = {96, 953, 9524}; // costumes: about 2,000, 20,000 and 200,000 steps
    double first = 0;
    printf("%10s %12s %16s %16s %8s\n", "steps", "waits/step", "sharing ns/step", "waits ns/step", "ratio");
    for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++) {
        double sharing, reckoning;
        size_t waits, steps = sizes[i] * PIECES_A_COSTUME * STEPS_A_PIECE;
        measure(sizes[i], &sharing, &reckoning, &waits);
        if (i == 0)
            first = reckoning;
        printf("%10zu %12.3f %16.1f %16.1f %8.2f\n", steps, (double)waits / (double)steps, sharing, reckoning,
               reckoning / first);
    }
    return EXIT_SUCCESS;
}
