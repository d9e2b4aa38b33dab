#include "bodkin/plan/spread.h"

#include <stdbool.h>
#include <stddef.h>

// Real powers and exponentials are made here from additions, multiplications and divisions, which IEEE 754
// rounds alike everywhere; the functions of a C library may differ in their last digit, and so would the
// plans that rest on them.

enum {
    THOUSAND = 1000,
    PERT_SHAPE = 4,  // weight of the usual one in the mean; alpha + beta is 2 more
    PERT_PARTS = 6,  // (a + 4m + b)/6
    SHARE_BITS = 32, // a share is so many bits of a fraction
};

// ------------------------------------------------------------------------------------------------------ estimates

// A part of `minutes` in thousandths, rounded half up.
static int64_t thousandths(int64_t minutes, int64_t part)
{
    return minutes / THOUSAND * part + (minutes % THOUSAND * part + THOUSAND / 2) / THOUSAND;
}

bk_estimate bk_estimate_complete(int64_t quickest, int64_t usual, int64_t longest)
{
    bk_estimate estimate = {quickest, usual < 0 ? 0 : usual, longest};
    if (quickest == INT64_MIN)
        estimate.quickest = thousandths(estimate.usual, BK_SPREAD_QUICKEST);
    if (longest == INT64_MIN)
        estimate.longest = thousandths(estimate.usual, BK_SPREAD_LONGEST);
    if (estimate.quickest < 0)
        estimate.quickest = 0;
    if (estimate.quickest > estimate.usual)
        estimate.quickest = estimate.usual;
    if (estimate.longest < estimate.usual)
        estimate.longest = estimate.usual;
    return estimate;
}

double bk_estimate_mean(bk_estimate estimate)
{
    return ((double)estimate.quickest + PERT_SHAPE * (double)estimate.usual + (double)estimate.longest) /
           PERT_PARTS;
}

double bk_estimate_variance(bk_estimate estimate)
{
    double deviation = ((double)estimate.longest - (double)estimate.quickest) / PERT_PARTS;
    return deviation * deviation;
}

// ----------------------------------------------------------------------------------------------------- exponential

// e^x by its series, after halving x until it is small; squared again as often.
static double exponential(double x)
{
    static const double parts[] = {1.0 / 9, 1.0 / 8, 1.0 / 7, 1.0 / 6, 1.0 / 5, 1.0 / 4, 1.0 / 3, 1.0 / 2, 1};
    const double small = 0.0625;
    int halvings = 0;
    for (; x > small || x < -small; halvings++)
        x /= 2;
    double power = 1;
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++)
        power = 1 + power * x * parts[i];
    for (; halvings > 0; halvings--)
        power *= power;
    return power;
}

// 1/2 + density x (z + z^3/3 + z^5/(3 x 5) + ...), all terms of one sign (Marsaglia 2004, Evaluating the
// normal distribution, Journal of Statistical Software 11).
double bk_normal_below(double z)
{
    const double all = 8.5, turn = 2.506628274631000502; // beyond `all` less than 1e-16; sqrt(2 pi)
    if (z != z)
        return z;
    if (z > all)
        return 1;
    if (z < -all)
        return 0;
    double sum = z, before = 0, term = z;
    for (int odd = 3; sum != before; odd += 2) {
        before = sum;
        term = term * z * z / odd;
        sum += term;
    }
    return 0.5 + sum * exponential(-z * z / 2) / turn;
}

// ----------------------------------------------------------------------------------------------------- the table
//
// The inverse distribution is held from each end to the middle, in cells that halve towards the end: where it
// falls or rises like a root, so that an even table would be poor there, the cells are small.

enum {
    OCTAVES = 16,    // below 2^-(OCTAVES + 1) it is taken to be straight
    OCTAVE_BITS = 2, // of a share: the cells of one octave
    OCTAVE_CELLS = 1 << OCTAVE_BITS,
    NODES = OCTAVES * OCTAVE_CELLS + 1,
    FRACTION_BITS = SHARE_BITS - 1 - OCTAVE_BITS, // what is left of a share below its first bit and its cell
};

// The distance from an end, as a part of the whole width, at one share; and how much it grows over the cell
// above.
typedef struct quantile {
    double distance;
    double rise;
} quantile;

struct bk_spread {
    double quickest, longest, width;
    quantile from_quickest[NODES], from_longest[NODES];
};

// The beta distribution over u = ln(x/(1 - x)), where its density is e^(alpha u)/(1 + e^u)^(alpha + beta),
// with alpha + beta = 6: smooth, so that few points give it, and over even steps of u its powers are
// products.
typedef struct density {
    double alpha;
    double step;                // of u
    double odds, odds_growth;   // x/(1 - x) = e^u here, and from one step to the next
    double power, power_growth; // the same to the power alpha
    double here, slope, bend;   // the density and its first two derivatives
    double below;               // its integral up to here
} density;

static void density_reckon(density *at)
{
    double rest = 1 / (1 + at->odds); // 1 - x
    double cube = rest * rest * rest;
    double lean = at->alpha - PERT_PARTS * at->odds * rest;
    at->here = at->power * cube * cube;
    at->slope = at->here * lean;
    at->bend = at->here * (lean * lean - PERT_PARTS * at->odds * rest * rest);
}

// The integral from minus infinity to a point far below 0, by the series of (1 + e^u)^-6.
static double density_tail(double alpha, double odds, double power)
{
    return power * (1 / alpha - 6 * odds / (alpha + 1) + 21 * odds * odds / (alpha + 2));
}

static density density_at(double alpha, double u, double step)
{
    density at = {.alpha = alpha, .step = step};
    at.odds = exponential(u);
    at.odds_growth = exponential(step);
    at.power = exponential(alpha * u);
    at.power_growth = exponential(alpha * step);
    at.below = density_tail(alpha, at.odds, at.power);
    density_reckon(&at);
    return at;
}

// Goes on by one step; the integral over it from the values and both derivatives at its ends (error of the
// seventh order).
static void density_step(density *at)
{
    density before = *at;
    double step = at->step;
    at->odds *= at->odds_growth;
    at->power *= at->power_growth;
    density_reckon(at);
    at->below += step / 2 * (before.here + at->here) + step * step / 10 * (before.slope - at->slope) +
                 step * step * step / 120 * (before.bend + at->bend);
}

// The integral over all: even steps over a smooth density that dies away at both ends are exact (the error
// falls as e^(-2 pi^2/step)).
static double density_total(double alpha)
{
    enum { STEPS = 80 };
    const double end = 20, step = 2 * end / STEPS;
    density at = density_at(alpha, -end, step);
    double sum = at.here / 2, first = at.below;
    for (int i = 0; i < STEPS; i++) {
        at.odds *= at.odds_growth;
        at.power *= at.power_growth;
        density_reckon(&at);
        sum += at.here;
    }
    double beta = PERT_PARTS - alpha;
    return first + (sum - at.here / 2) * step +
           density_tail(beta, exponential(-end), exponential(-beta * end));
}

// Where in the step from `left` to `right`, from 0 to 1, the integral reaches `below`: the polynomial of the
// fifth degree through the integral, the density and its derivative at both ends, solved by Newton's method.
// `*here` gets the density there.
static double density_find(const density *left, const density *right, double below, double *here)
{
    enum { ROUNDS = 2 };
    double step = left->step, gain = right->below - left->below;
    double first = step * left->here, last = step * right->here;
    double bend = step * step * left->slope, end = step * step * right->slope;
    double two = bend / 2, three = 10 * gain - 6 * first - 4 * last - 1.5 * bend + 0.5 * end;
    double four = -15 * gain + 8 * first + 7 * last + 1.5 * bend - end;
    double five = 6 * gain - 3 * first - 3 * last - 0.5 * bend + 0.5 * end;
    double wanted = below - left->below, part = wanted / gain, slope = first;
    for (int i = 0; i <= ROUNDS; i++) {
        double value = part * (first + part * (two + part * (three + part * (four + part * five))));
        slope = first + part * (2 * two + part * (3 * three + part * (4 * four + part * 5 * five)));
        if (i < ROUNDS)
            part -= (value - wanted) / slope;
    }
    *here = slope / step;
    return part;
}

// The table from one end to the middle; the lowest node stands where the straight piece from the end begins.
static void fill_side(double alpha, double total, quantile nodes[NODES])
{
    const double lowest = -15, near = -6, step = 0.0625; // e^-15: less than the lowest share of any shape
    double begin = lowest / alpha < near ? lowest / alpha : near;
    density left = density_at(alpha, begin, step), right = left;
    double octave = 1.0 / ((uint64_t)1 << (OCTAVES + 1));
    for (int node = 0; node < NODES; node++) {
        int cell = node % OCTAVE_CELLS;
        if (node > 0 && cell == 0)
            octave *= 2;
        double below = octave * (1 + (double)cell / OCTAVE_CELLS) * total, here = 0;
        while (right.below <= below) {
            left = right;
            density_step(&right);
        }
        double part = density_find(&left, &right, below, &here);
        double odds = left.odds * exponential(part * step), rest = 1 / (1 + odds);
        nodes[node].distance = odds * rest;
        nodes[node].rise = odds * rest * rest * total / here * octave / OCTAVE_CELLS;
    }
}

static double within_minutes(int64_t minutes)
{
    return minutes < 0 ? 0 : minutes > INT32_MAX ? INT32_MAX : (double)minutes;
}

const bk_spread *bk_spread_new(bk_estimate estimate, bk_arena *arena)
{
    bk_spread *spread = bk_arena_clear(arena, 1, sizeof *spread);
    spread->quickest = within_minutes(estimate.quickest);
    spread->longest = within_minutes(estimate.longest);
    double usual = within_minutes(estimate.usual);
    spread->width = spread->longest - spread->quickest;
    if (spread->width <= 0)
        return spread;
    double alpha = 1 + PERT_SHAPE * (usual - spread->quickest) / spread->width;
    double total = density_total(alpha);
    fill_side(alpha, total, spread->from_quickest);
    fill_side(PERT_PARTS - alpha, total, spread->from_longest);
    return spread;
}

// The distance at a share of less than one half: the cubic through the two nodes of its cell with the slopes
// they have.
static double distance_at(const quantile nodes[NODES], uint32_t tail)
{
    const double straight = (double)((uint32_t)1 << (SHARE_BITS - OCTAVES - 1));
    if (tail < (uint32_t)straight)
        return nodes[0].distance * (tail / straight);
    int zeros = __builtin_clz(tail);
    uint32_t digits = tail << zeros; // the first bit is 1: which octave it is was told by the zeros
    uint32_t cell = digits >> FRACTION_BITS & (OCTAVE_CELLS - 1);
    double part =
        (double)(digits & (((uint32_t)1 << FRACTION_BITS) - 1)) / (double)((uint32_t)1 << FRACTION_BITS);
    const quantile *left = &nodes[(uint32_t)(OCTAVES - zeros) * OCTAVE_CELLS + cell], *right = left + 1;
    double rise =
        cell == OCTAVE_CELLS - 1 ? right->rise / 2 : right->rise; // the next octave's cells are twice as wide
    double gain = right->distance - left->distance;
    double two = 3 * gain - 2 * left->rise - rise, three = left->rise + rise - 2 * gain;
    return left->distance + part * (left->rise + part * (two + part * three));
}

int32_t bk_spread_at(const bk_spread *spread, uint32_t share)
{
    const double half = 0.5;
    if (spread->width <= 0)
        return (int32_t)spread->quickest;
    bool low = share <= UINT32_MAX / 2;
    double minutes = low ? spread->quickest + spread->width * distance_at(spread->from_quickest, share)
                         : spread->longest - spread->width * distance_at(spread->from_longest, ~share);
    return (int32_t)(minutes + half);
}
