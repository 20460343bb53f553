"""In: a source or a project folder, and a language. Out: the files of translations beside the sources."""

import os
import tempfile
from pathlib import Path

import click
from rich.text import Text

from sizewright.base.language import is_language
from sizewright.command.outcome import DONE, Stopped
from sizewright.command.terminal import safe, standard_output
from sizewright.command.translating import TranslationFile, translation_files


@click.command("translate", short_help="Write or refresh the file that a source is translated in.")
@click.argument("path", metavar="PATH", type=click.Path(path_type=Path))
@click.option("--into", metavar="LANGUAGE", required=True, help="The code of the language: de, fr, pt-BR.")
@click.pass_context
def translate_command(ctx: click.Context, path: Path, into: str) -> None:
    """Write or refresh the file that a source is translated in.

    PATH is a pattern, a technique or a page, or a project folder for all of them. Beside NAME.md the file
    NAME.LANGUAGE.md is written: each text of the source in a comment, for the translation to be written under it.

    A file that is there is brought up to date: what the source has new is added in its place, and translations of what
    it does not say any more go to the end. No translation is changed or lost. Numbers and instructions are not
    translated but printed; of the instructions only lines in words of your own are asked for.

    The exit code is 0 where the files are written or up to date, and 2 where PATH or a file cannot be read.

    \b
    Examples:
      sizewright translate content/patterns/hat.md --into de    begin or go on with one pattern
      sizewright translate . --into de                          the same for every source
    """
    if not is_language(into):
        raise Stopped(f"“{into}” is no code of a language. Write for example “--into de”.")
    console = standard_output()
    for file in translation_files(path, into):
        if file.changes:
            _write(file)
        console.print(Text(safe(_told(file))), soft_wrap=True)
    ctx.exit(DONE)


def _told(file: TranslationFile) -> str:
    """ "hat.de.md: 12 of 80 texts are still to be translated"."""
    after = file.after
    left = (
        f"{after.missing} of {after.texts} texts are still to be translated" if after.missing else "all is translated"
    )
    stale = f"; {after.stale} at the end translate what the source does not say any more" if after.stale else ""
    return f"{file.path.as_posix()}: {left}{stale}"


def _write(file: TranslationFile) -> None:
    """Writes a file in one step."""
    handle, name = tempfile.mkstemp(dir=file.path.parent, prefix=f".{file.path.name}.")
    try:
        with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as new:
            new.write(file.after.text)
        Path(name).chmod(file.path.stat().st_mode & 0o777 if file.path.is_file() else 0o644)
        Path(name).replace(file.path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
