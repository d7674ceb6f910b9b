"""evolution.py CASE LIBRARY LOW... HIGH...: times scipy's differential evolution
with polish on the search of three variables; each car is moved by fsolve or,
where LIBRARY is not "-", by the sweep in C."""
import ctypes
import sys
import time

import numpy as np
from scipy.optimize import differential_evolution

from kinematics import Case, Corner, sweep


def by_fsolve(case):
    """The objective with each car moved by scipy."""
    low, high, ball = case.points("lowerBallJoint", "upperBallJoint", "tieRodOuter")
    arm = ball - low - (ball[2] - low[2]) / (high[2] - low[2]) * (high - low)
    arm /= np.linalg.norm(arm)
    inner = case.point["tieRodInner"]
    up = np.array([0, 0, 1.0])
    zero = int(np.argmax(case.travels >= 0))

    def rms(x):
        case.point["tieRodOuter"] = ball + x[0] * up + x[2] * arm
        case.point["tieRodInner"] = inner + x[1] * up
        toe = sweep(Corner(case))
        return np.sqrt(np.mean((toe - toe[zero]) ** 2))

    return rms


def by_library(path, case):
    """The objective of the C library."""
    lib = ctypes.CDLL(path)
    lib.objective.restype = ctypes.c_double
    lib.objective.argtypes = [ctypes.c_void_p]
    if not lib.open_case(case.encode()):
        sys.exit("the library cannot read " + case)
    return lambda x: lib.objective(np.ascontiguousarray(x).ctypes.data)


def main():
    path, library = sys.argv[1:3]
    bounds = [float(x) for x in sys.argv[3:]]
    f = by_fsolve(Case(path)) if library == "-" else by_library(library, path)
    t = time.process_time_ns()
    r = differential_evolution(f, list(zip(bounds[:3], bounds[3:])), seed=1, polish=True)
    print("time", time.process_time_ns() - t)
    print("best %.12f" % r.fun)
    print("evaluations", r.nfev)


if __name__ == "__main__":
    main()
