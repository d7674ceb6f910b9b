"""kinematics.py CASE REPEATS: times scipy.optimize.fsolve, with Jacobian, on a
knuckle of six unknowns or an axle of eight, warm-started along the travel."""
import sys
import time

import numpy as np
from scipy.optimize import fsolve

DEG = np.pi / 180
UP = np.array([0.0, 0.0, 1.0])


class Case:
    """A linkage as the driver hands it to every peer."""

    def __init__(self, path):
        self.point, travels = {}, []
        for line in open(path):
            word, *rest = line.split()
            if word == "point":
                self.point[rest[0]] = np.array([float(x) for x in rest[1:]])
            elif word == "travel":
                travels.append(float(rest[0]))
            else:
                setattr(self, word, float(rest[0]) if word in ("toe", "camber") else rest[0])
        self.travels = np.array(travels)
        t, c = self.toe * DEG, self.camber * DEG
        self.spin = np.array([np.sin(t) * np.cos(c), np.cos(t) * np.cos(c), -np.sin(c)])

    def points(self, *names):
        return np.array([self.point[n] for n in names])

    def path(self):
        """Indices of the travels, outward from 0 both ways."""
        zero = int(np.argmax(self.travels >= 0))
        return range(zero, len(self.travels)), range(zero - 1, -1, -1)


def rotation(g):
    """The rotation of the Gibbs vector g, and the matrix from its rate to the
    angular velocity."""
    x, y, z = g[0], g[1], g[2]
    k = 2 / (1 + x * x + y * y + z * z)
    c = k - 1
    return (np.array([[c + k * x * x, k * (x * y - z), k * (x * z + y)],
                      [k * (x * y + z), c + k * y * y, k * (y * z - x)],
                      [k * (x * z - y), k * (y * z + x), c + k * z * z]]),
            np.array([[k, -k * z, k * y], [k * z, k, -k * x], [-k * y, k * x, k]]))


def cross(a, b):
    """Cross products of rows; numpy's own is several times slower on so few."""
    a, b = a.T, b.T
    return np.array([a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]).T


RODS = {
    "double-wishbone": (
        ["lowerFrontPivot", "lowerRearPivot", "upperFrontPivot", "upperRearPivot", "tieRodInner"],
        ["lowerBallJoint", "lowerBallJoint", "upperBallJoint", "upperBallJoint", "tieRodOuter"]),
    "strut": (
        ["lowerFrontPivot", "lowerRearPivot", "tieRodInner"],
        ["lowerBallJoint", "lowerBallJoint", "tieRodOuter"]),
    "multi-link": (
        ["rods.0.inner", "rods.1.inner", "rods.2.inner", "rods.3.inner", "tieRodInner"],
        ["rods.0.outer", "rods.1.outer", "rods.2.outer", "rods.3.outer", "tieRodOuter"]),
}


class Corner:
    """One knuckle: unknowns are its Gibbs vector and its wheel centre."""

    def __init__(self, case):
        inner, outer = RODS[case.kind]
        self.case, self.centre = case, case.point["wheelCentre"]
        self.inner = case.points(*inner)
        self.arm = case.points(*outer) - self.centre
        self.length = np.linalg.norm(self.arm + self.centre - self.inner, axis=1)
        self.start = np.concatenate([np.zeros(3), self.centre])
        self.strut = case.kind == "strut"
        if self.strut:
            self.top = case.point["strutTop"]
            self.on = case.point["strutLower"] - self.centre
            self.dir = self.top - case.point["strutLower"]

    def equations(self, q, z):
        """Residuals in mm and their Jacobian."""
        r, omega = rotation(q[:3])
        arm = self.arm @ r.T
        d = q[3:] + arm - self.inner
        n = len(d)
        f, jac = np.empty(6), np.zeros((6, 6))
        f[:n] = ((d * d).sum(1) / self.length - self.length) / 2
        pull = d / self.length[:, None]
        jac[:n, :3], jac[:n, 3:] = cross(arm, pull) @ omega, pull
        if self.strut:
            self.slide(q, r, omega, f, jac, n)
        f[5], jac[5, 5] = q[5] - z, 1
        return f, jac

    def slide(self, q, r, omega, f, jac, n):
        """The strut's axis pierces the level of the mount at the mount."""
        on, dir = r @ self.on, r @ self.dir
        t = (self.top[2] - q[5] - on[2]) / dir[2]
        on = on + t * dir
        f[n:n + 2] = (q[3:] + on - self.top)[:2]
        pull = np.array([[1, 0, -dir[0] / dir[2]], [0, 1, -dir[1] / dir[2]]])
        jac[n:n + 2, :3] = cross(np.array([on, on]), pull) @ omega
        jac[n:n + 2, 3:] = pull

    def spin(self, q):
        return rotation(q[:3])[0] @ self.case.spin

    def target(self, travel):
        return self.centre[2] + travel


def about(axis, h):
    """The rotation about a unit axis by the angle whose half has the tangent h."""
    return rotation(h * axis)[0]


class Axle:
    """A beam on four links with two knuckles on kingpins: unknowns are the beam's
    Gibbs vector and displacement and the tangents of the kingpins' half turns."""

    def __init__(self, case):
        p = case.point
        self.case = case
        self.o = (p["left.wheelCentres"] + p["right.wheelCentres"]) / 2
        self.inner = case.points(*["links.%d.inner" % i for i in range(4)])
        self.outer = case.points(*["links.%d.outer" % i for i in range(4)]) - self.o
        self.length = np.linalg.norm(self.outer + self.o - self.inner, axis=1)
        self.pulls = 0 if case.dragSide == "left" else 1
        self.drag_inner = p["dragLink.inner"]
        self.drag = np.linalg.norm(p["dragLink.outer"] - self.drag_inner)
        self.tie = np.linalg.norm(p["left.steeringArmBalls"] - p["right.steeringArmBalls"])
        self.foot, self.axis, self.around, self.knuckle, self.height = [], [], [], [], []
        for side in ("left", "right"):
            upper, lower = p[side + ".kingpins.0"], p[side + ".kingpins.1"]
            x, y, z = axis = (upper - lower) / np.linalg.norm(upper - lower)
            self.foot.append(lower - self.o)
            self.axis.append(axis)
            self.around.append(np.array([[0, z, -y], [-z, 0, x], [y, -x, 0]]))  # row @ it: axis × row
            self.knuckle.append(np.array([p[side + ".wheelCentres"], p[side + ".steeringArmBalls"],
                                          p["dragLink.outer"]]) - lower)
            self.height.append(p[side + ".wheelCentres"][2])
        self.start = np.zeros(8)

    def equations(self, q, z):
        r, omega = rotation(q[:3])
        w = self.o + q[3:6]
        f, jac = np.empty(8), np.zeros((8, 8))
        arm = self.outer @ r.T
        d = w + arm - self.inner
        f[:4] = ((d * d).sum(1) / self.length - self.length) / 2
        pull = d / self.length[:, None]
        jac[:4, :3], jac[:4, 3:6] = cross(arm, pull) @ omega, pull
        # Points of the knuckles from the beam's reference point, and their
        # change with the kingpin's unknown: wheel centre, tie rod ball, and the
        # ball of the drag link on one of them.
        point, swing = [], []
        for i in range(2):
            h = q[6 + i]
            turned = self.knuckle[i] @ about(self.axis[i], h).T
            point.append((self.foot[i] + turned) @ r.T)
            swing.append(2 / (1 + h * h) * (turned @ self.around[i]) @ r.T)
        k = self.pulls
        x = np.array([point[k][2], point[0][0], point[1][0]])
        d = np.array([w + x[0] - self.drag_inner, UP, UP])
        d[0] /= self.drag
        f[4] = (d[0] @ d[0] - 1) * self.drag / 2
        jac[[4, 6, 7], :3], jac[[4, 6, 7], 3:6] = cross(x, d) @ omega, d
        jac[4, 6 + k] = d[0] @ swing[k][2]
        tie = point[0][1] - point[1][1]
        f[5] = (tie @ tie / self.tie - self.tie) / 2
        jac[5, 6], jac[5, 7] = tie @ swing[0][1] / self.tie, -tie @ swing[1][1] / self.tie
        for i in range(2):
            f[6 + i] = w[2] + point[i][0][2] - self.height[i] - z
            jac[6 + i, 6 + i] = swing[i][0][2]
        return f, jac

    def spin(self, q):
        return rotation(q[:3])[0] @ about(self.axis[0], q[6]) @ self.case.spin

    def target(self, travel):
        return travel


def remembered(equations):
    """Residual and Jacobian as two functions that share one evaluation."""
    last = [None, None, None]

    def value(q, z):
        last[0] = q.copy()
        last[1], last[2] = equations(q.tolist(), z)
        return last[1]

    def slope(q, z):
        if last[0] is None or (q != last[0]).any():
            value(q, z)
        return last[2]

    return value, slope


def sweep(model):
    """Toe in deg at every travel."""
    case, toe = model.case, np.empty(len(model.case.travels))
    value, slope = remembered(model.equations)
    for run in case.path():
        before = q = model.start
        for i in run:
            guess = 2 * q - before
            before = q
            q = fsolve(value, guess, (model.target(case.travels[i]),), fprime=slope, xtol=1e-9)
            e = model.spin(q)
            toe[i] = np.arctan2(e[0], e[1]) / DEG
    return toe


def model_of(case):
    return Axle(case) if case.kind == "solid-axle" else Corner(case)


def main():
    model = model_of(Case(sys.argv[1]))
    for _ in range(int(sys.argv[2])):
        t = time.process_time_ns()
        toe = sweep(model)
        print("time", time.process_time_ns() - t)
    for x in toe:
        print("toe %.12f" % x)


if __name__ == "__main__":
    main()
