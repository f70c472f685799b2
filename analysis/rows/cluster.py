"""An existing dask.distributed cluster as an executor for batches; an optional extra (``heldwheel[cluster]``)."""

from __future__ import annotations

from collections.abc import Iterator
from concurrent.futures import Executor
from contextlib import contextmanager
from importlib import import_module
from typing import Any, Final

from logger.errors import InputError

PATIENCE_S: Final = 10
RETRIES: Final = 3
"""How often work is handed out again whose worker has died, before its files are read one by one."""


@contextmanager
def cluster(address: str) -> Iterator[tuple[Executor, int]]:
    """Give the executor of a running cluster, and how many files it reads at once.

    Args:
        address: Of its scheduler: ``tcp://bench-1:8786``.

    Raises:
        InputError: The library is not installed, or nobody answers there.
    """
    try:
        engine: Any = import_module("distributed")
    except ImportError:
        raise InputError("--cluster needs the extra: pip install 'heldwheel[cluster]'") from None
    try:
        client = engine.Client(address, timeout=PATIENCE_S, set_as_default=False)
    except (OSError, ValueError, TimeoutError) as error:
        raise InputError(f"--cluster {address}: no scheduler answers there: {error}") from error
    try:
        threads = sum(client.nthreads().values())
        if not threads:
            raise InputError(f"--cluster {address}: it has no workers; start some: dask worker {address}")
        yield client.get_executor(pure=False, retries=RETRIES), threads
    finally:
        client.close()
