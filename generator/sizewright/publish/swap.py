"""In: two folders on one file system. Out: each under the other's name, in one step where the system can do it.

Sources: renameat2(2) of the Linux manual, RENAME_EXCHANGE in linux/fs.h; renamex_np(2) of macOS, RENAME_SWAP in
sys/stdio.h (the latter from memory: there was no such machine to try it on).
"""

import ctypes
import errno
import os
import sys
from pathlib import Path

_AT_FDCWD = -100
_RENAME_EXCHANGE = 2
_RENAME_SWAP = 2

# What a system or a file system answers that does not know how to swap.
_NOT_KNOWN = {errno.ENOSYS, errno.EINVAL, errno.ENOTSUP, errno.EOPNOTSUPP}


def swap(one: Path, other: Path) -> bool:
    """Swaps two folders in one step. False where that is not known here, and nothing has happened then.

    Raises OSError where it is known and failed.
    """
    try:
        library = ctypes.CDLL(None, use_errno=True)
        if sys.platform == "darwin":
            answer = library.renamex_np(os.fsencode(one), os.fsencode(other), _RENAME_SWAP)
        else:
            answer = library.renameat2(_AT_FDCWD, os.fsencode(one), _AT_FDCWD, os.fsencode(other), _RENAME_EXCHANGE)
    except (AttributeError, OSError, TypeError):  # no such function or no such library
        return False
    if answer == 0:
        return True
    number = ctypes.get_errno()
    if number in _NOT_KNOWN:
        return False
    raise OSError(number, os.strerror(number), str(other))
