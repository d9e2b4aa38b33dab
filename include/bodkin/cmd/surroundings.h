#ifndef BODKIN_CMD_SURROUNDINGS_H
#define BODKIN_CMD_SURROUNDINGS_H

#include <stdbool.h>
#include <stdio.h>

#include "bodkin/base/text.h"
#include "bodkin/cmd/command.h"

/// What a command takes from the computer it runs on: the clock, who is there, the terminal, the output.

/// The day of a call: the pinned one, else the computer's date.
bk_day bk_call_today(const bk_call *call);

enum { BK_NOW_ROOM = 32 };
/// The moment for the daybook, local time with its offset from UTC: "2027-03-02T09:30:00+01:00". Returns `out`.
char *bk_now(char out[BK_NOW_ROOM]);

/// The store's file where none is named: $XDG_DATA_HOME/bodkin/workroom.db, or ~/.local/share/...; NULL where there is
/// no home. Lives in `arena`.
const char *bk_usual_store(bk_arena *arena);

/// The login of whoever runs the program. Lives in `arena`.
const char *bk_login(bk_arena *arena);

/// Whether output must be plain ASCII: the locale is not UTF-8.
bool bk_ascii_only(void);

/// Opens the store of a call; `create` where it may be made.
bk_status bk_call_open(const bk_call *call, bool create, bk_store **store, bk_error *error) BK_MUST_USE;

/// Writes all of it to stdout; BK_REFUSED when that fails. A reader that went away is no failure.
bk_status bk_print_out(const bk_buffer *text, bk_error *error) BK_MUST_USE;

/// Writes what was done to stdout, made safe, with a full stop and a line end. Where that fails the error says
/// that it is done all the same.
bk_status bk_print_sentence(const char *sentence, bk_error *error) BK_MUST_USE;

#endif
