#include "bodkin/trade/doubts.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/trade/doubts_model.h"
#include "bodkin/trade/doubts_typed.h"

/// How often a wrong value is which slip, against each other (a guess; a swap has that much for each pair of digits).
/// A value can be wrong in any other way, too.
static const double slip_parts[BK_SLIPS] = {
    [BK_SLIP_INCHES] = .8,      [BK_SLIP_CENTIMETRES] = .8, [BK_SLIP_POINT_OUT] = .4,
    [BK_SLIP_POINT_EARLY] = .2, [BK_SLIP_SWAPPED] = .3,
};
static const double anything_part = .1;

/// By how much (logarithm) a slip must explain a value better than the body does. Set with tests/bench/doubts.c, so that
/// fewer than one sheet in a hundred gets a doubt.
static const double enough = 3.2;

static const char *const slip_words[BK_SLIPS] = {
    [BK_SLIP_INCHES] = "inches taken for centimetres", [BK_SLIP_CENTIMETRES] = "centimetres taken for inches",
    [BK_SLIP_POINT_OUT] = "a decimal point left out",  [BK_SLIP_POINT_EARLY] = "a decimal point too early",
    [BK_SLIP_SWAPPED] = "two digits swapped",
};

enum { NO_PLACE = BK_BODY_MOST };

/// What is looked at: the measures that bodies are known by, each once, in any order. Those doubted are moved behind the
/// others as they are found, so that these do not mislead about the rest.
typedef struct looked_at {
    const bk_taken_sheet *sheet, *before;
    bk_unit unit;
    bk_arena *arena;
    size_t count;               ///< of those not doubted
    size_t items[BK_BODY_MOST]; ///< index in the sheet
    const bk_body_measure *rows[BK_BODY_MOST];
    double logs[BK_BODY_MOST];
    bk_expected expected[BK_BODY_MOST];
    double scores[BK_BODY_MOST];   ///< how much better (logarithm) it is explained by a slip
    bk_meant likely[BK_BODY_MOST]; ///< the likeliest slip
    bool slipped[BK_BODY_MOST];    ///< whether that explains it better than chance
} looked_at;

static double logarithm(bk_length value)
{
    return log((double)(value > 1 ? value : 1) / BK_MICROMETRES_PER_MM);
}

static bk_length value_at(const looked_at *look, size_t place)
{
    return look->sheet->items[look->items[place]].value;
}

static const char *length_words(const looked_at *look, bk_length value)
{
    char text[BK_AMOUNT_ROOM];
    return bk_arena_text(look->arena, bk_typed_write(value, look->unit, text));
}

static size_t place_of(const looked_at *look, const char *measure)
{
    size_t place = 0;
    while (place < look->count && strcmp(look->rows[place]->name, measure) != 0) {
        place++;
    }
    return place < look->count ? place : NO_PLACE;
}

static void gather(looked_at *look)
{
    for (size_t i = 0; i < look->sheet->count && look->count < BK_BODY_MOST; i++) {
        const bk_taken *taken = &look->sheet->items[i];
        const bk_body_measure *row = bk_body_measure_find(taken->measure);
        if (row && taken->value != BK_NO_AMOUNT && place_of(look, row->name) == NO_PLACE) {
            look->items[look->count] = i;
            look->rows[look->count] = row;
            look->logs[look->count++] = logarithm(taken->value);
        }
    }
}

static void change_places(looked_at *look, size_t left, size_t right)
{
    size_t item = look->items[left];
    const bk_body_measure *row = look->rows[left];
    double value = look->logs[left];
    look->items[left] = look->items[right];
    look->rows[left] = look->rows[right];
    look->logs[left] = look->logs[right];
    look->items[right] = item;
    look->rows[right] = row;
    look->logs[right] = value;
}

// --------------------------------------------------------------------------------------------------- the slips

/// Adds up how well each slip, or anything else, explains the value; finds the likeliest slip.
static double explained(looked_at *look, size_t place)
{
    bk_meant meant[BK_MEANT_MOST];
    size_t count = bk_meant_by(value_at(look, place), look->unit, meant);
    double sum = anything_part, best = anything_part;
    look->slipped[place] = false;
    for (size_t i = 0; i < count; i++) {
        double density = bk_expected_density(&look->expected[place], logarithm(meant[i].value), false);
        double part = slip_parts[meant[i].slip] * exp(density);
        sum += part;
        if (part > best) {
            best = part;
            look->likely[place] = meant[i];
            look->slipped[place] = true;
        }
    }
    return log(sum);
}

static void weigh(looked_at *look)
{
    bk_bodies_expect(look->rows, look->logs, look->count, look->expected);
    for (size_t i = 0; i < look->count; i++) {
        look->scores[i] = explained(look, i);
    }
}

static double score(const looked_at *look, size_t place, bool patient)
{
    return look->scores[place] - bk_expected_density(&look->expected[place], look->logs[place], patient);
}

static bool impossible(const looked_at *look, size_t place)
{
    double mm = exp(look->logs[place]);
    return mm < look->rows[place]->least || mm > look->rows[place]->most;
}

static bool unlikely(const looked_at *look, size_t place)
{
    return impossible(look, place) || score(look, place, true) > enough;
}

/// The measure that is likeliest wrong, or NO_PLACE where none is likely enough.
static size_t worst(const looked_at *look)
{
    size_t found = NO_PLACE;
    double most = 0;
    for (size_t i = 0; i < look->count; i++) {
        double here = score(look, i, false);
        if (unlikely(look, i) && (found == NO_PLACE || here > most)) {
            found = i;
            most = here;
        }
    }
    return found;
}

// ----------------------------------------------------------------------------------------------- the relations

/// What no body has: the first over the second is more than that. From the survey's ratios, far beyond the 99th
/// percentile (neck over head .69, wrist over hand .83, thigh over hip .61, knee over thigh .65, calf over thigh .63,
/// ankle over calf .59, wrist over upper arm .49, inside leg over height .48, arm over height .34).
static const struct relation {
    const char *measure, *other;
    double most;
} relations[] = {
    {"neck girth", "head girth", .95},       {"wrist girth", "hand girth", 1.05},
    {"thigh girth", "hip girth", .8},        {"knee girth", "thigh girth", 1},
    {"calf girth", "thigh girth", 1},        {"ankle girth", "calf girth", .9},
    {"wrist girth", "upper arm girth", .9},  {"inside leg", "outside leg", .95},
    {"inside leg", "waist to floor", .95},   {"inside leg", "height", .6},
    {"outside leg", "height", .75},          {"waist to floor", "height", .75},
    {"nape to floor", "height", .95},        {"arm length", "height", .44},
    {"arm length", "nape to wrist", .9},     {"nape to waist", "height", .37},
    {"foot length", "height", .21},          {"neck girth", "neck base girth", 1.1},
    {"under-bust girth", "bust girth", 1.1},
};

/// How far the waist may be above both chest and hip. In the survey one man in a hundred has it above the chest by 1.4 %,
/// one above the hip by 6 %.
static const double waist_most = 1.12;

/// Tells the waist that is larger than chest and hip by far.
static const char *big_waist(const looked_at *look, size_t waist)
{
    size_t chest = place_of(look, "bust girth"), hip = place_of(look, "hip girth");
    chest = chest == NO_PLACE ? place_of(look, "chest girth") : chest;
    if (waist == NO_PLACE || chest == NO_PLACE || hip == NO_PLACE ||
        look->logs[waist] - fmax(look->logs[chest], look->logs[hip]) < log(waist_most)) {
        return NULL;
    }
    return bk_arena_print(look->arena,
                          "%s is larger than %s (%s) and hip girth (%s) by far; measure again to be sure.",
                          length_words(look, value_at(look, waist)), look->rows[chest]->name,
                          length_words(look, value_at(look, chest)), length_words(look, value_at(look, hip)));
}

/// The relation that the measure at `place` breaks, in a sentence, or NULL. `*other` is whom it breaks it with.
static const char *broken(const looked_at *look, size_t place, size_t *other)
{
    const char *name = look->rows[place]->name;
    for (size_t i = 0; i < sizeof relations / sizeof *relations; i++) {
        bool first = !strcmp(relations[i].measure, name);
        if (!first && strcmp(relations[i].other, name) != 0) {
            continue;
        }
        *other = place_of(look, first ? relations[i].other : relations[i].measure);
        if (*other == NO_PLACE) {
            continue;
        }
        double ratio = exp(look->logs[place] - look->logs[*other]);
        if ((first ? ratio : 1 / ratio) > relations[i].most) {
            return bk_arena_print(look->arena, "%s goes with no body whose %s is %s; measure both again.",
                                  length_words(look, value_at(look, place)), look->rows[*other]->name,
                                  length_words(look, value_at(look, *other)));
        }
    }
    return NULL;
}

/// The measure that breaks a relation, of the two the one that is likelier wrong; or NO_PLACE.
static size_t breaker(const looked_at *look)
{
    size_t waist = place_of(look, "waist girth"), other = NO_PLACE;
    if (big_waist(look, waist)) {
        return waist;
    }
    for (size_t i = 0; i < look->count; i++) {
        if (broken(look, i, &other)) {
            return score(look, other, false) > score(look, i, false) ? other : i;
        }
    }
    return NO_PLACE;
}

// --------------------------------------------------------------------------------------------- the last sheet

/// How far a measure may be from the last sheet's: part of the value, and more for each year between. Common practice: a
/// seamstress asks again where a girth has changed by an eighth or a length by a sixteenth. Children grow.
static const double girth_change = .125, length_change = .0625, yearly_change = .04, child_growth = .07;
enum { DAYS_A_YEAR = 365, LEAST_CHANGE = 25 * BK_MICROMETRES_PER_MM, CHILDS_HEIGHT = 1550 };

static bk_length value_before(const looked_at *look, const char *measure)
{
    for (size_t i = 0; look->before && i < look->before->count; i++) {
        if (!strcmp(look->before->items[i].measure, measure)) {
            return look->before->items[i].value;
        }
    }
    return BK_NO_AMOUNT;
}

static bool may_grow(const looked_at *look)
{
    bk_length height = value_before(look, "height");
    return height != BK_NO_AMOUNT && height < CHILDS_HEIGHT * BK_MICROMETRES_PER_MM;
}

static double change_allowed(const looked_at *look, const char *measure, bool grown)
{
    double years = fabs((double)look->sheet->on - (double)look->before->on) / DAYS_A_YEAR;
    bool girth = strstr(measure, "girth") && strcmp(measure, "head girth") != 0;
    double allowed = girth ? girth_change + years * yearly_change : length_change;
    return grown && may_grow(look) ? allowed + years * child_growth : allowed;
}

/// What is said of a value that is far from the last sheet's; NULL when it is not.
static const char *far_from_before(const looked_at *look, size_t item)
{
    const bk_taken *taken = &look->sheet->items[item];
    bk_length before = value_before(look, taken->measure);
    if (taken->value == BK_NO_AMOUNT || before == BK_NO_AMOUNT || before <= 0) {
        return NULL;
    }
    bk_length change = taken->value - before, size = change < 0 ? -change : change;
    double allowed = change_allowed(look, taken->measure, change > 0);
    if (size < LEAST_CHANGE || (double)size < allowed * (double)before) {
        return NULL;
    }
    return bk_arena_print(look->arena, "%s is %s %s than on the last sheet (%s); measure again to be sure.",
                          length_words(look, taken->value), length_words(look, size),
                          change > 0 ? "more" : "less", length_words(look, before));
}

// --------------------------------------------------------------------------------------------------- sentences

/// From where to where a measure is expected, to half a unit: "68 to 76.5 cm".
static const char *range_words(const looked_at *look, size_t place)
{
    double from, to;
    bk_length half = (look->unit == BK_INCH ? BK_MICROMETRES_PER_INCH : BK_MICROMETRES_PER_CM) / 2;
    bk_expected_range(&look->expected[place], &from, &to);
    const char *least = length_words(look, llround(from * BK_MICROMETRES_PER_MM / (double)half) * half);
    const char *most = length_words(look, llround(to * BK_MICROMETRES_PER_MM / (double)half) * half);
    return bk_arena_print(look->arena, "%.*s to %s", (int)(strrchr(least, ' ') - least), least, most);
}

/// What was meant, as it would have been typed: to the millimetre.
static const char *meant_words(const looked_at *look, size_t place)
{
    bk_length value = look->likely[place].value;
    bk_length step = look->unit == BK_CM ? BK_MICROMETRES_PER_MM : 1;
    return length_words(look, (value + step / 2) / step * step);
}

static const char *relation_words(const looked_at *look, size_t place)
{
    size_t other = NO_PLACE;
    bool waist = !strcmp(look->rows[place]->name, "waist girth");
    const char *sentence = waist ? big_waist(look, place) : NULL;
    return sentence ? sentence : broken(look, place, &other);
}

/// What slip it looks like. What was meant is told to go with the others only where it lies within what is told of them.
static const char *slip_sentence(const looked_at *look, size_t place, const char *others)
{
    double from, to, meant = (double)look->likely[place].value / BK_MICROMETRES_PER_MM;
    const char *shown = length_words(look, value_at(look, place));
    const char *slip = slip_words[look->likely[place].slip];
    bk_expected_range(&look->expected[place], &from, &to);
    if (meant < from || meant > to) {
        return bk_arena_print(look->arena, "%s looks like %s: perhaps %s was meant.", shown, slip,
                              meant_words(look, place));
    }
    return bk_arena_print(look->arena, "%s looks like %s: %s would %s (about %s).", shown, slip,
                          meant_words(look, place), others, range_words(look, place));
}

/// The doubt about one measure in a sentence, by the others alone; NULL where by these it is none after all.
static const char *says(const looked_at *look, size_t place)
{
    double from, to;
    const char *shown = length_words(look, value_at(look, place)), *range = range_words(look, place);
    const char *others = look->count > 1 ? "go with the other measures" : "be usual";
    const char *relation = relation_words(look, place);
    bk_expected_range(&look->expected[place], &from, &to);
    if (!relation && !unlikely(look, place)) {
        return NULL;
    }
    if (look->slipped[place]) {
        return slip_sentence(look, place, others);
    }
    return relation ? relation
                    : bk_arena_print(look->arena,
                                     "%s is far %s than would %s (about %s); measure again to be sure.",
                                     shown, exp(look->logs[place]) > to ? "more" : "less", others, range);
}

static int sheet_order(const void *left, const void *right)
{
    const bk_doubt *a = left, *b = right;
    return a->item < b->item ? -1 : a->item > b->item;
}

static void add_doubt(bk_doubts *doubts, size_t item, const char *sentence)
{
    doubts->items[doubts->count++] = (bk_doubt){item, sentence};
}

static bool doubted(const bk_doubts *doubts, size_t item)
{
    size_t i = 0;
    while (i < doubts->count && doubts->items[i].item != item) {
        i++;
    }
    return i < doubts->count;
}

/// Moves what is doubtful behind the rest; returns how many there were in all.
static size_t set_apart(looked_at *look)
{
    size_t all = look->count;
    while (look->count) {
        weigh(look);
        size_t place = worst(look);
        place = place == NO_PLACE ? breaker(look) : place;
        if (place == NO_PLACE) {
            break;
        }
        change_places(look, place, --look->count);
    }
    return all;
}

/// Looks at each of those set apart among the rest alone, and says what is wrong with it.
static void tell_apart(looked_at *look, size_t all, bk_doubts *doubts)
{
    size_t sound = look->count;
    for (size_t i = sound; i < all; i++) {
        change_places(look, sound, i);
        look->count = sound + 1;
        weigh(look);
        const char *sentence = says(look, sound);
        if (sentence) {
            add_doubt(doubts, look->items[sound], sentence);
        }
    }
}

bk_doubts bk_doubts_of_sheet(const bk_taken_sheet *sheet, const bk_taken_sheet *before, bk_unit unit,
                             bk_arena *arena)
{
    looked_at look = {.sheet = sheet, .before = before, .unit = unit, .arena = arena};
    bk_doubts doubts = {bk_arena_clear(arena, sheet->count, sizeof *doubts.items), 0};
    gather(&look);
    size_t all = set_apart(&look);
    tell_apart(&look, all, &doubts);
    for (size_t i = 0; before && i < sheet->count; i++) {
        const char *sentence = doubted(&doubts, i) ? NULL : far_from_before(&look, i);
        if (sentence) {
            add_doubt(&doubts, i, sentence);
        }
    }
    qsort(doubts.items, doubts.count, sizeof *doubts.items, sheet_order);
    return doubts;
}

const char *bk_doubt_of_value(const bk_taken_sheet *sheet, size_t item, const bk_taken_sheet *before,
                              bk_unit unit, bk_arena *arena)
{
    bk_doubts doubts = bk_doubts_of_sheet(sheet, before, unit, arena);
    for (size_t i = 0; i < doubts.count; i++) {
        if (doubts.items[i].item == item) {
            return doubts.items[i].says;
        }
    }
    return NULL;
}

// ---------------------------------------------------------------------------------------------------- the unit

bk_unit bk_unit_typed(const bk_taken_sheet *sheet, bk_unit usual)
{
    const bk_length hundredths = BK_MICROMETRES_PER_INCH / 100;
    size_t inches = 0, centimetres = 0;
    char text[BK_AMOUNT_ROOM];
    for (size_t i = 0; i < sheet->count; i++) {
        bk_length value = sheet->items[i].value;
        bool sixteenths = strstr(bk_length_write(value, BK_INCH, text), " in") != NULL;
        centimetres += value % BK_MICROMETRES_PER_MM == 0;
        inches += sixteenths || value % hundredths == 0;
    }
    return inches == centimetres ? usual : inches > centimetres ? BK_INCH : BK_CM;
}
