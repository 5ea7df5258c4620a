"""The cut lists of frames against an exact solver, which sees the sticks step by step and not pattern by pattern.

A frame is what makes cut lists hard: many equal studs with their feet on the pitch, ties and jambs that nearly fit the same
places, a dozen short cripples for the gaps, and sticks whose prices rise nearly with their length.
"""

import random

import highspy
import numpy as np
import pytest

from conftest import cutting_answers
from test_cutting import check_patterns

INCH = 16
# The exact solver gives up on some; then its bounds still hold what it has seen.
NODES = 300
FRAMES = 12


def frame(seed, step):
    """A frame in steps of so many sixteenths of an inch: an island of two to four runs, 20 to 30 studs, no waste at the cuts."""
    dice = random.Random(1000 + seed)
    steps = lambda sixteenths: max(1, round(sixteenths / step))
    sticks = [
        [steps(feet * 192), round(feet * dice.uniform(91, 97)) + dice.choice((20, 40, 60))] for feet in (8, 10, 12, 16, 20)
    ]
    if seed % 3 == 0:
        sticks = sticks[-dice.randint(2, 4) :]
    demands = [
        [steps(503 + dice.choice((0, 0, -24, 16, 40))), dice.randint(20, 30), True],
        [steps(396 + dice.choice((0, 0, -20, 30))), dice.randint(6, 12), False],
        [steps(391), 2 * dice.randint(1, 3), dice.random() < 0.6],
    ]
    demands += [[steps(dice.randint(250, 560)), dice.randint(1, 2), False] for _ in range(dice.randint(1, 3))]
    cripples = 0
    while cripples < 12:
        count = dice.randint(1, 3)
        cripples += count
        demands.append([steps(dice.randint(47, 215)), count, False])
    return {"sticks": sticks, "demands": demands, "kerf": 0, "trim": 0, "pitch": steps(384)}


FINE = [frame(seed, 1) for seed in range(FRAMES)]
COARSE = [frame(seed, INCH) for seed in range(FRAMES)]


@pytest.fixture(scope="module")
def answers():
    """What the program answers to all of them."""
    return cutting_answers(FINE + COARSE)


def exact(problem):
    """A lower and an upper bound of the cost: every stick is a walk from its marked end, piece by piece or step by step past a gap."""
    longest = max(length for length, _ in problem["sticks"])
    costs, most, rows = [], [], [{} for _ in range(longest + 1 + len(problem["demands"]))]

    def arc(cost, limit, entries):
        for row, sign in entries:
            rows[row][len(costs)] = sign
        costs.append(cost)
        most.append(limit)

    for at in range(longest):
        arc(0, 1000, [(at, -1), (at + 1, 1)])
        for d, (length, count, aligned) in enumerate(problem["demands"]):
            end = at + length
            if end <= longest and not (aligned and at % problem["pitch"] and end % problem["pitch"]):
                arc(0, count, [(at, -1), (end, 1), (longest + 1 + d, 1)])
    for length, cost in problem["sticks"]:
        # Back to the marked end: the next stick.
        arc(cost, 1000, [(length, -1), (0, 1)])
    h = highspy.Highs()
    options = {"output_flag": False, "mip_rel_gap": 0.0, "mip_abs_gap": 0.5, "threads": 1, "mip_max_nodes": NODES}
    for name, value in options.items():
        h.setOptionValue(name, value)
    n = len(costs)
    everything = np.arange(n, dtype=np.int32)
    h.addVars(n, np.zeros(n), np.array(most, dtype=float))
    h.changeColsCost(n, everything, np.array(costs, dtype=float))
    h.changeColsIntegrality(n, everything, np.array([highspy.HighsVarType.kInteger] * n))
    for row, entries in enumerate(rows):
        served = row > longest
        least = problem["demands"][row - longest - 1][1] if served else 0
        columns, signs = np.array(list(entries), dtype=np.int32), np.array(list(entries.values()), dtype=float)
        h.addRow(least, highspy.kHighsInf if served else 0, len(columns), columns, signs)
    h.run()
    info = h.getInfo()
    return info.mip_dual_bound, info.objective_function_value


def test_every_frame_is_proven(answers):
    for problem, answer in zip(FINE + COARSE, answers, strict=True):
        check_patterns(problem, answer)
        assert answer["proven"] and answer["bound"] == answer["cost"], problem


def test_costs_agree_with_an_exact_solver(answers):
    settled = 0
    for problem, answer in zip(COARSE, answers[FRAMES:], strict=True):
        low, high = exact(problem)
        assert low - 0.5 < answer["cost"] < high + 0.5, problem
        settled += high - low < 1
    assert settled >= FRAMES * 3 // 4, settled
