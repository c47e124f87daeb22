"""Works out lengths, masses and diameters of an example by a second method and compares them with the report.

    second_method.py NAME DESIGN.json REPORT.json

Nothing here comes from the library: the design is read as plain JSON, a section is summed in thin slices (the library
has a closed form for each frustum), lengths are added up as the comments of the design do.
"""

import json
import math
import sys

# Worked by hand in the comments of the designs, mm.
OVERALL = {"casting": 2210.6, "casting-uncut": 2210.475, "spinning": 2057.875, "fly": 2745.85, "surf": 3659.2}
PIECES = {"casting": 1, "casting-uncut": 1, "spinning": 1, "fly": 4, "surf": 2}
MM = {"mm": 1, "inch": 25.4, "in64": 25.4 / 64}
SLICES = 5000


def mm(length):
    return next(length[unit] * MM[unit] for unit in MM if unit in length)


def at(rows, x):
    """Linear between rows of (place, value), constant beyond them."""
    if x <= rows[0][0]:
        return rows[0][1]
    for (a, u), (b, v) in zip(rows, rows[1:]):
        if x <= b and b > a:
            return u + (v - u) * (x - a) / (b - a)
    return rows[-1][1]


def profiles(section):
    stations = section["taper"]["stations"]
    outer = [(mm(s["at"]), mm(s["outer"])) for s in stations]
    wall = [(mm(s["at"]), mm(s["wall"])) for s in stations if "wall" in s]
    wall += [(mm(s["at"]), (mm(s["outer"]) - mm(s["inner"])) / 2) for s in stations if "inner" in s]
    return outer, sorted(wall)


def volume(outer, wall, start, end):
    step = (end - start) / SLICES
    places = (start + (i + 0.5) * step for i in range(SLICES))
    return sum(math.pi * at(wall, x) * (at(outer, x) - at(wall, x)) * step for x in places)


def check(what, found, expected, tolerance):
    if not abs(found - expected) <= tolerance:
        sys.exit(f"{what}: the report says {found}, a second method {expected}, tolerance {tolerance}")


def check_sections(blank, report, cuts):
    """The mass that is left after the cut: the weighed mass, in proportion to the volume."""
    for section, found in zip(blank["sections"], report["sections"]["sections"]):
        outer, wall = profiles(section)
        length, cut = mm(section["length"]), cuts.get(section["id"], 0)
        left = section["mass"]["g"] * volume(outer, wall, cut, length) / volume(outer, wall, 0, length)
        # 0.2 g: the library also fits the weighed balance point, which shifts a little mass along the section.
        check(f"mass of section {section['id']}", found["mass_g"], left, 0.2)
        check(f"length of section {section['id']}", found["length_mm"], length - cut, 1e-6)


def starts(blank, cuts):
    """Butt end as supplied of each section, from the butt face of the cut blank."""
    place, result = 0, []
    joints = blank.get("joints", [])
    for i, section in enumerate(blank["sections"]):
        if i:
            joint = joints[i - 1]
            place += mm(joint["gap"]) if joint["kind"] == "spigot" else -mm(joint["overlap"])
        cut = cuts.get(section["id"], 0)
        result.append(place - cut)
        place += mm(section["length"]) - cut
    return result


def diameter(blank, origins, cuts, place):
    """Outside of whichever section lies outermost there."""
    found = []
    for section, origin in zip(blank["sections"], origins):
        if cuts.get(section["id"], 0) <= place - origin <= mm(section["length"]):
            found.append(at(profiles(section)[0], place - origin))
    return max(found)


def check_guides(design, report, cuts):
    origins = starts(design["blank"], cuts)
    fit = report["fit"]
    check("tip-top's ring centre", fit["tip_ring_mm"],
          fit["blank_tip_mm"] + mm(design["tip_top"]["ring_center_beyond_tube"]), 1e-6)
    places = []
    for guide, found in zip(design["guides"], report["guides"]["guides"]):
        from_tip = mm(guide["from_tip"])
        places.append(from_tip)
        from_blank_butt = fit["tip_ring_mm"] - from_tip - fit["blank_butt_mm"]
        check(f"blank under {guide['id']}", found["blank_diameter_mm"],
              diameter(design["blank"], origins, cuts, from_blank_butt), 1e-6)
    gaps = [a - b for a, b in zip(places, places[1:] + [0])]
    if gaps != sorted(gaps, reverse=True):
        sys.exit(f"the spacing of the guides does not grow towards the butt: {gaps}")


def main(name, design_path, report_path):
    with open(design_path, encoding="utf-8") as file:
        design = json.load(file)
    with open(report_path, encoding="utf-8") as file:
        report = json.load(file)
    blank = design["blank"]
    cuts = {cut["section"]: mm(cut["amount"]) for cut in blank.get("cuts", [])}
    check("overall length", report["fit"]["overall_length_mm"], OVERALL[name], 0.001)
    check("pieces", report["sections"]["pieces"], PIECES[name], 0)
    check_sections(blank, report, cuts)
    check_guides(design, report, cuts)


if __name__ == "__main__":
    main(*sys.argv[1:])
