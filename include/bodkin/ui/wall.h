#ifndef BODKIN_UI_WALL_H
#define BODKIN_UI_WALL_H

#include "bodkin/ui/reckoning.h"
#include "bodkin/ui/screens.h"
#include "bodkin/ui/supposed.h"
#include "bodkin/work/rail.h"

/// What all screens look at: the store, the day, and the production that is shown with its rail. Read anew when another
/// program has changed the store or a new day has begun.

enum { BK_MESSAGE_ROOM = BK_ERROR_ROOM };

typedef struct bk_wall {
    bk_store *store; ///< the caller's
    const char *who; ///< the person at this terminal; the caller's
    bk_clock clock;
    bk_day today;
    bool ascii;
    char *production;              ///< name of what is shown; NULL: none is
    bk_rail *rail;                 ///< of that production as it was read last; NULL: none
    int64_t version;               ///< of the store as it was read last
    char message[BK_MESSAGE_ROOM]; ///< a sentence for the bottom line until the next key; empty: none
    const char *offer_key, *offer; ///< what is told beside it: a key and what it does; NULL: nothing
    char moment[BK_MADE_AT_ROOM];  ///< of the job done last
    bk_reckoning *reckoning;       ///< of the store as it is; NULL: none is reckoned
    int64_t readings;              ///< how often its forecast was asked for
    bk_supposed
        *supposed; ///< what the person supposes; never NULL, and changed by the screens that see the wall
    bk_reckoning *supposing;      ///< of that; NULL: nothing is supposed, or it was not asked for yet
    int64_t supposing_of[2];      ///< which `readings` and which change of `supposed` it was asked for
    bk_reckoning_options reckons; ///< how both are reckoned
    bk_family saved_family; ///< the record that was saved by the key pressed last: the screens put their
    int64_t saved_id;       ///< cursor on it; 0: none
} bk_wall;

/// Begins with the store, the clock and the day of `options`, and with reckoning where the store's path is given; shows no
/// production yet. Freed by bk_wall_free, which ends the reckoning.
bk_status bk_wall_begin(bk_wall *wall, const bk_screens_options *options, bk_error *error) BK_MUST_USE;
void bk_wall_free(bk_wall *wall);

/// Shows the production called `name` (NULL: the usual choice) and reads its rail. BK_REFUSED when there is none; what was
/// shown before then stays.
bk_status bk_wall_show(bk_wall *wall, const char *name, bk_error *error) BK_MUST_USE;

/// Looks whether the store or the day is another one than what was read last; `*changed` says so.
bk_status bk_wall_look(bk_wall *wall, bool *changed, bk_error *error) BK_MUST_USE;

/// Reads the rail of the production shown again, and asks for another forecast. Where the production is no longer there, none is
/// shown and the message says so.
bk_status bk_wall_read(bk_wall *wall, bk_error *error) BK_MUST_USE;

/// The forecast of the store as it was reckoned last: good until the screens are next read. NULL: none yet, or nothing is reckoned.
/// Its records are told by id: the rail may have been read since.
const bk_forecast *bk_wall_forecast(const bk_wall *wall);

/// Asks for the forecast of what is supposed, unless that of this list and this store was asked for already. Where nothing is
/// supposed any more its reckoning ends.
void bk_wall_suppose(bk_wall *wall);

/// The forecast of what is supposed, once it and that of the store as it is are settled; NULL before. Good as above.
const bk_forecast *bk_wall_supposed_forecast(const bk_wall *wall);

/// Takes what was reckoned meanwhile; true where the picture may be another one now. `*answered` says whether a forecast came, or that
/// none comes, so that the screens must be read.
bool bk_wall_listen(bk_wall *wall, bool *answered);

/// Whether anything is being reckoned.
bool bk_wall_busy(const bk_wall *wall);

/// How far a reckoning of the wall is: "reckoning 40 %", "not reckoned" where there is trouble; NULL: it is settled, or none is
/// (`reckoning` may be NULL). In `arena`.
const char *bk_reckoning_words(const bk_reckoning *reckoning, bk_arena *arena);

/// Writes the message.
void bk_wall_say(bk_wall *wall, const char *format, ...) BK_PRINTF(2, 3);

/// Forgets the message and what was saved: the next key.
void bk_wall_hush(bk_wall *wall);

/// The costume with that number on the rail, or NULL.
const bk_rail_costume *bk_wall_costume(const bk_wall *wall, const char *number);

#endif
