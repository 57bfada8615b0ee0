"""The command line: bathwright."""

import gc
import os
import sys


def main() -> None:
    """Run the command line. Exit codes: 0 go, 4 not yet, 3 no, 2 bad input, 1 our own defect.

    One short process with 5 by 5 matrices: threads for them and rounds of garbage collection only cost start-up time
    (about 100 ms of a plan, measured).
    """
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    gc.disable()
    from bathwright.cli.commands import app

    try:
        app()
    except (KeyboardInterrupt, BrokenPipeError):
        sys.exit(130)
    except Exception as error:  # the last net: one line, never a traceback
        print(f"bathwright: a defect of our own, not of your input: {type(error).__name__}: {error}", file=sys.stderr)
        print("Please report it with the input that you gave.", file=sys.stderr)
        sys.exit(1)
