"""The doors pulls, lever, limit, drag and cautions as a user calls them: words, JSON, exit codes, no traceback."""

from __future__ import annotations

import json

import pytest

from analysis.__main__ import COMMANDS
from logger import header
from logger.edges.door import Exit, run_door
from logger.header import Sidecar
from logger.instruments.saved import read_lever, read_limit
from logger.recordings.sidecar import change_sidecar
from tests.analysis.simulated import HUB, ONE_STUD, ZERO, run_of, write_trace

LEVER = ("--lever", "450mm", "--stud-circle", "5x114.3mm", "--angle", "0deg")
MIN_20 = ("--limit", "breakaway >= 20 lbf·ft", "--source", "workshop manual")


@pytest.fixture
def door(capsys):
    def run(*words):
        code = run_door("heldwheel-read", "", COMMANDS, "analysis.doors", [str(w) for w in words])
        shown = capsys.readouterr()
        return code, shown.out, shown.err

    return run


@pytest.fixture(scope="module")
def hub_run():
    return run_of(one_stud=False, seed=2)


@pytest.fixture
def on_hub(tmp_path, hub_run):
    return write_trace(tmp_path / "hub.csv", hub_run, lever=HUB, zero=ZERO, test=header.Test(held="other side"))


@pytest.fixture
def free_hub(tmp_path, hub_run):
    path = write_trace(tmp_path / "free.csv", hub_run, lever=HUB, zero=ZERO, test=header.Test(held="none"))
    with open(path, "a", encoding="utf-8") as file:  # another recording than the held one
        file.write("\n")
    return path


class TestLever:
    def test_factor(self, door):
        """Common practice, no source: 17.5 in lever, 4.25 in stud circle, in line: 1.121."""
        code, out, _ = door("lever", "--lever", "17.5in", "--stud-circle", "4.25in", "--angle", "0deg")
        assert code == Exit.OK
        assert "torque at the axle = 1.1214 × what is read" in out
        assert "assumed ± 20 mm" in out

    def test_reading_typed_in(self, door):
        """... and 18 lbf·ft shown is 20.2 at the axle."""
        code, out, err = door(
            "lever", "--lever", "17.5in", "--stud-circle", "4.25in", "--angle", "0deg", "--reading", "18 lbf·ft",
            "--mark-spacing", "5 lbf·ft", "--class", "4%", "--full-scale", "250 lbf·ft", *MIN_20, "--budget",
        )  # fmt: skip
        assert code == Exit.TOO_CLOSE
        assert "20.19 lbf·ft = 27.37 N·m at the axle" in out
        assert "◆ too close to call: breakaway at least 20 lbf·ft (workshop manual); rule: three-way" in out
        assert "probability of conformity" in out
        assert "calibration" in out
        assert "below the certified part" in err

    def test_several_readings_in_json(self, door):
        readings = [w for value in ("30 N·m", "31 N·m", "29,5 N·m", "30.5 N·m") for w in ("--reading", value)]
        code, out, _ = door(
            "lever", *LEVER, *readings, "--mark-spacing", "0.5 N·m", "--class", "2%", "--full-scale", "100 N·m",
            *MIN_20, "--json",
        )  # fmt: skip
        answer = json.loads(out)
        assert code == Exit.OK
        assert answer["result"]["state"] == "within"
        assert answer["at_axle_nm"] == pytest.approx(1.127 * 30.25)
        assert [row["name"] for row in answer["budget"]["rows"]].count("calibration") == 1
        assert len(answer["readings"]) == 4

    def test_monte_carlo_beside_the_budget(self, door):
        code, _, err = door(
            "lever", *LEVER, "--reading", "30 N·m", "--class", "2%", "--mark-spacing", "1 N·m", "--monte-carlo"
        )
        assert code == Exit.OK
        assert "Monte Carlo (1e6 trials) agrees with the budget" in err

    def test_string_and_scale(self, door):
        """8-5/16 in radius, 24 lbf: 16.6 lbf·ft (TM 5-3805-257-14&P prints the example without its result)."""
        words = ("--fixture", "cord", "--radius", "8.3125in", "--reading", "24 lbf", "--unit", "lbf·ft")
        code, out, _ = door("lever", *words)
        assert code == Exit.OK
        assert "16.62 lbf·ft" in out or "16.63 lbf·ft" in out

    def test_dead_weight(self, door):
        code, out, _ = door("lever", "--fixture", "dead weight", "--radius", "44.25in", "--reading", "15kg")
        assert code == Exit.OK
        assert "165.3 N·m at the axle" in out

    def test_saved_lever_is_read_again(self, door, tmp_path):
        file = tmp_path / "shop.toml"
        assert door("lever", *LEVER, "--save", file)[0] == Exit.OK
        assert read_lever(file).length_mm == pytest.approx(450)
        _, out, _ = door("lever", "--fixture-file", file)
        assert "1.1270" in out

    def test_stated_uncertainty(self, door):
        _, out, _ = door("lever", "--lever", "450mm±3mm", "--stud-circle", "114.3mm", "--angle", "0deg±2deg", "--json")
        inputs = {row["name"]: row for row in json.loads(out)["inputs"]}
        assert inputs["lever length"]["u"] == pytest.approx(0.003 / 1.96)
        assert inputs["lever angle"]["from"] == "stated"

    @pytest.mark.parametrize(
        ("words", "said"),
        [
            ((), "describe the lever"),
            (("--lever", "450mm"), "does not say how the torque gets to the axle"),
            (("--lever", "0mm", "--stud-circle", "114.3mm"), "lever.length_mm: must be positive"),
            (("--lever", "-45cm", "--stud-circle", "114.3mm"), "lever.length_mm: must be positive"),
            (("--lever", "450", "--stud-circle", "114.3mm"), "--lever: length '450' has no unit"),
            (("--lever", "450 furlong", "--stud-circle", "114.3mm"), "use one of"),
            (("--lever", "450mm", "--stud-circle", "2x114.3mm"), "3 to 10"),
            (("--lever", "450mm", "--chord", "67mm"), "lever.studs: a chord needs the number of studs"),
            ((*LEVER, "--fixture-file", "x.toml"), "give one or the other"),
            (("--fixture-file", "nowhere.toml"), "nowhere.toml"),
            ((*LEVER, "--reading", "18"), "has no unit"),
            ((*LEVER, "--reading", "-18 N·m"), "must be positive"),
            ((*LEVER, "--reading", "18 N·m", "--class", "400%"), "4 %, not 400 %"),
            ((*LEVER, "--reading", "18 N·m", "--class", "four"), "--class"),
            ((*LEVER, "--reading", "300 N·m", "--full-scale", "250 N·m"), "beyond the dial's full scale"),
            ((*LEVER, "--reading", "18 N·m", "--mark-spacing", "0 N·m"), "mark spacing must be positive"),
            ((*LEVER, *MIN_20), "a limit needs a reading"),
            ((*LEVER, "--reading", "18 N·m", "--quantity", "rotating mean", *MIN_20), "no comparison"),
            ((*LEVER, "--reading", "18 N·m", "--limit", "breakaway >= 20 lbf·ft"), "limit.source"),
            (("--lever", "450mm", "--stud-circle", "114.3mm", "--chord", "60mm±1mm"), "--chord takes no uncertainty"),
        ],
    )
    def test_bad_input_is_one_clear_message(self, door, words, said):
        code, _, err = door("lever", *words)
        assert code == Exit.BAD_INPUT
        assert said in err
        assert err.startswith("heldwheel-read lever: ")


class TestLimit:
    @pytest.mark.parametrize(
        ("value", "u95", "rule", "code"),
        [
            ("30Nm", "1.2Nm", "three-way", Exit.OK),
            ("28Nm", "1.2Nm", "three-way", Exit.TOO_CLOSE),
            ("28Nm", "1.2Nm", "simple", Exit.OK),
            ("28Nm", "1.2Nm", "guarded-acceptance", Exit.OUTSIDE),
            ("26Nm", "1.2Nm", "guarded-rejection", Exit.OK),
            ("25Nm", "1.2Nm", "three-way", Exit.OUTSIDE),
        ],
    )
    def test_rules_and_exit_codes(self, door, value, u95, rule, code):
        assert door("limit", value, "--u95", u95, *MIN_20, "--rule", rule)[0] == code

    def test_every_rule_side_by_side(self, door):
        _, out, _ = door("limit", "21 lbf·ft", "--u95", "0.9 lbf·ft", *MIN_20)
        assert "21.00 ± 0.90 lbf·ft = 28.5 ± 1.2 N·m" in out
        for words in ("three-way", "simple", "guarded acceptance", "guarded rejection", "w = 1.645 u", "probability"):
            assert words in out

    def test_json(self, door):
        _, out, _ = door("limit", "28Nm", "--u95", "1.2Nm", *MIN_20, "--json")
        answer = json.loads(out)
        assert answer["state"] == "too close to call"
        assert answer["limit"]["as_written"] == "at least 20 lbf·ft"
        assert {(r["rule"], r["state"]) for r in answer["rules"]} >= {
            ("simple", "within"),
            ("guarded acceptance", "outside"),
        }

    def test_few_degrees_of_freedom_keep_the_interval_and_spread_the_probability(self, door):
        """The interval given is the interval used; the tails of a t-distribution are longer."""
        many, few = (
            json.loads(door("limit", "28Nm", "--u95", "1Nm", *MIN_20, "--json", *dof)[1])
            for dof in ((), ("--dof", "3"))
        )
        assert many["u95"] == pytest.approx(1.0)
        assert few["u95"] == pytest.approx(1.0)

    def test_ratio(self, door):
        code, out, _ = door("limit", "2.67", "--u95", "0.10", "--limit", "ratio >= 2.5", "--source", "service manual")
        assert code == Exit.OK
        assert "in gear ÷ neutral at least 2.5" in out

    @pytest.mark.parametrize(
        ("words", "lower", "upper", "kind"),
        [
            ("rotating mean 15..20 lbf·ft", 15.0, 20.0, "band"),
            ("rotating mean 15 to 20 lbf·ft", 15.0, 20.0, "band"),
            ("rotating maximum <= 88 N·m", None, 88.0, "max"),
            ("breakaway ≥ 2,7 kgf·m", 2.7, None, "min"),
        ],
    )
    def test_limits_in_words_are_saved_and_read_again(self, door, tmp_path, words, lower, upper, kind):
        file = tmp_path / "axle.limit.toml"
        code, _, _ = door("limit", "--limit", words, "--source", "rule book", "--page", "7", "--save", file)
        limit = read_limit(file)
        assert code == Exit.OK
        assert (limit.lower, limit.upper, limit.kind, limit.page) == (lower, upper, kind, "7")
        assert door("limit", "30Nm", "--u95", "1Nm", "--limit", file)[0] in (Exit.OK, Exit.OUTSIDE, Exit.TOO_CLOSE)

    def test_slip_of_the_unit_is_doubted(self, door):
        _, _, err = door("limit", "20Nm", "--u95", "1Nm", "--limit", "breakaway >= 15 lbf·in", "--source", "manual")
        assert "unusual for this test; is it" in err

    def test_risk_over_a_population(self, door):
        _, out, err = door("limit", "31Nm", "--u95", "1.2Nm", *MIN_20, "--population", "34Nm", "--spread", "6Nm")
        assert "wrongly within" in out
        assert "of the population stated" in err

    @pytest.mark.parametrize(
        ("words", "said"),
        [
            (("28Nm", "--limit", "breakaway >= 20 lbf·ft", "--source", "m"), "without --u95"),
            (("28Nm", "--u95", "1Nm", "--limit", "breakaway >= 20 lbf·ft"), "limit.source"),
            (("28Nm", "--u95", "1Nm", "--limit", "breakaway about 20", "--source", "m"), "write a file name"),
            (("28Nm", "--u95", "1Nm", "--limit", "breakaway >= 20", "--source", "m"), "has no unit"),
            (("28Nm", "--u95", "1Nm", "--limit", "slip >= 20 N·m", "--source", "m"), "is no quantity"),
            (("28Nm", "--u95", "1Nm", "--limit", "ratio <= 2", "--source", "m"), "least value"),
            (("28Nm", "--u95", "-1Nm", *MIN_20), "cannot be negative"),
            (("28Nm", "--u95", "1Nm", *MIN_20, "--dof", "0"), "--dof"),
            (("28Nm", "--u95", "1Nm", *MIN_20, "--spread", "1Nm"), "go together"),
            (("28Nm", "--u95", "1Nm", *MIN_20, "--population", "30Nm", "--spread", "0Nm"), "must be positive"),
            (("28", "--u95", "1Nm", *MIN_20), "has no unit"),
            (MIN_20, "say what to compare"),
            (("28Nm", "--u95", "1Nm", "--limit", "missing.toml"), "missing.toml"),
        ],
    )
    def test_bad_input_is_one_clear_message(self, door, words, said):
        code, _, err = door("limit", *words)
        assert code == Exit.BAD_INPUT
        assert said in err

    @pytest.mark.parametrize("words", [("--rule", "strict"), ("--guard", "2u")])
    def test_unknown_rule_lists_the_known_ones(self, door, capsys, words):
        with pytest.raises(SystemExit) as stopped:
            door("limit", "28Nm", "--u95", "1Nm", *MIN_20, *words)
        assert stopped.value.code == Exit.BAD_INPUT
        assert "there are: " in capsys.readouterr().err

    def test_toml_with_a_typo(self, door, tmp_path):
        file = tmp_path / "bad.toml"
        file.write_text(
            'quantity = "breakaway"\nkind = "min"\nunit = "N·m"\nlowr = 20\nsource = "manual"\n', encoding="utf-8"
        )
        code, _, err = door("limit", "28Nm", "--u95", "1Nm", "--limit", file)
        assert code == Exit.BAD_INPUT
        assert "lowr" in err
        assert "lower" in err

    def test_sidecar_serves_as_a_limit_file(self, door, tmp_path):
        trace = tmp_path / "old.csv"
        change_sidecar(
            trace,
            lambda _: Sidecar(limit=header.Limit(quantity="breakaway", kind="min", unit="N·m", lower=20.0, source="m")),
        )
        assert door("limit", "28Nm", "--u95", "1Nm", "--limit", tmp_path / "old.sidecar.toml")[0] == Exit.OK
        change_sidecar(trace, lambda _: Sidecar(lever=HUB))
        code, _, err = door("limit", "28Nm", "--u95", "1Nm", "--limit", tmp_path / "old.sidecar.toml")
        assert code == Exit.BAD_INPUT
        assert "holds no [limit]" in err


class TestPulls:
    def test_table(self, door, on_hub):
        code, out, _ = door("pulls", on_hub, *MIN_20, "--held", "other side", "--budget")
        assert code == Exit.OK
        assert out.startswith("SIMULATED")
        assert out.count("● within") == 6  # five pulls and the job
        assert "median of 5 pulls" in out
        assert "Budget: breakaway, clockwise" in out

    def test_json_is_the_contract(self, door, on_hub):
        code, out, _ = door("pulls", on_hub, "--json")
        answer = json.loads(out)
        assert code == Exit.OK
        assert answer["schema"] == "heldwheel pulls 1"
        assert len(answer["recordings"][0]["pulls"]) == 5
        assert answer["recordings"][0]["result"] is None

    def test_unit_of_the_table(self, door, on_hub):
        _, out, _ = door("pulls", on_hub, "--unit", "ft-lb")
        assert "lbf·ft" in out

    @pytest.mark.parametrize(
        ("limit", "code"),
        [
            ("breakaway >= 30 N·m", Exit.OK),
            ("breakaway <= 30 N·m", Exit.OUTSIDE),
            ("breakaway >= 58.4 N·m", Exit.TOO_CLOSE),
            ("rotating mean 45..60 N·m", Exit.OK),
            ("rotating maximum <= 50 N·m", Exit.OUTSIDE),
        ],
    )
    def test_exit_codes(self, door, on_hub, limit, code):
        assert door("pulls", on_hub, "--limit", limit, "--source", "manual", "--held", "other side")[0] == code

    def test_not_valid(self, door, on_hub):
        code, out, _ = door("pulls", on_hub, *MIN_20, "--held", "case")
        assert code == Exit.NOT_VALID
        assert "▲ not valid" in out
        assert "factor of two" in out

    def test_kind_of_test_can_be_stated(self, door, tmp_path, hub_run):
        path = write_trace(tmp_path / "bare.csv", hub_run, lever=HUB, zero=ZERO)
        limit = (*MIN_20, "--held", "other side")
        assert "does not say which part is held" in door("pulls", path, *limit)[1]
        code, out, _ = door("pulls", path, *limit, "--test-held", "other side", "--test-gear", "neutral")
        assert code == Exit.OK
        assert "which part is held" not in out
        assert door("pulls", path, *limit, "--test-held", "other side", "--test-gear", "in gear")[0] == Exit.NOT_VALID

    def test_files_that_cannot_be_read_are_named_and_the_others_shown(self, door, on_hub, tmp_path):
        code, out, err = door("pulls", tmp_path / "missing.csv", on_hub)
        assert code == Exit.BAD_INPUT
        assert "missing.csv" in err
        assert "breakaway at the axle" in out
        code, out, _ = door("pulls", tmp_path / "missing.csv", on_hub, "--json")
        assert [r["ok"] for r in json.loads(out)["recordings"]] == [False, True]
        assert code == Exit.BAD_INPUT

    def test_csv_of_others(self, door, tmp_path, hub_run):
        path = tmp_path / "old.csv"
        rows = (f"{t:.4f};{y / 1.3558179:.3f}" for t, y in zip(hub_run.time_s, hub_run.torque_nm, strict=True))
        path.write_text("t;T\n" + "\n".join(rows) + "\n", encoding="utf-8")
        words = (
            "--time-column",
            "t",
            "--torque-column",
            "T",
            "--torque-unit",
            "lbf·ft",
            "--fixture",
            "couple",
            "--zero",
            "0.4 N·m",
        )
        code, out, err = door("pulls", path, *words, "--json")
        assert code == Exit.OK, err
        (recording,) = json.loads(out)["recordings"]
        true = hub_run.truth[2]
        pull = min(recording["pulls"], key=lambda p: abs(p["start_s"] - true.start_s))
        assert pull["breakaway"]["at_axle_nm"] == pytest.approx(true.breakaway_axle_nm, rel=0.01)

    def test_repeatability_and_outlier_rule_are_taken(self, door, on_hub):
        code, out, _ = door("pulls", on_hub, "--drop-outliers", "--repeatability", "2%", "--zero", "start", "--json")
        assert code == Exit.OK
        assert json.loads(out)["recordings"][0]["zero_from"] == "true zero (unloaded)"

    @pytest.mark.parametrize(
        ("words", "said"),
        [
            (("--unit", "stone"), "no torque unit"),
            (("--zero-u95", "1Nm"), "need --zero"),
            (("--zero", "0.1Nm", "--zero-u95", "-1Nm"), "cannot be negative"),
            (("--repeatability", "-3%"), "cannot be negative"),
            (("--lever", "0mm", "--stud-circle", "5x114.3mm"), "must be positive"),
        ],
    )
    def test_bad_options(self, door, on_hub, words, said):
        code, _, err = door("pulls", on_hub, *words)
        assert code == Exit.BAD_INPUT
        assert said in err


class TestDragAndCautions:
    def test_one_held_test(self, door, on_hub):
        code, out, _ = door("drag", "--right", on_hub)
        assert code == Exit.OK
        assert "SIMULATED" in out
        assert "right wheel turned" in out
        assert "withheld" in out

    def test_json(self, door, on_hub, free_hub):
        code, out, _ = door("drag", "--right", on_hub, "--both-free", free_hub, "--json")
        answer = json.loads(out)
        assert code == Exit.OK
        assert answer["simulated"] is True
        assert {m["how"].split(",")[0] for m in answer["pack_mean"]} == {"T - T_both / 2"}

    def test_sensors_at_both_ends(self, door, on_hub):
        code, out, _ = door("drag", "--right", on_hub, "--held-end", on_hub)
        assert code == Exit.OK
        assert "rotating mean: pack mean" in out
        _, out, _ = door("drag", "--right", on_hub, "--held-end", on_hub, "--json")
        assert json.loads(out)["both_ends"][0]["driveline_nm"] == pytest.approx(0.0)

    def test_ratio(self, door, on_hub, free_hub):
        words = ("drag", "--in-gear", on_hub, "--neutral", free_hub, "--limit", "ratio >= 2.5", "--source", "manual")
        code, out, _ = door(*words)
        assert code == Exit.OUTSIDE
        assert "in gear ÷ neutral: 1.000" in out

    @pytest.mark.parametrize(
        ("words", "said"),
        [
            ((), "give a held test"),
            (("--in-gear", "x.csv"), "go together"),
            (("--right", "missing.csv"), "missing.csv"),
            (("--right", "a.csv", "--left", "b.csv", "--held-end", "c.csv"), "not both"),
        ],
    )
    def test_bad_input(self, door, words, said):
        code, _, err = door("drag", *words)
        assert code == Exit.BAD_INPUT
        assert said in err

    def test_cautions(self, door):
        code, out, _ = door("cautions")
        assert code == Exit.OK
        assert "Never drive the axle with one wheel raised" in out
        assert "maker's manual" in out
        assert len(door("cautions", "--gates")[1]) < len(out)


def test_stud_lever_from_a_file_that_the_sidecar_also_takes(tmp_path):
    change_sidecar(tmp_path / "a.csv", lambda _: Sidecar(lever=ONE_STUD))
    assert read_lever(tmp_path / "a.sidecar.toml") == ONE_STUD
