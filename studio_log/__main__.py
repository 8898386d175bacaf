"""`python -m studio_log` is the same as `studio-log`."""

import sys

from studio_log.app.main import main

if __name__ == "__main__":
    sys.exit(main())
