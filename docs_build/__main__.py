"""The commands: ``python3 -m docs_build serve | test | html | pdf | …``.

Standard library only: it runs on a fresh machine with nothing but Python, makes ``.venv`` beside
the book, installs the pinned dependencies there and goes on inside it.
"""

from __future__ import annotations

import argparse
import subprocess
import sys
from collections.abc import Sequence

from docs_build import bootstrap
from docs_build.bootstrap import Trouble
from docs_build.print import names

COMMANDS = {
    "serve": "build the handbook and serve it on the local network",
    "test": "run all tests: unit, notebooks, pages in a browser, PDF",
    "html": "build the site (pages, phone app, PDF) into .out/html",
    "pdf": "build the training PDF into .out/pdf",
    "exercises": "print a sheet of exercises and its key, fresh numbers for each seed",
    "editions": "build all tagged editions side by side and serve them",
    "cut": "give the book the name of a new edition",
    "bench": "measure start, speed and sizes, and print them beside their aims",
    "new": "write the room, page, checks and entries of a new calculator",
    "notebook": "run a worked example and save it with its outputs",
    "clean": "remove everything that was built",
}


def parser() -> argparse.ArgumentParser:
    """Return the command line's grammar."""
    top = argparse.ArgumentParser(prog="python3 -m docs_build", description="The field handbook.")
    commands = top.add_subparsers(dest="command", required=True, metavar="COMMAND")
    for name, text in COMMANDS.items():
        command = commands.add_parser(name, help=text, description=text)
        if name in {"serve", "editions"}:
            command.add_argument("--port", type=_port, default=8000, help="default 8000")
            command.add_argument(
                "--no-serve", action="store_true", help="build and print the address, then end"
            )
        if name == "new":
            command.add_argument("what", choices=("calculator",))
            command.add_argument("name", help="such as wind_scale")
            command.add_argument("--part", required=True, help="biology, safety, method or clients")
            command.add_argument("--title", default="", help="default: from the name")
        if name == "notebook":
            command.add_argument("name", metavar="CASE", help="such as mill_willow")
        if name == "cut":
            command.add_argument("name", help="such as 2026.2")
        if name == "test":
            command.add_argument("--calculator", metavar="NAME", help="all that is about one")
            command.add_argument("pytest", nargs="*", help="arguments passed on to pytest")
        if name == "pdf":
            command.add_argument("--paper", choices=names.PAPERS, default=names.PAPERS[0])
            command.add_argument(
                "--copy", choices=names.COPIES, default=names.COPIES[0], help="default trainee"
            )
            command.add_argument("--part", type=_part, default=names.WHOLE, help="default all")
        if name == "exercises":
            command.add_argument("--seed", type=_seed, default=1, help="whole number, default 1")
    return top


def _port(text: str) -> int:
    if not text.isdigit() or not 1 <= int(text) <= 65535:
        raise argparse.ArgumentTypeError(f"“{text}” is no port; allowed is 1 to 65535")
    return int(text)


def _part(text: str) -> str:
    allowed = (names.WHOLE, *names.parts())
    if text not in allowed:
        raise argparse.ArgumentTypeError(
            f"“{text}” is no part of the book; allowed is {', '.join(allowed)}"
        )
    return text


def _seed(text: str) -> int:
    if not text.isdigit() or len(text) > 9:
        raise argparse.ArgumentTypeError(f"“{text}” is no seed; allowed is 0 to 999999999")
    return int(text)


def main(arguments: Sequence[str]) -> int:
    """Run one command and return its exit status."""
    options, rest = parser().parse_known_args(arguments)
    if rest and options.command != "test":
        parser().error(f"unknown arguments: {' '.join(rest)}")
    try:
        if options.command == "clean":
            return bootstrap.clean()
        if not bootstrap.inside():
            bootstrap.ensure(test=options.command in {"test", "bench", "notebook"})
            return subprocess.call(
                [bootstrap.python(), "-m", "docs_build", *arguments], cwd=bootstrap.ROOT
            )
        from docs_build import commands

        return commands.run(options, rest)
    except Trouble as trouble:
        print(f"\n{trouble}", file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        print("\nStopped.")
        return 130


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
