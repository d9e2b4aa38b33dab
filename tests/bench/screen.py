"""The full-screen program on a pseudo-terminal, and what stands on its screen, for the measuring scripts.

Nothing here waits for time: the program writes a byte to the descriptor named by BODKIN_IDLE_FD whenever everything is
painted and a key is waited for.
"""

import fcntl
import os
import re
import select
import struct
import subprocess
import termios

ROWS, COLUMNS = 24, 80
TAB = 8
PATIENCE = 60  # seconds after which a program that does not answer counts as stuck
READ_ROOM = 65536
ENTER, EMPTY, SAVE = "\r", "\x15", "\x13"

SEQUENCE = re.compile(r"\x1b\[([?0-9;]*)([A-Za-z])|\x1b[()].|\x1b[^\[()]|[^\x1b]|\x1b.*$", re.DOTALL)


class Picture:
    """As much of a vt100 as the program uses."""

    def __init__(self):
        self.rows = [[" "] * COLUMNS for _ in range(ROWS)]
        self.row = self.column = 0

    def text(self):
        return "\n".join("".join(row).rstrip() for row in self.rows)

    def move(self, row, column):
        self.row = min(max(row, 0), ROWS - 1)
        self.column = min(max(column, 0), COLUMNS - 1)

    def clear(self, row, first, last):
        self.rows[row][first:last] = [" "] * (last - first)

    def clear_row(self, what):
        self.clear(self.row, 0 if what else self.column, self.column + 1 if what == 1 else COLUMNS)

    def clear_screen(self, what):
        self.clear_row(what)
        for row in range(0 if what else self.row + 1, self.row if what == 1 else ROWS):
            self.clear(row, 0, COLUMNS)

    def command(self, numbers, letter):
        first = numbers[0]
        count = max(first, 1)
        if letter in "Hf":
            self.move(count - 1, max((numbers + [1])[1], 1) - 1)
        elif letter in "ABCD":
            down, right = {"A": (-1, 0), "B": (1, 0), "C": (0, 1), "D": (0, -1)}[letter]
            self.move(self.row + down * count, self.column + right * count)
        elif letter == "J":
            self.clear_screen(first)
        elif letter == "K":
            self.clear_row(first)
        elif letter not in "mrhl":
            raise ValueError("the picture does not know ESC [ %s" % letter)

    def control(self, character):
        if character == "\r":
            self.move(self.row, 0)
        elif character == "\n":
            self.move(self.row + 1, self.column)
        elif character == "\b":
            self.move(self.row, self.column - 1)
        elif character == "\t":
            self.move(self.row, (self.column // TAB + 1) * TAB)

    def write(self, text):
        for match in SEQUENCE.finditer(text):
            piece = match.group()
            if match.group(2):
                numbers = [int(number or 0) for number in match.group(1).strip("?").split(";")]
                self.command(numbers, match.group(2))
            elif piece < " ":
                self.control(piece) if len(piece) == 1 else None
            elif self.column < COLUMNS:
                self.rows[self.row][self.column] = piece
                self.column += 1


class Terminal:
    """A pseudo-terminal, on which one program after the other can run."""

    def __init__(self):
        self.master, self.slave = os.openpty()
        fcntl.ioctl(self.slave, termios.TIOCSWINSZ, struct.pack("HHHH", ROWS, COLUMNS, 0, 0))


class Screen:
    """A program that runs on a terminal; `words` is its command line."""

    def __init__(self, terminal, words):
        self.master = terminal.master
        self.idle, told = os.pipe()
        surroundings = dict(os.environ, TERM="vt100", LC_ALL="C.UTF-8", BODKIN_IDLE_FD=str(told))
        self.child = subprocess.Popen(words, stdin=terminal.slave, stdout=terminal.slave, stderr=terminal.slave,
                                      env=surroundings, pass_fds=[told], start_new_session=True)
        os.close(told)
        self.sent = b""
        self.await_painting()

    def read_ready(self):
        """Looking at a pseudo-terminal hands over everything written to its other side before."""
        while select.select([self.master], [], [], 0)[0]:
            self.sent += os.read(self.master, READ_ROOM)

    def await_painting(self):
        while True:
            ready = select.select([self.idle, self.master], [], [], PATIENCE)[0]
            self.read_ready()
            if self.idle in ready or not ready:
                break
        if not ready or not os.read(self.idle, 1):
            raise RuntimeError("the program did not answer; the screen is:\n" + self.text())

    def send(self, keys):
        os.write(self.master, keys.encode())

    def press(self, *keys):
        """Each key when the one before is answered; a string of plain letters is typed one by one."""
        for word in keys:
            for key in [word] if word < " " else word:
                self.send(key)
                self.await_painting()

    def text(self):
        picture = Picture()
        picture.write(self.sent.decode(errors="replace"))
        return picture.text()

    def await_text(self, text):
        while text not in self.text():
            self.await_painting()

    def kill(self):
        """Kills it, reads what it had sent, and gives what stood on the screen then."""
        self.child.kill()
        self.child.wait()
        self.read_ready()
        os.close(self.idle)
        return self.text()
