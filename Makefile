# The few words that people and CI use. `make` alone lists them.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
USE := $(VENV)/.use-installed
DEV := $(VENV)/.dev-installed
PIP := $(BIN)/python -m pip install --quiet --disable-pip-version-check -c constraints.txt

.DEFAULT_GOAL := help
.PHONY: help demo test check bench golden docs open screenshots fuzz clean

help: ## list these words
	@grep -E '^[a-z]+: .*##' $(MAKEFILE_LIST) | sed -E 's/^([a-z]+): .*## (.*)/  make \1 - \2/'

demo: $(USE) ## check the example, print what to buy and how to make each line, write its packet to out/
	@$(BIN)/firmpedal demo --out out

test: $(DEV) ## run every test
	@$(BIN)/python -m pytest -n auto --dist worksteal

check: $(DEV) ## style, types, import contract, and whether the generated pages are fresh
	@$(BIN)/ruff check .
	@$(BIN)/ruff format --check .
	@$(BIN)/mypy
	@$(BIN)/lint-imports
	@$(BIN)/python docs/build.py --check

bench: $(DEV) ## our solvers beside independent ones on the same work; prints ratios
	@$(BIN)/python -m benchmarks

golden: $(DEV) ## rewrite the golden files; read the diff before you commit it
	@$(BIN)/python -m pytest tests/golden --rewrite-golden

docs: $(DEV) ## write the generated pages: rules, file reference, validation
	@$(BIN)/python docs/build.py

open: $(USE) ## the app in the browser, on the folder out/
	@mkdir -p out
	@$(BIN)/firmpedal open out

screenshots: $(DEV) ## pictures of every page of the app, in out/screenshots/; look at each
	@$(BIN)/python -m tools.screenshots

fuzz: $(DEV) ## feed the file reader broken files for a while, and everything else cases not drawn before
	@$(BIN)/python -m pytest tests/fuzz tests/properties -n auto --hypothesis-profile searching --fuzz-examples 5000 --timeout 0

clean: ## take the virtual environment and everything made away
	rm -rf $(VENV) out build dist

$(BIN)/python:
	@$(PYTHON) -m venv $(VENV) || { echo "This needs Python 3.11 or later with venv (on Debian: apt-get install python3-venv)."; exit 1; }

$(USE): pyproject.toml constraints.txt | $(BIN)/python
	@echo "Installing what Firmpedal needs, once ..."
	@$(PIP) -e .
	@touch $@

$(DEV): pyproject.toml constraints.txt | $(BIN)/python
	@echo "Installing what the tests need, once (about a minute) ..."
	@$(PIP) -e '.[dev,cad]'
	@touch $(USE) $@
