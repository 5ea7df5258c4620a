"""Gas pipes against pipe friction by a fluid mechanics library (Darcy-Weisbach, Colebrook friction), trees by a graph library."""

import json
import math

import networkx as nx
import pytest
from fluids.compressible import Muller, isothermal_gas
from fluids.friction import friction_factor

from conftest import run

FOOT = 0.3048
BTU_PER_HOUR = 0.29307107
INCH_OF_WATER = 249.082
# Inlet below 2 psi: 7 in w.c. natural gas, 11 in w.c. propane above the atmosphere, at 60 °F.
INLET = {"natural gas": 101325 + 7 * INCH_OF_WATER, "propane": 101325 + 11 * INCH_OF_WATER}
# Specific gravity as the tables state it; viscosity in Pa s at 60 °F and Btu a cubic foot, values from memory.
GRAVITY = {"natural gas": 0.60, "propane": 1.50}
VISCOSITY = {"natural gas": 1.1e-5, "propane": 0.81e-5}
HEAT = {"natural gas": 1000, "propane": 2500}
AIR = 1.2250 * 288.15 / 288.7
# Commercial steel pipe, a handbook's usual roughness in metres (value from memory).
ROUGH = 0.046e-3


@pytest.fixture(scope="module")
def said():
    """What the program says."""
    return json.loads(run("cargo", "run", "--quiet", "--locked", "--example", "gas"))


@pytest.fixture(scope="module")
def pipes(said):
    """What it says of every size over every length."""
    return said["pipes"]


# Below this Reynolds number flow is neither laminar nor turbulent, and the library jumps from one law to the other.
TURBULENT = 3000


def reynolds(pipe, heat):
    """The Reynolds number of a heat in watts."""
    gas, bore = pipe["gas"], pipe["inside_mm"] / 1000
    mass = heat / BTU_PER_HOUR / HEAT[gas] * FOOT**3 / 3600 * GRAVITY[gas] * AIR
    return 4 * mass / (math.pi * bore * VISCOSITY[gas])


def heat_by_friction(pipe, drop):
    """The heat that isothermal flow with Colebrook's friction carries, in watts."""
    gas, bore, length = pipe["gas"], pipe["inside_mm"] / 1000, pipe["feet"] * FOOT
    standard = GRAVITY[gas] * AIR
    inlet = INLET[gas]
    mass = 1e-4
    for _ in range(60):
        factor = friction_factor(Re=4 * mass / (math.pi * bore * VISCOSITY[gas]), eD=ROUGH / bore)
        mass = isothermal_gas(
            rho=standard * inlet / 101325, fd=factor, P1=inlet, P2=inlet - drop, L=length, D=bore
        )
    return mass / standard / FOOT**3 * 3600 * HEAT[gas] * BTU_PER_HOUR


def test_capacities_by_pipe_friction(pipes):
    # The equation is a power law fitted to friction: within 8 % of it over these sizes and lengths.
    assert len(pipes) == 2 * 8 * 4
    turbulent = [p for p in pipes if reynolds(p, p["by_equation_w"]) >= TURBULENT]
    assert len(turbulent) >= 60
    for pipe in turbulent:
        outside = heat_by_friction(pipe, 0.5 * INCH_OF_WATER)
        assert pipe["by_equation_w"] == pytest.approx(outside, rel=0.08), pipe


def test_table_rows_by_pipe_friction(pipes):
    rows = [p for p in pipes if p["by_table_w"] and p["feet"] <= 60]
    assert len(rows) == 2 * 6 * 4
    for pipe in rows:
        outside = heat_by_friction(pipe, 0.5 * INCH_OF_WATER)
        assert pipe["by_table_w"] == pytest.approx(outside, rel=0.08), pipe


def test_drops_by_pipe_friction(pipes):
    # The flow that the library finds for the program's drop is the flow that the program began with.
    turbulent = [p for p in pipes if reynolds(p, p["by_equation_w"] / 2) >= TURBULENT]
    assert len(turbulent) >= 45
    for pipe in turbulent:
        outside = heat_by_friction(pipe, pipe["drop_at_half_pa"])
        assert pipe["by_equation_w"] / 2 == pytest.approx(outside, rel=0.08), pipe


def test_capacities_by_another_power_law(pipes):
    # Mueller's equation for low pressure carries somewhat more than the codes' for every size: never less by more than 5 %.
    for pipe in pipes:
        gas, bore = pipe["gas"], pipe["inside_mm"] / 1000
        flow = Muller(
            SG=GRAVITY[gas], Tavg=288.7, mu=VISCOSITY[gas], L=pipe["feet"] * FOOT, D=bore,
            P1=INLET[gas], P2=INLET[gas] - 0.5 * INCH_OF_WATER,
        )
        outside = flow / FOOT**3 * 3600 * HEAT[gas] * BTU_PER_HOUR
        assert 0.82 < pipe["by_equation_w"] / outside < 1.05, pipe


def test_trees_by_a_graph_library(said):
    # Loads: all that lies downstream. Longest length: the heaviest path. Drops: the code's equation along the only path.
    for tree in said["trees"]:
        cr = {"natural gas": 0.6094, "propane": 1.2462}[tree["gas"]]
        graph = nx.DiGraph()
        for i, b in enumerate(tree["branches"]):
            graph.add_edge("supply" if b["upstream"] is None else b["upstream"], i, weight=b["feet"])
        assert tree["longest_feet"] == pytest.approx(nx.dag_longest_path_length(graph))
        for i, b in enumerate(tree["branches"]):
            beyond = nx.descendants(graph, i) | {i}
            assert b["carried_cfh"] == pytest.approx(sum(tree["branches"][k]["own_cfh"] for k in beyond))
            lost = 0.0
            for k in nx.shortest_path(graph, "supply", i)[1:]:
                part = tree["branches"][k]
                ratio = part["carried_cfh"] ** 0.381 / (19.17 * part["inside_in"])
                lost += cr * part["feet"] * ratio ** (1 / 0.206) * INCH_OF_WATER
            assert b["lost_pa"] == pytest.approx(lost, rel=1e-6)
