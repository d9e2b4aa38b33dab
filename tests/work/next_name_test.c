#include "bodkin/work/next_name.h"

#include "bodkin/work/productions.h"
#include "work/show.h"

static const char *const roles[] = {"Miller", "Fox", "Crow", "Moon"};

enum { ROLES = sizeof roles / sizeof roles[0] };

// A rail with costumes 1A, 1C and 3A, a piece of the first, and steps of three kinds.
static bk_rail *rail_in(bk_store *store)
{
    bk_rail *rail = NULL;
    bk_production production;
    bk_folder *folder = bare_show("Mill and Moon", DAY(4, 16));
    ROWS(folder, roles, bk_role, ROLE("Miller", NULL, NULL), ROLE("Fox", NULL, NULL),
         ROLE("Crow", NULL, NULL), ROLE("Moon", NULL, NULL));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "Miller", BK_NO_DAY), COSTUME("1C", "Miller", BK_NO_DAY),
         COSTUME("3A", "Fox", BK_NO_DAY), COSTUME("Z", "Crow", BK_NO_DAY));
    ROWS(folder, pieces, bk_piece, PIECE("1A-1", "1A", BK_MAKE), PIECE("1A-4", "1A", BK_MAKE),
         PIECE("1AB-9", "1A", BK_MAKE), PIECE("3A-9223372036854775807", "3A", BK_MAKE),
         PIECE("3A- 9223372036854775807", "3A", BK_MAKE));
    ROWS(folder, steps, bk_step, STEP("1A-1", "a", BK_HAND, 90, NULL), STEP("1A-1", "b", BK_HAND, 20, NULL),
         STEP("1A-1", "c", BK_HAND, 30, NULL), STEP("1A-4", "a", BK_CUT, 45, NULL));
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    MUST(bk_production_choose(store, NULL, today(), texts(), &production, &trouble));
    MUST(bk_rail_read(store, production.id, today(), &rail, &trouble));
    return rail;
}

static const char *costume_of(const bk_rail *rail, const char *role)
{
    const char *number = bk_next_costume(rail, role, roles, ROLES, texts());
    return number ? number : "-";
}

START_TEST(a_role_goes_on_with_the_next_letter)
{
    bk_store *store = open_store();
    bk_rail *rail = rail_in(store);
    ck_assert_str_eq(costume_of(rail, "Miller"), "1D");
    ck_assert_str_eq(costume_of(rail, "Fox"), "3B");
    ck_assert_str_eq(costume_of(rail, ""), "-");
    bk_rail_free(rail);
    bk_store_close(store);
}
END_TEST

START_TEST(a_first_costume_takes_the_place_of_its_role_or_the_next_number_that_is_free)
{
    bk_store *store = open_store();
    bk_rail *rail = rail_in(store);
    ck_assert_str_eq(costume_of(rail, "Crow"), "4A"); // 3A is the Fox's
    ck_assert_str_eq(costume_of(rail, "Moon"), "4A");
    ck_assert_str_eq(costume_of(rail, "Nobody yet"), "5A");
    bk_rail_free(rail);
    bk_store_close(store);
}
END_TEST

START_TEST(a_piece_gets_the_number_behind_the_last_of_its_costume)
{
    bk_store *store = open_store();
    bk_rail *rail = rail_in(store);
    ck_assert_str_eq(bk_next_piece(rail, "1A", texts()), "1A-5");
    ck_assert_str_eq(bk_next_piece(rail, "3A", texts()), "3A-1");
    ck_assert_ptr_null(bk_next_piece(rail, "", texts()));
    bk_rail_free(rail);
    bk_store_close(store);
}
END_TEST

START_TEST(a_key_is_made_of_the_first_word_and_is_free)
{
    static const char *const taken[] = {"hem", "hem2", "cut"};
    ck_assert_str_eq(bk_next_key("Gather the skirt", taken, 3, texts()), "gather");
    ck_assert_str_eq(bk_next_key("Hem, by hand", taken, 3, texts()), "hem3");
    ck_assert_str_eq(bk_next_key("Überwendlich", taken, 3, texts()), "uberwend");
    ck_assert_ptr_null(bk_next_key(" - ", taken, 3, texts()));
}
END_TEST

START_TEST(usual_minutes_are_those_in_the_middle_of_three_or_more)
{
    bk_store *store = open_store();
    bk_rail *rail = rail_in(store);
    ck_assert_int_eq(bk_usual_minutes(rail, BK_HAND), 30);
    ck_assert_int_eq(bk_usual_minutes(rail, BK_CUT), BK_NOT_KNOWN);
    bk_rail_free(rail);
    bk_store_close(store);
}
END_TEST

BK_TEST_MAIN("next names", a_role_goes_on_with_the_next_letter,
             a_first_costume_takes_the_place_of_its_role_or_the_next_number_that_is_free,
             a_piece_gets_the_number_behind_the_last_of_its_costume,
             a_key_is_made_of_the_first_word_and_is_free,
             usual_minutes_are_those_in_the_middle_of_three_or_more)
