#include "bodkin/work/players.h"

bk_status bk_players_read(bk_store *store, int64_t production, bk_arena *arena, bk_players *players,
                          bk_error *error)
{
    const struct {
        bk_family family;
        bk_rows *rows;
    } reads[] = {
        {BK_COMPANY_PERFORMERS, &players->performers},
        {BK_ROLES, &players->roles},
        {BK_COSTUMES, &players->costumes},
        {BK_PIECE_COSTUMES, &players->piece_costumes},
    };
    bk_status status = BK_OK;
    for (size_t i = 0; !status && i < sizeof reads / sizeof *reads; i++) {
        status = bk_store_read(store, reads[i].family, production, arena, reads[i].rows, error);
    }
    return status;
}

static const bk_performer *find_performer(const bk_players *players, int64_t id)
{
    const bk_performer *items = players->performers.items;
    for (size_t i = 0; id && i < players->performers.count; i++) {
        if (items[i].id == id) {
            return &items[i];
        }
    }
    return NULL;
}

static int64_t role_of(const bk_players *players, int64_t costume)
{
    const bk_costume *items = players->costumes.items;
    for (size_t i = 0; i < players->costumes.count; i++) {
        if (items[i].id == costume) {
            return items[i].role_id;
        }
    }
    return 0;
}

static const bk_performer *plays(const bk_players *players, int64_t role)
{
    const bk_role *items = players->roles.items;
    for (size_t i = 0; i < players->roles.count; i++) {
        if (items[i].id == role) {
            return find_performer(players, items[i].performer_id);
        }
    }
    return NULL;
}

const bk_performer *bk_player_of(const bk_players *players, int64_t piece)
{
    const bk_link *links = players->piece_costumes.items;
    for (size_t i = 0; i < players->piece_costumes.count; i++) {
        if (links[i].from_id == piece) {
            const bk_performer *found = plays(players, role_of(players, links[i].to_id));
            if (found) {
                return found;
            }
        }
    }
    return NULL;
}
