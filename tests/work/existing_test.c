#include "bodkin/work/existing.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/productions.h"
#include "work/show.h"

// All names of a kind in "The Salt Road", with commas between them; of `told` what is told beside.
static const char *existing(bk_existing_kind kind, const char *of, const char *about, const char **told)
{
    bk_store *store = open_store();
    bk_folder *folder = salt_road();
    bk_production production;
    bk_existing_list list = {0};
    take_in(store, folder, true, NULL);
    bk_folder_free(folder);
    MUST(bk_production_choose(store, NULL, today(), texts(), &production, &trouble));
    MUST(bk_existing_read(store, production.id, kind, of, texts(), &list, &trouble));
    const char *all = "";
    for (size_t i = 0; i < list.count; i++) {
        all = bk_arena_print(texts(), "%s%s%s", all, i ? ", " : "", list.items[i].name);
        if (bk_same_text(list.items[i].name, about))
            *told = list.items[i].tells;
    }
    bk_store_close(store);
    return all;
}

#define ASSERT_EXISTING(kind, of, names) ck_assert_str_eq(existing(kind, of, NULL, NULL), names)
#define ASSERT_TOLD(kind, of, name, words) \
    do { \
        const char *told = NULL; \
        existing(kind, of, name, &told); \
        ck_assert_str_eq(told, words); \
    } while (0)

START_TEST(performers_are_told_by_what_they_play)
{
    ASSERT_EXISTING(BK_EXISTING_PERFORMERS, NULL, "Tomas Lind, Ines Varga, Zoë Ngô");
}
END_TEST

START_TEST(who_bears_two_names_stands_there_once)
{
    ASSERT_EXISTING(BK_EXISTING_EVERYBODY, NULL, "Zoë Ngô, Ada Pell, Tomas Lind, Ines Varga");
}
END_TEST

START_TEST(the_show_is_told_by_role_and_title)
{
    ASSERT_TOLD(BK_EXISTING_PERFORMERS, NULL, "Ines Varga", "plays The Miller");
    ASSERT_TOLD(BK_EXISTING_ROLES, NULL, "The Miller", "played by Ines Varga");
    ASSERT_TOLD(BK_EXISTING_ROLES, NULL, "The Boy", "not cast");
    ASSERT_TOLD(BK_EXISTING_COSTUMES, NULL, "2A", "The Boy, Costume 2A");
    ASSERT_TOLD(BK_EXISTING_PIECES, NULL, "P1", "Cloak");
}
END_TEST

START_TEST(costumes_and_pieces_stand_in_their_order)
{
    ASSERT_EXISTING(BK_EXISTING_COSTUMES, NULL, "10A, 2B, 2A");
}
END_TEST

START_TEST(steps_are_those_of_their_piece)
{
    ASSERT_EXISTING(BK_EXISTING_STEPS, "P2", "sew, cut, fit");
}
END_TEST

START_TEST(fittings_are_steps_of_kind_fit)
{
    ASSERT_EXISTING(BK_EXISTING_FIT_STEPS, "P2", "fit");
}
END_TEST

START_TEST(what_comes_before_may_be_of_another_piece)
{
    ASSERT_EXISTING(BK_EXISTING_EARLIER, "P2", "sew, cut, fit, P1/press");
}
END_TEST

START_TEST(a_step_is_told_by_title_kind_and_minutes)
{
    ASSERT_TOLD(BK_EXISTING_STEPS, "P2", "cut", "Cut it (cut, 1 h 15)");
}
END_TEST

START_TEST(materials_are_told_by_what_lies_on_the_shelf)
{
    ASSERT_TOLD(BK_EXISTING_MATERIALS, NULL, "hooks", "never counted");
    ASSERT_TOLD(BK_EXISTING_MATERIALS, NULL, "wool", "1 m on the shelf");
}
END_TEST

START_TEST(texts_used_before_stand_once_in_natural_order)
{
    bk_store *store = open_store();
    bk_folder *folder = bare_show("Mill and Moon", DAY(4, 16));
    bk_existing_list list = {0};
    ROWS(folder, roles, bk_role, ROLE("Miller", NULL, NULL));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "Miller", BK_NO_DAY));
    ROWS(folder, pieces, bk_piece, PIECE("1A-1", "1A", BK_MAKE), PIECE("1A-2", "1A", BK_MAKE),
         PIECE("1A-3", "1A", BK_MAKE), PIECE("1A-4", "1A", BK_MAKE));
    bk_piece *pieces = folder->pieces.items;
    pieces[0].place = "rail 10";
    pieces[1].place = pieces[3].place = "rail 2";
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    bk_production production;
    MUST(bk_production_choose(store, NULL, today(), texts(), &production, &trouble));
    MUST(bk_existing_read(store, production.id, BK_EXISTING_PLACES, NULL, texts(), &list, &trouble));
    ck_assert_uint_eq(list.count, 2);
    ck_assert_str_eq(list.items[0].name, "rail 2");
    ck_assert_str_eq(list.items[1].name, "rail 10");
    bk_store_close(store);
}
END_TEST

START_TEST(suppliers_are_those_of_materials_orders_and_pieces)
{
    ASSERT_EXISTING(BK_EXISTING_SUPPLIERS, NULL, "the mill, the town theatre");
}
END_TEST

START_TEST(performers_of_other_productions_come_after_the_company)
{
    bk_store *store = open_store();
    bk_folder *folder = bare_show("Mill and Moon", DAY(4, 16));
    bk_existing_list list = {0};
    bk_production production;
    ROWS(folder, performers, bk_performer, PERFORMER("Abel Aron", NULL, NULL));
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    folder = salt_road();
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    MUST(bk_production_choose(store, "The Salt Road", today(), texts(), &production, &trouble));
    MUST(bk_existing_read(store, production.id, BK_EXISTING_PERFORMERS, NULL, texts(), &list, &trouble));
    ck_assert_uint_eq(list.count, 4);
    ck_assert_str_eq(list.items[0].name, "Tomas Lind");
    ck_assert_str_eq(list.items[3].name, "Abel Aron");
    bk_store_close(store);
}
END_TEST

START_TEST(steps_of_an_order_of_work_are_its_own)
{
    ASSERT_EXISTING(BK_EXISTING_WORK_STEPS, "Smock", "sew, cut");
}
END_TEST

START_TEST(measures_are_those_of_the_trade)
{
    const char *told = NULL;
    const char *all = existing(BK_EXISTING_MEASURES, NULL, "waist girth", &told);
    ck_assert_ptr_nonnull(strstr(all, "nape to waist"));
    ck_assert_ptr_nonnull(told);
}
END_TEST

START_TEST(without_a_production_only_the_workroom_is_known)
{
    bk_store *store = open_store();
    bk_existing_list list = {0};
    for (int kind = 0; kind < BK_EXISTING_KINDS; kind++)
        MUST(bk_existing_read(store, 0, (bk_existing_kind)kind, NULL, texts(), &list, &trouble));
    MUST(bk_existing_read(store, 0, BK_EXISTING_ROLES, NULL, texts(), &list, &trouble));
    ck_assert_uint_eq(list.count, 0);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("what exists", performers_are_told_by_what_they_play, who_bears_two_names_stands_there_once,
             the_show_is_told_by_role_and_title, costumes_and_pieces_stand_in_their_order,
             steps_are_those_of_their_piece, fittings_are_steps_of_kind_fit,
             what_comes_before_may_be_of_another_piece, a_step_is_told_by_title_kind_and_minutes,
             materials_are_told_by_what_lies_on_the_shelf, texts_used_before_stand_once_in_natural_order,
             suppliers_are_those_of_materials_orders_and_pieces,
             performers_of_other_productions_come_after_the_company, steps_of_an_order_of_work_are_its_own,
             measures_are_those_of_the_trade, without_a_production_only_the_workroom_is_known)
