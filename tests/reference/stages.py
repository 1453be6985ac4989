#!/usr/bin/python3
# SPDX-FileCopyrightText: The Broadstave developers
# SPDX-License-Identifier: GPL-3.0-or-later
"""Plans in stages against an exhaustive search over sets of open glue lines, on stored cases and on random
ones. The search here knows nothing of labels or intervals: round by round it tries every set of glue lines
that could be glued next. Every plan is also checked by itself against all limits.
Usage: stages.py TOOL FOLDER_OF_CASES [JOBS]"""

import json
import math
import pathlib
import subprocess
import sys
from functools import lru_cache, partial

import numpy as np

from tap import run

BALANCE = 0.02


class Job:
    def __init__(self, data):
        self.data, self.t, self.glue, self.clamp = data, data["t"], data["glue"], data["clamp"]
        self.n = len(self.t)
        area = data["length"] * data["height"] / 1e6
        self.a = self.glue["joint_s"] + area * self.glue["spread_s_per_m2"] / data["people"]

    def width(self, i, j):
        return sum(self.t[i:j])

    def clamps(self, bounds):
        outer = min(self.width(bounds[0], bounds[1]), self.width(bounds[-2], bounds[-1]))
        spacing = min(self.clamp["max_spacing"], 2 * (outer + self.clamp["caul"]))
        room = self.data["length"] - 2 * self.clamp["end"]
        return max(2, 1 + math.ceil(room / spacing - 1e-9))

    @lru_cache(maxsize=None)
    def stage(self, bounds):
        """(seconds, clamps) of a stage, or None when it cannot be closed."""
        d, k, n = self.data, len(bounds) - 1, self.clamps(bounds)
        p, q, a = d["place_s"], d["align_s"], self.a
        tighten = n * d["tighten_s"] / d["people"]
        total = (k - 1) * (a + p + q) + tighten
        if d["method"] == "alternate":
            opened, closed = a + p, total - a - p
        else:
            opened, closed = max((k - 1) * a + p, a + (k - 1) * p), total - (k - 1) * a - p
        width = self.width(bounds[0], bounds[-1])
        is_pack = bounds[-1] - bounds[0] < self.n
        if (opened > self.glue["open_s"] + 1e-6 or closed > self.glue["closed_s"] + 1e-6
                or total > self.glue["total_s"] + 1e-6 or n > d["clamps"]
                or width + 2 * self.clamp["caul"] > self.clamp["max_opening"] + 1e-9
                or is_pack and d["plane_packs"] and width > d["planer_width"] + 1e-9):
            return None
        return total + p + (d["plane_s"] if is_pack and d["plane_packs"] else 0), n

    def next_states(self, bounds):
        """All (bounds, seconds, stages) that one round can lead to."""
        pieces = len(bounds) - 1

        def walk(at, clamps, seconds, stages, kept):
            if at == pieces:
                if stages:
                    yield kept + (bounds[-1],), seconds, stages
                return
            yield from walk(at + 1, clamps, seconds, stages, kept + (bounds[at],))
            for k in range(2, pieces - at + 1):
                part = bounds[at:at + k + 1]
                cost = self.stage(part)
                if cost and clamps + cost[1] <= self.data["clamps"]:
                    yield from walk(at + k, clamps + cost[1], seconds + cost[0], stages + (part,),
                                    kept + (bounds[at],))

        yield from walk(0, 0, 0.0, (), ())

    def solve(self):
        """None, or (rounds, elapsed, imbalance, least imbalance within 2 % of the elapsed)."""
        states = {tuple(range(self.n + 1)): 0.0}
        for round_ in range(1, self.data["max_rounds"] + 1):
            ends, following = [], {}
            for bounds, before in states.items():
                widths = [self.width(i, j) for i, j in zip(bounds, bounds[1:])]
                for reached, seconds, _ in self.next_states(bounds):
                    seconds += before + self.data["press_s"]
                    if len(reached) == 2:
                        ends.append((round(seconds, 6), max(widths) - min(widths)))
                    elif seconds < following.get(reached, math.inf):
                        following[reached] = seconds
            if ends:
                best, imbalance = min(ends)
                balanced = min(b for s, b in ends if s <= best * (1 + BALANCE) + 1e-9)
                return round_, best, imbalance, balanced
            states = following
        return None

    def check(self, stages):
        """What is wrong with a plan, or its (elapsed, imbalance)."""
        bounds, elapsed = tuple(range(self.n + 1)), 0.0
        for round_ in range(1 + max(r for r, _ in stages)):
            clamps, last = 0, bounds
            for r, part in stages:
                if r != round_:
                    continue
                if not set(part) <= set(last) or any(part[0] < b < part[-1] and b not in part
                                                     for b in last):
                    return f"stage {part} joins what is not there"
                cost = self.stage(part)
                if cost is None:
                    return f"stage {part} breaks a limit"
                clamps += cost[1]
                elapsed += cost[0]
                bounds = tuple(b for b in bounds if not part[0] < b < part[-1])
            if clamps > self.data["clamps"]:
                return f"round {round_} needs {clamps} clamps"
            elapsed += self.data["press_s"]
        if len(bounds) != 2:
            return f"ends with {bounds}"
        widths = [self.width(i, j) for i, j in zip(last, last[1:])]
        return elapsed, max(widths) - min(widths)

    def line(self):
        d, g, c = self.data, self.glue, self.clamp
        numbers = [self.n, *self.t, d["length"], d["height"], d["people"], g["spread_s_per_m2"],
                   g["joint_s"], g["open_s"], g["closed_s"], g["total_s"], d["press_s"], d["place_s"],
                   d["align_s"], d["tighten_s"], d["clamps"], c["max_spacing"], c["end"], c["caul"],
                   c["max_opening"], int(d["plane_packs"]), d["planer_width"], d["plane_s"],
                   int(d["method"] != "alternate"), d["max_rounds"]]
        return " ".join(map(str, numbers))


def random_job(rng):
    pick = lambda *values: values[int(rng.integers(len(values)))]
    return Job(dict(
        t=[pick(25, 30, 32, 38, 40, 45) for _ in range(int(rng.integers(2, 10)))],
        length=pick(800, 1000, 1500, 2000), height=pick(40, 60, 100), people=pick(1, 2),
        glue=dict(spread_s_per_m2=pick(150, 200, 300), joint_s=pick(5, 10, 20),
                  open_s=pick(60, 120, 300, 600), closed_s=pick(60, 200, 400, 900),
                  total_s=pick(120, 180, 300, 600)),
        press_s=1800, place_s=pick(8, 15), align_s=pick(5, 10), tighten_s=pick(5, 8, 10),
        clamps=pick(6, 9, 12, 18, 24),
        clamp=dict(max_spacing=pick(300, 400), end=50, caul=pick(0, 45, 60),
                   max_opening=pick(300, 400, 1250)),
        plane_packs=pick(True, False), planer_width=pick(80, 120, 150, 200, 300), plane_s=pick(120, 300),
        method=pick("alternate", "spread_all"), max_rounds=4))


def read_answer(text):
    if text == "0":
        return None
    head, *rest = text.split(" ", 7)
    numbers = [float(v) for v in rest[:6]]
    stages = []
    for part in rest[6].split(";"):
        values = [int(v) for v in part.split()]
        if values:
            stages.append((values[0], tuple(values[1:])))
    return numbers, stages


def compare(job, answer, wanted):
    """None when all is well, else a sentence."""
    if (answer is None) != (wanted is None):
        return f"wanted {wanted}, got {answer}"
    if answer is None:
        return None
    (rounds, elapsed, imbalance, proved, balanced_elapsed, balanced), stages = answer
    checked = job.check(stages)
    if isinstance(checked, str):
        return checked
    if max(abs(checked[0] - elapsed), abs(checked[1] - imbalance)) > 1e-5:
        return f"says {elapsed} s and {imbalance} mm, its stages make {checked}"
    if not proved or rounds != wanted[0] or abs(elapsed - wanted[1]) > 1e-3:
        return f"wanted {wanted}, got {answer}"
    if abs(imbalance - wanted[2]) > 1e-6:
        return f"wanted imbalance {wanted[2]}, got {imbalance}"
    if wanted[3] is not None and abs(balanced - wanted[3]) > 1e-6:
        return f"wanted balanced {wanted[3]}, got {balanced}"
    if balanced_elapsed > elapsed * (1 + BALANCE) + 1e-6:
        return f"the balanced plan takes {balanced_elapsed} s, the shortest {elapsed} s"
    return None


def main():
    tool, folder = sys.argv[1], pathlib.Path(sys.argv[2])
    count = int(sys.argv[3]) if len(sys.argv) > 3 else 200
    rows = []
    for path in sorted(folder.glob("stages-*.json")):
        case = json.loads(path.read_text())
        expected = case["expected"]
        wanted = None
        if expected["feasible"]:
            wanted = expected["rounds"], expected["elapsed"], expected["imbalance"], None
        rows.append((f"case/{path.stem}", Job(case["input"]), wanted))
    assert rows, f"no cases in {folder}"
    rng = np.random.default_rng(7)
    for i in range(count):
        job = random_job(rng)
        rows.append((f"random/{i + 1}-of-{job.n}", job, job.solve()))

    text = "".join(job.line() + "\n" for _, job, _ in rows)
    lines = subprocess.run([tool], input=text, capture_output=True, text=True,
                           check=True).stdout.splitlines()
    assert len(lines) == len(rows)
    solved = sum(wanted is not None for _, _, wanted in rows)
    print(f"# {solved} of {len(rows)} jobs can be done")

    def check(job, wanted, line):
        fault = compare(job, read_answer(line), wanted)
        assert fault is None, f"{fault}; {job.data}"

    run((f"/reference/stages/{name}", partial(check, job, wanted, line))
        for (name, job, wanted), line in zip(rows, lines))


main()
