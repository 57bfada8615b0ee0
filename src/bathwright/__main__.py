"""Run the command line as `python -m bathwright`."""

from bathwright.cli import main

main()
