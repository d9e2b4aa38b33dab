// What a full daybook costs: ticks with an almost empty daybook and with 50,000 entries in it, at most a
// fifth slower; and undoing an import of 10,000 rows, under 0.3 s. The stores are made in the folder named on
// the command line.
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "bodkin/store/daybook.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/tick.h"

enum {
    ROUNDS = 15,
    TICKS = 200,
    ENTRIES = 50000,
    PIECES = 400,
    STEPS = 4000,
    STEPS_A_PIECE = STEPS / PIECES,
    NEEDS = 2000,
    LINKS = STEPS - PIECES, // each step after the one before it in its piece
    ROWS = PIECES + STEPS + NEEDS + LINKS,
    NAME_ROOM = 32
};

static const char made_at[] = "2027-03-02T09:30:00+01:00";
static bk_error trouble;

static void must(bk_status status)
{
    if (status) {
        fprintf(stderr, "%s\n", trouble.text);
        exit(EXIT_FAILURE);
    }
}

static double now(void)
{
    struct timespec time;
    clock_gettime(CLOCK_MONOTONIC, &time);
    return (double)time.tv_sec + (double)time.tv_nsec / 1e9;
}

static bk_store *open_in(bk_arena *arena, const char *folder, const char *name)
{
    bk_store *store = NULL;
    bk_store_options options = {.path = bk_arena_print(arena, "%s/%s.db", folder, name),
                                .who = "Ada",
                                .terminal = "one",
                                .create = true};
    must(bk_store_open(&store, &options, &trouble));
    return store;
}

static int64_t add(bk_store *store, bk_family family, const void *record, int64_t position)
{
    int64_t id = 0;
    must(bk_store_add(store, family, record, position, &id, &trouble));
    return id;
}

static int64_t add_step(bk_store *store, int64_t production, int64_t piece, int number)
{
    char key[NAME_ROOM];
    snprintf(key, sizeof key, "s%d", number);
    bk_step step = {.production_id = production,
                    .piece_id = piece,
                    .key = key,
                    .title = "side seams of the bodice",
                    .kind = BK_HAND,
                    .minutes = 30,
                    .quickest = BK_NOT_KNOWN,
                    .longest = BK_NOT_KNOWN,
                    .hands = BK_NOT_KNOWN,
                    .level = BK_NOT_KNOWN,
                    .rest_minutes = BK_NOT_KNOWN,
                    .can_wait = 0,
                    .done_on = BK_NO_DAY,
                    .took = BK_NOT_KNOWN};
    return add(store, BK_STEPS, &step, number);
}

/// Adds a piece with its steps, half of which need the material; the ids of the steps go to `steps`.
static void add_piece(bk_store *store, int64_t production, int64_t material, int number, int64_t *steps)
{
    char name[NAME_ROOM];
    snprintf(name, sizeof name, "%dA-1", number);
    bk_piece piece = {.production_id = production,
                      .name = name,
                      .title = "bodice",
                      .origin = BK_MAKE,
                      .out_since = BK_NO_DAY,
                      .back_by = BK_NO_DAY,
                      .due_back = BK_NO_DAY,
                      .returned_on = BK_NO_DAY};
    int64_t id = add(store, BK_PIECES, &piece, number);
    for (int i = 0; i < STEPS_A_PIECE; i++) {
        steps[i] = add_step(store, production, id, number * STEPS_A_PIECE + i);
        if (i % 2 == 0) {
            bk_need need = {.step_id = steps[i], .material_id = material, .quantity = BK_QUANTITY_ONE};
            add(store, BK_NEEDS, &need, i);
        }
        if (i > 0)
            add(store, BK_STEP_AFTERS, &(bk_link){.from_id = steps[i], .to_id = steps[i - 1]}, 0);
    }
}

/// A production of ROWS rows and a few more, in one change.
static void add_show(bk_store *store, int64_t *steps)
{
    must(bk_store_change_begin(store, &trouble));
    bk_production show = {.name = "The Loom",
                          .opens = bk_day_of(2027, 6, 4),
                          .unit = BK_NO_WORD,
                          .measures_good_for = BK_NOT_KNOWN,
                          .put_away_on = BK_NO_DAY};
    int64_t production = add(store, BK_PRODUCTIONS, &show, 0);
    bk_material linen = {.name = "linen", .unit = BK_METRE, .width = BK_NOT_KNOWN};
    int64_t material = add(store, BK_MATERIALS, &linen, 0);
    bk_movement count = {.material_id = material,
                         .kind = BK_MOVED_COUNT,
                         .quantity = 1000 * BK_QUANTITY_ONE,
                         .moved_on = bk_day_of(2027, 3, 1)};
    add(store, BK_MOVEMENTS, &count, 0);
    for (int i = 0; i < PIECES; i++)
        add_piece(store, production, material, i, steps + (ptrdiff_t)i * STEPS_A_PIECE);
    must(bk_store_change_commit(store, made_at, "Imported \"The Loom\"", NULL, &trouble));
}

static void mark(bk_store *store, int64_t step, bool done)
{
    const char *sentence = NULL;
    bk_arena *arena = bk_arena_new();
    bk_tick tick = {.done_on = bk_day_of(2027, 3, 2), .done_by = "Ada", .took = BK_NOT_KNOWN};
    must(done ? bk_step_tick(store, step, &tick, made_at, arena, &sentence, &trouble)
              : bk_step_untick(store, step, tick.done_on, made_at, arena, &sentence, &trouble));
    bk_arena_free(arena);
}

/// Seconds that one takes, of ticking the first steps and opening them again.
static double time_ticks(bk_store *store, const int64_t *steps)
{
    double begun = now();
    for (int i = 0; i < TICKS; i++)
        mark(store, steps[i % (TICKS / 2)], i < TICKS / 2);
    return (now() - begun) / TICKS;
}

static int by_size(const void *left, const void *right)
{
    double one = *(const double *)left;
    double other = *(const double *)right;
    return (one > other) - (one < other);
}

/// Turn about in both stores, so that a busy moment of the machine falls on both.
static void measure_ticks(bk_store *fresh, bk_store *full, const int64_t *steps)
{
    double of_fresh[ROUNDS];
    double of_full[ROUNDS];
    for (int i = 0; i < ROUNDS; i++) {
        of_fresh[i] = time_ticks(fresh, steps);
        of_full[i] = time_ticks(full, steps);
    }
    qsort(of_fresh, ROUNDS, sizeof *of_fresh, by_size);
    qsort(of_full, ROUNDS, sizeof *of_full, by_size);
    double one = of_fresh[ROUNDS / 2];
    double other = of_full[ROUNDS / 2];
    printf("a tick with at most %d entries in the daybook %.3f ms, with %d more %.3f ms: ratio %.2f (at most "
           "1.2)\n",
           ROUNDS * TICKS, one * 1e3, ENTRIES, other * 1e3, other / one);
}

static void measure_undo(bk_store *store)
{
    const char *sentence = NULL;
    bk_arena *arena = bk_arena_new();
    double begun = now();
    must(bk_daybook_undo(store, 0, made_at, arena, &sentence, &trouble));
    double undone = now();
    must(bk_daybook_redo(store, made_at, arena, &sentence, &trouble));
    printf("an import of %d rows: undone in %.3f s (under 0.3), redone in %.3f s\n", ROWS, undone - begun,
           now() - undone);
    bk_arena_free(arena);
}

static bk_store *open_with_show(bk_arena *arena, const char *folder, const char *name, int64_t *steps)
{
    bk_store *store = open_in(arena, folder, name);
    add_show(store, steps);
    measure_undo(store);
    return store;
}

int main(int argc, char **argv)
{
    static int64_t steps[STEPS]; // the same in both stores
    if (argc != 2) {
        fprintf(stderr, "bench_daybook FOLDER\n");
        return EXIT_FAILURE;
    }
    bk_arena *arena = bk_arena_new();
    bk_store *fresh = open_with_show(arena, argv[1], "fresh", steps);
    bk_store *full = open_with_show(arena, argv[1], "full", steps);
    for (int made = 0; made < ENTRIES; made++)
        mark(full, steps[made / 2 % STEPS], made % 2 == 0);
    measure_ticks(fresh, full, steps);
    bk_store_close(full);
    bk_store_close(fresh);
    bk_arena_free(arena);
    return EXIT_SUCCESS;
}
