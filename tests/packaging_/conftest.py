"""The set-up's modules lie beside each other as scripts, not in a package."""

import sys

from tests.support.tree import TREE

sys.path.append(str(TREE / "packaging"))
