"""How the speed scripts say what they measured: a value, its bar, its baseline, a verdict."""

import os
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

TREE = Path(__file__).parents[2]
TICK = os.sysconf("SC_CLK_TCK")


def verdict(what: str, value: float, bar: float, unit: str, against: str) -> str:
    """Print and give one line; a lower value is a better one."""
    holds = "holds" if value <= bar else "MISSED"
    line = f"{what}: {value:.4g} {unit}, bar {bar:g} {unit}, {holds} ({against})"
    print(line, flush=True)
    return line


def threads_of(pid: int) -> dict[str, tuple[str, int]]:
    """Give name and voluntary context switches of every thread, by its number."""
    found = {}
    for folder in Path(f"/proc/{pid}/task").iterdir():
        try:
            text = (folder / "status").read_text()
        except OSError:  # it ended while the folder was read
            continue
        lines = dict(line.split(":\t", 1) for line in text.splitlines() if ":\t" in line)
        found[folder.name] = (lines["Name"], int(lines["voluntary_ctxt_switches"]))
    return found


def cpu_seconds(pid: int) -> float:
    """Give the processor time of a process so far: user and system."""
    after_name = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()
    return (int(after_name[11]) + int(after_name[12])) / TICK


def resident_kib(pid: int | None = None) -> int:
    """Give how much memory a process holds, in KiB."""
    text = Path(f"/proc/{pid or os.getpid()}/status").read_text()
    return int(text.partition("VmRSS:")[2].split()[0])


@contextmanager
def screen() -> Iterator[str]:
    """Run an X server of our own and give its display, ":7"."""
    read, write = os.pipe()
    command = ["Xvfb", "-screen", "0", "1600x1000x24", "-nolisten", "tcp", "-displayfd", str(write)]
    server = subprocess.Popen(command, pass_fds=(write,), stderr=subprocess.DEVNULL)
    os.close(write)
    try:
        with os.fdopen(read) as told:
            yield ":" + told.readline().strip()
    finally:
        end(server)


def child(script: str, *words: str, **own: str) -> subprocess.Popen[str]:
    """Begin a script of this folder in a process of its own; it prints "ready" once it is."""
    keep = ("DBUS_SESSION_BUS_ADDRESS", "WAYLAND_DISPLAY")
    around = {name: value for name, value in os.environ.items() if name not in keep}
    command = [sys.executable, str(TREE / "tests" / "speed" / script), *words]
    begun = subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=around | own)
    assert begun.stdout is not None
    line = begun.stdout.readline().strip()
    if line != "ready":
        end(begun)
        raise RuntimeError(f"{' '.join(words)} did not start: {line!r}")
    return begun


def end(process: "subprocess.Popen[str] | subprocess.Popen[bytes]") -> None:
    """End a process of our own and wait for it."""
    process.send_signal(signal.SIGTERM)
    try:
        process.wait(10)
    except subprocess.TimeoutExpired:
        process.kill()
        process.wait()
    if process.stdout is not None:
        process.stdout.close()
