#ifndef BODKIN_TRADE_WORDS_H
#define BODKIN_TRADE_WORDS_H

#include <stddef.h>

/// The fixed words of the trade as they stand in sheets and in the store: each set is a table, an index in it is the
/// word's number, BK_NO_WORD stands for "not known".

enum { BK_NO_WORD = -1 };

typedef struct bk_words {
    const char *what; ///< what the set is, for messages: "kind of step"
    const char *const *items;
    size_t count;
} bk_words;

typedef enum bk_kind {
    BK_SOURCE,
    BK_DRAFT,
    BK_CUT,
    BK_TACK,
    BK_MACHINE,
    BK_PRESS,
    BK_FIT,
    BK_HAND,
    BK_CRAFT,
    BK_DYE,
    BK_KINDS
} bk_kind;

typedef enum bk_origin { BK_MAKE, BK_ALTER, BK_BUY, BK_HIRE, BK_BORROW, BK_STOCK, BK_ORIGINS } bk_origin;

typedef enum bk_outcome { BK_FITS, BK_AGAIN, BK_MISSED, BK_OUTCOMES } bk_outcome;

typedef enum bk_occasion {
    BK_ON_MEASURING,
    BK_ON_FITTINGS,
    BK_ON_PHOTO,
    BK_ON_PARADE,
    BK_ON_TECH,
    BK_ON_DRESS,
    BK_ON_PREVIEW,
    BK_ON_OPENING,
    BK_ON_PERFORMANCE,
    BK_ON_CLOSING,
    BK_ON_STRIKE,
    BK_ON_RETURN,
    BK_OCCASIONS
} bk_occasion;

/// Where a note comes from.
typedef enum bk_note_source {
    BK_FROM_REHEARSAL,
    BK_FROM_FITTING,
    BK_FROM_PARADE,
    BK_FROM_TECH,
    BK_FROM_DRESS,
    BK_FROM_PREVIEW,
    BK_FROM_SHOW,
    BK_FROM_WORKROOM,
    BK_NOTE_SOURCES
} bk_note_source;

typedef enum bk_material_unit { BK_METRE, BK_YARD, BK_EACH, BK_MATERIAL_UNITS } bk_material_unit;

extern const bk_words bk_kind_words;          ///< source draft cut tack machine press fit hand craft dye
extern const bk_words bk_origin_words;        ///< make alter buy hire borrow stock
extern const bk_words bk_outcome_words;       ///< fits again missed
extern const bk_words bk_occasion_words;      ///< measuring ... return
extern const bk_words bk_note_source_words;   ///< rehearsal fitting parade tech dress preview show workroom
extern const bk_words bk_material_unit_words; ///< m yd each
extern const bk_words bk_length_unit_words;   ///< cm in

/// The number of `word` in the set (exact), or BK_NO_WORD; `word` NULL gives BK_NO_WORD.
int bk_word_find(const bk_words *words, const char *word);

/// The word of a number, or NULL for BK_NO_WORD.
const char *bk_word_text(const bk_words *words, int number);

enum { BK_LEVEL_ANYONE = 1, BK_LEVEL_SEWER = 2, BK_LEVEL_MAKER = 3 };

/// Level of a step that names none: 2 for hand sewing, else 3 (design, section 5).
int bk_usual_level(bk_kind kind);

enum { BK_USUAL_GOOD_FOR = 180 }; ///< days that measures are good for where nothing else is said

#endif
