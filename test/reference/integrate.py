"""Integrates heat networks given as JSON on standard input with scipy and prints their sampled temperatures.

Written from the equations and not from the TypeScript code: flux laws, heat capacities, oil film factor and limiters are
evaluated here from the numbers in the descriptions (see describeProblem in cases.mjs).
"""

import json
import sys
from math import exp, log10, pi, sqrt
from multiprocessing import Pool

import numpy as np
from scipy.integrate import solve_ivp

FREEZING = 273.15  # K
SMOOTHING = 0.1  # K, below which powers of a temperature difference turn linear
REFERENCE_DIFFERENCE = 10.0  # K, at which the conductances of the power laws are given
MELTING_WIDTH = 0.5  # K, of the Gaussian over which latent heat is spread


class Oil:
    """Kinematic viscosity [mm2/s] by ASTM D341 through its values at 40 and 100 °C."""

    def __init__(self, nu40, nu100):
        y40, y100 = (log10(log10(nu + 0.7 + exp(-1.47 - 1.84 * nu - 0.51 * nu**2))) for nu in (nu40, nu100))
        self.b = (y40 - y100) / log10((FREEZING + 100) / (FREEZING + 40))
        self.a = y40 + self.b * log10(FREEZING + 40)
        self.warm = self.viscosity(FREEZING + 50)

    def viscosity(self, temp):
        x = 10 ** (10 ** (self.a - self.b * log10(temp))) - 0.7
        return x - exp(-0.7487 - 3.295 * x + 0.6119 * x**2 - 0.3193 * x**3)

    def film_factor(self, temp):
        """Free convection of oil at a wall goes as the fourth root of 1/viscosity; 1 at 50 °C."""
        return (self.warm / self.viscosity(temp)) ** 0.25


class Network:
    def __init__(self, description):
        rows = [part["name"] for part in description["parts"]] + description["inputs"]
        self.row = {name: i for i, name in enumerate(rows)}
        self.parts = description["parts"]
        self.links = description["links"]
        self.sources = description["sources"]
        self.configurations = description["configurations"]
        self.oil = Oil(1e6 * description["oil"]["nu40"], 1e6 * description["oil"]["nu100"])
        self.laws = {
            "conduction": lambda d, a, b, wind: d,
            "free-convection": lambda d, a, b, wind: d * (sqrt(d * d + SMOOTHING**2) / REFERENCE_DIFFERENCE) ** 0.25,
            "ventilation": lambda d, a, b, wind: d
            * sqrt((sqrt(d * d + SMOOTHING**2) + wind) / REFERENCE_DIFFERENCE),
            "radiation": lambda d, a, b, wind: (a**4 - b**4) / (4 * FREEZING**3),
        }

    def enter(self, stretch):
        """Takes up the numbers in force in a stretch of time."""
        numbers = self.configurations[stretch["configuration"]]
        row = self.row
        self.active_links = [
            (
                conductance,
                row[link["from"]],
                row[link["to"]],
                self.laws[link["law"]],
                None if link["factorInput"] is None else row[link["factorInput"]],
                None if link["windInput"] is None else row[link["windInput"]],
                link["oilFilm"],
            )
            for link, conductance in zip(self.links, numbers["conductance"])
            if conductance != 0
        ]
        self.active_sources = [
            (power, row[source["part"]], source["limiter"])
            for source, power in zip(self.sources, numbers["power"])
            if power != 0
        ]
        self.start, self.end = stretch["from"], stretch["to"]
        length = self.end - self.start
        self.inputs = [(a, (b - a) / length) for a, b in zip(stretch["inputsFrom"], stretch["inputsTo"])]

    def derivative(self, t, temps):
        """dT/dt [K/s] of all parts."""
        # When scipy looks for its first step it also asks beyond the end, where nothing is given: inputs are held there.
        passed = min(t, self.end) - self.start
        T = temps.tolist() + [value + slope * passed for value, slope in self.inputs]
        heat = [0.0] * len(T)
        for conductance, a, b, law, factor, wind, film in self.active_links:
            q = conductance * law(T[a] - T[b], T[a], T[b], None if wind is None else T[wind])
            if factor is not None:
                q *= T[factor]
            if film:
                q *= self.oil.film_factor((T[a] + T[b]) / 2)
            heat[a] -= q
            heat[b] += q
        for power, part, limiter in self.active_sources:
            if limiter is not None:
                power /= 1 + exp((T[self.row[limiter["senses"]]] - limiter["setPoint"]) / limiter["width"])
            heat[part] += power
        return [q / self.capacity(part, temp) for part, temp, q in zip(self.parts, T, heat)]

    def capacity(self, part, temp):
        t = temp - FREEZING
        capacity = part["heatCapacity"] + part["heatCapacitySlope"] * t
        if part["latentHeat"] != 0:
            capacity += part["latentHeat"] * exp(-((t / MELTING_WIDTH) ** 2)) / (MELTING_WIDTH * sqrt(pi))
        return capacity


def integrate(description, method="BDF"):
    """Stretch by stretch between jumps, each started afresh; returns samples x parts [K]."""
    network = Network(description)
    state = np.array(description["initial"], dtype=float)
    times = np.array(description["sampleTimes"], dtype=float)
    samples = np.full((len(times), len(state)), np.nan)
    samples[times == description["stretches"][0]["from"]] = state
    for stretch in description["stretches"]:
        network.enter(stretch)
        start, end = stretch["from"], stretch["to"]
        inside = (times > start) & (times <= end)
        solution = solve_ivp(
            network.derivative,
            (start, end),
            state,
            method=method,
            t_eval=np.append(times[inside & (times < end)], end),
            rtol=1e-10,
            atol=1e-9,
        )
        if not solution.success:
            raise RuntimeError(f"{description['name']} at {start} s: {solution.message}")
        state = solution.y[:, -1]
        samples[inside] = solution.y[:, : inside.sum()].T
    return samples.tolist()


if __name__ == "__main__":
    with Pool(2) as pool:
        json.dump(pool.map(integrate, json.load(sys.stdin), chunksize=1), sys.stdout)
