"""A time-stamp by RFC 3161: replies of a local authority (``openssl ts``), checked offline."""

from __future__ import annotations

import subprocess
from pathlib import Path

import pytest

from analysis.report.time_stamp import check_stamp, reply_path, request_path, write_request
from logger.errors import InputError

CONFIG = """
[tsa]
default_tsa = made
[made]
serial = {folder}/serial
signer_digest = sha256
default_policy = 1.2.3.4.1
digests = sha256
ess_cert_id_alg = sha256
"""


def openssl(*words: object) -> None:
    subprocess.run(["openssl", *map(str, words)], check=True, capture_output=True)


def authority(folder: Path, name: str) -> Path:
    """Make a root and, signed by it, a certificate for time-stamps; give the root's (RFC 3161, 2.3: usage critical)."""
    root, own, extra = (folder / f"{name}{end}" for end in ("-root", "-own", ".ext"))
    key = ("-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256", "-nodes")
    openssl("req", "-x509", *key, "-keyout", f"{root}.key", "-out", f"{root}.pem", "-subj", f"/CN={name} root",
            "-days", 2)  # fmt: skip
    openssl("req", *key, "-keyout", f"{own}.key", "-out", f"{own}.csr", "-subj", f"/CN={name} stamps")
    extra.write_text("extendedKeyUsage=critical,timeStamping\nkeyUsage=critical,digitalSignature\n", "utf-8")
    openssl("x509", "-req", "-in", f"{own}.csr", "-CA", f"{root}.pem", "-CAkey", f"{root}.key", "-days", 2,
            "-set_serial", 7, "-extfile", extra, "-out", f"{own}.pem")  # fmt: skip
    return Path(f"{root}.pem")


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path, Path]:
    """Give a page with the reply to its request, the root of its authority and that of another."""
    folder = tmp_path_factory.mktemp("stamps")
    page = folder / "page.html"
    page.write_bytes(b"<p>a page")
    request = write_request(page)
    (folder / "serial").write_text("01\n", "utf-8")
    (folder / "ts.cnf").write_text(CONFIG.format(folder=folder), "utf-8")
    ours, other = authority(folder, "ours"), authority(folder, "other")
    openssl("ts", "-reply", "-config", folder / "ts.cnf", "-queryfile", request, "-out", reply_path(page), "-signer",
            folder / "ours-own.pem", "-inkey", folder / "ours-own.key")  # fmt: skip
    return page, ours, other


def test_a_reply_by_the_authority_is_found_good_by_us_and_by_openssl(made):
    page, ours, _ = made
    good, said = check_stamp(page, ours)
    assert good, said
    assert "existed at" in said
    assert "not shown are who wrote them" in said
    openssl("ts", "-verify", "-data", page, "-in", reply_path(page), "-CAfile", ours)
    openssl("ts", "-verify", "-queryfile", request_path(page), "-in", reply_path(page), "-CAfile", ours)


def test_another_authority_is_refused(made):
    page, _, other = made
    good, said = check_stamp(page, other)
    assert not good
    assert "NOT BY THE AUTHORITY" in said


def test_other_bytes_are_refused(made, tmp_path):
    page, ours, _ = made
    changed = tmp_path / page.name
    changed.write_bytes(page.read_bytes() + b"!")
    reply_path(changed).write_bytes(reply_path(page).read_bytes())
    for known in (ours, None):
        good, said = check_stamp(changed, known)
        assert not good
        assert "not of these bytes" in said


def test_a_reply_whose_time_was_changed_is_refused(made, tmp_path):
    page, ours, _ = made
    copy, data = tmp_path / page.name, bytearray(reply_path(page).read_bytes())
    copy.write_bytes(page.read_bytes())
    year = data.index(b"\x18\x0f20") + 4  # GeneralizedTime of 15 characters, as openssl writes it
    data[year] ^= 1
    reply_path(copy).write_bytes(data)
    assert not check_stamp(copy, ours)[0]


def test_without_certificate_reply_or_sense(made, tmp_path):
    page, ours, _ = made
    good, said = check_stamp(page)
    assert good
    assert "NOT CHECKED" in said
    bare = tmp_path / "bare.html"
    bare.write_bytes(b"x")
    assert check_stamp(bare) == (True, "")
    assert "NO TIME-STAMP" in check_stamp(bare, ours)[1]
    assert not check_stamp(bare, ours)[0]
    reply_path(bare).write_bytes(b"nonsense")
    assert "CANNOT BE READ" in check_stamp(bare, ours)[1]
    with pytest.raises(InputError, match="holds no certificate"):
        check_stamp(page, page)


def test_a_reply_without_the_authoritys_certificate_is_refused(made, tmp_path):
    page, ours, _ = made
    copy, folder = tmp_path / page.name, page.parent
    copy.write_bytes(page.read_bytes())
    openssl("ts", "-query", "-data", copy, "-sha256", "-out", request_path(copy))
    openssl("ts", "-reply", "-config", folder / "ts.cnf", "-queryfile", request_path(copy), "-out", reply_path(copy),
            "-signer", folder / "ours-own.pem", "-inkey", folder / "ours-own.key")  # fmt: skip
    good, said = check_stamp(copy, ours)
    assert not good
    assert "carries no certificate" in said
