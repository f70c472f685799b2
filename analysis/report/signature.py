"""A shop's signature under a page: Ed25519 (RFC 8032) over all its bytes, in a small file beside it, checked offline.

What it adds: whoever holds the shop's private key issued exactly these bytes, with the hashes, limit, names and dates
in them; nobody without the key can change one of them. What it does not add: when it was signed, that the wheel was
ever turned, or that what the shop typed is true. A key is only as good as the way its fingerprint came to you.
"""

from __future__ import annotations

import hashlib
import os
from pathlib import Path
from typing import TYPE_CHECKING, Final, Literal

from logger.edges.small_file import read_bounded, sync_folder, write_whole
from logger.edges.toml_file import format_toml, read_toml
from logger.errors import FileError, HeldwheelError, InputError
from logger.header import Record

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey

MAX_KEY: Final = 10_000  # bytes of a key file
MAX_PAGE: Final = 20_000_000


class Signature(Record, frozen=True, kw_only=True):
    """The file beside a page."""

    schema: Literal["heldwheel signature 1"] = "heldwheel signature 1"
    page: str  # its name
    sha256: str
    public_key: str  # 32 bytes in hex digits
    signature: str  # 64 bytes in hex digits


def signature_path(page: Path | str) -> Path:
    """Give where the signature of a page is: ``hill-07.pdf`` has ``hill-07.pdf.signature.toml``."""
    page = Path(page)
    return page.with_name(f"{page.name}.signature.toml")


def new_key(path: Path | str) -> tuple[Path, str]:
    """Make a private key, readable by its owner only, and its public key beside it; give that and its fingerprint.

    Raises:
        FileError: A file of this name exists, or cannot be written.
    """
    from cryptography.hazmat.primitives import serialization as form
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

    path = Path(path)
    key = Ed25519PrivateKey.generate()
    private = key.private_bytes(form.Encoding.PEM, form.PrivateFormat.PKCS8, form.NoEncryption())
    public = key.public_key().public_bytes(form.Encoding.PEM, form.PublicFormat.SubjectPublicKeyInfo)
    try:
        flags = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
        with os.fdopen(os.open(path, flags, 0o600), "wb") as file:
            file.write(private)
            file.flush()
            os.fsync(file.fileno())
        sync_folder(path.parent)
    except FileExistsError:
        raise FileError(f"{path}: exists already; a key is never written over") from None
    except OSError as error:
        raise FileError(f"{path}: cannot be written: {error.strerror or error}") from error
    beside = path.with_name(f"{path.name}.pub")
    write_whole(beside, public)
    return beside, fingerprint(key.public_key())


def fingerprint(key: Ed25519PublicKey) -> str:
    """Give what two people compare of a key: 128 bits of its SHA-256, in groups of four digits."""
    digits = hashlib.sha256(key.public_bytes_raw()).hexdigest()[:32]
    return " ".join(digits[at : at + 4] for at in range(0, 32, 4))


def sign(page: Path | str, key: Path | str) -> Path:
    """Sign a page with a private key (PEM) and give the signature's file.

    Raises:
        FileError, InputError: Page or key cannot be read, or the key is no Ed25519 private key without a pass phrase.
    """
    page = Path(page)
    data = read_bounded(page, MAX_PAGE, "this is no report")
    private = _private(Path(key))
    target = signature_path(page)
    record = Signature(
        page=page.name,
        sha256=hashlib.sha256(data).hexdigest(),
        public_key=private.public_key().public_bytes_raw().hex(),
        signature=private.sign(data).hex(),
    )
    write_whole(target, format_toml(record).encode())
    return target


def check(page: Path | str, known: Path | str | None = None) -> tuple[bool, str]:
    """Check the signature beside a page.

    Args:
        page: The page.
        known: The public key (PEM) that the shop has given by another way.

    Returns:
        Whether nothing speaks against the page, and what was found, in words.

    Raises:
        FileError, InputError: The page or the known key cannot be read.
    """
    from cryptography.exceptions import InvalidSignature
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

    wanted = _public(Path(known)) if known is not None else None
    path = signature_path(page)
    if not os.path.lexists(path):
        return wanted is None, "not signed: nothing but its own record says who issued it"
    data = read_bounded(Path(page), MAX_PAGE, "this is no report")
    try:
        said = read_toml(path, Signature)
        key = Ed25519PublicKey.from_public_bytes(bytes.fromhex(said.public_key))
        key.verify(bytes.fromhex(said.signature), data)
    except (HeldwheelError, ValueError, InvalidSignature):
        return False, f"THE SIGNATURE DOES NOT FIT: {path.name} is not of these bytes"
    own = fingerprint(key)
    if wanted is not None and fingerprint(wanted) != own:
        return False, f"SIGNED BY ANOTHER KEY than the one that you named: {own}"
    by = "the one that you named" if wanted is not None else "compare it with the one that the workshop has told you"
    return (
        True,
        f"signed with the key {own} ({by}): it issued these bytes; when, and whether truly, is not shown",
    )


def _private(path: Path) -> Ed25519PrivateKey:
    from cryptography.exceptions import UnsupportedAlgorithm
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
    from cryptography.hazmat.primitives.serialization import load_pem_private_key

    try:
        key = load_pem_private_key(read_bounded(path, MAX_KEY, "this is no key"), None)
    except (ValueError, TypeError, UnsupportedAlgorithm):
        key = None
    if not isinstance(key, Ed25519PrivateKey):
        raise InputError(f"{path}: is no Ed25519 private key without a pass phrase; --new-key makes one")
    return key


def _public(path: Path) -> Ed25519PublicKey:
    from cryptography.exceptions import UnsupportedAlgorithm
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey
    from cryptography.hazmat.primitives.serialization import load_pem_public_key

    try:
        key = load_pem_public_key(read_bounded(path, MAX_KEY, "this is no key"))
    except (ValueError, UnsupportedAlgorithm):
        key = None
    if not isinstance(key, Ed25519PublicKey):
        raise InputError(f"{path}: is no Ed25519 public key (PEM)")
    return key
