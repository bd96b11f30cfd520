# What a contributor needs. Each target works from a fresh clone with Python 3.11 or newer and make alone.
# Kept to what make 3.81 understands.

.DEFAULT_GOAL := help
.PHONY: help demo test proof witness lint types bench docs format lock clean

BIN := .venv/bin
# The first of these that is at least Python 3.11; or say `make PYTHON=/path/to/python3.12 test`.
PYTHON ?= $(shell for p in python3 python3.14 python3.13 python3.12 python3.11; do \
  if $$p -c 'import sys; sys.exit(sys.version_info < (3, 11))' >/dev/null 2>&1; then echo $$p; break; fi; done)
PYTEST_ARGS ?=
UV ?= uv

help: ## this list
	@echo "Groundsill. Targets:"
	@grep -E '^[a-z]+:.*## ' Makefile | sed -e 's/:.*## /	/' | awk -F '\t' '{ printf "  make %-8s %s\n", $$1, $$2 }'

demo: .venv/run.stamp ## the invented sample houses, each from its survey file to its calculation package in demo/
	$(BIN)/groundsill demo

test: .venv/dev.stamp ## every test but the large counts, under five minutes (PYTEST_ARGS="-k sill" narrows it)
	$(BIN)/python -m pytest --numprocesses auto --dist loadfile $(PYTEST_ARGS)

proof: .venv/dev.stamp ## the large counts: thousands of houses, walls and spoiled files
	$(BIN)/python -m pytest -m proof $(PYTEST_ARGS)

witness: .venv/witness.stamp ## sections with bars against a general section library, which it installs
	$(BIN)/python -m pytest -m witness $(PYTEST_ARGS)

lint: .venv/dev.stamp ## ruff's rules and layout, and the floors between the rooms of the code
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/lint-imports

types: .venv/dev.stamp ## mypy --strict on the package
	$(BIN)/mypy --strict src

bench: .venv/dev.stamp ## what things cost: ratios and growth
	$(BIN)/python -m benchmarks

docs: .venv/dev.stamp ## write again the pages that are generated from the code
	$(BIN)/python docs/generate.py

format: .venv/dev.stamp ## lay out the code and mend what ruff can mend itself
	$(BIN)/ruff check --fix .
	$(BIN)/ruff format .

lock: ## write the lock files again (needs uv), after a change of dependencies in pyproject.toml
	$(UV) pip compile pyproject.toml --extra build --extra dev --universal --python-version 3.11 --generate-hashes \
	  --no-emit-index-url --no-emit-find-links --no-header --quiet --output-file requirements-dev.lock
	$(UV) pip compile pyproject.toml --extra witness --constraints requirements-dev.lock --universal --python-version 3.11 \
	  --generate-hashes --no-emit-index-url --no-emit-find-links --no-header --quiet --output-file requirements-witness.lock
	$(UV) pip compile pyproject.toml --extra build --constraints requirements-dev.lock --universal --python-version 3.11 \
	  --generate-hashes --no-emit-index-url --no-emit-find-links --no-header --quiet --output-file requirements.lock

clean: ## remove the private environment and all that was built
	rm -rf .venv build dist demo .hypothesis .mypy_cache .pytest_cache .ruff_cache .import_linter_cache

# --- the private environment ---------------------------------------------------------------------------------------
# The stamps say what has been installed from which lock; the package itself is linked, so an edit counts at once.

.venv/bin/python:
	@if test -z "$(PYTHON)"; then echo "make: no Python 3.11 or newer found; say make PYTHON=/path/to/python" >&2; exit 1; fi
	@$(PYTHON) -c 'import ensurepip, venv' 2>/dev/null || { \
	  echo "make: $(PYTHON) cannot make environments; install its venv package (python3-venv on Debian)" >&2; exit 1; }
	$(PYTHON) -m venv .venv

.venv/run.stamp: requirements.lock pyproject.toml | .venv/bin/python
	$(BIN)/python -m pip install --quiet --disable-pip-version-check --require-hashes --requirement requirements.lock
	$(BIN)/python -m pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation --editable .
	@touch $@

.venv/dev.stamp: requirements-dev.lock pyproject.toml | .venv/bin/python
	$(BIN)/python -m pip install --quiet --disable-pip-version-check --require-hashes --requirement requirements-dev.lock
	$(BIN)/python -m pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation --editable .
	@touch $@

.venv/witness.stamp: requirements-witness.lock .venv/dev.stamp
	$(BIN)/python -m pip install --quiet --disable-pip-version-check --require-hashes --requirement requirements-witness.lock
	@touch $@
