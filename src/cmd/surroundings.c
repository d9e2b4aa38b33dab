#include "bodkin/cmd/surroundings.h"

#include <errno.h>
#include <langinfo.h>
#include <pwd.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

bk_day bk_call_today(const bk_call *call)
{
    if (call->pinned_today != BK_NO_DAY) {
        return call->pinned_today;
    }
    time_t now = time(NULL);
    struct tm local;
    localtime_r(&now, &local);
    enum { FIRST_YEAR = 1900 };
    return bk_day_of(local.tm_year + FIRST_YEAR, local.tm_mon + 1, local.tm_mday);
}

char *bk_now(char out[BK_NOW_ROOM])
{
    time_t now = time(NULL);
    struct tm local;
    char zone[sizeof "+0000"];
    localtime_r(&now, &local);
    size_t length = strftime(out, BK_NOW_ROOM, "%Y-%m-%dT%H:%M:%S", &local);
    strftime(zone, sizeof zone, "%z", &local);
    snprintf(out + length, BK_NOW_ROOM - length, "%.3s:%.2s", zone, zone + 3);
    return out;
}

static const char *home(void)
{
    const char *home = getenv("HOME");
    if (home && *home) {
        return home;
    }
    const struct passwd *entry = getpwuid(getuid());
    return entry ? entry->pw_dir : NULL;
}

const char *bk_usual_store(bk_arena *arena)
{
    const char *data = getenv("XDG_DATA_HOME");
    if (data && *data == '/') {
        return bk_arena_print(arena, "%s/bodkin/workroom.db", data);
    }
    const char *folder = home();
    return folder ? bk_arena_print(arena, "%s/.local/share/bodkin/workroom.db", folder) : NULL;
}

const char *bk_login(bk_arena *arena)
{
    const struct passwd *entry = getpwuid(getuid());
    if (entry && *entry->pw_name) {
        return bk_arena_text(arena, entry->pw_name);
    }
    return bk_arena_print(arena, "user %lu", (unsigned long)getuid());
}

bool bk_ascii_only(void)
{
    return strcmp(nl_langinfo(CODESET), "UTF-8") != 0;
}

bk_status bk_call_open(const bk_call *call, bool create, bk_store **store, bk_error *error)
{
    bk_store_options options = {
        .path = call->store,
        .as = call->as,
        .who = call->name,
        .terminal = ttyname(STDIN_FILENO),
        .create = create && call->as == BK_AS_MAKER,
    };
    return bk_store_open(store, &options, error);
}

bk_status bk_print_out(const bk_buffer *text, bk_error *error)
{
    size_t written = text->length ? fwrite(text->bytes, 1, text->length, stdout) : 0;
    if (written == text->length && !fflush(stdout)) {
        return BK_OK;
    }
    if (errno == EPIPE) {
        return BK_OK;
    }
    return bk_fail(error, BK_REFUSED, "The output could not be written (%s).", strerror(errno));
}

bk_status bk_print_sentence(const char *sentence, bk_error *error)
{
    bk_arena *arena = bk_arena_new();
    bk_buffer text = {0};
    bk_error trouble = {0};
    const char *safe = bk_text_safe(arena, sentence, bk_ascii_only());
    bk_buffer_print(&text, "%s%s\n", safe, bk_full_stop(safe));
    bk_status status = bk_print_out(&text, &trouble);
    bk_buffer_free(&text);
    bk_arena_free(arena);
    return status ? bk_fail(error, status, "It is done, but could not be reported: %s", trouble.text) : BK_OK;
}
