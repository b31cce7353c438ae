"""Compares the engine's general-purpose numerics with independent libraries: scipy (Qhull, least squares, HiGHS).

Reads one JSON object a line from standard input, as `examples/numbers.rs` prints them. Ends with 1 on a difference.
"""

import itertools
import json
import sys

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, least_squares, linprog, milp
from scipy.spatial import Delaunay

bad = []
count = {}


def near(what, ours, theirs, rel):
    count[what] = count.get(what, 0) + 1
    if not abs(ours - theirs) <= rel * max(1.0, abs(theirs)):
        bad.append(f"{what}: ours {ours!r}, theirs {theirs!r}")


def clipped(triangle, level, above):
    """The part of a triangle (rows x, y, z) above or below a level: list of points."""
    sign = 1.0 if above else -1.0
    out = []
    for a, b in zip(triangle, np.roll(triangle, -1, axis=0)):
        da, db = sign * (a[2] - level), sign * (b[2] - level)
        if da >= 0:
            out.append(a)
        if (da > 0 > db) or (da < 0 < db):
            out.append(a + (b - a) * (da / (da - db)))
    return np.array(out)


def prism(ring, level):
    """Volume between a plane polygon and a level."""
    if len(ring) < 3:
        return 0.0
    total = 0.0
    for b, c in zip(ring[1:-1], ring[2:]):
        a = ring[0]
        area = 0.5 * abs((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]))
        total += area * abs((a[2] + b[2] + c[2]) / 3.0 - level)
    return total


def surface(d):
    points = np.column_stack([d["x"], d["y"], d["z"]])
    triangles = points[Delaunay(points[:, :2]).simplices]
    near("triangles", d["triangles"], len(triangles), 0)
    u, v = triangles[:, 1, :2] - triangles[:, 0, :2], triangles[:, 2, :2] - triangles[:, 0, :2]
    near("area", d["area"], float(np.sum(np.abs(u[:, 0] * v[:, 1] - u[:, 1] * v[:, 0])) / 2), 1e-9)
    near("cut", d["cut"], sum(prism(clipped(t, d["level"], True), d["level"]) for t in triangles), 1e-9)
    near("fill", d["fill"], sum(prism(clipped(t, d["level"], False), d["level"]) for t in triangles), 1e-9)
    step, length = d["interval"], 0.0
    for level in np.arange(np.ceil(min(d["z"]) / step) * step, max(d["z"]), step):
        for t in triangles:
            ends = []
            for a, b in zip(t, np.roll(t, -1, axis=0)):
                if (a[2] >= level) != (b[2] >= level):
                    ends.append(a + (b - a) * ((level - a[2]) / (b[2] - a[2])))
            if len(ends) == 2:
                length += float(np.hypot(*(ends[1] - ends[0])[:2]))
    near("contours", d["contours"], length, 1e-9)


def network(d):
    pegs, tape = np.column_stack([d["x"], d["y"]]), np.array(d["tape"])
    fit = least_squares(lambda p: np.hypot(*(pegs - p).T) - tape, d["at"] + np.array([0.3, -0.2]), xtol=1e-15, ftol=1e-15, gtol=1e-15)
    near("position", d["at"][0], float(fit.x[0]), 1e-7)
    near("position", d["at"][1], float(fit.x[1]), 1e-7)


def fillings(bar, lengths, kerf, most):
    """Every way of filling a bar that cannot take another piece."""
    def go(i, room):
        if i == len(lengths):
            yield ()
            return
        for n in range(min(most[i], int((room + kerf) // (lengths[i] + kerf))), -1, -1):
            for rest in go(i + 1, room - n * (lengths[i] + kerf)):
                yield (n, *rest)
    for f in go(0, bar):
        left = bar + kerf - sum(n * (l + kerf) for n, l in zip(f, lengths))
        if any(f) and all(n == m or l + kerf > left for n, m, l in zip(f, most, lengths)):
            yield f


def cutting(d):
    stock = [tuple(map(float, s.split(":"))) for s in d["stock"].split()]
    pieces = [tuple(map(float, p.split("x"))) for p in d["pieces"].split()]
    lengths, most = [p[0] for p in pieces], [int(p[1]) for p in pieces]
    ways = list(itertools.chain.from_iterable(((price, f) for f in fillings(bar, lengths, d["kerf"], most)) for bar, price in stock))
    a = np.array([f for _, f in ways], dtype=float).T
    fit = milp([p for p, _ in ways], constraints=LinearConstraint(a, lb=most), integrality=np.ones(len(ways)), bounds=Bounds(0, np.inf), options={"time_limit": 120})
    if fit.status == 0:
        near("cutting list", d["cost"], float(fit.fun), 1e-6 if d["proven"] else 0.03)
    if d["bound"] > d["cost"] + 1e-6:
        bad.append(f"{d['name']}: bound {d['bound']} above cost {d['cost']}")


def carrying(d):
    supply, demand = np.array(d["supply"]), np.array(d["demand"])
    m, n = len(supply), len(demand)
    rows = np.zeros((m + n, m * n))
    for i in range(m):
        rows[i, i * n : (i + 1) * n] = 1
    for j in range(n):
        rows[m + j, j::n] = 1
    fit = linprog(d["cost"], A_eq=rows, b_eq=np.concatenate([supply, demand * supply.sum() / demand.sum()]), method="highs")
    near("carrying", d["total"], float(fit.fun), 1e-7)
    near("carrying bound", d["bound"], float(fit.fun), 1e-7)


for line in sys.stdin:
    if line.startswith("{"):
        d = json.loads(line)
        {"surface": surface, "network": network, "carrying": carrying, "cutting": cutting}[d["kind"]](d)
print("   compared: " + ", ".join(f"{n} {what}" for what, n in count.items()))
if not count:
    bad.append("nothing was compared")
for b in bad:
    print("   " + b)
sys.exit(1 if bad else 0)
