// How near the planner comes to the best schedules known of a published set: psplib FOLDER CSV SCHEDULES [SEED]
//
// FOLDER holds .sm files, CSV a row for each with the columns instance, cpm_lb and best_ub. A line for each instance: its name, the
// finish found, the best one known, the critical path, the schedules made, and how far from the best. Every schedule is looked
// at by the checker of the tests; a fault ends it with status 1.
#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>

#include "bodkin/base/list.h"
#include "bodkin/plan/planner.h"
#include "bodkin/sheet/csv.h"
#include "support/plan_checker.h"
#include "support/psplib_file.h"

enum { FILE_MOST = 64 << 20, SCHEDULES_MOST = 1000000000, PERCENT = 100 };

typedef struct instance {
    const char *name;
    long critical, best;
} instance;

typedef struct bench_set {
    const char *folder;
    bk_arena *arena;
    BK_LIST(instance) instances;
    int64_t schedules;
    uint64_t seed;
    double from_best, from_critical, seconds; // sums
} bench_set;

// A whole file in the arena, with a NUL behind it.
static bk_status read_file(bk_arena *arena, const char *path, char **bytes, size_t *length, bk_error *error)
{
    struct stat about;
    FILE *file = fopen(path, "rb");
    if (file == NULL)
        return bk_fail(error, BK_REFUSED, "%s: %s.", path, strerror(errno));
    if (fstat(fileno(file), &about) != 0 || !S_ISREG(about.st_mode) || about.st_size > FILE_MOST) {
        fclose(file);
        return bk_fail(error, BK_REFUSED, "%s: is no file, or too large.", path);
    }
    *length = (size_t)about.st_size;
    *bytes = bk_arena_clear(arena, *length + 1, 1);
    size_t got = fread(*bytes, 1, *length, file);
    fclose(file);
    return got == *length ? BK_OK : bk_fail(error, BK_REFUSED, "%s: cannot be read.", path);
}

// ------------------------------------------------------------------------------------------------------------ the table

enum { INSTANCE, CRITICAL, BEST, COLUMNS };

static bk_status find_columns(const bk_csv_record *header, size_t columns[COLUMNS], bk_error *error)
{
    static const char *const names[COLUMNS] = {"instance", "cpm_lb", "best_ub"};
    for (size_t i = 0; i < COLUMNS; i++) {
        for (columns[i] = 0; columns[i] < header->count; columns[i]++)
            if (strcmp(header->cells[columns[i]].text, names[i]) == 0)
                break;
        if (columns[i] == header->count)
            return bk_fail(error, BK_REFUSED, "the table has no column %s.", names[i]);
    }
    return BK_OK;
}

static bool whole_number(const char *text, long least, long most, long *value)
{
    char *behind;
    errno = 0;
    *value = strtol(text, &behind, 10);
    return behind != text && *behind == '\0' && errno == 0 && *value >= least && *value <= most;
}

static bk_status read_row(bench_set *set, const bk_csv_record *row, const size_t columns[COLUMNS],
                          bk_error *error)
{
    instance made;
    for (size_t i = 0; i < COLUMNS; i++)
        if (columns[i] >= row->count || row->cells[columns[i]].fault != BK_CSV_OK)
            return bk_fail(error, BK_REFUSED, "line %d of the table is too short or broken.", row->line);
    const char *name = row->cells[columns[INSTANCE]].text;
    if (name[0] == '\0' || name[0] == '.' || strchr(name, '/') != NULL)
        return bk_fail(error, BK_REFUSED, "line %d of the table: the instance should be the name of a file.",
                       row->line);
    if (!whole_number(row->cells[columns[CRITICAL]].text, 1, INT32_MAX, &made.critical) ||
        !whole_number(row->cells[columns[BEST]].text, 1, INT32_MAX, &made.best))
        return bk_fail(error, BK_REFUSED,
                       "line %d of the table: cpm_lb and best_ub should be whole numbers from 1.", row->line);
    made.name = bk_arena_text(set->arena, name);
    bk_list_add(&set->instances, made);
    return BK_OK;
}

static bk_status read_table(bench_set *set, const char *path, bk_error *error)
{
    char *bytes;
    size_t length, columns[COLUMNS];
    bk_csv_record record;
    bk_status status = read_file(set->arena, path, &bytes, &length, error);
    if (status != BK_OK)
        return status;
    bk_csv_reader *reader = bk_csv_reader_new(bytes, length);
    if (bk_csv_next(reader, &record))
        status = find_columns(&record, columns, error);
    else
        status = bk_fail(error, BK_REFUSED, "%s: is empty.", path);
    while (status == BK_OK && bk_csv_next(reader, &record))
        status = read_row(set, &record, columns, error);
    bk_csv_reader_free(reader);
    if (status == BK_OK && set->instances.count == 0)
        status = bk_fail(error, BK_REFUSED, "%s: names no instance.", path);
    return status;
}

// -------------------------------------------------------------------------------------------------------------- solving

static double seconds_now(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

static double percent_above(long found, long bound)
{
    return (double)(found - bound) * PERCENT / (double)bound;
}

static bk_status plan(bench_set *set, const instance *one, const bk_problem *problem, bk_error *error)
{
    double begin = seconds_now();
    bk_planner *planner = bk_planner_new(problem, set->seed);
    bk_planner_run(planner, set->schedules, NULL, NULL);
    set->seconds += seconds_now() - begin;
    bk_cost cost = bk_planner_cost(planner);
    int64_t made = bk_planner_schedules(planner);
    bk_error fault = {0};
    bk_status status = BK_OK;
    if (cost.never > 0 || !bk_plan_sound(problem, NULL, bk_planner_best(planner), &fault))
        status = bk_fail(error, BK_REFUSED, "%s: the schedule is faulty: %s", one->name,
                         cost.never > 0 ? "a task is left out." : fault.text);
    bk_planner_free(planner);
    if (status != BK_OK)
        return status;
    set->from_best += percent_above(cost.last, one->best);
    set->from_critical += percent_above(cost.last, one->critical);
    printf("%s: finish %d, best %ld, critical path %ld, %" PRId64 " schedules, %.3f %%\n", one->name,
           cost.last, one->best, one->critical, made, percent_above(cost.last, one->best));
    return BK_OK;
}

static bk_status solve(bench_set *set, const instance *one, bk_error *error)
{
    char *text;
    size_t length;
    bk_problem problem;
    bk_error fault = {0};
    bk_arena *arena = bk_arena_new();
    const char *path = bk_arena_print(arena, "%s/%s.sm", set->folder, one->name);
    bk_status status = read_file(arena, path, &text, &length, error);
    if (status == BK_OK && bk_psplib_read(text, length, arena, &problem, &fault) != BK_OK)
        status = bk_fail(error, BK_REFUSED, "%s: %s", path, fault.text);
    if (status == BK_OK)
        status = plan(set, one, &problem, error);
    bk_arena_free(arena);
    return status;
}

static bk_status solve_all(bench_set *set, bk_error *error)
{
    for (size_t i = 0; i < set->instances.count; i++) {
        bk_status status = solve(set, &set->instances.items[i], error);
        if (status != BK_OK)
            return status;
    }
    double count = (double)set->instances.count;
    printf("mean deviation from best_ub %.4f %%, from cpm_lb %.4f %%, %.2f s\n", set->from_best / count,
           set->from_critical / count, set->seconds);
    return BK_OK;
}

int main(int argc, char **argv)
{
    bk_error error = {0};
    long schedules, seed = 1;
    if (argc < 4 || argc > 5 || !whole_number(argv[3], 1, SCHEDULES_MOST, &schedules) ||
        (argc == 5 && !whole_number(argv[4], 0, INT64_MAX, &seed))) {
        fprintf(stderr, "usage: psplib FOLDER CSV SCHEDULES [SEED] (whole numbers; SCHEDULES from 1)\n");
        return BK_USAGE;
    }
    bench_set set = {
        .folder = argv[1], .arena = bk_arena_new(), .schedules = schedules, .seed = (uint64_t)seed};
    bk_status status = read_table(&set, argv[2], &error);
    if (status == BK_OK)
        status = solve_all(&set, &error);
    if (status != BK_OK)
        fprintf(stderr, "psplib: %s\n", error.text);
    bk_list_free(&set.instances);
    bk_arena_free(set.arena);
    return (int)status;
}
