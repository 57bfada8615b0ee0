# bathwright: set-up, plan, tests. Needs Python 3.11+ and make; everything else comes into .venv.
PYTHON ?= python3
VENV   := .venv
BIN    := $(VENV)/bin
UV     := $(shell command -v uv 2>/dev/null)
AT     ?= 2026-12-01T09:00
SURVEY ?= examples/surveys/demo.toml

.PHONY: plan test lint slow lock clean help

help:
	@echo "make plan    the plan for the demo survey (SURVEY=file for another one)"
	@echo "make test    every test that pure Python can run; ends by naming what it did not run"
	@echo "make lint    style, types, direction of imports"
	@echo "make slow    long fuzz runs and benchmarks"
	@echo "make lock    write the lock files anew (needs uv)"
	@echo "make clean   remove what make made"

# One stamp a set of parts: run, test, full.
$(VENV)/%.stamp: requirements/%.txt pyproject.toml
	@test -x $(BIN)/python || $(PYTHON) -m venv $(VENV)
ifdef UV
	@$(UV) pip install --quiet --python $(BIN)/python --require-hashes -r requirements/$*.txt
	@$(UV) pip install --quiet --python $(BIN)/python --no-deps --no-build-isolation -e .
else
	@$(BIN)/python -m pip install --quiet --disable-pip-version-check --require-hashes -r requirements/$*.txt
	@$(BIN)/python -m pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation -e .
endif
	@touch $@

# The exit code of the plan tells its verdict (0 go, 4 not yet, 3 no): a plan was made in each of these cases.
plan: $(VENV)/run.stamp
	@$(BIN)/bathwright plan $(SURVEY) --at $(AT) --out out; code=$$?; \
	case $$code in 0|3|4) ;; *) exit $$code ;; esac

test: $(VENV)/test.stamp
	@$(BIN)/python -m pytest

lint: $(VENV)/full.stamp
	@$(BIN)/ruff format --check .
	@$(BIN)/ruff check .
	@$(BIN)/mypy
	@$(BIN)/lint-imports --no-cache

slow: $(VENV)/full.stamp
	@BATHWRIGHT_SLOW=1 $(BIN)/python -m pytest tests/door tests/planning
	@$(BIN)/python benchmarks/plan.py

lock:
	@for set in run test full; do uv pip compile --universal --python-version 3.11 --generate-hashes --quiet \
	  --no-annotate --custom-compile-command "make lock" requirements/$$set.in -o requirements/$$set.txt; done

clean:
	@rm -rf $(VENV) out build dist .pytest_cache .mypy_cache .ruff_cache .hypothesis .import_linter_cache
