"""The command line: bathwright."""

import contextlib
import gc
import io
import os
import sys

_PIPE_CLOSED = 141  # what a shell reports of a program whose reader went away


def main() -> None:
    """Run the command line. Exit codes: 0 go, 4 not yet, 3 no, 2 bad input, 1 our own defect.

    One short process with 5 by 5 matrices: threads for them and rounds of garbage collection only cost start-up time
    (about 100 ms of a plan, measured).
    """
    os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
    gc.disable()
    _lenient_streams()
    sys.exit(_deliver(*_run()))


def _lenient_streams() -> None:
    """Signs that the terminal cannot show become question marks; a closed stream swallows what is written."""
    for name in ("stdout", "stderr"):
        stream = getattr(sys, name)
        if stream is None:
            setattr(sys, name, open(os.devnull, "w", encoding="utf-8"))  # noqa: PTH123, SIM115
        elif isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")


def _run() -> tuple[str, str, int]:
    """What the command prints, what it says on the error stream, its exit code. Both texts are kept until the end."""
    from bathwright.cli.commands import app

    out, said = io.StringIO(), io.StringIO()
    code = 0
    try:
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(said):
            code = app(standalone_mode=False) or 0
    except SystemExit as stopped:
        code = stopped.code if isinstance(stopped.code, int) else 2
    except KeyboardInterrupt:
        code = 130
    except Exception as error:  # the last net: one line, never a traceback
        if hasattr(error, "format_message"):
            return out.getvalue(), _usage(error), 2
        said.write(f"bathwright: a defect of our own, not of your input: {type(error).__name__}: {error}\n")
        said.write("Please report it with the input that you gave.\n")
        code = 1
    return out.getvalue(), said.getvalue(), code


def _usage(error: Exception) -> str:
    """A wrong call of the command line as one line; a call without any word gets the help."""
    message = str(error.format_message())  # type: ignore[attr-defined]
    context = getattr(error, "ctx", None)
    if type(error).__name__ == "NoArgsIsHelpError":
        return message + "\n"
    called = context.command_path if context is not None else "bathwright"
    plain = " ".join(message.replace("Value error, ", "").split()).rstrip(".")
    return f"{called}: {plain}; see {called} --help\n"


def _deliver(out: str, said: str, code: int) -> int:
    """Write both texts. A reader that went away is no fault; a stream that cannot be written is told in one line."""
    for stream, text in ((sys.stderr, said), (sys.stdout, out)):
        try:
            stream.write(text)
            stream.flush()
        except BrokenPipeError:
            _forget(stream.fileno())
            return _PIPE_CLOSED
        except OSError as error:
            _forget(stream.fileno())
            with contextlib.suppress(OSError):
                print(f"bathwright: the output cannot be written ({error.strerror})", file=sys.stderr, flush=True)
            return 2
    return code


def _forget(number: int) -> None:
    """What is still in the buffer of a stream goes nowhere, so that the end of the process stays quiet."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nowhere, number)
    os.close(nowhere)
