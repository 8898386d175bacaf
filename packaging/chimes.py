"""Make the program's own chimes, from nothing but arithmetic: resources/sounds/*.wav.

    python3 packaging/chimes.py [FOLDER]

Three short sounds, told apart by their melody and not by their loudness: a reminder rings,
a countdown ends, something is spoiling.
"""

import array
import math
import sys
import wave
from pathlib import Path

RATE = 22_050
LOUDEST = 0.6
"""Of full scale; the system's own volume does the rest."""
PARTIALS = ((1.0, 1.0, 5.0), (2.0, 0.45, 7.0), (3.01, 0.2, 11.0))
"""Of a small struck bowl: times the note, share, and how fast each dies away (per second)."""

CHIMES = {
    "rings": ((0.0, 659.26), (0.28, 880.0)),
    "ends": ((0.0, 587.33), (0.16, 739.99), (0.32, 987.77)),
    "spoils": ((0.0, 440.0), (0.22, 349.23), (0.55, 440.0), (0.77, 349.23)),
}
"""Name: the notes as (begin in seconds, hertz), in equal temperament on A = 440 Hz."""
TAIL = 0.7


def samples(notes: tuple[tuple[float, float], ...]) -> list[float]:
    """Give the sound of some notes as samples, the loudest at `LOUDEST`."""
    length = round((notes[-1][0] + TAIL) * RATE)
    sound = [0.0] * length
    for begin, hertz in notes:
        first = round(begin * RATE)
        for index in range(first, length):
            at = (index - first) / RATE
            swell = min(at / 0.004, 1.0)  # without it the strike would click
            sound[index] += swell * sum(
                share * math.exp(-fade * at) * math.sin(2 * math.pi * hertz * times * at)
                for times, share, fade in PARTIALS
            )
    fade_out = round(0.05 * RATE)
    for back in range(fade_out):
        sound[-1 - back] *= back / fade_out
    peak = max(abs(value) for value in sound)
    return [value * LOUDEST / peak for value in sound]


def write(folder: Path) -> list[Path]:
    """Write every chime as 16-bit mono WAV; gives the files."""
    folder.mkdir(parents=True, exist_ok=True)
    made = []
    for name, notes in CHIMES.items():
        path = folder / f"{name}.wav"
        data = array.array("h", (round(value * 32_767) for value in samples(notes)))
        if sys.byteorder == "big":
            data.byteswap()
        with wave.open(str(path), "wb") as file:
            file.setnchannels(1)
            file.setsampwidth(2)
            file.setframerate(RATE)
            file.writeframes(data.tobytes())
        made.append(path)
    return made


if __name__ == "__main__":
    tree = Path(__file__).resolve().parent.parent
    for written in write(Path(sys.argv[1]) if len(sys.argv) > 1 else tree / "resources/sounds"):
        print(written)
