#include <locale.h>
#include <stdio.h>
#include <stdlib.h>

#include "bodkin/base/arena.h"
#include "bodkin/cmd/command.h"

static void memory_exhausted(size_t wanted)
{
    fprintf(stderr,
            "bodkin: The computer has no memory left (%zu bytes were wanted); nothing half-done was kept.\n",
            wanted);
    exit(BK_STORE);
}

int main(int argc, char **argv)
{
    setlocale(LC_ALL, "");
    bk_on_exhausted(memory_exhausted);
    return bk_command_line(argc, argv);
}
