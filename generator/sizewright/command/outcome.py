"""In: how a command ended. Out: a sentence for a person and an exit code; a traceback only where it is asked for."""

import sys
import traceback
from importlib.metadata import version
from platform import python_version, system
from typing import Any, ClassVar

import click

from sizewright.command.terminal import finish, go_nowhere, safe

DONE = 0
REFUSED = 1
WRONG_USE = 2
OUR_FAULT = 3
INTERRUPTED = 130  # 128 and the number of the interrupt signal, as shells count


class Stopped(click.ClickException):
    """The command cannot be carried out as it was given; the message says why and what to do."""

    exit_code = WRONG_USE

    def __init__(self, message: str) -> None:
        super().__init__(safe(message))


class Careful(click.Group):
    """A group of commands none of which ends in a traceback."""

    DEBUG: ClassVar = "sizewright.debug"

    def invoke(self, ctx: click.Context) -> Any:  # noqa: ANN401 (what a command returns is click's own affair)
        """Carries out the command; whatever goes wrong becomes a message and an exit code."""
        try:
            return super().invoke(ctx)
        except (click.ClickException, click.exceptions.Exit, click.Abort):
            raise
        except KeyboardInterrupt:
            click.echo(err=True)  # the terminal has written ^C on the line
            ctx.exit(INTERRUPTED)
        except BrokenPipeError:
            go_nowhere(sys.stdout)
            ctx.exit(REFUSED)
        except OSError as refusal:
            finish(sys.stdout)
            raise Stopped(sentence(refusal)) from refusal
        except Exception as fault:  # anything else is our own mistake, and the person should be told so
            if ctx.meta.get(self.DEBUG):
                traceback.print_exc()
            click.echo(fault_message(fault), err=True)
            ctx.exit(OUR_FAULT)


def sentence(refusal: OSError) -> str:
    """What the system refused, for a person: "content/site.yaml: Permission denied"."""
    reason = refusal.strerror or str(refusal) or type(refusal).__name__
    return f"{refusal.filename}: {reason}" if refusal.filename else reason


def fault_message(fault: BaseException) -> str:
    """What to say after a mistake of our own, and what a report of it should hold."""
    return (
        f"This is a fault in sizewright itself, not in your files: {type(fault).__name__}: {safe(str(fault))}\n"
        "Your patterns were not changed. Please report it with these lines, the command you typed and, if you can,\n"
        "the pattern; `sizewright --debug COMMAND …` shows where in the program it arose.\n"
        f"sizewright {version('sizewright')}, Python {python_version()}, {system()}"
    )
