"""Speed as ratios measured in one run: the air model against a general solver, a warm plan against its parts.

Run with `make slow` or `python benchmarks/plan.py`. Prints, asserts nothing: machines differ.
"""

import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path

import numpy as np
from scipy.integrate import solve_ivp

from bathwright.app import ask
from bathwright.domain.plan import Options
from bathwright.physics import zones

DEMO = Path(__file__).parent.parent / "examples" / "surveys" / "demo.toml"
AT = datetime(2026, 12, 1, 14, tzinfo=UTC)


def median_s(work: Callable[[], object], runs: int = 7) -> float:
    """Median wall time of a call."""
    times = []
    for _ in range(runs):
        begin = time.perf_counter()
        work()
        times.append(time.perf_counter() - begin)
    return statistics.median(times)


def propagator_ratio() -> float:
    """General solver over ours, for 20 linear systems of 5 states over 600 steps of a minute."""
    random = np.random.default_rng(1)
    flows = random.uniform(0.0001, 0.005, (20, 5, 5))
    matrix = flows - np.stack([np.diag(f.sum(axis=0)) for f in flows]) - np.eye(5) * 1e-4
    source, state = np.full((20, 5), 1e-6), np.zeros((20, 5))

    def ours() -> None:
        now = state
        for _ in range(600):
            now, _mean = zones.propagate(matrix, source, now, 60.0)

    def general() -> None:
        for a, b in zip(matrix, source, strict=True):
            solve_ivp(lambda _t, x, a=a, b=b: a @ x + b, (0, 36000), np.zeros(5), "LSODA", rtol=1e-8, atol=1e-14,
                      t_eval=np.arange(0, 36001, 60.0))  # fmt: skip

    return median_s(general, 3) / median_s(ours, 3)


def main() -> None:
    """Print the figures."""
    warm = median_s(lambda: ask.plan(DEMO, None, AT, Options(), AT))
    cold = median_s(
        lambda: subprocess.run([sys.executable, "-m", "bathwright", "plan", str(DEMO)], capture_output=True), 5
    )
    bare = median_s(lambda: subprocess.run([sys.executable, "-c", "pass"], capture_output=True), 5)
    helped = median_s(lambda: subprocess.run([sys.executable, "-m", "bathwright", "--help"], capture_output=True), 5)
    print(f"general solver / own propagator (20 systems, 600 steps): {propagator_ratio():.1f}")
    print(f"whole process of plan / warm plan: {cold / warm:.2f}   (plan {cold:.2f} s, warm {warm:.2f} s)")
    print(f"whole process of --help / bare Python: {helped / bare:.1f}   (--help {helped:.2f} s)")


if __name__ == "__main__":
    main()
