"""Band level and events against truth: formulas of a sine, Parseval's sum, bursts of known times, stationary noise."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.signal import butter, sosfilt, sosfilt_zi
from scipy.stats import norm

from analysis.road.against import BATCH_S, against
from analysis.road.levels import BLOCK_S, Found, Levels, band_for, band_levels, find_events, flat_tops
from logger.errors import InputError
from tests.analysis.drives import drive, pink

RATE = 4000
BAND = (50.0, 800.0)
AWAY_S = BLOCK_S + 0.02
"""A burst's edge is told to a block and the filter's delay."""


def levels_of(signal, rate=RATE, band=BAND, kind="sound", **more):
    return band_levels(kind, signal.reshape(len(signal), -1), rate, band, **{"zero": 0.0, "unit": 1.0} | more)


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
    assert band_for("acceleration", 48000.0) == (20.0, 800.0)
    assert band_for("acceleration", 100.0) == (20.0, 45.0)
    assert band_for("acceleration", 24.0 / 0.45) == (20.0, 24.0)  # a fifth above the lower end, just
    with pytest.raises(InputError, match="between 0 and 45 Hz"):
        band_for("acceleration", 100.0, (20.0, 200.0))
    with pytest.raises(InputError, match="below 18 Hz, or record faster"):
        band_for("acceleration", 40.0)
    assert band_for("sound", 4000.0, (50.0, 60.0)) == (50.0, 60.0)
    assert band_for("sound", 4000.0, (0.5, 1800.0)) == (0.5, 1800.0)
    for low, high in ((0.0, 60.0), (-1.0, 60.0), (50.0, 59.9), (60.0, 50.0), (50.0, 1801.0), (np.nan, 60.0)):
        with pytest.raises(InputError, match="a fifth above its lower end"):
            band_for("sound", 4000.0, (low, high))


def test_ten_seconds_are_enough_and_less_are_not() -> None:
    noise = pink(10 * RATE, 3)
    assert find_events(levels_of(noise)).events == ()
    assert find_events(course([0.0] * 90, block_s=0.11)).events == ()  # 9.9 s: blocks need not fit
    with pytest.raises(InputError, match=r"9\.9 s are too short"):
        levels_of(noise[: round(9.9 * RATE)])
    for gap, kept in (((1.0, 1.1), 9.875), ((0.0, 0.2), 9.75)):
        found = levels_of(noise, gaps_s=(gap,))
        assert found.heard_s == kept
        with pytest.raises(InputError, match=r"s with a level are too short: the background takes 10 s"):
            find_events(found)


def test_a_rate_below_that_of_the_blocks_has_a_block_a_sample() -> None:
    assert levels_of(pink(48, 1), 4, (0.5, 1.5), "acceleration").block_s == 0.25


@pytest.mark.parametrize("kind", ["sound", "acceleration"])
def test_a_long_signal_is_filtered_as_a_whole(kind) -> None:
    """Against one call of scipy's filter that begins at rest; bytes around 128 in three channels, 60 s."""
    generator = np.random.default_rng(8)
    samples = generator.integers(1, 255, (60 * RATE, 3), np.uint8)
    samples[0] = (90, 180, 128)
    samples[[0, 50 * RATE]] = ((0, 180, 128), (128, 255, 128))
    found = levels_of(samples, kind=kind, zero=128.0, unit=1 / 128, ends=(0.0, 255.0))
    x = (samples.astype(float) - 128) / 128
    sos = butter(4, BAND, "bandpass", fs=RATE, output="sos")
    y, _ = sosfilt(sos, x, axis=0, zi=sosfilt_zi(sos)[:, :, None] * x[0])
    squares = (y**2).reshape(-1, RATE // 8, 3).mean(axis=1)
    mean = squares.mean(axis=1) / 0.5 if kind == "sound" else squares.sum(axis=1) / 1e-12
    assert found.power == pytest.approx(mean, rel=1e-9)
    assert np.flatnonzero(found.clipped).tolist() == [0, 400]
    assert found.clipped_s == 0.25


def test_a_microphone_that_gives_nothing_has_no_level() -> None:
    """Bytes of silence stand at 128; 140 dB below full scale, 1e-7 of it, is the least that counts as heard."""
    silent = np.full(12 * RATE, 128, np.uint8)
    assert levels_of(silent, zero=128.0, unit=1 / 128).heard_s == 0
    sine = np.sin(2 * np.pi * 200 * np.arange(12 * RATE) / RATE)
    assert levels_of(1.02e-7 * sine).heard_s == pytest.approx(12.0, abs=0.2)
    assert levels_of(0.98e-7 * sine).heard_s == pytest.approx(0.0, abs=0.2)


@pytest.mark.parametrize(("gap", "blocks"), [((5.0, 5.125), [40]), ((5.1, 5.13), [40, 41]), ((4.99, 5.0), [39])])
def test_a_gap_takes_the_blocks_that_it_touches(gap, blocks) -> None:
    found = levels_of(pink(12 * RATE, 2), gaps_s=(gap,))
    assert np.flatnonzero(np.isnan(found.power)).tolist() == blocks


def course(db, *, clipped=(), block_s: float = BLOCK_S) -> Levels:
    """Levels from their dB; the blocks of these numbers are clipped."""
    power = 10 ** (np.asarray(db, float) / 10)
    cut = np.isin(np.arange(len(power)), clipped)
    return Levels("sound", BAND, (np.arange(len(power)) + 0.5) * block_s, block_s, power, cut)


@pytest.mark.parametrize(
    ("blocks", "events"),
    [
        ([10], []),  # one block alone is none
        ([10, 10], [(0, 2)]),
        ([10, 0, 10, 0], []),
        ([6, 6, 0], []),  # just at the threshold
        ([10, 10, 0, 10, 0, 0], [(0, 4)]),  # one quiet block does not end it, two do
        ([10, 10, 0, 0, 10, 10], [(0, 2), (4, 6)]),
        ([10, 10, 3, 3, 3, 0, 0], [(0, 5)]),  # half of the rise holds it
        ([10, 10, 2.9, 2.9, 10], [(0, 2)]),
        ([10, 10, 10, np.nan, 10, 10], [(0, 3), (4, 6)]),  # where nothing was kept it ends
        ([10, 10, 0, np.nan], [(0, 2)]),
        ([10, 10, 0], [(0, 2)]),  # the recording ends
        ([0, np.nan, 10, 10, 10, 0, 0], [(2, 5)]),
    ],
)
def test_an_event_begins_and_ends_with_two_blocks(blocks, events) -> None:
    """A background that stands at 0 dB has a threshold of 6 dB, half of the rise is 3 dB."""
    levels = course([0.0] * 96 + blocks, clipped=[96 + a for a, _ in events[:1]])
    found = find_events(levels)
    assert (found.background_db, found.spread_db, found.threshold_db) == (0, 0, 6)
    assert [(e.start_s, e.end_s) for e in found.events] == [(12 + a / 8, 12 + b / 8) for a, b in events]
    assert [e.clipped for e in found.events] == [True, False][: len(events)]
    assert found.total_s == sum(b - a for a, b in events) / 8
    assert found.share == pytest.approx(found.total_s / levels.heard_s)


def test_an_event_has_the_level_of_its_mean_square() -> None:
    """Powers of 10 and 20: 10 lg 15 = 11.76 dB."""
    (event,) = find_events(course([0.0] * 96 + [10.0, 10 * np.log10(20.0), 0.0])).events
    assert event.level_db == pytest.approx(11.761, abs=1e-3)


@pytest.mark.parametrize(("spread", "rise"), [(1.0, 6.0), (2.0, 8.0)])
def test_mean_and_spread_are_those_of_a_normal_distribution(spread, rise) -> None:
    """Levels at the quantiles of scipy's normal distribution, mixed; the threshold is 6 dB or four deviations up."""
    shares = (np.arange(4000) + 0.5) / 4000
    levels = course(np.random.default_rng(4).permutation(norm.ppf(shares, -60.0, spread)))
    found = find_events(levels)
    assert (found.background_db, found.spread_db) == (pytest.approx(-60, abs=0.01), pytest.approx(spread, abs=0.01))
    assert found.threshold_db == pytest.approx(-60 + rise, abs=0.05)
    assert found.events == ()


def test_loud_blocks_above_the_third_tenth_do_not_move_the_background() -> None:
    shares = (np.arange(4000) + 0.5) / 4000
    db = norm.ppf(shares, -60.0, 1.0)
    db[shares > 0.31] += 30
    found = find_events(course(db))
    assert (found.background_db, found.spread_db) == (pytest.approx(-60, abs=0.01), pytest.approx(1.0, abs=0.01))


def of_batches(*means: float, rest: int = 0) -> Levels:
    """Levels of batches of 5 s (40 blocks) that scatter within by a half each, and blocks more of power 2."""
    power = [mean + 0.5 * (-1) ** n for mean in means for n in range(40)] + [2.0] * rest
    return course(10 * np.log10(power))


def told_of(levels: Levels, background: float = 0.0, share: float = 0.0) -> tuple[Levels, Found]:
    return levels, Found(background, 1.0, background + 6, (), 0.0, share)


def test_a_difference_by_hand() -> None:
    """Batches of 1, 2, 3, 2: s = √(2/3), u = s/√4, of a mean of 2; in dB 10/ln 10 · u/2, t of 3 degrees of freedom.

    Table of Student's t (JCGM 100, G.2): 3.18 for 3, 2.45 for 6 degrees of freedom.
    """
    scattered, even = told_of(of_batches(1, 2, 3, 2, rest=10), -20.0, 0.3), told_of(of_batches(1, 1, 1, 1), -22.0, 0.1)
    part = 10 / np.log(10) * np.sqrt(2 / 3) / 2 / 2
    for one, other, sign in ((scattered, even, 1), (even, scattered, -1)):
        found = against(one, other)
        assert found.db == pytest.approx(sign * 10 * np.log10(2))
        assert found.u95_db == pytest.approx(3.182 * part, rel=1e-3)
        assert found.background_db == pytest.approx(sign * 2.0)
        assert found.share == pytest.approx(sign * 0.2)
    alike = against(scattered, scattered)
    assert alike.u95_db == pytest.approx(2.447 * np.sqrt(2) * part, rel=1e-3)


def test_blocks_without_a_level_leave_a_difference_alone() -> None:
    whole = of_batches(1, 2, 3, 2)
    gaps = np.insert(whole.power, [0, 17, 80], np.nan)
    gappy = Levels("sound", BAND, (np.arange(len(gaps)) + 0.5) * BLOCK_S, BLOCK_S, gaps, np.zeros(len(gaps), bool))
    assert against(told_of(gappy), told_of(whole)) == against(told_of(whole), told_of(whole))


def test_a_cut_range_stands_three_times_in_a_row_at_three_places() -> None:
    def swings(*runs: int) -> np.ndarray:
        return np.concatenate([[0.1, *[1.0] * run, 0.2] for run in runs])[:, None]

    assert flat_tops(swings(3, 3, 3))
    assert flat_tops(-swings(3, 4, 5))
    assert flat_tops(swings(3, 3, 3)[1:])  # the first run begins the recording
    assert not flat_tops(swings(3, 3, 2))
    assert not flat_tops(swings(9, 9))
    assert not flat_tops(np.ones((30, 1)))
    both = np.column_stack([np.sin(np.arange(15.0)), swings(3, 3, 3)[:, 0]])
    assert flat_tops(both)
    assert flat_tops(both[:, ::-1])


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
