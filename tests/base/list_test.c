#include "bodkin/base/list.h"

#include <limits.h>
#include <stdint.h>
#include <stdio.h>

#include "support/testing.h"

enum { MANY = 20000, KEY_ROOM = 16 };

typedef struct stitch {
    int row;
    double length;
    const char *name;
} stitch;

START_TEST(items_come_back_in_the_order_they_were_added)
{
    BK_LIST(int) list = {0};
    for (int i = 0; i < MANY; i++)
        bk_list_add(&list, 3 * i);
    ck_assert_uint_eq(list.count, MANY);
    for (int i = 0; i < MANY; i++)
        if (list.items[i] != 3 * i)
            ck_abort_msg("item %d is %d", i, list.items[i]);
    bk_list_free(&list);
    ck_assert_ptr_null(list.items);
    ck_assert_uint_eq(list.count + list.room, 0);
}
END_TEST

START_TEST(what_is_added_may_look_at_the_list)
{
    BK_LIST(size_t) list = {0};
    for (int i = 0; i < 20; i++)
        bk_list_add(&list, list.count);
    for (size_t i = 0; i < 20; i++)
        ck_assert_uint_eq(list.items[i], i);
    bk_list_free(&list);
}
END_TEST

START_TEST(a_new_item_is_zero_and_can_be_filled)
{
    BK_LIST(stitch) list = {0};
    for (int i = 0; i < MANY; i++) {
        stitch *made = bk_list_new(&list);
        if (made->row != 0 || made->name != NULL)
            ck_abort_msg("item %d is not clear", i);
        *made = (stitch){.row = i, .name = "slip"};
    }
    ck_assert_uint_eq(list.count, MANY);
    for (int i = 0; i < MANY; i++)
        if (list.items[i].row != i)
            ck_abort_msg("item %d is row %d", i, list.items[i].row);
    bk_list_free(&list);
}
END_TEST

START_TEST(a_new_item_is_zero_where_another_lay)
{
    BK_LIST(int) list = {0};
    bk_list_add(&list, 7);
    list.count = 0;
    ck_assert_int_eq(*bk_list_new(&list), 0);
    bk_list_free(&list);
}
END_TEST

static void write_key(char key[KEY_ROOM], int number)
{
    snprintf(key, KEY_ROOM, "%d/hem", number);
}

START_TEST(an_index_finds_each_key_and_no_other)
{
    static char keys[MANY][KEY_ROOM];
    bk_index *index = bk_index_new();
    for (int i = 0; i < MANY; i++) {
        write_key(keys[i], i);
        if (*bk_index_put(index, keys[i], i) != i)
            ck_abort_msg("%s was taken to be known", keys[i]);
    }
    for (int i = 0; i < MANY; i++) {
        char key[KEY_ROOM];
        write_key(key, i);
        const long long *found = bk_index_find(index, key);
        if (found == NULL || *found != i)
            ck_abort_msg("%s was not found", key);
        write_key(key, MANY + i);
        if (bk_index_find(index, key) != NULL)
            ck_abort_msg("%s was found", key);
    }
    bk_index_free(index);
}
END_TEST

START_TEST(a_key_put_twice_keeps_its_value)
{
    bk_index *index = bk_index_new();
    char again[] = "cape";
    *bk_index_put(index, "cape", 1) += 10;
    ck_assert_int_eq(*bk_index_put(index, again, 2), 11);
    *bk_index_put(index, again, 2) = 5;
    ck_assert_int_eq(*bk_index_find(index, "cape"), 5);
    ck_assert_int_eq(*bk_index_put(index, "", 3), 3);
    ck_assert_int_eq(*bk_index_find(index, ""), 3);
    bk_index_free(index);
}
END_TEST

START_TEST(no_key_is_unknown)
{
    bk_index *index = bk_index_new();
    ck_assert_ptr_null(bk_index_find(index, NULL));
    ck_assert_ptr_null(bk_index_find(index, "cape"));
    bk_index_free(index);
    bk_index_free(NULL);
}
END_TEST

/// Ids as they come: in a row, far apart, below zero, and with only their high bits set.
static long long id_of(int number)
{
    switch (number % 4) {
    case 0:
        return number;
    case 1:
        return -number;
    case 2:
        return (long long)number << 40;
    default:
        return LLONG_MIN + number;
    }
}

START_TEST(records_are_found_by_the_id_that_is_their_first_member)
{
    static const struct {
        int64_t id;
        char kind;
    } records[] = {{7, 'a'}, {-2, 'b'}, {7, 'c'}, {INT64_MAX, 'd'}};
    bk_id_index *index = bk_id_index_of(records, sizeof records / sizeof *records, sizeof *records);
    ck_assert_int_eq(*bk_id_index_find(index, 7), 0);
    ck_assert_int_eq(*bk_id_index_find(index, -2), 1);
    ck_assert_int_eq(*bk_id_index_find(index, INT64_MAX), 3);
    ck_assert_ptr_null(bk_id_index_find(index, 1));
    bk_id_index_free(index);
}
END_TEST

START_TEST(an_index_of_ids_finds_each_and_no_other)
{
    bk_id_index *index = bk_id_index_new();
    ck_assert_ptr_null(bk_id_index_find(index, 0));
    for (int i = 0; i < MANY; i++)
        if (*bk_id_index_put(index, id_of(i), i) != i)
            ck_abort_msg("id %lld was taken to be known", id_of(i));
    for (int i = 0; i < MANY; i++) {
        const long long *found = bk_id_index_find(index, id_of(i));
        if (found == NULL || *found != i)
            ck_abort_msg("id %lld was not found", id_of(i));
        if (bk_id_index_find(index, id_of(MANY + i)) != NULL)
            ck_abort_msg("id %lld was found", id_of(MANY + i));
    }
    ck_assert_int_eq(*bk_id_index_put(index, id_of(7), 99), 7);
    bk_id_index_free(index);
    bk_id_index_free(NULL);
}
END_TEST

BK_TEST_MAIN("list", items_come_back_in_the_order_they_were_added, what_is_added_may_look_at_the_list,
             a_new_item_is_zero_and_can_be_filled, a_new_item_is_zero_where_another_lay,
             an_index_finds_each_key_and_no_other, a_key_put_twice_keeps_its_value, no_key_is_unknown,
             records_are_found_by_the_id_that_is_their_first_member, an_index_of_ids_finds_each_and_no_other)
