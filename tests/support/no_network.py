"""Runs a program that dies at the first socket for a network: seccomp(2), for it and its children.

    python no_network.py MODULE WORD…

A filter over system calls (linux/seccomp.h, linux/filter.h) ends the process where a socket of
the families AF_INET or AF_INET6 is made: without one nothing can be connected to, also by the
libraries in C++. Sockets of this machine alone (AF_UNIX, AF_NETLINK) are let through.
"""

import ctypes
import platform
import runpy
import struct
import sys

SOCKET_CALLS = {"x86_64": (0xC000003E, 41), "aarch64": (0xC00000B7, 198)}
"""By machine: how linux/audit.h names it, and the number of socket(2)."""
AF_INET, AF_INET6 = 2, 10
NO_NEW_RIGHTS, SECCOMP, FILTER = 38, 22, 2
ALLOW, KILL_PROCESS = 0x7FFF0000, 0x80000000
LOAD, EQUALS, RETURN = 0x20, 0x15, 0x06


def can_watch() -> bool:
    """Whether this machine's numbers are known."""
    return sys.platform == "linux" and platform.machine() in SOCKET_CALLS


def watch() -> None:
    """End this process, from now on, where it makes a socket for a network."""
    machine, call = SOCKET_CALLS[platform.machine()]
    rows = [
        (LOAD, 0, 0, 4),  # which machine's numbers
        (EQUALS, 0, 6, machine),
        (LOAD, 0, 0, 0),  # which call
        (EQUALS, 0, 4, call),
        (LOAD, 0, 0, 16),  # its first argument: the family
        (EQUALS, 1, 0, AF_INET),
        (EQUALS, 0, 1, AF_INET6),
        (RETURN, 0, 0, KILL_PROCESS),
        (RETURN, 0, 0, ALLOW),
    ]
    code = b"".join(struct.pack("HBBI", *row) for row in rows)
    held = ctypes.create_string_buffer(code)
    program = struct.pack("HxxxxxxP", len(rows), ctypes.addressof(held))
    libc = ctypes.CDLL(None, use_errno=True)
    if libc.prctl(NO_NEW_RIGHTS, 1, 0, 0, 0) or libc.prctl(SECCOMP, FILTER, program, 0, 0):
        raise OSError(ctypes.get_errno(), "seccomp")


if __name__ == "__main__":
    watch()
    sys.argv = sys.argv[1:]
    runpy.run_module(sys.argv[0], run_name="__main__", alter_sys=True)
