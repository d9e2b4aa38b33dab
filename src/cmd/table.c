#include "bodkin/cmd/command.h"

const bk_command bk_commands[] = {
    {
        .name = "rail",
        .arguments = "",
        .purpose = "print every costume, when it will be ready and what it waits on",
        .details = "The most urgent first, each with the day on which it is expected and its chance to be "
                   "ready by its\n"
                   "due day. Text for people, at most 80 columns wide; with --json one object for programs.",
        .argument_count = 0,
        .options = BK_OPTION_JSON | BK_OPTION_SEED | BK_OPTION_TRIES,
        .run = bk_rail_command,
    },
    {
        .name = "bench",
        .arguments = "",
        .purpose = "print what can be worked on now, best first, and why",
        .details =
            "  --person NAME        what this person can do (else who I am, if the workroom knows me, else\n"
            "                       everybody)\n"
            "  --minutes MINUTES    first what fits so much time\n"
            "Of all productions that are not put away; with --production, of that one.",
        .argument_count = 0,
        .options = BK_OPTION_JSON | BK_OPTION_PERSON | BK_OPTION_MINUTES | BK_OPTION_SEED | BK_OPTION_TRIES,
        .run = bk_bench_command,
    },
    {
        .name = "import",
        .arguments = "DIR",
        .purpose = "take in a production from a folder of CSV sheets",
        .details = "All or nothing: every fault is told by file, line and column, and nothing is written "
                   "when there is\n"
                   "one. A production of the same name is put in the new one's place only with --replace.",
        .argument_count = 1,
        .options = BK_OPTION_REPLACE,
        .run = bk_import_command,
    },
    {
        .name = "export",
        .arguments = "DIR",
        .purpose = "write a production as a folder of CSV sheets",
        .details =
            "The folder is made when it is missing; sheets that are there already are replaced only with\n"
            "--replace. The files can be read by you alone: they hold measures and contacts.",
        .argument_count = 1,
        .options = BK_OPTION_REPLACE,
        .run = bk_export_command,
    },
    {
        .name = "tick",
        .arguments = "PIECE/STEP",
        .purpose = "mark a step done; its materials leave the shelf",
        .details = "  --took MINUTES       how long it took\n"
                   "  --by NAME            who did it (else who I am)\n"
                   "  --on YYYY-MM-DD      the day on which it was done (else today)",
        .argument_count = 1,
        .options = BK_OPTION_TOOK | BK_OPTION_BY | BK_OPTION_ON,
        .run = bk_tick_command,
    },
    {
        .name = "untick",
        .arguments = "PIECE/STEP",
        .purpose = "mark a step open again; its materials come back",
        .details = "What left the shelf when it was marked done comes back exactly.",
        .argument_count = 1,
        .options = 0,
        .run = bk_untick_command,
    },
    {
        .name = "book",
        .arguments = "PIECE/STEP... WHEN",
        .purpose = "book a fitting; several steps are one call",
        .details =
            "  --performer NAME     who is fitted (else who plays the role)\n"
            "  --minutes MINUTES    of the whole call (else those of the steps)\n"
            "WHEN is a day, with a time or without: \"fri 14:30\", \"+3 2pm\", 2027-03-12. A step that is "
            "booked\n"
            "for today or later already is moved. What speaks against it is told, and booked all the same.",
        .argument_count = 2,
        .or_more = true,
        .options = BK_OPTION_PERFORMER | BK_OPTION_MINUTES,
        .run = bk_book_command,
    },
    {
        .name = "count",
        .arguments = "MATERIAL QUANTITY",
        .purpose = "say how much of a material lies on the shelf",
        .details = "The quantity is in the material's unit, such as 2.4.",
        .argument_count = 2,
        .options = 0,
        .run = bk_count_command,
    },
    {
        .name = "note",
        .arguments = "TEXT",
        .purpose = "note something, about a costume, a piece, a step",
        .details =
            "  --on WHAT            a costume, a piece or PIECE/STEP\n"
            "  --from WHERE         rehearsal, fitting, parade, tech, dress, preview, show or workroom\n"
            "  --who NAME           whose note it is",
        .argument_count = 1,
        .options = BK_OPTION_ON | BK_OPTION_ABOUT | BK_OPTION_FROM | BK_OPTION_WHO,
        .run = bk_note_command,
    },
    {
        .name = "undo",
        .arguments = "",
        .purpose = "undo what I changed last",
        .details =
            "The newest change not undone of the same person at the same terminal; outside a terminal, the\n"
            "newest that was made outside one. Where something newer touched the same values nothing is\n"
            "changed.",
        .argument_count = 0,
        .options = 0,
        .run = bk_undo_command,
    },
    {
        .name = "redo",
        .arguments = "",
        .purpose = "do again what I undid last",
        .details = "A new change ends it.",
        .argument_count = 0,
        .options = 0,
        .run = bk_redo_command,
    },
    {
        .name = "daybook",
        .arguments = "",
        .purpose = "print the newest changes, who made them and when",
        .details = "The newest twenty, newest first, for the maker; with --json one list for programs.",
        .argument_count = 0,
        .options = BK_OPTION_JSON,
        .run = bk_daybook_command,
    },
    {
        .name = "measure",
        .arguments = "PERFORMER NAME=VALUE...",
        .purpose = "save measures taken of a performer",
        .details = "Each measure is one argument, in quotes where there are spaces in it: \"waist "
                   "girth=92.5\". A value\n"
                   "without its unit is in the production's: 92.5, 36 3/8, 38 in, 5'4\", 1m64.\n"
                   "  --on YYYY-MM-DD      the day on which they were taken (else today)\n"
                   "  --by NAME            who took them (else who I am)\n"
                   "  --over TEXT          what was worn while measured\n"
                   "What can hardly be true is told and saved all the same; where one argument is faulty "
                   "nothing is.",
        .argument_count = 2,
        .or_more = true,
        .options = BK_OPTION_ON | BK_OPTION_BY | BK_OPTION_OVER,
        .run = bk_measure_command,
    },
    {
        .name = "measures",
        .arguments = "--check",
        .purpose = "look for measures that can hardly be true",
        .details = "  --check              say it of every sheet of the workroom, for the maker\n"
                   "A line for each doubt; with --json one list for programs. Nothing is refused or changed.",
        .argument_count = 0,
        .options = BK_OPTION_JSON | BK_OPTION_CHECK,
        .run = bk_measures_command,
    },
    {
        .name = "check",
        .arguments = "",
        .purpose = "look whether the store is sound",
        .details = "Exit status 1 when anything is wrong.",
        .argument_count = 0,
        .options = 0,
        .run = bk_check_command,
    },
    {
        .name = "backup",
        .arguments = "FILE",
        .purpose = "copy the whole store into a new file",
        .details = "Safe while others work in it. A file that exists is not overwritten.",
        .argument_count = 1,
        .options = 0,
        .run = bk_backup_command,
    },
};

const size_t bk_command_count = sizeof bk_commands / sizeof *bk_commands;
