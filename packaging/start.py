"""Set Studio Log up, once, in a folder of its own, and start it.

    python3 packaging/start.py [--demo] [--pace N] [--studio WHERE] [--minimised]

This file alone must be readable by every older Python, so that they too get a plain sentence.
"""

import os
import sys

if sys.version_info < (3, 11):  # noqa: UP036 - the one place where an older Python is met
    sys.exit("Studio Log needs Python 3.11 or newer; this is " + sys.version.split()[0] + ".")

# Isolated mode (-I) leaves the script's own folder off the path.
sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))  # noqa: PTH100, PTH120 - as above

from _start import main

if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
