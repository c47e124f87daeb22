"""What a tapered tube reads at a bench, by sums over short pieces and nothing of withy: a second method for examples/blanks.

usage: bench_second_method.py                     prints what the tube below would read
       bench_second_method.py CALIBRATION.json    judges what `withy calibrate --json` found of examples/blanks/bench.txtpb
"""

import json
import math
import sys

# The truth that the example was made from: invented.
MODULUS, DENSITY, WALL_BUTT, WALL_TIP = 108e9, 1540.0, 1.10e-3, 0.52e-3
LENGTH = 2.1
TAPER = [(0, 12.6), (300, 12.1), (600, 11.3), (900, 10.1), (1200, 8.4), (1500, 6.5), (1800, 4.3), (2100, 2.2)]  # mm
CLAMP = 0.3
GRAVITY = 9.80665
PIECES = 4000


def diameter(s):
    for (a, da), (b, db) in zip(TAPER, TAPER[1:]):
        if a <= s * 1000 <= b:
            return (da + (db - da) * (s * 1000 - a) / (b - a)) / 1000
    return TAPER[-1][1] / 1000


def section(s):
    outer = diameter(s)
    inner = outer - 2 * (WALL_BUTT + (WALL_TIP - WALL_BUTT) * s / LENGTH)
    return (DENSITY * math.pi / 4 * (outer**2 - inner**2), MODULUS * math.pi / 64 * (outer**4 - inner**4))


def mass_and_balance():
    h = LENGTH / PIECES
    rows = [(section((i + 0.5) * h)[0] * h, (i + 0.5) * h) for i in range(PIECES)]
    mass = sum(m for m, _ in rows)
    return mass, sum(m * s for m, s in rows) / mass


class Clamped:
    """From the clamp to the tip in pieces; moments from both ends of the tube's own weight."""

    def __init__(self):
        self.h = (LENGTH - CLAMP) / PIECES
        self.middle = [section(CLAMP + (i + 0.5) * self.h) for i in range(PIECES)]

    def bend(self, load, at):
        """Height of each piece's end below the clamp: the moment from the shape, the shape from the moment, until both agree."""
        n, h = PIECES, self.h
        end = min(n, round((at - CLAMP) / h))
        angle = [0.0] * n  # of each piece
        for _ in range(400):
            x = [0.0]
            for a in angle:
                x.append(x[-1] + h * math.cos(a))
            force, moment, new = 0.0, 0.0, [0.0] * n
            for i in range(n - 1, -1, -1):  # the moment at the middle of each piece
                half = (x[i + 1] - x[i]) / 2
                if i + 1 == end:
                    force += load * GRAVITY
                weight = self.middle[i][0] * h * GRAVITY
                new[i] = (moment + force * half) / self.middle[i][1]
                moment += force * 2 * half + weight * half
                force += weight
            total, change, previous = 0.0, 0.0, 0.0
            for i in range(n):
                total += h * (previous + new[i]) / 2 if i else h * new[i] / 2
                previous = new[i]
                change = max(change, abs(total - angle[i]))
                angle[i] = (angle[i] + total) / 2
            if change < 1e-10:
                break
        y = [0.0]
        for a in angle:
            y.append(y[-1] + h * math.sin(a))
        return y

    def drop(self, load, at):
        i = min(PIECES, round((at - CLAMP) / self.h))
        return self.bend(load, at)[i] - self.bend(0, at)[i]

    def frequency(self, mounted):
        """Stodola: the shape that its own inertia forces bend it to."""
        n, h = PIECES, self.h
        shape = [((i + 0.5) / n) ** 2 for i in range(n)]
        for _ in range(30):
            tip = shape[-1]
            force, moment, curvature = mounted * tip, 0.0, [0.0] * n
            for i in range(n - 1, -1, -1):
                inertia = self.middle[i][0] * h * shape[i]
                curvature[i] = (moment + force * h / 2) / self.middle[i][1]
                moment += force * h + inertia * h / 2
                force += inertia
            slope, y, new = 0.0, 0.0, []
            for i in range(n):
                step = slope + curvature[i] * h / 4  # to the middle of the piece
                new.append(y + step * h / 2)
                y += (slope + curvature[i] * h / 2) * h
                slope += curvature[i] * h
            omega2 = shape[-1] / new[-1]
            scale = 1 / new[-1]
            shape = [v * scale for v in new]
        return math.sqrt(omega2) / 2 / math.pi


def readings():
    mass, balance = mass_and_balance()
    rod = Clamped()
    rows = {"mass g": mass * 1e3, "balance mm": balance * 1e3}
    for load, at in ((0.06, 2.1), (0.25, 2.1), (1.5, 1.2)):
        rows[f"drop mm {load * 1000:.0f} g at {at * 1000:.0f}"] = rod.drop(load, at) * 1e3
    for mounted in (0.06,):
        rows[f"20 oscillations s with {mounted * 1000:.0f} g"] = 20 / rod.frequency(mounted)
    return rows


def judge(path):
    found = json.load(open(path))
    truth = {"modulus": MODULUS / 1e9, "density": DENSITY / 1e3, "wall at butt": WALL_BUTT * 1e3, "wall at tip": WALL_TIP * 1e3}
    assert found["state"] == "found", found["verdict"]
    for figure in found["figures"]:
        off = abs(figure["value"] - truth.pop(figure["kind"]))
        assert off <= figure["plus_minus"], figure
    assert not truth, truth
    assert not any(reading.get("rejected") for reading in found["readings"])
    values = sorted(readings().values())
    fitted = sorted(r["fitted"] if r["unit"] != "Hz" else 20 / r["fitted"] for r in found["readings"])
    for mine, theirs in zip(values, fitted):
        assert abs(mine / theirs - 1) < 0.01, (mine, theirs)


if __name__ == "__main__":
    if len(sys.argv) > 1:
        judge(sys.argv[1])
    else:
        for name, value in readings().items():
            print(f"{name:32} {value:.4f}")
