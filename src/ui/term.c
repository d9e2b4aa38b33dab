#include "bodkin/ui/term.h"

#include <langinfo.h>
#include <limits.h>
#include <locale.h>
#include <poll.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/select.h>
#include <termios.h>
#include <unistd.h>
#include <wchar.h>

#include <curses.h>
#include <term.h>

#include "bodkin/ui/pausing.h"
#include "bodkin/ui/rescue.h"

enum {
    ESCAPE_MILLISECONDS = 50,
    MILLISECONDS = 1000, // in a second
    MICROSECONDS = 1000, // in a millisecond
    FAREWELL_ROOM = 256,
    CONTROL_E = 5,
    CONTROL_H = 8,
    CONTROL_S = 19,
    CONTROL_U = 21,
    ESCAPE = 27,
    DELETE = 127,
    MOST_MARKS = 4, // that sit on one character
    PASTE_BEGINS = KEY_MAX + 1,
    PASTE_ENDS
};

// The one terminal of the process.
static struct {
    SCREEN *screen; // NULL: not taken over
    bool colours;
    bool ascii;
    bool pasting; // what comes is no typing: it was put in from somewhere else
    size_t cursor_row, cursor_column;
    bool cursor_seen;
} term;

// ------------------------------------------------------------------------------------------------ styles

// Colours are the terminal's own eight; pair N + 1 is used for the style N. Terminals without them get `plain`.
typedef struct look {
    short colour; // -1: the terminal's own
    attr_t attributes;
    attr_t plain;
} look;

static const look looks[BK_STYLES] = {
    [BK_STYLE_PLAIN] = {-1, A_NORMAL, A_NORMAL},
    [BK_STYLE_DIM] = {-1, A_DIM, A_DIM},
    [BK_STYLE_BOLD] = {-1, A_BOLD, A_BOLD},
    [BK_STYLE_ACCENT] = {COLOR_CYAN, A_NORMAL, A_BOLD},
    [BK_STYLE_LATE] = {COLOR_RED, A_BOLD, A_BOLD},
    [BK_STYLE_TIGHT] = {COLOR_YELLOW, A_NORMAL, A_NORMAL},
    [BK_STYLE_IN_TIME] = {COLOR_GREEN, A_NORMAL, A_NORMAL},
};

static void start_colours(void)
{
    const char *refused = getenv("NO_COLOR");
    term.colours =
        (!refused || !*refused) && has_colors() && start_color() == OK && use_default_colors() == OK;
    for (short i = 0; term.colours && i < BK_STYLES; i++)
        init_pair((short)(i + 1), looks[i].colour, -1);
}

static attr_t attributes_of(int style)
{
    const look *shown = &looks[style & ~BK_STYLE_CHOSEN];
    attr_t attributes = term.colours ? shown->attributes : shown->plain;
    return style & BK_STYLE_CHOSEN ? (attributes & ~A_DIM) | A_REVERSE : attributes;
}

static short pair_of(int style)
{
    bool coloured = term.colours && !(style & BK_STYLE_CHOSEN) && looks[style].colour >= 0;
    return coloured ? (short)(style + 1) : 0;
}

// -------------------------------------------------------------------------------------------------- keys

// What terminals send although their description may not say so.
static const struct sequence {
    const char *bytes;
    int code;
} sequences[] = {
    {"\033[A", KEY_UP},     {"\033[B", KEY_DOWN},        {"\033[C", KEY_RIGHT},     {"\033[D", KEY_LEFT},
    {"\033OA", KEY_UP},     {"\033OB", KEY_DOWN},        {"\033OC", KEY_RIGHT},     {"\033OD", KEY_LEFT},
    {"\033[H", KEY_HOME},   {"\033OH", KEY_HOME},        {"\033[1~", KEY_HOME},     {"\033[7~", KEY_HOME},
    {"\033[F", KEY_END},    {"\033OF", KEY_END},         {"\033[4~", KEY_END},      {"\033[8~", KEY_END},
    {"\033[5~", KEY_PPAGE}, {"\033[6~", KEY_NPAGE},      {"\033OM", KEY_ENTER},     {"\033[3~", KEY_DC},
    {"\033[Z", KEY_BTAB},   {"\033[200~", PASTE_BEGINS}, {"\033[201~", PASTE_ENDS},
};

static void make_keys_known(void)
{
    for (size_t i = 0; i < sizeof sequences / sizeof sequences[0]; i++)
        if (key_defined(sequences[i].bytes) == 0)
            define_key(sequences[i].bytes, sequences[i].code);
}

static const struct code_name {
    wint_t code;
    bk_key_name name;
} function_keys[] =
    {
        {KEY_UP, BK_KEY_UP},       {KEY_DOWN, BK_KEY_DOWN},     {KEY_LEFT, BK_KEY_LEFT},
        {KEY_RIGHT, BK_KEY_RIGHT}, {KEY_PPAGE, BK_KEY_PAGE_UP}, {KEY_NPAGE, BK_KEY_PAGE_DOWN},
        {KEY_HOME, BK_KEY_HOME},   {KEY_FIND, BK_KEY_HOME},     {KEY_END, BK_KEY_END},
        {KEY_SELECT, BK_KEY_END},  {KEY_ENTER, BK_KEY_ENTER},   {KEY_BACKSPACE, BK_KEY_BACKSPACE},
        {KEY_DC, BK_KEY_DELETE},   {KEY_BTAB, BK_KEY_BACK_TAB}, {KEY_RESIZE, BK_KEY_RESIZED},
},
  control_keys[] = {
      {'\r', BK_KEY_ENTER},          {'\n', BK_KEY_ENTER},       {ESCAPE, BK_KEY_ESCAPE},
      {CONTROL_H, BK_KEY_BACKSPACE}, {DELETE, BK_KEY_BACKSPACE}, {'\t', BK_KEY_TAB},
      {CONTROL_E, BK_KEY_EDITOR},    {CONTROL_S, BK_KEY_SAVE},   {CONTROL_U, BK_KEY_EMPTY},
};

static bk_key_name name_of(const struct code_name *names, size_t count, wint_t code)
{
    for (size_t i = 0; i < count; i++)
        if (names[i].code == code)
            return names[i].name;
    return BK_KEY_NONE;
}

static bk_key typed_key(wint_t code)
{
    bk_key key = {.name = name_of(control_keys, sizeof control_keys / sizeof control_keys[0], code)};
    mbstate_t state = {0};
    char bytes[MB_LEN_MAX];
    if (key.name != BK_KEY_NONE || code < ' ')
        return key;
    size_t length = wcrtomb(bytes, (wchar_t)code, &state);
    if (length < sizeof key.text && (!term.ascii || code < DELETE)) {
        key.name = BK_KEY_TYPED;
        memcpy(key.text, bytes, length);
    }
    return key;
}

// Whether whoever was on the other side of the terminal has gone: it says that there is something to read, and nothing is.
static bool terminal_gone(void)
{
    struct pollfd input = {.fd = STDIN_FILENO, .events = POLLIN};
    int bytes = 0;
    if (poll(&input, 1, 0) <= 0)
        return false;
    return (input.revents & (POLLHUP | POLLERR | POLLNVAL)) || ioctl(STDIN_FILENO, FIONREAD, &bytes) != 0 ||
           bytes == 0;
}

// -------------------------------------------------------------------------------------- pause and come back

// Tells the terminal one of its capabilities that needs nothing, where it has it.
static void tell(const char *name)
{
    const char *capability = tigetstr(name);
    if (capability && capability != (const char *)-1)
        putp(capability);
}

static void give_away(void)
{
    tell("BD");
    endwin();
}

static void come_back(void)
{
    reset_prog_mode();
    tell("BE");
    term.pasting = false;
    clearok(curscr, TRUE);
}

// --------------------------------------------------------------------------------------- start and stop

static char farewell[FAREWELL_ROOM];
static size_t farewell_length;

static int add_to_farewell(int byte)
{
    if (farewell_length < FAREWELL_ROOM)
        farewell[farewell_length++] = (char)byte;
    return byte;
}

static void add_capability(const char *name)
{
    const char *capability = tigetstr(name);
    if (capability && capability != (const char *)-1)
        tputs(capability, 1, add_to_farewell);
}

static void prepare_farewell(void)
{
    static const char *const leaving[] = {"BD", "sgr0", "op", "rmkx", "cnorm", "rmcup"};
    farewell_length = 0;
    const char *move = tigetstr("cup");
    tputs(tparm(move, (long)LINES - 1, 0L, 0L, 0L, 0L, 0L, 0L, 0L, 0L), 1, add_to_farewell);
    for (size_t i = 0; i < sizeof leaving / sizeof leaving[0]; i++)
        add_capability(leaving[i]);
    add_to_farewell('\r');
    add_to_farewell('\n');
    bk_rescue_farewell(farewell, farewell_length);
}

// Control-S is a key of the program, not the brake of the terminal's output.
static void keep_no_flow_control(void)
{
    struct termios settings;
    if (tcgetattr(STDIN_FILENO, &settings) != 0)
        return;
    settings.c_iflag &= ~(tcflag_t)IXON;
    tcsetattr(STDIN_FILENO, TCSADRAIN, &settings);
    def_prog_mode();
}

bk_status bk_term_possible(bk_error *error)
{
    const char *kind = getenv("TERM");
    int found = 0;
    if (!isatty(STDIN_FILENO) || !isatty(STDOUT_FILENO))
        return bk_fail(error, BK_REFUSED,
                       "The screens need a terminal to type on and to show on; \"bodkin rail\" prints the "
                       "rail as text.");
    if (!kind || !*kind || setupterm(NULL, STDOUT_FILENO, &found) != OK)
        return bk_fail(
            error, BK_REFUSED,
            "This computer does not know the kind of terminal that TERM names (%.40s); try TERM=xterm.",
            kind && *kind ? kind : "nothing");
    const char *move = tigetstr("cup");
    bool moves = move && move != (const char *)-1;
    del_curterm(cur_term);
    if (!moves)
        return bk_fail(
            error, BK_REFUSED,
            "The terminal that TERM names (%.40s) cannot place text on a screen; \"bodkin rail\" prints the "
            "rail as text.",
            kind);
    return BK_OK;
}

bk_status bk_term_start(bk_error *error)
{
    setlocale(LC_CTYPE, "");
    term.ascii = strcmp(nl_langinfo(CODESET), "UTF-8") != 0;
    bk_status status = bk_term_possible(error);
    if (status)
        return status;
    bk_rescue_arm();
    // The terminal itself knows its size; what a shell has exported would stay the same when the size changes.
    unsetenv("LINES");
    unsetenv("COLUMNS");
    term.screen = newterm(NULL, stdout, stdin);
    if (!term.screen) {
        bk_rescue_disarm();
        return bk_fail(error, BK_REFUSED,
                       "The terminal (TERM=%.40s) could not be taken over for the screens.", getenv("TERM"));
    }
    bk_pausing_begin();
    prepare_farewell();
    tell("BE"); // what is pasted comes between marks
    set_escdelay(ESCAPE_MILLISECONDS);
    cbreak();
    noecho();
    nonl();
    keypad(stdscr, TRUE);
    nodelay(stdscr, TRUE);
    intrflush(stdscr, FALSE);
    keep_no_flow_control();
    make_keys_known();
    start_colours();
    curs_set(0);
    return BK_OK;
}

void bk_term_stop(void)
{
    if (!term.screen)
        return;
    give_away();
    bk_rescue_disarm();
    bk_pausing_end();
    delscreen(term.screen);
    term.screen = NULL;
}

void bk_term_pause(void)
{
    give_away();
    bk_rescue_disarm();
    bk_pausing_end();
}

void bk_term_resume(void)
{
    bk_rescue_arm();
    bk_pausing_begin();
    prepare_farewell();
    come_back();
}

size_t bk_term_rows(void)
{
    return (size_t)LINES;
}

size_t bk_term_columns(void)
{
    return (size_t)COLS;
}

bool bk_term_ascii(void)
{
    return term.ascii;
}

// ----------------------------------------------------------------------------------------------- drawing

void bk_term_clear(void)
{
    erase();
}

// Reads one character; "?" stands for what the terminal's own tables do not know. `*wide` gets its columns.
static wchar_t next_character(const char **text, int *wide)
{
    mbstate_t state = {0};
    wchar_t character = L'?';
    size_t length = mbrtowc(&character, *text, MB_LEN_MAX, &state);
    bool known = length > 0 && length <= MB_LEN_MAX;
    *text += known ? length : 1;
    *wide = known ? wcwidth(character) : -1;
    if (*wide >= 0)
        return character;
    *wide = 1;
    return L'?';
}

// Reads one character with the marks on it into `cell` and returns its columns.
static size_t next_cell(const char **text, wchar_t cell[MOST_MARKS + 2])
{
    int wide = 0, more = 0;
    size_t count = 1;
    cell[0] = next_character(text, &wide);
    if (wide == 0)
        cell[0] = L'?';
    for (const char *rest = *text; *rest && count <= MOST_MARKS; *text = rest) {
        cell[count] = next_character(&rest, &more);
        if (more != 0)
            break;
        count++;
    }
    cell[count] = L'\0';
    return wide == 2 ? 2 : 1;
}

size_t bk_term_put(size_t row, size_t column, size_t width, int style, const char *text)
{
    size_t used = 0, room = bk_term_columns() > column ? bk_term_columns() - column : 0;
    if (row >= bk_term_rows() || room == 0)
        return 0;
    move((int)row, (int)column);
    while (*text) {
        wchar_t cell[MOST_MARKS + 2];
        cchar_t drawn;
        size_t wide = next_cell(&text, cell);
        if (used + wide > width || used + wide > room)
            break;
        setcchar(&drawn, cell, attributes_of(style), pair_of(style), NULL);
        add_wch(&drawn);
        used += wide;
    }
    return used;
}

void bk_term_fill(size_t row, size_t column, size_t width, int style)
{
    while (width-- > 0)
        column += bk_term_put(row, column, 1, style, " ");
}

void bk_term_cursor(size_t row, size_t column, bool seen)
{
    term.cursor_row = row;
    term.cursor_column = column;
    term.cursor_seen = seen;
}

void bk_term_show(void)
{
    curs_set(term.cursor_seen ? 1 : 0);
    move((int)term.cursor_row, (int)term.cursor_column);
    refresh();
}

// ----------------------------------------------------------------------------------------------- waiting

// What happened to the terminal meanwhile, as a key; BK_KEY_NONE: nothing.
static bk_key_name what_happened(void)
{
    if (bk_pausing_asked()) {
        give_away();
        bk_pausing_now();
    }
    if (bk_pausing_over()) {
        come_back();
        return BK_KEY_REPAINT;
    }
    return terminal_gone() ? BK_KEY_GONE : BK_KEY_NONE;
}

// Of what is pasted only characters are taken, and line ends and tabs as spaces: it must never do what keys do. Escape ends it
// where the terminal has forgotten to.
static void take_as_pasted(bk_key *key, int mark)
{
    term.pasting = mark == PASTE_BEGINS || (mark != PASTE_ENDS && key->name != BK_KEY_ESCAPE);
    key->pasted = true;
    if (key->name == BK_KEY_ENTER || key->name == BK_KEY_TAB)
        *key = (bk_key){.name = BK_KEY_TYPED, .text = " ", .pasted = true};
    else if (key->name != BK_KEY_TYPED)
        key->name = BK_KEY_NONE;
}

bool bk_term_key(bk_key *key)
{
    wint_t code = 0;
    int kind = get_wch(&code);
    *key = (bk_key){.name = BK_KEY_NONE};
    if (kind == ERR) {
        key->name = what_happened();
        return key->name != BK_KEY_NONE;
    }
    if (kind == OK)
        *key = typed_key(code);
    else
        key->name = name_of(function_keys, sizeof function_keys / sizeof function_keys[0], code);
    if (key->name == BK_KEY_RESIZED)
        prepare_farewell();
    int mark = kind == OK ? 0 : (int)code;
    if (term.pasting || mark == PASTE_BEGINS)
        take_as_pasted(key, mark);
    return true;
}

void bk_term_wait(int milliseconds)
{
    struct timespec most = {.tv_sec = milliseconds / MILLISECONDS,
                            .tv_nsec = (long)(milliseconds % MILLISECONDS) * MICROSECONDS * MILLISECONDS};
    fd_set input;
    FD_ZERO(&input);
    FD_SET(STDIN_FILENO, &input);
    pselect(STDIN_FILENO + 1, &input, NULL, NULL, &most, bk_pausing_mask());
}
