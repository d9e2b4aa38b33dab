#include "bodkin/plan/hands.h"

#include "plan/scene.h"
#include "support/testing.h"

// The form of the scenes stands in scene.h. Today is Tuesday 2027-03-09. When is the first machinist there?
static const struct {
    const char *says;
    const char *scene;
    bk_day day; // from today, or BK_NEVER
} rows[] = {
    {"nobody never", "", BK_NEVER},
    {"somebody with another skill never", "person hand tue", BK_NEVER},
    {"somebody without hours never", "person machine never", BK_NEVER},
    {"today", "person machine mon,tue", 0},
    {"on the next of their weekdays", "person machine mon,thu", 2},
    {"not before they begin", "person machine tue,wed from 2", 7},
    {"having begun long ago, today", "person machine tue from -400", 0},
    {"not after they leave", "person machine mon until 5", BK_NEVER},
    {"on their last day", "person machine mon until 6", 6},
    {"not while away", "person machine tue away 0 0", 7},
    {"not while away over and over", "person machine tue away 12 15 away -3 2 away 3 11", 21},
    {"an absence inside a longer one changes nothing", "person machine mon,tue,wed away -1 9 away 2 3", 13},
    {"an absence that is over changes nothing", "person machine tue away -9 -1", 0},
    {"the earlier of two", "person machine fri | person cut,machine wed", 1},
    {"whichever is listed first", "person cut,machine wed | person machine fri", 1},
    {"away for good, never by their last day", "person machine tue until 90 away 0 3000000", BK_NEVER},
};

START_TEST(the_first_day_on_which_somebody_has_hours)
{
    static wait_scene scene;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        bk_arena *arena = bk_arena_new();
        bk_day first[BK_KINDS];
        scene_read(&scene, rows[i].scene, arena);
        bk_hands_first(scene.people, scene.rows.person_count, scene_today(), first);
        bk_day expected = rows[i].day == BK_NEVER ? BK_NEVER : scene_today() + rows[i].day;
        ck_assert_msg(first[BK_MACHINE] == expected, "%s: %d, expected %d", rows[i].says,
                      first[BK_MACHINE] - scene_today(), rows[i].day);
        ck_assert_int_eq(first[BK_DYE], BK_NEVER);
        bk_arena_free(arena);
    }
}
END_TEST

BK_TEST_MAIN("hands", the_first_day_on_which_somebody_has_hours)
