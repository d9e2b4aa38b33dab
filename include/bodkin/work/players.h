#ifndef BODKIN_WORK_PLAYERS_H
#define BODKIN_WORK_PLAYERS_H

#include "bodkin/store/store.h"

/// Who wears a piece: who plays the role of the first of its costumes that is cast.

typedef struct bk_players {
    bk_rows performers, roles, costumes, piece_costumes; ///< of one production
} bk_players;

/// Reads them into `arena`.
bk_status bk_players_read(bk_store *store, int64_t production, bk_arena *arena, bk_players *players,
                          bk_error *error) BK_MUST_USE;

/// The performer who wears the piece, or NULL.
const bk_performer *bk_player_of(const bk_players *players, int64_t piece);

#endif
