"""Commands about methods."""

from pathlib import Path
from typing import Any, Final

from studio_log.cli import values
from studio_log.cli.form import JSON, Form, Option, Word
from studio_log.cli.plain import plain
from studio_log.cli.turn import Turn
from studio_log.domain.method_text import read_method_bytes, write_method
from studio_log.domain.methods import Method, MethodStep
from studio_log.present import words
from studio_log.services.commands import ImportMethod
from studio_log.services.method_file import small_file
from studio_log.services.questions import MethodFor, MethodsFor
from studio_log.services.whole_file import write_whole

SLUG: Final = Word("SLUG", "the method's short name, such as soy-immersion-long")
FILE: Final = Word("FILE", "a method's file, TOML")
LISTED: Final = ("slug", "version", "title", "school", "summary", "source")


def _methods(turn: Turn) -> int:
    found: tuple[Method, ...] = turn.studio.ask(MethodsFor())
    if turn.values["json"]:
        turn.say_json([_listed(method) for method in found])
    else:
        width = max((len(method.slug) for method in found), default=0)
        turn.say(
            "\n".join(f"{one.slug:<{width}}  {one.title} (version {one.version})" for one in found)
            or "No methods."
        )
    return 0


def _listed(method: Method) -> dict[str, Any]:
    listed = {name: plain(getattr(method, name)) for name in LISTED}
    return {**listed, "steps": [step.slug for step in method.steps]}


def _method_of(turn: Turn) -> Method:
    found: Method = turn.studio.ask(MethodFor(values.slug(turn.values["slug"], "method's slug")))
    return found


def _show(turn: Turn) -> int:
    method = _method_of(turn)
    if turn.values["json"]:
        whole = plain(method)
        del whole["text"]
        turn.say_json(whole)
    else:
        turn.say("\n".join(_method_words(method)))
    return 0


def _method_words(method: Method) -> list[str]:
    head = [
        f"{method.title} ({method.slug}, version {method.version})",
        method.school,
        method.summary,
        f"Source: {method.source}",
    ]
    steps = [
        line
        for number, step in enumerate(method.steps, start=1)
        for line in _step_words(number, step)
    ]
    return [*filter(None, head), *steps]


def _step_words(number: int, step: MethodStep) -> list[str]:
    lasts = f" · {words.window_words(step.lasts)}" if step.lasts else ""
    optional = " (may be left out)" if step.optional else ""
    return [f"  {number:>2}  {step.slug}: {step.title}{optional}{lasts}", f"      {step.do}"]


def _read(turn: Turn) -> Method:
    path = values.file_path(turn.values["file"], "The name of the file")
    data = small_file(path)
    return read_method_bytes(data, name=path.name, cautions=set(turn.studio.cautions))


def _check(turn: Turn) -> int:
    method = _read(turn)
    turn.say(
        f"{Path(turn.values['file']).name} is a good method: {method.title}, version "
        f"{method.version}, {len(method.steps)} steps."
    )
    return 0


def _import(turn: Turn) -> int:
    method = _read(turn)
    name = Path(turn.values["file"]).name
    return turn.finish(turn.do(ImportMethod(text=method.text, name=name)))


def _export(turn: Turn) -> int:
    path = values.file_path(turn.values["to"], "The name of the file")
    method = _method_of(turn)
    write_whole(path, write_method(method).encode())
    turn.say(f"{method.title}, version {method.version}, is written to {path}.")
    return 0


FORMS: Final = (
    Form(("methods",), "List the methods.", _methods, options=(JSON,)),
    Form(("method", "show"), "Show a method.", _show, (SLUG,), (JSON,)),
    Form(
        ("method", "check"),
        "Check a method's file: every fault with its line and field.",
        _check,
        (FILE,),
    ),
    Form(("method", "import"), "Take a method's file into the studio.", _import, (FILE,), (JSON,)),
    Form(
        ("method", "export"),
        "Write a method to a file.",
        _export,
        (SLUG,),
        (Option("--to", "the file to write", "FILE", required=True),),
    ),
)
