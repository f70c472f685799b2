"""A time-stamp under a page, by RFC 3161: a request to send to an authority, its reply checked offline.

What it adds: these bytes existed at that time, by the word of the authority that signed the reply. What it does not
add: who wrote them, when the wheel was turned, or that anything in them is true. It is worth what the authority is.
"""

from __future__ import annotations

import hashlib
import os
from pathlib import Path
from typing import TYPE_CHECKING, Final

from logger.edges.small_file import read_bounded, write_whole
from logger.errors import InputError

if TYPE_CHECKING:
    from cryptography.x509 import Certificate

MAX_PAGE: Final = 20_000_000
MAX_REPLY: Final = 200_000
MAX_CERTIFICATES: Final = 200_000
SHA256_OID: Final = "2.16.840.1.101.3.4.2.1"  # RFC 5754, 2.2


def request_path(page: Path | str) -> Path:
    """Give where the request for a page is: ``hill-07.pdf`` has ``hill-07.pdf.tsq``."""
    return Path(page).with_name(f"{Path(page).name}.tsq")


def reply_path(page: Path | str) -> Path:
    """Give where the authority's reply is looked for: ``hill-07.pdf.tsr``."""
    return Path(page).with_name(f"{Path(page).name}.tsr")


def write_request(page: Path | str) -> Path:
    """Write a request for a page and give its file; it holds the page's SHA-256 and nothing else of it.

    Raises:
        FileError: The page cannot be read, or the request not written.
    """
    from rfc3161_client import HashAlgorithm, TimestampRequestBuilder

    data = read_bounded(Path(page), MAX_PAGE, "this is no report")
    request = TimestampRequestBuilder().data(data).hash_algorithm(HashAlgorithm.SHA256).build()
    write_whole(request_path(page), request.as_bytes())
    return request_path(page)


def check_stamp(page: Path | str, authority: Path | str | None = None) -> tuple[bool, str]:
    """Check the reply beside a page.

    Args:
        page: The page.
        authority: The authority's certificate (PEM; several where others stand between), fetched from itself.

    Returns:
        Whether nothing speaks against the page, and what was found, in words; empty where there is no stamp.

    Raises:
        FileError, InputError: The page or the certificate cannot be read.
    """
    known = None if authority is None else _certificates(Path(authority))
    path = reply_path(page)
    if not os.path.lexists(path):
        return known is None, "" if known is None else f"NO TIME-STAMP: {path.name} does not lie beside the page"
    data = read_bounded(Path(page), MAX_PAGE, "this is no report")
    return _checked(path.name, read_bounded(path, MAX_REPLY, "this is no reply"), data, known)


def _checked(name: str, reply: bytes, data: bytes, known: list[Certificate] | None) -> tuple[bool, str]:
    from rfc3161_client import PKIStatus, VerificationError, VerifierBuilder, decode_timestamp_response

    try:
        found = decode_timestamp_response(reply)
        granted = PKIStatus(found.status) == PKIStatus.GRANTED
        info = found.tst_info if granted else None
        signed_by = len(found.signed_data.certificates) if granted else 0
    except (ValueError, TypeError, AttributeError):
        return False, f"THE TIME-STAMP CANNOT BE READ: {name} is no reply by RFC 3161"
    if info is None:
        return False, f"NO TIME-STAMP: in {name} the authority refuses"
    imprint = info.message_imprint
    if imprint.hash_algorithm.dotted_string != SHA256_OID or imprint.message != hashlib.sha256(data).digest():
        return False, f"THE TIME-STAMP DOES NOT FIT: {name} is not of these bytes"
    if known is None:
        return True, f"time-stamp {name}: NOT CHECKED, name the authority's certificate with --authority"
    if not signed_by:
        return False, f"THE TIME-STAMP CANNOT BE CHECKED: {name} carries no certificate; ask for a reply that does"
    roots = [one for one in known if one.issuer == one.subject] or known
    builder = VerifierBuilder(roots=roots, intermediates=[one for one in known if one not in roots])
    try:
        builder.build().verify_message(found, data)
    except (VerificationError, ValueError) as error:
        return False, f"THE TIME-STAMP IS NOT BY THE AUTHORITY that you named: {error}"
    at = f"{info.gen_time:%Y-%m-%d %H:%M:%S} UTC"
    return True, (
        f"time-stamp: these bytes existed at {at}, by the word of the authority that you named; not shown are who "
        "wrote them, when the wheel was turned, and whether it is true"
    )


def _certificates(path: Path) -> list[Certificate]:
    from cryptography.x509 import load_pem_x509_certificates

    try:
        return load_pem_x509_certificates(read_bounded(path, MAX_CERTIFICATES, "this is no certificate"))
    except ValueError:
        raise InputError(f"{path}: holds no certificate (PEM)") from None
