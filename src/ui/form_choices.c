#include "bodkin/ui/form_choices.h"

#include "bodkin/work/existing.h"

// ------------------------------------------------------------------------------------------ what exists already

static bk_status choose_known(const bk_form *form, bk_existing_kind kind, const char *of, bk_arena *arena,
                              bk_form_choices *choices, bk_error *error)
{
    const bk_wall *wall = bk_form_wall(form);
    bk_existing_list known = {0};
    int64_t production = wall->rail ? wall->rail->production.id : 0;
    bk_status status = bk_existing_read(wall->store, production, kind, of, arena, &known, error);
    bk_form_choice *items = bk_arena_clear(arena, known.count, sizeof *items);
    for (size_t i = 0; i < known.count; i++)
        items[i] = (bk_form_choice){known.items[i].name, known.items[i].tells};
    *choices = (bk_form_choices){items, known.count};
    return status;
}

#define CHOOSE_KNOWN(name, kind, of) \
    bk_status name(const bk_form *form, bk_arena *arena, bk_form_choices *choices, bk_error *error) \
    { \
        return choose_known(form, kind, of, arena, choices, error); \
    }

CHOOSE_KNOWN(bk_choose_performers, BK_EXISTING_PERFORMERS, NULL)
CHOOSE_KNOWN(bk_choose_people, BK_EXISTING_PEOPLE, NULL)
CHOOSE_KNOWN(bk_choose_everybody, BK_EXISTING_EVERYBODY, NULL)
CHOOSE_KNOWN(bk_choose_roles, BK_EXISTING_ROLES, NULL)
CHOOSE_KNOWN(bk_choose_costumes, BK_EXISTING_COSTUMES, NULL)
CHOOSE_KNOWN(bk_choose_pieces, BK_EXISTING_PIECES, NULL)
CHOOSE_KNOWN(bk_choose_steps, BK_EXISTING_STEPS, bk_form_text(form, "piece"))
CHOOSE_KNOWN(bk_choose_fit_steps, BK_EXISTING_FIT_STEPS, bk_form_text(form, "piece"))
CHOOSE_KNOWN(bk_choose_earlier, BK_EXISTING_EARLIER, bk_form_text(form, "piece"))
CHOOSE_KNOWN(bk_choose_materials, BK_EXISTING_MATERIALS, NULL)
CHOOSE_KNOWN(bk_choose_works, BK_EXISTING_WORKS, NULL)
CHOOSE_KNOWN(bk_choose_work_steps, BK_EXISTING_WORK_STEPS, bk_form_text(form, "work"))
CHOOSE_KNOWN(bk_choose_measures, BK_EXISTING_MEASURES, NULL)
CHOOSE_KNOWN(bk_choose_places, BK_EXISTING_PLACES, NULL)
CHOOSE_KNOWN(bk_choose_suppliers, BK_EXISTING_SUPPLIERS, NULL)

// ------------------------------------------------------------------------------------------- words of the trade

#define CHOOSE_WORDS(name, words) \
    bk_status name(const bk_form *form, bk_arena *arena, bk_form_choices *choices, bk_error *error) \
    { \
        (void)form; \
        (void)arena; \
        (void)error; \
        *choices = (bk_form_choices){words, sizeof(words) / sizeof *(words)}; \
        return BK_OK; \
    }

static const bk_form_choice kinds[] = {
    {"source", "find, buy, pull from stock, hire"},
    {"draft", "pattern cutting"},
    {"cut", "cut out"},
    {"tack", "tacking, mounting, padding: construction by hand"},
    {"machine", "on the sewing machine"},
    {"press", "pressing"},
    {"fit", "a fitting on the performer"},
    {"hand", "hand-finishing: hems, hooks and eyes, eyelets, trims"},
    {"craft", "hats, masks, padding, leather"},
    {"dye", "dye, print, break down"},
};

static const bk_form_choice origins[] = {
    {"make", "made new, to measure"},
    {"alter", "bought or found, and altered to measure"},
    {"buy", "bought as it is"},
    {"hire", "hired, and given back"},
    {"borrow", "borrowed, and given back"},
    {"stock", "pulled from our own stock"},
};

static const bk_form_choice outcomes[] = {
    {"fits", "it fits: the step is done"},
    {"again", "another fitting is wanted"},
    {"missed", "it did not take place"},
};

static const bk_form_choice occasions[] = {
    {"measuring", "performers are measured"},
    {"fittings", "a day kept for fittings"},
    {"photo", "photo call"},
    {"parade", "dress parade; costumes are due"},
    {"tech", "technical rehearsal"},
    {"dress", "dress rehearsal; costumes are due"},
    {"preview", "preview"},
    {"opening", "first night"},
    {"performance", "a performance"},
    {"closing", "last performance"},
    {"strike", "the stage is cleared"},
    {"return", "what was hired or borrowed goes back"},
};

static const bk_form_choice sources[] = {
    {"rehearsal", "seen or asked for in rehearsal"},
    {"fitting", "from a fitting"},
    {"parade", "from the dress parade"},
    {"tech", "from the technical rehearsal"},
    {"dress", "from a dress rehearsal"},
    {"preview", "from a preview"},
    {"show", "from a performance"},
    {"workroom", "our own"},
};

static const bk_form_choice material_units[] = {
    {"m", "by the metre"},
    {"yd", "by the yard"},
    {"each", "by the piece: hooks, zips, buttons"},
};

static const bk_form_choice units[] = {
    {"cm", "centimetres"},
    {"in", "inches, in eighths and sixteenths"},
};

static const bk_form_choice levels[] = {
    {"1", "anyone shown once"},
    {"2", "can sew; the usual for hand sewing"},
    {"3", "maker; the usual for all other kinds"},
};

static const bk_form_choice yes[] = {{"yes", "it can wait until after the opening"}};

CHOOSE_WORDS(bk_choose_kinds, kinds)
CHOOSE_WORDS(bk_choose_origins, origins)
CHOOSE_WORDS(bk_choose_outcomes, outcomes)
CHOOSE_WORDS(bk_choose_occasions, occasions)
CHOOSE_WORDS(bk_choose_sources, sources)
CHOOSE_WORDS(bk_choose_material_units, material_units)
CHOOSE_WORDS(bk_choose_units, units)
CHOOSE_WORDS(bk_choose_levels, levels)
CHOOSE_WORDS(bk_choose_yes, yes)
