#include "bodkin/base/safe.h"

#include <string.h>
#include <utf8proc.h>

#include "bodkin/base/buffer.h"
#include "bodkin/base/glyph.h"
#include "bodkin/base/utf8.h"

enum { ASCII_END = 0x80, MOST_MARKS = 4, LONGEST_DECOMPOSITION = 32 };

/// Letters and quotation marks that Unicode does not take apart, by code point.
static const struct plain_form {
    int32_t code;
    const char *plain;
} plain_forms[] = {
    {0x00AB, "\""}, {0x00BB, "\""}, {0x00C6, "AE"}, {0x00D0, "D"},  {0x00D7, "x"},  {0x00D8, "O"},
    {0x00DE, "Th"}, {0x00DF, "ss"}, {0x00E6, "ae"}, {0x00F0, "d"},  {0x00F8, "o"},  {0x00FE, "th"},
    {0x0110, "D"},  {0x0111, "d"},  {0x0131, "i"},  {0x0141, "L"},  {0x0142, "l"},  {0x0152, "OE"},
    {0x0153, "oe"}, {0x1E9E, "SS"}, {0x201A, "'"},  {0x201C, "\""}, {0x201D, "\""}, {0x201E, "\""},
};

static const char *plain_form_of(int32_t code)
{
    for (size_t i = 0; i < sizeof plain_forms / sizeof *plain_forms && plain_forms[i].code <= code; i++)
        if (plain_forms[i].code == code)
            return plain_forms[i].plain;
    return NULL;
}

static void add_code(bk_buffer *out, int32_t code)
{
    char bytes[BK_UTF8_MOST];
    bk_buffer_add(out, bytes, bk_utf8_write(code, bytes));
}

static bool ends_in_digit(const bk_buffer *out)
{
    return out->length > 0 && out->bytes[out->length - 1] >= '0' && out->bytes[out->length - 1] <= '9';
}

/// Adds `code` taken apart by utf8proc's `options`, letters without accents where there is such a form; what
/// stays outside ASCII as it is, or as "?" when `ascii`. A space keeps 2½ from becoming 21/2.
static void add_decomposed(bk_buffer *out, int32_t code, int options, bool ascii)
{
    utf8proc_int32_t parts[LONGEST_DECOMPOSITION];
    int boundary = 0;
    if (utf8proc_category(code) == UTF8PROC_CATEGORY_NO && ends_in_digit(out))
        bk_buffer_char(out, ' ');
    utf8proc_ssize_t count =
        utf8proc_decompose_char(code, parts, LONGEST_DECOMPOSITION, (utf8proc_option_t)options, &boundary);
    for (utf8proc_ssize_t i = 0; i < count && i < LONGEST_DECOMPOSITION; i++) {
        const char *plain = plain_form_of(parts[i]);
        if (plain != NULL)
            bk_buffer_text(out, plain);
        else if (ascii && parts[i] >= ASCII_END)
            bk_buffer_char(out, '?');
        else
            add_code(out, parts[i]);
    }
}

typedef struct cleaning {
    bk_buffer out;
    bool ascii;
    bool selected; ///< the character before has had its variation selector
    int marks;     ///< on the character before
} cleaning;

static void add_visible(cleaning *job, int32_t code)
{
    if (job->ascii)
        add_decomposed(&job->out, code,
                       UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT | UTF8PROC_STRIPMARK | UTF8PROC_LUMP, true);
    else
        add_code(&job->out, code);
}

/// Begins a new character that marks can sit on.
static void add_base(cleaning *job, const char *text)
{
    bk_buffer_text(&job->out, text);
    job->marks = 0;
    job->selected = true;
}

static void add_stand_in(cleaning *job)
{
    add_base(job, job->ascii ? "?" : "·");
}

static void add_mark(cleaning *job, int32_t code)
{
    if (job->out.length == 0)
        add_stand_in(job);
    if (job->marks < MOST_MARKS)
        add_visible(job, code);
    job->marks++;
}

static void add_clean(cleaning *job, int32_t code)
{
    if (bk_glyph_selector(code) && !job->selected) {
        job->selected = true;
    } else if (bk_glyph_hidden(code) || bk_glyph_selector(code)) {
        add_stand_in(job);
    } else if (bk_glyph_columns(code) == 0) {
        add_mark(job, code);
    } else {
        add_base(job, "");
        job->selected = code == ' ';
        add_visible(job, code);
    }
}

/// How many bytes of printable ASCII `text` begins with.
static size_t plain_run(const char *text)
{
    size_t length = 0;
    while (text[length] >= ' ' && text[length] <= '~')
        length++;
    return length;
}

static void add_plain(cleaning *job, const char *text, size_t length)
{
    bk_buffer_add(&job->out, text, length);
    job->marks = 0;
    job->selected = text[length - 1] == ' ';
}

/// Cleans the run of printable ASCII or else the character at `text`; returns how many bytes it takes there.
static size_t clean_step(cleaning *job, const char *text)
{
    size_t plain = plain_run(text);
    if (plain > 0) {
        add_plain(job, text, plain);
        return plain;
    }
    int32_t code = 0;
    size_t step = bk_utf8_read(text, BK_UTF8_MOST, &code);
    if (step == 0) {
        add_base(job, "?");
        return 1;
    }
    if (code == '\r' && text[1] == '\n')
        return step;
    if (code == '\r' || code == '\n' || code == '\t')
        add_base(job, " ");
    else
        add_clean(job, code);
    return step;
}

/// Copies what the buffer holds into the arena and frees the buffer.
static char *settle(bk_arena *arena, bk_buffer *out)
{
    char *text = bk_arena_bytes(arena, out->bytes, out->length);
    bk_buffer_free(out);
    return text;
}

char *bk_text_safe(bk_arena *arena, const char *text, bool ascii)
{
    size_t plain = text == NULL ? 0 : plain_run(text);
    if (text == NULL || text[plain] == '\0')
        return bk_arena_bytes(arena, text, plain);
    cleaning job = {.ascii = ascii, .selected = true};
    while (*text != '\0')
        text += clean_step(&job, text);
    return settle(arena, &job.out);
}

/// An ASCII character, small where it is a letter, whatever the locale.
static char lower_letter(int32_t code)
{
    return (char)(code >= 'A' && code <= 'Z' ? code - 'A' + 'a' : code);
}

char *bk_text_fold(bk_arena *arena, const char *text)
{
    const int options = UTF8PROC_DECOMPOSE | UTF8PROC_COMPAT | UTF8PROC_STRIPMARK | UTF8PROC_LUMP |
                        UTF8PROC_CASEFOLD | UTF8PROC_IGNORE;
    bk_buffer out = {0};
    while (text != NULL && *text != '\0') {
        int32_t code = 0;
        text += bk_utf8_next(text, &code);
        if (code < ASCII_END)
            bk_buffer_char(&out, lower_letter(code));
        else
            add_decomposed(&out, code, options, false);
    }
    return settle(arena, &out);
}
