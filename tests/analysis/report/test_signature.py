"""A shop's signature: it fits these bytes and this key, nothing else; another program checks it as well."""

from __future__ import annotations

import os
import shutil
import subprocess

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from analysis.report.signature import Signature, check, new_key, sign, signature_path
from logger.edges.toml_file import read_toml
from logger.errors import FileError, InputError


@pytest.fixture
def signed(tmp_path):
    page = tmp_path / "r.pdf"
    page.write_bytes(b"%PDF a page")
    public, _ = new_key(tmp_path / "shop.key")
    sign(page, tmp_path / "shop.key")
    return page, public


def test_a_signed_page(signed):
    page, public = signed
    fits, told = check(page)
    assert fits
    assert "compare it with the one that the workshop has told you" in told
    assert check(page, public) == (
        True,
        told.replace("compare it with the one that the workshop has told you", "the one that you named"),
    )
    if os.name != "nt":
        assert (page.parent / "shop.key").stat().st_mode & 0o077 == 0, "a private key is its owner's"


def test_other_bytes_another_key_or_none(signed):
    page, public = signed
    other, _ = new_key(page.parent / "other.key")
    assert check(page, other)[0] is False
    page.write_bytes(b"%PDF another page")
    assert check(page) == (False, "THE SIGNATURE DOES NOT FIT: r.pdf.signature.toml is not of these bytes")
    signature_path(page).write_bytes(b"public_key = 1")
    assert check(page)[0] is False
    signature_path(page).unlink()
    assert check(page)[0]
    assert check(page, public)[0] is False, "who names a key wants a signature"


def test_no_key_is_written_over_and_none_that_is_none_is_used(signed):
    page, public = signed
    with pytest.raises(FileError, match="never written over"):
        new_key(page.parent / "shop.key")
    with pytest.raises(InputError, match="no Ed25519 private key"):
        sign(page, public)
    with pytest.raises(InputError, match="no Ed25519 public key"):
        check(page, page.parent / "shop.key")


def test_the_first_vector_of_the_standard():
    """RFC 8032, section 7.1, test 1: read in a secondary copy, an empty message."""
    secret = bytes.fromhex("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60")
    key = Ed25519PrivateKey.from_private_bytes(secret)
    assert (
        key.public_key().public_bytes_raw().hex() == "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a"
    )
    assert key.sign(b"").hex() == (
        "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b"
    )


@pytest.mark.skipif(shutil.which("openssl") is None, reason="no openssl on this system")
def test_another_program_finds_the_signature_good(signed):
    page, public = signed
    said = page.parent / "signature.bin"
    said.write_bytes(bytes.fromhex(read_toml(signature_path(page), Signature).signature))
    command = ["openssl", "pkeyutl", "-verify", "-pubin", "-inkey", public, "-rawin", "-in", page, "-sigfile", said]
    assert subprocess.run(command, check=False, capture_output=True).returncode == 0
    page.write_bytes(b"%PDF other")
    assert subprocess.run(command, check=False, capture_output=True).returncode != 0
