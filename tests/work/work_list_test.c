#include "bodkin/work/work_list.h"

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "work/show.h"

// "Kirtle": cut 60 minutes (40 to 90), hem by hand 30, no more said of it.
static bk_store *with_a_kirtle(void)
{
    bk_store *store = open_store();
    bk_folder *folder = bare_show("The Paper Lantern", DAY(3, 19));
    bk_work_step cut = WORK_STEP("Kirtle", "cut", BK_CUT, 60, NULL);
    cut.quickest = 40;
    cut.longest = 90;
    ROWS(folder, works, bk_work, {.name = "Kirtle", .note = "wool"}, {.name = "Nothing yet"});
    ROWS(folder, work_steps, bk_work_step, cut, WORK_STEP("Kirtle", "hem", BK_HAND, 30, "cut"));
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    return store;
}

static const bk_work_line *line_of(const bk_work_list *list, const char *name)
{
    for (size_t i = 0; i < list->count; i++)
        if (bk_same_text(list->items[i].record.name, name))
            return &list->items[i];
    ck_abort_msg("%s is not in the list", name);
}

START_TEST(an_order_of_work_adds_up_its_steps)
{
    bk_store *store = with_a_kirtle();
    bk_work_list list = {0};
    MUST(bk_work_list_read(store, texts(), &list, &trouble));
    const bk_work_line *kirtle = line_of(&list, "Kirtle");
    ck_assert_uint_eq(kirtle->steps, 2);
    ck_assert_int_eq(kirtle->sum.usual, 90);
    ck_assert_int_eq(kirtle->sum.quickest, 70);
    ck_assert_int_eq(kirtle->sum.longest, 120);
    ck_assert_int_eq(kirtle->sum.hand, 30);
    ck_assert_uint_eq(line_of(&list, "Nothing yet")->steps, 0);
    bk_store_close(store);
}
END_TEST

START_TEST(one_is_read_with_its_own_steps_alone)
{
    bk_store *store = with_a_kirtle();
    bk_work_list list = {0};
    bk_work_whole whole = {0};
    bool found = false;
    MUST(bk_work_list_read(store, texts(), &list, &trouble));
    int64_t id = line_of(&list, "Kirtle")->record.id;
    MUST(bk_work_whole_read(store, id, texts(), &whole, &found, &trouble));
    ck_assert(found);
    ck_assert_str_eq(whole.line.record.note, "wool");
    ck_assert_uint_eq(whole.line.steps, 2);
    ck_assert_str_eq(whole.steps[0].key, "cut");
    ck_assert_str_eq(whole.steps[1].key, "hem");
    MUST(bk_work_whole_read(store, id + 1000, texts(), &whole, &found, &trouble));
    ck_assert(!found);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("list of orders of work", an_order_of_work_adds_up_its_steps,
             one_is_read_with_its_own_steps_alone)
