// JSON as RFC 8259 has it; Python's json module, written by others, reads what is written here.

#include "bodkin/sheet/json.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "support/shell.h"
#include "support/testing.h"

START_TEST(members_stand_on_lines_of_their_own_two_spaces_a_level)
{
    bk_buffer out = {0};
    bk_json json = {.out = &out};
    bk_json_object(&json, NULL);
    bk_json_text(&json, "name", "Ada");
    bk_json_array(&json, "hours");
    bk_json_whole(&json, NULL, 3);
    bk_json_digits(&json, NULL, "-0.5");
    bk_json_object(&json, NULL);
    bk_json_truth(&json, "yes", true);
    bk_json_truth(&json, "no", false);
    bk_json_object_end(&json);
    bk_json_array_end(&json);
    bk_json_null(&json, "nothing");
    bk_json_text(&json, "none", NULL);
    bk_json_object_end(&json);
    ck_assert_str_eq(out.bytes, "{\n"
                                "  \"name\": \"Ada\",\n"
                                "  \"hours\": [\n"
                                "    3,\n"
                                "    -0.5,\n"
                                "    {\n"
                                "      \"yes\": true,\n"
                                "      \"no\": false\n"
                                "    }\n"
                                "  ],\n"
                                "  \"nothing\": null,\n"
                                "  \"none\": null\n"
                                "}\n");
    bk_buffer_free(&out);
}
END_TEST

START_TEST(what_is_empty_stays_on_its_line)
{
    bk_buffer out = {0};
    bk_json json = {.out = &out};
    bk_json_object(&json, NULL);
    bk_json_array(&json, "costumes");
    bk_json_array_end(&json);
    bk_json_object(&json, "counts");
    bk_json_object_end(&json);
    bk_json_object_end(&json);
    ck_assert_str_eq(out.bytes, "{\n  \"costumes\": [],\n  \"counts\": {}\n}\n");
    bk_buffer_free(&out);
}
END_TEST

START_TEST(the_largest_numbers_are_whole)
{
    bk_buffer out = {0};
    bk_json json = {.out = &out};
    bk_json_array(&json, NULL);
    bk_json_whole(&json, NULL, INT64_MAX);
    bk_json_whole(&json, NULL, INT64_MIN);
    bk_json_array_end(&json);
    ck_assert_str_eq(out.bytes, "[\n  9223372036854775807,\n  -9223372036854775808\n]\n");
    bk_buffer_free(&out);
}
END_TEST

START_TEST(it_is_added_behind_what_is_there)
{
    bk_buffer out = {0};
    bk_json json = {.out = &out};
    bk_buffer_text(&out, "before ");
    bk_json_array(&json, NULL);
    bk_json_array_end(&json);
    ck_assert_str_eq(out.bytes, "before []\n");
    bk_buffer_free(&out);
}
END_TEST

START_TEST(every_character_comes_back_through_python)
{
    enum { CONTROLS = 0x20, LAST_ASCII = 0x7f };
    bk_buffer out = {0};
    bk_json json = {.out = &out};
    bk_json_object(&json, NULL);
    for (char c = 1; c != LAST_ASCII; c++) {
        char key[] = {c, '\0'};
        bk_json_text(&json, key, key);
    }
    bk_json_text(&json, "\x7f", "\x7f");
    bk_json_text(&json, "wide", "e\xcc\x81 \xe6\xb0\xb4 \xf0\x9f\xa7\xb5 \xe2\x80\xae");
    bk_json_object_end(&json);
    for (const char *c = out.bytes; *c != '\0'; c++)
        ck_assert(*c == '\n' || ((unsigned char)*c >= CONTROLS && *c != LAST_ASCII));
    bk_test_write_text(bk_test_path("text.json"), out.bytes);
    bk_test_write_text(bk_test_path("job.py"),
                       "import json\n"
                       "read = json.load(open('text.json', encoding='utf-8'))\n"
                       "assert len(read) == 128, len(read)\n"
                       "assert read.pop('wide') == 'e\\u0301 \\u6c34 \\U0001f9f5 \\u202e'\n"
                       "assert list(read) == [chr(c) for c in range(1, 128)]\n"
                       "assert all(key == text for key, text in read.items())\n"
                       "print('the same')\n");
    ck_assert_str_eq(bk_shell("python3 job.py"), "the same");
    bk_buffer_free(&out);
}
END_TEST

BK_TEST_MAIN("json", members_stand_on_lines_of_their_own_two_spaces_a_level, what_is_empty_stays_on_its_line,
             the_largest_numbers_are_whole, it_is_added_behind_what_is_there,
             every_character_comes_back_through_python)
