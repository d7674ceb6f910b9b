"""tapes.py DIRECTORY: writes simulated jobs of tape, level and plumb line with their
answers by scipy.optimize.least_squares, as testdata/taped has them. All cars are invented.

Nothing here is shared with the program: hardpoints and marks are the unknowns of one least
squares with the priors of the study file's contract; slips are known, since they are made
here, and are left out; toe comes from a knuckle solved by scipy's fsolve, and its standard
deviation from differences by each coordinate. Needs python3-scipy, tried with 1.10.1."""
import json
import os
import sys

import numpy as np
from scipy.optimize import fsolve, least_squares
from scipy.spatial.transform import Rotation

PRIOR = 100.0  # mm, of each coordinate of a hardpoint
USUAL = 1.0  # mm, of a measure that states none
DIGIT = 0.5  # mm, to which all is read
MARKS = {"A": (520, 240, 0), "B": (520, 910, 0), "C": (-520, 240, 0), "D": (-520, 910, 0), "E": (470, 310, 690), "F": (-480, 290, 710)}

WISHBONE = {
    "lowerFrontPivot": (170, 352, 205), "lowerRearPivot": (-185, 360, 198), "lowerBallJoint": (12, 702, 192),
    "upperFrontPivot": (88, 424, 486), "upperRearPivot": (-142, 430, 462), "upperBallJoint": (-24, 655, 470),
    "tieRodOuter": (-128, 684, 236), "tieRodInner": (-132, 352, 240), "wheelCentre": (4, 758, 306)}
STRUT = {
    "lowerFrontPivot": (40, 372, 214), "lowerRearPivot": (-262, 366, 222), "lowerBallJoint": (8, 712, 196),
    "strutTop": (-38, 566, 842), "strutLower": (-6, 640, 402),
    "tieRodOuter": (-136, 690, 258), "tieRodInner": (-128, 348, 262), "wheelCentre": (2, 762, 302)}
RODS = {
    "rods.0.inner": (92, 402, 520), "rods.0.outer": (26, 690, 512), "rods.1.inner": (-158, 396, 498), "rods.1.outer": (-44, 684, 506),
    "rods.2.inner": (188, 352, 208), "rods.2.outer": (34, 704, 190), "rods.3.inner": (-176, 360, 214), "rods.3.outer": (-38, 698, 198),
    "tieRodOuter": (-142, 680, 262), "tieRodInner": (-150, 372, 268), "wheelCentre": (0, 752, 308)}
SWING = {
    "frontPivot": (168, -182, 322), "rearPivot": (-192, -164, 318), "kingpinUpper": (-18, 648, 428), "kingpinLower": (14, 690, 214),
    "tieRodOuter": (-138, 668, 262), "tieRodInner": (-146, 222, 296), "wheelCentre": (0, 766, 312)}
AXLE = {
    "links.0.inner": (-880, 360, 424), "links.0.outer": (-66, 446, 308), "links.1.inner": (-884, -366, 428), "links.1.outer": (-72, -438, 314),
    "links.2.inner": (-748, 182, 562), "links.2.outer": (-42, 240, 508), "links.3.inner": (136, 466, 532), "links.3.outer": (120, -452, 472),
    "dragLink.inner": (186, 396, 536), "dragLink.outer": (172, -560, 448)}
AXLE_SIDE = {"kingpins.0": (-14, 604, 482), "kingpins.1": (12, 636, 302), "steeringArmBalls": (-190, 598, 350), "wheelCentres": (0, 772, 388)}


class Job:
    """A true car, the study that is off it, and what was measured."""

    def __init__(self, name, kind, units, points, seed, mark_sd=0.0):
        self.name, self.kind, self.units = name, kind, units
        self.r = np.random.default_rng(seed)
        self.names = list(points)
        base = np.array([points[n] for n in self.names], float)
        self.true = base + self.r.normal(0, 8, base.shape)
        self.file = np.round(self.true + self.r.uniform(-30, 30, base.shape), 1)
        self.mark_sd = mark_sd
        self.marks = list(MARKS) + ([m + "r" for m in MARKS] if any(n.startswith("right.") or p[1] < -300 for n, p in points.items()) else [])
        self.mark_file = np.array([MARKS[m[0]] if len(m) == 1 else np.multiply(MARKS[m[0]], (1, -1, 1)) for m in self.marks], float)
        self.mark_true = self.mark_file + self.r.normal(0, 1, self.mark_file.shape) * mark_sd
        self.measures, self.slips = [], []

    def by(self, mm):
        """A length as the file states it, rounded; mm takes it back."""
        return round(mm / 25.4, 4) if self.units == "in" else round(mm, 4)

    def mm(self, x):
        return x * 25.4 if self.units == "in" else x

    def read(self, value, sd):
        v = round((value + self.r.normal(0, sd)) / DIGIT) * DIGIT
        return self.by(v), (None if sd == USUAL else self.by(sd))

    def measure(self):
        """Every point from its five nearest marks and its nearest neighbour, its height and
        one of its other coordinates by turns."""
        for i, n in enumerate(self.names):
            p = self.true[i]
            order = np.argsort(np.linalg.norm(self.mark_true - p, axis=1), kind="stable")
            for m in order[:5]:
                self.length(self.marks[m], n, np.linalg.norm(self.mark_true[m] - p), 1.0)
            if i:
                k = int(np.argmin(np.linalg.norm(self.true[:i] - p, axis=1)))
                self.length(self.names[k], n, np.linalg.norm(self.true[k] - p), 0.5)
            self.plumb("heights", n, p[2], 0.5)
            self.plumb(*(("sides", n, p[1], 1.0) if i % 2 else ("stations", n, p[0], 1.0)))

    def length(self, a, b, value, sd):
        v, s = self.read(value, sd)
        self.measures.append({"list": "lengths", "from": a, "to": b, "value": v, "sd": s})

    def plumb(self, which, of, value, sd):
        v, s = self.read(value, sd)
        self.measures.append({"list": which, "of": of, "value": v, "sd": s})

    def slip(self, which, k, change):
        """Writes measure k of a list wrongly by mm."""
        m = [m for m in self.measures if m["list"] == which][k]
        m["value"] = round(m["value"] + self.by(change), 4)
        self.slips.append("%s.%d" % (which, k))

    def exchange(self, a, b):
        lengths = [m for m in self.measures if m["list"] == "lengths"]
        lengths[a]["value"], lengths[b]["value"] = lengths[b]["value"], lengths[a]["value"]
        self.slips += ["lengths.%d" % a, "lengths.%d" % b]

    def sound(self):
        count, out = {}, []
        for m in self.measures:
            k = count.get(m["list"], 0)
            count[m["list"]] = k + 1
            if "%s.%d" % (m["list"], k) not in self.slips:
                out.append(m)
        return out

    def solve(self):
        """Places and marks, their covariance and chi-square, all in mm."""
        n, free = len(self.names), self.mark_sd > 0
        place = {name: i for i, name in enumerate(self.names)}
        mark = {name: i for i, name in enumerate(self.marks)}
        file = np.array([[self.mm(self.by(c)) for c in p] for p in self.file])
        marks_file = np.array([[self.mm(self.by(c)) for c in p] for p in self.mark_file])
        mark_sd = self.mm(self.by(self.mark_sd))
        prior = self.mm(3.937) if self.units == "in" else PRIOR
        axis = {"heights": 2, "sides": 1, "stations": 0}
        sound = self.sound()

        def residuals(x):
            p = x[:3 * n].reshape(-1, 3)
            q = x[3 * n:].reshape(-1, 3) if free else marks_file
            at = lambda name: p[place[name]] if name in place else q[mark[name]]
            out = []
            for m in sound:
                is_now = np.linalg.norm(at(m["from"]) - at(m["to"])) if m["list"] == "lengths" else at(m["of"])[axis[m["list"]]]
                out.append((is_now - self.mm(m["value"])) / (USUAL if m["sd"] is None else self.mm(m["sd"])))
            out = np.concatenate([out, ((p - file) / prior).ravel()])
            return np.concatenate([out, ((q - marks_file) / mark_sd).ravel()]) if free else out

        start = np.concatenate([file.ravel(), marks_file.ravel()]) if free else file.ravel()
        s = least_squares(residuals, start, jac="3-point", method="trf", x_scale=1.0, ftol=1e-15, xtol=1e-15, gtol=1e-13, max_nfev=200)
        cov = np.linalg.inv(s.jac.T @ s.jac)
        return s.x, cov, 2 * s.cost, len(sound)


def spin(toe, camber):
    t, c = np.radians([toe, camber])
    return np.array([np.sin(t) * np.cos(c), np.cos(t) * np.cos(c), -np.sin(c)])


LINKS = {
    "double-wishbone": [("lowerFrontPivot", "lowerBallJoint"), ("lowerRearPivot", "lowerBallJoint"), ("upperFrontPivot", "upperBallJoint"), ("upperRearPivot", "upperBallJoint")],
    "strut": [("lowerFrontPivot", "lowerBallJoint"), ("lowerRearPivot", "lowerBallJoint")],
    "multi-link": [("rods.%d.inner" % i, "rods.%d.outer" % i) for i in range(4)],
    "swing-arm": [("frontPivot", "kingpinLower"), ("rearPivot", "kingpinLower"), ("frontPivot", "kingpinUpper"), ("rearPivot", "kingpinUpper")],
}


def toe_at(kind, p, travel, toe, camber):
    """Toe in degrees of a left knuckle whose wheel centre stands travel higher."""
    links = LINKS[kind] + [("tieRodInner", "tieRodOuter")]
    centre, e = p["wheelCentre"], spin(toe, camber)
    length = [np.linalg.norm(p[b] - p[a]) for a, b in links]

    def equations(q, travel):
        r = Rotation.from_rotvec(q[:3] / 100)
        now = lambda name: centre + q[3:] + r.apply(p[name] - centre)
        f = [np.linalg.norm(now(b) - p[a]) - l for (a, b), l in zip(links, length)]
        if kind == "strut":
            along = r.apply(p["strutTop"] - p["strutLower"])
            off = np.cross(along / np.linalg.norm(along), p["strutTop"] - now("strutLower"))
            f += [off[0], off[1]]
        return f + [q[5] - travel]

    q = np.zeros(6)
    for part in (0.25, 0.5, 0.75, 1.0):
        q = fsolve(equations, q, args=(part * travel,), xtol=1e-13)
    a = Rotation.from_rotvec(q[:3] / 100).apply(e)
    return np.degrees(np.arctan2(a[0], a[1]))


def toe_ends(job, x, cov, side, window, toe, camber):
    """Toe change at both ends of the window and their standard deviations, degrees."""
    n = len(job.names)
    sign = np.array([1, -1 if side == "right" else 1, 1])

    def change(v, travel):
        p = {name.split(".", 1)[1]: sign * v[3 * i:3 * i + 3] for i, name in enumerate(job.names) if name.startswith(side)}
        return toe_at(job.kind, p, travel, toe, camber) - toe

    out = {}
    for end, travel in (("bump", window), ("droop", -window)):
        g = np.zeros(3 * n)
        for k in range(3 * n):
            h = np.zeros(len(x))
            h[k] = 0.05
            g[k] = (change(x + h, travel) - change(x - h, travel)) / 0.1
        out[end] = {"value": change(x, travel), "sd": float(np.sqrt(g @ cov[:3 * n, :3 * n] @ g))}
    return out


def study(job, window, toe, camber):
    at = lambda i: [job.by(c) for c in job.file[i]]
    s = {"format": "toewright/1", "name": job.name + " (invented)", "units": job.units, "suspension": {"type": job.kind}}
    sus = s["suspension"]
    place = dict(zip(job.names, range(len(job.names))))
    if job.kind == "solid-axle":
        sus["links"] = [{"inner": at(place["links.%d.inner" % i]), "outer": at(place["links.%d.outer" % i])} for i in range(4)]
        sus["dragLink"] = {"inner": at(place["dragLink.inner"]), "outer": at(place["dragLink.outer"]), "side": "right"}
        sus["kingpins"] = {side: [at(place["%s.kingpins.0" % side]), at(place["%s.kingpins.1" % side])] for side in ("left", "right")}
        for key in ("steeringArmBalls", "wheelCentres"):
            sus[key] = {side: at(place[side + "." + key]) for side in ("left", "right")}
        sus["toe"], sus["camber"] = toe, camber
    else:
        for side in ("left", "right"):
            corner = {}
            for name, i in place.items():
                if not name.startswith(side):
                    continue
                key = name.split(".", 1)[1]
                if key.startswith("rods."):
                    rods = corner.setdefault("rods", [{}, {}, {}, {}])
                    rods[int(key[5])][key[7:]] = at(i)
                else:
                    corner[key] = at(i)
            if corner:
                sus[side] = corner | {"toe": toe, "camber": camber}
    s["steering"] = {"type": "none"} if job.kind == "multi-link" else {"type": "rack"}
    s["travel"] = {"bump": job.by(window), "droop": job.by(window), "step": job.by(window / 5)}
    m = s["measured"] = {"marks": {name: [job.by(c) for c in p] for name, p in zip(job.marks, job.mark_file)}}
    if job.mark_sd:
        m["markSd"] = job.by(job.mark_sd)
    for one in job.measures:
        m.setdefault(one["list"], []).append({k: v for k, v in one.items() if k != "list" and v is not None})
    return s


def answer(job, window, toe, camber):
    x, cov, chi, dof = job.solve()
    sd = np.sqrt(np.diag(cov))
    n = len(job.names)
    three = lambda v, k: [round(float(c / job.mm(1)), 7) for c in v[3 * k:3 * k + 3]]
    out = {"points": {name: {"value": three(x, i), "sd": three(sd, i)} for i, name in enumerate(job.names)},
           "chiSquare": round(float(chi), 5), "degreesOfFreedom": dof, "slips": sorted(job.slips)}
    if job.mark_sd:
        out["marks"] = {name: {"value": three(x, n + i), "sd": three(sd, n + i)} for i, name in enumerate(job.marks)}
    if job.kind in LINKS:
        out["toe"] = {side: {end: {k: round(float(v), 7) for k, v in f.items()} for end, f in toe_ends(job, x, cov, side, window, toe, camber).items()}
                      for side in ("left", "right") if any(name.startswith(side) for name in job.names)}
    return out


def sided(points, *sides):
    return {side + "." + name: np.multiply(p, (1, -1 if side == "right" else 1, 1)) for side in sides for name, p in points.items()}


def jobs():
    """The jobs with their windows, mm, and static toe and camber."""
    j = Job("A double wishbone with a length 10 mm off", "double-wishbone", "mm", sided(WISHBONE, "left"), 1)
    j.measure()
    j.slip("lengths", 13, 10)
    yield "double-wishbone", j, 50, 0.1, -0.5
    j = Job("A strut in inches, marks off, a foot misread", "strut", "in", sided(STRUT, "left"), 2, mark_sd=1.0)
    j.measure()
    j.slip("lengths", 20, -12 * 25.4)
    yield "strut-inches", j, 50.8, 0.05, -0.8
    j = Job("A rear multi-link, both sides, two lengths exchanged", "multi-link", "mm", sided(RODS, "left", "right"), 3)
    j.measure()
    j.exchange(31, 34)
    yield "multi-link-both", j, 60, 0.15, -1.0
    j = Job("A split beam in inches without a slip", "swing-arm", "in", sided(SWING, "left"), 4)
    j.measure()
    yield "swing-arm-inches", j, 63.5, 0.1, 0.5
    j = Job("A solid axle, marks off, a height 10 mm off", "solid-axle", "mm", {**AXLE, **sided(AXLE_SIDE, "left", "right")}, 5, mark_sd=1.0)
    j.measure()
    j.slip("heights", 7, 10)
    yield "solid-axle", j, 60, 0.1, 0.5


def main():
    for name, job, window, toe, camber in jobs():
        about = "A simulated job: geometry invented. `study` is off the true car and says what was measured; `expected` is the least squares by tools/tapes/tapes.py (scipy), the slips left out, and shares nothing with the program."
        with open(os.path.join(sys.argv[1], name + ".json"), "w") as f:
            json.dump({"about": about, "study": study(job, window, toe, camber), "expected": answer(job, window, toe, camber)}, f, indent=1)
            f.write("\n")


if __name__ == "__main__":
    main()
