#include "bodkin/ui/plan_days.h"

#include "support/testing.h"

// A plan of a few days, made by hand: from Tue 2 Mar 2027 on, Ida Monday to Friday 10:00 to 13:00, Mo on Tuesdays 14:00 to 17:00.

enum { IDA, MO, PEOPLE };
enum { CUT, MOUNT, HEM, LINE, STEPS };

static bk_day day_of(int month_day)
{
    return bk_day_of(2027, 3, month_day);
}

static const bk_planned_step steps[STEPS] = {
    [CUT] = {.id = 1, .piece_id = 1, .piece = "4A-2", .key = "cut"},
    [MOUNT] = {.id = 2, .piece_id = 1, .piece = "4A-2", .key = "mount"},
    [HEM] = {.id = 3, .piece_id = 2, .piece = "3B-1", .key = "hem"},
    [LINE] = {.id = 4, .piece_id = 1, .piece = "4A-2", .key = "line"},
};

enum { TEN = 600, ELEVEN = 660, TWELVE = 720, ONE = 780, TWO = 840, FIVE = 1020 };

static bk_planned_stretch stretches[8];

typedef struct plan {
    bk_arena *arena;
    bk_planned_person people[PEOPLE];
    bk_production_forecast production;
    bk_forecast forecast;
} plan;

static const bk_calendar *calendar_of(bool every_weekday, bk_stretch stretch, bk_arena *arena)
{
    bk_hours hours = {.from = BK_NO_DAY, .until = BK_NO_DAY};
    for (int day = 0; day < 5; day++)
        if (every_weekday || day == 1) {
            hours.week.stretches[day][0] = stretch;
            hours.week.counts[day] = 1;
        }
    return bk_calendar_new(&hours, arena);
}

static void begin(plan *made)
{
    *made = (plan){.arena = bk_arena_new(), .production = {.opens = day_of(19)}};
    made->people[IDA] = (bk_planned_person){
        .name = "Ida", .calendar = calendar_of(true, (bk_stretch){TEN, ONE}, made->arena)};
    made->people[MO] = (bk_planned_person){
        .name = "Mo", .calendar = calendar_of(false, (bk_stretch){TWO, FIVE}, made->arena)};
    size_t count = 0;
    stretches[count++] = (bk_planned_stretch){day_of(2), IDA, TEN, ELEVEN, CUT, false};
    stretches[count++] = (bk_planned_stretch){day_of(2), IDA, ELEVEN, TWELVE, MOUNT, false};
    stretches[count++] = (bk_planned_stretch){day_of(2), IDA, TWELVE, ONE, CUT, true};
    stretches[count++] = (bk_planned_stretch){day_of(2), MO, TWO, TWO + 30, HEM, false};
    stretches[count++] = (bk_planned_stretch){day_of(3), IDA, TEN, TWELVE, LINE, false};
    made->forecast = (bk_forecast){.today = day_of(2),
                                   .steps = steps,
                                   .step_count = STEPS,
                                   .people = made->people,
                                   .person_count = PEOPLE,
                                   .stretches = stretches,
                                   .stretch_count = count,
                                   .productions = &made->production,
                                   .production_count = 1};
}

START_TEST(a_share_has_the_hours_of_the_day_and_what_is_planned_of_them)
{
    plan made;
    begin(&made);
    bk_plan_share share = bk_plan_share_of(&made.forecast, IDA, day_of(2));
    ck_assert_int_eq(share.hours, 180);
    ck_assert_int_eq(share.planned, 180);
    ck_assert_uint_eq(share.count, 3);
    share = bk_plan_share_of(&made.forecast, MO, day_of(2));
    ck_assert_int_eq(share.planned, 30);
    share = bk_plan_share_of(&made.forecast, MO, day_of(3));
    ck_assert_int_eq(share.hours, 0);
    ck_assert_uint_eq(share.count, 0);
    bk_arena_free(made.arena);
}
END_TEST

START_TEST(how_full_a_day_is_is_said_in_words)
{
    static const struct {
        int64_t hours, planned;
        const char *room, *load;
    } cases[] = {
        {180, 180, "full", "3 h, full"},
        {180, 0, "3 h", "3 h free"},
        {180, 150, "30 min", "30 min free of 3 h"},
        {0, 0, NULL, NULL},
    };
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        const bk_plan_share share = {.hours = cases[i].hours, .planned = cases[i].planned};
        ck_assert_pstr_eq(bk_plan_free(&share, arena), cases[i].room);
        ck_assert_pstr_eq(bk_plan_load(&share, arena), cases[i].load);
    }
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_cell_names_each_step_once_and_a_piece_once_for_steps_in_a_row)
{
    plan made;
    begin(&made);
    bk_plan_share share = bk_plan_share_of(&made.forecast, IDA, day_of(2));
    ck_assert_str_eq(bk_plan_steps(&made.forecast, &share, 40, made.arena), "4A-2 cut, mount");
    share = bk_plan_share_of(&made.forecast, MO, day_of(3));
    ck_assert_ptr_null(bk_plan_steps(&made.forecast, &share, 40, made.arena));
    bk_arena_free(made.arena);
}
END_TEST

START_TEST(a_narrow_cell_counts_the_steps_it_has_no_room_for)
{
    plan made;
    begin(&made);
    stretches[2].step = HEM;
    bk_plan_share share = bk_plan_share_of(&made.forecast, IDA, day_of(2));
    ck_assert_str_eq(bk_plan_steps(&made.forecast, &share, 25, made.arena), "4A-2 cut, mount, 3B-1 hem");
    ck_assert_str_eq(bk_plan_steps(&made.forecast, &share, 24, made.arena), "4A-2 cut, mount +1");
    ck_assert_str_eq(bk_plan_steps(&made.forecast, &share, 17, made.arena), "4A-2 cut +2");
    ck_assert_str_eq(bk_plan_steps(&made.forecast, &share, 4, made.arena), "4A-2 cut +2");
    bk_arena_free(made.arena);
}
END_TEST

START_TEST(a_day_bears_each_of_its_names_once)
{
    const bk_plan_date dates[] = {{day_of(16), "tech"}, {day_of(16), "dress"}, {day_of(16), "tech"}};
    bk_arena *arena = bk_arena_new();
    ck_assert_str_eq(bk_plan_date_words(dates, 3, day_of(16), arena), "tech, dress");
    ck_assert_ptr_null(bk_plan_date_words(dates, 3, day_of(17), arena));
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_weekend_is_two_lines_and_a_longer_gap_is_one)
{
    plan made;
    begin(&made);
    const bk_plan_day *days = NULL;
    size_t count = bk_plan_days(&made.forecast, BK_PLAN_ALL, NULL, 0, made.arena, &days);
    ck_assert_uint_eq(count, 18);
    ck_assert_int_eq(days[0].from, day_of(2));
    ck_assert(!days[4].works);
    ck_assert_int_eq(days[count - 1].to, day_of(19));
    count = bk_plan_days(&made.forecast, MO, NULL, 0, made.arena, &days);
    ck_assert_uint_eq(count, 6);
    ck_assert_int_eq(days[1].from, day_of(3));
    ck_assert_int_eq(days[1].to, day_of(8));
    ck_assert(!days[1].works);
    ck_assert(days[2].works);
    ck_assert_int_eq(days[5].to, day_of(19));
    bk_arena_free(made.arena);
}
END_TEST

START_TEST(a_day_with_a_name_is_a_line_of_its_own)
{
    plan made;
    begin(&made);
    const bk_plan_date dates[] = {{day_of(6), "fittings"}};
    const bk_plan_day *days = NULL;
    size_t count = bk_plan_days(&made.forecast, MO, dates, 1, made.arena, &days);
    ck_assert_uint_eq(count, 9);
    ck_assert_int_eq(days[1].to, day_of(5));
    ck_assert_int_eq(days[2].from, day_of(6));
    ck_assert_int_eq(days[2].to, day_of(6));
    ck_assert_int_eq(days[3].to, day_of(7));
    bk_arena_free(made.arena);
}
END_TEST

START_TEST(an_opening_in_ages_does_not_make_a_line_for_each_day)
{
    plan made;
    begin(&made);
    made.production.opens = bk_day_of(9000, 1, 1);
    const bk_plan_day *days = NULL;
    size_t count = bk_plan_days(&made.forecast, BK_PLAN_ALL, NULL, 0, made.arena, &days);
    ck_assert_uint_le(count, BK_PLAN_MOST_DAYS);
    made.production.opens = BK_NO_DAY;
    made.forecast.stretch_count = 0;
    ck_assert_uint_eq(bk_plan_days(&made.forecast, BK_PLAN_ALL, NULL, 0, made.arena, &days), 1);
    bk_arena_free(made.arena);
}
END_TEST

START_TEST(as_many_people_stand_beside_each_other_as_there_is_room_for)
{
    static const struct {
        size_t width, people, shown;
    } cases[] = {{56, 6, 2}, {56, 1, 1}, {116, 6, 4}, {10, 6, 1}, {400, 6, BK_PLAN_MOST_PEOPLE}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        bk_plan_columns columns = bk_plan_columns_of(cases[i].width, cases[i].people);
        size_t used =
            columns.people * (columns.steps + BK_PLAN_INNER_GAP + BK_PLAN_FREE_COLUMNS + BK_PLAN_GAP) -
            BK_PLAN_GAP;
        ck_assert_uint_eq(columns.people, cases[i].shown);
        ck_assert(used <= cases[i].width || columns.people == 1);
    }
}
END_TEST

BK_TEST_MAIN("days of the plan", a_share_has_the_hours_of_the_day_and_what_is_planned_of_them,
             how_full_a_day_is_is_said_in_words,
             a_cell_names_each_step_once_and_a_piece_once_for_steps_in_a_row,
             a_narrow_cell_counts_the_steps_it_has_no_room_for, a_day_bears_each_of_its_names_once,
             a_weekend_is_two_lines_and_a_longer_gap_is_one, a_day_with_a_name_is_a_line_of_its_own,
             an_opening_in_ages_does_not_make_a_line_for_each_day,
             as_many_people_stand_beside_each_other_as_there_is_room_for)
