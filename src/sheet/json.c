#include "bodkin/sheet/json.h"

#include <assert.h>

enum { SPACE = 0x20, INDENT = 2 };

static void write_string(bk_buffer *out, const char *text)
{
    bk_buffer_char(out, '"');
    for (const char *c = text; *c; c++) {
        if (*c == '"' || *c == '\\') {
            bk_buffer_char(out, '\\');
            bk_buffer_char(out, *c);
        } else if (*c == '\n') {
            bk_buffer_text(out, "\\n");
        } else if ((unsigned char)*c < SPACE || *c == '\x7f') {
            bk_buffer_print(out, "\\u%04x", (unsigned)(unsigned char)*c);
        } else {
            bk_buffer_char(out, *c);
        }
    }
    bk_buffer_char(out, '"');
}

static void new_line(bk_json *json)
{
    bk_buffer_print(json->out, "\n%*s", json->depth * INDENT, "");
}

/// Begins a value: the comma, the line and the key before it.
static void begin(bk_json *json, const char *key)
{
    if (json->depth) {
        if (json->filled[json->depth]) {
            bk_buffer_char(json->out, ',');
        }
        json->filled[json->depth] = true;
        new_line(json);
    }
    if (key) {
        write_string(json->out, key);
        bk_buffer_text(json->out, ": ");
    }
}

static void open_level(bk_json *json, const char *key, char bracket)
{
    begin(json, key);
    bk_buffer_char(json->out, bracket);
    json->depth++;
    assert(json->depth < BK_JSON_DEEPEST);
    json->filled[json->depth] = false;
}

static void close_level(bk_json *json, char bracket)
{
    bool filled = json->filled[json->depth];
    json->depth--;
    if (filled) {
        new_line(json);
    }
    bk_buffer_char(json->out, bracket);
    if (!json->depth) {
        bk_buffer_char(json->out, '\n');
    }
}

void bk_json_object(bk_json *json, const char *key)
{
    open_level(json, key, '{');
}

void bk_json_object_end(bk_json *json)
{
    close_level(json, '}');
}

void bk_json_array(bk_json *json, const char *key)
{
    open_level(json, key, '[');
}

void bk_json_array_end(bk_json *json)
{
    close_level(json, ']');
}

void bk_json_text(bk_json *json, const char *key, const char *text)
{
    begin(json, key);
    if (text) {
        write_string(json->out, text);
    } else {
        bk_buffer_text(json->out, "null");
    }
}

void bk_json_whole(bk_json *json, const char *key, int64_t number)
{
    begin(json, key);
    bk_buffer_print(json->out, "%lld", (long long)number);
}

void bk_json_digits(bk_json *json, const char *key, const char *digits)
{
    begin(json, key);
    bk_buffer_text(json->out, digits);
}

void bk_json_truth(bk_json *json, const char *key, bool truth)
{
    begin(json, key);
    bk_buffer_text(json->out, truth ? "true" : "false");
}

void bk_json_null(bk_json *json, const char *key)
{
    begin(json, key);
    bk_buffer_text(json->out, "null");
}
