"""Makes mix-cases.json: random mixes solved by HiGHS through SciPy, to hold our own against.

    python -m venv venv && venv/bin/pip install scipy==1.17.1 && venv/bin/python mix-cases.py > mix-cases.json

Weights are in kilograms, prices for a kilogram. A case is kept only when no answer hangs on rounding: whatever cannot be
met is missed by more than a ten-thousandth of the target.
"""

import json
import random
import sys

import scipy
from scipy.optimize import linprog
from scipy.optimize._highspy import _core

SHORT_AGAINST_OVER = 1000.0
ANALYSES = [
    (46, 0, 0), (34, 0, 0), (21, 0, 0), (15.5, 0, 0), (16, 0, 0), (18, 46, 0), (11, 52, 0), (0, 46, 0), (0, 0, 60),
    (0, 0, 50), (13, 0, 46), (0, 52, 34), (10, 10, 10), (10, 20, 20), (5, 10, 10), (15, 0, 15), (20, 20, 20),
    (12, 1.5, 0.6), (3, 15, 0), (1.5, 1, 1), (4, 3, 3), (0.8, 0.4, 0.9), (8, 2, 0),
]


def solve(case, soft, lifted=None, price=None):
    """The solution for a case; soft is "none", "short" or "both"."""
    materials, scale = case["materials"], case_scale(case)
    count = len(materials)
    # Columns: materials, three shortfalls, three excesses.
    bounds = []
    for place, (_, _, _, _, _, at_hand, _) in enumerate(materials):
        held = at_hand is not None and lifted != ["at_hand", place]
        bounds.append((0.0, at_hand / scale if held else None))
    bounds += [(0.0, None if soft != "none" else 0.0)] * 3
    bounds += [(0.0, None if soft == "both" else 0.0)] * 3
    rows, sides = [], []
    for nutrient in range(3):
        supplied = [part(material, nutrient) for material in materials]
        short = [-1.0 if other == nutrient else 0.0 for other in range(3)]
        if case["least"][nutrient] > 0 and lifted != ["least", nutrient]:
            rows.append([-value for value in supplied] + short + [0.0] * 3)
            sides.append(-case["least"][nutrient] / scale)
        if case["most"][nutrient] is not None and lifted != ["most", nutrient]:
            rows.append(supplied + [0.0] * 3 + short)
            sides.append(case["most"][nutrient] / scale)
    if case["restricted_n"] is not None and lifted != ["restricted", 0]:
        # All restricted materials together.
        rows.append([part(material, 0) if material[6] else 0.0 for material in materials] + [0.0] * 6)
        sides.append(case["restricted_n"] / scale)
    penalty = [0.0] * count + [SHORT_AGAINST_OVER] * 3 + [1.0] * 3
    objective = penalty if price is None else price + [0.0] * 6
    return linprog(objective, A_ub=rows or None, b_ub=sides or None, bounds=bounds, method="highs")


def part(material, nutrient):
    return material[nutrient] / 100 * (material[3] if nutrient == 0 else 1.0)


def case_scale(case):
    return max(case["least"] + [most or 0.0 for most in case["most"]])


def limits(case):
    for nutrient in range(3):
        if case["least"][nutrient] > 0:
            yield ["least", nutrient]
        if case["most"][nutrient] is not None:
            yield ["most", nutrient]
    for place, material in enumerate(case["materials"]):
        if material[5] is not None:
            yield ["at_hand", place]
    if case["restricted_n"] is not None and any(material[6] for material in case["materials"]):
        yield ["restricted", 0]


def meets(case, lifted=None):
    """Whether every limit can be kept; None when the answer hangs on rounding."""
    missed = solve(case, "both", lifted)
    assert missed.status == 0, missed.message
    # A thousandth part of the weight of being short.
    if missed.fun < 1e-9:
        return True
    return False if missed.fun > 1e-4 else None


def random_case(rng):
    materials = []
    for _ in range(rng.choice([1, 2, 3, 3, 4, 5, 6, 8])):
        n, p2o5, k2o = rng.choice(ANALYSES)
        organic = n < 14 and rng.random() < 0.4
        materials.append([
            n, p2o5, k2o,
            round(rng.uniform(0.1, 0.9), 2) if organic else 1.0,
            round(rng.uniform(0.05, 4.0), 2),
            round(rng.uniform(1, 400), 1) if rng.random() < 0.25 else None,
            rng.random() < 0.3,
        ])
    if rng.random() < 0.1:
        rng.choice(materials)[4] = None
    size = rng.choice([0.05, 1, 1, 1, 200])
    least = [round(rng.uniform(5, 150) * size, 4) if rng.random() < 0.8 else 0.0 for _ in range(3)]
    if max(least) == 0:
        least[0] = round(60 * size, 4)
    most = []
    for amount in least:
        kind = rng.random()
        if kind < 0.35:
            most.append(None)
        elif kind < 0.55:
            most.append(amount)
        else:
            most.append(round(amount * rng.uniform(1.02, 2.0) + (rng.uniform(0, 60) * size if kind > 0.8 else 0), 4))
    restricted_n = round(least[0] * rng.choice([0.0, 0.2, 0.5]), 4) if rng.random() < 0.4 else None
    return {"materials": materials, "least": least, "most": most, "restricted_n": restricted_n}


def answer(case):
    met = meets(case)
    if met is None:
        return None
    scale = case_scale(case)
    if met:
        prices = [material[4] for material in case["materials"]]
        if None in prices:
            prices = [1.0] * len(prices)
        best = solve(case, "none", price=prices)
        assert best.status == 0, best.message
        return case | {"met": True, "cost": round(best.fun * scale, 9)}
    in_the_way = []
    for limit in limits(case):
        lifted = meets(case, limit)
        if lifted is None:
            return None
        if lifted:
            in_the_way.append(limit)
    return case | {
        "met": False,
        # Weight short × 1000 + weight over, at its least; and the weight short when nothing may be over.
        "missed": round(solve(case, "both").fun * scale, 9),
        "short_never_over": round(solve(case, "short").fun * scale / SHORT_AGAINST_OVER, 9),
        "in_the_way": in_the_way,
    }


def main():
    rng = random.Random(20270310)
    cases = []
    while len(cases) < 200:
        case = answer(random_case(rng))
        # As many that can be met as not.
        if case and sum(other["met"] == case["met"] for other in cases) < 100:
            cases.append(case)
    highs = ".".join(str(getattr(_core, f"HIGHS_VERSION_{part}")) for part in ("MAJOR", "MINOR", "PATCH"))
    head = {
        "made_by": "mix-cases.py, scipy.optimize.linprog, method highs",
        "scipy": scipy.__version__,
        "highs": highs,
        "units": "kilograms; prices for a kilogram",
        "materials": "N %, P2O5 %, K2O %, share of N available, price, at hand, whether its nitrogen is restricted",
    }
    lines = [json.dumps(case, separators=(",", ":")) for case in cases]
    sys.stdout.write(json.dumps(head)[:-1] + ', "cases": [\n' + ",\n".join(lines) + "\n]}\n")


if __name__ == "__main__":
    main()
