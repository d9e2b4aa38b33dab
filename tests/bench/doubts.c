// How often the doubts about measures are right: how many sheets of people who were measured well get one, how many slips
// are caught. The people are drawn from the survey's means, deviations and correlations (NATICK/TR-15/007, 2012), each
// measure from one or two others by the published correlation (where none is published one is set, from memory), so not
// by the model that the doubts use; with heavy tails, with errors of reading the tape, and now and then a badly taken one.
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/trade/doubts.h"

enum { PEOPLE = 4000, ON_A_SHEET = 25, NONE = -1 };

// A measure as it is drawn: with `r` to its first parent, `r_second` to its second.
typedef struct branch {
    const char *name;
    double men_mean, men_deviation, women_mean, women_deviation; // mm
    int first;
    double r;
    int second;
    double r_second;
    double natural; // mm, from the navel to the natural waist
    double growth;
} branch;

static const branch tree[] = {
    /* 0 */ {"height", 1756.21, 68.55, 1628.47, 64.20, NONE, 0, NONE, 0, 0, 1},
    /* 1 */ {"hip girth", 1019.52, 76.68, 1021.25, 75.89, 0, .37, NONE, 0, 0, 1.35},
    /* 2 */ {"waist girth", 940.58, 111.71, 860.91, 99.93, 1, .84, 0, .23, -50, 1.18},
    /* 3 */ {"bust girth", 1058.71, 87.44, 946.86, 82.70, 2, .865, 1, .79, 0, 1.29},
    /* 4 */ {"neck girth", 397.65, 25.78, 329.80, 19.22, 3, .76, NONE, 0, 0, .61},
    /* 5 */ {"neck base girth", 434.60, 25.67, 371.16, 19.66, 4, .90, NONE, 0, 0, .7},
    /* 6 */ {"shoulder width", 415.68, 19.16, 365.35, 18.30, 0, .55, 3, .42, 0, .91},
    /* 7 */ {"shoulder length", 149.78, 10.51, 135.41, 10.27, 6, .55, NONE, 0, 0, .95},
    /* 8 */ {"back width", 430.85, 35.25, 373.36, 29.83, 3, .65, 6, .35, 0, 1},
    /* 9 */ {"arm length", 593.12, 30.82, 543.55, 29.44, 0, .80, NONE, 0, 0, 1.1},
    /* 10 */ {"nape to wrist", 895.85, 40.22, 806.69, 37.91, 9, .88, 0, .785, 0, 1.1},
    /* 11 */ {"inside leg", 845.93, 46.50, 782.32, 44.64, 0, .855, NONE, 0, 0, 1.24},
    /* 12 */ {"nape to waist", 477.61, 27.73, 425.40, 26.39, 0, .52, 11, .22, -30, 1.1},
    /* 13 */ {"neck to waist front", 387.64, 29.35, 355.14, 23.95, 12, .6, NONE, 0, -20, 1.1},
    /* 14 */ {"waist to floor", 1056.49, 52.15, 980.15, 50.02, 11, .92, 0, .90, 32, 1.15},
    /* 15 */ {"outside leg", 1056.49, 52.15, 980.15, 50.02, 14, .97, NONE, 0, 0, 1.15},
    /* 16 */ {"trunk girth", 1664.80, 89.53, 1559.41, 75.99, 0, .66, 3, .72, 0, 1.1},
    /* 17 */ {"crotch length", 622.34, 46.68, 620.84, 42.43, 16, .65, 2, .6, 60, 1.2},
    /* 18 */ {"thigh girth", 625.14, 58.45, 616.15, 55.81, 1, .941, NONE, 0, 0, 1.5},
    /* 19 */ {"knee girth", 409.29, 31.87, 400.71, 35.16, 18, .75, NONE, 0, 0, 1.2},
    /* 20 */ {"calf girth", 392.26, 29.71, 373.26, 28.52, 18, .785, NONE, 0, 0, 1.2},
    /* 21 */ {"ankle girth", 229.34, 14.65, 215.74, 14.89, 20, .79, NONE, 0, 0, .8},
    /* 22 */ {"upper arm girth", 358.14, 34.62, 305.58, 30.76, 3, .766, NONE, 0, 0, 1.28},
    /* 23 */ {"wrist girth", 175.92, 8.96, 154.79, 7.83, 22, .60, 0, .42, 0, .55},
    /* 24 */ {"hand girth", 212.28, 10.24, 186.55, 8.82, 23, .72, 0, .42, 0, .73},
    /* 25 */ {"head girth", 574.37, 16.05, 561.12, 19.36, 0, .33, 4, .35, 0, .24},
    /* 26 */ {"foot length", 271.18, 13.10, 246.29, 12.44, 0, .72, NONE, 0, 0, .9},
    /* 27 */ {"chest girth", 1058.71, 87.44, 946.86, 82.70, 3, .95, NONE, 0, 0, 1.29},
    /* 28 */ {"foot girth", 250, 12, 227, 11, 26, .7, NONE, 0, 0, .85},
};

enum { BRANCHES = sizeof tree / sizeof *tree };

typedef struct kind_of_people {
    const char *words;
    bool child, natural_waist;
    double own_landmarks; // by how much a measure is taken in another way, as a part of it (deviation)
} kind_of_people;

static const kind_of_people kinds[] = {
    {"as surveyed", false, false, 0},
    {"natural waist", false, true, 0},
    {"landmarks of their own", false, true, .02},
    {"children of 105 to 150 cm", true, true, 0},
};

// ----------------------------------------------------------------------------------------------------- chance

static uint64_t seed = 20270302;

// SplitMix64, in the public domain.
static uint64_t next_number(void)
{
    uint64_t z = seed += UINT64_C(0x9e3779b97f4a7c15);
    z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
    return z ^ (z >> 31);
}

static double part(void)
{
    return ((double)(next_number() >> 11) + .5) * 0x1p-53;
}

static double bell(void)
{
    return sqrt(-2 * log(part())) * cos(2 * acos(-1) * part());
}

// A bell with heavy tails (Student's t with seven degrees of freedom), of deviation 1.
static double heavy_bell(void)
{
    enum { DEGREES = 7 };
    double sum = 0, top = bell();
    for (int i = 0; i < DEGREES; i++) {
        double one = bell();
        sum += one * one;
    }
    return top / sqrt(sum / DEGREES) * sqrt((DEGREES - 2.0) / DEGREES);
}

// ----------------------------------------------------------------------------------------------------- people

// What a measure has of its own when `r` to a first and `s` to a second parent, themselves correlated by `t`, are given.
static double drawn(const double *bodies, const branch *at)
{
    double first = at->first == NONE ? 0 : bodies[at->first],
           second = at->second == NONE ? 0 : bodies[at->second];
    double t = 0;
    if (at->second != NONE) {
        const branch *parent = &tree[at->first], *other = &tree[at->second];
        t = parent->first == at->second    ? parent->r
            : parent->second == at->second ? parent->r_second
            : other->first == at->first    ? other->r
                                           : .3;
    }
    double a = (at->r - at->r_second * t) / (1 - t * t), b = (at->r_second - at->r * t) / (1 - t * t);
    double explained = a * a + b * b + 2 * a * b * t;
    return a * first + b * second + sqrt(fmax(1 - explained, .02)) * heavy_bell();
}

// The error of one reading, mm: half a centimetre and 0.3 %; one in forty is taken three times as badly.
static double reading_error(double value)
{
    double deviation = 3 + value * .005;
    return bell() * (part() < 1. / 40 ? 3 * deviation : deviation);
}

static void draw_person(const kind_of_people *kind, double values[BRANCHES])
{
    double bodies[BRANCHES];
    bool man = part() < .5;
    double growth = kind->child ? log((105 + 45 * part()) / 162.8) : 0;
    for (int i = 0; i < BRANCHES; i++) {
        const branch *at = &tree[i];
        double mean = man && !kind->child ? at->men_mean : at->women_mean;
        double deviation = man && !kind->child ? at->men_deviation : at->women_deviation;
        bodies[i] = drawn(bodies, at);
        mean += kind->natural_waist ? at->natural : 0;
        double spread = sqrt(log(1 + deviation * deviation / mean / mean));
        double grown = growth * at->growth * (kind->child ? 1 + .05 * bell() : 1);
        values[i] = mean * exp(spread * bodies[i] - spread * spread / 2 + grown);
        values[i] *= 1 + kind->own_landmarks * bell();
        values[i] += reading_error(values[i]);
    }
}

// A sheet of 25 of the measures, as they are read off: millimetres, or eighths of an inch.
static bk_taken_sheet read_off(const double values[BRANCHES], bk_unit unit, bk_taken items[BRANCHES])
{
    size_t count = 0;
    for (int i = 0; i < BRANCHES; i++) {
        double step = unit == BK_CM ? 1 : 25.4 / 8;
        double um = round(values[i] / step) * step * BK_MICROMETRES_PER_MM;
        int left = BRANCHES - i;
        if (part() < (double)(ON_A_SHEET - count) / left) {
            items[count++] = (bk_taken){tree[i].name, (bk_length)floor(um + .5)};
        }
    }
    return (bk_taken_sheet){.items = items, .count = count};
}

// ------------------------------------------------------------------------------------------------------ slips

// One measure read in the other unit: the number is the same, the unit is not.
static bk_length other_unit(bk_length value, bk_unit unit)
{
    if (unit == BK_CM) {
        bk_length tenths = (value * 10 + BK_MICROMETRES_PER_INCH / 2) / BK_MICROMETRES_PER_INCH;
        return tenths * BK_MICROMETRES_PER_MM;
    }
    bk_length tenths = (value + BK_MICROMETRES_PER_MM / 2) / BK_MICROMETRES_PER_MM;
    return tenths * BK_MICROMETRES_PER_INCH / 10;
}

// The digits as typed, `92.5` or the whole inches of `36 3/8`, with the pair at `at` swapped; the value when there is none.
static bk_length swap(bk_length value, bk_unit unit, size_t at)
{
    char digits[BK_AMOUNT_ROOM];
    bk_length place = unit == BK_CM ? BK_MICROMETRES_PER_MM : BK_MICROMETRES_PER_INCH;
    snprintf(digits, sizeof digits, "%lld", (long long)(value / place));
    if (at + 1 >= strlen(digits)) {
        return value;
    }
    char first = digits[at];
    digits[at] = digits[at + 1];
    digits[at + 1] = first;
    return strtoll(digits, NULL, 10) * place + value % place;
}

typedef struct tally {
    long tried, caught;
} tally;

static void try_change(bk_taken_sheet sheet, bk_taken *items, size_t item, bk_length changed, bk_unit unit,
                       bk_arena *arena, tally *count)
{
    bk_length value = items[item].value;
    items[item].value = changed;
    count->tried++;
    count->caught += bk_doubt_of_value(&sheet, item, NULL, unit, arena) != NULL;
    items[item].value = value;
    bk_arena_reset(arena);
}

static void try_swap(bk_taken_sheet sheet, bk_taken *items, size_t item, bk_unit unit, bk_arena *arena,
                     tally *count)
{
    enum { PAIRS = 3 };
    size_t first = next_number() % PAIRS;
    for (size_t i = 0; i < PAIRS; i++) {
        bk_length value = items[item].value, swapped = swap(value, unit, (first + i) % PAIRS);
        if (llabs(swapped - value) * 10 > value) {
            try_change(sheet, items, item, swapped, unit, arena, count);
            return;
        }
    }
}

static void print_rate(const char *words, tally count)
{
    printf("    %-28s %7ld of %7ld: %6.2f in a hundred\n", words, count.caught, count.tried,
           100. * (double)count.caught / (double)(count.tried ? count.tried : 1));
}

static void run(const kind_of_people *kind, bk_unit unit, long *by_measure)
{
    bk_arena *arena = bk_arena_new();
    tally sheets = {0}, units = {0}, swaps = {0};
    for (int i = 0; i < PEOPLE; i++) {
        double values[BRANCHES];
        bk_taken items[BRANCHES];
        draw_person(kind, values);
        bk_taken_sheet sheet = read_off(values, unit, items);
        bk_doubts doubts = bk_doubts_of_sheet(&sheet, NULL, unit, arena);
        sheets.tried++;
        sheets.caught += doubts.count > 0;
        for (size_t j = 0; j < doubts.count; j++) {
            for (int k = 0; k < BRANCHES; k++) {
                by_measure[k] += !strcmp(tree[k].name, items[doubts.items[j].item].measure);
            }
        }
        bk_arena_reset(arena);
        size_t item = next_number() % sheet.count;
        try_change(sheet, items, item, other_unit(items[item].value, unit), unit, arena, &units);
        try_swap(sheet, items, next_number() % sheet.count, unit, arena, &swaps);
    }
    printf("%s, %s\n", kind->words, unit == BK_CM ? "centimetres" : "inches");
    print_rate("sheets with a doubt", sheets);
    print_rate("unit slips caught", units);
    print_rate("swapped digits caught", swaps);
    bk_arena_free(arena);
}

int main(int argc, char **argv)
{
    long by_measure[BRANCHES] = {0};
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        run(&kinds[i], BK_CM, by_measure);
        run(&kinds[i], BK_INCH, by_measure);
    }
    for (int i = 0; argc > 1 && !strcmp(argv[1], "--measures") && i < BRANCHES; i++) {
        printf("%-24s %ld\n", tree[i].name, by_measure[i]);
    }
    return EXIT_SUCCESS;
}
