"""The pour: evaporation against Menzel's formula with a psychrometric library, the setting clock against an ODE solver."""

import csv
import io
import json
import pathlib
import tempfile
from datetime import datetime

import numpy as np
import psychrolib
import pytest
import yaml
from scipy.integrate import solve_ivp

from conftest import ROOT, run

psychrolib.SetUnitSystem(psychrolib.SI)

POURED = ["garden-corner", "terrace-straight"]
POUND_A_FOOT = 0.45359237 / 0.3048**2


def celsius(value, unit):
    return (value - 32) / 1.8 if unit == "°F" else value


def kph(value, unit):
    return value * 1.609344 if unit == "mph" else value


class Pour:
    """The pour's tables of one example, as the program prints them."""

    def __init__(self, program, name, *more):
        self.params = yaml.safe_load((ROOT / "params" / f"{name}.yaml").read_text())
        self.path = ROOT / "params" / f"{name}.yaml"
        self.metric = self.params["project"]["units"] == "metric"
        said = run(program, "pour", self.path, "--format", "json", *more, ok=(0, 1))
        self.tables = json.loads(said)

    def rows(self, name):
        return self.tables[name]["rows"]

    def unit(self, name, key):
        return self.tables[name]["units"][key]

    def hours(self):
        """The hours in °C, km/h and kg/m²/h."""
        unit = lambda key: self.unit("pour_hours", key)
        for row in self.rows("pour_hours"):
            rate = POUND_A_FOOT if unit("evaporation").startswith("lb") else 1
            yield {
                "at": datetime.fromisoformat(row["hour"]),
                "air": celsius(row["air"], unit("air")),
                "humidity": row["humidity"] / 100,
                "wind": kph(row["wind_at_the_surface"], unit("wind_at_the_surface")),
                "concrete": celsius(row["concrete"], unit("concrete")),
                "sun": row["sun"] or 0,
                "evaporation": row["evaporation"] * rate,
                "band": [row["at_least"] * rate, row["at_most"] * rate],
            }


@pytest.fixture(scope="module", params=POURED)
def pour(request, program):
    return Pour(program, request.param)


def menzel(concrete, air, humidity, wind):
    """kg/m²/h: 0.315 (e0 - r ea) (0.253 + 0.060 V), kPa and km/h; vapour pressures by ASHRAE's equations."""
    kpa = lambda t: psychrolib.GetSatVapPres(t) / 1000
    return 0.315 * (kpa(concrete) - humidity * kpa(air)) * (0.253 + 0.060 * wind)


def test_menzel_gives_the_example_of_aci_305r():
    assert 1.1 < menzel(31, 27, 0.5, 19) < 1.25


def test_evaporation_agrees_with_menzel(pour):
    # The estimate itself is good to 40 %, and the two formulas differ by less. Sun on unshaded concrete counts as 5 K in
    # 1,000 W/m² (docs/pour.md).
    shaded = pour.params["pour"].get("shade", False)
    seen = 0
    for hour in pour.hours():
        skin = hour["concrete"] + (0 if shaded else 0.005 * hour["sun"])
        other = menzel(skin, hour["air"], hour["humidity"], hour["wind"])
        if other > 0.03:
            assert 0.6 < hour["evaporation"] / other < 1.4, hour
            assert hour["band"][0] <= other * 1.02 and other <= hour["band"][1] * 1.02, hour
            seen += 1
    assert seen > 20


def test_the_band_is_forty_percent_each_way(pour):
    for hour in pour.hours():
        low, high = hour["band"]
        assert low == pytest.approx(0.6 * hour["evaporation"], abs=2e-3)
        assert high == pytest.approx(1.4 * hour["evaporation"], abs=2e-3)


def test_no_hour_is_lost(pour):
    forecast = pour.params["pour"]["forecast"]
    given = len(forecast.get("hours", [])) + max(0, len(forecast.get("csv", "").splitlines()) - 1)
    assert len(list(pour.hours())) == given > 20


def test_the_clock_is_the_equivalent_age_of_an_ode_solver(pour):
    """dT/dt = (Ta - T) / τ with τ of docs/pour.md, dte/dt = exp(-5000 (1/T - 1/294.26))."""
    hours = list(pour.hours())
    start = datetime.fromisoformat(str(pour.params["pour"]["at"]))
    times = np.array([(h["at"] - start).total_seconds() / 3600 for h in hours])
    air = np.array([h["air"] for h in hours])
    thickness = pour.params["counter"]["thickness"]
    metres = {"2 in": 0.0508, "50 mm": 0.05}[thickness]
    tau = 2.4e6 * metres / 10 / 3600
    first = hours[int(np.argmin(np.abs(times)))]["concrete"]
    reference = (70 - 32) / 1.8 + 273.15

    def change(t, state):
        warm = state[0]
        return [(np.interp(t, times, air) - warm) / tau, np.exp(-5000 * (1 / (warm + 273.15) - 1 / reference))]

    steps = [r for r in pour.rows("setting_clock") if r["of"] == "counter"]
    inside = [s for s in steps if s["after_placing_begins"] < times[-1]]
    assert len(inside) >= 3
    last = inside[-1]["after_placing_begins"]
    solved = solve_ivp(change, (0, last), [first, 0], dense_output=True, rtol=1e-8, atol=1e-8, max_step=0.25)
    for step in inside:
        warm, age = solved.sol(step["after_placing_begins"])
        # Hours and degrees are printed to two decimals and one.
        assert age == pytest.approx(step["age_at_70_f"], rel=0.005, abs=0.012), step
        degrees = celsius(step["concrete"], pour.unit("setting_clock", "concrete"))
        assert warm == pytest.approx(degrees, abs=0.3), step


def test_heat_shortens_the_clock_about_by_half_for_twenty_degrees(program):
    """Rule of thumb: halves for +20 °F, doubles for -20 °F, about 70 °F; an Arrhenius factor is within a sixth of it."""

    def trowel(degrees, folder):
        rows = "\\n".join(f"2027-05-14T{h:02}:00,{degrees},60,3" for h in range(24))
        text = (ROOT / "params/garden-corner.yaml").read_text()
        head, tail = text.split("pour:\n", 1)
        tail = tail[tail.index("\n# Money") :]
        pour = (
            f"pour:\n  at: 2027-05-14T05:00\n  materials: {{bags: {degrees} °F, water: {degrees} °F}}\n"
            f'  forecast: {{csv: "time,air °F,humidity %,wind mph\\n{rows}"}}\n'
        )
        path = folder / f"at-{degrees}.yaml"
        path.write_text(head + pour + tail)
        said = run(program, "pour", path, "--format", "json", ok=(0, 1))
        rows = json.loads(said)["setting_clock"]["rows"]
        return next(r["after_placing_begins"] for r in rows if r["step"] == "trowel with steel")

    folder = pathlib.Path(tempfile.mkdtemp(prefix="islandwright-pour."))
    cold, usual, hot = (trowel(d, folder) for d in (50, 70, 90))
    assert usual == pytest.approx(2.0, abs=0.011)
    assert hot / usual == pytest.approx(0.5, rel=1 / 6)
    assert cold / usual == pytest.approx(2.0, rel=1 / 6)


def test_csv_and_json_say_the_same(program, pour):
    for name, table in pour.tables.items():
        said = run(program, "pour", pour.path, "--table", name.replace("_", "-"), "--format", "csv", ok=(0, 1))
        rows = list(csv.reader(io.StringIO(said)))[1:]
        assert len(rows) == len(table["rows"])
        for row, cells in zip(rows, table["rows"]):
            for text, cell in zip(row, cells.values()):
                if isinstance(cell, (int, float)):
                    assert float(text) == pytest.approx(cell)
                else:
                    assert text == (cell or "")
