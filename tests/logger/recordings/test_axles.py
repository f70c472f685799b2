"""The sheet of an axle: a plain file beside the recordings, from which nothing is lost."""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime, timedelta
from pathlib import Path

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from logger.edges.toml_file import read_toml
from logger.errors import DescriptionError, FileError, InputError
from logger.recordings.axles import (
    AxleFile,
    Build,
    Pack,
    PackPart,
    Retest,
    Use,
    axle_file,
    builds_until,
    change_axle,
    put_build,
    read_axle,
)

DAY = datetime(2026, 5, 14, 10, 0, tzinfo=UTC)


def test_it_is_kept_and_found_by_its_tag(tmp_path: Path):
    build = Build(built=DAY, left=Pack(parts=(PackPart(kind="shim", thickness_mm=0.3),)))
    change_axle(tmp_path, "43/11 rear", lambda axle: put_build(axle, build))
    assert (tmp_path / "43-11-rear.axle.toml").is_file()
    kept = read_axle(tmp_path, " 43/11 REAR ")
    assert kept is not None
    assert kept.builds == (build,)
    assert read_axle(tmp_path, "another") is None
    with pytest.raises(InputError, match="tag"):
        read_axle(tmp_path, "  ")


def test_two_tags_of_one_stem_are_two_files(tmp_path: Path):
    for tag in ("43/11", "43-11", "43 11"):
        change_axle(tmp_path, tag, lambda axle: put_build(axle, Build(built=DAY, reason=axle.tag)))
    assert len(list(tmp_path.glob("*.axle.toml"))) == 3
    for tag in ("43/11", "43-11", "43 11"):
        kept = read_axle(tmp_path, tag)
        assert kept is not None
        assert kept.builds[0].reason == tag


def test_a_tag_never_leaves_the_folder(tmp_path: Path):
    path, found = axle_file(tmp_path, "../../etc/passwd")
    assert path.parent == tmp_path
    assert found is None


def test_what_is_put_right_is_kept_as_it_was():
    first, second = Build(built=DAY, reason="a"), Build(built=DAY + timedelta(days=1), reason="b")
    axle = put_build(put_build(AxleFile(tag="x"), second), first)
    assert [b.reason for b in axle.builds] == ["a", "b"]
    better = Build(built=DAY + timedelta(hours=1), reason="A")
    after = put_build(axle, better, instead_of=DAY)
    assert [b.reason for b in after.builds] == ["A", "b"]
    assert [r.build for r in after.replaced] == [first]
    assert put_build(after, better, instead_of=better.built) is after  # nothing changed, nothing kept
    with pytest.raises(InputError, match="its own time"):
        put_build(axle, Build(built=DAY))
    with pytest.raises(InputError, match="is kept"):
        put_build(axle, better, instead_of=DAY - timedelta(days=9))


def test_a_recording_is_of_the_last_build_before_it():
    axle = AxleFile(tag="x", builds=tuple(Build(built=DAY + timedelta(days=d)) for d in (0, 2, 5)))
    assert builds_until(axle, DAY - timedelta(minutes=1)) == ()
    assert builds_until(axle, DAY) == axle.builds[:1]
    assert builds_until(axle, DAY + timedelta(days=4)) == axle.builds[:2]
    assert builds_until(axle, DAY + timedelta(days=400)) == axle.builds


def test_two_programs_lose_nothing_of_each_other(tmp_path: Path):
    def add(n: int) -> None:
        change_axle(tmp_path, "x", lambda axle: put_build(axle, Build(built=DAY + timedelta(hours=n))))

    with ThreadPoolExecutor(8) as pool:
        list(pool.map(add, range(24)))
    kept = read_axle(tmp_path, "x")
    assert kept is not None
    assert len(kept.builds) == 24


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("[[builds]]\nbuilt = 2026-05-14\n", "a date and time"),
        ("[[builds]]\nbuilt = 2026-05-14T10:00:00Z\nspring_n = -1\n", "spring_n"),
        ('[[builds]]\nbuilt = 2026-05-14T10:00:00Z\n[builds.left]\nparts = [{kind = "disk"}]\n', "friction disc"),
        ("[retest]\nevery_kms = 5\n", "did you mean 'every_km'"),
    ],
)
def test_a_fault_names_file_key_and_fix(tmp_path: Path, text: str, said: str):
    path = tmp_path / "x.axle.toml"
    path.write_text(f'schema = "heldwheel axle 1"\ntag = "x"\n{text}', "utf-8")
    with pytest.raises(DescriptionError) as caught:
        read_axle(tmp_path, "x")
    assert str(path) in str(caught.value)
    assert said in str(caught.value)


KINDS = st.sampled_from(["friction disc", "steel plate", "disc spring", "shim"])
PARTS = st.builds(
    PackPart, kind=KINDS, thickness_mm=st.none() | st.floats(0.01, 99), note=st.text(max_size=20, alphabet="abc ü€'\"")
)


@given(st.lists(PARTS, max_size=20))
def test_what_is_written_is_what_is_read(tmp_path_factory: pytest.TempPathFactory, parts: list[PackPart]):
    folder = tmp_path_factory.mktemp("axle")
    axle = AxleFile(tag="x", builds=(Build(built=DAY, left=Pack(parts=tuple(parts))),))
    change_axle(folder, "x", lambda _axle: axle)
    assert read_toml(folder / "x.axle.toml", AxleFile) == axle


def full_of_other_tags(folder: Path, count: int) -> None:
    """Take the first names that a tag ``x`` could have."""
    for n in range(1, count + 1):
        text = f'schema = "heldwheel axle 1"\ntag = "another {n}"\n'
        (folder / ("x.axle.toml" if n == 1 else f"x-{n}.axle.toml")).write_text(text, "utf-8")


def test_so_many_files_of_one_name_are_looked_through(tmp_path: Path):
    full_of_other_tags(tmp_path, 98)
    assert axle_file(tmp_path, "x") == (tmp_path / "x-99.axle.toml", None)
    full_of_other_tags(tmp_path, 99)
    with pytest.raises(FileError, match="give this one a tag of its own"):
        axle_file(tmp_path, "x")


@pytest.mark.parametrize(
    ("kind", "key", "least", "most"),
    [
        (Pack, "surfaces", 1, 200),
        (Pack, "end_play_mm", 0, 1e6),
        *[(Build, key, 0, 1e6) for key in ("spring_n_u", "face_mm_u", "pinion_nm", "pinion_nm_u", "soak_min")],
        *[(Build, key, 0, 1e6) for key in ("oil_l", "modifier_l")],
        (Retest, "every_events", 1, 10_000),
        (Retest, "figure_eights", 1, 10_000),
        (Use, "km", 0, 1e6),
        (Use, "events", 0, 10_000),
        (Use, "figure_eights", 0, 10_000),
    ],
)
def test_figures_of_a_sheet_and_their_ends(kind: type[msgspec.Struct], key: str, least: float, most: float):
    needed = {Build: {"built": DAY}, Use: {"day": DAY.date()}}.get(kind, {})
    for value in (least, most):
        assert getattr(msgspec.convert({**needed, key: value}, kind), key) == value
    for value in (least - 1, most + 1):
        with pytest.raises(msgspec.ValidationError, match=key):
            msgspec.convert({**needed, key: value}, kind)


@pytest.mark.parametrize(
    ("kind", "key", "most"),
    [
        (PackPart, "thickness_mm", 100),
        *[(Build, key, 1e6) for key in ("spring_n", "face_outer_mm", "face_inner_mm")],
        *[(Retest, key, 1e6) for key in ("every_km", "every_weeks")],
    ],
)
def test_what_cannot_be_nothing(kind: type[msgspec.Struct], key: str, most: float):
    needed = {Build: {"built": DAY}, PackPart: {"kind": "shim"}}.get(kind, {})
    for value in (0.01, most):
        assert getattr(msgspec.convert({**needed, key: value}, kind), key) == value
    for value in (0, most + 1):
        with pytest.raises(msgspec.ValidationError, match=key):
            msgspec.convert({**needed, key: value}, kind)


def test_a_pack_of_sixty_parts_and_a_use_of_nothing():
    parts = [{"kind": "shim"}] * 60
    assert len(msgspec.convert({"parts": parts}, Pack).parts) == 60
    with pytest.raises(msgspec.ValidationError, match="parts"):
        msgspec.convert({"parts": [*parts, parts[0]]}, Pack)
    assert (Use(day=DAY.date()).events, Use(day=DAY.date()).figure_eights) == (0, 0)
