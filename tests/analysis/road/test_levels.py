"""Band level and events against truth: formulas of a sine, Parseval's sum, bursts of known times, stationary noise."""

from __future__ import annotations

import numpy as np
import pytest

from analysis.road.against import BATCH_S, against
from analysis.road.levels import BLOCK_S, Levels, band_for, band_levels, find_events, flat_tops
from logger.errors import InputError
from tests.analysis.drives import drive, pink

RATE = 4000
BAND = (50.0, 800.0)
AWAY_S = BLOCK_S + 0.02
"""A burst's edge is told to a block and the filter's delay."""


def levels_of(signal, rate=RATE, band=BAND, kind="sound", **more):
    return band_levels(kind, signal.reshape(len(signal), -1), rate, band, **more)


@pytest.mark.parametrize("amplitude", [1.0, 0.1, 0.001])
def test_a_sine_has_the_level_of_its_amplitude(amplitude: float) -> None:
    """A sine of full scale is 0 dB (AES17, from memory); its rms is amplitude / √2, so 20 lg amplitude."""
    t = np.arange(12 * RATE) / RATE
    found = levels_of(amplitude * np.sin(2 * np.pi * 200 * t))
    assert found.db[8:-1] == pytest.approx(20 * np.log10(amplitude), abs=0.05)


def test_an_acceleration_is_in_decibels_re_one_micrometre_a_second_squared() -> None:
    """Two axes of 3 and 4 m/s² amplitude: rms √((9 + 16)/2), 20 lg of it over 1e-6 (ISO 1683, from memory)."""
    t = np.arange(12 * 400) / 400
    both = np.column_stack([3 * np.sin(2 * np.pi * 60 * t), 4 * np.sin(2 * np.pi * 60 * t + 1)])
    found = levels_of(both, 400, (20.0, 180.0), "acceleration")
    assert found.db[8:-1] == pytest.approx(20 * np.log10(np.sqrt(12.5) / 1e-6), abs=0.05)


def test_the_level_of_the_whole_is_parsevals_sum_over_the_band() -> None:
    """Mean square = Σ |X|² / n² over the band's lines (Parseval), here with numpy's transform."""
    noise = 0.01 * pink(60 * RATE, 3)
    lines, hz = np.abs(np.fft.rfft(noise)) ** 2 / len(noise) ** 2 * 2, np.fft.rfftfreq(len(noise), 1 / RATE)
    true = 10 * np.log10(lines[(hz >= BAND[0]) & (hz <= BAND[1])].sum() / 0.5)
    assert levels_of(noise).mean_db == pytest.approx(true, abs=0.1)


def test_bursts_are_found_where_they_are_with_their_level() -> None:
    bursts = ((6.0, 7.0), (12.5, 14.5), (20.0, 20.5))
    levels = levels_of(drive(RATE, 30.0, bursts, 0.05))
    found = find_events(levels)
    assert [(e.start_s, e.end_s) for e in found.events] == [pytest.approx(b, abs=AWAY_S) for b in bursts]
    assert found.events[1].level_db == pytest.approx(20 * np.log10(0.05), abs=0.5)
    assert found.total_s == pytest.approx(3.5, abs=6 * AWAY_S)
    assert found.share == pytest.approx(found.total_s / 30.0)


def test_chatter_for_half_of_the_time_hardly_moves_the_background() -> None:
    quiet = find_events(levels_of(drive(RATE, 60.0, (), 0.0)))
    half = tuple((at, at + 2.0) for at in np.arange(1.0, 59.0, 4.0).tolist())
    loud = find_events(levels_of(drive(RATE, 60.0, half, 0.05)))
    assert abs(loud.background_db - quiet.background_db) < 1.0
    assert len(loud.events) == len(half)


@pytest.mark.parametrize(("rate", "band"), [(450, (50.0, 200.0)), (100, (20.0, 45.0)), (200, (20.0, 30.0))])
def test_stationary_noise_has_less_than_one_false_event_an_hour(rate: int, band: tuple[float, float]) -> None:
    """Two hours of pink noise in minutes; the narrow band has the most scatter from block to block."""
    noise = pink(7200 * rate, 11)
    false = sum(len(find_events(levels_of(part, rate, band)).events) for part in np.split(noise, 120))
    assert false <= 2


def test_what_was_not_kept_is_neither_level_nor_background() -> None:
    signal = drive(RATE, 30.0, ((6.0, 7.0),), 0.05)
    signal[15 * RATE : 20 * RATE] = 0.0  # a noise gate
    levels = levels_of(signal, gaps_s=((25.0, 26.0),))
    assert levels.heard_s == pytest.approx(24.0, abs=0.6)
    assert len(find_events(levels).events) == 1


def test_clipped_blocks_are_noticed() -> None:
    kept = np.clip(np.round(drive(RATE, 12.0, ((5.0, 6.0),), 1.5) * 32768), -32768, 32767).astype(np.int16)
    levels = levels_of(kept, unit=1 / 32768, ends=(-32768.0, 32767.0))
    assert levels.time_s[levels.clipped] == pytest.approx(np.arange(5.0625, 6.0, 0.125), abs=0.07)
    assert [e.clipped for e in find_events(levels).events] == [True]


def test_a_cut_acceleration_is_noticed_and_a_whole_one_is_not() -> None:
    t = np.arange(2000) / 400
    swing = np.sin(2 * np.pi * 7 * t)[:, None]
    assert flat_tops(np.clip(swing, -0.8, 0.8))
    assert not flat_tops(swing + 0.001 * np.random.default_rng(1).standard_normal(swing.shape))
    assert not flat_tops(np.zeros((100, 1)))


def test_the_usual_band_ends_where_the_rate_ends_and_an_asked_one_is_refused() -> None:
    assert band_for("sound", 48000.0) == (50.0, 800.0)
    assert band_for("acceleration", 100.0) == (20.0, 45.0)
    with pytest.raises(InputError, match="between 0 and 45 Hz"):
        band_for("acceleration", 100.0, (20.0, 200.0))
    with pytest.raises(InputError, match="below 18 Hz, or record faster"):
        band_for("acceleration", 40.0)
    with pytest.raises(InputError, match="too short"):
        levels_of(np.ones(5 * RATE))


def drawn(generator: np.random.Generator, gain: float) -> Levels:
    """Blocks of four minutes of turns: quiet, with bursts that come at random and are of unlike strength."""
    power = generator.gamma(20.0, 1 / 20.0, 1920)
    for at in np.flatnonzero(generator.random(1920) < 0.02):
        power[at : at + 8] += generator.exponential(20.0)
    return Levels("sound", BAND, np.arange(1920) * BLOCK_S, BLOCK_S, gain * power, np.zeros(1920, bool))


def test_a_difference_holds_the_truth_in_about_95_of_100_pairs() -> None:
    generator, hit, pairs = np.random.default_rng(5), 0, 300
    for _ in range(pairs):
        one, other = drawn(generator, 2.0), drawn(generator, 1.0)
        found = against((one, find_events(one)), (other, find_events(other)))
        hit += abs(found.db - 10 * np.log10(2.0)) < found.u95_db
    assert 0.91 <= hit / pairs <= 0.99


def test_only_like_is_compared_and_not_too_short() -> None:
    one = drawn(np.random.default_rng(1), 1.0)
    short = Levels("sound", BAND, one.time_s[:120], BLOCK_S, one.power[:120], one.clipped[:120])
    told = (one, find_events(one))
    other = Levels("acceleration", BAND, one.time_s, BLOCK_S, one.power, one.clipped)
    with pytest.raises(InputError, match="like with like"):
        against(told, (other, told[1]))
    with pytest.raises(InputError, match=f"{4 * BATCH_S:g} s at least"):
        against(told, (short, told[1]))
