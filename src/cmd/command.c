#include "bodkin/cmd/command.h"

#include <getopt.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/cmd/surroundings.h"
#include "bodkin/trade/words.h"
#include "bodkin/work/forecast.h"

// ------------------------------------------------------------------------------------------------- options

enum { OPTION_STORE = 256, OPTION_PRODUCTION, OPTION_TODAY, OPTION_AS, OPTION_NAME, OPTION_VERSION };
enum {
    OPTION_LONG_JSON = 300,
    OPTION_LONG_REPLACE,
    OPTION_TOOK,
    OPTION_BY,
    OPTION_ON,
    OPTION_CHECK,
    OPTION_OVER,
    OPTION_PERFORMER,
    OPTION_MINUTES,
    OPTION_FROM,
    OPTION_WHO,
    OPTION_PERSON,
    OPTION_SEED,
    OPTION_TRIES
};

static const struct option long_options[] = {
    {"store", required_argument, NULL, OPTION_STORE},
    {"production", required_argument, NULL, OPTION_PRODUCTION},
    {"today", required_argument, NULL, OPTION_TODAY},
    {"as", required_argument, NULL, OPTION_AS},
    {"name", required_argument, NULL, OPTION_NAME},
    {"json", no_argument, NULL, OPTION_LONG_JSON},
    {"replace", no_argument, NULL, OPTION_LONG_REPLACE},
    {"took", required_argument, NULL, OPTION_TOOK},
    {"by", required_argument, NULL, OPTION_BY},
    {"on", required_argument, NULL, OPTION_ON},
    {"check", no_argument, NULL, OPTION_CHECK},
    {"over", required_argument, NULL, OPTION_OVER},
    {"performer", required_argument, NULL, OPTION_PERFORMER},
    {"minutes", required_argument, NULL, OPTION_MINUTES},
    {"from", required_argument, NULL, OPTION_FROM},
    {"who", required_argument, NULL, OPTION_WHO},
    {"person", required_argument, NULL, OPTION_PERSON},
    {"seed", required_argument, NULL, OPTION_SEED},
    {"tries", required_argument, NULL, OPTION_TRIES},
    {"help", no_argument, NULL, 'h'},
    {"version", no_argument, NULL, OPTION_VERSION},
    {0},
};

/// Options that only some commands take.
static const struct own_option {
    unsigned option;
    const char *name;
} own_options[] = {
    {BK_OPTION_JSON, "--json"},       {BK_OPTION_REPLACE, "--replace"},
    {BK_OPTION_TOOK, "--took"},       {BK_OPTION_BY, "--by"},
    {BK_OPTION_ON, "--on"},           {BK_OPTION_CHECK, "--check"},
    {BK_OPTION_OVER, "--over"},       {BK_OPTION_PERFORMER, "--performer"},
    {BK_OPTION_MINUTES, "--minutes"}, {BK_OPTION_FROM, "--from"},
    {BK_OPTION_WHO, "--who"},         {BK_OPTION_PERSON, "--person"},
    {BK_OPTION_SEED, "--seed"},       {BK_OPTION_TRIES, "--tries"},
};

static const char *const options_help =
    "Options, before or after the command:\n"
    "  --store FILE         the workroom's file (else $BODKIN_STORE, else "
    "~/.local/share/bodkin/workroom.db)\n"
    "  --production NAME    the production meant (else the only one, else the next to open)\n"
    "  --today YYYY-MM-DD   reckon for that day (else $BODKIN_TODAY, else today)\n"
    "  --as WHO             maker, director or volunteer (else maker)\n"
    "  --name NAME          who I am, for the daybook (else the login)\n"
    "  --json               for programs: rail, bench, daybook, measures\n"
    "  --replace            import: in the place of the production of that name; export: of the sheets "
    "there\n"
    "  --seed N             screens, rail, bench: another row of chances for days and odds (else 1)\n"
    "  --tries N            screens, rail, bench: try so many plans and trials (else $BODKIN_TRIES, else as\n"
    "                       many as the work needs); 0: one plan, no odds\n"
    "  --help, --version\n";

enum { CALL_COLUMNS = 18 }; // of a command and its arguments in the help

static const bk_words as_words = {"person", (const char *const[]){"maker", "director", "volunteer"}, 3};

typedef struct command_line {
    bk_call call;
    const bk_command *command; ///< NULL: the screens
    unsigned options;          ///< those given that only some commands take
    const char *on;            ///< of --on: a day, or what something is about; NULL: not given
    bool help, version;
    char **words; ///< what is no option, in order: the command, and what it is called with
    int word_count;
} command_line;

static bk_status read_day(const char *text, const char *from, bk_day *day, bk_error *error)
{
    if (bk_day_read(text, day)) {
        return BK_OK;
    }
    return bk_fail(error, BK_USAGE, "%s wants a day such as 2027-03-02, not \"%s\".", from, text);
}

static bk_status read_minutes(const char *text, const char *from, int64_t *minutes, bk_error *error)
{
    enum { MOST_MINUTES = 1000000 }; // as the sheets take them
    if (bk_whole_read(text, 0, MOST_MINUTES, minutes) == BK_READ_OK) {
        return BK_OK;
    }
    return bk_fail(error, BK_USAGE, "%s wants whole minutes, such as 45, not \"%s\".", from, text);
}

static bk_status read_seed(const char *text, uint64_t *seed, bk_error *error)
{
    int64_t number;
    if (bk_whole_read(text, 0, INT64_MAX, &number) == BK_READ_OK) {
        *seed = (uint64_t)number;
        return BK_OK;
    }
    return bk_fail(error, BK_USAGE, "--seed wants a whole number, such as 7, not \"%s\".", text);
}

static bk_status read_tries(const char *text, const char *from, int64_t *tries, bk_error *error)
{
    enum { MOST_TRIES = 1000000 };
    if (bk_whole_read(text, 0, MOST_TRIES, tries) == BK_READ_OK) {
        return BK_OK;
    }
    return bk_fail(error, BK_USAGE, "%s wants a whole number from 0 to %d, such as 500, not \"%s\".", from,
                   MOST_TRIES, text);
}

/// An option whose value is some text, which must say something.
static bk_status read_text(command_line *line, unsigned option, const char *from, const char **text,
                           bk_error *error)
{
    *text = optarg;
    line->options |= option;
    return optarg[strspn(optarg, " \t\r\n")] ? BK_OK
                                             : bk_fail(error, BK_USAGE, "%s wants %s.", from,
                                                       option == BK_OPTION_FROM ? "a word" : "a name");
}

static bk_status read_as(const char *text, bk_as *as, bk_error *error)
{
    int word = bk_word_find(&as_words, text);
    *as = (bk_as)word;
    return word != BK_NO_WORD
               ? BK_OK
               : bk_fail(error, BK_USAGE, "--as wants maker, director or volunteer, not \"%s\".", text);
}

/// One that only some commands take.
static bk_status read_own_option(command_line *line, int option, bk_error *error)
{
    switch (option) {
    case OPTION_LONG_JSON:
        line->call.json = true;
        line->options |= BK_OPTION_JSON;
        return BK_OK;
    case OPTION_LONG_REPLACE:
        line->call.replace = true;
        line->options |= BK_OPTION_REPLACE;
        return BK_OK;
    case OPTION_TOOK:
        line->options |= BK_OPTION_TOOK;
        return read_minutes(optarg, "--took", &line->call.took, error);
    case OPTION_BY:
        return read_text(line, BK_OPTION_BY, "--by", &line->call.by, error);
    case OPTION_ON:
        line->options |= BK_OPTION_ON;
        line->on = optarg;
        return BK_OK;
    case OPTION_PERFORMER:
        return read_text(line, BK_OPTION_PERFORMER, "--performer", &line->call.performer, error);
    case OPTION_MINUTES:
        line->options |= BK_OPTION_MINUTES;
        return read_minutes(optarg, "--minutes", &line->call.minutes, error);
    case OPTION_FROM:
        return read_text(line, BK_OPTION_FROM, "--from", &line->call.from, error);
    case OPTION_WHO:
        return read_text(line, BK_OPTION_WHO, "--who", &line->call.who, error);
    case OPTION_CHECK:
        line->call.check = true;
        line->options |= BK_OPTION_CHECK;
        return BK_OK;
    case OPTION_OVER:
        line->call.over = optarg;
        line->options |= BK_OPTION_OVER;
        return BK_OK;
    case OPTION_PERSON:
        return read_text(line, BK_OPTION_PERSON, "--person", &line->call.person, error);
    case OPTION_SEED:
        line->options |= BK_OPTION_SEED;
        return read_seed(optarg, &line->call.seed, error);
    case OPTION_TRIES:
        line->options |= BK_OPTION_TRIES;
        return read_tries(optarg, "--tries", &line->call.tries, error);
    default:
        return BK_USAGE;
    }
}

static bk_status read_option(command_line *line, int option, bk_error *error)
{
    switch (option) {
    case OPTION_STORE:
        line->call.store = optarg;
        return *optarg ? BK_OK : bk_fail(error, BK_USAGE, "--store wants the name of a file.");
    case OPTION_PRODUCTION:
        line->call.production = optarg;
        return BK_OK;
    case OPTION_TODAY:
        return read_day(optarg, "--today", &line->call.pinned_today, error);
    case OPTION_AS:
        return read_as(optarg, &line->call.as, error);
    case OPTION_NAME:
        line->call.name = optarg;
        return *optarg ? BK_OK : bk_fail(error, BK_USAGE, "--name wants a name.");
    case 'h':
        line->help = true;
        return BK_OK;
    case OPTION_VERSION:
        line->version = true;
        return BK_OK;
    default:
        return read_own_option(line, option, error);
    }
}

/// What is wrong with the option that getopt stopped at.
static bk_status refuse_option(char **argv, bk_arena *arena, bk_error *error)
{
    const char *names[sizeof long_options / sizeof *long_options];
    size_t count = 0;
    for (; long_options[count].name; count++) {
        names[count] = long_options[count].name;
        if (long_options[count].val == optopt && optopt >= OPTION_STORE) {
            return bk_fail(error, BK_USAGE, "--%s takes no value; see bodkin --help.", names[count]);
        }
    }
    if (optopt) {
        return bk_fail(error, BK_USAGE, "There is no option -%c; see bodkin --help.", optopt);
    }
    const char *given = argv[optind - 1];
    const char *name = bk_arena_bytes(arena, given, strcspn(given, "="));
    const char *near = bk_nearest(name + strspn(name, "-"), names, count);
    return bk_fail(error, BK_USAGE, "There is no option %s%s%s; see bodkin --help.", name,
                   near ? "; did you mean --" : "", near ? near : "");
}

/// Reads the options wherever they stand; what is none of them is gathered at the beginning of `argv`, in order.
static bk_status read_options(int argc, char **argv, command_line *line, bk_arena *arena, bk_error *error)
{
    enum { NO_OPTION = 1 };
    int option;
    bk_status status = BK_OK;
    opterr = 0;
    line->words = argv + 1;
    while (!status && (option = getopt_long(argc, argv, "-:h", long_options, NULL)) != -1) {
        if (option == NO_OPTION) {
            line->words[line->word_count++] = optarg;
        } else if (option == ':') {
            status = bk_fail(error, BK_USAGE, "%s wants a value; see bodkin --help.", argv[optind - 1]);
        } else if (option == '?') {
            status = refuse_option(argv, arena, error);
        } else {
            status = read_option(line, option, error);
        }
    }
    while (!status && optind < argc) {
        line->words[line->word_count++] = argv[optind++];
    }
    return status;
}

// -------------------------------------------------------------------------------------------------- command

static bk_status find_command(command_line *line, bk_arena *arena, bk_error *error)
{
    if (!line->word_count) {
        return BK_OK;
    }
    const char *word = line->words[0];
    const char **names = bk_arena_clear(arena, bk_command_count, sizeof *names);
    for (size_t i = 0; i < bk_command_count; i++) {
        names[i] = bk_commands[i].name;
        if (!strcmp(names[i], word)) {
            line->command = &bk_commands[i];
        }
    }
    if (!line->command) {
        const char *near = bk_nearest(word, names, bk_command_count);
        return bk_fail(error, BK_USAGE, "There is no command \"%s\"%s%s; see bodkin --help.", word,
                       near ? "; did you mean " : "", near ? near : "");
    }
    line->call.arguments = line->words + 1;
    line->call.argument_count = line->word_count - 1;
    return BK_OK;
}

/// What --on says: of some commands what they are about, else a day.
static bk_status settle_on(command_line *line, bk_error *error)
{
    if (!line->on) {
        return BK_OK;
    }
    if (line->command && line->command->options & BK_OPTION_ABOUT) {
        line->call.about = line->on;
        return *line->on ? BK_OK : bk_fail(error, BK_USAGE, "--on wants a name.");
    }
    return read_day(line->on, "--on", &line->call.on, error);
}

/// The options that only some commands take, as far as this one, or the screens, take them.
static unsigned allowed_options(const command_line *line)
{
    return line->command ? line->command->options : BK_OPTION_SEED | BK_OPTION_TRIES;
}

static bk_status check_call(command_line *line, bk_error *error)
{
    const bk_command *command = line->command;
    unsigned allowed = allowed_options(line);
    int missing = command ? command->argument_count - line->call.argument_count : 0;
    if (missing > 0 || (missing < 0 && !command->or_more)) {
        return bk_fail(error, BK_USAGE, "It is called so: bodkin %s%s%s", command->name,
                       *command->arguments ? " " : "", command->arguments);
    }
    for (size_t i = 0; i < sizeof own_options / sizeof *own_options; i++) {
        if (line->options & ~allowed & own_options[i].option) {
            return bk_fail(error, BK_USAGE, "%s does not go with bodkin %s.", own_options[i].name,
                           command ? command->name : "alone");
        }
    }
    return settle_on(line, error);
}

static bk_status fill_defaults(command_line *line, bk_arena *arena, bk_error *error)
{
    const char *store = getenv("BODKIN_STORE");
    const char *today = getenv("BODKIN_TODAY");
    const char *tries = getenv("BODKIN_TRIES");
    if (!line->call.store) {
        line->call.store = store && *store ? store : bk_usual_store(arena);
    }
    if (!line->call.store) {
        return bk_fail(error, BK_STORE,
                       "There is no home folder for the workroom's file; name one with --store FILE.");
    }
    if (!line->call.name) {
        line->call.name = bk_login(arena);
    }
    bk_status status = BK_OK;
    if (line->call.pinned_today == BK_NO_DAY && today && *today) {
        status = read_day(today, "BODKIN_TODAY", &line->call.pinned_today, error);
    }
    bool tried = (allowed_options(line) & ~line->options & BK_OPTION_TRIES) != 0;
    if (!status && tried && tries && *tries) {
        status = read_tries(tries, "BODKIN_TRIES", &line->call.tries, error);
    }
    return status;
}

// ----------------------------------------------------------------------------------------------------- help

/// One command with its purpose beside it, or below it where there is no room.
static void write_purpose(const bk_command *command, bk_buffer *out)
{
    size_t columns = strlen(command->name) + 1 + strlen(command->arguments);
    bk_buffer_print(out, "  %s %s", command->name, command->arguments);
    if (columns > CALL_COLUMNS + 1) {
        bk_buffer_char(out, '\n');
        columns = 0;
        bk_buffer_text(out, "  ");
    }
    bk_buffer_print(out, "%*s  %s\n", (int)(CALL_COLUMNS + 1 - columns), "", command->purpose);
}

static void write_help(const bk_command *command, bk_buffer *out)
{
    if (command) {
        bk_buffer_print(out, "Usage: bodkin %s%s%s [OPTIONS]\n\nBodkin %s: %s.\n%s\n\n%s", command->name,
                        *command->arguments ? " " : "", command->arguments, command->name, command->purpose,
                        command->details, options_help);
        return;
    }
    bk_buffer_text(
        out, "Usage: bodkin [OPTIONS]            the screens\n"
             "       bodkin COMMAND [OPTIONS]    one thing, and leave\n\n"
             "Bodkin dresses a show: what can be worked on now, what each costume waits on, and whether all "
             "will be on\nthe rail before opening night.\n\nCommands:\n");
    for (size_t i = 0; i < bk_command_count; i++) {
        write_purpose(&bk_commands[i], out);
    }
    bk_buffer_print(
        out,
        "\n%s\nExit status: 0 done, 1 refused or faulty input, 2 wrong usage, 3 the store could not be "
        "used.\n",
        options_help);
}

/// Prints the version or the help, where they are asked for; `*told` says whether they were.
static bk_status tell_about(const command_line *line, bool *told, bk_error *error)
{
    *told = line->version || line->help;
    if (!*told) {
        return BK_OK;
    }
    bk_buffer text = {0};
    if (line->version) {
        bk_buffer_print(&text, "bodkin %s\n", BK_VERSION);
    } else {
        write_help(line->command, &text);
    }
    bk_status status = bk_print_out(&text, error);
    bk_buffer_free(&text);
    return status;
}

static bk_status run(int argc, char **argv, bk_arena *arena, bk_error *error)
{
    command_line line = {.call = {.pinned_today = BK_NO_DAY,
                                  .as = BK_AS_MAKER,
                                  .on = BK_NO_DAY,
                                  .took = BK_NOT_KNOWN,
                                  .minutes = BK_NOT_KNOWN,
                                  .seed = BK_USUAL_SEED,
                                  .tries = -1}};
    bool told = false;
    bk_status status = read_options(argc, argv, &line, arena, error);
    if (!status && !line.version) {
        status = find_command(&line, arena, error);
    }
    if (!status) {
        status = tell_about(&line, &told, error);
    }
    if (!status && !told) {
        status = check_call(&line, error);
    }
    if (!status && !told) {
        status = fill_defaults(&line, arena, error);
    }
    if (status || told) {
        return status;
    }
    return line.command ? line.command->run(&line.call, error) : bk_screens_command(&line.call, error);
}

int bk_command_line(int argc, char **argv)
{
    bk_error error = {0};
    bk_arena *arena = bk_arena_new();
    signal(SIGPIPE, SIG_IGN);
    bk_status status = run(argc, argv, arena, &error);
    if (status && *error.text) {
        fprintf(stderr, "bodkin: %s\n", bk_text_safe(arena, error.text, bk_ascii_only()));
    }
    bk_arena_free(arena);
    return (int)status;
}
