#ifndef BODKIN_UI_FORM_FIELDS_H
#define BODKIN_UI_FORM_FIELDS_H

#include "bodkin/sheet/cell_write.h"
#include "bodkin/ui/cursor.h"
#include "bodkin/ui/form.h"
#include "bodkin/ui/form_line.h"

/// What a form remembers, and its texts to a record and back. For the files of the form only.

/// One field as it stands on the screen.
typedef struct bk_form_value {
    bk_form_line line;
    char *begun;  ///< the text as it stood at the beginning
    bool typed;   ///< the person has typed or picked what stands there
    bool arrived; ///< nothing was typed since the cursor came
    char *wrong;  ///< what is wrong with it, a sentence; NULL: nothing
    char *doubt;  ///< what is doubtful; NULL: nothing
    char *tells;  ///< what is told of the choice that stands there; NULL: nothing
    char *unit;   ///< what it is counted in; NULL: nothing
    bool told;    ///< that was seen when the cursor would have gone on
} bk_form_value;

/// The list to pick from, for the field at hand.
typedef struct bk_form_pick {
    bk_arena *arena; ///< of the choices
    bk_form_choices all;
    const char **folded; ///< of each choice, its text and what it tells
    size_t *shown;       ///< indices into `all` of what matches, the nearest first; of all where nothing does
    size_t shown_count;
    bool nothing;     ///< nothing matches what is typed
    const char *name; ///< what is typed, where it can be made
    size_t makes;     ///< rows behind those shown that make it
    bk_cursor cursor; ///< in all these rows
    bool chosen;      ///< one of them is chosen: Enter takes it, or makes it
} bk_form_pick;

typedef enum bk_form_mode {
    BK_FORM_FILLING,
    BK_FORM_NEWER, ///< shows what another terminal changed, and asks
    BK_FORM_GONE   ///< asks whether it shall be a new record
} bk_form_mode;

struct bk_form {
    const bk_form_kind *kind;
    bk_wall *wall;
    bk_arena *arena; ///< of the records, until the form is closed
    const char *title;
    int64_t id, behind, about;
    void *before; ///< the record as it was read or begun
    void *newer;  ///< as another terminal has changed it since; NULL: it has not
    bool gone;    ///< another terminal has taken it away
    bk_form_value *values;
    size_t at;        ///< the field at hand
    size_t before_at; ///< the field that was left last; `kind->field_count`: none
    bk_form_pick pick;
    const bk_form_kind *making; ///< what the form above this one makes, for the field at hand; NULL: nothing
    bk_form_mode mode;
    size_t top;          ///< row of the fields that is seen first
    size_t text_columns; ///< room of a text, as it was drawn last
    char *said;          ///< what is refused as a whole, until the next key
};

/// The column of a field.
const bk_column *bk_form_column(const bk_form *form, size_t field);
/// The number of a field by the name of its column, or the kind's field_count.
size_t bk_form_find(const bk_form *form, const char *column);
/// Whether a field is asked now.
bool bk_form_asked(const bk_form *form, size_t field);
/// Whether nothing but what can be picked is right in a field.
bool bk_form_is_strict(const bk_form *form, size_t field);
/// Whether what is typed first takes the place of what stands in the field at hand: something picked, a suggestion, a day or an
/// amount.
bool bk_form_replaces(const bk_form *form);
/// The nearest field from `from` on that is asked, `by` 1 or -1; `from` itself does not count. `from` where there is none.
size_t bk_form_next(const bk_form *form, size_t from, int by);

/// How amounts are written: the production's unit and currency.
bk_cell_style bk_form_style(const bk_form *form);

/// A copy of a record with its texts, in the form's arena.
void *bk_form_record_copy(const bk_form *form, const void *record);

/// Makes the values from a record, in the form's arena.
void bk_form_values_begin(bk_form *form);
void bk_form_values_free(bk_form *form);
/// The text of a record's field, as it is shown; in `arena`.
const char *bk_form_record_text(const bk_form *form, size_t field, const void *record, bk_arena *arena);
/// Whether two records say the same in all columns of the form's sheet; `context` is the bk_form, as bk_record_saving hands it.
bool bk_form_same(const void *context, const void *left, const void *right);

/// Whether anything was typed that is not kept.
bool bk_form_changed(const bk_form *form);
bool bk_form_field_changed(const bk_form *form, size_t field);

/// Reads a field's text into `record`; the sentence of what is wrong with it in `arena`, or NULL.
const char *bk_form_read_field(const bk_form *form, size_t field, bk_arena *arena, void *record);
/// Fills a whole record from the texts, as far as they can be read; it lives in `arena`.
void *bk_form_filled(const bk_form *form, bk_arena *arena);
/// Looks at a field's text anew: what is wrong with it or doubtful.
void bk_form_check(bk_form *form, size_t field);
/// The field's text as it is understood, for the field itself: "2027-03-12" for "fri"; the text as it is where it is not
/// understood. In `arena`.
const char *bk_form_understood(const bk_form *form, size_t field, bk_arena *arena);
/// The same in words, for beside the field: "Fri 12 Mar", "1 h 30"; NULL where there is nothing more to say. In `arena`.
const char *bk_form_aside(const bk_form *form, size_t field, bk_arena *arena);

/// Puts what the fields suggest where nothing was typed yet, in a new record, and looks what quantities are counted in.
void bk_form_suggest(bk_form *form);

/// Keeps a copy of a sentence (NULL: none) in place of the one before.
void bk_form_keep(char **place, const char *sentence);

#endif
