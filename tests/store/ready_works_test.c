// The orders of work that come with a new store. Their minutes are common practice, from memory: the sums are held against
// those that were written down with the lists.

#include <ctype.h>
#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/plan/network.h"
#include "bodkin/store/records_bench.h"
#include "bodkin/trade/measures.h"
#include "bodkin/trade/words.h"
#include "workroom.h"

enum { WORKS = 26, STEPS = 249 };

static const struct {
    const char *name;
    size_t steps;
    int64_t quickest, usual, longest; // minutes of all steps, from memory
} heads[WORKS] = {
    {"Lined bodice, set-in sleeve, light bones, hooks at back", 17, 630, 1075, 1875},
    {"Shirt, full cut (historical squares and gussets, or plain modern)", 11, 315, 525, 890},
    {"Trousers, fly and waistband", 14, 395, 690, 1130},
    {"Gathered skirt on a band", 8, 193, 327, 545},
    {"Circle skirt", 9, 188, 290, 490},
    {"Waistcoat, lined, welt pockets", 12, 330, 550, 925},
    {"Tailored coat (frock, tail or lounge)", 19, 1440, 2450, 4040},
    {"Cape, half circle, lined", 9, 275, 435, 725},
    {"Gown: bodice and skirt, mounted, boned, trimmed", 19, 1175, 2000, 3395},
    {"Day dress, unlined or half lined, zip", 12, 390, 650, 1075},
    {"Doublet", 17, 950, 1645, 2790},
    {"Corset or stays, busk or front lacing", 12, 515, 860, 1410},
    {"Petticoat with flounce", 7, 140, 235, 385},
    {"Hooped petticoat", 7, 225, 365, 620},
    {"Leotard, unitard or dance base", 7, 170, 270, 450},
    {"Apron", 4, 60, 97, 160},
    {"Tabard, robe or tunic, unlined (often a set)", 6, 120, 195, 325},
    {"Hat on a buckram or felt frame", 7, 240, 455, 810},
    {"Belly pad or body padding", 6, 200, 365, 640},
    {"Bought suit, altered", 8, 180, 320, 580},
    {"Bought tights, socks, gloves, base layer", 5, 68, 120, 225},
    {"Shoes or boots, bought or hired", 7, 82, 175, 380},
    {"From own stock, altered", 7, 80, 185, 450},
    {"Hired or borrowed costume", 6, 95, 185, 375},
    {"Quick-change rig on a finished garment", 7, 115, 225, 430},
    {"Breaking down (ageing) a finished piece", 6, 110, 250, 490},
};

/// All of a new store, and the steps of each order of work as `count` rows from `first` on.
typedef struct ready_works {
    bk_arena *arena;
    const bk_work *works;
    const bk_work_step *steps;
    size_t first[WORKS], count[WORKS];
} ready_works;

static ready_works read_ready_works(void)
{
    ready_works ready = {.arena = bk_arena_new()};
    bk_rows works, steps;
    bk_store *store = open_workroom();
    MUST(bk_store_read(store, BK_WORKS, 0, ready.arena, &works, &trouble));
    MUST(bk_store_read(store, BK_WORK_STEPS, 0, ready.arena, &steps, &trouble));
    bk_store_close(store);
    ck_assert_uint_eq(works.count, WORKS);
    ck_assert_uint_eq(steps.count, STEPS);
    ready.works = works.items;
    ready.steps = steps.items;
    for (size_t i = 0, next = 0; i < WORKS; i++) {
        ready.first[i] = next;
        while (next < STEPS && ready.steps[next].work_id == ready.works[i].id)
            next++;
        ready.count[i] = next - ready.first[i];
    }
    return ready;
}

/// The place of a key among the steps of an order of work, or their count.
static size_t find_key(const bk_work_step *steps, size_t count, const char *key, size_t length)
{
    size_t at = 0;
    while (at < count && (strlen(steps[at].key) != length || memcmp(steps[at].key, key, length) != 0))
        at++;
    return at;
}

/// Runs a check on each order of work.
static void each_work(void (*check)(const bk_work *work, const bk_work_step *steps, size_t count))
{
    ready_works ready = read_ready_works();
    for (size_t i = 0; i < WORKS; i++)
        check(&ready.works[i], &ready.steps[ready.first[i]], ready.count[i]);
    bk_arena_free(ready.arena);
}

START_TEST(a_new_store_has_twenty_six_orders_of_work_with_the_sums_that_were_written_down)
{
    ready_works ready = read_ready_works();
    for (size_t i = 0; i < WORKS; i++) {
        int64_t quickest = 0, usual = 0, longest = 0;
        for (size_t step = ready.first[i]; step < ready.first[i] + ready.count[i]; step++) {
            quickest += ready.steps[step].quickest;
            usual += ready.steps[step].minutes;
            longest += ready.steps[step].longest;
        }
        ck_assert_str_eq(ready.works[i].name, heads[i].name);
        ck_assert_int_eq(ready.works[i].ready, 1);
        ck_assert_uint_eq(ready.count[i], heads[i].steps);
        ck_assert_int_eq(quickest, heads[i].quickest);
        ck_assert_int_eq(usual, heads[i].usual);
        ck_assert_int_eq(longest, heads[i].longest);
    }
    bk_arena_free(ready.arena);
}
END_TEST

static void check_order(const bk_work *work, const bk_work_step *steps, size_t count)
{
    bk_arena *arena = bk_arena_new();
    BK_LIST(bk_network_link) links = {0};
    size_t *circle = NULL, length = 0;
    for (size_t i = 0; i < count; i++) {
        const char *rest = steps[i].after ? steps[i].after : "", *key = NULL;
        while (bk_list_item(&rest, &key, &length)) {
            size_t from = find_key(steps, count, key, length);
            ck_assert_msg(from < i, "%s: %s comes after a step that is not before it", work->name,
                          steps[i].key);
            bk_list_add(&links, ((bk_network_link){.from = from, .to = i}));
        }
        ck_assert_uint_eq(find_key(steps, count, steps[i].key, strlen(steps[i].key)), i);
    }
    ck_assert(!bk_network_circle(count, links.items, links.count, arena, &circle, &length));
    bk_list_free(&links);
    bk_arena_free(arena);
}

START_TEST(every_step_comes_after_steps_before_it_in_its_list_and_none_in_a_circle)
{
    each_work(check_order);
}
END_TEST

/// Whether a step that cannot wait comes after this one.
static bool is_followed(const bk_work_step *steps, size_t count, size_t step)
{
    for (size_t i = 0; i < count; i++) {
        const char *rest = steps[i].after ? steps[i].after : "", *key = NULL;
        size_t length = 0;
        while (bk_list_item(&rest, &key, &length))
            if (find_key(steps, count, key, length) == step && !steps[i].can_wait)
                return true;
    }
    return false;
}

static void check_ends(const bk_work *work, const bk_work_step *steps, size_t count)
{
    size_t ends = 0;
    ck_assert_ptr_null(steps[0].after);
    for (size_t i = 0; i < count; i++) {
        ck_assert_msg(i == 0 || steps[i].after, "%s: %s hangs on nothing", work->name, steps[i].key);
        ends += !steps[i].can_wait && !is_followed(steps, count, i);
    }
    ck_assert_msg(ends == 1, "%s has %zu last steps", work->name, ends);
}

START_TEST(every_order_of_work_begins_with_one_step_and_ends_in_one_but_for_what_can_wait)
{
    each_work(check_ends);
}
END_TEST

static void check_cells(const bk_work *work, const bk_work_step *steps, size_t count)
{
    ck_assert_ptr_null(strpbrk(work->name, ";/"));
    for (size_t i = 0; i < count; i++) {
        const bk_work_step *step = &steps[i];
        bool hand = step->kind == BK_HAND;
        ck_assert_msg(step->kind != BK_NO_WORD && step->quickest > 0 && step->quickest <= step->minutes &&
                          step->minutes <= step->longest,
                      "%s: the minutes of %s", work->name, step->key);
        ck_assert_msg(step->level == BK_LEVEL_MAKER || (hand && step->level == BK_LEVEL_SEWER),
                      "%s: the level of %s", work->name, step->key);
        ck_assert_msg(step->rest_minutes == BK_NOT_KNOWN || step->rest_minutes % 720 == 0,
                      "%s: the rest of %s", work->name, step->key);
        ck_assert_msg(!isupper((unsigned char)step->title[0]) && strcmp(step->title, step->key) != 0,
                      "%s: the title of %s", work->name, step->key);
        ck_assert_ptr_null(strpbrk(step->key, ";/"));
    }
}

START_TEST(minutes_levels_rests_and_titles_are_as_a_maker_would_write_them)
{
    each_work(check_cells);
}
END_TEST

static void check_measures(const bk_work *work, const bk_work_step *steps, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        const char *rest = steps[i].measures ? steps[i].measures : "", *item = NULL;
        size_t length = 0;
        char name[64];
        while (bk_list_item(&rest, &item, &length)) {
            ck_assert_uint_lt(length, sizeof name);
            memcpy(name, item, length);
            name[length] = '\0';
            ck_assert_msg(bk_measure_term_find(name) != NULL, "%s: %s lists \"%s\"", work->name, steps[i].key,
                          name);
        }
    }
}

START_TEST(the_measures_that_steps_list_are_known_by_name)
{
    each_work(check_measures);
}
END_TEST

START_TEST(trims_and_what_goes_back_after_closing_can_wait)
{
    ready_works ready = read_ready_works();
    const char *waiting = "";
    for (size_t i = 0; i < STEPS; i++)
        if (ready.steps[i].can_wait)
            waiting =
                bk_arena_print(ready.arena, "%s%s/%s\n", waiting, ready.steps[i].work, ready.steps[i].key);
    ck_assert_str_eq(waiting, "Gown: bodice and skirt, mounted, boned, trimmed/trim\nDoublet/trim\n"
                              "Hat on a buckram or felt frame/trim\nHired or borrowed costume/back\n");
    bk_arena_free(ready.arena);
}
END_TEST

BK_TEST_MAIN("ready works", a_new_store_has_twenty_six_orders_of_work_with_the_sums_that_were_written_down,
             every_step_comes_after_steps_before_it_in_its_list_and_none_in_a_circle,
             every_order_of_work_begins_with_one_step_and_ends_in_one_but_for_what_can_wait,
             minutes_levels_rests_and_titles_are_as_a_maker_would_write_them,
             the_measures_that_steps_list_are_known_by_name, trims_and_what_goes_back_after_closing_can_wait)
