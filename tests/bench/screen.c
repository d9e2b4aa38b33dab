// How soon the Rail screen is first painted, and how soon a key is answered there and on other screens. The worst time of
// a screen is that of opening it.
//
//     bench_screen BODKIN STORE [PRODUCTION]
//
// The program runs on a pseudo-terminal of 80 by 24 and of 160 by 48; a key is answered when the program says that its
// picture is painted and it waits for the next key. It is painted first when the heads of the columns stand there, and says so when all
// is reckoned. While it is kept reckoning it says nothing: then a key is answered by the first that is painted after it. Prints
// milliseconds: the median, the 99th percentile and the worst.
#define _GNU_SOURCE // memmem
#include <poll.h>
#include <pty.h>
#include <signal.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <time.h>
#include <unistd.h>
#include <utmp.h>

enum {
    STARTS = 20,
    ROUNDS = 12,
    MOST_TIMES = 4096,
    READ_ROOM = 65536,
    QUIET_MILLISECONDS = 50, // nothing more comes
    NUMBER_ROOM = 16,
    HUNDRED = 100,
    NINETY_NINE = 99
};

#define FOR_EVER "1000000" // schedules and trials

typedef struct program {
    int master, idle;
    pid_t child;
} program;

static double milliseconds_now(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec * 1e3 + (double)now.tv_nsec / 1e6;
}

// Waits for the byte that says the picture is painted, reading meanwhile what is sent. False when the program has ended.
static bool await_painting(const program *run)
{
    static char bytes[READ_ROOM];
    struct pollfd ends[] = {{.fd = run->idle, .events = POLLIN}, {.fd = run->master, .events = POLLIN}};
    while (poll(ends, 2, -1) > 0) {
        if ((ends[1].revents & POLLIN) && read(run->master, bytes, sizeof bytes) <= 0)
            return false;
        if (ends[0].revents)
            return read(run->idle, bytes, 1) == 1;
    }
    return false;
}

// Waits until it has sent that text, or, with NULL, anything. False when the program has ended.
static bool await_sent(const program *run, const char *text)
{
    static char bytes[READ_ROOM];
    size_t kept = 0, most = sizeof bytes / 2;
    for (;;) {
        ssize_t length = read(run->master, bytes + kept, sizeof bytes - kept);
        if (length <= 0)
            return false;
        kept += (size_t)length;
        if (!text || memmem(bytes, kept, text, strlen(text)))
            return true;
        if (kept > most) {
            memmove(bytes, bytes + kept - most / 2, most / 2);
            kept = most / 2;
        }
    }
}

// Takes what it has sent so far.
static void drain(const program *run)
{
    static char bytes[READ_ROOM];
    struct pollfd output = {.fd = run->master, .events = POLLIN};
    while (poll(&output, 1, QUIET_MILLISECONDS) > 0 && read(run->master, bytes, sizeof bytes) > 0)
        continue;
}

static void run_child(int slave, int idle, char **arguments)
{
    char number[NUMBER_ROOM];
    login_tty(slave);
    snprintf(number, sizeof number, "%d", idle);
    setenv("BODKIN_IDLE_FD", number, 1);
    setenv("TERM", "xterm-256color", 1);
    setenv("LC_ALL", "C.UTF-8", 1);
    execv(arguments[0], arguments);
    _exit(EXIT_FAILURE);
}

// Starts it and waits until it has sent that text; NULL: until all is reckoned and painted.
static program start(char **arguments, const struct winsize *size, const char *text)
{
    program run = {0};
    int slave = -1, idle[2];
    if (pipe(idle) != 0 || openpty(&run.master, &slave, NULL, NULL, size) != 0) {
        perror("bench_screen");
        exit(EXIT_FAILURE);
    }
    run.child = fork();
    if (run.child == 0)
        run_child(slave, idle[1], arguments);
    close(slave);
    close(idle[1]);
    run.idle = idle[0];
    if (!(text ? await_sent(&run, text) : await_painting(&run))) {
        fprintf(stderr, "bench_screen: %s did not paint a screen\n", arguments[0]);
        exit(EXIT_FAILURE);
    }
    return run;
}

static void end(program *run)
{
    kill(run->child, SIGKILL);
    waitpid(run->child, NULL, 0);
    close(run->master);
    close(run->idle);
}

static int by_size(const void *left, const void *right)
{
    double a = *(const double *)left, b = *(const double *)right;
    return (a > b) - (a < b);
}

static void print_times(const char *what, double *times, size_t count)
{
    qsort(times, count, sizeof *times, by_size);
    printf("  %-38s %7.2f %7.2f %7.2f   of %zu\n", what, times[count / 2],
           times[count * NINETY_NINE / HUNDRED], times[count - 1], count);
}

static void measure_starts(char **arguments, const struct winsize *size, const char *what, const char *text)
{
    double times[STARTS];
    for (size_t i = 0; i < STARTS; i++) {
        double begun = milliseconds_now();
        program run = start(arguments, size, text);
        times[i] = milliseconds_now() - begun;
        end(&run);
    }
    print_times(what, times, STARTS);
}

// A kind of key, pressed by turns as a person would.
static const struct pressing {
    const char *what;
    const char *keys[10]; // up to NULL
    bool apart;           // not counted with the others: Escape is only known after its delay
} pressings[] = {
    {.what = "arrows", .keys = {"\033OB", "\033OB", "\033OA", "\033OB"}},
    {.what = "page keys, Home, End", .keys = {"\033[6~", "\033[6~", "\033OF", "\033[5~", "\033OH"}},
    {.what = "one key to show only what waits", .keys = {"m", "c", "f", "h", "a"}},
    {.what = "/ and words, letter by letter", .keys = {"/", "r", "o", "l", "e", " ", "1", "\r", "a"}},
    {.what = "Materials: arrows and pages", .keys = {"M", "\033OB", "\033OB", "\033[6~", "\033OF", "\033OH"}},
    {.what = "Fittings: arrows and pages", .keys = {"F", "\033OB", "\033OB", "\033[6~", "\033OF", "\033OH"}},
    {.what = "Notes: arrows and pages", .keys = {"N", "\033OB", "\033OB", "\033[6~", "\033OF", "\033OH"}},
    {.what = "look for, letter by letter, and back",
     .keys = {"l", "r", "o", "l", "e", " ", "1", "\033"},
     .apart = true},
    {.what = "open a costume, and back (50 ms)",
     .keys = {"R", "\r", "\033OB", "\033OB", "\033"},
     .apart = true},
};

static size_t press(const program *run, const struct pressing *pressing, double *times)
{
    enum { KEYS = sizeof pressing->keys / sizeof pressing->keys[0] };
    size_t count = 0;
    for (size_t round = 0; round < ROUNDS; round++)
        for (size_t i = 0; i < KEYS && pressing->keys[i]; i++) {
            const char *key = pressing->keys[i];
            double begun = milliseconds_now();
            if (write(run->master, key, strlen(key)) < 0 || !await_painting(run))
                return count;
            times[count++] = milliseconds_now() - begun;
        }
    return count;
}

static void measure_keys(char **arguments, const struct winsize *size)
{
    static double times[MOST_TIMES], all[MOST_TIMES];
    size_t all_count = 0;
    program run = start(arguments, size, NULL);
    for (size_t i = 0; i < sizeof pressings / sizeof pressings[0]; i++) {
        size_t count = press(&run, &pressings[i], times);
        memcpy(all + all_count, times, count * sizeof *times);
        all_count += pressings[i].apart ? 0 : count;
        print_times(pressings[i].what, times, count);
    }
    end(&run);
    print_times("all but those with Escape", all, all_count);
}

// How long leaving takes meanwhile.
static void measure_leaving(char **arguments, const struct winsize *size)
{
    double times[ROUNDS];
    size_t count = 0;
    for (size_t i = 0; i < ROUNDS; i++) {
        program run = start(arguments, size, "reckoning");
        drain(&run);
        double begun = milliseconds_now();
        if (write(run.master, "q", 1) < 0)
            break;
        while (await_sent(&run, NULL))
            continue;
        times[count++] = milliseconds_now() - begun;
        end(&run);
    }
    print_times("leaving while it reckons", times, count);
}

// Moving on the Rail, and leaving, while the reckoning goes on and on.
static void measure_while_reckoning(char **arguments, const struct winsize *size)
{
    static const char *const keys[] = {"\033OB", "\033OB", "\033OF", "\033OH"};
    enum { KEYS = sizeof keys / sizeof keys[0] };
    double times[ROUNDS * KEYS];
    size_t count = 0;
    char *tries = getenv("BODKIN_TRIES") ? strdup(getenv("BODKIN_TRIES")) : NULL;
    setenv("BODKIN_TRIES", FOR_EVER, 1);
    program run = start(arguments, size, "reckoning");
    for (size_t i = 0; i < ROUNDS * KEYS; i++) {
        drain(&run);
        double begun = milliseconds_now();
        const char *key = keys[i % KEYS];
        if (write(run.master, key, strlen(key)) < 0 || !await_sent(&run, NULL))
            break;
        times[count++] = milliseconds_now() - begun;
    }
    end(&run);
    print_times("arrows, Home, End while it reckons", times, count);
    measure_leaving(arguments, size);
    if (tries)
        setenv("BODKIN_TRIES", tries, 1);
    else
        unsetenv("BODKIN_TRIES");
    free(tries);
}

int main(int count, char **words)
{
    static const struct winsize sizes[] = {{.ws_row = 24, .ws_col = 80}, {.ws_row = 48, .ws_col = 160}};
    if (count < 3 || count > 4) {
        fprintf(stderr, "usage: bench_screen BODKIN STORE [PRODUCTION]\n");
        return EXIT_FAILURE;
    }
    char *arguments[] = {words[1],  "--store",    words[2],
                         "--today", "2027-03-02", count > 3 ? "--production" : NULL,
                         words[3],  NULL};
    for (size_t i = 0; i < sizeof sizes / sizeof sizes[0]; i++) {
        printf("%hu by %hu, milliseconds: median, 99th percentile, worst\n", sizes[i].ws_col,
               sizes[i].ws_row);
        measure_starts(arguments, &sizes[i], "first painting", "Costume");
        measure_starts(arguments, &sizes[i], "all reckoned", NULL);
        measure_while_reckoning(arguments, &sizes[i]);
        measure_keys(arguments, &sizes[i]);
    }
    return EXIT_SUCCESS;
}
