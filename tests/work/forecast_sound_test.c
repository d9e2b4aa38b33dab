// Random workrooms: whatever is planned can be done so. Nobody does two things at once or outside the hours (but at calls), nothing is
// begun before what it comes after has ended and rested, before its material or its piece is there, and no performer is in two places.

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/plan/chance.h"
#include "work/planned.h"

enum {
    WORKROOMS = 12,
    COSTUMES = 5,
    PIECES_EACH = 3,
    STEPS_EACH = 6,
    PIECES = COSTUMES * PIECES_EACH,
    STEPS = PIECES * STEPS_EACH
};

static const int kinds[STEPS_EACH] = {BK_DRAFT, BK_CUT, BK_MACHINE, BK_FIT, BK_HAND, BK_PRESS};

typedef struct random_show {
    bk_chance chance;
    bk_costume costumes[COSTUMES];
    bk_piece pieces[PIECES];
    bk_step steps[STEPS];
    bk_fitting fittings[PIECES];
    bk_need needs[PIECES];
    size_t fitting_count, need_count;
} random_show;

static uint32_t below(random_show *show, uint32_t count)
{
    return bk_chance_below(&show->chance, count);
}

static void fill_steps(random_show *show, size_t piece)
{
    const char *name = show->pieces[piece].name;
    for (size_t i = 0; i < STEPS_EACH; i++) {
        bk_step *step = &show->steps[piece * STEPS_EACH + i];
        *step = (bk_step)STEP(name, "key", kinds[i], 5 * (1 + below(show, 40)), NULL);
        step->key = bk_arena_print(texts(), "s%zu", i);
        step->hands = below(show, 3) == 0 && kinds[i] == BK_MACHINE ? 2 : BK_NOT_KNOWN;
        step->rest_minutes = below(show, 6) == 0 ? 60 * below(show, 24) : BK_NOT_KNOWN;
        step->can_wait = i + 1 == STEPS_EACH && below(show, 3) == 0;
        if (i > 0)
            step->after = bk_arena_print(texts(), "s%zu", i - 1 - below(show, i > 1 ? 2 : 1));
        if (i == 0 && piece > 0 && below(show, 4) == 0)
            step->after = bk_arena_print(texts(), "%s/s1", show->pieces[below(show, (uint32_t)piece)].name);
    }
}

static void fill_piece(random_show *show, size_t at)
{
    bk_piece *piece = &show->pieces[at];
    *piece = (bk_piece)PIECE("piece", "costume", BK_STOCK);
    piece->name = bk_arena_print(texts(), "P%zu", at);
    piece->title = piece->name;
    piece->costumes = show->costumes[at / PIECES_EACH].number;
    if (below(show, 6) == 0) {
        piece->out_with = "Tomas Lind";
        piece->back_by = DAY(3, 2) + (bk_day)below(show, 8);
    }
    fill_steps(show, at);
    if (below(show, 3) == 0) {
        bk_fitting *fitting = &show->fittings[show->fitting_count++];
        *fitting = (bk_fitting)FITTING(piece->name, "s3", DAY(3, 2) + (bk_day)below(show, 9));
        fitting->booked_at.time = below(show, 4) == 0 ? BK_NO_TIME : 60 * (9 + (bk_minute)below(show, 11));
    }
    if (below(show, 3) == 0)
        show->needs[show->need_count++] = (bk_need)NEED(piece->name, "s1", "wool", TENTHS(10));
}

static void put_people(random_show *show, bk_folder *folder)
{
    bk_person casual = maker("Bo");
    casual.skills = below(show, 2) ? "cut;machine;hand" : "machine;press;fit";
    ROWS(folder, people, bk_person, maker("Ada"), casual,
         helper("Cy", "hand;press", 1 + (int)below(show, 4), "17:00-21:30"),
         helper("Di", ALL_SKILLS, 5, "10:00-12:00;12:30-16:00"));
    ROWS(folder, performers, bk_performer, PERFORMER("Ines Varga", NULL, NULL),
         PERFORMER("Tomas Lind", NULL, NULL));
    ROWS(folder, roles, bk_role, ROLE("R0", "Ines Varga", NULL), ROLE("R1", "Tomas Lind", NULL));
    ROWS(folder, away, bk_away, AWAY("Ada", DAY(3, 5), DAY(3, 5), NULL),
         AWAY("Ines Varga", DAY(3, 3), DAY(3, 4), NULL));
    ROWS(folder, materials, bk_material, MATERIAL("wool", BK_METRE, TENTHS(20)));
    ROWS(folder, orders, bk_order, ORDER("wool", TENTHS(200), DAY(2, 10), DAY(3, 8), BK_NO_DAY));
}

static bk_folder *random_folder(random_show *show, uint64_t seed)
{
    bk_folder *folder = bare_show("The Mill", DAY(3, 26));
    *show = (random_show){.chance = bk_chance_from(seed)};
    put_people(show, folder);
    for (size_t i = 0; i < COSTUMES; i++) {
        show->costumes[i] = (bk_costume)COSTUME("n", "R0", BK_NO_DAY);
        show->costumes[i].number = bk_arena_print(texts(), "%zuA", i + 1);
        show->costumes[i].role = i % 2 ? "R1" : "R0";
        show->costumes[i].due = DAY(3, 6) + (bk_day)below(show, 16);
    }
    for (size_t i = 0; i < PIECES; i++)
        fill_piece(show, i);
    put_rows(folder->arena, &folder->costumes, show->costumes, sizeof *show->costumes, COSTUMES);
    put_rows(folder->arena, &folder->pieces, show->pieces, sizeof *show->pieces, PIECES);
    put_rows(folder->arena, &folder->steps, show->steps, sizeof *show->steps, STEPS);
    put_rows(folder->arena, &folder->fittings, show->fittings, sizeof *show->fittings, show->fitting_count);
    put_rows(folder->arena, &folder->needs, show->needs, sizeof *show->needs, show->need_count);
    return folder;
}

// ------------------------------------------------------------------------------------------------------- checking

static int64_t minute_of(bk_moment moment)
{
    return (int64_t)moment.day * BK_DAY_MINUTES + moment.time;
}

static void check_stretches(const bk_forecast *forecast)
{
    int64_t *worked = calloc(forecast->step_count, sizeof *worked);
    for (size_t i = 0; i < forecast->stretch_count; i++) {
        const bk_planned_stretch *at = &forecast->stretches[i];
        const bk_planned_step *step = &forecast->steps[at->step];
        ck_assert_int_lt(at->from, at->to);
        worked[at->step] += at->to - at->from;
        if (i > 0 && at[-1].day == at->day && at[-1].person == at->person && !step->booked)
            ck_assert_msg(at[-1].to <= at->from || forecast->steps[at[-1].step].booked,
                          "two things at once: %s", stretches_told(forecast));
        bk_moment_minute midnight = (bk_moment_minute)at->day * BK_DAY_MINUTES;
        const bk_calendar *calendar = forecast->people[at->person].calendar;
        if (!step->booked)
            ck_assert_int_eq(bk_calendar_between(calendar, midnight + at->from, midnight + at->to),
                             at->to - at->from);
        ck_assert_uint_ne(forecast->people[at->person].skills & 1U << step->kind, 0);
    }
    for (size_t i = 0; i < forecast->step_count; i++) {
        const bk_planned_step *step = &forecast->steps[i];
        ck_assert_int_ne(step->begin.day, BK_NO_DAY);
        ck_assert_int_eq((int64_t)step->person_count, step->hands);
        ck_assert_int_eq(worked[i], step->minutes * step->hands);
    }
    free(worked);
}

static void check_order(const bk_forecast *forecast, const random_show *show)
{
    for (size_t i = 0; i < STEPS; i++) {
        const bk_step *row = &show->steps[i];
        const bk_planned_step *step = planned_step(forecast, row->piece, row->key);
        const bk_piece *piece = &show->pieces[i / STEPS_EACH];
        ck_assert_int_ge(step->begin.day, piece->out_with ? piece->back_by : DAY(3, 2));
        if (!row->after)
            continue;
        const char *slash = strchr(row->after, '/');
        const char *of =
            slash ? bk_arena_bytes(texts(), row->after, (size_t)(slash - row->after)) : row->piece;
        const char *key = slash ? slash + 1 : row->after;
        size_t before = 0;
        while (strcmp(show->steps[before].piece, of) || strcmp(show->steps[before].key, key))
            before++;
        int64_t rest =
            show->steps[before].rest_minutes == BK_NOT_KNOWN ? 0 : show->steps[before].rest_minutes;
        ck_assert_int_ge(minute_of(step->begin), minute_of(planned_step(forecast, of, key)->end) + rest);
    }
}

/// No performer is fitted in two places, or while away.
static void check_performers(const bk_forecast *forecast)
{
    for (size_t i = 0; i < forecast->step_count; i++) {
        const bk_planned_step *one = &forecast->steps[i];
        if (one->kind != BK_FIT)
            continue;
        if (!strcmp(one->role, "R0"))
            ck_assert(one->begin.day < DAY(3, 3) || one->begin.day > DAY(3, 4));
        ck_assert_int_eq(minute_of(one->end) - minute_of(one->begin), one->minutes);
        for (size_t j = 0; j < i; j++) {
            const bk_planned_step *other = &forecast->steps[j];
            if (other->kind == BK_FIT && !strcmp(one->role, other->role))
                ck_assert(minute_of(one->end) <= minute_of(other->begin) ||
                          minute_of(other->end) <= minute_of(one->begin));
        }
    }
}

static void check_finishes(const bk_forecast *forecast)
{
    for (size_t c = 0; c < forecast->costume_count; c++) {
        bk_day last = BK_NO_DAY;
        for (size_t i = 0; i < forecast->step_count; i++)
            if (forecast->steps[i].costume_id == forecast->costumes[c].id && !forecast->steps[i].can_wait &&
                forecast->steps[i].end.day > last)
                last = forecast->steps[i].end.day;
        // A piece that is out may come back later than all that is done to the others.
        ck_assert_int_ge(forecast->costumes[c].days.finish, last);
        ck_assert_int_eq(forecast->costumes[c]
                             .days.days_in_hand<0, forecast->costumes[c].days.finish>
                                 forecast->costumes[c]
                             .due &&
                         forecast->costumes[c].days.days_in_hand != 0);
    }
}

START_TEST(whatever_is_planned_can_be_done_so)
{
    static random_show show;
    bk_forecast *forecast = forecast_of(random_folder(&show, (uint64_t)_i + 1), 40);
    ck_assert_uint_eq(forecast->step_count, STEPS);
    check_stretches(forecast);
    check_order(forecast, &show);
    check_performers(forecast);
    check_finishes(forecast);
    bk_forecast *again = forecast_again(40);
    ck_assert_str_eq(stretches_told(again), stretches_told(forecast));
    bk_forecast_free(again);
    bk_forecast_free(forecast);
}
END_TEST

BK_TEST_MAIN_TIMES("forecast_sound", WORKROOMS, whatever_is_planned_can_be_done_so)
