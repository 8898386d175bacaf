"""A planning process that behaves as no process should; what it does stands in the ask."""

import json
import os
import sys
import time


def say(text: str) -> None:
    sys.stdout.write(text + "\n")
    sys.stdout.flush()


def main() -> None:
    how = json.loads(sys.stdin.readline())["more"]["how"]
    say(json.dumps({"better": {"score": [0, 7, 0], "pid": os.getpid()}}))
    if how == "deaf":
        time.sleep(600)  # waits to be ended by force
    elif how == "dies":
        os._exit(9)
    elif how == "endless":
        while True:
            sys.stdout.write("[" * 100_000)
    elif how == "twice":
        say('{"done": {"n": 1}}')
        say('{"done": {"n": 2}}')
    else:
        say(how)


if __name__ == "__main__":
    main()
