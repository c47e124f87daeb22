"""The large deflection of elastica_bench.cc by scipy.integrate.solve_bvp (Kierzenka and Shampine 2001), for comparison.

usage: solve_bvp.py CASE.json
CASE.json, written by elastica_bench: sections (a list of rows of s and diameter, m), modulus (Pa), density (kg/m3), force_y
(N), gravity_y (m/s2), clamp_angle (rad); tip_x and tip_y (m) that are to be met, accuracy (m).
Prints one JSON object: for each way of using solve_bvp the processor time in seconds of the loosest tolerance that meets
the free end to that accuracy (least of three), its nodes, and how far off it is.

Stiffness jumps at a joint, which solve_bvp refines for ever when it meets one inside: the sections are solved side by side,
four equations each, tied at their ends, with the stations as the first mesh, so that every kink of the taper falls on a
node. "straight" starts from the straight rod and leaves the derivatives to solve_bvp; "helped" is given the derivatives in
closed form and a first guess that is bent as far as the solution.
"""
import json
import sys
import time

try:
    import numpy as np
    from scipy.integrate import solve_bvp
except ImportError as missing:
    sys.exit(f"solve_bvp.py: {missing}: install python3-scipy to compare with it")


class Section:
    """Stiffness and mass of one section over its share t of 0 to 1."""

    def __init__(self, rows, modulus, density):
        self.s, self.d = np.array(rows).T
        self.length = self.s[-1] - self.s[0]
        self.t = (self.s - self.s[0]) / self.length
        self.modulus, self.line = modulus, density * np.pi / 12
        a, b = self.d[:-1], self.d[1:]
        mass = self.line * np.diff(self.s) * (a * a + a * b + b * b)
        self.beyond = np.append(np.cumsum(mass[::-1])[::-1], 0)
        self.mass = self.beyond[0]
        self.past = 0  # mass of the sections after this one

    def at(self, t):
        """Stiffness and mass beyond."""
        d = np.interp(t, self.t, self.d)
        k = np.clip(np.searchsorted(self.t, t, side="right") - 1, 0, len(self.t) - 2)
        upto = self.line * (t - self.t[k]) * self.length * (self.d[k] ** 2 + self.d[k] * d + d * d)
        return self.modulus * np.pi / 64 * d**4, self.past + self.beyond[k] - upto


case = json.load(open(sys.argv[1], encoding="utf-8"))
sections = [Section(rows, case["modulus"], case["density"]) for rows in case["sections"]]
for before, after in reversed(list(zip(sections, sections[1:]))):
    before.past = after.past + after.mass
force, gravity, clamp = case["force_y"], case["gravity_y"], case["clamp_angle"]
unknowns = 4 * len(sections)


def slopes(t, u):
    """theta, M, x, y of each section by t."""
    rows = []
    for section, (theta, moment, _, _) in zip(sections, u.reshape(len(sections), 4, -1)):
        stiffness, mass = section.at(t)
        down = force + gravity * mass
        rows += [section.length * row for row in (moment / stiffness, -down * np.cos(theta), np.cos(theta), np.sin(theta))]
    return np.array(rows)


def slopes_by(t, u):
    by = np.zeros((unknowns, unknowns, len(t)))
    for j, section in enumerate(sections):
        theta, k = u[4 * j], 4 * j
        stiffness, mass = section.at(t)
        by[k, k + 1] = section.length / stiffness
        by[k + 1, k] = section.length * (force + gravity * mass) * np.sin(theta)
        by[k + 2, k] = -section.length * np.sin(theta)
        by[k + 3, k] = section.length * np.cos(theta)
    return by


def ends(left, right):
    return np.concatenate([[left[0] - clamp, left[2], left[3], right[-3]], left[4:] - right[:-4]])


def ends_by(_left, _right):
    by_left, by_right = np.zeros((unknowns, unknowns)), np.zeros((unknowns, unknowns))
    by_left[0, 0] = by_left[1, 2] = by_left[2, 3] = by_right[3, unknowns - 3] = 1
    for i in range(4, unknowns):
        by_left[i, i], by_right[i, i - 4] = 1, -1
    return by_left, by_right


def guess(mesh, turn):
    """Straight, or turned evenly towards the free end."""
    total = sections[-1].s[-1]
    rows = []
    for section in sections:
        s = section.s[0] + mesh * section.length
        rows += [clamp + turn * s / total, 0 * s, s * np.cos(clamp), s * np.sin(clamp)]
    return np.array(rows)


def measure(turn, helped):
    mesh = np.unique(np.round(np.concatenate([section.t for section in sections]), 12))
    by = {"fun_jac": slopes_by, "bc_jac": ends_by} if helped else {}
    for tolerance in 10.0 ** np.arange(-3, -12.5, -0.5):
        seconds = np.inf
        for _ in range(3):
            start = time.process_time()
            solution = solve_bvp(slopes, ends, mesh, guess(mesh, turn), tol=tolerance, max_nodes=20000, **by)
            seconds = min(seconds, time.process_time() - start)
        off = np.hypot(solution.y[-2, -1] - case["tip_x"], solution.y[-1, -1] - case["tip_y"])
        if solution.success and off <= case["accuracy"]:
            return {"seconds": seconds, "nodes": len(solution.x), "off_m": off, "tolerance": tolerance}
    return None


print(json.dumps({"straight": measure(0, False), "helped": measure(case["tip_angle"] - clamp, True)}))
