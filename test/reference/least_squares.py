"""Fits a body that warms through two others, given as JSON on standard input, with scipy; prints x, sum and covariance.

Parameters are logarithms with priors, as in the learning of an aircraft. Written from the equations: no slopes are given,
scipy differences the residuals.
"""

import json
import sys

import numpy as np
from scipy.optimize import least_squares

problem = json.load(sys.stdin)
times = np.array(problem["times"])
readings = np.array(problem["readings"])
prior = np.array(problem["prior"])


def residuals(x):
    rise, share, fast, slow = np.exp(x)
    model = rise * (1 - share * np.exp(-times / fast) - (1 - share) * np.exp(-times / slow))
    return np.concatenate([(model - readings) / problem["noise_sd"], (x - prior) / problem["prior_sd"]])


found = least_squares(
    residuals, prior, jac="3-point", method="trf", xtol=1e-14, ftol=1e-14, gtol=1e-12, x_scale="jac"
)
jacobian = found.jac
print(
    json.dumps(
        {
            "x": found.x.tolist(),
            "sum": 2 * found.cost,
            "covariance": np.linalg.inv(jacobian.T @ jacobian).ravel().tolist(),
        }
    )
)
