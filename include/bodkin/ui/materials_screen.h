#ifndef BODKIN_UI_MATERIALS_SCREEN_H
#define BODKIN_UI_MATERIALS_SCREEN_H

#include "bodkin/ui/screen.h"
#include "bodkin/work/materials.h"

/// The Materials screen: what lies on the shelf, what is promised, what is short and who needs it; or, in its place, what to
/// buy now by supplier.
extern const bk_screen_kind bk_materials_screen;
void *bk_materials_screen_new(void);

/// The screen of one material (its id): who needs it, and its orders.
extern const bk_screen_kind bk_material_screen;
void *bk_material_screen_new(int64_t material);

/// Opens the form in which a material is counted, ordered (the quantity that is short stands there already), or in which one of
/// its orders has arrived.
void bk_material_open_count(bk_screen *screen, const bk_material_line *material);
void bk_material_open_order(bk_screen *screen, const bk_material_line *material);
void bk_material_open_arrived(bk_screen *screen, const bk_order *order, const bk_material *material);

/// The first order of a material that has not arrived, or NULL.
const bk_order *bk_material_under_way(const bk_material_line *material);

/// "short of 3 m", "on order, due Tue 9 Mar", "enough", "not counted": how it stands; in `arena`.
const char *bk_material_standing(const bk_material_line *material, bk_day today, bk_arena *arena);

/// How urgent that is, as a style.
int bk_material_style(const bk_material_line *material, bk_day today);

/// "120.40 EUR", sums of several currencies joined; in `arena`, NULL for none.
const char *bk_costs_words(const bk_money_sum *costs, size_t count, bk_arena *arena);

#endif
